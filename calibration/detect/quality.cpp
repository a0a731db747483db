#include "calibration/detect/quality.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <opencv2/imgproc.hpp>

namespace cowlcast::calibration {
namespace {

constexpr int kShrink = 4;
constexpr double kSteepest = 0.002;  // share of pixels that count as the steepest edges

using Counts = std::array<int64_t, 256>;

double exceeded_by(const Counts& counts, double share) {
  int64_t total = 0, above = 0;
  for (const int64_t n : counts) total += n;
  for (int level = 255; level > 0; --level) {
    above += counts[static_cast<size_t>(level)];
    if (static_cast<double>(above) > share * static_cast<double>(total)) return level;
  }
  return 0.0;
}

// Steepest steps over two pixels along (dx, dy).
double steepest(const cv::Mat& grey, int dx, int dy, int stride) {
  Counts counts{};
  for (int i = 1; i + 1 < grey.rows; i += stride)
    for (int j = 1; j + 1 < grey.cols; ++j) {
      const int step = grey.at<unsigned char>(i + dy, j + dx) - grey.at<unsigned char>(i - dy, j - dx);
      ++counts[static_cast<size_t>(std::min(255, std::abs(step)))];
    }
  return std::max(1.0, exceeded_by(counts, kSteepest));
}

}  // namespace

PictureQuality picture_quality(const cv::Mat& grey) {
  PictureQuality out;
  cv::Mat small;
  cv::resize(grey, small, {}, 1.0 / kShrink, 1.0 / kShrink, cv::INTER_AREA);
  Counts levels{};
  for (int i = 0; i < small.rows; ++i)
    for (int j = 0; j < small.cols; ++j) ++levels[small.at<unsigned char>(i, j)];
  out.brightest = exceeded_by(levels, 0.005);
  constexpr int kDirections[][2] = {{1, 0}, {0, 1}, {1, 1}, {1, -1}};
  for (const auto& d : kDirections)
    out.softness =
        std::max(out.softness, steepest(small, d[0], d[1], 1) / steepest(grey, d[0], d[1], kShrink));
  return out;
}

}  // namespace cowlcast::calibration
