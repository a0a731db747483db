#include "calibration/solve/plane_pose.h"

#include <Eigen/Geometry>
#include <Eigen/LU>
#include <Eigen/SVD>
#include <cmath>

namespace cowlcast::calibration {

std::optional<Placement> pose_over_mat(const Eigen::Matrix3d& pixel_from_mat, const Lens& lens) {
  Eigen::Matrix3d pinhole = Eigen::Matrix3d::Identity();
  pinhole(0, 0) = pinhole(1, 1) = lens.focal;
  pinhole.topRightCorner<2, 1>() = lens.centre;
  Eigen::Matrix3d h = pinhole.inverse() * pixel_from_mat;
  h /= std::sqrt(h.col(0).norm() * h.col(1).norm());
  if (h(2, 2) < 0.0) h = -h;  // the mat lies in front
  Eigen::Matrix3d turn;
  turn << h.col(0), h.col(1), h.col(0).cross(h.col(1));
  const Eigen::JacobiSVD<Eigen::Matrix3d> svd(turn, Eigen::ComputeFullU | Eigen::ComputeFullV);
  Eigen::Isometry3d out = Eigen::Isometry3d::Identity();
  out.linear() = svd.matrixU() * svd.matrixV().transpose();
  out.translation() = h.col(2);
  if (out.linear().determinant() < 0.0 || out.inverse().translation().z() <= 0.0) return std::nullopt;
  return Placement::of(out);
}

std::array<double, 3> slide_and_turn(const std::vector<Eigen::Vector2d>& from,
                                     const std::vector<Eigen::Vector2d>& to) {
  Eigen::Vector2d from_mean = Eigen::Vector2d::Zero(), to_mean = Eigen::Vector2d::Zero();
  const double share = 1.0 / static_cast<double>(from.size());
  for (size_t i = 0; i < from.size(); ++i) {
    from_mean += share * from[i];
    to_mean += share * to[i];
  }
  double along = 0.0, across = 0.0;
  for (size_t i = 0; i < from.size(); ++i) {
    const Eigen::Vector2d p = from[i] - from_mean, m = to[i] - to_mean;
    along += p.dot(m);
    across += p.x() * m.y() - p.y() * m.x();
  }
  const double turn = std::atan2(across, along);
  const Eigen::Vector2d shift = to_mean - Eigen::Rotation2Dd(turn) * from_mean;
  return {shift.x(), shift.y(), turn};
}

}  // namespace cowlcast::calibration
