// Marks of light at the border of the projected picture, by which a fixed camera notices that it moved.
//
//   const BorderMarks marks = border_marks(1920, 1080);
//   for (const Eigen::Vector2d& at : marks.centres) look_at(map.mat_from_projector(at));
//
// Each mark is two light squares that touch at a corner, on a dark ground of its
// own that nothing else is drawn on. They are shown as long as lines are shown.
#pragma once

#include <Eigen/Core>
#include <opencv2/core.hpp>
#include <vector>

namespace cowlcast::calibration {

struct BorderMarks {
  std::vector<Eigen::Vector2d> centres;  ///< where the squares of each touch, projector pixels
  std::vector<cv::Rect> grounds;         ///< kept dark, one a mark, whole pixels
  std::vector<cv::Rect> squares;         ///< light, two a mark
  int square = 0;                        ///< side, pixels
};

/// Twelve marks around a picture of that size. Throws Refusal below 480 × 320 or beyond 8192 on a side.
BorderMarks border_marks(int width, int height);

/// Draws them into an 8-bit picture, grey, BGR or BGR with a fourth channel, over whatever is there.
void draw_border_marks(cv::Mat& picture, int level = 255);

}  // namespace cowlcast::calibration
