// LiveWatch: a camera's frames to those who watch the table, and what they say to the window.
//
//   LiveWatch live(window, {.spec = "0", .width = 1280, .height = 720}, Watching(TableWatch(map, camera)));
//   QApplication::exec();
//   live.rethrow();
#pragma once

#include <QTimer>
#include <exception>
#include <functional>

#include "calibration/camera/frame_source.h"
#include "projector/cutting/watching.h"
#include "projector/cutting/window.h"

namespace cowlcast::projector {

class LiveWatch {
 public:
  /// `open` as of FrameSource.
  LiveWatch(CuttingWindow& window, const calibration::CameraRequest& request, Watching watching,
            calibration::OpenCamera open = calibration::open_camera);

  const Watching& watching() const { return watching_; }

  /// Called when the table was found again at another place.
  std::function<void(const TableWatch&)> found_again;

  /// What went wrong within Qt's loop, which is left then.
  void rethrow() const;

 private:
  void look();

  CuttingWindow& window_;
  Watching watching_;
  calibration::CameraFeed feed_;
  int found_ = 0;
  std::exception_ptr failed_;
  QTimer timer_;
};

}  // namespace cowlcast::projector
