#include "projector/blade/blade_marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

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

// Slanting lines through an area given by its outline (non-zero rule), `pitch` mm apart.
std::vector<Polyline> hatched(const Polyline& outline, double pitch) {
  const double lean = 0.25 * std::numbers::pi;
  const Point way(std::cos(lean), std::sin(lean)), up(-way.y(), way.x());
  double least = 1e300, most = -1e300;
  for (const Point& point : outline) {
    least = std::min(least, up.dot(point));
    most = std::max(most, up.dot(point));
  }
  std::vector<Polyline> lines;
  for (double level = pitch * std::ceil(least / pitch); level < most; level += pitch) {
    std::vector<std::pair<double, int>> crossings;  // where along the line, and which way
    for (size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
      const double a = up.dot(outline[j]) - level, b = up.dot(outline[i]) - level;
      if ((a < 0.0) == (b < 0.0)) continue;
      const double share = a / (a - b);
      crossings.emplace_back(way.dot(outline[j] + share * (outline[i] - outline[j])), b > a ? 1 : -1);
    }
    std::sort(crossings.begin(), crossings.end());
    int winding = 0;
    for (size_t i = 0; i + 1 < crossings.size(); ++i) {
      winding += crossings[i].second;
      if (winding != 0 && crossings[i + 1].first > crossings[i].first)
        lines.push_back({level * up + crossings[i].first * way, level * up + crossings[i + 1].first * way});
    }
  }
  return lines;
}

void add_band(std::vector<Mark>& marks, const Polyline& path, bool left, const FrameStyle& style,
              const BladeOverlay& overlay) {
  const double far = overlay.band_from + overlay.band_width;
  const Polyline outline = band_outline(path, overlay.band_from, overlay.band_width, left);
  marks.push_back({.lines = hatched(outline, 11.0), .width = 0.6, .colour = style.warn});
  // The outer edge, without the loops it makes where the path bends towards it.
  Polyline coarse;
  const double whole = drafting::length(path);
  for (double along = 0.0; along < whole + 8.0; along += 8.0)
    coarse.push_back(drafting::point_at(path, std::min(along, whole)));
  Polyline edge;
  Mark rim{.lines = {}, .width = 1.1, .colour = style.warn};
  for (size_t i = outline.size() / 2; i <= outline.size(); ++i) {
    const bool clear = i < outline.size() && drafting::nearest(coarse, outline[i]).distance > 0.97 * far;
    if (clear) {
      edge.push_back(outline[i]);
      continue;
    }
    if (edge.size() > 1)
      for (Polyline& dash : dashes(edge, false, 10.0, 7.0)) rim.lines.push_back(std::move(dash));
    edge.clear();
  }
  marks.push_back(std::move(rim));
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
    for (double along = std::min(25.0, 0.5 * whole); along < whole - 8.0; along += 90.0)
      for (const double lag : {0.0, 6.0})
        arrows.lines.push_back(
            chevron(drafting::point_at(path, along - lag) + 8.0 * side_at(path, along - lag, !holds_left),
                    way_at(path, along - lag), 7.0));
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
