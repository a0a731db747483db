#include "projector/guard/overlay.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace cowlcast::projector {
namespace {

constexpr double kLeastRadius = 22.0;  // mm of a ring
constexpr double kClearance = 12.0;    // mm from a thing to its ring
constexpr double kMoved = 12.0;        // mm: less is not redrawn

double radius_of(const Blob& blob) {
  return std::max(kLeastRadius, 0.5 * std::hypot(blob.length, blob.width) + kClearance);
}

Polyline ring(const Point& centre, double radius) {
  Polyline out;
  constexpr int steps = 48;
  for (int k = 0; k < steps; ++k) {
    const double angle = 2.0 * std::numbers::pi * k / steps;
    out.push_back(centre + radius * Point(std::cos(angle), std::sin(angle)));
  }
  return out;
}

// Whether rings drawn for the one still stand around the other.
bool about_same(const std::vector<Blob>& a, const std::vector<Blob>& b) {
  return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [](const Blob& x, const Blob& y) {
           return (x.place - y.place).norm() < kMoved && std::abs(radius_of(x) - radius_of(y)) < kMoved;
         });
}

}  // namespace

bool Warning::same_as(const Warning& other) const {
  return state == other.state && reason == other.reason &&
         std::equal(blobs.begin(), blobs.end(), other.blobs.begin(), other.blobs.end(),
                    [](const Blob& a, const Blob& b) {
                      return a.place == b.place && a.length == b.length && a.width == b.width;
                    });
}

const Warning& CalmWatch::after(const WatchReport& report, double seconds) {
  begun_ = false;
  const Warning told{report.state, report.reason, report.blobs};
  if (told.state == shown_.state && told.reason == shown_.reason) {
    wanted_ = seconds;
    if (!about_same(told.blobs, shown_.blobs) && seconds - drawn_ >= kMove) {
      shown_.blobs = told.blobs;
      drawn_ = seconds;
    }
    return shown_;
  }
  // A warning comes at once, unless the last change was just now; it goes after a while of none.
  const bool warns = told.state != WatchState::clear;
  const bool may =
      warns ? seconds - since_ >= kMove : seconds - since_ >= kHold && seconds - wanted_ >= kHold;
  if (!may) return shown_;
  begun_ = warns;
  shown_ = told;
  since_ = wanted_ = drawn_ = seconds;
  return shown_;
}

Mark rings_of(const Warning& warning, const FrameStyle& style) {
  Mark rings{.lines = {}, .closed = true, .width = 4.0, .colour = style.warn};
  for (const Blob& blob : warning.blobs) rings.lines.push_back(ring(blob.place, radius_of(blob)));
  return rings;
}

}  // namespace cowlcast::projector
