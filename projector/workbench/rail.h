// Rail: the way from place to place, with what each still lacks.
#pragma once

#include <QAbstractButton>
#include <QWidget>
#include <optional>
#include <vector>

#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

class RailButton : public QAbstractButton {
  Q_OBJECT

 public:
  RailButton(Place place, const QKeySequence& key);
  /// Nothing missing: none.
  void show_missing(const std::optional<Missing>& missing);
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void enterEvent(QEnterEvent* event) override;
  void leaveEvent(QEvent* event) override;

 private:
  Icon icon_;
  QString tip_, missing_;  // in brief
};

class Rail : public QWidget {
  Q_OBJECT

 public:
  explicit Rail(const std::vector<Workplace*>& places);
  void show_current(size_t place);
  void show_missing(const std::vector<Missing>& missing);
  RailButton* button(size_t place) const { return buttons_.at(place); }

 signals:
  void chosen(size_t place);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  std::vector<Workplace*> places_;
  std::vector<RailButton*> buttons_;
};

}  // namespace cowlcast::projector
