#include "drafting/export/piece_svg.h"

#include <algorithm>
#include <cstdio>

#include "drafting/geometry/polyline.h"
#include "drafting/piece/marks.h"

namespace cowlcast::drafting {
namespace {

constexpr double margin = 15.0;        // mm around the piece
constexpr double strip = 72.0;         // mm below it, for the squares to measure
constexpr double least_width = 122.0;  // mm that the squares need
constexpr double five_cm = 50.0, two_inches = 50.8;

std::string number(double value) {
  char text[40];
  std::snprintf(text, sizeof text, "%.4f", value);
  return text;
}

std::string escaped(const std::string& text) {
  std::string result;
  for (const char c : text) {
    switch (c) {
      case '&':
        result += "&amp;";
        break;
      case '<':
        result += "&lt;";
        break;
      case '>':
        result += "&gt;";
        break;
      case '"':
        result += "&quot;";
        break;
      default:
        result += c;
    }
  }
  return result;
}

class Drawing {
 public:
  Drawing(const Box& box, double width) : box_(box), width_(width) {}

  std::string path_data(const Polyline& line, bool closed) const {
    std::string data;
    for (size_t i = 0; i < line.size(); ++i) data += (i == 0 ? "M" : " L") + place(line[i]);
    return data + (closed ? " Z" : "");
  }

  std::string path(const std::string& attributes, const Polyline& line, bool closed = false) const {
    return "<path " + attributes + " d=\"" + path_data(line, closed) + "\"/>\n";
  }

  std::string circle(const Point& at, double radius) const {
    return "<circle cx=\"" + number(at.x() - box_.low.x() + margin) + "\" cy=\"" +
           number(box_.high.y() - at.y() + margin) + "\" r=\"" + number(radius) + "\"/>\n";
  }

  /// Begins at `at`, or further left or right where it would leave the drawing.
  std::string text(const Point& at, const std::string& words, double size = 6.0) const {
    const double reach = 0.62 * size * static_cast<double>(words.size());  // wide letters of any sans-serif
    const double x = std::max(2.0, std::min(at.x() - box_.low.x() + margin, width_ - 2.0 - reach));
    return "<text x=\"" + number(x) + "\" y=\"" + number(box_.high.y() - at.y() + margin) +
           "\" font-size=\"" + number(size) + "\">" + escaped(words) + "</text>\n";
  }

 private:
  std::string place(const Point& p) const {
    return number(p.x() - box_.low.x() + margin) + " " + number(box_.high.y() - p.y() + margin);
  }

