#include "drafting/intake/svg_node.h"

#include "drafting/intake/svg_path.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {

std::string local_name(const pugi::xml_node& node) {
  const std::string name = node.name();
  const size_t colon = name.find(':');
  return colon == std::string::npos ? name : name.substr(colon + 1);
}

bool is_line(const std::string& name) {
  return name == "path" || name == "line" || name == "polyline";
}

bool is_group(const std::string& name) {
  return name == "g" || name == "a" || name == "switch";
}

std::string path_data(const pugi::xml_node& node) {
  const std::string name = local_name(node);
  if (name == "path") return node.attribute("d").value();
  if (name == "polyline") return std::string("M").append(node.attribute("points").value());
  std::string data("M");
  for (const char* place : {"x1", "y1", "x2", "y2"})
    data.append(node.attribute(place).as_string("0")).append(" ");
  return data;
}

Eigen::Affine2d transform_of(const pugi::xml_node& node) {
  const pugi::xml_attribute transform = node.attribute("transform");
  if (!transform) return Eigen::Affine2d::Identity();
  try {
    return transform_from_text(transform.value());
  } catch (const Refusal& reason) {
    throw Refusal(std::string("In this drawing ") + reason.what() +
                  ". Ungroup the pattern and save as plain SVG.");
  }
}

}  // namespace cowlcast::drafting
