#include "projector/project/project_file.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>
#include <nlohmann/json.hpp>

#include "../test_map.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

using nlohmann::json;

Project full_project() {
  Project project;
  project.name = "Blue top — für Ada";
  project.pattern.source = PatternSource::drawing;
  project.pattern.size = "12";
  project.pattern.body.bust_girth = 931.0 / 7.0;
  project.pattern.front = {"front.svg", "<svg id=\"ä\"/>", {{"path7", "hem"}, {"path9", "neckline"}}};
  project.cowl.drape = 1000.0 / 3.0;
  project.cowl.slash_count = 4;
  project.cowl.slash_form = drafting::SlashForm::straight;
  project.cowl.allowances["hem"] = 31.5;
  project.cowl.corners.list.push_back({"shoulder", "armhole", drafting::CornerForm::squared});
  project.cowl.notch_form = drafting::NotchForm::vee;
  project.cowl.on_fold = false;
  project.cowl.slashes = {{70.0, "armhole", 0.3, {{0, 400}, {100, 450.25}}}};
  project.cowl.proportions = {3, 2, 1};
  project.cowl.set_openings = {0.1, 0.2, 0.3};
  project.top.camisole_depth = 141.0;
  project.cloth = {1400.0, ClothKind::woven, 1.1, {0xff102030, 0xffffffff}};
  project.table = {1920, 1080, 239.4, 179.7, 1450.0, {"1.jpg", "2.jpg"}, testing::map_of({}), true};
  project.table.checks = {
      {"2000-01-01T08:00:00Z", {.reading = {'B', 'D', 1203.5, 0.4}, .drawn = 1203.1, .allowed = 1.2}}};
  project.table.camera = "/dev/video2";
  project.table.fixed_camera.emplace();
  project.table.fixed_camera->width = 1280;
  project.table.fixed_camera->height = 720;
  project.table.fixed_camera->lens.focal = 950.0;
  project.table.fixed_camera->lens.centre = {639.5, 359.5};
  project.table.fixed_camera->camera_from_mat.linear() = Eigen::Vector3d(1, -1, -1).asDiagonal();
  project.table.fixed_camera->camera_from_mat.translation() = Eigen::Vector3d(0, 0, 1500);
  project.table.fixed_camera->tags = {{3, {-500.0, 250.0}}};
  project.cutting["cowl front"] = {.piece = "cowl front",
                                   .table_made_at = "2000-01-01T00:00:00Z",
                                   .laying = {1, 2, 0.5, true, 1.6},
                                   .strokes = 5,
                                   .cut = 2,
                                   .seconds = 61.0,
                                   .cautions_read_at = {},
                                   .waivers = {},
                                   .shape = "0123456789abcdef"};
  return project;
}

std::string reason_of(const std::string& text) {
  try {
    project_from_json(text);
  } catch (const drafting::Refusal& reason) {
    return reason.what();
  }
  return "";
}

TEST(ProjectFile, EverythingComesBackFromItsText) {
  const Project project = full_project();
  const std::string text = project_to_json(project);
  const Project back = project_from_json(text);
  EXPECT_EQ(project_to_json(back), text);
  EXPECT_EQ(back.name, project.name);
  EXPECT_EQ(back.cowl.drape, project.cowl.drape);
  EXPECT_EQ(back.cowl.slashes.front().line, project.cowl.slashes.front().line);
  EXPECT_EQ(back.cloth.colours, project.cloth.colours);
  EXPECT_EQ(back.cloth.kind, ClothKind::woven);
  EXPECT_EQ(back.pattern.front.roles, project.pattern.front.roles);
  EXPECT_EQ(back.cutting.at("cowl front").cut, 2);
  ASSERT_TRUE(back.table.map);
  ASSERT_EQ(back.table.checks.size(), 1u);
  EXPECT_EQ(back.table.checks.front().at, "2000-01-01T08:00:00Z");
  EXPECT_EQ(back.table.checks.front().checked.reading.to, 'D');
  EXPECT_EQ(back.table.checks.front().checked.allowed, 1.2);
  EXPECT_EQ(back.table.camera, "/dev/video2");
  ASSERT_TRUE(back.table.fixed_camera);
  EXPECT_EQ(back.table.fixed_camera->lens.focal, 950.0);
  EXPECT_EQ(back.table.fixed_camera->tags.front().number, 3);
  EXPECT_EQ(back.table.map->mat_from_projector({100, 200}),
            project.table.map->mat_from_projector({100, 200}));
  // And no part of the text is the default one's, so a member left out would have shown.
  const json full = json::parse(text), empty = json::parse(project_to_json({}));
  for (const char* part : {"name", "pattern", "cowl", "top", "cloth", "table", "cutting"})
    EXPECT_NE(full.at(part), empty.at(part)) << part;
}

