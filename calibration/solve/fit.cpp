#include "calibration/solve/fit.h"

#include <ceres/ceres.h>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>

#include "calibration/solve/projector_beliefs.h"
#include "calibration/solve/residuals.h"

namespace cowlcast::calibration {
namespace {

using namespace residuals;

constexpr double kRobustReach = 3.0;   // in units of the noise
constexpr double kFocusSigma = 0.008;  // a phone refocusing between photographs of one table
constexpr double kBoardSigma = 0.3;    // mm: a board's thickness measured with a ruler

template <typename Residual, int Out, int... In, typename... Values>
ceres::CostFunction* automatic(Values... values) {
  return new ceres::AutoDiffCostFunction<Residual, Out, In...>(new Residual{values...});
}

// What is known of any camera before it is seen.
LensPrior camera_prior(const Eigen::Vector2d& size, const std::optional<double>& exif_focal) {
  const double longest = size.maxCoeff();
  return {{exif_focal.value_or(0.85 * longest), 0.5 * (size.x() - 1), 0.5 * (size.y() - 1), 0, 0, 0, 0, 0},
          {exif_focal ? 0.05 : 0.5, 0.02 * longest, 0.02 * longest, 0.2, 0.3, 0.3, 0.003, 0.003}};
}

class Assembly {
 public:
  Assembly(Scene& scene, const FitOptions& options) : scene_(scene), options_(options) {
    const bool paper = options.part != FitPart::projector, light = options.part != FitPart::paper;
    if (options.robust) loss_ = std::make_unique<ceres::CauchyLoss>(kRobustReach);
    ceres::Problem::Options owner;
    owner.loss_function_ownership = ceres::DO_NOT_TAKE_OWNERSHIP;
    problem_ = std::make_unique<ceres::Problem>(owner);
    add_cameras();
    if (paper) add_paper();
    if (light) add_light();
    if (!paper) hold_still();
  }

  ceres::Problem& problem() { return *problem_; }

  double solve() {
    ceres::Solver::Options solver;
    solver.max_num_iterations = options_.steps;
    solver.num_threads = 2;
    solver.function_tolerance = 1e-7;
    solver.parameter_tolerance = 1e-10;
    solver.logging_type = ceres::SILENT;
    if (options_.part == FitPart::paper) {
      solver.linear_solver_type = ceres::DENSE_QR;
    } else {
      solver.linear_solver_type = ceres::DENSE_SCHUR;
      auto ordering = std::make_shared<ceres::ParameterBlockOrdering>();
      std::vector<double*> blocks;
      problem_->GetParameterBlocks(&blocks);
      for (double* block : blocks) ordering->AddElementToGroup(block, is_light(block) ? 0 : 1);
      solver.linear_solver_ordering = ordering;
    }
    ceres::Solver::Summary summary;
    ceres::Solve(solver, problem_.get(), &summary);
    return summary.IsSolutionUsable() ? summary.final_cost : -1.0;
  }

  bool is_light(const double* block) const {
    const auto* first = reinterpret_cast<const char*>(scene_.lights.data());
    const auto* at = reinterpret_cast<const char*>(block);
    return at >= first && at < first + scene_.lights.size() * sizeof(LightPoint);
  }

 private:
  void add_cameras() {
    for (size_t i = 0; i < scene_.lenses.size(); ++i)
      problem_->AddResidualBlock(new ceres::AutoDiffCostFunction<LensPrior, 8, 8>(new LensPrior(
                                     camera_prior(scene_.lens_sizes[i], scene_.exif_focals[i]))),
                                 nullptr, scene_.lenses[i].numbers.data());
    for (size_t i = 0; i < scene_.beliefs.size(); ++i) {
      if (!scene_.beliefs[i]) continue;
      auto* belief = new LensPrior{};
      std::copy_n(scene_.beliefs[i]->middle.begin(), 8, belief->middle);
      std::copy_n(scene_.beliefs[i]->sigma.begin(), 8, belief->sigma);
      problem_->AddResidualBlock(new ceres::AutoDiffCostFunction<LensPrior, 8, 8>(belief), nullptr,
                                 scene_.lenses[i].numbers.data());
    }
    for (ScenePhoto& photo : scene_.photos)
      problem_->AddResidualBlock(automatic<NumberPrior, 1, 1>(0.0, kFocusSigma), nullptr, &photo.focus);
  }

