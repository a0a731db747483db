// Assembling a base piece from its edges.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// A base front or back from its six edges, in the piece frame and in outline
/// order: centre (downwards), hem, side-seam, armhole, shoulder, neckline; each
/// ends where the next starts. Sets seam line, points, grain, fold on the centre,
/// notch and default allowances. Throws Refusal when the outline crosses itself.
Piece assemble_base(const std::string& name, std::vector<Edge> edges,
                    const std::optional<Point>& armhole_notch);

/// The outline that edges in order make; "cowl-edge" is left out.
Polyline outline_of(const std::vector<Edge>& edges);

/// Place in words: "120 mm out and 340 mm up".
std::string place_in_words(const Point& point);

/// A length as people read it: one decimal at most, "mm" after it.
std::string mm_in_words(double length);

}  // namespace cowlcast::drafting
