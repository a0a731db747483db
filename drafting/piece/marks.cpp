#include "drafting/piece/marks.h"

#include <algorithm>

#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

constexpr double between_ticks = 6.0;  // mm
const std::string prefix = "drill-";

bool on_fold(const Piece& piece, const Point& point) {
  const std::optional<Segment>& line = piece.fold ? piece.fold : piece.mirror;
  return line && (mirrored(point, *line) - point).norm() < 1e-6;
}

}  // namespace

void set_notch_form(Piece& piece, NotchForm form) {
  for (Notch& notch : piece.notches) {
    const bool room = (notch.seam - notch.cut).norm() >= least_for_cut_notch;
    notch.form = room ? form : NotchForm::mark;
  }
}

std::vector<Polyline> notch_lines(const Notch& notch) {
  const double allowance = (notch.seam - notch.cut).norm();
  const Point in = allowance > 1e-6 ? Point((notch.seam - notch.cut) / allowance) : Point(1, 0);
  const Point across(-in.y(), in.x());
  const bool cut = notch.form != NotchForm::mark;
  const double depth = cut ? std::min(deepest_notch, 0.5 * allowance) : deepest_notch;
  std::vector<Polyline> lines;
  for (int i = 0; i < notch.ticks; ++i) {
    const Point at = notch.cut + (i - 0.5 * (notch.ticks - 1)) * between_ticks * across;
    if (notch.form == NotchForm::vee) {
      lines.push_back({at - 0.5 * depth * across, at + depth * in, at + 0.5 * depth * across});
    } else {
      lines.push_back({at, at + depth * in});
    }
  }
  return lines;
}

std::vector<Polyline> lines_to_cut(const Piece& piece) {
  const Polyline& line = piece.cut_line;
  const size_t n = line.size();
  const auto folded = [&](size_t i) {
    return on_fold(piece, line[i % n]) && on_fold(piece, line[(i + 1) % n]);
  };
  size_t start = n;
  for (size_t i = 0; i < n && start == n; ++i) {
    if (folded(i)) start = i;
  }
  if (start == n) {
    Polyline closed = line;
    if (n > 0) closed.push_back(line.front());
    return {closed};
  }
  std::vector<Polyline> runs;
  for (size_t k = 1; k <= n; ++k) {
    const size_t i = (start + k) % n;
    if (folded(i)) continue;
    if (folded(i + n - 1)) runs.push_back({line[i]});
    runs.back().push_back(line[(i + 1) % n]);
  }
  return runs;
}

std::optional<Segment> whole_fold(const Piece& piece) {
  const std::optional<Segment>& line = piece.fold ? piece.fold : piece.mirror;
  if (!line) return std::nullopt;
  const Point way = (line->to - line->from).normalized();
  double least = 0.0, most = (line->to - line->from).norm();
  for (const Point& p : piece.cut_line) {
    if (!on_fold(piece, p)) continue;
    least = std::min(least, way.dot(p - line->from));
    most = std::max(most, way.dot(p - line->from));
  }
  return Segment{line->from + least * way, line->from + most * way};
}

std::vector<DrillMark> drill_marks(const Piece& piece) {
  std::vector<DrillMark> marks;
  for (const auto& [name, at] : piece.points) {
    if (is_drill_mark(name)) marks.push_back({name.substr(prefix.size()), at});
  }
  return marks;
}

std::string drill_name(const std::string& name) {
  return prefix + name;
}

void add_drill_mark(Piece& piece, const std::string& name, const Point& at) {
  std::string free = drill_name(name);
  for (int number = 2; piece.points.contains(free); ++number)
    free = drill_name(name) + '-' + std::to_string(number);
  piece.points[free] = at;
}

bool is_drill_mark(const std::string& point_name) {
  return point_name.starts_with(prefix);
}

std::string name_in_words(const std::string& name) {
  std::string words = is_drill_mark(name) ? name.substr(prefix.size()) : name;
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

std::string notch_form_name(NotchForm form) {
  return form == NotchForm::slit ? "slit" : form == NotchForm::vee ? "vee" : "mark";
}

}  // namespace cowlcast::drafting
