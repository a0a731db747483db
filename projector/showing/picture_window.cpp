#include "projector/showing/picture_window.h"

#include <QKeyEvent>
#include <QPainter>
#include <cmath>

#include "calibration/refusal.h"
#include "projector/cutting/window.h"

namespace cowlcast::projector {

PictureWindow::PictureWindow(QScreen& screen, const QImage& picture)
    : picture_(picture), screen_name_(screen.name()) {
  const double ratio = screen.devicePixelRatio();
  const int width = static_cast<int>(std::lround(screen.size().width() * ratio)),
            height = static_cast<int>(std::lround(screen.size().height() * ratio));
  if (width != picture.width() || height != picture.height())
    throw calibration::Refusal(
        "The screen " + screen.name().toStdString() + " shows " + pixels_in_words(width, height) +
        " pixels, not " + pixels_in_words(picture.width(), picture.height()) +
        ". Set it to its own size without scaling, or choose the projector's screen: " +
        list_of(screens_seen()) + ".");
  setWindowTitle(QStringLiteral("Cowlcast"));
  setWindowFlags(Qt::Window | Qt::FramelessWindowHint | Qt::WindowStaysOnTopHint);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setCursor(Qt::BlankCursor);
  setScreen(&screen);
  setGeometry(screen.geometry());
}

void PictureWindow::open() {
  showFullScreen();
  activateWindow();
}

void PictureWindow::show_picture(const QImage& picture) {
  picture_ = picture;
  update();
}

void PictureWindow::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setCompositionMode(QPainter::CompositionMode_Source);
  if (std::lround(width() * devicePixelRatio()) != picture_.width() ||
      std::lround(height() * devicePixelRatio()) != picture_.height() || screen()->name() != screen_name_) {
    // Never a scaled picture: better none than a wrong one.
    painter.fillRect(rect(), Qt::black);
    return;
  }
  QImage shown = picture_;
  shown.setDevicePixelRatio(devicePixelRatio());
  painter.drawImage(QPointF(0.0, 0.0), shown);
}

void PictureWindow::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape)
    close();
  else if (key)
    key(event->key());
}

}  // namespace cowlcast::projector
