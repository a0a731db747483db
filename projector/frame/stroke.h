// Stroke: the outline of a line that has a width.
//
//   Rings rings = stroke_rings(front.cut_line, {.closed = true, .width = 1.0});
//
// The line is drawn in millimetres of cloth, so its outline is made in
// millimetres too and only then carried through the projector's lens.
#pragma once

#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::projector {

using drafting::Point;
using drafting::Polyline;
using Rings = std::vector<Polyline>;  ///< closed outlines, to be filled by the non-zero rule

struct StrokeShape {
  bool closed = false;  ///< the last point joins the first
  double width = 1.0;   ///< mm
};

/// The outline of a stroke. Its middle is the line itself: both sides stand half
/// the width off it. Corners are mitred up to twice the half width and cut off
/// beyond; open ends are square and end where the line ends. Points nearer than
/// 1e-6 mm to the one before are left out; a line of fewer than two points gives nothing.
Rings stroke_rings(const Polyline& line, const StrokeShape& shape);

/// Cuts a line into dashes of `on` mm with gaps of `off` mm between, the pattern
/// stretched so that it starts and ends on a whole dash (open) or closes on a
/// whole gap (closed).
std::vector<Polyline> dashes(const Polyline& line, bool closed, double on, double off);

}  // namespace cowlcast::projector
