// Laying: how a piece lies on the table.
//
//   Laying laying{.x = -200, .y = -310, .angle = 0.1};
//   Polyline on_table = laid(laying, front.cut_line);     // mat mm
//
// The piece's own origin comes to (x, y) on the mat, turned anticlockwise by
// `angle` as seen from above. A mirrored piece is flipped left to right in its
// own frame first, then turned, so the origin keeps its place.
#pragma once

#include "drafting/piece/piece.h"

namespace cowlcast::projector {

using drafting::Point;
using drafting::Polyline;

struct Laying {
  double x = 0.0, y = 0.0;  ///< place of the piece's origin on the mat, mm
  double angle = 0.0;       ///< radians, anticlockwise
  bool mirrored = false;    ///< face down
  double height = 0.0;      ///< of the cloth's upper face above the mat, mm
};

Point mat_from_piece(const Laying& laying, const Point& piece);
Point piece_from_mat(const Laying& laying, const Point& mat);

/// A line of the piece, on the mat; a mirrored outline comes out turning the other way.
Polyline laid(const Laying& laying, const Polyline& piece);

/// The piece on its side, its centre front nearest the operator, in the middle of the box around `area` (mat
/// mm).
Laying in_the_middle(const Polyline& area, const drafting::Piece& piece, double height);

/// Turns the laying by `angle` about a point of the mat, which keeps its place on the piece.
Laying turned_about(const Laying& laying, const Point& mat, double angle);

/// Flips the piece about the upright line through a point of the mat, which keeps its place on
/// the piece; what pointed left points right.
Laying flipped_about(const Laying& laying, const Point& mat);

/// How far the farthest corner of the piece's outline has to go from one laying to the other, mm; infinite
/// when one of them is face down.
double apart(const Laying& a, const Laying& b, const Polyline& piece);

/// A move that comes nearer to the laid-out place `kept` and ends within `reach` mm of it goes all the way;
/// any other ends where it ends, so a piece that is there can be moved away.
Laying snapped(const Laying& before, const Laying& after, const Laying& kept, const Polyline& piece,
               double reach = 8.0);

}  // namespace cowlcast::projector
