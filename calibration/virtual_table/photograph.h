// Photographs of a simulated room.
//
//   cv::Mat photo = photograph(room, camera, target, 42);
//   save_photograph("photos/1.jpg", photo, {.quality = 85, .focal_35mm = 26.4});
//
// What is modelled: paper, ink, mat print and projected light multiplied as
// light and surface are, at four points of every pixel, each with textures
// averaged over its own footprint; then blur, shake, shot and read noise, white
// balance, exposure, the sRGB curve and 8 bits. Geometry is exact to 0.002 mm.
// What is not: light bounced between objects, depth of field across one
// photograph, colour mosaic and the finer habits of a phone's own processing.
#pragma once

#include <cstdint>
#include <filesystem>
#include <opencv2/core.hpp>
#include <optional>
#include <string>
#include <vector>

#include "calibration/virtual_table/room.h"

namespace cowlcast::calibration::virtual_table {

/// The 8 bit BGR photograph that `camera` takes while the projector shows
/// `picture` (8 bit, grey or BGR, the projector's size; an empty one: the projector is off).
/// The same arguments give the same bytes. Throws std::invalid_argument for an
/// image of the wrong type or size.
cv::Mat photograph(const Room& room, const RoomCamera& camera, const cv::Mat& picture, std::uint64_t seed);

/// The picture before noise, exposure and tone: linear light leaving the table
/// towards each pixel, lux times albedo, three floats (blue green red).
cv::Mat linear_photograph(const Room& room, const RoomCamera& camera, const cv::Mat& picture);

/// The second half of `photograph`: exposes `light` as `linear_photograph` gives it. For many frames of a
/// scene that stands still, which differ in their noise alone.
cv::Mat expose(const cv::Mat& light, const RoomCamera& camera, std::uint64_t seed);

/// How a photograph is written.
struct PhotographFile {
  int quality = 90;  ///< JPEG, 1 to 100
  std::optional<double> focal_35mm =
      {};                               ///< EXIF focal length as for 35 mm film, written rounded to whole mm
  std::optional<double> focal_mm = {};  ///< EXIF focal length itself, mm
  int orientation = 1;                  ///< EXIF 1, 3, 6 or 8: how a viewer should turn it
};

/// The bytes of a JPEG file with the wanted EXIF entries.
std::vector<unsigned char> encode_photograph(const cv::Mat& photograph, const PhotographFile& file);

/// Writes `encode_photograph` to `path`. Throws std::runtime_error where it cannot.
void save_photograph(const std::filesystem::path& path, const cv::Mat& photograph,
                     const PhotographFile& file);

/// Focal length for 35 mm film of a camera, by the diagonals (CIPA DCG-001), mm.
double focal_35mm(const RoomCamera& camera);

}  // namespace cowlcast::calibration::virtual_table
