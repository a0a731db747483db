// The map checked by hand: crosses of light at known distances, and what a tape says between them.
//
//   const CheckFigure figure = check_figure(map);
//   for (const CheckedReading& r : judged(map, figure, {{'A', 'C', 1204.0}})) tell(r);
//   const RefinedScale refined = refine_scale(map, figure, readings);   // the tape knows the millimetre
//   better
//
// The figure is laid out in millimetres of the mat, so the same map always gives
// the same figure, and readings can be typed in long after it was shown. When the
// map is mended its light moves: the crosses of the next figure carry the next
// number (A2, B2 ...), and readings of another figure are refused, so that no
// reading is applied twice.
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
  int number = 1;      ///< how many figures the calibration has had: one more each time it is mended

  /// Throws Refusal for a name that the figure has not.
  Eigen::Vector2d at(char name) const;
  /// "A" in the first figure, "A2" in the second: what is written beside the cross.
  std::string label(char name) const;
};

/// `step`: what sides should be multiples of, mm. Throws Refusal when the light is too small for a figure.
CheckFigure check_figure(const TableMap& map, double step = 50.0);

/// A tape or rule laid between two crosses.
struct HandReading {
  char from = 'A', to = 'C';
  double mm = 0.0;
  double sigma = 0.5;  ///< how well it was read: one standard deviation, mm
  int figure = 1;      ///< number of the figure it was laid on
};

struct CheckedReading {
  HandReading reading;
  double drawn = 0.0;    ///< what the map says the distance is, mm
  double allowed = 0.0;  ///< what reading and map may differ by, 95 times in 100, mm
  bool used = false;     ///< the scale was mended by it
  bool agrees() const;
};

/// Each reading against the map's stated error and its own. Throws Refusal for unknown crosses, and for
/// readings of another figure than this one.
std::vector<CheckedReading> judged(const TableMap& map, const CheckFigure& figure,
                                   const std::vector<HandReading>& readings);

struct RefinedScale {
  TableMap map;  ///< all of its millimetres times `factor`, its error accordingly
  double factor = 1.0;
};

/// Weighs the readings with what is known of the scale. Throws Refusal when they contradict each other or
/// the calibration: then something is wrong that no scale mends.
///
/// Readings between the same two crosses count together as one: their mean, no better known than the best
/// of them. What is wrong with the tape's laying, with the eye over these two crosses and with the map there
/// is wrong in all of them, and does not average away. Readings of different pairs add up as independent.
/// The map that comes out is the next revision: its figure must be lit and measured anew. One that the last
/// reading of a pair would still not agree with is refused too.
RefinedScale refine_scale(const TableMap& map, const CheckFigure& figure,
                          const std::vector<HandReading>& readings);

/// Throws Refusal when one of `readings` was used before to mend the scale: the same length between the same
/// two crosses. The same tape saying the same again tells nothing new.
void refuse_used(const std::vector<CheckedReading>& kept, const std::vector<HandReading>& readings);

/// The newest reading that did not agree and that nothing made good since: neither a later one of the same
/// two crosses, in whatever figure, nor that the scale was mended by it. None: no tape speaks against the
/// map.
std::optional<CheckedReading> failed_check(const std::vector<CheckedReading>& kept);

/// One reading as files keep it: a JSON object.
std::string check_json(const CheckedReading& checked, const std::string& when);

/// What `check_json` wrote. Throws nlohmann::json::exception for what is none, Refusal for crosses that are
/// none.
CheckedReading check_from_json(const std::string& text);

/// The readings kept in a table file's text, in order.
std::vector<CheckedReading> kept_checks(const std::string& table);

/// The table file's text with the readings kept in it under "checks", earlier ones first; `map` replaces the
/// map where it was refined. Throws Refusal for a text that is no table map.
std::string with_checks(const std::string& table, const TableMap* map,
                        const std::vector<CheckedReading>& checked, const std::string& when);

}  // namespace cowlcast::calibration
