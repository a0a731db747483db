// The projector alone, fitted to where the cameras say its light falls.
//
//   if (fit_projector(scene, noise)) fit_scene(scene, {FitPart::everything, noise});
//
// With electronic keystone, lens and place make up for each other along a long bent valley, in which the
// joint fit creeps. Here cameras and sheets stand still, so that thousands of short steps cost less than a
// few of the joint fit's: it finds the place from which the joint fit has only to polish.
#pragma once

#include "calibration/solve/fit.h"
#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

/// Improves the projector's lens, place and keystone in `scene`; nothing else changes. What was measured of
/// its lens's height has its say. False, and nothing changed, when the solver found no answer.
bool fit_projector(Scene& scene, const FitNoise& noise);

}  // namespace cowlcast::calibration
