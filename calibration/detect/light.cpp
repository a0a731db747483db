#include "calibration/detect/light.h"

#include <Eigen/LU>
#include <algorithm>
#include <array>
#include <cmath>
#include <opencv2/imgproc.hpp>
#include <vector>

#include "calibration/detect/patch.h"
#include "calibration/detect/saddle.h"

namespace cowlcast::calibration {
namespace {

constexpr int kStride = 16;       // pixels between exact places when a photograph is laid down
constexpr double kFloor = 0.002;  // of full light: keeps the quotient of black print finite

// Linear light of an 8-bit value by the curve of IEC 61966-2-1 (sRGB).
const std::array<float, 256>& linear_light() {
  static const std::array<float, 256> table = [] {
    std::array<float, 256> t{};
    for (size_t i = 0; i < t.size(); ++i) {
      const double v = static_cast<double>(i) / 255.0;
      t[i] = static_cast<float>(v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4));
    }
    return t;
  }();
  return table;
}

double linear_sample(const cv::Mat& grey, const Eigen::Vector2d& at) {
  const double v = sample(grey, at);
  if (!std::isfinite(v)) return v;
  const auto& table = linear_light();
  const int low = std::min(254, static_cast<int>(v));
  const double part = v - low;
  return (1.0 - part) * table[static_cast<size_t>(low)] + part * table[static_cast<size_t>(low) + 1];
}

float percentile(const cv::Mat& values, double part) {
  std::vector<float> seen;
  for (int i = 0; i < values.rows; i += 3)
    for (int j = 0; j < values.cols; j += 3)
      if (const float v = values.at<float>(i, j); v >= 0.0F) seen.push_back(v);
  if (seen.empty()) return 1.0F;
  const auto at = seen.begin() + static_cast<std::ptrdiff_t>(part * static_cast<double>(seen.size() - 1));
  std::nth_element(seen.begin(), at, seen.end());
  return std::max(*at, 1e-6F);
}

// 210 stands for the value that 95 in 100 stay below; `root`: as its square root, near to the eye's scale.
cv::Mat stretched(const cv::Mat& values, bool root) {
  cv::Mat out = cv::max(values, 0.0F) / percentile(values, 0.95);
  if (root) cv::sqrt(out, out);
  out.convertTo(out, CV_8UC1, 210.0);
  return out;
}

}  // namespace

cv::Mat lay_on_mat(const cv::Mat& grey, const MatRegion& region, const PhotoFromMat& photo_from_mat) {
  const int coarse_columns = region.columns / kStride + 2, coarse_rows = region.rows / kStride + 2;
  cv::Mat coarse(coarse_rows, coarse_columns, CV_32FC2);
  for (int i = 0; i < coarse_rows; ++i)
    for (int j = 0; j < coarse_columns; ++j) {
      const auto at = photo_from_mat(region.mat(Eigen::Vector2d(j, i) * kStride));
      coarse.at<cv::Vec2f>(i, j) =
          at ? cv::Vec2f(static_cast<float>(at->x()), static_cast<float>(at->y())) : cv::Vec2f(-1e6F, -1e6F);
    }
  cv::Mat places(region.rows, region.columns, CV_32FC2);
  for (int i = 0; i < region.rows; ++i)
    for (int j = 0; j < region.columns; ++j) {
      const int ci = i / kStride, cj = j / kStride;
      const float fi = static_cast<float>(i % kStride) / kStride,
                  fj = static_cast<float>(j % kStride) / kStride;
      places.at<cv::Vec2f>(i, j) =
          (1 - fi) * ((1 - fj) * coarse.at<cv::Vec2f>(ci, cj) + fj * coarse.at<cv::Vec2f>(ci, cj + 1)) +
          fi * ((1 - fj) * coarse.at<cv::Vec2f>(ci + 1, cj) + fj * coarse.at<cv::Vec2f>(ci + 1, cj + 1));
    }
  // Where the photograph is finer than the region it is averaged first.
  cv::Mat soft, laid, out;
  cv::blur(grey, soft, {3, 3});
  cv::remap(soft, laid, places, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_CONSTANT, cv::Scalar(0));
  cv::LUT(laid, cv::Mat(1, 256, CV_32FC1, const_cast<float*>(linear_light().data())), out);
  out.setTo(-1.0F, laid == 0);
  return out;
}

cv::Mat quotient(const cv::Mat& target, const cv::Mat& plain) {
  cv::Mat out(target.size(), CV_32FC1);
  for (int i = 0; i < out.rows; ++i)
    for (int j = 0; j < out.cols; ++j) {
      const float t = target.at<float>(i, j), p = plain.at<float>(i, j);
      out.at<float>(i, j) =
          t < 0.0F || p < 0.0F ? -1.0F : (t + static_cast<float>(kFloor)) / (p + static_cast<float>(kFloor));
    }
  return stretched(out, false);
}

cv::Mat laid_picture(const cv::Mat& laid) {
  return stretched(laid, true);
}

std::optional<LightCorner> find_light_corner(const TargetLayout& layout, int index, const LocalView& target,
                                             const LocalView* plain) {
  // Inside the ring of plain light between a square's edge and its marker.
  const double window = 0.9 * layout.inset;
  const double photo_pixels = std::sqrt(std::abs(target.slope.determinant()));
  const int half = std::clamp(static_cast<int>(window * photo_pixels), 5, 9);
  const double pitch = std::min(window / half, 1.0 / photo_pixels);
  const Eigen::MatrixXd patch = sample_patch(half, pitch, [&](double x, double y) {
    const Eigen::Vector2d moved(x, y);
    const double lit = linear_sample(*target.grey, target.at + target.slope * moved);
    if (plain == nullptr) return lit;
    return (lit + kFloor) / (linear_sample(*plain->grey, plain->at + plain->slope * moved) + kFloor);
  });
  const int column = index % (layout.columns - 1), row = index / (layout.columns - 1);
  const auto saddle = fit_saddle(patch, (column + row) % 2 == 0 ? 1 : -1);
  if (!saddle) return std::nullopt;
  return LightCorner{pitch * saddle->offset, pitch * saddle->sigma};
}

}  // namespace cowlcast::calibration
