#include "projector/blade/blade.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

Polyline arc(const Point& centre, double radius, double from, double to, int steps) {
  Polyline line;
  for (int i = 0; i <= steps; ++i) {
    const double angle = from + (to - from) * i / steps;
    line.emplace_back(centre.x() + radius * std::cos(angle), centre.y() + radius * std::sin(angle));
  }
  return line;
}

TEST(Blade, ChordAndTightestCurve) {
  // Plane geometry of circle and chord; the three sizes worked by hand for h = 1.5 mm, 0.5 mm allowed.
  struct Row {
    double diameter, chord, radius;
  };
  for (const Row& row : {Row{45, 8.1, 65}, Row{28, 6.3, 40}, Row{18, 5.0, 25}}) {
    const Blade blade{row.diameter, 1.0, 0.5};
    EXPECT_NEAR(half_chord(blade), row.chord, 0.05);
    EXPECT_NEAR(tightest_radius(blade, 0.5), row.radius, 0.5);
  }
}

TEST(Blade, LargeForLongRunsSmallForCurves) {
  // Common practice, no source.
  const Blade blade{45, 1.0, 0.5};
  EXPECT_EQ(blade_that_fits(500.0, 0.5, blade), 60.0);
  EXPECT_EQ(blade_that_fits(50.0, 0.5, blade), 28.0);
  EXPECT_EQ(blade_that_fits(30.0, 0.5, blade), 18.0);
  EXPECT_EQ(blade_that_fits(10.0, 0.5, blade), std::nullopt);
}

TEST(Blade, RefusesWhatItCannotReachThrough) {
  EXPECT_THROW(half_chord({18, 9.0, 0.5}), drafting::Refusal);
  EXPECT_THROW(half_chord({18, 0.0, 0.0}), drafting::Refusal);
}

// A disc standing upright in the cut, pushed along a path: the places of the cloth's layer at height
// `level` above the blade's lowest point that its edge passes through, taken by brute force.
Polyline swept(const Polyline& path, double from, double to, const Blade& blade, double level) {
  const double radius = blade.diameter / 2.0;
  Polyline marks;
  for (double along = from; along <= to; along += 0.1) {
    const Point axle = drafting::point_at(path, along);
    const Point way =
        (drafting::point_at(path, along + 0.05) - drafting::point_at(path, along - 0.05)).normalized();
    for (double angle = -std::numbers::pi; angle < std::numbers::pi; angle += 0.002) {
      const double height = radius - radius * std::cos(angle);  // of this point of the rim
      if (height <= level) marks.push_back(axle + radius * std::sin(angle) * way);
    }
  }
  return marks;
}

TEST(Blade, SweptDiscTouchesTheCornerFromTheStopMarkAndNoMore) {
  // An L: the cut runs along x to an inner corner at 100 and on along y.
  const Blade blade{45, 1.0, 0.5};
  const Polyline outline{{0, 0}, {100, 0}, {100, -80}, {200, -80}, {200, 120}, {0, 120}};
  std::vector<Cut> cuts = cuts_of({[&] {
                                    Polyline closed = outline;
                                    closed.push_back(outline.front());
                                    return closed;
                                  }()},
                                  blade, {});
  ASSERT_EQ(cuts.size(), 6u);
  const auto first =
      std::find_if(cuts.begin(), cuts.end(), [](const Cut& cut) { return cut.path.front().isZero(1e-9); });
  ASSERT_NE(first, cuts.end());
  EXPECT_EQ(first->start, CutEnd::outer);
  EXPECT_EQ(first->end, CutEnd::inner);
  double farthest = 0.0;
  const double depth = blade.cloth + blade.into_mat;
  for (const Point& mark : swept(first->path, 0.0, first->stop_at, blade, depth))
    farthest = std::max(farthest, mark.x());
  EXPECT_LE(farthest, 100.0 + 0.01);
  EXPECT_GT(farthest, 100.0 - 0.2);
}

