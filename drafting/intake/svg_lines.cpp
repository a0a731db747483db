#include "drafting/intake/svg_lines.h"

#include <functional>
#include <pugixml.hpp>
#include <sstream>

#include "drafting/intake/svg_node.h"
#include "drafting/intake/svg_path.h"
#include "drafting/intake/svg_size.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr int deepest = 100;
constexpr double shortest = 0.5;  // mm

/// The runs of an element's line, mm; what the parser says of text that is no path, as a whole sentence.
std::vector<Polyline> runs_of(const pugi::xml_node& node, const Eigen::Affine2d& mm_from_node) {
  try {
    return polylines_from_path(path_data(node), mm_from_node);
  } catch (const Refusal& reason) {
    throw Refusal(std::string("In this drawing ") + reason.what() +
                  ". Ungroup the pattern and save as plain SVG.");
  }
}

using Visit = std::function<void(pugi::xml_node, const std::string& id, const Eigen::Affine2d& mm_from_node)>;

/// Calls `visit` for every line in the order drawn, with the id it goes by.
void visit_lines(const pugi::xml_node& parent, const Eigen::Affine2d& mm_from_parent, int depth, int& count,
                 const Visit& visit) {
  if (depth > deepest)
    throw Refusal("The drawing's groups are nested too deeply. Ungroup them and save again.");
  for (const pugi::xml_node& node : parent.children()) {
    const std::string kind = local_name(node);
    const bool line = is_line(kind);
    if (!line && !is_group(kind)) continue;
    const Eigen::Affine2d mm_from_node = mm_from_parent * transform_of(node);
    if (!line) {
      visit_lines(node, mm_from_node, depth + 1, count, visit);
      continue;
    }
    const std::string own = node.attribute("id").value();
    ++count;
    visit(node, own.empty() ? "line " + std::to_string(count) : own, mm_from_node);
  }
}

void read(pugi::xml_document& document, const std::string& text) {
  const pugi::xml_parse_result result = document.load_buffer(text.data(), text.size());
  if (!result || local_name(document.document_element()) != "svg") {
    throw Refusal(
        "This is not a readable SVG drawing. Save the pattern as plain SVG in real size and try again.");
  }
}

}  // namespace

std::vector<SvgLine> lines_of_svg(const std::string& svg_text) {
  pugi::xml_document document;
  read(document, svg_text);
  std::vector<std::string> cautions;
  const Eigen::Affine2d mm = mm_from_user_units(document.document_element(), cautions);
  std::vector<SvgLine> lines;
  double lowest = 0.0;
  int count = 0;
  visit_lines(document.document_element(), mm, 0, count,
              [&](const pugi::xml_node& node, const std::string& id, const Eigen::Affine2d& mm_from_node) {
                const std::vector<Polyline> runs = runs_of(node, mm_from_node);
                if (runs.empty() || runs[0].size() < 2) return;
                double long_enough = 0.0;
                for (size_t i = 1; i < runs[0].size(); ++i)
                  long_enough += (runs[0][i] - runs[0][i - 1]).norm();
                if (!(long_enough >= shortest)) return;
                for (const Point& p : runs[0]) lowest = std::max(lowest, p.y());
                const bool closed = (runs[0].front() - runs[0].back()).norm() < shortest;
                lines.push_back({id, runs[0], runs.size() == 1 && !closed});
              });
  if (lines.empty()) {
    throw Refusal(
        "There is no line in this drawing. Draw each edge of the pattern as a path of its own and save as "
        "plain SVG.");
  }
  for (SvgLine& line : lines)
    for (Point& p : line.points) p.y() = lowest - p.y();
  return lines;
}

std::string with_roles(const std::string& svg_text, const std::map<std::string, std::string>& roles) {
  if (roles.empty()) return svg_text;
  pugi::xml_document document;
  read(document, svg_text);
  std::map<std::string, int> given;
  for (const auto& [id, role] : roles) given[role] = 1;
  int count = 0;
  visit_lines(document.document_element(), Eigen::Affine2d::Identity(), 0, count,
              [&](pugi::xml_node node, const std::string& id, const Eigen::Affine2d&) {
                const auto role = roles.find(id);
                if (role != roles.end()) {
                  pugi::xml_attribute own = node.attribute("id");
                  if (!own) own = node.append_attribute("id");
                  own.set_value(role->second.c_str());
                } else if (given.count(id) > 0) {
                  node.remove_attribute("id");
                }
              });
  std::ostringstream text;
  document.save(text, "", pugi::format_raw);
  return text.str();
}

}  // namespace cowlcast::drafting
