#include "projector/cutting/light_steps.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr double kPitch = 20.0;       // mm between places that are tried for a cross
constexpr double kLeastApart = 60.0;  // mm between crosses
constexpr double kOffLine = 40.0;     // mm from the line of the first two, for another to stand beside it
constexpr int kMoreSteps = 6;         // than are needed to show all

// The upright rectangle about the light's middle that lies within its outline, by shrinking its box.
drafting::Box inside_box(const Polyline& lit) {
  const drafting::Box whole = drafting::box_of(lit);
  const Point middle = 0.5 * (whole.low + whole.high), half = 0.5 * (whole.high - whole.low);
  double share = 1.0;
  for (; share > 0.05; share -= 0.01) {
    bool fits = true;
    for (const Point& sign : {Point(-1, -1), Point(1, -1), Point(1, 1), Point(-1, 1)})
      fits = fits && drafting::contains(lit, middle + share * half.cwiseProduct(sign));
    if (fits) break;
  }
  return {middle - share * half, middle + share * half};
}

std::vector<Point> room_for_crosses(const Polyline& outline, const drafting::Box& strip, double inside) {
  const auto between = [](double low, double high) {
    std::vector<double> places;
    const int gaps = std::max(1, static_cast<int>(std::ceil((high - low) / kPitch)));
    for (int i = 0; low <= high && i <= gaps; ++i) places.push_back(low + (high - low) * i / gaps);
    return places;
  };
  const drafting::Box lain = drafting::box_of(outline);
  const Point low = strip.low.cwiseMax(lain.low + Point(inside, inside)),
              high = strip.high.cwiseMin(lain.high - Point(inside, inside));
  std::vector<Point> places;
  for (const double x : between(low.x(), high.x()))
    for (const double y : between(low.y(), high.y()))
      if (drafting::contains(outline, {x, y}) &&
          drafting::distance_to_outline(outline, {x, y}) >= inside - 1e-6)
        places.emplace_back(x, y);
  return places;
}

std::pair<Point, Point> farthest_two(const std::vector<Point>& places) {
  std::pair<Point, Point> best{places.front(), places.front()};
  const Polyline hull = places.size() < 3 ? places : drafting::convex_hull(places);
  for (const Point& a : hull)
    for (const Point& b : hull)
      if ((a - b).norm() > (best.first - best.second).norm()) best = {a, b};
  return best;
}

// True when one more stands clear of the others, and then no two are as far apart as any other two by `least`
// mm.
bool all_told_apart(const std::vector<Point>& crosses, const Point& more, double least) {
  std::vector<double> lengths;
  for (size_t i = 0; i < crosses.size(); ++i) {
    lengths.push_back((crosses[i] - more).norm());
    if (lengths.back() < kLeastApart) return false;
    for (size_t j = 0; j < i; ++j) lengths.push_back((crosses[i] - crosses[j]).norm());
  }
  std::sort(lengths.begin(), lengths.end());
  for (size_t i = 1; i < lengths.size(); ++i)
    if (lengths[i] - lengths[i - 1] < least) return false;
  return true;
}

// One more: the farthest to the left of the way from the first cross to the second, to the right with a
// negative `side`. Where there is no room beside that way, the farthest from its middle.
void add_one(std::vector<Point>& crosses, const std::vector<Point>& places, double side, double least) {
  const Point way = (crosses[1] - crosses[0]).normalized(), left = side * Point(-way.y(), way.x());
  const Point middle = 0.5 * (crosses[0] + crosses[1]);
  double most = 0.0;
  bool beside = false;
  const Point* best = nullptr;
  for (const Point& place : places) {
    const double off = left.dot(place - middle);
    const bool here = off > kOffLine;
    const double far = here ? off : (place - middle).norm();
    if (here < beside || (here == beside && far <= most) || !all_told_apart(crosses, place, least)) continue;
    beside = here;
    most = far;
    best = &place;
  }
  if (best) crosses.push_back(*best);
}

// What is seen of the outline, piece frame.
std::vector<Point> seen_of(const Polyline& outline, const Laying& laying, const Polyline& lit) {
  Polyline closed = outline;
  if (!closed.empty()) closed.push_back(closed.front());
  std::vector<Point> seen;
  for (const Point& point : drafting::subdivided(closed, 10.0))
    if (drafting::contains(lit, mat_from_piece(laying, point))) seen.push_back(point);
  return seen;
}

