#include "calibration/solve/scene.h"

#include <cmath>

namespace cowlcast::calibration {
namespace {

std::optional<Eigen::Vector2d> through(const Lens& lens, const Eigen::Isometry3d& lens_from_mat,
                                       const Eigen::Vector2d& mat, double height) {
  const Eigen::Vector3d seen = lens_from_mat * Eigen::Vector3d(mat.x(), mat.y(), height);
  if (!(seen.z() > 1e-6)) return std::nullopt;
  const Eigen::Vector2d ray = seen.head<2>() / seen.z();
  if (!lens.covers(ray)) return std::nullopt;
  return lens.pixel_from_ray(ray);
}

}  // namespace

Eigen::Isometry3d Placement::transform() const {
  const Eigen::Vector3d turn(numbers[0], numbers[1], numbers[2]);
  const double angle = turn.norm();
  Eigen::Isometry3d out = Eigen::Isometry3d::Identity();
  if (angle > 0.0) out.linear() = Eigen::AngleAxisd(angle, turn / angle).toRotationMatrix();
  out.translation() = Eigen::Vector3d(numbers[3], numbers[4], numbers[5]);
  return out;
}

Placement Placement::of(const Eigen::Isometry3d& transform) {
  const Eigen::AngleAxisd turn(transform.rotation());
  const Eigen::Vector3d v = turn.angle() * turn.axis(), t = transform.translation();
  return {{v.x(), v.y(), v.z(), t.x(), t.y(), t.z()}};
}

Lens LensNumbers::lens(double focal_factor) const {
  Lens out;
  out.focal = numbers[0] * focal_factor;
  out.centre = {numbers[1], numbers[2]};
  out.k1 = numbers[3];
  out.k2 = numbers[4];
  out.k3 = numbers[5];
  out.p1 = numbers[6];
  out.p2 = numbers[7];
  return out;
}

Eigen::Vector2d Scene::mat_from_sheet(int sheet, const Eigen::Vector2d& printed) const {
  const auto& place = sheets[static_cast<size_t>(sheet)].place;
  const Eigen::Vector2d real(printed.x() * std::exp(print_scale[0]), printed.y() * std::exp(print_scale[1]));
  return Eigen::Vector2d(place[0], place[1]) + Eigen::Rotation2Dd(place[2]) * real;
}

std::optional<Eigen::Vector2d> Scene::photo_from_mat(int photo, const Eigen::Vector2d& mat,
                                                     double height) const {
  const ScenePhoto& p = photos[static_cast<size_t>(photo)];
  return through(lenses[static_cast<size_t>(p.lens)].lens(std::exp(p.focus)), p.camera_from_mat.transform(),
                 mat, height);
}

Eigen::Vector2d Scene::mat_from_photo(int photo, const Eigen::Vector2d& pixel, double height) const {
  const ScenePhoto& p = photos[static_cast<size_t>(photo)];
  TableMap backwards;  // a camera's lines of sight are a projector's rays
  backwards.lens = lenses[static_cast<size_t>(p.lens)].lens(std::exp(p.focus));
  backwards.projector_from_mat_frame = p.camera_from_mat.transform();
  return backwards.mat_from_projector(pixel, height);
}

std::optional<Eigen::Vector2d> Scene::photo_from_sheet(int photo, int sheet,
                                                       const Eigen::Vector2d& printed) const {
  return photo_from_mat(photo, mat_from_sheet(sheet, printed), sheets[static_cast<size_t>(sheet)].height);
}

std::optional<Eigen::Vector2d> Scene::projector_from_mat_point(const Eigen::Vector2d& mat) const {
  const auto panel = through(projector_lens.lens(), projector_from_mat.transform(), mat, 0.0);
  if (!panel) return std::nullopt;
  return projector().keystone.picture_from_panel(*panel, projector_size);
}

TableMap Scene::projector() const {
  TableMap map;
  map.width = static_cast<int>(std::lround(projector_size.x()));
  map.height = static_cast<int>(std::lround(projector_size.y()));
  map.lens = projector_lens.lens();
  map.keystone = {keystone[0], keystone[1], keystone[2], keystone[3]};
  map.projector_from_mat_frame = projector_from_mat.transform();
  return map;
}

}  // namespace cowlcast::calibration
