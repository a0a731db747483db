#include "projector/frame/stroke.h"

#include <gtest/gtest.h>

#include <clipper.hpp>
#include <cmath>
#include <numbers>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

constexpr double kUnits = 1e5;  // Clipper's whole numbers to a mm

Polyline arc(double radius, double from, double to, int steps) {
  Polyline line;
  for (int i = 0; i <= steps; ++i) {
    const double angle = from + (to - from) * i / steps;
    line.emplace_back(radius * std::cos(angle), radius * std::sin(angle));
  }
  return line;
}

ClipperLib::Path clipper_path(const Polyline& line) {
  ClipperLib::Path path;
  for (const Point& p : line) path.emplace_back(std::llround(p.x() * kUnits), std::llround(p.y() * kUnits));
  return path;
}

ClipperLib::Paths united(const Rings& rings) {
  ClipperLib::Clipper clipper;
  for (const Polyline& ring : rings) clipper.AddPath(clipper_path(ring), ClipperLib::ptSubject, true);
  ClipperLib::Paths out;
  clipper.Execute(ClipperLib::ctUnion, out, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  return out;
}

double area(const ClipperLib::Paths& paths) {
  double sum = 0.0;
  for (const auto& path : paths) sum += ClipperLib::Area(path);
  return sum / kUnits / kUnits;
}

// Area that belongs to one of two shapes only.
double difference(const ClipperLib::Paths& a, const ClipperLib::Paths& b) {
  ClipperLib::Clipper clipper;
  clipper.AddPaths(a, ClipperLib::ptSubject, true);
  clipper.AddPaths(b, ClipperLib::ptClip, true);
  ClipperLib::Paths out;
  clipper.Execute(ClipperLib::ctXor, out, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  return area(out);
}

// Against Clipper 6 (Angus Johnson), an outside library for offsets: open lines with butt ends,
// mitred joints with the same limit.
ClipperLib::Paths by_clipper(const Polyline& line, double width, bool closed) {
  ClipperLib::ClipperOffset offset(2.0);
  offset.AddPath(clipper_path(line), ClipperLib::jtMiter,
                 closed ? ClipperLib::etClosedLine : ClipperLib::etOpenButt);
  ClipperLib::Paths out;
  offset.Execute(out, 0.5 * width * kUnits);
  return out;
}

TEST(Stroke, CoversWhatClipperCovers) {
  const Polyline curve = arc(30, 0.2, 4.0, 200);
  Polyline zigzag{{0, 0}, {40, 3}, {42, 30}, {80, 35}, {70, 0}};
  for (const Polyline& line : {curve, zigzag})
    for (const double width : {0.5, 1.0, 3.0}) {
      const ClipperLib::Paths ours = united(stroke_rings(line, {.closed = false, .width = width}));
      EXPECT_NEAR(area(ours), width * drafting::length(line), 0.02 * width * drafting::length(line));
      EXPECT_LT(difference(ours, by_clipper(line, width, false)), 0.003 * area(ours));
    }
}

TEST(Stroke, ClosedOutlineKeepsItsHole) {
  const Polyline square{{0, 0}, {50, 0}, {50, 50}, {0, 50}};
  const ClipperLib::Paths ours = united(stroke_rings(square, {.closed = true, .width = 2.0}));
  EXPECT_NEAR(area(ours), 52.0 * 52.0 - 48.0 * 48.0, 1e-6);
  EXPECT_LT(difference(ours, by_clipper(square, 2.0, true)), 1e-6);
}

TEST(Stroke, SharpCornersAreCutOff) {
  // 170° turn: a mitre would shoot out 11 half widths.
  const Polyline spike{{0, 0}, {50, 0}, {50 + 50 * std::cos(2.967), 50 * std::sin(2.967)}};
  for (const Polyline& ring : stroke_rings(spike, {.closed = false, .width = 2.0}))
    for (const Point& point : ring) EXPECT_LT(point.x(), 51.01);
}

TEST(Stroke, NothingFromPointsThatFallTogether) {
  EXPECT_TRUE(stroke_rings({}, {}).empty());
  EXPECT_TRUE(stroke_rings({{1, 1}}, {}).empty());
  EXPECT_TRUE(stroke_rings({{1, 1}, {1, 1}, {1, 1 + 1e-9}}, {.closed = true}).empty());
}

TEST(Dashes, StartAndEndOnAWholeDashAndKeepTheProportion) {
  const Polyline line{{0, 0}, {30, 0}, {30, 70.3}};
  const std::vector<Polyline> parts = dashes(line, false, 6.0, 4.0);
  ASSERT_GT(parts.size(), 5u);
  EXPECT_LT((parts.front().front() - line.front()).norm(), 1e-9);
  EXPECT_LT((parts.back().back() - line.back()).norm(), 1e-6);
  for (const Polyline& dash : parts) {
    EXPECT_NEAR(drafting::length(dash), drafting::length(parts.front()), 1e-6);
    EXPECT_NEAR(drafting::length(dash), 6.0, 0.5);
  }
}

TEST(Dashes, ClosedLineHasNoDoubleDash) {
  Polyline circle = arc(20, 0, 2 * std::numbers::pi, 100);
  circle.pop_back();
  const std::vector<Polyline> parts = dashes(circle, true, 5.0, 4.0);
  double drawn = 0.0;
  for (const Polyline& dash : parts) drawn += drafting::length(dash);
  EXPECT_NEAR(drawn, 2 * std::numbers::pi * 20 * 5.0 / 9.0, 0.05);
  EXPECT_GT((parts.front().front() - parts.back().back()).norm(), 3.0);
}

}  // namespace
}  // namespace cowlcast::projector
