#include "projector/guard/slip.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace cowlcast::projector {
namespace {

constexpr int kStep = 2;              // cells between those that are asked
constexpr int kNode = 8;              // asked cells to a node of the field
constexpr int kWindow = 15;           // asked cells: 45 mm
constexpr float kEdge = 0.10f;        // of a cell's light, from one cell to the next: an edge of a print
constexpr double kLeastPrint = 0.02;  // of the cells: with fewer at edges cloth is even
constexpr float kOff = 0.05f;         // of a cell's light that may be off for the model's sake
constexpr float kKeep = 10.0f;    // asked cells that tell no more than one, since they share pixels and light
constexpr float kBend = 0.7f;     // cells by which neighbouring nodes are likely to differ
constexpr float kLongest = 1.2f;  // cells of one improvement
constexpr float kGood = 0.2f;     // cells: less is no matter
constexpr double kMoves = 0.3;    // cells between two frames
constexpr int kTries = 3;
constexpr float kMustWin = 0.9f;  // of the misfit of cloth that lies where it lay

}  // namespace

Slip::Slip(const cv::Mat& room, const cv::Mat& beam) : room_(room), beam_(beam) {
  // A print changes room light and beam alike: shadows and the borders of light do not.
  int edges = 0;
  for (int r = 0; r < room.rows; ++r)
    for (int c = 0; c + 1 < room.cols; ++c) {
      bool edge = false;
      for (int k = 0; k < 3; ++k) {
        const float a = room.at<cv::Vec3f>(r, c)[k], b = room.at<cv::Vec3f>(r, c + 1)[k];
        const float u = beam.at<cv::Vec3f>(r, c)[k], v = beam.at<cv::Vec3f>(r, c + 1)[k];
        edge = edge || (std::abs(a - b) > kEdge * std::max(a, b) && std::abs(u - v) > kEdge * std::max(u, v));
      }
      edges += edge ? 1 : 0;
    }
  printed_ = edges > kLeastPrint * static_cast<double>(room.total());
  nodes_ = cv::Mat::zeros(std::max(room.rows / (kStep * kNode), 2), std::max(room.cols / (kStep * kNode), 2),
                          CV_32FC2);
  field_ = cv::Mat::zeros(room.size(), CV_32FC2);
}

void Slip::follow(const cv::Mat& seen, const Light& light, float noise) {
  if (!printed_) return;
  const cv::Mat was = nodes_.clone();
  for (int k = 0; k < kTries; ++k)
    if (improve(seen, light, noise) < kGood) break;
  moved_ = nodes_ - was;
}

bool Slip::moves(int from, int to) const {
  if (moved_.empty()) return false;
  // A node lies half of its way into what it stands for, and is held to its neighbours.
  const int node = room_.cols / moved_.cols, last = moved_.cols - 1;
  const cv::Range columns(std::clamp(from / node - 1, 0, last), std::clamp(to / node + 1, 0, last) + 1);
  return cv::norm(moved_.colRange(columns), cv::NORM_INF) > kMoves;
}

// What the asked cells say of a better field: the normal equations of least squares, and the misfits.
struct Slip::Sums {
  cv::Mat xx, xy, yy, x, y, misfit, still;
  explicit Sums(const cv::Size& size) {
    for (cv::Mat* each : all()) *each = cv::Mat::zeros(size, CV_32F);
  }
  std::array<cv::Mat*, 7> all() { return {&xx, &xy, &yy, &x, &y, &misfit, &still}; }
};

