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
  // Among those within a fifth of the longest left, the nearest.
  for (size_t i = 1; i < cuts.size(); ++i) {
    const Point hand = cuts[i - 1].path.back();
    const double enough = 0.8 * drafting::length(cuts[i].path);
    size_t best = i;
    for (size_t k = i; k < cuts.size() && drafting::length(cuts[k].path) >= enough; ++k)
      if ((cuts[k].path.front() - hand).norm() < (cuts[best].path.front() - hand).norm()) best = k;
    std::rotate(cuts.begin() + static_cast<long>(i), cuts.begin() + static_cast<long>(best),
                cuts.begin() + static_cast<long>(best) + 1);
  }
  return cuts;
}

std::vector<std::string> stroke_cautions(const Cut& cut, const Laying& laying, const Polyline& lit,
                                         const std::vector<Cut>& before) {
  std::vector<std::string> cautions;
  const Polyline path = laid(laying, cut.path);
  const Polyline fine = drafting::subdivided(path, 5.0);
  if (std::any_of(fine.begin(), fine.end(), [&](const Point& p) { return !drafting::contains(lit, p); }))
    cautions.emplace_back("This stroke leaves the light: move the cloth first.");
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
  for (const Cut& earlier : before) {
    bool crosses = false;
    for (size_t i = 1; i < cut.path.size() && !crosses; ++i)
      for (size_t j = 1; j < earlier.path.size() && !crosses; ++j) {
        const auto at =
            drafting::crossing(cut.path[i - 1], cut.path[i], earlier.path[j - 1], earlier.path[j]);
        // Where strokes follow one another they share a corner, which is no crossing.
        crosses = at && std::min({(*at - cut.path.front()).norm(), (*at - cut.path.back()).norm()}) > 1.0;
      }
    if (crosses) {
      cautions.emplace_back("This stroke crosses one that is cut already.");
      break;
    }
  }
  return cautions;
}

}  // namespace cowlcast::projector
