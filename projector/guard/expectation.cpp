#include "projector/guard/expectation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace cowlcast::projector {
namespace {

constexpr int kSteps = 1024;
constexpr float kNoises = 3.0f;      // standard deviations that count as different
constexpr float kSlack = 0.05f;      // share of a cell's light that may be off for the model's sake
constexpr float kBrighter = 1.1f;    // light may be more than was measured, by so much
constexpr float kFull = 0.95f;       // linear light from which a camera's level says nothing more
constexpr float kGlow = 1.4f;        // lines look brighter than they are where the camera sharpens
constexpr float kSharp = 0.07f;      // share of the light that a cell is off its neighbourhood
constexpr int kNeighbourhood = 11;   // cells, of that
constexpr float kMost = 4.0f;        // of an excess
constexpr int kSmear = 4;            // cells about a line over which a camera smears it
constexpr float kFineLight = 0.2f;   // of a cell's light: with less about, lines are no matter
constexpr size_t kFewestFine = 300;  // cells by which a camera's smear is told
constexpr double kUsual = 0.85;      // of these cells are smeared by so much at most
constexpr float kMostSmear = 0.15f;  // of a line's light
constexpr int kDense = 7;            // cells: where so many about a cell are foreign,
constexpr double kDensity = 0.45;    // by this share, it is more than a line
constexpr float kLiesStill = 0.15f;  // cells: cloth dragged by less is where it was
constexpr double kThrows = 0.5;      // of a shadow's area: what throws it is at least so large

struct Fit {
  float excess = kMost;  // in colour, and where brighter or darker than light explains
  float share = 1.0f;
  float slack = 1.0f;  // of the colour that is farthest off, linear light
};

float sum3(const float* v) {
  return v[0] + v[1] + v[2];
}

// How well light between `low` and `high`, as a whole a little stronger or dimmer, explains what is seen.
Fit fit_of(const float* seen, const float* low, const float* high, const float* noise) {
  const float whole = sum3(seen), dim = sum3(low), bright = sum3(high);
  const float floor = sum3(noise);
  Fit fit;
  fit.share = (whole + floor) / (std::clamp(whole, dim, bright) + floor);
  const float scale = std::clamp(fit.share, Expectation::kDarkestShadow, kBrighter);
  fit.excess = 0.0f;
  for (int c = 0; c < 3; ++c) {
    const float least = scale * low[c], most = scale * high[c];
    if (high[c] > kFull && seen[c] > kFull) continue;
    const float off = std::max({least - seen[c], seen[c] - most, 0.0f});
    const float slack = kNoises * noise[c] + kSlack * std::max(seen[c], least);
    if (c > 0 && off / slack <= fit.excess) continue;
    fit.excess = off / slack;
    fit.slack = slack;
  }
  return fit;
}

}  // namespace

