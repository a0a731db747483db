// Teaching steps: the draft as a teacher would show it on the table.
//
//   for (const Step& step : teaching_steps(draft)) show(step.lines, step.rule);
//   Step half_open = teaching_step(draft, opening_step_number, 0.5);   // one slider, closed 0 to open 1
//
// Base, lowered neckline, slash lines, opening, new centre front and cowl edge,
// facing, trueing, allowances. Lines are in the piece frame, true size, so a
// step can be drawn on screen or laid on the table like any piece.
#pragma once

#include <string>
#include <vector>

#include "drafting/cowl/cowl_front.h"

namespace cowlcast::drafting {

struct StepLine {
  enum class Kind { seam_line, slash_line, part, centre, cowl_edge, facing, cut_line };
  Polyline points;
  bool closed = false;
  Kind kind = Kind::seam_line;
  bool earlier = false;  ///< stands there from a step before, to be drawn faint
};

/// A named place that the step speaks of.
struct StepPoint {
  std::string name;  ///< "neck point", "hinge"
  Point at = Point::Zero();
};

struct Step {
  std::string title;
  std::string rule;  ///< what is done and why, one sentence
  std::vector<StepLine> lines;
  std::vector<StepPoint> points = {};
};

inline constexpr size_t step_count = 8;
inline constexpr size_t opening_step_number = 3;  ///< counted from 0

/// Step `number`, from 0. In the opening step the parts lie `share` of the way from
/// closed (0) to open (1), at 1 as in the draft; other steps do not depend on it.
/// Throws Refusal for a number or a share out of range.
Step teaching_step(const CowlDraft& draft, size_t number, double share);

/// All of them, the parts open.
std::vector<Step> teaching_steps(const CowlDraft& draft);

/// What the picture of any step, at any share, stays within.
Polyline reach_of_steps(const CowlDraft& draft);

/// One picture a step in one SVG, a group with id "step-1" ... each.
std::string steps_to_svg(const CowlDraft& draft);

/// The opening as an SVG that moves by itself: 4 s open, 1 s still, and again.
std::string opening_to_animated_svg(const CowlDraft& draft);

/// A handout: an A4 page a step, with its rule and its scale.
std::string steps_to_pdf(const CowlDraft& draft);

}  // namespace cowlcast::drafting
