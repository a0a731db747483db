#include "calibration/virtual_table/fixed_film.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "calibration/virtual_table/textures.h"
#include "calibration/virtual_table/tone.h"

namespace cowlcast::calibration::virtual_table {

namespace {

// Grey is the mean of three noisy channels, weighed by Rec. ITU-R BT.601 as grey pictures are.
constexpr float kGreyNoise = 0.669f;
constexpr double kLampBeat = 0.9, kProjectorBeat = 1.7, kWander = 0.05;  // turns of the bands a second

const std::vector<float>& deviates() {
  static const std::vector<float> table = [] {
    std::vector<float> made(1 << 14);
    Dice dice(0xf11a);
    for (float& value : made) value = static_cast<float>(dice.normal(1.0));
    return made;
  }();
  return table;
}

// Luminance with the lens's own darkening, white at 1.
cv::Mat luminance(const cv::Mat& light, const RoomCamera& camera, double white) {
  cv::Mat out(light.size(), CV_32F);
  const double middle_x = 0.5 * (camera.width - 1), middle_y = 0.5 * (camera.height - 1);
  const double corner2 = middle_x * middle_x + middle_y * middle_y;
  for (int y = 0; y < light.rows; ++y)
    for (int x = 0; x < light.cols; ++x) {
      const auto& in = light.at<cv::Vec3f>(y, x);
      const double far2 = (x - middle_x) * (x - middle_x) + (y - middle_y) * (y - middle_y);
      const auto left = static_cast<float>((1.0 - camera.vignetting * far2 / corner2) / white);
      out.at<float>(y, x) = left * (0.114f * in[0] + 0.587f * in[1] + 0.299f * in[2]);
    }
  return out;
}

// Share of a point's light that an arm hides; edges are soft over three pixels.
struct Shape {
  Eigen::Vector2d from, along;
  double length2, radius;
  Shape(const Eigen::Vector2d& elbow, const Eigen::Vector2d& hand, double half)
      : from(elbow), along(hand - elbow), length2(std::max(along.squaredNorm(), 1e-9)), radius(half) {}
  float cover(double x, double y, double soft) const {
    const Eigen::Vector2d d = Eigen::Vector2d(x, y) - from;
    const double t = std::clamp(d.dot(along) / length2, 0.0, 1.0);
    return static_cast<float>(std::clamp((radius - (d - t * along).norm()) / soft + 0.5, 0.0, 1.0));
  }
};

}  // namespace

FixedFilm::FixedFilm(const FilmLight& light, const RoomCamera& camera, const std::vector<cv::Rect>& places,
                     const FilmFlicker& flicker)
    : camera_(camera),
      places_(places),
      flicker_(flicker),
      white_(white_level(light.lit) / std::exp2(camera.exposure_stops)) {
  change(light);
}

void FixedFilm::change(const FilmLight& light) {
  dark_ = luminance(light.dark, camera_, white_);
  beam_ = luminance(light.lit, camera_, white_) - dark_;
  still();
}

void FixedFilm::look_at(const std::vector<cv::Rect>& places) {
  places_ = places;
  still();
}

void FixedFilm::still() {
  frame_.create(dark_.size(), CV_8UC1);
  for (int y = 0; y < frame_.rows; ++y)
    for (int x = 0; x < frame_.cols; ++x)
      frame_.at<std::uint8_t>(y, x) = toned(dark_.at<float>(y, x) + beam_.at<float>(y, x));
}

const cv::Mat& FixedFilm::frame(double seconds, std::uint64_t seed, const std::optional<FilmArm>& arm) {
  const auto electrons =
      static_cast<float>(std::clamp(camera_.electrons_per_lux * white_, 20.0, camera_.full_well));
  const auto read2 = static_cast<float>(camera_.read_noise * camera_.read_noise);
  const auto& deviate = deviates();
  const auto wave = [&](double height, double turns) {
    return static_cast<float>(1.0 + height * std::sin(2.0 * std::numbers::pi * turns));
  };
  const float exposure = wave(flicker_.exposure, kWander * seconds);
  std::optional<Shape> body, shade;
  if (arm) {
    body.emplace(arm->elbow, arm->hand, arm->radius);
    shade.emplace(arm->elbow + arm->shadow, arm->hand + arm->shadow, arm->radius);
  }
  for (const cv::Rect& wanted : places_) {
    const cv::Rect place = wanted & cv::Rect({0, 0}, frame_.size());
    for (int y = place.y; y < place.y + place.height; ++y) {
      Dice dice(seed * 0x632be59bd9b4e019ull + static_cast<std::uint64_t>(y * 8192 + place.x));
      const float lamps = exposure * wave(flicker_.lamps, y / flicker_.lamp_rows + kLampBeat * seconds);
      const float beam =
          exposure * wave(flicker_.projector, y / flicker_.projector_rows + kProjectorBeat * seconds);
      std::uint64_t bits = 0;
      for (int x = place.x; x < place.x + place.width; ++x) {
        float ambient = lamps * dark_.at<float>(y, x), light = beam * beam_.at<float>(y, x);
        if (arm) {
          const float dim = shade->cover(x, y, 24.0), hidden = body->cover(x, y, 3.0);
          ambient *= 1.0f - 0.5f * dim;
          light *= 1.0f - dim;
          ambient += hidden * (arm->tone - ambient);
          light *= 1.0f - hidden;
        }
        const float level = ambient + light;
        if (((x - place.x) & 3) == 0) bits = dice.bits();
        const float noise = kGreyNoise * deviate[bits & 0x3fff] *
                            std::sqrt(std::max(level, 0.0f) * electrons + read2) / electrons;
        bits >>= 16;
        frame_.at<std::uint8_t>(y, x) = toned(level + noise);
      }
    }
  }
  return frame_;
}

std::vector<cv::Mat> film_frames(FixedFilm& film, int count, double seconds, std::uint64_t seed) {
  std::vector<cv::Mat> out;
  for (int i = 0; i < count; ++i)
    out.push_back(film.frame(seconds + 0.1 * i, seed + static_cast<std::uint64_t>(i)).clone());
  return out;
}

}  // namespace cowlcast::calibration::virtual_table
