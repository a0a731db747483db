#include "projector/blade/blade.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr double kCurveSpan = 5.0;  // mm to either side over which a curve is judged
constexpr double kCurveStep = 1.0;  // mm
constexpr double kTightGap = 25.0;  // mm: nearer stretches are told as one

double turn_between(const Point& before, const Point& after) {
  return std::atan2(before.x() * after.y() - before.y() * after.x(), before.dot(after));
}

// Directions just before and after a vertex, each as the chord over `span`.
double turn_at(const Polyline& path, double along, double span, bool closed) {
  const double whole = drafting::length(path);
  const auto at = [&](double s) {
    if (closed) s = std::fmod(s + whole, whole);
    return drafting::point_at(path, s);
  };
  return turn_between(at(along) - at(along - span), at(along + span) - at(along));
}

struct Corner {
  double along = 0.0;
  double turn = 0.0;
};

// Vertices where the path turns by more than the rule within the span; of
// several within one span the sharpest.
std::vector<Corner> corners_of(const Polyline& path, bool closed, const CutRules& rules) {
  std::vector<Corner> found;
  const double whole = drafting::length(path), span = rules.corner_span;
  double along = 0.0;
  for (size_t i = 0; i + 1 < path.size(); ++i) {
    const bool end = !closed && (along < 1e-9 || whole - along < 1e-9);
    const double turn = end ? 0.0 : turn_at(path, along, std::min(span, whole / 4.0), closed);
    if (std::abs(turn) > rules.corner) {
      if (!found.empty() && along - found.back().along < span) {
        if (std::abs(turn) > std::abs(found.back().turn)) found.back() = {along, turn};
      } else {
        found.push_back({along, turn});
      }
    }
    along += (path[i + 1] - path[i]).norm();
  }
  if (closed && found.size() > 1 && found.front().along + whole - found.back().along < span) {
    if (std::abs(found.front().turn) >= std::abs(found.back().turn))
      found.pop_back();
    else
      found.erase(found.begin());
  }
  return found;
}

CutEnd kind_of(const Corner& corner) {
  return corner.turn < 0.0 ? CutEnd::inner : CutEnd::outer;  // the piece is on the left
}

void judge(Cut& cut, const Blade& blade, const CutRules& rules) {
  const double whole = drafting::length(cut.path), ahead = half_chord(blade);
  cut.start_at = cut.start == CutEnd::inner ? ahead : 0.0;
  cut.stop_at = cut.end == CutEnd::inner ? whole - ahead : whole;
  const double least = tightest_radius(blade, rules.tolerance);
  const double span = std::min(kCurveSpan, whole / 2.0);
  std::optional<TightStretch> open;
  for (double along = span; along <= whole - span; along += kCurveStep) {
    const double radius = radius_at(cut.path, along, span);
    if (radius < least) {
      if (!open) open = TightStretch{along, along, radius, std::nullopt};
      open->to = along;
      open->radius = std::min(open->radius, radius);
    } else if (open && along - open->to > kTightGap) {
      cut.tight.push_back(*open);
      open.reset();
    }
  }
  if (open) cut.tight.push_back(*open);
  for (TightStretch& tight : cut.tight) {
    if (tight.from <= span) tight.from = 0.0;
    if (tight.to >= whole - span - kCurveStep) tight.to = whole;
    tight.blade_that_fits = blade_that_fits(tight.radius, rules.tolerance, blade);
  }
}

}  // namespace

double half_chord(const Blade& blade) {
  const double depth = blade.cloth + blade.into_mat;
  if (!(blade.diameter > 0.0) || !(depth > 0.0) || !(depth < blade.diameter / 2.0))
    throw drafting::Refusal("A blade of this size does not reach through this cloth. Choose a larger blade.");
  return std::sqrt(blade.diameter * depth - depth * depth);
}

double tightest_radius(const Blade& blade, double tolerance) {
  const double a = half_chord(blade);
  return a * a / (2.0 * tolerance);
}

std::optional<double> blade_that_fits(double radius, double tolerance, const Blade& blade) {
  std::optional<double> fits;
  for (const double size : kBladeSizes) {
    const double depth = blade.cloth + blade.into_mat;
    if (depth < size / 2.0 && tightest_radius({size, blade.cloth, blade.into_mat}, tolerance) <= radius)
      fits = size;
  }
  return fits;
}

double radius_at(const Polyline& path, double along, double span) {
  const Point a = drafting::point_at(path, along - span), b = drafting::point_at(path, along),
              c = drafting::point_at(path, along + span);
  const double twice_area = std::abs((b - a).x() * (c - a).y() - (b - a).y() * (c - a).x());
  if (twice_area < 1e-9) return std::numeric_limits<double>::infinity();
  return (b - a).norm() * (c - b).norm() * (c - a).norm() / (2.0 * twice_area);
}

std::vector<Cut> cuts_of(const std::vector<Polyline>& runs, const Blade& blade, const CutRules& rules) {
  std::vector<Cut> cuts;
  for (const Polyline& run : runs) {
    if (run.size() < 2) continue;
    const double whole = drafting::length(run);
    const bool closed = run.size() > 3 && (run.front() - run.back()).norm() < 1e-6;
    const std::vector<Corner> corners = corners_of(run, closed, rules);
    if (corners.empty()) {
      cuts.push_back({.path = run});
      judge(cuts.back(), blade, rules);
      continue;
    }
    const auto add = [&](Polyline path, CutEnd start, CutEnd end) {
      if (path.size() < 2) return;
      cuts.push_back({.path = std::move(path), .start = start, .end = end});
      judge(cuts.back(), blade, rules);
    };
    for (size_t i = 0; i + 1 < corners.size(); ++i)
      add(drafting::between(run, corners[i].along, corners[i + 1].along), kind_of(corners[i]),
          kind_of(corners[i + 1]));
    const Corner &first = corners.front(), &last = corners.back();
    if (closed) {
      Polyline path = drafting::between(run, last.along, whole);
      drafting::append(path, drafting::between(run, 0.0, first.along));
      add(path, kind_of(last), kind_of(first));
    } else {
      add(drafting::between(run, 0.0, first.along), CutEnd::open, kind_of(first));
      add(drafting::between(run, last.along, whole), kind_of(last), CutEnd::open);
    }
  }
  return cuts;
}

Cut turned_round(const Cut& cut) {
  const double whole = drafting::length(cut.path);
  Cut turned = cut;
  turned.path = drafting::reversed(cut.path);
  turned.kept_on_left = !cut.kept_on_left;
  std::swap(turned.start, turned.end);
  turned.start_at = whole - cut.stop_at;
  turned.stop_at = whole - cut.start_at;
  turned.tight.clear();
  for (auto it = cut.tight.rbegin(); it != cut.tight.rend(); ++it)
    turned.tight.push_back({whole - it->to, whole - it->from, it->radius, it->blade_that_fits});
  return turned;
}

}  // namespace cowlcast::projector