TEST(ProjectFile, WhatAnOldProjectDidNotKnowKeepsItsDefault) {
  const Project project =
      project_from_json(R"({"format": "cowlcast project", "schema": 1, "cowl": {"drape": 512}})");
  EXPECT_EQ(project.cowl.drape, 512);
  EXPECT_EQ(project.cowl.facing_depth, Project().cowl.facing_depth);
  EXPECT_EQ(project.cloth.width, Project().cloth.width);
}

TEST(ProjectFile, EveryCutOffTextIsRefusedInWords) {
  const std::string text = project_to_json(full_project());
  for (size_t length = 0; length + 2 < text.size(); length += 97)
    EXPECT_NE(reason_of(text.substr(0, length)).find(". "), std::string::npos) << length;
}

TEST(ProjectFile, NonsenseIsRefusedNotTaken) {
  const json good = json::parse(project_to_json(full_project()));
  const auto refused = [&](const char* part, const char* member, const json& value) {
    json bad = good;
    bad[part][member] = value;
    EXPECT_FALSE(reason_of(bad.dump()).empty()) << part << ' ' << member;
  };
  refused("cloth", "colours", json::array({"blue"}));
  refused("cloth", "colours", json::array());
  refused("cloth", "width", -3);
  refused("cloth", "kind", "felt");
  refused("cowl", "drape", "long");
  refused("cowl", "slash_form", "wavy");
  refused("pattern", "source", 7);
  refused("table", "map", json::object());
  EXPECT_NE(reason_of(R"({"format": "cowlcast piece", "schema": 1})").find("not a Cowlcast project"),
            std::string::npos);
}

TEST(ProjectFile, ANewerOneIsRefusedWithTheCure) {
  json newer = json::parse(project_to_json({}));
  newer["schema"] = kProjectSchema + 1;
  EXPECT_NE(reason_of(newer.dump()).find("Update the program"), std::string::npos);
  newer["schema"] = 0;
  EXPECT_FALSE(reason_of(newer.dump()).empty());
}

TEST(ProjectFile, OlderSchemasAreBroughtUpStepByStep) {
  const std::vector<Migration> steps{
      [](json& p) { p["cowl"]["drape"] = 10.0 * p["cowl"]["drape_cm"].get<double>(); },
      [](json& p) { p["cowl"].erase("drape_cm"); }};
  json first{{"schema", 1}, {"cowl", {{"drape_cm", 48}}}};
  bring_up_to_date(first, steps);
  EXPECT_EQ(first, (json{{"schema", 3}, {"cowl", {{"drape", 480.0}}}}));
  json second{{"schema", 2}, {"cowl", {{"drape", 480.0}, {"drape_cm", 1}}}};
  bring_up_to_date(second, steps);
  EXPECT_EQ(second, first);
}

TEST(ProjectFile, TheThumbnailIsKept) {
  const QByteArray picture("\x89PNG\x00\xff", 6);
  EXPECT_EQ(thumbnail_from_json(project_to_json({}, picture)), picture);
  EXPECT_TRUE(thumbnail_from_json(project_to_json({})).isEmpty());
  EXPECT_TRUE(thumbnail_from_json("{").isEmpty());
}

TEST(ProjectFile, IsSavedWholeOrNotAtAll) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("top.cowlcast"));
  write_project(path, full_project());
  const std::string before = read_whole(path);
  EXPECT_EQ(read_project(path).name, full_project().name);
  // A folder in the way of the new file: nothing is written, the old one stays.
  const QString blocked = folder.filePath(QStringLiteral("no/such/folder/top.cowlcast"));
  EXPECT_THROW(write_project(blocked, {}), drafting::Refusal);
  EXPECT_EQ(read_whole(path), before);
  EXPECT_THROW(read_project(folder.filePath(QStringLiteral("none.cowlcast"))), drafting::Refusal);
}

}  // namespace
}  // namespace cowlcast::projector
