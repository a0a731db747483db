#include "projector/cutting/view.h"

#include <gtest/gtest.h>

#include <QImage>
#include <numbers>

#include "drafting/geometry/polyline.h"
#include "tests/projector/test_map.h"
#include "tests/projector/test_piece.h"

namespace cowlcast::projector {
namespace {

CuttingView demo_view() {
  const drafting::Piece piece = testing::small_front();
  return new_view(piece, cuts_of(cut_runs(piece), Blade{}, {}), {.x = 10, .y = 20}, FrameStyle{});
}

TEST(CuttingView, ArrowsMoveByTheStepsShown) {
  const CuttingView start = demo_view();
  EXPECT_DOUBLE_EQ(move_step(Pace::fine), 0.1);
  EXPECT_DOUBLE_EQ(move_step(Pace::normal), 1.0);
  EXPECT_DOUBLE_EQ(move_step(Pace::coarse), 10.0);
  for (const Pace pace : {Pace::fine, Pace::normal, Pace::coarse}) {
    EXPECT_NEAR(after(start, Act::left, pace).laying.x, 10 - move_step(pace), 1e-12);
    EXPECT_NEAR(after(start, Act::right, pace).laying.x, 10 + move_step(pace), 1e-12);
    EXPECT_NEAR(after(start, Act::away, pace).laying.y, 20 + move_step(pace), 1e-12);
    EXPECT_NEAR(after(start, Act::nearer, pace).laying.y, 20 - move_step(pace), 1e-12);
  }
}

TEST(CuttingView, TurnsAboutThePiecesMiddle) {
  const CuttingView start = demo_view();
  const drafting::Box box = drafting::box_of(start.piece.cut_line);
  const Point middle = 0.5 * (box.low + box.high);
  const Point before = mat_from_piece(start.laying, middle);
  CuttingView view = start;
  for (int i = 0; i < 7; ++i) view = after(view, Act::turn_left, Pace::coarse);
  EXPECT_LT((mat_from_piece(view.laying, middle) - before).norm(), 1e-9);
  EXPECT_NEAR(view.laying.angle, 7 * turn_step(Pace::coarse), 1e-12);
  for (int i = 0; i < 7; ++i) view = after(view, Act::turn_right, Pace::coarse);
  EXPECT_NEAR(view.laying.x, start.laying.x, 1e-9);
  view = after(after(view, Act::flip, Pace::normal), Act::flip, Pace::fine);
  EXPECT_NEAR(view.laying.x, start.laying.x, 1e-9);
  EXPECT_FALSE(view.laying.mirrored);
}

TEST(CuttingView, NextAndBackWalkThroughTheStrokesAndLockTheLaying) {
  CuttingView view = demo_view();
  const int strokes = static_cast<int>(view.plan.size());
  ASSERT_GT(strokes, 3);
  EXPECT_TRUE(is_laying(view));
  for (int i = 0; i < strokes; ++i) {
    view = after(view, Act::next, Pace::normal);
    EXPECT_EQ(view.stroke, i);
    EXPECT_EQ(after(view, Act::left, Pace::coarse).laying.x, view.laying.x) << "the piece must lie still";
    EXPECT_FALSE(after(view, Act::flip, Pace::coarse).laying.mirrored);
  }
  view = after(view, Act::next, Pace::normal);
  EXPECT_TRUE(all_cut(view));
  EXPECT_EQ(after(view, Act::next, Pace::normal).stroke, view.stroke);
  view = after(view, Act::back, Pace::normal);
  EXPECT_EQ(view.stroke, strokes - 1);
  EXPECT_TRUE(is_laying(after(view, Act::unlock, Pace::normal)));
  EXPECT_TRUE(is_laying(after(demo_view(), Act::back, Pace::normal)));
}

TEST(CuttingView, LegendAndBandComeAndGo) {
  const CuttingView view = demo_view();
  EXPECT_FALSE(after(view, Act::legend, Pace::normal).legend);
  EXPECT_TRUE(after(after(view, Act::legend, Pace::normal), Act::legend, Pace::normal).legend);
  EXPECT_FALSE(after(view, Act::band, Pace::normal).overlay.band);
  EXPECT_EQ(legend_lines(view).front(), "LAY THE PIECE");
  EXPECT_EQ(legend_lines(after(view, Act::next, Pace::normal)).front(),
            "STROKE 1 OF " + std::to_string(view.plan.size()));
}

TEST(CuttingView, OnlyTheLegendTurnsDarkWhenItIsHidden) {
  const calibration::TableMap map = testing::map_of({});
  const CuttingView with = demo_view(), without = after(with, Act::legend, Pace::normal);
  EXPECT_EQ(view_marks(with, map).size(), view_marks(without, map).size() + 1);
}

TEST(CuttingView, WhatIsCutIsNoLongerDrawn) {
  const calibration::TableMap map = testing::map_of({});
  CuttingView view = after(demo_view(), Act::legend, Pace::normal);
  view.shown = {.cut_line = true,
                .seam_line = false,
                .notches = false,
                .marks = false,
                .grain = false,
                .fold = false,
                .label = false,
                .ground = false};
  view.overlay.band = view.overlay.arrows = view.overlay.stops = false;
  while (!all_cut(view)) view = after(view, Act::next, Pace::normal);
  const QImage frame = rendered(map, view_marks(view, map), 0.0);
  for (int v = 0; v < frame.height(); v += 2)
    for (int u = 0; u < frame.width(); u += 2) ASSERT_EQ(qRed(frame.pixel(u, v)), 0);
}

}  // namespace
}  // namespace cowlcast::projector
