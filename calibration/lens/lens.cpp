#include "calibration/lens/lens.h"

#include <Eigen/LU>
#include <cmath>

#include "calibration/lens/distortion.h"
#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

struct Distorted {
  Eigen::Vector2d at;
  Eigen::Matrix2d slope;  // d at / d ray
};

Distorted distorted(const Lens& lens, const Eigen::Vector2d& ray) {
  const double x = ray.x(), y = ray.y();
  const double r2 = x * x + y * y;
  const double radial = 1.0 + r2 * (lens.k1 + r2 * (lens.k2 + r2 * lens.k3));
  const double radial_by_r2 = lens.k1 + r2 * (2.0 * lens.k2 + r2 * 3.0 * lens.k3);
  Distorted out;
  const double k[] = {lens.k1, lens.k2, lens.k3}, p[] = {lens.p1, lens.p2};
  distort(x, y, k, p, out.at.x(), out.at.y());
  const double cross = 2.0 * x * y * radial_by_r2 + 2.0 * lens.p1 * x + 2.0 * lens.p2 * y;
  out.slope << radial + 2.0 * x * x * radial_by_r2 + 2.0 * lens.p1 * y + 6.0 * lens.p2 * x, cross, cross,
      radial + 2.0 * y * y * radial_by_r2 + 6.0 * lens.p1 * y + 2.0 * lens.p2 * x;
  return out;
}

}  // namespace

Eigen::Vector2d Lens::pixel_from_ray(const Eigen::Vector2d& ray) const {
  return centre + focal * distorted(*this, ray).at;
}

Eigen::Vector2d Lens::ray_from_pixel(const Eigen::Vector2d& pixel) const {
  const Eigen::Vector2d wanted = (pixel - centre) / focal;
  Eigen::Vector2d ray = wanted;
  for (int step = 0; step < 50; ++step) {
    const Distorted now = distorted(*this, ray);
    const Eigen::Vector2d miss = wanted - now.at;
    if (miss.norm() < 1e-14 * (1.0 + wanted.norm())) break;
    // Short of the turning radius the slope is positive definite; a step that
    // would leap over it is shortened.
    Eigen::Vector2d change = now.slope.inverse() * miss;
    double shorten = 1.0;
    while (shorten > 1e-6 && (distorted(*this, ray + shorten * change).at - wanted).norm() >= miss.norm())
      shorten *= 0.5;
    if (shorten <= 1e-6) break;
    ray += shorten * change;
  }
  const double left = (distorted(*this, ray).at - wanted).norm();
  if (!(left < 1e-11 * (1.0 + wanted.norm())) || !covers(ray))
    throw Refusal(
        "A point lies outside of what the lens can see. Calibrate again with the whole picture in view.");
  return ray;
}

bool Lens::covers(const Eigen::Vector2d& ray) const {
  // The radial polynomial r (1 + k1 r² + k2 r⁴ + k3 r⁶) must rise all the way
  // out to this radius.
  const double r2 = ray.squaredNorm();
  for (int i = 1; i <= 16; ++i) {
    const double s = r2 * i / 16.0;
    if (!(1.0 + s * (3.0 * k1 + s * (5.0 * k2 + s * 7.0 * k3)) > 0.0)) return false;
  }
  return true;
}

}  // namespace cowlcast::calibration
