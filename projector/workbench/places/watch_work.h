// WatchWork: a camera that stays watches while she cuts, and how that stands is said beside the light.
//
//   auto* watch = new WatchWork({.view = ..., .frame = ..., .show = ...});
//   watch->follow(project.table, shown);    // after every change: begins, goes on or ends
//
// What the camera has learnt of the table is kept while the program runs, as long as calibration and camera
// are the same: closing the projector's window and opening it again asks for no new learning, and a move
// meanwhile shows. Of another piece's cloth nothing is known until the camera learns it.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <atomic>
#include <memory>

#include "projector/cutting/live_watch.h"
#include "projector/project/project.h"
#include "projector/table/simulated_camera.h"

namespace cowlcast::projector {

class WatchWork : public QWidget {
  Q_OBJECT

 public:
  explicit WatchWork(ShownLines lines);

  /// `shown`: the lines are in the light now, so there is something to watch.
  void follow(const TableChoice& table, bool shown);
  /// Before what `lines` speaks of goes. What is learnt stays.
  void end();
  /// Another piece, so other cloth: ends until it is followed again.
  void forget_cloth();

  bool wanted() const { return wanted_; }
  void want(bool watch);
  bool watching() const { return live_ != nullptr; }
  WatchStanding standing() const;
  QString words() const { return state_->text(); }
  /// What is on the simulated table while its camera watches it; else null.
  SimulatedCamera* simulated() const { return live_ ? simulated_.get() : nullptr; }

 signals:
  void asked();         ///< the camera is to learn, or to look again
  void changed();       ///< whether it watches, or wants to
  void begun();         ///< the simulated table can be laid
  void ended();         ///< nobody watches any more: what the watch put into the view is to go
  void to_the_table();  ///< where a camera's place is found
  void table_found(const calibration::TableMap& map, const calibration::FixedCamera& camera);

 private:
  void begin(const TableChoice& table);
  void show_state();

  ShownLines lines_;
  QLabel* state_;
  QPushButton *watch_, *sound_, *look_, *bump_, *place_;
  bool wanted_ = false, known_ = false;
  std::shared_ptr<std::atomic<bool>> with_sound_ = std::make_shared<std::atomic<bool>>(false);
  std::string basis_;  // calibration and camera that the next is of
  std::unique_ptr<Watching> watching_;
  std::unique_ptr<SimulatedCamera> simulated_;
  std::unique_ptr<LiveWatch> live_;  // before what it looks at goes
  QTimer timer_;
  QString told_;
};

}  // namespace cowlcast::projector
