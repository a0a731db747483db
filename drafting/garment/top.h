// Top: the cowl front with all that is cut and sewn beside it.
//
//   TopWishes wishes;
//   wishes.cowl.drape = 480;
//   Top top = draft_top(block_front(m), block_back(m), wishes);
//   require_walk(top, false);     // throws Refusal when a seam does not walk
//
// Front, back, an inner panel under the cowl, a separate facing when
// wished, pieces carried over unchanged (sleeves), the neck elastic and the
// finishes of the inner panel's top edge and of a sleeveless top's armholes as figures.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/cowl/cowl_front.h"
#include "drafting/garment/finish.h"
#include "drafting/garment/seam_walk.h"

namespace cowlcast::drafting {

/// Clear elastic on the back neck. ⅜ in wide, set ⅛ in from the edge, it ends on
/// a ½ in seam line: common practice, no source.
struct NeckElastic {
  double seam_length = 0.0;     ///< back neck seam, shoulder seam to shoulder seam, mm
  double elastic_length = 0.0;  ///< to cut, both tails in it, mm
  double tail = 0.0;            ///< of each end, laid into the shoulder seam allowance, mm
  double from_edge = 3.175;     ///< from the cut edge, mm
  double width = 9.525;         ///< mm
  /// How far its inner side lies from the seam line, mm; 0 when it lands on it.
  double off_seam_line(double allowance) const { return from_edge + width - allowance; }
};

struct TopWishes {
  CowlWishes cowl;
  std::optional<CowlWishes> back_cowl;  ///< a cowl in the back as well
  bool camisole = true;                 ///< an inner panel under the cowl
  double camisole_depth = 130.0;        ///< its top edge at the centre front, mm below the neck point
  double camisole_length = 110.0;       ///< along the side seam below the armhole, mm
  double elastic_stretch = 1.0;         ///< seam length over elastic length between the tails
  double elastic_tail = 13.0;           ///< mm each end
  Finish camisole_finish;               ///< of the panel's top edge
  /// Of the armholes of a top without sleeves. None: a binding is reckoned, no allowance changed.
  std::optional<Finish> arm_finish;
  /// Edges whose allowance was set by hand; a finish leaves those alone.
  std::vector<std::string> allowances_set;
  double sleeve_ease = 0.0;    ///< of a sleeve cap taken up in its armholes, mm
  std::vector<Piece> carried;  ///< sleeves and other pieces that stay as they are
};

struct Top {
  CowlDraft cowl;
  std::optional<CowlDraft> back_cowl;
  Piece back;                     ///< plain, or the cowl back
  std::optional<Piece> camisole;  ///< edges centre-front, camisole-hem, side-seam, armhole, camisole-top
  std::vector<Piece> carried;
  NeckElastic elastic;
  std::vector<FinishedEdge> finishes;  ///< the panel's top edge; an armhole when no sleeve is carried
  std::vector<Walk> walks;
};

Top draft_top(const Piece& base_front, const Piece& base_back, const TopWishes& wishes);

/// Throws Refusal naming the seams that do not walk, unless `cut_all_the_same`.
void require_walk(const Top& top, bool cut_all_the_same);

/// Every piece to cut, in order: front, facing, back, camisole, carried.
std::vector<Piece> pieces_of(const Top& top);

}  // namespace cowlcast::drafting
