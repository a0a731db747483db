#include "calibration/watch/patch_tracker.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <array>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace cowlcast::calibration {
namespace {

constexpr int kSteps = 8;
constexpr double kStill = 0.004;  // pixels: a step that changes nothing
constexpr double kLongest = 3.0;  // pixels: a longer step is cut short
constexpr float kLeastAnswer = 0.02F;
constexpr float kBlack =
    0.002F;  // a projector's black over its white: what is left of a ground in a dark room

const std::array<float, 256>& levels() {
  // The curve of IEC 61966-2-1 (sRGB), run backwards.
  static const std::array<float, 256> table = [] {
    std::array<float, 256> made{};
    for (size_t i = 0; i < made.size(); ++i) {
      const double x = static_cast<double>(i) / 255.0;
      made[i] = static_cast<float>(x <= 0.04045 ? x / 12.92 : std::pow((x + 0.055) / 1.055, 2.4));
    }
    return made;
  }();
  return table;
}

// A window of `size` at a fractional place, by straight interpolation. Columns beyond are not looked at.
struct Between {
  int x, y;
  float weights[4];
  explicit Between(const Eigen::Vector2d& at) {
    const double fx = std::floor(at.x()), fy = std::floor(at.y());
    x = static_cast<int>(fx);
    y = static_cast<int>(fy);
    const auto u = static_cast<float>(at.x() - fx), v = static_cast<float>(at.y() - fy);
    weights[0] = (1 - u) * (1 - v);
    weights[1] = u * (1 - v);
    weights[2] = (1 - u) * v;
    weights[3] = u * v;
  }
  bool inside(const cv::Size& picture, const cv::Size& window) const {
    return x >= 0 && y >= 0 && x + window.width + 1 <= picture.width &&
           y + window.height + 1 <= picture.height;
  }
  void row(const float* upper, const float* lower, int count, float* out) const {
    for (int j = 0; j < count; ++j)
      out[j] = weights[0] * upper[j] + weights[1] * upper[j + 1] + weights[2] * lower[j] +
               weights[3] * lower[j + 1];
  }
};

cv::Mat slope(const cv::Mat& pattern, const cv::Mat& kernel) {
  cv::Mat out;
  cv::filter2D(pattern, out, CV_32F, kernel, {-1, -1}, 0, cv::BORDER_REPLICATE);
  return out;
}

}  // namespace

float light_of_level(unsigned char level) {
  return levels()[level];
}

cv::Mat linear_light(const cv::Mat& grey) {
  cv::Mat out;
  cv::LUT(grey, cv::Mat(1, 256, CV_32F, const_cast<float*>(levels().data())), out);
  return out;
}

PatchTracker PatchTracker::of_print(const cv::Mat& light, const cv::Rect& box) {
  PatchTracker out;
  out.box_ = box;
  out.pattern_ = light(box).clone();
  out.finish();
  cv::Scalar mean, spread;
  cv::meanStdDev(out.pattern_, mean, spread);
  out.contrast_ = spread[0];
  return out;
}

PatchTracker PatchTracker::of_light(const cv::Mat& dark, const cv::Mat& plain, const cv::Mat& marked,
                                    const cv::Rect& box) {
  PatchTracker out;
  out.box_ = box;
  out.light_ = true;
  const cv::Rect grown(box.x - kReach, box.y - kReach, box.width + 2 * kReach + 1,
                       box.height + 2 * kReach + 1);
  out.ground_ = dark(grown).clone();
  out.answer_ = plain(grown) - dark(grown);
  cv::Scalar mean, spread;
  cv::meanStdDev(cv::Mat(marked(box) - dark(box)), mean, spread);
  out.contrast_ = spread[0];
  // Where nearly nothing is sent back the quotient would be noise alone.
  const double typical = std::max(cv::mean(out.answer_)[0], 1e-6);
  out.answer_ = cv::max(out.answer_, kLeastAnswer * static_cast<float>(typical));
  const cv::Mat light = marked(box) - dark(box);
  const cv::Mat pattern = light / out.answer_(cv::Rect(kReach, kReach, box.width, box.height));
  out.pattern_ = cv::min(cv::max(pattern, -0.5), 1.5);
  out.finish();
  return out;
}

PatchTracker PatchTracker::light_alone() const {
  PatchTracker out = *this;
  out.light_ = false;
  out.answer_.release();
  out.ground_.release();
  return out;
}

void PatchTracker::finish() {
  const cv::Mat across = (cv::Mat_<float>(1, 3) << -0.5F, 0.0F, 0.5F);
  slope_x_ = slope(pattern_, across);
  slope_y_ = slope(pattern_, across.t());
}

