#include "drafting/garment/seam_walk.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <optional>

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

Walk walk_sleeve(const Piece& sleeve, const Piece& front, const Piece& back, double ease) {
  const Polyline& cap = edge_of(sleeve, "sleeve-cap").points;
  const Polyline* const armholes[] = {&edge_of(front, "armhole").points, &edge_of(back, "armhole").points};
  const double around = length(cap);
  Walk walk;
  walk.name = "sleeve cap";
  walk.first_length = around - ease;
  walk.second_length = length(*armholes[0]) + length(*armholes[1]);
  walk.difference = walk.first_length - walk.second_length;
  // The cap's front end is the one that its front notch is nearer to, or that its back notch is not.
  std::optional<bool> front_first;
  for (const Notch& notch : sleeve.notches) {
    const Foot foot = nearest(cap, notch.seam);
    if (notch.name != "armhole" || foot.distance > 1e-6) continue;
    const bool early = foot.along < 0.5 * around, is_back = notch.ticks == 2;
    if (!front_first) front_first = early != is_back;
    const double from_underarm = *front_first != is_back ? foot.along : around - foot.along;
    const Polyline& armhole = *armholes[is_back ? 1 : 0];
    for (const Notch& other : (is_back ? back : front).notches) {
      const Foot on_armhole = nearest(armhole, other.seam);
      if (other.name == "armhole" && on_armhole.distance < 1e-6)
        walk.notches.push_back({is_back ? "back" : "front", std::abs(from_underarm - on_armhole.along)});
    }
  }
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
                walk.name.c_str(), walk.first_length, walk.second_length,
                std::abs(walk.difference) < 0.0005 ? 0.0 : walk.difference, walk.bend_at_start * degrees,
                walk.bend_at_end * degrees);
  std::string line = text;
  for (const Walk::NotchPair& pair : walk.notches) {
    std::snprintf(text, sizeof text, ", notches %.2f mm apart (%s)", pair.apart + 0.0, pair.name.c_str());
    line += text;
  }
  return line;
}

}  // namespace cowlcast::drafting
