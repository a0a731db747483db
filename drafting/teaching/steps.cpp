#include "drafting/teaching/steps.h"

#include <cstdio>

#include "drafting/cowl/opening.h"
#include "drafting/geometry/polyline.h"
#include "drafting/piece/marks.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

using Kind = StepLine::Kind;

std::string with_number(const char* format, double value) {
  char text[240];
  std::snprintf(text, sizeof text, format, value);
  return text;
}

/// The draft's steps; each function gives one.
class Lesson {
 public:
  explicit Lesson(const CowlDraft& draft) : draft_(draft), cowl_(*draft.front.cowl) {}

  Step base() const {
    return {"The base",
            "Start from a base front that fits, without allowances.",
            {{draft_.base.seam_line, true, Kind::seam_line, false}}};
  }

  Step lowered() const {
    Step step{"Lower the neckline",
              with_number("Lower the neckline %.0f mm at the centre front; the neck point stays.",
                          draft_.neckline_drop),
              {old_base()}};
    const Polyline& first = cowl_.parts.front().before;
    Polyline neckline =
        between(first, nearest(first, draft_.base.points.at("neck-point")).along, length(first));
    neckline.push_back(first.front());
    step.lines.push_back({neckline, false, Kind::seam_line, false});
    step.points.push_back({"neck point", draft_.base.points.at("neck-point")});
    return step;
  }

  Step slashes() const {
    const bool curved = !cowl_.slash_paths.empty() && cowl_.slash_paths.front().size() > 2;
    Step step{
        "Draw the slash lines",
        curved ? "Draw them square to the centre front, curving to meet the shoulder seam square, and the "
                 "last to the armhole notch."
               : "Draw them from the centre front to the shoulder seam, and the last to the armhole notch.",
        {old_base()}};
    for (size_t i = 0; i < cowl_.slash_lines.size(); ++i) {
      const Segment& line = cowl_.slash_lines[i];
      step.lines.push_back(
          {i < cowl_.slash_paths.size() ? cowl_.slash_paths[i] : Polyline{line.from, line.to}, false,
           Kind::slash_line, false});
      step.points.push_back({"hinge", line.to});
    }
    return step;
  }

  Step opening(double share) const {
    Step step{"Open the parts",
              "Cut each slash line to, but not through, its hinge on the seam line, and swing the parts open "
              "until the neck point stands half the drape from the centre front.",
              {}};
    SlashedFront front;  // what the record keeps, as the opening's model
    for (const Segment& slash : cowl_.slash_lines) front.hinges.push_back(slash.to);
    front.neck_point = draft_.base.points.at("neck-point");
    front.pivot = draft_.swing_centre;
    Opening opening;
    for (const double angle : cowl_.hinge_angles) opening.angles.push_back(share * angle);
    opening.swing = share * cowl_.swing;
    const std::vector<Motion> motions = motions_of(front, opening);
    for (size_t k = 0; k < cowl_.parts.size(); ++k)
      step.lines.push_back({moved(motions[k], cowl_.parts[k].before), true, Kind::part, false});
    for (size_t i = 0; i < front.hinges.size(); ++i)
      step.points.push_back({"hinge", motions[i] * front.hinges[i]});
    step.points.push_back({"neck point", motions[0] * front.neck_point});
    return step;
  }

  Step centre() const {
    Step step{"New centre front and cowl edge",
              "Draw the centre front straight down, and the cowl edge from the neck point square to it.",
              opened()};
    const Polyline& hem = edge_of(draft_.front, "hem").points;
    const Point& top = draft_.front.points.at("cowl-centre");
    step.lines.push_back({{top, hem.front()}, false, Kind::centre, false});
    step.lines.push_back({edge_of(draft_.front, "cowl-edge").points, false, Kind::cowl_edge, false});
    step.points.push_back({"neck point", draft_.front.points.at("neck-point")});
    return step;
  }

  Step facing() const {
    Step step{"Add the facing",
              "Mirror the front's top in the cowl edge: the facing's ends are the shoulder's reflection, and "
              "finish inside the shoulder seam.",
              centre().lines};
    for (StepLine& line : step.lines) line.earlier = true;
    const Piece& piece = draft_.facing ? *draft_.facing : draft_.front;
    if (!has_edge(piece, "facing-edge")) return step;
    for (const char* role : {"facing-shoulder", "facing-edge"})
      step.lines.push_back({edge_of(piece, role).points, false, Kind::facing, false});
    return step;
  }

  Step trued() const {
    Step step{"True the edges",
              "Fair the kinks that the hinges left without changing a seam's length, and draw the hem square "
              "to the centre front.",
              opened()};
    for (const char* role : {"shoulder", "armhole", "side-seam", "hem"})
      step.lines.push_back({edge_of(draft_.front, role).points, false, Kind::seam_line, false});
    return step;
  }

  Step allowances() const {
    Step step{"Add the allowances",
              "Add the allowances last, outside the trued seam lines; none on the fold.",
              {{draft_.front.seam_line, true, Kind::seam_line, true}}};
    if (const auto fold = whole_fold(draft_.front))
      step.lines.push_back({{fold->from, fold->to}, false, Kind::centre, false});
    for (const Polyline& run : lines_to_cut(draft_.front))
      step.lines.push_back({run, false, Kind::cut_line, false});
    return step;
  }

 private:
  StepLine old_base() const { return {draft_.base.seam_line, true, Kind::seam_line, true}; }
  std::vector<StepLine> opened() const {
    std::vector<StepLine> lines;
    for (const auto& part : cowl_.parts) lines.push_back({part.after, true, Kind::part, true});
    return lines;
  }

  const CowlDraft& draft_;
  const CowlRecord& cowl_;
};

}  // namespace

Step teaching_step(const CowlDraft& draft, size_t number, double share) {
  if (!(share >= 0.0 && share <= 1.0))
    throw Refusal("The opening runs from 0, closed, to 1, open. Set it in between.");
  const Lesson lesson(draft);
  switch (number) {
    case 0:
      return lesson.base();
    case 1:
      return lesson.lowered();
    case 2:
      return lesson.slashes();
    case opening_step_number:
      return lesson.opening(share);
    case 4:
      return lesson.centre();
    case 5:
      return lesson.facing();
    case 6:
      return lesson.trued();
    case 7:
      return lesson.allowances();
    default:
      throw Refusal("The draft has " + std::to_string(step_count) + " steps. Choose one of them.");
  }
}

std::vector<Step> teaching_steps(const CowlDraft& draft) {
  std::vector<Step> steps;
  for (size_t number = 0; number < step_count; ++number) steps.push_back(teaching_step(draft, number, 1.0));
  return steps;
}

Polyline reach_of_steps(const CowlDraft& draft) {
  Polyline points;
  const auto add = [&](const Step& step) {
    for (const StepLine& line : step.lines)
      points.insert(points.end(), line.points.begin(), line.points.end());
  };
  for (const Step& step : teaching_steps(draft)) add(step);
  for (int i = 0; i < 8; ++i) add(teaching_step(draft, opening_step_number, i / 8.0));
  return convex_hull(std::move(points));
}

}  // namespace cowlcast::drafting
