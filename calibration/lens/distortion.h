// The distortion polynomial alone, for any scalar type (double, dual numbers).
#pragma once

namespace cowlcast::calibration {

/// Distorted (x, y) of a ray (x/z, y/z) by Brown and Conrady's terms in OpenCV's
/// order and sign: k = {k1, k2, k3} radial, p = {p1, p2} tangential.
template <typename T>
void distort(const T& x, const T& y, const T* k, const T* p, T& x_out, T& y_out) {
  const T r2 = x * x + y * y;
  const T radial = T(1.0) + r2 * (k[0] + r2 * (k[1] + r2 * k[2]));
  x_out = x * radial + T(2.0) * p[0] * x * y + p[1] * (r2 + T(2.0) * x * x);
  y_out = y * radial + p[0] * (r2 + T(2.0) * y * y) + T(2.0) * p[1] * x * y;
}

}  // namespace cowlcast::calibration
