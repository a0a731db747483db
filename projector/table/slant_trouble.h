// Whether lines on thick cloth suffer from how little is known of the slant of the light.
#pragma once

#include <optional>

#include "calibration/table_map/table_map.h"
#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {

/// The stated error (mm) at the worst of `places` (mat mm) on cloth `cloth` mm thick, when it is more than
/// half a millimetre and it is the slant that makes it so; nothing when the cloth is drawn well enough, or
/// would be as wrong lying bare on the mat.
std::optional<double> slant_trouble(const calibration::TableMap& map, const drafting::Polyline& places,
                                    double cloth);

}  // namespace cowlcast::projector
