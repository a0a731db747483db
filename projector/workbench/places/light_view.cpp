#include "projector/workbench/places/light_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include "projector/cutting/window.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {

LightView::LightView(QWidget* parent) : QWidget(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setMinimumSize(480, 270);
  setCursor(Qt::CrossCursor);
}

void LightView::show_frame(const QImage& frame) {
  frame_ = frame;
  update();
}

void LightView::show_table(const QImage& table) {
  table_ = table;
  update();
}

QRectF LightView::picture_place(const QImage& picture) const {
  const QSizeF size = QSizeF(picture.size()).scaled(QSizeF(width() - 8, height() - 8), Qt::KeepAspectRatio);
  return {0.5 * (width() - size.width()), 0.5 * (height() - size.height()), size.width(), size.height()};
}

std::optional<QPointF> LightView::frame_at(const QPointF& position) const {
  if (frame_.isNull() || shows_table()) return std::nullopt;
  const QRectF place = picture_place(frame_);
  const double scale = frame_.width() / place.width();
  return (position - place.topLeft()) * scale - QPointF(0.5, 0.5);  // a pixel's centre has whole numbers
}

void LightView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  painter.fillRect(rect(), theme().paper);
  const QImage& picture = shows_table() ? table_ : frame_;
  if (picture.isNull()) return;
  const QRectF place = picture_place(picture);
  painter.drawImage(place, picture);
  painter.setPen(QPen(hasFocus() ? theme().accent : theme().line, hasFocus() ? 3 : 1));
  painter.drawRect(place.adjusted(-1, -1, 1, 1));
}

void LightView::keyPressEvent(QKeyEvent* event) {
  const auto meaning = meaning_of(event->key(), event->modifiers());
  if (!meaning || meaning->act == Act::end) {  // Escape is the window's
    QWidget::keyPressEvent(event);
    return;
  }
  emit acted(meaning->act, meaning->pace);
}

void LightView::mousePressEvent(QMouseEvent* event) {
  held_ = frame_at(event->position());
}

void LightView::mouseMoveEvent(QMouseEvent* event) {
  const auto now = frame_at(event->position());
  if (!held_ || !now) return;
  emit dragged(*held_, *now);
  held_ = now;
}

void LightView::mouseReleaseEvent(QMouseEvent*) {
  if (held_) emit let_go();
  held_.reset();
}

void LightView::focusInEvent(QFocusEvent* event) {
  QWidget::focusInEvent(event);
  update();
}

void LightView::focusOutEvent(QFocusEvent* event) {
  QWidget::focusOutEvent(event);
  update();
}

}  // namespace cowlcast::projector
