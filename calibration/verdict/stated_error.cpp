#include "calibration/verdict/stated_error.h"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <Eigen/QR>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

#include "calibration/solve/light.h"
#include "calibration/target/target.h"
#include "calibration/verdict/lamp_doubt.h"

namespace cowlcast::calibration {
namespace {

constexpr int kNodesAcross = 25;        // of the error grid along the lit area's longer side
constexpr double kCloth = 5.0;          // mm: thickness at which the slant of the light is tried
constexpr int kFewestTogether = 5;      // misses that have a mean
constexpr double kRayleigh95 = 2.4477;  // 95 % radius over sigma, two coordinates
constexpr double kDot = 0.05;  // mm: no map is truer than a dot of the printed sheets, 600 to the inch

// The unit errors that a slide, a turn and a change of scale make at points about the middle.
Eigen::MatrixXd whole_motions(const std::vector<Eigen::Vector2d>& points, bool with_scale) {
  Eigen::MatrixXd out =
      Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(2 * points.size()), with_scale ? 4 : 3);
  for (size_t i = 0; i < points.size(); ++i) {
    const auto row = static_cast<Eigen::Index>(2 * i);
    out(row, 0) = out(row + 1, 1) = 1.0;
    out(row, 2) = -points[i].y();
    out(row + 1, 2) = points[i].x();
    if (with_scale) {
      out(row, 3) = points[i].x();
      out(row + 1, 3) = points[i].y();
    }
  }
  return out;
}

Eigen::MatrixXd without(const Eigen::MatrixXd& motions, const Eigen::MatrixXd& errors) {
  return errors - motions * motions.householderQr().solve(errors);
}

std::vector<double> radii95(const Eigen::MatrixXd& errors) {
  std::vector<double> out(static_cast<size_t>(errors.rows() / 2));
  for (size_t i = 0; i < out.size(); ++i) {
    const auto row = static_cast<Eigen::Index>(2 * i);
    out[i] =
        kRayleigh95 * std::sqrt(0.5 * (errors.row(row).squaredNorm() + errors.row(row + 1).squaredNorm()));
  }
  return out;
}

// The part of the picture that a pixel is in, of six across and four down.
std::pair<int, int> cell_of(const Scene& scene, const Eigen::Vector2d& picture) {
  return {static_cast<int>(6.0 * picture.x() / scene.projector_size.x()),
          static_cast<int>(4.0 * picture.y() / scene.projector_size.y())};
}

// Misses that keep company. Sightings are gathered in groups; where misses are
// independent, the mean over a group shrinks with the root of its size. The
// ratio of what the means are to what they should be, squared, is what the
// covariance must grow by: lenses that bend in ways of their own, light that
// pulls at corners, paper that is not quite flat.
class Company {
 public:
  void add(const std::array<int, 3>& group, const Eigen::Vector2d& miss) {
    Group& entry = groups_[group];
    entry.sum += miss;
    ++entry.count;
  }

  double factor() const {
    double sum = 0.0;
    int groups = 0;
    for (const auto& [group, entry] : groups_) {
      if (entry.count < kFewestTogether) continue;
      sum += entry.sum.squaredNorm() / (2.0 * entry.count);
      ++groups;
    }
    return groups < 4 ? 1.0 : std::max(1.0, sum / groups);
  }

