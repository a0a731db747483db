// Where a camera or projector stands, from its flat view of the mat; where a sheet lies on it.
#pragma once

#include <Eigen/Core>
#include <array>
#include <optional>
#include <vector>

#include "calibration/lens/lens.h"
#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

/// Placement from the homography `pixel_from_mat` (mat mm to pixels), the lens's
/// focal length and centre known and its distortion left aside. Nothing when it
/// would stand under the table. Z. Zhang, "A flexible new technique for camera
/// calibration", IEEE PAMI 22 (2000), section 3.1.
std::optional<Placement> pose_over_mat(const Eigen::Matrix3d& pixel_from_mat, const Lens& lens);

/// The slide and turn that best bring `from` onto `to` (x, y, turn in radians), in the sense of least
/// squares.
std::array<double, 3> slide_and_turn(const std::vector<Eigen::Vector2d>& from,
                                     const std::vector<Eigen::Vector2d>& to);

}  // namespace cowlcast::calibration
