#include "calibration/solve/finish.h"

#include <cmath>

#include "calibration/solve/light.h"

namespace cowlcast::calibration {

TableMap finish_map(const Scene& scene) {
  TableMap map = scene.projector();
  const Eigen::Vector2d middle(0.5 * (map.width - 1), 0.5 * (map.height - 1)), step(0.5, 0.0);
  const Eigen::Vector2d origin = mat_from_picture(scene, middle);
  const Eigen::Vector2d along =
      mat_from_picture(scene, middle + step) - mat_from_picture(scene, middle - step);
  Eigen::Isometry3d working_from_map = Eigen::Isometry3d::Identity();
  working_from_map.linear() =
      Eigen::AngleAxisd(std::atan2(along.y(), along.x()), Eigen::Vector3d::UnitZ()).toRotationMatrix();
  working_from_map.translation() = Eigen::Vector3d(origin.x(), origin.y(), 0.0);
  map.projector_from_mat_frame = scene.projector_from_mat.transform() * working_from_map;

  // Around the picture's outermost edge, which is counter-clockwise on the mat
  // when it is walked from the lower left along the foot.
  constexpr int kSteps = 16;
  const double right = map.width - 0.5, low = map.height - 0.5;
  const Eigen::Vector2d corners[] = {{-0.5, low}, {right, low}, {right, -0.5}, {-0.5, -0.5}};
  for (int side = 0; side < 4; ++side)
    for (int i = 0; i < kSteps; ++i)
      map.lit_area.push_back(map.mat_from_projector(
          corners[side] + (corners[(side + 1) % 4] - corners[side]) * i / static_cast<double>(kSteps)));

  map.scale.across = std::exp(scene.print_scale[0]);
  map.scale.down = std::exp(scene.print_scale[1]);
  return map;
}

}  // namespace cowlcast::calibration
