// The blade's path in light: where to start, which way, where to stop, and where
// the other hand should not be. An aid to the eye; it sees no hand and no blade.
//
//   Drawing drawing = blade_drawing(cut, laying, style, {.hand = Hand::right});
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
#include "projector/frame/style.h"
#include "projector/frame/writing.h"

namespace cowlcast::projector {

struct BladeOverlay {
  Hand hand = Hand::right;
  double band_from = 6.0;    ///< the band begins this far off the cut line, mm
  double band_width = 60.0;  ///< its width, mm: about a hand's breadth (common practice, no source)
  bool band = true, arrows = true, stops = true;
};

/// Marks of one cut and the words that belong to them, mat mm. `cut` is in the piece frame. Bars stand on
/// their places, and the band's outer edge keeps its distance from the path, within 0.1 mm.
Drawing blade_drawing(const Cut& cut, const Laying& laying, const FrameStyle& style,
                      const BladeOverlay& overlay);

/// The band's outline beside a path on the mat: along the path `from` mm off it, back at `from` + `width`;
/// to the left of the way when `left`.
Polyline band_outline(const Polyline& path, double from, double width, bool left);

}  // namespace cowlcast::projector
