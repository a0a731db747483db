#include "projector/cutting/registration.h"

#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <random>
#include <string>

#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

// Chalked on a long piece: no two as far apart as any other two.
const std::vector<Point> kCrosses{{270, 30}, {280, 245}, {1110, 25}, {1060, 210}};
const std::vector<Point> kEnds{{250, 0}, {250, 300}, {1400, 0}, {1400, 300}};

std::vector<Point> on_mat(const Laying& truth, const std::vector<size_t>& which) {
  std::vector<Point> mat;
  for (const size_t i : which) mat.push_back(mat_from_piece(truth, kCrosses[i]));
  return mat;
}

std::string refusal_of(const std::function<void()>& act) {
  try {
    act();
  } catch (const drafting::Refusal& reason) {
    return reason.what();
  }
  return {};
}

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
    const Found found = found_laying(piece, mat, truth);
    Eigen::MatrixXd from(2, 4), to(2, 4);
    for (int i = 0; i < 4; ++i) {
      from(0, i) = truth.mirrored ? -piece[i].x() : piece[i].x();
      from(1, i) = piece[i].y();
      to(0, i) = mat[i].x();
      to(1, i) = mat[i].y();
    }
    const Eigen::MatrixXd best = Eigen::umeyama(from, to, false);
    for (int i = 0; i < 4; ++i) {
      const Point there = best.topLeftCorner(2, 2) * from.col(i) + best.topRightCorner(2, 1);
      EXPECT_LT((mat_from_piece(found.laying, piece[i]) - there).norm(), 1e-8);
      EXPECT_NEAR(found.residuals[static_cast<size_t>(i)], (there - mat[i]).norm(), 1e-8);
    }
    EXPECT_EQ(found.laying.mirrored, truth.mirrored);
    EXPECT_EQ(found.laying.height, 1.0);
  }
}

TEST(FoundLaying, IsTheSameInWhateverOrderTheMarksArePointedOut) {
  const Laying expected{-500, -100, 0.0};
  const Laying truth = turned_about({-480, -115, 0.0}, {0, 0}, -12 * kDegree);
  std::vector<size_t> order{0, 1, 2, 3};
  do {
    for (const size_t count : {2u, 3u, 4u}) {
      const std::vector<size_t> which(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(count));
      const Found found = found_laying(kCrosses, on_mat(truth, which), expected);
      EXPECT_EQ(found.which, which);
      EXPECT_LT(apart(found.laying, truth, kEnds), 1e-6);
    }
  } while (std::next_permutation(order.begin(), order.end()));
}

TEST(FoundLaying, OfTwoMarksTurnsNothingRoundWhenTheyAreExchanged) {
  const std::vector<Point> two{{200, 75}, {200, 225}};
  const Laying truth{3, 4, 2 * kDegree};
  const std::vector<Point> pointed{mat_from_piece(truth, two[1]), mat_from_piece(truth, two[0])};
  const Found found = found_laying(two, pointed, {});
  EXPECT_LT(apart(found.laying, truth, kEnds), 1e-6);
  EXPECT_EQ(found.which, (std::vector<size_t>{1, 0}));
}

TEST(FoundLaying, RefusesACrosswiseTurnInEveryOrder) {
  const std::vector<Point> two{{200, 75}, {200, 225}};
  const Laying truth = turned_about({}, {300, 150}, 80 * kDegree);
  const std::vector<Point> pointed = laid(truth, two);
  EXPECT_NE(refusal_of([&] { found_laying(two, pointed, {}); }).find("turned by 80 degrees"),
            std::string::npos);
}

TEST(FoundLaying, RefusesMarksThatMayBeSeveral) {
  // Two pairs alike, 300 mm from one another, and the cloth lies nearer to the wrong one.
  const std::vector<Point> alike{{0, 0}, {0, 200}, {300, 0}, {300, 200}};
  const Laying truth{.x = 250};
  const std::vector<Point> pointed{mat_from_piece(truth, alike[0]), mat_from_piece(truth, alike[1])};
  EXPECT_NE(refusal_of([&] { found_laying(alike, pointed, {}); }).find("not clear which"), std::string::npos);
  EXPECT_NO_THROW(found_laying(alike, pointed, truth));
}

