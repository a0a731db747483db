#include "calibration/virtual_table/photograph.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <opencv2/imgproc.hpp>

#include "calibration/virtual_table/renderer.h"
#include "calibration/virtual_table/textures.h"
#include "calibration/virtual_table/tone.h"

namespace cowlcast::calibration::virtual_table {

namespace {

View view_of(const RoomCamera& camera) {
  View view;
  view.width = camera.width;
  view.height = camera.height;
  view.blur = camera.blur;
  const Eigen::Isometry3d room_from_camera = camera.camera_from_room.inverse();
  view.sight = [camera, room_from_camera](const Eigen::Vector2d& pixel) -> std::optional<Sight> {
    const Eigen::Vector2d still = pixel - camera.rolling * (pixel.y() / (camera.height - 1.0) - 0.5);
    const auto ray = camera.optic.ray_from_pixel(still);
    if (!ray) return std::nullopt;
    return Sight{room_from_camera.translation(),
                 room_from_camera.linear() * Eigen::Vector3d(ray->x(), ray->y(), 1.0)};
  };
  return view;
}

// Spreads the image along the path of the hand, evenly to both sides of where it would have been.
void shake(cv::Mat& light, const Eigen::Vector2d& path) {
  const double length = path.norm();
  if (length < 0.05) return;
  const int reach = static_cast<int>(std::ceil(0.5 * path.cwiseAbs().maxCoeff())) + 1;
  cv::Mat kernel = cv::Mat::zeros(2 * reach + 1, 2 * reach + 1, CV_32F);
  const int steps = 64;
  for (int k = 0; k < steps; ++k) {
    const Eigen::Vector2d at = path * ((k + 0.5) / steps - 0.5) + Eigen::Vector2d::Constant(reach);
    const int x = static_cast<int>(at.x()), y = static_cast<int>(at.y());
    const double fx = at.x() - x, fy = at.y() - y;
    kernel.at<float>(y, x) += static_cast<float>((1 - fx) * (1 - fy) / steps);
    kernel.at<float>(y, x + 1) += static_cast<float>(fx * (1 - fy) / steps);
    kernel.at<float>(y + 1, x) += static_cast<float>((1 - fx) * fy / steps);
    kernel.at<float>(y + 1, x + 1) += static_cast<float>(fx * fy / steps);
  }
  cv::filter2D(light, light, -1, kernel, cv::Point(-1, -1), 0, cv::BORDER_REPLICATE);
  cv::max(light, 0.0F, light);  // wide paths are filtered by Fourier transform, which strays below black
}

// Light left by the lens at a pixel.
struct Vignette {
  double share, middle_x, middle_y, corner2;
  explicit Vignette(const RoomCamera& c)
      : share(c.vignetting),
        middle_x(0.5 * (c.width - 1)),
        middle_y(0.5 * (c.height - 1)),
        corner2(middle_x * middle_x + middle_y * middle_y + 1.0) {}
  float at(int x, int y) const {
    const double dx = x - middle_x, dy = y - middle_y;
    return static_cast<float>(1.0 - share * (dx * dx + dy * dy) / corner2);
  }
};

// Normal deviates to draw from: a table is as good as the real thing when entered at random.
const std::vector<float>& deviates() {
  static const std::vector<float> table = [] {
    std::vector<float> made(1 << 16);
    Dice dice(0x5eed);
    for (float& value : made) value = static_cast<float>(dice.normal(1.0));
    return made;
  }();
  return table;
}

}  // namespace

cv::Mat linear_photograph(const Room& room, const RoomCamera& camera, const cv::Mat& picture) {
  cv::Mat light = render(room, view_of(camera), picture);
  shake(light, camera.shake);
  return light;
}

cv::Mat photograph(const Room& room, const RoomCamera& camera, const cv::Mat& picture, std::uint64_t seed) {
  View view = view_of(camera);
  view.flicker_phase = Dice(~seed).uniform(0.0, 2.0 * std::numbers::pi);
  cv::Mat light = render(room, view, picture);
  shake(light, camera.shake);
  return expose(light, camera, seed);
}

cv::Mat expose(const cv::Mat& light, const RoomCamera& camera, std::uint64_t seed) {
  const Vignette vignette(camera);
  const double white =
      white_level(light, [&](int x, int y) { return vignette.at(x, y); }) / std::exp2(camera.exposure_stops);
  const auto electrons =
      static_cast<float>(std::clamp(camera.electrons_per_lux * white, 20.0, camera.full_well));
  const auto read2 = static_cast<float>(camera.read_noise * camera.read_noise);
  const float gain[3] = {camera.white_balance.z() / static_cast<float>(white),
                         camera.white_balance.y() / static_cast<float>(white),
                         camera.white_balance.x() / static_cast<float>(white)};
  const std::uint64_t noise_seed = Dice(seed).bits();
  const auto& deviate = deviates();
  cv::Mat photo(light.size(), CV_8UC3);
  cv::parallel_for_(cv::Range(0, photo.rows), [&](const cv::Range& range) {
    for (int y = range.start; y < range.end; ++y) {
      const auto* in = light.ptr<float>(y);
      auto* out = photo.ptr<std::uint8_t>(y);
      Dice row_dice(noise_seed + 0x632be59bd9b4e019ull * static_cast<std::uint64_t>(y + 1));
      for (int x = 0; x < photo.cols; ++x) {
        const float left = vignette.at(x, y);
        const std::uint64_t draw = row_dice.bits();
        for (int c = 0; c < 3; ++c) {
          const float level = in[3 * x + c] * left * gain[c];
          const float count = level * electrons;
          const float noise = deviate[(draw >> (16 * c)) & 0xffff] * std::sqrt(count + read2) / electrons;
          out[3 * x + c] = toned(level + noise);
        }
      }
    }
  });
  if (camera.sharpening > 0.0) {
    cv::Mat soft;
    cv::GaussianBlur(photo, soft, cv::Size(5, 5), 1.0);
    cv::addWeighted(photo, 1.0 + camera.sharpening, soft, -camera.sharpening, 0.0, photo);
  }
  return photo;
}

double focal_35mm(const RoomCamera& camera) {
  return std::hypot(36.0, 24.0) * camera.optic.focal.mean() /
         std::hypot(static_cast<double>(camera.width), static_cast<double>(camera.height));
}

}  // namespace cowlcast::calibration::virtual_table
