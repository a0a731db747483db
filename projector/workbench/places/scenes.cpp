#include "projector/workbench/places/scenes.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "drafting/geometry/polyline.h"
#include "drafting/piece/marks.h"
#include "projector/language/said.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {
namespace {

using drafting::Box;
using drafting::Piece;

constexpr double between_figures = 110.0;  // mm

QString tr(const char* text) {
  return QCoreApplication::translate("scenes", text);
}

QString words_of(double mm, Units units) {
  return QString::fromStdString(length_in_words(mm, units));
}

Polyline shifted(Polyline line, const Point& by) {
  for (Point& p : line) p += by;
  return line;
}

Point middle_of(const Polyline& line) {
  return drafting::point_at(line, 0.5 * drafting::length(line));
}

/// Which way lies outside of an edge at its middle, by the outline's direction.
Point outside_at_middle(const Polyline& line) {
  const double half = 0.5 * drafting::length(line);
  const Point way = drafting::point_at(line, half + 1.0) - drafting::point_at(line, half - 1.0);
  return way.norm() > 0.0 ? Point(Point(way.y(), -way.x()).normalized()) : Point(0.0, 0.0);
}

/// Words beside a place, on the side that `way` points to.
SceneWords beside(const Point& place, const Point& way, const QString& text,
                  TextSize size = TextSize::plain) {
  Qt::Alignment anchor = Qt::AlignCenter;
  if (std::abs(way.x()) > 0.6) {
    anchor = Qt::AlignVCenter | (way.x() > 0.0 ? Qt::AlignLeft : Qt::AlignRight);
  } else if (way.y() != 0.0) {
    anchor = Qt::AlignHCenter | (way.y() > 0.0 ? Qt::AlignBottom : Qt::AlignTop);
  }
  return {place + 9.0 * way, text, theme().ink, size, anchor};
}

SceneWords below(const Point& place, const QString& text) {
  return {place - Point(0.0, 14.0), text, theme().quiet, TextSize::plain, Qt::AlignHCenter | Qt::AlignTop};
}

/// Crosses where the cloth is to be marked.
void add_drills(Scene& scene, const Piece& piece, const Point& shift, double flip) {
  for (const drafting::DrillMark& drill : drafting::drill_marks(piece)) {
    const Point at = Point(flip * drill.at.x(), drill.at.y()) + shift;
    for (const Point& arm : {Point(7, 0), Point(0, 7)})
      scene.lines.push_back({.points = {at - arm, at + arm}, .colour = theme().cut, .width = 2.2});
  }
}

void add_base(Scene& scene, const Piece& piece, const Point& shift, double flip, const QString& name) {
  const Theme& t = theme();
  const auto placed = [&](const Point& p) -> Point { return Point(flip * p.x(), p.y()) + shift; };
  Polyline outline;
  for (const Point& p : piece.seam_line) outline.push_back(placed(p));
  scene.lines.push_back({.points = outline, .closed = true, .colour = t.seam, .width = 2.6, .fill = t.part});
  for (const drafting::Edge& edge : piece.edges) {
    // Named inside where there is room, so that the pieces are shown large; the centre above the side seam's
    // name.
    const bool centre = edge.role == "centre-front" || edge.role == "centre-back";
    const bool inside = centre || edge.role == "neckline" || edge.role == "side-seam";
    const Point way = (inside ? -1.0 : 1.0) * outside_at_middle(edge.points);
    const Point place =
        drafting::point_at(edge.points, (centre ? 0.35 : 0.5) * drafting::length(edge.points));
    scene.words.push_back(beside(placed(place), Point(flip * way.x(), way.y()), role_in_words(edge.role)));
  }
  for (const drafting::Notch& notch : piece.notches) {
    const Point at = placed(notch.seam);
    scene.lines.push_back({.points = {at - Point(6, 0), at + Point(6, 0)}, .colour = t.cut, .width = 2.6});
  }
  add_drills(scene, piece, shift, flip);
  const Box box = drafting::box_of(piece.seam_line);
  scene.words.push_back(
      {placed({0.45 * box.high.x(), box.low.y() + 0.22 * box.height()}), name, t.ink, TextSize::large});
}

void add_slashed_base(Scene& scene, const drafting::CowlDraft& draft, const drafting::CowlWishes& wishes,
                      Units units) {
  const Theme& t = theme();
  const Point shift(base_shift(draft), 0.0);
  const drafting::CowlRecord& cowl = *draft.front.cowl;
  scene.lines.push_back({.points = shifted(draft.base.seam_line, shift),
                         .closed = true,
                         .colour = t.ghost,
                         .width = 1.8,
                         .style = Qt::DotLine});
  for (const auto& part : cowl.parts)
    scene.lines.push_back(
        {.points = shifted(part.before, shift), .closed = true, .colour = t.seam, .fill = t.part});
  for (const Polyline& path : cowl.slash_paths)
    scene.lines.push_back(
        {.points = shifted(path, shift), .colour = t.slash, .width = 3.0, .style = Qt::DashLine});
  const Box box = drafting::box_of(draft.base.seam_line);
  scene.words.push_back(below({shift.x() + 0.5 * box.high.x(), box.low.y()}, tr("the base, slashed")));
  for (size_t i = 0; i < cowl.slash_lines.size(); ++i) {
    const std::string number = std::to_string(i);
    const double under = cowl.parts.front().before.front().y() - cowl.slash_lines[i].from.y();
    scene.handles.push_back({.id = "start-" + number,
                             .at = cowl.slash_lines[i].from + shift,
                             .name = tr("Slash line %1").arg(i + 1),
                             .value = tr("%1 below the neckline").arg(words_of(under, units)),
                             .upright = true});
    scene.handles.push_back({.id = "hinge-" + number,
                             .at = cowl.slash_lines[i].to + shift,
                             .name = tr("Hinge of slash line %1").arg(i + 1)});
  }
  const double top = drafting::edge_of(draft.base, "neckline").points.back().y() - draft.neckline_drop;
  scene.handles.push_back({.id = "neckline",
                           .at = Point(0.0, top) + shift,
                           .name = tr("Neckline lowered"),
                           .value = words_of(wishes.neckline_drop, units),
                           .upright = true});
}

void add_opened_front(Scene& scene, const drafting::CowlDraft& draft, bool working) {
  const Theme& t = theme();
  scene.lines.push_back({.points = draft.front.cut_line,
                         .closed = true,
                         .colour = working ? t.cut : t.ghost,
                         .width = 2.6,
                         .style = working ? Qt::SolidLine : Qt::DashLine,
                         .fill = t.cloth});
  for (const auto& part : draft.front.cowl->parts)
    scene.lines.push_back(
        {.points = part.after, .closed = true, .colour = t.seam, .width = 1.2, .fill = t.part});
  scene.lines.push_back(
      {.points = draft.front.seam_line, .closed = true, .colour = working ? t.seam : t.ghost, .width = 1.6});
  scene.lines.push_back({.points = drafting::edge_of(draft.front, "cowl-edge").points,
                         .colour = working ? t.slash : t.ghost,
                         .width = 2.2,
                         .style = Qt::DashDotLine});
  add_drills(scene, draft.front, {0, 0}, 1.0);
  const Box box = drafting::box_of(draft.front.seam_line);
  scene.words.push_back(below({0.4 * box.high.x(), box.low.y() - 20.0}, tr("the cowl front, half")));
  scene.words.push_back({{-7.0, box.low.y() + 0.25 * box.height()},
                         draft.front.fold ? tr("fold") : tr("centre"),
                         t.quiet,
                         TextSize::plain,
                         Qt::AlignRight | Qt::AlignVCenter});
}

}  // namespace

