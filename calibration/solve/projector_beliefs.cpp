#include "calibration/solve/projector_beliefs.h"

#include "calibration/solve/residuals.h"

namespace cowlcast::calibration {
namespace {

using namespace residuals;

constexpr double kKeystoneSigma = 0.3;

// What is known of any projector: its picture's middle is on the lens's upright,
// often far above or below the lens's own middle.
LensPrior projector_prior(const Eigen::Vector2d& size) {
  return {{1.3 * size.x(), 0.5 * (size.x() - 1), 0.5 * (size.y() - 1), 0, 0, 0, 0, 0},
          {0.6, 0.01 * size.x(), 0.6 * size.y(), 0.1, 0.1, 1e-6, 0.003, 0.003}};
}

}  // namespace

void add_projector_beliefs(ceres::Problem& problem, Scene& scene) {
  problem.AddResidualBlock(
      new ceres::AutoDiffCostFunction<LensPrior, 8, 8>(new LensPrior(projector_prior(scene.projector_size))),
      nullptr, scene.projector_lens.numbers.data());
  if (double* keystone = scene.keystone.data(); problem.HasParameterBlock(keystone)) {
    if (scene.keystone_free)
      problem.AddResidualBlock(new ceres::AutoDiffCostFunction<KeystonePrior, 4, 4>(
                                   new KeystonePrior{kKeystoneSigma, kKeystoneSigma, 0.5 * kKeystoneSigma}),
                               nullptr, keystone);
    else
      problem.SetParameterBlockConstant(keystone);
  }
  if (scene.lamp_height)
    problem.AddResidualBlock(new ceres::AutoDiffCostFunction<LampHeight, 1, 6>(
                                 new LampHeight{scene.lamp_height->height, scene.lamp_height->sigma}),
                             nullptr, scene.projector_from_mat.numbers.data());
}

}  // namespace cowlcast::calibration
