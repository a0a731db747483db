// Where a camera or projector stands, from its flat view of the mat.
#pragma once

#include <Eigen/Core>
#include <optional>

#include "calibration/lens/lens.h"
#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

/// Placement from the homography `pixel_from_mat` (mat mm to pixels), the lens's
/// focal length and centre known and its distortion left aside. Nothing when it
/// would stand under the table. Z. Zhang, "A flexible new technique for camera
/// calibration", IEEE PAMI 22 (2000), section 3.1.
std::optional<Placement> pose_over_mat(const Eigen::Matrix3d& pixel_from_mat, const Lens& lens);

}  // namespace cowlcast::calibration
