// From a fitted scene to the map that is kept.
#pragma once

#include "calibration/solve/scene.h"
#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {

/// The scene's projector in the mat frame of TableMap, with the lit area; the
/// error, the scale's source and the date are not filled in.
TableMap finish_map(const Scene& scene);

}  // namespace cowlcast::calibration
