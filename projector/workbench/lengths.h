// Lengths as the maker reads and types them.
//
//   length_in_words(479.4, Units::inches)         == "18⅞ in"
//   length_in_words(479.4, Units::centimetres)    == "47.9 cm"
//   typed_length("19 1/2", Units::inches)         == 495.3
//   typed_length("48cm", Units::inches)           == 480
//
// Inside, everything is millimetres; these are the only places where it is not.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace cowlcast::projector {

enum class Units { inches, centimetres };

/// Inches to the nearest eighth, or centimetres to the millimetre, with the unit.
std::string length_in_words(double mm, Units units);

/// The same without the unit, for rulers and fields that say it themselves.
std::string length_in_figures(double mm, Units units);

/// A sentence of the other rooms, which speak of "812.3 mm", with its lengths in these units.
std::string lengths_in_own_units(const std::string& sentence, Units units);

/// A length in mm from what was typed: plain figures are in `units`; "mm", "cm", "in" and the inch mark
/// after it are understood, as are decimal point and comma, "19 1/2", "1/2" and "19½". None for anything
/// else.
std::optional<double> typed_length(std::string_view text, Units units);

/// One press of an arrow key: an eighth of an inch, or half a centimetre.
double length_step(Units units);

/// The nearest whole number of steps.
double on_step(double mm, double step);

}  // namespace cowlcast::projector
