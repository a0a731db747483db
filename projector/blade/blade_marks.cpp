#include "projector/blade/blade_marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "drafting/geometry/polyline.h"
#include "projector/frame/stroke.h"

namespace cowlcast::projector {
namespace {

constexpr double kStep = 2.0;  // mm between places of a band's edge

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

Polyline stepped(const Polyline& path) {
  const double whole = drafting::length(path);
  const int steps = std::max(1, static_cast<int>(std::ceil(whole / kStep)));
  Polyline out;
  for (int i = 0; i <= steps; ++i) out.push_back(drafting::point_at(path, whole * i / steps));
  return out;
}

// The parts of a line that stand at least `least` mm off the path.
void add_clear_parts(std::vector<Polyline>& parts, const Polyline& line, const Polyline& path, double least) {
  const Point from = line.front(), way = line.back() - line.front();
  const auto clear = [&](double share) {
    return drafting::nearest(path, from + share * way).distance >= least;
  };
  const int steps = std::max(1, static_cast<int>(way.norm() / 2.0));
  double begun = clear(0.0) ? 0.0 : -1.0;
  for (int i = 1; i <= steps; ++i) {
    double a = static_cast<double>(i - 1) / steps, b = static_cast<double>(i) / steps;
    const bool was = begun >= 0.0, is = clear(b);
    if (was == is) continue;
    for (int k = 0; k < 6; ++k) {
      const double middle = 0.5 * (a + b);
      (clear(middle) == was ? a : b) = middle;
    }
    if (was) parts.push_back({from + begun * way, from + a * way});
    begun = was ? -1.0 : b;
  }
  if (begun >= 0.0) parts.push_back({from + begun * way, line.back()});
}

void add_band(std::vector<Mark>& marks, const Polyline& path, bool left, const FrameStyle& style,
              const BladeOverlay& overlay) {
  const double far = overlay.band_from + overlay.band_width;
  const Polyline outline = band_outline(path, overlay.band_from, overlay.band_width, left);
  const Polyline foot = stepped(path);
  // Where the path bends towards the band by more than its width, the outer edge makes loops.
  std::vector<bool> clear;
  for (size_t i = outline.size() / 2; i < outline.size(); ++i)
    clear.push_back(drafting::nearest(foot, outline[i]).distance > far - 0.1);
  Mark hatch{.lines = hatched(outline, 11.0), .width = 0.6, .colour = style.warn};
  if (std::find(clear.begin(), clear.end(), false) != clear.end()) {
    std::vector<Polyline> kept;
    for (const Polyline& line : hatch.lines) add_clear_parts(kept, line, foot, overlay.band_from);
    hatch.lines = std::move(kept);
  }
  marks.push_back(std::move(hatch));
  Polyline edge;
  Mark rim{.lines = {}, .width = 1.1, .colour = style.warn};
  for (size_t i = 0; i <= clear.size(); ++i) {
    if (i < clear.size() && clear[i]) {
      edge.push_back(outline[outline.size() / 2 + i]);
      continue;
    }
    if (edge.size() > 1 && drafting::length(edge) > 10.0)
      for (Polyline& dash : dashes(edge, false, 10.0, 7.0)) rim.lines.push_back(std::move(dash));
    edge.clear();
  }
  marks.push_back(std::move(rim));
}

// Places for words about a point of the path: on the blade's side first, so that the band stays free.
std::vector<Point> places_about(const Point& at, const Point& side) {
  std::vector<Point> places;
  const Point along(-side.y(), side.x());
  for (const Point& towards : {side, Point(-side)})
    for (const double off : {45.0, 65.0, 90.0})
      for (const double aside : {0.0, 30.0, -30.0, 65.0, -65.0})
        places.push_back(at + off * towards + aside * along);
  return places;
}

}  // namespace

Polyline band_outline(const Polyline& path, double from, double width, bool left) {
  const double whole = drafting::length(path);
  const Polyline feet = stepped(path);
  Polyline near, far;
  for (size_t i = 0; i < feet.size(); ++i) {
    const double at = whole * static_cast<double>(i) / static_cast<double>(feet.size() - 1);
    const Point off = side_at(path, at, left);
    near.push_back(feet[i] + from * off);
    far.push_back(feet[i] + (from + width) * off);
  }
  const Polyline back = drafting::reversed(far);
  near.insert(near.end(), back.begin(), back.end());
  return near;
}

Drawing blade_drawing(const Cut& cut, const Laying& laying, const FrameStyle& style,
                      const BladeOverlay& overlay) {
  Drawing drawing;
  std::vector<Mark>& marks = drawing.marks;
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
    const auto say = [&](const std::string& text, double along) {
      drawing.words.push_back(
          {.text = text,
           .height = style.word_height,
           .colour = style.warn,
           .places = places_about(drafting::point_at(path, along), side_at(path, along, !holds_left))});
    };
    const auto stop = [&](double along) {
      const Point at = drafting::point_at(path, along), off = side_at(path, along, true);
      marks.push_back({.lines = {{at - 10.0 * off, at + 10.0 * off}}, .width = 1.6, .colour = style.warn});
      say("finish\nwith shears", along);
    };
    if (cut.end == CutEnd::inner && cut.stop_at > 0.0) stop(cut.stop_at);
    if (cut.start == CutEnd::inner && cut.start_at < whole) stop(cut.start_at);
    const TightStretch* tightest = nullptr;
    for (const TightStretch& tight : cut.tight) {
      const Polyline part = drafting::between(path, tight.from, tight.to);
      if (part.size() < 2) continue;
      const Polyline beside = band_outline(part, 4.0, 0.0, !holds_left);
      const Polyline one_way(beside.begin(), beside.begin() + static_cast<long>(beside.size() / 2));
      marks.push_back({.lines = dashes(one_way, false, 1.2, 3.0), .width = 1.2, .colour = style.warn});
      if (!tightest || tight.radius < tightest->radius) tightest = &tight;
    }
    // Nobody changes blades amid a stroke: the one for its tightest place.
    if (tightest) say(blade_name(tightest->blade_that_fits), 0.5 * (tightest->from + tightest->to));
  }
  return drawing;
}

}  // namespace cowlcast::projector
