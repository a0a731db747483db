// LiveWatch: a camera's frames to those who watch the table, and what they say to who shows the view.
//
//   Watching watching(TableWatch(map, camera));
//   LiveWatch live(lines_of(window), {.spec = "0", .width = 1280, .height = 720}, watching);
//   QApplication::exec();
//   live.rethrow();
//
// All looking and learning is done in a thread of its own: it gets a frame with the view as it is then, and
// what it says is said of the view as it is when it is done. So neither a key nor a line waits for it, and no
// key is lost. `watching` outlives this and is not to be touched meanwhile: what it has learnt stays with it
// when the window is closed, and counts when it is opened again.
#pragma once

#include <exception>
#include <functional>

#include "calibration/camera/frame_source.h"
#include "projector/cutting/watching.h"
#include "projector/cutting/window.h"
#include "projector/showing/live_camera.h"

namespace cowlcast::projector {

/// Who shows the view: the window on the projector, or the workbench for the simulated table.
struct ShownLines {
  std::function<CuttingView()> view;
  std::function<QImage()> frame;  ///< the projector's picture
  std::function<void(CuttingView, const calibration::TableMap&)> show;
};
ShownLines lines_of(CuttingWindow& window);

/// A short sound, asked for by any thread.
void beep_soon();

class LiveWatch {
 public:
  /// `open` as of FrameSource.
  LiveWatch(ShownLines lines, const calibration::CameraRequest& request, Watching& watching,
            calibration::OpenCamera open = calibration::open_camera);

  /// How the watch of the table stands, as last said.
  const WatchStanding& standing() const { return standing_; }

  /// Called when the table was found again at another place.
  std::function<void(const TableWatch&)> found_again;
  /// Called when something went wrong; nobody watches from then on.
  std::function<void()> ended;

  /// What went wrong.
  void rethrow() const;

 private:
  void take_in(const std::exception_ptr& failed);

  ShownLines lines_;
  Watching& watching_;
  int found_ = 0;
  WatchStanding standing_;
  std::exception_ptr failed_;
  LiveCamera camera_;  // last: it ends before what it uses
};

}  // namespace cowlcast::projector
