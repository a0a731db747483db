// The blade's path in light: where to start, which way, where to stop, and where
// the other hand should not be. An aid to the eye; it sees no hand and no blade.
//
//   auto marks = blade_marks(cut, laying, style, {.hand = Hand::right});
//
// Forms: chevrons beside the line point along the travel; a small ring marks the
// start; a bar across the line marks where the axle stops, with "finish with
// shears" where a corner follows; a hatched band lies along the side on which
// the other hand holds the cloth. Stretches too tight for the blade are dotted
// over with the blade that fits.
#pragma once

#include <vector>

#include "projector/blade/blade.h"
#include "projector/blade/order.h"
#include "projector/frame/laying.h"
#include "projector/frame/render.h"
#include "projector/frame/style.h"

namespace cowlcast::projector {

struct BladeOverlay {
  Hand hand = Hand::right;
  double band_from = 6.0;    ///< the band begins this far off the cut line, mm
  double band_width = 60.0;  ///< its width, mm: about a hand's breadth (common practice, no source)
  bool band = true, arrows = true, stops = true;
};

/// Marks of one cut, mat mm. `cut` is in the piece frame.
std::vector<Mark> blade_marks(const Cut& cut, const Laying& laying, const FrameStyle& style,
                              const BladeOverlay& overlay);

/// The band's outline beside a path on the mat: along the path `from` mm off it, back at `from` + `width`;
/// to the left of the way when `left`.
Polyline band_outline(const Polyline& path, double from, double width, bool left);

}  // namespace cowlcast::projector
