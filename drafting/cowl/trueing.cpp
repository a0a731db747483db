#include "drafting/cowl/trueing.h"

#include <algorithm>

#include "drafting/geometry/fairing.h"
#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

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

}  // namespace

std::vector<Edge> trued_edges(const LoweredBase& lowered, const std::vector<Slash>& slashes,
                              const std::vector<Motion>& motions, double facing_depth) {
  const Motion& body = motions.back();
  const double total = length(lowered.rim);
  const Point neck = motions.front() * lowered.neck_point();
  const Polyline armhole =
      fair_below(opened_run(lowered, slashes, motions, 0.0, lowered.armhole_length), neck.y());
  Polyline shoulder =
      fair_below(opened_run(lowered, slashes, motions, lowered.armhole_length, total), neck.y());
  shoulder.front() = armhole.back();
  shoulder.back() = neck;
  const Polyline side = moved(body, lowered.side_seam);
  Polyline hem = moved(body, lowered.hem);
  hem.back() = side.front();
  hem = squared_start(hem);

  std::vector<Edge> edges;
  const Point cowl_centre(0.0, neck.y());
  if (facing_depth > 0.0) {
    const Polyline facing_shoulder = facing_shoulder_of(shoulder, neck.y(), facing_depth);
    const Point facing_centre(0.0, neck.y() + facing_depth);
    Polyline facing_edge{facing_shoulder.back()};
    // A shoulder too flat to reach the facing's depth: slant up from its end.
    if (facing_edge.back().y() < facing_centre.y() - 1e-9)
      facing_edge.push_back({neck.x(), facing_centre.y()});
    facing_edge.push_back(facing_centre);
    edges = {{"centre-front", {facing_centre, cowl_centre, hem.front()}},
             {"hem", hem},
             {"side-seam", side},
             {"armhole", armhole},
             {"shoulder", shoulder},
             {"facing-shoulder", facing_shoulder},
             {"facing-edge", facing_edge}};
  } else {
    edges = {{"centre-front", {cowl_centre, hem.front()}},
             {"hem", hem},
             {"side-seam", side},
             {"armhole", armhole},
             {"shoulder", shoulder},
             {"neckline", {neck, cowl_centre}}};
  }
  edges.push_back({"cowl-edge", {cowl_centre, neck}});
  return edges;
}

}  // namespace cowlcast::drafting
