#include "projector/guard/watch.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace cowlcast::projector {
namespace {

constexpr double kGone = 0.5;            // s without a picture
constexpr double kFrozen = 0.7;          // s of pictures that are the same to the last bit
constexpr double kDark = 0.1;            // of the light that was learnt
constexpr double kCovered = 0.6;         // of the corridor ahead
constexpr double kPatience = 0.4;        // s that covered or moved must last
constexpr double kLeastInView = 0.97;    // of the cells
constexpr double kClearOfCutter = 40.0;  // mm before its front the cloth is taken to be bare
constexpr double kSlow = 0.08;           // s between frames of a slow camera
constexpr double kPlain = 2.0;           // times what counts as different
constexpr double kTells = 0.1;           // s over which a thing is seen before it is told

}  // namespace

std::string words(Blindness reason) {
  switch (reason) {
    case Blindness::none:
      return "";
    case Blindness::no_picture:
      return "The camera sends no picture. Check its cable.";
    case Blindness::frozen:
      return "The camera's picture stands still. Unplug the camera and plug it in again.";
    case Blindness::too_dark:
      return "It is too dark to watch the cloth. Give the room more light.";
    case Blindness::covered:
      return "Most of the way ahead is hidden, or the cloth is not the one that was learnt. Uncover it, or "
             "learn the "
             "bare cloth again.";
    case Blindness::moved:
      return "The camera or the table has moved. Locate the camera again, and learn the bare cloth.";
    case Blindness::out_of_view:
      return "Part of the way ahead is out of the camera's sight. Move the cloth, or place the camera "
             "higher.";
  }
  return "";
}

CorridorWatch::CorridorWatch(const Backdrop& backdrop, const Corridor& corridor)
    : sight_(backdrop.sight()),
      strip_(corridor_strip(corridor)),
      view_(seen_by(strip_, sight_)),
      expectation_(backdrop, strip_),
      following_(strip_),
      anchors_(backdrop.still(), sight_) {
  // What lies before the stroke's start may be out of sight.
  const int first = static_cast<int>(Strip::before / Strip::cell);
  const cv::Mat path =
      expectation_.known().colRange(first, strip_.columns - static_cast<int>(10.0 / Strip::cell));
  out_of_view_ = cv::countNonZero(path) < kLeastInView * static_cast<double>(path.total());
}

void CorridorWatch::project(const cv::Mat& picture, double seconds) {
  expectation_.project(light_strip(view_, picture), seconds);
}

Blindness CorridorWatch::blindness(const cv::Mat& frame, double seconds) {
  if (!last_cells_.empty() && cv::norm(cells_, last_cells_, cv::NORM_INF) == 0.0) {
    if (seconds - changed_last_ > kFrozen) return Blindness::frozen;
  } else {
    changed_last_ = seconds;
  }
  cells_.copyTo(last_cells_);
  if (out_of_view_) return Blindness::out_of_view;
  if (!anchors_.moved(frame)) still_last_ = seconds;
  if (seconds - still_last_ > kPatience) return Blindness::moved;
  if (compared_.strength < kDark) return Blindness::too_dark;
  const int first =
      std::clamp(static_cast<int>((following_.front() + Strip::before) / Strip::cell), 0, strip_.columns);
  const cv::Mat rest = compared_.foreign.colRange(first, strip_.columns);
  const bool hidden =
      rest.cols * Strip::cell > 60.0 && cv::countNonZero(rest) > kCovered * static_cast<double>(rest.total());
  if (!hidden) sound_last_ = seconds;
  if (seconds - sound_last_ > kPatience) return Blindness::covered;
  return Blindness::none;
}

WatchReport CorridorWatch::look(const cv::Mat& frame, double seconds) {
  WatchReport report;
  report.front = following_.front();
  if (frame.type() != CV_8UC3 || frame.cols != sight_.camera.width || frame.rows != sight_.camera.height) {
    if (seen_last_ < 0.0) seen_last_ = seconds;
    if (seconds - seen_last_ >= kGone) {
      report.state = WatchState::cannot_see;
      report.reason = Blindness::no_picture;
    }
    return report;
  }
  if (seen_last_ < 0.0) changed_last_ = sound_last_ = still_last_ = seconds;
  seen_last_ = seconds;
  if (before_ >= 0.0) step_ = 0.8 * step_ + 0.2 * std::clamp(seconds - before_, 0.01, 0.3);
  before_ = seconds;

  cells_ = camera_strip(view_, frame);
  const int beyond = static_cast<int>((following_.front() + kClearOfCutter + Strip::before) / Strip::cell);
  compared_ = expectation_.compare(cells_, seconds, beyond);
  const std::vector<Blob> blobs = following_.step(compared_.foreign, compared_.excess, seconds);
  report.front = following_.front();
  report.reason = blindness(frame, seconds);
  if (report.reason != Blindness::none) {
    report.state = WatchState::cannot_see;
    return report;
  }
  // Two frames of a slow camera would be too late: there what is plain is told at once.
  const bool settling = expectation_.settling(seconds);
  const int needed = std::max(2, static_cast<int>(std::lround(kTells / step_)));
  for (const Blob& blob : blobs)
    if (blob.frames >= needed || (step_ > kSlow && blob.excess > kPlain && !settling))
      report.blobs.push_back(blob);
  if (!report.blobs.empty()) report.state = WatchState::marked;
  return report;
}

}  // namespace cowlcast::projector