QString role_in_words(const std::string& role) {
  static const std::map<std::string, const char*> words{
      {"centre-front", QT_TRANSLATE_NOOP("scenes", "centre front")},
      {"centre-back", QT_TRANSLATE_NOOP("scenes", "centre back")},
      {"neckline", QT_TRANSLATE_NOOP("scenes", "neckline")},
      {"shoulder", QT_TRANSLATE_NOOP("scenes", "shoulder")},
      {"armhole", QT_TRANSLATE_NOOP("scenes", "armhole")},
      {"side-seam", QT_TRANSLATE_NOOP("scenes", "side seam")},
      {"hem", QT_TRANSLATE_NOOP("scenes", "hem")}};
  const auto found = words.find(role);
  return found == words.end() ? said(QString::fromStdString(drafting::name_in_words(role)))
                              : tr(found->second);
}

Scene base_scene(const Bases& bases) {
  Scene scene;
  if (bases.front) add_base(scene, *bases.front, Point(0, 0), 1.0, tr("base front"));
  // The back lies mirrored beside the front, side seams outwards, as a pair is drawn.
  if (bases.back)
    add_base(scene, *bases.back, Point(bases.front ? -between_figures : 0.0, 0), -1.0, tr("base back"));
  return scene;
}

Scene drawing_scene(const std::vector<drafting::SvgLine>& lines,
                    const std::map<std::string, std::string>& roles) {
  const Theme& t = theme();
  Scene scene;
  for (const drafting::SvgLine& line : lines) {
    const auto given = roles.find(line.id);
    const bool named = given != roles.end() && !given->second.empty();
    scene.lines.push_back({.points = line.points,
                           .colour = named ? t.seam : t.ink,
                           .width = named ? 5.0 : 2.5,
                           .style = named ? Qt::SolidLine : Qt::DashLine,
                           .id = line.id});
    if (named)
      scene.words.push_back(
          beside(middle_of(line.points), outside_at_middle(line.points), role_in_words(given->second)));
  }
  return scene;
}

