// In which order, and which way, a person cuts.
//
//   std::vector<Cut> plan = ordered_cuts(cuts, laying, {.hand = Hand::right, .stands = {0, -600}});
//
// Away from the body, so each stroke runs from its end nearer the operator to
// the farther one; one that runs across her goes towards the blade's hand. Long
// runs first, while the cloth around them still holds; of two about equally
// long the one that begins nearer to where the last one ended (common practice,
// no source).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "projector/blade/blade.h"
#include "projector/frame/laying.h"

namespace cowlcast::projector {

/// The hand that holds the blade. The other hand holds the cloth on its own side.
enum class Hand { right, left };

struct Operator {
  Hand hand = Hand::right;
  Point stands{0.0, -600.0};  ///< on the mat plane, mm; usually beyond its near edge
};

/// The person standing in the middle before an area of the mat, a forearm's length off.
Operator standing_before(const Polyline& area, Hand hand);

/// Of two strokes the shorter is about as long from this share of the longer one on.
inline constexpr double kAboutAsLong = 0.8;

/// The cuts in order and turned to their directions. All of them come back, none twice.
std::vector<Cut> ordered_cuts(std::vector<Cut> cuts, const Laying& laying, const Operator& person);

/// What a stroke may run into.
struct Surroundings {
  Polyline lit = {};                           ///< outline of the light, mat mm
  Polyline mat = {};                           ///< outline of the cutting mat, mat mm; empty: not known
  std::vector<Cut> before = {};                ///< strokes that are cut already, piece frame
  std::optional<drafting::Segment> fold = {};  ///< of the cloth, piece frame
};

/// What to beware of on the way of one stroke, a plain sentence each; empty when nothing.
std::vector<std::string> stroke_cautions(const Cut& cut, const Laying& laying,
                                         const Surroundings& surroundings);

}  // namespace cowlcast::projector
