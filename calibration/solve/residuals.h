// The residuals of the joint fit, for Ceres's automatic derivatives.
#pragma once

#include <ceres/ceres.h>
#include <ceres/rotation.h>

#include <cmath>

#include "calibration/lens/distortion.h"
#include "calibration/lens/keystone.h"

namespace cowlcast::calibration::residuals {

/// Pixel of a point above the mat: lens numbers (8), focal factor's logarithm, placement (6), x, y, height.
template <typename T>
bool project(const T* lens, const T& focus, const T* placement, const T& x, const T& y, const T& height,
             T* pixel) {
  const T mat[3] = {x, y, height};
  T seen[3];
  ceres::AngleAxisRotatePoint(placement, mat, seen);
  for (int i = 0; i < 3; ++i) seen[i] += placement[3 + i];
  if (!(seen[2] > T(1e-6))) return false;
  T bent_x, bent_y;
  distort(T(seen[0] / seen[2]), T(seen[1] / seen[2]), lens + 3, lens + 6, bent_x, bent_y);
  using ceres::exp;
  using std::exp;
  const T focal = lens[0] * exp(focus);
  pixel[0] = focal * bent_x + lens[1];
  pixel[1] = focal * bent_y + lens[2];
  return true;
}

/// Lens 8, focus 1, camera 6, sheet 3, scale 2, height 1.
struct PaperCorner {
  double printed_x, printed_y, u, v, weight;

  template <typename T>
  bool operator()(const T* lens, const T* focus, const T* camera, const T* sheet, const T* scale,
                  const T* height, T* out) const {
    using ceres::cos;
    using ceres::exp;
    using ceres::sin;
    using std::cos;
    using std::exp;
    using std::sin;
    const T x = printed_x * exp(scale[0]), y = printed_y * exp(scale[1]);
    const T c = cos(sheet[2]), s = sin(sheet[2]);
    if (!project(lens, focus[0], camera, T(sheet[0] + c * x - s * y), T(sheet[1] + s * x + c * y), height[0],
                 out))
      return false;
    out[0] = weight * (out[0] - u);
    out[1] = weight * (out[1] - v);
    return true;
  }
};

/// Lens 8, focus 1, camera 6, mat point 2; on a raised sheet its height 1 as well.
struct LightCorner {
  double u, v, weight;

  template <typename T>
  bool operator()(const T* lens, const T* focus, const T* camera, const T* mat, T* out) const {
    const T flat(0.0);
    return (*this)(lens, focus, camera, mat, &flat, out);
  }
  template <typename T>
  bool operator()(const T* lens, const T* focus, const T* camera, const T* mat, const T* height,
                  T* out) const {
    if (!project(lens, focus[0], camera, mat[0], mat[1], height[0], out)) return false;
    out[0] = weight * (out[0] - u);
    out[1] = weight * (out[1] - v);
    return true;
  }
};

/// Projector lens 8, projector 6, keystone 4, mat point 2; on a raised sheet its height 1 as well.
struct PictureCorner {
  double u, v, weight, width, height;  // of the picture, pixels

  template <typename T>
  bool operator()(const T* lens, const T* projector, const T* keystone, const T* mat, T* out) const {
    const T flat(0.0);
    return (*this)(lens, projector, keystone, mat, &flat, out);
  }
  template <typename T>
  bool operator()(const T* lens, const T* projector, const T* keystone, const T* mat, const T* above,
                  T* out) const {
    T panel[2], x, y;
    if (!project(lens, T(0.0), projector, mat[0], mat[1], above[0], panel)) return false;
    const double middle_u = 0.5 * (width - 1.0), middle_v = 0.5 * (height - 1.0);
    keystone_from_panel(keystone, T((panel[0] - middle_u) / width), T((panel[1] - middle_v) / width), x, y);
    out[0] = weight * (middle_u + width * x - u);
    out[1] = weight * (middle_v + width * y - v);
    return true;
  }
};

/// Keystone 4.
struct KeystonePrior {
  double across, aspect, skew;  // standard deviations

  template <typename T>
  bool operator()(const T* keystone, T* out) const {
    out[0] = keystone[0] / across;
    out[1] = keystone[1] / across;
    out[2] = keystone[2] / aspect;
    out[3] = keystone[3] / skew;
    return true;
  }
};

/// What is believed of a lens beforehand: focal in its logarithm, the rest as they are.
struct LensPrior {
  double middle[8], sigma[8];

  template <typename T>
  bool operator()(const T* lens, T* out) const {
    using ceres::log;
    using std::log;
    if (!(lens[0] > T(0.0))) return false;
    out[0] = (log(lens[0]) - std::log(middle[0])) / sigma[0];
    for (int i = 1; i < 8; ++i) out[i] = (lens[i] - middle[i]) / sigma[i];
    return true;
  }
};

struct NumberPrior {
  double middle, sigma;

  template <typename T>
  bool operator()(const T* number, T* out) const {
    out[0] = (number[0] - middle) / sigma;
    return true;
  }
};

/// Scale 2.
struct ScalePrior {
  double across, down, sigma_across, sigma_down;

  template <typename T>
  bool operator()(const T* scale, T* out) const {
    out[0] = (scale[0] - across) / sigma_across;
    out[1] = (scale[1] - down) / sigma_down;
    return true;
  }
};

/// Sheet 3, sheet 3: the tape between their centre crosses.
struct SpanLength {
  double length, sigma;

  template <typename T>
  bool operator()(const T* a, const T* b, T* out) const {
    using ceres::sqrt;
    using std::sqrt;
    const T x = a[0] - b[0], y = a[1] - b[1];
    out[0] = (sqrt(x * x + y * y + T(1e-12)) - length) / sigma;
    return true;
  }
};

/// Projector 6: the height of its lens over the mat.
struct LampHeight {
  double height, sigma;

  template <typename T>
  bool operator()(const T* placement, T* out) const {
    const T back[3] = {-placement[0], -placement[1], -placement[2]};
    T lamp[3];
    ceres::AngleAxisRotatePoint(back, placement + 3, lamp);
    out[0] = (-lamp[2] - height) / sigma;
    return true;
  }
};

}  // namespace cowlcast::calibration::residuals