double base_shift(const drafting::CowlDraft& draft) {
  return -drafting::box_of(draft.base.seam_line).high.x() - between_figures;
}

Scene cowl_scene(const drafting::CowlDraft& draft, const drafting::CowlWishes& wishes, Units units,
                 bool working) {
  Scene scene;
  add_opened_front(scene, draft, working);
  add_slashed_base(scene, draft, wishes, units);
  if (!wishes.separate_facing)
    scene.handles.push_back({.id = "facing",
                             .at = draft.front.points.at("cowl-centre") + Point(0.0, draft.facing_depth),
                             .name = tr("Facing"),
                             .value = tr("%1 deep").arg(words_of(draft.facing_depth, units)),
                             .upright = true});
  scene.handles.push_back({.id = "drape",
                           .at = draft.front.points.at("neck-point"),
                           .name = tr("Drape"),
                           .value = words_of(draft.front.cowl->drape, units),
                           .main = true});
  return scene;
}

Scene cloth_scene(const ClothUse& use, const ClothChoice& cloth, Units units) {
  const Theme& t = theme();
  Scene scene;
  const double half = 0.5 * cloth.width, high = use.length;
  scene.lines.push_back({.points = {{-half, 0}, {half, 0}, {half, high}, {-half, high}},
                         .closed = true,
                         .colour = {},
                         .fill = t.cloth});
  for (const double side : {-1.0, 1.0}) {
    scene.lines.push_back({.points = {{side * half, 0}, {side * half, high}}, .colour = t.cut, .width = 3.0});
    scene.words.push_back({{side * half, -8.0},
                           tr("selvedge"),
                           t.quiet,
                           TextSize::plain,
                           Qt::AlignTop | (side > 0.0 ? Qt::AlignRight : Qt::AlignLeft)});
  }
  for (const LaidOut& one : use.pieces) {
    scene.lines.push_back({.points = one.cut_line,
                           .closed = true,
                           .colour = one.fits ? t.cut : t.warn,
                           .width = one.fits ? 2.6 : 4.0,
                           .fill = t.part});
    scene.lines.push_back({.points = one.seam_line, .closed = true, .colour = t.seam, .width = 1.6});
    const Box box = drafting::box_of(one.cut_line);
    if (!one.grain.empty()) {  // beside the words: only its direction counts
      const double x = 0.5 * (box.low.x() + box.high.x()) - 0.29 * one.width;
      scene.lines.push_back(
          {.points = {{x, one.grain[0].y()}, {x, one.grain[1].y()}}, .colour = t.slash, .width = 2.2});
    }
    const double under =
        one.grain.empty() ? box.low.y() : std::min(one.grain[0].y(), one.grain[1].y()) - 40.0;
    const double height = under > box.low.y() + 60.0 ? under : 0.5 * (box.low.y() + box.high.y());
    scene.words.push_back({{0.5 * (box.low.x() + box.high.x()), height},
                           said(QString::fromStdString(one.name)),
                           one.fits ? t.ink : t.warn,
                           TextSize::plain});
  }
  scene.words.push_back({{0.0, high + 10.0},
                         tr("cloth, %1 wide").arg(words_of(cloth.width, units)),
                         t.ink,
                         TextSize::plain,
                         Qt::AlignHCenter | Qt::AlignBottom});
  return scene;
}

Scene step_scene(const drafting::Step& step) {
  const Theme& t = theme();
  using Kind = drafting::StepLine::Kind;
  Scene scene;
  for (const drafting::StepLine& line : step.lines) {
    SceneLine drawn{.points = line.points, .closed = line.closed, .colour = t.seam};
    if (line.kind == Kind::part) drawn.fill = t.part;
    if (line.kind == Kind::cut_line) drawn.colour = t.cut, drawn.width = 3.0;
    if (line.kind == Kind::slash_line) drawn.colour = t.slash, drawn.style = Qt::DashLine, drawn.width = 2.6;
    if (line.kind == Kind::centre) drawn.colour = t.ink, drawn.style = Qt::DashDotLine;
    if (line.kind == Kind::cowl_edge) drawn.colour = t.slash, drawn.width = 4.0;
    if (line.kind == Kind::facing) drawn.style = Qt::DotLine, drawn.width = 3.0;
    if (line.earlier) drawn.colour = t.ghost, drawn.width = 1.6, drawn.fill = QColor();
    scene.lines.push_back(drawn);
  }
  std::stable_sort(scene.lines.begin(), scene.lines.end(), [](const SceneLine& a, const SceneLine& b) {
    return a.fill.isValid() && !b.fill.isValid();
  });
  for (const drafting::StepPoint& point : step.points) {
    scene.lines.push_back(
        {.points = {point.at, point.at + Point(0.01, 0.0)}, .colour = t.handle, .width = 9.0});
    scene.words.push_back(beside(point.at, {1.0, 0.0}, said(QString::fromStdString(point.name))));
  }
  return scene;
}

}  // namespace cowlcast::projector
