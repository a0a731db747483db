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
constexpr int kDragged = 2;          // cells: print is dragged by no more from one frame to the next
constexpr float kLiesStill = 0.15f;  // cells: cloth dragged by less is where it was
constexpr int kBroad = 27;           // cells, 40 mm: a shadow as broad as that may be a person's
constexpr double kNotShadow = 1.5;   // the excess of what has nothing that throws it
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
  thrower_ = view.thrower;
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

Expectation::Bounds Expectation::either(const Bounds& a, const Bounds& b) {
  Bounds out{cv::min(a.low, b.low), cv::max(a.high, b.high), {}, 0.5 * (a.mean + b.mean)};
  const cv::Mat change = cv::abs(a.mean - b.mean);
  cv::max(a.lines, b.lines, out.lines);
  cv::max(out.lines, change, out.lines);
  return out;
}

void Expectation::project(const cv::Mat& light, bool chases) {
  before_ = chases ? either(before_, now_) : now_;
  now_ = slipped_by_one(light);
  now_.high *= static_cast<double>(kGlow);
}

Compared Expectation::compare(const cv::Mat& linear, const MeasuredLight& light, Pictures pictures,
                              int first) {
  cv::Mat seen, local;
  cv::remap(linear, seen, pixel_from_cell_, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  cv::blur(seen, seen, {3, 3});
  cv::remap(light.local, local, local_from_cell_, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  const Bounds picture = pictures == Pictures::either   ? either(now_, before_)
                         : pictures == Pictures::before ? before_
                                                        : now_;
  Compared out;
  out.excess = cv::Mat::zeros(known_.size(), CV_32F);
  out.share = cv::Mat::ones(known_.size(), CV_32F);
  const Looks& looks = lying(seen, local, light, picture);
  const Marks marks = explain(seen, local, light, looks, picture, out);
  out.lines = marks.lines > kFineLight * marks.whole;
  bear_with_lines(out, marks, first);
  sharpen(out, marks);
  out.foreign = out.excess > 1.0;
  doubt_shadows(out, marks.hidden);
  out.sure = out.excess;
  if (slip_->moves(0, known_.cols))
    out.sure = cv::min(out.excess, excess_wherever_it_lies(seen, local, light, looks, picture));
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

// Of what the projector's light does not reach, what nothing that is seen can throw: the way from there to
// the projector, as the camera sees it, neither leads over anything solid nor out of the strip.
cv::Mat Expectation::unthrown(const cv::Mat& hidden, const cv::Mat& solid) const {
  cv::Mat throws, out = cv::Mat::zeros(hidden.size(), CV_8U);
  cv::dilate(solid, throws, cv::Mat::ones(5, 5, CV_8U));
  throws |= ~known_;
  const cv::Rect strip({0, 0}, hidden.size());
  for (int r = 0; r < hidden.rows; ++r)
    for (int c = 0; c < hidden.cols; ++c) {
      if (hidden.at<uchar>(r, c) == 0) continue;
      const cv::Vec2f way = thrower_.at<cv::Vec2f>(r, c);
      const int steps = std::min(cvCeil(cv::norm(way)), hidden.rows + hidden.cols) + 1;
      bool thrown = false;
      for (int k = 0; k <= steps && !thrown; ++k) {
        const float far = static_cast<float>(k) / static_cast<float>(steps);
        const cv::Point at(cvRound(static_cast<float>(c) + far * way[0]),
                           cvRound(static_cast<float>(r) + far * way[1]));
        thrown = !strip.contains(at) || throws.at<uchar>(at) != 0;
      }
      if (!thrown) out.at<uchar>(r, c) = 255;
    }
  // A person who leans in is farther above, and her shadow broad.
  cv::Mat broad;
  cv::morphologyEx(hidden, broad, cv::MORPH_OPEN, cv::Mat::ones(kBroad, kBroad, CV_8U));
  out.setTo(0, broad);
  cv::morphologyEx(out, out, cv::MORPH_OPEN, cv::Mat::ones(3, 3, CV_8U));
  return out;
}

// A shadow in the beam has something beside it that throws it.
void Expectation::doubt_shadows(Compared& out, const cv::Mat& hidden) const {
  cv::Mat labels, stats, centres, solid;
  cv::morphologyEx(out.foreign, solid, cv::MORPH_OPEN, cv::Mat::ones(3, 3, CV_8U));
  const cv::Mat things = unthrown(hidden, solid);
  out.foreign |= things;
  out.excess.setTo(kNotShadow, things);
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
    out.excess(box).setTo(kNotShadow, own & hidden(box));
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

// How far off the cells are from all that the cloth within `kDragged` shows.
cv::Mat Expectation::excess_wherever_it_lies(const cv::Mat& seen, const cv::Mat& local,
                                             const MeasuredLight& light, const Looks& looks,
                                             const Bounds& picture) const {
  static const cv::Mat around = cv::Mat::ones(2 * kDragged + 1, 2 * kDragged + 1, CV_8U);
  Looks wide;
  for (const auto& [to, from] : {std::pair(&wide.room, &looks.room), {&wide.full, &looks.full}}) {
    cv::erode(from->low, to->low, around);
    cv::dilate(from->high, to->high, around);
  }
  Compared out;
  out.excess = cv::Mat::zeros(known_.size(), CV_32F);
  out.share = cv::Mat::ones(known_.size(), CV_32F);
  explain(seen, local, light, wide, picture, out);
  return out.excess;
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
