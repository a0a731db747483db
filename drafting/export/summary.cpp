#include "drafting/export/summary.h"

#include <cstdio>
#include <numbers>

#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

template <typename... Values>
void add_line(std::string& text, const char* format, Values... values) {
  char line[200];
  std::snprintf(line, sizeof line, format, values...);
  text += line;
  text += '\n';
}

}  // namespace

std::string summary(const CowlDraft& draft) {
  constexpr double degrees = 180.0 / std::numbers::pi;
  std::string text;
  const CowlRecord& cowl = *draft.front.cowl;
  add_line(text, "drape               %8.1f mm, shoulder seam to shoulder seam", cowl.drape);
  add_line(text, "spread              %8.1f mm, neck point from the new centre front (%.1f mm on the base)",
           draft.front.points.at("neck-point").x(), draft.base.points.at("neck-point").x());
  add_line(text, "neckline lowered    %8.1f mm at the centre front", draft.neckline_drop);
  std::string openings;
  for (const double angle : cowl.hinge_angles) {
    char one[24];
    std::snprintf(one, sizeof one, "%s%.2f", openings.empty() ? "" : ", ", angle * degrees);
    openings += one;
  }
  add_line(text, "openings            %s degrees, from the top down", openings.c_str());
  add_line(text, "swing               %8.2f degrees", cowl.swing * degrees);
  add_line(text, "front length        %8.1f mm, cowl edge to hem at the centre", draft.front_length);
  if (draft.facing_depth > 0.0) add_line(text, "facing              %8.1f mm deep", draft.facing_depth);
  for (const char* role : {"shoulder", "armhole", "side-seam"}) {
    const double front = length(edge_of(draft.front, role).points),
                 base = length(edge_of(draft.base, role).points);
    add_line(text, "%-19s %8.1f mm, base %.1f mm", role, front, base);
  }
  add_line(text, "cloth needed        %8.0f mm across, %.0f mm along the grain", draft.cloth_width,
           draft.cloth_length);
  return text;
}

}  // namespace cowlcast::drafting
