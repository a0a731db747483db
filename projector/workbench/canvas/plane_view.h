// PlaneView: which part of the plane a canvas shows, and how large.
//
//   PlaneView view = fitted(box_of(front.seam_line), 800, 600, 40);
//   Point pixel = pixel_from_plane(view, neck_point);
//   view = zoomed(view, pixel, 1.25);                  // what lies under the pixel stays there
//
// The plane is a piece's: millimetres, y up. Pixels count from the top left, y
// down, and are the window's own, whatever the screen's density. Pure functions.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {

using drafting::Point;
using drafting::Polyline;

struct PlaneView {
  Point middle = Point::Zero();      ///< of what is shown, mm
  double scale = 1.0;                ///< pixels to a millimetre
  double width = 1.0, height = 1.0;  ///< pixels
};

inline constexpr double least_scale = 0.02, most_scale = 40.0;  ///< pixels to a millimetre

Point pixel_from_plane(const PlaneView& view, const Point& place);
Point plane_from_pixel(const PlaneView& view, const Point& pixel);

/// Larger by `factor`, within the least and most scale; the place under `pixel` keeps it.
PlaneView zoomed(const PlaneView& view, const Point& pixel, double factor);

/// What was under a pixel lies `pixels` further right and down.
PlaneView panned(const PlaneView& view, const Point& pixels);

/// The box in the middle, as large as fits with `margin` pixels free all around.
PlaneView fitted(const drafting::Box& box, double width, double height, double margin);

/// Moved as little as will do so that some of the box stays in sight.
PlaneView kept_in_sight(const PlaneView& view, const drafting::Box& box);

/// The handle nearest to a pixel, within `reach` pixels; of equally near ones the last, which is drawn on
/// top.
std::optional<size_t> handle_at(const PlaneView& view, const std::vector<Point>& handles, const Point& pixel,
                                double reach);

/// The line nearest to a pixel, within `reach` pixels. Empty lines are never hit.
std::optional<size_t> line_at(const PlaneView& view, const std::vector<Polyline>& lines, const Point& pixel,
                              double reach);

/// `value` on the grid of `step` mm, or at one of `places` that is within `reach` mm, the nearest of them
/// first.
double snapped(double value, double step, const std::vector<double>& places, double reach);

}  // namespace cowlcast::projector
