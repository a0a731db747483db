#include "projector/guard/anchors.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace cowlcast::projector {
namespace {

constexpr int kHalf = 10;           // of a patch, pixels
constexpr int kSearch = 5;          // pixels to each side
constexpr int kMost = 24;           // patches
constexpr int kAtOnce = 4;          // looked at in a frame
constexpr double kLeast = 6.0;      // levels by which a patch's pixels differ
constexpr double kOverNoise = 2.0;  // times the noise: two frames then correlate by 0.75 where nothing moved
constexpr double kAlike = 0.6;      // correlation of a patch found again
constexpr double kShift = 1.5;      // pixels

cv::Mat grey_of(const cv::Mat& frame, const cv::Rect& box) {
  cv::Mat grey = frame(box);
  if (grey.channels() == 3) cv::cvtColor(grey, grey, cv::COLOR_BGR2GRAY);
  return grey;
}

}  // namespace

Anchors::Anchors(const Backdrop& backdrop) {
  const cv::Mat& still = backdrop.still();
  const TableSight& sight = backdrop.sight();
  if (still.empty()) return;
  cv::Mat usable(still.size(), CV_8U, cv::Scalar(255));
  std::vector<cv::Point> light;
  for (const Point& place : sight.map.lit_area) {
    const Eigen::Vector3d seen =
        sight.camera.camera_from_mat * Eigen::Vector3d(place.x(), place.y(), sight.cloth);
    if (!(seen.z() > 0.0)) return;
    const Eigen::Vector2d pixel = sight.camera.lens.pixel_from_ray(seen.head<2>() / seen.z());
    light.emplace_back(cvRound(pixel.x()), cvRound(pixel.y()));
  }
  if (light.size() > 2) {
    cv::fillPoly(usable, std::vector<std::vector<cv::Point>>{light}, cv::Scalar(0));
    cv::erode(usable, usable, cv::Mat::ones(2 * kHalf + 3, 2 * kHalf + 3, CV_8U));
  }
  const int margin = kHalf + kSearch + 1;
  cv::Mat inner = cv::Mat::zeros(still.size(), CV_8U);
  const cv::Rect inside(margin, margin, still.cols - 2 * margin, still.rows - 2 * margin);
  if (inside.width <= 0 || inside.height <= 0) return;
  usable(inside).copyTo(inner(inside));
  std::vector<cv::Point2f> corners;
  cv::goodFeaturesToTrack(still, corners, kMost, 0.02, 2.0 * kHalf, inner);
  for (const cv::Point2f& corner : corners) {
    const cv::Rect box(cvRound(corner.x) - kHalf, cvRound(corner.y) - kHalf, 2 * kHalf + 1, 2 * kHalf + 1);
    cv::Scalar mean, deviation;
    cv::meanStdDev(still(box), mean, deviation);
    const double noise = static_cast<double>(backdrop.noise(static_cast<int>(mean[0])));
    if (deviation[0] > std::max(kLeast, kOverNoise * noise)) patches_.push_back({box, still(box).clone()});
  }
}

bool Anchors::moved(const cv::Mat& frame) {
  if (count() < kFewest) return false;
  for (int k = 0; k < std::min(kAtOnce, count()); ++k, next_ = (next_ + 1) % patches_.size()) {
    Patch& patch = patches_[next_];
    const cv::Rect around(patch.box.x - kSearch, patch.box.y - kSearch, patch.box.width + 2 * kSearch,
                          patch.box.height + 2 * kSearch);
    cv::Mat score;
    cv::matchTemplate(grey_of(frame, around), patch.look, score, cv::TM_CCOEFF_NORMED);
    double best = 0.0;
    cv::Point at;
    cv::minMaxLoc(score, nullptr, &best, nullptr, &at);
    patch.looked_at = true;
    patch.shift.reset();
    if (best > kAlike) patch.shift = std::hypot(at.x - kSearch, at.y - kSearch);
  }
  // Hands and heads cover patches; those that are found decide, if half of all looked at are.
  int looked = 0, found = 0, off = 0;
  for (const Patch& patch : patches_) {
    looked += patch.looked_at ? 1 : 0;
    found += patch.shift ? 1 : 0;
    off += patch.shift && *patch.shift > kShift ? 1 : 0;
  }
  if (looked < kFewest) return false;
  return found * 4 < looked || (found * 2 >= looked && off * 3 > found * 2);
}

}  // namespace cowlcast::projector
