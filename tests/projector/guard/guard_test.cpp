// The watch on strips and frames made up here; long simulated video is for tests/bench/guard_video.
#include <gtest/gtest.h>

#include <opencv2/imgproc.hpp>
#include <optional>

#include "calibration/refusal.h"
#include "drafting/refusal.h"
#include "projector/guard/overlay.h"
#include "projector/guard/watch.h"
#include "tests/projector/guard/plain_table.h"

namespace cowlcast::projector {
namespace {

using namespace testing;

Backdrop learnt(Table& table) {
  Backdrop backdrop(plain_sight());
  for (int k = 0; k < 4; ++k) {
    backdrop.learn(table.frame(flat(0)), Backdrop::Light::none);
    backdrop.learn(table.frame(flat(255)), Backdrop::Light::full);
  }
  return backdrop;
}

const Corridor& corridor() {
  static const Corridor across{.stroke = {{-200.0, 0.0}, {200.0, 0.0}}};
  return across;
}

TEST(Guard, StripLiesAlongTheStroke) {
  const Strip strip = corridor_strip(corridor());
  const int column = static_cast<int>((Strip::before + 100.0) / Strip::cell);
  EXPECT_NEAR(strip.place(column, 0).x(), -200.0 + strip.along(column), 1e-9);
  EXPECT_NEAR(strip.place(column, strip.corridor.start).y(), -15.0 + 0.5 * Strip::cell, 1e-9);
  EXPECT_NEAR(strip.place(column, strip.corridor.end - 1).y(), 66.0, Strip::cell);
  EXPECT_NEAR(strip.place(column, 0).y(), -15.0 - Strip::margin + 0.5 * Strip::cell, 1e-9);
  EXPECT_THROW(corridor_strip({.stroke = {{1.0, 1.0}, {1.0, 1.0}}}), drafting::Refusal);
}

TEST(Guard, WantsTheBareClothFirstAndTheRightPictureSize) {
  Backdrop backdrop(plain_sight());
  EXPECT_TRUE(backdrop.not_ready());
  EXPECT_THROW(backdrop.learn(cv::Mat::zeros(10, 10, CV_8UC3), Backdrop::Light::none), calibration::Refusal);
  Table dark;
  dark.room = dark.beam = 0.0005;
  EXPECT_TRUE(learnt(dark).not_ready());
  Table table;
  EXPECT_FALSE(learnt(table).not_ready());
}

TEST(Guard, MarksAThingOfTwelveMillimetresInTwoFramesAndClearsByItself) {
  Table table;
  CorridorWatch watch(learnt(table), corridor());
  double t = 0.0;
  const auto look = [&](const std::vector<cv::Rect>& things) {
    return watch.look(table.frame(flat(0), things), t += 1.0 / 15.0);
  };
  for (int k = 0; k < 5; ++k) EXPECT_EQ(look({}).state, WatchState::clear);
  const std::vector<cv::Rect> thing{box_at(80.0, 30.0, 12)};
  look(thing);
  const WatchReport report = look(thing);
  ASSERT_EQ(report.state, WatchState::marked);
  ASSERT_EQ(report.blobs.size(), 1u);
  EXPECT_LT((report.blobs.front().place - Point(80.0, 30.0)).norm(), 3.0);
  EXPECT_NEAR(report.blobs.front().along, 274.0, 4.0);
  look({});
  EXPECT_EQ(look({}).state, WatchState::clear);
  for (int k = 0; k < 5; ++k) EXPECT_EQ(look({box_at(80.0, 30.0, 5)}).state, WatchState::clear);
}

TEST(Guard, IsNotMisledByAPictureThatComesLate) {
  Table table;
  CorridorWatch watch(learnt(table), corridor());
  double t = 0.0;
  const auto look = [&](const cv::Mat& picture) { return watch.look(table.frame(picture), t += 0.1); };
  cv::Mat lines = flat(60);
  for (int x = 20; x < kWidth; x += 24) cv::line(lines, {x, 0}, {x - 20, kHeight}, cv::Scalar(255), 2);
  watch.project(flat(60), t);
  for (int k = 0; k < 4; ++k) EXPECT_EQ(look(flat(60)).state, WatchState::clear);
  watch.project(lines, t);
  for (int k = 0; k < 2; ++k) EXPECT_EQ(look(flat(60)).state, WatchState::clear) << "the old picture, late";
  for (int k = 0; k < 4; ++k) EXPECT_EQ(look(lines).state, WatchState::clear);
}

TEST(Guard, IsNotMisledByAPictureThatIsReplacedBeforeItHasCome) {
  Table table;
  CorridorWatch watch(learnt(table), corridor());
  double t = 0.0;
  const auto look = [&](const cv::Mat& picture) { return watch.look(table.frame(picture), t += 0.1); };
  cv::Mat lines = flat(60), dim = flat(20);
  for (int x = 20; x < kWidth; x += 60) cv::line(lines, {x, 0}, {x - 20, kHeight}, cv::Scalar(255), 12);
  for (int x = 20; x < kWidth; x += 60) cv::line(dim, {x, 0}, {x - 20, kHeight}, cv::Scalar(200), 12);
  watch.project(flat(60), t);
  for (int k = 0; k < 5; ++k) EXPECT_EQ(look(flat(60)).state, WatchState::clear);
  watch.project(lines, t);
  watch.project(dim, t + 0.05);
  for (int k = 0; k < 2; ++k) EXPECT_EQ(look(flat(60)).state, WatchState::clear) << "neither has come";
  for (int k = 0; k < 4; ++k) EXPECT_EQ(look(dim).state, WatchState::clear);
}

TEST(Guard, KnowsWhatCannotBeAShadow) {
  // A thing that is just as bright as cloth that the beam does not reach, and hangs together with a dark one.
  // The projector is where the camera is: no shadow is seen beside what throws it.
  Table table;
  table.beam = 0.06;  // weak, so that its shadow's edges do not stand out
  CorridorWatch watch(learnt(table), corridor());
  const cv::Mat white = flat(255);
  watch.project(white, -1.0);
  double t = 0.0;
  for (int k = 0; k < 4; ++k) EXPECT_EQ(watch.look(table.frame(white), t += 0.1).state, WatchState::clear);
  const int x = kWidth / 2 + 50, y = kHeight / 2;
  Table bladed = table;
  bladed.print = cv::Mat(kHeight, kWidth, CV_32FC3, table.cloth);
  const double left = table.room / (table.room + table.beam);
  bladed.print(cv::Rect(x, y - 80, 26, 70)).setTo(left * table.cloth);
  bladed.print(cv::Rect(x - 20, y - 120, 70, 50)).setTo(cv::Scalar::all(0.02));
  WatchReport report;
  for (int k = 0; k < 2; ++k) report = watch.look(bladed.frame(white), t += 0.1);
  ASSERT_EQ(report.state, WatchState::marked);
  EXPECT_GT(report.blobs.front().width, 40.0) << "not the dark one alone";

  // Seen from where the projector stands aside, what throws a shadow lies on the projector's side of it.
  TableSight aside = plain_sight();
  aside.map.projector_from_mat_frame.translation().x() = 500.0;  // the lens 500 mm to the left
  const StripView view = seen_by(corridor_strip(corridor()), aside);
  const cv::Vec2f way = view.thrower.at<cv::Vec2f>(view.seen.rows / 2, view.seen.cols / 2);
  EXPECT_NEAR(static_cast<double>(way[0]) * Strip::cell, -StripView::kTallest * 500.0 / 1000.0, 3.0);
  EXPECT_NEAR(way[1], 0.0, 0.01);
}

TEST(Guard, TakesWhatFollowsTheStrokeFromItsStartForTheCutter) {
  Table table;
  CorridorWatch watch(learnt(table), corridor());
  double t = 0.0;
  for (double nose = -190.0; nose < 150.0; nose += 20.0) {
    const int left = static_cast<int>(0.5 * kWidth) - 300, right = static_cast<int>(0.5 * kWidth + nose);
    const cv::Rect cutter(left, kHeight / 2 - 10, right - left, 20);
    const WatchReport report = watch.look(table.frame(flat(0), {cutter}), t += 0.1);
    EXPECT_EQ(report.state, WatchState::clear) << nose;
    EXPECT_NEAR(report.front, nose + 200.0, 6.0);
  }
}

TEST(Guard, SaysWhyItCannotSee) {
  Table table;
  const Backdrop backdrop = learnt(table);
  const auto last = [&](const auto& frame_at) {
    CorridorWatch watch(backdrop, corridor());
    WatchReport report;
    for (int k = 0; k < 14; ++k) report = watch.look(frame_at(k), 0.1 * k);
    EXPECT_EQ(report.state, WatchState::cannot_see);
    EXPECT_FALSE(words(report.reason).empty());
    return report.reason;
  };
  EXPECT_EQ(last([](int) { return cv::Mat(); }), Blindness::no_picture);
  const cv::Mat still = table.frame(flat(0));
  EXPECT_EQ(last([&](int) { return still; }), Blindness::frozen);
  EXPECT_EQ(last([&](int) { return table.frame(flat(0), {}, {}, 0.05); }), Blindness::too_dark);
  const Corridor beyond{.stroke = {{200.0, 0.0}, {500.0, 0.0}}};
  CorridorWatch watch(backdrop, beyond);
  EXPECT_EQ(watch.look(table.frame(flat(0)), 0.0).reason, Blindness::out_of_view);
}

TEST(Guard, TellsACoverFromAChangeOfLight) {
  Table table;
  const Backdrop backdrop = learnt(table);
  const cv::Scalar dimmer = 0.45 * table.cloth;
  // An even thing over all of the corridor and well beyond it, between two frames.
  const std::vector<cv::Rect> cover{{0, kHeight / 2 - 130, kWidth, 210}};
  const auto look = [&](const std::vector<cv::Rect>& things, double shade) {
    CorridorWatch watch(backdrop, corridor());
    double t = 0.0;
    WatchReport report;
    for (int k = 0; k < 4; ++k) report = watch.look(table.frame(flat(0)), t += 0.1);
    EXPECT_EQ(report.state, WatchState::clear);
    for (int k = 0; k < 7; ++k) report = watch.look(table.frame(flat(0), things, dimmer, shade), t += 0.1);
    return report;
  };
  EXPECT_EQ(look(cover, 1.0).reason, Blindness::covered);
  EXPECT_EQ(look({}, 0.45).state, WatchState::clear) << "a lamp is switched off";
  EXPECT_EQ(look({}, 1.7).state, WatchState::clear) << "another is switched on";
}

// A camera looks at a border of boxes about the light, brighter by so much, with so much noise; levels.
struct BoxedIn {
  explicit BoxedIn(int brighter, double noise)
      : still(kHeight, kWidth, CV_8U, cv::Scalar(90)), noise_(noise) {
    for (int k = 0; k < 16; ++k) {
      const cv::Rect box(30 + 37 * k, k % 2 == 0 ? 25 : 430, 14, 12);
      still(box & cv::Rect(0, 0, kWidth, kHeight)).setTo(90 + brighter);
    }
    TableSight sight = plain_sight();
    sight.map.lit_area = {{-150.0, -100.0}, {150.0, -100.0}, {150.0, 100.0}, {-150.0, 100.0}};
    Backdrop backdrop(sight);
    for (int k = 0; k < 4; ++k)
      for (const Backdrop::Light light : {Backdrop::Light::none, Backdrop::Light::full})
        backdrop.learn(frame(), light);
    anchors.emplace(backdrop);
  }
  cv::Mat frame(const cv::Mat& shift = (cv::Mat_<double>(2, 3) << 1, 0, 0, 0, 1, 0)) {
    cv::Mat out, grain(still.size(), CV_32F);
    cv::warpAffine(still, out, shift, still.size(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
    dice_.fill(grain, cv::RNG::NORMAL, 0.0, std::max(noise_, 1e-3));
    cv::add(out, grain, out, cv::noArray(), CV_8U);
    cv::cvtColor(out, out, cv::COLOR_GRAY2BGR);
    return out;
  }
  cv::Mat still;
  std::optional<Anchors> anchors;

 private:
  double noise_;
  cv::RNG dice_{5};
};

TEST(Guard, NoticesAMovedCameraByWhatStandsAroundTheLight) {
  BoxedIn table(110, 1.0);
  ASSERT_GE(table.anchors->count(), Anchors::kFewest);
  for (int k = 0; k < 12; ++k) EXPECT_FALSE(table.anchors->moved(table.frame()));
  bool moved = false;
  for (int k = 0; k < 12; ++k)
    moved = table.anchors->moved(table.frame((cv::Mat_<double>(2, 3) << 1, 0, 3, 0, 1, 1)));
  EXPECT_TRUE(moved);
  // What drowns in the camera's noise is not found again, though nothing has moved.
  BoxedIn dim(8, 10.0);
  for (int k = 0; k < 12; ++k) EXPECT_FALSE(dim.anchors->moved(dim.frame())) << k;
}

// WCAG 2.2, success criterion 2.3.1: no more than three flashes, pairs of opposing changes, in any second.
TEST(Guard, NeverFlashes) {
  CalmWatch calm;
  cv::RNG dice(3);
  std::vector<double> changes;
  Warning before;
  for (int k = 0; k < 3000; ++k) {
    const double t = k / 30.0;
    WatchReport report;
    if (dice.uniform(0, 3) != 0) {
      report.state = WatchState::marked;
      report.blobs.push_back({.place = {dice.uniform(0.0, 300.0), 0.0}, .length = 20.0, .width = 20.0});
    }
    if (k > 1500 && k % 2 == 0) report = {};
    const Warning& now = calm.after(report, t);
    if (!now.same_as(before)) changes.push_back(t);
    before = now;
  }
  ASSERT_GT(changes.size(), 10u);
  for (size_t i = 6; i < changes.size(); ++i) EXPECT_GT(changes[i] - changes[i - 6], 1.0);
  for (size_t i = 3; i < changes.size(); ++i)
    EXPECT_GT(changes[i] - changes[i - 3], 1.0) << "twice in a second";
}

TEST(Guard, WarnsAtOnceAndClearsAfterASecond) {
  CalmWatch calm;
  WatchReport marked;
  marked.state = WatchState::marked;
  marked.blobs.push_back({.place = {10.0, 20.0}, .length = 20.0, .width = 20.0});
  EXPECT_EQ(calm.after({}, 0.0).state, WatchState::clear);
  EXPECT_EQ(calm.after(marked, 5.0).state, WatchState::marked);
  EXPECT_TRUE(calm.begun());
  EXPECT_EQ(calm.after({}, 5.5).state, WatchState::marked);
  EXPECT_FALSE(calm.begun());
  EXPECT_EQ(calm.after({}, 6.6).state, WatchState::clear);

  const Mark rings = rings_of({WatchState::marked, Blindness::none, marked.blobs}, {});
  ASSERT_EQ(rings.lines.size(), 1u);
  for (const Point& p : rings.lines.front()) EXPECT_GT((p - Point(10.0, 20.0)).norm(), 20.0);
  EXPECT_TRUE(rings_of({}, {}).lines.empty());
}

}  // namespace
}  // namespace cowlcast::projector
