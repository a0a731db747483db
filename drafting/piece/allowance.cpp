#include "drafting/piece/allowance.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>

#include "drafting/geometry/offset.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr std::array<std::string_view, 11> roles = {
    "centre-front", "centre-back",     "neckline",    "shoulder",     "armhole",     "side-seam",
    "hem",          "facing-shoulder", "facing-edge", "camisole-hem", "camisole-top"};

void check(const Allowances& allowances) {
  for (const auto& [role, width] : allowances) {
    if (std::find(roles.begin(), roles.end(), role) == roles.end()) {
      throw Refusal("There is no edge called \"" + role +
                    "\" to give an allowance to. Edges are centre-front, neckline, shoulder, armhole, "
                    "side-seam, hem, facing-edge and facing-shoulder.");
    }
    if (!std::isfinite(width) || width < 0.0 || width > 100.0) {
      throw Refusal("The allowance of " + role + " must be between 0 and 100 mm. Give it in millimetres.");
    }
  }
}

bool lies_on(const Edge& edge, const std::optional<Segment>& line) {
  return line && std::all_of(edge.points.begin(), edge.points.end(),
                             [&](const Point& p) { return (mirrored(p, *line) - p).norm() < 1e-6; });
}

/// Straight out from the seam line at `notch`, to where it leaves the cut line.
Point out_to_cut(const Piece& piece, const Point& notch) {
  Point out(1, 0);
  double nearest_edge = 1e300;
  const size_t n = piece.seam_line.size();
  for (size_t i = 0; i < n; ++i) {
    const Polyline side{piece.seam_line[i], piece.seam_line[(i + 1) % n]};
    const Foot foot = nearest(side, notch);
    if (foot.distance >= nearest_edge) continue;
    nearest_edge = foot.distance;
    const Point along = (side[1] - side[0]).normalized();
    out = {along.y(), -along.x()};
  }
  Point best = notch;
  double reach = 1e300;
  const size_t m = piece.cut_line.size();
  for (size_t i = 0; i < m; ++i) {
    const auto place =
        crossing(notch - 1e-6 * out, notch + 250.0 * out, piece.cut_line[i], piece.cut_line[(i + 1) % m]);
    if (place && (*place - notch).norm() < reach) {
      reach = (*place - notch).norm();
      best = *place;
    }
  }
  return best;
}

/// An edge with its allowance, on the way to the cut line.
struct Allowed {
  std::string role;
  Polyline points;
  double width;
};

/// Prepares a hem that is folded up: below it the side seam goes on as its own
/// reflection in the hem line, further than the allowance reaches, and the hem
/// there is a plain line. Returns the hem's cut line, overlong at both ends, to
/// cut that with; none when the piece has no such hem.
std::optional<Polyline> turn_up_hem(std::vector<Allowed>& ring) {
  for (size_t i = 1; i + 1 < ring.size(); ++i) {
    Allowed &hem = ring[i], &side = ring[i + 1];
    if (hem.role != "hem" || side.role != "side-seam" || hem.width <= 0.0) continue;
    const Point corner = hem.points.back();
    const Point along = (corner - hem.points[hem.points.size() - 2]).normalized();
    const double reach = 3.0 * hem.width + 2.0 * side.width;
    Polyline lower{hem.points.front() + Point(-reach, -hem.width)};
    for (size_t k = 0; k < hem.points.size(); ++k) {
      const Point way = hem.points[std::min(k + 1, hem.points.size() - 1)] - hem.points[k > 0 ? k - 1 : 0];
      const Point out = Point(way.y(), -way.x()).normalized();
      lower.push_back(hem.points[k] + hem.width * (k == 0 ? Point(0, -1) : out));
    }
    lower.push_back(lower.back() + reach * along);

    Polyline down = reversed(mirrored(between(side.points, 0.0, reach), {corner, corner + along}));
    const double floor = std::min(box_of(lower).low.y(), box_of(down).low.y()) - reach;
    const Point foot(down.front().x(), floor), centre(hem.points.front().x(), floor);
    ring[i - 1].points.back() = centre;
    hem.points = {centre, foot};
    hem.width = 0.0;
    side.points.insert(side.points.begin(), down.begin(), down.end() - 1);
    side.points.insert(side.points.begin(), foot);
    return lower;
  }
  return std::nullopt;
}

