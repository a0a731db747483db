// Opening: how far each slash opens and the whole front swings.
//
//   std::optional<Opening> opening = open_to(slashed, 240.0);
//   std::vector<Motion> motions = motions_of(slashed, *opening);
//
// Parts 0 to n from the top down; hinge i joins part i to part i + 1. Opening a
// hinge turns everything above it clockwise about the hinge, in the piece frame
// with the centre front on the left; the swing turns all parts clockwise about a
// point of the centre front.
//
// Of all openings that bring the neck point to its distance with no part over
// the centre front and none above the neck point, the one is taken with the
// least sum of squares of (a) the openings' differences from each other and (b)
// the swing: even openings, and as little swing as will do. Openings are also
// never negative.
#pragma once

#include <optional>
#include <vector>

#include "drafting/geometry/motion.h"
#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// What the solver needs of a slashed front.
struct SlashedFront {
  std::vector<Point> hinges;      ///< from the top down
  std::vector<Polyline> corners;  ///< of each part, top down: the points that must stay inside
  Point neck_point = Point::Zero();
  Point pivot = Point::Zero();    ///< the swing's centre, on the centre front
  std::vector<double> weights;    ///< wished openings relative to each other; all 1 for even
  std::vector<double> wished;     ///< openings to stay near, radians; when set, `weights` do not count
  double max_opening = 0.0;       ///< of each hinge, radians
  double max_swing = 0.0;         ///< radians
  double allowed_crossing = 0.0;  ///< how far corners may lie over the centre front, mm
};

struct Opening {
  std::vector<double> angles;  ///< at each hinge from the top down, radians
  double swing = 0.0;          ///< radians
};

/// Where each part goes.
std::vector<Motion> motions_of(const SlashedFront& front, const Opening& opening);

/// The opening that brings the neck point `distance` mm from the centre front;
/// none when there is none within the limits.
std::optional<Opening> open_to(const SlashedFront& front, double distance);

/// The same with one hinge opened as little, or as much, as the limits leave it;
/// found by a local search from the closed front.
std::optional<Opening> open_furthest(const SlashedFront& front, double distance, size_t hinge, bool most);

/// The swing that brings the neck point `distance` mm from the centre front with
/// these openings; none when no swing between 0 and the limit does.
std::optional<double> swing_to(const SlashedFront& front, const std::vector<double>& angles, double distance);

/// How far the worst corner lies over the centre front, and above the neck point, mm.
struct Trespass {
  double over_centre = 0.0, above_edge = 0.0;
};
Trespass trespass_of(const SlashedFront& front, const Opening& opening);

}  // namespace cowlcast::drafting
