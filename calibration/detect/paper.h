// Printed sheets in one photograph.
//
//   for (const SheetView& sheet : find_sheets(photograph.grey)) use(sheet.corners);
#pragma once

#include <Eigen/Core>
#include <opencv2/core.hpp>
#include <vector>

#include "calibration/sheet/sheet.h"

namespace cowlcast::calibration {

/// A chessboard corner seen in a photograph.
struct SeenCorner {
  int index = 0;                                    ///< in the layout's order
  Eigen::Vector2d pixel = Eigen::Vector2d::Zero();  ///< the centre of the first pixel is (0, 0)
  double sigma = 0.0;                               ///< standard deviation by the patch's own noise, pixels
};

/// One sheet seen in one photograph.
struct SheetView {
  Paper paper = Paper::a4;
  int number = 0;
  std::vector<SeenCorner> corners;  ///< at least kFewestCorners
};

constexpr int kFewestCorners = 8;

/// All sheets in an 8-bit grey picture, by number. Corners are good to about
/// 0.05 px in a sharp photograph; some may lie (glare, a shadow's edge, the edge
/// of a projected square): the fit must be ready to throw some out.
std::vector<SheetView> find_sheets(const cv::Mat& grey);

}  // namespace cowlcast::calibration
