// CaptureSession: takes the photographs for a calibration with a live camera, by itself.
//
//   CaptureSession session({.width = 1920, .height = 1080});
//   while (!session.done()) {
//     const CaptureStep step = session.look(frame, seconds);   // newest frame, grey
//     show(step.show);                                         // target or plain light, full screen
//     if (step.take) keep(frame);
//     tell(step.say, step.hints);
//   }
//
// A state machine: frames in, wishes out; it opens no camera and shows no window.
// From each side it takes one photograph under the target and one under plain
// light, each when picture and camera have stood still for half a second, and only
// of frames that a calibration can use: sheets in view, sharp, neither burnt out
// nor dark. What is missing is said in hints.
#pragma once

#include <array>
#include <opencv2/core.hpp>
#include <string>
#include <vector>

namespace cowlcast::calibration {

struct CaptureSettings {
  int width = 0, height = 0;    ///< projector picture, pixels
  int sides = 2;                ///< places to photograph from
  bool fixed = false;           ///< the camera stands still: nobody is asked to carry it to another side
  double steady_seconds = 0.5;  ///< without motion before a photograph
  double settle_seconds = 0.5;  ///< after the picture changed, before frames count: projectors are slow
};

enum class ShownPicture { target, plain };

/// What one frame shows, for hints.
struct FrameAppraisal {
  int sheets = 0;
  double edge_width = 0.0;   ///< of the sheets' corners, pixels from dark to light: 2 is sharp, 5 is blurred
  double contrast = 0.0;     ///< levels between the sheets' dark and light
  double burnt = 0.0;        ///< share of the sheets' light parts that is at the camera's end
  bool light_found = false;  ///< the target is read: the two lines below mean something
  std::array<double, 3>
      light_seen{};                ///< share of the target that is in view: its left, middle and right third
  std::array<bool, 3> sheet_in{};  ///< a sheet lies in that third of the light
};

struct CaptureStep {
  ShownPicture show = ShownPicture::target;
  bool take = false;  ///< this frame is to be kept
  std::string say;    ///< what the person should do now
  std::vector<std::string>
      hints;            ///< what would make the photographs better; the first may be what is waited for
  FrameAppraisal seen;  ///< when last looked at closely; of no sheets before
};

/// Of an 8-bit grey frame; `target_shown` looks for the target as well.
FrameAppraisal appraise(const cv::Mat& grey, const CaptureSettings& settings, bool target_shown);

class CaptureSession {
 public:
  /// Throws Refusal for a picture that no target fits (see `target_layout`).
  explicit CaptureSession(const CaptureSettings& settings);

  /// One frame, 8-bit grey, at `seconds` on a clock that does not go back.
  CaptureStep look(const cv::Mat& grey, double seconds);

  bool done() const { return side_ >= settings_.sides; }
  int taken() const { return taken_; }

 private:
  enum class Phase { settling, steadying, leaving };

  CaptureSettings settings_;
  Phase phase_ = Phase::settling;
  ShownPicture shown_ = ShownPicture::target;
  int side_ = 0, taken_ = 0;
  double since_ = -1.0;      // of the phase, or of the last motion; below 0: not begun
  double appraised_ = -1.0;  // when the last appraisal was made
  cv::Mat before_, left_;    // small pictures: of the frame before; of the side that is to be left
  std::vector<std::string> blocking_, advice_;
  FrameAppraisal seen_;
};

}  // namespace cowlcast::calibration
