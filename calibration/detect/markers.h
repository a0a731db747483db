// The one place that talks to OpenCV's marker detector, whose interface moved
// between OpenCV 4.6 (aruco, contrib) and 4.7 (objdetect).
#pragma once

#include <Eigen/Core>
#include <array>
#include <opencv2/core.hpp>
#include <vector>

namespace cowlcast::calibration {

/// Two families that share no code: AprilTag 36h11 on paper (587 codes, 8 cells
/// a side with the border), OpenCV's 5×5 set in light (1000 codes, 7 cells).
enum class MarkerFamily { paper, light };

/// Cells along a marker's side, the dark border included.
int marker_side(MarkerFamily family);
/// How many codes the family has.
int marker_codes(MarkerFamily family);

/// A marker's cells, `marker_side` rows and columns of 8-bit: 0 dark, 255 light.
cv::Mat marker_cells(MarkerFamily family, int code);

struct FoundMarker {
  int code = 0;
  std::array<Eigen::Vector2d, 4>
      corners;  ///< pixels, clockwise from the marker's upper left, good to a pixel
};

/// Markers in an 8-bit grey picture; `shortest` is the least side looked for, pixels.
std::vector<FoundMarker> find_markers(const cv::Mat& grey, MarkerFamily family, double shortest);

}  // namespace cowlcast::calibration
