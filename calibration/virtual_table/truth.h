// Truth: exact projections in a simulated room, to check answers against.
//
//   Eigen::Vector2d mm = *mat_from_projector(room.projector, {960, 540});
//   Eigen::Vector2d px = *camera_from_room(camera, {mm.x(), mm.y(), 0});
//
// All are exact to better than 1e-6 mm and 1e-6 px, electronic keystone, rolling
// shutter and the wobble of the glass included. Each answers nothing where no ray joins the two ends.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <optional>
#include <vector>

#include "calibration/virtual_table/room.h"

namespace cowlcast::calibration::virtual_table {

/// Point of the plane `height` mm above the mat that picture pixel `pixel` lights.
std::optional<Eigen::Vector2d> mat_from_projector(const RoomProjector& projector,
                                                  const Eigen::Vector2d& pixel, double height = 0.0);

/// Picture pixel that lights the point `mat` (mm) at `height` mm; may lie beyond the picture.
std::optional<Eigen::Vector2d> projector_from_mat(const RoomProjector& projector, const Eigen::Vector2d& mat,
                                                  double height = 0.0);

/// Pixel of the photograph that shows `point` (room frame, mm); may lie beyond its edges.
std::optional<Eigen::Vector2d> camera_from_room(const RoomCamera& camera, const Eigen::Vector3d& point);

/// Point of the plane `height` mm above the mat seen at `pixel`.
std::optional<Eigen::Vector2d> mat_from_camera(const RoomCamera& camera, const Eigen::Vector2d& pixel,
                                               double height = 0.0);

/// Where the point `paper` of the sheet itself, mm from its top left corner, lies in the room.
Eigen::Vector3d room_from_paper(const PaperSheet& sheet, const Eigen::Vector2d& paper);

/// Where on the paper, mm from its top left corner, the feature at nominal page point `page` was printed.
Eigen::Vector2d paper_from_page(const PaperSheet& sheet, const Eigen::Vector2d& page);

/// Where the printed feature at nominal page point `page` (mm) really lies: x, y
/// on the mat and z above it, print scale, shift, thickness and curl included.
Eigen::Vector3d room_from_page(const PaperSheet& sheet, const Eigen::Vector2d& page);

/// Outline of the paper on the mat, mm, anticlockwise from above.
std::vector<Eigen::Vector2d> paper_outline(const PaperSheet& sheet);

/// Outline of the whole picture at `height`, mm, anticlockwise from above, starting at the picture's
/// bottom left; `per_side` points a side. Empty where part of the picture misses the table.
std::vector<Eigen::Vector2d> lit_outline(const RoomProjector& projector, double height = 0.0,
                                         int per_side = 8);

/// The turn and shift, without scale, that lays `from` best on `to` (least
/// squares): takes a calibration's own mat frame to the room's. At least 2 points, as many as `to`.
Eigen::Isometry2d rigid_fit(const std::vector<Eigen::Vector2d>& from, const std::vector<Eigen::Vector2d>& to);

}  // namespace cowlcast::calibration::virtual_table
