#include "projector/guard/cut_watch.h"

#include <algorithm>
#include <opencv2/imgproc.hpp>
#include <utility>

#include "calibration/refusal.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr size_t kDark = 0, kPlain = 1, kGrey = 3;  // of the pictures by which the table is learnt
constexpr double kCaution = 12.0;  // s that the caution stays on the table when cutting begins

static_assert(kGreyLevel == Backdrop::kFaint, "the grey that is shown is the one that is learnt");

const std::string kAid =
    "The camera looks ahead of the blade. It is an aid and misses things: watch your other hand.";
const std::string kSlow =
    "The camera sends fewer than seven pictures a second, so it tells late. Give it more light, or set it to "
    "smaller pictures.";
const std::string kNobody = "Nobody looks ahead of the blade. ";
const std::string kBlindToShift =
    "It hardly sees whether this cloth is dragged: look yourself after each stroke, or chalk three crosses "
    "beside the lines and press R.";
const std::string kPutBack =
    "Smooth it back the way the arrows point, until the lines come back by themselves. "
    "Or press U and lay the piece anew on the cloth as it lies.";
const std::string kFinish = "Stop, and smooth it back.";
const std::string kLearntAnew =
    "The camera has learnt the cloth as it lies now: see that the lines still meet what is cut.";
const std::string kInSpite = "Cut in spite of cloth that has shifted.";
constexpr double kUnderWay = 30.0;  // mm of a stroke
constexpr double kOther = 1.0;  // mm by which a shift must differ from the one that was told to be told anew

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

// The way back, where the cloth is seen to have gone.
std::vector<Mark> arrows(const ToldShift& shift, const FrameStyle& style) {
  constexpr double kLength = 60.0, kHead = 14.0, kApart = 110.0;  // mm
  Mark mark{.lines = {}, .width = 2.5, .colour = style.warn};
  const Point back = -shift.by.normalized(), side(-back.y(), back.x());
  std::vector<Point> taken;
  for (const Point& place : shift.places) {
    if (std::any_of(taken.begin(), taken.end(),
                    [&](const Point& other) { return (other - place).norm() < kApart; }))
      continue;
    taken.push_back(place);
    const Point tip = place + 0.5 * kLength * back;
    mark.lines.push_back({place - 0.5 * kLength * back, tip});
    mark.lines.push_back({tip - kHead * (back + 0.6 * side), tip, tip - kHead * (back - 0.6 * side)});
  }
  std::vector<Mark> marks;
  for (Polyline& line : mark.lines)
    marks.push_back({.lines = {std::move(line)}, .width = mark.width, .colour = mark.colour});
  return marks;
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
    if (!backdrop_) return;
    std::optional<ClothShift> before = std::move(shift_);
    shift_.emplace(*backdrop_);
    // That it is learnt anew amid cutting puts nothing right.
    if (before && glimpse.view.phase == Phase::cutting && laid_) {
      shift_->owes(*before, glimpse.seconds);
      if (glimpse.view.cut > 0) learnt_until_ = glimpse.seconds + kCaution;
    }
    laid_ = glimpse.view.phase == Phase::cutting;
    where_ = {};
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

// What is projected, for the camera's watches.
const cv::Mat& CutWatch::picture_of(const Glimpse& glimpse) {
  if (const long long key = glimpse.shown.cacheKey(); key != light_key_) {
    light_key_ = key;
    light_ = bgr_of(glimpse.shown);
  }
  return light_;
}

void CutWatch::follow_picture(const Glimpse& glimpse) {
  const long long shown = glimpse.shown.cacheKey();
  if (shown == shown_) return;
  shown_ = shown;
  picture_ = picture_of(glimpse);
  pictured_ = glimpse.seconds;
  watch_->project(picture_, glimpse.seconds);
}

bool CutWatch::blade_under_way() const {
  return watch_ && front_ > kUnderWay;
}

// Whether the cloth about the stroke that comes next lies as it lay when the piece was laid.
void CutWatch::follow_cloth(const Glimpse& glimpse, const cv::Mat& frame) {
  const CuttingView& view = glimpse.view;
  const bool cutting = view.phase == Phase::cutting;
  if (!shift_ || frame.size() != cv::Size(glimpse.camera.width, glimpse.camera.height) ||
      view.light != Light::lines)
    return;
  if (cutting && !laid_) shift_->laid();
  laid_ = cutting;
  if (!cutting || all_cut(view)) return;
  ClothShift::Where where{.stroke = laid(view.laying, view.plan[static_cast<size_t>(view.cut)].path),
                          .piece = laid(view.laying, view.piece.cut_line),
                          .cut = {}};
  for (int i = 0; i < view.cut; ++i)
    where.cut.push_back(laid(view.laying, view.plan[static_cast<size_t>(i)].path));
  if (where.stroke != where_.stroke || where.cut != where_.cut) {
    shift_->about(where);
    where_ = std::move(where);
    front_ = 0.0;
  }
  std::optional<Point> blade;
  if (blade_under_way()) blade = drafting::point_at(where_.stroke, front_);
  shift_->look(frame, picture_of(glimpse), glimpse.seconds, blade);
  const auto& told = shift_->told();
  if (!told) {
    shifted_.clear();
  } else if (shifted_.empty() || (told->by - by_).norm() > kOther) {
    shifted_ = words(*told);
    by_ = told->by;
  }
}

void CutWatch::look(const Glimpse& glimpse) {
  now_ = glimpse.seconds;
  if (!taken_.empty()) know_cloth(glimpse);
  const cv::Mat frame = in_colour(glimpse.picture);
  follow_cloth(glimpse, frame);
  if (!follow_stroke(glimpse)) {
    front_ = 0.0;
    calm_ = {};
    return;
  }
  follow_picture(glimpse);
  const WatchReport report = watch_->look(frame, glimpse.seconds);
  front_ = report.front;
  slow_ = report.slow;
  calm_.after(report, glimpse.seconds);
  if (calm_.begun() && warning().state == WatchState::marked && sound_) sound_();
}

CuttingView CutWatch::said(CuttingView view) const {
  const auto say = [&view](const std::string& words) {
    view.notice.words = words + (view.notice.words.empty() ? "" : " ") + view.notice.words;
  };
  if (view.phase != Phase::cutting || all_cut(view) || !view.block.empty()) return view;
  if (!shifted_.empty() && !blade_under_way()) {
    view = blocked(std::move(view), shifted_, kPutBack);
    if (!view.block.empty()) {
      if (shift_ && shift_->told()) view.notice.marks = arrows(*shift_->told(), view.style);
      return view;
    }
  }
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
    say(shift_ && !shift_->sees() ? kAid + " " + kBlindToShift : kAid);
  if (watch_ && slow_ && now.state != WatchState::cannot_see) say(kSlow);
  if (now_ < learnt_until_) say(kLearntAnew);
  if (!shifted_.empty()) say(blade_under_way() ? shifted_ + " " + kFinish : kInSpite);
  return view;
}

Watching watching_by(const calibration::TableMap& map, const calibration::FixedCamera& camera,
                     std::function<void()> sound) {
  Watching watching(TableWatch(map, camera));
  watching.add(std::make_unique<CutWatch>(std::move(sound)));
  return watching;
}

}  // namespace cowlcast::projector
