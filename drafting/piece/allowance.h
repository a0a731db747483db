// Allowance: cloth left outside the seam line, edge by edge.
//
//   Allowances allowances = default_allowances();
//   allowances["hem"] = 30;
//   add_allowances(front, allowances);
#pragma once

#include <map>
#include <string>
#include <vector>

#include "drafting/piece/corner.h"
#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// Width in mm outside the seam line by edge role.
using Allowances = std::map<std::string, double>;

/// Seams 10 mm, neckline 12.7 mm, hem 25 mm, the facing's free edge raw.
Allowances default_allowances();

inline constexpr double widest_allowance = 100.0;  ///< mm

/// The roles of edges that can have an allowance, on any piece.
const std::vector<std::string>& roles_with_allowance();

/// The same of one piece, in outline order: what lies on the fold, on the mirror
/// line or is a fold itself ("cowl-edge") has none.
std::vector<std::string> roles_with_allowance(const Piece& piece);

/// Sets `piece.cut_line` to the seam line moved out by each edge's allowance, its
/// corners as `corners` says, and each notch's `cut` to its place there. An edge
/// on the fold, on the mirror line or without an entry gets none. A mitre longer
/// than twice the wider allowance is squared off. Throws Refusal for a width that
/// is negative, not finite or over 100 mm, for a name that is no role, where the
/// cut line would cross itself, and where an edge curves too tightly for its
/// width, with the widest that works.
void add_allowances(Piece& piece, const Allowances& allowances, const Corners& corners = {});

/// Adds a notch at its place on the seam line of a piece that has its cut line; it
/// stays a mark where the allowance is too narrow to cut into.
void add_notch(Piece& piece, Notch notch);

}  // namespace cowlcast::drafting
