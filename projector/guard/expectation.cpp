#include "projector/guard/expectation.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>
#include <vector>

namespace cowlcast::projector {
namespace {

constexpr double kSettles = 0.35;       // s: camera and projector have caught up with a change by then
constexpr float kLeastContrast = 5.0f;  // levels of 8 bits
constexpr float kNoises = 3.0f;         // standard deviations that count as different
constexpr float kStray = 0.35f;         // a cell off by more than this share says nothing about the light
constexpr double kFieldLong = 150.0, kFieldAcross = 60.0;  // mm: windows of the local gain
constexpr float kExplained = 0.15f;  // a cell off by more than this share is not the cloth that is looked for
constexpr size_t kFewestCells = 150;
constexpr int kPrint = 2, kLines = 2;   // cells about a place whose print, and whose light, may be seen there
constexpr float kFull = 0.95f;          // linear light from which a camera's level says nothing more
constexpr float kEven = 0.15f;          // of a cell's light that lines about it may change
constexpr double kGlow = 1.2;           // lines look brighter than they are where the camera sharpens
constexpr float kDarkestShadow = 0.4f;  // share of room light that a shadow of it leaves at least
constexpr float kSharp = 0.2f;          // rise of a sharp rim from cell to cell over its depth

float sum3(const float* v) {
  return v[0] + v[1] + v[2];
}

// The least and the most within a cell's neighbourhood.
CellLight around(const CellLight& light, int reach) {
  const cv::Mat window = cv::Mat::ones(2 * reach + 1, 2 * reach + 1, CV_8U);
  CellLight out;
  cv::erode(light.low, out.low, window);
  cv::dilate(light.high, out.high, window);
  out.middle = light.middle;
  return out;
}

}  // namespace

Expectation::Expectation(const Backdrop& backdrop, const Strip& strip) : look_(backdrop.look_of(strip)) {
  room_ = around({look_.room, look_.room, look_.room}, kPrint);
  full_ = around({look_.projector, look_.projector, look_.projector}, kPrint);
  const cv::Mat dark = cv::Mat::zeros(look_.room.size(), CV_32FC3);
  project({dark, dark, dark}, -1e9);
  before_ = now_;
  even_before_ = even_;
  for (int level = 0; level < 256; ++level)
    slack_[static_cast<size_t>(level)] = std::max(kLeastContrast, kNoises * backdrop.noise(level));
  field_ = cv::Mat::ones(look_.room.size(), CV_32F);
  foreign_ = cv::Mat::zeros(look_.room.size(), CV_8U);
}

void Expectation::project(const CellLight& light, double seconds) {
  before_ = now_;
  even_before_ = even_;
  even_ = cv::Mat::zeros(look_.room.size(), CV_8U);
  for (size_t i = 0; i < even_.total(); ++i) {
    float most = 0.0f, whole = 0.0f;
    for (size_t k = 3 * i; k < 3 * i + 3; ++k) {
      const float beam = look_.projector.ptr<float>()[k];
      most += beam * (light.high.ptr<float>()[k] - light.low.ptr<float>()[k]);
      whole += look_.room.ptr<float>()[k] + beam * light.middle.ptr<float>()[k];
    }
    if (most < kEven * whole) even_.data[i] = 255;
  }
  now_ = around(light, kLines);
  now_.high *= kGlow;
  changed_ = seconds;
}

// How much of the learnt room light, and of the projector's, is there now. On plain cloth under an even
// picture the two look the same, and a hand may cover half of the strip. So the projector's share is tried
// out, from that of the last frame on; with each the room's is a median, and the one that leaves the fewest
// cells unexplained is taken. Least squares over what is explained then settles the colours.
bool Expectation::fit_gains(const cv::Mat& linear, const std::vector<const cv::Mat*>& pictures,
                            const cv::Mat& even, int first_column) {
  struct Cell {
    size_t at;
    float room, full, seen;
  };
  const auto* y = linear.ptr<float>();
  const auto *a = look_.room.ptr<float>(), *b = look_.projector.ptr<float>();
  const auto columns = static_cast<size_t>(linear.cols);
  double best_cost = 1e9, best_room = 1.0, best_factor = 1.0;
  const cv::Mat* best_picture = nullptr;
  std::vector<Cell> cells, best_cells;
  std::vector<float> shares;
  const auto beam = static_cast<float>((beam_gain_[0] + beam_gain_[1] + beam_gain_[2]) / 3.0);
  for (const cv::Mat* picture : pictures) {
    const auto* p = picture->ptr<float>();
    cells.clear();
    for (size_t i = 0; i < look_.known.total(); i += 3) {
      if (even.data[i] == 0 || look_.known.data[i] == 0 || static_cast<int>(i % columns) < first_column)
        continue;
      Cell cell{i, 0.0f, 0.0f, 0.0f};
      for (size_t k = 3 * i; k < 3 * i + 3; ++k) {
        if (y[k] > kFull) continue;
        cell.room += a[k];
        cell.full += b[k] * p[k];
        cell.seen += y[k];
      }
      if (cell.room + cell.full > 1e-4f) cells.push_back(cell);
    }
    if (cells.size() < kFewestCells) continue;
    for (const double factor : {1.0, 0.93, 1.07, 0.85, 1.17, 0.72, 1.4, 0.55, 1.8}) {
      const float share = beam * static_cast<float>(factor);
      shares.clear();
      for (const Cell& cell : cells)
        shares.push_back((cell.seen - share * cell.full) / std::max(cell.room, 1e-4f));
      const auto middle = shares.begin() + static_cast<std::ptrdiff_t>(shares.size() / 2);
      std::nth_element(shares.begin(), middle, shares.end());
      const float room = std::max(*middle, 0.01f);
      double cost = 0.0;
      for (const Cell& cell : cells) {
        const float want = room * cell.room + share * cell.full;
        cost += static_cast<double>(std::min(std::abs(cell.seen - want) / want, kExplained));
      }
      cost *= (1.0 + 0.1 * std::abs(std::log(factor))) / static_cast<double>(cells.size());
      if (cost >= best_cost) continue;
      best_cost = cost;
      best_room = static_cast<double>(room);
      best_factor = factor;
      if (best_picture != picture) best_cells = cells;
      best_picture = picture;
    }
  }
  if (best_picture == nullptr) return true;
  const auto* p = best_picture->ptr<float>();
  const double share = static_cast<double>(beam) * best_factor;
  for (size_t c = 0; c < 3; ++c) {
    double aa = 0, ab = 0, bb = 0, ay = 0, by = 0;
    for (const Cell& cell : best_cells) {
      const float want = static_cast<float>(best_room) * cell.room + static_cast<float>(share) * cell.full;
      if (std::abs(cell.seen / want - 1.0f) > kExplained) continue;
      const size_t i = 3 * cell.at + c;
      if (y[i] > kFull) continue;
      const double x = static_cast<double>(a[i]), z = static_cast<double>(b[i] * p[i]),
                   v = static_cast<double>(y[i]);
      const double weight = 1.0 / ((x + z + 1e-3) * (x + z + 1e-3));
      aa += weight * x * x;
      ab += weight * x * z;
      bb += weight * z * z;
      ay += weight * x * v;
      by += weight * z * v;
    }
    const double held = 0.02 * (aa + bb) + 1e-9;  // to the projector's share as found over all colours
    bb += held;
    by += held * beam_gain_[c] * best_factor;
    const double det = aa * bb - ab * ab;
    if (!(aa > 0.0) || !(det > 1e-9 * aa * bb)) continue;
    room_gain_[c] = std::clamp((ay * bb - by * ab) / det, 0.02, 50.0);
    beam_gain_[c] = std::clamp((aa * by - ab * ay) / det, 0.02, 50.0);
  }
  return best_picture == &now_.middle;
}

// The local gain: soft shadows and slopes of the light.
void Expectation::fit_field(const cv::Mat& linear, const cv::Mat& even, const cv::Mat& picture) {
  const size_t cells = look_.known.total();
  cv::Mat weight(field_.size(), CV_32F), share(field_.size(), CV_32F);
  const auto* y = linear.ptr<float>();
  const auto *a = look_.room.ptr<float>(), *b = look_.projector.ptr<float>(), *p = picture.ptr<float>();
  auto *w = weight.ptr<float>(), *s = share.ptr<float>();
  for (size_t i = 0; i < cells; ++i) {
    float want = 0.0f;
    for (size_t c = 0; c < 3; ++c) {
      want += static_cast<float>(room_gain_[c]) * a[3 * i + c] +
              static_cast<float>(beam_gain_[c]) * b[3 * i + c] * p[3 * i + c];
    }
    const float ratio = sum3(y + 3 * i) / std::max(want, 1e-4f);
    const bool good = look_.known.data[i] != 0 && foreign_.data[i] == 0 && even.data[i] != 0 &&
                      std::abs(ratio - 1.0f) < kStray;
    w[i] = good ? 1.0f : 0.0f;
    s[i] = good ? ratio : 0.0f;
  }
  const cv::Size window(static_cast<int>(kFieldLong / Strip::cell) | 1,
                        static_cast<int>(kFieldAcross / Strip::cell) | 1);
  cv::boxFilter(weight, weight, CV_32F, window, {-1, -1}, true, cv::BORDER_CONSTANT);
  cv::boxFilter(share, share, CV_32F, window, {-1, -1}, true, cv::BORDER_CONSTANT);
  // A little of "no change" keeps cells sound that hardly any cloth is around.
  field_ = (share + 0.03) / (weight + 0.03);
}

bool Expectation::settling(double seconds) const {
  return seconds - changed_ < kSettles;
}

Compared Expectation::compare(const cv::Mat& cells, double seconds, int first_column) {
  cv::Mat linear;
  cv::LUT(cells, linear_table(), linear);
  CellLight light = now_;
  cv::Mat even = even_;
  if (settling(seconds)) {
    light.low = cv::min(now_.low, before_.low);
    light.high = cv::max(now_.high, before_.high);
    even = even_ & even_before_;
  }
  std::vector<const cv::Mat*> pictures{&now_.middle};
  if (settling(seconds)) pictures.push_back(&before_.middle);
  const bool arrived = fit_gains(linear, pictures, even, first_column);
  fit_field(linear, even, arrived ? now_.middle : pictures.back()[0]);

  const size_t count = look_.known.total();
  cv::Mat excess(field_.size(), CV_32F), share(field_.size(), CV_32F),
      dusky = cv::Mat::zeros(field_.size(), CV_8U);
  const auto* seen = cells.ptr<uchar>();
  const auto* y = linear.ptr<float>();
  const auto *a0 = room_.low.ptr<float>(), *a1 = room_.high.ptr<float>(), *b0 = full_.low.ptr<float>(),
             *b1 = full_.high.ptr<float>(), *p0 = light.low.ptr<float>(), *p1 = light.high.ptr<float>();
  const auto* gain = field_.ptr<float>();
  for (size_t i = 0; i < count; ++i) {
    excess.ptr<float>()[i] = 0.0f;
    share.ptr<float>()[i] = 1.0f;
    if (look_.known.data[i] == 0) continue;
    float most = 0.0f, found = 0.0f, explained = 0.0f;
    float nearest[3];
    for (size_t c = 0; c < 3; ++c) {
      const size_t k = 3 * i + c;
      const float room = gain[i] * static_cast<float>(room_gain_[c]),
                  beam = gain[i] * static_cast<float>(beam_gain_[c]);
      const float dark = room * a0[k], shade = room * a1[k];
      const float dim = dark + beam * b0[k] * p0[k], bright = shade + beam * b1[k] * p1[k];
      const auto level = static_cast<float>(seen[k]);
      // Lit by the picture, or in the shadow of it.
      const float held = bright > kFull && y[k] > kFull ? y[k] : std::clamp(y[k], dim, bright),
                  shaded = shade > kFull && y[k] > kFull ? y[k] : std::clamp(y[k], dark, shade);
      nearest[c] = std::abs(held - y[k]) < std::abs(shaded - y[k]) ? held : shaded;
      if (nearest[c] != y[k]) {
        const float off = std::abs(level - level_of(nearest[c])) / slack_[seen[k]];
        most = std::max(most, off);
      }
      found += y[k];
      explained += nearest[c];
    }
    excess.ptr<float>()[i] = std::min(most, 4.0f);
    const float left = found / std::max(explained, 1e-5f);
    share.ptr<float>()[i] = std::min(left, 1.5f);
    if (most > 0.7f && left < 1.0f && left > kDarkestShadow) {
      bool alike = true;  // dimmer in all colours alike
      for (size_t c = 0; c < 3; ++c)
        alike = alike && std::abs(static_cast<float>(seen[3 * i + c]) - level_of(left * nearest[c])) <
                             slack_[seen[3 * i + c]];
      dusky.data[i] = alike ? 255 : 0;
    }
  }
  cv::blur(excess, excess, cv::Size(3, 3));
  Compared out;
  out.excess = excess;
  out.foreign = excess > 1.0;
  static const cv::Mat small = cv::getStructuringElement(cv::MORPH_RECT, cv::Size(3, 3));
  cv::morphologyEx(out.foreign, out.foreign, cv::MORPH_OPEN, small);
  cv::morphologyEx(out.foreign, out.foreign, cv::MORPH_CLOSE, small);
  drop_soft_shadows(out.foreign, share, dusky);
  cv::dilate(out.foreign, foreign_, small);
  out.strength = std::max({room_gain_[0], room_gain_[1], room_gain_[2]});
  const int known = cv::countNonZero(look_.known);
  out.foreign_share =
      known > 0 ? cv::countNonZero(out.foreign & look_.known) / static_cast<double>(known) : 0.0;
  return out;
}

// Patches that are the cloth made dimmer, without a sharp rim, are shadows.
void Expectation::drop_soft_shadows(cv::Mat& foreign, const cv::Mat& share, const cv::Mat& dusky) const {
  cv::Mat labels, stats, centres;
  const int count = cv::connectedComponentsWithStats(foreign, labels, stats, centres, 8, CV_32S);
  cv::Mat steep;
  for (int label = 1; label < count; ++label) {
    const cv::Rect box(stats.at<int>(label, 0), stats.at<int>(label, 1), stats.at<int>(label, 2),
                       stats.at<int>(label, 3));
    const cv::Mat mask = labels(box) == label;
    const int area = stats.at<int>(label, 4);
    if (cv::countNonZero(mask & dusky(box)) < 0.8 * area) continue;
    if (steep.empty()) {
      cv::Mat smooth, dx, dy;
      cv::blur(share, smooth, cv::Size(3, 3));
      cv::Sobel(smooth, dx, CV_32F, 1, 0, 3, 1.0 / 8.0);
      cv::Sobel(smooth, dy, CV_32F, 0, 1, 3, 1.0 / 8.0);
      cv::magnitude(dx, dy, steep);
      cv::dilate(steep, steep, cv::Mat::ones(3, 3, CV_8U));
    }
    // The rim, but not where the strip itself ends.
    cv::Mat rim = mask.clone();
    cv::Mat core;
    cv::erode(mask, core, cv::Mat::ones(3, 3, CV_8U), {-1, -1}, 1, cv::BORDER_CONSTANT, cv::Scalar::all(255));
    rim.setTo(0, core);
    if (cv::countNonZero(rim) == 0) rim = mask.clone();
    double deepest = 0.0;
    cv::minMaxLoc(share(box), &deepest, nullptr, nullptr, nullptr, mask);
    const double depth = 1.0 - deepest;
    if (cv::mean(steep(box), rim)[0] < static_cast<double>(kSharp) * depth) foreign(box).setTo(0, mask);
  }
}

}  // namespace cowlcast::projector
