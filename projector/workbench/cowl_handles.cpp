#include "projector/workbench/cowl_handles.h"

#include <algorithm>
#include <cmath>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"
#include "projector/workbench/lengths.h"

namespace cowlcast::projector {
namespace {

using drafting::LoweredBase;
using drafting::Slash;
using drafting::SlashWish;

constexpr double usual_neckline = 60.0, usual_facing = 50.8;  // mm, as in CowlWishes

std::vector<Slash> slashes_of(const LoweredBase& lowered, const CowlWishes& wishes) {
  if (wishes.slashes.empty())
    return drafting::default_slashes(lowered, wishes.slash_count, wishes.slash_form);
  std::vector<Slash> slashes;
  for (const SlashWish& wish : wishes.slashes)
    slashes.push_back(wish.line.empty() ? drafting::slash_at(lowered, wish.below_neckline, wish.seam,
                                                             wish.share, wishes.slash_form)
                                        : drafting::slash_along(lowered, wish.line));
  return slashes;
}

/// Where along shoulder or armhole a hinge lies.
void set_hinge(SlashWish& wish, const LoweredBase& lowered, double along_rim) {
  const double total = drafting::length(lowered.rim), armhole = lowered.armhole_length;
  const bool shoulder = along_rim > armhole;
  wish.seam = shoulder ? "shoulder" : "armhole";
  wish.share = shoulder ? (total - along_rim) / (total - armhole) : 1.0 - along_rim / armhole;
  wish.share = std::clamp(wish.share, 0.01, 0.99);
}

SlashWish by_hand(const LoweredBase& lowered, const Slash& slash) {
  SlashWish wish;
  wish.below_neckline = lowered.centre_top().y() - slash.start.y();
  set_hinge(wish, lowered, slash.along_rim);
  return wish;
}

struct SlashEnd {
  size_t number = 0;
  bool start = true;
};

std::optional<SlashEnd> slash_end(const std::string& id) {
  for (const bool start : {true, false}) {
    const std::string kind = start ? "start-" : "hinge-";
    if (id.size() == kind.size() + 1 && id.starts_with(kind) && id.back() >= '0' && id.back() <= '5')
      return SlashEnd{static_cast<size_t>(id.back() - '0'), start};
  }
  return std::nullopt;
}

void move_slash_end(const Piece& base, CowlWishes& wishes, const SlashEnd& end, const Point& place,
                    double step) {
  const LoweredBase lowered = drafting::lower_neckline(base, wishes.neckline_drop);
  std::vector<SlashWish> slashes = slashes_by_hand(base, wishes);
  if (end.number >= slashes.size()) return;
  SlashWish& wish = slashes[end.number];
  if (end.start)
    wish.below_neckline = std::max(step, on_step(lowered.centre_top().y() - place.y(), step));
  else
    set_hinge(wish, lowered, drafting::nearest(lowered.rim, place).along);
  wishes.slashes = std::move(slashes);
}

/// The last of `count` steps from what works towards what does not, halving.
CowlWishes nearest_working(const Piece& base, const CowlWishes& wishes, double CowlWishes::*member,
                           double good, double bad) {
  constexpr double close = 1.0;  // mm
  CowlWishes trial = wishes;
  while (std::abs(bad - good) > close) {
    trial.*member = 0.5 * (good + bad);
    (refusal_of(base, trial).empty() ? good : bad) = trial.*member;
  }
  trial.*member = good > bad ? std::ceil(good) : std::floor(good);
  if (!refusal_of(base, trial).empty()) trial.*member = good;
  return trial;
}

std::optional<CowlWishes> with_working_drape(const Piece& base, const CowlWishes& wishes) {
  CowlWishes trial = wishes;
  try {
    const drafting::DrapeRange range = drafting::drape_range(base, wishes);
    trial.drape = std::clamp(wishes.drape, range.least, range.most);
  } catch (const drafting::Refusal&) {
    return std::nullopt;
  }
  return refusal_of(base, trial).empty() ? std::optional(trial) : std::nullopt;
}

std::optional<CowlWishes> with_working(const Piece& base, const CowlWishes& wishes,
                                       double CowlWishes::*member, double usual) {
  CowlWishes trial = wishes;
  trial.*member = usual;
  if (wishes.*member == usual || !refusal_of(base, trial).empty()) return std::nullopt;
  return nearest_working(base, wishes, member, usual, wishes.*member);
}

}  // namespace

std::vector<SlashWish> slashes_by_hand(const Piece& base, const CowlWishes& wishes) {
  const LoweredBase lowered = drafting::lower_neckline(base, wishes.neckline_drop);
  std::vector<SlashWish> result;
  for (const Slash& slash : slashes_of(lowered, wishes)) result.push_back(by_hand(lowered, slash));
  return result;
}

CowlWishes moved_handle(const Piece& base, const CowlWishes& wishes, const std::string& id,
                        const Point& place, double step) {
  CowlWishes result = wishes;
  if (id == "drape") {
    result.drape = std::max(step, on_step(2.0 * place.x(), step));
    result.set_openings.clear();
  } else if (id == "facing") {
    const double edge = drafting::draft_cowl_front(base, wishes).front.points.at("cowl-centre").y();
    result.facing_depth = std::max(0.0, on_step(place.y() - edge, step));
  } else if (id == "neckline") {
    const double top = drafting::edge_of(base, "neckline").points.back().y();
    result.neckline_drop = std::max(0.0, on_step(top - place.y(), step));
  } else if (const auto end = slash_end(id)) {
    move_slash_end(base, result, *end, place, step);
  }
  return result;
}

CowlWishes stepped_handle(const Piece& base, const CowlWishes& wishes, const std::string& id, int across,
                          int up, double step) {
  CowlWishes result = wishes;
  const int either = across + up;
  if (id == "drape") {
    result.drape = std::max(step, on_step(wishes.drape + step * either, step));
    result.set_openings.clear();
  } else if (id == "facing") {
    result.facing_depth = std::max(0.0, on_step(wishes.facing_depth + step * either, step));
  } else if (id == "neckline") {
    result.neckline_drop = std::max(0.0, on_step(wishes.neckline_drop - step * either, step));
  } else if (const auto end = slash_end(id)) {
    const LoweredBase lowered = drafting::lower_neckline(base, wishes.neckline_drop);
    const std::vector<Slash> slashes = slashes_of(lowered, wishes);
    if (end->number >= slashes.size()) return result;
    const Slash& slash = slashes[end->number];
    const double along = slash.along_rim + step * (up - across);
    move_slash_end(
        base, result, *end,
        end->start ? Point(slash.start + Point(0.0, step * either)) : drafting::point_at(lowered.rim, along),
        step);
  }
  return result;
}

std::string refusal_of(const Piece& base, const CowlWishes& wishes) {
  try {
    drafting::draft_cowl_front(base, wishes);
  } catch (const drafting::Refusal& reason) {
    return reason.what();
  }
  return {};
}

std::optional<WayOut> way_out(const Piece& base, const CowlWishes& wishes) {
  if (refusal_of(base, wishes).empty()) return std::nullopt;
  if (const auto drape = with_working_drape(base, wishes)) return WayOut{Mended::drape, *drape};
  if (const auto neck = with_working(base, wishes, &CowlWishes::neckline_drop, usual_neckline))
    return WayOut{Mended::neckline, *neck};
  if (const auto facing = with_working(base, wishes, &CowlWishes::facing_depth, usual_facing))
    return WayOut{Mended::facing, *facing};
  CowlWishes trial = wishes;
  trial.slashes.clear();
  trial.slash_count = slash_count_of(wishes);
  if (refusal_of(base, trial).empty()) return WayOut{Mended::slashes_by_default, trial};
  trial = wishes;
  trial.proportions.clear();
  trial.set_openings.clear();
  if (refusal_of(base, trial).empty()) return WayOut{Mended::even_openings, trial};
  for (trial.slashes.clear(), trial.slash_count = slash_count_of(wishes) - 1; trial.slash_count > 0;
       --trial.slash_count)
    if (const auto drape = with_working_drape(base, trial)) return WayOut{Mended::slash_count, *drape};
  return std::nullopt;
}

std::vector<double> proportions_of(Weight weight, int count) {
  std::vector<double> proportions;
  if (weight != Weight::high && weight != Weight::low) return proportions;
  for (int i = 0; i < count; ++i) {
    const double down = count > 1 ? static_cast<double>(i) / (count - 1) : 0.5;
    proportions.push_back(weight == Weight::high ? 2.0 - down : 1.0 + down);
  }
  return proportions;
}

Weight weight_of(const CowlWishes& wishes) {
  if (!wishes.set_openings.empty()) return Weight::own;
  if (wishes.proportions.empty()) return Weight::even;
  for (const Weight weight : {Weight::high, Weight::low})
    if (wishes.proportions == proportions_of(weight, slash_count_of(wishes))) return weight;
  return Weight::own;
}

int slash_count_of(const CowlWishes& wishes) {
  return wishes.slashes.empty() ? wishes.slash_count : static_cast<int>(wishes.slashes.size());
}

}  // namespace cowlcast::projector
