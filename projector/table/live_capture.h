// What a camera on a cable is asked for at the table: the photographs of a calibration, and where it stands.
//
//   LiveCapture capture({.width = 1920, .height = 1080}, folder);
//   while (!capture.done()) {
//     const auto seen = capture.look(frame);                // a photograph is kept when one is taken
//     show(seen.step.show); tell(seen.step.say, seen.step.hints);
//   }
//
//   LiveLocating locating(map);
//   while (!locating.done()) { show(locating.picture()); locating.look(frame); }
//   locate_camera(map, locating.request());
//
// Frames in, pictures and words out: no window, no camera. A look takes some tenths of a second at most.
#pragma once

#include <QImage>
#include <string>
#include <vector>

#include "calibration/camera/capture_session.h"
#include "calibration/camera/frame_source.h"
#include "calibration/camera/locate_camera.h"
#include "calibration/camera/still_frames.h"

namespace cowlcast::projector {

class LiveCapture {
 public:
  /// `folder` is there and takes "photograph-1-target.png" and so on. Throws calibration::Refusal for a
  /// picture that no target fits.
  LiveCapture(const calibration::CaptureSettings& settings, std::string folder);

  struct Seen {
    calibration::CaptureStep step;
    std::string taken = {};  ///< the name of the photograph that this frame became; empty: none
  };
  /// Throws drafting::Refusal when a photograph cannot be kept.
  Seen look(const calibration::CameraFrame& frame);

  bool done() const { return session_.done(); }
  const std::vector<std::string>& files() const { return files_; }

 private:
  calibration::CaptureSession session_;
  std::string folder_;
  calibration::ShownPicture shown_ = calibration::ShownPicture::target;
  std::vector<std::string> files_;
};

class LiveLocating {
 public:
  explicit LiveLocating(const calibration::TableMap& map);

  /// What is to be shown now: target, plain light, darkness.
  const QImage& picture() const { return pictures_[static_cast<size_t>(still_.wanted())]; }
  void look(const calibration::CameraFrame& frame);
  /// Something moves: stand clear of the light.
  bool disturbed() const { return still_.disturbed(); }
  bool done() const { return still_.done(); }
  /// Once done.
  calibration::LocateRequest request() const;

 private:
  std::vector<QImage> pictures_;
  calibration::StillFrames still_;
};

}  // namespace cowlcast::projector
