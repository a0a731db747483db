// Cloth that was dragged is told where a print, chalk or its edges show it, and nothing else is.
#include "projector/guard/cloth_shift.h"

#include <gtest/gtest.h>

#include "tests/projector/guard/plain_table.h"

namespace cowlcast::projector {
namespace {

using namespace testing;

const ClothShift::Where kAcross{.stroke = {{-200.0, 0.0}, {200.0, 0.0}},
                                .piece = {{-205.0, -150.0}, {205.0, -150.0}, {205.0, 20.0}, {-205.0, 20.0}},
                                .cut = {}};

// How much of another colour is at a place of the cloth, mm, its edges a millimetre soft.
using Print = double (*)(double x, double y);

double none(double, double) {
  return 0.0;
}
double dots(double x, double y) {
  const auto off = [](double v, double step) { return v - step * std::round(v / step); };
  return std::clamp(7.0 - std::hypot(off(x, 30.0), off(y, 30.0)) + 0.5, 0.0, 1.0);
}
double stripes(double x, double) {
  return std::clamp(8.0 - std::abs(x - 32.0 * std::round(x / 32.0)) + 0.5, 0.0, 1.0);
}
// Five crosses of chalk.
double chalk(double x, double y) {
  double share = 0.0;
  for (const Point& at : {Point(-150, -30), Point(-80, 10), Point(0, -40), Point(70, -20), Point(140, -60)}) {
    const double dx = std::abs(x - at.x()), dy = std::abs(y - at.y());
    const double arm = std::max(std::min(10.0 - dx, 1.5 - dy), std::min(1.5 - dx, 10.0 - dy));
    share = std::max(share, std::clamp(arm + 0.5, 0.0, 1.0));
  }
  return share;
}
// The cloth ends, and the mat begins.
double edges(double x, double y) {
  const double inside = std::min(250.0 - std::abs(x), 180.0 - std::abs(y));
  return 1.0 - std::clamp(inside + 0.5, 0.0, 1.0);
}

// The cloth after all of it has gone by so much.
cv::Mat cloth(Print print, const Point& gone) {
  const cv::Vec3d ground(0.5, 0.2, 0.15), other(0.6, 0.6, 0.55);
  cv::Mat albedo(kHeight, kWidth, CV_32FC3);
  for (int r = 0; r < kHeight; ++r)
    for (int c = 0; c < kWidth; ++c) {
      const double x = c - 0.5 * (kWidth - 1), y = 0.5 * (kHeight - 1) - r;
      const double share = print(x - gone.x(), y - gone.y());
      albedo.at<cv::Vec3f>(r, c) = share * other + (1.0 - share) * ground;
    }
  return albedo;
}

cv::Mat lines() {
  cv::Mat picture = flat(0);
  cv::rectangle(picture, {80, 150}, {560, 400}, cv::Scalar(56), cv::FILLED);
  cv::line(picture, {120, 240}, {520, 240}, cv::Scalar(255), 2);
  for (int x = 130; x < 520; x += 18) cv::line(picture, {x, 200}, {x + 20, 180}, cv::Scalar(255), 1);
  return picture;
}

class Cloth {
 public:
  explicit Cloth(Print print) : print_(print) {
    table.print = cloth(print_, {0, 0});
    learn();
  }
  void learn() {
    Backdrop backdrop(plain_sight());
    for (int k = 0; k < 4; ++k) {
      backdrop.learn(table.frame(flat(0)), Backdrop::Light::none);
      backdrop.learn(table.frame(flat(255)), Backdrop::Light::full);
      backdrop.learn(table.frame(flat(Backdrop::kFaint)), Backdrop::Light::faint);
    }
    std::optional<ClothShift> before = std::move(shift);
    shift.emplace(backdrop);
    if (before) shift->owes(*before, now);
    shift->about(kAcross);
  }
  const std::optional<ToldShift>& after(const Point& gone, double seconds = 4.0) {
    table.print = cloth(print_, gone);
    for (const double end = now + seconds; now < end; now += 0.2)
      shift->look(table.frame(lines(), things, {0.1, 0.1, 0.1}, shade), lines(), now, blade);
    return shift->told();
  }

  Table table;
  std::optional<ClothShift> shift;
  std::vector<cv::Rect> things;
  double shade = 1.0;
  std::optional<Point> blade;
  double now = 0.0;

