// Keystone: what a projector does to its picture, by resampling, to make it square on the table.
//
//   Keystone keystone{.across = 0.1};
//   Eigen::Vector2d pixel = keystone.picture_from_panel(panel, {1920, 1080});
//   Eigen::Vector2d back = keystone.panel_from_picture(pixel, {1920, 1080});   // panel again
//
// A projector's lens bends the panel's light. With electronic keystone the picture handed in is first laid
// into the panel by a homography, so that the bend is no longer centred in the picture. The part of that
// homography which a turn, a shift or another focal length could do as well is left to those; here are the
// rest.
#pragma once

#include <Eigen/Core>

namespace cowlcast::calibration {

/// Picture from panel, both about the middle and in widths of the picture, for any scalar type. `k`: across,
/// down, aspect, skew.
template <typename T>
void keystone_from_panel(const T* k, const T& x, const T& y, T& x_out, T& y_out) {
  const T depth = T(1.0) + k[0] * x + k[1] * y;
  x_out = ((T(1.0) + k[2]) * x + k[3] * y) / depth;
  y_out = y / depth;
}

struct Keystone {
  double across = 0.0, down = 0.0;  ///< how much narrower the picture is a width to the right, and below
  double aspect = 0.0;              ///< relative stretch across
  double skew = 0.0;

  bool none() const { return across == 0.0 && down == 0.0 && aspect == 0.0 && skew == 0.0; }

  /// `size` of the picture, pixels.
  Eigen::Vector2d picture_from_panel(const Eigen::Vector2d& panel, const Eigen::Vector2d& size) const {
    if (none()) return panel;
    const Eigen::Vector2d middle = 0.5 * (size - Eigen::Vector2d::Ones());
    const Eigen::Vector2d at = (panel - middle) / size.x();
    const double numbers[4] = {across, down, aspect, skew};
    Eigen::Vector2d out;
    keystone_from_panel(numbers, at.x(), at.y(), out.x(), out.y());
    return middle + size.x() * out;
  }

  Eigen::Vector2d panel_from_picture(const Eigen::Vector2d& picture, const Eigen::Vector2d& size) const {
    if (none()) return picture;
    const Eigen::Vector2d middle = 0.5 * (size - Eigen::Vector2d::Ones());
    const Eigen::Vector2d at = (picture - middle) / size.x();
    const Eigen::Vector2d square((at.x() - skew * at.y()) / (1.0 + aspect), at.y());
    return middle + size.x() * square / (1.0 - across * square.x() - down * square.y());
  }
};

}  // namespace cowlcast::calibration
