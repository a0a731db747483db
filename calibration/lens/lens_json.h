// A lens and where it stands, as the files have them. Internal to what writes and reads JSON.
#pragma once

#include <Eigen/Geometry>
#include <nlohmann/json.hpp>

#include "calibration/lens/lens.h"

namespace cowlcast::calibration {

struct PlacedLens {
  Lens lens;
  Eigen::Isometry3d lens_from_mat = Eigen::Isometry3d::Identity();

  /// The members "lens", "rotation" and "translation".
  nlohmann::json to_json() const;
  /// Throws nlohmann::json::exception where one is missing or no number. Whether it can be is asked apart.
  static PlacedLens from_json(const nlohmann::json& in);
  /// The rotation is one, and the focal length a length.
  bool sound() const;
};

nlohmann::json json_of(const Eigen::Vector2d& point);
Eigen::Vector2d point_of(const nlohmann::json& value);

}  // namespace cowlcast::calibration
