#include "projector/guard/light_meter.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>
#include <utility>

#include "calibration/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr float kAlike = 0.15f;    // a cell off by more than this share does not agree
constexpr float kDarkest = 2e-3f;  // linear light below which a cell tells nothing
constexpr float kFull = 0.95f;     // and above
constexpr float kNoises = 2.0f;    // standard deviations that count as different
constexpr size_t kFewest = 100;    // cells
constexpr float kNowhere = -1e4f;
constexpr float kStay = 0.02f;      // of the misfit: what a change of gains must win
constexpr float kJump = 0.15f;      // change of the room's light between two frames, its logarithm
constexpr double kOldHolds = 0.1;   // of the box: so much in the light of before, and it has not changed
constexpr int kSurroundings = 7;    // cells: out of these the beam's lines stand
constexpr float kTellsBeam = 0.1f;  // of the room's light: what stands out by less does not tell of the beam
constexpr float kSay = 0.003f;      // of all cells: the votes for the beam as it was
constexpr float kShadowed = 0.4f;   // of the beam's light: a cell that is off by more is in another's shadow
constexpr float kOdd = 0.06f;       // and one of both at once, by its logarithm
constexpr double kHoldBeam = 0.5;   // the beam is held to what it was, by so much of its weight
constexpr double kFaintBeam = 0.05 * 0.05;  // and as if every cell had so much of it, squared share
constexpr double kForget = 0.05;  // of a frame: a beam that is not seen goes back to what was learnt

struct Gains {
  std::array<float, 3> room;
  float beam;
};

// By how much a cell is over the mean of those around it that are asked.
cv::Mat over_surroundings(const cv::Mat& cells, const cv::Mat& asked) {
  cv::Mat sum, count;
  cv::boxFilter(cells, sum, CV_32F, {kSurroundings, kSurroundings}, {-1, -1}, true, cv::BORDER_CONSTANT);
  cv::boxFilter(asked, count, CV_32F, {kSurroundings, kSurroundings}, {-1, -1}, true, cv::BORDER_CONSTANT);
  return cells - sum / cv::max(count, 1e-3);
}

}  // namespace

// By how much of what is expected a cell is off, beyond its noise.
float LightMeter::misfit(const Cell& cell, size_t channel, float want) {
  return std::abs(cell.seen[channel] - want) / (want + cell.noise);
}

LightMeter::LightMeter(const Backdrop& backdrop, const cv::Rect& box) : box_(box), power_(backdrop.power()) {
  const Look look = backdrop.look(box);
  const cv::Size size(std::max(box.width / kShrink, 1), std::max(box.height / kShrink, 1));
  cv::resize(look.room, room_, size, 0, 0, cv::INTER_AREA);
  cv::resize(look.projector, beam_, size, 0, 0, cv::INTER_AREA);
  noise_ = cv::Mat(size, CV_32F);
  for (size_t i = 0; i < noise_.total(); ++i) {
    const float* room = room_.ptr<float>() + 3 * i;
    noise_.ptr<float>()[i] =
        kNoises / (kAlike * kShrink) * backdrop.linear_noise(std::max({room[0], room[1], room[2]}));
  }
  const TableSight& sight = backdrop.sight();
  picture_from_cell_ = cv::Mat(size, CV_32FC2, cv::Scalar::all(static_cast<double>(kNowhere)));
  for (int r = 0; r < size.height; ++r)
    for (int c = 0; c < size.width; ++c) try {
        const Eigen::Vector2d pixel(box.x + (c + 0.5) * kShrink - 0.5, box.y + (r + 0.5) * kShrink - 0.5);
        const Point mat = sight.camera.mat_from_pixel(pixel, sight.cloth);
        const Eigen::Vector2d light = sight.map.projector_from_mat(mat, sight.cloth);
        picture_from_cell_.at<cv::Vec2f>(r, c) = {static_cast<float>(light.x()),
                                                  static_cast<float>(light.y())};
      } catch (const calibration::Refusal&) {
        continue;  // the light does not reach there
      }
  pictures_[0] = pictures_[1] = cv::Mat::zeros(size, CV_32FC3);
}

void LightMeter::begin_in(const MeasuredLight& light) {
  light_.room = light.room;
  light_.beam = light.beam;
  light_.local = cv::Mat(room_.size(), CV_32FC3, cv::Scalar::all(1.0));
  known_ = true;
}

