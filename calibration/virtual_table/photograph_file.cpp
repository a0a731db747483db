#include <cmath>
#include <exiv2/exiv2.hpp>
#include <fstream>
#include <opencv2/imgcodecs.hpp>
#include <stdexcept>

#include "calibration/virtual_table/photograph.h"

namespace cowlcast::calibration::virtual_table {

std::vector<unsigned char> encode_photograph(const cv::Mat& photograph, const PhotographFile& file) {
  std::vector<unsigned char> bytes;
  if (!cv::imencode(".jpg", photograph, bytes, {cv::IMWRITE_JPEG_QUALITY, file.quality}))
    throw std::runtime_error("the photograph could not be written as JPEG");
  Exiv2::ExifData exif;
  exif["Exif.Image.Make"] = "Cowlcast";
  exif["Exif.Image.Model"] = "Simulated camera";
  exif["Exif.Image.Orientation"] = static_cast<std::uint16_t>(file.orientation);
  if (file.focal_mm)
    exif["Exif.Photo.FocalLength"] =
        Exiv2::Rational(static_cast<std::int32_t>(std::lround(*file.focal_mm * 1000)), 1000);
  if (file.focal_35mm)
    exif["Exif.Photo.FocalLengthIn35mmFilm"] = static_cast<std::uint16_t>(std::lround(*file.focal_35mm));
  const auto image = Exiv2::ImageFactory::open(bytes.data(), static_cast<long>(bytes.size()));
  image->readMetadata();
  image->setExifData(exif);
  image->writeMetadata();
  Exiv2::BasicIo& io = image->io();
  io.seek(0, Exiv2::BasicIo::beg);
  std::vector<unsigned char> whole(static_cast<std::size_t>(io.size()));
  const auto got = io.read(whole.data(), static_cast<long>(whole.size()));
  if (got != static_cast<long>(whole.size()))
    throw std::runtime_error("the photograph's EXIF entries could not be written");
  return whole;
}

void save_photograph(const std::filesystem::path& path, const cv::Mat& photograph,
                     const PhotographFile& file) {
  const auto bytes = encode_photograph(photograph, file);
  std::ofstream out(path, std::ios::binary | std::ios::trunc);
  out.write(reinterpret_cast<const char*>(bytes.data()), static_cast<std::streamsize>(bytes.size()));
  out.close();
  if (!out) throw std::runtime_error("cannot write " + path.string());
}

}  // namespace cowlcast::calibration::virtual_table
