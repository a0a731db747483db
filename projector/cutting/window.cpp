#include "projector/cutting/window.h"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QPainter>
#include <cmath>
#include <utility>

#include "calibration/refusal.h"

namespace cowlcast::projector {
namespace {

// A screen's own pixels; Qt counts in its own units where the screen is scaled.
QSize pixels_of(const QScreen& screen) {
  const double ratio = screen.devicePixelRatio();
  return {static_cast<int>(std::lround(screen.size().width() * ratio)),
          static_cast<int>(std::lround(screen.size().height() * ratio))};
}

std::string size_text(const QSize& size) {
  return std::to_string(size.width()) + " x " + std::to_string(size.height());
}

}  // namespace

std::string screen_list() {
  std::string list;
  int number = 0;
  for (const QScreen* screen : QGuiApplication::screens()) {
    if (!list.empty()) list += "; ";
    list +=
        std::to_string(++number) + ": " + screen->name().toStdString() + ", " + size_text(pixels_of(*screen));
  }
  return list;
}

QScreen* screen_named(const std::string& wanted) {
  const QList<QScreen*> screens = QGuiApplication::screens();
  int number = 0;
  for (QScreen* screen : screens)
    if (screen->name().toStdString() == wanted || std::to_string(++number) == wanted) return screen;
  throw calibration::Refusal("There is no screen \"" + wanted +
                             "\". Plug in and switch on the projector, then choose one of: " + screen_list() +
                             ".");
}

void check_screen(const QScreen& screen, const calibration::TableMap& map) {
  const QSize pixels = pixels_of(screen), wanted(map.width, map.height);
  if (pixels == wanted) return;
  throw calibration::Refusal("The screen " + screen.name().toStdString() + " shows " + size_text(pixels) +
                             " pixels but the table was calibrated for " + size_text(wanted) +
                             ", so lines would land in wrong places. Set the screen to " + size_text(wanted) +
                             " or choose the projector's screen: " + screen_list() + ".");
}

std::optional<KeyMeaning> meaning_of(int key, Qt::KeyboardModifiers modifiers) {
  const Pace pace = modifiers & Qt::ShiftModifier                         ? Pace::coarse
                    : modifiers & (Qt::ControlModifier | Qt::AltModifier) ? Pace::fine
                                                                          : Pace::normal;
  switch (key) {
    case Qt::Key_Left:
      return KeyMeaning{Act::left, pace};
    case Qt::Key_Right:
      return KeyMeaning{Act::right, pace};
    case Qt::Key_Up:
      return KeyMeaning{Act::away, pace};
    case Qt::Key_Down:
      return KeyMeaning{Act::nearer, pace};
    case Qt::Key_Q:
      return KeyMeaning{Act::turn_left, pace};
    case Qt::Key_E:
      return KeyMeaning{Act::turn_right, pace};
    case Qt::Key_F:
      return KeyMeaning{Act::flip};
    case Qt::Key_Space:
    case Qt::Key_PageDown:
      return KeyMeaning{Act::next};
    case Qt::Key_PageUp:
      return KeyMeaning{Act::back};
    case Qt::Key_L:
      return KeyMeaning{Act::legend};
    case Qt::Key_B:
      return KeyMeaning{Act::band};
    case Qt::Key_U:
      return KeyMeaning{Act::unlock};
    default:
      return std::nullopt;
  }
}

CuttingWindow::CuttingWindow(calibration::TableMap map, CuttingView view, QScreen& screen)
    : map_(std::move(map)), view_(std::move(view)) {
  check_screen(screen, map_);
  setWindowTitle(QStringLiteral("Cowlcast"));
  setWindowFlags(Qt::Window | Qt::FramelessWindowHint | Qt::WindowStaysOnTopHint);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setCursor(Qt::BlankCursor);
  setScreen(&screen);
  setGeometry(screen.geometry());
  redraw();
}

void CuttingWindow::open() {
  showFullScreen();
  activateWindow();
}

void CuttingWindow::set_view(CuttingView view) {
  view_ = std::move(view);
  redraw();
}

void CuttingWindow::redraw() {
  render_into(frame_, map_, view_marks(view_, map_), view_.laying.height);
  update();
}

void CuttingWindow::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setCompositionMode(QPainter::CompositionMode_Source);
  if (std::lround(width() * devicePixelRatio()) != map_.width ||
      std::lround(height() * devicePixelRatio()) != map_.height) {
    // Never a scaled line: better none than a wrong one.
    painter.fillRect(rect(), Qt::black);
    painter.setPen(Qt::white);
    painter.drawText(rect(), Qt::AlignCenter,
                     tr("This screen no longer has the %1 x %2 pixels of the calibration: nothing is drawn.")
                         .arg(map_.width)
                         .arg(map_.height));
    return;
  }
  frame_.setDevicePixelRatio(devicePixelRatio());
  painter.drawImage(QPointF(0.0, 0.0), frame_);
}

void CuttingWindow::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    close();
    return;
  }
  if (const auto meaning = meaning_of(event->key(), event->modifiers()))
    set_view(after(view_, meaning->act, meaning->pace));
  else
    QWidget::keyPressEvent(event);
}

}  // namespace cowlcast::projector
