#include "projector/cutting/view_marks.h"

#include <gtest/gtest.h>

#include <QImage>
#include <algorithm>
#include <cmath>
#include <tuple>

#include "calibration/watch/border_marks.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"
#include "projector/cutting/begin.h"
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
    EXPECT_EQ(view.cut, i);
    EXPECT_EQ(after(view, Act::left, Pace::coarse).laying.x, view.laying.x) << "the piece must lie still";
    EXPECT_FALSE(after(view, Act::flip, Pace::coarse).laying.mirrored);
  }
  view = after(view, Act::next, Pace::normal);
  EXPECT_TRUE(all_cut(view));
  EXPECT_EQ(after(view, Act::next, Pace::normal).cut, view.cut);
  view = after(view, Act::back, Pace::normal);
  EXPECT_EQ(view.cut, strokes - 1);
  EXPECT_TRUE(is_laying(after(view, Act::unlock, Pace::normal)));
  EXPECT_TRUE(is_laying(after(demo_view(), Act::back, Pace::normal)));
}

TEST(CuttingView, LegendAndBandComeAndGo) {
  const CuttingView view = demo_view();
  EXPECT_FALSE(after(view, Act::legend, Pace::normal).legend);
  EXPECT_TRUE(after(after(view, Act::legend, Pace::normal), Act::legend, Pace::normal).legend);
  EXPECT_FALSE(after(view, Act::band, Pace::normal).overlay.band);
  EXPECT_EQ(legend_of(view).state.front(), "LAY THE PIECE");
  const std::string first = "STROKE 1 OF " + std::to_string(view.plan.size()) + ": ";
  EXPECT_TRUE(legend_of(after(view, Act::next, Pace::normal)).state.front().starts_with(first));
}

TEST(CuttingView, LegendTellsTheFoldAndSpeaksInInchesWhereWished) {
  CuttingView view = demo_view();
  view.laying = {25.4, -50.8, 0.0};
  ASSERT_TRUE(view.piece.fold);
  const auto says = [&](const char* words) {
    const Legend legend = legend_of(view);
    std::string all;
    for (const auto* lines : {&legend.state, &legend.keys})
      for (const std::string& line : *lines) all += line + "\n";
    return all.find(words) != std::string::npos;
  };
  EXPECT_TRUE(says("x 25.4  y -50.8 mm"));
  EXPECT_TRUE(says("the cloth's fold lies on the two fine lines"));
  view.inches = true;
  EXPECT_TRUE(says("x 1.00  y -2.00 in"));
  EXPECT_FALSE(says("mm"));
  view.piece.fold.reset();
  EXPECT_FALSE(says("fold"));
}

TEST(CuttingView, AsksTheCameraOnlyWhereThereIsOne) {
  CuttingView view = after(demo_view(), Act::next, Pace::normal);
  EXPECT_FALSE(after(view, Act::look, Pace::normal).camera_asked);
  view.camera = CameraAsk::by_look;
  EXPECT_TRUE(after(view, Act::look, Pace::normal).camera_asked);
  EXPECT_EQ(after(view, Act::next, Pace::normal).cut, 1);
  view = blocked(view, "The table is not watched yet.", "Stand clear.");
  EXPECT_FALSE(after(view, Act::next, Pace::normal).camera_asked);
  view.camera = CameraAsk::by_next;
  EXPECT_TRUE(after(view, Act::next, Pace::normal).camera_asked);
  EXPECT_FALSE(after(after(view, Act::next, Pace::normal), Act::legend, Pace::normal).camera_asked);
  EXPECT_TRUE(blocked(view, "").way_out.empty());
  view = blocked(view, "");
  view.light = Light::dark;
  EXPECT_EQ(after(view, Act::next, Pace::normal).cut, 0) << "nobody cuts in the dark";
  EXPECT_TRUE(after(view, Act::end, Pace::normal).ended);
}

