#include "calibration/solve/projector_fit.h"

#include <ceres/ceres.h>

#include <cmath>
#include <vector>

#include "calibration/refusal.h"
#include "calibration/solve/projector_beliefs.h"
#include "calibration/solve/residuals.h"

namespace cowlcast::calibration {
namespace {

using residuals::PictureCorner;

constexpr size_t kSightings = 250;  // that have a say; their noise is lessened as if all had
constexpr int kSteps = 600;

// A corner of the target where a photograph has it: on the mat, or at the height of a raised sheet.
struct PictureOfPlace {
  PictureCorner corner;
  double mat[2], above;

  template <typename T>
  bool operator()(const T* lens, const T* projector, const T* keystone, T* out) const {
    const T place[2] = {T(mat[0]), T(mat[1])}, up(above);
    return corner(lens, projector, keystone, place, &up, out);
  }
};

// Pixels of the projector's picture to a pixel of the photograph, about one sighting.
double picture_to_photograph(const Scene& scene, const LightSighting& sighting, double height) {
  constexpr double kStep = 2.0;
  const auto picture = [&](const Eigen::Vector2d& pixel) {
    return scene.projector_from_mat_point(scene.mat_from_photo(sighting.photo, pixel, height));
  };
  const auto here = picture(sighting.pixel), right = picture(sighting.pixel + Eigen::Vector2d(kStep, 0.0)),
             below = picture(sighting.pixel + Eigen::Vector2d(0.0, kStep));
  if (!here || !right || !below) return 0.0;
  Eigen::Matrix2d slope;
  slope << *right - *here, *below - *here;
  return std::sqrt(std::abs(slope.determinant())) / kStep;
}

// One sighting's place on the mat, with the photograph's pose as it is; nothing where it is beyond a lens.
void add_place(ceres::Problem& problem, Scene& scene, const LightSighting& s, double noise) {
  const LightPoint& point = scene.lights[static_cast<size_t>(s.point)];
  const double height = scene.height_of(point);
  try {
    const double size = picture_to_photograph(scene, s, height);
    if (!(size > 0.0)) return;
    const Eigen::Vector2d mat = scene.mat_from_photo(s.photo, s.pixel, height),
                          picture = scene.projector_size;
    auto* miss = new PictureOfPlace{
        {point.picture.x(), point.picture.y(), 1.0 / (noise * s.sigma * size), picture.x(), picture.y()},
        {mat.x(), mat.y()},
        height};
    problem.AddResidualBlock(new ceres::AutoDiffCostFunction<PictureOfPlace, 2, 8, 6, 4>(miss), nullptr,
                             scene.projector_lens.numbers.data(), scene.projector_from_mat.numbers.data(),
                             scene.keystone.data());
  } catch (const Refusal&) {
  }
}

}  // namespace

bool fit_projector(Scene& scene, const FitNoise& noise) {
  Scene trial = scene;
  ceres::Problem problem;
  std::vector<const LightSighting*> used;
  for (const LightSighting& s : scene.light)
    if (s.used) used.push_back(&s);
  const size_t stride = used.size() / kSightings + 1;
  for (size_t i = 0; i < used.size(); i += stride)
    add_place(problem, trial, *used[i], noise.light / std::sqrt(static_cast<double>(stride)));
  if (problem.NumResidualBlocks() == 0) return false;
  add_projector_beliefs(problem, trial);
  ceres::Solver::Options solver;
  solver.linear_solver_type = ceres::DENSE_NORMAL_CHOLESKY;
  solver.max_num_iterations = kSteps;
  solver.function_tolerance = 1e-8;
  solver.logging_type = ceres::SILENT;
  ceres::Solver::Summary summary;
  ceres::Solve(solver, &problem, &summary);
  if (!summary.IsSolutionUsable()) return false;
  scene = std::move(trial);
  return true;
}

}  // namespace cowlcast::calibration
