// Offset: an outline moved outwards, each side by its own distance.
//
//   Polyline cut = offset_outline(seam_line, widths);   // widths[i] for seam_line[i] to [i + 1]
//
// For a simple counter-clockwise outline. Outer corners are mitred up to
// `limit` times the wider distance and squared off beyond; inner corners
// are trimmed to where the moved sides meet, loops of tight inner curves cut
// away. A side of distance 0 stays where it is. With one distance for all sides
// every point of the result lies that far from the outline, or further at outer
// corners only.
#pragma once

#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

inline constexpr double mitre_limit = 2.0;

Polyline offset_outline(const Polyline& outline, const std::vector<double>& distances,
                        double limit = mitre_limit);

/// The same with a mitre limit for each corner: `limits[i]` for `outline[i]`.
Polyline offset_outline(const Polyline& outline, const std::vector<double>& distances,
                        const std::vector<double>& limits);

/// The outer rim of a closed line that may cross itself and winds once,
/// counter-clockwise: its loops are cut away.
Polyline outer_rim(const Polyline& line);

}  // namespace cowlcast::drafting
