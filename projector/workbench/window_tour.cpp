// The tour in the window: who does what it asks for.
#include "projector/workbench/places/cutting_place.h"
#include "projector/workbench/places/table_place.h"
#include "projector/workbench/window.h"

namespace cowlcast::projector {

void WorkbenchWindow::build_tour() {
  tour_ = new TourBar;
  tour_->setVisible(on_tour_);
  connect(tour_, &TourBar::went_on, this, &WorkbenchWindow::go_on_with_tour);
  connect(tour_, &TourBar::left, this, [this] {
    on_tour_ = false;
    tour_->hide();
  });
  for (Workplace* place : places_)
    if (auto* table = qobject_cast<TablePlace*>(place))
      connect(table, &TablePlace::busy_changed, this, &WorkbenchWindow::show_tour);
}

void WorkbenchWindow::offer_tour() {
  if (!settings_.window_place().isEmpty() || notice_->isVisible()) return;
  notice_->offer(
      tr("New here? A tour of two minutes goes from an empty project to the first stroke cut by light, on a "
         "simulated table. It needs no projector; you find it in the Help menu, too."),
      tr("Take the tour"), [this] { take_tour(); });
}

void WorkbenchWindow::take_tour() {
  if (!may_leave()) return;
  notice_->clear();
  Project project;
  project.name = tr("Tour").toStdString();
  project.cloth.colours = {0xff8a3a4c};
  on_tour_ = true;
  document_.start_new(project);
  go_to(Place::table);
  tour_->show();
  tour_->offer()->setFocus();
}

void WorkbenchWindow::show_tour() {
  if (!on_tour_) return;
  const auto& table = dynamic_cast<TablePlace&>(workplace(Place::table));
  const TourTask task = tour_task(document_.project(), garment_.now());
  const bool at_end = task == TourTask::end && tour_->task() != task;
  // How far off the lines are is to be seen before one goes on from the table.
  const bool calibrated = task == TourTask::base && current_ == Place::table;
  tour_->show_task(task, current_ == place_of(task), table.busy(),
                   calibrated ? table.result_in_words() : QString());
  // The space bar goes on with the strokes, and does not press what is left of the tour.
  if (at_end && current_ == Place::cutting)
    dynamic_cast<CuttingPlace&>(workplace(Place::cutting)).light().setFocus();
}

void WorkbenchWindow::go_on_with_tour(TourTask task) {
  if (current_ != place_of(task)) return go_to(place_of(task));
  auto& table = dynamic_cast<TablePlace&>(workplace(Place::table));
  switch (task) {
    case TourTask::photograph:
      return table.lay_out_simulated_table();
    case TourTask::calibrate:
      return table.calibrate();
    case TourTask::base:
      return document_.change(tr("Size 8").toStdString(), [](Project& project) {
        project.pattern.source = PatternSource::size;
        project.pattern.size = std::string("8");
      });
    case TourTask::drape:
      return document_.change(tr("A longer drape").toStdString(),
                              [](Project& project) { project.cowl.drape = 540.0; });
    case TourTask::cut:
      return dynamic_cast<CuttingPlace&>(workplace(Place::cutting)).act(Act::next);
    case TourTask::end:
      break;
  }
}

}  // namespace cowlcast::projector
