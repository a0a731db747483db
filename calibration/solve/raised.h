// A sheet on a board of known thickness among sheets on the mat. Light that falls
// on it lies aside from where it would fall on the mat, by thickness times slant:
// that tells the place of the projector's lens, which one flat table hardly shows.
#pragma once

#include <vector>

#include "calibration/solve/calibrate.h"
#include "calibration/solve/scene.h"
#include "calibration/solve/start.h"

namespace cowlcast::calibration {

/// Takes the raised sheet out of what the photographs show, so that the flat scene can begin without it.
/// Throws Refusal when it is seen in no photograph, or its thickness cannot be meant.
std::vector<PhotoSheets> take_raised(std::vector<PhotoSheets>& photos, const RaisedSheet& raised);

/// Adds it to a scene whose cameras are placed. `seen` is what `take_raised` gave. Throws CertainRefusal when
/// photographs from different sides show the sheet at another height.
void add_raised(Scene& scene, const std::vector<PhotoSheets>& seen, const RaisedSheet& raised);

}  // namespace cowlcast::calibration
