#include "projector/cutting/view.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

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

CuttingView read_on(CuttingView view, Act act) {
  const auto count = static_cast<int>(cautions().size());
  if (act == Act::back) view.cautions_shown = std::max(1, view.cautions_shown - 1);
  if (act != Act::next) return view;
  if (view.cautions_shown < count) {
    ++view.cautions_shown;
  } else {
    view.cautions_read = true;
    view.phase = Phase::laying;
  }
  return view;
}

CuttingView next_part(CuttingView view) {
  if (view.part + 1 >= view.parts.size()) return view;
  view.crosses = view.parts[view.part].chalk;
  view.pointed.clear();
  ++view.part;
  view.laying = view.parts[view.part].laying;
  view.phase = Phase::laying;
  view.message = "Move the cloth so that your marks meet the crosses, or click on them.";
  return view;
}

// A cross to chalk, its arms along the table.
Polyline arm(const Point& at, const Point& way) {
  return {at - 15.0 * way, at + 15.0 * way};
}

void add_crosses(std::vector<Mark>& marks, const CuttingView& view) {
  Mark crosses{.lines = {}, .width = 1.0, .colour = view.style.cut};
  const auto add = [&](const std::vector<Point>& places) {
    for (const Point& place : places)
      for (const Point& way : {Point(1, 0), Point(0, 1)})
        crosses.lines.push_back(laid(view.laying, arm(place, way)));
  };
  add(view.crosses);
  if (view.part < view.parts.size()) add(view.parts[view.part].chalk);
  marks.push_back(crosses);
}

void add_grain_line(std::vector<Mark>& marks, const CuttingView& view) {
  if (!view.piece.grain) return;
  const Point from = mat_from_piece(view.laying, view.piece.grain->from),
              to = mat_from_piece(view.laying, view.piece.grain->to);
  const Point way = (to - from).normalized(), middle = 0.5 * (from + to);
  marks.push_back({.lines = dashes({middle - 2000.0 * way, middle + 2000.0 * way}, false, 60.0, 12.0),
                   .width = view.style.mark_width,
                   .colour = view.style.guide});
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

void add_legend(std::vector<Mark>& marks, const CuttingView& view, const calibration::TableMap& map,
                const std::vector<std::string>& beware) {
  const double capitals = 9.0;
  std::vector<std::string> lines = view.legend ? legend_lines(view) : std::vector<std::string>();
  lines.insert(lines.end(), beware.begin(), beware.end());
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
  return view.phase == Phase::laying;
}

bool all_cut(const CuttingView& view) {
  return view.phase == Phase::cutting && view.cut >= static_cast<int>(view.plan.size());
}

const std::vector<std::string>& cautions() {
  static const std::vector<std::string> list{
      "Close the blade whenever you put it down.",
      "Cut away from your body.",
      "Keep the other hand outside the hatched band.",
      "No children and no pets at the table.",
      "Keep your eyes out of the projector's beam.",
      "Projector and camera hang firmly, cables out of the way.",
      "What the makers of blade, mat and projector say comes first.",
      "This light is an aid: it does not see your hand.",
  };
  return list;
}

CuttingView after(CuttingView view, Act act, Pace pace) {
  view.message.clear();
  if (view.phase == Phase::cautions) return read_on(std::move(view), act);
  if (view.phase == Phase::laying) {
    const double step = move_step(pace), turn = turn_step(pace);
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
      case Act::next:
        if (!view.ordered) view.plan = ordered_cuts(std::move(view.plan), view.laying, view.person);
        view.ordered = true;
        view.phase = Phase::cutting;
        return view;
      default:
        break;
    }
  }
  switch (act) {
    case Act::next:
      if (!all_cut(view)) ++view.cut;
      break;
    case Act::back:
      if (view.phase != Phase::cutting) break;
      if (view.cut > 0)
        --view.cut;
      else
        view.phase = Phase::laying;
      if (view.phase == Phase::laying) view.ordered = false;
      break;
    case Act::unlock:
      view.phase = Phase::laying;
      if (view.cut == 0) view.ordered = false;
      break;
    case Act::legend:
      view.legend = !view.legend;
      break;
    case Act::band:
      view.overlay.band = !view.overlay.band;
      break;
    case Act::grain:
      view.grain_line = !view.grain_line;
      break;
    case Act::part:
      return next_part(std::move(view));
    default:
      break;
  }
  return view;
}

CuttingView in_parts(CuttingView view, const Polyline& lit) {
  view.parts = light_steps(view.piece.cut_line, view.laying, lit);
  if (view.parts.size() < 2) {
    view.parts.clear();
    return view;
  }
  view.part = 0;
  view.laying = view.parts.front().laying;
  return view;
}

