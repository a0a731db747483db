// The window on the projector's screen: one pixel of the frame to one of the projector.
//
//   CuttingWindow window(map, view, *screen);
//   window.open();
//
// It shows what `CuttingView` says and hands keys and the mouse on to it; it
// decides nothing. Redraws only when the view has changed. When its screen is
// unplugged it goes dark, since lines on another screen would be wrong; when a
// screen of that name and size comes back it is there again.
#pragma once

#include <QImage>
#include <QScreen>
#include <QWidget>
#include <functional>
#include <optional>
#include <string>

#include "projector/cutting/view.h"

namespace cowlcast::projector {

/// The screen of that name or number (from 1, as `screen_list` counts). Throws calibration::Refusal
/// with the list of screens when there is none.
QScreen* screen_named(const std::string& wanted);

/// The screen to use when none is named: `last` when it is there, else the only one with the map's pixels.
/// Throws calibration::Refusal with the list when that does not tell.
QScreen* likely_screen(const std::string& last, const calibration::TableMap& map);

/// "1: HDMI-1, 1920 x 1080; 2: ..."
std::string screen_list();

/// Throws calibration::Refusal when a screen's own pixels are not those of the map.
void check_screen(const QScreen& screen, const calibration::TableMap& map);

/// What a key press means; none for keys without a meaning.
struct KeyMeaning {
  Act act;
  Pace pace = Pace::normal;
};
std::optional<KeyMeaning> meaning_of(int key, Qt::KeyboardModifiers modifiers);

class CuttingWindow : public QWidget {
 public:
  CuttingWindow(calibration::TableMap map, CuttingView view, QScreen& screen);

  /// Full screen on its screen.
  void open();

  const CuttingView& view() const { return view_; }
  void set_view(CuttingView view);

  /// Called after every change of the view by the operator.
  std::function<void(const CuttingView&)> changed;

  /// The frame as it is shown.
  const QImage& frame() const { return frame_; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;

 private:
  void redraw();
  void become(CuttingView view);
  void come_back(QScreen* screen);
  std::optional<Point> mat_at(const QPointF& position) const;

  calibration::TableMap map_;
  CuttingView view_;
  QImage frame_;
  QString screen_name_;
  std::optional<Point> held_;  // the piece's point under the pressed mouse, piece frame
};

}  // namespace cowlcast::projector
