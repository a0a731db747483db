// Reading a projected frame back: how far each drawn line lies from the true one.
//
//   ReadBack result = read_back(room.projector, frame, true_line, {.height = 1.2});
//   result.worst;      // mm, over all places where the line could be measured
//   result.missing;    // places where a line should be and none is
//
// At every place along the true line the light that reaches the cloth is sampled
// across the line through the room's true optics, each projector pixel with its
// own square, gaps and blur, and the middle of the bright ridge is taken as a
// ruler would take it. Light is added up linearly, so a line's apparent middle
// owes to what the eye and the blade follow, not to pixel values.
#pragma once

#include <Eigen/Core>
#include <opencv2/core.hpp>
#include <vector>

#include "calibration/virtual_table/room.h"

namespace cowlcast::calibration::virtual_table {

struct ReadBackOptions {
  double height = 0.0;         ///< of the cloth's upper face above the mat, mm
  double spacing = 1.0;        ///< between places along the line, mm
  double reach = 3.0;          ///< how far to each side of the true line a ridge is looked for, mm
  int samples_per_mm = 25;     ///< across the line
  double corner_angle = 0.25;  ///< turns sharper than this are corners, radians
  double clearance = 4.0;  ///< places nearer than this to a corner, an end or another stretch are skipped, mm
  bool closed = false;     ///< the line's last point joins its first
  std::vector<std::vector<Eigen::Vector2d>> others = {};  ///< more lines of the frame to keep clear of
};

/// What was found at one place.
struct LineSample {
  enum class State { measured, missing, skipped, unlit };
  Eigen::Vector2d place{0.0, 0.0};  ///< on the true line, mm
  double along = 0.0;               ///< way along the line, mm
  State state = State::skipped;     ///< missing: no light; unlit: beyond the picture; skipped: near a corner
  double offset = 0.0;              ///< drawn minus true, mm, positive to the left of the way; measured only
  double width = 0.0;               ///< between the half heights of the ridge, mm; measured only
};

struct ReadBack {
  std::vector<LineSample> samples = {};
  int measured = 0, missing = 0, skipped = 0, unlit = 0;
  double mean = 0.0;   ///< signed, mm
  double rms = 0.0;    ///< mm
  double mm95 = 0.0;   ///< 95 in 100 of the measured places are at least this near, mm
  double worst = 0.0;  ///< mm
};

/// `frame` is the projected picture, 8 bit grey or BGR of the projector's size;
/// `line` the true line on the cloth, room frame, mm.
ReadBack read_back(const RoomProjector& projector, const cv::Mat& frame,
                   const std::vector<Eigen::Vector2d>& line, const ReadBackOptions& options = {});

/// Puts several lines' results together.
ReadBack joined(const std::vector<ReadBack>& parts);

/// Light at a point of the plane at `height`, as a share of white and black left out: 0 to 1.
class ProjectedLight {
 public:
  ProjectedLight(const RoomProjector& projector, const cv::Mat& frame);
  /// `pixel` of the panel, that is with any electronic keystone behind it.
  double at_panel(const Eigen::Vector2d& pixel) const;
  double at_mat(const Eigen::Vector2d& mat, double height) const;

 private:
  RoomProjector projector_ = {};
  cv::Mat linear_ = {};
};

}  // namespace cowlcast::calibration::virtual_table
