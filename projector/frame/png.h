// Pictures to the bytes of a PNG file, and from Qt's hands to OpenCV's and back.
#pragma once

#include <QImage>
#include <opencv2/core.hpp>
#include <string>

namespace cowlcast::projector {

/// 8-bit grey or BGR. `dots_per_inch` is written into the file when above 0.
std::string png_bytes(const cv::Mat& picture, double dots_per_inch = 0.0);
std::string png_bytes(const QImage& picture);

/// The same picture as OpenCV holds it: 8-bit BGR.
cv::Mat bgr_from(const QImage& picture);

/// The other way: from 8-bit grey or BGR.
QImage image_from(const cv::Mat& picture);

}  // namespace cowlcast::projector
