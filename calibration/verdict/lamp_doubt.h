// How well photographs of a flat table know the height of the projector's lens.
#pragma once

#include "calibration/solve/fit.h"
#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

/// Standard deviation of one over the lens's height, relative. Lens, place and keystone make up for each
/// other along a bent valley, so the fit's covariance, straight as it is, says too little: the lens is set to
/// other heights, from half as high to higher by a third, and what the fit then loses (its profile
/// likelihood) tells how likely they are.
double lamp_doubt(const Scene& scene, const FitNoise& noise);

}  // namespace cowlcast::calibration
