// Frames thrown by the simulated projector and read back: one small room here;
// `tests/bench/projector/drawn_lines` goes through many.
#include "tests/projector/drawn_lines.h"

#include <gtest/gtest.h>

namespace cowlcast::projector {
namespace {

TEST(DrawnLines, LieWhereTheTrueMapSaysOnThickCloth) {
  const testing::TrueTable table = testing::true_table(12, {1280, 800});
  const testing::DrawnLines at(table, 4.0, 3.0);
  testing::Drawn drawn;
  at.lines_of(testing::cowl_front(), 0.05, drawn);
  at.marks_of(testing::cornered_piece(), -0.3, Blade{45.0, 4.0, 0.5}, drawn);
  ASSERT_GT(drawn.lines.mm.size(), 500u);
  EXPECT_EQ(drawn.lines.missing, 0);
  EXPECT_LE(drawn.lines.share(0.95), 0.3);
  EXPECT_LE(drawn.lines.worst(), 0.5);
  ASSERT_GT(drawn.stops.mm.size(), 20u);
  EXPECT_LE(drawn.stops.worst(), 0.5);
  ASSERT_GT(drawn.bands.mm.size(), 100u);
  EXPECT_LE(drawn.bands.worst(), 0.5);
}

TEST(DrawnLines, WouldShowAnErrorOfHalfAPixel) {
  testing::TrueTable table = testing::true_table(12, {1280, 800});
  testing::TrueTable shifted = table;
  shifted.map.lens.centre += Eigen::Vector2d(0.5, 0.5);
  testing::Drawn drawn, off;
  testing::DrawnLines(table, 0.0, 8.0).lines_of(testing::cornered_piece(), 0.0, drawn);
  testing::DrawnLines(shifted, 0.0, 8.0).lines_of(testing::cornered_piece(), 0.0, off);
  EXPECT_GT(off.lines.share(0.5), drawn.lines.share(0.5) + 0.2);
}

}  // namespace
}  // namespace cowlcast::projector
