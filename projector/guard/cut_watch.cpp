#include "projector/guard/cut_watch.h"

#include <opencv2/imgproc.hpp>
#include <utility>

#include "calibration/refusal.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr size_t kDark = 0, kPlain = 1, kGrey = 3;  // of the pictures by which the table is learnt
constexpr double kCaution = 12.0;  // s that the caution stays on the table when cutting begins

static_assert(kGreyLevel == Backdrop::kFaint, "the grey that is shown is the one that is learnt");

const std::string kAid =
    "The camera looks ahead of the blade. It is an aid and misses things: watch your other hand.";
const std::string kNobody = "Nobody looks ahead of the blade. ";

cv::Mat in_colour(const cv::Mat& picture) {
  if (picture.channels() == 3) return picture.clone();
  cv::Mat colour;
  if (!picture.empty()) cv::cvtColor(picture, colour, cv::COLOR_GRAY2BGR);
  return colour;
}

cv::Mat bgr_of(const QImage& image) {
  const QImage same =
      image.format() == QImage::Format_RGB32 ? image : image.convertToFormat(QImage::Format_RGB32);
  cv::Mat out;
  cv::cvtColor(cv::Mat(same.height(), same.width(), CV_8UC4, const_cast<uchar*>(same.constBits()),
                       static_cast<size_t>(same.bytesPerLine())),
               out, cv::COLOR_BGRA2BGR);
  return out;
}

bool same(const Corridor& a, const Corridor& b) {
  return a.stroke == b.stroke && a.holding_left == b.holding_left && a.holding == b.holding;
}

}  // namespace

CutWatch::CutWatch(std::function<void()> sound) : sound_(std::move(sound)) {}

void CutWatch::learn(const Glimpse& glimpse, const calibration::StillFrames& taken) {
  watch_.reset();
  taken_.resize(kGrey + 1);
  for (size_t k = 0; k < taken_.size(); ++k) {
    const size_t count = taken.frames(static_cast<int>(k)).size();
    if (taken_[k].size() < count) taken_[k].push_back(in_colour(glimpse.picture));
    taken_[k].resize(std::min(taken_[k].size(), count));
  }
}

// After the table has been learnt.
void CutWatch::know_cloth(const Glimpse& glimpse) {
  const auto taken = std::exchange(taken_, {});
  backdrop_.reset();
  unready_.clear();
  try {
    Backdrop backdrop({glimpse.camera, glimpse.map, glimpse.view.laying.height});
    for (const cv::Mat& frame : taken[kDark]) backdrop.learn(frame, Backdrop::Light::none);
    for (const cv::Mat& frame : taken[kPlain]) backdrop.learn(frame, Backdrop::Light::full);
    for (const cv::Mat& frame : taken[kGrey]) backdrop.learn(frame, Backdrop::Light::faint);
    if (const auto why = backdrop.not_ready())
      unready_ = *why;
    else
      backdrop_ = std::move(backdrop);
  } catch (const calibration::Refusal& refusal) {
    unready_ = refusal.what();
  }
}

// False when there is no stroke to watch, or it cannot be.
bool CutWatch::follow_stroke(const Glimpse& glimpse) {
  const CuttingView& view = glimpse.view;
  if (view.phase != Phase::cutting || all_cut(view) || !view.block.empty() || view.light != Light::lines ||
      !backdrop_) {
    watch_.reset();
    return false;
  }
  const Corridor corridor{.stroke = laid(view.laying, view.plan[static_cast<size_t>(view.cut)].path),
                          .holding_left = view.overlay.hand == Hand::right,
                          .holding = view.overlay.band_from + view.overlay.band_width};
  if (watch_ && same(corridor, corridor_)) return true;
  if (!watch_) caution_until_ = glimpse.seconds + kCaution;
  corridor_ = corridor;
  unready_.clear();
  calm_ = {};
  const MeasuredLight light = watch_ ? watch_->light() : MeasuredLight{};
  try {
    watch_.emplace(*backdrop_, corridor);
    watch_->begin_in(light);
  } catch (const drafting::Refusal& refusal) {
    unready_ = refusal.what();
    watch_.reset();
    return false;
  }
  if (!picture_.empty()) watch_->project(picture_, pictured_);  // it may still be what is seen
  shown_ = 0;
  return true;
}

void CutWatch::follow_picture(const Glimpse& glimpse) {
  const long long shown = glimpse.shown.cacheKey();
  if (shown == shown_) return;
  shown_ = shown;
  picture_ = bgr_of(glimpse.shown);
  pictured_ = glimpse.seconds;
  watch_->project(picture_, glimpse.seconds);
}

void CutWatch::look(const Glimpse& glimpse) {
  now_ = glimpse.seconds;
  if (!taken_.empty()) know_cloth(glimpse);
  if (!follow_stroke(glimpse)) {
    calm_ = {};
    return;
  }
  follow_picture(glimpse);
  calm_.after(watch_->look(in_colour(glimpse.picture), glimpse.seconds), glimpse.seconds);
  if (calm_.begun() && warning().state == WatchState::marked && sound_) sound_();
}

CuttingView CutWatch::said(CuttingView view) const {
  const auto say = [&view](const std::string& words) {
    view.notice.words = words + (view.notice.words.empty() ? "" : " ") + view.notice.words;
  };
  if (view.phase != Phase::cutting || all_cut(view) || !view.block.empty()) return view;
  if (!unready_.empty()) {
    say(kNobody + unready_);
    return view;
  }
  const Warning& now = warning();
  if (now.state == WatchState::marked) {
    view.notice.marks.push_back(rings_of(now, view.style));
    view.notice.dim = true;
  }
  if (now.state == WatchState::cannot_see)
    say(kNobody + words(now.reason));
  else if (watch_ && now_ < caution_until_)
    say(kAid);
  return view;
}

Watching watching_by(const calibration::TableMap& map, const calibration::FixedCamera& camera,
                     std::function<void()> sound) {
  Watching watching(TableWatch(map, camera));
  watching.add(std::make_unique<CutWatch>(std::move(sound)));
  return watching;
}

}  // namespace cowlcast::projector
