#include "calibration/camera/fixed_camera.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "calibration/lens/lens_json.h"
#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

using nlohmann::json;

constexpr const char* kFormat = "cowlcast fixed camera";
constexpr int kSchema = 1;

}  // namespace

std::optional<Eigen::Vector2d> FixedCamera::pixel_from_mat(const Eigen::Vector2d& mat, double above) const {
  const Eigen::Vector3d seen = camera_from_mat * Eigen::Vector3d(mat.x(), mat.y(), above);
  if (!(seen.z() > 1e-6)) return std::nullopt;
  const Eigen::Vector2d ray = seen.head<2>() / seen.z();
  if (!lens.covers(ray)) return std::nullopt;
  const Eigen::Vector2d pixel = lens.pixel_from_ray(ray);
  if (pixel.x() < -0.5 || pixel.y() < -0.5 || pixel.x() > width - 0.5 || pixel.y() > height - 0.5)
    return std::nullopt;
  return pixel;
}

Eigen::Vector2d FixedCamera::mat_from_pixel(const Eigen::Vector2d& pixel, double above) const {
  const Eigen::Vector3d along =
      camera_from_mat.rotation().transpose() * lens.ray_from_pixel(pixel).homogeneous();
  const Eigen::Vector3d from = eye();
  const double reach = (above - from.z()) / along.z();
  if (!(reach > 0.0) || !std::isfinite(reach))
    throw Refusal("A pixel of the camera does not look at the table. Point the camera down at the mat.");
  return (from + reach * along).head<2>();
}

std::string FixedCamera::to_json() const {
  json out = PlacedLens{lens, camera_from_mat}.to_json();
  out["format"] = kFormat;
  out["schema"] = kSchema;
  out["units"] = "mm";
  out["width"] = width;
  out["height"] = height;
  for (const TagPlace& tag : tags) out["tags"].push_back({{"number", tag.number}, {"at", json_of(tag.at)}});
  return out.dump(1) + "\n";
}

FixedCamera FixedCamera::from_json(const std::string& text) {
  try {
    const json in = json::parse(text);
    if (!in.is_object() || in.value("format", "") != kFormat)
      throw Refusal("This file does not tell where a camera stands. Locate the camera again.");
    if (in.at("schema").get<int>() > kSchema)
      throw Refusal(
          "This camera file was written by a newer Cowlcast. Update the program, or locate the camera "
          "again.");
    FixedCamera camera;
    camera.width = in.at("width").get<int>();
    camera.height = in.at("height").get<int>();
    const PlacedLens placed = PlacedLens::from_json(in);
    camera.lens = placed.lens;
    camera.camera_from_mat = placed.lens_from_mat;
    for (const json& tag : in.value("tags", json::array()))
      camera.tags.push_back({tag.at("number").get<int>(), point_of(tag.at("at"))});
    if (!placed.sound() || camera.width <= 0 || camera.height <= 0 || !(camera.eye().z() > 0.0))
      throw Refusal(
          "This camera file contradicts itself, so it may have been edited. Locate the camera again.");
    return camera;
  } catch (const json::exception&) {
    throw Refusal("This camera file is damaged or not complete. Locate the camera again.");
  }
}

}  // namespace cowlcast::calibration
