// What a round blade can cut.
//
//   Blade blade{.diameter = 45, .cloth = 1.0, .into_mat = 0.5};
//   double ahead = half_chord(blade);                    // 8.1 mm
//   double least = tightest_radius(blade, 0.5);          // 66 mm
//   for (const Cut& cut : cuts_of(front.cut_line_runs, blade, {})) ...
//
// A blade of radius R that reaches h deep (the cloth's thickness and a little of
// the mat) touches over a chord of half length a = sqrt(2Rh - h²). It therefore
// cuts a ahead of its axle and must stop that far short of an inner corner; and
// on a curve of radius r its flat chord strays by a²/2r, so a curve is too tight
// where that is more than allowed. Both are plane geometry of circle and chord.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::projector {

using drafting::Point;
using drafting::Polyline;

struct Blade {
  double diameter = 45.0;  ///< mm
  double cloth = 1.0;      ///< thickness cut through, all layers, mm
  double into_mat = 0.5;   ///< depth into the mat, mm
};

/// Sizes that rotary blades are sold in, mm (common practice, no source).
inline constexpr std::array<double, 4> kBladeSizes{18.0, 28.0, 45.0, 60.0};

/// Half the length over which the blade touches cloth, mm. Throws
/// drafting::Refusal for a blade that is smaller than the depth it has to reach.
double half_chord(const Blade& blade);

/// The tightest curve the blade follows within `tolerance` mm: its radius, mm.
double tightest_radius(const Blade& blade, double tolerance);

/// The largest blade of kBladeSizes that follows a curve of `radius` mm; none fits the tightest.
std::optional<double> blade_that_fits(double radius, double tolerance, const Blade& blade);

/// A stretch of a cut that is too tight for the blade.
struct TightStretch {
  double from = 0.0, to = 0.0;                 ///< along the cut, mm
  double radius = 0.0;                         ///< of its tightest place, mm
  std::optional<double> blade_that_fits = {};  ///< diameter, mm; none: shears
};

/// How an end of a cut meets the next one, seen from the cloth that is kept.
enum class CutEnd {
  open,   ///< nothing follows: the fold, or the line's own end
  outer,  ///< the piece's corner points outwards: cutting past it harms nothing
  inner,  ///< the corner points into the piece: stop short, finish with shears
};

/// One stroke of the blade along a smooth run of the cut line.
struct Cut {
  Polyline path = {};        ///< in the direction it is cut
  bool kept_on_left = true;  ///< the piece lies to the left of the travel
  CutEnd start = CutEnd::open, end = CutEnd::open;
  double start_at = 0.0, stop_at = 0.0;  ///< where the axle is set down and lifted, along the path, mm
  std::vector<TightStretch> tight = {};
};

struct CutRules {
  double corner = 0.6;       ///< a turn of more than this many radians within `corner_span` is a corner
  double corner_span = 2.0;  ///< mm
  double tolerance = 0.5;    ///< how far the blade may stray from the line, mm
};

/// Splits runs of a cut line (the piece to the left of each, as on a
/// counter-clockwise outline) at their corners. A run whose last point repeats
/// its first is closed. Cuts shorter than their own inner-corner clearances have
/// `stop_at` <= `start_at`: all of them is for shears.
std::vector<Cut> cuts_of(const std::vector<Polyline>& runs, const Blade& blade, const CutRules& rules);

/// The same cut in the other direction.
Cut turned_round(const Cut& cut);

/// Radius of the circle through the path `span` mm before, at and after `along`, mm
/// (infinite where straight).
double radius_at(const Polyline& path, double along, double span);

}  // namespace cowlcast::projector
