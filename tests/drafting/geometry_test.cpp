#include <clipper.hpp>
#include <numbers>

#include "drafting/geometry/curves.h"
#include "drafting/geometry/fairing.h"
#include "drafting/geometry/offset.h"
#include "drafting/geometry/polyline.h"
#include "tests/drafting/geos_reference.h"
#include "tests/drafting/support.h"

namespace cowlcast::drafting {
namespace {

TEST(Polyline, AreaAndLengthAgreeWithGeos) {
  std::mt19937 random(11);
  for (int i = 0; i < 20; ++i) {
    const Piece piece = block_front(test::random_measures(random));
    const test::GeosOutline reference(piece.seam_line);
    EXPECT_NEAR(signed_area(piece.seam_line), reference.area(), 1e-6);
    Polyline closed = piece.seam_line;
    closed.push_back(closed.front());
    EXPECT_NEAR(length(closed), reference.perimeter(), 1e-9);
    EXPECT_TRUE(reference.simple());
    EXPECT_FALSE(self_crossing(piece.seam_line));
  }
}

TEST(Polyline, SelfCrossingAgreesWithGeosOnRandomPolygons) {
  std::mt19937 random(12);
  int crossing_ones = 0;
  for (int i = 0; i < 2000; ++i) {
    Polyline outline;
    const int n = 4 + static_cast<int>(random() % 5);
    for (int k = 0; k < n; ++k)
      outline.push_back({test::between(random, 0, 10), test::between(random, 0, 10)});
    const bool crosses = self_crossing(outline).has_value();
    crossing_ones += crosses;
    EXPECT_EQ(crosses, !test::GeosOutline(outline).simple()) << "polygon " << i;
  }
  EXPECT_GT(crossing_ones, 500);
  EXPECT_LT(crossing_ones, 1900);
}

TEST(Polyline, SelfCrossingSeesTouchingAndFoldedSides) {
  EXPECT_TRUE(self_crossing({{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}}));        // a corner on a side
  EXPECT_TRUE(self_crossing({{0, 0}, {10, 0}, {4, 0}, {4, 10}}));                  // folds back
  EXPECT_TRUE(self_crossing({{0, 0}, {10, 0}, {10, 5}, {8, 0}, {2, 0}, {0, 5}}));  // runs along a side
  EXPECT_FALSE(self_crossing({{0, 0}, {10, 0}, {10, 10}, {0, 10}}));
}

TEST(Polyline, WalksAlongItself) {
  const Polyline line{{0, 0}, {3, 4}, {3, 10}};
  EXPECT_DOUBLE_EQ(length(line), 11.0);
  EXPECT_NEAR((point_at(line, 7.0) - Point(3, 6)).norm(), 0.0, 1e-12);
  EXPECT_NEAR(length(between(line, 2.5, 9.0)), 6.5, 1e-12);
  const Foot foot = nearest(line, {5, 6});
  EXPECT_NEAR(foot.along, 7.0, 1e-12);
  EXPECT_NEAR(foot.distance, 2.0, 1e-12);
  EXPECT_NEAR((mirrored(Point(5, 6), {{3, 0}, {3, 9}}) - Point(1, 6)).norm(), 0.0, 1e-12);
}

TEST(Curves, StayWithinTheirTolerance) {
  // Distance of dense true points from the polyline.
  const Point a(0, 0), c1(40, 180), c2(260, -90), b(300, 60);
  Polyline cubic{a}, quadratic{a}, arc{Point(120, 30)};
  add_cubic(cubic, c1, c2, b);
  add_quadratic(quadratic, c1, b);
  add_ellipse_arc(arc, {0, 30}, {120, 0}, {20, 70}, 0.0, 4.0);
  double worst_cubic = 0, worst_quadratic = 0, worst_arc = 0;
  for (int i = 0; i <= 5000; ++i) {
    const double t = i / 5000.0, s = 1 - t;
    worst_cubic = std::max(
        worst_cubic,
        nearest(cubic, s * s * s * a + 3 * s * s * t * c1 + 3 * s * t * t * c2 + t * t * t * b).distance);
    worst_quadratic =
        std::max(worst_quadratic, nearest(quadratic, s * s * a + 2 * s * t * c1 + t * t * b).distance);
    const Point on = Point(0, 30) + std::cos(4 * t) * Point(120, 0) + std::sin(4 * t) * Point(20, 70);
    worst_arc = std::max(worst_arc, nearest(arc, on).distance);
  }
  EXPECT_LT(worst_cubic, 0.01);
  EXPECT_LT(worst_quadratic, 0.01);
  EXPECT_LT(worst_arc, 0.01);
  EXPECT_LT(cubic.size(), 400u);
}

double sharpest_turn(const Polyline& line) {
  double sharpest = 0.0;
  for (size_t i = 1; i + 1 < line.size(); ++i) {
    const Point a = line[i] - line[i - 1], b = line[i + 1] - line[i];
    sharpest = std::max(sharpest, std::abs(std::atan2(a.x() * b.y() - a.y() * b.x(), a.dot(b))));
  }
  return sharpest;
}

TEST(Fairing, SpreadsAKinkAndKeepsLengthAndEnds) {
  for (const double turn : {0.05, 0.2, 0.4, 0.6}) {
    const Polyline line{{0, 0}, {60, 0}, {60 + 70 * std::cos(turn), 70 * std::sin(turn)}};
    const Polyline fair = faired(line, {60.0}, 40.0);
    EXPECT_NEAR(length(fair), length(line), 1e-11);
    EXPECT_LT((fair.front() - line.front()).norm(), 1e-12);
    EXPECT_LT((fair.back() - line.back()).norm(), 1e-12);
    EXPECT_LT(sharpest_turn(fair), 0.25 * turn);
    for (const Point& p : fair) EXPECT_LT(nearest(line, p).distance, 6.0);
  }
}

TEST(Fairing, SquaredStartOfAStraightLineIsACircularArc) {
  const double slant = 0.3;
  const Polyline line{{0, 0}, {240 * std::cos(slant), -240 * std::sin(slant)}};
  const Polyline hem = squared_start(line);
  EXPECT_EQ(hem.front().x(), 0.0);
  EXPECT_EQ(hem[0].y(), hem[1].y());
  EXPECT_EQ(hem.back(), line.back());
  const Point end = hem.back() - hem[hem.size() - 2];
  EXPECT_NEAR(std::atan2(end.y(), end.x()), -slant, 1e-9);
  // The arc square to x = 0 that ends there at that slant has radius x / sin(slant).
  const double radius = line.back().x() / std::sin(slant);
  const Point centre(0.0, hem.front().y() - radius);
  for (const Point& p : hem) EXPECT_NEAR((p - centre).norm(), radius, 1e-4 * radius);
}

// --- offsets against Clipper (libpolyclipping 6.4, Angus Johnson) ---

constexpr double clipper_scale = 1e6;  // integer units a millimetre

ClipperLib::Path clipper_path(const Polyline& outline) {
  ClipperLib::Path path;
  for (const Point& p : outline) {
    path.emplace_back(std::llround(p.x() * clipper_scale), std::llround(p.y() * clipper_scale));
  }
  return path;
}

double clipper_area(const ClipperLib::Paths& paths) {
  double sum = 0.0;
  for (const auto& path : paths) sum += ClipperLib::Area(path);
  return sum / (clipper_scale * clipper_scale);
}

ClipperLib::Paths clipper_offset(const Polyline& outline, double distance) {
  ClipperLib::ClipperOffset offset(mitre_limit);
  offset.AddPath(clipper_path(outline), ClipperLib::jtMiter, ClipperLib::etClosedPolygon);
  ClipperLib::Paths result;
  offset.Execute(result, distance * clipper_scale);
  return result;
}

double difference_area(const Polyline& ours, const ClipperLib::Paths& theirs) {
  ClipperLib::Clipper clipper;
  clipper.AddPath(clipper_path(ours), ClipperLib::ptSubject, true);
  clipper.AddPaths(theirs, ClipperLib::ptClip, true);
  ClipperLib::Paths difference;
  clipper.Execute(ClipperLib::ctXor, difference, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  return clipper_area(difference);
}

TEST(Offset, AgreesWithClipperForOneAllowanceAllRound) {
  std::mt19937 random(13);
  for (int i = 0; i < 30; ++i) {
    const Piece piece = block_front(test::random_measures(random));
    for (const double distance : {3.0, 10.0, 25.0}) {
      const Polyline ours =
          offset_outline(piece.seam_line, std::vector<double>(piece.seam_line.size(), distance));
      EXPECT_FALSE(self_crossing(ours));
      // Less than 1 mm² of some 150 000: the rounding of the two at a curve's corners.
      EXPECT_LT(difference_area(ours, clipper_offset(piece.seam_line, distance)), 1.0);
    }
  }
}

TEST(Offset, CutsAwayTheLoopsOfTightInnerCurves) {
  // A slot of radius 6 mm, moved out by 10 mm: the slot closes up.
  Polyline outline{{0, 0}, {100, 0}, {100, 80}, {56, 80}, {56, 40}};
  add_ellipse_arc(outline, {50, 40}, {6, 0}, {0, 6}, 0.0, -std::numbers::pi);
  outline.push_back({44, 80});
  outline.push_back({0, 80});
  const Polyline ours = offset_outline(outline, std::vector<double>(outline.size(), 10.0));
  EXPECT_FALSE(self_crossing(ours));
  EXPECT_LT(difference_area(ours, clipper_offset(outline, 10.0)), 1e-3);
}

TEST(Offset, GivesEachSideItsOwnDistance) {
  const Polyline square{{0, 0}, {100, 0}, {100, 100}, {0, 100}};
  const Polyline moved = offset_outline(square, {25, 10, 5, 0});
  ASSERT_EQ(moved.size(), 4u);
  EXPECT_NEAR((moved[0] - Point(0, -25)).norm(), 0.0, 1e-12);
  EXPECT_NEAR((moved[1] - Point(110, -25)).norm(), 0.0, 1e-12);
  EXPECT_NEAR((moved[2] - Point(110, 105)).norm(), 0.0, 1e-12);
  EXPECT_NEAR((moved[3] - Point(0, 105)).norm(), 0.0, 1e-12);
}

TEST(Offset, SquaresOffSpikesBeyondTheMitreLimit) {
  const Polyline spike{{0, 0}, {200, 10}, {0, 20}};
  const Polyline ours = offset_outline(spike, {10, 10, 10});
  EXPECT_LT(box_of(ours).high.x(), 210.0 + 1e-9);
  EXPECT_LT(difference_area(ours, clipper_offset(spike, 10.0)), 1e-3);
}

}  // namespace
}  // namespace cowlcast::drafting
