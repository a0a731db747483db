#include "projector/teaching/window.h"

#include <QKeyEvent>
#include <QPainter>
#include <QResizeEvent>
#include <cmath>
#include <utility>

#include "projector/cutting/window.h"

namespace cowlcast::projector {

std::optional<LessonAct> lesson_act_of(int key) {
  switch (key) {
    case Qt::Key_PageDown:
    case Qt::Key_N:
    case Qt::Key_Return:
      return LessonAct::next;
    case Qt::Key_PageUp:
    case Qt::Key_Backspace:
      return LessonAct::back;
    case Qt::Key_Right:
      return LessonAct::open;
    case Qt::Key_Left:
      return LessonAct::close;
    case Qt::Key_Space:
      return LessonAct::play;
    case Qt::Key_L:
      return LessonAct::legend;
    default:
      return std::nullopt;
  }
}

LessonWindow::LessonWindow(LessonView view, FrameStyle style) : view_(std::move(view)), style_(style) {
  setMinimumSize(480, 360);
  resize(1200, 800);
  start();
}

LessonWindow::LessonWindow(LessonView view, FrameStyle style, LessonStage stage, QScreen& screen)
    : view_(std::move(view)), style_(style), stage_(std::move(stage)), on_table_(true) {
  check_screen(screen, stage_->map);
  setWindowFlags(Qt::Window | Qt::FramelessWindowHint | Qt::WindowStaysOnTopHint);
  setScreen(&screen);
  setGeometry(screen.geometry());
  start();
}

void LessonWindow::start() {
  setWindowTitle(QStringLiteral("Cowlcast"));
  setAttribute(Qt::WA_OpaquePaintEvent);
  timer_.setInterval(33);
  connect(&timer_, &QTimer::timeout, this, [this] {
    view_ = later(std::move(view_), 1e-3 * static_cast<double>(since_.restart()));
    if (!view_.playing) timer_.stop();
    redraw();
  });
  redraw();
}

void LessonWindow::open() {
  if (on_table_) {
    showFullScreen();
  } else {
    show();
  }
  activateWindow();
}

void LessonWindow::redraw() {
  if (!on_table_) {
    const double ratio = devicePixelRatio();
    stage_ = stage_on_screen(std::max(320, static_cast<int>(std::lround(width() * ratio))),
                             std::max(240, static_cast<int>(std::lround(height() * ratio))), view_.draft);
  }
  painter_.draw(stage_->map, lesson_marks(view_, *stage_, style_), stage_->laying.height);
  update();
}

void LessonWindow::resizeEvent(QResizeEvent*) {
  if (!on_table_) redraw();
}

void LessonWindow::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), Qt::black);
  const bool fits = std::lround(width() * devicePixelRatio()) == stage_->map.width &&
                    std::lround(height() * devicePixelRatio()) == stage_->map.height;
  if (on_table_ && !fits) {  // never a scaled line
    painter.setPen(Qt::white);
    painter.drawText(rect(), Qt::AlignCenter,
                     tr("This is not the %1 x %2 pixel screen of the calibration: nothing is drawn.")
                         .arg(stage_->map.width)
                         .arg(stage_->map.height));
    return;
  }
  QImage shown = painter_.picture();
  shown.setDevicePixelRatio(devicePixelRatio());
  painter.drawImage(QPointF(0.0, 0.0), shown);
}

void LessonWindow::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    close();
    return;
  }
  const auto act = lesson_act_of(event->key());
  if (!act) {
    QWidget::keyPressEvent(event);
    return;
  }
  view_ = after(std::move(view_), *act);
  if (view_.playing) {
    since_.start();
    timer_.start();
  } else {
    timer_.stop();
  }
  redraw();
}

}  // namespace cowlcast::projector
