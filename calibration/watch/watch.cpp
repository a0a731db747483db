#include "calibration/watch/watch.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "calibration/watch/edge_tags.h"
#include "calibration/watch/pictures.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kAlarm = 0.6;        // mm: a move that size is told; every move of 1 mm is, noise and all
constexpr double kMoments = 0.45;     // seconds over which shifts settle
constexpr size_t kFewestGlances = 3;  // frames in them
constexpr int kAgree = 2;             // settled looks in a row that must speak of a move
constexpr int kTags = 3, kMarks = 5;  // in view, to tell
constexpr double kPatience = 3.0;     // seconds of too little in view before it is said
constexpr int kSearchReach = 14;      // pixels
constexpr int kWide = 90;             // pixels: where a lost tag is looked for when few are left
constexpr double kSystematic = 0.03;  // pixels of a settled shift that no averaging takes away

std::vector<Sight> sights_of(const std::vector<WatchedSight>& watched) {
  std::vector<Sight> out;
  for (const WatchedSight& sight : watched) out.push_back(sight.sight);
  return out;
}

double median(std::vector<double>& values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

std::string told(const Motion& motion) {
  std::string out;
  for (const Moved& one : motion.moved) {
    out += out.empty() ? "The " : ", and the ";
    out += name_of(one.what);
    if (!motion.sure && one.what != Mover::camera) out += " or the camera";
    out += " moved, by up to " + fixed(one.mm, 1) + " mm";
  }
  return out + ". The lines are no longer right: put the blade down.";
}

}  // namespace

Watch::Watch(TableMap map, FixedCamera camera, std::vector<WatchedSight> sights)
    : map_(std::move(map)),
      camera_(std::move(camera)),
      sights_(std::move(sights)),
      motions_(map_, camera_, sights_of(sights_)),
      last_(sights_.size(), Eigen::Vector2d::Zero()),
      lost_(sights_.size(), 0) {}

Watch::Glance Watch::glance(const cv::Mat& grey, double seconds) {
  Glance out{seconds, std::vector<std::optional<Eigen::Vector2d>>(sights_.size())};
  for (size_t i = 0; i < sights_.size(); ++i)
    if (const auto found = sights_[i].tracker.track(grey, last_[i])) out.shifts[i] = found->shift;
  find_lost(grey, out);
  for (size_t i = 0; i < sights_.size(); ++i) {
    if (out.shifts[i]) {
      last_[i] = *out.shifts[i];
      lost_[i] = 0;
    } else {
      ++lost_[i];
      if (lost_[i] % 4 == 0) last_[i].setZero();  // begin again from where it was learnt
    }
  }
  return out;
}

// One of the lost is searched for in every frame; when tags are few, one more over a wider part of it.
void Watch::find_lost(const cv::Mat& grey, Glance& glance) {
  const auto next = [&](size_t& turn, auto wanted) -> std::optional<size_t> {
    for (size_t step = 0; step < sights_.size(); ++step) {
      const size_t i = (turn + step) % sights_.size();
      if (glance.shifts[i] || !wanted(sights_[i].sight.kind)) continue;
      turn = i + 1;
      return i;
    }
    return std::nullopt;
  };
  const auto try_from = [&](size_t i, const Eigen::Vector2d& guess) {
    if (const auto found = sights_[i].tracker.track(grey, guess)) glance.shifts[i] = found->shift;
  };
  if (const auto i = next(next_lost_, [](SightKind kind) { return kind != SightKind::room; }))
    if (const auto guess = sights_[*i].tracker.search(grey, {0.0, 0.0}, kSearchReach)) try_from(*i, *guess);
  int tags = 0;
  for (size_t i = 0; i < sights_.size(); ++i)
    tags += sights_[i].sight.kind == SightKind::tag && glance.shifts[i] ? 1 : 0;
  if (tags >= kTags) return;
  const auto i = next(next_tag_, [](SightKind kind) { return kind == SightKind::tag; });
  if (!i) return;
  const cv::Rect& box = sights_[*i].tracker.box();
  const cv::Rect part =
      cv::Rect(box.x - kWide, box.y - kWide, box.width + 2 * kWide, box.height + 2 * kWide) &
      cv::Rect({0, 0}, grey.size());
  for (const FoundMarker& marker : find_edge_tags(grey(part))) {
    if (edge_tag_code(sights_[*i].number) != marker.code) continue;
    Eigen::Vector2d middle(part.x, part.y);
    for (const Eigen::Vector2d& corner : marker.corners) middle += 0.25 * corner;
    try_from(*i, middle - sights_[*i].sight.pixel);
  }
}

