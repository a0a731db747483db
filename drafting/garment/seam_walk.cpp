#include "drafting/garment/seam_walk.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

/// Interior angles of a piece at both ends of an edge.
struct Corners {
  double start = 0.0, end = 0.0;
};

double interior(const Point& in, const Point& out) {
  return std::numbers::pi - std::atan2(in.x() * out.y() - in.y() * out.x(), in.dot(out));
}

Corners corners_of(const Piece& piece, const std::string& role) {
  std::vector<const Edge*> ring;
  for (const Edge& edge : piece.edges) {
    if (edge.role != "cowl-edge") ring.push_back(&edge);
  }
  const size_t n = ring.size();
  for (size_t i = 0; i < n; ++i) {
    if (ring[i]->role != role) continue;
    const Polyline &before = ring[(i + n - 1) % n]->points, &here = ring[i]->points,
                   &after = ring[(i + 1) % n]->points;
    return {interior(before.back() - before[before.size() - 2], here[1] - here[0]),
            interior(here.back() - here[here.size() - 2], after[1] - after[0])};
  }
  return {};
}

}  // namespace

Walk walk_seams(const std::string& name, const Piece& first, const std::string& first_role,
                const Piece& second, const std::string& second_role, double tacked_up) {
  const Polyline &a = edge_of(first, first_role).points, &b = edge_of(second, second_role).points;
  Walk walk;
  walk.name = name;
  walk.first_length = length(a) - tacked_up;
  walk.second_length = length(b);
  walk.difference = walk.first_length - walk.second_length;
  for (const Notch& one : first.notches) {
    const Foot on_a = nearest(a, one.seam);
    if (on_a.distance > 1e-6 || one.name == "tack") continue;
    for (const Notch& other : second.notches) {
      const Foot on_b = nearest(b, other.seam);
      if (other.name == one.name && on_b.distance < 1e-6) {
        walk.notches.push_back({one.name, std::abs(on_a.along - on_b.along)});
      }
    }
  }
  const Corners at_first = corners_of(first, first_role), at_second = corners_of(second, second_role);
  walk.bend_at_start = at_first.start + at_second.start - std::numbers::pi;
  walk.bend_at_end = at_first.end + at_second.end - std::numbers::pi;
  return walk;
}

bool walks(const Walk& walk) {
  return std::abs(walk.difference) <= walk_tolerance &&
         std::all_of(walk.notches.begin(), walk.notches.end(),
                     [](const auto& pair) { return pair.apart <= 0.5; });
}

std::string walk_in_words(const Walk& walk) {
  constexpr double degrees = 180.0 / std::numbers::pi;
  char text[200];
  std::snprintf(text, sizeof text, "%s: %.2f mm on %.2f mm, difference %.3f mm, bends %.1f and %.1f degrees",
                walk.name.c_str(), walk.first_length, walk.second_length, walk.difference + 0.0,
                walk.bend_at_start * degrees, walk.bend_at_end * degrees);
  return text;
}

}  // namespace cowlcast::drafting
