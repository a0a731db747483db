// Each part of a project to JSON and back.
#include "projector/project/project_json.h"

#include <cmath>
#include <cstdio>
#include <limits>

#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

using drafting::BodyMeasures;
using drafting::CowlWishes;
using nlohmann::json;

constexpr std::pair<const char*, PatternSource> kSources[] = {{"none", PatternSource::none},
                                                              {"size", PatternSource::size},
                                                              {"body", PatternSource::body},
                                                              {"drawing", PatternSource::drawing}};
constexpr std::pair<const char*, ClothKind> kKinds[] = {{"knit", ClothKind::knit},
                                                        {"woven", ClothKind::woven}};
constexpr std::pair<const char*, drafting::SlashForm> kSlashForms[] = {
    {"straight", drafting::SlashForm::straight}, {"squared", drafting::SlashForm::squared}};
constexpr std::pair<const char*, drafting::NotchForm> kNotchForms[] = {{"mark", drafting::NotchForm::mark},
                                                                       {"slit", drafting::NotchForm::slit},
                                                                       {"vee", drafting::NotchForm::vee}};
constexpr std::pair<const char*, drafting::CornerForm> kCornerForms[] = {
    {"mitred", drafting::CornerForm::mitred},
    {"squared", drafting::CornerForm::squared},
    {"mirrored", drafting::CornerForm::mirrored}};

constexpr std::pair<const char*, double BodyMeasures::*> kMeasures[] = {
    {"bust", &BodyMeasures::bust_girth},
    {"waist", &BodyMeasures::waist_girth},
    {"hip", &BodyMeasures::hip_girth},
    {"neck", &BodyMeasures::neck_girth},
    {"shoulder", &BodyMeasures::shoulder_length},
    {"back_waist", &BodyMeasures::back_waist_length},
    {"waist_to_hem", &BodyMeasures::waist_to_hem},
    {"ease", &BodyMeasures::ease}};

constexpr std::pair<const char*, double CowlWishes::*> kCowlNumbers[] = {
    {"drape", &CowlWishes::drape},
    {"neckline_drop", &CowlWishes::neckline_drop},
    {"facing_depth", &CowlWishes::facing_depth},
    {"max_swing", &CowlWishes::max_swing},
    {"cloth_width", &CowlWishes::cloth_width},
    {"pivot_height", &CowlWishes::pivot_height},
    {"allowed_crossing", &CowlWishes::allowed_crossing},
    {"tacked_length", &CowlWishes::tacked_length},
    {"trial_hang", &CowlWishes::trial_hang}};
constexpr std::pair<const char*, bool CowlWishes::*> kCowlChoices[] = {
    {"on_fold", &CowlWishes::on_fold},
    {"separate_facing", &CowlWishes::separate_facing},
    {"on_bias", &CowlWishes::on_bias}};

template <typename Table, typename Value>
const char* word_for(const Table& table, Value value) {
  for (const auto& [word, meant] : table)
    if (meant == value) return word;
  return table[0].first;
}

template <typename Table, typename Value>
void take_word(const json& in, const char* key, const Table& table, Value& out) {
  if (!in.contains(key)) return;
  const std::string found = in.at(key).get<std::string>();
  for (const auto& [word, meant] : table)
    if (found == word) {
      out = meant;
      return;
    }
  throw drafting::Refusal("The project says \"" + found + "\" for its " + key +
                          ", which this program does not know. Open a copy of the file from before.");
}

/// Leaves `out` as it is where the member is missing: a new choice keeps its default in an old project.
template <typename Value>
void take(const json& in, const char* key, Value& out) {
  if (in.contains(key)) out = in.at(key).get<Value>();
}

json drawing_to(const PatternDrawing& drawing) {
  return {{"name", drawing.name}, {"svg", drawing.svg}, {"roles", drawing.roles}};
}

void drawing_from(const json& in, const char* key, PatternDrawing& drawing) {
  if (!in.contains(key)) return;
  take(in.at(key), "name", drawing.name);
  take(in.at(key), "svg", drawing.svg);
  take(in.at(key), "roles", drawing.roles);
}

