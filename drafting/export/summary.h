// A draft in a few lines of plain text, for the terminal.
#pragma once

#include <string>

#include "drafting/cowl/cowl_front.h"

namespace cowlcast::drafting {

/// Drape, spread, hinge angles, swing, seam lengths and cloth needed; a line each.
std::string summary(const CowlDraft& draft);

}  // namespace cowlcast::drafting