TEST(ViewPainter, PutsTheBorderMarksOverLinesAndShowsTheLearningPicturesBare) {
  const calibration::TableMap map = testing::map_of({});
  CuttingView view = demo_view();
  ViewPainter painter;
  const auto level = [&](const Eigen::Vector2d& at) {
    return qRed(painter.picture().pixel(static_cast<int>(at.x()), static_cast<int>(at.y())));
  };
  const calibration::BorderMarks marks = calibration::border_marks(map.width, map.height);
  painter.draw(map, view);
  const QImage bare = painter.picture().copy();
  view.border_marks = true;
  painter.draw(map, view);
  for (const Eigen::Vector2d& centre : marks.centres) {
    EXPECT_EQ(level(centre + Eigen::Vector2d(3, 3)), 255);
    EXPECT_EQ(level(centre + Eigen::Vector2d(3, -3)), 0);
  }
  view.light = Light::marked;
  painter.draw(map, view);
  QImage only(map.width, map.height, QImage::Format_RGB32);
  only.fill(Qt::black);
  for (const cv::Rect& square : marks.squares)
    for (int y = square.y; y < square.y + square.height; ++y)
      for (int x = square.x; x < square.x + square.width; ++x) only.setPixel(x, y, 0xffffffff);
  EXPECT_EQ(painter.picture(), only);
  view.light = Light::plain;
  painter.draw(map, view);
  EXPECT_EQ(level({0, 0}), 255);
  EXPECT_EQ(level({1000, 500}), 255);
  view.light = Light::dark;
  painter.draw(map, view);
  only.fill(Qt::black);
  EXPECT_EQ(painter.picture(), only);
  view.light = Light::lines;
  view.border_marks = false;
  painter.draw(map, view);
  EXPECT_EQ(painter.picture(), bare) << "nothing is left of the marks";
}

