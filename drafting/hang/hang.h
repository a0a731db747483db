// Hang: how low a cowl of a given drape hangs between the neck points.
//
//   double depth = hang_depth(span, drape);       // span: 2 × the base's neck point distance
//   double drape = drape_for_depth(span, depth);  // the reverse
//
// The cowl edge is taken as a hanging chain between the neck points at one
// height: length s = 2 a sinh(d / 2a), depth = a (cosh(d / 2a) - 1) for points d
// apart (the catenary, any handbook of mechanics). Real cloth is stiffer and
// wider than a chain and folds; take the depth as a guide, a trial hang as truth.
#pragma once

#include <string>

#include "drafting/block/block.h"
#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// Depth of the lowest point below the neck points, mm. Throws Refusal when
/// `length` is not above `span`, or either is out of all measure.
double hang_depth(double span, double length);

/// Length that hangs `depth` mm deep. Throws Refusal for a depth or span not above 0.
double drape_for_depth(double span, double depth);

/// Heights below the neck point that a depth is judged by, mm.
struct HangLevels {
  double collar_bone = 0.0, underarm = 0.0, waist = 0.0;
};
/// From the wearer's measures: collar bone a fifth of the neck girth below the
/// neck point, underarm at the armhole's depth, waist at the back waist length and 20 mm.
HangLevels hang_levels(const BodyMeasures& measures);

/// Where a depth lies, in words: "12 mm above the underarm", within 5 mm "at the underarm".
std::string depth_in_words(double depth, const HangLevels& levels);

/// The hanging edge seen from the front, mm: x from the middle between the neck points, y up from their
/// height, from the left neck point to the right one. Throws Refusal as `hang_depth`.
Polyline hang_line(double span, double length);

/// The hang seen from the front at true size, its depth and the levels marked.
std::string hang_to_svg(double span, double length, const HangLevels& levels);

}  // namespace cowlcast::drafting
