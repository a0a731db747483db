#include "projector/frame/laying.h"

#include <gtest/gtest.h>

#include "drafting/geometry/polyline.h"

#include <numbers>
#include <random>

namespace cowlcast::projector {
namespace {

constexpr double kPi = std::numbers::pi;

TEST(Laying, PutsTheOriginAtItsPlaceAndTurnsAnticlockwise) {
  const Laying laying{.x = 100, .y = -50, .angle = kPi / 2};
  EXPECT_LT((mat_from_piece(laying, {0, 0}) - Point(100, -50)).norm(), 1e-12);
  EXPECT_LT((mat_from_piece(laying, {10, 0}) - Point(100, -40)).norm(), 1e-12);
  EXPECT_LT((mat_from_piece(laying, {0, 10}) - Point(90, -50)).norm(), 1e-12);
}

TEST(Laying, MirrorsBeforeItTurns) {
  const Laying laying{.x = 5, .y = 7, .angle = kPi / 2, .mirrored = true};
  EXPECT_LT((mat_from_piece(laying, {10, 0}) - Point(5, -3)).norm(), 1e-12);
}

TEST(Laying, RandomLayingsAreRigidAndComeBack) {
  std::mt19937 dice(1);
  std::uniform_real_distribution<double> place(-900, 900), angle(-7, 7);
  for (int i = 0; i < 200; ++i) {
    const Laying laying{place(dice), place(dice), angle(dice), i % 2 == 1, 0};
    const Point a(place(dice), place(dice)), b(place(dice), place(dice));
    EXPECT_LT((piece_from_mat(laying, mat_from_piece(laying, a)) - a).norm(), 1e-9);
    EXPECT_NEAR((mat_from_piece(laying, a) - mat_from_piece(laying, b)).norm(), (a - b).norm(), 1e-9);
  }
}

TEST(Laying, TurnsAndFlipsAboutAPointThatStays) {
  const Laying laying{.x = -120, .y = 40, .angle = 0.3};
  const Point pivot(200, 90), kept = piece_from_mat(laying, pivot);
  const Laying turned = turned_about(laying, pivot, 0.7);
  EXPECT_LT((mat_from_piece(turned, kept) - pivot).norm(), 1e-9);
  EXPECT_NEAR(turned.angle, 1.0, 1e-12);
  const Laying flipped = flipped_about(laying, pivot);
  EXPECT_LT((mat_from_piece(flipped, kept) - pivot).norm(), 1e-9);
  // What lay 30 mm to the right of the pivot lies 30 mm to its left.
  const Point beside = piece_from_mat(laying, pivot + Point(30, 10));
  EXPECT_LT((mat_from_piece(flipped, beside) - (pivot + Point(-30, 10))).norm(), 1e-9);
  const Laying back = flipped_about(flipped, pivot);
  EXPECT_NEAR(back.x, laying.x, 1e-9);
  EXPECT_NEAR(back.angle, laying.angle, 1e-12);
  EXPECT_FALSE(back.mirrored);
}

TEST(Laying, PutsAPieceInTheMiddleOfTheLight) {
  drafting::Piece piece;
  piece.cut_line = {{0, 0}, {200, 0}, {260, 600}, {0, 700}};
  const Polyline light = {{-500, -300}, {540, -320}, {520, 310}, {-510, 300}};
  const Laying laying = in_the_middle(light, piece, 1.5);
  const drafting::Box lain = drafting::box_of(laid(laying, piece.cut_line));
  EXPECT_NEAR(lain.low.x() + lain.high.x(), 540.0 - 510.0, 1e-9);
  EXPECT_NEAR(lain.low.y() + lain.high.y(), 310.0 - 320.0, 1e-9);
  EXPECT_NEAR(lain.width(), 700.0, 1e-9);  // on its side
  EXPECT_DOUBLE_EQ(laying.height, 1.5);
}

}  // namespace
}  // namespace cowlcast::projector
