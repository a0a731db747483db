#include "calibration/virtual_table/tone.h"

#include <cmath>

namespace cowlcast::calibration::virtual_table {

const std::vector<std::uint8_t>& tone_curve() {
  static const std::vector<std::uint8_t> curve = [] {
    std::vector<std::uint8_t> made(65536);
    for (std::size_t i = 0; i < made.size(); ++i) {
      const double x = static_cast<double>(i) / 65535.0;
      const double y = x <= 0.0031308 ? 12.92 * x : 1.055 * std::pow(x, 1.0 / 2.4) - 0.055;
      made[i] = static_cast<std::uint8_t>(std::lround(255.0 * y));
    }
    return made;
  }();
  return curve;
}

double white_level(const cv::Mat& light, const std::function<float(int x, int y)>& left) {
  std::vector<float> luminance;
  double sum = 0.0;
  for (int y = 0; y < light.rows; y += std::max(1, light.rows / 200))
    for (int x = 0; x < light.cols; x += std::max(1, light.cols / 200)) {
      const auto& pixel = light.at<cv::Vec3f>(y, x);
      luminance.push_back((left ? left(x, y) : 1.0f) *
                          (0.0722f * pixel[0] + 0.7152f * pixel[1] + 0.2126f * pixel[2]));
      sum += static_cast<double>(luminance.back());
    }
  const auto high = luminance.begin() + static_cast<std::ptrdiff_t>(luminance.size() * 199 / 200);
  std::nth_element(luminance.begin(), high, luminance.end());
  const double mean = sum / static_cast<double>(luminance.size());
  return std::max({mean / 0.22, static_cast<double>(*high) / 0.88, 1e-6});
}

}  // namespace cowlcast::calibration::virtual_table
