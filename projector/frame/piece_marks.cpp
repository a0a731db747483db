#include "projector/frame/piece_marks.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

using drafting::Piece;
using drafting::Segment;

constexpr const char* kTurnedEdge = "cowl-edge";  // folded, not sewn

// A mark whose points are in the piece frame until `laid_marks` carries them over.
Mark stroke(std::vector<Polyline> lines, double width, QRgb colour, bool closed = false) {
  return {.lines = std::move(lines), .closed = closed, .width = width, .colour = colour};
}

bool on_line(const Segment& line, const Point& point) {
  const Point along = (line.to - line.from).normalized(), way = point - line.from;
  return std::abs(along.x() * way.y() - along.y() * way.x()) < 0.01;
}

Polyline circle(const Point& centre, double radius) {
  Polyline out;
  for (int i = 0; i < 32; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / 32.0;
    out.emplace_back(centre.x() + radius * std::cos(angle), centre.y() + radius * std::sin(angle));
  }
  return out;
}

// An open arrow head at `tip`, pointing along `way` (unit).
Polyline arrow_head(const Point& tip, const Point& way, double size) {
  const Point across(-way.y(), way.x());
  return {tip - size * way + 0.5 * size * across, tip, tip - size * way - 0.5 * size * across};
}

void add_grain(std::vector<Mark>& marks, const Segment& grain, const FrameStyle& style) {
  const Point way = (grain.to - grain.from).normalized();
  std::vector<Polyline> chain;
  for (const Polyline& dash : dashes({grain.from, grain.to}, false, 24.0, 12.0)) chain.push_back(dash);
  const std::vector<Polyline> long_ones = chain;
  for (size_t i = 1; i < long_ones.size(); ++i) {
    const Point middle = 0.5 * (long_ones[i - 1].back() + long_ones[i].front());
    chain.push_back({middle - 2.0 * way, middle + 2.0 * way});
  }
  chain.push_back(arrow_head(grain.from, -way, 10.0));
  chain.push_back(arrow_head(grain.to, way, 10.0));
  marks.push_back(stroke(chain, style.mark_width, style.guide));
}

// The fold as far as the cut line follows it, allowances at its ends included.
Segment whole_fold(const Piece& piece) {
  Segment whole = *piece.fold;
  const Point way = (whole.to - whole.from).normalized(), origin = whole.from;
  double least = 0.0, most = (whole.to - whole.from).norm();
  for (const Point& point : piece.cut_line) {
    if (!on_line(*piece.fold, point)) continue;
    least = std::min(least, way.dot(point - origin));
    most = std::max(most, way.dot(point - origin));
  }
  return {origin + least * way, origin + most * way};
}

// A fold as two fine lines: one on it and one beside it, within the piece.
void add_fold(std::vector<Mark>& marks, const Piece& piece, const Segment& fold, const FrameStyle& style) {
  const Point way = (fold.to - fold.from).normalized();
  Point inward(-way.y(), way.x());
  const Point middle = 0.5 * (fold.from + fold.to);
  if (!drafting::contains(piece.cut_line, middle + 3.0 * inward)) inward = -inward;
  marks.push_back(
      stroke({{fold.from, fold.to}, {fold.from + 3.0 * inward, fold.to + 3.0 * inward}}, 0.8, style.guide));
}

// Every fold of the piece: the one it is cut on, and the one its facing turns in at.
void add_folds(std::vector<Mark>& marks, const Piece& piece, const FrameStyle& style) {
  if (piece.fold) add_fold(marks, piece, whole_fold(piece), style);
  for (const drafting::Edge& edge : piece.edges)
    if (edge.role == kTurnedEdge && edge.points.size() > 1)
      add_fold(marks, piece, {edge.points.front(), edge.points.back()}, style);
}

// Seams only: nothing on the fold, nor where an edge is left raw and the cut line lies on it.
void add_seams(std::vector<Mark>& marks, const Piece& piece, const FrameStyle& style) {
  Mark seams = stroke({}, style.seam_width, style.seam);
  for (const drafting::Edge& edge : piece.edges) {
    if (edge.points.size() < 2 || edge.role == kTurnedEdge) continue;
    const Point middle = drafting::point_at(edge.points, 0.5 * drafting::length(edge.points));
    if (piece.fold && on_line(*piece.fold, middle) && on_line(*piece.fold, edge.points.front())) continue;
    if (drafting::distance_to_outline(piece.cut_line, middle) < 0.3) continue;
    for (Polyline& dash : dashes(edge.points, false, 6.0, 4.0)) seams.lines.push_back(std::move(dash));
  }
  marks.push_back(std::move(seams));
}

