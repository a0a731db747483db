#include <QFont>
#include <QFontMetricsF>
#include <QPainterPath>
#include <QString>
#include <QStringList>
#include <algorithm>

#include "projector/frame/piece_marks.h"

namespace cowlcast::projector {

Mark writing(const std::string& text, const Point& centre, double height, QRgb colour, Lines lines) {
  Mark mark{.lines = {}, .closed = true, .width = 0.0, .colour = colour};
  QFont font(QStringLiteral("DejaVu Sans"));
  font.setStyleHint(QFont::SansSerif);
  font.setPixelSize(40);  // flattened finely enough for letters of a few centimetres
  font.setHintingPreference(QFont::PreferNoHinting);
  const QFontMetricsF metrics(font);
  QPainterPath capital;
  capital.addText(0.0, 0.0, font, QStringLiteral("H"));
  const double cap = capital.boundingRect().height();
  const double scale = height / cap;  // mm per font pixel
  const QStringList rows = QString::fromStdString(text).split(QLatin1Char('\n'));
  const double pitch = 1.7 * cap;
  const double top = -pitch * static_cast<double>(rows.size() - 1) / 2.0 + cap / 2.0;
  QPainterPath path;
  double widest = 0.0;
  for (const QString& row : rows) widest = std::max(widest, metrics.horizontalAdvance(row));
  for (qsizetype row = 0; row < rows.size(); ++row) {
    const double width = lines == Lines::centred ? metrics.horizontalAdvance(rows[row]) : widest;
    path.addText(-width / 2.0, top + pitch * static_cast<double>(row), font, rows[row]);
  }
  for (const QPolygonF& outline : path.toSubpathPolygons()) {
    Polyline line;
    for (const QPointF& point : outline)
      line.emplace_back(centre.x() + scale * point.x(), centre.y() - scale * point.y());
    mark.lines.push_back(line);
  }
  return mark;
}

}  // namespace cowlcast::projector
