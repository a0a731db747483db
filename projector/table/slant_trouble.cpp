#include "projector/table/slant_trouble.h"

#include <algorithm>
#include <cmath>

namespace cowlcast::projector {

std::optional<double> slant_trouble(const calibration::TableMap& map, const drafting::Polyline& places,
                                    double cloth) {
  constexpr double kMost = 0.5, kBySlant = 0.25;  // mm
  double most = 0.0, by_slant = 0.0;
  for (const Eigen::Vector2d& place : places) {
    const double bare = map.error_at(place), lying = map.error_at(place, cloth);
    most = std::max(most, lying);
    by_slant = std::max(by_slant, std::sqrt(std::max(0.0, lying * lying - bare * bare)));
  }
  return most > kMost && by_slant > kBySlant ? std::optional(most) : std::nullopt;
}

}  // namespace cowlcast::projector
