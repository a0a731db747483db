#include "drafting/geometry/offset.h"

#include <algorithm>
#include <cmath>

#include "drafting/geometry/close_pairs.h"
#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

double cross(const Point& a, const Point& b) {
  return a.x() * b.y() - a.y() * b.x();
}

constexpr double flat_corner = 0.2;  // sine: a curve's corner, mitred whatever the limit

struct Meeting {
  size_t segment = 0;
  double share = 0.0;  // along the segment
  Point point = Point::Zero();
  size_t other = 0;  // index of the same meeting on the other segment
};

/// All places where segments of a closed line cross, two entries a place.
std::vector<Meeting> meetings_of(const Polyline& line) {
  const size_t n = line.size();
  std::vector<Meeting> meetings;
  for_close_pairs(line, [&](size_t i, size_t j) {
    if (j == (i + 1) % n || i == (j + 1) % n) return false;
    const Point &a = line[i], &b = line[(i + 1) % n], &c = line[j], &d = line[(j + 1) % n];
    const auto place = crossing(a, b, c, d);
    if (!place) return false;
    const double on_i = (*place - a).norm() / (b - a).norm();
    const double on_j = (*place - c).norm() / (d - c).norm();
    if (on_i >= 1.0 || on_j >= 1.0) return false;  // counted by the side that starts there
    meetings.push_back({i, on_i, *place, meetings.size() + 1});
    meetings.push_back({j, on_j, *place, meetings.size() - 1});
    return false;
  });
  return meetings;
}

}  // namespace

Polyline outer_rim(const Polyline& line) {
  const std::vector<Meeting> meetings = meetings_of(line);
  if (meetings.empty()) return line;
  const size_t n = line.size();
  std::vector<std::vector<size_t>> on_segment(n);
  for (size_t m = 0; m < meetings.size(); ++m) on_segment[meetings[m].segment].push_back(m);
  for (auto& list : on_segment) {
    std::sort(list.begin(), list.end(),
              [&](size_t a, size_t b) { return meetings[a].share < meetings[b].share; });
  }
  // The lowest point lies on the rim; from there, change line at every crossing.
  size_t start = 0;
  for (size_t i = 1; i < n; ++i) {
    if (line[i].y() < line[start].y() || (line[i].y() == line[start].y() && line[i].x() < line[start].x())) {
      start = i;
    }
  }
  Polyline rim;
  size_t segment = start;
  double share = -1.0;
  for (size_t guard = 0; guard < 4 * (n + meetings.size()); ++guard) {
    if (share < 0.0) {
      if (segment == start && !rim.empty()) break;
      rim.push_back(line[segment]);
    }
    const auto& list = on_segment[segment];
    const auto next =
        std::find_if(list.begin(), list.end(), [&](size_t m) { return meetings[m].share > share; });
    if (next == list.end()) {
      segment = (segment + 1) % n;
      share = -1.0;
      continue;
    }
    const Meeting& met = meetings[*next];
    rim.push_back(met.point);
    segment = meetings[met.other].segment;
    share = meetings[met.other].share;
  }
  return rim;
}

Polyline offset_outline(const Polyline& outline, const std::vector<double>& distances, double limit) {
  return offset_outline(outline, distances, std::vector<double>(outline.size(), limit));
}

Polyline offset_outline(const Polyline& outline, const std::vector<double>& distances,
                        const std::vector<double>& limits) {
  const size_t n = outline.size();
  Polyline moved;
  moved.reserve(n + 16);
  for (size_t i = 0; i < n; ++i) {
    const size_t before = (i + n - 1) % n;
    const Point& corner = outline[i];
    const Point in = (corner - outline[before]).normalized();
    const Point out = (outline[(i + 1) % n] - corner).normalized();
    const double d_in = distances[before], d_out = distances[i];
    const Point a = corner + d_in * Point(in.y(), -in.x());
    const Point b = corner + d_out * Point(out.y(), -out.x());
    const double turn = cross(in, out), align = in.dot(out);
    if (std::abs(turn) < 1e-9 && align > 0.0) {
      moved.push_back(a);
      if (d_in != d_out) moved.push_back(b);
      continue;
    }
    // Where the two moved sides meet: along `in` from a.
    const double along = cross(b - a, out) / turn;
    const Point meet = a + along * in;
    const double wide = std::max(d_in, d_out);
    const bool on_a_curve = d_in == d_out && align > 0.0 && turn < flat_corner;
    if (turn > 0.0) {
      if ((meet - corner).norm() <= limits[i] * wide + 1e-12 || on_a_curve) {
        moved.push_back(meet);
      } else if (d_in != d_out && align > 0.7) {
        moved.push_back(a);  // widths differ on a flat corner: a step
        moved.push_back(b);
      } else {
        // Squared off at `wide` from the corner, square to the bisector.
        const Point bisector = (in - out).normalized();
        if ((meet - corner).dot(bisector) <= wide) {  // nothing stands out to be cut off
          moved.push_back(meet);
          continue;
        }
        const double share_a = (wide - (a - corner).dot(bisector)) / in.dot(bisector);
        const double share_b = (wide - (b - corner).dot(bisector)) / (-out).dot(bisector);
        moved.push_back(a + std::max(0.0, share_a) * in);
        moved.push_back(b - std::max(0.0, share_b) * out);
      }
    } else {
      // Trimmed where there is room; otherwise both ends and the corner between
      // them make a loop that is cut away below.
      const double room_in = (corner - outline[before]).norm();
      const double room_out = (outline[(i + 1) % n] - corner).norm();
      const double back_in = -along, back_out = (meet - b).dot(out);
      if (back_in <= 0.5 * room_in && back_out <= 0.5 * room_out &&
          (meet - corner).norm() <= mitre_limit * wide) {  // inner corners have no point to limit
        moved.push_back(meet);
      } else if (d_in != d_out && align > 0.7) {
        moved.push_back(a);
        moved.push_back(b);
      } else {
        moved.push_back(a);
        moved.push_back(corner);
        moved.push_back(b);
      }
    }
  }
  Polyline rim;
  for (const Point& point : outer_rim(moved)) {
    if (rim.empty() || (point - rim.back()).norm() > 1e-9) rim.push_back(point);
  }
  while (rim.size() > 1 && (rim.front() - rim.back()).norm() <= 1e-9) rim.pop_back();
  return rim;
}

}  // namespace cowlcast::drafting
