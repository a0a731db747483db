// Teaching steps: the draft as a teacher would show it on the table.
//
//   for (const Step& step : teaching_steps(draft)) show(step.lines, step.rule);
//   Step half_open = opening_step(draft, 0.5);     // one slider, closed 0 to open 1
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
  enum class Kind { plain, earlier, new_line, cut };  ///< earlier: drawn faint; new_line: what the step adds
  Polyline points;
  bool closed = false;
  Kind kind = Kind::plain;
};

struct Step {
  std::string title;
  std::string rule;  ///< what is done and why, one sentence
  std::vector<StepLine> lines;
};

std::vector<Step> teaching_steps(const CowlDraft& draft);

/// The parts `share` of the way from closed (0) to open (1). At 1 they lie as in
/// the draft. Throws Refusal for a share outside 0 to 1.
Step opening_step(const CowlDraft& draft, double share);

/// One picture a step in one SVG, a group with id "step-1" ... each.
std::string steps_to_svg(const CowlDraft& draft);

/// The opening as an SVG that moves by itself: 4 s open, 1 s still, and again.
std::string opening_to_animated_svg(const CowlDraft& draft);

/// A handout: an A4 page a step, with its rule and its scale.
std::string steps_to_pdf(const CowlDraft& draft);

}  // namespace cowlcast::drafting
