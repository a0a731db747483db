// Coverage: how much of each pixel some outlines cover, exactly, and painting by it.
//
//   Coverage coverage(1920, 1080);
//   coverage.add(ring);                       // closed, in pixels
//   coverage.paint(picture, 0xffffffff);      // and ready for the next
//
// A pixel's coverage is the area of the outlines within its square, found by
// summing signed areas edge by edge (the method of scan conversion by cells).
// Outlines turning the same way add up and are held at 1; a hole turns the other
// way. Only cells that an edge passes through are kept, so that thin lines cost little.
#pragma once

#include <QImage>
#include <QRgb>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::projector {

class Coverage {
 public:
  Coverage(int width, int height);

  /// A closed outline in pixels, the centre of the first pixel at (0, 0). What lies outside of the
  /// picture is cut off.
  void add(const drafting::Polyline& ring);

  /// The pixels of a row from `from` to before `to`.
  struct Span {
    int from = 0, to = 0;
  };

  /// Blends `colour` into an RGB32 picture of the same size by the coverage, then forgets the outlines.
  /// `painted`, when it has a span for each row, grows to hold what was painted.
  void paint(QImage& picture, QRgb colour, std::vector<Span>* painted = nullptr);

 private:
  struct Cell {
    int x;
    float cover;  // signed height of the edge within the cell: carried on to all pixels right of it
    float area;   // of this, the part that this cell itself is covered by
  };

  void add_edge(double x0, double y0, double x1, double y1);
  void add_in_row(int row, double x0, double x1, double height);

  int width_, height_;
  int top_, bottom_;  // rows that hold cells
  std::vector<std::vector<Cell>> rows_;
};

}  // namespace cowlcast::projector
