// Pieces as a DXF file by ASTM D6673.
//
//   std::string dxf = pieces_to_dxf({front, back});
//
// One block a piece, millimetres, y up. Layers: 1 boundary (the cut line), 2
// turn points, 3 curve points, 4 notches, 6 mirror line (fold), 7 grain line, 8
// internal lines (the cowl edge), 13 drill holes, 14 sew lines, 15 annotation:
// ASTM D6673-10. A notch that is cut has its slit or V on layer 4 beside its point.
#pragma once

#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

std::string pieces_to_dxf(const std::vector<Piece>& pieces);

}  // namespace cowlcast::drafting