void LightMeter::project(const cv::Mat& picture, bool chases) {
  pictures_[2] = chases ? pictures_[1] : cv::Mat();
  pictures_[1] = pictures_[0];
  cv::Mat light = sent_light(picture, power_);
  cv::blur(light, light, cv::Size(5, 5));
  if (light.channels() == 1) cv::merge(std::vector<cv::Mat>(3, light), light);
  cv::Mat cells;
  cv::remap(light, cells, picture_from_cell_, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_CONSTANT,
            cv::Scalar::all(0.0));
  pictures_[0] = cells;
}

std::vector<LightMeter::Cell> LightMeter::cells(const cv::Mat& seen, const cv::Mat& picture, int step) const {
  std::vector<Cell> out;
  out.reserve(seen.total() / static_cast<size_t>(step) + 1);
  const auto *y = seen.ptr<float>(), *a = room_.ptr<float>(), *b = beam_.ptr<float>(),
             *p = picture.ptr<float>();
  for (size_t i = 0; i < seen.total(); i += static_cast<size_t>(step)) {
    Cell cell{};
    cell.at = static_cast<int>(i);
    cell.noise = noise_.ptr<float>()[i];
    bool tells = true;
    for (size_t c = 0; c < 3; ++c) {
      const size_t k = 3 * i + c;
      cell.room[c] = a[k];
      cell.beam[c] = b[k] * p[k];
      cell.seen[c] = y[k];
      tells = tells && y[k] < kFull;
    }
    if (tells && cell.room[0] + cell.room[1] + cell.room[2] > kDarkest) out.push_back(cell);
  }
  return out;
}

const MeasuredLight& LightMeter::measure(const cv::Mat& linear, bool late) {
  cv::Mat seen;
  cv::resize(linear, seen, room_.size(), 0, 0, cv::INTER_AREA);
  const auto cost_of = [](const std::vector<Cell>& cells, const Gains& gains) {
    float cost = 0.0f;
    for (const Cell& cell : cells)
      for (size_t c = 0; c < 3; ++c)
        cost += std::min(misfit(cell, c, gains.room[c] * cell.room[c] + gains.beam * cell.beam[c]),
                         2.0f * kAlike);
    return cost / static_cast<float>(3 * cells.size());
  };
  // The room's gains as the middle of what all cells say, for a beam of that strength.
  std::vector<float> shares;
  const auto middling = [&](const std::vector<Cell>& cells, float beam) {
    Gains gains{light_.room, beam};
    for (size_t c = 0; c < 3; ++c) {
      shares.clear();
      for (const Cell& cell : cells)
        shares.push_back((cell.seen[c] - beam * cell.beam[c]) / std::max(cell.room[c], 1e-5f));
      const auto middle = shares.begin() + static_cast<std::ptrdiff_t>(shares.size() / 2);
      std::nth_element(shares.begin(), middle, shares.end());
      gains.room[c] = std::clamp(*middle, 0.02f, 50.0f);
    }
    return gains;
  };
  MeasuredLight best = light_;
  double costs[] = {1e9, 1e9, 1e9};
  size_t likeliest = 0;
  for (const size_t which : {0u, 1u, 2u}) {
    if ((which > 0 && !late) || pictures_[which].empty()) break;
    const std::vector<Cell> some = cells(seen, pictures_[which], 7);
    if (some.size() < kFewest / 4) continue;
    Gains found{light_.room, light_.beam};
    float cost = cost_of(some, found) - kStay;
    for (const float factor : {1.0f, 0.93f, 1.07f, 0.85f, 1.17f, 0.72f, 1.4f, 0.55f, 1.8f}) {
      Gains scaled{light_.room, light_.beam * factor};
      for (float& room : scaled.room) room *= factor;
      // Another exposure, and another light of the room, each likelier than both at once.
      const float odd = std::abs(std::log(factor));
      for (const auto& [tried, price] :
           {std::pair(scaled, 0.01f), {middling(some, light_.beam * factor), kOdd}}) {
        const float own = cost_of(some, tried) + price * odd;
        if (own < cost) {
          cost = own;
          found = tried;
        }
      }
    }
    if (known_ && old_holds(some, found.room, found.beam)) found = {light_.room, light_.beam};
    costs[which] = static_cast<double>(cost + kStay);
    if (which > 0 && costs[which] >= costs[likeliest]) continue;
    likeliest = which;
    best.room = found.room;
    best.beam = found.beam;
  }
  light_.old_picture = late ? std::min(costs[1], costs[2]) / std::max(costs[0], 1e-6) : 1e9;
  const std::vector<Cell> all = cells(seen, pictures_[likeliest], 1);
  best.old_picture = light_.old_picture;
  best.measured = false;
  if (all.size() >= kFewest) {
    best.local = cv::Mat(room_.size(), CV_32FC3, cv::Scalar::all(1.0));
    for (int round = 0; round < 2; ++round) refine(all, false, best);
    locate(all, best);
    const float was = std::exchange(best.beam, likeliest_beam(all, best));
    if (best.beam != was) locate(all, best);
    refine(all, true, best);
    best.measured = best.agreeing >= kLeastAgreeing;
  }
  if (!best.measured) {
    best.room = light_.room;
    best.beam = light_.beam;
    best.local = cv::Mat(room_.size(), CV_32FC3, cv::Scalar::all(1.0));
  }
  known_ = known_ || best.measured;
  light_ = best;
  return light_;
}