// By how much the field was changed at most, cells.
float Slip::improve(const cv::Mat& seen, const Light& light, float noise) {
  cv::Mat from(room_.rows / kStep, room_.cols / kStep, CV_32FC2), coarse;
  cv::resize(nodes_, coarse, from.size(), 0, 0, cv::INTER_LINEAR);
  for (int r = 0; r < from.rows; ++r)
    for (int c = 0; c < from.cols; ++c)
      from.at<cv::Vec2f>(r, c) = cv::Vec2f(static_cast<float>(c * kStep), static_cast<float>(r * kStep)) +
                                 coarse.at<cv::Vec2f>(r, c);
  cv::Mat room, beam;
  cv::remap(room_, room, from, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  cv::remap(beam_, beam, from, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  Sums sums(from.size());
  for (int r = 1; r + 1 < from.rows; ++r)
    for (int c = 1; c + 1 < from.cols; ++c) {
      const cv::Vec3f &y = seen.at<cv::Vec3f>(r * kStep, c * kStep),
                      &a = light.room.at<cv::Vec3f>(r * kStep, c * kStep),
                      &b = light.beam.at<cv::Vec3f>(r * kStep, c * kStep),
                      &a0 = room_.at<cv::Vec3f>(r * kStep, c * kStep),
                      &b0 = beam_.at<cv::Vec3f>(r * kStep, c * kStep);
      const auto slope = [&](int dr, int dc, int k) {
        return (a[k] * (room.at<cv::Vec3f>(r + dr, c + dc)[k] - room.at<cv::Vec3f>(r - dr, c - dc)[k]) +
                b[k] * (beam.at<cv::Vec3f>(r + dr, c + dc)[k] - beam.at<cv::Vec3f>(r - dr, c - dc)[k])) /
               (2.0f * kStep);
      };
      for (int k = 0; k < 3; ++k) {
        const float want = a[k] * room.at<cv::Vec3f>(r, c)[k] + b[k] * beam.at<cv::Vec3f>(r, c)[k],
                    still = a[k] * a0[k] + b[k] * b0[k];
        const float sigma = kOff * std::max(want, y[k]) + noise, off = (y[k] - want) / sigma;
        const float weight = 1.0f / (1.0f + off * off / 9.0f), gx = slope(0, 1, k) / sigma,
                    gy = slope(1, 0, k) / sigma;
        sums.xx.at<float>(r, c) += weight * gx * gx;
        sums.xy.at<float>(r, c) += weight * gx * gy;
        sums.yy.at<float>(r, c) += weight * gy * gy;
        sums.x.at<float>(r, c) += weight * gx * off;
        sums.y.at<float>(r, c) += weight * gy * off;
        const float stays = (y[k] - still) / sigma;
        const float tells = std::min(gx * gx + gy * gy, 1.0f);
        sums.misfit.at<float>(r, c) += tells * off * off / (1.0f + off * off / 9.0f);
        sums.still.at<float>(r, c) += tells * stays * stays / (1.0f + stays * stays / 9.0f);
      }
    }
  for (cv::Mat* each : sums.all()) {
    cv::boxFilter(*each, *each, CV_32F, {kWindow, kWindow}, {-1, -1}, false, cv::BORDER_CONSTANT);
    cv::resize(*each, *each, nodes_.size(), 0, 0, cv::INTER_LINEAR);
  }
  cv::Mat smooth;
  cv::blur(nodes_, smooth, {3, 3}, {-1, -1}, cv::BORDER_REPLICATE);
  float changed = 0.0f;
  most_ = 0.0f;
  for (int r = 0; r < nodes_.rows; ++r)
    for (int c = 0; c < nodes_.cols; ++c) {
      const float hold = kKeep / (kBend * kBend);
      const float xx = sums.xx.at<float>(r, c) + hold, yy = sums.yy.at<float>(r, c) + hold,
                  xy = sums.xy.at<float>(r, c);
      cv::Vec2f& node = nodes_.at<cv::Vec2f>(r, c);
      const cv::Vec2f was = node;
      if (sums.misfit.at<float>(r, c) > kMustWin * sums.still.at<float>(r, c)) node *= 0.5f;
      const cv::Vec2f pull = hold * (smooth.at<cv::Vec2f>(r, c) - node);
      const float x = sums.x.at<float>(r, c) + pull[0], y = sums.y.at<float>(r, c) + pull[1];
      const float whole = xx * yy - xy * xy;
      cv::Vec2f step((yy * x - xy * y) / whole, (xx * y - xy * x) / whole);
      const float length = static_cast<float>(cv::norm(step));
      if (length > kLongest) step *= kLongest / length;
      node += step;
      const float far = static_cast<float>(cv::norm(node));
      if (far > kFarthest) node *= kFarthest / far;
      changed = std::max(changed, static_cast<float>(cv::norm(node - was)));
      most_ = std::max(most_, std::min(far, kFarthest));
    }
  cv::resize(nodes_, field_, field_.size(), 0, 0, cv::INTER_LINEAR);
  return changed;
}

}  // namespace cowlcast::projector
