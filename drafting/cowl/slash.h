// Slashing: the lowered base, its slash lines and the parts they make.
//
//   LoweredBase lowered = lower_neckline(base, 60.0);
//   std::vector<Slash> slashes = default_slashes(lowered, 3, SlashForm::squared);
//   std::vector<Polyline> parts = parts_of(lowered, slashes);   // from the top down
//
// Slash lines run from the centre front to a hinge on the seam line. The hinges
// lie on the rim: armhole and shoulder as one line from the underarm to the neck
// point. Slashes and parts count from the top down.
//
// A line that leaves the centre front square and meets the shoulder seam square
// cannot be straight in general: a squared one is a curve. Every line comes nearer
// to its hinge all the way, so that the part above, turned about the hinge, never
// lies on the part below. Which form is taken changes where the opened parts lie
// apart; hinges and starts alone make the trued front.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

struct LoweredBase {
  Polyline neckline;            ///< neck point to the centre front
  Polyline hem, side_seam;      ///< in outline order
  Polyline rim;                 ///< underarm to neck point
  double armhole_length = 0.0;  ///< the shoulder point stands so far along the rim, mm
  std::optional<double> notch;  ///< the armhole notch along the rim, mm
  Point neck_point() const { return rim.back(); }
  Point centre_top() const { return neckline.back(); }
  Point centre_hem() const { return hem.front(); }
};

enum class SlashForm {
  straight,  ///< from start to hinge
  squared    ///< square to the centre front, and to the shoulder where it ends there
};

struct Slash {
  Point start = Point::Zero();  ///< on the centre front
  Point hinge = Point::Zero();  ///< on the rim
  double along_rim = 0.0;       ///< of the hinge, mm from the underarm
  Polyline line;                ///< from start to hinge, both in it
};

/// Lowers the neckline by `drop` mm at the centre front and not at the neck
/// point, in proportion between. Throws Refusal for a drop that leaves no room.
LoweredBase lower_neckline(const Piece& base, double drop);

/// `count` slash lines: hinges spaced evenly along the shoulder seam, the last at
/// the armhole notch (half-way up the armhole when there is none); starts spaced
/// evenly down the centre front, the last 30 mm below the underarm or lower where
/// the neckline needs the room. To shoulder and armhole notch: common practice,
/// no source. Throws Refusal when they find no room.
std::vector<Slash> default_slashes(const LoweredBase& lowered, int count, SlashForm form);

/// A slash line from a start `below` mm under the lowered neckline to a hinge at
/// `share` of "shoulder" or "armhole" from its upper end. Throws Refusal for a
/// place off the edges.
Slash slash_at(const LoweredBase& lowered, double below, const std::string& seam, double share,
               SlashForm form);

/// Any line drawn by hand, from the centre front to the rim: its ends are brought
/// onto them. Throws Refusal when an end lies more than 10 mm off, or when the line
/// does not come nearer to its hinge all the way.
Slash slash_along(const LoweredBase& lowered, const Polyline& line);

/// Outlines of the parts from the top down, counter-clockwise, each starting at
/// its highest point of the centre front. Throws Refusal for slash lines that cross each
/// other or leave the front.
std::vector<Polyline> parts_of(const LoweredBase& lowered, const std::vector<Slash>& slashes);

}  // namespace cowlcast::drafting
