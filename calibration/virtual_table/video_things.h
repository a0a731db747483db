// Things: what comes to lie or move on a simulated table while somebody cuts.
//
//   Dice dice(7);
//   Thing weight = pattern_weight(dice);
//   Thing hand = pointing_hand(dice, draw_skin(dice));
//
// A thing is a handful of flat parts, each an outline at a height, in the
// thing's own frame: x forwards, y to its left, millimetres. Rounded things are
// made of a darker outline and a lighter one within.
#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

#include "calibration/virtual_table/room.h"
#include "calibration/virtual_table/textures.h"

namespace cowlcast::calibration::virtual_table {

struct Part {
  std::vector<Eigen::Vector2d> outline = {};  ///< mm, any turning sense
  double height = 5.0;                        ///< above the cloth, mm
  Colour albedo{0.5f, 0.5f, 0.5f};
};

struct Thing {
  std::string name = {};
  std::vector<Part> parts = {};  ///< from the lowest to the highest
};

/// A stadium: all points within `radius` of the way from `from` to `to`; a disc when they are one.
std::vector<Eigen::Vector2d> stadium(const Eigen::Vector2d& from, const Eigen::Vector2d& to, double radius);

Colour draw_skin(Dice& dice);

/// The hand's looks that stay the same while it cuts.
struct CutterLook {
  Colour skin, sleeve, holder, grip;
  double blade = 45.0;  ///< diameter, mm
};
CutterLook draw_cutter(Dice& dice);

/// A round cutter in a hand, its blade touching the origin, rolling along `travel`, the grip pointing along
/// `trail`, the elbow at `elbow`: unit vectors and mm, room orientation. Lengths as a person's hand has them.
Thing cutter_in_hand(const CutterLook& look, const Eigen::Vector2d& travel, const Eigen::Vector2d& trail,
                     const Eigen::Vector2d& elbow);

/// A flat hand with its finger tips towards +x, the longest at the origin, forearm towards -x.
Thing flat_hand(const Colour& skin, const Colour& sleeve);
/// A hand with one finger stretched out to the origin.
Thing pointing_hand(Dice& dice, const Colour& skin, const Colour& sleeve);
/// A disc of metal, plain or coated, 30 to 70 mm across.
Thing pattern_weight(Dice& dice);
/// Eight to twelve pins with their heads together, heads 4 to 5 mm across.
Thing pin_cluster(Dice& dice);
/// 20 to 35 mm wide, with graduations.
Thing ruler(Dice& dice);
Thing scissors(Dice& dice);
/// A cat's paw, its toes at the origin, the leg towards -x.
Thing cat_paw(Dice& dice);
/// What is too small to count: one pin, a snip of thread, a button of 6 mm.
Thing trifle(Dice& dice);

}  // namespace cowlcast::calibration::virtual_table
