// A base front (or back) from an SVG drawing in real size.
//
//   Piece base = base_front_from_svg(text_of_file);
//
// The drawing has one path an edge, its `id` the role: centre-front, neckline,
// shoulder, armhole, side-seam, hem; any SVG path commands, transforms and
// groups; and may have a circle with id "armhole-notch", circles with ids such as
// "drill-pocket" for drill marks, and paths "slash-1" to "slash-9", from the top
// down, for slash lines drawn by hand. The size is real:
// width and height in mm, cm, in, pt, pc or px (96 to the inch), with a viewBox
// when its units are others. The paths are seam lines, no allowance.
//
// Guarantees: a closed simple outline, counter-clockwise, y up, the centre front
// on x = 0 from its hem at y = 0, ends that stood within 0.5 mm of each other
// joined. Throws Refusal, naming edge, place and cure, for everything else.
#pragma once

#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// `cautions`, when given, gets sentences on what was read but may not be meant.
Piece base_front_from_svg(const std::string& svg_text, std::vector<std::string>* cautions = nullptr);

/// The slash lines of the drawing of a base front, from the top down, each from the centre front on; in the
/// piece frame. None when it has none. Throws as `base_front_from_svg` does; whether they can be slashed,
/// drafting says.
std::vector<Polyline> slash_lines_from_svg(const std::string& svg_text);

/// The same for a base back; its centre's path is "centre-back".
Piece base_back_from_svg(const std::string& svg_text, std::vector<std::string>* cautions = nullptr);

}  // namespace cowlcast::drafting
