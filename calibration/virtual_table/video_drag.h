// Drag: cloth on a simulated table that the blade pushes along, and that slips.
//
//   Rumple here = rumpled(drag, place, eye, lamp);
//   material at: place + here.cloth;   light as if flat at: place + here.light
//
// A sheet held by the friction of the table gives way most at the blade, in the way
// it goes, and less all around; before the blade what is too much rises in ripples,
// each lower than the one nearer to it. How much real cloth gives way is
// common practice, no source: some millimetres.
#pragma once

#include <Eigen/Core>

namespace cowlcast::calibration::virtual_table {

struct Drag {
  Eigen::Vector2d slipped{0.0, 0.0};  ///< all of the cloth, mm
  Eigen::Vector2d at{0.0, 0.0};       ///< where the blade is, mm
  Eigen::Vector2d way{0.0, 1.0};      ///< where it goes, of length 1
  Eigen::Vector2d moved{0.0, 0.0};    ///< the cloth there besides, mm
  double reach = 60.0;                ///< mm over which that falls to a third
  double ripple = 0.0;                ///< height of the first crest, mm
  double ripple_length = 18.0;        ///< from crest to crest, mm
};

/// What is seen at a place of the table at rest, by what is different now.
struct Rumple {
  Eigen::Vector2d cloth{0.0, 0.0};  ///< to where that piece of cloth lay, mm
  Eigen::Vector2d light{0.0, 0.0};  ///< to where its light would fall on flat cloth, mm
  double room = 1.0, beam = 1.0;    ///< light over that on flat cloth, by the slope
};

/// Seen from `eye`, lit from `lamp`: mm over the cloth. Hidden cloth is not reckoned with.
Rumple rumpled(const Drag& drag, const Eigen::Vector2d& place, const Eigen::Vector3d& eye,
               const Eigen::Vector3d& lamp);

}  // namespace cowlcast::calibration::virtual_table
