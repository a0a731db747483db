// The cowl front: a base front slashed, opened and trued until it drapes.
//
//   CowlWishes wishes;
//   wishes.drape = 480;
//   CowlDraft draft = draft_cowl_front(block_front(demo_measures()), wishes);
//   std::string file = piece_to_json(draft.front);
//
// Method: NIMI, CITS Dress Making, Trade Practical, p. 175 (cowl on a knit top).
//
// Guarantees: the neck point stands at half the drape from the centre front to
// 1e-9 mm; shoulder, armhole and side seam keep the base's lengths to 1e-9 mm;
// the cowl edge is square to the centre front; no part of the front crosses the
// centre front or rises above the cowl edge; the hem leaves the centre front
// square; the outline does not cross itself. It does not promise how a given
// cloth will fall. A wish that cannot be met throws Refusal with the reason and,
// for a drape, the nearest one that works.
#pragma once

#include <numbers>
#include <string>
#include <vector>

#include "drafting/piece/allowance.h"
#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

struct CowlWishes {
  double drape = 480.0;         ///< along the cowl from shoulder seam to shoulder seam, mm
  double neckline_drop = 60.0;  ///< how far the neckline is lowered at the centre front, mm
  int slash_count = 3;          ///< slash lines, 1 to 6
  double facing_depth = 50.8;   ///< of the self-facing beyond the cowl edge, mm
  Allowances allowances = default_allowances();
  bool on_fold = true;                                 ///< cut on the fold; false: cut full
  double max_swing = 30.0 * std::numbers::pi / 180.0;  ///< most turn of the whole front, radians
  double cloth_width = 1500.0;                         ///< of the cloth the front is cut from, mm
};

/// Drapes that work for a base and wishes, mm.
struct DrapeRange {
  double least = 0.0, most = 0.0;
};

struct CowlDraft {
  Piece front;                 ///< the half front with its facing, `cowl` filled in
  Piece base;                  ///< the base it came from, with the same allowances
  double neckline_drop = 0.0;  ///< mm
  double facing_depth = 0.0;   ///< mm
  double front_length = 0.0;   ///< down the new centre front, cowl edge to hem, mm
  double cloth_width = 0.0;    ///< cloth needed across, the piece laid open, mm
  double cloth_length = 0.0;   ///< cloth needed along the grain, mm
};

CowlDraft draft_cowl_front(const Piece& base, const CowlWishes& wishes);

/// The drapes that `draft_cowl_front` accepts with these wishes (their `drape` ignored).
DrapeRange drape_range(const Piece& base, const CowlWishes& wishes);

}  // namespace cowlcast::drafting
