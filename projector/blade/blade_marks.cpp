#include "projector/blade/blade_marks.h"

#include <cmath>
#include <numbers>
#include <string>

#include "drafting/geometry/polyline.h"
#include "projector/frame/piece_marks.h"

namespace cowlcast::projector {
namespace {

Point way_at(const Polyline& path, double along) {
  const Point way = drafting::point_at(path, along + 1.0) - drafting::point_at(path, along - 1.0);
  return way.norm() > 0.0 ? Point(way.normalized()) : Point(1.0, 0.0);
}

Point side_at(const Polyline& path, double along, bool left) {
  const Point way = way_at(path, along);
  return left ? Point(-way.y(), way.x()) : Point(way.y(), -way.x());
}

Polyline chevron(const Point& tip, const Point& way, double size) {
  const Point across(-way.y(), way.x());
  return {tip - size * way + 0.6 * size * across, tip, tip - size * way - 0.6 * size * across};
}

Polyline ring(const Point& centre, double radius) {
  Polyline out;
  for (int i = 0; i < 24; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / 24.0;
    out.emplace_back(centre.x() + radius * std::cos(angle), centre.y() + radius * std::sin(angle));
  }
  return out;
}

std::string blade_name(const std::optional<double>& diameter) {
  return diameter ? std::to_string(static_cast<int>(*diameter)) + " mm blade" : std::string("shears");
}

void add_band(std::vector<Mark>& marks, const Polyline& path, bool left, const FrameStyle& style,
              const BladeOverlay& overlay) {
  const double whole = drafting::length(path), near = overlay.band_from,
               far = overlay.band_from + overlay.band_width, pitch = 14.0;
  Mark hatch{.lines = {}, .width = 0.6, .colour = style.warn};
  for (double along = 0.5 * pitch; along < whole; along += pitch) {
    const Point foot = drafting::point_at(path, along), off = side_at(path, along, left);
    const Point lean = 0.35 * (far - near) * way_at(path, along);
    hatch.lines.push_back({foot + near * off, foot + far * off + lean});
  }
  marks.push_back(hatch);
  Polyline edge;
  for (double along = 0.0; along < whole + pitch; along += 0.25 * pitch) {
    const double at = std::min(along, whole);
    edge.push_back(drafting::point_at(path, at) + far * side_at(path, at, left));
  }
  marks.push_back({.lines = dashes(edge, false, 10.0, 8.0), .width = 0.8, .colour = style.warn});
}

}  // namespace

Polyline band_outline(const Polyline& path, double from, double width, bool left) {
  const double whole = drafting::length(path);
  const int steps = std::max(1, static_cast<int>(std::ceil(whole / 4.0)));
  Polyline near, far;
  for (int i = 0; i <= steps; ++i) {
    const double at = whole * i / steps;
    const Point foot = drafting::point_at(path, at), off = side_at(path, at, left);
    near.push_back(foot + from * off);
    far.push_back(foot + (from + width) * off);
  }
  const Polyline back = drafting::reversed(far);
  near.insert(near.end(), back.begin(), back.end());
  return near;
}

std::vector<Mark> blade_marks(const Cut& cut, const Laying& laying, const FrameStyle& style,
                              const BladeOverlay& overlay) {
  std::vector<Mark> marks;
  const Polyline path = laid(laying, cut.path);
  const double whole = drafting::length(path);
  const bool holds_left = overlay.hand == Hand::right;
  if (overlay.band) add_band(marks, path, holds_left, style, overlay);
  if (overlay.arrows) {
    // Beside the line on the blade's side, so that the line itself stays clear.
    Mark arrows{.lines = {}, .width = style.mark_width, .colour = style.warn};
    for (double along = std::min(25.0, 0.5 * whole); along < whole - 8.0; along += 120.0)
      for (const double lag : {0.0, 5.0})
        arrows.lines.push_back(
            chevron(drafting::point_at(path, along - lag) + 7.0 * side_at(path, along - lag, !holds_left),
                    way_at(path, along - lag), 5.0));
    marks.push_back(arrows);
    marks.push_back({.lines = {ring(drafting::point_at(path, cut.start_at), 4.0)},
                     .closed = true,
                     .width = style.mark_width,
                     .colour = style.warn});
  }
  if (overlay.stops) {
    const auto stop = [&](double along, double toward) {
      const Point at = drafting::point_at(path, along), off = side_at(path, along, true);
      marks.push_back({.lines = {{at - 10.0 * off, at + 10.0 * off}}, .width = 1.2, .colour = style.warn});
      const Point beside = at + 24.0 * side_at(path, along, !holds_left) + toward * way_at(path, along);
      marks.push_back(writing("finish\nwith shears", beside, 5.0, style.warn));
    };
    if (cut.end == CutEnd::inner && cut.stop_at > 0.0) stop(cut.stop_at, -12.0);
    if (cut.start == CutEnd::inner && cut.start_at < whole) stop(cut.start_at, 12.0);
    for (const TightStretch& tight : cut.tight) {
      const Polyline part = drafting::between(path, tight.from, tight.to);
      if (part.size() < 2) continue;
      const Polyline beside = band_outline(part, 4.0, 0.0, !holds_left);
      const Polyline one_way(beside.begin(), beside.begin() + static_cast<long>(beside.size() / 2));
      marks.push_back({.lines = dashes(one_way, false, 1.2, 3.0), .width = 1.2, .colour = style.warn});
      const double middle = 0.5 * (tight.from + tight.to);
      marks.push_back(writing(blade_name(tight.blade_that_fits),
                              drafting::point_at(path, middle) + 20.0 * side_at(path, middle, !holds_left),
                              5.0, style.warn));
    }
  }
  return marks;
}

}  // namespace cowlcast::projector
