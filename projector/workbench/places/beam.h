// Beam: pictures on the projector, whichever table it stands over.
//
//   beam.show(target, project.table);       // full screen; Escape there puts it out
//   beam.onto(simulated_camera);            // from now on: on the simulated table
//
// Which screen is the projector is remembered on this machine; the project says how many pixels it has.
#pragma once

#include <QImage>
#include <functional>
#include <memory>

#include "projector/project/project.h"
#include "projector/showing/picture_window.h"
#include "projector/table/simulated_camera.h"

namespace cowlcast::projector {

class Beam {
 public:
  /// Throws calibration::Refusal when it is not said which screen the projector is, or it is not plugged in.
  void show(const QImage& picture, const TableChoice& table);
  /// Nothing is shown any more.
  void off();
  /// It was shown, and was put out by Escape.
  bool put_out() const { return window_ && !window_->isVisible(); }

  /// The simulated table's projector instead of a screen; null: a screen again.
  void onto(SimulatedCamera* table) { simulated_ = table; }

  /// Called with Qt's key pressed over the picture, Escape left out.
  std::function<void(int)> key;

 private:
  std::unique_ptr<PictureWindow> window_;
  SimulatedCamera* simulated_ = nullptr;
};

}  // namespace cowlcast::projector
