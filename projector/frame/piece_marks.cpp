#include "projector/frame/piece_marks.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <utility>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

using drafting::Piece;
using drafting::Segment;

constexpr const char* kTurnedEdge = "cowl-edge";  // folded, not sewn
constexpr const char* kFacingEdge = "facing-edge";

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

// The cloth's fold as two fine lines: one on it and one beside it, within the piece.
void add_fold(std::vector<Mark>& marks, const Piece& piece, const Segment& fold, const FrameStyle& style) {
  const Point way = (fold.to - fold.from).normalized();
  Point inward(-way.y(), way.x());
  const Point middle = 0.5 * (fold.from + fold.to);
  if (!drafting::contains(piece.cut_line, middle + 3.0 * inward)) inward = -inward;
  marks.push_back(
      stroke({{fold.from, fold.to}, {fold.from + 4.0 * inward, fold.to + 4.0 * inward}}, 1.0, style.guide));
}

// The facing's side of a turned edge, seen from the edge's middle (unit); the other side of the piece's
// middle when the piece names no facing edge.
Point facing_side(const Piece& piece, const Segment& edge) {
  const Point way = (edge.to - edge.from).normalized(), middle = 0.5 * (edge.from + edge.to);
  Point side(-way.y(), way.x());
  double towards = 0.0;
  for (const drafting::Edge& other : piece.edges)
    if (other.role == kFacingEdge)
      for (const Point& point : other.points) towards += side.dot(point - middle);
  if (towards == 0.0)
    for (const Point& point : piece.cut_line) towards -= side.dot(point - middle);
  return towards < 0.0 ? Point(-side) : side;
}

std::vector<Segment> turned_edges(const Piece& piece) {
  std::vector<Segment> edges;
  for (const drafting::Edge& edge : piece.edges)
    if (edge.role == kTurnedEdge && edge.points.size() > 1)
      edges.push_back({edge.points.front(), edge.points.back()});
  return edges;
}

// Where the facing turns in: long dashes, and at each gap a tick towards the facing.
void add_turned_edges(std::vector<Mark>& marks, const Piece& piece, const FrameStyle& style) {
  Mark mark = stroke({}, 0.8, style.guide);
  for (const Segment& edge : turned_edges(piece)) {
    const Point side = facing_side(piece, edge);
    const std::vector<Polyline> parts = dashes({edge.from, edge.to}, false, 22.0, 6.0);
    for (size_t i = 0; i < parts.size(); ++i) {
      mark.lines.push_back(parts[i]);
      if (i == 0) continue;
      const Point gap = 0.5 * (parts[i - 1].back() + parts[i].front());
      mark.lines.push_back({gap, gap + 6.0 * side});
    }
  }
  if (!mark.lines.empty()) marks.push_back(std::move(mark));
}

