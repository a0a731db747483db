// What is odd about a fitted scene: things that moved, lie crooked or were printed otherwise.
//
//   for (const Finding& finding : find_oddities(scene, pictures)) ...
//
// Each kind has its own test: the residuals of one group of sightings (a sheet in
// a photograph, a sheet in all of them, the target in a photograph) are explained
// by a shift, a change of scale or a height of that group alone. A finding must be
// both larger than the noise allows and large enough to matter on cloth.
#pragma once

#include <opencv2/core.hpp>
#include <string>
#include <vector>

#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

enum class Oddity {
  sheet_moved,    ///< a sheet lies elsewhere in one photograph
  sheet_scale,    ///< a sheet is printed at another scale than the others
  sheet_curled,   ///< part of a sheet stands above the mat
  picture_moved,  ///< projector or table moved between photographs
};

struct Finding {
  Oddity oddity = Oddity::sheet_moved;
  int sheet = -1;            ///< index into the scene, where one is meant
  int photo = -1;            ///< index into the scene, where one is meant
  double size = 0.0;         ///< mm, or the relative difference of scale
  std::vector<int> corners;  ///< of a curled sheet: those that stand up; none: nobody knows which
};

/// Oddities of the sheets. The scene must be fitted; sightings marked as strays
/// count too. `least` widens what is let pass: 1, or more while the scene is still rough.
std::vector<Finding> find_sheet_oddities(const Scene& scene, double least = 1.0);

/// Oddities of the projected picture: the target in one photograph against the
/// target in another, the edge of the light in photographs under plain light.
std::vector<Finding> find_picture_oddities(const Scene& scene, const std::vector<cv::Mat>& pictures);

/// Takes what a harmless finding is about out of the scene: the sheet in that
/// photograph, the corners that stand up (the whole sheet when none are named). Others change nothing.
void leave_out(Scene& scene, const Finding& finding);

/// One plain sentence about the finding, the cause first.
std::string words(const Scene& scene, const Finding& finding);

}  // namespace cowlcast::calibration
