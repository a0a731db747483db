// StillFrames: a few frames each of several pictures, shown in turn on a table where nothing moves.
//
//   StillFrames still({.pictures = 3});
//   while (!still.done()) {
//     show(still.wanted());                    // the first, the second, the third
//     still.look(frame, seconds);
//     if (still.disturbed()) tell("Keep out of the light.");
//   }
//   use(still.frames(0));
//
// After each change it waits for projector and camera to have followed. A frame in which something moves
// begins the present picture anew, so the frames of a picture are of one scene.
#pragma once

#include <opencv2/core.hpp>
#include <vector>

namespace cowlcast::calibration {

/// A frame made small, as changes are looked for in it: 32-bit float, the levels of `grey`.
cv::Mat small_frame(const cv::Mat& grey);

/// The largest change of any part between two small frames, levels; the camera's own changes of exposure
/// are taken out. 255 when the two cannot be compared.
double largest_change(const cv::Mat& before, const cv::Mat& small);

struct StillSettings {
  int pictures = 1;
  int frames = 8;               ///< of each
  double settle_seconds = 0.8;  ///< from a change of the picture until frames count
};

class StillFrames {
 public:
  explicit StillFrames(const StillSettings& settings);

  /// The number, from 0, of the picture that has to be shown; the last one once all is done.
  int wanted() const;
  bool done() const;

  /// One frame, 8-bit grey, at `seconds` on a clock that does not go back.
  void look(const cv::Mat& grey, double seconds);

  /// Something moved within the last moments.
  bool disturbed() const { return disturbed_; }

  const std::vector<cv::Mat>& frames(int picture) const { return taken_[static_cast<size_t>(picture)]; }

 private:
  StillSettings settings_;
  std::vector<std::vector<cv::Mat>> taken_;  // of each picture
  size_t now_ = 0;
  double since_ = -1.0;  // of the change, or of the last motion; below 0: not begun
  double needed_ = 0.0;  // seconds of rest before frames count
  bool disturbed_ = false;
  cv::Mat first_;  // small, of the present picture's first frame that counts
};

}  // namespace cowlcast::calibration
