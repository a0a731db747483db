#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "drafting/piece/marks.h"
#include "drafting/piece/piece.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

using Json = nlohmann::ordered_json;

constexpr int schema = 1;
constexpr double degrees = 180.0 / std::numbers::pi;

Json to_json(const Point& point) {
  return Json::array({point.x(), point.y()});
}

Json to_json(const Polyline& line) {
  Json result = Json::array();
  for (const Point& point : line) result.push_back(to_json(point));
  return result;
}

Json to_json(const Segment& segment) {
  return Json::array({to_json(segment.from), to_json(segment.to)});
}

Json to_json(const CowlRecord& cowl) {
  Json result;
  result["drape"] = cowl.drape;
  result["hinge_angles_deg"] = Json::array();
  for (const double angle : cowl.hinge_angles) result["hinge_angles_deg"].push_back(angle * degrees);
  result["swing_deg"] = cowl.swing * degrees;
  result["slash_lines"] = Json::array();
  for (const Segment& line : cowl.slash_lines) result["slash_lines"].push_back(to_json(line));
  result["slash_paths"] = Json::array();
  for (const Polyline& path : cowl.slash_paths) result["slash_paths"].push_back(to_json(path));
  result["parts"] = Json::array();
  for (const auto& part : cowl.parts) {
    result["parts"].push_back({{"before", to_json(part.before)}, {"after", to_json(part.after)}});
  }
  return result;
}

[[noreturn]] void refuse(const std::string& what) {
  throw Refusal("This is not a complete piece file: " + what + ". Draft the piece again.");
}

const Json& member(const Json& object, const char* key, const std::string& where) {
  if (!object.is_object()) refuse(where + " should be an object");
  const auto found = object.find(key);
  if (found == object.end()) refuse(where + " has no \"" + key + "\"");
  return *found;
}

double number_from(const Json& json, const std::string& where) {
  if (!json.is_number()) refuse(where + " should be a number");
  const double value = json.get<double>();
  if (!std::isfinite(value) || std::abs(value) > 1e5) refuse(where + " is out of all measure");
  return value;
}

std::string text_from(const Json& json, const std::string& where) {
  if (!json.is_string()) refuse(where + " should be text");
  return json.get<std::string>();
}

Point point_from(const Json& json, const std::string& where) {
  if (!json.is_array() || json.size() != 2) refuse(where + " should be a point [x, y]");
  return {number_from(json[0], where), number_from(json[1], where)};
}

const Json& list_from(const Json& json, const std::string& where) {
  if (!json.is_array()) refuse(where + " should be a list");
  return json;
}

Polyline line_from(const Json& json, const std::string& where, size_t fewest) {
  Polyline line;
  for (const Json& item : list_from(json, where)) line.push_back(point_from(item, where));
  if (line.size() < fewest) refuse(where + " has too few points");
  return line;
}

Segment segment_from(const Json& json, const std::string& where) {
  const Polyline ends = line_from(json, where, 2);
  if (ends.size() != 2) refuse(where + " should be two points");
  return {ends[0], ends[1]};
}

int ticks_from(const Json& notch) {
  const double ticks = notch.contains("ticks") ? number_from(notch["ticks"], "ticks") : 1.0;
  if (ticks != 1.0 && ticks != 2.0) refuse("a notch's ticks should be 1 or 2");
  return static_cast<int>(ticks);
}

NotchForm form_from(const Json& notch) {
  if (!notch.contains("form")) return NotchForm::mark;
  for (const NotchForm form : {NotchForm::mark, NotchForm::slit, NotchForm::vee})
    if (notch["form"] == notch_form_name(form)) return form;
  refuse("a notch's form should be mark, slit or vee");
}

std::optional<Segment> optional_segment(const Json& object, const char* key) {
  const auto found = object.find(key);
  if (found == object.end() || found->is_null()) return std::nullopt;
  return segment_from(*found, key);
}

