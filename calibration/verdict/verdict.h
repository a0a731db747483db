// Accept or refuse a fit, with reasons for the person at the table.
#pragma once

#include "calibration/solve/calibrate.h"
#include "calibration/solve/scene.h"
#include "calibration/verdict/stated_error.h"

namespace cowlcast::calibration {

constexpr double kMostError = 1.0;  ///< mm: what a calibration must be right within

/// Adds warnings and the summary to `report`, whose map is finished. Throws Refusal
/// naming cause and cure when the data does not support a map right within `kMostError`.
void judge(const Scene& scene, const ErrorEstimate& error, CalibrationReport& report);

}  // namespace cowlcast::calibration
