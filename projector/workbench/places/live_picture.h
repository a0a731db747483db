// LivePicture: what the camera sees, with what to do, and how much of the light is in its view.
#pragma once

#include <QWidget>

#include "projector/workbench/places/camera_work.h"

namespace cowlcast::projector {

class LivePicture : public QWidget {
  Q_OBJECT

 public:
  explicit LivePicture(QWidget* parent = nullptr);
  void show_sight(const CameraSight& sight);
  /// No picture comes, and why.
  void show_trouble(const QString& words);
  const CameraSight& sight() const { return sight_; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void paint_thirds(QPainter& painter, const QRectF& place) const;

  CameraSight sight_;
  QString trouble_;
};

}  // namespace cowlcast::projector
