#include "drafting/piece/corner.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

/// Where the ray from a corner leaves an outline: on its side `side`.
struct Exit {
  size_t side = 0;
  Point point = Point::Zero();
  double reach = 0.0;
};

std::optional<Exit> exit_of(const Polyline& outline, const Point& corner, const Point& end) {
  std::optional<Exit> nearest_exit;
  const size_t n = outline.size();
  for (size_t i = 0; i < n; ++i) {
    const auto place = crossing(corner, end, outline[i], outline[(i + 1) % n]);
    if (!place) continue;
    const double reach = (*place - corner).norm();
    if (!nearest_exit || reach < nearest_exit->reach) nearest_exit = Exit{i, *place, reach};
  }
  return nearest_exit;
}

/// The seam moved out by the width to its right, and on past the corner.
Polyline moved_out(const PressedEdge& edge, double past) {
  Polyline line;
  const size_t n = edge.seam.size();
  for (size_t i = 0; i < n; ++i) {
    const Point in = (edge.seam[i] - edge.seam[i > 0 ? i - 1 : 0]);
    const Point out = (edge.seam[i + 1 < n ? i + 1 : i] - edge.seam[i]);
    const Point a = (i > 0 ? in : out).normalized(), b = (i + 1 < n ? out : in).normalized();
    const Point normal = Point(a.y(), -a.x()) + Point(b.y(), -b.x());
    line.push_back(edge.seam[i] + 2.0 * edge.width * normal / std::max(normal.squaredNorm(), 1e-6));
  }
  line.push_back(line.back() + past * (edge.seam[n - 1] - edge.seam[n - 2]).normalized());
  return line;
}

}  // namespace

std::string corner_form_name(CornerForm form) {
  return form == CornerForm::squared ? "squared" : form == CornerForm::mirrored ? "mirrored" : "mitred";
}

ChosenCorner corner_between(const Corners& corners, const std::string& first, const std::string& second) {
  for (size_t i = corners.list.size(); i-- > 0;) {
    const Corner& corner = corners.list[i];
    if (corner.pressed == first && corner.beside == second) return {corner.form, true};
    if (corner.pressed == second && corner.beside == first) return {corner.form, false};
  }
  return {corners.others, true};
}

Polyline with_mirrored_corner(const Polyline& cut, const PressedEdge& edge) {
  const size_t n = cut.size();
  const Point corner = edge.seam.back();
  const Point along = (corner - edge.seam[edge.seam.size() - 2]).normalized();
  const double reach = 3.0 * edge.width + 4.0 * edge.beside_width + 20.0;
  const auto exit = exit_of(cut, corner - 1e-9 * along, corner + reach * along);
  if (!exit) return cut;

  // The neighbour's cut line from there on, reflected in the line the edge is pressed along.
  Polyline beside{exit->point};
  double run = 0.0;
  for (size_t k = 1; k < n && run < reach; ++k) {
    const Point& next = cut[(exit->side + k) % n];
    run += (next - beside.back()).norm();
    beside.push_back(next);
  }
  const Polyline end = mirrored(beside, {corner, corner + along});

  // It ends where it meets the pressed edge's own cut line, which may have to go on past the corner.
  const Polyline own = moved_out(edge, reach);
  std::optional<Point> meeting;
  size_t last = 0;
  for (size_t k = 1; k < end.size() && !meeting; ++k) {
    for (size_t i = own.size(); i-- > 1 && !meeting;) {
      meeting = crossing(own[i - 1], own[i], end[k - 1], end[k]);
      last = k;
    }
  }
  if (!meeting) return cut;
  const double meets_at = nearest(own, *meeting).along;

  // Around the outline from the exit to the last point of the pressed edge's cut line before the meeting.
  Polyline result{exit->point};
  for (size_t k = 1; k <= n; ++k) result.push_back(cut[(exit->side + k) % n]);
  double dropped = 0.0;
  while (result.size() > 3 && dropped < 4.0 * reach) {
    const Foot foot = nearest(own, result.back());
    if (foot.distance < 1e-4 && foot.along < meets_at - 1e-9) break;
    dropped += (result[result.size() - 2] - result.back()).norm();
    result.pop_back();
  }
  result.push_back(*meeting);
  for (size_t k = last; k-- > 1;) result.push_back(end[k]);
  return result;
}

}  // namespace cowlcast::drafting
