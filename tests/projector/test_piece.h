// A small front written down by hand: half of it, on the fold, 10 mm of allowance at most edges.
#pragma once

#include "drafting/piece/piece.h"

namespace cowlcast::projector::testing {

inline drafting::Piece small_front() {
  drafting::Piece piece;
  piece.name = "small front";
  piece.seam_line = {{0, 0}, {120, 0}, {110, 180}, {85, 220}, {85, 260}, {40, 275}, {0, 200}};
  piece.cut_line = {{0, -25}, {130, -25}, {121, 185}, {95, 222}, {95, 268}, {36, 288}, {0, 213}};
  const auto& s = piece.seam_line;
  piece.edges = {{"hem", {s[0], s[1]}},      {"side-seam", {s[1], s[2]}}, {"armhole", {s[2], s[3], s[4]}},
                 {"shoulder", {s[4], s[5]}}, {"neckline", {s[5], s[6]}},  {"centre-front", {s[6], s[0]}}};
  piece.points = {{"neck-point", s[5]}, {"shoulder-point", s[4]}};
  piece.notches = {{"armhole", s[3], piece.cut_line[3]}};
  piece.grain = drafting::Segment{{40, 40}, {40, 180}};
  piece.fold = drafting::Segment{s[6], s[0]};
  return piece;
}

}  // namespace cowlcast::projector::testing
