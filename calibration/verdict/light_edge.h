// The rim of the projector's light as a check under plain light.
#pragma once

#include <opencv2/core.hpp>
#include <optional>

#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

/// How far, in mm at the worst, the rim of the light in a photograph lies from
/// where the scene's projector throws it; a shift and a turn are fitted to the
/// steps of brightness met across the rim. Nothing where too little of the rim shows, or where no two of its
/// sides agree that it moved.
std::optional<double> light_edge_shift(const Scene& scene, int photo, const cv::Mat& picture);

}  // namespace cowlcast::calibration
