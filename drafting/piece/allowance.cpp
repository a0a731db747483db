#include "drafting/piece/allowance.h"

#include <algorithm>
#include <array>
#include <cmath>
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

}  // namespace

Allowances default_allowances() {
  return {{"shoulder", 10.0},   {"armhole", 10.0},      {"side-seam", 10.0},
          {"neckline", 12.7},   {"hem", 25.0},          {"facing-shoulder", 10.0},
          {"facing-edge", 0.0}, {"camisole-hem", 12.7}, {"camisole-top", 12.7}};
}

void add_allowances(Piece& piece, const Allowances& allowances) {
  check(allowances);
  Polyline outline;
  std::vector<double> widths;
  for (const Edge& edge : piece.edges) {
    if (edge.role == "cowl-edge") continue;
    const auto found = allowances.find(edge.role);
    const bool uncut = lies_on(edge, piece.fold) || lies_on(edge, piece.mirror);
    const double width = found == allowances.end() || uncut ? 0.0 : found->second;
    outline.insert(outline.end(), edge.points.begin(), edge.points.end() - 1);
    widths.insert(widths.end(), edge.points.size() - 1, width);
  }
  piece.cut_line = offset_outline(outline, widths);
  if (piece.cut_line.size() < 3 || self_crossing(piece.cut_line)) {
    throw Refusal("With these allowances the cut line of the " + piece.name +
                  " would cross itself. Use narrower allowances on its edges.");
  }
  for (Notch& notch : piece.notches) notch.cut = out_to_cut(piece, notch.seam);
}

}  // namespace cowlcast::drafting
