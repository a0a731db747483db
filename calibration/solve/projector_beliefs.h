// What is known of a projector beyond what its light shows: the ways of any projector, and a tape up to this
// one.
#pragma once

#include <ceres/ceres.h>

#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

/// Adds what is believed of the lens, of the keystone where it is free (else it stays as it is), and the
/// tape's reading to a problem that already knows the projector's numbers in `scene`.
void add_projector_beliefs(ceres::Problem& problem, Scene& scene);

}  // namespace cowlcast::calibration
