// The cowl front: a base front slashed, opened and trued until it drapes.
//
//   CowlWishes wishes;
//   wishes.drape = 480;
//   CowlDraft draft = draft_cowl_front(block_front(demo_measures()), wishes);
//   std::string file = piece_to_json(draft.front);
//
// Method: NIMI, CITS Dress Making, Trade Practical, p. 175 (cowl on a knit top).
// Slash lines square to centre front and shoulder: common practice, no source.
//
// Guarantees: the neck point stands at half the drape from the centre front to
// 1e-9 mm; shoulder, armhole and side seam keep the base's lengths to 1e-9 mm;
// the cowl edge is square to the centre front; no part of the front crosses the
// centre front or rises above the cowl edge; the hem leaves the centre front
// square; the outline does not cross itself; the base's drill marks lie on the
// part that carried them. A crossing of the centre front is
// accepted only up to `allowed_crossing`, and a side seam with a tacked length is
// that much longer. A base back ("centre-back") gives a back cowl the same way.
// It does not promise how a given
// cloth will fall. A wish that cannot be met throws Refusal with the reason and,
// for a drape, the nearest one that works.
#pragma once

#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include "drafting/cowl/slash.h"
#include "drafting/piece/allowance.h"
#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// A slash line placed by hand.
struct SlashWish {
  double below_neckline = 0.0;    ///< its start on the centre front, mm below the lowered neckline
  std::string seam = "shoulder";  ///< "shoulder" or "armhole": where its hinge lies
  double share = 0.5;             ///< of that seam from its upper end (neck point, shoulder point) down
  Polyline line = {};  ///< when set: any line from the centre front to the hinge, and nothing above counts
};

struct CowlWishes {
  double drape = 480.0;                       ///< along the cowl from shoulder seam to shoulder seam, mm
  double neckline_drop = 60.0;                ///< how far the neckline is lowered at the centre front, mm
  int slash_count = 3;                        ///< slash lines, 1 to 6
  SlashForm slash_form = SlashForm::squared;  ///< of lines that are not drawn by hand
  double facing_depth = 50.8;                 ///< of the self-facing beyond the cowl edge, mm
  Allowances allowances = default_allowances();
  Corners corners;
  NotchForm notch_form = NotchForm::mark;
  bool on_fold = true;                                 ///< cut on the fold; false: cut full
  double max_swing = 30.0 * std::numbers::pi / 180.0;  ///< most turn of the whole front, radians
  double cloth_width = 1500.0;                         ///< of the cloth the front is cut from, mm

  std::vector<SlashWish> slashes;    ///< from the top down; none: `slash_count` placed by default
  std::vector<double> proportions;   ///< openings relative to each other, from the top down; none: even
  std::vector<double> set_openings;  ///< openings set one by one, radians; none: worked out
  double pivot_height = 0.0;         ///< of the swing's centre above the hem at the centre front, mm
  double allowed_crossing = 0.0;     ///< how far parts may lie over the centre front, mm; cut away there

  bool separate_facing = false;  ///< the facing is a piece of its own: `CowlDraft::facing`
  double tacked_length = 0.0;    ///< extra front length, tacked up at the side seams, mm
  bool on_bias = false;     ///< woven cloth: grain at 45 degrees to the centre front, cut full in one layer
  double trial_hang = 0.0;  ///< how far the centre dropped in a trial hang, taken out at the hem, mm
};

/// Drapes that work for a base and wishes, mm.
struct DrapeRange {
  double least = 0.0, most = 0.0;
};

/// What each slash line can do at one drape, from the top down, radians.
struct OpeningRange {
  double drafted = 0.0;            ///< by the criterion, or as set
  double least = 0.0, most = 0.0;  ///< with the other openings and the swing free
};

struct CowlDraft {
  Piece front;                         ///< the half front with its facing, `cowl` filled in
  Piece base;                          ///< the base it came from, with the same allowances
  std::optional<Piece> facing;         ///< when it was to be a piece of its own
  Point swing_centre = Point::Zero();  ///< on the base's centre front
  double neckline_drop = 0.0;          ///< mm
  double facing_depth = 0.0;           ///< mm
  double front_length = 0.0;           ///< down the new centre front, cowl edge to hem, mm
  double cloth_width = 0.0;            ///< cloth needed across, the piece laid open, mm
  double cloth_length = 0.0;           ///< cloth needed along the centre front, mm
  double crossing = 0.0;               ///< how far parts lie over the centre front, as allowed, mm
  double hem_drop = 0.0;               ///< how far the swing lowers the hem at the side seam, mm
  double tacked_length = 0.0;          ///< taken up again at the side seam between the "tack" notches, mm
};

CowlDraft draft_cowl_front(const Piece& base, const CowlWishes& wishes);

/// The drapes that `draft_cowl_front` accepts with these wishes (their `drape` ignored).
///
/// With the openings free the longest drape hardly depends on the number of slash
/// lines, and rightly so. The longest comes when the top part has turned until
/// its neckline would rise above the cowl edge; of that turn the neck point gains
/// most from what turns about the point farthest from it: the swing up to its
/// limit, then the lowest hinge. The upper lines stay shut there, and adding some
/// changes nothing. More lines spread the openings more evenly at drapes in
/// between; weighted or held, they do limit it.
DrapeRange drape_range(const Piece& base, const CowlWishes& wishes);

/// The range of each opening at `wishes.drape`, which must be one that works;
/// `swing` as drafted. Found by a local search.
struct OpeningRanges {
  std::vector<OpeningRange> openings;
  double swing = 0.0;  ///< radians
};
OpeningRanges opening_ranges(const Piece& base, const CowlWishes& wishes);

}  // namespace cowlcast::drafting
