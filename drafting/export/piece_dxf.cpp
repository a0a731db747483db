#include "drafting/export/piece_dxf.h"

#include <cmath>
#include <cstdio>

#include "drafting/geometry/polyline.h"
#include "drafting/piece/marks.h"

namespace cowlcast::drafting {
namespace {

enum Layer {
  boundary = 1,
  turn_point = 2,
  curve_point = 3,
  notch_mark = 4,
  mirror_line = 6,
  grain_line = 7,
  internal_line = 8,
  drill_hole = 13,
  sew_line = 14,
  annotation = 15
};

constexpr double turn = 0.2;  // radians: a sharper corner of the cut line is a turn point

/// Group codes and values, a line each.
class Groups {
 public:
  void add(int code, const std::string& value) {
    char head[8];
    std::snprintf(head, sizeof head, "%3d\n", code);
    text_ += head;
    text_ += value;
    text_ += '\n';
  }
  void add(int code, int value) { add(code, std::to_string(value)); }
  void place(const Point& p) {
    add(10, number(p.x()));
    add(20, number(p.y()));
  }
  void second_place(const Point& p) {
    add(11, number(p.x()));
    add(21, number(p.y()));
  }
  void entity(const char* kind, int layer) {
    add(0, std::string(kind));
    add(8, layer);
  }
  void line(int layer, const Point& from, const Point& to) {
    entity("LINE", layer);
    place(from);
    second_place(to);
  }
  void polyline(int layer, const Polyline& points, bool closed) {
    entity("POLYLINE", layer);
    add(66, 1);
    add(70, closed ? 1 : 0);
    for (const Point& p : points) {
      entity("VERTEX", layer);
      place(p);
    }
    add(0, std::string("SEQEND"));
  }
  void text(int layer, const Point& at, const std::string& words) {
    entity("TEXT", layer);
    place(at);
    add(40, number(6.0));
    add(1, words);
  }
  const std::string& result() const { return text_; }

 private:
  static std::string number(double value) {
    char digits[40];
    std::snprintf(digits, sizeof digits, "%.6f", value);
    return digits;
  }
  std::string text_;
};

void add_block(Groups& out, const Piece& piece, const std::string& name) {
  out.entity("BLOCK", boundary);
  out.add(2, name);
  out.add(70, 0);
  out.place({0, 0});
  out.polyline(boundary, piece.cut_line, true);
  const size_t n = piece.cut_line.size();
  for (size_t i = 0; i < n; ++i) {
    const Point in = piece.cut_line[i] - piece.cut_line[(i + n - 1) % n];
    const Point away = piece.cut_line[(i + 1) % n] - piece.cut_line[i];
    const double angle = std::atan2(in.x() * away.y() - in.y() * away.x(), in.dot(away));
    out.entity("POINT", std::abs(angle) > turn ? turn_point : curve_point);
    out.place(piece.cut_line[i]);
  }
  for (const Edge& edge : piece.edges) {
    out.polyline(edge.role == "cowl-edge" ? internal_line : sew_line, edge.points, false);
  }
  for (const Notch& notch : piece.notches) {
    out.entity("POINT", notch_mark);
    out.place(notch.cut);
    if (notch.form == NotchForm::mark) continue;
    for (const Polyline& line : notch_lines(notch)) out.polyline(notch_mark, line, false);
  }
  for (const DrillMark& drill : drill_marks(piece)) {
    out.entity("POINT", drill_hole);
    out.place(drill.at);
  }
  if (piece.fold) out.line(mirror_line, piece.fold->from, piece.fold->to);
  if (piece.mirror) out.line(mirror_line, piece.mirror->from, piece.mirror->to);
  if (piece.grain) out.line(grain_line, piece.grain->from, piece.grain->to);
  const Box box = box_of(piece.cut_line);
  const Point middle = 0.5 * (box.low + box.high);
  out.text(boundary, middle, "Piece Name: " + piece.name);
  out.text(boundary, middle - Point(0, 10), "Quantity: 1");
  for (const auto& [label, point] : piece.points) out.text(annotation, point, name_in_words(label));
  out.add(0, std::string("ENDBLK"));
  out.add(8, boundary);
}

std::string block_name(const Piece& piece, size_t index) {
  std::string name = std::to_string(index + 1) + "-";
  for (const char c : piece.name) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    name += plain ? c : '-';
  }
  return name;
}

}  // namespace

std::string pieces_to_dxf(const std::vector<Piece>& pieces) {
  Groups out;
  out.add(0, std::string("SECTION"));
  out.add(2, std::string("HEADER"));
  out.add(9, std::string("$INSUNITS"));
  out.add(70, 4);  // millimetres
  out.add(0, std::string("ENDSEC"));
  out.add(0, std::string("SECTION"));
  out.add(2, std::string("BLOCKS"));
  for (size_t i = 0; i < pieces.size(); ++i) add_block(out, pieces[i], block_name(pieces[i], i));
  out.add(0, std::string("ENDSEC"));
  out.add(0, std::string("SECTION"));
  out.add(2, std::string("ENTITIES"));
  double right = 0.0;
  for (size_t i = 0; i < pieces.size(); ++i) {
    const Box box = box_of(pieces[i].cut_line);
    out.entity("INSERT", boundary);
    out.add(2, block_name(pieces[i], i));
    out.place({right - box.low.x(), -box.low.y()});
    right += box.width() + 50.0;
  }
  out.text(boundary, {0, -20}, "Units: METRIC");
  out.add(0, std::string("ENDSEC"));
  out.add(0, std::string("EOF"));
  return out.result();
}

}  // namespace cowlcast::drafting
