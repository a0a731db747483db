#include <QFont>
#include <QFontMetricsF>
#include <QPainterPath>
#include <QString>
#include <QStringList>

#include "projector/frame/piece_marks.h"

namespace cowlcast::projector {

Mark writing(const std::string& text, const Point& centre, double height, QRgb colour) {
  Mark mark{.lines = {}, .closed = true, .width = 0.0, .colour = colour};
  QFont font(QStringLiteral("DejaVu Sans"));
  font.setStyleHint(QFont::SansSerif);
  font.setPixelSize(100);
  const QFontMetricsF metrics(font);
  const double scale = height / metrics.capHeight();  // mm per font pixel
  const QStringList rows = QString::fromStdString(text).split(QLatin1Char('\n'));
  const double pitch = 1.7 * metrics.capHeight();
  const double top = -pitch * static_cast<double>(rows.size() - 1) / 2.0 + metrics.capHeight() / 2.0;
  QPainterPath path;
  for (qsizetype row = 0; row < rows.size(); ++row)
    path.addText(-metrics.horizontalAdvance(rows[row]) / 2.0, top + pitch * static_cast<double>(row), font,
                 rows[row]);
  for (const QPolygonF& outline : path.toSubpathPolygons()) {
    Polyline line;
    for (const QPointF& point : outline)
      line.emplace_back(centre.x() + scale * point.x(), centre.y() - scale * point.y());
    mark.lines.push_back(line);
  }
  return mark;
}

}  // namespace cowlcast::projector