Expectation::Expectation(const Backdrop& backdrop, const StripView& view, const cv::Rect& box) {
  pixel_from_cell_ = view.camera - cv::Scalar(box.x, box.y);
  local_from_cell_ =
      (pixel_from_cell_ + cv::Scalar::all(0.5)) * (1.0 / LightMeter::kShrink) - cv::Scalar::all(0.5);
  known_ = view.seen;
  const Look look = backdrop.look(box);
  cv::Mat room, full, told;
  cv::remap(look.room, room, pixel_from_cell_, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  cv::remap(look.projector, full, pixel_from_cell_, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  cv::remap(look.told, told, pixel_from_cell_, cv::noArray(), cv::INTER_NEAREST, cv::BORDER_REPLICATE);
  learnt_ = {slipped_by_half(room), slipped_by_half(full)};
  // Where the learnt light was too much for the camera it may have been any.
  for (size_t i = 0; i < told.total(); ++i)
    if (told.data[i] == 0)
      for (size_t c = 0; c < 3; ++c) learnt_.full.high.ptr<float>()[3 * i + c] *= 2.0f;
  cv::blur(room, room, {3, 3});
  cv::blur(full, full, {3, 3});
  slip_.emplace(room, full);
  const cv::Mat dark = cv::Mat::zeros(room.size(), CV_32FC3);
  project(dark);
  before_ = now_;
  for (int k = 0; k < kSteps; ++k)
    noise_.push_back(backdrop.smoothed_noise((static_cast<float>(k) + 0.5f) / kSteps));
}

// By half a cell, as cloth may.
Expectation::Bounds Expectation::slipped_by_half(const cv::Mat& look) {
  cv::Mat mean, moved;
  cv::blur(look, mean, {3, 3});
  Bounds out{mean.clone(), mean.clone(), {}, {}};
  for (const cv::Point anchor : {cv::Point(0, 0), {1, 0}, {0, 1}, {1, 1}}) {
    cv::blur(mean, moved, {2, 2}, anchor);
    out.low = cv::min(out.low, moved);
    out.high = cv::max(out.high, moved);
  }
  return out;
}

// By a whole cell, as projected lines may: the errors of map, camera and the cloth's height add up.
Expectation::Bounds Expectation::slipped_by_one(const cv::Mat& light) {
  static const cv::Mat around = cv::Mat::ones(3, 3, CV_8U);
  cv::Mat mean;
  cv::blur(light, mean, {3, 3});
  Bounds out;
  out.mean = mean;
  cv::erode(mean, out.low, around);
  cv::dilate(mean, out.high, around);
  static const cv::Mat wide = cv::Mat::ones(2 * kSmear + 1, 2 * kSmear + 1, CV_8U);
  cv::Mat low, high;
  cv::erode(out.low, low, wide);
  cv::dilate(out.high, high, wide);
  out.lines = high - low;
  return out;
}

void Expectation::project(const cv::Mat& light) {
  before_ = now_;
  now_ = slipped_by_one(light);
  now_.high *= static_cast<double>(kGlow);
}

Compared Expectation::compare(const cv::Mat& linear, const MeasuredLight& light, Pictures pictures,
                              int first) {
  cv::Mat seen, local;
  cv::remap(linear, seen, pixel_from_cell_, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  cv::blur(seen, seen, {3, 3});
  cv::remap(light.local, local, local_from_cell_, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  Bounds picture = pictures == Pictures::before ? before_ : now_;
  if (pictures == Pictures::either)
    picture = {cv::min(now_.low, before_.low), cv::max(now_.high, before_.high),
               cv::max(now_.lines, before_.lines), 0.5 * (now_.mean + before_.mean)};
  Compared out;
  out.excess = cv::Mat::zeros(known_.size(), CV_32F);
  out.share = cv::Mat::ones(known_.size(), CV_32F);
  const Marks marks = explain(seen, local, light, lying(seen, local, light, picture), picture, out);
  out.lines = marks.lines > kFineLight * marks.whole;
  bear_with_lines(out, marks, first);
  sharpen(out, marks);
  out.foreign = out.excess > 1.0;
  doubt_shadows(out, marks.hidden);
  // Thin lines are edges that are not quite where they should be; on a print, though, a thing may differ from
  // only one of the colours.
  static const cv::Mat small = cv::Mat::ones(3, 3, CV_8U);
  cv::Mat solid, dense;
  cv::boxFilter(out.foreign, dense, CV_8U, {kDense, kDense}, {-1, -1}, true, cv::BORDER_CONSTANT);
  dense = (dense > 255.0 * kDensity) & out.foreign;
  cv::morphologyEx(out.foreign, solid, cv::MORPH_OPEN, small);
  cv::morphologyEx(solid | dense, out.foreign, cv::MORPH_CLOSE, small);
  return out;
}

// A shadow in the beam has something beside it that throws it.
void Expectation::doubt_shadows(Compared& out, const cv::Mat& hidden) {
  cv::Mat labels, stats, centres, solid;
  cv::morphologyEx(out.foreign, solid, cv::MORPH_OPEN, cv::Mat::ones(3, 3, CV_8U));
  cv::Mat both = hidden | solid;
  cv::morphologyEx(both, both, cv::MORPH_CLOSE, cv::Mat::ones(3, 3, CV_8U));
  const int count = cv::connectedComponentsWithStats(both, labels, stats, centres, 8, CV_32S);
  for (int label = 1; label < count; ++label) {
    const cv::Rect box(stats.at<int>(label, 0), stats.at<int>(label, 1), stats.at<int>(label, 2),
                       stats.at<int>(label, 3));
    if (box.x == 0 || box.y == 0 || box.br().x == labels.cols || box.br().y == labels.rows) continue;
    const cv::Mat own = labels(box) == label;
    const int shadow = cv::countNonZero(own & hidden(box));
    if (shadow == 0 || cv::countNonZero(own & solid(box)) > kThrows * shadow) continue;
    out.foreign(box).setTo(255, own & hidden(box));
    out.excess(box).setTo(1.5, own & hidden(box));
  }
}

// The looks of the cloth as it lies now.
const Expectation::Looks& Expectation::lying(const cv::Mat& seen, const cv::Mat& local,
                                             const MeasuredLight& light, const Bounds& picture) {
  if (!slip_->printed()) return learnt_;
  Slip::Light now;
  cv::multiply(local, cv::Scalar(light.room[0], light.room[1], light.room[2]), now.room);
  now.beam = light.beam * picture.mean;
  slip_->follow(seen, now, noise_[kSteps / 10]);
  if (slip_->most() < kLiesStill) return learnt_;
  cv::Mat from(known_.size(), CV_32FC2);
  for (int r = 0; r < from.rows; ++r)
    for (int c = 0; c < from.cols; ++c)
      from.at<cv::Vec2f>(r, c) =
          cv::Vec2f(static_cast<float>(c), static_cast<float>(r)) + slip_->field().at<cv::Vec2f>(r, c);
  for (const auto& [is, was] : {std::pair(&dragged_.room, &learnt_.room), {&dragged_.full, &learnt_.full}}) {
    cv::remap(was->low, is->low, from, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
    cv::remap(was->high, is->high, from, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  }
  return dragged_;
}

Expectation::Marks Expectation::explain(const cv::Mat& seen, const cv::Mat& local, const MeasuredLight& light,
                                        const Looks& looks, const Bounds& picture, Compared& out) const {
  const auto floats = [this](float value) {
    return cv::Mat(known_.size(), CV_32F, cv::Scalar(static_cast<double>(value)));
  };
  Marks marks{floats(0), floats(1), floats(0), floats(1), cv::Mat::zeros(known_.size(), CV_8U)};
  const auto *a0 = looks.room.low.ptr<float>(), *a1 = looks.room.high.ptr<float>(),
             *b0 = looks.full.low.ptr<float>(), *b1 = looks.full.high.ptr<float>(),
             *p0 = picture.low.ptr<float>(), *p1 = picture.high.ptr<float>(), *near = local.ptr<float>(),
             *y = seen.ptr<float>();
  for (size_t i = 0; i < known_.total(); ++i) {
    if (known_.data[i] == 0) continue;
    float shade[3], pale[3], dim[3], bright[3], own[3];
    for (size_t c = 0; c < 3; ++c) {
      const size_t k = 3 * i + c;
      const float room = light.room[c] * near[k];
      shade[c] = room * a0[k];
      pale[c] = room * a1[k];
      dim[c] = shade[c] + light.beam * b0[k] * p0[k];
      bright[c] = pale[c] + light.beam * b1[k] * p1[k];
      const float level = std::max(y[k], dim[c]);
      own[c] = noise_[static_cast<size_t>(std::clamp(level * kSteps, 0.0f, kSteps - 1.0f))];
    }
    const Fit lit = fit_of(y + 3 * i, dim, bright, own), hidden = fit_of(y + 3 * i, shade, pale, own);
    const float a = lit.excess + std::abs(std::log(lit.share)) / kSharp,
                b = hidden.excess + std::abs(std::log(hidden.share)) / kSharp;
    const Fit& best = a <= b ? lit : hidden;
    out.excess.ptr<float>()[i] = std::min(best.excess, kMost);
    out.share.ptr<float>()[i] = std::clamp(best.share, Expectation::kDarkestShadow, 1.6f);
    const float noise =
        std::sqrt(own[0] * own[0] + own[1] * own[1] + own[2] * own[2]) / (sum3(dim) + sum3(own));
    marks.noise.ptr<float>()[i] = noise;
    marks.slack.ptr<float>()[i] = best.slack;
    marks.whole.ptr<float>()[i] = sum3(dim) + sum3(own);
    const float* lines = picture.lines.ptr<float>() + 3 * i;
    for (size_t c = 0; c < 3; ++c) marks.lines.ptr<float>()[i] += light.beam * b1[3 * i + c] * lines[c];
    if (b < a && lit.share < 1.0f - std::max(kSharp, kNoises * noise)) marks.hidden.data[i] = 255;
  }
  return marks;
}

// Cameras smear fine light: they sharpen it, and keep colours more coarsely than brightness. How much of the
// light of lines is about them in the wrong place is seen on the lines themselves, most of which lie on bare
// cloth; so much is borne with around all of them. Lines from the column `first` on are asked, ahead of the
// arm that lies over others; where these are too few, it is what it was.
void Expectation::bear_with_lines(Compared& out, const Marks& marks, int first) {
  const auto *slack = marks.slack.ptr<float>(), *lines = marks.lines.ptr<float>(),
             *whole = marks.whole.ptr<float>();
  auto *excess = out.excess.ptr<float>(), *share = out.share.ptr<float>();
  std::vector<float> colour, bright;
  for (size_t i = 0; i < known_.total(); ++i) {
    if (known_.data[i] == 0 || lines[i] < kFineLight * whole[i]) continue;
    if (static_cast<int>(i) % known_.cols < first) continue;
    colour.push_back(excess[i] * slack[i] / lines[i]);
    bright.push_back(std::max(share[i] - 1.0f, 0.0f) * whole[i] / lines[i]);
  }
  const auto usual = [](std::vector<float>& values) {
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(kUsual * static_cast<double>(values.size()));
    std::nth_element(values.begin(), at, values.end());
    return std::min(*at, kMostSmear);
  };
  if (colour.size() >= kFewestFine) {
    smeared_ = usual(colour);
    sharpened_ = usual(bright);
  }
  for (size_t i = 0; i < known_.total(); ++i) {
    excess[i] *= slack[i] / (slack[i] + smeared_ * lines[i]);
    const float less = share[i] - sharpened_ * lines[i] / whole[i];
    if (share[i] > 1.0f) share[i] = std::max(less, 1.0f);
  }
}

// What stands out in brightness from its neighbourhood, which soft shadows do not.
void Expectation::sharpen(Compared& out, const Marks& marks) const {
  const cv::Size window(kNeighbourhood, kNeighbourhood);
  cv::Mat weight = (out.excess < 1.0) & known_, mean, sum;
  weight.convertTo(weight, CV_32F, 1.0 / 255.0);
  cv::boxFilter(out.share.mul(weight), mean, CV_32F, window);
  cv::boxFilter(weight, sum, CV_32F, window);
  for (size_t i = 0; i < known_.total(); ++i) {
    auto& excess = out.excess.ptr<float>()[i];
    const float around = sum.ptr<float>()[i], share = out.share.ptr<float>()[i];
    if (known_.data[i] == 0 || excess >= 1.0f || around < 0.05f) continue;
    const float least = std::max(kSharp, kNoises * marks.noise.ptr<float>()[i]);
    const float off = share - mean.ptr<float>()[i] / around;
    if ((off < 0.0f) == (share < 1.0f) && std::abs(share - 1.0f) > 0.5f * least)
      excess = std::max(excess, std::min(std::abs(off) / least, kMost));
  }
}

}  // namespace cowlcast::projector
