#include "projector/cutting/light_steps.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

const Polyline kLit{{-600, -350}, {600, -350}, {600, 350}, {-600, 350}};

Polyline strip_of_cloth(double length, double depth) {
  return {{0, 0}, {length, 0}, {length, depth}, {0, depth}};
}

TEST(LightSteps, ShowEveryPointInsideAndChalkWhatTheNextStepShowsToo) {
  const Polyline outline = strip_of_cloth(2500, 500);
  const std::vector<LightStep> steps = light_steps(outline, {.x = 70, .y = 900}, kLit);
  ASSERT_GE(steps.size(), 3u);
  for (const Point& point : drafting::subdivided({{0, 0}, {2500, 0}, {2500, 500}, {0, 500}, {0, 0}}, 10.0)) {
    const bool seen = std::any_of(steps.begin(), steps.end(), [&](const LightStep& step) {
      return drafting::contains(kLit, mat_from_piece(step.laying, point));
    });
    EXPECT_TRUE(seen) << point.transpose();
  }
  for (size_t i = 0; i + 1 < steps.size(); ++i) {
    ASSERT_EQ(steps[i].chalk.size(), 4u);
    for (const Point& cross : steps[i].chalk) {
      EXPECT_TRUE(drafting::contains(outline, cross));
      for (const size_t at : {i, i + 1})
        for (const Point& arm : {Point(40, 0), Point(-40, 0), Point(0, 40), Point(0, -40)})
          EXPECT_TRUE(drafting::contains(kLit, mat_from_piece(steps[at].laying, cross) + arm));
    }
  }
  EXPECT_TRUE(steps.back().chalk.empty());
}

TEST(LightSteps, CrossesStandAsFarApartAsThereIsRoomAndNoTwoPairsAlike) {
  // 1138 mm of the light are used: both steps show 876 mm of a piece 1400 mm long.
  const std::vector<LightStep> steps = light_steps(strip_of_cloth(1400, 300), {}, kLit);
  ASSERT_EQ(steps.size(), 2u);
  const std::vector<Point>& crosses = steps[0].chalk;
  ASSERT_EQ(crosses.size(), 4u);
  std::vector<double> lengths;
  for (size_t i = 0; i < crosses.size(); ++i)
    for (size_t j = 0; j < i; ++j) lengths.push_back((crosses[i] - crosses[j]).norm());
  std::sort(lengths.begin(), lengths.end());
  EXPECT_NEAR(lengths.back(), std::hypot(876 - 2 * 25, 300 - 2 * 30), 1.0);
  for (size_t i = 1; i < lengths.size(); ++i) EXPECT_GE(lengths[i] - lengths[i - 1], 12.0);
}

TEST(LightSteps, AreSoManyThatThePieceCanBeFoundAgain) {
  // Two steps would show all of it with 150 mm to spare: too little for the far end.
  for (const double length : {1400.0, 1800.0, 2150.0, 2500.0})
    for (const double depth : {40.0, 120.0, 300.0, 600.0}) {
      const std::vector<LightStep> steps = light_steps(strip_of_cloth(length, depth), {}, kLit);
      for (size_t i = 1; i < steps.size(); ++i)
        EXPECT_LE(doubt_of_meeting(steps[i - 1].chalk).farthest(steps[i].shown), 2.0)
            << length << " " << depth;
    }
  EXPECT_GE(light_steps(strip_of_cloth(2150, 300), {}, kLit).size(), 3u);
}

TEST(LightSteps, KeepCrossesOnThePiece) {
  // A neck between two wide ends.
  const Polyline bone{{0, 0},      {500, 0},    {560, 200}, {940, 200}, {1000, 0},  {1500, 0},
                      {1500, 500}, {1000, 500}, {940, 300}, {560, 300}, {500, 500}, {0, 500}};
  const std::vector<LightStep> steps = light_steps(bone, {}, kLit);
  for (const LightStep& step : steps)
    for (const Point& cross : step.chalk) {
      EXPECT_TRUE(drafting::contains(bone, cross));
      EXPECT_GE(drafting::distance_to_outline(bone, cross), 29.9);
    }
  // Too thin for a cross to stand on at all.
  EXPECT_THROW(light_steps(strip_of_cloth(2000, 8), {}, kLit), drafting::Refusal);
}

TEST(LightSteps, OneWhenAllFitsAndARefusalWhenTooDeep) {
  const std::vector<LightStep> one = light_steps({{0, 0}, {800, 0}, {800, 400}}, {.x = -2000}, kLit);
  ASSERT_EQ(one.size(), 1u);
  EXPECT_TRUE(drafting::contains(kLit, mat_from_piece(one[0].laying, {0, 0})));
  EXPECT_TRUE(drafting::contains(kLit, mat_from_piece(one[0].laying, {800, 400})));
  EXPECT_THROW(light_steps({{0, 0}, {100, 0}, {0, 900}}, {}, kLit), drafting::Refusal);
}

}  // namespace
}  // namespace cowlcast::projector