json slashes_to(const std::vector<drafting::SlashWish>& slashes) {
  json out = json::array();
  for (const drafting::SlashWish& slash : slashes) {
    json line = json::array();
    for (const drafting::Point& p : slash.line) line.push_back({p.x(), p.y()});
    out.push_back({{"below_neckline", slash.below_neckline},
                   {"seam", slash.seam},
                   {"share", slash.share},
                   {"line", line}});
  }
  return out;
}

void slashes_from(const json& in, std::vector<drafting::SlashWish>& slashes) {
  if (!in.contains("slashes")) return;
  slashes.clear();
  for (const json& item : in.at("slashes")) {
    drafting::SlashWish slash;
    take(item, "below_neckline", slash.below_neckline);
    take(item, "seam", slash.seam);
    take(item, "share", slash.share);
    if (item.contains("line"))
      for (const json& p : item.at("line"))
        slash.line.emplace_back(p.at(0).get<double>(), p.at(1).get<double>());
    slashes.push_back(slash);
  }
}

json corners_to(const drafting::Corners& corners) {
  json list = json::array();
  for (const drafting::Corner& corner : corners.list)
    list.push_back({{"pressed", corner.pressed},
                    {"beside", corner.beside},
                    {"form", word_for(kCornerForms, corner.form)}});
  return {{"others", word_for(kCornerForms, corners.others)}, {"list", list}};
}

void corners_from(const json& in, drafting::Corners& corners) {
  if (!in.contains("corners")) return;
  const json& found = in.at("corners");
  take_word(found, "others", kCornerForms, corners.others);
  if (!found.contains("list")) return;
  corners.list.clear();
  for (const json& item : found.at("list")) {
    drafting::Corner corner;
    take(item, "pressed", corner.pressed);
    take(item, "beside", corner.beside);
    take_word(item, "form", kCornerForms, corner.form);
    corners.list.push_back(corner);
  }
}

json colours_to(const std::vector<unsigned>& colours) {
  json out = json::array();
  for (const unsigned colour : colours) {
    char text[16];
    std::snprintf(text, sizeof text, "#%06x", colour & 0xffffffu);
    out.push_back(text);
  }
  return out;
}

void colours_from(const json& in, std::vector<unsigned>& colours) {
  if (!in.contains("colours")) return;
  colours.clear();
  for (const json& item : in.at("colours")) {
    const std::string text = item.get<std::string>();
    unsigned colour = 0;
    int read = 0;
    if (text.size() != 7 || std::sscanf(text.c_str(), "#%6x%n", &colour, &read) != 1 || read != 7)
      throw drafting::Refusal("The project's cloth has a colour \"" + text +
                              "\" that is none. Open a copy of the file from before.");
    colours.push_back(0xff000000u | colour);
  }
}

}  // namespace

json pattern_to(const PatternChoice& pattern) {
  json body;
  for (const auto& [word, member] : kMeasures) body[word] = pattern.body.*member;
  return {{"source", word_for(kSources, pattern.source)},
          {"size", pattern.size},
          {"body", body},
          {"body_is_own", pattern.body_is_own},
          {"front", drawing_to(pattern.front)},
          {"back", drawing_to(pattern.back)}};
}

PatternChoice pattern_from(const json& in) {
  PatternChoice pattern;
  take_word(in, "source", kSources, pattern.source);
  take(in, "size", pattern.size);
  if (in.contains("body"))
    for (const auto& [word, member] : kMeasures) take(in.at("body"), word, pattern.body.*member);
  take(in, "body_is_own", pattern.body_is_own);
  drawing_from(in, "front", pattern.front);
  drawing_from(in, "back", pattern.back);
  return pattern;
}

json cowl_to(const CowlWishes& cowl) {
  json out;
  for (const auto& [word, member] : kCowlNumbers) out[word] = cowl.*member;
  for (const auto& [word, member] : kCowlChoices) out[word] = cowl.*member;
  out["slash_count"] = cowl.slash_count;
  out["slash_form"] = word_for(kSlashForms, cowl.slash_form);
  out["allowances"] = cowl.allowances;
  out["corners"] = corners_to(cowl.corners);
  out["notch_form"] = word_for(kNotchForms, cowl.notch_form);
  out["slashes"] = slashes_to(cowl.slashes);
  out["proportions"] = cowl.proportions;
  out["set_openings"] = cowl.set_openings;
  return out;
}

