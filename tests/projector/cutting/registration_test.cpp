#include "projector/cutting/registration.h"

#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <random>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

TEST(FoundLaying, IsTheLeastSquaresFitOfEigensUmeyama) {
  // Outside reference: Umeyama's closed form as Eigen has it (S. Umeyama, IEEE PAMI 13 (1991) 376).
  std::mt19937 dice(4);
  std::uniform_real_distribution<double> place(-400, 400), angle(-3, 3);
  std::normal_distribution<double> slip(0.0, 0.2);
  for (int round = 0; round < 50; ++round) {
    const Laying truth{place(dice), place(dice), angle(dice), round % 2 == 1, 1.0};
    std::vector<Point> piece, mat;
    for (int i = 0; i < 4; ++i) {
      piece.emplace_back(place(dice), place(dice));
      mat.push_back(mat_from_piece(truth, piece.back()) + Point(slip(dice), slip(dice)));
    }
    const Found found = found_laying(piece, mat, truth, 2.0);
    Eigen::MatrixXd from(2, 4), to(2, 4);
    for (int i = 0; i < 4; ++i) {
      from(0, i) = truth.mirrored ? -piece[i].x() : piece[i].x();
      from(1, i) = piece[i].y();
      to(0, i) = mat[i].x();
      to(1, i) = mat[i].y();
    }
    const Eigen::MatrixXd best = Eigen::umeyama(from, to, false);
    for (int i = 0; i < 4; ++i)
      EXPECT_LT((mat_from_piece(found.laying, piece[i]) -
                 (best.topLeftCorner(2, 2) * from.col(i) + best.topRightCorner(2, 1)))
                    .norm(),
                1e-8);
    EXPECT_EQ(found.laying.mirrored, truth.mirrored);
    EXPECT_EQ(found.laying.height, 1.0);
  }
}

TEST(FoundLaying, RefusesWhatDoesNotAgree) {
  const std::vector<Point> piece{{0, 0}, {200, 0}};
  EXPECT_NEAR(found_laying(piece, {{5, 5}, {205.6, 5}}, {}).residual, 0.3, 1e-9);
  EXPECT_THROW(found_laying(piece, {{5, 5}, {209, 5}}, {}), drafting::Refusal);  // stretched by 4 mm
  EXPECT_THROW(found_laying({{0, 0}}, {{1, 1}}, {}), drafting::Refusal);
  EXPECT_THROW(found_laying({{0, 0}, {20, 0}}, {{0, 0}, {20, 0}}, {}), drafting::Refusal);
}

TEST(LightSteps, ShowEveryPointInsideAndChalkWhatTheNextStepShowsToo) {
  const Polyline lit{{-600, -350}, {600, -350}, {600, 350}, {-600, 350}};
  const Polyline outline{{0, 0}, {2500, 0}, {2500, 500}, {0, 500}};
  const std::vector<LightStep> steps = light_steps(outline, {.x = 70, .y = 900}, lit);
  ASSERT_EQ(steps.size(), 3u);
  for (const Point& point : drafting::subdivided({{0, 0}, {2500, 0}, {2500, 500}, {0, 500}, {0, 0}}, 10.0)) {
    bool seen = false;
    for (const LightStep& step : steps)
      seen = seen || drafting::contains(lit, mat_from_piece(step.laying, point));
    EXPECT_TRUE(seen) << point.transpose();
  }
  for (size_t i = 0; i + 1 < steps.size(); ++i) {
    ASSERT_EQ(steps[i].chalk.size(), 2u);
    EXPECT_GE((steps[i].chalk[0] - steps[i].chalk[1]).norm(), 60.0);
    for (const Point& cross : steps[i].chalk)
      for (const size_t at : {i, i + 1})
        EXPECT_TRUE(drafting::contains(lit, mat_from_piece(steps[at].laying, cross)));
  }
  EXPECT_TRUE(steps.back().chalk.empty());
}

TEST(LightSteps, OneWhenAllFitsAndARefusalWhenTooDeep) {
  const Polyline lit{{-600, -350}, {600, -350}, {600, 350}, {-600, 350}};
  const std::vector<LightStep> one = light_steps({{0, 0}, {800, 0}, {800, 400}}, {.x = -2000}, lit);
  ASSERT_EQ(one.size(), 1u);
  EXPECT_TRUE(drafting::contains(lit, mat_from_piece(one[0].laying, {0, 0})));
  EXPECT_TRUE(drafting::contains(lit, mat_from_piece(one[0].laying, {800, 400})));
  EXPECT_THROW(light_steps({{0, 0}, {100, 0}, {0, 900}}, {}, lit), drafting::Refusal);
}

}  // namespace
}  // namespace cowlcast::projector
