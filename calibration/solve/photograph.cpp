#include <cmath>
#include <exiv2/exiv2.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <opencv2/imgcodecs.hpp>

#include "calibration/refusal.h"
#include "calibration/solve/calibrate.h"

namespace cowlcast::calibration {
namespace {

constexpr int kLeastSide = 480, kMostSide = 20000;  // pixels
constexpr double kFilmDiagonal = 43.2666;           // mm, of a 36 × 24 mm frame

// A JPEG file that breaks off: its picture's data run to the file's end, with no end marker (ITU-T T.81,
// annex B: segments carry their length; in the data a marker's FF is never followed by 00). Thumbnails
// lie within segments and are passed over.
bool breaks_off(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  const std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  const auto byte = [&](size_t i) { return static_cast<unsigned>(static_cast<unsigned char>(bytes[i])); };
  if (bytes.size() < 4 || byte(0) != 0xff || byte(1) != 0xd8) return false;  // no JPEG
  for (size_t i = 2; i + 1 < bytes.size();) {
    const unsigned marker = byte(i + 1);
    const bool in_data = byte(i) != 0xff || marker == 0x00 || (marker >= 0xd0 && marker <= 0xd7);
    if (in_data || marker == 0xff) {
      ++i;
      continue;
    }
    if (marker == 0xd9) return false;
    if (i + 3 >= bytes.size()) return true;
    i += 2 + (byte(i + 2) << 8 | byte(i + 3));
  }
  return true;
}

// Maker and model, as the camera wrote them.
std::string camera_from_exif(const std::string& path) {
  try {
    const auto image = Exiv2::ImageFactory::open(path);
    image->readMetadata();
    const Exiv2::ExifData& data = image->exifData();
    std::string out;
    for (const char* key : {"Exif.Image.Make", "Exif.Image.Model"}) {
      const auto entry = data.findKey(Exiv2::ExifKey(key));
      if (entry == data.end()) continue;
      out += out.empty() ? "" : " ";
      out += entry->toString();
    }
    return out;
  } catch (const Exiv2::Error&) {
    return {};
  }
}

// Focal length in pixels from the length "as for 35 mm film" (CIPA DCG-001: by the diagonals).
std::optional<double> focal_from_exif(const std::string& path, const cv::Size& size) {
  try {
    const auto image = Exiv2::ImageFactory::open(path);
    image->readMetadata();
    const Exiv2::ExifData& data = image->exifData();
    const auto entry = data.findKey(Exiv2::ExifKey("Exif.Photo.FocalLengthIn35mmFilm"));
    if (entry == data.end()) return std::nullopt;
    const double film = static_cast<double>(entry->toFloat());
    if (!(film >= 8.0 && film <= 300.0)) return std::nullopt;
    return film / kFilmDiagonal * std::hypot(size.width, size.height);
  } catch (const Exiv2::Error&) {
    return std::nullopt;
  }
}

}  // namespace

Photograph load_photograph(const std::string& path) {
  const std::string name = std::filesystem::path(path).filename().string();
  Photograph out;
  out.name = name;
  if (breaks_off(path))
    throw Refusal(
        "The file " + name +
        " is damaged: it breaks off in the middle of the photograph. Copy it again from the camera, "
        "or leave it out.");
  try {
    // As the sensor saw it: one lens then serves upright and level photographs.
    out.grey = cv::imread(path, cv::IMREAD_GRAYSCALE | cv::IMREAD_IGNORE_ORIENTATION);
  } catch (const cv::Exception&) {
    out.grey.release();
  }
  if (out.grey.empty())
    throw Refusal("The file " + name +
                  " cannot be read as a photograph. Copy it again from the camera, or leave it out.");
  const int shortest = std::min(out.grey.cols, out.grey.rows),
            longest = std::max(out.grey.cols, out.grey.rows);
  if (shortest < kLeastSide || longest > kMostSide)
    throw Refusal("The photograph " + name + " is " + std::to_string(out.grey.cols) + "x" +
                  std::to_string(out.grey.rows) +
                  " pixels, which is too small or too large. Use the camera's own full-size photograph.");
  out.focal = focal_from_exif(path, out.grey.size());
  out.camera = camera_from_exif(path);
  return out;
}

std::vector<Photograph> load_photographs(const std::vector<std::string>& paths,
                                         std::vector<std::string>& unread) {
  std::vector<Photograph> read(paths.size());
  std::vector<std::string> reasons(paths.size());
  cv::parallel_for_({0, static_cast<int>(paths.size())}, [&](const cv::Range& range) {
    for (int n = range.start; n < range.end; ++n) {
      const auto i = static_cast<size_t>(n);
      try {
        read[i] = load_photograph(paths[i]);
      } catch (const Refusal& refusal) {
        reasons[i] = refusal.what();
      }
    }
  });
  std::vector<Photograph> out;
  for (size_t i = 0; i < paths.size(); ++i)
    if (reasons[i].empty())
      out.push_back(std::move(read[i]));
    else
      unread.push_back(reasons[i]);
  return out;
}

}  // namespace cowlcast::calibration
