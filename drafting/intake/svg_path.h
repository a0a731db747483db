// The path data of SVG ("d" attribute), all of its commands, to polylines.
//
//   std::vector<Polyline> lines = polylines_from_path("M0 0 h10 a5 5 0 0 1 5 5", mm_from_user);
//
// Grammar and arc conversion: W3C SVG 1.1, sections 8.3 and F.6. A closed
// subpath ends with its first point again. Flattened within 0.01 mm after
// `mm_from_user`.
#pragma once

#include <Eigen/Geometry>
#include <string_view>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// Throws Refusal at the first thing that is no path data, saying where it
/// stands. `mm_from_user` may be any affine transform.
std::vector<Polyline> polylines_from_path(std::string_view data, const Eigen::Affine2d& mm_from_user);

/// The "transform" attribute: matrix, translate, scale, rotate, skewX, skewY, in
/// any number. Throws Refusal for anything else.
Eigen::Affine2d transform_from_text(std::string_view text);

}  // namespace cowlcast::drafting
