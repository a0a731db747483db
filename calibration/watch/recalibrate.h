// Calibrating again without the sheets, by the tags at the mat's edge and the marks of light.
//
//   Recalibration again = recalibrate(watch, pictures);     // dark, plain and marked frames, nobody in the
//   way save(again.map.to_json()); watch = Watch::learn(again.map, again.camera, pictures);
//
// One thing may have moved: the mat (slid or turned on the table), the projector
// (the lens as it was: not zoomed, not refocused) or the camera. Where it now stands
// follows from how far tags and marks are shifted. Whatever else happened, or a
// move too large or too badly seen to stay within a millimetre, is refused: then
// the sheets are needed.
#pragma once

#include <string>

#include "calibration/watch/watch.h"

namespace cowlcast::calibration {

struct Recalibration {
  TableMap map;  ///< with its error made larger by what this adds
  FixedCamera camera;
  Motion motion;         ///< what moved; nothing: map and camera are as before
  double added95 = 0.0;  ///< by this much, 95 times in 100, the lines are off where they were before, mm
  std::string summary;   ///< a sentence or two
};

/// Throws Refusal, with what to do, when tags and marks do not settle it.
Recalibration recalibrate(const Watch& watch, const WatchPictures& pictures);

}  // namespace cowlcast::calibration
