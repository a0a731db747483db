#include "calibration/virtual_table/truth.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace cowlcast::calibration::virtual_table {

namespace {

// Where the ray of slope `ray` from the device at `device_from_room` meets the plane z = height.
std::optional<Eigen::Vector2d> meet_plane(const Eigen::Isometry3d& device_from_room,
                                          const Eigen::Vector2d& ray, double height) {
  const Eigen::Isometry3d room_from_device = device_from_room.inverse();
  const Eigen::Vector3d eye = room_from_device.translation();
  const Eigen::Vector3d way = room_from_device.linear() * Eigen::Vector3d(ray.x(), ray.y(), 1.0);
  const double steps = (height - eye.z()) / way.z();
  if (!(steps > 0.0) || !std::isfinite(steps)) return std::nullopt;
  return (eye + steps * way).head<2>();
}

std::optional<Eigen::Vector2d> see(const Optic& optic, const Eigen::Isometry3d& device_from_room,
                                   const Eigen::Vector3d& point) {
  const Eigen::Vector3d local = device_from_room * point;
  if (local.z() <= 1e-9) return std::nullopt;
  const Eigen::Vector2d ray = local.hnormalized();
  if (!optic.covers(ray)) return std::nullopt;
  return optic.pixel_from_ray(ray);
}

Eigen::Vector2d through(const Eigen::Matrix3d& homography, const Eigen::Vector2d& point) {
  return (homography * point.homogeneous()).hnormalized();
}

}  // namespace

std::optional<Eigen::Vector2d> mat_from_projector(const RoomProjector& projector,
                                                  const Eigen::Vector2d& pixel, double height) {
  const Eigen::Vector2d panel =
      projector.panel_from_picture ? through(*projector.panel_from_picture, pixel) : pixel;
  const auto ray = projector.optic.ray_from_pixel(panel);
  if (!ray) return std::nullopt;
  return meet_plane(projector.projector_from_room, *ray, height);
}

std::optional<Eigen::Vector2d> projector_from_mat(const RoomProjector& projector, const Eigen::Vector2d& mat,
                                                  double height) {
  auto panel = see(projector.optic, projector.projector_from_room, {mat.x(), mat.y(), height});
  if (panel && projector.panel_from_picture) panel = through(projector.panel_from_picture->inverse(), *panel);
  return panel;
}

std::optional<Eigen::Vector2d> camera_from_room(const RoomCamera& camera, const Eigen::Vector3d& point) {
  auto pixel = see(camera.optic, camera.camera_from_room, point);
  // A row is read at its own moment, when the drift has gone its share of the way.
  if (pixel && !camera.rolling.isZero()) {
    const double rows = camera.height - 1.0;
    const double row = (pixel->y() - 0.5 * camera.rolling.y()) / (1.0 - camera.rolling.y() / rows);
    *pixel += camera.rolling * (row / rows - 0.5);
  }
  return pixel;
}

std::optional<Eigen::Vector2d> mat_from_camera(const RoomCamera& camera, const Eigen::Vector2d& pixel,
                                               double height) {
  const Eigen::Vector2d still = pixel - camera.rolling * (pixel.y() / (camera.height - 1.0) - 0.5);
  const auto ray = camera.optic.ray_from_pixel(still);
  if (!ray) return std::nullopt;
  return meet_plane(camera.camera_from_room, *ray, height);
}

