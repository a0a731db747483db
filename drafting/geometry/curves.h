// Curves to polylines, never further than 0.01 mm from the curve.
//
//   Polyline line{start};
//   add_cubic(line, c1, c2, end);      // the line ends at `end` now
//
// Each function appends the curve that starts at the line's last point. All
// points are in millimetres: transform the control points, not the polyline.
#pragma once

#include <Eigen/Geometry>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

inline constexpr double flattening_tolerance = 0.01;  ///< mm

void add_quadratic(Polyline& line, const Point& control, const Point& end);
void add_cubic(Polyline& line, const Point& control_1, const Point& control_2, const Point& end);

/// The arc of an ellipse about `centre`: point(t) = centre + cos(t) axis_1 + sin(t) axis_2,
/// from t = `from` to t = `to` in radians. The axes need not be square to each other.
void add_ellipse_arc(Polyline& line, const Point& centre, const Point& axis_1, const Point& axis_2,
                     double from, double to);

}  // namespace cowlcast::drafting