  void add_paper() {
    for (const PaperSighting& s : scene_.paper) {
      if (!s.used) continue;
      ScenePhoto& photo = scene_.photos[static_cast<size_t>(s.photo)];
      problem_->AddResidualBlock(
          automatic<PaperCorner, 2, 8, 1, 6, 3, 2, 1>(s.printed.x(), s.printed.y(), s.pixel.x(), s.pixel.y(),
                                                      1.0 / (s.sigma * options_.noise.paper)),
          loss_.get(), scene_.lenses[static_cast<size_t>(photo.lens)].numbers.data(), &photo.focus,
          photo.camera_from_mat.numbers.data(), scene_.sheets[static_cast<size_t>(s.sheet)].place.data(),
          scene_.print_scale.data(), &scene_.sheets[static_cast<size_t>(s.sheet)].height);
    }
    for (SceneSheet& sheet : scene_.sheets) {
      if (!problem_->HasParameterBlock(&sheet.height)) continue;
      if (sheet.board)
        problem_->AddResidualBlock(automatic<NumberPrior, 1, 1>(*sheet.board + kPaperThickness, kBoardSigma),
                                   nullptr, &sheet.height);
      else
        problem_->SetParameterBlockConstant(&sheet.height);
    }
    const ScaleReading& r = scene_.reading;
    problem_->AddResidualBlock(
        automatic<ScalePrior, 2, 2>(std::log(r.across), std::log(r.down), r.sigma_across, r.sigma_down),
        nullptr, scene_.print_scale.data());
    for (const SceneSpan& span : scene_.spans)
      problem_->AddResidualBlock(automatic<SpanLength, 1, 3, 3>(span.length, span.sigma), nullptr,
                                 scene_.sheets[static_cast<size_t>(span.from)].place.data(),
                                 scene_.sheets[static_cast<size_t>(span.to)].place.data());
    // The working frame hangs on the first sheet on the mat that anything is seen of.
    for (SceneSheet& sheet : scene_.sheets)
      if (!sheet.board && problem_->HasParameterBlock(sheet.place.data())) {
        problem_->SetParameterBlockConstant(sheet.place.data());
        break;
      }
  }

  void add_light() {
    std::vector<bool> seen(scene_.lights.size(), false);
    for (const LightSighting& s : scene_.light) {
      if (!s.used) continue;
      ScenePhoto& photo = scene_.photos[static_cast<size_t>(s.photo)];
      LightPoint& point = scene_.lights[static_cast<size_t>(s.point)];
      const double u = s.pixel.x(), v = s.pixel.y(), weight = 1.0 / (s.sigma * options_.noise.light);
      double* lens = scene_.lenses[static_cast<size_t>(photo.lens)].numbers.data();
      double* camera = photo.camera_from_mat.numbers.data();
      if (double* height = height_block(point))
        problem_->AddResidualBlock(automatic<LightCorner, 2, 8, 1, 6, 2, 1>(u, v, weight), loss_.get(), lens,
                                   &photo.focus, camera, point.mat.data(), height);
      else
        problem_->AddResidualBlock(automatic<LightCorner, 2, 8, 1, 6, 2>(u, v, weight), loss_.get(), lens,
                                   &photo.focus, camera, point.mat.data());
      seen[static_cast<size_t>(s.point)] = true;
    }
    const Eigen::Vector2d size = scene_.projector_size;
    for (size_t i = 0; i < scene_.lights.size(); ++i) {
      if (!seen[i]) continue;
      LightPoint& point = scene_.lights[i];
      const double u = point.picture.x(), v = point.picture.y(), weight = 1.0 / options_.noise.projector;
      double* lens = scene_.projector_lens.numbers.data();
      double* place = scene_.projector_from_mat.numbers.data();
      if (double* height = height_block(point))
        problem_->AddResidualBlock(
            automatic<PictureCorner, 2, 8, 6, 4, 2, 1>(u, v, weight, size.x(), size.y()), nullptr, lens,
            place, scene_.keystone.data(), point.mat.data(), height);
      else
        problem_->AddResidualBlock(automatic<PictureCorner, 2, 8, 6, 4, 2>(u, v, weight, size.x(), size.y()),
                                   nullptr, lens, place, scene_.keystone.data(), point.mat.data());
    }
    add_projector_beliefs(*problem_, scene_);
  }

  // The height of the raised sheet that a corner of the target falls on; none for the mat.
  double* height_block(const LightPoint& point) {
    return point.sheet < 0 ? nullptr : &scene_.sheets[static_cast<size_t>(point.sheet)].height;
  }

