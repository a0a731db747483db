#include "drafting/geometry/curves.h"

#include <algorithm>
#include <cmath>

namespace cowlcast::drafting {
namespace {

// A chord of a curve whose second derivative stays below `bend` strays at most
// bend / (8 n²) when the curve is cut into n equal steps of its parameter.
int steps_for(double bend) {
  const double steps = std::ceil(std::sqrt(bend / (8.0 * flattening_tolerance)));
  return static_cast<int>(std::clamp(steps, 1.0, 20000.0));
}

}  // namespace

void add_quadratic(Polyline& line, const Point& control, const Point& end) {
  const Point start = line.back();
  const int n = steps_for(2.0 * (start - 2.0 * control + end).norm());
  for (int i = 1; i < n; ++i) {
    const double t = static_cast<double>(i) / n, s = 1.0 - t;
    line.push_back(s * s * start + 2.0 * s * t * control + t * t * end);
  }
  line.push_back(end);
}

void add_cubic(Polyline& line, const Point& control_1, const Point& control_2, const Point& end) {
  const Point start = line.back();
  const double bend = 6.0 * std::max((start - 2.0 * control_1 + control_2).norm(),
                                     (control_1 - 2.0 * control_2 + end).norm());
  const int n = steps_for(bend);
  for (int i = 1; i < n; ++i) {
    const double t = static_cast<double>(i) / n, s = 1.0 - t;
    line.push_back(s * s * s * start + 3.0 * s * s * t * control_1 + 3.0 * s * t * t * control_2 +
                   t * t * t * end);
  }
  line.push_back(end);
}

void add_ellipse_arc(Polyline& line, const Point& centre, const Point& axis_1, const Point& axis_2,
                     double from, double to) {
  const double radius = std::sqrt(axis_1.squaredNorm() + axis_2.squaredNorm());
  const int n = steps_for(radius * (to - from) * (to - from));
  for (int i = 1; i <= n; ++i) {
    const double t = from + (to - from) * i / n;
    line.push_back(centre + std::cos(t) * axis_1 + std::sin(t) * axis_2);
  }
}

}  // namespace cowlcast::drafting
