#include "projector/frame/piece_marks.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "drafting/geometry/polyline.h"
#include "tests/projector/test_map.h"
#include "tests/projector/test_piece.h"

namespace cowlcast::projector {
namespace {

TEST(CutRuns, LeaveOutTheFold) {
  const drafting::Piece piece = testing::small_front();
  const std::vector<Polyline> runs = cut_runs(piece);
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_LT((runs[0].front() - Point(0, -25)).norm(), 1e-12);
  EXPECT_LT((runs[0].back() - Point(0, 213)).norm(), 1e-12);
  EXPECT_EQ(runs[0].size(), piece.cut_line.size());
}

TEST(CutRuns, WithoutAFoldTheOutlineIsOneRunThatCloses) {
  drafting::Piece piece = testing::small_front();
  piece.fold.reset();
  const std::vector<Polyline> runs = cut_runs(piece);
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_EQ(runs[0].front(), runs[0].back());
  EXPECT_EQ(runs[0].size(), piece.cut_line.size() + 1);
}

TEST(PieceMarks, EachPartIsShownOrNot) {
  const drafting::Piece piece = testing::small_front();
  const Shown nothing{false, false, false, false, false, false, false, false};
  EXPECT_TRUE(piece_marks(piece, {}, FrameStyle{}, nothing).empty());
  bool Shown::*const parts[] = {&Shown::cut_line, &Shown::seam_line, &Shown::notches, &Shown::marks,
                                &Shown::grain,    &Shown::fold,      &Shown::label,   &Shown::ground};
  for (const auto part : parts) {
    Shown one = nothing;
    one.*part = true;
    EXPECT_FALSE(piece_marks(piece, {}, FrameStyle{}, one).empty());
  }
}

TEST(PieceMarks, ABacksNotchIsTwoPinsClearOfEachOther) {
  drafting::Piece piece = testing::small_front();
  const Shown notches_only{false, false, true, false, false, false, false, false};
  ASSERT_EQ(piece_marks(piece, {}, FrameStyle{}, notches_only).at(0).lines.size(), 1u);
  piece.notches[0].ticks = 2;
  const std::vector<Mark> marks = piece_marks(piece, {}, FrameStyle{}, notches_only);
  ASSERT_EQ(marks.size(), 2u);
  ASSERT_EQ(marks[0].lines.size(), 2u);
  ASSERT_EQ(marks[1].lines.size(), 2u);
  const Point middle = 0.5 * (marks[0].lines[0][0] + marks[0].lines[1][0]);
  EXPECT_LT((middle - piece.notches[0].cut).norm(), 1e-9);
  double gap = 1e9;
  for (const Point& a : marks[1].lines[0])
    for (const Point& b : marks[1].lines[1]) gap = std::min(gap, (a - b).norm());
  EXPECT_GT(gap, 2.0);
}

TEST(PieceMarks, TheFoldIsNeverDrawnAsACut) {
  const drafting::Piece piece = testing::small_front();
  const Shown cut_only{true, false, false, false, false, false, false, false};
  for (const Mark& mark : piece_marks(piece, {.x = 50}, FrameStyle{}, cut_only))
    for (const Polyline& line : mark.lines)
      for (size_t i = 1; i < line.size(); ++i)
        EXPECT_FALSE(std::abs(line[i].x() - 50) < 1e-9 && std::abs(line[i - 1].x() - 50) < 1e-9);
}

TEST(PieceMarks, CutLineAloneIsTheWholeOutlineInWhite) {
  const drafting::Piece piece = testing::small_front();
  const std::vector<Mark> marks = cut_line_alone(piece, {.x = 5, .y = -7});
  ASSERT_EQ(marks.size(), 1u);
  EXPECT_TRUE(marks[0].closed);
  EXPECT_EQ(marks[0].width, 1.0);
  EXPECT_EQ(marks[0].colour, 0xffffffffu);
  ASSERT_EQ(marks[0].lines[0].size(), piece.cut_line.size());
  EXPECT_LT((marks[0].lines[0][2] - piece.cut_line[2] - Point(5, -7)).norm(), 1e-12);
}

TEST(PieceMarks, TheTwoFoldsDifferInFormAndWords) {
  drafting::Piece piece = testing::small_front();
  piece.edges.push_back({"cowl-edge", {{0, 150}, {90, 150}}});
  piece.edges.push_back({"facing-edge", {{0, 200}, {90, 200}}});
  const Shown folds_only{false, false, false, false, false, true, false, false};
  const Drawing drawing = piece_drawing(piece, {}, FrameStyle{}, folds_only);
  ASSERT_EQ(drawing.marks.size(), 2u);
  const Mark &cloth = drawing.marks[0], &facing = drawing.marks[1];
  EXPECT_EQ(cloth.lines.size(), 2u) << "two lines side by side";
  EXPECT_GT(facing.lines.size(), 4u) << "dashes with ticks";
  bool ticks = false;
  for (const Polyline& line : facing.lines)
    if (std::abs(line.front().x() - line.back().x()) < 1e-9) {
      ticks = true;
      EXPECT_GT(line.back().y(), 150.0) << "towards the facing";
    }
  EXPECT_TRUE(ticks);
  ASSERT_EQ(drawing.words.size(), 2u);
  EXPECT_EQ(drawing.words[0].text, "FOLD OF THE CLOTH");
  EXPECT_NE(drawing.words[1].text.find("FACING"), std::string::npos);
}

TEST(Words, KeepClearOfLinesOfOneAnotherAndOfTheLightsEdge) {
  const Polyline lit{{0, 0}, {400, 0}, {400, 300}, {0, 300}}, line{{0, 150}, {400, 150}};
  const Words over{.text = "FIRST", .height = 12, .places = {{200, 150}, {380, 60}, {200, 60}}};
  const Words same{.text = "SECOND", .height = 12, .places = {{200, 60}, {210, 66}, {200, 240}}};
  const std::vector<Mark> marks = settled({over, same}, {line}, lit);
  ASSERT_EQ(marks.size(), 2u);
  const auto middle = [](const Mark& mark) {
    Polyline all;
    for (const Polyline& outline : mark.lines) all.insert(all.end(), outline.begin(), outline.end());
    const drafting::Box box = drafting::box_of(all);
    return Point(0.5 * (box.low + box.high));
  };
  EXPECT_LT((middle(marks[0]) - Point(200, 60)).norm(), 3.0) << "not on the line, not half in the dark";
  EXPECT_LT((middle(marks[1]) - Point(200, 240)).norm(), 3.0) << "not over the first";
}

TEST(Words, AreBrokenAtSpaces) {
  EXPECT_EQ(in_lines("a bb ccc dddd", 4), "a bb\nccc\ndddd");
  EXPECT_EQ(in_lines("endlessword x", 4), "endlessword\nx");
}

TEST(Writing, StandsUprightAtItsHeightAroundItsMiddle) {
  const Mark mark = writing("HH", {100, 50}, 12.0, 0xffffffff);
  Polyline all;
  for (const Polyline& line : mark.lines) all.insert(all.end(), line.begin(), line.end());
  ASSERT_FALSE(all.empty());
  const drafting::Box box = drafting::box_of(all);
  EXPECT_NEAR(box.height(), 12.0, 0.3);
  EXPECT_NEAR(0.5 * (box.low.x() + box.high.x()), 100, 0.5);
  EXPECT_NEAR(0.5 * (box.low.y() + box.high.y()), 50, 0.5);
}

TEST(Writing, HasStrokesThatPixelsLightFully) {
  // Of a picture 1920 wide over 1.4 m a pixel is 0.73 mm: of three, one is lit fully wherever the stroke
  // lies, and the projector's blur takes nothing of it.
  const Mark mark = writing("I", {0, 0}, FrameStyle().word_height, 0xffffffff);
  ASSERT_EQ(mark.lines.size(), 1u);
  EXPECT_GE(drafting::box_of(mark.lines.front()).width(), 3 * 0.73);
}

}  // namespace
}  // namespace cowlcast::projector
