// The window on the projector's screen: one pixel of the frame to one of the projector.
//
//   CuttingWindow window(map, view, *screen);
//   window.open();
//
// It shows what `CuttingView` says and hands keys and the mouse on to it; it
// decides nothing. Redraws only when the view has changed. When its screen is
// unplugged, or set to other pixels, it says so on whatever screen is left and
// takes no strokes, since lines there would be wrong; when the screen is back, so
// are the lines.
#pragma once

#include <QElapsedTimer>
#include <QImage>
#include <QScreen>
#include <QWidget>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "projector/cutting/screens.h"
#include "projector/cutting/view_marks.h"

namespace cowlcast::projector {

/// The screen of that name or number (from 1, as `screen_list` counts). Throws calibration::Refusal
/// with the list of screens when there is none.
QScreen* screen_named(const std::string& wanted);

/// The screen to use when none is named, as `likely_index` says. Throws calibration::Refusal with the list
/// when that does not tell.
QScreen* likely_screen(const std::string& last, const calibration::TableMap& map);

/// All screens that are plugged in, in the order of their numbers.
std::vector<ScreenSeen> screens_seen();

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
  /// The same by another map, of the same size.
  void set_view(CuttingView view, calibration::TableMap map);

  /// Called after every change of the view by the operator.
  std::function<void(const CuttingView&)> changed;

  /// The frame as it is shown.
  const QImage& frame() const { return painter_.picture(); }

  /// Looks where to draw among the screens that are plugged in. Called by itself when they change.
  void look_at(const std::vector<ScreenSeen>& screens);

  /// Why no lines are drawn, in words; empty when they are.
  const std::string& dark() const { return dark_; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;

 private:
  void redraw();
  void become(CuttingView view);
  void watch(QScreen* screen);
  std::optional<Point> mat_at(const QPointF& position) const;

  calibration::TableMap map_;
  CuttingView view_;
  ViewPainter painter_;
  ScreenSeen wanted_;
  std::string dark_;
  double seconds_before_ = 0.0;  // at the table in earlier sittings
  QElapsedTimer since_;
  std::optional<Point> held_;  // the piece's point under the pressed mouse, piece frame
};

}  // namespace cowlcast::projector
