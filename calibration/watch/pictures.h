// Frames of a fixed camera put together, for learning and for calibrating again. Internal to the watch.
#pragma once

#include <opencv2/core.hpp>
#include <vector>

#include "calibration/detect/markers.h"
#include "calibration/watch/watch.h"

namespace cowlcast::calibration {

/// Mean of 8-bit grey frames as linear light. Throws std::invalid_argument for frames of other kinds or
/// sizes.
cv::Mat mean_light(const std::vector<cv::Mat>& frames);

/// Linear light, 32-bit float.
struct WatchLight {
  cv::Mat dark, plain, marked;
};

/// Throws std::invalid_argument when one of the three is missing.
WatchLight watch_light(const WatchPictures& pictures);

/// The marks' light without the ground it falls on: 0 to 1, a little beyond for noise.
cv::Mat light_alone(const WatchLight& light);

/// The edge tags in an 8-bit grey frame, each once, by number.
std::vector<FoundMarker> find_edge_tags(const cv::Mat& grey);

/// The same with all care, small and dim ones too: for learning.
std::vector<FoundMarker> find_edge_tags(const WatchLight& light);

}  // namespace cowlcast::calibration
