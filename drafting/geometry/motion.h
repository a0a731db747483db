// Motion: a rigid turn and shift of the plane, products read right to left.
#pragma once

#include <Eigen/Geometry>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

using Motion = Eigen::Isometry2d;

/// Turn by `angle` radians, counter-clockwise, about `centre`.
inline Motion turn_about(const Point& centre, double angle) {
  return Eigen::Translation2d(centre) * Eigen::Rotation2Dd(angle) * Eigen::Translation2d(-centre);
}

inline Polyline moved(const Motion& motion, const Polyline& line) {
  Polyline result;
  result.reserve(line.size());
  for (const Point& point : line) result.push_back(motion * point);
  return result;
}

}  // namespace cowlcast::drafting
