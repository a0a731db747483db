// What the crosses look like by which a part of a piece is found again.
//
//   Drawing drawing = cross_drawing(view);
//
// Told apart without colour, and each with its number:
//   to chalk       a whole cross
//   to be met      a cross with an open middle, so that the chalk is seen in it
//   pointed out    a ring around the place, and no longer a cross
//   found again    a cross with an open middle and a ring around it: the chalk has to lie within
// None is white, which is the cut line's alone.
#pragma once

#include <vector>

#include "projector/cutting/view.h"
#include "projector/frame/writing.h"

namespace cowlcast::projector {

/// The crosses that say something now, mat mm; their arms lie along the table.
Drawing cross_drawing(const CuttingView& view);

}  // namespace cowlcast::projector
