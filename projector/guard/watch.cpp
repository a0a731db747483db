#include "projector/guard/watch.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>
#include <utility>

namespace cowlcast::projector {
namespace {

constexpr double kGone = 0.5;          // s without a picture
constexpr double kFrozen = 0.7;        // s of pictures that are the same to the last bit
constexpr double kDark = 0.1;          // of the light that was learnt
constexpr double kCovered = 0.6;       // of the corridor ahead
constexpr double kPatience = 0.4;      // s that covered or moved must last
constexpr double kLeastInView = 0.97;  // of the cells
constexpr double kLeastRest = 60.0;    // mm of the corridor: of less it is not asked whether it is covered
constexpr double kDeepShade = 0.6;     // of the light around: no shadow of a person is as even and as dark
constexpr double kSettles = 0.35;      // s: camera and projector have caught up with a change by then
constexpr double kBetter = 0.7;        // of the misfit: then the one picture is seen, not the other
constexpr int kAround = 80;            // pixels about the strip by which the light is measured
constexpr double kSlow = 0.08;         // s between frames of a slow camera
constexpr double kPlain = 2.0;         // times what counts as different
constexpr double kOnLines = 0.5;       // of a thing: more of it may be the lines themselves
constexpr float kSteady = 0.03f;       // change of light from frame to frame, its logarithm
constexpr double kRather = 1.5;        // halfway from different to plain
constexpr double kTooSlow = 0.15,
                 kNotSlow = 0.13;  // s between frames: too slow from the one, until the other
constexpr double kTells = 0.1;     // s over which a thing is seen before it is told

bool about_same(const MeasuredLight& a, const MeasuredLight& b) {
  bool same = a.measured && b.measured && std::abs(std::log(a.beam / b.beam)) < kSteady;
  for (size_t c = 0; c < 3; ++c) same = same && std::abs(std::log(a.room[c] / b.room[c])) < kSteady;
  return same;
}

// The part of a frame that holds the strip, and what is around it.
cv::Rect box_around(const StripView& view, const cv::Size& frame) {
  cv::Rect box;
  for (int r = 0; r < view.seen.rows; ++r)
    for (int c = 0; c < view.seen.cols; ++c)
      if (view.seen.at<uchar>(r, c) != 0) {
        const cv::Vec2f at = view.camera.at<cv::Vec2f>(r, c);
        const cv::Rect one(static_cast<int>(at[0]), static_cast<int>(at[1]), 1, 1);
        box = box.empty() ? one : box | one;
      }
  if (box.empty()) return {{0, 0}, frame};  // all of it is out of view: that will be told
  box = cv::Rect(box.x - kAround, box.y - kAround, box.width + 2 * kAround, box.height + 2 * kAround);
  return box & cv::Rect({0, 0}, frame);
}

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
      return "Most of the way ahead is hidden, or the cloth does not lie as it was learnt. Uncover it, or "
             "smooth "
             "it back. Else press U, lay the piece anew, and R: the camera learns the cloth.";
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
      meter_(backdrop, box_around(view_, {sight_.camera.width, sight_.camera.height})),
      expectation_(backdrop, view_, meter_.box()),
      following_(strip_),
      power_(backdrop.power()),
      anchors_(backdrop) {
  // What lies before the stroke's start may be out of sight.
  const int first = static_cast<int>(Strip::before / Strip::cell);
  const cv::Mat path = expectation_.known()
                           .rowRange(strip_.corridor)
                           .colRange(first, strip_.columns - static_cast<int>(10.0 / Strip::cell));
  out_of_view_ = cv::countNonZero(path) < kLeastInView * static_cast<double>(path.total());
}

void CorridorWatch::begin_in(const MeasuredLight& light) {
  if (!light.measured) return;
  meter_.begin_in(light);
  light_.room = light.room;
  light_.beam = light.beam;
  light_.measured = true;
}

void CorridorWatch::project(const cv::Mat& picture, double seconds) {
  hurried_ = seconds - projected_ < kSettles;
  expectation_.project(light_strip(view_, picture, power_), hurried_);
  meter_.project(picture, hurried_);
  projected_ = seconds;
  arrived_ = false;
}

// Which picture the camera sees, by which of them fits better.
Pictures CorridorWatch::seen_pictures(double seconds) {
  if (seconds - projected_ > kSettles) arrived_ = true;
  if (arrived_) return Pictures::now;
  if (hurried_) return Pictures::either;
  if (light_.old_picture < kBetter) return Pictures::before;
  // The frame in which it arrives may show some of both.
  if (light_.old_picture > 1.0 / kBetter) arrived_ = true;
  return Pictures::either;
}

Blindness CorridorWatch::blindness(const cv::Mat& frame, double seconds) {
  const cv::Mat box = frame(meter_.box());
  if (!last_.empty() && cv::norm(box, last_, cv::NORM_INF) == 0.0) {
    if (seconds - changed_last_ > kFrozen) return Blindness::frozen;
  } else {
    changed_last_ = seconds;
  }
  box.copyTo(last_);
  if (out_of_view_) return Blindness::out_of_view;
  if (!anchors_.moved(frame)) still_last_ = seconds;
  if (seconds - still_last_ > kPatience) return Blindness::moved;
  if (*std::max_element(light_.room.begin(), light_.room.end()) < kDark) return Blindness::too_dark;
  if (!covered_) sound_last_ = seconds;
  if (seconds - sound_last_ > kPatience) return Blindness::covered;
  return Blindness::none;
}

// Whether most of what is left of the corridor is hidden, or in a shade that the cloth around is not in.
bool CorridorWatch::covered() const {
  if (!light_.measured) return true;
  const int first =
      std::clamp(static_cast<int>((following_.front() + Strip::before) / Strip::cell), 0, strip_.columns);
  if ((strip_.columns - first) * Strip::cell < kLeastRest) return false;
  const cv::Range rest(first, strip_.columns);
  const cv::Mat foreign = compared_.foreign(strip_.corridor, rest),
                dim = compared_.share(strip_.corridor, rest) < kDeepShade;
  return cv::countNonZero(foreign | dim) > kCovered * static_cast<double>(foreign.total());
}

// Whether printed cloth is being dragged about it.
bool CorridorWatch::cloth_moves(const Blob& blob) const {
  const auto column = [](double along) { return static_cast<int>((along + Strip::before) / Strip::cell); };
  return expectation_.cloth_moves(column(blob.along), column(blob.along + blob.length));
}

// The second frame of a slow camera would be too late: there what is plain is told at once, and all else
// where neither light nor picture has changed since the frame before, which is what might look like a thing.
// What lies off all lines asks of the light alone.
bool CorridorWatch::told_at_once(const Blob& blob, bool steady, bool one_picture) const {
  const bool on_lines = blob.on_lines >= kOnLines;
  if (blob.excess > kPlain && !chased_) return true;
  if (on_lines && (!one_picture || blob.excess <= kRather)) return false;
  return steady && !cloth_moves(blob);
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
  slow_ = step_ > (slow_ ? kNotSlow : kTooSlow);
  report.slow = slow_;

  const cv::Mat linear = linear_light(frame(meter_.box()));
  const MeasuredLight was = std::exchange(light_, meter_.measure(linear, !arrived_));
  const bool steady = about_same(was, light_);
  chased_ = hurried_ && seconds - projected_ <= kSettles;
  const Pictures pictures = seen_pictures(seconds);
  compared_ = expectation_.compare(linear, light_, pictures,
                                   static_cast<int>((report.front + Strip::before) / Strip::cell));
  covered_ = covered();
  const std::vector<Blob> blobs =
      following_.step(compared_.foreign, compared_.sure, compared_.lines, seconds, !covered_);
  report.front = following_.front();
  report.reason = blindness(frame, seconds);
  if (report.reason != Blindness::none) {
    report.state = WatchState::cannot_see;
    return report;
  }
  const int needed = std::max(2, static_cast<int>(std::lround(kTells / step_)));
  for (const Blob& blob : blobs)
    if (blob.frames >= needed || (step_ > kSlow && told_at_once(blob, steady, pictures != Pictures::either)))
      report.blobs.push_back(blob);
  if (!report.blobs.empty()) report.state = WatchState::marked;
  return report;
}

}  // namespace cowlcast::projector
