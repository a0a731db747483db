#include "calibration/watch/since_located.h"

#include <Eigen/LU>
#include <cmath>

#include "calibration/detect/patch.h"
#include "calibration/detect/saddle.h"
#include "calibration/watch/border_marks.h"
#include "calibration/watch/pictures.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr size_t kFewestTags = 4;
constexpr double kTagSigma = 0.3, kMarkSigma = 0.4;  // pixels: the tags' corners; how the camera was located
constexpr double kNoted = 1.5;                       // mm

// Shift of a mark from where map and camera have it, frame pixels.
std::optional<Eigen::Vector2d> mark_shift(const Watch& learnt, const Eigen::Vector2d& picture,
                                          const cv::Mat& alone) {
  const auto seen = [&](const Eigen::Vector2d& at) {
    return learnt.camera().pixel_from_mat(learnt.map().mat_from_projector(at));
  };
  const auto at = seen(picture), right = seen(picture + Eigen::Vector2d(1, 0)),
             below = seen(picture + Eigen::Vector2d(0, 1));
  if (!at || !right || !below) return std::nullopt;
  Eigen::Matrix2d slope;
  slope << *right - *at, *below - *at;
  const double pixels = std::sqrt(std::abs(slope.determinant()));
  const double window = 0.9 * border_marks(learnt.map().width, learnt.map().height).square;
  const int half = std::max(5, static_cast<int>(window * pixels));
  const double pitch = window / half;
  const Eigen::MatrixXd patch = sample_patch(
      half, pitch, [&](double x, double y) { return sample(alone, *at + slope * Eigen::Vector2d(x, y)); });
  const auto saddle = fit_saddle(patch, 1);
  if (!saddle) return std::nullopt;
  return Eigen::Vector2d(slope * (pitch * saddle->offset));
}

}  // namespace

std::optional<std::string> moved_since_located(const Watch& learnt, const WatchPictures& pictures) {
  const FixedCamera& camera = learnt.camera();
  std::vector<Sight> sights;
  std::vector<std::optional<SightShift>> shifts;
  size_t tags = 0;
  cv::Mat alone;
  light_alone(watch_light(pictures)).convertTo(alone, CV_8U, 120.0, 60.0);
  for (const WatchedSight& watched : learnt.sights()) {
    if (watched.sight.kind == SightKind::mark) {
      const auto shift = mark_shift(learnt, watched.sight.picture, alone);
      if (!shift) continue;
      sights.push_back(watched.sight);
      shifts.push_back(SightShift{*shift, kMarkSigma});
    }
    if (watched.sight.kind != SightKind::tag) continue;
    for (const TagPlace& tag : camera.tags) {
      const auto before = camera.pixel_from_mat(tag.at);
      if (tag.number != watched.number || !before) continue;
      sights.push_back({SightKind::tag, *before, Eigen::Vector2d::Zero()});
      shifts.push_back(SightShift{watched.sight.pixel - *before, kTagSigma});
      ++tags;
    }
  }
  if (tags < kFewestTags) return std::nullopt;
  const Motion motion = Motions(learnt.map(), camera, sights).explain(shifts);
  if (motion.mm < kNoted) return std::nullopt;
  std::string what;
  for (const Moved& moved : motion.moved)
    what += (what.empty() ? "the " : " and the ") + name_of(moved.what) + " by up to " + fixed(moved.mm, 1) +
            " mm";
  return "Since the camera was located something was moved: " + what +
         ". Calibrate again and locate the camera, or, where only the camera was moved, locate it.";
}

}  // namespace cowlcast::calibration