// Whether some of the box is still in the light of before, and not in the new one: then something has been
// laid over the rest. A change of light would have reached it too.
bool LightMeter::old_holds(const std::vector<Cell>& cells, const std::array<float, 3>& room,
                           float beam) const {
  bool jumps = false;
  for (size_t c = 0; c < 3; ++c) jumps = jumps || std::abs(std::log(room[c] / light_.room[c])) > kJump;
  if (!jumps) return false;
  size_t asked = 0, old_only = 0;
  for (const Cell& cell : cells) {
    const auto& local = light_.local.at<cv::Vec3f>(cell.at / room_.cols, cell.at % room_.cols);
    bool was = true, is = true, tells = true;
    for (size_t c = 0; c < 3; ++c) {
      const float own = cell.room[c] * local[static_cast<int>(c)];
      const float old = light_.room[c] * own + light_.beam * cell.beam[c],
                  now = room[c] * own + beam * cell.beam[c];
      tells = tells && cell.noise < 0.5f * old;
      was = was && misfit(cell, c, old) < 0.5f * kAlike;
      is = is && misfit(cell, c, now) < kAlike;
    }
    asked += tells ? 1 : 0;
    old_only += tells && was && !is ? 1 : 0;
  }
  return static_cast<double>(old_only) > kOldHolds * static_cast<double>(asked);
}

// Least squares over the cells that agree, relative to what is expected: first of the room's light, with the
// beam as it is; then, once the slopes of the room's light are known, of the beam.
void LightMeter::refine(const std::vector<Cell>& cells, bool beam, MeasuredLight& light) const {
  double normal[4] = {}, right[4] = {};
  for (const Cell& cell : cells) {
    const auto& local = light.local.at<cv::Vec3f>(cell.at / room_.cols, cell.at % room_.cols);
    for (size_t c = 0; c < 3; ++c) {
      const float own = local[static_cast<int>(c)] * cell.room[c], room = light.room[c] * own,
                  more = light.beam * cell.beam[c];
      const float off = misfit(cell, c, room + more) / (1.5f * kAlike);
      if (off > 1.0f) continue;
      const float weight = (1.0f - off * off) / ((room + more + cell.noise) * (room + more + cell.noise));
      normal[c] += static_cast<double>(weight * own * own);
      right[c] += static_cast<double>(weight * own * (cell.seen[c] - more));
      // A shadow in the beam says nothing of its strength.
      if (std::abs(cell.seen[c] - room - more) > kShadowed * more + cell.noise) continue;
      normal[3] += static_cast<double>(weight * cell.beam[c] * cell.beam[c]);
      right[3] += static_cast<double>(weight * cell.beam[c] * (cell.seen[c] - room));
    }
  }
  if (!beam) {
    for (size_t c = 0; c < 3; ++c)
      if (normal[c] > 0.0) light.room[c] = std::clamp(static_cast<float>(right[c] / normal[c]), 0.02f, 50.0f);
    return;
  }
  // Where little of the beam is there it tells little of its strength, which is near to what it was, and in
  // the long run near to what was learnt.
  const double hold = kHoldBeam * normal[3] + kFaintBeam * static_cast<double>(3 * cells.size());
  const double held = 1.0 + (1.0 - kForget) * (static_cast<double>(light.beam) - 1.0);
  light.beam = std::clamp(static_cast<float>((right[3] + hold * held) / (normal[3] + hold)), 0.1f, 10.0f);
}

