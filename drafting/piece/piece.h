// Piece: one pattern piece, its seam line, its cut line and its marks.
//
//   Piece front = piece_from_json(text);
//   for (const Edge& edge : front.edges) draw(edge.points);
//
// Piece frame: millimetres, x across, y up the garment, the centre front (or
// centre back) on x = 0, the drafted half on x >= 0.
//
// `seam_line` and `cut_line` are closed outlines, counter-clockwise, the first
// point not repeated at the end. `edges` cut the seam line into named runs in
// the same order and direction; each starts where the one before ends. Curves
// are polylines fine enough for cutting: flattened within 0.01 mm.
#pragma once

#include <Eigen/Core>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace cowlcast::drafting {

using Point = Eigen::Vector2d;        ///< mm
using Polyline = std::vector<Point>;  ///< mm; closed where the name says outline

/// A named run of the seam line. Roles are the strings of the piece file:
/// "centre-front", "neckline", "shoulder", "armhole", "side-seam", "hem", and on
/// a cowl front "cowl-edge", "facing-edge", "facing-shoulder".
struct Edge {
  std::string role;
  Polyline points;
};

/// How a notch is made on the cloth.
enum class NotchForm {
  mark,  ///< chalked or pinned; nothing is cut
  slit,  ///< a snip square in from the cut line
  vee    ///< a small V cut out of the allowance
};

/// A notch: a place on the cut line where two seams must meet.
struct Notch {
  std::string name;            ///< for example "armhole"
  Point seam = Point::Zero();  ///< its place on the seam line
  Point cut = Point::Zero();   ///< the same on the cut line
  int ticks = 1;               ///< marks side by side: 1 on a front, 2 on a back
  NotchForm form = NotchForm::mark;
};

/// A straight line with two ends: a grainline, a fold, a slash line.
struct Segment {
  Point from = Point::Zero();
  Point to = Point::Zero();
};

/// How a cowl front was opened.
struct CowlRecord {
  double drape = 0.0;                 ///< asked for, shoulder seam to shoulder seam, mm
  std::vector<double> hinge_angles;   ///< opening at each hinge from the top down, radians
  double swing = 0.0;                 ///< turn of the whole front about its centre-front point, radians
  std::vector<Segment> slash_lines;   ///< on the lowered base, from the centre front to the hinge
  std::vector<Polyline> slash_paths;  ///< the same lines as they run between these ends, straight or curved
  struct Part {
    Polyline before, after;  ///< outlines, the same points in the same order
  };
  std::vector<Part> parts;  ///< from the top down
};

struct Piece {
  std::string name;
  Polyline seam_line;
  Polyline cut_line;
  std::vector<Edge> edges;
  /// "neck-point", "shoulder-point", ...; those called "drill-..." are drill marks:
  /// places inside the piece to be marked on the cloth.
  std::map<std::string, Point> points;
  std::vector<Notch> notches;
  std::optional<Segment> grain;
  std::optional<Segment> fold;    ///< the edge laid on the cloth's fold, when there is one
  std::optional<Segment> mirror;  ///< cut full: the line to mirror the half in, see `unfolded`
  std::optional<CowlRecord> cowl;
};

/// The edge of that role. Throws Refusal when the piece has none.
const Edge& edge_of(const Piece& piece, const std::string& role);
bool has_edge(const Piece& piece, const std::string& role);

/// The whole piece as it lies flat: a piece with a `fold` or `mirror` line gets
/// its mirrored half joined on, roles of mirrored edges unchanged, and neither
/// line any more. A piece with neither comes back as it is.
Piece unfolded(const Piece& piece);

/// JSON text of the piece file: "format": "cowlcast piece", "schema": 1, "units": "mm".
std::string piece_to_json(const Piece& piece);

/// Throws Refusal for text that is not a complete piece, saying what is wrong with it.
Piece piece_from_json(const std::string& text);

}  // namespace cowlcast::drafting
