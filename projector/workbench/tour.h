// The tour: from nothing to a projected cut line, on the simulated table, in about two minutes.
//
//   const TourTask task = tour_task(document.project(), garment.now());
//   bar->show_task(task, at_its_place, busy);   // its words, and a button that goes there, then does it
//
// Where one stands follows from the project alone, so the tour goes on after undoing, after a crash, and when
// things are done in another order.
#pragma once

#include <QFrame>
#include <QLabel>
#include <QPushButton>

#include "projector/project/derive.h"

namespace cowlcast::projector {

enum class TourTask {
  photograph,  ///< have the simulated table photographed
  calibrate,   ///< and calibrated
  base,        ///< choose a base
  drape,       ///< open the cowl
  cut,         ///< cut the first stroke
  end,
};

/// What is to be done next. A table of one's own serves as well as the simulated one.
TourTask tour_task(const Project& project, const Garment& garment);

Place place_of(TourTask task);
/// What to do and why, a sentence or two.
QString words_of(TourTask task);
/// Of the button that does it.
QString offer_of(TourTask task);

/// Stands over the places while the tour is on. What was done stays in sight until the person goes on.
class TourBar : public QFrame {
  Q_OBJECT

 public:
  explicit TourBar(QWidget* parent = nullptr);

  /// `there`: the task's place is in sight. `busy`: it is being done, so that nothing is offered.
  /// `result`: of the task before, said first; empty: none.
  void show_task(TourTask task, bool there, bool busy, const QString& result = {});
  TourTask task() const { return task_; }
  QPushButton* offer() const { return offer_; }

 signals:
  void went_on(TourTask task);  ///< the button was pressed
  void left();

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  TourTask task_ = TourTask::end;
  QLabel *count_, *words_;
  QPushButton *offer_, *leave_;
};

}  // namespace cowlcast::projector
