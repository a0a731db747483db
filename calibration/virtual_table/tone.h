// Tone: from linear light to the 8 bits of a picture. Internal.
#pragma once

#include <algorithm>
#include <cstdint>
#include <functional>
#include <opencv2/core.hpp>
#include <vector>

namespace cowlcast::calibration::virtual_table {

/// The curve of IEC 61966-2-1 (sRGB) from 0..65535 to 0..255.
const std::vector<std::uint8_t>& tone_curve();

/// One value, white at 1, held at both ends.
inline std::uint8_t toned(float light) {
  return tone_curve()[static_cast<std::size_t>(std::clamp(light * 65535.0f + 0.5f, 0.0f, 65535.0f))];
}

/// Luminance (Rec. ITU-R BT.709) to be shown as white: the mean becomes a middle tone
/// unless that burns out more than one pixel in two hundred. `left` is the share of light
/// that a pixel keeps, 1 where not given.
double white_level(const cv::Mat& light, const std::function<float(int x, int y)>& left = {});

}  // namespace cowlcast::calibration::virtual_table
