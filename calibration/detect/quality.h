// How well a photograph was taken, for messages: too dark, blurred.
#pragma once

#include <opencv2/core.hpp>

namespace cowlcast::calibration {

struct PictureQuality {
  double brightest = 0.0;  ///< level that 1 pixel in 200 exceeds, 0 to 255
  double softness =
      1.0;  ///< steepest edges at a quarter of the size over those at full size, in the
            ///< direction where that is most: about 1 when sharp, 4 when smeared over many pixels

  bool dark() const { return brightest < 95.0; }
  bool blurred() const { return softness > 2.6; }
};

/// Of an 8-bit grey picture.
PictureQuality picture_quality(const cv::Mat& grey);

}  // namespace cowlcast::calibration
