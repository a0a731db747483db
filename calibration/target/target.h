// The picture the projector shows while the table is photographed.
//
//   cv::imwrite("target.png", target_picture(1920, 1080));
//
// A chessboard of light and dimmed squares; every light square carries a marker
// of its own, so any part of the picture tells where it lies. The dim level is
// grey, not black: sheets that lie under it stay readable, and dividing by a
// photograph under plain light takes print and cloth out of the picture.
#pragma once

#include <Eigen/Core>
#include <array>
#include <opencv2/core.hpp>
#include <vector>

namespace cowlcast::calibration {

/// Where the target's parts are, in projector pixels (centre of the first pixel is (0, 0)).
struct TargetLayout {
  int columns = 0, rows = 0;  ///< squares
  int square = 0;             ///< side of a square, pixels
  int left = 0, top = 0;      ///< picture's pixels left of and above the first square
  int marker = 0;             ///< side of a marker, pixels
  int inset = 0;              ///< from a square's edge to its marker, pixels

  /// Inner corners, row by row: (columns - 1) × (rows - 1).
  int corner_count() const { return (columns - 1) * (rows - 1); }
  Eigen::Vector2d corner(int index) const;

  /// Number of markers, and the four corners of one, clockwise from its upper left.
  int marker_count() const;
  std::array<Eigen::Vector2d, 4> marker_corners(int id) const;
};

/// The layout for a projector of `width` × `height` pixels.
/// Throws Refusal below 480 × 320 or beyond 8192 on a side, or when it is upright or more than 2.2 times as
/// wide as high.
TargetLayout target_layout(int width, int height);

/// The target, 8-bit grey, `height` rows × `width` columns. Throws as `target_layout`.
cv::Mat target_picture(int width, int height);

/// Plain light of the same size. Throws as `target_layout`.
cv::Mat plain_picture(int width, int height);

}  // namespace cowlcast::calibration