 private:
  struct Group {
    Eigen::Vector2d sum = Eigen::Vector2d::Zero();
    int count = 0;
  };
  std::map<std::array<int, 3>, Group> groups_ = {};
};

// What the lens's terms leave of the light, mm: standard deviation, along one coordinate, of the mean misses
// over parts of the picture beyond what single corners' noise makes of a mean. Glass bends light in ways of
// its own, and nothing carries that to the middle of the light, where slides and turns leave hardly any other
// error.
double unexplained(const Scene& scene, const FitNoise& noise) {
  struct Part {
    Eigen::Vector2d sum = Eigen::Vector2d::Zero();
    double square = 0.0;
    int count = 0;
  };
  std::map<std::pair<int, int>, Part> parts;
  for (const LightSighting& s : scene.light) {
    const LightPoint& point = scene.lights[static_cast<size_t>(s.point)];
    if (!s.used) continue;
    const Spot spot = spot_of_picture(scene, point.picture);
    const auto at = scene.photo_from_mat(s.photo, spot.mat, spot.height);
    if (!at) continue;
    const Eigen::Vector2d here = scene.mat_from_photo(s.photo, s.pixel, spot.height),
                          beside =
                              scene.mat_from_photo(s.photo, s.pixel + Eigen::Vector2d(1, 0), spot.height),
                          below = scene.mat_from_photo(s.photo, s.pixel + Eigen::Vector2d(0, 1), spot.height);
    Eigen::Matrix2d slope;
    slope << beside - here, below - here;
    Part& part = parts[cell_of(scene, point.picture)];
    part.sum += here - spot.mat;
    part.square += 0.5 * std::pow(noise.light * s.sigma, 2) * slope.squaredNorm();
    ++part.count;
  }
  double sum = 0.0;
  int count = 0;
  for (const auto& [cell, part] : parts) {
    if (part.count < kFewestTogether) continue;
    sum += (0.5 * part.sum.squaredNorm() - part.square) / (part.count * part.count);
    ++count;
  }
  return count == 0 ? 0.0 : std::sqrt(std::max(0.0, sum / count));
}

// Beyond the outermost corners that were seen the lens's terms are carried on where nothing checked them:
// there the error counts more, the farther from the nearest corner.
std::vector<double> beyond_sightings(const Scene& scene, const std::vector<Eigen::Vector2d>& pixels) {
  constexpr double kNear = 0.75,
                   kGrowth = 0.5;  // squares of the target; growth by simulated glass, no source
  const double square = target_layout(static_cast<int>(std::lround(scene.projector_size.x())),
                                      static_cast<int>(std::lround(scene.projector_size.y())))
                            .square;
  std::vector<bool> used(scene.lights.size(), false);
  for (const LightSighting& s : scene.light)
    used[static_cast<size_t>(s.point)] = used[static_cast<size_t>(s.point)] || s.used;
  std::vector<double> out;
  for (const Eigen::Vector2d& pixel : pixels) {
    double nearest = std::numeric_limits<double>::infinity();
    for (size_t i = 0; i < scene.lights.size(); ++i)
      if (used[i]) nearest = std::min(nearest, (scene.lights[i].picture - pixel).norm());
    out.push_back(1.0 + kGrowth * std::max(0.0, nearest / square - kNear));
  }
  return out;
}

}  // namespace

FitNoise with_company(const Scene& scene, FitNoise noise) {
  Company light, paper;
  for (const LightSighting& s : scene.light) {
    const LightPoint& point = scene.lights[static_cast<size_t>(s.point)];
    const Spot spot = spot_of_picture(scene, point.picture);
    const auto at = scene.photo_from_mat(s.photo, spot.mat, spot.height);
    if (!s.used || !at) continue;
    const auto [across, down] = cell_of(scene, point.picture);
    light.add({s.photo, across, down}, (s.pixel - *at) / (noise.light * s.sigma));
  }
  for (const PaperSighting& s : scene.paper) {
    const auto at = scene.photo_from_sheet(s.photo, s.sheet, s.printed);
    if (s.used && at) paper.add({s.photo, s.sheet, 0}, (s.pixel - *at) / (noise.paper * s.sigma));
  }
  noise.light *= std::sqrt(light.factor());
  noise.paper *= std::sqrt(paper.factor());
  return noise;
}

