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
  return keystone.picture_from_panel(lens.pixel_from_ray(ray), {width, height});
}

Eigen::Vector2d TableMap::mat_from_projector(const Eigen::Vector2d& pixel, double cloth) const {
  const Eigen::Vector3d ray =
      lens.ray_from_pixel(keystone.panel_from_picture(pixel, {width, height})).homogeneous();
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

double ErrorGrid::at(const std::vector<double>& nodes, const Eigen::Vector2d& mat) const {
  const double column = std::clamp((mat.x() - first.x()) / step, 0.0, columns - 1.0);
  const double row = std::clamp((mat.y() - first.y()) / step, 0.0, rows - 1.0);
  const int c = std::min(static_cast<int>(column), std::max(0, columns - 2));
  const int r = std::min(static_cast<int>(row), std::max(0, rows - 2));
  const double fc = column - c, fr = row - r;
  const auto node = [&](int cc, int rr) {
    return nodes[static_cast<size_t>(std::min(rr, rows - 1) * columns + std::min(cc, columns - 1))];
  };
  return (1 - fr) * ((1 - fc) * node(c, r) + fc * node(c + 1, r)) +
         fr * ((1 - fc) * node(c, r + 1) + fc * node(c + 1, r + 1));
}

ErrorGrid ErrorGrid::moved_by(const Eigen::Isometry2d& motion) const {
  if (mm95.empty()) return *this;
  Eigen::AlignedBox2d box;
  for (const int c : {0, columns - 1})
    for (const int r : {0, rows - 1})
      box.extend(motion * Eigen::Vector2d(first + step * Eigen::Vector2d(c, r)));
  ErrorGrid out;
  out.first = box.min();
  out.step = step;
  out.columns = static_cast<int>(std::ceil(box.sizes().x() / step - 1e-9)) + 1;
  out.rows = static_cast<int>(std::ceil(box.sizes().y() / step - 1e-9)) + 1;
  const Eigen::Isometry2d back = motion.inverse();
  for (int r = 0; r < out.rows; ++r)
    for (int c = 0; c < out.columns; ++c) {
      const Eigen::Vector2d place = back * Eigen::Vector2d(out.first + step * Eigen::Vector2d(c, r));
      out.mm95.push_back(at(mm95, place));
      if (!mm95_per_mm.empty()) out.mm95_per_mm.push_back(at(mm95_per_mm, place));
    }
  return out;
}

double TableMap::error_at(const Eigen::Vector2d& mat, double cloth) const {
  if (error.mm95.empty()) return 0.0;
  const double flat = error.at(error.mm95, mat);
  if (!error.mm95_per_mm.empty()) return std::hypot(flat, cloth * error.at(error.mm95_per_mm, mat));
  const Eigen::Vector3d from = lamp();  // a map of before slants were kept
  const double slope = (mat - from.head<2>()).norm() / from.z();
  return std::hypot(flat, 1.96 * std::abs(cloth) * std::hypot(1.0, slope) * lamp_sigma);
}

}  // namespace cowlcast::calibration