Eigen::Vector3d room_from_paper(const PaperSheet& sheet, const Eigen::Vector2d& paper) {
  Eigen::Vector2d flat = paper;
  double rise = 0.0;
  const Eigen::Vector2d span = sheet.curl.towards - sheet.curl.from;
  if (sheet.curl.height > 0.0 && span.norm() > 0.0) {
    const Eigen::Vector2d way = span.normalized();
    const double s = (paper - sheet.curl.from).dot(way);
    if (s > 0.0) {
      // The paper keeps its length: z = height (s / span)^2 along it, so that dz/ds = a s and
      // what is left on the table is the integral of sqrt(1 - (a s)^2).
      const double a = 2.0 * sheet.curl.height / span.squaredNorm();
      const double steep = std::min(a * s, 1.0);
      rise = 0.5 * a * s * s;
      flat += way * (0.5 * (s * std::sqrt(1.0 - steep * steep) + std::asin(steep) / a) - s);
    }
  }
  const Eigen::Vector2d middle(flat.x() - 0.5 * sheet.paper.x(), 0.5 * sheet.paper.y() - flat.y());
  const Eigen::Vector2d mat =
      Eigen::Rotation2Dd(sheet.place.turn) * middle + Eigen::Vector2d(sheet.place.x, sheet.place.y);
  return {mat.x(), mat.y(), sheet.thickness + rise};
}

Eigen::Vector2d paper_from_page(const PaperSheet& sheet, const Eigen::Vector2d& page) {
  const Eigen::Vector2d middle = 0.5 * sheet.paper;
  return middle + sheet.shift + (page - middle).cwiseProduct(Eigen::Vector2d(sheet.across, sheet.down));
}

Eigen::Vector3d room_from_page(const PaperSheet& sheet, const Eigen::Vector2d& page) {
  return room_from_paper(sheet, paper_from_page(sheet, page));
}

std::vector<Eigen::Vector2d> paper_outline(const PaperSheet& sheet) {
  const double w = sheet.paper.x(), h = sheet.paper.y();
  std::vector<Eigen::Vector2d> outline;
  for (const Eigen::Vector2d& corner :
       {Eigen::Vector2d(0.0, h), Eigen::Vector2d(w, h), Eigen::Vector2d(w, 0.0), Eigen::Vector2d(0.0, 0.0)})
    outline.push_back(room_from_paper(sheet, corner).head<2>());
  return outline;
}

std::vector<Eigen::Vector2d> lit_outline(const RoomProjector& projector, double height, int per_side) {
  const double left = -0.5, top = -0.5, right = projector.width - 0.5, bottom = projector.height - 0.5;
  const Eigen::Vector2d corners[] = {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
  std::vector<Eigen::Vector2d> outline;
  for (int side = 0; side < 4; ++side) {
    const Eigen::Vector2d step = (corners[(side + 1) % 4] - corners[side]) / std::max(per_side, 1);
    for (int k = 0; k < std::max(per_side, 1); ++k) {
      const auto point = mat_from_projector(projector, corners[side] + k * step, height);
      if (!point) return {};
      outline.push_back(*point);
    }
  }
  return outline;
}

Eigen::Isometry2d rigid_fit(const std::vector<Eigen::Vector2d>& from,
                            const std::vector<Eigen::Vector2d>& to) {
  if (from.size() != to.size() || from.size() < 2)
    throw std::invalid_argument("rigid_fit: give two lists of the same length, two points or more");
  Eigen::Vector2d from_middle = Eigen::Vector2d::Zero(), to_middle = Eigen::Vector2d::Zero();
  for (std::size_t i = 0; i < from.size(); ++i) {
    from_middle += from[i];
    to_middle += to[i];
  }
  from_middle /= static_cast<double>(from.size());
  to_middle /= static_cast<double>(to.size());
  double along = 0.0, across = 0.0;
  for (std::size_t i = 0; i < from.size(); ++i) {
    const Eigen::Vector2d a = from[i] - from_middle, b = to[i] - to_middle;
    along += a.dot(b);
    across += a.x() * b.y() - a.y() * b.x();
  }
  Eigen::Isometry2d fit = Eigen::Isometry2d::Identity();
  fit.linear() = Eigen::Rotation2Dd(std::atan2(across, along)).toRotationMatrix();
  fit.translation() = to_middle - fit.linear() * from_middle;
  return fit;
}

}  // namespace cowlcast::calibration::virtual_table
