// Polylines and outlines: what everything drawn here is made of.
//
//   double seam = length(edge_of(front, "side-seam").points);
//   Point notch = point_at(armhole, 0.4 * length(armhole));
//
// A polyline is open, from its first point to its last. An outline is closed:
// its last point joins its first, which is not repeated; counter-clockwise
// outlines have positive area. Millimetres throughout. Pure functions.
#pragma once

#include <cstddef>
#include <optional>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

double length(const Polyline& line);

/// Signed area of an outline in mm², positive counter-clockwise.
double signed_area(const Polyline& outline);

/// The point `along` mm from the start; the ends for what lies beyond them.
Point point_at(const Polyline& line, double along);

/// The nearest place of a polyline to `point`.
struct Foot {
  Point point = Point::Zero();
  double along = 0.0;     ///< from the start of the line, mm
  double distance = 0.0;  ///< mm
};
Foot nearest(const Polyline& line, const Point& point);

/// Distance of `point` from an outline's line, mm.
double distance_to_outline(const Polyline& outline, const Point& point);

/// True strictly inside and strictly outside; on the line itself either.
bool contains(const Polyline& outline, const Point& point);

/// The part of a line between two lengths along it, `from` <= `to`.
Polyline between(const Polyline& line, double from, double to);

Polyline reversed(const Polyline& line);

/// Mirror image in the line through two points.
Point mirrored(const Point& point, const Segment& axis);
Polyline mirrored(const Polyline& line, const Segment& axis);

/// Appends `next` to `line`; its first point is dropped when it repeats the last.
void append(Polyline& line, const Polyline& next);

/// Where the segments a-b and c-d meet, ends included; none for parallel ones.
std::optional<Point> crossing(const Point& a, const Point& b, const Point& c, const Point& d);

/// A place where an outline meets itself other than at neighbouring corners;
/// none means the outline is simple.
std::optional<Point> self_crossing(const Polyline& outline);

/// Corners of the convex hull, counter-clockwise.
Polyline convex_hull(Polyline points);

/// Straight line with points no further than `step` mm apart.
Polyline subdivided(const Polyline& line, double step);

struct Box {
  Point low = Point::Zero(), high = Point::Zero();
  double width() const { return high.x() - low.x(); }
  double height() const { return high.y() - low.y(); }
};
Box box_of(const Polyline& points);

}  // namespace cowlcast::drafting
