// What light and print may do without being taken for a thing: strong light, a beam misjudged, cloth dragged.
#include <gtest/gtest.h>

#include <opencv2/imgproc.hpp>

#include "projector/guard/watch.h"
#include "tests/projector/guard/plain_table.h"

namespace cowlcast::projector {
namespace {

using namespace testing;

Backdrop learnt_by_three(Table& table) {
  Backdrop backdrop(plain_sight());
  for (int k = 0; k < 4; ++k) {
    backdrop.learn(table.frame(flat(0)), Backdrop::Light::none);
    backdrop.learn(table.frame(flat(255)), Backdrop::Light::full);
    backdrop.learn(table.frame(flat(Backdrop::kFaint)), Backdrop::Light::faint);
  }
  return backdrop;
}

cv::Mat lines() {
  cv::Mat picture = flat(40);
  for (int y = 10; y < kHeight; y += 40) cv::line(picture, {0, y}, {kWidth, y}, cv::Scalar(255), 2);
  return picture;
}

TEST(LightAndPrint, TheGreyTellsHowStrongALightIsThatIsTooMuchForTheCamera) {
  Table table;
  table.beam = 4.0;  // the cloth's red would be 2.1 of what the camera can tell
  const Backdrop backdrop = learnt_by_three(table);
  const Look look = backdrop.look({200, 200, 50, 50});
  const cv::Scalar seen = cv::mean(look.projector);
  for (int c = 0; c < 3; ++c) EXPECT_NEAR(seen[c], 4.0 * table.cloth[c], 0.1 * 4.0 * table.cloth[c]) << c;
}

TEST(LightAndPrint, ABeamThatWasMisjudgedIsFoundAgainByItsLines) {
  for (const float wrong : {0.35f, 2.2f}) {
    Table table;
    CorridorWatch watch(learnt_by_three(table), {.stroke = {{-200.0, 0.0}, {200.0, 0.0}}});
    MeasuredLight light;
    light.beam = wrong;
    light.measured = true;
    watch.begin_in(light);
    watch.project(lines(), -1.0);
    WatchReport report;
    for (int k = 0; k < 6; ++k) report = watch.look(table.frame(lines()), 0.1 * k);
    EXPECT_NEAR(watch.light().beam, 1.0f, 0.15f) << wrong;
    EXPECT_EQ(report.state, WatchState::clear) << wrong;
  }
}

// Stripes across the stroke, 20 mm from one to the next, dragged by so much about its middle.
cv::Mat stripes(double dragged) {
  cv::Mat albedo(kHeight, kWidth, CV_32FC3);
  for (int y = 0; y < kHeight; ++y)
    for (int x = 0; x < kWidth; ++x) {
      const double far = std::hypot(x - 0.5 * kWidth, y - 0.5 * kHeight);
      const double own = x - dragged * std::exp(-far / 80.0);
      const double share = std::clamp(std::abs(own - 20.0 * std::round(own / 20.0)) - 5.0 + 0.5, 0.0, 1.0);
      albedo.at<cv::Vec3f>(y, x) =
          share * cv::Vec3d(0.1, 0.04, 0.03) + (1.0 - share) * cv::Vec3d(0.6, 0.6, 0.6);
    }
  return albedo;
}

TEST(LightAndPrint, DraggedPrintIsFollowedAndAThingOnItStillTold) {
  Table table;
  table.print = stripes(0.0);
  CorridorWatch watch(learnt_by_three(table), {.stroke = {{-200.0, 0.0}, {200.0, 0.0}}});
  double t = 0.0;
  WatchReport report;
  for (const double dragged : {0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.0}) {
    table.print = stripes(dragged);
    report = watch.look(table.frame(flat(0)), t += 0.1);
    EXPECT_EQ(report.state, WatchState::clear) << dragged;
  }
  const std::vector<cv::Rect> thing{box_at(20.0, 30.0, 16)};
  for (int k = 0; k < 2; ++k) report = watch.look(table.frame(flat(0), thing, {0.1, 0.3, 0.5}), t += 0.1);
  ASSERT_EQ(report.state, WatchState::marked);
  EXPECT_LT((report.blobs.front().place - Point(20.0, 30.0)).norm(), 10.0);
  // Without the slip being followed that print would be full of things.
  CorridorWatch fresh(learnt_by_three(table), {.stroke = {{-200.0, 0.0}, {200.0, 0.0}}});
  table.print = stripes(-20.0 / 3.0);
  for (int k = 0; k < 3; ++k) report = fresh.look(table.frame(flat(0)), t += 0.1);
  EXPECT_NE(report.state, WatchState::clear) << "dragged by more than it can follow: not silent";
}

TEST(LightAndPrint, AThingFarFromDraggedPrintIsToldInItsFirstFrame) {
  Table table;
  table.print = stripes(0.0);
  CorridorWatch watch(learnt_by_three(table), {.stroke = {{-250.0, 0.0}, {250.0, 0.0}}});
  double t = 0.0;
  const auto look = [&](double dragged, const std::vector<cv::Rect>& things) {
    table.print = stripes(dragged);
    return watch.look(table.frame(flat(0), things, {0.1, 0.3, 0.5}), t += 0.1).state;
  };
  for (const double dragged : {0.0, 0.0, 0.0, 0.8})
    EXPECT_EQ(look(dragged, {}), WatchState::clear) << dragged;
  EXPECT_EQ(look(1.6, {box_at(200.0, 30.0, 24)}), WatchState::marked);
}

}  // namespace
}  // namespace cowlcast::projector
