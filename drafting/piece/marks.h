// Marks: notches, drill marks and folds as lines and places on a piece.
//
//   set_notch_form(front, NotchForm::vee);
//   for (const Notch& notch : front.notches) draw(notch_lines(notch));
//   for (const DrillMark& drill : drill_marks(front)) dot(drill.at);
//
// A mark is a bar 5 mm in from the cut line. A slit or a V goes in by half the
// allowance and 5 mm at most, so that the seam line is never touched; the V is as
// wide as it is deep. Two ticks of a back stand 6 mm apart. Common practice, no
// source.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

inline constexpr double deepest_notch = 5.0;        ///< mm
inline constexpr double least_for_cut_notch = 6.0;  ///< mm of allowance that a cut notch needs

/// Sets how every notch of the piece is made. Where the allowance is narrower than
/// 6 mm, or there is none (at a fold), a notch stays a mark: a cut would show.
void set_notch_form(Piece& piece, NotchForm form);

/// Its lines in the piece frame, each tick's own; a V is two sides of three points.
std::vector<Polyline> notch_lines(const Notch& notch);

/// The cut line as it is cut: its runs between stretches of the fold or the mirror
/// line; all of it, closed up, for a piece with neither.
std::vector<Polyline> lines_to_cut(const Piece& piece);

/// The stretch of the cut line on the fold or mirror line, allowances at its ends
/// included; none for a piece with neither.
std::optional<Segment> whole_fold(const Piece& piece);

struct DrillMark {
  std::string name;  ///< without "drill-"
  Point at = Point::Zero();
};
std::vector<DrillMark> drill_marks(const Piece& piece);

/// "tack-upper" as the piece's points have it: "drill-tack-upper".
std::string drill_name(const std::string& name);
/// Adds a drill mark; a name that is taken gets a number after it.
void add_drill_mark(Piece& piece, const std::string& name, const Point& at);
bool is_drill_mark(const std::string& point_name);

/// "neck point" for "neck-point", for labels.
std::string name_in_words(const std::string& name);

/// "mark", "slit" and "vee".
std::string notch_form_name(NotchForm form);

}  // namespace cowlcast::drafting
