#include "calibration/target/target.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>
#include <string>

#include "calibration/detect/markers.h"
#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

constexpr int kSquaresAcross = 32;
constexpr unsigned char kLight = 255;
// A quarter of full light through the usual projector gamma of 2.2: dark enough
// for a firm edge, light enough to read the sheets that lie under it.
constexpr unsigned char kDim = 136;

// Square (column, row) of marker `id`: the light squares in reading order.
Eigen::Vector2i marked_square(const TargetLayout& layout, int id) {
  const int in_pair = id % layout.columns;
  const int even = (layout.columns + 1) / 2;
  const int row = 2 * (id / layout.columns) + (in_pair >= even ? 1 : 0);
  const int column = in_pair >= even ? 2 * (in_pair - even) + 1 : 2 * in_pair;
  return {column, row};
}

}  // namespace

Eigen::Vector2d TargetLayout::corner(int index) const {
  const int column = index % (columns - 1) + 1, row = index / (columns - 1) + 1;
  return {left + column * square - 0.5, top + row * square - 0.5};
}

int TargetLayout::marker_count() const {
  return (columns * rows + 1) / 2;
}

std::array<Eigen::Vector2d, 4> TargetLayout::marker_corners(int id) const {
  const Eigen::Vector2i at = marked_square(*this, id);
  const double x = left + at.x() * square + inset - 0.5, y = top + at.y() * square + inset - 0.5;
  return {Eigen::Vector2d(x, y), Eigen::Vector2d(x + marker, y), Eigen::Vector2d(x + marker, y + marker),
          Eigen::Vector2d(x, y + marker)};
}

TargetLayout target_layout(int width, int height) {
  if (width < 480 || height < 320 || width > 8192 || height > 8192)
    throw Refusal("A projector picture of " + std::to_string(width) + "x" + std::to_string(height) +
                  " pixels cannot be used. Give the projector's own resolution, for example 1920x1080.");
  if (width > 2.2 * height || height > width)
    throw Refusal(
        "The projector picture must lie on its long side and be at most 2.2 times as wide as high. "
        "Give the resolution as WIDTHxHEIGHT.");
  TargetLayout layout;
  layout.square = static_cast<int>(std::lround(static_cast<double>(width) / kSquaresAcross));
  layout.columns = width / layout.square;
  layout.rows = height / layout.square;
  layout.left = (width - layout.columns * layout.square) / 2;
  layout.top = (height - layout.rows * layout.square) / 2;
  const int cells = marker_side(MarkerFamily::light);
  layout.marker = cells * static_cast<int>(std::lround(0.7 * layout.square / cells));
  layout.inset = (layout.square - layout.marker) / 2;
  return layout;
}

cv::Mat target_picture(int width, int height) {
  const TargetLayout layout = target_layout(width, height);
  cv::Mat picture(height, width, CV_8UC1);
  const auto square_of = [&](int pixel, int first) {
    return (pixel - first + 2 * layout.square) / layout.square;
  };
  for (int v = 0; v < height; ++v)
    for (int u = 0; u < width; ++u)
      picture.at<unsigned char>(v, u) =
          (square_of(u, layout.left) + square_of(v, layout.top)) % 2 == 0 ? kLight : kDim;
  for (int id = 0; id < layout.marker_count(); ++id) {
    const cv::Mat cells = marker_cells(MarkerFamily::light, id);
    cv::Mat marker;
    cv::resize(cells, marker, {layout.marker, layout.marker}, 0, 0, cv::INTER_NEAREST);
    cv::max(marker, kDim, marker);
    const Eigen::Vector2d corner = layout.marker_corners(id)[0];
    const int x = static_cast<int>(std::lround(corner.x() + 0.5)),
              y = static_cast<int>(std::lround(corner.y() + 0.5));
    marker.copyTo(picture(cv::Rect(x, y, layout.marker, layout.marker)));
  }
  return picture;
}

cv::Mat plain_picture(int width, int height) {
  target_layout(width, height);
  return cv::Mat(height, width, CV_8UC1, cv::Scalar(kLight));
}

}  // namespace cowlcast::calibration
