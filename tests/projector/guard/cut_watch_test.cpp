// The corridor's watch as she meets it: from the pictures it learns by to the ring on the table and its
// going.
#include "projector/guard/cut_watch.h"

#include <gtest/gtest.h>

#include "drafting/geometry/polyline.h"
#include "projector/cutting/begin.h"
#include "projector/cutting/view_marks.h"
#include "tests/projector/guard/plain_table.h"
#include "tests/projector/test_piece.h"

namespace cowlcast::projector {
namespace {

using namespace testing;

cv::Mat light_of(const QImage& shown) {
  const QImage same = shown.convertToFormat(QImage::Format_BGR888);
  return cv::Mat(same.height(), same.width(), CV_8UC3, const_cast<unsigned char*>(same.constBits()),
                 static_cast<size_t>(same.bytesPerLine()))
      .clone();
}

// What the view shows is projected, the camera sees it, and the watch has its say in the view.
class Sitting {
 public:
  Sitting() : watch([this] { ++sounds; }) {
    sight_.map.made_at = "2000-01-01T00:00:00Z";
    Record record;
    record.cautions_read_at = sight_.map.made_at;
    view = begun(sight_.map, small_front(), {}, record, sight_.map.made_at);
    view.legend = false;
    while (view.phase != Phase::cutting) view = after(view, Act::next, Pace::normal);
    painter_.draw(sight_.map, view);
  }

  void learn() {
    constexpr Light pictures[] = {Light::dark, Light::plain, Light::marked, Light::grey};
    calibration::StillFrames still({.pictures = 4, .frames = 4});
    while (!still.done()) {
      view.light = pictures[still.wanted()];
      painter_.draw(sight_.map, view);
      picture = table.frame(light_of(painter_.picture()));
      const Glimpse glimpse = glimpse_now();
      still.look(glimpse.grey, seconds_);
      if (!still.done()) watch.learn(glimpse, still);
      seconds_ += 0.2;
    }
    view.light = Light::lines;
    painter_.draw(sight_.map, view);
  }

  void run(double for_seconds, const std::vector<cv::Rect>& things = {}, double shade = 1.0,
           double step = 0.1) {
    for (const double end = seconds_ + for_seconds; seconds_ < end; seconds_ += step) {
      picture = table.frame(light_of(painter_.picture()), things, {0.1, 0.1, 0.12}, shade);
      watch.look(glimpse_now());
      view.notice = {};
      view = watch.said(blocked(std::move(view), ""));  // the table stands
      painter_.draw(sight_.map, view);
    }
  }

  Polyline stroke() const { return laid(view.laying, view.plan[static_cast<size_t>(view.cut)].path); }

  Table table;
  CuttingView view;
  int sounds = 0;
  CutWatch watch;
  cv::Mat picture;

 private:
  Glimpse glimpse_now() {
    cv::cvtColor(picture, grey_, cv::COLOR_BGR2GRAY);
    return {picture, grey_, "", seconds_, view, painter_.picture(), sight_.map, sight_.camera};
  }

