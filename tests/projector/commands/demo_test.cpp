// The whole thread on the simulated table: sheets, photographs, fit, draft, frame, lines on the cloth.
#include <gtest/gtest.h>

#include "calibration/table_map/table_map.h"
#include "tests/projector/commands/program.h"

namespace cowlcast::projector {
namespace {

TEST(Demo, DrawnLinesLieWithinHalfAMillimetreOfTrue) {
  const std::filesystem::path folder = std::filesystem::temp_directory_path() / "cowlcast-demo-test";
  std::filesystem::remove_all(folder);
  const testing::Ran ran = testing::run_cowlcast(folder, "demo --out d");
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_NE(ran.out.find("invented"), std::string::npos);
  const size_t at = ran.out.find("drawn lines lie within ");
  ASSERT_NE(at, std::string::npos) << ran.out;
  double most = 99.0, worst = 99.0;
  ASSERT_EQ(std::sscanf(ran.out.c_str() + at, "drawn lines lie within %lf mm (95 %%) and %lf mm (worst)",
                        &most, &worst),
            2);
  EXPECT_LE(most, worst);
  EXPECT_LE(worst, 0.5);
  EXPECT_GT(most, 0.0);
  // What it says to do by hand gives the same table.
  const size_t by_hand = ran.out.find("cowlcast calibrate ");
  ASSERT_NE(by_hand, std::string::npos);
  std::string command = ran.out.substr(by_hand + 9, ran.out.find('\n', by_hand) - by_hand - 9);
  const std::string table = "d/table.json", again = "d/again.json";
  const size_t place = command.rfind(table);
  ASSERT_NE(place, std::string::npos) << command;
  command.replace(place, table.size(), again);
  const testing::Ran repeated = testing::run_cowlcast(folder, command);
  ASSERT_EQ(repeated.code, 0) << command << '\n' << repeated.err;
  const auto map = calibration::TableMap::from_json(testing::text_of(folder / table)),
             map_again = calibration::TableMap::from_json(testing::text_of(folder / again));
  for (const Eigen::Vector2d& pixel :
       {Eigen::Vector2d(0, 0), {1900, 20}, {960, 540}, {10, 1070}, {1910, 1075}})
    EXPECT_LT((map.mat_from_projector(pixel) - map_again.mat_from_projector(pixel)).norm(), 1e-4);
  for (const char* name : {"sheets/sheets.pdf", "photos/photo-1.jpg", "table.json", "front.json", "base.json",
                           "front.svg", "frame.png", "table-with-lines.png"})
    EXPECT_TRUE(std::filesystem::exists(folder / "d" / name)) << name;
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace cowlcast::projector
