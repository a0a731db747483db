// LiveCamera: a camera looked at beside the window, frame by frame.
//
//   LiveCamera live({.spec = "0"}, open_camera,
//                   [&] { return [view = view_](const LiveCamera::Glance& seen) { look(seen, view); }; },
//                   [&](std::exception_ptr failed) { show(); });
//
// In turn, and never two at once: `prepare` in the window's thread, which takes along what looking needs; the
// look in a thread of its own; `then` in the window's again. So `prepare` and `then` may touch what the look
// touches. Opening and closing the camera wait for nothing in the window either.
#pragma once

#include <QTimer>
#include <memory>
#include <optional>
#include <string>

#include "calibration/camera/frame_source.h"
#include "projector/showing/aside.h"

namespace cowlcast::projector {

class LiveCamera {
 public:
  struct Glance {
    std::optional<calibration::CameraFrame> frame;  ///< the newest; none: none has come since
    std::string complaint;                          ///< why none comes; empty: it is only a moment
    std::string remark;                             ///< as of the camera
    bool ended = false;                             ///< a film that has been seen to its end
  };
  using Look = std::function<void(const Glance&)>;

  LiveCamera(const calibration::CameraRequest& request, calibration::OpenCamera open,
             std::function<Look()> prepare, Aside::Done then);
  /// Waits for a look that is under way; the camera is closed a little later.
  ~LiveCamera();

  /// No look more; `then` is not called again.
  void stop();

 private:
  void look();

  std::shared_ptr<calibration::CameraFeed> feed_;
  std::function<Look()> prepare_;
  Aside::Done then_;
  QTimer timer_;
  Aside aside_;  // last: it ends before what it uses
};

}  // namespace cowlcast::projector
