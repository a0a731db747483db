// How far a small part of a picture has moved since it was learnt, to a few hundredths of a pixel.
//
//   PatchTracker tag = PatchTracker::of_print(mean_frame, box);
//   PatchTracker mark = PatchTracker::of_light(dark, plain, marked, box);
//   if (auto moved = tag.track(frame, {0, 0})) use(moved->shift);
//
// A print moves as a whole. A mark of light moves over a ground that stays where
// it is: the frame is then that ground, and the mark's light at a shifted place
// as the ground sends it back; so the mat's own print does not hold the mark back. Both are fitted by least
// squares, after B. D. Lucas and T. Kanade, "An iterative image registration technique" (1981). Brightness
// and contrast are free. A patch that something covers does not fit, and says nothing.
#pragma once

#include <Eigen/Core>
#include <opencv2/core.hpp>
#include <optional>
#include <vector>

namespace cowlcast::calibration {

/// Linear light of an 8-bit sRGB level, 0 to 1.
float light_of_level(unsigned char level);

/// A picture as linear light, 32-bit float; `grey` 8-bit.
cv::Mat linear_light(const cv::Mat& grey);

struct PatchShift {
  Eigen::Vector2d shift = Eigen::Vector2d::Zero();  ///< from where it was learnt, pixels
  double misfit = 0.0;                              ///< what the fit leaves, over the patch's own contrast
};

class PatchTracker {
 public:
  static constexpr int kReach =
      12;  ///< pixels to each side that a mark's ground is known; its shifts end there

  /// A printed patch, from a mean of frames as linear light. `box` lies wholly in it.
  static PatchTracker of_print(const cv::Mat& light, const cv::Rect& box);

  /// A mark of light, from means of frames without projector light, with plain light, and with the marks.
  /// `box` grown by kReach lies wholly in them.
  static PatchTracker of_light(const cv::Mat& dark, const cv::Mat& plain, const cv::Mat& marked,
                               const cv::Rect& box);

  /// A mark's light without its ground, to be looked for in pictures of such light: marked less dark, over
  /// plain less dark. There is no limit to its shifts then.
  PatchTracker light_alone() const;

  /// The shift found in a frame, 8-bit grey or linear light, from a first guess that is right within a few
  /// pixels. Nothing when the patch is covered, has left the frame, or does not look as learnt.
  std::optional<PatchShift> track(const cv::Mat& frame, const Eigen::Vector2d& guess) const;

  /// A first guess within `reach` pixels of `about`, by correlation: for patches that were lost.
  std::optional<Eigen::Vector2d> search(const cv::Mat& frame, const Eigen::Vector2d& about, int reach) const;

  /// Contrast as learnt: standard deviation of the patch's light, 0 to 1 is black to white.
  double contrast() const { return contrast_; }
  /// Largest misfit that is believed.
  double believed = 0.35;

  const cv::Rect& box() const { return box_; }

 private:
  void finish();

  cv::Rect box_;
  bool light_ = false;
  cv::Mat pattern_, slope_x_, slope_y_;  // of the box; float
  cv::Mat ground_, answer_;              // of the box grown by kReach: light that its ground sends back
  double contrast_ = 0.0;
};

}  // namespace cowlcast::calibration
