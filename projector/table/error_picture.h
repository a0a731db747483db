// The stated error over the table as a picture for a person: cells of the lit mat, coloured and with numbers.
#pragma once

#include <QImage>

#include "calibration/table_map/table_map.h"

namespace cowlcast::projector {

/// As seen from above, the operator at the foot. Lines on cloth `cloth` mm thick. Needs a QGuiApplication.
QImage error_picture(const calibration::TableMap& map, double cloth = 0.0);

}  // namespace cowlcast::projector
