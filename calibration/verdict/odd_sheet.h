// The one sheet that keeps the others from fitting.
//
// While the lens is unknown, a sheet that moved between photographs or is printed
// otherwise bends the whole fit, and no sheet stands out. So each is left out in
// turn: without the guilty one the rest fits many times better.
#pragma once

#include <optional>

#include "calibration/solve/scene.h"
#include "calibration/verdict/findings.h"

namespace cowlcast::calibration {

/// Nothing when all sheets fit together, or when no single one is to blame. `scene` is fitted to paper alone.
std::optional<Finding> find_odd_sheet(const Scene& scene);

}  // namespace cowlcast::calibration
