// Surfaces: the flat or nearly flat things of a room, each with its own
// coordinates, as the renderer meets them along a line of sight. Internal.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "calibration/virtual_table/renderer.h"
#include "calibration/virtual_table/room.h"
#include "calibration/virtual_table/sampling.h"
#include "calibration/virtual_table/textures.h"

namespace cowlcast::calibration::virtual_table {

/// Where a line of sight meets a surface.
struct Meeting {
  Eigen::Vector2d own{0.0, 0.0};        ///< on the surface, mm from its top left corner, right and down
  Eigen::Vector3d room{0.0, 0.0, 0.0};  ///< mm
};

/// Samples in a row: places on a surface in, colours and cover out.
struct Run {
  RunValues a, b;                   ///< own coordinates, mm
  float footprint = 0.1f;           ///< distance between samples, mm
  std::array<RunValues, 3> albedo;  ///< blue, green, red
  RunValues cover;                  ///< 0 beyond the surface's edge, 1 on it
};

class Surface {
 public:
  virtual ~Surface() = default;
  virtual std::optional<Meeting> meet(const Sight& sight) const = 0;
  virtual void shade(Run& run) const = 0;
  /// Chooses texture levels for samples this far apart, mm.
  virtual void prepare(double footprint) = 0;

  Eigen::Vector2d size{0.0, 0.0};  ///< mm
  bool endless = false;            ///< goes on beyond its size: the mat with the table around it
  float gloss = 0.0f, gloss_width = 0.15f;
};

/// The room's surfaces from the lowest to the highest. The room must outlive them.
std::vector<std::unique_ptr<Surface>> surfaces_of(const Room& room);

}  // namespace cowlcast::calibration::virtual_table
