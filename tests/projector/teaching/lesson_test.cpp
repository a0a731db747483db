// The lesson: true size on the table, and what keys do.
#include <gtest/gtest.h>

#include <QGuiApplication>
#include <QKeyEvent>

#include "calibration/refusal.h"
#include "drafting/block/block.h"
#include "drafting/piece/marks.h"
#include "projector/teaching/window.h"
#include "tests/projector/test_map.h"

namespace cowlcast::projector {
namespace {

LessonView demo_lesson() {
  return {.draft = drafting::draft_cowl_front(drafting::block_front(drafting::demo_measures()), {})};
}

TEST(Lesson, OpensClosesAndPlaysInItsStepAlone) {
  LessonView view = demo_lesson();
  EXPECT_EQ(after(view, LessonAct::back).step, 0u);
  EXPECT_EQ(after(view, LessonAct::open).share, 0.0);
  for (int i = 0; i < 3; ++i) view = after(std::move(view), LessonAct::next);
  EXPECT_EQ(view.step, drafting::opening_step_number);
  EXPECT_EQ(view.share, 0.0);
  view = after(std::move(view), LessonAct::open);
  EXPECT_NEAR(view.share, 0.05, 1e-12);
  view = after(std::move(view), LessonAct::play);
  view = later(std::move(view), 0.5 * seconds_to_open);
  EXPECT_NEAR(view.share, 0.55, 1e-12);
  view = later(std::move(view), seconds_to_open);
  EXPECT_EQ(view.share, 1.0);
  EXPECT_FALSE(view.playing);
  view = after(after(std::move(view), LessonAct::next), LessonAct::back);
  EXPECT_EQ(view.share, 1.0);  // open when one comes back to it
  for (int i = 0; i < 20; ++i) view = after(std::move(view), LessonAct::next);
  EXPECT_EQ(view.step, drafting::step_count - 1);
}

TEST(Lesson, LiesAtTrueSizeOnTheTable) {
  LessonView view = demo_lesson();
  const LessonStage stage = stage_on_table(testing::map_of({}), view.draft, 1.2);
  EXPECT_EQ(stage.unit, 1.0);
  EXPECT_EQ(stage.laying.height, 1.2);
  view.step = drafting::step_count - 1;
  const Polyline cut = drafting::lines_to_cut(view.draft.front).at(0);
  bool found = false;
  for (const Mark& mark : lesson_marks(view, stage, {})) {
    for (const Polyline& line : mark.lines) {
      if (line.size() != cut.size()) continue;
      found = true;
      for (size_t i = 1; i < line.size(); ++i)
        EXPECT_NEAR((line[i] - line[i - 1]).norm(), (cut[i] - cut[i - 1]).norm(), 1e-9);
    }
  }
  EXPECT_TRUE(found);
}

TEST(Lesson, FitsAnyScreenAtAnyStep) {
  LessonView view = demo_lesson();
  for (const auto& [width, height] : {std::pair{1280, 800}, {800, 600}, {1080, 1920}, {320, 240}}) {
    const LessonStage stage = stage_on_screen(width, height, view.draft);
    EXPECT_LE(outside_of_light(stage, view.draft), 0.0);
    for (view.step = 0; view.step < drafting::step_count; ++view.step) {
      for (const Mark& mark : lesson_marks(view, stage, {})) {
        for (const Polyline& line : mark.lines) {
          for (const Point& point : line) {
            const Point pixel = stage.map.projector_from_mat(point);
            ASSERT_GE(pixel.x(), -0.5) << width << " step " << view.step;
            ASSERT_LE(pixel.x(), width - 0.5) << width << " step " << view.step;
            ASSERT_GE(pixel.y(), -0.5) << width << " step " << view.step;
            ASSERT_LE(pixel.y(), height - 0.5) << width << " step " << view.step;
          }
        }
      }
    }
  }
  EXPECT_THROW(stage_on_screen(200, 100, view.draft), calibration::Refusal);
}

TEST(LessonWindow, FollowsKeysAndShowsTruePixelsOnItsOwnScreenOnly) {
  QScreen& screen = *QGuiApplication::primaryScreen();
  const auto map = testing::map_of({.width = screen.size().width(), .height = screen.size().height()});
  LessonView view = demo_lesson();
  LessonWindow window(view, {}, stage_on_table(map, view.draft, 0.0), screen);
  window.open();
  const auto press = [&](int key) {
    QKeyEvent event(QEvent::KeyPress, key, Qt::NoModifier);
    QCoreApplication::sendEvent(&window, &event);
  };
  for (int i = 0; i < 3; ++i) press(Qt::Key_PageDown);
  press(Qt::Key_Right);
  EXPECT_EQ(window.view().step, 3u);
  EXPECT_NEAR(window.view().share, 0.05, 1e-12);
  EXPECT_EQ(window.picture().size(), screen.size());
  EXPECT_EQ(window.picture(),
            rendered(map, lesson_marks(window.view(), stage_on_table(map, view.draft, 0.0), {}), 0.0));
  const auto other = testing::map_of({.width = 1234, .height = 567});
  EXPECT_THROW(LessonWindow(view, {}, stage_on_table(other, view.draft, 0.0), screen), calibration::Refusal);
  LessonWindow plain(view, {});
  plain.resize(700, 500);
  plain.open();
  QCoreApplication::processEvents();
  EXPECT_EQ(plain.picture().size(), plain.size() * plain.devicePixelRatio());
}

}  // namespace
}  // namespace cowlcast::projector
