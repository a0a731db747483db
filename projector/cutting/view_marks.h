// What the cutting view looks like: the piece, the blade's path, the legend.
//
//   ViewPainter painter;
//   show(painter.draw(map, view));
#pragma once

#include <QImage>
#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "projector/cutting/view.h"
#include "projector/frame/render.h"

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

/// Draws view after view, as the projector shows them: lines, or the pictures that a fixed camera learns by.
class ViewPainter {
 public:
  const QImage& draw(const calibration::TableMap& map, const CuttingView& view);
  const QImage& picture() const { return plain_.isNull() ? lines_.picture() : plain_; }

  /// The rectangles outside of which the last `draw` left every pixel as it was.
  const std::vector<QRect>& changed() const { return whole_.empty() ? lines_.changed() : whole_; }

 private:
  FramePainter lines_;
  QImage plain_;              // while it is shown
  std::vector<QRect> whole_;  // when another kind of picture came than before
};

}  // namespace cowlcast::projector
