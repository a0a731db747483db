#include "projector/cutting/window.h"

#include <gtest/gtest.h>

#include <QGuiApplication>
#include <QKeyEvent>

#include "calibration/refusal.h"
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
  EXPECT_FALSE(meaning_of(Qt::Key_Z, {}));
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
    EXPECT_NE(std::string(refusal.what()).find("1234 x 567"), std::string::npos);
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
  EXPECT_EQ(shown(), window.frame());
  QKeyEvent escape(QEvent::KeyPress, Qt::Key_Escape, Qt::NoModifier);
  QCoreApplication::sendEvent(&window, &escape);
  EXPECT_FALSE(window.isVisible());
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
