#include "projector/workbench/canvas/plane_view.h"

#include <algorithm>
#include <cmath>

namespace cowlcast::projector {

Point pixel_from_plane(const PlaneView& view, const Point& place) {
  return {0.5 * view.width + view.scale * (place.x() - view.middle.x()),
          0.5 * view.height - view.scale * (place.y() - view.middle.y())};
}

Point plane_from_pixel(const PlaneView& view, const Point& pixel) {
  return {view.middle.x() + (pixel.x() - 0.5 * view.width) / view.scale,
          view.middle.y() - (pixel.y() - 0.5 * view.height) / view.scale};
}

PlaneView zoomed(const PlaneView& view, const Point& pixel, double factor) {
  PlaneView result = view;
  result.scale = std::clamp(view.scale * factor, least_scale, most_scale);
  result.middle += plane_from_pixel(view, pixel) - plane_from_pixel(result, pixel);
  return result;
}

PlaneView panned(const PlaneView& view, const Point& pixels) {
  PlaneView result = view;
  result.middle += Point(-pixels.x(), pixels.y()) / view.scale;
  return result;
}

PlaneView fitted(const drafting::Box& box, double width, double height, double margin) {
  PlaneView view{0.5 * (box.low + box.high), 1.0, width, height};
  const double across = std::max(1.0, width - 2.0 * margin), up = std::max(1.0, height - 2.0 * margin);
  view.scale = std::clamp(std::min(across / std::max(box.width(), 1.0), up / std::max(box.height(), 1.0)),
                          least_scale, most_scale);
  return view;
}

PlaneView kept_in_sight(const PlaneView& view, const drafting::Box& box) {
  PlaneView result = view;
  const Point reach = 0.45 * Point(view.width, view.height) / view.scale;
  for (int i = 0; i < 2; ++i)
    result.middle[i] = std::clamp(view.middle[i], box.low[i] - reach[i], box.high[i] + reach[i]);
  return result;
}

std::optional<size_t> handle_at(const PlaneView& view, const std::vector<Point>& handles, const Point& pixel,
                                double reach) {
  std::optional<size_t> best;
  double least = reach;
  for (size_t i = 0; i < handles.size(); ++i) {
    const double distance = (pixel_from_plane(view, handles[i]) - pixel).norm();
    if (distance <= least) {
      least = distance;
      best = i;
    }
  }
  return best;
}

std::optional<size_t> line_at(const PlaneView& view, const std::vector<Polyline>& lines, const Point& pixel,
                              double reach) {
  const Point place = plane_from_pixel(view, pixel);
  std::optional<size_t> best;
  double least = reach / view.scale;
  for (size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].empty()) continue;
    const double distance = drafting::nearest(lines[i], place).distance;
    if (distance <= least) {
      least = distance;
      best = i;
    }
  }
  return best;
}

double snapped(double value, double step, const std::vector<double>& places, double reach) {
  std::optional<double> near;
  for (const double place : places) {
    const double distance = std::abs(place - value);
    if (distance <= reach && (!near || distance < std::abs(*near - value))) near = place;
  }
  if (near) return *near;
  return step > 0.0 ? std::round(value / step) * step : value;
}

}  // namespace cowlcast::projector
