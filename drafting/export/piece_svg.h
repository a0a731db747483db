// A piece as a true-size SVG drawing.
//
//   std::string svg = piece_to_svg(front);
//
// Width and height in mm with a viewBox in mm, so that any viewer knows the
// size, and squares of 5 cm and 2 in to measure a print by. Cut line solid (left
// out along the fold), seam line dashed, one path an edge with its role as id,
// notches as they are made, drill marks, grain, fold and labels. y points down as
// SVG has it.
#pragma once

#include <string>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

std::string piece_to_svg(const Piece& piece);

}  // namespace cowlcast::drafting
