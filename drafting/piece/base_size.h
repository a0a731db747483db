// BaseSize: how large a base is, so that a wrong scale is seen before cloth is cut.
//
//   say(base_size_in_words(base));
//   for (const std::string& caution : base_size_cautions(base)) warn(caution);
#pragma once

#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

struct BaseSize {
  double width = 0.0;       ///< of the half, at its widest, mm
  double length = 0.0;      ///< neck point to the lowest place, mm
  double chest = 0.0;       ///< across the whole front or back between the underarms, mm
  double neck_point = 0.0;  ///< of the neck point from the centre, mm
};

/// Throws Refusal when the piece lacks an edge of a base.
BaseSize size_of_base(const Piece& base);

/// One line, in cm and in.
std::string base_size_in_words(const Piece& base);

/// What no body measures: twice the chest outside the bust girths of ASTM D5585-11e1,
/// Table 1 (31⅛ to 46 in), with a tenth below and a fifth above for ease and for
/// bodies beyond the table; the neck point nearer than 45 or farther than 100 mm.
std::vector<std::string> base_size_cautions(const Piece& base);

}  // namespace cowlcast::drafting
