// Backdrop: how the bare cloth looks to the camera, learnt before anything lies on it.
//
//   Backdrop backdrop(sight);
//   for (...) backdrop.learn(frame, Backdrop::Light::none);    // the projector black
//   for (...) backdrop.learn(frame, Backdrop::Light::full);    // the projector white
//   if (auto why = backdrop.not_ready()) tell(*why);
//
// Two kinds of frames part the light: what the room gives, and what the projector
// gives at most. From them the look under any picture is foretold. Everything is
// in linear light of the camera, undone by the curve of IEC 61966-2-1 (sRGB),
// 0 to 1. A cloth that is moved afterwards must be learnt anew.
#pragma once

#include <opencv2/core.hpp>
#include <optional>
#include <string>

#include "projector/guard/strip.h"

namespace cowlcast::projector {

/// The look of a strip's cells: three floats a cell each.
struct Look {
  cv::Mat room;       ///< linear light under the room's light alone
  cv::Mat projector;  ///< what the projector's full light adds
  cv::Mat known;      ///< 255 where both were learnt
};

class Backdrop {
 public:
  enum class Light { none, full };

  explicit Backdrop(const TableSight& sight);

  /// A frame of the bare cloth, 8-bit BGR of the camera's size. Throws calibration::Refusal for another size.
  void learn(const cv::Mat& frame, Light light);

  /// Why nothing can be watched by it yet, cause and cure; nothing when it can.
  std::optional<std::string> not_ready() const;

  Look look_of(const Strip& strip) const;
  const TableSight& sight() const { return sight_; }

  /// Noise of a cell at an 8-bit level, one standard deviation, levels.
  float noise(int level) const;

  /// The last frame under full light, grey, for telling whether the camera still looks at the same places.
  const cv::Mat& still() const { return still_; }

 private:
  struct Sum {
    cv::Mat light, last;
    int frames = 0;
  };
  static constexpr double kCell = 1.5;
  static constexpr int kBins = 16;

  TableSight sight_;
  Point low_;
  StripView view_;
  Sum sums_[2];
  double squares_[kBins] = {}, counts_[kBins] = {};
  cv::Mat still_;
};

/// Linear light of 8-bit levels, and the level of linear light (held at 0 and 1).
const cv::Mat& linear_table();
float level_of(float linear);

}  // namespace cowlcast::projector
