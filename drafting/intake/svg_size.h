// The real size of an SVG drawing.
#pragma once

#include <Eigen/Geometry>
#include <pugixml.hpp>
#include <string>
#include <vector>

namespace cowlcast::drafting {

/// Millimetres (y down, origin at the viewBox's corner) from user units, by the
/// root's width, height and viewBox. A size in pixels is read as 96 to the inch (CSS
/// Values and Units), with a caution, since programs that write other pixels exist.
/// Throws Refusal when the drawing has no real size, or another scale across than
/// down by more than half a percent.
Eigen::Affine2d mm_from_user_units(const pugi::xml_node& root, std::vector<std::string>& cautions);

}  // namespace cowlcast::drafting
