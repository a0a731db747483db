#include "calibration/detect/markers.h"
#include "calibration/sheet/sheet.h"

namespace cowlcast::calibration {
namespace {

// The light squares that carry a marker, in reading order: all but the middle
// one, which holds the cross.
std::vector<Eigen::Vector2i> marked_squares(const SheetLayout& layout) {
  std::vector<Eigen::Vector2i> out;
  for (int row = 0; row < layout.rows; ++row)
    for (int column = 0; column < layout.columns; ++column) {
      const bool middle = row == layout.rows / 2 && column == layout.columns / 2;
      if ((row + column) % 2 == 0 && !middle) out.emplace_back(column, row);
    }
  return out;
}

}  // namespace

Eigen::Vector2d SheetLayout::corner(int index) const {
  const int column = index % (columns - 1) + 1, row = index / (columns - 1) + 1;
  return board + square * Eigen::Vector2d(column, rows - row);
}

int SheetLayout::marker_count() const {
  return (columns * rows + 1) / 2 - 1;
}

std::array<Eigen::Vector2d, 4> SheetLayout::marker_corners(int slot) const {
  const Eigen::Vector2i at = marked_squares(*this)[static_cast<size_t>(slot)];
  const Eigen::Vector2d middle = board + square * Eigen::Vector2d(at.x() + 0.5, rows - at.y() - 0.5);
  const double half = 0.5 * marker;
  return {middle + Eigen::Vector2d(-half, half), middle + Eigen::Vector2d(half, half),
          middle + Eigen::Vector2d(half, -half), middle + Eigen::Vector2d(-half, -half)};
}

SheetLayout sheet_layout(Paper paper) {
  SheetLayout layout;
  layout.page_width = paper == Paper::a4 ? 297.0 : 279.4;
  layout.page_height = paper == Paper::a4 ? 210.0 : 215.9;
  layout.columns = 9;
  layout.rows = 5;
  layout.square = 28.0;
  layout.marker = 20.0;
  layout.board = -0.5 * layout.square * Eigen::Vector2d(layout.columns, layout.rows);
  return layout;
}

int marker_code(const SheetMarker& marker) {
  const int slots = sheet_layout(marker.paper).marker_count();
  const int block = (marker.paper == Paper::a4 ? 0 : kMostSheets) + marker.sheet - 1;
  return block * slots + marker.slot;
}

std::optional<SheetMarker> sheet_marker(int code) {
  const int slots = sheet_layout(Paper::a4).marker_count();
  const int block = code / slots;
  if (code < 0 || block >= 2 * kMostSheets) return std::nullopt;
  return SheetMarker{block < kMostSheets ? Paper::a4 : Paper::letter, block % kMostSheets + 1, code % slots};
}

}  // namespace cowlcast::calibration
