#include "calibration/virtual_table/optic.h"

#include <Eigen/LU>
#include <cmath>
#include <numbers>

namespace cowlcast::calibration::virtual_table {

namespace {

constexpr double wobble_core = 0.1;  // ray slope within which the wobble fades to nothing

// Derivative of r (1 + k1 r^2 + k2 r^4 + k3 r^6) with respect to r, at q = r^2.
double growth(const Optic& o, double q) {
  return 1.0 + q * (3.0 * o.k1 + q * (5.0 * o.k2 + q * 7.0 * o.k3));
}

Eigen::Vector2d wobble_of(const Optic& o, const Eigen::Vector2d& ray) {
  const double r2 = ray.squaredNorm();
  const double wave = std::sin(2.0 * std::numbers::pi * o.wobble_waves * std::sqrt(r2) + o.wobble_phase);
  return ray * (o.wobble * wave / std::sqrt(r2 + wobble_core * wobble_core));
}

}  // namespace

Eigen::Vector2d Optic::pixel_from_ray(const Eigen::Vector2d& ray) const {
  const double x = ray.x(), y = ray.y();
  const double q = x * x + y * y;
  const double radial = 1.0 + q * (k1 + q * (k2 + q * k3));
  const Eigen::Vector2d bent(x * radial + 2.0 * p1 * x * y + p2 * (q + 2.0 * x * x),
                             y * radial + p1 * (q + 2.0 * y * y) + 2.0 * p2 * x * y);
  Eigen::Vector2d pixel = focal.cwiseProduct(bent) + centre;
  if (wobble != 0.0) pixel += wobble_of(*this, ray);
  return pixel;
}

std::optional<Eigen::Vector2d> Optic::ray_from_pixel(const Eigen::Vector2d& pixel) const {
  Eigen::Vector2d ray = (pixel - centre).cwiseQuotient(focal);
  if (ray.squaredNorm() > 9.0) ray *= 3.0 / ray.norm();
  for (int step = 0; step < 40; ++step) {
    const double x = ray.x(), y = ray.y();
    const double q = x * x + y * y;
    const double radial = 1.0 + q * (k1 + q * (k2 + q * k3));
    const double slope = k1 + q * (2.0 * k2 + q * 3.0 * k3);  // of radial, with respect to q
    Eigen::Matrix2d jacobian;                                 // the wobble's own slope is too small to matter
    jacobian << radial + 2.0 * x * x * slope + 2.0 * p1 * y + 6.0 * p2 * x,
        2.0 * x * y * slope + 2.0 * p1 * x + 2.0 * p2 * y, 2.0 * x * y * slope + 2.0 * p1 * x + 2.0 * p2 * y,
        radial + 2.0 * y * y * slope + 6.0 * p1 * y + 2.0 * p2 * x;
    const double determinant = jacobian.determinant();
    if (!(determinant > 1e-6)) {  // at or past the fold: come back towards the axis
      if (ray.squaredNorm() < 1e-8) return std::nullopt;
      ray *= 0.7;
      continue;
    }
    const Eigen::Vector2d miss = (pixel - pixel_from_ray(ray)).cwiseQuotient(focal);
    const Eigen::Vector2d move = jacobian.inverse() * miss;
    ray += move;
    if (!ray.allFinite()) return std::nullopt;
    if (move.squaredNorm() < 1e-26) {
      if (!covers(ray)) return std::nullopt;
      return ray;
    }
  }
  return std::nullopt;
}

bool Optic::covers(const Eigen::Vector2d& ray) const {
  const double q = ray.squaredNorm();
  if (!(growth(*this, q) > 0.0)) return false;
  // The derivative is a cubic in q: it can dip below zero on the way only at its own turning points.
  const double a = 21.0 * k3, b = 10.0 * k2, c = 3.0 * k1;
  const auto sound_at = [&](double turn) { return !(turn > 0.0 && turn < q) || growth(*this, turn) > 0.0; };
  if (a == 0.0) return b == 0.0 || sound_at(-c / b);
  const double square = b * b - 4.0 * a * c;
  if (square < 0.0) return true;
  const double root = std::sqrt(square);
  return sound_at((-b + root) / (2.0 * a)) && sound_at((-b - root) / (2.0 * a));
}

double Optic::valid_slope(double limit) const {
  if (covers({limit, 0.0})) return limit;
  double low = 0.0, high = limit;
  for (int step = 0; step < 50; ++step) {
    const double middle = 0.5 * (low + high);
    (covers({middle, 0.0}) ? low : high) = middle;
  }
  return low;
}

}  // namespace cowlcast::calibration::virtual_table
