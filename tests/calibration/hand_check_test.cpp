#include "calibration/check/hand_check.h"

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

// Lit 1200 x 700 mm under a lens 1500 mm up; scale known within `sigma`.
TableMap table(double sigma) {
  TableMap map;
  map.width = 1920;
  map.height = 1080;
  map.lens.focal = 2400.0;
  map.lens.centre = {959.5, 539.5};
  map.projector_from_mat_frame.linear() << 1, 0, 0, 0, -1, 0, 0, 0, -1;
  map.projector_from_mat_frame.translation() = Eigen::Vector3d(0, 0, 1500.0);
  map.lit_area = {{-600, -337.5}, {600, -337.5}, {600, 337.5}, {-600, 337.5}};
  map.error.first = {-600, -340};
  map.error.step = 40.0;
  map.error.columns = 31;
  map.error.rows = 18;
  for (int r = 0; r < 18; ++r)
    for (int c = 0; c < 31; ++c) {
      const Eigen::Vector2d node = map.error.first + 40.0 * Eigen::Vector2d(c, r);
      map.error.mm95.push_back(std::hypot(0.2, 2.4477 * std::sqrt(0.5) * sigma * node.norm()));
    }
  map.scale.relative_sigma = sigma;
  map.made_at = "2000-01-01T00:00:00Z";
  return map;
}

TEST(CheckFigure, IsARectangleAndASquareOfWholeSidesInsideTheLight) {
  const CheckFigure figure = check_figure(table(0.001));
  const auto length = [&](char a, char b) { return (figure.at(a) - figure.at(b)).norm(); };
  for (const auto& [a, b] : {std::pair('A', 'B'), {'B', 'C'}, {'C', 'D'}, {'D', 'A'}, {'P', 'Q'}, {'Q', 'R'}})
    EXPECT_NEAR(std::remainder(length(a, b), 50.0), 0.0, 1e-9) << a << b;
  EXPECT_NEAR(length('A', 'C'), std::hypot(length('A', 'B'), length('B', 'C')), 1e-9);  // Pythagoras
  EXPECT_NEAR(length('P', 'R'), length('P', 'Q') * std::sqrt(2.0), 1e-9);
  EXPECT_GT(length('A', 'B'), 1000.0);
  for (const CheckCross& cross : figure.crosses) {
    EXPECT_LT(std::abs(cross.mat.x()), 600.0);
    EXPECT_LT(std::abs(cross.mat.y()), 337.5);
  }
  EXPECT_THROW(figure.at('Z'), Refusal);
}

TEST(HandCheck, WeighsTheReadingAgainstTheStatedError) {
  const TableMap map = table(0.0003);
  const CheckFigure figure = check_figure(map);
  const double long_side = (figure.at('A') - figure.at('C')).norm();
  const auto checked =
      judged(map, figure, {{'A', 'C', long_side + 0.8, 0.5}, {'A', 'C', long_side + 4.0, 0.5}});
  EXPECT_TRUE(checked[0].agrees());
  EXPECT_FALSE(checked[1].agrees());
  EXPECT_GT(checked[0].allowed, 1.96 * 0.5);
  EXPECT_LT(checked[0].allowed, 2.0);
  // A sloppier reading is allowed more.
  EXPECT_GT(judged(map, figure, {{'A', 'C', long_side, 2.0}})[0].allowed, checked[0].allowed + 1.0);
}

TEST(RefineScale, BringsTheMapToTheTapeAndItsErrorDown) {
  const TableMap map = table(0.006);
  const CheckFigure figure = check_figure(map);
  const double real = 1.004;  // the true size of what the map calls a millimetre
  std::vector<HandReading> readings;
  for (const auto& [a, b] : {std::pair('A', 'C'), {'B', 'D'}, {'A', 'B'}})
    readings.push_back({a, b, real * (figure.at(a) - figure.at(b)).norm(), 0.3});
  const RefinedScale refined = refine_scale(map, figure, readings);
  EXPECT_NEAR(refined.factor, real, 0.0002);
  EXPECT_LT(refined.map.scale.relative_sigma, 0.0004);
  for (const Eigen::Vector2d& pixel :
       {Eigen::Vector2d(0, 0), Eigen::Vector2d(1919, 1079), Eigen::Vector2d(300, 900)})
    EXPECT_LT((refined.map.mat_from_projector(pixel) - refined.factor * map.mat_from_projector(pixel)).norm(),
              1e-9);
  EXPECT_LT(refined.map.error_at({550, 300}), 0.3 * map.error_at({550, 300}));
  EXPECT_GE(refined.map.error_at({550, 300}), 0.2);  // the shape's error stays
  // The weighed mean of two independent estimates (Gauss): sigma^-2 add up.
  const RefinedScale one =
      refine_scale(table(0.0005), figure, {{'A', 'C', (figure.at('A') - figure.at('C')).norm(), 0.6}});
  EXPECT_LT(one.map.scale.relative_sigma, 0.0005);
}

TEST(RefineScale, RefusesWhatContradicts) {
  const CheckFigure figure = check_figure(table(0.0003));
  const double across = (figure.at('A') - figure.at('B')).norm(),
               slant = (figure.at('A') - figure.at('C')).norm();
  EXPECT_THROW(refine_scale(table(0.0003), figure, {{'A', 'B', 1.01 * across, 0.5}}), Refusal);
  EXPECT_THROW(refine_scale(table(0.006), figure, {{'A', 'B', across, 0.3}, {'A', 'C', slant + 9.0, 0.3}}),
               Refusal);
  EXPECT_THROW(refine_scale(table(0.006), figure, {}), Refusal);
}

