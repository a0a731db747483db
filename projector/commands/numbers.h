// Numbers as a person types them.
//
//   length_mm("19in")    == 482.6
//   length_mm("48 cm")   == 480
//   length_mm("480")     == 480
//
// Decimal point only, whatever the locale; nothing is left unread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cowlcast::projector {

inline constexpr double kMmPerInch = 25.4;  ///< exactly

/// A finite plain number; nothing for anything else, spaces around it allowed.
std::optional<double> plain_number(std::string_view text);

/// A length in mm: a plain number is mm; mm, cm, m, in and " are understood.
std::optional<double> length_mm(std::string_view text);

/// An angle in radians from degrees; "deg" or "°" may follow.
std::optional<double> angle_radians(std::string_view text);

/// "a,b,c" in parts.
std::vector<std::string> parts_of(std::string_view text, char separator);

/// "1920x1080", "1920 X 1080": width and height, both from 1 to 99999.
struct PictureSize {
  int width = 0, height = 0;
};
std::optional<PictureSize> picture_size(std::string_view text);

/// "900x600", "90cm x 60cm": two lengths in mm, both above 0.
struct AreaSize {
  double width = 0.0, depth = 0.0;
};
std::optional<AreaSize> area_size(std::string_view text);

/// "#1b2a4a" or, in small letters or capitals, a name of black, white, grey, red, navy, green, yellow:
/// 0xffrrggbb.
std::optional<unsigned> colour_value(std::string_view text);

}  // namespace cowlcast::projector
