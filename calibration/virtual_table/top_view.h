// The table from straight above, in true millimetres: what a person sees.
#pragma once

#include <cstdint>
#include <opencv2/core.hpp>

#include "calibration/virtual_table/room.h"

namespace cowlcast::calibration::virtual_table {

/// A rectangle of the mat, mm, and how finely to draw it.
struct TopView {
  double left = -700.0, bottom = -400.0, width = 1400.0, height = 800.0;
  double pixels_per_mm = 1.0;
};

/// 8 bit BGR picture of that rectangle, y up, while the projector shows `picture`
/// (empty: off). Pixel (0, 0) is centred half a pixel inside the top left corner.
/// Cloth and curled paper stand where straight rays meet them. No noise.
cv::Mat top_view(const Room& room, const TopView& view, const cv::Mat& picture);

}  // namespace cowlcast::calibration::virtual_table
