// From photographs of the table to a TableMap.
//
//   CalibrationRequest request{.width = 1920, .height = 1080, .rulers = Rulers{239.4, 179.7}};
//   CalibrationReport report = calibrate(load_photographs(paths, unread), request);
//   save(report.map.to_json());
//
// The photographs are of loose printed sheets on the mat, under the target
// picture or under plain light, taken by hand in any order. One least-squares
// fit finds the camera's lens, each photograph's pose, each sheet's place, the
// print scale and the projector. What the data cannot support is refused.
#pragma once

#include <Eigen/Core>
#include <opencv2/core.hpp>
#include <optional>
#include <string>
#include <vector>

#include "calibration/solve/lens_memory.h"
#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {

/// A photograph as the camera made it (not turned by its EXIF orientation).
struct Photograph {
  std::string name;             ///< for messages
  cv::Mat grey;                 ///< 8-bit
  std::optional<double> focal;  ///< from EXIF, pixels
  std::string camera = {};      ///< maker and model from EXIF, or a name given by hand; empty: not known
};

/// Reads a JPEG or PNG file. Throws Refusal when it cannot be read as a picture.
Photograph load_photograph(const std::string& path);

/// Reads several, side by side. Files that cannot be read are left out; the reasons go to `unread`.
std::vector<Photograph> load_photographs(const std::vector<std::string>& paths,
                                         std::vector<std::string>& unread);

/// What the two rulers of the sheets measure on paper, mm.
struct Rulers {
  double across = 0.0;  ///< the 240 mm ruler
  double down = 0.0;    ///< the 180 mm ruler
};

/// A tape laid between the centre crosses of two sheets.
struct Span {
  int from = 0, to = 0;  ///< sheet numbers
  double length = 0.0;   ///< mm
};

/// A sheet that lies on a board instead of the mat: it shows how the light slants.
struct RaisedSheet {
  int sheet = 0;           ///< its number
  double thickness = 0.0;  ///< of the board, mm
};

struct CalibrationRequest {
  int width = 0, height = 0;  ///< projector picture, pixels
  std::optional<Rulers> rulers;
  std::vector<Span> spans;
  std::optional<RaisedSheet> raised;
  std::optional<double> lamp_height;  ///< from the mat straight up to the projector's lens, by tape, mm
  std::vector<KnownLens> known_lenses = {};  ///< of earlier calibrations
};

struct CalibrationReport {
  TableMap map;
  std::vector<std::string> warnings;  ///< plain sentences
  std::vector<KnownLens> lenses;      ///< found well enough to be remembered
  std::string summary;                ///< a few lines for the person at the table
};

/// Throws Refusal with cause and cure when the data does not support a map right within 1 mm.
CalibrationReport calibrate(const std::vector<Photograph>& photographs, const CalibrationRequest& request);

}  // namespace cowlcast::calibration
