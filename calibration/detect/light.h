// The projected target in photographs, once each photograph's view of the mat is known.
//
// A photograph laid on the mat's plane and divided by one under plain light
// shows the light alone: print, paper and cloth fall out of the quotient.
#pragma once

#include <Eigen/Core>
#include <functional>
#include <opencv2/core.hpp>
#include <optional>

#include "calibration/target/target.h"

namespace cowlcast::calibration {

/// A rectangle of the mat drawn as a picture, y up: row 0 is the far edge.
struct MatRegion {
  Eigen::Vector2d upper_left = Eigen::Vector2d::Zero();  ///< mat mm of the first pixel's centre
  double mm_per_pixel = 1.0;
  int columns = 0, rows = 0;

  Eigen::Vector2d mat(const Eigen::Vector2d& pixel) const {
    return {upper_left.x() + mm_per_pixel * pixel.x(), upper_left.y() - mm_per_pixel * pixel.y()};
  }
};

/// Pixel of a mat point (mm) in a photograph; nothing where it is not seen.
using PhotoFromMat = std::function<std::optional<Eigen::Vector2d>(const Eigen::Vector2d&)>;

/// A photograph laid on the mat's plane: linear light as 32-bit floats, -1 where nothing is seen.
cv::Mat lay_on_mat(const cv::Mat& grey, const MatRegion& region, const PhotoFromMat& photo_from_mat);

/// The light of one laid photograph alone, 8-bit: it over the other, stretched to the usual range.
cv::Mat quotient(const cv::Mat& target, const cv::Mat& plain);

/// A laid photograph as an 8-bit picture.
cv::Mat laid_picture(const cv::Mat& laid);

/// A photograph about one projector pixel: photo pixel = at + slope · (projector pixel - there).
struct LocalView {
  const cv::Mat* grey = nullptr;
  Eigen::Vector2d at = Eigen::Vector2d::Zero();
  Eigen::Matrix2d slope = Eigen::Matrix2d::Identity();
};

struct LightCorner {
  Eigen::Vector2d moved = Eigen::Vector2d::Zero();  ///< from the place looked at, projector pixels
  double sigma = 0.0;                               ///< projector pixels
};

/// Corner `index` of the target near the middle of `target`, divided by `plain` when given.
std::optional<LightCorner> find_light_corner(const TargetLayout& layout, int index, const LocalView& target,
                                             const LocalView* plain);

}  // namespace cowlcast::calibration
