#include "projector/workbench/canvas/canvas_paint.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "projector/workbench/canvas/ruler.h"

namespace cowlcast::projector {
namespace {

QPointF pixel(const PlaneView& view, const Point& place) {
  const Point at = pixel_from_plane(view, place);
  return {at.x(), at.y()};
}

/// The line in pixels, without points that nobody would miss: stroking costs by the point.
QPolygonF polygon_of(const PlaneView& view, const Polyline& line) {
  constexpr double least_apart = 0.4, most_apart = 8.0, strays = 0.12;  // pixels
  QPolygonF result;
  result.reserve(static_cast<qsizetype>(line.size()));
  Point last = Point::Zero();
  for (size_t i = 0; i < line.size(); ++i) {
    const Point at = pixel_from_plane(view, line[i]);
    if (i > 0 && i + 1 < line.size()) {
      const Point way = at - last, next = pixel_from_plane(view, line[i + 1]) - last;
      const double aside = std::abs(way.x() * next.y() - way.y() * next.x());
      const bool straight = way.dot(next) > 0.0 && aside < strays * next.norm() && next.norm() < most_apart;
      if (straight || way.norm() < least_apart) continue;
    }
    last = at;
    result.append({at.x(), at.y()});
  }
  return result;
}

void paint_line(QPainter& painter, const SceneLine& line, const PlaneView& view, bool emphasised) {
  if (line.points.size() < 2) return;
  const QPolygonF polygon = polygon_of(view, line.points);
  painter.setBrush(line.fill.isValid() ? QBrush(line.fill) : QBrush(Qt::NoBrush));
  if (line.colour.isValid()) {
    QPen pen(line.colour, line.width + (emphasised ? 3.0 : 0.0), line.style, Qt::RoundCap, Qt::BevelJoin);
    if (line.style == Qt::DashLine) pen.setDashPattern({4.0, 3.0});
    painter.setPen(pen);
  } else {
    painter.setPen(Qt::NoPen);
  }
  line.closed ? painter.drawPolygon(polygon) : painter.drawPolyline(polygon);
}

/// The rectangle of words whose `anchor` side lies at `at`.
QRectF placed(const QSizeF& size, const QPointF& at, Qt::Alignment anchor) {
  double x = at.x() - size.width() / 2, y = at.y() - size.height() / 2;
  if (anchor & Qt::AlignLeft) x = at.x();
  if (anchor & Qt::AlignRight) x = at.x() - size.width();
  if (anchor & Qt::AlignTop) y = at.y();
  if (anchor & Qt::AlignBottom) y = at.y() - size.height();
  return {QPointF(x, y), size};
}

void paint_words(QPainter& painter, const SceneWords& words, const PlaneView& view) {
  painter.setFont(letters(words.size));
  painter.setPen(words.colour);
  painter.drawText(words_rect(words, view), Qt::AlignCenter, words.text);
}

/// A handle is a disc with the two ways it can go, so that it is known without its colour.
void paint_handle(QPainter& painter, const SceneHandle& handle, const PlaneView& view, bool emphasised) {
  const Theme& t = theme();
  const QPointF at = pixel(view, handle.at);
  const double r = (handle.main ? 17.0 : 11.0) + (emphasised ? 2.0 : 0.0);
  painter.setPen(QPen(t.paper, 2.5));
  painter.setBrush(t.handle);
  painter.drawEllipse(at, r, r);
  if (emphasised) {
    painter.setPen(QPen(t.handle, 2.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(at, r + 4.0, r + 4.0);
  }
  painter.setPen(QPen(t.paper, handle.main ? 2.4 : 1.8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  const double far = 0.58 * r, hook = 0.26 * r;
  for (const double way : {-1.0, 1.0}) {
    const auto turned = [&](double along, double aside) {
      return at + (handle.upright ? QPointF(aside, way * along) : QPointF(way * along, aside));
    };
    painter.drawPolyline(QPolygonF{turned(far - hook, -hook), turned(far, 0.0), turned(far - hook, hook)});
  }
}

void paint_label(QPainter& painter, const SceneHandle& handle, const PlaneView& view) {
  const Theme& t = theme();
  const QPointF at = pixel(view, handle.at);
  painter.setFont(letters(handle.main ? TextSize::large : TextSize::plain, true));
  const QString text =
      handle.value.isEmpty() ? handle.name : handle.name + QStringLiteral("  ") + handle.value;
  const QSizeF size = painter.fontMetrics().boundingRect(text).size() + QSizeF(22, 12);
  QRectF box(at + QPointF(20, -size.height() / 2), size);
  if (handle.main) box.moveCenter(at - QPointF(0, 60));  // above the piece, where its drawing is not covered
  if (box.right() > view.width - 4 && !handle.main) box.moveRight(at.x() - 20);
  box.moveRight(std::min(box.right(), view.width - 4));
  box.moveTop(std::clamp(box.top(), ruler_width() + 4.0,
                         std::max(ruler_width() + 4.0, view.height - size.height() - 4)));
  painter.setPen(QPen(t.handle, 1.5));
  painter.setBrush(t.paper);
  painter.drawRoundedRect(box, 8, 8);
  painter.setPen(t.ink);
  painter.drawText(box, Qt::AlignCenter, text);
}

}  // namespace

int ruler_width() {
  return grown(30);
}

QRectF words_rect(const SceneWords& words, const PlaneView& view) {
  const QFontMetricsF metrics(letters(words.size));
  const QRectF bounds = metrics.boundingRect(QRectF(0, 0, 2000, 2000), Qt::AlignLeft, words.text);
  return placed(bounds.size() + QSizeF(4, 2), pixel(view, words.at), words.anchor);
}

void paint_scene(QPainter& painter, const Scene& scene, const PlaneView& view, const Emphasis& emphasis) {
  painter.setRenderHint(QPainter::Antialiasing);
  for (const SceneLine& line : scene.lines)
    paint_line(painter, line, view, !line.id.empty() && emphasis.line == line.id);
  for (const SceneWords& words : scene.words) paint_words(painter, words, view);
  for (const SceneHandle& handle : scene.handles)
    paint_handle(painter, handle, view, emphasis.handle == handle.id);
  for (const SceneHandle& handle : scene.handles)
    if (handle.main && emphasis.handle != handle.id) paint_label(painter, handle, view);
  for (const SceneHandle& handle : scene.handles)
    if (emphasis.handle == handle.id) paint_label(painter, handle, view);
}

void paint_rulers(QPainter& painter, const PlaneView& view, Units units,
                  const std::optional<Point>& pointer) {
  const Theme& t = theme();
  const int wide = ruler_width();
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.setFont(letters(TextSize::small));
  for (const bool across : {false, true}) {
    const double end = across ? view.width : view.height;
    const QRectF band = across ? QRectF(0, 0, view.width, wide) : QRectF(0, 0, wide, view.height);
    painter.fillRect(band, t.panel);
    painter.setPen(t.line);
    across ? painter.drawLine(QPointF(0, wide), QPointF(view.width, wide))
           : painter.drawLine(QPointF(wide, 0), QPointF(wide, view.height));
    const double from = across ? plane_from_pixel(view, {0, 0}).x() : plane_from_pixel(view, {0, end}).y();
    const double to = across ? plane_from_pixel(view, {end, 0}).x() : plane_from_pixel(view, {0, 0}).y();
    QVector<QLineF> lines;
    painter.setPen(t.quiet);
    for (const Tick& tick : ruler_ticks(from, to, view.scale, units)) {
      const Point at = pixel_from_plane(view, {tick.at, tick.at});
      const double place = across ? at.x() : at.y();
      const double tall = std::max(3.0, wide * (tick.rank == 0 ? 0.4 : 0.34 / tick.rank));
      lines.append(across ? QLineF(place, wide, place, wide - tall)
                          : QLineF(wide, place, wide - tall, place));
      const bool in_sight = across ? place > 1.6 * wide : place > 1.6 * wide && place < view.height - 12;
      if (tick.words.empty() || !in_sight) continue;
      const QString words = QString::fromStdString(tick.words);
      if (across) {
        painter.drawText(QRectF(place - 40, 0, 80, wide * 0.62), Qt::AlignCenter, words);
      } else {
        painter.save();
        painter.translate(wide * 0.31, place);
        painter.rotate(-90);
        painter.drawText(QRectF(-40, -wide * 0.31, 80, wide * 0.62), Qt::AlignCenter, words);
        painter.restore();
      }
    }
    painter.drawLines(lines);
    if (pointer) {
      painter.setPen(QPen(t.handle, 2));
      const double place = across ? pointer->x() : pointer->y();
      across ? painter.drawLine(QPointF(place, 0), QPointF(place, wide))
             : painter.drawLine(QPointF(0, place), QPointF(wide, place));
    }
  }
  painter.fillRect(QRectF(0, 0, wide, wide), t.panel);
  painter.setPen(t.quiet);
  painter.drawText(QRectF(0, 0, wide, wide), Qt::AlignCenter,
                   units == Units::inches ? QStringLiteral("in") : QStringLiteral("cm"));
}

}  // namespace cowlcast::projector
