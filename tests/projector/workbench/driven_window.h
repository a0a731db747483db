// The real window for tests, driven by keys and mouse, on a project and settings of its own.
#pragma once

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QFileDialog>
#include <QLineEdit>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <memory>
#include <stdexcept>
#include <string>

#include "projector/workbench/canvas/canvas.h"
#include "projector/workbench/window.h"

namespace cowlcast::projector::testing {

inline constexpr Qt::KeyboardModifiers ctrl = Qt::ControlModifier, alt = Qt::AltModifier;

class Workbench : public ::testing::Test {
 protected:
  Workbench() {
    settings.set([](Preferences& p) {
      p = Preferences();
      p.units = Units::centimetres;
    });
    window = std::make_unique<WorkbenchWindow>(document, settings);
    window->resize(1280, 800);
    window->show();
    window->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
  }
  ~Workbench() override { document.give_up(); }

  void press(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    window->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
    QWidget* to = QApplication::focusWidget();
    QTest::keyClick(to != nullptr ? to : window.get(), static_cast<Qt::Key>(key), modifiers);
    QApplication::processEvents();
    // A button pressed by its key is seen going down and comes up a little later.
    const auto any_down = [this] {
      for (const QAbstractButton* button : window->findChildren<QAbstractButton*>())
        if (button->isDown()) return true;
      return false;
    };
    EXPECT_TRUE(QTest::qWaitFor([&] { return !any_down(); }, 2000));
  }
  /// The canvas in sight.
  Canvas& canvas() const {
    for (Canvas* one : window->findChildren<Canvas*>())
      if (one->isVisible()) return *one;
    throw std::logic_error("no canvas is in sight");
  }
  void drag(const std::string& handle, const QPoint& way) const {
    const Point at = canvas().handle_pixel(handle).value();
    const QPoint from(static_cast<int>(at.x()), static_cast<int>(at.y()));
    QTest::mousePress(&canvas(), Qt::LeftButton, {}, from);
    for (int i = 1; i <= 4; ++i) QTest::mouseMove(&canvas(), from + way * i / 4);
    QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, from + way);
    QApplication::processEvents();
  }
  /// Types a file name into the dialog that the key opens.
  void press_and_name(int key, const QString& file) {
    QTimer::singleShot(0, [file] {
      auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
      ASSERT_NE(dialog, nullptr);
      auto* name = dialog->findChild<QLineEdit*>();
      ASSERT_NE(name, nullptr);
      name->setText(file);
      QTest::keyClick(name, Qt::Key_Return);
    });
    press(key, ctrl);
  }
  const Project& project() const { return document.project(); }
  QString path(const char* name) const { return folder.filePath(QLatin1String(name)); }
  /// The refusal in sight, if any.
  NoteBox* refusal() const {
    for (NoteBox* one : window->findChildren<NoteBox*>())
      if (one->isVisible()) return one;
    return nullptr;
  }

  QTemporaryDir folder;
  Settings settings{folder.filePath(QStringLiteral("settings.ini"))};
  Document document{Keeping{folder.filePath(QStringLiteral("work"))}};
  std::unique_ptr<WorkbenchWindow> window;
};

}  // namespace cowlcast::projector::testing
