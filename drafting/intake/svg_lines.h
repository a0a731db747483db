// Every line of an SVG drawing, so that a person can say which edge each is.
//
//   for (const SvgLine& line : lines_of_svg(text)) draw(line.points);
//   Piece base = base_front_from_svg(with_roles(text, {{"path-7", "hem"}}));
//
// A drawing whose paths have other ids than roles is made ready this way, and the
// drawing itself stays as it was.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

struct SvgLine {
  std::string id;          ///< as drawn; "line 3" for the third line of the drawing when it has none
  Polyline points;         ///< mm, y up, the drawing's lower left corner at the origin
  bool in_one_run = true;  ///< false: it is in separate pieces, of which the first is here, or closed
};

/// Paths, lines and polylines in the order they are drawn; those in definitions and those without length
/// are left out. Throws Refusal for what is no drawing in real size, or has no line.
std::vector<SvgLine> lines_of_svg(const std::string& svg_text);

/// The drawing with each line's id replaced by its role; `roles` has ids as `lines_of_svg` gives them. A
/// line that had a role's name but was not given it loses its id. Ids that no line has are passed over.
std::string with_roles(const std::string& svg_text, const std::map<std::string, std::string>& roles);

}  // namespace cowlcast::drafting
