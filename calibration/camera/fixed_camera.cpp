#include "calibration/camera/fixed_camera.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

using nlohmann::json;

constexpr const char* kFormat = "cowlcast fixed camera";
constexpr int kSchema = 1;

double number(const json& value) {
  const double x = value.get<double>();
  if (!std::isfinite(x)) throw Refusal("The camera file holds a number that is not finite. Locate it again.");
  return x;
}

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
  json rotation = json::array();
  const Eigen::Matrix3d turn = camera_from_mat.rotation();
  for (int i = 0; i < 3; ++i) rotation.push_back({turn(i, 0), turn(i, 1), turn(i, 2)});
  const Eigen::Vector3d shift = camera_from_mat.translation();
  const json out = {{"format", kFormat},
                    {"schema", kSchema},
                    {"units", "mm"},
                    {"width", width},
                    {"height", height},
                    {"lens",
                     {{"focal", lens.focal},
                      {"centre", {lens.centre.x(), lens.centre.y()}},
                      {"k1", lens.k1},
                      {"k2", lens.k2},
                      {"k3", lens.k3},
                      {"p1", lens.p1},
                      {"p2", lens.p2}}},
                    {"rotation", rotation},
                    {"translation", {shift.x(), shift.y(), shift.z()}}};
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
    const json& lens = in.at("lens");
    camera.lens.focal = number(lens.at("focal"));
    camera.lens.centre = {number(lens.at("centre").at(0)), number(lens.at("centre").at(1))};
    camera.lens.k1 = number(lens.at("k1"));
    camera.lens.k2 = number(lens.at("k2"));
    camera.lens.k3 = number(lens.at("k3"));
    camera.lens.p1 = number(lens.at("p1"));
    camera.lens.p2 = number(lens.at("p2"));
    Eigen::Matrix3d turn;
    Eigen::Vector3d shift;
    for (int i = 0; i < 3; ++i) {
      for (int j = 0; j < 3; ++j) turn(i, j) = number(in.at("rotation").at(i).at(j));
      shift(i) = number(in.at("translation").at(i));
    }
    camera.camera_from_mat.linear() = turn;
    camera.camera_from_mat.translation() = shift;
    const bool rigid =
        (turn * turn.transpose() - Eigen::Matrix3d::Identity()).norm() < 1e-9 && turn.determinant() > 0.0;
    if (!rigid || camera.width <= 0 || camera.height <= 0 || !(camera.lens.focal > 0.0) ||
        !(camera.eye().z() > 0.0))
      throw Refusal(
          "This camera file contradicts itself, so it may have been edited. Locate the camera again.");
    return camera;
  } catch (const json::exception&) {
    throw Refusal("This camera file is damaged or not complete. Locate the camera again.");
  }
}

}  // namespace cowlcast::calibration
