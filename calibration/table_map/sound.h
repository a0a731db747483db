// Whether a table map can be what a calibration made. Internal to what reads its file.
#pragma once

#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {

/// Throws Refusal, with cause and cure, for sizes, errors and scales that no table has, and where the outline
/// of the light is not what lens, pose and picture size make of the picture's border: a file that was edited
/// in one place and not in the others. An edit that changes all of it alike goes unnoticed.
void refuse_unsound(const TableMap& map);

}  // namespace cowlcast::calibration
