#include "projector/project/drawn_slashes.h"

#include <algorithm>

#include "drafting/intake/svg_base.h"
#include "drafting/intake/svg_lines.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {

std::vector<drafting::SlashWish> slashes_along(const std::vector<drafting::Polyline>& lines) {
  std::vector<drafting::SlashWish> slashes(lines.size());
  for (size_t i = 0; i < lines.size(); ++i) slashes[i].line = lines[i];
  return slashes;
}

std::string svg_of(const PatternDrawing& drawing) {
  return drawing.roles.empty() ? drawing.svg : drafting::with_roles(drawing.svg, drawing.roles);
}

int drawn_slashes(const Project& project) {
  return static_cast<int>(std::count_if(project.cowl.slashes.begin(), project.cowl.slashes.end(),
                                        [](const auto& slash) { return !slash.line.empty(); }));
}

bool take_drawn_slashes(Project& project) {
  if (drawn_slashes(project) > 0) project.cowl.slashes.clear();
  const PatternDrawing& front = project.pattern.front;
  if (front.svg.empty()) return false;
  try {
    const auto lines = drafting::slash_lines_from_svg(svg_of(front));
    if (lines.empty()) return false;
    project.cowl.slashes = slashes_along(lines);
    project.cowl.proportions.clear();
    project.cowl.set_openings.clear();
    return true;
  } catch (const drafting::Refusal&) {  // the base says the same
    return false;
  }
}

}  // namespace cowlcast::projector
