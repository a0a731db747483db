// Sizes: body measures from a standard size, or from the bust alone.
//
//   Piece front = block_front(measures_of_size("8"));
//   BodyMeasures m = measures_for_bust(920);   // then set what was measured
//
// Bust and neck girths by ASTM D5585-11e1, Table 1. Everything else follows the
// bust in proportions of this project's own, the demo wearer's: measure the body
// where you can.
#pragma once

#include <string>
#include <vector>

#include "drafting/block/block.h"

namespace cowlcast::drafting {

struct StandardSize {
  std::string name;   ///< "00", "0", "2" ... "20"
  double bust = 0.0;  ///< girth, mm
  double neck = 0.0;  ///< girth at its base, mm
};
const std::vector<StandardSize>& standard_sizes();

/// Throws Refusal with the list of sizes for a name that is none.
BodyMeasures measures_of_size(const std::string& name);

/// The neck girth is read off between the sizes nearest in bust, and goes on along
/// the same line beyond them.
BodyMeasures measures_for_bust(double bust_girth);

}  // namespace cowlcast::drafting