/// The part of a counter-clockwise outline above a line that crosses it from left
/// to right; none when the line does not cross twice.
std::optional<Polyline> above(const Polyline& outline, const Polyline& line) {
  struct Crossing {
    size_t side = 0;
    double along = 0.0;
    Point point = Point::Zero();
  };
  std::vector<Crossing> crossings;
  const Box box = box_of(line);
  const size_t n = outline.size();
  for (size_t i = 0; i < n; ++i) {
    const Point &a = outline[i], &b = outline[(i + 1) % n];
    if (std::min(a.y(), b.y()) > box.high.y() || std::max(a.y(), b.y()) < box.low.y()) continue;
    double start = 0.0;
    for (size_t k = 1; k < line.size(); ++k) {
      if (const auto place = crossing(line[k - 1], line[k], a, b)) {
        crossings.push_back({i, start + (*place - line[k - 1]).norm(), *place});
      }
      start += (line[k] - line[k - 1]).norm();
    }
  }
  if (crossings.size() < 2) return std::nullopt;
  const auto by_along = [](const Crossing& a, const Crossing& b) { return a.along < b.along; };
  const Crossing enter = *std::min_element(crossings.begin(), crossings.end(), by_along);
  const Crossing leave = *std::max_element(crossings.begin(), crossings.end(), by_along);
  if (enter.side == leave.side) return std::nullopt;
  Polyline result = between(line, enter.along, leave.along);
  for (size_t i = (leave.side + 1) % n;; i = (i + 1) % n) {
    if ((outline[i] - result.back()).norm() > 1e-9) result.push_back(outline[i]);
    if (i == enter.side) break;
  }
  if ((result.back() - result.front()).norm() <= 1e-9) result.pop_back();
  return result;
}

}  // namespace

Allowances default_allowances() {
  return {{"shoulder", 10.0},   {"armhole", 10.0},      {"side-seam", 10.0},
          {"neckline", 12.7},   {"hem", 25.0},          {"facing-shoulder", 10.0},
          {"facing-edge", 0.0}, {"camisole-hem", 12.7}, {"camisole-top", 12.7}};
}

void add_allowances(Piece& piece, const Allowances& allowances, const Corners& corners) {
  check(allowances);
  std::vector<Allowed> ring;
  for (const Edge& edge : piece.edges) {
    if (edge.role == "cowl-edge") continue;
    const auto found = allowances.find(edge.role);
    const bool uncut = lies_on(edge, piece.fold) || lies_on(edge, piece.mirror);
    ring.push_back({edge.role, edge.points, found == allowances.end() || uncut ? 0.0 : found->second});
  }
  std::optional<Polyline> hem_cut;
  if (corners.hem_turned_up) hem_cut = turn_up_hem(ring);
  Polyline outline;
  std::vector<double> widths;
  for (const Allowed& edge : ring) {
    outline.insert(outline.end(), edge.points.begin(), edge.points.end() - 1);
    widths.insert(widths.end(), edge.points.size() - 1, edge.width);
  }
  piece.cut_line = offset_outline(outline, widths, corners.squared ? 1.0 : mitre_limit);
  if (hem_cut) piece.cut_line = above(piece.cut_line, *hem_cut).value_or(Polyline{});
  if (piece.cut_line.size() < 3 || self_crossing(piece.cut_line) ||
      signed_area(piece.cut_line) < signed_area(piece.seam_line) - 1e-6) {
    throw Refusal("With these allowances the cut line of the " + piece.name +
                  " would cross itself. Use narrower allowances on its edges.");
  }
  for (Notch& notch : piece.notches) notch.cut = out_to_cut(piece, notch.seam);
}

}  // namespace cowlcast::drafting
