#include "drafting/piece/marks.h"

#include <algorithm>

namespace cowlcast::drafting {
namespace {

constexpr double between_ticks = 6.0;  // mm
const std::string prefix = "drill-";

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

bool is_drill_mark(const std::string& point_name) {
  return point_name.starts_with(prefix);
}

std::string notch_form_name(NotchForm form) {
  return form == NotchForm::slit ? "slit" : form == NotchForm::vee ? "vee" : "mark";
}

}  // namespace cowlcast::drafting
