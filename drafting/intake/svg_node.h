// One element of an SVG drawing, as both readers of drawings see it.
//
//   if (is_line(local_name(node))) polylines_from_path(path_data(node), mm_from_parent * transform_of(node));
#pragma once

#include <Eigen/Geometry>
#include <pugixml.hpp>
#include <string>

namespace cowlcast::drafting {

/// The element's name without a namespace before it: "svg:path" is a "path".
std::string local_name(const pugi::xml_node& node);

/// Whether an element of this name draws an open or closed line: path, line or polyline.
bool is_line(const std::string& name);

/// Whether an element of this name only holds others that are drawn: g, a or switch.
bool is_group(const std::string& name);

/// The line that an element draws, as the text of a path's `d`. The element must be a line.
std::string path_data(const pugi::xml_node& node);

/// The element's own transform, parent from node; identity where it has none. Throws Refusal, a whole
/// sentence with its cure, for text that is none.
Eigen::Affine2d transform_of(const pugi::xml_node& node);

}  // namespace cowlcast::drafting