CowlWishes cowl_from(const json& in) {
  CowlWishes cowl;
  for (const auto& [word, member] : kCowlNumbers) take(in, word, cowl.*member);
  for (const auto& [word, member] : kCowlChoices) take(in, word, cowl.*member);
  take(in, "slash_count", cowl.slash_count);
  take_word(in, "slash_form", kSlashForms, cowl.slash_form);
  take(in, "allowances", cowl.allowances);
  corners_from(in, cowl.corners);
  take_word(in, "notch_form", kNotchForms, cowl.notch_form);
  slashes_from(in, cowl.slashes);
  take(in, "proportions", cowl.proportions);
  take(in, "set_openings", cowl.set_openings);
  return cowl;
}

json top_to(const TopChoice& top) {
  return {{"back", top.back}, {"camisole", top.camisole}, {"camisole_depth", top.camisole_depth}};
}

TopChoice top_from(const json& in) {
  TopChoice top;
  take(in, "back", top.back);
  take(in, "camisole", top.camisole);
  take(in, "camisole_depth", top.camisole_depth);
  return top;
}

json cloth_to(const ClothChoice& cloth) {
  return {{"width", cloth.width},
          {"kind", word_for(kKinds, cloth.kind)},
          {"thickness", cloth.thickness},
          {"colours", colours_to(cloth.colours)}};
}

ClothChoice cloth_from(const json& in) {
  ClothChoice cloth;
  take(in, "width", cloth.width);
  take_word(in, "kind", kKinds, cloth.kind);
  take(in, "thickness", cloth.thickness);
  colours_from(in, cloth.colours);
  if (!(cloth.width > 0.0) || !(cloth.thickness >= 0.0) || cloth.colours.empty())
    throw drafting::Refusal(
        "The project's cloth has no width, thickness or colour that could be. Open a copy of the file from "
        "before.");
  return cloth;
}

json checks_to(const std::vector<KeptCheck>& checks) {
  json out = json::array();
  for (const KeptCheck& kept : checks) out.push_back(json::parse(check_json(kept.checked, kept.at)));
  return out;
}

void checks_from(const json& in, std::vector<KeptCheck>& checks) {
  if (!in.contains("checks")) return;
  for (const json& item : in.at("checks")) {
    KeptCheck kept;
    take(item, "made_at", kept.at);
    kept.checked = calibration::check_from_json(item.dump());
    checks.push_back(kept);
  }
}

json table_to(const TableChoice& table) {
  return {{"width", table.width},
          {"height", table.height},
          {"ruler_across", table.ruler_across},
          {"ruler_down", table.ruler_down},
          {"lamp_height", table.lamp_height},
          {"photographs", table.photographs},
          {"map", table.map ? json::parse(table.map->to_json()) : json()},
          {"simulated", table.simulated},
          {"checks", checks_to(table.checks)},
          {"camera", table.camera},
          {"fixed_camera", table.fixed_camera ? json::parse(table.fixed_camera->to_json()) : json()}};
}

TableChoice table_from(const json& in) {
  TableChoice table;
  take(in, "width", table.width);
  take(in, "height", table.height);
  take(in, "ruler_across", table.ruler_across);
  take(in, "ruler_down", table.ruler_down);
  take(in, "lamp_height", table.lamp_height);
  take(in, "photographs", table.photographs);
  if (in.contains("map") && !in.at("map").is_null())
    table.map = calibration::TableMap::from_json(in.at("map").dump());
  take(in, "simulated", table.simulated);
  checks_from(in, table.checks);
  take(in, "camera", table.camera);
  if (in.contains("fixed_camera") && !in.at("fixed_camera").is_null())
    table.fixed_camera = calibration::FixedCamera::from_json(in.at("fixed_camera").dump());
  return table;
}

}  // namespace cowlcast::projector
