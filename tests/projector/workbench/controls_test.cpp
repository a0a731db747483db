// Every control and every action says what it is, and has a key of its own.
#include <gtest/gtest.h>

#include <QAbstractSpinBox>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QMenuBar>
#include <QShortcut>
#include <QSlider>
#include <QTest>
#include <map>

#include "../test_map.h"
#include "projector/workbench/canvas/canvas.h"
#include "projector/workbench/places/pattern_place.h"
#include "projector/workbench/places/table_place.h"

#include "driven_window.h"

namespace cowlcast::projector {
namespace {

class Controls : public testing::Workbench {
 protected:
  /// Every control of every place: its name, its tip, its key.
  void walk_controls();
  int look_at_controls();
};

QString key_of(const QWidget& widget, const QWidget& window) {
  if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) {
    if (!button->shortcut().isEmpty()) return button->shortcut().toString();
    return QKeySequence::mnemonic(button->text()).toString();
  }
  for (const QLabel* label : window.findChildren<QLabel*>())
    if (label->buddy() == &widget) return QKeySequence::mnemonic(label->text()).toString();
  const auto* to_here = widget.findChild<QShortcut*>();
  return to_here != nullptr ? to_here->key().toString() : QString();
}

bool is_control(const QWidget& widget) {
  if (qobject_cast<const QAbstractButton*>(&widget) || qobject_cast<const QAbstractSpinBox*>(&widget) ||
      qobject_cast<const QComboBox*>(&widget) || qobject_cast<const Canvas*>(&widget))
    return true;
  if (qobject_cast<const QSlider*>(&widget)) return true;
  const auto* line = qobject_cast<const QLineEdit*>(&widget);
  return line != nullptr && qobject_cast<const QAbstractSpinBox*>(line->parentWidget()) == nullptr;
}

int Controls::look_at_controls() {
  int controls = 0;
  std::map<QString, QString> used;
  for (const QAction* menu : window->menuBar()->actions())
    used[QKeySequence::mnemonic(menu->text()).toString()] = menu->text();
  for (const QWidget* widget : window->findChildren<QWidget*>()) {
    if (!is_control(*widget) || !widget->isVisible()) continue;
    ++controls;
    const std::string who = std::string(widget->metaObject()->className()) + " \"" +
                            widget->accessibleName().toStdString() + "\"";
    EXPECT_FALSE(widget->accessibleName().isEmpty()) << who;
    EXPECT_FALSE(widget->toolTip().isEmpty()) << who;
    const QString key = key_of(*widget, *window);
    EXPECT_FALSE(key.isEmpty()) << who << " has no key";
    EXPECT_EQ(used.count(key), 0u) << who << " shares " << key.toStdString() << " with "
                                   << used[key].toStdString();
    used[key] = widget->accessibleName();
  }
  return controls;
}

void Controls::walk_controls() {
  Project with_base, with_table;
  with_base.pattern.source = PatternSource::size;
  with_base.pattern.size = "12";
  with_table = with_base;
  with_table.table.map = testing::map_of({});
  with_table.table.simulated = true;
  with_table.table.camera = "/dev/video7";
  int controls = 0;
  for (const Project& state : {Project(), with_base, with_table}) {
    document.start_new(state);
    for (int i = 0; i < 6; ++i) {
      window->go_to(static_cast<Place>(i));
      if (window->current() != static_cast<Place>(i)) continue;
      if (static_cast<Place>(i) == Place::table) {
        auto& table = dynamic_cast<TablePlace&>(window->workplace(Place::table));
        for (int step = 0; step < 6; ++step) {
          table.go_to_step(static_cast<TableStep>(step));
          controls += look_at_controls();
        }
        table.photograph_with_camera(true);
      }
      for (const PatternSource source : {PatternSource::size, PatternSource::body, PatternSource::drawing}) {
        if (static_cast<Place>(i) == Place::pattern && state.pattern.source != PatternSource::none)
          document.change("", [source](Project& project) { project.pattern.source = source; });
        controls += look_at_controls();
      }
      document.start_new(state);
    }
  }
  EXPECT_GT(controls, 100);
}

TEST_F(Controls, EveryControlHasANameATipAndAKeyOfItsOwn) {
  walk_controls();
}

TEST_F(Controls, EveryControlHasItsOwnKeyInGermanToo) {
  settings.set([](Preferences& p) { p.language = QStringLiteral("de"); });
  EXPECT_TRUE(QTest::qWaitFor(
      [this] {
        return window->menuBar()->actions().first()->text() == QStringLiteral("&Datei") &&
               window->centralWidget()->isVisible();
      },
      600000));
  walk_controls();
  settings.set([](Preferences& p) { p.language = QStringLiteral("en"); });
}

TEST_F(Controls, EveryActionOfTheMenusSaysWhatItDoes) {
  for (const QAction* action : window->findChildren<QAction*>()) {
    if (action->isSeparator() || action->menu() != nullptr || action->text().isEmpty()) continue;
    if (action->parent() == window->menuBar()) continue;
    EXPECT_FALSE(action->toolTip().isEmpty()) << action->text().toStdString();
  }
}
}  // namespace
}  // namespace cowlcast::projector
