// Finds the projected target in the photographs of a scene that is otherwise fitted.
#pragma once

#include <opencv2/core.hpp>
#include <vector>

#include "calibration/solve/scene.h"
#include "calibration/table_map/table_map.h"
#include "calibration/target/target.h"

namespace cowlcast::calibration {

/// Decides which photographs show the target, and makes a first guess of the
/// projector from its markers. `pictures` are those of `scene.photos`, 8-bit grey.
/// Throws Refusal when the target is not seen or the picture is mirrored.
void start_projector(Scene& scene, const std::vector<cv::Mat>& pictures, const TargetLayout& layout);

/// Replaces the scene's light points and sightings by those found near where the
/// scene now says they are, in photographs of the target divided by one of plain light.
void find_light(Scene& scene, const std::vector<cv::Mat>& pictures, const TargetLayout& layout);

/// Throws Refusal when rows or columns of the target along a side are seen nowhere
/// although the photographs would show them: the picture is not the one the layout
/// is of, or part of it falls beside the table.
void check_sides(const Scene& scene, const std::vector<cv::Mat>& pictures, const TargetLayout& layout);

/// Drops paper sightings, in photographs of the target, that an edge of the target crosses.
void drop_crossed_paper(Scene& scene, const TargetLayout& layout);

/// Where a projector pixel falls, on the mat or on a raised sheet. Throws Refusal where there is none.
Spot spot_of_picture(const Scene& scene, const Eigen::Vector2d& pixel);

/// Mat point of a projector pixel, by the scene's projector. Throws Refusal where there is none.
Eigen::Vector2d mat_from_picture(const Scene& scene, const Eigen::Vector2d& pixel);

}  // namespace cowlcast::calibration
