// Larger than the light: a piece that is shown part by part, and found again after the cloth has moved.
//
//   std::vector<LightStep> steps = light_steps(front, laying, lit);
//   // she chalks steps[0].chalk, moves the cloth, points at the marks:
//   Found found = found_laying(steps[0].chalk, pointed_at, laying);
//
// The fit is a turn and a shift only, never a stretch: the piece keeps its true
// size, and marks that do not agree with it are refused.
#pragma once

#include <vector>

#include "projector/frame/laying.h"

namespace cowlcast::projector {

/// One place of the cloth under the light.
struct LightStep {
  Laying laying;               ///< of the piece when this part is in the light
  std::vector<Point> chalk{};  ///< crosses to chalk before moving on to the next step, piece frame, mm
};

struct StepRules {
  double margin = 25.0;    ///< kept free along the light's edge, mm
  double overlap = 150.0;  ///< of one step with the next, mm: where the crosses stand
};

/// The steps that show all of an outline, moving the cloth along the light's longer
/// side (mat x) from the first laying's place. One step when all of it fits. `lit` is the light's
/// outline on the cloth, mat mm. Throws drafting::Refusal when the outline is too high for the light in this
/// turn, and says so.
std::vector<LightStep> light_steps(const Polyline& outline, const Laying& laying, const Polyline& lit,
                                   const StepRules& rules = {});

/// A laying fitted to marks.
struct Found {
  Laying laying;
  double residual = 0.0;  ///< the farthest mark's distance from its place, mm
};

/// The laying that brings points of the piece to where they were pointed out on the mat, by least
/// squares; `like` tells whether the piece lies face down, and its height. Throws drafting::Refusal for fewer
/// than two marks, marks closer together than 60 mm, or a residual above `tolerance` mm.
Found found_laying(const std::vector<Point>& piece, const std::vector<Point>& mat, const Laying& like,
                   double tolerance = 1.0);

}  // namespace cowlcast::projector
