#include "projector/frame/coverage.h"

#include <gtest/gtest.h>

#include <clipper.hpp>
#include <cmath>
#include <random>

namespace cowlcast::projector {
namespace {

using drafting::Polyline;

constexpr double kUnits = 1e6;

// The area of an outline within each pixel's square by Clipper 6 (Angus Johnson).
double by_clipper(const Polyline& ring, int u, int v) {
  ClipperLib::Path path, square;
  for (const auto& p : ring) path.emplace_back(std::llround(p.x() * kUnits), std::llround(p.y() * kUnits));
  for (const auto& [x, y] : {std::pair(-0.5, -0.5), {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}})
    square.emplace_back(std::llround((u + x) * kUnits), std::llround((v + y) * kUnits));
  ClipperLib::Clipper clipper;
  clipper.AddPath(path, ClipperLib::ptSubject, true);
  clipper.AddPath(square, ClipperLib::ptClip, true);
  ClipperLib::Paths out;
  clipper.Execute(ClipperLib::ctIntersection, out, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  double area = 0.0;
  for (const auto& part : out) area += ClipperLib::Area(part);
  return std::abs(area) / kUnits / kUnits;
}

TEST(Coverage, IsTheAreaWithinEachPixelEvenBeyondTheEdges) {
  std::mt19937 dice(3);
  std::uniform_real_distribution<double> across(-6, 26), down(-6, 18);
  for (int round = 0; round < 60; ++round) {
    const Polyline ring{{across(dice), down(dice)}, {across(dice), down(dice)}, {across(dice), down(dice)}};
    QImage picture(20, 12, QImage::Format_RGB32);
    picture.fill(0xff000000);
    Coverage coverage(20, 12);
    coverage.add(ring);
    coverage.paint(picture, 0xffffffff);
    for (int v = 0; v < 12; ++v)
      for (int u = 0; u < 20; ++u)
        ASSERT_NEAR(qRed(picture.pixel(u, v)), 255.0 * by_clipper(ring, u, v), 1.0) << u << ' ' << v;
  }
}

TEST(Coverage, HolesAndOverlapsAndNothingLeftBehind) {
  QImage picture(12, 12, QImage::Format_RGB32);
  picture.fill(0xff000000);
  Coverage coverage(12, 12);
  coverage.add({{0.5, 0.5}, {9.5, 0.5}, {9.5, 9.5}, {0.5, 9.5}});
  coverage.add({{2.5, 2.5}, {11.5, 2.5}, {11.5, 11.5}, {2.5, 11.5}});  // overlaps
  coverage.add({{4.5, 4.5}, {4.5, 6.5}, {6.5, 6.5}, {6.5, 4.5}});      // the other way, twice covered: stays
  coverage.paint(picture, 0xff2040ff);
  EXPECT_EQ(picture.pixel(5, 5), 0xff2040ffu);
  EXPECT_EQ(picture.pixel(1, 1), 0xff2040ffu);
  EXPECT_EQ(picture.pixel(0, 0), 0xff000000u);
  QImage after(12, 12, QImage::Format_RGB32);
  after.fill(0xff000000);
  coverage.paint(after, 0xffffffff);
  EXPECT_EQ(after.pixel(5, 5), 0xff000000u);
  coverage.add({{0.5, 0.5}, {9.5, 0.5}, {9.5, 9.5}, {0.5, 9.5}});
  coverage.add({{4.5, 4.5}, {4.5, 6.5}, {6.5, 6.5}, {6.5, 4.5}});
  coverage.paint(after, 0xffffffff);
  EXPECT_EQ(after.pixel(5, 5), 0xff000000u) << "a hole";
  EXPECT_EQ(after.pixel(3, 3), 0xffffffffu);
}

}  // namespace
}  // namespace cowlcast::projector
