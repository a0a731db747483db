#include "drafting/teaching/steps.h"

#include <cstdio>

#include "drafting/cowl/opening.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

using Kind = StepLine::Kind;

std::vector<StepLine> outline(const Polyline& line, Kind kind) {
  return {{line, true, kind}};
}

void add(std::vector<StepLine>& lines, const Polyline& points, Kind kind, bool closed = false) {
  lines.push_back({points, closed, kind});
}

/// What the record keeps, as the opening's model.
SlashedFront front_of(const CowlDraft& draft) {
  SlashedFront front;
  const CowlRecord& cowl = *draft.front.cowl;
  for (const Segment& slash : cowl.slash_lines) front.hinges.push_back(slash.to);
  front.neck_point = draft.base.points.at("neck-point");
  front.pivot = draft.swing_centre;
  return front;
}

std::string number_words(const char* format, double value) {
  char text[240];
  std::snprintf(text, sizeof text, format, value);
  return text;
}

}  // namespace

Step opening_step(const CowlDraft& draft, double share) {
  if (!(share >= 0.0 && share <= 1.0))
    throw Refusal("The opening runs from 0, closed, to 1, open. Set it in between.");
  const CowlRecord& cowl = *draft.front.cowl;
  Opening opening;
  for (const double angle : cowl.hinge_angles) opening.angles.push_back(share * angle);
  opening.swing = share * cowl.swing;
  const auto motions = motions_of(front_of(draft), opening);
  Step step{"Open the parts",
            "Cut each slash line to, but not through, its hinge on the seam line and swing the parts open "
            "until the neck "
            "point stands half the drape from the centre front.",
            {}};
  for (size_t k = 0; k < cowl.parts.size(); ++k) {
    add(step.lines, moved(motions[k], cowl.parts[k].before), Kind::new_line, true);
  }
  return step;
}

std::vector<Step> teaching_steps(const CowlDraft& draft) {
  const CowlRecord& cowl = *draft.front.cowl;
  const Piece& front = draft.front;
  std::vector<Step> steps;
  const auto base = outline(draft.base.seam_line, Kind::earlier);

  steps.push_back({"The base", "Start from a base front that fits, without allowances.",
                   outline(draft.base.seam_line, Kind::new_line)});

  Step lowered{"Lower the neckline",
               number_words("Lower the neckline %.0f mm at the centre front; the neck point stays.",
                            draft.neckline_drop),
               base};
  const Polyline& first = cowl.parts.front().before;
  const Foot neck_place = nearest(first, draft.base.points.at("neck-point"));
  Polyline neckline = between(first, neck_place.along, length(first));
  neckline.push_back(first.front());
  add(lowered.lines, neckline, Kind::new_line);
  steps.push_back(lowered);

  Step slashes{"Draw the slash lines",
               "Draw them from the centre front to the shoulder seam, the last to the armhole notch.", base};
  for (const Segment& slash : cowl.slash_lines) add(slashes.lines, {slash.from, slash.to}, Kind::new_line);
  steps.push_back(slashes);

  steps.push_back(opening_step(draft, 1.0));

  const std::vector<StepLine> parts = [&] {
    std::vector<StepLine> lines;
    for (const auto& part : cowl.parts) add(lines, part.after, Kind::earlier, true);
    return lines;
  }();
  Step centre{"New centre front and cowl edge",
              "Draw the centre front straight down and the cowl edge from the neck point square to it.",
              parts};
  const Polyline& hem = edge_of(front, "hem").points;
  add(centre.lines, {front.points.at("cowl-centre"), hem.front()}, Kind::new_line);
  add(centre.lines, edge_of(front, "cowl-edge").points, Kind::new_line);
  steps.push_back(centre);

  Step facing{"Add the facing",
              "Mirror the front's top in the cowl edge: the facing's ends are the shoulder's reflection, and "
              "finish inside the shoulder seam.",
              centre.lines};
  for (StepLine& line : facing.lines) line.kind = Kind::earlier;
  const Piece& with_facing = draft.facing ? *draft.facing : front;
  if (has_edge(with_facing, "facing-edge")) {
    add(facing.lines, edge_of(with_facing, "facing-shoulder").points, Kind::new_line);
    add(facing.lines, edge_of(with_facing, "facing-edge").points, Kind::new_line);
  }
  steps.push_back(facing);

  Step trued{"True the edges",
             "Fair the kinks that the hinges left without changing a seam's length, and draw the hem square "
             "to the centre front.",
             parts};
  for (const char* role : {"shoulder", "armhole", "side-seam", "hem"})
    add(trued.lines, edge_of(front, role).points, Kind::new_line);
  steps.push_back(trued);

  Step allowances{"Add the allowances",
                  "Add the allowances last, outside the trued seam lines; none on the fold.",
                  outline(front.seam_line, Kind::earlier)};
  add(allowances.lines, front.cut_line, Kind::cut, true);
  steps.push_back(allowances);
  return steps;
}

}  // namespace cowlcast::drafting
