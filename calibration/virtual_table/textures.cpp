#include "calibration/virtual_table/textures.h"

#include <Eigen/LU>
#include <array>
#include <cmath>
#include <numbers>
#include <opencv2/imgproc.hpp>
#include <stdexcept>
#include <string>

#include "calibration/virtual_table/sampling.h"

namespace cowlcast::calibration::virtual_table {

std::uint64_t Dice::bits() {
  std::uint64_t z = (state_ += 0x9e3779b97f4a7c15ull);
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ull;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebull;
  return z ^ (z >> 31);
}

double Dice::uniform(double low, double high) {
  return low + (high - low) * (static_cast<double>(bits() >> 11) * 0x1.0p-53);
}

double Dice::normal(double sigma) {
  const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform(0.0, 1.0)));
  return sigma * radius * std::cos(2.0 * std::numbers::pi * uniform(0.0, 1.0));
}

int Dice::below(int n) {
  return static_cast<int>(bits() % static_cast<std::uint64_t>(n));
}

int level_for(double footprint) {
  return static_cast<int>(std::floor(std::log2(std::max(footprint, 1.0)) + 0.25));
}

int Pyramid::level_for(double footprint) const {
  return std::min(virtual_table::level_for(footprint), static_cast<int>(levels.size()) - 1);
}

Pyramid pyramid_of(const cv::Mat& image, int most) {
  Pyramid pyramid{{image}};
  while (static_cast<int>(pyramid.levels.size()) < most) {
    cv::Mat last = pyramid.levels.back();
    if (last.cols < 8 || last.rows < 8) break;
    if (last.cols % 2 != 0 || last.rows % 2 != 0) {
      cv::Mat even;
      cv::copyMakeBorder(last, even, 0, last.rows % 2, 0, last.cols % 2, cv::BORDER_REPLICATE);
      last = even;
    }
    cv::Mat half;
    cv::resize(last, half, cv::Size(last.cols / 2, last.rows / 2), 0, 0, cv::INTER_AREA);
    pyramid.levels.push_back(half);
  }
  return pyramid;
}

