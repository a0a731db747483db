// The real size of an SVG drawing.
#pragma once

#include <Eigen/Geometry>
#include <pugixml.hpp>

namespace cowlcast::drafting {

/// Millimetres (y down, origin at the viewBox's corner) from user units, by the
/// root's width, height, viewBox and preserveAspectRatio. Throws Refusal when the
/// drawing has no real size.
Eigen::Affine2d mm_from_user_units(const pugi::xml_node& root);

}  // namespace cowlcast::drafting
