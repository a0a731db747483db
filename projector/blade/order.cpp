#include "projector/blade/order.h"

#include <algorithm>
#include <cmath>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

// Negative: the stroke should be turned round.
double goodness(const Cut& cut, const Laying& laying, const Operator& person) {
  const Point from = mat_from_piece(laying, cut.path.front()), to = mat_from_piece(laying, cut.path.back());
  const double away = (to - person.stands).norm() - (from - person.stands).norm();
  if (std::abs(away) > 0.2 * drafting::length(cut.path)) return away;
  // Across: towards the blade's hand, seen by somebody who looks at the stroke's middle.
  const Point ahead = 0.5 * (from + to) - person.stands;
  const Point right(ahead.y(), -ahead.x());
  const double across = right.dot(to - from);
  return person.hand == Hand::right ? across : -across;
}

bool leaves(const Polyline& fine, const Polyline& area) {
  return std::any_of(fine.begin(), fine.end(),
                     [&](const Point& point) { return !drafting::contains(area, point); });
}

// Where strokes follow one another they share a corner, which is no crossing.
bool crosses(const Polyline& path, const Polyline& earlier) {
  const drafting::Box there = drafting::box_of(earlier);
  const auto beside = [](const Point& a, const Point& b, const Point& low, const Point& high) {
    return std::max(a.x(), b.x()) < low.x() || std::min(a.x(), b.x()) > high.x() ||
           std::max(a.y(), b.y()) < low.y() || std::min(a.y(), b.y()) > high.y();
  };
  for (size_t i = 1; i < path.size(); ++i) {
    if (beside(path[i - 1], path[i], there.low, there.high)) continue;
    for (size_t j = 1; j < earlier.size(); ++j) {
      const auto at = drafting::crossing(path[i - 1], path[i], earlier[j - 1], earlier[j]);
      if (at && std::min({(*at - path.front()).norm(), (*at - path.back()).norm()}) > 1.0) return true;
    }
  }
  return false;
}

void add_fold_cautions(std::vector<std::string>& cautions, const Polyline& path,
                       const drafting::Segment& fold) {
  constexpr double kMeets = 1.0, kEnd = 5.0;  // mm
  const double whole = drafting::length(path);
  bool start = false, end = false, within = false;
  double along = 0.0;
  const Polyline fine = drafting::subdivided(path, 0.5);
  for (size_t i = 0; i < fine.size(); ++i) {
    if (i > 0) along += (fine[i] - fine[i - 1]).norm();
    if (drafting::nearest({fold.from, fold.to}, fine[i]).distance > kMeets) continue;
    (along < kEnd ? start : whole - along < kEnd ? end : within) = true;
  }
  if (within)
    cautions.emplace_back("This stroke runs into the fold: check how the cloth lies.");
  else if (start && end)
    cautions.emplace_back("Begins and ends at the fold: cut across it, through both layers, never along it.");
  else if (start || end)
    cautions.emplace_back(std::string(start ? "Begins" : "Ends") +
                          " at the fold: cut across it, through both layers, never along it.");
}

}  // namespace

Operator standing_before(const Polyline& area, Hand hand) {
  constexpr double kForearm = 250.0;  // mm
  Operator person;
  person.hand = hand;
  person.stands = {0.0, drafting::box_of(area).low.y() - kForearm};
  return person;
}

std::vector<Cut> ordered_cuts(std::vector<Cut> cuts, const Laying& laying, const Operator& person) {
  for (Cut& cut : cuts)
    if (cut.path.size() > 1 && goodness(cut, laying, person) < 0.0) cut = turned_round(cut);
  std::stable_sort(cuts.begin(), cuts.end(), [](const Cut& a, const Cut& b) {
    return drafting::length(a.path) > drafting::length(b.path);
  });
  // Among those about as long as the longest left, the nearest.
  for (size_t i = 1; i < cuts.size(); ++i) {
    const Point hand = cuts[i - 1].path.back();
    const double enough = kAboutAsLong * drafting::length(cuts[i].path);
    size_t best = i;
    for (size_t k = i; k < cuts.size() && drafting::length(cuts[k].path) >= enough; ++k)
      if ((cuts[k].path.front() - hand).norm() < (cuts[best].path.front() - hand).norm()) best = k;
    std::rotate(cuts.begin() + static_cast<long>(i), cuts.begin() + static_cast<long>(best),
                cuts.begin() + static_cast<long>(best) + 1);
  }
  return cuts;
}

std::vector<std::string> stroke_cautions(const Cut& cut, const Laying& laying,
                                         const Surroundings& surroundings) {
  std::vector<std::string> cautions;
  const Polyline fine = drafting::subdivided(laid(laying, cut.path), 5.0);
  if (leaves(fine, surroundings.lit))
    cautions.emplace_back("This stroke leaves the light: move the cloth first.");
  if (!surroundings.mat.empty() && leaves(fine, surroundings.mat))
    cautions.emplace_back("This stroke leaves the mat: shift the mat under it first.");
  if (cut.stop_at <= cut.start_at)
    cautions.emplace_back("Too short between its corners for this blade: use shears.");
  if (!cut.tight.empty()) {
    const auto tightest =
        std::min_element(cut.tight.begin(), cut.tight.end(),
                         [](const TightStretch& a, const TightStretch& b) { return a.radius < b.radius; });
    cautions.push_back(tightest->blade_that_fits
                           ? "Too tight a curve for this blade: take the " +
                                 std::to_string(static_cast<int>(*tightest->blade_that_fits)) + " mm one."
                           : std::string("Too tight a curve for any round blade: use shears."));
  }
  if (std::any_of(surroundings.before.begin(), surroundings.before.end(),
                  [&](const Cut& earlier) { return crosses(cut.path, earlier.path); }))
    cautions.emplace_back("This stroke crosses one that is cut already.");
  if (surroundings.fold) add_fold_cautions(cautions, cut.path, *surroundings.fold);
  return cautions;
}

}  // namespace cowlcast::projector