namespace {

double normal_below(double x) {
  return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

// Resamples the picture onto the panel as an electronic keystone does: bilinear, nothing outside.
cv::Mat keystoned(const cv::Mat& light, const Eigen::Matrix3d& panel_from_picture) {
  const Eigen::Matrix3d picture_from_panel = panel_from_picture.inverse();
  const int channels = light.channels();
  cv::Mat panel(light.size(), light.type());
  cv::parallel_for_(cv::Range(0, panel.rows), [&](const cv::Range& rows) {
    for (int j = rows.start; j < rows.end; ++j) {
      float* out = panel.ptr<float>(j);
      for (int i = 0; i < panel.cols; ++i, out += channels) {
        const Eigen::Vector2d p = (picture_from_panel * Eigen::Vector3d(i, j, 1.0)).hnormalized();
        const double fx = std::floor(p.x()), fy = std::floor(p.y());
        const bool near_picture = fx >= -1.0 && fy >= -1.0 && fx < light.cols && fy < light.rows;
        for (int c = 0; c < channels; ++c) {
          double sum = 0.0;
          for (int k = 0; near_picture && k < 4; ++k) {
            const int x = static_cast<int>(fx) + (k & 1), y = static_cast<int>(fy) + (k >> 1);
            if (x < 0 || y < 0 || x >= light.cols || y >= light.rows) continue;
            const double wx = (k & 1) ? p.x() - fx : fx + 1.0 - p.x();
            const double wy = (k >> 1) ? p.y() - fy : fy + 1.0 - p.y();
            sum += wx * wy * static_cast<double>(light.ptr<float>(y)[x * channels + c]);
          }
          out[c] = static_cast<float>(sum);
        }
      }
    }
  });
  return panel;
}

}  // namespace

double pixel_spread(const RoomProjector& projector, double offset) {
  const double half = 0.5 * projector.fill;
  const double blur = std::max(projector.blur, 1e-3);
  return (normal_below((offset + half) / blur) - normal_below((offset - half) / blur)) / projector.fill;
}

cv::Mat panel_light(const RoomProjector& projector, const cv::Mat& picture) {
  if (picture.depth() != CV_8U || (picture.channels() != 1 && picture.channels() != 3) ||
      picture.cols != projector.width || picture.rows != projector.height)
    throw std::invalid_argument("the projected picture must be 8 bit grey or BGR, " +
                                std::to_string(projector.width) + "x" + std::to_string(projector.height));
  cv::Mat curve(1, 256, CV_32F);
  for (int value = 0; value < 256; ++value)
    curve.at<float>(value) = static_cast<float>(std::pow(value / 255.0, projector.gamma));
  cv::Mat grey = picture, light;
  if (picture.channels() == 3) {  // three equal channels cost three times as much as one
    std::vector<cv::Mat> channels;
    cv::split(picture, channels);
    const bool equal = cv::norm(channels[0], channels[1], cv::NORM_INF) == 0.0 &&
                       cv::norm(channels[0], channels[2], cv::NORM_INF) == 0.0;
    if (equal) grey = channels[0];
  }
  cv::LUT(grey, curve, light);
  if (projector.panel_from_picture) light = keystoned(light, *projector.panel_from_picture);
  const auto black = projector.black;
  light.convertTo(light, CV_32F, 1.0 - black);
  light += cv::Scalar::all(black);
  return light;
}

BeamTexture beam_texture(const RoomProjector& projector, const cv::Mat& picture) {
  BeamTexture beam;
  const cv::Mat panel = panel_light(projector, picture);
  const cv::Scalar mean = cv::mean(panel);
  beam.mean = static_cast<float>(panel.channels() == 1 ? mean[0] : (mean[0] + mean[1] + mean[2]) / 3.0);

  const int reach = std::clamp(static_cast<int>(std::ceil(3.5 * projector.blur + 0.5)), 2, 10);
  const int taps = 2 * reach + 1, margin = reach + 1;
  beam.margin = static_cast<float>(margin);
  const int fine = projector.width <= 2048 ? 2 : 1;  // texels to a pixel
  beam.texels = static_cast<float>(fine);
  cv::Mat padded;
  cv::copyMakeBorder(panel, padded, margin, margin, margin, margin, cv::BORDER_CONSTANT, cv::Scalar::all(0));
  std::array<std::vector<float>, 2> weights;  // for each texel of a pixel: of the pixels around
  for (int phase = 0; phase < fine; ++phase) {
    double sum = 0.0;
    std::vector<double> exact;
    for (int k = -reach; k <= reach; ++k) {
      exact.push_back(pixel_spread(projector, (phase + 0.5) / fine - 0.5 - k));
      sum += exact.back();
    }
    for (double value : exact)
      weights[static_cast<std::size_t>(phase)].push_back(static_cast<float>(value / sum));
  }
  const int channels = padded.channels(), row_values = padded.cols * channels;
  cv::Mat light(padded.rows * fine, padded.cols * fine, padded.type());
  cv::parallel_for_(cv::Range(0, padded.rows), [&](const cv::Range& rows) {
    const std::vector<float> nothing(static_cast<std::size_t>(row_values), 0.0f);
    std::vector<float> column(static_cast<std::size_t>(row_values + 2 * reach * channels), 0.0f);
    std::vector<float> across(static_cast<std::size_t>(row_values));
    std::vector<const float*> inputs(static_cast<std::size_t>(taps));
    for (int j = rows.start; j < rows.end; ++j)
      for (int py = 0; py < fine; ++py) {
        for (int k = 0; k < taps; ++k) {
          const int row = j + k - reach;
          inputs[static_cast<std::size_t>(k)] =
              row < 0 || row >= padded.rows ? nothing.data() : padded.ptr<float>(row);
        }
        weighted_sum(inputs.data(), weights[static_cast<std::size_t>(py)].data(), taps,
                     column.data() + reach * channels, row_values);
        float* out = light.ptr<float>(j * fine + py);
        for (int k = 0; k < taps; ++k) inputs[static_cast<std::size_t>(k)] = column.data() + k * channels;
        for (int px = 0; px < fine; ++px) {
          weighted_sum(inputs.data(), weights[static_cast<std::size_t>(px)].data(), taps, across.data(),
                       row_values);
          for (int i = 0; i < padded.cols; ++i)
            std::copy_n(across.data() + i * channels, channels, out + (i * fine + px) * channels);
        }
      }
  });
  beam.light = pyramid_of(light, 1);
  return beam;
}

MatTexture mat_texture(const CuttingMat& mat) {
  MatTexture texture;
  const double step = texture.step;
  const bool lines =
      (mat.fine_step > 0.0 && mat.fine_line > 0.0) || (mat.heavy_step > 0.0 && mat.heavy_line > 0.0);
  if (!lines && !mat.diagonals) {  // an unprinted mat: nothing, however far its border is repeated
    texture.print = pyramid_of(cv::Mat::zeros(8, 8, CV_8U));
    return texture;
  }
  const int columns = static_cast<int>(std::ceil(mat.size.x() / step));
  const int rows = static_cast<int>(std::ceil(mat.size.y() / step));
  // Share of each texel of one axis that lies under lines at multiples of a step from the first edge.
  const auto add_lines = [&](std::vector<std::uint8_t>& axis, double spacing, double line, double tone) {
    if (spacing <= 0.0 || line <= 0.0) return;
    for (std::size_t i = 0; i < axis.size(); ++i) {
      const double from = static_cast<double>(i) * step, to = from + step;
      const double nearest = std::round(0.5 * (from + to) / spacing) * spacing;
      const double covered = std::min(to, nearest + 0.5 * line) - std::max(from, nearest - 0.5 * line);
      const auto share = static_cast<std::uint8_t>(std::clamp(255.0 * tone * covered / step, 0.0, 255.0));
      axis[i] = std::max(axis[i], share);
    }
  };
  std::vector<std::uint8_t> across(static_cast<std::size_t>(columns), 0),
      down(static_cast<std::size_t>(rows), 0);
  for (auto* axis : {&across, &down}) {
    add_lines(*axis, mat.fine_step, mat.fine_line, 0.8);
    add_lines(*axis, mat.heavy_step, mat.heavy_line, 1.0);
  }
  cv::Mat print(rows, columns, CV_8U);
  for (int j = 0; j < rows; ++j)
    for (int i = 0; i < columns; ++i)
      print.at<std::uint8_t>(j, i) =
          std::max(across[static_cast<std::size_t>(i)], down[static_cast<std::size_t>(j)]);
  if (mat.diagonals) {
    for (double angle : {45.0, 60.0, -45.0}) {
      const double slope = std::tan(angle * std::numbers::pi / 180.0);
      const cv::Point2d from(angle > 0 ? 0.1 * columns : 0.9 * columns, rows);
      const cv::Point2d to(from.x + rows / slope, 0.0);
      cv::line(print, from, to, cv::Scalar(230), std::max(1, static_cast<int>(0.5 / step)), cv::LINE_AA);
    }
  }
  if (mat.numerals && mat.heavy_step > 0.0) {
    const double size = 6.0 / step / 22.0;  // a figure of the plain face at scale 1 is 22 texels high
    const double unit =
        std::fmod(mat.heavy_step, 10.0) == 0.0 ? 10.0 : mat.heavy_step;  // else it counts inches
    const auto number = [&](double value, double x, double y) {
      cv::putText(print, std::to_string(static_cast<int>(std::lround(value / unit))),
                  cv::Point(static_cast<int>(x / step), static_cast<int>(y / step)), cv::FONT_HERSHEY_SIMPLEX,
                  size, cv::Scalar(240), 2, cv::LINE_AA);
    };
    for (double x = mat.heavy_step; x < mat.size.x() - 10.0; x += mat.heavy_step) {
      number(x, x + 1.0, 8.0);
      number(x, x + 1.0, mat.size.y() - 2.0);
    }
    for (double y = mat.heavy_step; y < mat.size.y() - 10.0; y += mat.heavy_step) {
      number(y, 1.0, mat.size.y() - y - 1.0);
      number(y, mat.size.x() - 14.0, mat.size.y() - y - 1.0);
    }
  }
  texture.print = pyramid_of(print);
  return texture;
}

namespace {

// Noise of the given smoothness that repeats without a seam, scaled to a mean of 0 and a deviation of 1.
cv::Mat noise(cv::Size size, double smooth_x, double smooth_y, std::uint64_t seed) {
  const auto coarse = [](double smooth) {
    return 1 << std::max(0, static_cast<int>(std::log2(smooth / 3.0)));
  };
  const int coarse_x = coarse(smooth_x), coarse_y = coarse(smooth_y);
  const int pad_x = static_cast<int>(4.0 * smooth_x / coarse_x) + 4,
            pad_y = static_cast<int>(4.0 * smooth_y / coarse_y) + 4;
  cv::RNG rng(seed);
  cv::Mat field(size.height / coarse_y, size.width / coarse_x, CV_32F);
  rng.fill(field, cv::RNG::NORMAL, 0.0, 1.0);
  cv::copyMakeBorder(field, field, pad_y, pad_y, pad_x, pad_x, cv::BORDER_WRAP);
  cv::GaussianBlur(field, field, cv::Size(), smooth_x / coarse_x, smooth_y / coarse_y, cv::BORDER_REFLECT);
  cv::resize(field, field, cv::Size(), coarse_x, coarse_y, cv::INTER_CUBIC);
  field = field(cv::Rect(pad_x * coarse_x, pad_y * coarse_y, size.width, size.height)).clone();
  cv::Scalar mean, deviation;
  cv::meanStdDev(field, mean, deviation);
  return (field - mean[0]) / deviation[0];
}

// Averages of a pattern that repeats: each level gets its first row and column again at its end, so that
// samples between the last texel and the first find both.
Pyramid tone_pyramid(const cv::Mat& field) {
  cv::Mat tone;
  field.convertTo(tone, CV_8U, 40.0, 128.0);
  Pyramid pyramid = pyramid_of(tone);
  for (cv::Mat& level : pyramid.levels) cv::copyMakeBorder(level, level, 0, 1, 0, 1, cv::BORDER_WRAP);
  return pyramid;
}

constexpr int side = 1024;

}  // namespace

Pyramid grain_texture() {
  return tone_pyramid(0.7 * noise({side, side}, 1.2, 1.2, 11) + 0.5 * noise({side, side}, 25.0, 25.0, 12));
}

Pyramid table_texture(bool wooden) {
  if (!wooden) {
    cv::Mat weave(side, side, CV_32F);
    for (int j = 0; j < side; ++j)
      for (int i = 0; i < side; ++i)
        weave.at<float>(j, i) =
            static_cast<float>(std::sin(i * std::numbers::pi / 4.0) * std::sin(j * std::numbers::pi / 4.0));
    return tone_pyramid(weave + 0.6 * noise({side, side}, 3.0, 3.0, 21));
  }
  cv::Mat wood = 0.8 * noise({side, side}, 60.0, 2.0, 22) + 0.6 * noise({side, side}, 150.0, 12.0, 23);
  for (int j = 0; j < side; j += 256)
    wood.rowRange(j, std::min(j + 2, side)) = cv::Scalar(-2.5);  // gaps between planks
  return tone_pyramid(wood);
}

Pyramid knit_texture() {
  constexpr int wale = 64, course = 64;  // both divide the side
  cv::Mat knit(side, side, CV_32F);
  const cv::Mat uneven = noise({side, side}, 14.0, 14.0, 31);
  for (int j = 0; j < side; ++j)
    for (int i = 0; i < side; ++i) {
      // Two legs of a stitch lean towards each other and meet at the bottom, like a V.
      const double x = std::fmod(i, wale) / wale - 0.5, y = std::fmod(j, course) / course;
      const double leg = std::abs(x) - 0.10 - 0.22 * (1.0 - y);
      const double yarn = 1.6 * std::exp(-leg * leg / 0.012) - 0.9;
      const double furrow = -0.7 * std::exp(-std::pow((0.5 - std::abs(x)) / 0.07, 2.0));
      knit.at<float>(j, i) = static_cast<float>(yarn + furrow) + 0.35f * uneven.at<float>(j, i);
    }
  return tone_pyramid(knit);
}

}  // namespace cowlcast::calibration::virtual_table
