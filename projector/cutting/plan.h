// Which strokes of a piece are cut already: told by where they lie in the piece, never by their number.
//
//   std::vector<Cut> strokes = cuts_of(cut_runs(front), blade, {});
//   std::vector<Cut> done = taken_as_cut(strokes, record);   // in the order they were cut
//   // `strokes` are those that are left, to be put in any order
//
// Another hand, blade, standing place or laying puts strokes into another order and turns some round. None of
// them changes where a stroke lies.
#pragma once

#include <vector>

#include "projector/blade/blade.h"
#include "projector/cutting/record.h"

namespace cowlcast::projector {

/// Where the strokes lie; `piece` names their seams.
std::vector<StrokePlace> places_of(const drafting::Piece& piece, const std::vector<Cut>& strokes);

/// Takes the strokes that are cut by the record out of `strokes` and gives them in the record's order. A
/// record that only counts them is followed where it leaves no doubt: when the longest strokes, which come
/// first in any order, are longer than the others by a quarter. Throws drafting::Refusal when a stroke is not
/// found, or in doubt.
std::vector<Cut> taken_as_cut(std::vector<Cut>& strokes, const Record& record);

}  // namespace cowlcast::projector
