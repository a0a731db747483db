// Lens: a pinhole with the distortion terms of Brown and Conrady.
//
//   Lens lens{.focal = 3000, .centre = {2015.5, 1511.5}, .k1 = 0.08};
//   Eigen::Vector2d pixel = lens.pixel_from_ray({0.1, -0.2});
//   Eigen::Vector2d ray = lens.ray_from_pixel(pixel);   // {0.1, -0.2} again
//
// A camera sends rays to pixels; a projector is the same thing run backwards,
// so one class serves both. Terms and their order are those of OpenCV's five
// coefficient model (k1, k2, p1, p2, k3); D. C. Brown, "Decentering distortion
// of lenses", Photogrammetric Engineering 32 (1966).
#pragma once

#include <Eigen/Core>

namespace cowlcast::calibration {

/// A lens. Pixels are square; the centre of the first pixel is (0, 0).
struct Lens {
  double focal = 1.0;                                ///< focal length, pixels
  Eigen::Vector2d centre = Eigen::Vector2d::Zero();  ///< principal point, pixels
  double k1 = 0.0, k2 = 0.0, k3 = 0.0;               ///< radial terms
  double p1 = 0.0, p2 = 0.0;                         ///< tangential terms

  /// Where a ray lands. `ray` is (x/z, y/z) in the lens frame: x right, y down,
  /// z along the view. Any finite ray has an answer, but beyond the radius where
  /// the radial polynomial turns back the answer means nothing: see `covers`.
  Eigen::Vector2d pixel_from_ray(const Eigen::Vector2d& ray) const;

  /// The ray (x/z, y/z) that lands on `pixel`, by Newton's method to 1e-12.
  /// Throws Refusal where no ray does (outside the lens's valid radius).
  Eigen::Vector2d ray_from_pixel(const Eigen::Vector2d& pixel) const;

  /// True where the distortion still grows with the radius, that is where
  /// `pixel_from_ray` is one to one.
  bool covers(const Eigen::Vector2d& ray) const;
};

}  // namespace cowlcast::calibration
