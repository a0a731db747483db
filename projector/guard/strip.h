// Strip: the corridor along a stroke, laid out straight as a small picture.
//
//   Strip strip = corridor_strip({.stroke = path, .holding_left = true});
//   StripView view = seen_by(strip, sight);
//   cv::Mat colours = camera_strip(view, frame);      // one pixel a cell
//
// Column by column along the stroke, from a little before its start to a little
// past its end; row by row across it, the first row farthest on the blade's own
// side. A margin on both sides is seen as well, so that edges at the corridor's rim
// have both their sides. Where a bend is tighter than the strip is wide, places
// come up twice.
#pragma once

#include <Eigen/Core>
#include <opencv2/core.hpp>
#include <vector>

#include "calibration/camera/fixed_camera.h"
#include "calibration/table_map/table_map.h"
#include "drafting/piece/piece.h"

namespace cowlcast::projector {

using drafting::Point;
using drafting::Polyline;

/// How camera and projector see the cloth.
struct TableSight {
  calibration::FixedCamera camera;
  calibration::TableMap map;
  double cloth = 0.0;  ///< height of the cloth's upper face over the mat, mm
};

struct Corridor {
  Polyline stroke;           ///< on the mat, in the direction it is cut, mm
  bool holding_left = true;  ///< the other hand holds the cloth to the left of the way
  double holding = 66.0;     ///< width of the corridor on that side: the band and what is before it, mm
  double other = 15.0;       ///< width on the other side, mm
};

struct Strip {
  static constexpr double cell = 1.5;     ///< mm
  static constexpr double before = 60.0;  ///< of the strip lies before the stroke's start, mm
  static constexpr double margin = 24.0;  ///< beside the corridor, mm

  int columns = 0, rows = 0;
  cv::Range corridor;         ///< the rows of the corridor itself
  double other = 0.0;         ///< row 0 lies this far off the line, mm
  std::vector<Point> places;  ///< of the cells' middles on the mat, row by row, mm

  double along(double column) const { return (column + 0.5) * cell - before; }
  double off(double row) const { return (row + 0.5) * cell - other; }
  Point place(int column, int row) const { return places[static_cast<size_t>(row * columns + column)]; }
};

/// Throws drafting::Refusal for a stroke of fewer than two points.
Strip corridor_strip(const Corridor& corridor);

/// A rectangle of the mat, cell by cell, row 0 at its low edge: `places` as in a corridor's strip.
Strip area_strip(const Point& low, const Point& high, double cell_mm);

/// Where the cells are in the camera's frame and in the projector's picture.
struct StripView {
  cv::Mat camera;     ///< two floats a cell, pixels
  cv::Mat projector;  ///< the same
  cv::Mat seen;       ///< 255 where camera and projector both reach the cell
  /// Two floats a cell, cells: how far away along the strip and across it a thing `kTallest` over the cloth
  /// is seen that takes the projector's light from the cell; lower things, in between.
  cv::Mat thrower;
  static constexpr double kTallest = 60.0;  ///< mm: a hand on the cloth. Common practice, no source
};
StripView seen_by(const Strip& strip, const TableSight& sight);

/// The cells in a frame, of its type.
cv::Mat camera_strip(const StripView& view, const cv::Mat& frame);

/// What a picture's 8-bit levels send, 0 to 1, by a power as projectors have it; floats of as many channels.
cv::Mat sent_light(const cv::Mat& picture, double power);

/// The light that a picture sends to the cells, three floats each, 0 to 1, as means over about a cell.
/// `picture`: 8-bit grey or BGR, the projector's size.
cv::Mat light_strip(const StripView& view, const cv::Mat& picture, double power);

}  // namespace cowlcast::projector
