#include "projector/guard/backdrop.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "calibration/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr int kFewestFrames = 3;     // of each light
constexpr int kFewestPixels = 2000;  // that see the light
constexpr double kDimmest =
    20.0;  // 8-bit: a cloth under full light that is darker than this cannot be watched
constexpr double kUsualPower = 2.2;
constexpr double kMostLight = 0.9;      // linear: of brighter pixels some noise is cut off
constexpr double kSmoothedCells = 2.5;  // of a strip: as wide are the means by which its cells are told
constexpr double kLeastLeft = 0.15;     // of the noise in these: light wavers too
constexpr double kLeastNoise = 0.7;     // levels: rounding alone makes 0.3

}  // namespace

cv::Mat linear_light(const cv::Mat& frame) {
  static const cv::Mat table = [] {
    cv::Mat made(1, 256, CV_32F);
    for (int v = 0; v < 256; ++v) {
      const double x = v / 255.0;
      made.at<float>(v) = static_cast<float>(x <= 0.04045 ? x / 12.92 : std::pow((x + 0.055) / 1.055, 2.4));
    }
    return made;
  }();
  cv::Mat linear;
  cv::LUT(frame, table, linear);
  return linear;
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

Backdrop::Backdrop(const TableSight& sight)
    : sight_(sight), watched_(cv::Mat::zeros(sight.camera.height, sight.camera.width, CV_8U)) {
  std::vector<cv::Point> light;
  for (const Point& place : sight.map.lit_area) {
    const Eigen::Vector3d seen =
        sight.camera.camera_from_mat * Eigen::Vector3d(place.x(), place.y(), sight.cloth);
    if (!(seen.z() > 0.0)) continue;
    const Eigen::Vector2d pixel = sight.camera.lens.pixel_from_ray(seen.head<2>() / seen.z());
    light.emplace_back(cvRound(pixel.x()), cvRound(pixel.y()));
  }
  if (light.size() > 2) cv::fillPoly(watched_, std::vector<std::vector<cv::Point>>{light}, cv::Scalar(255));
  if (cv::countNonZero(watched_) < kFewestPixels)
    throw calibration::Refusal(
        "The camera does not look at the light on the table. Point it there and locate it again.");
}

void Backdrop::learn(const cv::Mat& frame, Light light) {
  if (frame.type() != CV_8UC3 || frame.cols != sight_.camera.width || frame.rows != sight_.camera.height)
    throw calibration::Refusal(
        "The camera's pictures have another size than when it was located. Set it to " +
        std::to_string(sight_.camera.width) + "x" + std::to_string(sight_.camera.height) +
        ", or locate it again.");
  Sum& sum = sums_[static_cast<size_t>(light)];
  const cv::Mat linear = linear_light(frame);
  if (sum.frames == 0)
    sum.light = linear;
  else
    sum.light += linear;
  if (sum.frames > 0)  // noise by what two frames of the same scene differ
    for (int r = 0; r < frame.rows; r += 3)
      for (int c = 0; c < frame.cols; c += 3) {
        if (watched_.at<uchar>(r, c) == 0) continue;
        const cv::Vec3b a = frame.at<cv::Vec3b>(r, c), b = sum.last.at<cv::Vec3b>(r, c);
        for (int k = 0; k < 3; ++k) {
          const double step = a[k] - b[k];
          squares_[a[k] * kBins / 256] += 0.5 * std::min(step * step, 400.0);
          counts_[a[k] * kBins / 256] += 1.0;
        }
      }
  if (sum.frames > 0) compare_smoothed(frame, sum.last);
  sum.last = frame.clone();
  ++sum.frames;
  if (light == Light::full) cv::cvtColor(frame, still_, cv::COLOR_BGR2GRAY);
}

// How much of the noise is left in means over as many pixels as a strip's cell is told by. Less than by
// chance when a camera has smoothed its pixels already.
void Backdrop::compare_smoothed(const cv::Mat& frame, const cv::Mat& last) {
  Point middle(0.0, 0.0);
  for (const Point& p : sight_.map.lit_area) middle += p / static_cast<double>(sight_.map.lit_area.size());
  const auto from = sight_.camera.pixel_from_mat(middle, sight_.cloth),
             to = sight_.camera.pixel_from_mat(middle + Point(Strip::cell, 0.0), sight_.cloth);
  const double pixels = from && to ? (*to - *from).norm() : 1.0;
  const int side = std::max(cvRound(kSmoothedCells * pixels), 1);
  cv::Mat off, mean;
  cv::subtract(frame, last, off, cv::noArray(), CV_32F);
  cv::blur(off, mean, {side, side});
  const cv::Scalar whole = cv::mean(off.mul(off), watched_), left = cv::mean(mean.mul(mean), watched_);
  smoothed_[0] += whole[0] + whole[1] + whole[2];
  smoothed_[1] += left[0] + left[1] + left[2];
}

float Backdrop::smoothed_noise(float light) const {
  const double left = smoothed_[0] > 0.0 ? std::sqrt(smoothed_[1] / smoothed_[0]) : 1.0;
  return static_cast<float>(std::clamp(left, kLeastLeft, 1.0)) * linear_noise(light);
}

std::optional<std::string> Backdrop::not_ready() const {
  for (const Light light : {Light::none, Light::full})
    if (sums_[static_cast<size_t>(light)].frames < kFewestFrames)
      return "The bare cloth has not been looked at yet. Clear the cloth and wait.";
  const cv::Scalar mean = cv::mean(sums_[1].last, watched_);
  if (std::max({mean[0], mean[1], mean[2]}) < kDimmest)
    return "The camera sees the cloth too dark to watch it. Give the room more light, or the camera a longer "
           "exposure.";
  return std::nullopt;
}

// 255 where a channel of the full light is no more than the camera can tell.
cv::Mat Backdrop::told() const {
  const Sum& full = sums_[static_cast<size_t>(Light::full)];
  std::vector<cv::Mat> channels;
  cv::split(full.light, channels);
  return cv::max(cv::max(channels[0], channels[1]), channels[2]) < kMostLight * full.frames;
}

Look Backdrop::look(const cv::Rect& box) const {
  Look look;
  look.room = sums_[0].light(box) / sums_[0].frames;
  look.projector = cv::max(sums_[1].light(box) / sums_[1].frames - look.room, 0.0);
  look.told = told()(box);
  const Sum& faint = sums_[static_cast<size_t>(Light::faint)];
  if (faint.frames < kFewestFrames) return look;
  // What was too much for the camera is told by the grey.
  const cv::Mat grey = faint.light(box) / faint.frames;
  const cv::Mat more = cv::max((grey - look.room) / std::pow(kFaint / 255.0, power()), look.projector);
  more.copyTo(look.projector, ~look.told);
  look.told.setTo(255);
  return look;
}

double Backdrop::power() const {
  const Sum& faint = sums_[static_cast<size_t>(Light::faint)];
  if (faint.frames == 0 || not_ready()) return kUsualPower;
  const cv::Mat where = watched_ & told();
  if (cv::countNonZero(where) < kFewestPixels) return kUsualPower;
  const cv::Scalar dark = cv::mean(sums_[0].light, where) / sums_[0].frames,
                   full = cv::mean(sums_[1].light, where) / sums_[1].frames,
                   some = cv::mean(faint.light, where) / faint.frames;
  double white = 0.0, grey = 0.0;
  for (int c = 0; c < 3; ++c) {
    white += full[c] - dark[c];
    grey += some[c] - dark[c];
  }
  if (!(white > 0.0) || !(grey > 0.0)) return kUsualPower;
  return std::clamp(std::log(grey / white) / std::log(kFaint / 255.0), 1.0, 4.0);
}

float Backdrop::noise(int level) const {
  const int bin = std::clamp(level, 0, 255) * kBins / 256;
  for (int reach = 0; reach < kBins; ++reach)  // the nearest bin that holds enough
    for (const int b : {bin - reach, bin + reach})
      if (b >= 0 && b < kBins && counts_[b] >= 300.0)
        return static_cast<float>(std::max(std::sqrt(squares_[b] / counts_[b]), kLeastNoise));
  return 3.0f;
}

float Backdrop::linear_noise(float light) const {
  const int level = std::clamp(static_cast<int>(level_of(light) + 0.5f), 0, 255);
  const int above = std::min(level + 4, 255), below = std::max(level - 4, 0);
  static const cv::Mat linear = [] {
    cv::Mat levels(1, 256, CV_8U);
    for (int v = 0; v < 256; ++v) levels.at<uchar>(v) = static_cast<uchar>(v);
    return linear_light(levels);
  }();
  return noise(level) * (linear.at<float>(above) - linear.at<float>(below)) /
         static_cast<float>(above - below);
}

}  // namespace cowlcast::projector