void add_notches(std::vector<Mark>& marks, const Piece& piece, const FrameStyle& style) {
  const double ring = 2.5, bar = 8.0;
  std::vector<Polyline> bars, heads;
  for (const drafting::Notch& notch : piece.notches) {
    Point inward = notch.seam - notch.cut;
    if (inward.norm() < 0.1) {  // no allowance here: square to the nearest stretch of the cut line
      Polyline outline = piece.cut_line;
      outline.push_back(outline.front());
      const double at = drafting::nearest(outline, notch.cut).along;
      const Point way = drafting::point_at(outline, at + 0.5) - drafting::point_at(outline, at - 0.5);
      inward = Point(-way.y(), way.x());
    }
    inward.normalize();
    const Point beside(-inward.y(), inward.x());
    for (int i = 0; i < notch.ticks; ++i) {  // rings side by side, clear of each other
      const Point foot = notch.cut + (i - 0.5 * (notch.ticks - 1)) * 3.0 * ring * beside;
      bars.push_back({foot, foot + bar * inward});
      heads.push_back(circle(foot + (bar + ring) * inward, ring));
    }
  }
  if (bars.empty()) return;
  marks.push_back(stroke(bars, style.mark_width, style.seam));
  marks.push_back(stroke(heads, style.mark_width, style.seam, true));
}

void add_points(std::vector<Mark>& marks, const Piece& piece, const FrameStyle& style) {
  std::vector<Polyline> squares;
  const double reach = 4.0;
  for (const auto& [name, at] : piece.points)
    squares.push_back(
        {at + Point(reach, 0), at + Point(0, reach), at - Point(reach, 0), at - Point(0, reach)});
  if (!squares.empty()) marks.push_back(stroke(squares, style.mark_width, style.guide, true));
}

// The place inside an outline that is farthest from its line, of a coarse grid.
Point roomiest(const Polyline& outline) {
  const drafting::Box box = drafting::box_of(outline);
  Point best = 0.5 * (box.low + box.high);
  double most = -1.0;
  const int across = 9, up = 13;
  for (int i = 1; i < across; ++i)
    for (int j = 1; j < up; ++j) {
      const Point at(box.low.x() + box.width() * i / across, box.low.y() + box.height() * j / up);
      if (!drafting::contains(outline, at)) continue;
      const double room = drafting::distance_to_outline(outline, at);
      if (room > most) {
        most = room;
        best = at;
      }
    }
  return best;
}

}  // namespace

std::vector<Polyline> cut_runs(const Piece& piece) {
  const Polyline& outline = piece.cut_line;
  const size_t count = outline.size();
  if (count < 3) return {};
  const auto folded = [&](size_t i) {
    return piece.fold && on_line(*piece.fold, outline[i % count]) &&
           on_line(*piece.fold, outline[(i + 1) % count]);
  };
  size_t first = count;  // a segment on the fold, to start after
  for (size_t i = 0; i < count && first == count; ++i)
    if (folded(i)) first = i;
  if (first == count) {
    Polyline whole = outline;
    whole.push_back(outline.front());
    return {whole};
  }
  std::vector<Polyline> runs;
  Polyline run;
  for (size_t k = 1; k <= count; ++k) {
    const size_t i = (first + k) % count;
    if (folded(i)) {
      if (run.size() > 1) runs.push_back(run);
      run.clear();
      continue;
    }
    if (run.empty()) run.push_back(outline[i]);
    run.push_back(outline[(i + 1) % count]);
  }
  if (run.size() > 1) runs.push_back(run);
  return runs;
}

std::vector<Mark> piece_marks(const Piece& piece, const Laying& laying, const FrameStyle& style,
                              const Shown& shown) {
  std::vector<Mark> marks;
  if (shown.ground)
    marks.push_back({.lines = {piece.cut_line}, .closed = true, .width = 0.0, .colour = style.ground});
  if (shown.grain && piece.grain) add_grain(marks, *piece.grain, style);
  if (shown.seam_line) add_seams(marks, piece, style);
  if (shown.fold) add_folds(marks, piece, style);
  if (shown.marks) add_points(marks, piece, style);
  if (shown.notches) add_notches(marks, piece, style);
  if (shown.cut_line) marks.push_back(stroke(cut_runs(piece), style.cut_width, style.cut));
  for (Mark& mark : marks)
    for (Polyline& line : mark.lines) line = laid(laying, line);
  if (shown.label) {
    const std::string lay = piece.fold ? "\ncut on the fold" : "\ncut once";
    marks.push_back(writing(piece.name + lay, mat_from_piece(laying, roomiest(piece.cut_line)),
                            style.label_height, style.guide));
    if (shown.fold && piece.fold) {
      const Point middle = 0.5 * (piece.fold->from + piece.fold->to);
      const Point inside = middle + 0.15 * (roomiest(piece.cut_line) - middle);
      marks.push_back(writing("FOLD", mat_from_piece(laying, inside), 0.6 * style.label_height, style.guide));
    }
  }
  return marks;
}

std::vector<Mark> cut_line_alone(const Piece& piece, const Laying& laying, double width) {
  return {{.lines = {laid(laying, piece.cut_line)}, .closed = true, .width = width, .colour = 0xffffffff}};
}

}  // namespace cowlcast::projector
