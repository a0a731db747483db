#include "drafting/intake/svg_path.h"

#include <numbers>

#include "tests/drafting/support.h"

namespace cowlcast::drafting {
namespace {

const Eigen::Affine2d same = Eigen::Affine2d::Identity();

Polyline line_of(const std::string& data) {
  const auto lines = polylines_from_path(data, same);
  EXPECT_EQ(lines.size(), 1u) << data;
  return lines.empty() ? Polyline{} : lines[0];
}

void expect_line(const std::string& data, const Polyline& expected) {
  const Polyline line = line_of(data);
  ASSERT_EQ(line.size(), expected.size()) << data;
  for (size_t i = 0; i < line.size(); ++i) EXPECT_LT((line[i] - expected[i]).norm(), 1e-12) << data;
}

double furthest(const Polyline& a, const Polyline& b) {
  double worst = 0.0;
  for (const Point& p : a) worst = std::max(worst, nearest(b, p).distance);
  for (const Point& p : b) worst = std::max(worst, nearest(a, p).distance);
  return worst;
}

TEST(SvgPath, StraightCommands) {
  expect_line("M1 2 L3 4 5 6", {{1, 2}, {3, 4}, {5, 6}});
  expect_line("m1 2 l3 4 5 6", {{1, 2}, {4, 6}, {9, 12}});
  expect_line("M1 2 3 4", {{1, 2}, {3, 4}});
  expect_line("m1 2 3 4", {{1, 2}, {4, 6}});
  expect_line("M1 2H5V9h-1v-2", {{1, 2}, {5, 2}, {5, 9}, {4, 9}, {4, 7}});
  expect_line("M0 0H5 6 7V1 2", {{0, 0}, {5, 0}, {6, 0}, {7, 0}, {7, 1}, {7, 2}});
  expect_line("M0 0 10 0 10 10z", {{0, 0}, {10, 0}, {10, 10}, {0, 0}});
}

TEST(SvgPath, NumbersAsSvgWritesThem) {
  expect_line("M.5.5-1-2", {{0.5, 0.5}, {-1, -2}});
  expect_line("M1e1,2E-1L+3 ,4.", {{10, 0.2}, {3, 4}});
  expect_line(" \n M 1 \t 2\r\n,3 4 ", {{1, 2}, {3, 4}});
  expect_line("M0 0L1-1", {{0, 0}, {1, -1}});
}

TEST(SvgPath, CurvesEndWhereTheyShouldAndRelativeEqualsAbsolute) {
  EXPECT_LT(furthest(line_of("M10 20C30 90 80 -20 90 40"), line_of("m10 20c20 70 70 -40 80 20")), 1e-9);
  EXPECT_LT(furthest(line_of("M10 20Q30 90 90 40"), line_of("m10 20q20 70 80 20")), 1e-9);
  // A smooth curve's first control is the last one's reflection.
  EXPECT_LT(furthest(line_of("M0 0C10 40 40 60 60 60S120 30 130 0"),
                     line_of("M0 0C10 40 40 60 60 60C80 60 120 30 130 0")),
            1e-9);
  EXPECT_LT(furthest(line_of("M0 0C10 40 40 60 60 60s60 -30 70 -60"),
                     line_of("M0 0C10 40 40 60 60 60C80 60 120 30 130 0")),
            1e-9);
  EXPECT_LT(furthest(line_of("M0 0Q20 40 60 30T120 0t30 20"),
                     line_of("M0 0Q20 40 60 30Q100 20 120 0Q140 -20 150 20")),
            1e-9);
  // After another command the control falls on the current point.
  EXPECT_LT(furthest(line_of("M0 0L5 5S40 0 50 50"), line_of("M0 0L5 5C5 5 40 0 50 50")), 1e-9);
  EXPECT_LT(furthest(line_of("M0 0L5 5T50 50"), line_of("M0 0L50 50")), 1e-9);
}

TEST(SvgPath, CubicPassesThroughItsMiddle) {
  // De Casteljau at one half: (p0 + 3 p1 + 3 p2 + p3) / 8.
  const Polyline line = line_of("M0 0C0 80 120 80 120 0");
  EXPECT_LT(nearest(line, {60, 60}).distance, 0.01);
}

TEST(SvgPath, ArcsLieOnTheirCircleInAllFourFlagPairs) {
  // Quarter ends of a circle of radius 50; W3C SVG 1.1, 8.3.8: large-arc and sweep choose one of four.
  struct Case {
    const char* flags;
    Point centre;
    double turn;
  };
  const Case cases[] = {
      {"0 0", {50, 0}, 0.5}, {"0 1", {0, 50}, 0.5}, {"1 0", {0, 50}, 1.5}, {"1 1", {50, 0}, 1.5}};
  for (const Case& c : cases) {
    // y down: from (0, 0) to (50, 50) on a circle of radius 50.
    const Polyline line = line_of(std::string("M0 0A50 50 0 ") + c.flags + " 50 50");
    for (const Point& p : line) EXPECT_NEAR((p - c.centre).norm(), 50.0, 1e-9) << c.flags;
    EXPECT_NEAR(length(line), c.turn * std::numbers::pi * 50.0, 0.05) << c.flags;
  }
}

TEST(SvgPath, ArcCornerCases) {
  expect_line("M0 0A0 50 0 0 1 30 40", {{0, 0}, {30, 40}});  // no radius: a line
  // Radii too small grow until they reach: a half circle of radius 25.
  const Polyline half = line_of("M0 0A1 1 0 0 1 30 40");
  for (const Point& p : half) EXPECT_NEAR((p - Point(15, 20)).norm(), 25.0, 1e-9);
  // Flags need no separators.
  EXPECT_LT(furthest(line_of("M0 0a25 25 0 0150 0"), line_of("M0 0a25 25 0 0 1 50 0")), 1e-12);
  // A turned ellipse: every point satisfies its equation.
  const Polyline ellipse = line_of("M10 10A80 30 35 1 0 60 40");
  const Eigen::Rotation2Dd turn(35.0 * std::numbers::pi / 180.0);
  // Centre by symmetry: fit from three points on it.
  const auto local = [&](const Point& p) {
    const Point q = turn.inverse() * p;
    return Point(q.x() / 80.0, q.y() / 30.0);
  };
  const Point a = local(ellipse[0]), b = local(ellipse[ellipse.size() / 3]), c = local(ellipse.back());
  Eigen::Matrix2d m;
  m << 2 * (b - a).x(), 2 * (b - a).y(), 2 * (c - a).x(), 2 * (c - a).y();
  const Point centre =
      m.inverse() * Point(b.squaredNorm() - a.squaredNorm(), c.squaredNorm() - a.squaredNorm());
  for (const Point& p : ellipse) EXPECT_NEAR((local(p) - centre).norm(), 1.0, 1e-9);
}

TEST(SvgPath, SubpathsAndDrawingOnAfterClosing) {
  EXPECT_EQ(polylines_from_path("M0 0L1 0M5 5L6 6", same).size(), 2u);
  const auto lines = polylines_from_path("M0 0L10 0L10 10ZL-5 -5", same);
  ASSERT_EQ(lines.size(), 2u);
  EXPECT_EQ(lines[1].front(), Point(0, 0));
  EXPECT_TRUE(polylines_from_path("", same).empty());
}

TEST(SvgPath, RefusesWhatIsNoPathAndSaysWhere) {
  const auto read = [](const char* data) { return polylines_from_path(data, same); };
  EXPECT_REFUSED(read("L1 2"), "begin with M");
  EXPECT_REFUSED(read("M1"), "a number is missing");
  EXPECT_REFUSED(read("M1 2 X3"), "\"X\" is no path command");
  EXPECT_REFUSED(read("M1 2 L3,,4"), "a number is missing");
  EXPECT_REFUSED(read("M1 2 L3 4,"), "after a comma");
  EXPECT_REFUSED(read("M0 0 L NaN 3"), "a number is missing");
  EXPECT_REFUSED(read("M0 0 L 1e999 3"), "a number is missing or too large");
  EXPECT_REFUSED(read("M0 0A5 5 0 2 1 9 9"), "flag must be 0 or 1");
  EXPECT_REFUSED(read("M0 0 L 5 5 5"), "character 12");
}

TEST(SvgTransform, AllKinds) {
  const Point p(2, 3);
  const auto at = [&](const char* text) { return Point(transform_from_text(text) * p); };
  EXPECT_LT((at("translate(10)") - Point(12, 3)).norm(), 1e-12);
  EXPECT_LT((at("translate(10,-5)") - Point(12, -2)).norm(), 1e-12);
  EXPECT_LT((at("scale(2)") - Point(4, 6)).norm(), 1e-12);
  EXPECT_LT((at("scale(2 3)") - Point(4, 9)).norm(), 1e-12);
  EXPECT_LT((at("rotate(90)") - Point(-3, 2)).norm(), 1e-12);
  EXPECT_LT((at("rotate(90, 2, 0)") - Point(-1, 0)).norm(), 1e-12);
  EXPECT_LT((at("matrix(1 2 3 4 5 6)") - Point(16, 22)).norm(), 1e-12);
  EXPECT_LT((at("skewX(45)") - Point(5, 3)).norm(), 1e-12);
  EXPECT_LT((at("skewY(45)") - Point(2, 5)).norm(), 1e-12);
  EXPECT_LT((at("translate(10) , scale(2)") - Point(14, 6)).norm(), 1e-12);  // left one applied last
  EXPECT_REFUSED(transform_from_text("turn(3)"), "turn(3)");
  EXPECT_REFUSED(transform_from_text("scale(1 2 3)"), "scale");
  EXPECT_REFUSED(transform_from_text("scale(2"), "scale");
}

}  // namespace
}  // namespace cowlcast::drafting