  Box box_;
  double width_;
};

Polyline arrow(const Segment& line) {
  const Point along = (line.to - line.from).normalized(), across(-along.y(), along.x());
  return {line.to - 8.0 * along + 3.0 * across, line.to, line.to - 8.0 * along - 3.0 * across};
}

Polyline square(const Point& low, double side) {
  return {low, low + Point(side, 0), low + Point(side, side), low + Point(0, side)};
}

bool lies_on(const Polyline& line, const Segment& axis) {
  return std::all_of(line.begin(), line.end(),
                     [&](const Point& p) { return (mirrored(p, axis) - p).norm() < 1e-6; });
}

/// The fold's ends turned in, away from the edge that lies on it.
Polyline fold_bracket(const Segment& fold, const Box& box) {
  const Point way = (fold.to - fold.from).normalized(), middle = 0.5 * (box.low + box.high);
  Point inward(-way.y(), way.x());
  if (inward.dot(middle - fold.from) < 0.0) inward = -inward;
  const Point from = fold.from + 25.0 * way, to = fold.to - 25.0 * way;
  return {from, from + 6.0 * inward, to + 6.0 * inward, to};
}

}  // namespace

std::string piece_to_svg(const Piece& piece) {
  Polyline all = piece.cut_line;
  all.insert(all.end(), piece.seam_line.begin(), piece.seam_line.end());
  const Box box = box_of(all);
  const double width = std::max(box.width(), least_width) + 2.0 * margin;
  const double height = box.height() + 2.0 * margin + strip;
  const Drawing draw(box, width);
  std::string svg =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" +
      number(width) + "mm\" height=\"" + number(height) + "mm\" viewBox=\"0 0 " + number(width) + " " +
      number(height) + "\">\n<title>" + escaped(piece.name) +
      ", true size in millimetres</title>\n"
      "<g fill=\"none\" stroke=\"#000000\" stroke-width=\"0.4\" stroke-linejoin=\"round\">\n";
  std::string cut;
  for (const Polyline& run : lines_to_cut(piece)) cut += draw.path_data(run, false) + " ";
  svg += "<path id=\"cut-line\" stroke-width=\"0.7\" d=\"" + cut + "\"/>\n";
  const std::optional<Segment> fold = whole_fold(piece);
  for (const Edge& edge : piece.edges) {
    const std::string dashes = edge.role == "cowl-edge" ? "12 3 2 3" : "4 2";
    const bool on_fold = fold && lies_on(edge.points, *fold);  // drawn below, as a fold
    svg += draw.path("id=\"" + escaped(edge.role) + "\" " +
                         (on_fold ? "stroke=\"none\"" : "stroke-dasharray=\"" + dashes + "\""),
                     edge.points);
  }
  svg += "<g id=\"notches\">\n";
  for (const Notch& notch : piece.notches) {
    for (const Polyline& line : notch_lines(notch)) svg += draw.path("", line);
  }
  svg += "</g>\n";
  if (piece.grain) {
    svg += "<g id=\"grain\">\n" + draw.path("", {piece.grain->from, piece.grain->to}) +
           draw.path("", arrow(*piece.grain)) + draw.path("", arrow({piece.grain->to, piece.grain->from})) +
           "</g>\n";
  }
  if (fold) {
    // A thin chain with its ends turned in, as folds are drawn: unlike any line to be cut.
    svg += draw.path("id=\"" + std::string(piece.fold ? "fold" : "mirror-line") +
                         "\" stroke-width=\"0.25\" stroke-dasharray=\"14 3 1.5 3\"",
                     {fold->from, fold->to});
    if (piece.fold) svg += draw.path("id=\"fold-bracket\"", fold_bracket(*fold, box));
  }
  svg += "<g id=\"points\">\n";
  for (const auto& [name, point] : piece.points) {
    if (is_drill_mark(name)) continue;
    svg += draw.path("", {point - Point(2, 0), point + Point(2, 0)});
    svg += draw.path("", {point - Point(0, 2), point + Point(0, 2)});
  }
  svg += "</g>\n<g id=\"drill-marks\">\n";
  for (const DrillMark& drill : drill_marks(piece)) {
    svg += draw.path("", {drill.at - Point(3, 3), drill.at + Point(3, 3)});
    svg += draw.path("", {drill.at - Point(3, -3), drill.at + Point(3, -3)});
    svg += draw.circle(drill.at, 2.0);
  }
  svg += "</g>\n";
  const Point below(box.low.x() + 2.0, box.low.y() - 12.0 - two_inches);
  svg += draw.path("id=\"square-5cm\"", square(below, five_cm), true);
  svg += draw.path("id=\"square-2in\"", square(below + Point(60.0, 0.0), two_inches), true);
  svg += "</g>\n<g id=\"labels\" fill=\"#000000\" stroke=\"none\" font-family=\"sans-serif\">\n";
  for (const auto& [name, point] : piece.points)
    svg += draw.text(point + Point(3, -8), name_in_words(name), 4.0);
  const Point middle =
      piece.grain ? Point(piece.grain->from + Point(6, 30)) : Point(0.5 * (box.low + box.high));
  svg += draw.text(middle, piece.name, 8.0);
  if (piece.fold) {
    svg += draw.text(middle - Point(0, 10), "cut 1 on the fold");
    svg += draw.text(0.5 * (fold->from + fold->to) + Point(8, 0), "fold: do not cut", 5.0);
  }
  if (piece.mirror) svg += draw.text(middle - Point(0, 10), "half: mirror at the centre, cut 1 full");
  if (piece.cowl) {
    char words[64];
    std::snprintf(words, sizeof words, "drape %.1f mm", piece.cowl->drape);
    svg += draw.text(middle - Point(0, 20), words);
  }
  svg += draw.text(below + Point(4, 24), "5 cm", 6.0) + draw.text(below + Point(64, 24), "2 in", 6.0);
  svg +=
      draw.text(below + Point(0, -5), "Measure these squares: the print is at true size when they are.", 4.0);
  return svg + "</g>\n</svg>\n";
}

}  // namespace cowlcast::drafting
