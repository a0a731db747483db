// Larger than the light: the places of the cloth that show a piece part by part, and the crosses to chalk.
//
//   std::vector<LightStep> steps = light_steps(front.cut_line, laying, lit);
//   // steps[0].chalk is chalked, the cloth moved, and found again: projector/cutting/registration.h
//
// The crosses of a step stand where the next shows them too, on the piece itself, since cloth is sure to be
// there and stays when the rest is cut away. They stand as far apart as there is room, up to four and not on
// a line, and no two of them as far apart as any other two, so that their marks cannot be mistaken for one
// another. There are as few steps as leave the crosses far enough apart to find the piece again by.
#pragma once

#include <vector>

#include "drafting/geometry/polyline.h"
#include "projector/cutting/registration.h"

namespace cowlcast::projector {

/// One place of the cloth under the light.
struct LightStep {
  Laying laying;               ///< of the piece when this part is in the light
  std::vector<Point> chalk{};  ///< crosses to chalk before moving on to the next step, piece frame, mm
  std::vector<Point> shown{};  ///< the cut line as far as it is in the light, points 10 mm apart, piece frame
};

struct StepRules {
  double margin = 25.0;    ///< kept free along the light's edge, mm
  double overlap = 150.0;  ///< of one step with the next, mm, at least
  double inside = 30.0;  ///< of a cross from the cut line, mm, where there is room: it has arms of 15 mm and
                         ///< should not lie on the seam line
  double from_edge = 25.0;  ///< of a cross from the end of what both steps show, mm: cloth is laid by eye
  FindRules find = {};
};

/// The steps that show all of an outline, moving the cloth along the light's longer side (mat x) from the
/// first laying's place. One step when all of it fits. `lit` is the light's outline on the cloth, mat mm.
/// With all crosses met as `rules.find` presumes, no cut line of a step is off by more than
/// `rules.find.at_cut_line`, and by no more than two thirds of it where further steps help, so that chance
/// seldom refuses a finding.
///
/// Throws drafting::Refusal when the outline is too high for the light in this turn, or too narrow where
/// steps meet to be found again by, and says so.
std::vector<LightStep> light_steps(const Polyline& outline, const Laying& laying, const Polyline& lit,
                                   const StepRules& rules = {});

/// Up to four places within `strip` (mat mm), `inside` mm and more within an outline laid there, as
/// `light_steps` needs them, from left to right; fewer than two when there is no room for two 60 mm apart.
std::vector<Point> cross_places(const Polyline& outline, const drafting::Box& strip, const StepRules& rules);

}  // namespace cowlcast::projector
