#include "drafting/piece/allowance.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "drafting/geometry/offset.h"
#include "drafting/geometry/polyline.h"
#include "drafting/piece/assemble.h"
#include "drafting/piece/marks.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr int places = 12;  // along an edge, where its width is checked

void check(const Allowances& allowances) {
  const std::vector<std::string>& roles = roles_with_allowance();
  for (const auto& [role, width] : allowances) {
    if (std::find(roles.begin(), roles.end(), role) == roles.end()) {
      std::string known;
      for (const std::string& name : roles) known += (known.empty() ? "" : ", ") + name;
      throw Refusal("There is no edge called \"" + role + "\" to give an allowance to. Edges are " + known +
                    ".");
    }
    if (!std::isfinite(width) || width < 0.0 || width > widest_allowance) {
      throw Refusal("The allowance of " + role + " must be between 0 and " + mm_in_words(widest_allowance) +
                    ". Give it in between.");
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

/// True where two edges run on so nearly straight that there is no point to cut off.
bool is_flat(const Allowed& before, const Allowed& after) {
  const Point in = before.points.back() - before.points[before.points.size() - 2];
  const Point out = after.points[1] - after.points[0];
  return in.normalized().dot(out.normalized()) > 0.7;
}

/// The seam line's allowances without the trueing of mirrored corners.
Polyline plain_cut_line(const std::vector<Allowed>& ring, const Corners& corners) {
  Polyline outline;
  std::vector<double> widths, limits;
  for (size_t i = 0; i < ring.size(); ++i) {
    const Allowed &edge = ring[i], &before = ring[(i + ring.size() - 1) % ring.size()];
    outline.insert(outline.end(), edge.points.begin(), edge.points.end() - 1);
    widths.insert(widths.end(), edge.points.size() - 1, edge.width);
    const bool squared =
        corner_between(corners, before.role, edge.role).form == CornerForm::squared && !is_flat(before, edge);
    limits.push_back(squared ? 1.0 : mitre_limit);
    limits.insert(limits.end(), edge.points.size() - 2, mitre_limit);
  }
  return offset_outline(outline, widths, limits);
}

/// True where the outline turns inwards: nothing there is folded back.
bool is_inner(const Allowed& before, const Allowed& after) {
  const Point in = before.points.back() - before.points[before.points.size() - 2];
  const Point out = after.points[1] - after.points[0];
  return in.x() * out.y() - in.y() * out.x() < 0.0;
}

Polyline flipped(const Polyline& line) {
  Polyline result;
  for (size_t i = line.size(); i-- > 0;) result.push_back({-line[i].x(), line[i].y()});
  return result;
}

/// The cut line with each mirrored corner trued.
Polyline with_mirrored_corners(Polyline cut, const std::vector<Allowed>& ring, const Corners& corners) {
  for (size_t i = 0; i < ring.size(); ++i) {
    const Allowed &first = ring[i], &second = ring[(i + 1) % ring.size()];
    const ChosenCorner corner = corner_between(corners, first.role, second.role);
    const double pressed_width = corner.first_pressed ? first.width : second.width;
    if (corner.form != CornerForm::mirrored || pressed_width <= 0.0 || is_inner(first, second)) continue;
    if (corner.first_pressed) {
      cut = with_mirrored_corner(cut, {first.points, first.width, second.width});
    } else {  // the same seen in a glass, so that the pressed edge runs towards the corner again
      cut = flipped(with_mirrored_corner(flipped(cut), {flipped(second.points), second.width, first.width}));
    }
  }
  return cut;
}

/// How far from its end an edge's cut line may be shaped by the corner there: at an
/// inner corner the allowances meet further in.
double corner_reach(const Allowed& before, const Allowed& after) {
  return (is_inner(before, after) ? 2.0 : 0.6) * std::max(before.width, after.width) + 1.0;
}

/// True when along an edge, but for its corners, the cut line lies straight out by
/// its width; here and there, at a kink of the seam line, it may not.
bool keeps_width(const std::vector<Allowed>& ring, size_t i, const Polyline& cut) {
  const Allowed& edge = ring[i];
  const size_t n = ring.size();
  const double from = corner_reach(ring[(i + n - 1) % n], edge);
  const double to = length(edge.points) - corner_reach(edge, ring[(i + 1) % n]);
  if (edge.width <= 0.0 || from >= to) return true;
  int astray = 0;
  for (int k = 0; k < places; ++k) {
    const double along = from + (to - from) * (k + 0.5) / places;
    const Point way = (point_at(edge.points, along + 0.5) - point_at(edge.points, along - 0.5)).normalized();
    const Point out = point_at(edge.points, along) + edge.width * Point(way.y(), -way.x());
    if (distance_to_outline(cut, out) > 0.5 + 0.1 * edge.width) ++astray;
  }
  return 4 * astray < places;
}

/// What keeps a cut line from being one; empty when it is sound.
std::string fault_of(const Polyline& cut, const Piece& piece, const std::vector<Allowed>& ring) {
  if (cut.size() < 3 || self_crossing(cut) || signed_area(cut) < signed_area(piece.seam_line) - 1e-6) {
    return "With these allowances the cut line of the " + piece.name + " would cross itself";
  }
  double widest = 0.0;
  for (const Allowed& edge : ring) {
    widest = std::max(widest, edge.width);
    const Point& corner = edge.points.front();
    if (!contains(cut, corner) && distance_to_outline(cut, corner) > 1e-6) {
      return "With these allowances a corner of the " + piece.name + " would be cut off";
    }
  }
  for (size_t i = 0, n = cut.size(); i < n; ++i) {
    const Point in = (cut[i] - cut[(i + n - 1) % n]).normalized(),
                out = (cut[(i + 1) % n] - cut[i]).normalized();
    if (in.dot(out) > 0.98) continue;  // on a curve
    if (distance_to_outline(piece.seam_line, cut[i]) > 3.0 * widest + 1e-6) {
      return "With these allowances a corner of the " + piece.name + " would run far out to a point";
    }
  }
  for (size_t i = 0; i < ring.size(); ++i) {
    if (!keeps_width(ring, i, cut)) {
      return "The " + ring[i].role + " of the " + piece.name + " curves too tightly for an allowance of " +
             mm_in_words(ring[i].width);
    }
  }
  return "";
}

Polyline cut_line_of(const std::vector<Allowed>& ring, const Corners& corners) {
  return with_mirrored_corners(plain_cut_line(ring, corners), ring, corners);
}

/// Throws the fault with its cure: the widest that works when all allowances are held to one width.
[[noreturn]] void refuse(const std::string& fault, const Piece& piece, std::vector<Allowed> ring,
                         const Corners& corners) {
  const std::vector<Allowed> asked = ring;
  for (double held = std::floor(widest_allowance); held >= 5.0; held -= 5.0) {
    for (size_t i = 0; i < ring.size(); ++i) ring[i].width = std::min(asked[i].width, held);
    if (fault_of(cut_line_of(ring, corners), piece, ring).empty()) {
      throw Refusal(fault + ". With no allowance wider than " + mm_in_words(held) + " it works.");
    }
  }
  throw Refusal(fault + ". Use narrower allowances on its edges.");
}

}  // namespace

Allowances default_allowances() {
  return {{"shoulder", 10.0},   {"armhole", 10.0},      {"side-seam", 10.0},
          {"neckline", 12.7},   {"hem", 25.0},          {"facing-shoulder", 10.0},
          {"facing-edge", 0.0}, {"camisole-hem", 12.7}, {"camisole-top", 12.7}};
}

const std::vector<std::string>& roles_with_allowance() {
  static const std::vector<std::string> roles = {"neckline",        "shoulder",     "armhole",
                                                 "side-seam",       "hem",          "facing-edge",
                                                 "facing-shoulder", "camisole-top", "camisole-hem"};
  return roles;
}

std::vector<std::string> roles_with_allowance(const Piece& piece) {
  const std::vector<std::string>& roles = roles_with_allowance();
  std::vector<std::string> found;
  for (const Edge& edge : piece.edges) {
    if (std::find(roles.begin(), roles.end(), edge.role) != roles.end()) found.push_back(edge.role);
  }
  return found;
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
  piece.cut_line = cut_line_of(ring, corners);
  const std::string fault = fault_of(piece.cut_line, piece, ring);
  if (!fault.empty()) refuse(fault, piece, ring, corners);
  for (Notch& notch : piece.notches) notch.cut = out_to_cut(piece, notch.seam);
}

void add_notch(Piece& piece, Notch notch) {
  notch.cut = out_to_cut(piece, notch.seam);
  if ((notch.cut - notch.seam).norm() < least_for_cut_notch) notch.form = NotchForm::mark;
  piece.notches.push_back(notch);
}

}  // namespace cowlcast::drafting
