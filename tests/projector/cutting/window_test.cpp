#include "projector/cutting/window.h"

#include <gtest/gtest.h>

#include <QGuiApplication>
#include <QKeyEvent>
#include <QThread>

#include "calibration/refusal.h"
#include "projector/cutting/live_watch.h"
#include "tests/projector/test_map.h"
#include "tests/projector/test_piece.h"

namespace cowlcast::projector {
namespace {

QScreen& screen() {
  return *QGuiApplication::primaryScreen();
}

calibration::TableMap map_for_screen() {
  return testing::map_of({.width = screen().size().width(), .height = screen().size().height()});
}

CuttingView demo_view() {
  const drafting::Piece piece = testing::small_front();
  return new_view(piece, cuts_of(cut_runs(piece), Blade{}, {}), {}, FrameStyle{});
}

TEST(Keys, MeanWhatTheLegendSays) {
  EXPECT_EQ(meaning_of(Qt::Key_Left, {})->act, Act::left);
  EXPECT_EQ(meaning_of(Qt::Key_Left, {})->pace, Pace::normal);
  EXPECT_EQ(meaning_of(Qt::Key_Up, Qt::ShiftModifier)->pace, Pace::coarse);
  EXPECT_EQ(meaning_of(Qt::Key_Down, Qt::ControlModifier)->pace, Pace::fine);
  EXPECT_EQ(meaning_of(Qt::Key_Down, Qt::AltModifier)->pace, Pace::fine);
  EXPECT_EQ(meaning_of(Qt::Key_PageDown, {})->act, Act::next);
  EXPECT_EQ(meaning_of(Qt::Key_Space, {})->act, Act::next);
  EXPECT_EQ(meaning_of(Qt::Key_PageUp, {})->act, Act::back);
  EXPECT_EQ(meaning_of(Qt::Key_H, {})->act, Act::home);
  EXPECT_EQ(meaning_of(Qt::Key_K, {})->act, Act::band);
  EXPECT_EQ(meaning_of(Qt::Key_U, {})->act, Act::unlock);
  EXPECT_EQ(meaning_of(Qt::Key_O, {})->act, Act::waive);
  EXPECT_EQ(meaning_of(Qt::Key_R, {})->act, Act::look);
  EXPECT_EQ(meaning_of(Qt::Key_Escape, {})->act, Act::end);
  EXPECT_FALSE(meaning_of(Qt::Key_Z, {}));
}

TEST(Keys, OfPresentersAndPedalsGoOnAndBackAndDoNothingElse) {
  // What remotes and pedals send, common practice, no source: page keys, B or a full stop to darken, F5 to
  // begin.
  CuttingView view = after(demo_view(), Act::next, Pace::normal);
  for (const int key : {Qt::Key_B, Qt::Key_Period, Qt::Key_F5, Qt::Key_Tab})
    EXPECT_FALSE(meaning_of(key, {})) << key;
  for (const int key : {Qt::Key_PageDown, Qt::Key_Space, Qt::Key_PageUp, Qt::Key_PageUp})
    view = after(view, meaning_of(key, {})->act, Pace::normal);
  EXPECT_EQ(view.cut, 0);
  EXPECT_EQ(view.phase, Phase::cutting);
  view = after(view, meaning_of(Qt::Key_PageUp, {})->act, Pace::normal);
  EXPECT_TRUE(is_laying(view));
}

TEST(Screens, AreFoundByNameAndNumberAndRefusedWithTheList) {
  EXPECT_EQ(screen_named("1"), &screen());
  EXPECT_EQ(screen_named(screen().name().toStdString()), &screen());
  try {
    screen_named("no such screen");
    FAIL();
  } catch (const calibration::Refusal& refusal) {
    EXPECT_NE(std::string(refusal.what()).find("1: "), std::string::npos);
  }
}

TEST(Screens, OfOtherPixelsAreRefused) {
  try {
    check_screen(screen(), testing::map_of({.width = 1234, .height = 567}));
    FAIL();
  } catch (const calibration::Refusal& refusal) {
    EXPECT_NE(std::string(refusal.what()).find("1234 × 567"), std::string::npos);
  }
}

TEST(CuttingWindow, ShowsTheFramePixelForPixelAndFollowsKeys) {
  CuttingWindow window(map_for_screen(), demo_view(), screen());
  window.open();
  QCoreApplication::processEvents();
  const auto shown = [&] { return window.grab().toImage().convertToFormat(QImage::Format_RGB32); };
  EXPECT_EQ(shown(), window.frame());
  const QImage before = window.frame().copy();
  QKeyEvent right(QEvent::KeyPress, Qt::Key_Right, Qt::ShiftModifier);
  QCoreApplication::sendEvent(&window, &right);
  EXPECT_DOUBLE_EQ(window.view().laying.x, 10.0);
  EXPECT_NE(window.frame(), before);
  EXPECT_EQ(window.frame(), rendered(map_for_screen(), view_marks(window.view(), map_for_screen()), 0.0))
      << "drawn over the frame before, and yet the same";
  EXPECT_EQ(shown(), window.frame());
  QKeyEvent escape(QEvent::KeyPress, Qt::Key_Escape, Qt::NoModifier);
  QCoreApplication::sendEvent(&window, &escape);
  EXPECT_FALSE(window.isVisible());
}

TEST(CuttingWindow, KeepsTheScreenUpToDateByWhatHasChangedAlone) {
  CuttingWindow window(map_for_screen(), demo_view(), screen());
  window.open();
  QCoreApplication::processEvents();
  for (const int key :
       {Qt::Key_Right, Qt::Key_E, Qt::Key_G, Qt::Key_L, Qt::Key_F, Qt::Key_L, Qt::Key_PageDown}) {
    QKeyEvent press(QEvent::KeyPress, key, Qt::ShiftModifier);
    QCoreApplication::sendEvent(&window, &press);
    QCoreApplication::processEvents();
    const QImage lit = screen().grabWindow(window.winId()).toImage().convertToFormat(QImage::Format_RGB32);
    EXPECT_EQ(lit, window.frame()) << key;
  }
}

TEST(Screens, LinesAreDrawnOnTheirScreenWithItsPixelsOnly) {
  const std::vector<ScreenSeen> both{{"eDP-1", 1366, 768}, {"HDMI-1", 1920, 1080}};
  const ScreenSeen wanted{"HDMI-1", 1920, 1080};
  EXPECT_EQ(choice_of(both, wanted).index, 1);
  EXPECT_EQ(choice_of({both[0]}, wanted).index, -1);
  EXPECT_NE(choice_of({both[0]}, wanted).words.find("HDMI-1 is gone"), std::string::npos);
  EXPECT_NE(choice_of({both[0], {"HDMI-1", 1280, 720}}, wanted).words.find("1280 × 720"), std::string::npos);
  EXPECT_EQ(choice_of({{"HDMI-2", 1920, 1080}}, wanted).index, -1) << "another projector";
  EXPECT_EQ(choice_of({}, wanted).index, -1);
}

TEST(Screens, TheOneUsedLastIsTakenElseTheOnlyOneThatFits) {
  const std::vector<ScreenSeen> screens{{"eDP-1", 1920, 1080}, {"HDMI-1", 1920, 1080}, {"DP-2", 1280, 800}};
  EXPECT_EQ(likely_index(screens, "HDMI-1", 1920, 1080), 1);
  EXPECT_EQ(likely_index(screens, "", 1920, 1080), -1) << "not clear";
  EXPECT_EQ(likely_index(screens, "HDMI-1", 1280, 800), 2) << "the last one has other pixels now";
  EXPECT_EQ(likely_index(screens, "DP-2", 1024, 768), -1);
}

TEST(CuttingWindow, SurvivesItsScreenBeingUnplugged) {
  CuttingWindow window(map_for_screen(), after(demo_view(), Act::next, Pace::normal), screen());
  window.open();
  QCoreApplication::processEvents();
  const auto press = [&](int key) {
    QKeyEvent event(QEvent::KeyPress, key, Qt::NoModifier);
    QCoreApplication::sendEvent(&window, &event);
  };
  window.look_at({{"another", 1024, 768}});
  QCoreApplication::processEvents();
  EXPECT_TRUE(window.isVisible());
  EXPECT_NE(window.dark().find("is gone"), std::string::npos) << window.dark();
  press(Qt::Key_PageDown);
  EXPECT_EQ(window.view().cut, 0) << "nobody cuts by lines that are not there";
  const QImage note = window.grab().toImage();
  EXPECT_LT(note.width(), screen().size().width());
  window.look_at(screens_seen());
  QCoreApplication::processEvents();
  EXPECT_TRUE(window.dark().empty());
  EXPECT_EQ(window.grab().toImage().convertToFormat(QImage::Format_RGB32), window.frame());
  press(Qt::Key_PageDown);
  EXPECT_EQ(window.view().cut, 1);
}

TEST(LiveWatch, GoesOnWithoutACameraAndSaysSo) {
  const calibration::TableMap map = map_for_screen();
  calibration::FixedCamera camera;
  camera.width = 64;
  camera.height = 36;
  CuttingWindow window(map, after(demo_view(), Act::next, Pace::normal), screen());
  window.open();
  Watching watching(TableWatch(map, camera));
  LiveWatch live(lines_of(window), {.spec = "0"}, watching,
                 [](const calibration::CameraRequest&) { return nullptr; });
  for (int i = 0; i < 100 && window.view().notice.words.empty(); ++i) {
    QThread::msleep(5);
    QCoreApplication::processEvents();
  }
  EXPECT_NE(window.view().notice.words.find("Nobody watches"), std::string::npos);
  EXPECT_TRUE(window.view().border_marks);
  EXPECT_TRUE(window.view().block.empty());
  EXPECT_NO_THROW(live.rethrow());
}

TEST(CuttingWindow, DrawsNoLineWhenTheWindowIsNotTheMapsSize) {
  CuttingWindow window(map_for_screen(), demo_view(), screen());
  window.resize(300, 200);
  const QImage shown = window.grab().toImage().convertToFormat(QImage::Format_RGB32);
  EXPECT_NE(shown, window.frame().copy(0, 0, 300, 200));
  for (int v = 0; v < 40; ++v)
    for (int u = 0; u < 300; ++u) ASSERT_EQ(qRed(shown.pixel(u, v)), 0);
}

}  // namespace
}  // namespace cowlcast::projector