CuttingView after_pointing(CuttingView view, const Point& mat) {
  if (view.crosses.empty()) return view;
  view.pointed.push_back(mat);
  if (view.pointed.size() < view.crosses.size()) {
    view.message = "Now the other mark.";
    return view;
  }
  try {
    const Found found = found_laying(view.crosses, view.pointed, view.laying);
    view.laying = found.laying;
    view.crosses.clear();
    char text[80];
    std::snprintf(text, sizeof text, "Found again, marks within %.1f mm.", found.residual);
    view.message = text;
  } catch (const drafting::Refusal& refusal) {
    view.message = refusal.what();
  }
  view.pointed.clear();
  return view;
}

CuttingView resumed(CuttingView view, const Record& record) {
  view.laying = record.laying;
  view.plan = ordered_cuts(std::move(view.plan), view.laying, view.person);
  view.ordered = true;
  view.cut = std::min(record.cut, static_cast<int>(view.plan.size()));
  return view;
}

Record recorded(const CuttingView& view, Record record, const std::string& now) {
  if (record.cut == 0) record.laying = view.laying;
  record.piece = view.piece.name;
  record.strokes = static_cast<int>(view.plan.size());
  record.cut = view.cut;
  if (view.cautions_read) record.cautions_read_at = now;
  return record;
}

std::vector<std::string> legend_lines(const CuttingView& view) {
  const auto count = static_cast<int>(view.plan.size());
  std::vector<std::string> lines;
  if (!view.message.empty()) lines.push_back(view.message);
  if (view.phase == Phase::cautions) return lines;
  if (is_laying(view)) {
    char place[120];
    std::snprintf(place, sizeof place, "x %.1f  y %.1f mm  turn %.2f°%s", view.laying.x, view.laying.y,
                  view.laying.angle / kDegree, view.laying.mirrored ? "  face down" : "");
    lines.insert(lines.end(), {"LAY THE PIECE", place});
    if (!view.crosses.empty())
      lines.emplace_back("click on your two chalk marks, the nearer one first");
    else if (view.part + 1 < view.parts.size())
      lines.push_back("part " + std::to_string(view.part + 1) + " of " + std::to_string(view.parts.size()) +
                      ": chalk the crosses, then N");
    lines.insert(lines.end(), {"arrows move 1 mm, Q E turn, F flips", "shift: 10 mm, ctrl: 0.1 mm",
                               "G: grain line, space or page down: cut", "L hides this, Esc ends"});
    return lines;
  }
  if (all_cut(view)) {
    lines.insert(lines.end(), {"ALL CUT", "page up: back", "Esc ends"});
    return lines;
  }
  lines.push_back("STROKE " + std::to_string(view.cut + 1) + " OF " + std::to_string(count));
  const Cut& cut = view.plan[static_cast<size_t>(view.cut)];
  if (cut.stop_at > cut.start_at && cut.end == CutEnd::inner)
    lines.emplace_back("stop at the bar, finish with shears");
  lines.insert(lines.end(), {"space or page down: it is cut", "page up: back, L hides this"});
  return lines;
}

std::vector<Mark> view_marks(const CuttingView& view, const calibration::TableMap& map) {
  if (view.phase == Phase::cautions) {
    std::string text = "BEFORE YOU CUT\n";
    for (int i = 0; i < std::min(view.cautions_shown, static_cast<int>(cautions().size())); ++i)
      text += "\n" + cautions()[static_cast<size_t>(i)];
    text += view.cautions_shown < static_cast<int>(cautions().size()) ? "\n\nspace: read on"
                                                                      : "\n\nspace: I have read this";
    const drafting::Box lit = drafting::box_of(lit_outline(map, view.laying.height));
    return {writing(text, 0.5 * (lit.low + lit.high), 12.0, view.style.cut, Lines::from_left)};
  }
  const bool cutting = view.phase == Phase::cutting;
  Shown shown = view.shown;
  if (cutting) shown.cut_line = false;
  std::vector<Mark> marks = piece_marks(view.piece, view.laying, view.style, shown);
  if (view.grain_line) add_grain_line(marks, view);
  if (!view.crosses.empty() || !view.parts.empty()) add_crosses(marks, view);
  std::vector<std::string> beware;
  if (cutting) {
    // Cut already: nothing. To come: fine. Now: bold, with the blade's path.
    for (size_t i = static_cast<size_t>(view.cut); i < view.plan.size(); ++i) {
      const Cut& cut = view.plan[i];
      const bool now = i == static_cast<size_t>(view.cut);
      if (now)
        for (Mark& mark : blade_marks(cut, view.laying, view.style, view.overlay))
          marks.push_back(std::move(mark));
      marks.push_back({.lines = {laid(view.laying, cut.path)},
                       .width = (now ? 1.5 : 0.7) * view.style.cut_width,
                       .colour = view.style.cut});
    }
    if (!all_cut(view))
      beware = stroke_cautions(view.plan[static_cast<size_t>(view.cut)], view.laying,
                               lit_outline(map, view.laying.height), {});
  }
  // Cautions are shown even when the legend is hidden.
  if (view.legend || !beware.empty()) add_legend(marks, view, map, beware);
  return marks;
}

}  // namespace cowlcast::projector
