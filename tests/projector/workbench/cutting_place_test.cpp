#include "projector/workbench/places/cutting_place.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QKeyEvent>
#include <QScreen>
#include <set>
#include <string>

#include "../test_map.h"
#include "projector/cutting/now.h"
#include "support.h"

namespace cowlcast::projector {
namespace {

using testing::Stand;

/// A table of one's own, calibrated just now, and a top in size 8.
void calibrate_and_draft(Document& document) {
  document.change("all", [](Project& project) {
    project.table.map = testing::map_of({});
    project.table.map->made_at = present_time();
    project.pattern.source = PatternSource::size;
    project.pattern.size = std::string("8");
  });
}

void press(QWidget& widget, int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
  QKeyEvent event(QEvent::KeyPress, key, modifiers);
  QCoreApplication::sendEvent(&widget, &event);
}

void read_cautions(CuttingPlace& place) {
  for (int i = 0; i < 20 && place.view()->phase == Phase::cautions; ++i) place.act(Act::next);
}

TEST(CuttingPlace, TeachesWhereToGoWhileThereIsNothingToCutBy) {
  Stand stand;
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  std::vector<Place> wanted;
  QObject::connect(&place, &Workplace::wanted, [&](Place where) { wanted.push_back(where); });
  place.show_project();
  EXPECT_FALSE(place.view());
  const auto follow = [&] {  // the page's own button, not the panel's
    for (QPushButton* button : place.findChildren<QPushButton*>())
      if (button->text().startsWith(QStringLiteral("To the ")) && button->property("primary").toBool())
        button->click();
  };
  follow();
  calibrate_and_draft(stand.document);
  stand.document.change("no pattern", [](Project& project) { project.pattern.source = PatternSource::none; });
  place.show_project();
  follow();
  stand.document.change("no cowl", [](Project& project) {
    project.pattern.source = PatternSource::size;
    project.cowl.drape = 5000;
  });
  place.show_project();
  follow();
  EXPECT_EQ(wanted, (std::vector{Place::table, Place::pattern, Place::cowl}));
  stand.document.undo();
  stand.document.undo();
  place.show_project();
  EXPECT_TRUE(place.view());
}

TEST(CuttingPlace, ShowsTheFrameAndTakesTheKeysOfTheTable) {
  Stand stand;
  calibrate_and_draft(stand.document);
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  ASSERT_TRUE(place.view());
  EXPECT_EQ(place.light().frame().size(), QSize(1920, 1080));
  EXPECT_FALSE(place.light().shows_table()) << "a table of one's own is not simulated";
  read_cautions(place);
  ASSERT_EQ(place.view()->phase, Phase::laying);
  const double before = place.view()->laying.x;
  const QImage frame = place.light().frame();
  press(place.light(), Qt::Key_Right, Qt::ShiftModifier);
  press(place.light(), Qt::Key_Right, Qt::ShiftModifier);
  EXPECT_DOUBLE_EQ(place.view()->laying.x, before + 20.0);
  EXPECT_NE(place.light().frame(), frame);
  EXPECT_DOUBLE_EQ(stand.document.project().cutting.at("cowl front").laying.x, before + 20.0);
  stand.document.undo();  // both presses, since nothing came between
  place.show_project();
  EXPECT_FALSE(stand.document.project().cutting.contains("cowl front"));
}

TEST(CuttingPlace, GoesOnWhereItStoppedAndKeepsEveryStroke) {
  Stand stand;
  calibrate_and_draft(stand.document);
  {
    CuttingPlace place(stand.document, stand.settings, stand.garment);
    place.show_project();
    read_cautions(place);
    place.act(Act::right, Pace::coarse);
    place.act(Act::next);
    place.act(Act::next);
    place.act(Act::next);
    EXPECT_EQ(stand.document.project().cutting.at("cowl front").cut, 2);
  }
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  EXPECT_EQ(place.view()->cut, 2);
  EXPECT_EQ(place.view()->laying.x, stand.document.project().cutting.at("cowl front").laying.x);
  // The cowl is changed: what is cut belongs to another piece, and that is said.
  stand.document.change("drape", [](Project& project) { project.cowl.drape += 20; });
  place.show_project();
  EXPECT_EQ(place.view()->cut, 0);
  EXPECT_FALSE(place.notice().words().isEmpty());
  place.notice().button()->click();  // the way back
  place.show_project();
  EXPECT_EQ(place.view()->cut, 2);
  EXPECT_TRUE(place.notice().words().isEmpty());
}

TEST(CuttingPlace, WhatIsCutStaysCutWhenTheHandChanges) {
  Stand stand;
  calibrate_and_draft(stand.document);
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  read_cautions(place);
  for (int i = 0; i < 4; ++i) place.act(Act::next);
  const auto cut = [&] {
    std::set<std::string> seams;
    for (int i = 0; i < place.view()->cut; ++i)
      seams.insert(stroke_name(place.view()->piece, place.view()->plan[static_cast<size_t>(i)]));
    return seams;
  };
  const std::set<std::string> before = cut();
  ASSERT_EQ(place.view()->cut, 3);
  place.act(Act::unlock);
  for (int i = 0; i < 20; ++i) place.act(Act::turn_left, Pace::coarse);
  for (const bool left : {true, false}) {
    stand.settings.set([&](Preferences& preferences) { preferences.left_handed = left; });
    place.show_project();
    EXPECT_EQ(place.view()->cut, 3);
    EXPECT_EQ(cut(), before);
  }
}

TEST(CuttingPlace, ThicknessChangedAmidAPieceIsFollowed) {
  Stand stand;
  calibrate_and_draft(stand.document);
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  read_cautions(place);
  place.act(Act::next);
  place.act(Act::next);
  stand.document.change("thick", [](Project& project) { project.cloth.thickness = 2.0; });
  place.show_project();
  EXPECT_EQ(place.view()->cut, 1);
  EXPECT_DOUBLE_EQ(place.view()->laying.height, 4.0) << "doubled cloth";
}

TEST(CuttingPlace, FollowsBladeHandAndCloth) {
  Stand stand;
  calibrate_and_draft(stand.document);
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  EXPECT_EQ(place.view()->person.hand, Hand::right);
  EXPECT_DOUBLE_EQ(place.view()->laying.height, 1.6) << "doubled cloth of 0.8 mm";
  stand.settings.set([](Preferences& preferences) { preferences.left_handed = true; });
  stand.document.change("thick", [](Project& project) { project.cloth.thickness = 1.0; });
  place.show_project();
  EXPECT_EQ(place.view()->person.hand, Hand::left);
  EXPECT_DOUBLE_EQ(place.view()->laying.height, 2.0);
  place.choose_piece("back");
  EXPECT_EQ(place.view()->piece.name, "back");
}

TEST(CuttingPlace, AnOldCalibrationBlocksUntilItIsWaived) {
  Stand stand;
  calibrate_and_draft(stand.document);
  stand.document.change("old", [](Project& project) { project.table.map->made_at = "2000-01-01T00:00:00Z"; });
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  ASSERT_FALSE(place.view()->block.empty());
  place.act(Act::next);
  EXPECT_FALSE(place.view()->block.empty());
  place.act(Act::waive);
  place.act(Act::waive);
  EXPECT_TRUE(place.view()->block.empty());
  EXPECT_EQ(stand.document.project().cutting.at("cowl front").waivers.size(), 1u);
}

TEST(CuttingPlace, ACheckThatDidNotAgreeBlocksUntilOneDoes) {
  Stand stand;
  calibrate_and_draft(stand.document);
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  read_cautions(place);
  place.act(Act::next);
  const auto check = [&](double mm) {
    stand.document.change("check", [&](Project& project) {
      project.table.checks.push_back({present_time(), {{'A', 'C', mm, 0.5}, 1200.0, 1.5}});
    });
    place.show_project();
  };
  check(1200.0);
  EXPECT_TRUE(place.view()->block.empty());
  check(1209.0);
  EXPECT_FALSE(place.view()->block.empty());
  place.act(Act::next);
  EXPECT_EQ(place.view()->cut, 0) << "nothing is cut by it";
  check(1200.5);
  EXPECT_TRUE(place.view()->block.empty());
  EXPECT_EQ(place.view()->phase, Phase::cutting) << "the work goes on where it was";
}

TEST(CuttingPlace, SaysWhyNothingCanBeShownOnTheProjector) {
  Stand stand;
  calibrate_and_draft(stand.document);
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  const auto said = [&](const char* words) {
    for (const QLabel* label : place.findChildren<QLabel*>())
      if (!label->isHidden() && label->text().contains(QLatin1String(words))) return true;
    return false;
  };
  EXPECT_TRUE(said("Plug the projector in"));
  stand.document.change("tour", [](Project& project) { project.table.simulated = true; });
  place.show_project();
  EXPECT_TRUE(said("by a simulated one"));
  EXPECT_FALSE(said("Plug the projector in"));
}

TEST(CuttingPlace, KeepsNoWindowAfterItHasEnded) {
  Stand stand;
  calibrate_and_draft(stand.document);
  const QSize screen = QGuiApplication::primaryScreen()->size();
  stand.document.change("this screen", [&](Project& project) {
    project.table.map = testing::map_of({.width = screen.width(), .height = screen.height()});
    project.table.map->made_at = present_time();
  });
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  read_cautions(place);
  const auto windows = [] {
    int count = 0;
    for (QWidget* one : QApplication::topLevelWidgets())
      count += dynamic_cast<CuttingWindow*>(one) != nullptr;
    return count;
  };
  place.show_on_projector();
  ASSERT_EQ(windows(), 1) << place.notice().words().toStdString();
  for (QWidget* one : QApplication::topLevelWidgets())
    if (dynamic_cast<CuttingWindow*>(one) != nullptr) press(*one, Qt::Key_Escape);
  EXPECT_TRUE(testing::until([&] { return windows() == 0; }, 5000));
  ASSERT_TRUE(place.view());
  EXPECT_FALSE(place.view()->ended);
  const double before = place.view()->laying.x;
  place.act(Act::right, Pace::coarse);  // the work goes on in the place
  EXPECT_NE(place.view()->laying.x, before);
}

TEST(CuttingPlace, RefusesAScreenWithOtherPixels) {
  Stand stand;
  calibrate_and_draft(stand.document);
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  place.show_on_projector();  // the only screen here is no projector of 1920 x 1080
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("1920")), -1);
}

}  // namespace
}  // namespace cowlcast::projector
