// The order in which a top is sewn, as it follows from the pieces there are.
//
//   for (const std::string& step : sewing_order(*garment.top)) number(step);
//
// Common practice for knit tops with a cowl, no source: what can be sewn flat comes before what closes a
// ring, the cowl is turned in before the shoulders catch it, hems come last. Sentences are in the person's
// language, lengths in them in mm. Nothing here is a must: a maker's own order serves as well.
#pragma once

#include <string>
#include <vector>

#include "drafting/garment/top.h"

namespace cowlcast::projector {

std::vector<std::string> sewing_order(const drafting::Top& top);

}  // namespace cowlcast::projector
