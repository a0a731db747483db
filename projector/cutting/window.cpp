#include "projector/cutting/window.h"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPaintEvent>
#include <QPainter>
#include <QTimer>
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

ScreenSeen seen(const QScreen& screen) {
  const QSize pixels = pixels_of(screen);
  return {screen.name().toStdString(), pixels.width(), pixels.height()};
}

}  // namespace

std::vector<ScreenSeen> screens_seen() {
  std::vector<ScreenSeen> all;
  for (const QScreen* screen : QGuiApplication::screens()) all.push_back(seen(*screen));
  return all;
}

QScreen* screen_named(const std::string& wanted) {
  int number = 0;
  for (QScreen* screen : QGuiApplication::screens())
    if (screen->name().toStdString() == wanted || std::to_string(++number) == wanted) return screen;
  throw calibration::Refusal(
      "There is no screen \"" + wanted +
      "\". Plug in and switch on the projector, then choose one of: " + list_of(screens_seen()) + ".");
}

QScreen* likely_screen(const std::string& last, const calibration::TableMap& map) {
  const int index = likely_index(screens_seen(), last, map.width, map.height);
  if (index >= 0) return QGuiApplication::screens().at(index);
  throw calibration::Refusal("It is not clear which screen is the projector. Name it with --screen: " +
                             list_of(screens_seen()) + ".");
}

void check_screen(const QScreen& screen, const calibration::TableMap& map) {
  const ScreenSeen here = seen(screen);
  if (here.width == map.width && here.height == map.height) return;
  throw calibration::Refusal(
      "The screen " + here.name + " shows " + pixels_in_words(here.width, here.height) +
      " pixels but the table was calibrated for " + pixels_in_words(map.width, map.height) +
      ", so lines would land in wrong places. Set the screen to " + pixels_in_words(map.width, map.height) +
      " or choose the projector's screen: " + list_of(screens_seen()) + ".");
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
    case Qt::Key_K:  // not B, which presenters send to darken the screen
      return KeyMeaning{Act::band};
    case Qt::Key_H:
      return KeyMeaning{Act::home};
    case Qt::Key_O:
      return KeyMeaning{Act::waive};
    case Qt::Key_R:
      return KeyMeaning{Act::look};
    case Qt::Key_Escape:
      return KeyMeaning{Act::end};
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
    : map_(std::move(map)), view_(std::move(view)), wanted_(seen(screen)) {
  check_screen(screen, map_);
  setWindowTitle(QStringLiteral("Cowlcast"));
  setWindowFlags(Qt::Window | Qt::FramelessWindowHint | Qt::WindowStaysOnTopHint);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setCursor(Qt::CrossCursor);
  setScreen(&screen);
  setGeometry(screen.geometry());
  for (QScreen* here : QGuiApplication::screens()) watch(here);
  // A screen that goes is still listed while its going is told: look when that is over.
  const auto look_soon = [this] { QTimer::singleShot(0, this, [this] { look_at(screens_seen()); }); };
  connect(qGuiApp, &QGuiApplication::screenRemoved, this, look_soon);
  connect(qGuiApp, &QGuiApplication::screenAdded, this, [this, look_soon](QScreen* added) {
    watch(added);
    look_soon();
  });
  seconds_before_ = view_.seconds;
  since_.start();
  redraw();
}

void CuttingWindow::watch(QScreen* screen) {
  connect(screen, &QScreen::geometryChanged, this, [this] { look_at(screens_seen()); });
}

void CuttingWindow::look_at(const std::vector<ScreenSeen>& screens) {
  const ScreenChoice choice = choice_of(screens, wanted_);
  if (choice.words == dark_) return;
  dark_ = choice.words;
  const QList<QScreen*> all = QGuiApplication::screens();
  if (dark_.empty() && choice.index < all.size()) {
    setScreen(all.at(choice.index));
    setGeometry(all.at(choice.index)->geometry());
    if (isVisible()) showFullScreen();
  } else if (isVisible()) {  // a note on the screen that is left, not all over it
    showNormal();
    resize(640, 120);
  }
  update();
}

void CuttingWindow::open() {
  showFullScreen();
  activateWindow();
}

void CuttingWindow::set_view(CuttingView view) {
  view_ = std::move(view);
  redraw();
}

void CuttingWindow::set_view(CuttingView view, calibration::TableMap map) {
  map_ = std::move(map);
  set_view(std::move(view));
}

void CuttingWindow::redraw() {
  painter_.draw(map_, view_);
  if (devicePixelRatio() != 1.0) {
    update();
    return;
  }
  QRegion changed_pixels;
  for (const QRect& part : painter_.changed()) changed_pixels += part;
  repaint(
      changed_pixels);  // at once, and no more than has changed: a large picture takes its time to the screen
}

void CuttingWindow::paintEvent(QPaintEvent* event) {
  QPainter painter(this);
  painter.setCompositionMode(QPainter::CompositionMode_Source);
  const bool fits = std::lround(width() * devicePixelRatio()) == map_.width &&
                    std::lround(height() * devicePixelRatio()) == map_.height;
  if (!dark_.empty() || !fits) {
    // Never a scaled line: better none than a wrong one.
    painter.fillRect(rect(), Qt::black);
    painter.setPen(Qt::white);
    const QString words =
        dark_.empty() ? tr("This is not the %1 x %2 pixel screen of the calibration: nothing is drawn.")
                            .arg(map_.width)
                            .arg(map_.height)
                      : QString::fromStdString(dark_);
    painter.drawText(rect().adjusted(16, 16, -16, -16), Qt::AlignCenter | Qt::TextWordWrap, words);
    return;
  }
  if (devicePixelRatio() == 1.0) {
    for (const QRect& part : event->region()) painter.drawImage(part, painter_.picture(), part);
    return;
  }
  QImage frame = painter_.picture();
  frame.setDevicePixelRatio(devicePixelRatio());
  painter.drawImage(QPointF(0.0, 0.0), frame);
}

void CuttingWindow::keyPressEvent(QKeyEvent* event) {
  const auto meaning = meaning_of(event->key(), event->modifiers());
  if (!meaning) {
    QWidget::keyPressEvent(event);
    return;
  }
  if (!dark_.empty() && meaning->act != Act::end) return;  // nobody cuts by lines that are not there
  become(after(view_, meaning->act, meaning->pace));
  if (view_.ended || (!dark_.empty() && meaning->act == Act::end)) close();
}

void CuttingWindow::become(CuttingView view) {
  view.seconds = seconds_before_ + 0.001 * static_cast<double>(since_.elapsed());
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
  if (!mat || !is_laying(view_) || !dark_.empty() || !view_.block.empty()) return;
  if (view_.to_find)
    become(after_pointing(view_, *mat));
  else
    held_ = piece_from_mat(view_.laying, *mat);
}

void CuttingWindow::mouseMoveEvent(QMouseEvent* event) {
  const auto mat = mat_at(event->position());
  if (!mat || !held_ || !dark_.empty()) return;
  become(dragged(view_, *mat - mat_from_piece(view_.laying, *held_)));
}

}  // namespace cowlcast::projector
