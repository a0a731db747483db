// A first guess of the scene from the sheets seen in the photographs.
#pragma once

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "calibration/detect/paper.h"
#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

/// What one photograph shows.
struct PhotoSheets {
  std::string name;
  Eigen::Vector2d size = Eigen::Vector2d::Zero();  ///< pixels
  std::optional<double> exif_focal;                ///< pixels
  std::vector<SheetView> sheets;
};

/// Places sheets and photographs that hang together through shared sheets (the
/// largest such group; the names of photographs left over go to `left_out`),
/// then finds lens, poses and print scale by the fit, begun from several focal
/// lengths. The scene has no light and no projector yet. Throws Refusal when no
/// sheet is seen or no start leads anywhere.
Scene start_scene(const std::vector<PhotoSheets>& photos, const ScaleReading& reading,
                  std::vector<std::string>& left_out);

/// Marks as not used every paper sighting that strays beyond what the others do.
/// Returns the typical size (standard deviation of a coordinate) over the sightings' sigma.
double reject_stray_paper(Scene& scene);
/// The same for light sightings.
double reject_stray_light(Scene& scene);

/// Fits paper alone again, strays thrown out: while nothing is known of the light.
void settle_paper(Scene& scene);

}  // namespace cowlcast::calibration
