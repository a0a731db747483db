#include "calibration/watch/motion.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>

#include "calibration/watch/nudge.h"

namespace cowlcast::calibration {
namespace {

constexpr double kTurn = 0.05, kSlide = 50.0;  // a priori sizes of freedoms: radians, mm
constexpr double kStray = 5.0;                 // misses beyond so many sigmas count no further
constexpr double kSoft = 2.5;                  // where the robust weight halves, sigmas
constexpr double kBent = 0.03;                 // of a shift: what linearity and the camera's model may be off
constexpr int kRounds = 6;
constexpr size_t kFewest = 3, kFewestFree = 5;  // sights of its own that must bear witness to a move
constexpr double kNotable = 0.5,
                 kAside = 0.12;     // mm, and share of the first, that a second mover must come to
constexpr double kWitnesses = 0.6;  // share of its own sights that must agree with it

int freedoms(Mover mover) {
  return mover == Mover::mat ? 3 : 6;
}

Eigen::Vector2d pixel_of(const FixedCamera& camera, const Eigen::Vector2d& mat) {
  const Eigen::Vector3d seen = camera.camera_from_mat * Eigen::Vector3d(mat.x(), mat.y(), 0.0);
  return camera.lens.pixel_from_ray(seen.head<2>() / seen.z());
}

// Millimetres of mat to pixels of the camera about a point.
Eigen::Matrix2d pixel_slope(const FixedCamera& camera, const Eigen::Vector2d& mat) {
  constexpr double step = 0.1;
  Eigen::Matrix2d out;
  for (int i = 0; i < 2; ++i) {
    const Eigen::Vector2d d = step * Eigen::Vector2d::Unit(i);
    out.col(i) = (pixel_of(camera, mat + d) - pixel_of(camera, mat - d)) / (2.0 * step);
  }
  return out;
}

Eigen::Matrix<double, 2, 3> mat_slope(const Eigen::Vector2d& mat) {
  Eigen::Matrix<double, 2, 3> out;
  out << 1, 0, -mat.y(), 0, 1, mat.x();
  return out;
}

// Shift on the mat, mm, of the light of a picture pixel.
Eigen::Matrix<double, 2, 6> light_slope(const TableMap& map, const Eigen::Vector2d& picture) {
  TableMap moved = map;
  return slopes_of([&](const SixNumbers& by) {
    moved.projector_from_mat_frame = nudged(map.projector_from_mat_frame, by);
    return moved.mat_from_projector(picture);
  });
}

// Shift in the frame, pixels, of a point of the mat.
Eigen::Matrix<double, 2, 6> view_slope(const FixedCamera& camera, const Eigen::Vector2d& mat) {
  FixedCamera moved = camera;
  return slopes_of([&](const SixNumbers& by) {
    moved.camera_from_mat = nudged(camera.camera_from_mat, by);
    return pixel_of(moved, mat);
  });
}

}  // namespace

std::string name_of(Mover mover) {
  switch (mover) {
    case Mover::mat:
      return "mat";
    case Mover::projector:
      return "projector";
    case Mover::camera:
      break;
  }
  return "camera";
}

struct Motions::Trial {
  double cost = 0.0;  // squared misses over their noise, strays held at kStray
  int strays = 0;
  bool borne_out = true;  // every mover has witnesses of its own
  std::vector<Moved> moved;
};

Motions::Motions(const TableMap& map, const FixedCamera& camera, const std::vector<Sight>& sights)
    : sights_(sights) {
  for (const Sight& sight : sights) {
    const Eigen::Vector2d mat = camera.mat_from_pixel(sight.pixel);
    const Eigen::Matrix2d pixels = pixel_slope(camera, mat);
    Slopes slopes;
    slopes.camera = view_slope(camera, mat);
    slopes.mat = pixels * mat_slope(mat);
    if (sight.kind == SightKind::mark) slopes.projector = pixels * light_slope(map, sight.picture);
    slopes_.push_back(slopes);
  }
  for (int i = 0; i <= 4; ++i)
    for (int j = 0; j <= 4; ++j) {
      const Eigen::Vector2d picture((map.width - 1) * j / 4.0, (map.height - 1) * i / 4.0);
      const Eigen::Vector2d mat = map.mat_from_projector(picture);
      Slopes slopes;
      slopes.mat = mat_slope(mat);
      slopes.projector = light_slope(map, picture);
      slopes.camera = pixel_slope(camera, mat).inverse() * view_slope(camera, mat);
      lit_.push_back(slopes);
    }
}

double Motions::amount(Mover mover, const Eigen::VectorXd& size) const {
  double most = 0.0;
  for (const Slopes& at : lit_) {
    const Eigen::Vector2d shift = mover == Mover::projector ? Eigen::Vector2d(at.projector * size)
                                  : mover == Mover::camera  ? Eigen::Vector2d(at.camera * size)
                                                            : Eigen::Vector2d(at.mat * size);
    most = std::max(most, shift.norm());
  }
  return most;
}

Motions::Trial Motions::fit(const std::vector<std::optional<SightShift>>& shifts,
                            const std::vector<Mover>& movers) const {
  int count = 0;
  for (const Mover mover : movers) count += freedoms(mover);
  Eigen::VectorXd prior(count), size = Eigen::VectorXd::Zero(count);
  int at = 0;
  for (const Mover mover : movers) {
    if (freedoms(mover) == 3)
      prior.segment(at, 3) << kSlide, kSlide, kTurn;
    else
      prior.segment(at, 6) << kTurn, kTurn, kTurn, kSlide, kSlide, kSlide;
    at += freedoms(mover);
  }
  // What is beside the mat may lie on a table that the mat lies on too, or on the mat itself: it goes with
  // the mat or stays, whichever fits better.
  std::vector<Eigen::MatrixXd> slopes(shifts.size()), with_mat(shifts.size());
  for (size_t i = 0; i < shifts.size(); ++i) {
    slopes[i] = Eigen::MatrixXd::Zero(2, count);
    const SightKind kind = sights_[i].kind;
    int column = 0;
    for (const Mover mover : movers) {
      if (mover == Mover::projector && kind == SightKind::mark)
        slopes[i].middleCols(column, 6) = slopes_[i].projector;
      if (mover == Mover::camera) slopes[i].middleCols(column, 6) = slopes_[i].camera;
      if (mover == Mover::mat && kind == SightKind::tag) slopes[i].middleCols(column, 3) = slopes_[i].mat;
      column += freedoms(mover);
    }
    with_mat[i] = slopes[i];
    if (kind == SightKind::room && !movers.empty() && movers.front() == Mover::mat)
      with_mat[i].leftCols(3) = slopes_[i].mat;
  }
  const auto sigma_of = [](const SightShift& s) { return std::hypot(s.sigma, kBent * s.shift.norm()); };
  std::vector<double> misses(shifts.size(), 0.0);
  for (int round = 0; round < (count == 0 ? 1 : kRounds); ++round) {
    Eigen::MatrixXd normal = prior.cwiseInverse().cwiseAbs2().asDiagonal();
    Eigen::VectorXd right = Eigen::VectorXd::Zero(count);
    for (size_t i = 0; i < shifts.size() && count > 0; ++i) {
      if (!shifts[i]) continue;
      const double sigma = sigma_of(*shifts[i]);
      const double far = round == 0 ? 0.0 : misses[i] / kSoft;
      const double weight = 1.0 / ((1.0 + far * far) * (1.0 + far * far) * sigma * sigma);
      normal += weight * slopes[i].transpose() * slopes[i];
      right += weight * slopes[i].transpose() * shifts[i]->shift;
    }
    if (count > 0) size = normal.ldlt().solve(right);
    for (size_t i = 0; i < shifts.size(); ++i) {
      if (!shifts[i]) continue;
      const double sigma = sigma_of(*shifts[i]);
      const double stays = (shifts[i]->shift - slopes[i] * size).norm() / sigma,
                   goes = (shifts[i]->shift - with_mat[i] * size).norm() / sigma;
      misses[i] = std::min(stays, goes);
    }
  }

  Trial out;
  for (size_t i = 0; i < shifts.size(); ++i) {
    if (!shifts[i]) continue;
    const bool stray = misses[i] > kStray;
    out.strays += stray ? 1 : 0;
    out.cost += stray ? kStray * kStray : misses[i] * misses[i];
  }
  at = 0;
  for (const Mover mover : movers) {
    const SightKind own = mover == Mover::projector ? SightKind::mark : SightKind::tag;
    size_t seen = 0, agree = 0;
    for (size_t i = 0; i < shifts.size(); ++i) {
      if (!shifts[i] || sights_[i].kind != own) continue;
      ++seen;
      agree += misses[i] <= kStray ? 1 : 0;
    }
    out.borne_out = out.borne_out && agree >= (mover == Mover::projector ? kFewestFree : kFewest) &&
                    static_cast<double>(agree) >= kWitnesses * static_cast<double>(seen);
    out.moved.push_back({mover, amount(mover, size.segment(at, freedoms(mover)))});
    at += freedoms(mover);
  }
  return out;
}

Motion Motions::explain(const std::vector<std::optional<SightShift>>& shifts) const {
  using enum Mover;
  static const std::vector<std::vector<Mover>> sets = {
      {}, {mat}, {projector}, {camera}, {mat, camera}, {mat, projector}, {projector, camera}};
  constexpr double kBase = 8.0, kFreedom = 4.0,
                   kTwo = 30.0;  // what a mover, each of its freedoms and a second mover must explain
  const Trial none = fit(shifts, {});
  Trial best = none;
  double least = none.cost;
  for (const std::vector<Mover>& movers : sets) {
    if (movers.empty() || least < kBase) continue;
    double price = movers.size() > 1 ? kTwo : 0.0;
    for (const Mover mover : movers) price += kBase + kFreedom * freedoms(mover);
    if (price > least) continue;
    Trial trial = fit(shifts, movers);
    if (!trial.borne_out || trial.cost + price >= least) continue;
    least = trial.cost + price;
    best = std::move(trial);
  }
  Motion out;
  const auto sees = [&](SightKind kind) {
    size_t seen = 0;
    for (size_t i = 0; i < shifts.size(); ++i) seen += shifts[i] && sights_[i].kind == kind ? 1 : 0;
    return seen >= kFewest;
  };
  out.sure = sees(SightKind::tag) && sees(SightKind::mark);
  out.strays = best.strays;
  for (const Moved& moved : best.moved) out.mm = std::max(out.mm, moved.mm);
  // What the mat's print under the marks feigns of a second move is not told.
  for (const Moved& moved : best.moved)
    if (best.moved.size() == 1 || moved.mm >= std::max(kNotable, kAside * out.mm)) out.moved.push_back(moved);
  return out;
}

}  // namespace cowlcast::calibration
