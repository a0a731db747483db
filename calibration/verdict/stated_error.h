// The error a finished fit can answer for, at every point of the lit mat.
#pragma once

#include "calibration/solve/fit.h"
#include "calibration/solve/scene.h"
#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {

/// What the error estimate found on its way.
struct ErrorEstimate {
  ErrorGrid grid;            ///< in the map's mat frame
  double shape95 = 0.0;      ///< largest 95 % radius of the map's shape alone, its scale taken as right, mm
  double worst95 = 0.0;      ///< largest 95 % radius with the scale's uncertainty, mm
  double scale_sigma = 0.0;  ///< standard deviation of the scale, relative
  double lamp_sigma = 0.0;   ///< see TableMap
};

/// The noise widened by how much the misses about the fit keep company: where a lens bends in a way of its
/// own or paper is not flat, many corners miss together, and tell less than their number.
FitNoise with_company(const Scene& scene, FitNoise noise);

/// Carries the fit's covariance to the lit mat. Errors are those left after the
/// map is slid and turned as a whole, which no cut piece can notice. `map` is the
/// finished map without its error; `scene` the fit it came from, `noise` what that fit was made with, its
/// company counted.
ErrorEstimate estimate_error(Scene& scene, const FitNoise& noise, const TableMap& map);

}  // namespace cowlcast::calibration
