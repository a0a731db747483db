#include "projector/cutting/window.h"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QMouseEvent>
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

QScreen* likely_screen(const std::string& last, const calibration::TableMap& map) {
  QScreen* only = nullptr;
  int fitting = 0;
  for (QScreen* screen : QGuiApplication::screens()) {
    if (screen->name().toStdString() == last) return screen;
    if (pixels_of(*screen) != QSize(map.width, map.height)) continue;
    only = screen;
    ++fitting;
  }
  if (fitting == 1) return only;
  throw calibration::Refusal(
      "It is not clear which screen is the projector. Name it with --screen: " + screen_list() + ".");
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
    case Qt::Key_G:
      return KeyMeaning{Act::grain};
    case Qt::Key_N:
      return KeyMeaning{Act::part};
    case Qt::Key_U:
      return KeyMeaning{Act::unlock};
    default:
      return std::nullopt;
  }
}

CuttingWindow::CuttingWindow(calibration::TableMap map, CuttingView view, QScreen& screen)
    : map_(std::move(map)), view_(std::move(view)), screen_name_(screen.name()) {
  check_screen(screen, map_);
  setWindowTitle(QStringLiteral("Cowlcast"));
  setWindowFlags(Qt::Window | Qt::FramelessWindowHint | Qt::WindowStaysOnTopHint);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setCursor(Qt::CrossCursor);
  setScreen(&screen);
  setGeometry(screen.geometry());
  connect(qGuiApp, &QGuiApplication::screenAdded, this, &CuttingWindow::come_back);
  connect(qGuiApp, &QGuiApplication::screenRemoved, this, [this] { update(); });
  redraw();
}

void CuttingWindow::come_back(QScreen* screen) {
  if (screen->name() != screen_name_ || pixels_of(*screen) != QSize(map_.width, map_.height)) return;
  setScreen(screen);
  setGeometry(screen->geometry());
  showFullScreen();
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
      std::lround(height() * devicePixelRatio()) != map_.height || screen()->name() != screen_name_) {
    // Never a scaled line: better none than a wrong one.
    painter.fillRect(rect(), Qt::black);
    painter.setPen(Qt::white);
    painter.drawText(rect(), Qt::AlignCenter,
                     tr("This is not the %1 x %2 pixel screen of the calibration: nothing is drawn.")
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
    become(after(view_, meaning->act, meaning->pace));
  else
    QWidget::keyPressEvent(event);
}

void CuttingWindow::become(CuttingView view) {
  set_view(std::move(view));
  if (changed) changed(view_);
}

std::optional<Point> CuttingWindow::mat_at(const QPointF& position) const {
  // A window's coordinates begin at the corner of its first pixel, the map's at that pixel's centre.
  const double ratio = devicePixelRatio();
  try {
    return map_.mat_from_projector({position.x() * ratio - 0.5, position.y() * ratio - 0.5},
                                   view_.laying.height);
  } catch (const calibration::Refusal&) {
    return std::nullopt;
  }
}

void CuttingWindow::mousePressEvent(QMouseEvent* event) {
  const auto mat = mat_at(event->position());
  held_.reset();
  if (!mat || !is_laying(view_)) return;
  if (!view_.crosses.empty())
    become(after_pointing(view_, *mat));
  else
    held_ = piece_from_mat(view_.laying, *mat);
}

void CuttingWindow::mouseMoveEvent(QMouseEvent* event) {
  const auto mat = mat_at(event->position());
  if (!mat || !held_ || !is_laying(view_)) return;
  CuttingView view = view_;
  const Point shift = *mat - mat_from_piece(view.laying, *held_);
  view.laying.x += shift.x();
  view.laying.y += shift.y();
  become(std::move(view));
}

}  // namespace cowlcast::projector
