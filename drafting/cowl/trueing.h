// Trueing: the opened parts become one piece with fair edges and a facing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/cowl/slash.h"
#include "drafting/geometry/motion.h"
#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

struct Trueing {
  std::string centre_role = "centre-front";  ///< name of the centre's edge
  double facing_depth = 0.0;   ///< mm; 0 leaves the facing out, the top is a "neckline" edge then
  double tacked_length = 0.0;  ///< mm the front is made longer below the armhole
  double trial_hang = 0.0;     ///< mm the hem is raised at the centre
};

/// Edges of the half front in outline order, "cowl-edge" last; see cowl_front.h.
/// The kinks at the hinges are faired over 40 mm where that keeps every point
/// below the cowl edge. With a tacked length the side seam is that much longer;
/// `tack_marks` are the two places on it that are sewn onto each other.
std::vector<Edge> trued_edges(const LoweredBase& lowered, const std::vector<Slash>& slashes,
                              const std::vector<Motion>& motions, const Trueing& trueing);

/// The facing as edges of a piece of its own: centre, facing-shoulder, facing-edge
/// and the neckline seam to the front, laid with its seam on the cowl edge.
std::vector<Edge> facing_edges(const std::vector<Edge>& front, const std::string& centre_role, double depth);

/// Where a front made longer folds at its side seam: upper and lower mark.
std::optional<Segment> tack_marks(const std::vector<Edge>& front, double tacked_length);

}  // namespace cowlcast::drafting
