#include "projector/frame/render.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "drafting/geometry/polyline.h"
#include "tests/projector/test_map.h"

namespace cowlcast::projector {
namespace {

using testing::map_of;
using testing::Optics;
using testing::pixel_by_opencv;
using testing::plain_map;

int value(const QImage& picture, int u, int v) {
  return qRed(picture.pixel(u, v));
}

// A closed curve about as large as a front, nowhere so tight that the two edges of a line bend differently
// enough to matter (half width squared over twice the radius).
Polyline wavy_outline(double size) {
  Polyline line;
  for (int i = 0; i < 900; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / 900.0;
    const double radius = size * (1.0 + 0.05 * std::cos(2.0 * angle) + 0.01 * std::sin(3.0 * angle));
    line.emplace_back(1.5 * radius * std::cos(angle), radius * std::sin(angle));
  }
  return line;
}

// Middle of a band of light about the wholly lit pixel `at`, from the coverage of the pixels around.
template <typename Light>
double middle_of(const Light& light, int at) {
  double before = 0.0, after = 0.0;
  for (int k = 1; k <= 12; ++k) {
    before += light(at - k) / 255.0;
    after += light(at + k) / 255.0;
  }
  return at + 0.5 * (after - before);
}

struct Stray {
  double worst = 0.0, sum = 0.0;
  int places = 0;
};

// How far the middle of the drawn line lies from where OpenCV projects the true one, in mm. At each
// place both edges are found from the coverage along the pixel row or column (whichever crosses the
// line more squarely), counted from the wholly covered pixel in the middle, which is exact for straight
// edges; the true line is followed to the very middle of that row or column.
Stray stray_of(const QImage& picture, const calibration::TableMap& map, const Polyline& outline,
               double cloth) {
  Stray stray;
  Polyline closed = outline;
  closed.push_back(outline.front());
  const Polyline fine = drafting::subdivided(closed, 0.2);
  for (size_t i = 1; i < fine.size(); ++i) {
    const Eigen::Vector2d a = pixel_by_opencv(map, fine[i - 1], cloth),
                          b = pixel_by_opencv(map, fine[i], cloth);
    const bool steep = std::abs(b.y() - a.y()) > std::abs(b.x() - a.x());  // crosses rows
    const int axis = steep ? 1 : 0, across = steep ? 0 : 1;
    const double line = std::ceil(std::min(a[axis], b[axis]));
    if (line > std::max(a[axis], b[axis])) continue;
    const double share = (line - a[axis]) / (b[axis] - a[axis]);
    const double truth = a[across] + share * (b[across] - a[across]);
    const int along = static_cast<int>(line), middle = static_cast<int>(std::lround(truth));
    const int across_size = steep ? picture.width() : picture.height();
    const int along_size = steep ? picture.height() : picture.width();
    if (along < 0 || along >= along_size || middle < 12 || middle > across_size - 13) continue;
    const auto light = [&](int k) { return steep ? value(picture, k, along) : value(picture, along, k); };
    EXPECT_EQ(light(middle), 255) << "no line at " << fine[i].transpose();
    const double mm_per_pixel = (fine[i] - fine[i - 1]).norm() / (b - a).norm();
    const double off = std::abs(middle_of(light, middle) - truth) * mm_per_pixel;
    stray.worst = std::max(stray.worst, off);
    stray.sum += off;
    ++stray.places;
  }
  return stray;
}

TEST(Render, HalfPixelIsWhereItBelongs) {
  // A square from pixel edge to pixel edge, 10 to 12 across and 20 to 22 down, fills 3 x 3 pixels.
  const calibration::TableMap map = plain_map(64, 48);
  const Polyline square{{9.5, -22.5}, {12.5, -22.5}, {12.5, -19.5}, {9.5, -19.5}};
  const QImage picture = rendered(map, {{.lines = {square}, .closed = true, .width = 0.0}}, 0.0);
  for (int v = 17; v < 26; ++v)
    for (int u = 7; u < 16; ++u) {
      const bool inside = u >= 10 && u <= 12 && v >= 20 && v <= 22;
      EXPECT_EQ(value(picture, u, v), inside ? 255 : 0) << u << ' ' << v;
    }
}

TEST(Render, LineLiesWhereOpenCvProjectsIt) {
  // Lens model and projection checked against OpenCV 4's projectPoints.
  const calibration::TableMap map = map_of({});
  for (const double cloth : {0.0, 5.0}) {
    const Polyline outline = wavy_outline(220.0);
    const QImage picture = rendered(map, {{.lines = {outline}, .closed = true, .width = 2.5}}, cloth);
    const Stray stray = stray_of(picture, map, outline, cloth);
    ASSERT_GT(stray.places, 1500);
    EXPECT_LT(stray.worst, 0.02) << "mm, worst of " << stray.places;
    EXPECT_LT(stray.sum / stray.places, 0.004);
  }
}

TEST(Render, FollowsAStrongLensAlongALongStraightLine) {
  // A short throw: the lens bends a straight line by centimetres.
  const calibration::TableMap map =
      map_of({.focal = 900, .k1 = -0.12, .k2 = 0.01, .away = 500, .tilt = 0.05});
  Polyline side{{-400, -179.3}, {410, -150.7}};
  const QImage one = rendered(map, {{.lines = {side}, .closed = false, .width = 4.0}}, 1.0);
  int checked = 0;
  for (double s = 0.05; s < 0.95; s += 0.01) {
    const Eigen::Vector2d at = pixel_by_opencv(map, side[0] + s * (side[1] - side[0]), 1.0);
    const int u = static_cast<int>(std::lround(at.x()));
    const Eigen::Vector2d near = pixel_by_opencv(map, side[0] + (s + 1e-4) * (side[1] - side[0]), 1.0);
    const double truth = at.y() + (u - at.x()) * (near.y() - at.y()) / (near.x() - at.x());
    const auto light = [&](int v) { return value(one, u, v); };
    const int middle = static_cast<int>(std::lround(truth));
    ASSERT_EQ(light(middle), 255);
    EXPECT_NEAR(middle_of(light, middle), truth, 0.03);  // pixels of 0.55 mm
    ++checked;
  }
  EXPECT_GT(checked, 80);
}

TEST(Render, WidthIsInMillimetresOfCloth) {
  const calibration::TableMap map = plain_map(200, 100);
  for (const double width : {1.0, 2.5}) {
    const QImage picture =
        rendered(map, {{.lines = {{{10, -50.3}, {190, -50.3}}}, .closed = false, .width = width}}, 0.0);
    double light = 0.0;
    for (int v = 0; v < 100; ++v) light += value(picture, 100, v) / 255.0;
    EXPECT_NEAR(light, width, 0.02);
  }
}

TEST(Render, ClothHeightMovesTheLine) {
  const calibration::TableMap map = map_of({});
  const Eigen::Vector2d flat = pixel_by_opencv(map, {300, 200}, 0.0),
                        high = pixel_by_opencv(map, {300, 200}, 5.0);
  EXPECT_GT((flat - high).norm(), 1.0);
}

TEST(Render, WhatTheLensCannotReachIsLeftOut) {
  const calibration::TableMap map = map_of({});
  const Polyline far{{-1e7, 0}, {1e7, 0}, {1e7, 1e7}}, behind{{0, 1e5}, {1e5, 1e5}};
  const QImage picture = rendered(map, {{.lines = {behind}, .closed = false, .width = 1.0}}, 0.0);
  for (int v = 0; v < picture.height(); v += 3)
    for (int u = 0; u < picture.width(); u += 3) ASSERT_EQ(value(picture, u, v), 0);
  // A line that crosses the picture from far outside is still there.
  const QImage through =
      rendered(map, {{.lines = {{{-3000, 0}, {3000, 0}}}, .closed = false, .width = 1.0}}, 0.0);
  const Eigen::Vector2d at = pixel_by_opencv(map, {0, 0}, 0.0);
  EXPECT_GT(value(through, static_cast<int>(std::lround(at.x())), static_cast<int>(std::lround(at.y()))), 60);
}

TEST(FramePainter, NamesRectanglesOutsideOfWhichNothingChanged) {
  const calibration::TableMap map = plain_map(400, 300);
  FramePainter painter;
  painter.draw(map, {{.lines = {{{-50, -40}, {60, -40}}}, .width = 2.0}}, 0.0);
  ASSERT_EQ(painter.changed(), std::vector<QRect>{painter.picture().rect()});
  QImage followed = painter.picture().copy();
  for (const double shift : {0.5, 30.0, -80.0}) {
    const std::vector<Mark> marks = {{.lines = {{{-50 + shift, -40}, {60, 20 + shift}}}, .width = 2.0}};
    painter.draw(map, marks, 0.0);
    int area = 0;
    for (const QRect& part : painter.changed()) {
      area += part.width() * part.height();
      for (int v = part.top(); v <= part.bottom(); ++v)
        for (int u = part.left(); u <= part.right(); ++u)
          followed.setPixel(u, v, painter.picture().pixel(u, v));
    }
    EXPECT_EQ(followed, painter.picture());
    EXPECT_EQ(followed, rendered(map, marks, 0.0));
    EXPECT_LT(area, map.width * map.height / 2);
  }
}

TEST(Reach, TellsHowFarThePieceIsOutside) {
  const calibration::TableMap map = plain_map(201, 101);  // lit: x -0.5 to 200.5, y 0.5 to -100.5
  EXPECT_EQ(reach_of(map, {{{10, -10}, {190, -90}}}, 0.0).outside, 0.0);
  const Reach partly = reach_of(map, {{{100, -50}, {230.5, -50}}}, 0.0);
  EXPECT_TRUE(partly.any_inside);
  EXPECT_NEAR(partly.outside, 30.0, 1e-6);
  EXPECT_FALSE(reach_of(map, {{{500, 0}, {600, 0}}}, 0.0).any_inside);
}

}  // namespace
}  // namespace cowlcast::projector
