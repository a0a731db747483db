#include "calibration/verdict/lamp_doubt.h"

#include <algorithm>
#include <cmath>

#include "calibration/solve/projector_fit.h"

namespace cowlcast::calibration {
namespace {

constexpr double kMostDoubt = 0.6;   // as of the focal length of any projector
constexpr double kHeld = 2.0;        // mm: the lens is held where it is tried
constexpr double kLeastLoss = 1e-3;  // of half the sum of squares
// Downwards the valley falls off slowly, so that what is unlikely near by may be hardly less likely far off.
constexpr double kTried[] = {0.5, 0.75, 1.0 / 0.75};  // of the height

double cost_at(Scene scene, const FitNoise& noise, double height) {
  scene.lamp_height = LampReading{height, kHeld};
  fit_projector(scene, noise);
  return fit_scene(scene, {FitPart::everything, noise, true, 6});
}

}  // namespace

double lamp_doubt(const Scene& scene, const FitNoise& noise) {
  const double height = std::abs(scene.projector_from_mat.transform().inverse().translation().z());
  const double best = cost_at(scene, noise, height);
  double doubt = 0.0;
  for (const double ratio : kTried) {
    const double cost = cost_at(scene, noise, ratio * height);
    if (best < 0.0 || cost < 0.0) return kMostDoubt;
    const double loss = std::max(kLeastLoss, cost - best);
    doubt = std::max(doubt, std::abs(1.0 / ratio - 1.0) / std::sqrt(2.0 * loss));
  }
  return std::min(doubt, kMostDoubt);
}

}  // namespace cowlcast::calibration
