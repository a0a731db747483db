// The map checked by hand: crosses of light at known distances, and what a tape says between them.
//
//   const CheckFigure figure = check_figure(map);
//   for (const CheckedReading& r : judged(map, figure, {{'A', 'C', 1204.0}})) tell(r);
//   const RefinedScale refined = refine_scale(map, figure, readings);   // the tape knows the millimetre
//   better
//
// The figure is laid out in millimetres of the mat, so the same map always gives
// the same figure, and readings can be typed in long after it was shown.
#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {

struct CheckCross {
  char name = 'A';
  Eigen::Vector2d mat = Eigen::Vector2d::Zero();  ///< mm
};

/// A B C D: a rectangle near the light's border, clockwise from the far left; M: its middle; P Q R S: a
/// square about M, clockwise from the far left.
struct CheckFigure {
  std::vector<CheckCross> crosses;
  double step = 50.0;  ///< sides are multiples of it, mm

  /// Throws Refusal for a name that the figure has not.
  Eigen::Vector2d at(char name) const;
};

/// `step`: what sides should be multiples of, mm. Throws Refusal when the light is too small for a figure.
CheckFigure check_figure(const TableMap& map, double step = 50.0);

/// A tape or rule laid between two crosses.
struct HandReading {
  char from = 'A', to = 'C';
  double mm = 0.0;
  double sigma = 0.5;  ///< how well it was read: one standard deviation, mm
};

struct CheckedReading {
  HandReading reading;
  double drawn = 0.0;    ///< what the map says the distance is, mm
  double allowed = 0.0;  ///< what reading and map may differ by, 95 times in 100, mm
  bool agrees() const;
};

/// Each reading against the map's stated error and its own. Throws Refusal for unknown crosses.
std::vector<CheckedReading> judged(const TableMap& map, const CheckFigure& figure,
                                   const std::vector<HandReading>& readings);

struct RefinedScale {
  TableMap map;  ///< all of its millimetres times `factor`, its error accordingly
  double factor = 1.0;
};

/// Weighs the readings with what is known of the scale. Throws Refusal when they contradict each other or
/// the calibration: then something is wrong that no scale mends.
RefinedScale refine_scale(const TableMap& map, const CheckFigure& figure,
                          const std::vector<HandReading>& readings);

/// One reading as files keep it: a JSON object.
std::string check_json(const CheckedReading& checked, const std::string& when);

/// The table file's text with the readings kept in it under "checks", earlier ones first; `map` replaces the
/// map where it was refined. Throws Refusal for a text that is no table map.
std::string with_checks(const std::string& table, const TableMap* map,
                        const std::vector<CheckedReading>& checked, const std::string& when);

}  // namespace cowlcast::calibration
