// QuietWheel: the mouse wheel scrolls, and never changes a value.
//
//   qApp->installEventFilter(new QuietWheel(window));
//
// Number boxes, lists to choose from and sliders let the wheel through to the panel they stand in, whether
// they have the focus or not: the garment is changed on purpose only.
#pragma once

#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QEvent>
#include <QScrollBar>

namespace cowlcast::projector {

class QuietWheel : public QObject {
 public:
  using QObject::QObject;

  bool eventFilter(QObject* to, QEvent* event) override {
    if (event->type() != QEvent::Wheel || !holds_value(to)) return false;
    event->ignore();  // its parent is asked next
    return true;
  }

 private:
  static bool holds_value(const QObject* one) {
    if (qobject_cast<const QScrollBar*>(one) != nullptr) return false;
    return qobject_cast<const QAbstractSpinBox*>(one) != nullptr ||
           qobject_cast<const QComboBox*>(one) != nullptr ||
           qobject_cast<const QAbstractSlider*>(one) != nullptr;
  }
};

}  // namespace cowlcast::projector
