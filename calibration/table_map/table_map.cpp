#include "calibration/table_map/table_map.h"

#include <algorithm>
#include <cmath>

#include "calibration/refusal.h"

namespace cowlcast::calibration {

Eigen::Vector2d TableMap::projector_from_mat(const Eigen::Vector2d& mat, double cloth) const {
  const Eigen::Vector3d seen = projector_from_mat_frame * Eigen::Vector3d(mat.x(), mat.y(), cloth);
  const Eigen::Vector2d ray = seen.head<2>() / seen.z();
  if (!(seen.z() > 0.0) || !lens.covers(ray))
    throw Refusal("A point lies where the projector cannot throw light. Move the piece into the lit area.");
  return lens.pixel_from_ray(ray);
}

Eigen::Vector2d TableMap::mat_from_projector(const Eigen::Vector2d& pixel, double cloth) const {
  const Eigen::Vector3d ray = lens.ray_from_pixel(pixel).homogeneous();
  const Eigen::Vector3d from = lamp();
  const Eigen::Vector3d along = projector_from_mat_frame.rotation().transpose() * ray;
  const double reach = (cloth - from.z()) / along.z();
  if (!(reach > 0.0) || !std::isfinite(reach))
    throw Refusal(
        "A pixel's light does not reach the table. Point the projector down at the mat and calibrate again.");
  return (from + reach * along).head<2>();
}

Eigen::Vector3d TableMap::lamp() const {
  return projector_from_mat_frame.inverse().translation();
}

double TableMap::error_at(const Eigen::Vector2d& mat, double cloth) const {
  if (error.mm95.empty()) return 0.0;
  const double column = std::clamp((mat.x() - error.first.x()) / error.step, 0.0, error.columns - 1.0);
  const double row = std::clamp((mat.y() - error.first.y()) / error.step, 0.0, error.rows - 1.0);
  const int c = std::min(static_cast<int>(column), std::max(0, error.columns - 2));
  const int r = std::min(static_cast<int>(row), std::max(0, error.rows - 2));
  const double fc = column - c, fr = row - r;
  const auto node = [&](int cc, int rr) {
    return error.mm95[static_cast<size_t>(std::min(rr, error.rows - 1) * error.columns +
                                          std::min(cc, error.columns - 1))];
  };
  const double flat = (1 - fr) * ((1 - fc) * node(c, r) + fc * node(c + 1, r)) +
                      fr * ((1 - fc) * node(c, r + 1) + fc * node(c + 1, r + 1));
  const Eigen::Vector3d from = lamp();
  const double slope = (mat - from.head<2>()).norm() / from.z();
  return std::hypot(flat, 1.96 * std::abs(cloth) * std::hypot(1.0, slope) * lamp_sigma);
}

}  // namespace cowlcast::calibration
