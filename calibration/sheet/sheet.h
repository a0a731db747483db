// The printed sheets that lie on the mat while the table is photographed.
//
//   std::string pdf = sheets_pdf(Paper::a4, 4);             // to print at 100 %
//   const SheetLayout layout = sheet_layout(Paper::a4);
//   for (int c = 0; c < layout.corner_count(); ++c) use(layout.corner(c));
//
// Each sheet is a chessboard with markers in its light squares, a cross in the
// middle, a ruler along the long side and one along the short side. The markers
// of every sheet and paper differ, so a photograph alone tells which sheet it
// shows. Sheet frame: millimetres as designed (a printer may scale them), the
// origin at the centre cross, x along the long side, y up the short side.
#pragma once

#include <Eigen/Core>
#include <array>
#include <opencv2/core.hpp>
#include <optional>
#include <string>
#include <vector>

namespace cowlcast::calibration {

enum class Paper { a4, letter };

constexpr int kMostSheets = 12;         ///< sheets of one paper that can be told apart
constexpr double kRulerAcross = 240.0;  ///< ruler along the long side, mm as designed
constexpr double kRulerDown = 180.0;    ///< ruler along the short side, mm as designed

/// Where the parts of a sheet are, in the sheet frame.
struct SheetLayout {
  double page_width = 0.0, page_height = 0.0;       ///< mm, landscape
  int columns = 0, rows = 0;                        ///< squares
  double square = 0.0;                              ///< side of a square, mm
  double marker = 0.0;                              ///< side of a marker, mm
  Eigen::Vector2d board = Eigen::Vector2d::Zero();  ///< lower left corner of the board

  /// Inner corners, row by row from the upper left: (columns - 1) × (rows - 1).
  int corner_count() const { return (columns - 1) * (rows - 1); }
  Eigen::Vector2d corner(int index) const;

  int marker_count() const;
  /// The corners of a marker as printed, clockwise from its upper left. `slot` from 0.
  std::array<Eigen::Vector2d, 4> marker_corners(int slot) const;
};

SheetLayout sheet_layout(Paper paper);

/// Which sheet, and which of its markers, a marker code belongs to. Sheets count from 1.
struct SheetMarker {
  Paper paper = Paper::a4;
  int sheet = 0;
  int slot = 0;
};

/// The code printed for a marker, and back. Codes nobody printed give nothing.
int marker_code(const SheetMarker& marker);
std::optional<SheetMarker> sheet_marker(int code);

/// All sheets 1..count as a vector PDF, a page each, at exact scale: the file's bytes.
/// Throws Refusal for a count outside 1..kMostSheets.
std::string sheets_pdf(Paper paper, int count);

/// One whole page, 8-bit grey, landscape; the page's upper left corner is the
/// upper left corner of the first pixel. Throws Refusal for a number outside 1..kMostSheets.
cv::Mat sheet_page(Paper paper, int number, double dots_per_inch = 300.0);

}  // namespace cowlcast::calibration