ErrorEstimate estimate_error(Scene& scene, const FitNoise& noise, const TableMap& map) {
  ErrorEstimate out;
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector2d& p : map.lit_area) box.extend(p);
  out.grid.first = box.min();
  out.grid.step = box.sizes().maxCoeff() / (kNodesAcross - 1);
  out.grid.columns = static_cast<int>(std::ceil(box.sizes().x() / out.grid.step)) + 1;
  out.grid.rows = static_cast<int>(std::ceil(box.sizes().y() / out.grid.step)) + 1;

  // Pixels of the picture whose places on the mat stand for the whole.
  std::vector<Eigen::Vector2d> pixels, points;
  for (int i = 0; i <= 12; ++i)
    for (int j = 0; j <= 18; ++j) {
      const Eigen::Vector2d pixel(j * (map.width - 1) / 18.0, i * (map.height - 1) / 12.0);
      pixels.push_back(pixel);
      points.push_back(map.mat_from_projector(pixel));
    }

  const Eigen::MatrixXd covariance = projector_covariance(scene, noise);
  const Eigen::Index numbers = covariance.rows() - 2;  // of the projector
  const Eigen::MatrixXd own = covariance.topLeftCorner(numbers, numbers);
  Eigen::VectorXd unit = own.diagonal().cwiseMax(1e-300).cwiseSqrt();
  const Eigen::MatrixXd correlation =
      unit.cwiseInverse().asDiagonal() * own * unit.cwiseInverse().asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(correlation);

  // What a step of one standard deviation along each axis of the covariance does.
  const auto n = static_cast<Eigen::Index>(pixels.size());
  Eigen::MatrixXd errors(2 * n, numbers), on_cloth(2 * n, numbers), lamp_errors(3, numbers);
  const auto at = [&](const Eigen::VectorXd& change) {
    Scene changed;
    changed.projector_size = scene.projector_size;
    changed.projector_lens = scene.projector_lens;
    changed.projector_from_mat = scene.projector_from_mat;
    changed.keystone = scene.keystone;
    for (size_t i = 0; i < 8; ++i) changed.projector_lens.numbers[i] += change[static_cast<int>(i)];
    for (size_t i = 0; i < 6; ++i) changed.projector_from_mat.numbers[i] += change[static_cast<int>(8 + i)];
    for (Eigen::Index i = 14; i < change.size(); ++i)
      changed.keystone[static_cast<size_t>(i - 14)] += change[i];
    return changed.projector();
  };
  for (Eigen::Index k = 0; k < numbers; ++k) {
    const double size = std::sqrt(std::max(0.0, eigen.eigenvalues()[k]));
    constexpr double step = 1e-3;  // of a standard deviation: the map is all but straight over it
    const Eigen::VectorXd change = step * size * unit.cwiseProduct(eigen.eigenvectors().col(k));
    const TableMap plus = at(change), minus = at(-change);
    for (Eigen::Index i = 0; i < n; ++i) {
      const Eigen::Vector2d& pixel = pixels[static_cast<size_t>(i)];
      errors.block<2, 1>(2 * i, k) =
          (plus.mat_from_projector(pixel) - minus.mat_from_projector(pixel)) / (2.0 * step);
      on_cloth.block<2, 1>(2 * i, k) =
          (plus.mat_from_projector(pixel, kCloth) - minus.mat_from_projector(pixel, kCloth)) / (2.0 * step);
    }
    lamp_errors.col(k) = (plus.lamp() - minus.lamp()) / (2.0 * step);
  }
  // The fit's working frame and the map's differ by a slide and a turn.
  const Eigen::Isometry3d map_from_working =
      map.projector_from_mat_frame.inverse() * scene.projector_from_mat.transform();
  const Eigen::Matrix2d turn = map_from_working.linear().topLeftCorner<2, 2>();
  for (Eigen::Index i = 0; i < n; ++i) {
    errors.middleRows(2 * i, 2) = turn * errors.middleRows(2 * i, 2);
    on_cloth.middleRows(2 * i, 2) = turn * on_cloth.middleRows(2 * i, 2);
  }

  const Eigen::MatrixXd all = without(whole_motions(points, false), errors);
  const Eigen::MatrixXd slant = without(whole_motions(points, false), on_cloth - errors) / kCloth;
  const Eigen::MatrixXd shape = without(whole_motions(points, true), errors);
  std::vector<double> all95 = radii95(all), shape95 = radii95(shape);
  const std::vector<double> beyond = beyond_sightings(scene, pixels);
  const double own95 = std::max(kDot, kRayleigh95 * unexplained(scene, noise));
  for (size_t i = 0; i < pixels.size(); ++i) {
    // At least that: where the covariance says more, the company it was widened by has counted it already.
    all95[i] = beyond[i] * std::max(all95[i], own95);
    shape95[i] = beyond[i] * std::max(shape95[i], own95);
  }
  std::vector<double> slant95 = radii95(slant);
  // With nothing that tells the lens's height the covariance says too little of it.
  const bool told = scene.lamp_height || std::any_of(scene.sheets.begin(), scene.sheets.end(),
                                                     [](const SceneSheet& sheet) { return sheet.board; });
  const double doubt = told ? 0.0 : lamp_doubt(scene, noise);
  Eigen::Vector2d middle = Eigen::Vector2d::Zero();
  for (const Eigen::Vector2d& p : points) middle += p / static_cast<double>(points.size());
  for (size_t i = 0; i < points.size(); ++i)
    slant95[i] = std::max(slant95[i], 1.96 * doubt * (points[i] - middle).norm() / map.lamp().z());
  out.worst95 = *std::max_element(all95.begin(), all95.end());
  out.shape95 = *std::max_element(shape95.begin(), shape95.end());
  out.scale_sigma =
      std::sqrt((whole_motions(points, true).householderQr().solve(errors)).row(3).squaredNorm());
  out.lamp_sigma = std::max(std::sqrt(lamp_errors.squaredNorm() / 3.0) / map.lamp().norm(), doubt);

  // Nodes take the error of the nearest points of the picture, weighted by closeness.
  for (int r = 0; r < out.grid.rows; ++r)
    for (int c = 0; c < out.grid.columns; ++c) {
      const Eigen::Vector2d node = out.grid.first + out.grid.step * Eigen::Vector2d(c, r);
      double sum = 0.0, slant_sum = 0.0, weights = 0.0;
      for (size_t i = 0; i < points.size(); ++i) {
        const double near = (points[i] - node).squaredNorm() / (out.grid.step * out.grid.step);
        const double weight = 1.0 / (1e-3 + near * near);
        sum += weight * all95[i];
        slant_sum += weight * slant95[i];
        weights += weight;
      }
      out.grid.mm95.push_back(sum / weights);
      out.grid.mm95_per_mm.push_back(slant_sum / weights);
    }
  return out;
}

}  // namespace cowlcast::calibration