TEST(Blade, SweptDiscStraysByTheToleranceOnTheTightestCurve) {
  for (const double diameter : kBladeSizes) {
    const Blade blade{diameter, 1.0, 0.5};
    const double tolerance = 0.5, radius = tightest_radius(blade, tolerance);
    const Polyline path = arc({0, 0}, radius, 0.0, 2.0, 4000);
    double worst = 0.0;
    for (const Point& mark :
         swept(path, 20.0, drafting::length(path) - 20.0, blade, blade.cloth + blade.into_mat))
      worst = std::max(worst, std::abs(mark.norm() - radius));
    EXPECT_LE(worst, tolerance * 1.001) << diameter;
    EXPECT_GE(worst, tolerance * 0.97) << diameter;
  }
}

TEST(Cuts, OuterCornersAreRunThroughAndInnerOnesStoppedShort) {
  const Blade blade{45, 1.0, 0.5};
  const double ahead = half_chord(blade);
  // Counter-clockwise, one notch-like inner corner at (50, 40).
  const Polyline closed{{0, 0}, {100, 0}, {100, 80}, {50, 40}, {0, 80}, {0, 0}};
  const std::vector<Cut> cuts = cuts_of({closed}, blade, {});
  ASSERT_EQ(cuts.size(), 5u);
  int inner = 0;
  for (const Cut& cut : cuts) {
    const double whole = drafting::length(cut.path);
    inner += (cut.start == CutEnd::inner) + (cut.end == CutEnd::inner);
    EXPECT_NEAR(cut.start_at, cut.start == CutEnd::inner ? ahead : 0.0, 1e-9);
    EXPECT_NEAR(cut.stop_at, cut.end == CutEnd::inner ? whole - ahead : whole, 1e-9);
  }
  EXPECT_EQ(inner, 2);
  double sum = 0.0;
  for (const Cut& cut : cuts) sum += drafting::length(cut.path);
  EXPECT_NEAR(sum, drafting::length(closed), 1e-9);
}

TEST(Cuts, SmoothOutlineIsOneCutAndTightStretchesAreFound) {
  const Blade blade{45, 1.0, 0.5};
  Polyline circle = arc({0, 0}, 200, 0, 2 * std::numbers::pi, 800);
  circle.back() = circle.front();
  EXPECT_EQ(cuts_of({circle}, blade, {}).size(), 1u);
  EXPECT_TRUE(cuts_of({circle}, blade, {}).front().tight.empty());

  // Straight, a quarter turn of radius 30, straight: too tight for 45 mm, right for 18 mm.
  Polyline bend{{-100, -30}};
  drafting::append(bend, arc({0, 0}, 30, -std::numbers::pi / 2, 0, 300));
  bend.emplace_back(30, 100);
  const std::vector<Cut> cuts = cuts_of({bend}, blade, {});
  ASSERT_EQ(cuts.size(), 1u);
  ASSERT_EQ(cuts.front().tight.size(), 1u);
  const TightStretch& tight = cuts.front().tight.front();
  EXPECT_NEAR(tight.from, 100, 4);
  EXPECT_NEAR(tight.to, 100 + 30 * std::numbers::pi / 2, 4);
  EXPECT_NEAR(tight.radius, 30, 1);
  EXPECT_EQ(tight.blade_that_fits, 18.0);
}

TEST(Cuts, TurnedRoundMirrorsEverythingAlongThePath) {
  const Blade blade{45, 1.0, 0.5};
  const Polyline run{{0, 0}, {100, 0}, {100, -80}};
  const Cut cut = cuts_of({run}, blade, {}).front();
  ASSERT_EQ(cut.end, CutEnd::inner);
  const Cut back = turned_round(cut);
  EXPECT_EQ(back.start, CutEnd::inner);
  EXPECT_NEAR(back.start_at, half_chord(blade), 1e-9);
  EXPECT_FALSE(back.kept_on_left);
  EXPECT_LT((back.path.front() - Point(100, 0)).norm(), 1e-9);
}

}  // namespace
}  // namespace cowlcast::projector
