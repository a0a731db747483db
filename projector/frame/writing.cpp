#include "projector/frame/writing.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainterPath>
#include <QString>
#include <QStringList>
#include <algorithm>
#include <cmath>
#include <map>

#include "drafting/geometry/polyline.h"
#include "projector/language/said.h"

namespace cowlcast::projector {
namespace {

using drafting::Box;

constexpr double kPitch = 1.7;  // from line to line, in heights of capitals

// One line of text, its capitals 1 high, standing on y = 0, beginning at x = 0, y up.
struct Letters {
  std::vector<Polyline> outlines;
  double width = 0.0;
};

Letters shaped(const QString& row) {
  QFont font(QStringLiteral("DejaVu Sans"));
  font.setStyleHint(QFont::SansSerif);
  font.setBold(true);
  font.setPixelSize(40);  // flattened finely enough for letters of a few centimetres
  font.setHintingPreference(QFont::PreferNoHinting);
  QPainterPath capital, path;
  capital.addText(0.0, 0.0, font, QStringLiteral("H"));
  path.addText(0.0, 0.0, font, row);
  const double scale = 1.0 / capital.boundingRect().height();
  Letters letters;
  letters.width = scale * QFontMetricsF(font).horizontalAdvance(row);
  for (const QPolygonF& outline : path.toSubpathPolygons()) {
    Polyline line;
    line.reserve(static_cast<size_t>(outline.size()));
    for (const QPointF& point : outline) line.emplace_back(scale * point.x(), -scale * point.y());
    letters.outlines.push_back(std::move(line));
  }
  return letters;
}

// Shaping a line costs more than drawing it, and the same lines come frame after frame.
const Letters& letters_of(const std::string& row) {
  thread_local std::map<std::string, Letters> known;
  const auto found = known.find(row);
  if (found != known.end()) return found->second;
  if (known.size() > 200) known.clear();
  return known.emplace(row, shaped(QString::fromStdString(row))).first->second;
}

std::vector<std::string> rows_of(const std::string& text) {
  std::vector<std::string> rows(1);
  for (const char c : text) {
    if (c == '\n')
      rows.emplace_back();
    else
      rows.back().push_back(c);
  }
  return rows;
}

Box around(const Point& middle, const Point& size) {
  return {middle - 0.5 * size, middle + 0.5 * size};
}

double shared_area(const Box& a, const Box& b) {
  const Point low = a.low.cwiseMax(b.low), high = a.high.cwiseMin(b.high);
  return std::max(0.0, high.x() - low.x()) * std::max(0.0, high.y() - low.y());
}

// How much of the segment lies within the box, mm.
double length_within(const Box& box, const Point& a, const Point& b) {
  double from = 0.0, to = 1.0;
  for (int axis = 0; axis < 2; ++axis) {
    const double way = b[axis] - a[axis];
    if (std::max(a[axis], b[axis]) < box.low[axis] || std::min(a[axis], b[axis]) > box.high[axis]) return 0.0;
    if (std::abs(way) < 1e-12) continue;
    double enter = (box.low[axis] - a[axis]) / way, leave = (box.high[axis] - a[axis]) / way;
    if (enter > leave) std::swap(enter, leave);
    from = std::max(from, enter);
    to = std::min(to, leave);
  }
  return to > from ? (to - from) * (b - a).norm() : 0.0;
}

// The line with its points a few millimetres apart: enough to keep clear of it.
Polyline coarse(const Polyline& line) {
  constexpr double kStep = 4.0;  // mm
  Polyline out;
  for (const Point& point : line)
    if (out.empty() || (point - out.back()).norm() > kStep) out.push_back(point);
  if (!line.empty() && out.back() != line.back()) out.push_back(line.back());
  return out;
}

}  // namespace

Mark writing(const std::string& text, const Point& centre, double height, QRgb colour, Lines lines) {
  Mark mark{.lines = {}, .closed = true, .width = 0.0, .colour = colour};
  const std::vector<std::string> rows = rows_of(text);
  double widest = 0.0;
  for (const std::string& row : rows) widest = std::max(widest, letters_of(row).width);
  double foot = (0.5 * kPitch * static_cast<double>(rows.size() - 1) - 0.5) * height;
  for (const std::string& row : rows) {
    const Letters& letters = letters_of(row);
    const double left = -0.5 * height * (lines == Lines::centred ? letters.width : widest);
    for (const Polyline& outline : letters.outlines) {
      Polyline line;
      line.reserve(outline.size());
      for (const Point& point : outline) line.push_back(centre + Point(left, foot) + height * point);
      mark.lines.push_back(std::move(line));
    }
    foot -= kPitch * height;
  }
  return mark;
}

Point writing_size(const std::string& text, double height) {
  const std::vector<std::string> rows = rows_of(text);
  double widest = 0.0;
  for (const std::string& row : rows) widest = std::max(widest, letters_of(row).width);
  // Descenders and accents reach beyond the capitals.
  return {height * widest, height * (1.5 + kPitch * static_cast<double>(rows.size() - 1))};
}

std::string in_lines(const std::string& text, size_t longest) {
  std::string out, word;
  size_t filled = 0;
  const auto end_word = [&] {
    if (filled > 0 && filled + 1 + word.size() > longest) {
      out += '\n';
      filled = 0;
    } else if (filled > 0) {
      out += ' ';
      ++filled;
    }
    out += word;
    filled += word.size();
    word.clear();
  };
  for (const char c : text) {
    if (c == ' ')
      end_word();
    else
      word += c;
  }
  end_word();
  return out;
}

std::vector<Mark> settled(const std::vector<Words>& words, const std::vector<Polyline>& clear_of,
                          const Polyline& lit) {
  std::vector<Polyline> lines;
  for (const Polyline& line : clear_of) lines.push_back(coarse(line));
  std::vector<Box> taken;
  std::vector<Mark> marks;
  for (const Words& word : words) {
    const std::string text = said(word.text);
    if (word.places.empty() || word.text.empty()) continue;
    const Point size = writing_size(text, word.height), margin(0.6 * word.height, 0.3 * word.height);
    const auto trouble = [&](const Point& middle) {
      const Box box = around(middle, size + margin);
      double sum = 0.0;
      for (const Box& other : taken) sum += 3.0 * shared_area(box, other) / (size.x() * size.y());
      double crossed = 0.0;
      for (const Polyline& line : lines)
        for (size_t i = 1; i < line.size(); ++i) crossed += length_within(box, line[i - 1], line[i]);
      sum += crossed / (size.x() + size.y());
      if (!lit.empty())
        for (const Point& corner :
             {box.low, Point(box.high.x(), box.low.y()), box.high, Point(box.low.x(), box.high.y())})
          if (!drafting::contains(lit, corner)) sum += 2.0;
      return sum;
    };
    double least = 1e300;
    Point best = word.places.front();
    for (const Point& place : word.places) {
      const double here = word.places.size() > 1 ? trouble(place) : 0.0;
      if (here < least - 1e-9) {
        least = here;
        best = place;
      }
      if (least <= 0.0) break;
    }
    taken.push_back(around(best, size));
    marks.push_back(writing(text, best, word.height, word.colour, word.lines));
  }
  return marks;
}

}  // namespace cowlcast::projector