// Medians over the last moments: passing hands and single wrong frames have no say.
std::vector<std::optional<SightShift>> Watch::settled() const {
  std::vector<std::optional<SightShift>> out(sights_.size());
  std::vector<double> xs, ys;
  for (size_t i = 0; i < sights_.size(); ++i) {
    xs.clear();
    ys.clear();
    for (const Glance& glance : glances_)
      if (glance.shifts[i]) {
        xs.push_back(glance.shifts[i]->x());
        ys.push_back(glance.shifts[i]->y());
      }
    if (xs.size() * 2 <= glances_.size()) continue;
    const double count = static_cast<double>(xs.size());
    out[i] = SightShift{{median(xs), median(ys)},
                        std::hypot(1.25 * sights_[i].sigma / std::sqrt(count), kSystematic)};
  }
  return out;
}

WatchReport Watch::look(const cv::Mat& grey, double seconds) {
  glances_.push_back(glance(grey, seconds));
  while (glances_.size() > kFewestGlances && seconds - glances_.front().seconds > kMoments)
    glances_.pop_front();

  WatchReport report = latched_;
  report.tags = report.marks = 0;
  report.shift = 0.0;
  const std::vector<std::optional<SightShift>> shifts = settled();
  int tags = 0, marks = 0;
  for (size_t i = 0; i < sights_.size(); ++i) {
    const bool now = glances_.back().shifts[i].has_value(), lately = shifts[i].has_value();
    const SightKind kind = sights_[i].sight.kind;
    report.tags += kind == SightKind::tag && now ? 1 : 0;
    report.marks += kind == SightKind::mark && now ? 1 : 0;
    tags += kind == SightKind::tag && lately ? 1 : 0;
    marks += kind == SightKind::mark && lately ? 1 : 0;
  }
  if (glances_.size() < kFewestGlances) return report;

  const bool enough = tags >= kTags && marks >= kMarks;
  const Motion motion = motions_.explain(shifts);
  report.shift = motion.mm;
  agreeing_ = motion.mm >= kAlarm ? agreeing_ + 1 : 0;
  if (enough) unseen_since_.reset();
  if (agreeing_ >= kAgree || (latched_.state == WatchState::moved && agreeing_ > 0)) {
    report.state = WatchState::moved;
    report.moved = motion.moved;
    report.message = told(motion);
    latched_ = report;
    return report;
  }
  if (enough) {
    if (latched_.state != WatchState::moved) {
      report.state = WatchState::steady;
      report.moved.clear();
      report.message.clear();
      latched_ = report;
    }
    return report;
  }
  if (!unseen_since_) unseen_since_ = seconds;
  if (latched_.state != WatchState::moved && seconds - *unseen_since_ >= kPatience) {
    report.state = WatchState::unseen;
    report.moved.clear();
    report.message = tags < kTags && marks < kMarks
                         ? "The camera sees neither tags nor marks where they were. Clear its view; if it "
                           "was knocked, calibrate again."
                     : tags < kTags ? "The camera does not see the tags at the mat's edge. Clear them; if "
                                      "the mat was moved, calibrate again."
                                    : "The camera does not see the marks at the border of the light. Clear "
                                      "them; if the projector was moved, calibrate again.";
    latched_ = report;
  }
  return report;
}

}  // namespace cowlcast::calibration
