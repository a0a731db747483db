#include "projector/cutting/table_watch.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "calibration/refusal.h"
#include "calibration/watch/recalibrate.h"
#include "calibration/watch/since_located.h"

namespace cowlcast::projector {
namespace {

using namespace calibration;

constexpr Light kPictures[] = {Light::dark, Light::plain, Light::marked, Light::grey};
constexpr double kPatience = 20.0;  // seconds that learning may take
constexpr double kSilence = 2.0;    // seconds without a picture that end it
constexpr double kNews = 20.0;      // seconds that news stay on the table
// By how much a move must differ from the one that was told to be told anew: mm, and share of it.
constexpr double kOther = 0.8, kOtherShare = 0.3;

const std::string kNotYet = "The table is not watched yet.";

}  // namespace

TableWatch::TableWatch(TableMap map, FixedCamera camera) : map_(std::move(map)), camera_(std::move(camera)) {}

void TableWatch::begin_learning(double seconds) {
  state_ = State::learning;
  still_.emplace(StillSettings{.pictures = static_cast<int>(std::size(kPictures))});
  since_ = frame_ = seconds;
}

void TableWatch::ask(double seconds) {
  if (state_ == State::learning) return;
  if (!gone_.empty()) return;  // that is said already
  news_.clear();
  begin_learning(seconds);
}

// Back to where learning began.
void TableWatch::give_up(const std::string& reason, double seconds) {
  still_.reset();
  state_ = !watch_ ? State::waiting : told_ > 0.0 ? State::moved : State::watching;
  if (state_ != State::watching) {
    reason_ = reason;
    return;
  }
  news_ = reason;
  news_until_ = seconds + kNews;
}

void TableWatch::look(const cv::Mat& grey, double seconds) {
  if (grey.cols != camera_.width || grey.rows != camera_.height) {
    without_picture("The camera sends pictures of another size than when it was located.", seconds);
    return;
  }
  frame_ = seconds;
  gone_.clear();
  if (seconds > news_until_) news_.clear();
  if (state_ == State::learning) {
    still_->look(grey, seconds);
    if (still_->done())
      finish(seconds);
    else if (seconds - since_ > kPatience)
      give_up("The camera has not seen the table at rest: something moves in its view, or lamps flicker.",
              seconds);
    return;
  }
  if (watch_) judge(watch_->look(grey, seconds));
}

void TableWatch::without_picture(const std::string& complaint, double seconds) {
  if (!complaint.empty()) gone_ = complaint;
  if (state_ == State::learning && seconds - frame_ > kSilence)
    give_up(gone_.empty() ? "The camera sends no pictures." : gone_, seconds);
}

void TableWatch::finish(double seconds) {
  const WatchPictures pictures{still_->frames(0), still_->frames(1), still_->frames(2)};
  still_.reset();
  try {
    if (watch_)
      find_again(pictures, seconds);
    else
      learn(pictures);
    state_ = State::watching;
    reason_.clear();
    told_ = 0.0;
    unseen_ = false;
  } catch (const Refusal& refusal) {
    give_up(refusal.what(), seconds);
  }
}

void TableWatch::learn(const WatchPictures& pictures) {
  Watch watch = Watch::learn(map_, camera_, pictures);
  if (const auto reason = moved_since_located(watch, pictures)) throw Refusal(*reason);
  watch_ = std::move(watch);
}

// The watch that saw the move tells where everything is now; then the table is learnt as it stands.
void TableWatch::find_again(const WatchPictures& pictures, double seconds) {
  const Recalibration again = recalibrate(*watch_, pictures);
  watch_ = Watch::learn(again.map, again.camera, pictures);
  map_ = again.map;
  camera_ = again.camera;
  if (!again.motion.moved.empty()) ++found_again_;
  news_ = again.summary;
  news_until_ = seconds + kNews;
}

void TableWatch::judge(const WatchReport& report) {
  if (report.state == WatchState::moved) {
    double mm = 0.0;
    for (const Moved& moved : report.moved) mm = std::max(mm, moved.mm);
    // The same move, read a little otherwise from frame to frame, is told once.
    if (state_ == State::moved && std::abs(mm - told_) < std::max(kOther, kOtherShare * told_)) return;
    state_ = State::moved;
    told_ = mm;
    reason_ = report.message;
    news_.clear();
    return;
  }
  if (state_ == State::moved) return;
  unseen_ = report.state == WatchState::unseen;
  reason_ = report.message;
}

WatchStanding TableWatch::standing() const {
  using Kind = WatchStanding::Kind;
  if (state_ == State::learning) return {Kind::learning};
  if (!gone_.empty()) return {Kind::gone, gone_};
  if (state_ == State::waiting) return {Kind::not_learnt, reason_};
  if (state_ == State::moved) return {Kind::moved, reason_};
  return unseen_ ? WatchStanding{Kind::unseen, reason_} : WatchStanding{Kind::watching, news_};
}

CuttingView TableWatch::said(CuttingView view) const {
  view.border_marks = true;
  view.camera_asked = false;
  view.light = state_ == State::learning ? kPictures[still_->wanted()] : Light::lines;
  view.camera = CameraAsk::by_look;
  view.notice = {};
  const bool cutting = view.phase == Phase::cutting;
  if (state_ == State::learning) {
    view.camera = CameraAsk::none;
    return blocked(std::move(view), "");
  }
  if (!gone_.empty()) {
    view.camera = CameraAsk::none;
    view.notice.words = "Nobody watches the table. " + gone_;
    return blocked(std::move(view), state_ == State::moved ? reason_ : std::string());
  }
  switch (state_) {
    case State::waiting: {
      view = blocked(std::move(view), cutting ? kNotYet + (reason_.empty() ? "" : " " + reason_) : "",
                     "Lay the cloth clear of the marks of light and of the tags, then stand clear for some "
                     "seconds.");
      if (!view.block.empty()) view.camera = CameraAsk::by_next;
      const bool waived = cutting && view.block.empty();
      if (waived) view.notice.words = "Nobody watches the table. R: the camera learns it.";
      return view;
    }
    case State::moved:
      view =
          blocked(std::move(view), reason_,
                  "Tags and marks may tell where all is now: let the camera look, and stand clear for some "
                  "seconds.");
      if (view.block.empty()) view.notice.words = "Cut in spite of a move. R: the camera looks again.";
      return view;
    default:
      view.notice.words = news_;
      return blocked(std::move(view), unseen_ ? reason_ : std::string(),
                     news_.empty() ? "The lines come back when it sees enough." : news_);
  }
}

}  // namespace cowlcast::projector