// The strength of the beam that most of its lines and borders speak for: by how much a cell stands out from
// its surroundings, counted by how much of its light that is, with a say for what it was and for what was
// learnt. The even light of the beam tells nothing: the room's, which goes by place, may as well be that.
float LightMeter::likeliest_beam(const std::vector<Cell>& cells, const MeasuredLight& light) const {
  constexpr int bins = 48;
  constexpr float least = 0.2f, step = 0.07f;  // of the logarithm
  float votes[bins] = {};
  const auto bin_of = [](float beam) {
    return static_cast<int>(std::log(std::max(beam, 1e-6f) / least) / step);
  };
  const auto vote = [&](int bin, float weight) {
    if (bin >= 0 && bin < bins) votes[bin] += weight;
  };
  cv::Mat beams = cv::Mat::zeros(room_.size(), CV_32F), rests = beams.clone(), asked = beams.clone();
  for (const Cell& cell : cells) {
    const auto& local = light.local.at<cv::Vec3f>(cell.at / room_.cols, cell.at % room_.cols);
    for (size_t c = 0; c < 3; ++c) {
      beams.ptr<float>()[cell.at] += cell.beam[c];
      rests.ptr<float>()[cell.at] += cell.seen[c] - light.room[c] * local[static_cast<int>(c)] * cell.room[c];
    }
    asked.ptr<float>()[cell.at] = 1.0f;
  }
  const cv::Mat beam = over_surroundings(beams, asked), rest = over_surroundings(rests, asked);
  for (const Cell& cell : cells) {
    const float own = beam.ptr<float>()[cell.at], room = cell.room[0] + cell.room[1] + cell.room[2];
    const float tells = std::abs(own) / room;
    if (tells > kTellsBeam) vote(bin_of(rest.ptr<float>()[cell.at] / own), std::min(tells, 1.0f));
  }
  const float say = kSay * static_cast<float>(cells.size());
  vote(bin_of(light_.beam), say);
  vote(bin_of(1.0f), say);
  int best = bin_of(light_.beam);
  float most = -1.0f;
  for (int k = 1; k + 1 < bins; ++k) {
    const float sum = votes[k - 1] + 2.0f * votes[k] + votes[k + 1];
    if (sum > most) {
      most = sum;
      best = k;
    }
  }
  // Within the bin it was in, it stays.
  if (std::abs(best - bin_of(light_.beam)) <= 1) return light_.beam;
  return least * std::exp((static_cast<float>(best) + 0.5f) * step);
}

// Place by place: first over wide windows, then over narrower ones, of what agrees with the wider.
void LightMeter::locate(const std::vector<Cell>& cells, MeasuredLight& light) const {
  for (const auto& [window, alike] : {std::pair(43, 2.0f * kAlike), std::pair(16, kAlike)}) {
    cv::Mat share = cv::Mat::zeros(room_.size(), CV_32FC3), weight = cv::Mat::zeros(room_.size(), CV_32F);
    size_t agreeing = 0;
    for (const Cell& cell : cells) {
      const auto& local = light.local.at<cv::Vec3f>(cell.at / room_.cols, cell.at % room_.cols);
      std::array<float, 3> ratio{};
      bool agrees = true;
      float whole = 0.0f, room = 0.0f;
      for (size_t c = 0; c < 3; ++c) {
        const float own = light.room[c] * cell.room[c], more = light.beam * cell.beam[c];
        const float want = own * local[static_cast<int>(c)] + more;
        agrees = agrees && misfit(cell, c, want) < alike;
        ratio[c] = (cell.seen[c] - more) / std::max(own, 1e-5f);
        agrees = agrees && ratio[c] > 0.3f && ratio[c] < 2.0f;
        whole += own + more;
        room += own;
      }
      if (!agrees) continue;
      ++agreeing;
      const float w = room / whole;
      weight.ptr<float>()[cell.at] = w;
      for (size_t c = 0; c < 3; ++c) share.ptr<float>()[3 * cell.at + static_cast<int>(c)] = w * ratio[c];
    }
    light.agreeing = static_cast<double>(agreeing) / static_cast<double>(cells.size());
    const cv::Size box(window | 1, window | 1);
    cv::boxFilter(weight, weight, CV_32F, box, {-1, -1}, true, cv::BORDER_CONSTANT);
    cv::boxFilter(share, share, CV_32F, box, {-1, -1}, true, cv::BORDER_CONSTANT);
    // A little of what it was before keeps cells sound that hardly any cloth is around.
    for (size_t i = 0; i < weight.total(); ++i) {
      const float w = weight.ptr<float>()[i];
      for (size_t k = 3 * i; k < 3 * i + 3; ++k) {
        auto& local = light.local.ptr<float>()[k];
        local = (share.ptr<float>()[k] + 0.05f * local) / (w + 0.05f);
      }
    }
  }
}

}  // namespace cowlcast::projector
