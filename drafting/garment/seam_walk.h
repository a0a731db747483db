// Seam walk: two seams laid along each other, as at the sewing machine.
//
//   Walk walk = walk_seams("side seam", front, "side-seam", back, "side-seam");
//   if (!walks(walk)) ...
//
// Lengths, notches and the angles at both ends are compared. At an end the two
// pieces' corners meet; their interior angles add up to a straight line where
// the edge should run through smoothly.
#pragma once

#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

struct Walk {
  std::string name;
  double first_length = 0.0, second_length = 0.0;  ///< mm, tacks taken up
  double difference = 0.0;                         ///< first minus second, mm
  /// Notches of the same name on both: how far apart when the seams lie together, mm.
  struct NotchPair {
    std::string name;
    double apart = 0.0;
  };
  std::vector<NotchPair> notches;
  double bend_at_start = 0.0;  ///< how far the edges run from straight at the joint, radians
  double bend_at_end = 0.0;
};

/// Lays an edge of `first` along an edge of `second`, both taken from the lower
/// or outer end (the outline's direction; `second` is sewn face to face). Throws
/// Refusal when a piece lacks the edge.
Walk walk_seams(const std::string& name, const Piece& first, const std::string& first_role,
                const Piece& second, const std::string& second_role, double tacked_up = 0.0);

/// Lays a sleeve's edge "sleeve-cap" around both armholes, `ease` mm of the cap
/// taken up. Its notches named "armhole", 1 tick for the front and 2 for the back,
/// are compared with the armholes' by their way from the underarm; bends stay 0.
/// Throws Refusal when a piece lacks the edge.
Walk walk_sleeve(const Piece& sleeve, const Piece& front, const Piece& back, double ease = 0.0);

inline constexpr double walk_tolerance = 0.01;  ///< mm

/// True when lengths agree within the tolerance and notches within 0.5 mm.
bool walks(const Walk& walk);

/// One line: name, lengths, difference, bends, notches.
std::string walk_in_words(const Walk& walk);

}  // namespace cowlcast::drafting
