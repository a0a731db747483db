// Trueing: the opened parts become one piece with fair edges and a facing.
#pragma once

#include <vector>

#include "drafting/cowl/slash.h"
#include "drafting/geometry/motion.h"
#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// Edges of the half front in outline order, "cowl-edge" last; see cowl_front.h.
/// The kinks at the hinges are faired over 40 mm where that keeps every point
/// below the cowl edge. `facing_depth` 0 leaves the facing out.
std::vector<Edge> trued_edges(const LoweredBase& lowered, const std::vector<Slash>& slashes,
                              const std::vector<Motion>& motions, double facing_depth);

}  // namespace cowlcast::drafting
