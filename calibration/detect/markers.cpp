#include "calibration/detect/markers.h"

#include <algorithm>
#include <opencv2/core/version.hpp>

#if CV_VERSION_MAJOR > 4 || (CV_VERSION_MAJOR == 4 && CV_VERSION_MINOR >= 7)
#include <opencv2/objdetect/aruco_detector.hpp>
#define COWLCAST_MARKERS_IN_OBJDETECT 1
#else
#include <opencv2/aruco.hpp>
#endif

namespace cowlcast::calibration {
namespace {

constexpr auto kPaper = cv::aruco::DICT_APRILTAG_36h11;
constexpr auto kLight = cv::aruco::DICT_5X5_1000;

auto dictionary(MarkerFamily family) {
  return cv::aruco::getPredefinedDictionary(family == MarkerFamily::paper ? kPaper : kLight);
}

}  // namespace

int marker_side(MarkerFamily family) {
  return family == MarkerFamily::paper ? 8 : 7;
}

int marker_codes(MarkerFamily family) {
  return family == MarkerFamily::paper ? 587 : 1000;
}

cv::Mat marker_cells(MarkerFamily family, int code) {
  cv::Mat cells;
#ifdef COWLCAST_MARKERS_IN_OBJDETECT
  cv::aruco::generateImageMarker(dictionary(family), code, marker_side(family), cells, 1);
#else
  cv::aruco::drawMarker(dictionary(family), code, marker_side(family), cells, 1);
#endif
  return cells;
}

std::vector<FoundMarker> find_markers(const cv::Mat& grey, MarkerFamily family, double shortest) {
  const double longest_side = std::max(grey.cols, grey.rows);
  const auto configure = [&](auto& settings) {
    settings.adaptiveThreshWinSizeMin = 7;
    settings.adaptiveThreshWinSizeMax = 31;
    settings.adaptiveThreshWinSizeStep = 12;
    settings.minMarkerPerimeterRate = 4.0 * shortest / longest_side;
    settings.maxMarkerPerimeterRate = 1.0;
    settings.minOtsuStdDev = 2.0;
    settings.perspectiveRemovePixelPerCell = 6;
    settings.perspectiveRemoveIgnoredMarginPerCell = 0.2;
    settings.errorCorrectionRate = 0.5;
  };
  std::vector<std::vector<cv::Point2f>> quads;
  std::vector<int> codes;
#ifdef COWLCAST_MARKERS_IN_OBJDETECT
  cv::aruco::DetectorParameters settings;
  configure(settings);
  cv::aruco::ArucoDetector(dictionary(family), settings).detectMarkers(grey, quads, codes);
#else
  const auto settings = cv::aruco::DetectorParameters::create();
  configure(*settings);
  cv::aruco::detectMarkers(grey, dictionary(family), quads, codes, settings);
#endif
  std::vector<FoundMarker> found(codes.size());
  for (size_t i = 0; i < codes.size(); ++i) {
    found[i].code = codes[i];
    for (size_t c = 0; c < 4; ++c) found[i].corners[c] = {quads[i][c].x, quads[i][c].y};
  }
  return found;
}

}  // namespace cowlcast::calibration
