#include "calibration/table_map/table_map.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <random>

#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

TableMap tilted() {
  TableMap map;
  map.width = 1920;
  map.height = 1080;
  map.lens = {.focal = 2300, .centre = {955, 1120}, .k1 = -0.03, .k2 = 0.01, .p1 = 0.0004, .p2 = -0.0002};
  // Looking down, the picture's foot towards the operator.
  map.projector_from_mat_frame.linear() =
      (Eigen::AngleAxisd(0.15, Eigen::Vector3d::UnitX()) * Eigen::AngleAxisd(M_PI, Eigen::Vector3d::UnitX()) *
       Eigen::AngleAxisd(0.1, Eigen::Vector3d::UnitZ()))
          .toRotationMatrix();
  map.projector_from_mat_frame.translation() = Eigen::Vector3d(10, 380, 1500);
  map.keystone = {0.08, -0.05, 0.03, 0.01};
  for (const Eigen::Vector2d& corner : {Eigen::Vector2d(-0.5, 1079.5), Eigen::Vector2d(1919.5, 1079.5),
                                        Eigen::Vector2d(1919.5, -0.5), Eigen::Vector2d(-0.5, -0.5)})
    map.lit_area.push_back(map.mat_from_projector(corner));
  map.error = {{-500, -300}, 500.0, 3, 2, {0.1, 0.2, 0.3, 0.3, 0.2, 0.1}, {}};
  map.scale = {"rulers", 0.998, 1.001, 0.0003};
  map.lamp_sigma = 0.02;
  map.made_at = "2001-02-03T04:05:06Z";
  return map;
}

TEST(TableMap, UndoesItselfAtEveryHeight) {
  const TableMap map = tilted();
  std::mt19937 random(3);
  std::uniform_real_distribution<double> u(0, 1919), v(0, 1079), cloth(0, 8);
  for (int i = 0; i < 1000; ++i) {
    const Eigen::Vector2d pixel(u(random), v(random));
    const double h = cloth(random);
    const Eigen::Vector2d mat = map.mat_from_projector(pixel, h);
    EXPECT_LT((map.mat_from_projector(map.projector_from_mat(mat, h), h) - mat).norm(), 1e-9);
  }
}

// A line on cloth shifts by height times the tangent of the ray's slope: similar triangles.
TEST(TableMap, ShiftsWithHeightAlongTheRay) {
  const TableMap map = tilted();
  const Eigen::Vector2d pixel(300, 200);
  const Eigen::Vector2d low = map.mat_from_projector(pixel, 0), high = map.mat_from_projector(pixel, 5);
  const Eigen::Vector3d lamp = map.lamp();
  const Eigen::Vector2d expected = 5.0 / lamp.z() * (lamp.head<2>() - low);
  EXPECT_LT((high - low - expected).norm(), 1e-9);
}

TEST(TableMap, StatesItsErrorBetweenNodesAndBeyond) {
  TableMap map = tilted();
  EXPECT_NEAR(map.error_at({-500, -300}), 0.1, 1e-12);
  EXPECT_NEAR(map.error_at({-250, -300}), 0.15, 1e-12);
  EXPECT_NEAR(map.error_at({-500, -50}), 0.2, 1e-12);
  EXPECT_NEAR(map.error_at({9000, -9000}), 0.3, 1e-12);
  EXPECT_GT(map.error_at({-500, -300}, 5.0), map.error_at({-500, -300}, 0.0));
}

// A mat that was pushed and turned under the light takes its errors with it.
TEST(TableMap, KeepsEachPlacesErrorWhenTheMatMoves) {
  ErrorGrid grid{{-400, -200}, 100.0, 9, 5, {}, {}};
  for (int r = 0; r < grid.rows; ++r)
    for (int c = 0; c < grid.columns; ++c) {
      grid.mm95.push_back(0.1 + 0.02 * c + 0.05 * r);  // straight, so that resampling keeps it
      grid.mm95_per_mm.push_back(0.05 + 0.01 * r);
    }
  const Eigen::Isometry2d motion = Eigen::Translation2d(30.0, -55.0) * Eigen::Rotation2Dd(0.12);
  const ErrorGrid moved = grid.moved_by(motion);
  for (const Eigen::Vector2d& place :
       {Eigen::Vector2d(0, 0), Eigen::Vector2d(-250, 90), Eigen::Vector2d(280, -110)}) {
    EXPECT_NEAR(moved.at(moved.mm95, motion * place), grid.at(grid.mm95, place), 1e-9);
    EXPECT_NEAR(moved.at(moved.mm95_per_mm, motion * place), grid.at(grid.mm95_per_mm, place), 1e-9);
  }
}

