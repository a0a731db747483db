// The check by hand in light: the figure's picture, and which of its distances to measure.
//
//   const calibration::CheckFigure figure = check_light_figure(map, grid);
//   show(check_light(map, figure, {.quick = true}));
//   for (const auto& [from, to] : distances_to_measure(true)) ask(from, to);
#pragma once

#include <QImage>
#include <utility>
#include <vector>

#include "calibration/check/hand_check.h"

namespace cowlcast::projector {

enum class CheckGrid { none, centimetres, inches };

/// The figure that goes with a grid: its sides are whole numbers of the grid's heavy squares where it has
/// inches. Throws calibration::Refusal when the light is too small.
calibration::CheckFigure check_light_figure(const calibration::TableMap& map, CheckGrid grid);

struct CheckLight {
  bool quick = false;  ///< two crosses alone
  CheckGrid grid = CheckGrid::none;
};

/// What the projector shows, on the bare mat. Needs a QGuiApplication.
QImage check_light(const calibration::TableMap& map, const calibration::CheckFigure& figure,
                   const CheckLight& light);

/// Pairs of crosses by whose distance much is told, the longest first.
std::vector<std::pair<char, char>> distances_to_measure(bool quick);

}  // namespace cowlcast::projector
