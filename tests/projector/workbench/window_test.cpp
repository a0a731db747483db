// The real window, driven by keys and mouse.
#include "projector/workbench/window.h"

#include <gtest/gtest.h>

#include <QAbstractSpinBox>
#include <QApplication>
#include <QMessageBox>
#include <QShortcut>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <QWheelEvent>
#include <fstream>
#include <sstream>

#include "../test_map.h"
#include "driven_window.h"
#include "projector/project/project_file.h"
#include "projector/workbench/canvas/canvas.h"
#include "projector/workbench/places/pattern_place.h"

namespace cowlcast::projector {
namespace {

using namespace testing;

TEST_F(Workbench, FromANewProjectToASavedCowlAndBack) {
  EXPECT_EQ(window->current(), Place::pattern);
  press(Qt::Key_S, alt);  // draft it in a standard size
  EXPECT_EQ(project().pattern.source, PatternSource::size);
  press(Qt::Key_3, ctrl);
  EXPECT_EQ(window->current(), Place::cowl);
  const double before = project().cowl.drape;
  drag("drape", {60, 0});
  const double opened = project().cowl.drape;
  EXPECT_GT(opened, before + 50.0);
  EXPECT_NEAR(canvas().handle_pixel("drape")->x(), pixel_from_plane(canvas().view(), {0.5 * opened, 0.0}).x(),
              0.01);
  press(Qt::Key_Z, ctrl);
  EXPECT_EQ(project().cowl.drape, before);  // the whole drag is one step
  press(Qt::Key_Z, ctrl | Qt::ShiftModifier);
  EXPECT_EQ(project().cowl.drape, opened);
  press_and_name(Qt::Key_S, path("top"));
  EXPECT_TRUE(document.saved());
  const QString file = path("top") + kProjectEnding;
  ASSERT_TRUE(QFile::exists(file));
  EXPECT_EQ(settings.recent().value(0), file);
  press(Qt::Key_N, ctrl);
  EXPECT_EQ(project().pattern.source, PatternSource::none);
  press_and_name(Qt::Key_O, file);
  EXPECT_EQ(project().cowl.drape, opened);
  EXPECT_EQ(project().pattern.source, PatternSource::size);
}

TEST_F(Workbench, EveryHandleOfTheCowlChangesWhatItSays) {
  press(Qt::Key_S, alt);
  press(Qt::Key_3, ctrl);
  drag("neckline", {0, 12});
  EXPECT_GT(project().cowl.neckline_drop, 60.0);
  drag("facing", {0, -10});
  EXPECT_GT(project().cowl.facing_depth, 50.8);
  drag("start-2", {0, 14});
  ASSERT_EQ(project().cowl.slashes.size(), 3u);
  const double share = project().cowl.slashes[0].share;
  drag("hinge-0", {9, 3});
  EXPECT_NE(project().cowl.slashes[0].share, share);
  press(Qt::Key_L, alt);  // slash lines back in place
  EXPECT_TRUE(project().cowl.slashes.empty());
  // The same by keys alone: into the drawing, on to the neckline's handle, a step down.
  press(Qt::Key_F6);
  ASSERT_TRUE(canvas().hasFocus());
  const auto& handles = canvas().scene().handles;
  for (const SceneHandle& handle : handles) {
    press(Qt::Key_Tab);
    if (handle.id == "drape") break;
  }
  const double drape = project().cowl.drape;
  EXPECT_TRUE(canvas().hasFocus());
  press(Qt::Key_Right);
  EXPECT_DOUBLE_EQ(project().cowl.drape, drape + 5.0);
}

TEST_F(Workbench, ADragStopsAtTheLongestThatWorks) {
  press(Qt::Key_S, alt);
  press(Qt::Key_3, ctrl);
  drag("drape", {900, 0});
  const Garment garment = garment_of(project());
  EXPECT_TRUE(garment.cowl.has_value()) << garment.refusal;
  EXPECT_NEAR(project().cowl.drape,
              drafting::drape_range(*garment.bases.front, cowl_wishes_of(project())).most, 1e-9);
  EXPECT_EQ(refusal(), nullptr);
}

TEST_F(Workbench, ATypedDrapeThatCannotBeIsSaidWithAWayOut) {
  press(Qt::Key_S, alt);
  press(Qt::Key_3, ctrl);
  press(Qt::Key_D, alt);
  ASSERT_NE(qobject_cast<LengthBox*>(QApplication::focusWidget()), nullptr);
  QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("150 cm"));
  press(Qt::Key_Return);
  EXPECT_DOUBLE_EQ(project().cowl.drape, 1500.0);
  ASSERT_NE(refusal(), nullptr);
  EXPECT_TRUE(refusal()->words().contains(QStringLiteral("too long"))) << refusal()->words().toStdString();
  press(Qt::Key_Return, ctrl);  // the way out
  EXPECT_EQ(refusal(), nullptr);
  EXPECT_TRUE(garment_of(project()).cowl.has_value());
  press(Qt::Key_Z, ctrl);
  EXPECT_DOUBLE_EQ(project().cowl.drape, 1500.0);
}

TEST_F(Workbench, WhatIsTypedBeyondWhatCanBeIsSaid) {
  press(Qt::Key_S, alt);
  press(Qt::Key_4, ctrl);
  press(Qt::Key_W, alt);
  auto* box = qobject_cast<LengthBox*>(QApplication::focusWidget());
  ASSERT_NE(box, nullptr);
  const auto said = [&] {
    for (const QLabel* label : window->findChildren<QLabel*>())
      if (label->isVisible() && label->text().contains(QStringLiteral("too much: the most")))
        return label->text();
    return QString();
  };
  QTest::keyClicks(box, QStringLiteral("99999 cm"));
  press(Qt::Key_Return);
  EXPECT_EQ(project().cloth.width, box->maximum());
  EXPECT_TRUE(said().contains(QStringLiteral("99999"))) << said().toStdString();
  box->selectAll();
  QTest::keyClicks(box, QStringLiteral("140 cm"));
  press(Qt::Key_Return);
  EXPECT_EQ(project().cloth.width, 1400.0);
  EXPECT_TRUE(said().isEmpty());
}

TEST_F(Workbench, ChangingWhatIsCutIsSaidAtOnceWithTheWayBack) {
  press(Qt::Key_S, alt);
  const drafting::Piece front = garment_of(project()).pieces.front();
  document.note([&](Project& one) {
    Record& record = one.cutting[front.name];
    record.strokes = 9;
    record.cut = 2;
    record.shape = shape_of(front);
  });
  press(Qt::Key_3, ctrl);
  EXPECT_FALSE(window->notice().isVisible());
  const double drape = project().cowl.drape;
  drag("drape", {60, 0});
  drag("facing", {0, -10});
  ASSERT_TRUE(window->notice().isVisible());
  EXPECT_TRUE(window->notice().words().contains(QStringLiteral("cowl front")))
      << window->notice().words().toStdString();
  press(Qt::Key_Return, alt);
  EXPECT_EQ(project().cowl.drape, drape);
  EXPECT_FALSE(window->notice().isVisible());
  drag("drape", {60, 0});
  EXPECT_TRUE(window->notice().isVisible());
  press(Qt::Key_Z, ctrl);
  EXPECT_FALSE(window->notice().isVisible()) << "undone, there is nothing to say";
  drag("drape", {60, 0});
  press(Qt::Key_5, ctrl);
  EXPECT_FALSE(window->notice().isVisible()) << "Cutting says it itself";
}

/// The demo base without its ids.
QString nameless_drawing(const QTemporaryDir& folder) {
  std::ifstream in(std::string(COWLCAST_DATA_DIR) + "/demo-base.svg");
  std::stringstream text;
  text << in.rdbuf();
  std::string svg = text.str();
  for (const char* role : {"centre-front", "neckline", "shoulder", "armhole\"", "side-seam", "hem"}) {
    const std::string id = std::string(" id=\"") + role;
    const size_t at = svg.find(id);
    svg.erase(at, svg.find('"', at + 5) + 1 - at);
  }
  const QString file = folder.filePath(QStringLiteral("front.svg"));
  write_whole(file, svg);
  return file;
}

TEST_F(Workbench, EdgesOfADrawingAreNamedByClickingThem) {
  auto& place = dynamic_cast<PatternPlace&>(window->workplace(Place::pattern));
  place.open_drawing(nameless_drawing(folder), true);
  QApplication::processEvents();
  EXPECT_FALSE(garment_of(project()).bases.front);
  // As they are asked for: centre front, neckline, shoulder, armhole, side seam, hem. So they stand in the
  // file.
  for (int i = 1; i <= 6; ++i) {
    const Scene& scene = canvas().scene();
    ASSERT_GE(scene.lines.size(), 6u) << i;
    const Polyline& line = scene.lines[static_cast<size_t>(i - 1)].points;
    const Point at =
        pixel_from_plane(canvas().view(), drafting::point_at(line, 0.5 * drafting::length(line)));
    QTest::mouseClick(&canvas(), Qt::LeftButton, {},
                      QPoint(static_cast<int>(at.x()), static_cast<int>(at.y())));
    QApplication::processEvents();
  }
  EXPECT_EQ(project().pattern.front.roles.size(), 6u);
  EXPECT_TRUE(garment_of(project()).bases.front) << garment_of(project()).bases.front_refusal;
  for (int i = 0; i < 6; ++i) press(Qt::Key_Z, ctrl);
  EXPECT_TRUE(project().pattern.front.roles.empty());
}

TEST_F(Workbench, AFileThatIsNoDrawingIsRefusedInPlace) {
  write_whole(path("no.svg"), "not a drawing");
  dynamic_cast<PatternPlace&>(window->workplace(Place::pattern)).open_drawing(path("no.svg"), true);
  ASSERT_NE(refusal(), nullptr);
  EXPECT_TRUE(refusal()->words().contains(QStringLiteral("no.svg")));
  EXPECT_EQ(project().pattern.source, PatternSource::none);
}

TEST_F(Workbench, TheWheelScrollsAndChangesNoValue) {
  press(Qt::Key_S, alt);
  press(Qt::Key_3, ctrl);
  const double drape = project().cowl.drape, drop = project().cowl.neckline_drop;
  int boxes = 0;
  for (auto* box : window->findChildren<QAbstractSpinBox*>()) {
    if (!box->isVisible()) continue;
    ++boxes;
    box->setFocus();
    const QPointF middle = box->rect().center();
    QWheelEvent wheel(middle, box->mapToGlobal(middle), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(box, &wheel);
  }
  EXPECT_GT(boxes, 2);
  EXPECT_EQ(project().cowl.drape, drape);
  EXPECT_EQ(project().cowl.neckline_drop, drop);
}

FoundWork left_behind(const QString& file, double drape) {
  FoundWork left;
  left.project = Project();
  left.project->cowl.drape = drape;
  left.file = file;
  return left;
}

TEST_F(Workbench, AnOfferIsCalmAndCanBePutAway) {
  window->offer({left_behind(path("left"), 480)});
  ASSERT_TRUE(window->notice().isVisible());
  press(Qt::Key_Backspace, ctrl | Qt::ShiftModifier);
  EXPECT_FALSE(window->notice().isVisible());
}

TEST_F(Workbench, TwoNotesInSightHaveKeysOfTheirOwnAndEscapePutsThemAway) {
  press(Qt::Key_S, alt);
  document.change("too long", [](Project& project) { project.cowl.drape = 1500; });
  press(Qt::Key_3, ctrl);
  window->offer({left_behind(path("left"), 480)});
  std::vector<NoteBox*> notes;
  for (NoteBox* note : window->findChildren<NoteBox*>())
    if (note->isVisible()) notes.push_back(note);
  ASSERT_EQ(notes.size(), 2u);
  EXPECT_NE(notes[0]->button()->shortcut(), notes[1]->button()->shortcut());
  EXPECT_NE(notes[0]->put_away()->shortcut(), notes[1]->put_away()->shortcut());
  press(Qt::Key_Escape);
  EXPECT_TRUE(window->notice().isVisible()) << "the place's goes first";
  ASSERT_NE(refusal(), nullptr);
  EXPECT_EQ(refusal(), &window->notice());
  press(Qt::Key_Escape);
  EXPECT_EQ(refusal(), nullptr);
}

TEST_F(Workbench, ADamagedProjectIsNamedAndANewProjectClearsWhatWasSaid) {
  write_whole(path("torn.cowlcast"), "{\"format\": \"cowl");
  EXPECT_FALSE(window->open_file(path("torn.cowlcast")));
  ASSERT_TRUE(window->notice().isVisible());
  EXPECT_TRUE(window->notice().words().contains(QStringLiteral("torn.cowlcast")));
  press(Qt::Key_N, ctrl);
  EXPECT_FALSE(window->notice().isVisible());
}

TEST_F(Workbench, WhatIsNotSavedIsAskedAboutBeforeItGoes) {
  press(Qt::Key_S, alt);
  ASSERT_FALSE(document.saved());
  for (const QString& answer : {QStringLiteral("&Go on working"), QStringLiteral("Throw the changes away")}) {
    bool asked = false;
    QTimer answering;
    QObject::connect(&answering, &QTimer::timeout, [&] {
      auto* question = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
      for (QAbstractButton* button : question != nullptr ? question->buttons() : QList<QAbstractButton*>()) {
        if (button->text() != answer) continue;
        asked = true;
        button->click();
      }
    });
    answering.start(10);
    window->close();
    EXPECT_TRUE(asked);
    EXPECT_EQ(window->isVisible(), answer == QStringLiteral("&Go on working"));
  }
}

TEST_F(Workbench, NeitherReturnNorALetterSavesOrThrowsAway) {
  press(Qt::Key_S, alt);
  const auto size = project().pattern.size;
  std::vector<Qt::Key> keys{Qt::Key_Return, Qt::Key_Enter};
  for (int key = Qt::Key_A; key <= Qt::Key_Z; ++key) keys.push_back(static_cast<Qt::Key>(key));
  for (const Qt::Key key : keys) {
    int asked = 0;
    QTimer answering;
    QObject::connect(&answering, &QTimer::timeout, [&] {
      auto* question = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
      if (question == nullptr) return;
      QTest::keyClick(question, ++asked == 1 ? key : Qt::Key_Escape);
    });
    answering.start(5);
    window->close();
    EXPECT_GE(asked, 1);
    ASSERT_TRUE(window->isVisible()) << key;
    ASSERT_FALSE(document.saved()) << key;
    ASSERT_EQ(project().pattern.size, size) << key;
  }
  EXPECT_TRUE(document.path().isEmpty());
}

TEST_F(Workbench, WorkThatWasLeftBehindIsOfferedAndTakenUp) {
  window->offer({left_behind(path("left"), 555)});
  ASSERT_TRUE(window->notice().isVisible());
  press(Qt::Key_Return, alt);
  EXPECT_DOUBLE_EQ(project().cowl.drape, 555.0);
  EXPECT_FALSE(window->notice().isVisible());
  EXPECT_FALSE(document.saved());
}

TEST_F(Workbench, ThemeAndLargerTypeChangeAtOnce) {
  press(Qt::Key_L, ctrl);
  EXPECT_EQ(theme().name, ThemeName::dark);
  EXPECT_EQ(window->palette().color(QPalette::Window), theme().ground);
  const int small = letters(TextSize::plain).pixelSize();
  press(Qt::Key_T, ctrl);
  EXPECT_GT(letters(TextSize::plain).pixelSize(), small);
  QApplication::processEvents();
  EXPECT_EQ(window->current(), Place::pattern);
  Settings again(path("settings.ini"));
  EXPECT_EQ(again.preferences().theme, ThemeName::dark);
  EXPECT_TRUE(again.preferences().larger_type);
}

}  // namespace
}  // namespace cowlcast::projector
