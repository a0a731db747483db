#include "drafting/cowl/trueing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/geometry/fairing.h"
#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

// Where on the side seam a longer front is tacked up: so much of it lies above.
constexpr double tack_share = 0.3;
constexpr double fairing_window = 40.0;  // mm to either side of a hinge

/// A run of the rim after the opening, from `from` to `to` mm along it.
struct Run {
  Polyline line;
  std::vector<double> kinks;  // mm from its start
};

Run opened_run(const LoweredBase& lowered, const std::vector<Slash>& slashes,
               const std::vector<Motion>& motions, double from, double to) {
  Run run;
  const size_t n = slashes.size();
  for (size_t k = n + 1; k-- > 0;) {
    const double low = std::max(from, k == n ? 0.0 : slashes[k].along_rim);
    const double high = std::min(to, k == 0 ? to : slashes[k - 1].along_rim);
    if (high - low < 1e-9) continue;
    if (!run.line.empty()) run.kinks.push_back(low - from);
    append(run.line, moved(motions[k], between(lowered.rim, low, high)));
  }
  return run;
}

Polyline fair_below(const Run& run, double height) {
  Polyline fair = faired(run.line, run.kinks, fairing_window);
  const bool below = std::all_of(fair.begin(), fair.end(),
                                 [&](const Point& p) { return p.y() <= height + 1e-9 && p.x() >= 0.0; });
  return below ? fair : run.line;
}

/// The shoulder's reflection in the cowl edge, from the neck point up to `depth`.
Polyline facing_shoulder_of(const Polyline& shoulder, double edge_height, double depth) {
  Polyline line = reversed(mirrored(shoulder, {{0.0, edge_height}, {1.0, edge_height}}));
  for (size_t i = 1; i < line.size(); ++i) {
    if (line[i].y() < edge_height + depth) continue;
    const double share = (edge_height + depth - line[i - 1].y()) / (line[i].y() - line[i - 1].y());
    line[i] = line[i - 1] + share * (line[i] - line[i - 1]);
    line[i].y() = edge_height + depth;
    line.resize(i + 1);
    if ((line[i] - line[i - 1]).norm() < 1e-9) line.erase(line.end() - 2);
    break;
  }
  return line;
}

/// From the facing shoulder's end to the centre at `depth`, over the neck point
/// when the shoulder is too flat to reach that deep.
Polyline facing_edge_of(const Polyline& facing_shoulder, const Point& neck, double depth) {
  const double height = neck.y() + depth;
  Polyline line{facing_shoulder.back()};
  if (line.back().y() < height - 1e-9) line.push_back({neck.x(), height});
  line.push_back({0.0, height});
  return line;
}

/// The hem from where it leaves the centre front; what lies over it is cut away.
Polyline right_of_centre(const Polyline& hem) {
  size_t i = 0;
  while (i + 1 < hem.size() && hem[i + 1].x() <= 0.0) ++i;
  if (hem[i].x() >= 0.0) return hem;
  const double share = -hem[i].x() / (hem[i + 1].x() - hem[i].x());
  Polyline rest{Point(0.0, hem[i].y() + share * (hem[i + 1].y() - hem[i].y()))};
  rest.insert(rest.end(), hem.begin() + static_cast<std::ptrdiff_t>(i) + 1, hem.end());
  return rest;
}

/// Drops everything below a level of the side seam by `extra`.
void lengthen(Polyline& side, Polyline& hem, double extra) {
  const double along = (1.0 - tack_share) * length(side);
  Polyline lower = between(side, 0.0, along);
  for (Point& p : lower) p.y() -= extra;
  for (Point& p : hem) p.y() -= extra;
  const Polyline upper = between(side, along, length(side));
  lower.insert(lower.end(), upper.begin(), upper.end());
  side = lower;
}

/// Raises the hem at the centre by `rise`, less and less towards the side seam;
/// square at the centre still.
void raise_at_centre(Polyline& hem, double rise) {
  const double width = hem.back().x();
  for (Point& p : hem) p.y() += 0.5 * rise * (1.0 + std::cos(std::numbers::pi * p.x() / width));
  hem[0].y() = hem[1].y();
}

}  // namespace

std::vector<Edge> trued_edges(const LoweredBase& lowered, const std::vector<Slash>& slashes,
                              const std::vector<Motion>& motions, const Trueing& trueing) {
  const Motion& body = motions.back();
  const double total = length(lowered.rim);
  const Point neck = motions.front() * lowered.neck_point();
  const Polyline armhole =
      fair_below(opened_run(lowered, slashes, motions, 0.0, lowered.armhole_length), neck.y());
  Polyline shoulder =
      fair_below(opened_run(lowered, slashes, motions, lowered.armhole_length, total), neck.y());
  shoulder.front() = armhole.back();
  shoulder.back() = neck;
  Polyline side = moved(body, lowered.side_seam);
  Polyline hem = right_of_centre(moved(body, lowered.hem));
  hem.back() = side.front();
  hem = squared_start(hem);
  if (trueing.tacked_length > 0.0) lengthen(side, hem, trueing.tacked_length);
  if (trueing.trial_hang != 0.0) raise_at_centre(hem, trueing.trial_hang);

  const Point cowl_centre(0.0, neck.y());
  std::vector<Edge> edges = {{trueing.centre_role, {cowl_centre, hem.front()}},
                             {"hem", hem},
                             {"side-seam", side},
                             {"armhole", armhole},
                             {"shoulder", shoulder}};
  if (trueing.facing_depth > 0.0) {
    const Polyline facing_shoulder = facing_shoulder_of(shoulder, neck.y(), trueing.facing_depth);
    const Polyline facing_edge = facing_edge_of(facing_shoulder, neck, trueing.facing_depth);
    edges[0].points.insert(edges[0].points.begin(), facing_edge.back());
    edges.push_back({"facing-shoulder", facing_shoulder});
    edges.push_back({"facing-edge", facing_edge});
  } else {
    edges.push_back({"neckline", {neck, cowl_centre}});
  }
  edges.push_back({"cowl-edge", {cowl_centre, neck}});
  return edges;
}

std::vector<Edge> facing_edges(const std::vector<Edge>& front, const std::string& centre_role, double depth) {
  const auto shoulder =
      std::find_if(front.begin(), front.end(), [](const Edge& edge) { return edge.role == "shoulder"; });
  const Point neck = shoulder->points.back(), cowl_centre(0.0, neck.y());
  const Polyline facing_shoulder = facing_shoulder_of(shoulder->points, neck.y(), depth);
  const Polyline facing_edge = facing_edge_of(facing_shoulder, neck, depth);
  return {{centre_role, {facing_edge.back(), cowl_centre}},
          {"neckline", {cowl_centre, neck}},
          {"facing-shoulder", facing_shoulder},
          {"facing-edge", facing_edge}};
}

std::optional<Segment> tack_marks(const std::vector<Edge>& front, double tacked_length) {
  if (!(tacked_length > 0.0)) return std::nullopt;
  for (const Edge& edge : front) {
    if (edge.role != "side-seam") continue;
    // `lengthen` left its straight piece just below this share of the seam.
    const double above = tack_share * (length(edge.points) - tacked_length);
    const double upper = length(edge.points) - above;
    return Segment{point_at(edge.points, upper), point_at(edge.points, upper - tacked_length)};
  }
  return std::nullopt;
}

}  // namespace cowlcast::drafting