TEST(FoundLaying, RefusesWhatDoesNotAgree) {
  const std::vector<Point> piece{{0, 0}, {200, 0}};
  EXPECT_NEAR(found_laying(piece, {{5, 5}, {205.6, 5}}, {}).residuals.front(), 0.3, 1e-9);
  EXPECT_THROW(found_laying(piece, {{5, 5}, {209.1, 5}}, {}), drafting::Refusal);  // stretched by 4.1 mm
  EXPECT_THROW(found_laying({{0, 0}}, {{1, 1}}, {}), drafting::Refusal);
  EXPECT_THROW(found_laying(piece, {{1, 1}}, {}), drafting::Refusal);
  EXPECT_THROW(found_laying({{0, 0}, {20, 0}}, {{0, 0}, {20, 0}}, {}), drafting::Refusal);
}

TEST(FindAgain, RefusesMarksThatTellTooLittleOfTheFarEnd) {
  // Half the depth of a piece 1.4 m long apart: 2 mm sideways on one mark is no longer or shorter at all, and
  // 14 mm at the far end.
  const std::vector<Point> close{{1150, 75}, {1150, 225}}, shown{{250, 0}, {1400, 300}};
  std::vector<Point> pointed = close;
  pointed[1].x() += 2.0;
  const Found found = found_laying(close, pointed, {});
  EXPECT_LT(found.residuals.front(), 0.1);
  EXPECT_GT(apart(found.laying, {}, shown), 10.0);
  EXPECT_GT(found.doubt.farthest(shown), 10.0);
  EXPECT_NE(refusal_of([&] { find_again(close, pointed, {}, shown); }).find("may be"), std::string::npos);
  // The same on marks far apart is seen, or does no harm.
  pointed = kCrosses;
  pointed[1].x() += 2.0;
  const Found better = find_again(kCrosses, pointed, {}, shown);
  EXPECT_GT(*std::max_element(better.residuals.begin(), better.residuals.end()), 0.9);
  EXPECT_LT(apart(better.laying, {}, shown), better.doubt.farthest(shown));
}

TEST(LayingDoubt, HoldsTheErrorOfRandomPointing) {
  // Its own presumption played through: each mark wrong by 1 mm in all (root mean square), as often as it
  // says.
  std::mt19937 dice(7);
  std::normal_distribution<double> slip(0.0, FindRules{}.mark_sigma);
  for (const std::vector<size_t>& which : {std::vector<size_t>{0, 1, 2, 3}, {0, 1, 2}, {0, 3}}) {
    int inside = 0, tried = 0, inside_presumed = 0;
    const Laying truth{-500, -100, 0.1};
    std::vector<Point> crosses;
    for (const size_t i : which) crosses.push_back(kCrosses[i]);
    const double presumed = doubt_of_meeting(crosses).at(kEnds[2]);
    for (int round = 0; round < 3000; ++round) {
      std::vector<Point> pointed = on_mat(truth, which);
      for (Point& mark : pointed) mark += Point(slip(dice), slip(dice));
      try {
        const Found found = found_laying(kCrosses, pointed, truth);
        const double error =
            (mat_from_piece(found.laying, kEnds[2]) - mat_from_piece(truth, kEnds[2])).norm();
        inside += error <= found.doubt.at(kEnds[2]);
        inside_presumed += error <= presumed;
        ++tried;
      } catch (const drafting::Refusal&) {  // chance, now and then
      }
    }
    EXPECT_GT(tried, 2900);
    EXPECT_GT(inside, 0.94 * tried);
    EXPECT_LT(inside, 0.995 * tried);
    EXPECT_GT(inside_presumed, 0.935 * tried);
    EXPECT_LT(inside_presumed, 0.97 * tried);
  }
}

TEST(LayingDoubt, GrowsWithTheDistanceFromTheMarksAndFromPartToPart) {
  const LayingDoubt once = doubt_of_meeting(kCrosses);
  EXPECT_LT(once.at({690, 140}), once.at({1400, 140}));
  EXPECT_LT(once.at({1400, 140}), once.at({3000, 140}));
  EXPECT_NEAR((once + once).at({1400, 140}), std::sqrt(2.0) * once.at({1400, 140}), 1e-9);
  EXPECT_NEAR(doubt_of_meeting(kCrosses, 1.4).at({5, 5}), 2.0 * doubt_of_meeting(kCrosses, 0.7).at({5, 5}),
              1e-9);
  // Where the piece's origin lies does not matter.
  std::vector<Point> shifted;
  for (const Point& cross : kCrosses) shifted.push_back(cross + Point(-800, 400));
  EXPECT_NEAR(doubt_of_meeting(shifted).at({600, 540}), once.at({1400, 140}), 1e-6);
}

}  // namespace
}  // namespace cowlcast::projector
