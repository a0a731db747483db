#include "projector/cutting/view.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

Point middle_on_mat(const CuttingView& view) {
  const drafting::Box box = drafting::box_of(view.piece.cut_line);
  return mat_from_piece(view.laying, 0.5 * (box.low + box.high));
}

CuttingView moved(CuttingView view, double dx, double dy) {
  view.laying.x += dx;
  view.laying.y += dy;
  return view;
}

// The corner of the light with the most room beside the piece.
Point legend_place(const CuttingView& view, const calibration::TableMap& map, double width, double height) {
  const Polyline outline = laid(view.laying, view.piece.cut_line);
  const Polyline lit = lit_outline(map, view.laying.height);
  const drafting::Box box = drafting::box_of(lit);
  const double gap = 25.0;
  Point best = 0.5 * (box.low + box.high);
  double most = -1e9;
  for (const double sx : {-1.0, 1.0})
    for (const double sy : {-1.0, 1.0}) {
      const Point middle = 0.5 * (box.low + box.high);
      const Point at(middle.x() + sx * (0.5 * box.width() - 0.5 * width - gap),
                     middle.y() + sy * (0.5 * box.height() - 0.5 * height - gap));
      double room = 1e9;
      for (const Point& point : outline) {
        const double dx = std::max(0.0, std::abs(point.x() - at.x()) - 0.5 * width);
        const double dy = std::max(0.0, std::abs(point.y() - at.y()) - 0.5 * height);
        room = std::min(room, std::hypot(dx, dy));
      }
      for (const Point& corner : {Point(-1, -1), Point(1, -1), Point(1, 1), Point(-1, 1)}) {
        const Point there = at + Point(0.5 * width * corner.x(), 0.5 * height * corner.y());
        if (!drafting::contains(lit, there)) room -= 1e6;
        if (drafting::contains(outline, there)) room -= 1e3;
      }
      if (room > most) {
        most = room;
        best = at;
      }
    }
  return best;
}

void add_legend(std::vector<Mark>& marks, const CuttingView& view, const calibration::TableMap& map) {
  const double capitals = 9.0;
  const std::vector<std::string> lines = legend_lines(view);
  std::string text;
  size_t longest = 0;
  for (const std::string& line : lines) {
    text += (text.empty() ? "" : "\n") + line;
    longest = std::max(longest, line.size());
  }
  const double width = 0.95 * capitals * static_cast<double>(longest);
  const double height = 1.7 * capitals * static_cast<double>(lines.size());
  marks.push_back(
      writing(text, legend_place(view, map, width, height), capitals, view.style.guide, Lines::from_left));
}

}  // namespace

double move_step(Pace pace) {
  return pace == Pace::fine ? 0.1 : pace == Pace::normal ? 1.0 : 10.0;
}

double turn_step(Pace pace) {
  return (pace == Pace::fine ? 0.02 : pace == Pace::normal ? 0.2 : 5.0) * kDegree;
}

CuttingView new_view(drafting::Piece piece, std::vector<Cut> plan, const Laying& laying,
                     const FrameStyle& style) {
  CuttingView view;
  view.piece = std::move(piece);
  view.plan = std::move(plan);
  view.laying = laying;
  view.style = style;
  return view;
}

bool is_laying(const CuttingView& view) {
  return view.stroke < 0;
}

bool all_cut(const CuttingView& view) {
  return view.stroke >= static_cast<int>(view.plan.size());
}

CuttingView after(CuttingView view, Act act, Pace pace) {
  const double step = move_step(pace), turn = turn_step(pace);
  if (is_laying(view)) {
    switch (act) {
      case Act::left:
        return moved(std::move(view), -step, 0.0);
      case Act::right:
        return moved(std::move(view), step, 0.0);
      case Act::away:
        return moved(std::move(view), 0.0, step);
      case Act::nearer:
        return moved(std::move(view), 0.0, -step);
      case Act::turn_left:
        view.laying = turned_about(view.laying, middle_on_mat(view), turn);
        return view;
      case Act::turn_right:
        view.laying = turned_about(view.laying, middle_on_mat(view), -turn);
        return view;
      case Act::flip:
        view.laying = flipped_about(view.laying, middle_on_mat(view));
        return view;
      default:
        break;
    }
  }
  switch (act) {
    case Act::next:
      if (!all_cut(view)) ++view.stroke;
      break;
    case Act::back:
      if (!is_laying(view)) --view.stroke;
      break;
    case Act::unlock:
      view.stroke = -1;
      break;
    case Act::legend:
      view.legend = !view.legend;
      break;
    case Act::band:
      view.overlay.band = !view.overlay.band;
      break;
    default:
      break;
  }
  return view;
}

std::vector<std::string> legend_lines(const CuttingView& view) {
  const auto count = static_cast<int>(view.plan.size());
  if (is_laying(view)) {
    char place[120];
    std::snprintf(place, sizeof place, "x %.1f  y %.1f mm  turn %.2f°%s", view.laying.x, view.laying.y,
                  view.laying.angle / kDegree, view.laying.mirrored ? "  face down" : "");
    return {"LAY THE PIECE",
            place,
            "arrows move 1 mm, Q E turn, F flips",
            "shift: 10 mm, ctrl: 0.1 mm",
            "space or page down: cut",
            "L hides this, Esc ends"};
  }
  if (all_cut(view)) return {"ALL CUT", "page up: back", "Esc ends"};
  std::string state = "STROKE " + std::to_string(view.stroke + 1) + " OF " + std::to_string(count);
  const Cut& cut = view.plan[static_cast<size_t>(view.stroke)];
  std::vector<std::string> lines{state, "space or page down: it is cut", "page up: back, L hides this"};
  if (cut.stop_at <= cut.start_at)
    lines.insert(lines.begin() + 1, "too short for the blade: shears");
  else if (cut.end == CutEnd::inner)
    lines.insert(lines.begin() + 1, "stop at the bar, finish with shears");
  return lines;
}

std::vector<Mark> view_marks(const CuttingView& view, const calibration::TableMap& map) {
  Shown shown = view.shown;
  if (!is_laying(view)) shown.cut_line = false;
  std::vector<Mark> marks = piece_marks(view.piece, view.laying, view.style, shown);
  if (!is_laying(view)) {
    // Cut already: nothing. To come: fine. Now: full width, with the blade's path.
    for (int i = std::max(0, view.stroke); i < static_cast<int>(view.plan.size()); ++i) {
      const Cut& cut = view.plan[static_cast<size_t>(i)];
      const bool now = i == view.stroke;
      if (now)
        for (Mark& mark : blade_marks(cut, view.laying, view.style, view.overlay))
          marks.push_back(std::move(mark));
      marks.push_back({.lines = {laid(view.laying, cut.path)},
                       .width = now ? 1.5 * view.style.cut_width : 0.7 * view.style.cut_width,
                       .colour = view.style.cut});
    }
  }
  if (view.legend) add_legend(marks, view, map);
  return marks;
}

}  // namespace cowlcast::projector
