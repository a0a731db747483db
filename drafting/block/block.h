// Block: a plain knit-top base from a few body measures.
//
//   Piece front = block_front(demo_measures());
//
// The drafting rules are this project's own and simple; each stands beside its
// line in block.cpp. Front and back walk along each other: shoulders and side
// seams have equal lengths.
#pragma once

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// Body measures in mm. Ease is added to girths; negative for a close knit.
struct BodyMeasures {
  double bust_girth = 0.0;
  double waist_girth = 0.0;
  double hip_girth = 0.0;
  double neck_girth = 0.0;         ///< at the base of the neck
  double shoulder_length = 0.0;    ///< neck point to shoulder point
  double back_waist_length = 0.0;  ///< nape to waist
  double waist_to_hem = 0.0;       ///< from the waist down to the hem
  double ease = 0.0;               ///< added to bust, waist and hip girths
};

/// The demo's wearer: invented for this demo.
BodyMeasures demo_measures();

/// Throw Refusal for measures that cannot belong together, naming the one to check.
Piece block_front(const BodyMeasures& measures);
Piece block_back(const BodyMeasures& measures);

}  // namespace cowlcast::drafting
