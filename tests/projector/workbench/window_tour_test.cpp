// The tour in the real window: from an empty project to the first stroke on the simulated table, each step
// done by the key of the bar's button.
#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>

#include "projector/workbench/places/cutting_place.h"
#include "projector/workbench/places/table_place.h"
#include "projector/workbench/window.h"
#include "support.h"

namespace cowlcast::projector {
namespace {

TEST(WindowTour, EndsWithACutLineOnTheClothWithoutAnyHardware) {
  testing::Stand stand;
  WorkbenchWindow window(stand.document, stand.settings);
  window.resize(1280, 800);
  window.show();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
  window.offer_tour();
  ASSERT_TRUE(window.notice().isVisible()) << "the first window offers it";
  QTest::keyClick(&window, Qt::Key_Return, Qt::AltModifier);
  const auto& table = dynamic_cast<TablePlace&>(window.workplace(Place::table));
  const auto& cutting = dynamic_cast<CuttingPlace&>(window.workplace(Place::cutting));
  ASSERT_TRUE(testing::until([&] { return window.tour().isVisible(); }, 5000));
  const auto words = window.tour().findChildren<QLabel*>();
  bool told = false;  // how far off, before one goes on
  for (int presses = 0; window.tour().task() != TourTask::end && presses < 60; ++presses) {
    QTest::keyClick(&window, Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(window.tour().offer()->hasFocus() || window.tour().hasFocus())
        << "the next step has the keyboard, not the button that leaves";
    ASSERT_TRUE(testing::until([&] { return !table.busy(); }));
    EXPECT_TRUE(window.tour().offer()->hasFocus() || window.tour().task() == TourTask::end);
    if (window.tour().task() == TourTask::base && window.current() == Place::table) {
      told = std::any_of(words.begin(), words.end(),
                         [&](const QLabel* label) { return label->text() == table.result_in_words(); });
    }
    QTest::qWait(120);  // a button pressed by its key comes up a little later
  }
  ASSERT_EQ(window.tour().task(), TourTask::end);
  EXPECT_TRUE(told);
  EXPECT_TRUE(cutting.light().hasFocus()) << "the space bar goes on with the strokes";
  EXPECT_EQ(window.current(), Place::cutting);
  EXPECT_TRUE(stand.document.project().table.simulated);
  EXPECT_GE(cutting.view()->cut, 1);
  ASSERT_TRUE(testing::until([&] { return !cutting.busy(); }));
  EXPECT_TRUE(cutting.light().shows_table());
  EXPECT_GT(cutting.light().table().width(), 600);

  for (int i = 0; i < 30 && !all_cut(*cutting.view()); ++i) QTest::keyClick(&cutting.light(), Qt::Key_Space);
  EXPECT_TRUE(all_cut(*cutting.view()));
  const Record record = stand.document.project().cutting.at("cowl front");
  EXPECT_EQ(record.cut, record.strokes);
  QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(stand.document.project().cutting.at("cowl front").cut, record.cut) << "cut cloth stays cut";
}

}  // namespace
}  // namespace cowlcast::projector
