#include "drafting/piece/piece.h"

#include <algorithm>

#include "drafting/geometry/polyline.h"
#include "drafting/piece/marks.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

bool on_axis(const Point& point, const Segment& axis) {
  return (mirrored(point, axis) - point).norm() < 1e-6;
}

/// One outline from a half whose straight run lies on the axis.
Polyline unfolded_outline(const Polyline& half, const Segment& axis) {
  const size_t n = half.size();
  // Start after the run on the axis, so that the open half goes from axis to axis.
  size_t start = n;
  for (size_t i = 0; i < n; ++i) {
    if (on_axis(half[i], axis) && !on_axis(half[(i + 1) % n], axis)) start = i;
  }
  if (start == n) return half;
  Polyline open;
  for (size_t k = 0; k < n; ++k) {
    open.push_back(half[(start + k) % n]);
    if (k > 0 && on_axis(open.back(), axis)) break;
  }
  Polyline whole = open;
  for (size_t i = open.size() - 1; i-- > 1;) whole.push_back(mirrored(open[i], axis));
  return whole;
}

bool lies_on(const Polyline& line, const Segment& axis) {
  return std::all_of(line.begin(), line.end(), [&](const Point& p) { return on_axis(p, axis); });
}

}  // namespace

bool has_edge(const Piece& piece, const std::string& role) {
  return std::any_of(piece.edges.begin(), piece.edges.end(), [&](const Edge& e) { return e.role == role; });
}

const Edge& edge_of(const Piece& piece, const std::string& role) {
  for (const Edge& edge : piece.edges) {
    if (edge.role == role) return edge;
  }
  throw Refusal("The piece \"" + piece.name + "\" has no edge named " + role +
                ". Use a piece that has one, or name the edge so in the drawing.");
}

Piece unfolded(const Piece& piece) {
  if (!piece.fold && !piece.mirror) return piece;
  const Segment axis = piece.fold ? *piece.fold : *piece.mirror;
  Piece whole = piece;
  whole.fold.reset();
  whole.mirror.reset();
  whole.seam_line = unfolded_outline(piece.seam_line, axis);
  whole.cut_line = unfolded_outline(piece.cut_line, axis);
  whole.edges.clear();
  for (const Edge& edge : piece.edges) {
    if (!lies_on(edge.points, axis)) whole.edges.push_back(edge);
  }
  const size_t half = whole.edges.size();
  for (size_t i = half; i-- > 0;) {
    const Edge& edge = whole.edges[i];
    whole.edges.push_back({edge.role, reversed(mirrored(edge.points, axis))});
  }
  for (const Notch& notch : piece.notches) {
    if (on_axis(notch.seam, axis)) continue;
    whole.notches.push_back(
        {notch.name, mirrored(notch.seam, axis), mirrored(notch.cut, axis), notch.ticks, notch.form});
  }
  for (const DrillMark& drill : drill_marks(piece))
    whole.points[drill_name(drill.name + "-other-side")] = mirrored(drill.at, axis);
  return whole;
}

}  // namespace cowlcast::drafting