TEST(TableMap, SurvivesItsFile) {
  const TableMap map = tilted(), again = TableMap::from_json(map.to_json());
  for (const Eigen::Vector2d& pixel :
       {Eigen::Vector2d(0, 0), Eigen::Vector2d(1919, 1079), Eigen::Vector2d(700, 30)})
    EXPECT_LT((map.mat_from_projector(pixel, 2) - again.mat_from_projector(pixel, 2)).norm(), 1e-9);
  EXPECT_EQ(again.to_json(), map.to_json());
  EXPECT_EQ(again.made_at, map.made_at);
  EXPECT_EQ(again.scale.source, "rulers");
}

TEST(TableMap, ReadsFilesOfBeforeMendingWasCounted) {
  TableMap map = tilted();
  nlohmann::json old = nlohmann::json::parse(map.to_json());
  old.erase("revision");
  EXPECT_EQ(TableMap::from_json(old.dump()).revision, 0);
  old["scale"]["source"] = "page and tape";
  EXPECT_EQ(TableMap::from_json(old.dump()).revision, 1);
}

TEST(TableMap, RefusesDamagedFiles) {
  const std::string good = tilted().to_json();
  const auto reason = [](const std::string& text) -> std::string {
    try {
      TableMap::from_json(text);
    } catch (const Refusal& refusal) {
      return refusal.what();
    }
    return "";
  };
  EXPECT_NE(reason("").find("damaged"), std::string::npos);
  EXPECT_NE(reason("[1, 2]").find("not a table map"), std::string::npos);
  EXPECT_NE(reason(good.substr(0, good.size() / 2)).find("damaged"), std::string::npos);
  std::string newer = good;
  newer.replace(newer.find("\"schema\": 1"), 11, "\"schema\": 9");
  EXPECT_NE(reason(newer).find("newer"), std::string::npos);
  const nlohmann::json whole = nlohmann::json::parse(good);
  const auto edited = [&](const char* at, const nlohmann::json& value) {
    nlohmann::json bad = whole;
    bad[nlohmann::json::json_pointer(at)] = value;
    return reason(bad.dump());
  };
  EXPECT_EQ(edited("/schema", 1), "");
  const nlohmann::json negative = -0.1;
  for (const auto& [at, value] :
       std::vector<std::pair<const char*, nlohmann::json>>{{"/schema", -4},
                                                           {"/schema", 0},
                                                           {"/units", "in"},
                                                           {"/projector/translation/2", 15000.0},
                                                           {"/projector/translation/0", 10.5},
                                                           {"/projector/width", 1280},
                                                           {"/projector/height", 1200},
                                                           {"/projector/width", 2000000},
                                                           {"/projector/lens/k1", -0.02},
                                                           {"/projector/lamp_sigma", negative},
                                                           {"/projector/keystone/across", 0.081},
                                                           {"/scale/relative_sigma", negative},
                                                           {"/scale/across", 25.4},
                                                           {"/error/mm95/3", negative},
                                                           {"/error/mm95/3", 1e9},
                                                           {"/error/step", 1e12},
                                                           {"/error/rows", -2},
                                                           {"/lit_area", nlohmann::json::array()},
                                                           {"/lit_area/1/0", 400.0},
                                                           {"/revision", -1}})
    EXPECT_NE(edited(at, value).find("changed or damaged"), std::string::npos) << at << ' ' << value;
  std::string bent = good;
  bent.replace(bent.find("\"focal\": 2300.0"), 15, "\"focal\": -230.0");
  EXPECT_NE(reason(bent).find("contradicts"), std::string::npos);
}

}  // namespace
}  // namespace cowlcast::calibration
