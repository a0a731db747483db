#include "projector/workbench/places/live_picture.h"

#include <QPainter>

#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {

LivePicture::LivePicture(QWidget* parent) : QWidget(parent) {
  setMinimumSize(420, 300);
  setAccessibleName(tr("What the camera sees"));
}

void LivePicture::show_sight(const CameraSight& sight) {
  sight_ = sight;
  trouble_.clear();
  setAccessibleDescription(sight.say);
  update();
}

void LivePicture::show_trouble(const QString& words) {
  trouble_ = words;
  setAccessibleDescription(words);
  update();
}

void LivePicture::paint_thirds(QPainter& painter, const QRectF& place) const {
  const QString names[] = {tr("left"), tr("middle"), tr("right")};
  const double gap = grown(12), wide = (place.width() - 2.0 * gap) / 3.0, bar = grown(12);
  painter.setFont(letters(TextSize::plain));
  for (int i = 0; i < 3; ++i) {
    const auto k = static_cast<size_t>(i);
    const QRectF whole(place.left() + i * (wide + gap), place.top(), wide, bar);
    painter.setPen(QPen(theme().line, 1));
    painter.setBrush(theme().field);
    painter.drawRect(whole);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().accent);
    painter.drawRect(QRectF(whole.topLeft(), QSizeF(wide * sight_.seen->light_seen[k], bar)));
    painter.setPen(theme().ink);
    const QString words =
        sight_.seen->sheet_in[k] ? tr("%1: sheet seen").arg(names[i]) : tr("%1: no sheet").arg(names[i]);
    painter.drawText(QRectF(whole.left(), whole.bottom(), wide, place.bottom() - whole.bottom()),
                     Qt::AlignLeft | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(words, Qt::ElideRight, static_cast<int>(wide)));
  }
}

void LivePicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  painter.fillRect(rect(), theme().paper);
  const double edge = grown(14), words_high = grown(34), hints_high = grown(54), thirds_high = grown(42);
  QRectF room = QRectF(rect()).adjusted(edge, edge, -edge, -edge);
  const QRectF words(room.left(), room.top(), room.width(), words_high);
  room.setTop(words.bottom() + 6);
  room.setBottom(room.bottom() - hints_high - (sight_.seen ? thirds_high : 0.0));
  painter.setPen(trouble_.isEmpty() ? theme().ink : theme().warn);
  painter.setFont(letters(TextSize::large, true));
  const QString say = !trouble_.isEmpty()       ? tr("No picture comes from the camera.")
                      : sight_.picture.isNull() ? tr("Waiting for the camera …")
                                                : sight_.say;
  painter.drawText(words, Qt::AlignHCenter | Qt::AlignVCenter, say);
  if (!sight_.picture.isNull()) {
    const QSizeF size = QSizeF(sight_.picture.size()).scaled(room.size(), Qt::KeepAspectRatio);
    const QRectF shown(room.center() - QPointF(0.5 * size.width(), 0.5 * size.height()), size);
    painter.setOpacity(trouble_.isEmpty() ? 1.0 : 0.35);
    painter.drawImage(shown, sight_.picture);
    painter.setOpacity(1.0);
  }
  QRectF below(room.left(), room.bottom() + 8, room.width(), thirds_high);
  if (sight_.seen) {
    paint_thirds(painter, below);
    below.translate(0, thirds_high);
  }
  below.setBottom(rect().bottom() - 4);
  if (!trouble_.isEmpty()) return;  // why is said above the picture
  painter.setFont(letters(TextSize::plain));
  painter.setPen(theme().ink);
  painter.drawText(below, Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap,
                   sight_.hints.join(QLatin1Char('\n')));
}

}  // namespace cowlcast::projector
