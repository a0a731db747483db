// Small turns and slides of what stands about the table, and what they shift. Internal to the watch.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>

namespace cowlcast::calibration {

/// A turn vector, radians, then a slide, mm.
using SixNumbers = Eigen::Matrix<double, 6, 1>;

/// The placement, turned and slid afterwards.
inline Eigen::Isometry3d nudged(const Eigen::Isometry3d& placement, const SixNumbers& by) {
  Eigen::Isometry3d nudge = Eigen::Isometry3d::Identity();
  const double angle = by.head<3>().norm();
  if (angle > 1e-15) nudge.linear() = Eigen::AngleAxisd(angle, by.head<3>() / angle).toRotationMatrix();
  nudge.translation() = by.tail<3>();
  return nudge * placement;
}

/// Slopes of `value(SixNumbers)`, a vector, against the six numbers about `at`.
template <typename Value>
auto slopes_of(const Value& value, const SixNumbers& at = SixNumbers::Zero()) {
  constexpr int kRows = decltype(value(at))::RowsAtCompileTime;
  Eigen::Matrix<double, kRows, 6> out;
  for (int k = 0; k < 6; ++k) {
    const double step = k < 3 ? 1e-5 : 1e-2;
    const SixNumbers by = step * SixNumbers::Unit(k);
    const auto slope = ((value(at + by) - value(at - by)) / (2.0 * step)).eval();
    if (k == 0) out.resize(slope.size(), 6);
    out.col(k) = slope;
  }
  return out;
}

}  // namespace cowlcast::calibration
