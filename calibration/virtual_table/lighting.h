// Lighting: what falls on a point of the table from room and projector. Internal.
#pragma once

#include <opencv2/core.hpp>

#include "calibration/virtual_table/surfaces.h"
#include "calibration/virtual_table/textures.h"

namespace cowlcast::calibration::virtual_table {

/// What is known exactly where a line of sight meets a surface, and interpolated in between.
struct Node {
  float a = 0, b = 0;                    ///< on the surface, mm
  float u = 0, v = 0;                    ///< on the beam's texture, texels of the level in use
  float ambient = 0, beam = 0;           ///< lux, for white
  float lamp_shine = 0, beam_shine = 0;  ///< lux mirrored towards the eye
  bool seen = false;                     ///< the line of sight meets the surface
  bool lit = false;                      ///< the projector's lens answers for the point
};

class Lighting {
 public:
  /// The room must outlive it.
  Lighting(const Room& room, const cv::Mat& picture);

  /// Whether the projector shows anything.
  bool on() const { return !beam_.light.levels.empty(); }
  /// Chooses the level of the beam's texture for samples `footprint` mm apart on the mat.
  void prepare(double footprint);
  /// The texture in use; only while on.
  const cv::Mat& beam() const { return beam_.light.levels[static_cast<std::size_t>(level_)]; }
  /// Light scattered evenly over the table, lux.
  float bounce() const;

  /// Fills in all but the place on the surface.
  void light(const Meeting& meeting, const Eigen::Vector3d& eye, const Surface& surface, Node& node) const;

 private:
  const Room& room_;
  BeamTexture beam_;
  int level_ = 0;
  Eigen::Vector3d lens_;    // place of the projector's lens, mm
  Eigen::Vector2d middle_;  // of the panel, pixels
  double corner2_ = 1.0;    // squared distance from there to its corner
};

}  // namespace cowlcast::calibration::virtual_table
