// Expectation: what the bare cloth should look like now, and which cells of a strip do not look like it.
//
//   Expectation expectation(backdrop, strip);
//   expectation.project(light_strip(view, picture), now);
//   Compared seen = expectation.compare(camera_strip(view, frame), now);
//   seen.foreign;         // 255 where something else than the cloth is seen
//
// Room light and the camera's exposure may change at any time: both are measured
// anew in every frame from the cloth itself, over the strip as a whole and, more
// gently, place by place. A cell is explained when its colour lies, within noise,
// between the darkest and the lightest that the cloth within 3 mm would show
// under the picture within 4 mm, or without any of the projector's light: the
// shadow of a hand. For a third of a second after the picture has changed, the old
// one explains as well. A patch that is merely dimmer than the cloth is foreign
// only where its rim is sharp: shadows of the room's light are soft.
#pragma once

#include <array>
#include <opencv2/core.hpp>
#include <vector>

#include "projector/guard/backdrop.h"

namespace cowlcast::projector {

struct Compared {
  cv::Mat foreign;        ///< 8-bit, 255 or 0
  cv::Mat excess;         ///< how far off a cell is, over what counts as different: floats up to 4
  double strength = 1.0;  ///< brightness of the room's light as the camera shows it, over what was learnt
  double foreign_share = 0.0;  ///< of the known cells
};

class Expectation {
 public:
  Expectation(const Backdrop& backdrop, const Strip& strip);

  /// From now on the strip gets this light (as of `light_strip`).
  void project(const CellLight& light, double seconds);

  /// `cells` as of `camera_strip`. The light is measured from `first_column` on, where no cutter and hand are
  /// expected; with too little left there it is taken to be as it was.
  Compared compare(const cv::Mat& cells, double seconds, int first_column);

  /// Whether the picture has changed so lately that the camera may not have seen it yet.
  bool settling(double seconds) const;

  const cv::Mat& known() const { return look_.known; }

 private:
  // True when the present picture, not the one before, explains the cells better; also when none does.
  bool fit_gains(const cv::Mat& linear, const std::vector<const cv::Mat*>& pictures, const cv::Mat& even,
                 int first_column);
  void fit_field(const cv::Mat& linear, const cv::Mat& even, const cv::Mat& picture);
  void drop_soft_shadows(cv::Mat& foreign, const cv::Mat& share, const cv::Mat& dusky) const;

  Look look_;
  CellLight room_, full_;       // of the cloth within a cell's neighbourhood
  cv::Mat even_, even_before_;  // 255 where no line of the picture is near
  CellLight now_, before_;      // of the projected light
  double changed_ = -1e9;
  std::array<float, 256> slack_{};  // what counts as different at a level, levels
  std::array<double, 3> room_gain_{1.0, 1.0, 1.0}, beam_gain_{1.0, 1.0, 1.0};
  cv::Mat field_;    // local gain, one float a cell
  cv::Mat foreign_;  // of the last frame, grown
};

}  // namespace cowlcast::projector
