// Allowance: cloth left outside the seam line, edge by edge.
//
//   Allowances allowances = default_allowances();
//   allowances["hem"] = 30;
//   add_allowances(front, allowances);
#pragma once

#include <map>
#include <string>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// Width in mm outside the seam line by edge role.
using Allowances = std::map<std::string, double>;

/// Seams 10 mm, neckline 12.7 mm, hem 25 mm, the facing's free edge raw.
Allowances default_allowances();

/// How the cut line turns its corners.
struct Corners {
  /// A hem is folded up on its seam line and caught in the side seam, so its ends
  /// are the side seam's reflection in the hem line; false: mitred like a seam.
  bool hem_turned_up = true;
  /// Seam corners squared off across, instead of mitred to a point.
  bool squared = false;
};

/// Sets `piece.cut_line` to the seam line moved out by each edge's allowance,
/// and each notch's `cut` to its place there. An edge on the fold, on the mirror
/// line or without an entry gets none. Sewn corners are mitred; a corner sharper
/// than the mitre limit (2) is squared off. Throws Refusal for a width that is
/// negative, not finite or over 100 mm, for a name that is no role, and where
/// the cut line would cross itself.
void add_allowances(Piece& piece, const Allowances& allowances, const Corners& corners = {});

}  // namespace cowlcast::drafting
