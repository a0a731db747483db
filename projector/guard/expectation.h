// Expectation: what the bare cloth should look like now, and which cells of a strip do not look like it.
//
//   Expectation expectation(backdrop, view, box);
//   expectation.project(light_strip(view, picture));
//   Compared seen = expectation.compare(linear, meter.measure(linear, false), Pictures::now);
//   seen.foreign;         // 255 where something else than the cloth is seen
//
// A cell is explained when its colour lies, within noise, between the darkest and
// the lightest that the cloth within 0.75 mm would show under the picture within
// 1.5 mm; where a print shows that the cloth has been dragged (`Slip`), the cloth as it lies now. Room light
// falls off softly, so a cell may also be dimmer than that, in all colours alike, down to `kDarkestShadow`:
// what is dimmer than its own neighbourhood over a sharp edge is foreign all the same. So is what the
// projector's light does not reach, unless something else that is foreign is beside it, and the way from
// there to the projector leads over that, or out of the strip.
#pragma once

#include <opencv2/core.hpp>
#include <optional>
#include <vector>

#include "projector/guard/light_meter.h"
#include "projector/guard/slip.h"

namespace cowlcast::projector {

/// Which of the projected pictures the camera may have seen.
enum class Pictures { now, before, either };

struct Compared {
  cv::Mat foreign;  ///< 8-bit, 255 or 0
  cv::Mat excess;   ///< how far off a cell is, over what counts as different: floats up to 4
  cv::Mat sure;     ///< the same, however print was dragged since the frame before
  cv::Mat lines;    ///< 8-bit: 255 on and beside projected lines
  cv::Mat share;    ///< brightness over what explains it best, floats
};

class Expectation {
 public:
  static constexpr float kDarkestShadow = 0.35f;  ///< share of the room's light that a shadow leaves at least

  /// `box` is the part of the frames that `compare` is given.
  Expectation(const Backdrop& backdrop, const StripView& view, const cv::Rect& box);

  /// From now on the strip gets this light (as of `light_strip`). `chases`: the picture before has hardly
  /// come either, so that what was seen before that may be still; `Pictures::either` covers all three.
  void project(const cv::Mat& light, bool chases = false);

  /// `linear`: the box of a frame in linear light. From the column `first` on hardly anything but cloth is
  /// expected.
  Compared compare(const cv::Mat& linear, const MeasuredLight& light, Pictures pictures, int first);

  /// Whether printed cloth was seen to be dragged in the last frame, anywhere within these columns.
  bool cloth_moves(int from, int to) const { return slip_->moves(from, to); }

  /// 255 where a cell's look is known.
  const cv::Mat& known() const { return known_; }

 private:
  struct Bounds {
    cv::Mat low, high;  // of means over 3x3 cells, when these are not quite where they should be
    cv::Mat lines;      // of projected light: how much it differs within some cells
    cv::Mat mean;       // of projected light
  };
  static Bounds slipped_by_half(const cv::Mat& look);
  static Bounds slipped_by_one(const cv::Mat& light);
  static Bounds either(const Bounds& a, const Bounds& b);
  struct Marks {
    cv::Mat noise;   // of a cell's share
    cv::Mat slack;   // by which its excess was told, linear light
    cv::Mat lines;   // how much light projected lines about a cell bring, linear light
    cv::Mat whole;   // what the cell was expected to show at least, all channels
    cv::Mat hidden;  // 255 where the cloth without the projector's light explains best
  };
  struct Looks {
    Bounds room, full;
  };
  const Looks& lying(const cv::Mat& seen, const cv::Mat& local, const MeasuredLight& light,
                     const Bounds& picture);
  Marks explain(const cv::Mat& seen, const cv::Mat& local, const MeasuredLight& light, const Looks& looks,
                const Bounds& picture, Compared& out) const;
  cv::Mat excess_wherever_it_lies(const cv::Mat& seen, const cv::Mat& local, const MeasuredLight& light,
                                  const Looks& looks, const Bounds& picture) const;
  void bear_with_lines(Compared& out, const Marks& marks, int first);
  void sharpen(Compared& out, const Marks& marks) const;
  void doubt_shadows(Compared& out, const cv::Mat& hidden) const;
  cv::Mat unthrown(const cv::Mat& hidden, const cv::Mat& solid) const;

  cv::Mat pixel_from_cell_, local_from_cell_, known_, thrower_;
  Looks learnt_, dragged_;  // as the cloth lay, and as it lies
  std::optional<Slip> slip_;
  float smeared_ = 0.0f, sharpened_ = 0.0f;  // shares of a line's light, as last seen
  Bounds now_, before_;                      // of the projected light
  std::vector<float> noise_;                 // of a smoothed cell at a linear light, by steps of 1 / size
};

}  // namespace cowlcast::projector
