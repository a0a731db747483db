// Sampling small patches out of pictures.
#pragma once

#include <Eigen/Core>
#include <cmath>
#include <limits>
#include <opencv2/core.hpp>

namespace cowlcast::calibration {

/// Brightness of an 8-bit grey picture at a pixel place, between pixels by
/// straight interpolation; not a number outside the picture.
inline double sample(const cv::Mat& grey, const Eigen::Vector2d& at) {
  const double x = std::floor(at.x()), y = std::floor(at.y());
  if (!(x >= 0.0 && y >= 0.0 && x + 1.0 < grey.cols && y + 1.0 < grey.rows))
    return std::numeric_limits<double>::quiet_NaN();
  const int i = static_cast<int>(y), j = static_cast<int>(x);
  const double fx = at.x() - x, fy = at.y() - y;
  const unsigned char* upper = grey.ptr<unsigned char>(i) + j;
  const unsigned char* lower = grey.ptr<unsigned char>(i + 1) + j;
  return (1 - fy) * ((1 - fx) * upper[0] + fx * upper[1]) + fy * ((1 - fx) * lower[0] + fx * lower[1]);
}

/// A patch of (2 half + 1)² samples: `value(x, y)` for x, y in steps of `pitch` about 0, y down the rows.
template <typename Value>
Eigen::MatrixXd sample_patch(int half, double pitch, const Value& value) {
  Eigen::MatrixXd patch(2 * half + 1, 2 * half + 1);
  for (int i = -half; i <= half; ++i)
    for (int j = -half; j <= half; ++j) patch(i + half, j + half) = value(pitch * j, pitch * i);
  return patch;
}

}  // namespace cowlcast::calibration
