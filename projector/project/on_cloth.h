// The whole top laid out on its cloth: does it fit between the selvedges, and how much cloth does it take?
//
//   ClothUse use = on_cloth(garment.pieces, project.cloth.width);
//   for (const LaidOut& one : use.pieces) draw(one.cut_line);
//
// Pieces lie unfolded, grain upwards, in rows from the foot of the cloth. It is one plain way to lay them,
// not the one that saves most cloth. Nothing here is kept.
#pragma once

#include <string>
#include <vector>

#include "drafting/piece/piece.h"
#include "projector/project/derive.h"

namespace cowlcast::projector {

struct LaidOut {
  std::string name;
  Polyline cut_line, seam_line;      ///< on the cloth: x across from its middle, y along from its foot, mm
  Polyline grain;                    ///< two ends, or none
  double width = 0.0, length = 0.0;  ///< across and along the cloth, mm
  bool fits = true;                  ///< no wider than the cloth
};

struct ClothUse {
  std::vector<LaidOut> pieces;
  double length = 0.0;  ///< of cloth, all pieces laid so, mm
};
ClothUse on_cloth(const std::vector<drafting::Piece>& pieces, double cloth_width);

/// Which piece is wider than the cloth, and what to do; empty when all fit, or when there is none yet. A
/// front that is refused for nothing but its cloth is told here, too.
std::string too_wide_for_cloth(const Project& project, const Garment& garment);

}  // namespace cowlcast::projector