// Places for words beside a line, `off` mm to one side of it, from its middle outwards.
void add_places_beside(std::vector<Point>& places, const Segment& line, const Point& side, double off) {
  for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8})
    places.push_back(line.from + share * (line.to - line.from) + off * side);
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
  std::vector<Polyline> bars, heads, cuts;
  for (const drafting::Notch& notch : piece.notches) {
    if (notch.form != drafting::NotchForm::mark) {  // cut into the allowance: part of the cut line
      for (Polyline& line : drafting::notch_lines(notch)) cuts.push_back(std::move(line));
      continue;
    }
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
  if (!cuts.empty()) marks.push_back(stroke(cuts, style.cut_width, style.cut));
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

// Places inside an outline, of a coarse grid, the farthest from its line first.
std::vector<Point> roomy_places(const Polyline& outline) {
  Polyline coarse;  // a label does not mind millimetres
  for (const Point& point : outline)
    if (coarse.empty() || (point - coarse.back()).norm() > 10.0) coarse.push_back(point);
  const drafting::Box box = drafting::box_of(coarse);
  std::vector<std::pair<double, Point>> found;
  const int across = 9, up = 13;
  for (int i = 1; i < across; ++i)
    for (int j = 1; j < up; ++j) {
      const Point at(box.low.x() + box.width() * i / across, box.low.y() + box.height() * j / up);
      if (drafting::contains(coarse, at)) found.emplace_back(-drafting::distance_to_outline(coarse, at), at);
    }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Point> places;
  for (size_t i = 0; i < found.size() && i < 24; ++i) places.push_back(found[i].second);
  if (places.empty()) places.push_back(0.5 * (box.low + box.high));
  return places;
}

void add_words(std::vector<Words>& words, const Piece& piece, const FrameStyle& style, const Shown& shown) {
  if (shown.fold && piece.fold) {
    const Segment fold = *whole_fold(piece);
    const Point way = (fold.to - fold.from).normalized();
    Point inward(-way.y(), way.x());
    if (!drafting::contains(piece.cut_line, 0.5 * (fold.from + fold.to) + 3.0 * inward)) inward = -inward;
    Words text{.text = "FOLD OF THE CLOTH", .height = style.word_height, .colour = style.words};
    // Clear of the line even where the words stand across it: a turned piece's words stay upright.
    for (const double off : {20.0, 40.0, 110.0}) add_places_beside(text.places, fold, inward, off);
    words.push_back(std::move(text));
  }
  Words turns{.text = "FACING\nTURNS HERE", .height = style.word_height, .colour = style.words};
  for (const double off : {30.0, 65.0, 95.0})
    for (const Segment& edge : turned_edges(piece))
      for (const double way : {-1.0, 1.0})
        add_places_beside(turns.places, edge, way * facing_side(piece, edge), off);
  if (shown.fold && !turns.places.empty()) words.push_back(std::move(turns));
  if (shown.label)
    words.push_back({.text = piece.name + (piece.fold ? "\ncut on the fold" : "\ncut once"),
                     .height = style.label_height,
                     .colour = style.words,
                     .places = roomy_places(piece.cut_line)});
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

Drawing piece_drawing(const Piece& piece, const Laying& laying, const FrameStyle& style, const Shown& shown) {
  Drawing drawing;
  std::vector<Mark>& marks = drawing.marks;
  if (shown.ground)
    marks.push_back({.lines = {piece.cut_line}, .closed = true, .width = 0.0, .colour = style.ground});
  if (shown.grain && piece.grain) add_grain(marks, *piece.grain, style);
  if (shown.seam_line) add_seams(marks, piece, style);
  if (shown.fold && piece.fold) add_fold(marks, piece, *whole_fold(piece), style);
  if (shown.fold) add_turned_edges(marks, piece, style);
  if (shown.marks) add_points(marks, piece, style);
  if (shown.notches) add_notches(marks, piece, style);
  if (shown.cut_line) marks.push_back(stroke(cut_runs(piece), style.cut_width, style.cut));
  add_words(drawing.words, piece, style, shown);
  for (Mark& mark : marks)
    for (Polyline& line : mark.lines) line = laid(laying, line);
  for (Words& words : drawing.words) words.places = laid(laying, words.places);
  return drawing;
}

std::vector<Polyline> lines_to_keep_clear(const Piece& piece, const Laying& laying) {
  std::vector<Polyline> lines{laid(laying, piece.cut_line)};
  if (!lines.front().empty()) lines.front().push_back(lines.front().front());
  for (const drafting::Edge& edge : piece.edges) lines.push_back(laid(laying, edge.points));
  if (piece.grain) lines.push_back(laid(laying, {piece.grain->from, piece.grain->to}));
  for (const drafting::Notch& notch : piece.notches) lines.push_back(laid(laying, {notch.cut, notch.seam}));
  return lines;
}

std::vector<Mark> piece_marks(const Piece& piece, const Laying& laying, const FrameStyle& style,
                              const Shown& shown) {
  Drawing drawing = piece_drawing(piece, laying, style, shown);
  for (Mark& mark : settled(drawing.words, lines_to_keep_clear(piece, laying), {}))
    drawing.marks.push_back(std::move(mark));
  return std::move(drawing.marks);
}

std::vector<Mark> cut_line_alone(const Piece& piece, const Laying& laying, double width) {
  return {{.lines = {laid(laying, piece.cut_line)}, .closed = true, .width = width, .colour = 0xffffffff}};
}

}  // namespace cowlcast::projector
