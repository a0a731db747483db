#include "calibration/virtual_table/video_drag.h"

#include <cmath>
#include <numbers>

namespace cowlcast::calibration::virtual_table {

namespace {

using Eigen::Vector2d;

constexpr double kFar = 5.0;  // reaches, or ripples: nothing is left beyond
constexpr double kRoomSlope =
    0.3;  // of the room's light that a slope of 1 takes or brings: it comes from all over

}  // namespace

Rumple rumpled(const Drag& drag, const Vector2d& place, const Eigen::Vector3d& eye,
               const Eigen::Vector3d& lamp) {
  const Vector2d from = place - drag.at;
  Rumple out;
  out.cloth = -drag.slipped;
  const double far = from.norm();
  if (far < kFar * drag.reach) out.cloth -= std::exp(-far / drag.reach) * drag.moved;
  const double ahead = from.dot(drag.way), aside = from.x() * drag.way.y() - from.y() * drag.way.x();
  const double wide = 2.0 * drag.ripple_length;
  if (drag.ripple <= 0.0 || ahead <= 0.0 || ahead > kFar * drag.ripple_length || std::abs(aside) > 3.0 * wide)
    return out;
  const double wave = 2.0 * std::numbers::pi / drag.ripple_length, fall = 1.0 / (1.2 * drag.ripple_length);
  const double left = drag.ripple * std::exp(-ahead * fall - aside * aside / (wide * wide));
  const double height = left * (0.5 - 0.5 * std::cos(wave * ahead));
  const double slope = left * 0.5 * wave * std::sin(wave * ahead) - fall * height;  // along the way
  const Vector2d to_eye = (eye.head<2>() - place) / eye.z(), to_lamp = (lamp.head<2>() - place) / lamp.z();
  out.cloth += height * to_eye;
  out.light = height * (to_eye - to_lamp);
  out.room = 1.0 - kRoomSlope * slope * drag.way.y();  // more of it from the far side of the room
  out.beam = 1.0 - slope * drag.way.dot(to_lamp);
  return out;
}

}  // namespace cowlcast::calibration::virtual_table
