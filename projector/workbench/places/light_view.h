// LightView: the projector's frame in the window, or the simulated table under it.
//
//   view->show_frame(frame);
//   connect(view, &LightView::acted, this, &CuttingPlace::act);
//
// It takes the keys that the projector's own window takes, so that what is learnt here holds at the table.
// The mouse drags the piece, in pixels of the frame.
#pragma once

#include <QImage>
#include <QWidget>
#include <optional>

#include "projector/cutting/view.h"

namespace cowlcast::projector {

class LightView : public QWidget {
  Q_OBJECT

 public:
  explicit LightView(QWidget* parent = nullptr);

  /// One pixel of the projector each.
  void show_frame(const QImage& frame);
  /// In place of the frame, until another frame is shown: the table from above.
  void show_table(const QImage& table);
  bool shows_table() const { return !table_.isNull(); }
  const QImage& frame() const { return frame_; }
  const QImage& table() const { return table_; }

 signals:
  void acted(Act act, Pace pace);
  void dragged(QPointF from, QPointF to);  ///< pixels of the frame
  void let_go();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  QRectF picture_place(const QImage& picture) const;
  std::optional<QPointF> frame_at(const QPointF& position) const;

  QImage frame_, table_;
  std::optional<QPointF> held_;
};

}  // namespace cowlcast::projector
