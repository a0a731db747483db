// Play: one stroke of the cutter along a path, with all that comes in its way.
//
//   CuttingPlay play(dice, {.stroke = path, .stands = {0, -600}});
//   for (double t = 0; t < play.seconds(); t += 0.1)
//     cv::Mat frame = video.frame({.things = play.things(t, 0.01)}, seed++);
//
// It is the truth for whoever watches the frames: where the blade is, what lies
// or enters ahead of it within the corridor, from when to when. The corridor is
// the strip along the stroke, `holding` mm wide on the side of the other hand and
// `other` mm on the blade's. The person does not react to what happens.
#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

#include "calibration/virtual_table/video.h"

namespace cowlcast::calibration::virtual_table {

struct PlayOptions {
  std::vector<Eigen::Vector2d> stroke = {};  ///< way of the blade over the cloth, mm
  bool holding_left = true;                  ///< the other hand's side, seen along the way
  double holding = 66.0, other = 15.0;       ///< the corridor's widths, mm
  Eigen::Vector2d stands{0.0, -600.0};       ///< the person, mm
  Colour skin{0.5f, 0.31f, 0.21f};           ///< of the other hand
  Colour sleeve{0.1f, 0.1f, 0.1f};
  double eventful = 0.6;              ///< chance that something enters, and once more
  double gives_way = 0.0;             ///< how far the blade drags the cloth at most, mm; 0: it lies fast
  Eigen::Vector2d slipped{0.0, 0.0};  ///< where strokes before have left all of the cloth, mm
  double offcut = 0.0;                ///< chance that what has been cut off is folded away behind the blade
  Colour underside{0.5f, 0.5f, 0.5f},
      mat{0.1f, 0.25f, 0.15f};  ///< what is seen of the cloth then, and under it
};

/// Something that lay or entered in the corridor ahead of the blade with at least the area of a disc of 12
/// mm.
struct Intrusion {
  std::string what = {};
  double from = 0.0, to = 0.0;      ///< seconds, the first to 5 ms
  Eigen::Vector2d where{0.0, 0.0};  ///< middle of what is inside when it begins, mm
};

class CuttingPlay {
 public:
  CuttingPlay(Dice& dice, const PlayOptions& options);

  double seconds() const { return seconds_; }
  /// Way of the blade's axle along the stroke, mm.
  double blade(double t) const;
  /// All that is on the table, places spread over an exposure of `exposure` seconds that ends at `t`.
  std::vector<PosedThing> things(double t, double exposure) const;
  /// How the cloth lies then; nothing when it lies fast.
  std::optional<Drag> drag(double t) const;
  const std::vector<Intrusion>& intrusions() const { return intrusions_; }
  /// Whether anything but the cutter, its hand and the cloth is within `radius` mm of a place; trifles are
  /// asked for apart.
  bool anything_near(double t, const Eigen::Vector2d& place, double radius, bool trifles = false) const;

  /// Ahead of the axle by less than this nothing counts as ahead of the blade: the cutter's own nose is
  /// there.
  static constexpr double nose = 60.0;

 private:
  struct Key {
    double t;
    Place place;
  };
  struct Journey {
    Thing thing;
    std::vector<Key> keys;  // seen from the first to the last
    bool counts = true;
    bool cloth = false;
  };
  struct Step {
    double t, along, away;
  };

  Eigen::Vector2d at(double along, double off) const;
  Eigen::Vector2d travel(double along) const;
  double away(double t) const;
  static Place place_of(const Journey& journey, double t);
  PosedThing tool(double t) const;
  // Area inside the corridor from `from` mm on, mm², and the middle of it.
  double inside(const Journey& journey, const Place& place, double from, Eigen::Vector2d* middle) const;
  void add_cutting(Dice& dice);
  void add_drag(Dice& dice);
  void add_offcut(Dice& dice);
  void add_holding_hand(Dice& dice);
  void add_event(Dice& dice);
  void note_intrusion(const Journey& journey);

  PlayOptions options_;
  std::vector<double> lengths_;
  double length_ = 0.0, seconds_ = 0.0, cutting_from_ = 0.0, cutting_to_ = 0.0;
  double lean_ = 0.4;
  CutterLook look_;
  std::vector<Step> steps_;
  struct Push {
    double share = 0.0;  // of the most that the cloth gives way
    double left = 0.0;   // of that, what stays for good: all of the cloth has slipped
  };
  std::vector<Push> pushes_;  // every kBeat seconds
  Drag most_;                 // at its most
  double slips_ = 0.0;
  std::vector<Journey> journeys_;
  std::vector<Intrusion> intrusions_;
};

}  // namespace cowlcast::calibration::virtual_table