TEST(ViewMarks, KeepTheirWordsOutOfTheBorderMarks) {
  const calibration::TableMap map = testing::map_of({.tilt = 0.3, .roll = 0.12});
  CuttingView view = demo_view();
  view.border_marks = true;
  view.camera = CameraAsk::by_look;
  view.laying = {.x = 0.0, .y = -150.0};  // lines may lead under the marks, words may not
  view.notice.words = "Nobody watches the table. The camera is gone.";
  const cv::Rect whole(0, 0, map.width, map.height);
  for (int strokes = 0; strokes < 4; ++strokes) {
    const QImage lines = rendered(map, view_marks(view, map), view.laying.height);
    for (const cv::Rect& ground : calibration::border_marks(map.width, map.height).grounds) {
      const cv::Rect part = ground & whole;
      int lit = 0;
      for (int y = part.y; y < part.y + part.height; ++y)
        for (int x = part.x; x < part.x + part.width; ++x) lit += qGray(lines.pixel(x, y)) > 40 ? 1 : 0;
      EXPECT_EQ(lit, 0) << "stroke " << strokes << ", mark at " << ground.x << ", " << ground.y;
    }
    view = after(view, Act::next, Pace::normal);
  }
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

TEST(CuttingView, CautionsAreReadOneByOneBeforeAnythingElse) {
  CuttingView view = demo_view();
  view.phase = Phase::cautions;
  const auto count = static_cast<int>(cautions().size());
  for (int i = 0; i < count; ++i) {
    EXPECT_EQ(after(view, Act::left, Pace::coarse).laying.x, view.laying.x);
    view = after(view, Act::next, Pace::normal);
    EXPECT_EQ(view.cautions_shown, i + 1);
    EXPECT_EQ(view.phase, Phase::cautions);
    EXPECT_FALSE(view.cautions_read);
  }
  view = after(view, Act::next, Pace::normal);
  EXPECT_TRUE(view.cautions_read);
  EXPECT_TRUE(is_laying(view));
}

TEST(CuttingView, UnlockedWhatIsCutStaysCutAndInOrder) {
  CuttingView view = demo_view();
  for (int i = 0; i < 3; ++i) view = after(view, Act::next, Pace::normal);
  ASSERT_EQ(view.cut, 2);
  const std::vector<Cut> plan = view.plan;
  view = after(after(view, Act::unlock, Pace::normal), Act::turn_left, Pace::coarse);
  view = after(view, Act::next, Pace::normal);
  EXPECT_EQ(view.cut, 2);
  for (size_t i = 0; i < plan.size(); ++i) EXPECT_EQ(view.plan[i].path, plan[i].path);
}

TEST(CuttingView, GoesOnWhereTheRecordStopped) {
  CuttingView view = after(demo_view(), Act::left, Pace::coarse);
  for (int i = 0; i < 3; ++i) view = after(view, Act::next, Pace::normal);
  const Record record = record_from_json(record_to_json(recorded(view, {}, "2000-01-01T10:00:00Z")));
  CuttingView again = after(resumed(demo_view(), record), Act::next, Pace::normal);
  EXPECT_EQ(again.cut, 2);
  EXPECT_EQ(again.laying.x, view.laying.x);
  for (size_t i = 0; i < view.plan.size(); ++i) EXPECT_EQ(again.plan[i].path, view.plan[i].path);
}

/// Middles, in hundredths, of the strokes from the `from`th to before the `to`th.
std::vector<Point> middles(const CuttingView& view, int from, int to) {
  std::vector<Point> all;
  for (int i = from; i < to; ++i) {
    const Polyline& path = view.plan[static_cast<size_t>(i)].path;
    const Point middle = drafting::point_at(path, 0.5 * drafting::length(path));
    all.emplace_back(std::round(100.0 * middle.x()), std::round(100.0 * middle.y()));
  }
  std::sort(all.begin(), all.end(),
            [](const Point& a, const Point& b) { return std::tie(a.x(), a.y()) < std::tie(b.x(), b.y()); });
  return all;
}

/// A front whose strokes are about equally long, so that hand and laying decide their order.
CuttingView even_view(Hand hand, const Laying& laying, double blade = 45.0) {
  drafting::Piece piece = testing::small_front();
  piece.fold.reset();
  piece.cut_line = {{0, 0}, {100, -10}, {190, 40}, {180, 140}, {90, 180}, {0, 110}};
  CuttingView view = new_view(piece, cuts_of(cut_runs(piece), Blade{.diameter = blade}, {}), laying, {});
  view.person.hand = hand;
  return view;
}

TEST(CuttingView, WhatIsCutStaysCutForAnotherHandBladePlaceAndLaying) {
  CuttingView view = even_view(Hand::right, {.x = 10, .y = 20});
  for (int i = 0; i < 4; ++i) view = after(view, Act::next, Pace::normal);
  ASSERT_EQ(view.cut, 3);
  const int all = static_cast<int>(view.plan.size());
  Record record = recorded(view, {}, "2000-01-01T10:00:00Z");
  int reordered = 0;
  for (const Hand hand : {Hand::right, Hand::left})
    for (const double turn : {0.0, 1.5, 3.1, -1.6})
      for (const double blade : {28.0, 60.0}) {
        record.laying = {.x = 40, .y = -30, .angle = turn};
        CuttingView start = even_view(hand, record.laying, blade);
        start.person.stands = {-700, 0};
        const CuttingView again = resumed(start, record_from_json(record_to_json(record)));
        EXPECT_EQ(again.cut, 3);
        EXPECT_EQ(middles(again, 0, 3), middles(view, 0, 3)) << turn;
        EXPECT_EQ(middles(again, 3, all), middles(view, 3, all)) << turn;
        const std::vector<Cut> anew = ordered_cuts(start.plan, record.laying, start.person);
        CuttingView counted = start;
        counted.plan = anew;
        reordered += middles(counted, 0, 3) != middles(view, 0, 3);
        // What is left runs as this person cuts it.
        for (const Cut& cut :
             ordered_cuts({again.plan.begin() + 3, again.plan.end()}, record.laying, start.person))
          EXPECT_TRUE(std::any_of(again.plan.begin() + 3, again.plan.end(),
                                  [&](const Cut& one) { return one.path == cut.path; }));
      }
  EXPECT_GT(reordered, 0) << "else counting them would have done";
}

TEST(CuttingView, AmidAPieceTheHeightFollowsTheWishAndThePlaceDoesNot) {
  const calibration::TableMap map = testing::map_of({});
  const drafting::Piece piece = testing::small_front();
  CuttingWishes wishes{.at = Laying{.x = -60, .y = -100, .height = 1.0}, .height = 1.0};
  CuttingView view = begun(map, piece, wishes, {}, "2000-01-01T10:00:00Z");
  while (view.cut < 2) view = after(view, Act::next, Pace::normal);
  const Record record = recorded(view, {}, "2000-01-01T10:00:00Z");
  const auto again = [&](const CuttingWishes& wished) {
    return begun(map, piece, wished, record, "2000-01-01T11:00:00Z");
  };
  for (const double height : {0.5, 4.0}) {
    EXPECT_DOUBLE_EQ(again({.height = height}).laying.height, height);
    EXPECT_DOUBLE_EQ(again({.height = height}).laying.x, -60.0);
  }
  wishes.at->x += 0.004;  // as it is printed
  EXPECT_EQ(again(wishes).cut, 2);
  wishes.at->x += 5.0;
  EXPECT_THROW(again(wishes), drafting::Refusal);
  EXPECT_THROW(again({.mirrored = true}), drafting::Refusal);
  wishes = {.at = record.laying};
  wishes.at->mirrored = true;
  EXPECT_THROW(again(wishes), drafting::Refusal);
}

TEST(CuttingView, StrokesOfARecordThatAreNotFoundAreRefused) {
  CuttingView view = demo_view();
  for (int i = 0; i < 3; ++i) view = after(view, Act::next, Pace::normal);
  Record record = recorded(view, {}, "2000-01-01T10:00:00Z");
  record.cut_strokes[1].middle.x() += 3.0;
  EXPECT_THROW(resumed(demo_view(), record), drafting::Refusal);
}

TEST(CuttingView, ARecordThatOnlyCountsIsFollowedWhereItLeavesNoDoubt) {
  CuttingView view = demo_view();
  for (int i = 0; i < 2; ++i) view = after(view, Act::next, Pace::normal);
  Record record = recorded(view, {}, "2000-01-01T10:00:00Z");
  record.cut_strokes.clear();
  EXPECT_EQ(middles(resumed(demo_view(), record), 0, 1), middles(view, 0, 1))
      << "the side seam is the longest";
  view = even_view(Hand::right, {});
  for (int i = 0; i < 3; ++i) view = after(view, Act::next, Pace::normal);
  record = recorded(view, {}, "2000-01-01T10:00:00Z");
  record.cut_strokes.clear();
  EXPECT_THROW(resumed(even_view(Hand::left, {}), record), drafting::Refusal);
  record.cut = record.strokes;
  EXPECT_TRUE(all_cut(after(resumed(even_view(Hand::left, {}), record), Act::next, Pace::normal)));
}

TEST(CuttingView, MovesNearTheLaidOutPlaceGoThereAndFineOnesDoNot) {
  const CuttingView start = demo_view();  // laid out at 10, 20
  CuttingView view = after(after(start, Act::left, Pace::coarse), Act::left, Pace::normal);  // -1, 20
  EXPECT_NEAR(view.laying.x, -1.0, 1e-12);
  const CuttingView back = after(view, Act::right, Pace::coarse);
  EXPECT_EQ(back.laying.x, 10.0);
  EXPECT_NE(back.message.find("laid-out place"), std::string::npos);
  EXPECT_NE(legend_of(back).state.front().find("laid-out place"), std::string::npos);
  // Away from there, and in fine steps, it goes where the key says.
  EXPECT_NEAR(after(back, Act::right, Pace::normal).laying.x, 11.0, 1e-12);
  EXPECT_NEAR(after(after(back, Act::right, Pace::normal), Act::left, Pace::fine).laying.x, 10.9, 1e-12);
  // Turned far off, a move does not reach it; H does, from anywhere.
  view = after(after(back, Act::turn_left, Pace::coarse), Act::turn_left, Pace::coarse);
  EXPECT_GT(apart(view.laying, start.laying, view.piece.cut_line), 8.0);
  view = after(after(view, Act::flip, Pace::normal), Act::home, Pace::normal);
  EXPECT_EQ(apart(view.laying, start.laying, view.piece.cut_line), 0.0);
  // The mouse too: dragged past it, the piece stops there once and goes on.
  view = dragged(after(start, Act::left, Pace::coarse), {6, 0});
  EXPECT_EQ(view.laying.x, 10.0);
  EXPECT_NEAR(dragged(view, {3, 0}).laying.x, 13.0, 1e-12);
}

TEST(CuttingView, ABlockStandsInPlaceOfTheLinesUntilItIsWaivedTwiceAsked) {
  const calibration::TableMap map = testing::map_of({});
  CuttingView view = after(demo_view(), Act::next, Pace::normal);
  const size_t lines = view_marks(view, map).size();
  view = blocked(view, "The projector was moved. Calibrate again.");
  EXPECT_EQ(view_marks(view, map).size(), 1u) << "the reason alone";
  EXPECT_EQ(after(view, Act::next, Pace::normal).cut, 0) << "nothing is cut by a blocked light";
  EXPECT_EQ(dragged(view, {5, 5}).laying.x, view.laying.x);
  view = after(view, Act::waive, Pace::normal);
  EXPECT_FALSE(view.block.empty()) << "it asks first";
  EXPECT_FALSE(after(after(view, Act::left, Pace::normal), Act::waive, Pace::normal).block.empty())
      << "any other key says no";
  view = after(view, Act::waive, Pace::normal);
  EXPECT_TRUE(view.block.empty());
  EXPECT_EQ(view_marks(view, map).size(), lines);
  view = blocked(view, "The projector was moved. Calibrate again.");
  EXPECT_TRUE(view.block.empty()) << "waived for this sitting";
  EXPECT_FALSE(blocked(view, "The camera was moved.").block.empty());
  EXPECT_TRUE(blocked(blocked(view, "The camera was moved."), "").block.empty()) << "cleared by itself";
  const Record record = recorded(view, {}, "2000-01-01T10:00:00Z");
  ASSERT_EQ(record.waivers.size(), 1u);
  EXPECT_NE(record.waivers.front().reason.find("projector was moved"), std::string::npos);
  EXPECT_EQ(recorded(view, record, "2000-01-01T11:00:00Z").waivers.size(), 1u) << "written once";
  EXPECT_EQ(recorded(view, record, "2000-01-02T11:00:00Z").waivers.size(), 1u)
      << "and not said again by work";
  view.begun_at = "2000-01-02T09:00:00Z";
  EXPECT_EQ(recorded(view, record, "2000-01-02T11:00:00Z").waivers.size(), 2u) << "waived another day";
}

TEST(CuttingView, ANoticeIsDrawnLastAndDimsTheRest) {
  const calibration::TableMap map = testing::map_of({});
  CuttingView view = after(after(demo_view(), Act::next, Pace::normal), Act::legend, Pace::normal);
  const std::vector<Mark> before = view_marks(view, map);
  view.notice = {.marks = {{.lines = {{{0, 0}, {10, 0}}}, .colour = 0xff00ff00}}, .dim = true, .words = ""};
  const std::vector<Mark> marks = view_marks(view, map);
  ASSERT_EQ(marks.size(), before.size() + 1);
  EXPECT_EQ(marks.back().colour, 0xff00ff00u);
  for (size_t i = 0; i < before.size(); ++i) EXPECT_LE(qRed(marks[i].colour), qRed(before[i].colour) / 2);
  view.notice.words = "Something lies ahead of the blade.";
  EXPECT_EQ(warnings_of(view, lit_outline(map, 0.0)).front(), view.notice.words)
      << "shown without the legend too";
}

TEST(CuttingView, EndsAtOnceWhileLayingAndAsksBetweenStrokes) {
  const CuttingView laying = demo_view(), cutting = after(laying, Act::next, Pace::normal);
  EXPECT_TRUE(after(laying, Act::end, Pace::normal).ended);
  const CuttingView asked = after(cutting, Act::end, Pace::normal);
  EXPECT_FALSE(asked.ended);
  EXPECT_FALSE(asked.message.empty());
  EXPECT_TRUE(after(asked, Act::end, Pace::normal).ended);
  EXPECT_FALSE(after(after(asked, Act::legend, Pace::normal), Act::end, Pace::normal).ended);
}

TEST(CuttingView, SaysWhichSeamIsCutAndWhatComesNext) {
  CuttingView view = after(demo_view(), Act::next, Pace::normal);
  const Cut& cut = view.plan.front();
  EXPECT_EQ(stroke_name(view.piece, cut), "side seam") << "the longest";
  const Legend legend = legend_of(view);
  EXPECT_NE(legend.state.front().find("SIDE SEAM"), std::string::npos);
  EXPECT_TRUE(std::any_of(legend.state.begin(), legend.state.end(),
                          [](const std::string& line) { return line.starts_with("then: "); }));
}

TEST(CuttingView, WhatIsCutAlreadyIsGivenToTheCautions) {
  CuttingView view = after(demo_view(), Act::next, Pace::normal);
  const Polyline lit{{-900, -900}, {900, -900}, {900, 900}, {-900, 900}};
  view.piece.fold.reset();
  view = after(view, Act::next, Pace::normal);
  ASSERT_EQ(view.cut, 1);
  // A first stroke that lay across the present one.
  Cut& present = view.plan[1];
  const Point middle = drafting::point_at(present.path, 0.5 * drafting::length(present.path));
  view.plan[0].path = {middle - Point(30, 31), middle + Point(30, 31)};
  const auto crossing = [](const std::vector<std::string>& warnings) {
    return std::any_of(warnings.begin(), warnings.end(), [](const std::string& warning) {
      return warning.find("crosses one that is cut") != std::string::npos;
    });
  };
  EXPECT_TRUE(crossing(warnings_of(view, lit)));
  view.plan[0].path = {middle + Point(900, 0), middle + Point(930, 0)};
  EXPECT_FALSE(crossing(warnings_of(view, lit)));
}

TEST(Legend, NamesEveryKeyThatDoesSomething) {
  CuttingView view = demo_view();
  const auto text = [](const CuttingView& shown) {
    std::string all;
    for (const std::string& line : legend_of(shown).keys) all += line + "\n";
    return all;
  };
  for (const char* key :
       {"arrows", "mouse", "Q E", "F ", "H:", "G:", "shift", "ctrl", "space", "page down", "L ", "Esc"})
    EXPECT_NE(text(view).find(key), std::string::npos) << key;
  view = after(view, Act::next, Pace::normal);
  for (const char* key : {"space", "page down", "page up", "U:", "K:", "G:", "L ", "Esc"})
    EXPECT_NE(text(view).find(key), std::string::npos) << key;
}

}  // namespace
}  // namespace cowlcast::projector
