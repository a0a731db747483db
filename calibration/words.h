// Numbers as words for messages.
#pragma once

#include <cstdio>
#include <string>

namespace cowlcast::calibration {

/// `value` with `digits` after the point.
inline std::string fixed(double value, int digits) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*f", digits, value);
  return text;
}

}  // namespace cowlcast::calibration
