#include <cmath>
#include <nlohmann/json.hpp>

#include "calibration/refusal.h"
#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {
namespace {

using nlohmann::json;

constexpr const char* kFormat = "cowlcast table map";
constexpr int kSchema = 1;

json pair(const Eigen::Vector2d& p) {
  return json::array({p.x(), p.y()});
}

double number(const json& value) {
  const double x = value.get<double>();
  if (!std::isfinite(x)) throw Refusal("The table map holds a number that is not finite. Calibrate again.");
  return x;
}

Eigen::Vector2d point(const json& value) {
  return {number(value.at(0)), number(value.at(1))};
}

}  // namespace

std::string TableMap::to_json() const {
  json rotation = json::array(), outline = json::array();
  const Eigen::Matrix3d turn = projector_from_mat_frame.rotation();
  for (int i = 0; i < 3; ++i) rotation.push_back({turn(i, 0), turn(i, 1), turn(i, 2)});
  for (const Eigen::Vector2d& p : lit_area) outline.push_back(pair(p));
  const Eigen::Vector3d shift = projector_from_mat_frame.translation();
  json out = {{"format", kFormat},
              {"schema", kSchema},
              {"units", "mm"},
              {"made_at", made_at},
              {"projector",
               {{"width", width},
                {"height", height},
                {"lens",
                 {{"focal", lens.focal},
                  {"centre", pair(lens.centre)},
                  {"k1", lens.k1},
                  {"k2", lens.k2},
                  {"k3", lens.k3},
                  {"p1", lens.p1},
                  {"p2", lens.p2}}},
                {"rotation", rotation},
                {"translation", {shift.x(), shift.y(), shift.z()}},
                {"lamp_sigma", lamp_sigma}}},
              {"lit_area", outline},
              {"scale",
               {{"source", scale.source},
                {"across", scale.across},
                {"down", scale.down},
                {"relative_sigma", scale.relative_sigma}}},
              {"error",
               {{"first", pair(error.first)},
                {"step", error.step},
                {"columns", error.columns},
                {"rows", error.rows},
                {"mm95", error.mm95}}}};
  if (!error.mm95_per_mm.empty()) out["error"]["mm95_per_mm_of_cloth"] = error.mm95_per_mm;
  if (!keystone.none())
    out["projector"]["keystone"] = {{"across", keystone.across},
                                    {"down", keystone.down},
                                    {"aspect", keystone.aspect},
                                    {"skew", keystone.skew}};
  return out.dump(1) + "\n";
}

TableMap TableMap::from_json(const std::string& text) {
  try {
    const json in = json::parse(text);
    if (!in.is_object() || in.value("format", "") != kFormat)
      throw Refusal("This file is not a table map. Choose the file that `cowlcast calibrate` wrote.");
    if (in.at("schema").get<int>() > kSchema)
      throw Refusal(
          "This table map was written by a newer Cowlcast. Update the program, or calibrate again.");
    TableMap map;
    const json& projector = in.at("projector");
    map.width = projector.at("width").get<int>();
    map.height = projector.at("height").get<int>();
    const json& lens = projector.at("lens");
    map.lens.focal = number(lens.at("focal"));
    map.lens.centre = point(lens.at("centre"));
    map.lens.k1 = number(lens.at("k1"));
    map.lens.k2 = number(lens.at("k2"));
    map.lens.k3 = number(lens.at("k3"));
    map.lens.p1 = number(lens.at("p1"));
    map.lens.p2 = number(lens.at("p2"));
    Eigen::Matrix3d turn;
    for (int i = 0; i < 3; ++i)
      for (int j = 0; j < 3; ++j) turn(i, j) = number(projector.at("rotation").at(i).at(j));
    const json& shift = projector.at("translation");
    map.projector_from_mat_frame.linear() = turn;
    map.projector_from_mat_frame.translation() =
        Eigen::Vector3d(number(shift.at(0)), number(shift.at(1)), number(shift.at(2)));
    if (projector.contains("keystone")) {
      const json& square = projector.at("keystone");
      map.keystone = {number(square.at("across")), number(square.at("down")), number(square.at("aspect")),
                      number(square.at("skew"))};
    }
    map.lamp_sigma = number(projector.at("lamp_sigma"));
    for (const json& p : in.at("lit_area")) map.lit_area.push_back(point(p));
    const json& scale = in.at("scale");
    map.scale.source = scale.at("source").get<std::string>();
    map.scale.across = number(scale.at("across"));
    map.scale.down = number(scale.at("down"));
    map.scale.relative_sigma = number(scale.at("relative_sigma"));
    const json& error = in.at("error");
    map.error.first = point(error.at("first"));
    map.error.step = number(error.at("step"));
    map.error.columns = error.at("columns").get<int>();
    map.error.rows = error.at("rows").get<int>();
    for (const json& e : error.at("mm95")) map.error.mm95.push_back(number(e));
    if (error.contains("mm95_per_mm_of_cloth"))
      for (const json& e : error.at("mm95_per_mm_of_cloth")) map.error.mm95_per_mm.push_back(number(e));
    map.made_at = in.at("made_at").get<std::string>();
    const bool rigid =
        (turn * turn.transpose() - Eigen::Matrix3d::Identity()).norm() < 1e-9 && turn.determinant() > 0.0;
    const bool sized =
        map.width > 0 && map.height > 0 && map.lens.focal > 0.0 && map.error.step > 0.0 &&
        map.error.columns > 0 && map.error.rows > 0 &&
        map.error.mm95.size() == static_cast<size_t>(map.error.columns) * map.error.rows &&
        (map.error.mm95_per_mm.empty() || map.error.mm95_per_mm.size() == map.error.mm95.size());
    if (!rigid || !sized)
      throw Refusal("This table map contradicts itself, so it may have been edited. Calibrate again.");
    return map;
  } catch (const json::exception&) {
    throw Refusal("This table map is damaged or not complete. Calibrate again, or use a copy.");
  }
}

}  // namespace cowlcast::calibration
