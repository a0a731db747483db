// Slip: how far printed cloth has been dragged, place by place along a strip.
//
//   Slip slip(room, beam);                          // the learnt looks of the strip's cells
//   slip.follow(seen, expected_room, expected_beam, noise);
//   cell (x, y) shows the cloth that was learnt at (x, y) + slip.field()(y, x)
//
// A blade drags cloth along by some millimetres, most of it close by. On even cloth
// that does not show and does not matter; on a print every edge is then in the wrong
// place. The field is followed from frame to frame by the print's own slopes, as
// least squares over windows of 45 mm; what does not fit, such as a hand,
// has little say, and where the print tells nothing (along its stripes, say) the
// neighbourhood decides. Jumps of more than about 3 mm between frames are not followed.
#pragma once

#include <opencv2/core.hpp>

namespace cowlcast::projector {

class Slip {
 public:
  static constexpr float kFarthest = 4.0f;  ///< cells: more is not followed

  /// `room` and `beam`: three floats a cell, linear light under the room's light, and of the projector's full
  /// light.
  Slip(const cv::Mat& room, const cv::Mat& beam);

  /// Whether the cloth has a print by which it could be told, and be misled by.
  bool printed() const { return printed_; }

  /// What light there is now, over what was learnt: three floats a cell each.
  struct Light {
    cv::Mat room, beam;
  };
  /// `seen`: three floats a cell, smoothed as the looks are. `noise`: of a cell's light, linear.
  void follow(const cv::Mat& seen, const Light& light, float noise);

  /// Two floats a cell, cells: x along the strip, y across.
  const cv::Mat& field() const { return field_; }
  /// Whether it changed with the last frame about these columns: what seems to be in the wrong place may be
  /// about to be followed.
  bool moves(int from, int to) const;
  /// The largest of it, cells.
  float most() const { return most_; }

 private:
  struct Sums;
  float improve(const cv::Mat& seen, const Light& light, float noise);

  cv::Mat room_, beam_;
  bool printed_ = false;
  cv::Mat nodes_, moved_;  // the field, coarse, and by how much it changed with the last frame
  cv::Mat field_;
  float most_ = 0.0f;
};

}  // namespace cowlcast::projector
