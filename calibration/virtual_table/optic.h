// Optic: the glass of a simulated camera or projector.
//
//   Optic phone{.focal = {3000, 3000}, .centre = {2015.5, 1511.5}, .k1 = 0.08};
//   Eigen::Vector2d pixel = phone.pixel_from_ray({0.1, -0.2});
//   Eigen::Vector2d ray = *phone.ray_from_pixel(pixel);   // {0.1, -0.2} again
//
// The simulated room must not share code with the solver that it examines, so it
// has a lens of its own, and one that is richer: separate focal lengths across
// and down, and a wobble that no polynomial of the solver can follow, because
// real glass is not a polynomial either.
#pragma once

#include <Eigen/Core>
#include <optional>

namespace cowlcast::calibration::virtual_table {

/// A pinhole with radial terms k1 k2 k3 and tangential terms p1 p2 in the order
/// and sense of OpenCV's five coefficient model (D. C. Brown, "Decentering
/// distortion of lenses", Photogrammetric Engineering 32, 1966), and a wobble.
struct Optic {
  Eigen::Vector2d focal{1000.0, 1000.0};  ///< pixels, across and down
  Eigen::Vector2d centre{0.0, 0.0};       ///< principal point, pixels; first pixel's centre is (0, 0)
  double k1 = 0.0, k2 = 0.0, k3 = 0.0;
  double p1 = 0.0, p2 = 0.0;
  double wobble = 0.0;        ///< height of the radial wobble, pixels
  double wobble_waves = 2.0;  ///< waves of it from the axis to a ray slope of 1
  double wobble_phase = 0.0;  ///< radians

  /// Where the ray (x/z, y/z) lands; frame x right, y down, z along the view.
  Eigen::Vector2d pixel_from_ray(const Eigen::Vector2d& ray) const;

  /// The ray that lands on `pixel`, by Newton's method to 1e-12 of a slope;
  /// nothing where no ray does (beyond the radius at which the glass folds back).
  std::optional<Eigen::Vector2d> ray_from_pixel(const Eigen::Vector2d& pixel) const;

  /// True where the radial distance grows all the way from the axis to `ray`, so that the answer
  /// of `pixel_from_ray` is where the light really goes.
  bool covers(const Eigen::Vector2d& ray) const;

  /// Ray slope up to which the radial distance still grows, at most `limit`.
  double valid_slope(double limit = 3.0) const;
};

}  // namespace cowlcast::calibration::virtual_table