// So many steps, from `first`, which lies at the light's left end.
std::vector<LightStep> steps_of(int count, double advance, const Polyline& outline, const Laying& first,
                                const Polyline& lit, const drafting::Box& room, const StepRules& rules) {
  std::vector<LightStep> steps;
  for (int i = 0; i < count; ++i) {
    LightStep step{first};
    step.laying.x -= i * advance;
    step.shown = seen_of(outline, step.laying, lit);
    if (i + 1 < count) {
      const drafting::Box strip{room.low + Point(advance + rules.from_edge, 0.0),
                                room.high - Point(rules.from_edge, 0.0)};
      for (const Point& place : cross_places(laid(step.laying, outline), strip, rules))
        step.chalk.push_back(piece_from_mat(step.laying, place));
    }
    steps.push_back(std::move(step));
  }
  return steps;
}

// How far off a cut line may be by one finding, all crosses met, mm.
double error_of(const std::vector<LightStep>& steps, double sigma) {
  double most = 0.0;
  for (size_t i = 1; i < steps.size(); ++i) {
    const std::vector<Point>& crosses = steps[i - 1].chalk;
    if (crosses.size() < 2) return std::numeric_limits<double>::infinity();
    most = std::max(most, doubt_of_meeting(crosses, sigma).farthest(steps[i].shown));
  }
  return most;
}

}  // namespace

std::vector<Point> cross_places(const Polyline& outline, const drafting::Box& strip, const StepRules& rules) {
  std::vector<Point> places;
  std::pair<Point, Point> ends{Point::Zero(), Point::Zero()};
  const auto apart = [&] { return (ends.first - ends.second).norm(); };
  for (const double share : {1.0, 2.0 / 3.0, 1.0 / 3.0, 1.0 / 6.0}) {
    if (apart() >= kLeastApart) break;
    places = room_for_crosses(outline, strip, share * rules.inside);
    if (!places.empty()) ends = farthest_two(places);
  }
  if (apart() < kLeastApart) return {};
  std::vector<Point> crosses{ends.first, ends.second};
  // Two marks that are no nearer to their places than is allowed make up for twice that, on either side.
  const double least = 6.0 * rules.find.residual;
  for (const double side : {1.0, -1.0}) add_one(crosses, places, side, least);
  std::sort(crosses.begin(), crosses.end(), [](const Point& left, const Point& right) {
    return std::pair(left.x(), left.y()) < std::pair(right.x(), right.y());
  });
  return crosses;
}

std::vector<LightStep> light_steps(const Polyline& outline, const Laying& laying, const Polyline& lit,
                                   const StepRules& rules) {
  const drafting::Box light = inside_box(lit);
  const Point low = light.low + Point(rules.margin, rules.margin);
  const Point high = light.high - Point(rules.margin, rules.margin);
  const drafting::Box lain = drafting::box_of(laid(laying, outline));
  const double wide = high.x() - low.x();
  if (lain.height() > high.y() - low.y())
    throw drafting::Refusal("The piece is " + in_mm(lain.height()) + " deep as it lies and the light only " +
                            in_mm(high.y() - low.y()) +
                            ". Turn it so that its long side lies across the table.");
  if (wide <= 1.5 * rules.overlap)
    throw drafting::Refusal("The light is too narrow to show this piece part by part. Raise the projector.");

  Laying first = laying;  // brought up or down into the light
  first.y += std::clamp(0.0, low.y() - lain.low.y(), high.y() - lain.high.y());
  if (lain.width() <= wide) {
    first.x += std::clamp(0.0, low.x() - lain.low.x(), high.x() - lain.high.x());
    return {{first}};
  }
  first.x += low.x() - lain.low.x();
  const int fewest = static_cast<int>(std::ceil((lain.width() - rules.overlap) / (wide - rules.overlap)));
  std::vector<LightStep> best;
  double least = std::numeric_limits<double>::infinity();
  for (int count = fewest; count <= fewest + kMoreSteps; ++count) {
    const double advance = (lain.width() - wide) / (count - 1);
    std::vector<LightStep> steps = steps_of(count, advance, outline, first, lit, {low, high}, rules);
    const double error = error_of(steps, rules.find.mark_sigma);
    if (!(error < least)) continue;
    least = error;
    best = std::move(steps);
    if (least <= 2.0 / 3.0 * rules.find.at_cut_line) break;
  }
  if (!std::isfinite(least))
    throw drafting::Refusal(
        "The piece is too narrow where its parts meet to be found again by chalk marks. Raise the projector "
        "so "
        "that the light shows more of it at once.");
  if (least > rules.find.at_cut_line)
    throw drafting::Refusal("The piece is too long to be found again part by part: a cut line could be " +
                            in_mm(least) + " off, more than " + in_mm(rules.find.at_cut_line) +
                            ". Raise the projector so that the light shows more of it at once.");
  return best;
}

}  // namespace cowlcast::projector
