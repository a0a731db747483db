// The lesson in a window: full screen on the table's projector, or in any window.
//
//   LessonWindow window(view, style);                       // scaled to fit, however large it is made
//   LessonWindow window(view, style, table_stage, *screen); // true size, one pixel to a pixel
//   window.open();
#pragma once

#include <QElapsedTimer>
#include <QImage>
#include <QScreen>
#include <QTimer>
#include <QWidget>
#include <optional>

#include "projector/teaching/lesson.h"

namespace cowlcast::projector {

/// What a key means in a lesson; none for keys without a meaning.
std::optional<LessonAct> lesson_act_of(int key);

class LessonWindow : public QWidget {
 public:
  LessonWindow(LessonView view, FrameStyle style);
  /// Throws calibration::Refusal when the screen's pixels are not those of the stage's map.
  LessonWindow(LessonView view, FrameStyle style, LessonStage stage, QScreen& screen);

  void open();
  const LessonView& view() const { return view_; }
  /// The picture as it is shown.
  const QImage& picture() const { return painter_.picture(); }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void start();
  void redraw();

  LessonView view_;
  FrameStyle style_;
  std::optional<LessonStage> stage_;  // none until the window has a size
  bool on_table_ = false;
  FramePainter painter_;
  QTimer timer_;
  QElapsedTimer since_;
};

}  // namespace cowlcast::projector
