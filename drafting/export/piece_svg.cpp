#include "drafting/export/piece_svg.h"

#include <cmath>
#include <cstdio>

#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

constexpr double margin = 15.0;       // mm around the piece
constexpr double notch_length = 5.0;  // mm inwards from the cut line

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
  explicit Drawing(const Box& box) : box_(box) {}

  std::string path_data(const Polyline& line, bool closed) const {
    std::string data;
    for (size_t i = 0; i < line.size(); ++i) data += (i == 0 ? "M" : " L") + place(line[i]);
    return data + (closed ? " Z" : "");
  }

  std::string path(const std::string& attributes, const Polyline& line, bool closed = false) const {
    return "<path " + attributes + " d=\"" + path_data(line, closed) + "\"/>\n";
  }

  std::string text(const Point& at, const std::string& words, double size = 6.0) const {
    return "<text x=\"" + number(at.x() - box_.low.x() + margin) + "\" y=\"" +
           number(box_.high.y() - at.y() + margin) + "\" font-size=\"" + number(size) + "\">" +
           escaped(words) + "</text>\n";
  }

 private:
  std::string place(const Point& p) const {
    return number(p.x() - box_.low.x() + margin) + " " + number(box_.high.y() - p.y() + margin);
  }

  Box box_;
};

Polyline arrow(const Segment& line) {
  const Point along = (line.to - line.from).normalized(), across(-along.y(), along.x());
  return {line.to - 8.0 * along + 3.0 * across, line.to, line.to - 8.0 * along - 3.0 * across};
}

}  // namespace

std::string piece_to_svg(const Piece& piece) {
  Polyline all = piece.cut_line;
  all.insert(all.end(), piece.seam_line.begin(), piece.seam_line.end());
  const Box box = box_of(all);
  const Drawing draw(box);
  const double width = box.width() + 2.0 * margin, height = box.height() + 2.0 * margin;
  std::string svg =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" +
      number(width) + "mm\" height=\"" + number(height) + "mm\" viewBox=\"0 0 " + number(width) + " " +
      number(height) + "\">\n<title>" + escaped(piece.name) +
      ", true size in millimetres</title>\n"
      "<g fill=\"none\" stroke=\"#000000\" stroke-width=\"0.4\" stroke-linejoin=\"round\">\n";
  svg += draw.path("id=\"cut-line\" stroke-width=\"0.7\"", piece.cut_line, true);
  for (const Edge& edge : piece.edges) {
    const bool folded = edge.role == "cowl-edge";
    svg += draw.path(
        "id=\"" + escaped(edge.role) + "\" stroke-dasharray=\"" + (folded ? "12 3 2 3" : "4 2") + "\"",
        edge.points);
  }
  svg += "<g id=\"notches\">\n";
  for (const Notch& notch : piece.notches) {
    const Point in = notch.seam - notch.cut;
    const Point inwards = in.norm() > 1e-6 ? Point(in.normalized()) : Point(1, 0);
    const Point across(-inwards.y(), inwards.x());
    for (int i = 0; i < notch.ticks; ++i) {  // one on a front, two on a back
      const Point at = notch.cut + (i - 0.5 * (notch.ticks - 1)) * 4.0 * across;
      svg += draw.path("", {at, at + notch_length * inwards});
    }
  }
  svg += "</g>\n";
  if (piece.grain) {
    svg += "<g id=\"grain\">\n" + draw.path("", {piece.grain->from, piece.grain->to}) +
           draw.path("", arrow(*piece.grain)) + draw.path("", arrow({piece.grain->to, piece.grain->from})) +
           "</g>\n";
  }
  const auto centre_line = [&](const std::optional<Segment>& line, const std::string& id) {
    if (line)
      svg += draw.path("id=\"" + id + "\" stroke-width=\"0.7\" stroke-dasharray=\"20 4\"",
                       {line->from, line->to});
  };
  centre_line(piece.fold, "fold");
  centre_line(piece.mirror, "mirror-line");
  svg += "<g id=\"points\">\n";
  for (const auto& [name, point] : piece.points) {
    svg += draw.path("", {point - Point(2, 0), point + Point(2, 0)});
    svg += draw.path("", {point - Point(0, 2), point + Point(0, 2)});
  }
  svg += "</g>\n</g>\n<g id=\"labels\" fill=\"#000000\" stroke=\"none\" font-family=\"sans-serif\">\n";
  for (const auto& [name, point] : piece.points) svg += draw.text(point + Point(3, -8), name, 4.0);
  const Point middle =
      piece.grain ? Point(piece.grain->from + Point(6, 30)) : Point(0.5 * (box.low + box.high));
  svg += draw.text(middle, piece.name, 8.0);
  if (piece.fold) svg += draw.text(middle - Point(0, 10), "cut 1 on the fold");
  if (piece.mirror) svg += draw.text(middle - Point(0, 10), "half: mirror at the centre, cut 1 full");
  if (piece.cowl) {
    char words[64];
    std::snprintf(words, sizeof words, "drape %.1f mm", piece.cowl->drape);
    svg += draw.text(middle - Point(0, 20), words);
  }
  return svg + "</g>\n</svg>\n";
}

}  // namespace cowlcast::drafting
