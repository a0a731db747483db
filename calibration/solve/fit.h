// The joint least-squares fit of a scene (bundle adjustment).
//
//   fit_scene(scene, {.part = FitPart::paper});      // camera, poses, sheets, print scale
//   fit_scene(scene, {.part = FitPart::everything}); // the projector as well
//
// After B. Triggs et al., "Bundle adjustment: a modern synthesis" (2000); solved
// by Ceres.
#pragma once

#include <Eigen/Core>

#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

enum class FitPart { paper, projector, everything };

struct FitNoise {
  double paper = 1.5;       ///< factor on the sigma of paper sightings
  double light = 2.0;       ///< factor on the sigma of light sightings
  double projector = 0.02;  ///< by which a corner may leave the projector's model, projector pixels: hardly
};

struct FitOptions {
  FitPart part = FitPart::everything;  ///< `projector` holds cameras and sheets still
  FitNoise noise;
  bool robust = true;  ///< give stray sightings less say (Cauchy's loss)
  int steps = 40;
};

/// Improves `scene` in place; sightings with `used` false have no say. Returns
/// the final cost: half the sum of squares of residuals over their noise.
/// A negative return means that the solver found no answer.
double fit_scene(Scene& scene, const FitOptions& options);

/// Distance of each sighting from the scene's prediction, pixels; infinite where there is none.
std::vector<double> paper_residuals(const Scene& scene);
std::vector<double> light_residuals(const Scene& scene);

/// Covariance of the projector's 14 numbers (8 of the lens, 6 of the placement), the 4 of
/// its keystone if they are free, followed by the logarithmic print scale across and down, about the fit, in
/// their own units.
Eigen::MatrixXd projector_covariance(Scene& scene, const FitNoise& noise);

/// The same of the eight numbers of a camera's lens.
Eigen::MatrixXd lens_covariance(Scene& scene, const FitNoise& noise, int lens);

}  // namespace cowlcast::calibration
