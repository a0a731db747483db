// Renderer: the light that leaves the table towards each pixel of a view.
//
// The one engine behind photographs and the view from above. A view is any map
// from pixels to rays, smooth enough that eight pixels of it are straight to a
// thousandth of a pixel. Internal to the simulated room.
#pragma once

#include <Eigen/Core>
#include <functional>
#include <opencv2/core.hpp>
#include <optional>

#include "calibration/virtual_table/room.h"

namespace cowlcast::calibration::virtual_table {

/// A line of sight, room frame, mm; the direction need not be of unit length.
struct Sight {
  Eigen::Vector3d from{0.0, 0.0, 0.0};
  Eigen::Vector3d way{0.0, 0.0, -1.0};
};

struct View {
  int width = 0, height = 0;
  /// Called from several threads. Nothing: that pixel stays black.
  std::function<std::optional<Sight>(const Eigen::Vector2d& pixel)> sight;
  double blur = 0.0;           ///< standard deviation, pixels; the pixel's own square comes on top
  double flicker_phase = 0.0;  ///< of the projector's bands, radians
};

/// Lux times albedo towards each pixel: float, blue green red.
cv::Mat render(const Room& room, const View& view, const cv::Mat& picture);

}  // namespace cowlcast::calibration::virtual_table
