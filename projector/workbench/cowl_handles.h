// Cowl handles: what taking hold of a place of the cowl means for the maker's wishes.
//
//   CowlWishes wider = moved_handle(base, wishes, "drape", {260, 700}, 5);   // a drape of 520
//   if (auto out = way_out(base, wishes)) offer(out->sentence, out->wishes);
//
// Handles: "drape" (the neck point, opened), "facing" (its free edge at the centre,
// opened), "neckline" (the lowered neckline at the centre, on the base), "start-0",
// "hinge-0" and so on (the ends of each slash line, on the base, from the top down).
// Pure functions; no window.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/cowl/cowl_front.h"

namespace cowlcast::projector {

using drafting::CowlWishes;
using drafting::Piece;
using drafting::Point;

/// The slash lines as they lie, each placed by hand, so that one can be moved and the others stay. Throws
/// drafting::Refusal when they find no room.
std::vector<drafting::SlashWish> slashes_by_hand(const Piece& base, const CowlWishes& wishes);

/// The wishes with a handle moved to `place` (opened frame for "drape" and "facing", else the base's),
/// lengths on the grid of `step` mm. Nothing says yet that they work. Unknown ids change nothing.
CowlWishes moved_handle(const Piece& base, const CowlWishes& wishes, const std::string& id,
                        const Point& place, double step);

/// The same by arrow keys: steps across and up.
CowlWishes stepped_handle(const Piece& base, const CowlWishes& wishes, const std::string& id, int across,
                          int up, double step);

/// Why these wishes are refused; empty when they work.
std::string refusal_of(const Piece& base, const CowlWishes& wishes);

/// What was changed so that it works again.
enum class Mended { drape, neckline, facing, slash_count, slashes_by_default, even_openings };

/// Wishes near to the refused ones that work.
struct WayOut {
  Mended mended = Mended::drape;
  CowlWishes wishes;
};

/// The nearest wishes that work, one thing changed; none when the wishes work already or nothing mends them.
std::optional<WayOut> way_out(const Piece& base, const CowlWishes& wishes);

/// Which openings are to be widest.
enum class Weight { high, even, low, own };

/// One proportion for each slash line, from 2 to 1; none for even openings.
std::vector<double> proportions_of(Weight weight, int count);
Weight weight_of(const CowlWishes& wishes);

/// How many slash lines the wishes have.
int slash_count_of(const CowlWishes& wishes);

}  // namespace cowlcast::projector