CowlRecord cowl_from(const Json& json) {
  CowlRecord cowl;
  cowl.drape = number_from(member(json, "drape", "cowl"), "cowl drape");
  for (const Json& angle : list_from(member(json, "hinge_angles_deg", "cowl"), "hinge_angles_deg")) {
    cowl.hinge_angles.push_back(number_from(angle, "hinge_angles_deg") / degrees);
  }
  cowl.swing = number_from(member(json, "swing_deg", "cowl"), "swing_deg") / degrees;
  for (const Json& line : list_from(member(json, "slash_lines", "cowl"), "slash_lines")) {
    cowl.slash_lines.push_back(segment_from(line, "slash_lines"));
  }
  if (json.contains("slash_paths")) {
    for (const Json& path : list_from(json["slash_paths"], "slash_paths"))
      cowl.slash_paths.push_back(line_from(path, "slash_paths", 2));
  }
  for (const Json& part : list_from(member(json, "parts", "cowl"), "parts")) {
    cowl.parts.push_back({line_from(member(part, "before", "parts"), "before", 3),
                          line_from(member(part, "after", "parts"), "after", 3)});
    if (cowl.parts.back().before.size() != cowl.parts.back().after.size()) {
      refuse("a part has other points before than after");
    }
  }
  return cowl;
}

}  // namespace

std::string piece_to_json(const Piece& piece) {
  Json json;
  json["format"] = "cowlcast piece";
  json["schema"] = schema;
  json["units"] = "mm";
  json["name"] = piece.name;
  json["seam_line"] = to_json(piece.seam_line);
  json["cut_line"] = to_json(piece.cut_line);
  json["edges"] = Json::array();
  for (const Edge& edge : piece.edges) {
    json["edges"].push_back({{"role", edge.role}, {"points", to_json(edge.points)}});
  }
  json["points"] = Json::object();
  for (const auto& [name, point] : piece.points) json["points"][name] = to_json(point);
  json["notches"] = Json::array();
  for (const Notch& notch : piece.notches) {
    json["notches"].push_back({{"name", notch.name},
                               {"seam", to_json(notch.seam)},
                               {"cut", to_json(notch.cut)},
                               {"ticks", notch.ticks},
                               {"form", notch_form_name(notch.form)}});
  }
  json["grain"] = piece.grain ? to_json(*piece.grain) : Json();
  json["fold"] = piece.fold ? to_json(*piece.fold) : Json();
  json["mirror"] = piece.mirror ? to_json(*piece.mirror) : Json();
  if (piece.cowl) json["cowl"] = to_json(*piece.cowl);
  return json.dump() + "\n";
}

Piece piece_from_json(const std::string& text) {
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded()) refuse("it is not JSON, or it was cut short");
  if (!json.is_object() || json.value("format", Json()) != "cowlcast piece") {
    refuse("it does not say that it is a cowlcast piece");
  }
  if (json.value("schema", Json()) != schema) {
    throw Refusal("This piece file was written by another version of the program. Draft the piece again.");
  }
  if (json.value("units", Json()) != "mm") refuse("its units are not mm");
  Piece piece;
  piece.name = text_from(member(json, "name", "the file"), "name");
  piece.seam_line = line_from(member(json, "seam_line", "the file"), "seam_line", 3);
  piece.cut_line = line_from(member(json, "cut_line", "the file"), "cut_line", 3);
  for (const Json& edge : list_from(member(json, "edges", "the file"), "edges")) {
    piece.edges.push_back({text_from(member(edge, "role", "an edge"), "role"),
                           line_from(member(edge, "points", "an edge"), "points", 2)});
  }
  const Json& points = member(json, "points", "the file");
  if (!points.is_object()) refuse("points should be an object");
  for (const auto& [name, point] : points.items()) piece.points[name] = point_from(point, name);
  for (const Json& notch : list_from(member(json, "notches", "the file"), "notches")) {
    piece.notches.push_back({text_from(member(notch, "name", "a notch"), "name"),
                             point_from(member(notch, "seam", "a notch"), "seam"),
                             point_from(member(notch, "cut", "a notch"), "cut"), ticks_from(notch),
                             form_from(notch)});
  }
  piece.grain = optional_segment(json, "grain");
  piece.fold = optional_segment(json, "fold");
  piece.mirror = optional_segment(json, "mirror");
  const auto cowl = json.find("cowl");
  if (cowl != json.end() && !cowl->is_null()) piece.cowl = cowl_from(*cowl);
  return piece;
}

}  // namespace cowlcast::drafting
