#include "projector/guard/backdrop.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "calibration/refusal.h"
#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

constexpr int kFewestFrames = 3;  // of each light
constexpr double kDimmest =
    20.0;  // 8-bit: a cloth under full light that is darker than this cannot be watched
constexpr double kLeastNoise = 0.7;  // levels: rounding alone makes 0.3

// The light's outline and the camera's, whichever is smaller, as a box.
drafting::Box watched_box(const TableSight& sight) {
  Polyline seen;
  const int w = sight.camera.width, h = sight.camera.height;
  for (int k = 0; k < 4; ++k) {
    const Eigen::Vector2d pixel(k == 1 || k == 2 ? w - 1.0 : 0.0, k >= 2 ? h - 1.0 : 0.0);
    seen.push_back(sight.camera.mat_from_pixel(pixel, sight.cloth));
  }
  const drafting::Box lit = drafting::box_of(sight.map.lit_area), view = drafting::box_of(seen);
  return {lit.low.cwiseMax(view.low), lit.high.cwiseMin(view.high)};
}

}  // namespace

const cv::Mat& linear_table() {
  static const cv::Mat table = [] {
    cv::Mat made(1, 256, CV_32F);
    for (int v = 0; v < 256; ++v) {
      const double x = v / 255.0;
      made.at<float>(v) = static_cast<float>(x <= 0.04045 ? x / 12.92 : std::pow((x + 0.055) / 1.055, 2.4));
    }
    return made;
  }();
  return table;
}

float level_of(float linear) {
  constexpr int kSteps = 8192;
  static const std::array<float, kSteps + 1> table = [] {
    std::array<float, kSteps + 1> made{};
    for (int i = 0; i <= kSteps; ++i) {
      const double x = static_cast<double>(i) / kSteps;
      made[static_cast<size_t>(i)] =
          static_cast<float>(255.0 * (x <= 0.0031308 ? 12.92 * x : 1.055 * std::pow(x, 1.0 / 2.4) - 0.055));
    }
    return made;
  }();
  return table[static_cast<size_t>(std::clamp(linear, 0.0f, 1.0f) * kSteps + 0.5f)];
}

Backdrop::Backdrop(const TableSight& sight) : sight_(sight) {
  const drafting::Box box = watched_box(sight);
  if (!(box.width() > 50.0) || !(box.height() > 50.0))
    throw calibration::Refusal(
        "The camera does not look at the light on the table. Point it there and locate it again.");
  low_ = box.low;
  view_ = seen_by(area_strip(box.low, box.high, kCell), sight_);
}

void Backdrop::learn(const cv::Mat& frame, Light light) {
  if (frame.type() != CV_8UC3 || frame.cols != sight_.camera.width || frame.rows != sight_.camera.height)
    throw calibration::Refusal(
        "The camera's pictures have another size than when it was located. Set it to " +
        std::to_string(sight_.camera.width) + "x" + std::to_string(sight_.camera.height) +
        ", or locate it again.");
  Sum& sum = sums_[light == Light::none ? 0 : 1];
  const cv::Mat now = camera_strip(view_, frame);
  cv::Mat linear;
  cv::LUT(now, linear_table(), linear);
  if (sum.frames == 0)
    sum.light = linear;
  else
    sum.light += linear;
  if (sum.frames > 0)  // noise by what two frames of the same scene differ
    for (int r = 0; r < now.rows; r += 3)
      for (int c = 0; c < now.cols; c += 3) {
        if (view_.seen.at<uchar>(r, c) == 0) continue;
        const cv::Vec3b a = now.at<cv::Vec3b>(r, c), b = sum.last.at<cv::Vec3b>(r, c);
        for (int k = 0; k < 3; ++k) {
          const double step = a[k] - b[k];
          squares_[a[k] * kBins / 256] += 0.5 * std::min(step * step, 400.0);
          counts_[a[k] * kBins / 256] += 1.0;
        }
      }
  sum.last = now;
  ++sum.frames;
  if (light == Light::full) cv::cvtColor(frame, still_, cv::COLOR_BGR2GRAY);
}

std::optional<std::string> Backdrop::not_ready() const {
  for (const Sum& sum : sums_)
    if (sum.frames < kFewestFrames)
      return "The bare cloth has not been looked at yet. Clear the cloth and wait.";
  const cv::Scalar mean = cv::mean(sums_[1].last, view_.seen);
  if (std::max({mean[0], mean[1], mean[2]}) < kDimmest)
    return "The camera sees the cloth too dark to watch it. Give the room more light, or the camera a longer "
           "exposure.";
  return std::nullopt;
}

Look Backdrop::look_of(const Strip& strip) const {
  const cv::Mat room = sums_[0].light / sums_[0].frames;
  const cv::Mat extra = cv::max(sums_[1].light / sums_[1].frames - room, 0.0);
  cv::Mat at(strip.rows, strip.columns, CV_32FC2);
  for (int r = 0; r < strip.rows; ++r)
    for (int c = 0; c < strip.columns; ++c) {
      const Point cell = (strip.place(c, r) - low_) / kCell;
      at.at<cv::Vec2f>(r, c) = {static_cast<float>(cell.x()), static_cast<float>(cell.y())};
    }
  Look look;
  cv::remap(room, look.room, at, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  cv::remap(extra, look.projector, at, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  cv::remap(view_.seen, look.known, at, cv::noArray(), cv::INTER_NEAREST, cv::BORDER_CONSTANT,
            cv::Scalar::all(0));
  return look;
}

float Backdrop::noise(int level) const {
  const int bin = std::clamp(level, 0, 255) * kBins / 256;
  for (int reach = 0; reach < kBins; ++reach)  // the nearest bin that holds enough
    for (const int b : {bin - reach, bin + reach})
      if (b >= 0 && b < kBins && counts_[b] >= 300.0)
        return static_cast<float>(std::max(std::sqrt(squares_[b] / counts_[b]), kLeastNoise));
  return 3.0f;
}

}  // namespace cowlcast::projector
