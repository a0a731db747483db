#include "projector/workbench/places/hang_picture.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <utility>

#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {

HangPicture::HangPicture() {
  setFixedHeight(grown(190));
  setAccessibleName(tr("How the cowl hangs"));
  setToolTip(
      tr("The cowl's edge as a chain would hang between the neck points. Cloth is stiffer: take it as a "
         "guide."));
}

void HangPicture::show_hang(drafting::Polyline line, const std::optional<drafting::HangLevels>& levels) {
  line_ = std::move(line);
  levels_ = levels;
  update();
}

void HangPicture::paintEvent(QPaintEvent*) {
  const Theme& t = theme();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(t.line, 1.0));
  painter.setBrush(t.paper);
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 8, 8);
  if (line_.empty()) return;
  double deepest = levels_ ? levels_->waist : 0.0;
  for (const drafting::Point& p : line_) deepest = std::max(deepest, -p.y());
  const double top = 24.0, scale = (height() - top - 16.0) / std::max(deepest, 100.0),
               middle = 0.62 * width();
  const auto at = [&](const drafting::Point& p) {
    return QPointF(middle + scale * p.x(), top - scale * p.y());
  };
  if (levels_) {
    painter.setFont(letters(TextSize::small));
    for (const auto& [depth, name] : {std::pair{levels_->collar_bone, tr("collar bone")},
                                      {levels_->underarm, tr("underarm")},
                                      {levels_->waist, tr("waist")}}) {
      const double y = top + scale * depth;
      painter.setPen(QPen(t.ghost, 1.2, Qt::DashLine));
      painter.drawLine(QPointF(12.0, y), QPointF(width() - 12.0, y));
      painter.setPen(t.quiet);
      painter.drawText(QRectF(14.0, y - grown(21), 0.4 * width(), grown(20)), Qt::AlignLeft | Qt::AlignBottom,
                       name);
    }
  }
  // The shoulders go on from the neck points.
  const QPointF left = at(line_.front()), right = at(line_.back());
  painter.setPen(QPen(t.ink, 2.2, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(left, left + QPointF(-scale * 110.0, scale * 40.0));
  painter.drawLine(right, right + QPointF(scale * 110.0, scale * 40.0));
  QPainterPath cowl(left);
  for (const drafting::Point& p : line_) cowl.lineTo(at(p));
  painter.setPen(QPen(t.seam, 3.4, Qt::SolidLine, Qt::RoundCap));
  painter.drawPath(cowl);
}

}  // namespace cowlcast::projector