// What lies in the tape's laying or in the eye over two crosses lies in each reading there.
TEST(RefineScale, CountsReadingsBetweenTheSameTwoCrossesAsOne) {
  const TableMap map = table(0.006);
  const CheckFigure figure = check_figure(map);
  const double across = (figure.at('A') - figure.at('B')).norm();
  const HandReading one{'A', 'B', across - 2.0, 0.5}, back{'B', 'A', across - 2.0, 0.5};
  const RefinedScale once = refine_scale(map, figure, {one});
  const RefinedScale often = refine_scale(map, figure, {one, one, back, one});
  EXPECT_NEAR(often.map.scale.relative_sigma, once.map.scale.relative_sigma, 1e-12);
  EXPECT_NEAR(often.factor, once.factor, 1e-12);
  // Their mean counts; other crosses are heard in their own right.
  const RefinedScale mean =
      refine_scale(map, figure, {{'A', 'B', across - 1.5, 0.5}, {'A', 'B', across - 2.5, 0.5}});
  EXPECT_NEAR(mean.factor, once.factor, 1e-5);
  const RefinedScale two = refine_scale(map, figure, {one, {'D', 'C', across - 2.0, 0.5}});
  EXPECT_LT(two.map.scale.relative_sigma, 0.8 * once.map.scale.relative_sigma);
}

TEST(RefineScale, TakesNoReadingTwice) {
  const TableMap map = table(0.006);
  const CheckFigure figure = check_figure(map);
  const double across = (figure.at('A') - figure.at('B')).norm();
  const HandReading reading{'A', 'B', across - 2.0, 0.5};
  const TableMap mended = refine_scale(map, figure, {reading}).map;
  const CheckFigure next = check_figure(mended);
  EXPECT_EQ(figure.label('A'), "A");
  EXPECT_EQ(next.label('A'), "A2");
  EXPECT_THROW(judged(mended, next, {reading}), Refusal) << "it was read off light that lay otherwise";
  EXPECT_THROW(refine_scale(mended, next, {reading}), Refusal);
  HandReading relabelled = reading;
  relabelled.figure = 2;
  std::vector<CheckedReading> kept = judged(map, figure, {reading});
  EXPECT_NO_THROW(refuse_used(kept, {reading}));
  kept.front().used = true;
  EXPECT_THROW(refuse_used(kept, {relabelled}), Refusal);
  relabelled.mm += 2.0;
  EXPECT_NO_THROW(refuse_used(kept, {relabelled}));
  EXPECT_TRUE(check_from_json(check_json(kept.front(), "")).used);
  EXPECT_EQ(kept_checks(with_checks(mended.to_json(), nullptr, kept, "")).front().reading.mm, reading.mm);
}

TEST(RefineScale, RefusesWhatWouldStillNotAgreeWithItsOwnTape) {
  const TableMap map = table(0.0003);
  const CheckFigure figure = check_figure(map);
  const double slant = (figure.at('A') - figure.at('C')).norm();
  const HandReading near{'A', 'C', slant + 1.4, 0.5}, far{'A', 'C', slant + 2.2, 0.5};
  EXPECT_FALSE(judged(map, figure, {near}).front().agrees());
  const RefinedScale refined = refine_scale(map, figure, {near});
  EXPECT_LE(std::abs(near.mm - refined.factor * slant), judged(map, figure, {near}).front().allowed);
  EXPECT_THROW(refine_scale(map, figure, {far}), Refusal)
      << "the rulers say otherwise, and half way is neither";
}

TEST(FailedCheck, IsTheNewestThatNothingMadeGood) {
  const auto check = [](char from, char to, double off, int figure = 1) {
    return CheckedReading{{from, to, 1200.0 + off, 0.5, figure}, 1200.0, 1.5};
  };
  EXPECT_FALSE(failed_check({}));
  EXPECT_FALSE(failed_check({check('A', 'C', 1.4)}));
  std::vector<CheckedReading> kept{check('A', 'C', 6.0), check('B', 'D', -4.0), check('A', 'B', 0.5)};
  EXPECT_EQ(failed_check(kept)->reading.from, 'B');
  kept.push_back(check('D', 'B', 0.2));
  EXPECT_EQ(failed_check(kept)->reading.from, 'A') << "other crosses say nothing of these";
  kept.push_back(check('A', 'C', 0.2, 2));
  EXPECT_FALSE(failed_check(kept)) << "of the next figure, and it agrees";
  kept.push_back(check('C', 'A', 5.0, 2));
  EXPECT_EQ(failed_check(kept)->reading.figure, 2);
  kept.back().used = true;
  EXPECT_FALSE(failed_check(kept)) << "the scale was mended by it";
  kept[2].used = true;
  kept[1] = check('B', 'M', 9.0);
  EXPECT_EQ(failed_check(kept)->reading.to, 'M') << "another mends nothing of it";
}

TEST(WithChecks, KeepsReadingsBesideTheMap) {
  const TableMap map = table(0.006);
  const CheckFigure figure = check_figure(map);
  const auto checked = judged(map, figure, {{'A', 'C', 1200.0, 0.5}});
  const std::string once = with_checks(map.to_json(), nullptr, checked, "2000-01-02T00:00:00Z");
  const std::string twice = with_checks(once, &map, checked, "2000-01-03T00:00:00Z");
  EXPECT_EQ(TableMap::from_json(twice).to_json(), map.to_json());  // older programs read it as before
  const auto list = nlohmann::json::parse(twice).at("checks");
  ASSERT_EQ(list.size(), 2U);
  EXPECT_EQ(list[0].at("from"), "A");
  EXPECT_EQ(list[1].at("made_at"), "2000-01-03T00:00:00Z");
  EXPECT_THROW(with_checks("{}", nullptr, checked, ""), Refusal);
}

}  // namespace
}  // namespace cowlcast::calibration
