// The canvas's mathematics and the lengths people read; no widgets.
#include <gtest/gtest.h>

#include <cmath>

#include "projector/workbench/canvas/plane_view.h"
#include "projector/workbench/canvas/ruler.h"
#include "projector/workbench/lengths.h"

namespace cowlcast::projector {
namespace {

constexpr auto inches = Units::inches, centimetres = Units::centimetres;

TEST(Lengths, AreReadInEighthsOrMillimetres) {
  EXPECT_EQ(length_in_words(479.425, inches), "18⅞ in");  // 18.875 × 25.4
  EXPECT_EQ(length_in_words(12.7, inches), "½ in");
  EXPECT_EQ(length_in_words(0.0, inches), "0 in");
  EXPECT_EQ(length_in_words(-31.75, inches), "-1¼ in");
  EXPECT_EQ(length_in_words(254.0 + 25.4 * 0.999, inches), "11 in");  // rounds up to a whole one
  EXPECT_EQ(length_in_words(480.04, centimetres), "48.0 cm");
  EXPECT_EQ(length_in_words(-0.3, centimetres), "0.0 cm");
}

TEST(Lengths, AreTypedAsPeopleType) {
  const auto typed = [](const char* text, Units units) { return typed_length(text, units).value_or(NAN); };
  EXPECT_DOUBLE_EQ(typed("19 1/2", inches), 19.5 * 25.4);
  EXPECT_DOUBLE_EQ(typed("19½ in", centimetres), 19.5 * 25.4);
  EXPECT_DOUBLE_EQ(typed(" 1/4\" ", centimetres), 0.25 * 25.4);
  EXPECT_DOUBLE_EQ(typed("48", centimetres), 480.0);
  EXPECT_DOUBLE_EQ(typed("48,5", centimetres), 485.0);
  EXPECT_DOUBLE_EQ(typed("480mm", inches), 480.0);
  EXPECT_DOUBLE_EQ(typed("48 cm", inches), 480.0);
  for (const char* wrong : {"", "cm", "4 8", "1/0", "19 5/4", "twelve", "1e999", "48 ells", "--3"})
    EXPECT_FALSE(typed_length(wrong, inches)) << wrong;
}

TEST(Lengths, WhatIsShownIsReadBackWithinItsRounding) {
  for (double mm = 1.0; mm < 2000.0; mm += 7.3) {
    EXPECT_NEAR(*typed_length(length_in_words(mm, inches), inches), mm, 25.4 / 16 + 1e-9);
    EXPECT_NEAR(*typed_length(length_in_words(mm, centimetres), inches), mm, 0.5 + 1e-9);
  }
}

TEST(Lengths, InsideASentenceComeInOwnUnits) {
  const std::string said = "A drape of 1500 mm is too long. The longest drape that works is 812.8 mm.";
  EXPECT_EQ(lengths_in_own_units(said, centimetres),
            "A drape of 150.0 cm is too long. The longest drape that works is 81.3 cm.");
  EXPECT_EQ(lengths_in_own_units(said, inches),
            "A drape of 59 in is too long. The longest drape that works is 32 in.");
  EXPECT_EQ(lengths_in_own_units("3 slash lines", inches), "3 slash lines");
}

const PlaneView some_view{{120.0, -40.0}, 1.7, 800.0, 600.0};

TEST(PlaneView, GoesToPixelsAndBackWithYUp) {
  EXPECT_EQ(pixel_from_plane(some_view, {120.0, -40.0}), Point(400.0, 300.0));
  EXPECT_LT(pixel_from_plane(some_view, {0.0, 10.0}).y(), pixel_from_plane(some_view, {0.0, 0.0}).y());
  for (const Point& pixel : {Point(0, 0), Point(799, 3), Point(12.5, 444.0)})
    EXPECT_LT((pixel_from_plane(some_view, plane_from_pixel(some_view, pixel)) - pixel).norm(), 1e-9);
}

TEST(PlaneView, ZoomsAboutThePointerAndWithinLimits) {
  const Point pixel(700, 100), place = plane_from_pixel(some_view, pixel);
  for (const double factor : {0.5, 1.2, 3.0}) {
    const PlaneView view = zoomed(some_view, pixel, factor);
    EXPECT_NEAR(view.scale, factor * some_view.scale, 1e-12);
    EXPECT_LT((plane_from_pixel(view, pixel) - place).norm(), 1e-9);
  }
  EXPECT_EQ(zoomed(some_view, pixel, 1e9).scale, most_scale);
  EXPECT_EQ(zoomed(some_view, pixel, 1e-9).scale, least_scale);
}

TEST(PlaneView, PansWithTheHand) {
  const Point place(30, 30), way(50, -20);
  const Point before = pixel_from_plane(some_view, place);
  EXPECT_LT((pixel_from_plane(panned(some_view, way), place) - before - way).norm(), 1e-9);
}

TEST(PlaneView, FitsABoxAndKeepsItInSight) {
  const drafting::Box box{{-300, 0}, {250, 700}};
  const PlaneView view = fitted(box, 800, 600, 40);
  const Point low = pixel_from_plane(view, box.low), high = pixel_from_plane(view, box.high);
  EXPECT_NEAR(low.y() - high.y(), 520.0, 1e-9);  // the taller way decides
  EXPECT_NEAR(0.5 * (low.x() + high.x()), 400.0, 1e-9);
  const PlaneView lost = kept_in_sight(panned(view, {5000, 5000}), box);
  const Point corner = pixel_from_plane(lost, {box.low.x(), box.high.y()});
  EXPECT_TRUE(corner.x() < 800 && corner.y() < 600) << corner.transpose();
  EXPECT_EQ(kept_in_sight(view, box).middle, view.middle);
}

TEST(PlaneView, FindsHandlesAndLinesUnderThePointer) {
  const std::vector<Point> handles{{0, 0}, {20, 0}, {20, 0}};
  const Point at = pixel_from_plane(some_view, {19, 1});
  EXPECT_EQ(handle_at(some_view, handles, at, 10), 2u);  // the one on top
  EXPECT_EQ(handle_at(some_view, handles, at + Point(0, 40), 10), std::nullopt);
  const std::vector<Polyline> lines{{}, {{0, 50}, {100, 50}}, {{0, 60}, {100, 60}}};
  EXPECT_EQ(line_at(some_view, lines, pixel_from_plane(some_view, {50, 53}), 10), 1u);
  EXPECT_EQ(line_at(some_view, lines, pixel_from_plane(some_view, {50, 57}), 10), 2u);
  EXPECT_EQ(line_at(some_view, lines, pixel_from_plane(some_view, {50, 90}), 10), std::nullopt);
}

TEST(Snapping, PrefersPlacesToTheGrid) {
  EXPECT_DOUBLE_EQ(snapped(47.0, 5.0, {}, 3.0), 45.0);
  EXPECT_DOUBLE_EQ(snapped(47.0, 5.0, {48.3, 49.0}, 3.0), 48.3);
  EXPECT_DOUBLE_EQ(snapped(47.0, 5.0, {60.0}, 3.0), 45.0);
  EXPECT_DOUBLE_EQ(snapped(47.3, 0.0, {}, 3.0), 47.3);
}

TEST(Ruler, HasTicksApartAndWordsOnWholeUnits) {
  for (const Units units : {inches, centimetres}) {
    const double unit = units == inches ? 25.4 : 10.0;
    for (double scale = 0.03; scale < 30.0; scale *= 1.37) {
      const auto ticks = ruler_ticks(-200.0, 500.0, scale, units);
      ASSERT_GE(ticks.size(), 2u) << scale;
      double last_words = -1e9;
      for (size_t i = 0; i < ticks.size(); ++i) {
        EXPECT_TRUE(ticks[i].at >= -200.0 - 1e-6 && ticks[i].at <= 500.0 + 1e-6);
        if (i > 0) {
          EXPECT_GE((ticks[i].at - ticks[i - 1].at) * scale, 5.0 - 1e-9) << scale;
        }
        EXPECT_EQ(ticks[i].words.empty(), ticks[i].rank != 0);
        if (ticks[i].words.empty()) continue;
        EXPECT_NEAR(std::stod(ticks[i].words) * unit, ticks[i].at, 1e-6);
        EXPECT_GE((ticks[i].at - last_words) * scale, 52.0 - 1e-6) << scale;
        last_words = ticks[i].at;
      }
    }
  }
}

TEST(Ruler, DividesAnInchByHalvesAndACentimetreByTenths) {
  const auto ranks = [](double scale, Units units, double at) {
    for (const Tick& tick : ruler_ticks(0.0, 30.0, scale, units))
      if (std::abs(tick.at - at) < 1e-6) return tick.rank;
    return -1;
  };
  EXPECT_EQ(ranks(4.0, inches, 25.4), 0);
  EXPECT_EQ(ranks(4.0, inches, 12.7), 1);
  EXPECT_EQ(ranks(4.0, inches, 6.35), 2);
  EXPECT_EQ(ranks(4.0, inches, 25.4 / 16), 4);
  EXPECT_EQ(ranks(6.0, centimetres, 5.0), 1);
  EXPECT_EQ(ranks(6.0, centimetres, 1.0), 2);
  EXPECT_DOUBLE_EQ(snap_step(6.0, centimetres), 1.0);
  EXPECT_DOUBLE_EQ(snap_step(0.7, inches), 25.4 / 4);
}

}  // namespace
}  // namespace cowlcast::projector
