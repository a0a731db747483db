#include "calibration/lens/lens_json.h"

namespace cowlcast::calibration {

using nlohmann::json;

json json_of(const Eigen::Vector2d& point) {
  return json::array({point.x(), point.y()});
}

Eigen::Vector2d point_of(const json& value) {
  return {value.at(0).get<double>(), value.at(1).get<double>()};
}

json PlacedLens::to_json() const {
  json rotation = json::array();
  const Eigen::Matrix3d turn = lens_from_mat.rotation();
  for (int i = 0; i < 3; ++i) rotation.push_back({turn(i, 0), turn(i, 1), turn(i, 2)});
  const Eigen::Vector3d shift = lens_from_mat.translation();
  return {{"lens",
           {{"focal", lens.focal},
            {"centre", json_of(lens.centre)},
            {"k1", lens.k1},
            {"k2", lens.k2},
            {"k3", lens.k3},
            {"p1", lens.p1},
            {"p2", lens.p2}}},
          {"rotation", rotation},
          {"translation", {shift.x(), shift.y(), shift.z()}}};
}

PlacedLens PlacedLens::from_json(const json& in) {
  PlacedLens out;
  const json& lens = in.at("lens");
  const auto term = [&](const char* name) { return lens.at(name).get<double>(); };
  out.lens.focal = term("focal");
  out.lens.centre = point_of(lens.at("centre"));
  out.lens.k1 = term("k1");
  out.lens.k2 = term("k2");
  out.lens.k3 = term("k3");
  out.lens.p1 = term("p1");
  out.lens.p2 = term("p2");
  for (int i = 0; i < 3; ++i) {
    for (int j = 0; j < 3; ++j)
      out.lens_from_mat.matrix()(i, j) = in.at("rotation").at(i).at(j).get<double>();
    out.lens_from_mat.translation()[i] = in.at("translation").at(i).get<double>();
  }
  return out;
}

bool PlacedLens::sound() const {
  const Eigen::Matrix3d turn = lens_from_mat.linear();
  return (turn * turn.transpose() - Eigen::Matrix3d::Identity()).norm() < 1e-9 && turn.determinant() > 0.0 &&
         lens.focal > 0.0;
}

}  // namespace cowlcast::calibration
