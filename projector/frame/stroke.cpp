#include "projector/frame/stroke.h"

#include <algorithm>
#include <cmath>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

constexpr double kSame = 1e-6;       // mm
constexpr double kGentle = 0.93969;  // cosine of 20°: flatter joints are mitred on both sides

Point left_of(const Point& direction) {
  return {-direction.y(), direction.x()};
}

Polyline without_repeats(const Polyline& line, bool closed) {
  Polyline kept;
  for (const Point& point : line)
    if (kept.empty() || (point - kept.back()).norm() > kSame) kept.push_back(point);
  while (closed && kept.size() > 1 && (kept.front() - kept.back()).norm() <= kSame) kept.pop_back();
  return kept;
}

// One side of the line, `off` mm to its left (negative: right), walking forward.
Polyline side(const Polyline& line, bool closed, double off) {
  const int count = static_cast<int>(line.size());
  const int segments = closed ? count : count - 1;
  const auto direction = [&](int i) -> Point {
    return (line[(i + 1) % count] - line[i % count]).normalized();
  };
  Polyline out;
  out.reserve(line.size() + 8);
  if (!closed) out.push_back(line.front() + off * left_of(direction(0)));
  for (int i = closed ? 0 : 1; i < segments; ++i) {
    const Point& corner = line[i];
    const Point before = direction((i + segments - 1) % segments), after = direction(i);
    const double cosine = before.dot(after);
    const Point n0 = left_of(before), n1 = left_of(after);
    const double turn = before.x() * after.y() - before.y() * after.x();
    const double half = std::sqrt(std::max(0.0, (1.0 + cosine) / 2.0));  // cosine of half the turn
    const bool inner = turn * off > 0.0;
    if (cosine > kGentle || (!inner && half > 0.5)) {
      out.push_back(corner + off / half * (n0 + n1).normalized());
    } else if (inner) {
      // Both ends and the corner itself: the small loop fills nothing that the stroke does not.
      out.push_back(corner + off * n0);
      out.push_back(corner);
      out.push_back(corner + off * n1);
    } else {
      out.push_back(corner + off * n0);
      out.push_back(corner + off * n1);
    }
  }
  if (!closed) out.push_back(line.back() + off * left_of(direction(segments - 1)));
  return out;
}

}  // namespace

Rings stroke_rings(const Polyline& line, const StrokeShape& shape) {
  const bool closed = shape.closed && line.size() > 2;
  const Polyline kept = without_repeats(line, closed);
  if (kept.size() < 2) return {};
  Polyline left = side(kept, closed, shape.width / 2.0);
  Polyline right = side(kept, closed, -shape.width / 2.0);
  std::reverse(left.begin(), left.end());
  if (closed) return {right, left};
  right.insert(right.end(), left.begin(), left.end());
  return {right};
}

std::vector<Polyline> dashes(const Polyline& line, bool closed, double on, double off) {
  Polyline open = line;
  if (closed && !open.empty()) open.push_back(open.front());
  if (open.size() < 2 || !(on > 0.0) || !(off > 0.0)) return {open};
  const double whole = drafting::length(open);
  const double last_gap = closed ? 0.0 : off;  // left out at the end of an open line
  const double count = std::max(1.0, std::round((whole + last_gap) / (on + off)));
  const double stretch = whole / (count * (on + off) - last_gap);
  if (count < 2.0) return {open};
  std::vector<Polyline> out;
  // One walk along the line: `at` is the length gone, `end` where the present dash or gap ends.
  bool drawing = true;
  double at = 0.0, end = on * stretch;
  Polyline dash{open.front()};
  for (size_t i = 1; i < open.size(); ++i) {
    const Point from = open[i - 1];
    const double segment = (open[i] - from).norm();
    while (at + segment > end) {
      const Point cut = from + (open[i] - from) * ((end - at) / segment);
      if (drawing) {
        dash.push_back(cut);
        out.push_back(dash);
      }
      dash = {cut};
      drawing = !drawing;
      end += (drawing ? on : off) * stretch;
    }
    at += segment;
    if (drawing) dash.push_back(open[i]);
  }
  if (drawing && dash.size() > 1) out.push_back(dash);
  return out;
}

}  // namespace cowlcast::projector
