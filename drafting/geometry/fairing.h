// Fairing: smooth a line without changing its length.
//
//   Polyline fair = faired(armhole, {kink_along}, 40.0);
//   Polyline hem  = squared_start(opened_hem);
//
// A line is taken as a chain of links. Fairing turns the links and never
// stretches one, so the length stays to the last digits by construction.
#pragma once

#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// Spreads the sharp turn at each place of `kinks` (mm along the line) over
/// `window` mm to either side, or as much as the ends and half-way to the next
/// kink leave. Both ends keep their places, and the directions there change by
/// a part of a degree at most. A line that cannot be faired so (the turn is too great for
/// the room it has) comes back with its kinks.
Polyline faired(const Polyline& line, const std::vector<double>& kinks, double window);

/// Bends a line that leaves x = 0 at some slant until it leaves square to x = 0,
/// little by little, the bend dying out towards its far end, which keeps its
/// place and direction. The start slides along x = 0 and the links are scaled by
/// one factor to reach it. For a straight line that makes a circular arc.
Polyline squared_start(const Polyline& line);

}  // namespace cowlcast::drafting
