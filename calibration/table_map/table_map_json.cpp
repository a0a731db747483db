#include <nlohmann/json.hpp>

#include "calibration/lens/lens_json.h"
#include "calibration/refusal.h"
#include "calibration/table_map/sound.h"
#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {
namespace {

using nlohmann::json;

constexpr const char* kFormat = "cowlcast table map";
constexpr int kSchema = 1;
const std::string kUnits = "mm";

}  // namespace

std::string TableMap::to_json() const {
  json outline = json::array();
  for (const Eigen::Vector2d& p : lit_area) outline.push_back(json_of(p));
  json projector = PlacedLens{lens, projector_from_mat_frame}.to_json();
  projector["width"] = width;
  projector["height"] = height;
  projector["lamp_sigma"] = lamp_sigma;
  if (!keystone.none())
    projector["keystone"] = {{"across", keystone.across},
                             {"down", keystone.down},
                             {"aspect", keystone.aspect},
                             {"skew", keystone.skew}};
  json out = {{"format", kFormat},
              {"schema", kSchema},
              {"units", kUnits},
              {"made_at", made_at},
              {"revision", revision},
              {"projector", projector},
              {"lit_area", outline},
              {"scale",
               {{"source", scale.source},
                {"across", scale.across},
                {"down", scale.down},
                {"relative_sigma", scale.relative_sigma}}},
              {"error",
               {{"first", json_of(error.first)},
                {"step", error.step},
                {"columns", error.columns},
                {"rows", error.rows},
                {"mm95", error.mm95}}}};
  if (!error.mm95_per_mm.empty()) out["error"]["mm95_per_mm_of_cloth"] = error.mm95_per_mm;
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
    if (in.at("schema").get<int>() != kSchema || in.value("units", kUnits) != kUnits)
      throw Refusal(
          "The table file was changed or damaged: its schema or its units are not those of a table map. "
          "Calibrate anew, or use a copy of the file from before.");
    TableMap map;
    const json& projector = in.at("projector");
    map.width = projector.at("width").get<int>();
    map.height = projector.at("height").get<int>();
    const PlacedLens placed = PlacedLens::from_json(projector);
    map.lens = placed.lens;
    map.projector_from_mat_frame = placed.lens_from_mat;
    if (projector.contains("keystone")) {
      const json& square = projector.at("keystone");
      map.keystone = {square.at("across").get<double>(), square.at("down").get<double>(),
                      square.at("aspect").get<double>(), square.at("skew").get<double>()};
    }
    map.lamp_sigma = projector.at("lamp_sigma").get<double>();
    for (const json& p : in.at("lit_area")) map.lit_area.push_back(point_of(p));
    const json& scale = in.at("scale");
    map.scale.source = scale.at("source").get<std::string>();
    map.scale.across = scale.at("across").get<double>();
    map.scale.down = scale.at("down").get<double>();
    map.scale.relative_sigma = scale.at("relative_sigma").get<double>();
    const json& error = in.at("error");
    map.error.first = point_of(error.at("first"));
    map.error.step = error.at("step").get<double>();
    map.error.columns = error.at("columns").get<int>();
    map.error.rows = error.at("rows").get<int>();
    for (const json& e : error.at("mm95")) map.error.mm95.push_back(e.get<double>());
    if (error.contains("mm95_per_mm_of_cloth"))
      for (const json& e : error.at("mm95_per_mm_of_cloth")) map.error.mm95_per_mm.push_back(e.get<double>());
    map.made_at = in.at("made_at").get<std::string>();
    // Maps that a tape had mended did not count it before.
    const bool taped = map.scale.source.find("tape") != std::string::npos;
    map.revision = in.value("revision", taped ? 1 : 0);
    if (!placed.sound())
      throw Refusal("This table map contradicts itself, so it may have been edited. Calibrate again.");
    refuse_unsound(map);
    return map;
  } catch (const json::exception&) {
    throw Refusal("This table map is damaged or not complete. Calibrate again, or use a copy.");
  }
}

}  // namespace cowlcast::calibration
