// Ruler: the ticks along a canvas's edge, in inches with fractions or in centimetres.
//
//   for (const Tick& tick : ruler_ticks(-20, 510, 1.4, Units::inches)) draw(tick);
//
// Pure functions; millimetres along the edge, pixels only for how dense it may be.
#pragma once

#include <string>
#include <vector>

#include "projector/workbench/lengths.h"

namespace cowlcast::projector {

struct Tick {
  double at = 0.0;    ///< mm
  int rank = 0;       ///< 0 the longest, which alone have words, then ever shorter
  std::string words;  ///< whole inches or centimetres
};

/// Ticks from one place to another, in order. Neighbours stand `least_gap` pixels apart or more, words
/// `least_word_gap`. Finest are sixteenths of an inch and millimetres.
std::vector<Tick> ruler_ticks(double from, double to, double pixels_per_mm, Units units,
                              double least_gap = 5.0, double least_word_gap = 52.0);

/// What a drag should snap to at this scale: the finest division that stands `least_gap` pixels apart.
double snap_step(double pixels_per_mm, Units units, double least_gap = 3.0);

}  // namespace cowlcast::projector