  void hold_still() {
    for (LensNumbers& lens : scene_.lenses)
      if (problem_->HasParameterBlock(lens.numbers.data()))
        problem_->SetParameterBlockConstant(lens.numbers.data());
    for (ScenePhoto& photo : scene_.photos)
      for (double* block : {&photo.focus, photo.camera_from_mat.numbers.data()})
        if (problem_->HasParameterBlock(block)) problem_->SetParameterBlockConstant(block);
    for (SceneSheet& sheet : scene_.sheets)
      if (problem_->HasParameterBlock(&sheet.height)) problem_->SetParameterBlockConstant(&sheet.height);
  }

  Scene& scene_;
  FitOptions options_;
  std::unique_ptr<ceres::LossFunction> loss_;
  std::unique_ptr<ceres::Problem> problem_;
};

}  // namespace

double fit_scene(Scene& scene, const FitOptions& options) {
  return Assembly(scene, options).solve();
}

std::vector<double> paper_residuals(const Scene& scene) {
  std::vector<double> out;
  for (const PaperSighting& s : scene.paper) {
    const auto at = scene.photo_from_sheet(s.photo, s.sheet, s.printed);
    out.push_back(at ? (*at - s.pixel).norm() : std::numeric_limits<double>::infinity());
  }
  return out;
}

std::vector<double> light_residuals(const Scene& scene) {
  std::vector<double> out;
  for (const LightSighting& s : scene.light) {
    const LightPoint& point = scene.lights[static_cast<size_t>(s.point)];
    const auto at = scene.photo_from_mat(s.photo, {point.mat[0], point.mat[1]}, scene.height_of(point));
    out.push_back(at ? (*at - s.pixel).norm() : std::numeric_limits<double>::infinity());
  }
  return out;
}

namespace {

// Covariance of some blocks of numbers, `wanted` in all, about a fit to everything.
Eigen::MatrixXd covariance_of(Scene& scene, const FitNoise& noise, const std::vector<double*>& asked,
                              Eigen::Index wanted) {
  Assembly assembly(scene, {FitPart::everything, noise, false, 0});
  ceres::Problem& problem = assembly.problem();
  // The numbers asked for come first among the columns.
  ceres::Problem::EvaluateOptions evaluate;
  evaluate.num_threads = 2;
  evaluate.parameter_blocks = asked;
  std::vector<double*> blocks;
  problem.GetParameterBlocks(&blocks);
  for (double* block : blocks)
    if (std::find(evaluate.parameter_blocks.begin(), evaluate.parameter_blocks.end(), block) ==
            evaluate.parameter_blocks.end() &&
        !problem.IsParameterBlockConstant(block))
      evaluate.parameter_blocks.push_back(block);
  ceres::CRSMatrix crs;
  problem.Evaluate(evaluate, nullptr, nullptr, nullptr, &crs);
  const Eigen::SparseMatrix<double> jacobian = Eigen::Map<const Eigen::SparseMatrix<double, Eigen::RowMajor>>(
      crs.num_rows, crs.num_cols, static_cast<Eigen::Index>(crs.values.size()), crs.rows.data(),
      crs.cols.data(), crs.values.data());
  Eigen::SparseMatrix<double> normal = jacobian.transpose() * jacobian;
  // Columns in one unit each before the factorisation.
  Eigen::VectorXd unit(normal.cols());
  for (Eigen::Index i = 0; i < normal.cols(); ++i)
    unit[i] = 1.0 / std::sqrt(std::max(normal.coeff(i, i), 1e-300));
  normal = Eigen::SparseMatrix<double>(unit.asDiagonal() * normal * unit.asDiagonal());
  const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor(normal);
  const Eigen::MatrixXd sides = Eigen::MatrixXd::Identity(normal.rows(), wanted);
  const Eigen::MatrixXd solved = factor.solve(sides);
  const auto scale = unit.head(wanted).asDiagonal();
  return scale * Eigen::MatrixXd(solved.topRows(wanted)) * scale;
}

}  // namespace

Eigen::MatrixXd projector_covariance(Scene& scene, const FitNoise& noise) {
  std::vector<double*> asked = {scene.projector_lens.numbers.data(), scene.projector_from_mat.numbers.data()};
  if (scene.keystone_free) asked.push_back(scene.keystone.data());
  asked.push_back(scene.print_scale.data());
  return covariance_of(scene, noise, asked, scene.keystone_free ? 20 : 16);
}

Eigen::MatrixXd lens_covariance(Scene& scene, const FitNoise& noise, int lens) {
  return covariance_of(scene, noise, {scene.lenses[static_cast<size_t>(lens)].numbers.data()}, 8);
}

}  // namespace cowlcast::calibration
