// The window on the projector's screen: one pixel of the frame to one of the projector.
//
//   CuttingWindow window(map, view, *screen);
//   window.open();
//
// It shows what `CuttingView` says and hands keys on to it; it decides nothing.
// Redraws only when the view has changed.
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

  /// The frame as it is shown.
  const QImage& frame() const { return frame_; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void redraw();

  calibration::TableMap map_;
  CuttingView view_;
  QImage frame_;
};

}  // namespace cowlcast::projector
