#include "drafting/piece/assemble.h"

#include <cmath>
#include <cstdio>

#include "drafting/geometry/polyline.h"
#include "drafting/piece/allowance.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {

std::string mm_in_words(double length) {
  if (std::abs(length) >= 1e5) return length > 0.0 ? "more than 100 m" : "less than -100 m";
  char text[48];
  const double rounded = std::round(length * 10.0) / 10.0;
  std::snprintf(text, sizeof text, rounded == std::round(rounded) ? "%.0f mm" : "%.1f mm", rounded + 0.0);
  return text;
}

std::string place_in_words(const Point& point) {
  return mm_in_words(point.x()) + " out from the centre and " + mm_in_words(point.y()) +
         " above the hem at the centre";
}

Polyline outline_of(const std::vector<Edge>& edges) {
  Polyline outline;
  for (const Edge& edge : edges) {
    if (edge.role == "cowl-edge") continue;
    outline.insert(outline.end(), edge.points.begin(), edge.points.end() - 1);
  }
  return outline;
}

Piece assemble_base(const std::string& name, std::vector<Edge> edges,
                    const std::optional<Point>& armhole_notch) {
  Piece piece;
  piece.name = name;
  piece.edges = std::move(edges);
  piece.seam_line = outline_of(piece.edges);
  if (const auto place = self_crossing(piece.seam_line)) {
    throw Refusal("The outline of the " + name + " crosses itself " + place_in_words(*place) +
                  ". Redraw the edges there so that they only meet at their ends.");
  }
  const Polyline& centre = piece.edges.front().points;
  piece.points["neck-point"] = edge_of(piece, "shoulder").points.back();
  piece.points["shoulder-point"] = edge_of(piece, "shoulder").points.front();
  piece.fold = Segment{centre.front(), centre.back()};
  const Box box = box_of(piece.seam_line);
  const double across = 0.3 * box.width();
  piece.grain =
      Segment{{across, box.low.y() + 0.2 * box.height()}, {across, box.low.y() + 0.55 * box.height()}};
  if (armhole_notch) {
    const Foot foot = nearest(edge_of(piece, "armhole").points, *armhole_notch);
    piece.notches.push_back({"armhole", foot.point, foot.point});
  }
  add_allowances(piece, default_allowances());
  return piece;
}

}  // namespace cowlcast::drafting
