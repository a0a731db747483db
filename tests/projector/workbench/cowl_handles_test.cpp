#include "projector/workbench/cowl_handles.h"

#include <gtest/gtest.h>

#include <cmath>

#include "drafting/block/block.h"
#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

const Piece base = drafting::block_front(drafting::demo_measures());

Point neck_point(const CowlWishes& wishes) {
  return drafting::draft_cowl_front(base, wishes).front.points.at("neck-point");
}

TEST(CowlHandles, TheNeckPointFollowsTheHand) {
  for (const double x : {150.0, 240.0, 300.0}) {
    const CowlWishes wishes = moved_handle(base, {}, "drape", {x, 900.0}, 5.0);
    EXPECT_DOUBLE_EQ(wishes.drape, 2.0 * x);
    EXPECT_NEAR(neck_point(wishes).x(), x, 1e-9);
  }
  EXPECT_DOUBLE_EQ(moved_handle(base, {}, "drape", {241.1, 0.0}, 5.0).drape, 480.0);  // on the grid
}

TEST(CowlHandles, NecklineAndFacingGoWhereTheyAreDragged) {
  const double top = drafting::edge_of(base, "neckline").points.back().y();
  EXPECT_DOUBLE_EQ(moved_handle(base, {}, "neckline", {0.0, top - 85.0}, 5.0).neckline_drop, 85.0);
  EXPECT_DOUBLE_EQ(moved_handle(base, {}, "neckline", {0.0, top + 50.0}, 5.0).neckline_drop, 0.0);
  const double edge = drafting::draft_cowl_front(base, {}).front.points.at("cowl-centre").y();
  EXPECT_DOUBLE_EQ(moved_handle(base, {}, "facing", {0.0, edge + 71.0}, 5.0).facing_depth, 70.0);
}

TEST(CowlHandles, SlashesByHandLieWhereTheyLay) {
  for (const int count : {1, 3, 6}) {
    CowlWishes wishes;
    wishes.slash_count = count;
    const auto before = drafting::draft_cowl_front(base, wishes).front.cowl->slash_lines;
    wishes.slashes = slashes_by_hand(base, wishes);
    const auto after = drafting::draft_cowl_front(base, wishes).front.cowl->slash_lines;
    ASSERT_EQ(before.size(), after.size());
    for (size_t i = 0; i < before.size(); ++i) {
      EXPECT_LT((before[i].from - after[i].from).norm(), 1e-9);
      EXPECT_LT((before[i].to - after[i].to).norm(), 1e-6);
    }
  }
}

TEST(CowlHandles, OneSlashLineMovesAndTheOthersStay) {
  const auto before = drafting::draft_cowl_front(base, {}).front.cowl->slash_lines;
  const Point wanted = before[1].from + Point(0.0, -15.0);
  const CowlWishes lower = moved_handle(base, {}, "start-1", wanted, 1.0);
  const auto after = drafting::draft_cowl_front(base, lower).front.cowl->slash_lines;
  EXPECT_NEAR(after[1].from.y(), wanted.y(), 0.5 + 1e-9);
  EXPECT_LT((after[0].from - before[0].from).norm() + (after[2].to - before[2].to).norm(), 1e-6);
  // A hinge stays on the seam line, wherever the hand is.
  const Point near_shoulder = before[0].to + Point(20.0, 10.0);
  const CowlWishes out = moved_handle(base, {}, "hinge-0", near_shoulder, 1.0);
  const auto hinged = drafting::draft_cowl_front(base, out).front.cowl->slash_lines;
  EXPECT_LT(drafting::distance_to_outline(base.seam_line, hinged[0].to), 1e-6);
  EXPECT_GT((hinged[0].to - before[0].to).norm(), 1.0);
  EXPECT_EQ(out.slashes.size(), 3u);
}

TEST(CowlHandles, ArrowsGoByAStep) {
  EXPECT_DOUBLE_EQ(stepped_handle(base, {}, "drape", 2, 0, 5.0).drape, 490.0);
  EXPECT_DOUBLE_EQ(stepped_handle(base, {}, "neckline", 0, -1, 5.0).neckline_drop, 65.0);
  EXPECT_NEAR(stepped_handle(base, {}, "facing", 0, 1, 25.4).facing_depth, 76.2, 1e-9);
  const double before = slashes_by_hand(base, {})[2].below_neckline;
  EXPECT_NEAR(stepped_handle(base, {}, "start-2", 0, -1, 5.0).slashes.at(2).below_neckline, before + 5.0,
              2.5 + 1e-9);
}

TEST(WayOut, IsTheNearestDrapeThatWorks) {
  CowlWishes wishes;
  EXPECT_FALSE(way_out(base, wishes));
  const drafting::DrapeRange range = drafting::drape_range(base, wishes);
  wishes.drape = 2000.0;
  const auto shorter = way_out(base, wishes);
  ASSERT_TRUE(shorter);
  EXPECT_EQ(shorter->mended, Mended::drape);
  EXPECT_DOUBLE_EQ(shorter->wishes.drape, range.most);
  wishes.drape = 60.0;
  const auto longer = way_out(base, wishes);
  ASSERT_TRUE(longer);
  EXPECT_DOUBLE_EQ(longer->wishes.drape, range.least);
}

TEST(WayOut, MendsNecklineFacingAndSlashLines) {
  CowlWishes deep;
  deep.neckline_drop = 390.0;
  CowlWishes wide;
  wide.facing_depth = 200.0;
  CowlWishes crossed;
  crossed.slashes = slashes_by_hand(base, crossed);
  std::swap(crossed.slashes[0].below_neckline, crossed.slashes[2].below_neckline);
  for (const CowlWishes& wishes : {deep, wide, crossed}) {
    if (refusal_of(base, wishes).empty()) continue;
    const auto out = way_out(base, wishes);
    ASSERT_TRUE(out) << refusal_of(base, wishes);
    EXPECT_EQ(refusal_of(base, out->wishes), "");
  }
  EXPECT_EQ(way_out(base, deep)->mended, Mended::neckline);
  EXPECT_GT(way_out(base, deep)->wishes.neckline_drop, 60.0);
  EXPECT_EQ(way_out(base, crossed)->mended, Mended::slashes_by_default);
}

TEST(Weight, IsToldByItsProportions) {
  CowlWishes wishes;
  EXPECT_EQ(weight_of(wishes), Weight::even);
  for (const Weight weight : {Weight::high, Weight::low}) {
    wishes.proportions = proportions_of(weight, 3);
    EXPECT_EQ(weight_of(wishes), weight);
    const auto angles = drafting::draft_cowl_front(base, wishes).front.cowl->hinge_angles;
    EXPECT_EQ(weight == Weight::high, angles.front() > angles.back());
  }
  wishes.proportions = {1.0, 3.0, 1.0};
  EXPECT_EQ(weight_of(wishes), Weight::own);
}

}  // namespace
}  // namespace cowlcast::projector
