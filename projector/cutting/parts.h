// Part by part: what a cutting view does with a piece that is larger than the light.
//
//   view = next_part(view);              // the cloth is moved; `to_find`: nothing is cut before it is found
//   view = after_pointing(view, mark);   // a click on a chalk mark (projector/cutting/view.h)
//   view = found_by_marks(view);         // with the marks pointed out so far
//   view = back_in_parts(view);          // a mark, the finding, or the part taken back
//
// What the light says and asks is in `message`. Pure functions; nothing here draws.
#pragma once

#include <optional>

#include "projector/cutting/view.h"

namespace cowlcast::projector {

/// The next part, to be found again by the crosses of this one; what is left behind is kept, to go back to.
/// Unchanged but for the message while this part itself has not been found.
CuttingView next_part(CuttingView view);

/// The piece fitted to the marks pointed out so far, two at least, or the message why not. With none pointed
/// out it asks once whether the cloth was moved so that all marks lie on their crosses, and takes `asked`
/// (by the act before) for yes.
CuttingView found_by_marks(CuttingView view, bool asked);

/// One step back while laying: the last mark, else what was found, else the part before as it was left.
/// What is cut of this part stands in the way, and the message says so.
CuttingView back_in_parts(CuttingView view);

/// True when `back_in_parts` takes something back.
bool can_go_back_in_parts(const CuttingView& view);

/// How many strokes were cut when this part was begun.
int cut_before_part(const CuttingView& view);

/// The view with its parts divided anew when its piece was flipped, or turned by more than two degrees, from
/// how they were divided; without parts, and with the reason as message, while it cannot be shown in parts as
/// it lies. Nothing happens once something is cut or the first part is left.
CuttingView with_parts_as_laid(CuttingView view);

/// How far the light may be off from where this part's cut line belongs next to the parts before, by chalking
/// and pointing, mm, 95 times in 100; none in the first part, before it is found, and once it is moved by
/// hand.
std::optional<double> part_error(const CuttingView& view);

}  // namespace cowlcast::projector
