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

// A disc standing upright in the cut, its axle carried along a path, by brute force: where along and beside
// the path it parts the cloth. Cells of the disc's own plane are tried one by one, over the cloth's whole
// thickness; what lies in the mat below it is cut too but is not cloth.
struct Gash {
  Polyline top, foot;  // where the cloth's upper and lower face are parted
};

Gash swept(const Polyline& path, double from, double to, const Blade& blade, double step = 0.1) {
  const double radius = blade.diameter / 2.0, axle_height = radius - blade.into_mat;  // above the mat
  Gash gash;
  for (double along = from; along <= to; along += step) {
    const Point axle = drafting::point_at(path, along);
    const Point way =
        (drafting::point_at(path, along + 0.05) - drafting::point_at(path, along - 0.05)).normalized();
    for (double ahead = -radius; ahead <= radius; ahead += 0.02) {
      const auto inside = [&](double height) {
        return ahead * ahead + (height - axle_height) * (height - axle_height) <= radius * radius;
      };
      if (inside(blade.cloth)) gash.top.push_back(axle + ahead * way);
      if (inside(0.0)) gash.foot.push_back(axle + ahead * way);
    }
  }
  return gash;
}

std::vector<Blade> blades() {
  std::vector<Blade> all;
  for (const double diameter : kBladeSizes)
    for (const double cloth : {0.4, 1.0, 3.0}) all.push_back({diameter, cloth, 0.5});
  return all;
}

TEST(Blade, SweptDiscTouchesTheCornerFromTheStopMarkAndNoMore) {
  // An L: the cut runs along x to an inner corner at 100 and on along y; another sharp one beyond.
  Polyline outline{{0, 0}, {100, 0}, {100, -80}, {200, -80}, {200, 120}, {0, 120}, {0, 0}};
  for (const Blade& blade : blades()) {
    const std::vector<Cut> cuts = cuts_of({outline}, blade, {});
    ASSERT_EQ(cuts.size(), 6u);
    const auto first =
        std::find_if(cuts.begin(), cuts.end(), [](const Cut& cut) { return cut.path.front().isZero(1e-9); });
    ASSERT_NE(first, cuts.end());
    EXPECT_EQ(first->start, CutEnd::outer);
    EXPECT_EQ(first->end, CutEnd::inner);
    const auto farthest = [](const Polyline& marks) {
      double most = 0.0;
      for (const Point& mark : marks) most = std::max(most, mark.x());
      return most;
    };
    const Gash gash = swept(first->path, 0.0, first->stop_at, blade, 0.5);
    const Gash till_stop = swept(first->path, first->stop_at, first->stop_at, blade);
    EXPECT_LE(farthest(gash.top), 100.0 + 0.01) << blade.diameter << ' ' << blade.cloth;
    EXPECT_LE(farthest(till_stop.top), 100.0 + 0.01) << blade.diameter << ' ' << blade.cloth;
    EXPECT_GT(farthest(till_stop.top), 100.0 - 0.05) << "and no cloth is left uncut that need not be";
    // What is left for the shears is at the lower face, between the chords at the two faces.
    EXPECT_GT(farthest(till_stop.foot), 100.0 - half_chord(blade));
    EXPECT_LT(farthest(till_stop.foot), 100.0);
    // The next stroke leaves the same corner: set down at its mark, the blade cuts nothing before it.
    const auto next = std::find_if(cuts.begin(), cuts.end(), [](const Cut& cut) {
      return (cut.path.front() - Point(100, 0)).norm() < 1e-9;
    });
    ASSERT_NE(next, cuts.end());
    double highest = -1e9;
    for (const Point& mark : swept(next->path, next->start_at, next->start_at, blade).top)
      highest = std::max(highest, mark.y());
    EXPECT_LE(highest, 0.01);
    EXPECT_GT(highest, -0.05);
  }
}

// How far the gash about `along` strays from the path itself.
double stray(const Polyline& path, double along, const Blade& blade) {
  double worst = 0.0;
  const Polyline top = swept(path, along, along, blade).top;
  for (size_t i = 0; i < top.size(); i += 8)
    worst = std::max(worst, drafting::nearest(path, top[i]).distance);
  return worst;
}

TEST(Blade, SweptDiscStraysByTheToleranceOnTheTightestCurve) {
  const double tolerance = 0.5;
  for (const Blade& blade : blades()) {
    const double radius = tightest_radius(blade, tolerance);
    const Polyline path = arc({0, 0}, radius, 0.0, 3.0, 600);
    const double middle = 0.5 * drafting::length(path);
    EXPECT_NEAR(stray(path, middle, blade), tolerance, 0.05 * tolerance)
        << blade.diameter << ' ' << blade.cloth;
  }
}

TEST(Blade, TightStretchesAreWhereTheSweptDiscStraysByMoreThanTheTolerance) {
  // A path of arcs, each twice as long as any blade's chord, that bends left and right ever more tightly.
  const double tolerance = 0.5;
  Polyline path{{0, 0}};
  double heading = 0.0;
  int turn = 1;
  for (const double radius : {240.0, 130.0, 90.0, 60.0, 42.0, 26.0, 18.0}) {
    const double length = std::min(70.0, 2.4 * radius);
    for (int i = 0; i < 140; ++i) {
      heading += turn * length / 140.0 / radius;
      path.push_back(path.back() + length / 140.0 * Point(std::cos(heading), std::sin(heading)));
    }
    turn = -turn;
  }
  for (const double diameter : kBladeSizes) {
    const Blade blade{diameter, 1.0, 0.5};
    const std::vector<Cut> cuts = cuts_of({path}, blade, {});
    ASSERT_EQ(cuts.size(), 1u);
    int tight = 0, free = 0;
    for (double along = 20.0; along < drafting::length(path) - 20.0; along += 7.0) {
      const double off = stray(path, along, blade);
      const bool told = std::any_of(
          cuts[0].tight.begin(), cuts[0].tight.end(),
          [along](const TightStretch& part) { return along >= part.from - 6.0 && along <= part.to + 6.0; });
      if (off > 1.25 * tolerance) {
        ++tight;
        EXPECT_TRUE(told) << diameter << " mm at " << along << " strays " << off;
      }
      if (off < 0.4 * tolerance) {
        ++free;
        EXPECT_FALSE(told) << diameter << " mm at " << along << " strays " << off;
      }
    }
    EXPECT_GT(tight, 1) << diameter;
    EXPECT_GT(free, 3) << diameter;
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
