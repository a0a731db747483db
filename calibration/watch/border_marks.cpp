#include "calibration/watch/border_marks.h"

#include <algorithm>
#include <opencv2/imgproc.hpp>

#include "calibration/refusal.h"

namespace cowlcast::calibration {

BorderMarks border_marks(int width, int height) {
  if (width < 480 || height < 320 || std::max(width, height) > 8192)
    throw Refusal("A projector picture of " + std::to_string(width) + " x " + std::to_string(height) +
                  " pixels is not one that can be watched.");
  BorderMarks out;
  out.square = std::max(8, height / 56);
  const int rim = out.square / 2;           // dark, around the squares
  const int reach = out.square + rim;       // from a mark's middle to the end of its ground
  const int edge = reach + out.square / 4;  // the picture's outermost pixels may miss the mat
  const auto along = [&](int steps, int step, int length) {
    return edge + static_cast<int>(static_cast<int64_t>(length - 2 * edge) * step / steps);
  };
  std::vector<cv::Point> corners;  // first pixel right of and below the point where the squares touch
  for (int i = 0; i <= 4; ++i) {
    corners.emplace_back(along(4, i, width), edge);
    corners.emplace_back(along(4, i, width), height - edge);
  }
  for (const int x : {edge, width - edge}) corners.emplace_back(x, along(2, 1, height));
  for (const cv::Point& at : corners) {
    out.centres.emplace_back(at.x - 0.5, at.y - 0.5);
    out.grounds.emplace_back(at.x - reach, at.y - reach, 2 * reach, 2 * reach);
    out.squares.emplace_back(at.x - out.square, at.y - out.square, out.square, out.square);
    out.squares.emplace_back(at.x, at.y, out.square, out.square);
  }
  return out;
}

void draw_border_marks(cv::Mat& picture, int level) {
  const BorderMarks marks = border_marks(picture.cols, picture.rows);
  const auto fill = [&](const cv::Rect& part, int to) {
    cv::rectangle(picture, part, cv::Scalar(to, to, to, 255), cv::FILLED);
  };
  for (const cv::Rect& ground : marks.grounds) fill(ground, 0);
  for (const cv::Rect& square : marks.squares) fill(square, level);
}

}  // namespace cowlcast::calibration