std::optional<PatchShift> PatchTracker::track(const cv::Mat& frame, const Eigen::Vector2d& guess) const {
  const int width = box_.width, height = box_.height;
  const auto& table = levels();
  // Columns: pattern, its slopes, even light, each as the ground sends it back; and the frame.
  Eigen::MatrixXf columns(static_cast<Eigen::Index>(width) * height, 5);
  const auto whole = [&](const cv::Mat& picture) {
    return Eigen::Map<const Eigen::ArrayXf>(picture.ptr<float>(), columns.rows());
  };
  columns.col(0) = whole(pattern_);
  columns.col(1) = whole(slope_x_);
  columns.col(2) = whole(slope_y_);
  columns.col(3).setOnes();
  std::array<std::vector<float>, 2> rows;  // linear light of two rows of the frame
  for (auto& row : rows) row.resize(static_cast<size_t>(width) + 1);
  Eigen::ArrayXf answer(columns.rows());
  Eigen::Vector2d shift = guess;
  PatchShift out;
  Eigen::Vector4d found = Eigen::Vector4d::Zero();
  double left = 0.0, own = 0.0;
  bool still = false;
  for (int step = 0; step < kSteps && !still; ++step) {
    if (light_ && shift.cwiseAbs().maxCoeff() > kReach - 0.01) return std::nullopt;
    const Between frame_at(shift + Eigen::Vector2d(box_.x, box_.y));
    if (!frame_at.inside(frame.size(), box_.size())) return std::nullopt;
    const auto fill = [&](int i, std::vector<float>& row) {
      if (frame.depth() == CV_32F) {
        std::copy_n(frame.ptr<float>(frame_at.y + i) + frame_at.x, width + 1, row.begin());
        return;
      }
      const unsigned char* line = frame.ptr<unsigned char>(frame_at.y + i) + frame_at.x;
      for (int j = 0; j <= width; ++j) row[static_cast<size_t>(j)] = table[line[j]];
    };
    fill(0, rows[0]);
    for (int i = 0; i < height; ++i) {
      fill(i + 1, rows[static_cast<size_t>((i + 1) % 2)]);
      frame_at.row(rows[static_cast<size_t>(i % 2)].data(), rows[static_cast<size_t>((i + 1) % 2)].data(),
                   width, columns.col(4).data() + static_cast<Eigen::Index>(i) * width);
    }
    if (light_) {
      const Between ground_at(shift + Eigen::Vector2d::Constant(kReach));
      const auto take = [&](const cv::Mat& from, float* to) {
        for (int i = 0; i < height; ++i)
          ground_at.row(from.ptr<float>(ground_at.y + i) + ground_at.x,
                        from.ptr<float>(ground_at.y + i + 1) + ground_at.x, width,
                        to + static_cast<Eigen::Index>(i) * width);
      };
      take(answer_, answer.data());
      take(ground_, columns.col(3).data());
      columns.col(3).array() += kBlack * answer;
      columns.col(0) = whole(pattern_) * answer;
      columns.col(1) = whole(slope_x_) * answer;
      columns.col(2) = whole(slope_y_) * answer;
    }
    const Eigen::Matrix<double, 5, 5> sums = (columns.transpose() * columns).cast<double>();
    Eigen::Matrix4d normal = sums.topLeftCorner<4, 4>();
    normal.diagonal() *= 1.0 + 1e-7;
    const Eigen::Vector4d right = sums.topRightCorner<4, 1>();
    found = normal.ldlt().solve(right);
    const double gain = found[0];
    if (!found.allFinite() || !(gain > 0.0)) return std::nullopt;
    Eigen::Vector2d change = -Eigen::Vector2d(found[1], found[2]) / gain;
    if (change.norm() > kLongest) change *= kLongest / change.norm();
    shift += change;
    still = change.norm() < kStill;
    left = std::max(0.0, sums(4, 4) - found.dot(right));
    own = gain * gain * (sums(0, 0) - sums(0, 3) * sums(0, 3) / sums(3, 3));
  }
  if (!still) return std::nullopt;
  // What is left, over the strength of the pattern in this frame. What covers part of a patch leaves more in
  // one quarter than in the others, and is believed less.
  const Eigen::VectorXf rest = columns.col(4) - columns.leftCols(4) * found.cast<float>();
  double quarters[4] = {}, whole_rest = 1e-12;
  for (int i = 0; i < height; ++i)
    for (const int side : {0, 1}) {
      const Eigen::Index from = static_cast<Eigen::Index>(i) * width + (side == 0 ? 0 : width / 2);
      const double squares = rest.segment(from, width / 2).squaredNorm();
      quarters[2 * (2 * i / height) + side] += squares;
      whole_rest += squares;
    }
  const double share = *std::max_element(quarters, quarters + 4) / whole_rest;
  out.misfit = std::sqrt(left / std::max(own, 1e-12)) * (1.0 + 3.0 * std::max(0.0, share - 0.4));
  if (!(out.misfit < believed)) return std::nullopt;
  out.shift = shift;
  return out;
}

std::optional<Eigen::Vector2d> PatchTracker::search(const cv::Mat& frame, const Eigen::Vector2d& about,
                                                    int reach) const {
  const int left = box_.x + static_cast<int>(std::lround(about.x())) - reach,
            top = box_.y + static_cast<int>(std::lround(about.y())) - reach;
  const cv::Rect wanted(left, top, box_.width + 2 * reach, box_.height + 2 * reach);
  const cv::Rect there = wanted & cv::Rect({0, 0}, frame.size());
  if (there.width < box_.width || there.height < box_.height) return std::nullopt;
  cv::Mat likeness;
  const cv::Mat light = frame.depth() == CV_32F ? frame(there) : linear_light(frame(there));
  cv::matchTemplate(light, pattern_, likeness, cv::TM_CCOEFF_NORMED);
  double best = 0.0;
  cv::Point at;
  cv::minMaxLoc(likeness, nullptr, &best, nullptr, &at);
  if (!(best > 0.6)) return std::nullopt;
  return Eigen::Vector2d(there.x + at.x - box_.x, there.y + at.y - box_.y);
}

}  // namespace cowlcast::calibration
