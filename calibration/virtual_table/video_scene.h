// Scene: a random table to make videos of: room, fixed camera, cloth and how the light changes.
//
//   VideoScene scene = random_video_scene(dice);
//   TableVideo video(scene.room, scene.camera, scene.print);
//   Moment moment = scene.light.at(12.5);      // room light and exposure, 12.5 seconds on
#pragma once

#include <array>
#include <string>
#include <vector>

#include "calibration/virtual_table/video.h"

namespace cowlcast::calibration::virtual_table {

/// Room light over time: slow clouds, a lamp switched now and then, colours that drift, a person leaning in,
/// and a camera whose exposure follows half of it, late.
struct LightPlay {
  std::array<double, 3> swell{}, pace{}, phase{};  ///< logarithm of light, radians a second, radians
  struct Switch {
    double t = 0.0, factor = 1.0;
  };
  std::vector<Switch> switches = {};
  double warmth = 0.0;     ///< how far the colour drifts, relative
  double lean = 0.0;       ///< share of light that a leaning person takes at most
  double lean_pace = 0.3;  ///< radians a second
  double follows = 0.5;    ///< share of a change that the exposure makes good, after 0.4 s

  double ambient(double t) const;
  Moment at(double t) const;
};

struct VideoScene {
  Room room = {};
  RoomCamera camera = {};
  ClothPrint print = {};
  LightPlay light = {};
  int jpeg = 0;            ///< quality, 0: none
  double exposure = 0.01;  ///< seconds, of one frame
  Colour skin{0.5f, 0.3f, 0.2f};
  std::string cloth = {};  ///< in words
};

/// A room with an even, printed or dark cloth, and a webcam 1.0 to 1.5 m over it that sees about all of the
/// light at 1280x720.
VideoScene random_video_scene(Dice& dice);

}  // namespace cowlcast::calibration::virtual_table
