// What the cutting view looks like: the piece, the blade's path, the legend.
//
//   FramePainter painter;
//   painter.draw(map, view_marks(view, map), view.laying.height);
#pragma once

#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "projector/cutting/view.h"

namespace cowlcast::projector {

/// What the legend says now: where she stands in the work, and the keys that do something there.
struct Legend {
  std::vector<std::string> state, keys;
};
Legend legend_of(const CuttingView& view);

/// What to beware of now, shown even when the legend is hidden; a sentence each.
std::vector<std::string> warnings_of(const CuttingView& view, const Polyline& lit);

/// Everything to draw, mat mm. Needs a QGuiApplication for writing.
std::vector<Mark> view_marks(const CuttingView& view, const calibration::TableMap& map);

}  // namespace cowlcast::projector
