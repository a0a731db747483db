// Corner: how the cut line turns where two edges meet.
//
//   Corners corners;
//   corners.list.push_back({"shoulder", "armhole", CornerForm::mirrored});
//   add_allowances(front, default_allowances(), corners);
//
// An allowance that is folded or pressed back over its own seam line must not
// stand out beyond, nor fall short of, the edge beside it. Trued for that, its
// end is the reflection of the neighbour's cut line in the seam line it is
// pressed along.
#pragma once

#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

enum class CornerForm {
  mitred,   ///< both cut lines run on until they meet; squared beyond the mitre limit
  squared,  ///< cut off across, square to the corner's middle
  mirrored  ///< the pressed edge's allowance ends as the other's reflection
};

/// The corner where `pressed` meets `beside`, by role. For a mirrored corner the
/// order tells which allowance is pressed back.
struct Corner {
  std::string pressed, beside;
  CornerForm form = CornerForm::mirrored;
};

struct Corners {
  CornerForm others = CornerForm::mitred;  ///< of corners not in the list; never mirrored
  /// A hem is turned up on its line and caught in the side seam. Later entries win.
  std::vector<Corner> list = {{"hem", "side-seam"}, {"camisole-hem", "side-seam"}};
};

/// "mitred", "squared" and "mirrored".
std::string corner_form_name(CornerForm form);

/// The form of a corner, and which of its two edges is pressed when it is mirrored.
struct ChosenCorner {
  CornerForm form = CornerForm::mitred;
  bool first_pressed = true;
};
ChosenCorner corner_between(const Corners& corners, const std::string& first, const std::string& second);

/// A seam line that ends at a corner, pressed back over itself, `width` mm of
/// allowance on its right.
struct PressedEdge {
  Polyline seam;  ///< towards the corner
  double width = 0.0;
  double beside_width = 0.0;  ///< mm, of the edge that goes on from the corner
};

/// `cut`, an outline that runs along the pressed edge and then along the one
/// beside it, with the corner between trued; as it was when the edge beside is
/// so nearly in line that there is nothing to reflect.
Polyline with_mirrored_corner(const Polyline& cut, const PressedEdge& edge);

}  // namespace cowlcast::drafting
