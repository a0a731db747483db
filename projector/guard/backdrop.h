// Backdrop: how the bare cloth looks to the camera, learnt before anything lies on it.
//
//   Backdrop backdrop(sight);
//   for (...) backdrop.learn(frame, Backdrop::Light::none);    // the projector black
//   for (...) backdrop.learn(frame, Backdrop::Light::full);    // the projector white
//   for (...) backdrop.learn(frame, Backdrop::Light::faint);   // it shows the grey `kFaint`
//   if (auto why = backdrop.not_ready()) tell(*why);
//
// Dark and white frames part the light: what the room gives, and what the projector
// gives at most. A grey tells how its light grows with a picture's levels, and how
// strong it is where the full light is too much for the camera; without it the usual
// power of 2.2 is taken. So the look under any picture is foretold. Everything is
// in linear light of the camera, undone by the curve of IEC 61966-2-1 (sRGB),
// 0 to 1, and kept pixel by pixel, so that what is compared later was seen through
// the same pixels. A cloth that is moved afterwards must be learnt anew.
#pragma once

#include <opencv2/core.hpp>
#include <optional>
#include <string>

#include "projector/guard/strip.h"

namespace cowlcast::projector {

/// The look of some places: three floats each.
struct Look {
  cv::Mat room;       ///< linear light under the room's light alone
  cv::Mat projector;  ///< what the projector's full light adds
  cv::Mat told;       ///< 8-bit: 255 where that light was not too much for the camera, or the grey tells it
};

class Backdrop {
 public:
  enum class Light { none, full, faint };
  static constexpr int kFaint = 96;  ///< 8-bit level

  explicit Backdrop(const TableSight& sight);

  /// A frame of the bare cloth, 8-bit BGR of the camera's size. Throws calibration::Refusal for another size.
  void learn(const cv::Mat& frame, Light light);

  /// Why nothing can be watched by it yet, cause and cure; nothing when it can.
  std::optional<std::string> not_ready() const;

  /// The look of the camera's pixels within `box`. The backdrop must be ready.
  Look look(const cv::Rect& box) const;
  /// Light sent is a picture's level to this power.
  double power() const;
  const TableSight& sight() const { return sight_; }

  /// Noise of a pixel at an 8-bit level, one standard deviation, levels.
  float noise(int level) const;
  /// The same as linear light, at that linear light.
  float linear_noise(float light) const;
  /// What is left of it in the means over some pixels by which a strip's cells are told.
  float smoothed_noise(float light) const;

  /// The last frame under full light, grey, for telling whether the camera still looks at the same places.
  const cv::Mat& still() const { return still_; }

 private:
  cv::Mat told() const;
  void compare_smoothed(const cv::Mat& frame, const cv::Mat& last);

  struct Sum {
    cv::Mat light, last;
    int frames = 0;
  };
  static constexpr int kBins = 16;

  TableSight sight_;
  cv::Mat watched_;  // 255 at the camera's pixels that see the light
  Sum sums_[3];
  double squares_[kBins] = {}, counts_[kBins] = {};
  double smoothed_[2] = {};  // squares of pixels' differences, and of means'
  cv::Mat still_;
};

/// Linear light of 8-bit frames, and the level of linear light (held at 0 and 1).
cv::Mat linear_light(const cv::Mat& frame);
float level_of(float linear);

}  // namespace cowlcast::projector
