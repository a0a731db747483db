// The places that the window has, in the order of the job.
#pragma once

#include <vector>

#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

std::vector<Workplace*> make_workplaces(Document& document, Settings& settings, CurrentGarment& garment);

}  // namespace cowlcast::projector
