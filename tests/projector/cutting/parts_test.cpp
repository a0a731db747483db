#include "projector/cutting/parts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

#include "drafting/geometry/polyline.h"
#include "projector/cutting/cross_marks.h"
#include "projector/cutting/view_marks.h"
#include "tests/projector/test_piece.h"

namespace cowlcast::projector {
namespace {

const Polyline kLit{{-600, -350}, {600, -350}, {600, 350}, {-600, 350}};

CuttingView pressed(CuttingView view, Act act, int times = 1) {
  for (int i = 0; i < times; ++i) view = after(std::move(view), act, Pace::normal);
  return view;
}

// The small front 4.5 times as large, which is 1.41 m long, on its side in a light of 1.2 m: two parts.
CuttingView in_two_parts() {
  drafting::Piece piece = testing::small_front();
  for (Polyline* line : {&piece.seam_line, &piece.cut_line})
    for (Point& point : *line) point *= 4.5;
  piece.edges.clear();
  piece.notches.clear();
  piece.points.clear();
  piece.grain.reset();
  piece.fold.reset();
  const Laying laying{.angle = -std::numbers::pi / 2};
  CuttingView view =
      in_parts(new_view(piece, cuts_of(cut_runs(piece), Blade{}, {}), laying, FrameStyle{}), kLit);
  EXPECT_EQ(view.parts.size(), 2u);
  return view;
}

// The cloth came to lie a little off and turned by 2 degrees.
Laying as_it_came_to_lie(const CuttingView& view) {
  return turned_about({view.laying.x + 3, view.laying.y, view.laying.angle}, {0, 0}, 0.035);
}

CuttingView pointed(CuttingView view, const Laying& truth, const std::vector<size_t>& which) {
  const std::vector<Point> crosses = view.crosses;
  for (const size_t i : which) view = after_pointing(std::move(view), mat_from_piece(truth, crosses[i]));
  return view;
}

std::string all_of(const Legend& legend) {
  std::string text;
  for (const std::string& line : legend.state) text += line + "\n";
  for (const std::string& line : legend.keys) text += line + "\n";
  return text;
}

TEST(Parts, AreFoundAgainByChalkMarksInAnyOrder) {
  const CuttingView next = pressed(in_two_parts(), Act::part);
  ASSERT_GE(next.crosses.size(), 3u);
  ASSERT_TRUE(next.to_find);
  const Laying truth = as_it_came_to_lie(next);
  std::vector<size_t> order(next.crosses.size());
  for (size_t i = 0; i < order.size(); ++i) order[i] = i;
  do {
    const CuttingView view = pointed(next, truth, order);
    EXPECT_FALSE(view.to_find);
    EXPECT_NE(view.message.find("Found again"), std::string::npos) << view.message;
    EXPECT_LT(apart(view.laying, truth, view.piece.cut_line), 1e-6);
  } while (std::next_permutation(order.begin(), order.end()));
}

TEST(Parts, AreFoundAgainByTwoMarksWhenThoseSayEnough) {
  const CuttingView next = pressed(in_two_parts(), Act::part);
  const Laying truth = as_it_came_to_lie(next);
  CuttingView view = pointed(next, truth, {0, next.crosses.size() - 1});
  EXPECT_TRUE(view.to_find);
  view = pressed(view, Act::next);
  EXPECT_FALSE(view.to_find) << view.message;
  EXPECT_TRUE(is_laying(view));
  EXPECT_LT(apart(view.laying, truth, view.piece.cut_line), 1e-6);
  // It states more than all marks would have left.
  ASSERT_TRUE(part_error(view).has_value());
  std::vector<size_t> all(next.crosses.size());
  for (size_t i = 0; i < all.size(); ++i) all[i] = i;
  EXPECT_GT(*part_error(view), *part_error(pointed(next, truth, all)));
  EXPECT_NE(all_of(legend_of(view)).find("within"), std::string::npos);
  // One alone is not enough, and is not forgotten.
  view = pressed(pointed(next, truth, {0}), Act::next);
  EXPECT_TRUE(view.to_find);
  EXPECT_EQ(view.pointed.size(), 1u);
  EXPECT_NE(view.message.find("Two marks at least"), std::string::npos);
}

TEST(Parts, AreNotCutBeforeTheyAreFound) {
  CuttingView view = pressed(in_two_parts(), Act::part);
  view = pressed(view, Act::next);
  EXPECT_TRUE(view.to_find);
  EXPECT_TRUE(is_laying(view));
  EXPECT_NE(view.message.find("Do all your marks lie"), std::string::npos);
  EXPECT_TRUE(pressed(pressed(view, Act::grain), Act::next).to_find) << "another key in between is a no";
  view = pressed(view, Act::next);  // moved until the marks met
  EXPECT_FALSE(view.to_find);
  EXPECT_TRUE(is_laying(view));
  EXPECT_GT(part_error(view).value_or(0.0), 0.0);
  EXPECT_EQ(pressed(view, Act::next).phase, Phase::cutting);
  // Nor is the next one gone to.
  const CuttingView unfound = pressed(pressed(in_two_parts(), Act::part), Act::part);
  EXPECT_EQ(unfound.part, 1u);
  EXPECT_NE(unfound.message.find("yet to be found"), std::string::npos);
}

TEST(Parts, GoBackWhileNothingOfTheNewOneIsCut) {
  const CuttingView first = pressed(in_two_parts(), Act::next, 3);  // two strokes cut
  ASSERT_EQ(first.cut, 2);
  const CuttingView next = pressed(first, Act::part);
  EXPECT_NE(all_of(legend_of(next)).find("page up"), std::string::npos);
  CuttingView back = pressed(next, Act::back);
  EXPECT_EQ(back.part, 0u);
  EXPECT_EQ(back.phase, Phase::cutting);
  EXPECT_EQ(back.cut, 2);
  EXPECT_EQ(apart(back.laying, first.laying, first.piece.cut_line), 0.0);
  EXPECT_FALSE(back.to_find);
  // Mark by mark, and from what was found as well.
  const Laying truth = as_it_came_to_lie(next);
  CuttingView view = pointed(next, truth, {0, 3});
  view = pressed(view, Act::back);
  EXPECT_EQ(view.pointed.size(), 1u);
  view = pressed(pointed(view, truth, {3}), Act::next);
  ASSERT_FALSE(view.to_find) << view.message;
  view = pressed(pressed(view, Act::next), Act::back);  // begun to cut, and not
  EXPECT_TRUE(is_laying(view));
  EXPECT_EQ(view.cut, 2);
  view = pressed(view, Act::back);
  EXPECT_TRUE(view.to_find);
  EXPECT_EQ(pressed(view, Act::back).part, 0u);
  // Not once something is cut.
  view = pressed(pointed(next, truth, {0, 3}), Act::next, 3);
  ASSERT_EQ(view.cut, 3);
  view = pressed(pressed(view, Act::unlock), Act::back);
  EXPECT_EQ(view.part, 1u);
  EXPECT_FALSE(view.to_find);
  EXPECT_FALSE(can_go_back_in_parts(view));
}

TEST(Parts, StateNoErrorOfWhatWasMovedByHand) {
  const CuttingView next = pressed(in_two_parts(), Act::part);
  const CuttingView found = pointed(next, as_it_came_to_lie(next), {0, 1, 2, 3});
  ASSERT_TRUE(part_error(found).has_value()) << found.message;
  CuttingView view = after(found, Act::left, Pace::fine);
  EXPECT_FALSE(part_error(view).has_value());
  EXPECT_NE(all_of(legend_of(view)).find("moved by hand"), std::string::npos);
  EXPECT_FALSE(part_error(pressed(view, Act::next)).has_value());
  EXPECT_TRUE(part_error(pressed(found, Act::next)).has_value());
}

TEST(Parts, AreDividedAnewWhenThePieceIsFlippedOrTurned) {
  const CuttingView start = in_two_parts();
  const CuttingView flipped = pressed(start, Act::flip);
  EXPECT_TRUE(flipped.laying.mirrored);
  ASSERT_EQ(flipped.parts.size(), 2u);
  for (const LightStep& part : flipped.parts) EXPECT_TRUE(part.laying.mirrored);
  for (const size_t at : {0u, 1u})
    for (const Point& cross : flipped.parts[0].chalk)
      EXPECT_TRUE(drafting::contains(kLit, mat_from_piece(flipped.parts[at].laying, cross)));
  // In passing it is too deep for the light, and that is said; half a turn on it is well again.
  CuttingView view = start;
  for (int i = 0; i < 18; ++i) view = after(view, Act::turn_left, Pace::coarse);
  EXPECT_TRUE(view.parts.empty());
  EXPECT_NE(view.message.find("deep"), std::string::npos) << view.message;
  for (int i = 0; i < 18; ++i) view = after(view, Act::turn_left, Pace::coarse);
  EXPECT_EQ(view.parts.size(), 2u);
  // The parts after the first lie the same way up.
  EXPECT_FALSE(pressed(pressed(start, Act::part), Act::flip).laying.mirrored);
}

TEST(CrossDrawing, TellsByFormWhatEachCrossIsFor) {
  const auto lines = [](const CuttingView& view) {
    const Drawing drawing = cross_drawing(view);
    return drawing.marks.empty() ? std::vector<Polyline>{} : drawing.marks.front().lines;
  };
  const auto rings = [&](const CuttingView& view) {
    const auto all = lines(view);
    return std::count_if(all.begin(), all.end(), [](const Polyline& line) { return line.size() > 2; });
  };
  // Whether an arm comes to the middle of a cross at `place`.
  const auto whole = [&](const CuttingView& view, const Point& place) {
    const auto all = lines(view);
    return std::any_of(all.begin(), all.end(), [&](const Polyline& line) {
      return (line.front() - place).norm() < 1.0 || (line.back() - place).norm() < 1.0;
    });
  };
  const CuttingView chalk = in_two_parts();
  const CuttingView meet = pressed(chalk, Act::part);
  const Laying truth = as_it_came_to_lie(meet);
  EXPECT_TRUE(whole(chalk, mat_from_piece(chalk.laying, chalk.parts[0].chalk[0])));
  EXPECT_FALSE(whole(meet, mat_from_piece(meet.laying, meet.crosses[0])));
  EXPECT_EQ(rings(chalk), 0);
  EXPECT_EQ(rings(meet), 0);
  EXPECT_EQ(rings(pointed(meet, truth, {0})), 1);
  EXPECT_EQ(rings(pointed(meet, truth, {0, 1, 2, 3})), 4);
  EXPECT_TRUE(lines(pressed(pointed(meet, truth, {0, 1, 2, 3}), Act::next)).empty());
  const Drawing drawing = cross_drawing(chalk);
  ASSERT_EQ(drawing.words.size(), 4u);
  for (size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(drawing.words[i].text, std::to_string(i + 1));
    for (const Point& place : drawing.words[i].places)
      EXPECT_LT((place - mat_from_piece(chalk.laying, chalk.parts[0].chalk[i])).norm(), 30.0);
  }
  // The cut line alone is white.
  EXPECT_NE(drawing.marks.front().colour, FrameStyle{}.cut);
}

}  // namespace
}  // namespace cowlcast::projector
