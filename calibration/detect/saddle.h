// The crossing of a chessboard corner in a small patch, to a few hundredths of a pixel.
//
//   std::optional<Saddle> saddle = fit_saddle(patch, +1);
//   if (saddle) pixel = at + pitch * saddle->offset;
//
// The whole patch is fitted with two crossing soft edges, so blur, unequal
// brightness and a slightly wrong scale or slant of the patch do not move the
// answer. Stray edges are given less weight; when they win, there is no answer.
#pragma once

#include <Eigen/Core>
#include <optional>

namespace cowlcast::calibration {

struct Saddle {
  Eigen::Vector2d offset =
      Eigen::Vector2d::Zero();  ///< from the patch's middle, in samples: x along columns, y down rows
  double sigma = 0.0;  ///< standard deviation of each coordinate, in samples, as the patch's own noise has it
  double contrast = 0.0;  ///< half the step between light and dark, in the patch's unit
  double residual = 0.0;  ///< root mean square of what the fit leaves, in the patch's unit
};

/// Fits the corner nearest the middle of `patch`: an odd number of samples n × n,
/// rows down. `sign` is +1 when the quadrants right-below and left-above are the
/// light ones, -1 when the others are. Nothing when the patch shows no such corner.
std::optional<Saddle> fit_saddle(const Eigen::MatrixXd& patch, int sign);

}  // namespace cowlcast::calibration