  TableSight sight_ = plain_sight();
  ViewPainter painter_;
  cv::Mat grey_;
  double seconds_ = 0.0;
};

TEST(CutWatch, RingsWhatLiesAheadAndClearsByItself) {
  Sitting s;
  s.learn();
  s.run(1.0);
  EXPECT_EQ(s.watch.warning().state, WatchState::clear);
  EXPECT_NE(s.view.notice.words.find("aid"), std::string::npos) << "it says what it is";
  const Polyline path = s.stroke();
  const Point there = drafting::point_at(path, 0.6 * drafting::length(path));
  const std::vector<cv::Rect> thing{box_at(there.x(), there.y(), 20)};
  s.run(0.3, thing);
  ASSERT_EQ(s.watch.warning().state, WatchState::marked);
  EXPECT_EQ(s.sounds, 1);
  EXPECT_TRUE(s.view.notice.dim);
  ASSERT_EQ(s.view.notice.marks.size(), 1u);
  for (const Point& p : s.view.notice.marks.front().lines.front()) EXPECT_NEAR((p - there).norm(), 26.0, 6.0);
  s.run(1.5, thing);
  EXPECT_EQ(s.sounds, 1) << "once";
  s.run(1.5);
  EXPECT_EQ(s.watch.warning().state, WatchState::clear);
  EXPECT_FALSE(s.view.notice.dim);
  EXPECT_TRUE(s.view.notice.marks.empty());
}

TEST(CutWatch, GoesFromStrokeToStrokeAndIsNotMisledByTheLightOfItsOwnLines) {
  Sitting s;
  s.learn();
  for (int k = 0; k < 3; ++k) {
    s.run(1.0, {}, 1.0 - 0.15 * k);
    EXPECT_NE(s.watch.warning().state, WatchState::marked) << k;
    s.view = after(s.view, Act::next, Pace::normal);
    ASSERT_FALSE(all_cut(s.view));
  }
  EXPECT_EQ(s.sounds, 0);
}

TEST(CutWatch, SaysThatNobodyLooksWhenItCannot) {
  Sitting s;
  s.learn();
  s.run(0.5);
  // Something even lies over the whole stroke, and some way beyond.
  const drafting::Box box = drafting::box_of(s.stroke());
  const Point low = box.low - Point(90, 60), size = box.high + Point(90, 60) - low;
  s.run(1.0, {{static_cast<int>(0.5 * kWidth + low.x()), static_cast<int>(0.5 * kHeight - low.y() - size.y()),
               static_cast<int>(size.x()), static_cast<int>(size.y())}});
  EXPECT_NE(s.view.notice.words.find("Nobody looks ahead"), std::string::npos) << s.view.notice.words;
  s.run(2.5);
  EXPECT_EQ(s.view.notice.words.find("Nobody looks ahead"), std::string::npos) << s.view.notice.words;

  Sitting dark;
  dark.table.room = dark.table.beam = 0.0005;
  dark.learn();
  dark.run(0.3);
  EXPECT_NE(dark.view.notice.words.find("too dark"), std::string::npos) << dark.view.notice.words;
  EXPECT_TRUE(dark.view.block.empty()) << "she may cut all the same";
}

TEST(CutWatch, SaysWhenTheCameraIsTooSlowForIt) {
  Sitting s;
  s.learn();
  s.run(1.0);
  EXPECT_EQ(s.view.notice.words.find("tells late"), std::string::npos) << s.view.notice.words;
  s.run(2.0, {}, 1.0, 0.2);
  EXPECT_NE(s.view.notice.words.find("tells late"), std::string::npos) << s.view.notice.words;
  s.run(2.0);
  EXPECT_EQ(s.view.notice.words.find("tells late"), std::string::npos) << s.view.notice.words;
}

// A print that can be moved: squares, 36 mm from one to the next.
cv::Mat squares(const Point& gone) {
  cv::Mat albedo(kHeight, kWidth, CV_32FC3, cv::Scalar(0.3, 0.3, 0.5));
  for (int y = -36; y < kHeight; y += 36)
    for (int x = -36; x < kWidth; x += 36) {
      const cv::Rect square(x + static_cast<int>(gone.x()), y - static_cast<int>(gone.y()), 16, 16);
      albedo(square & cv::Rect(0, 0, kWidth, kHeight)).setTo(cv::Scalar(0.1, 0.12, 0.1));
    }
  return albedo;
}

TEST(CutWatch, WithholdsTheLinesWhileTheClothLiesElsewhereAndGivesThemBack) {
  Sitting s;
  s.table.print = squares({0, 0});
  s.learn();
  s.run(2.6);
  EXPECT_TRUE(s.view.block.empty()) << s.view.block;
  s.view = after(s.view, Act::next, Pace::normal);
  s.table.print = squares({0, -4});
  s.run(3.8);
  EXPECT_NE(s.view.block.find("about 4 mm towards you"), std::string::npos) << s.view.block;
  EXPECT_NE(s.view.way_out.find("lay the piece anew"), std::string::npos);
  ASSERT_FALSE(s.view.notice.marks.empty());
  const Polyline shaft = s.view.notice.marks.front().lines.front();
  EXPECT_GT(shaft.back().y() - shaft.front().y(), 40.0) << "away from her is the way back";
  s.table.print = squares({0, 0});
  s.run(3.8);
  EXPECT_TRUE(s.view.block.empty()) << s.view.block;
  EXPECT_TRUE(s.view.notice.marks.empty());
}

TEST(CutWatch, ShiftedClothCanBeWavedOffAndIsWrittenDownOrThePieceLaidAnew) {
  Sitting s;
  s.table.print = squares({0, 0});
  s.learn();
  s.run(2.6);
  s.table.print = squares({-3, 0});
  s.run(3.8);
  ASSERT_FALSE(s.view.block.empty());
  const std::string reason = s.view.block;
  CuttingView waived = after(after(s.view, Act::waive, Pace::normal), Act::waive, Pace::normal);
  ASSERT_TRUE(waived.block.empty());
  const Record record = recorded(waived, {}, "2000-01-01T10:00:00Z");
  ASSERT_EQ(record.waivers.size(), 1u);
  EXPECT_EQ(record.waivers.front().reason, reason);
  std::swap(s.view, waived);
  s.run(1.0);
  EXPECT_TRUE(s.view.block.empty()) << "not asked twice";
  EXPECT_NE(s.view.notice.words.find("in spite of cloth that has shifted"), std::string::npos)
      << s.view.notice.words;

  s.view = after(waived, Act::unlock, Pace::normal);
  ASSERT_TRUE(is_laying(s.view)) << "though lines are withheld";
  s.run(1.0);
  EXPECT_TRUE(s.view.block.empty()) << s.view.block;
  s.view = after(s.view, Act::next, Pace::normal);
  s.run(6.5);
  EXPECT_TRUE(s.view.block.empty()) << "laid as the cloth lies: " << s.view.block;
}

}  // namespace
}  // namespace cowlcast::projector
