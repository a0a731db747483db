#include "drafting/geometry/polyline.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "drafting/geometry/close_pairs.h"

namespace cowlcast::drafting {
namespace {

double cross(const Point& a, const Point& b) {
  return a.x() * b.y() - a.y() * b.x();
}

Point nearest_on_segment(const Point& a, const Point& b, const Point& p, double& share) {
  const Point ab = b - a;
  const double squared = ab.squaredNorm();
  share = squared > 0.0 ? std::clamp((p - a).dot(ab) / squared, 0.0, 1.0) : 0.0;
  return a + share * ab;
}

}  // namespace

double length(const Polyline& line) {
  double sum = 0.0;
  for (size_t i = 1; i < line.size(); ++i) sum += (line[i] - line[i - 1]).norm();
  return sum;
}

double signed_area(const Polyline& outline) {
  if (outline.size() < 3) return 0.0;
  double twice = 0.0;
  for (size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    twice += cross(outline[j] - outline[0], outline[i] - outline[0]);
  }
  return 0.5 * twice;
}

Point point_at(const Polyline& line, double along) {
  if (along <= 0.0) return line.front();
  for (size_t i = 1; i < line.size(); ++i) {
    const double step = (line[i] - line[i - 1]).norm();
    if (along < step) return line[i - 1] + (along / step) * (line[i] - line[i - 1]);
    along -= step;
  }
  return line.back();
}

Foot nearest(const Polyline& line, const Point& point) {
  Foot best{line.front(), 0.0, (point - line.front()).norm()};
  double start = 0.0;
  for (size_t i = 1; i < line.size(); ++i) {
    double share = 0.0;
    const Point foot = nearest_on_segment(line[i - 1], line[i], point, share);
    const double step = (line[i] - line[i - 1]).norm();
    const double distance = (point - foot).norm();
    if (distance < best.distance) best = {foot, start + share * step, distance};
    start += step;
  }
  return best;
}

double distance_to_outline(const Polyline& outline, const Point& point) {
  double best = std::numeric_limits<double>::infinity();
  for (size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    double share = 0.0;
    best = std::min(best, (nearest_on_segment(outline[j], outline[i], point, share) - point).norm());
  }
  return best;
}

bool contains(const Polyline& outline, const Point& point) {
  bool inside = false;
  for (size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const Point& a = outline[i];
    const Point& b = outline[j];
    if ((a.y() > point.y()) != (b.y() > point.y()) &&
        point.x() < (b.x() - a.x()) * (point.y() - a.y()) / (b.y() - a.y()) + a.x()) {
      inside = !inside;
    }
  }
  return inside;
}

Polyline between(const Polyline& line, double from, double to) {
  Polyline result{point_at(line, from)};
  double along = 0.0;
  constexpr double joined = 1e-9;
  for (size_t i = 1; i + 1 < line.size(); ++i) {
    along += (line[i] - line[i - 1]).norm();
    if (along > from + joined && along < to - joined) result.push_back(line[i]);
  }
  result.push_back(point_at(line, to));
  return result;
}

Polyline reversed(const Polyline& line) {
  return {line.rbegin(), line.rend()};
}

Point mirrored(const Point& point, const Segment& axis) {
  const Point along = (axis.to - axis.from).normalized();
  const Point offset = point - axis.from;
  return axis.from + 2.0 * offset.dot(along) * along - offset;
}

Polyline mirrored(const Polyline& line, const Segment& axis) {
  Polyline result;
  result.reserve(line.size());
  for (const Point& point : line) result.push_back(mirrored(point, axis));
  return result;
}

void append(Polyline& line, const Polyline& next) {
  const bool repeats = !line.empty() && !next.empty() && (line.back() - next.front()).norm() < 1e-9;
  line.insert(line.end(), next.begin() + (repeats ? 1 : 0), next.end());
}

std::optional<Point> crossing(const Point& a, const Point& b, const Point& c, const Point& d) {
  const Point ab = b - a, cd = d - c, ac = c - a;
  const double turn = cross(ab, cd);
  if (std::abs(turn) <= 1e-14 * ab.norm() * cd.norm()) return std::nullopt;
  const double t = cross(ac, cd) / turn, u = cross(ac, ab) / turn;
  if (t < 0.0 || t > 1.0 || u < 0.0 || u > 1.0) return std::nullopt;
  return a + t * ab;
}

std::optional<Point> self_crossing(const Polyline& outline) {
  const size_t n = outline.size();
  if (n < 3) return n == 0 ? Point(0, 0) : outline.front();
  const auto end_of = [&](size_t i) -> const Point& { return outline[i + 1 == n ? 0 : i + 1]; };
  for (size_t i = 0; i < n; ++i) {
    const Point ab = end_of(i) - outline[i], bc = outline[(i + 2) % n] - end_of(i);
    if (ab.squaredNorm() == 0.0) return outline[i];
    // A neighbour that folds straight back on this side.
    if (std::abs(cross(ab, bc)) <= 1e-12 * ab.norm() * bc.norm() && ab.dot(bc) < 0.0) return end_of(i);
  }
  std::optional<Point> found;
  for_close_pairs(outline, [&](size_t i, size_t j) {
    if (j == (i + 1) % n || i == (j + 1) % n) return false;
    const Point &a = outline[i], &b = end_of(i), &c = outline[j], &d = end_of(j);
    found = crossing(a, b, c, d);
    // Sides on one line meet when their boxes do.
    const double scale = 1e-12 * (b - a).norm();
    if (!found && std::abs(cross(b - a, c - a)) <= scale && std::abs(cross(b - a, d - a)) <= scale) found = c;
    return found.has_value();
  });
  return found;
}

Polyline convex_hull(Polyline points) {
  std::sort(points.begin(), points.end(), [](const Point& a, const Point& b) {
    return a.x() < b.x() || (a.x() == b.x() && a.y() < b.y());
  });
  if (points.size() < 3) return points;
  Polyline hull;
  for (int side = 0; side < 2; ++side) {
    const size_t first = hull.size();
    for (const Point& p : points) {
      while (hull.size() >= first + 2 &&
             cross(hull[hull.size() - 1] - hull[hull.size() - 2], p - hull[hull.size() - 1]) <= 0.0) {
        hull.pop_back();
      }
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return hull;
}

Polyline subdivided(const Polyline& line, double step) {
  Polyline result{line.front()};
  for (size_t i = 1; i < line.size(); ++i) {
    const int parts = std::max(1, static_cast<int>(std::ceil((line[i] - line[i - 1]).norm() / step)));
    for (int k = 1; k < parts; ++k) {
      result.push_back(line[i - 1] + (static_cast<double>(k) / parts) * (line[i] - line[i - 1]));
    }
    result.push_back(line[i]);
  }
  return result;
}

Box box_of(const Polyline& points) {
  Box box{points.front(), points.front()};
  for (const Point& p : points) {
    box.low = box.low.cwiseMin(p);
    box.high = box.high.cwiseMax(p);
  }
  return box;
}

}  // namespace cowlcast::drafting