 private:
  Print print_;
};

TEST(ClothShift, IsToldOnAPrintByHowFarAndWhereToAndUntilItIsPutBack) {
  Cloth c(dots);
  EXPECT_TRUE(c.shift->sees());
  EXPECT_FALSE(c.after({0.0, 0.0}));
  EXPECT_FALSE(c.after({0.9, -0.4})) << "a millimetre is borne with";
  ASSERT_TRUE(c.after({3.2, -1.5}));
  EXPECT_LT((c.shift->told()->by - Point(3.2, -1.5)).norm(), 0.3);
  EXPECT_TRUE(c.shift->told()->at_stroke);
  EXPECT_NE(words(*c.shift->told()).find("about 4 mm to the right"), std::string::npos);
  c.shade = 0.7;  // and light is no shift
  EXPECT_FALSE(c.after({0.4, 0.2}));
}

TEST(ClothShift, HandsAndLightAreNoShift) {
  Cloth c(dots);
  for (int k = 0; k < 12; ++k) {
    c.things = {box_at(-200.0 + 30.0 * k, -20.0 * (k % 3), 70), box_at(30.0 * k - 150.0, 40.0, 40)};
    c.shade = 1.0 - 0.1 * (k % 4);
    EXPECT_FALSE(c.after({0.0, 0.0}, 0.9)) << k;
  }
}

TEST(ClothShift, StripesTellAcrossAlone) {
  Cloth c(stripes);
  EXPECT_FALSE(c.after({0.0, 5.0})) << "nobody can see that";
  ASSERT_TRUE(c.after({-4.0, 3.0}));
  EXPECT_LT((c.shift->told()->by - Point(-4.0, 0.0)).norm(), 0.4);
}

TEST(ClothShift, EvenClothShowsItByChalkAndByItsEdgesOrNotAtAll) {
  Cloth even(none);
  EXPECT_FALSE(even.shift->sees());
  EXPECT_FALSE(even.after({5.0, 0.0}));
  Cloth chalked(chalk);
  EXPECT_TRUE(chalked.shift->sees());
  EXPECT_FALSE(chalked.after({0.5, 0.5}));
  ASSERT_TRUE(chalked.after({2.0, 3.0}));
  EXPECT_LT((chalked.shift->told()->by - Point(2.0, 3.0)).norm(), 0.3);
  Cloth edged(edges);
  EXPECT_FALSE(edged.shift->sees()) << "edges far off are not the stroke's own cloth";
  EXPECT_FALSE(edged.after({0.0, 0.5}));
  ASSERT_TRUE(edged.after({0.0, 3.5}));
  EXPECT_LT((edged.shift->told()->by - Point(0.0, 3.5)).norm(), 0.4);
  EXPECT_FALSE(edged.shift->told()->at_stroke);
  EXPECT_NE(words(*edged.shift->told()).find("edge"), std::string::npos);
}

TEST(ClothShift, WhatIsCutOffMayBeLaidAnywhereAndWhatTheBladePullsIsNotAsked) {
  Cloth c(dots);
  ClothShift::Where where = kAcross;
  where.stroke = {{-200.0, -100.0}, {200.0, -100.0}};
  where.piece = {{-220.0, -100.0}, {220.0, -100.0}, {220.0, 0.0}, {-220.0, 0.0}};
  where.cut = {{{-320.0, 0.0}, {320.0, 0.0}}};
  c.shift->about(where);
  c.after({0.0, 0.0}, 3.0);
  for (const ClothShift::Said& one : c.shift->said(c.now)) EXPECT_LT(one.place.y(), -24.0);
  c.shift->about(kAcross);
  c.blade = Point(-200.0, 0.0);
  c.after({3.0, 0.0}, 3.0);
  for (const ClothShift::Said& one : c.shift->said(c.now)) EXPECT_GT((one.place - *c.blade).norm(), 129.0);
}

TEST(ClothShift, LayingAnewPutsItRightAndLearningAnewDoesNot) {
  Cloth c(dots);
  ASSERT_TRUE(c.after({3.5, 0.0}));
  c.learn();
  ASSERT_TRUE(c.after({3.5, 0.0})) << "what was learnt by then is the shifted cloth";
  EXPECT_LT((c.shift->told()->by - Point(3.5, 0.0)).norm(), 0.5);
  EXPECT_FALSE(c.after({0.0, 0.0})) << "smoothed back";
  ASSERT_TRUE(c.after({-3.0, 0.0}));
  c.shift->laid();
  EXPECT_FALSE(c.after({-3.0, 0.0}, 8.0));
  ASSERT_TRUE(c.after({0.0, 0.0})) << "now this is off by three";
  EXPECT_LT((c.shift->told()->by - Point(3.0, 0.0)).norm(), 0.4);
}

}  // namespace
}  // namespace cowlcast::projector
