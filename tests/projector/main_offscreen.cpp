// Runs tests that need fonts or windows, without a screen, and without touching what the user keeps.
#include <gtest/gtest.h>

#include <QApplication>
#include <QTemporaryDir>

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QTemporaryDir home;
  for (const char* kept : {"XDG_CONFIG_HOME", "XDG_DATA_HOME"}) qputenv(kept, home.path().toUtf8());
  ::testing::InitGoogleTest(&argc, argv);
  const QApplication application(argc, argv);
  return RUN_ALL_TESTS();
}
