// Accept or refuse a fit, with reasons for the person at the table.
#pragma once

#include "calibration/solve/calibrate.h"
#include "calibration/solve/scene.h"
#include "calibration/verdict/stated_error.h"

namespace cowlcast::calibration {

constexpr double kMostError = 1.0;  ///< mm: what a calibration must be right within, everywhere in the light

/// mm: the most that may be stated, 95 times in 100, for that: an error of two coordinates that stays below
/// this 95 times in 100 goes beyond `kMostError` twice in a thousand.
constexpr double kMostStated = 0.7;

/// Adds warnings and the summary to `report`, whose map is finished. Throws Refusal
/// naming cause and cure when the data does not support a map right within `kMostError`.
void judge(const Scene& scene, const ErrorEstimate& error, CalibrationReport& report);

}  // namespace cowlcast::calibration
