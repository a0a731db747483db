// FixedCamera: a camera that stays where it is and looks at the mat.
//
//   FixedCamera camera = FixedCamera::from_json(text);
//   if (auto px = camera.pixel_from_mat({100, 50}, 1.2)) ...     // cloth 1.2 mm thick
//   Eigen::Vector2d mm = camera.mat_from_pixel(*px, 1.2);        // {100, 50} again
//
// Whoever watches the table needs to know where in the camera's frames a place
// of the mat is seen. The mat frame is that of the TableMap the camera was
// located with; the camera's own frame is x right, y down, z along the view.
// It holds as long as neither camera nor table is moved; nothing here notices.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <optional>
#include <string>
#include <vector>

#include "calibration/lens/lens.h"

namespace cowlcast::calibration {

/// Where the middle of an edge tag lies, mm of the mat, as the camera saw it.
struct TagPlace {
  int number = 0;
  Eigen::Vector2d at = Eigen::Vector2d::Zero();
};

struct FixedCamera {
  int width = 0, height = 0;  ///< of its frames, pixels
  Lens lens;
  Eigen::Isometry3d camera_from_mat = Eigen::Isometry3d::Identity();
  std::vector<TagPlace> tags;  ///< when it was located: what tells later whether mat or camera moved since

  /// Pixel that shows the point `mat` (mm), `above` mm over the mat. Nothing where the point is behind the
  /// camera, beyond its lens, or outside its frame.
  std::optional<Eigen::Vector2d> pixel_from_mat(const Eigen::Vector2d& mat, double above = 0.0) const;

  /// Point (mm) of the plane `above` mm over the mat that `pixel` shows. Throws Refusal where its ray misses
  /// that plane.
  Eigen::Vector2d mat_from_pixel(const Eigen::Vector2d& pixel, double above = 0.0) const;

  /// Place of the lens in the mat frame, mm.
  Eigen::Vector3d eye() const { return camera_from_mat.inverse().translation(); }

  /// JSON text with "format": "cowlcast fixed camera" and "schema": 1.
  std::string to_json() const;
  /// Throws Refusal for text that is not a complete camera, saying what is wrong with it.
  static FixedCamera from_json(const std::string& text);
};

}  // namespace cowlcast::calibration
