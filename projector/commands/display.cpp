#include "projector/commands/display.h"

#include <QApplication>
#include <QTimer>
#include <exception>
#include <iostream>
#include <stdexcept>

#include "projector/cutting/remembered.h"
#include "projector/cutting/window.h"

namespace cowlcast::projector {

bool has_display() {
#if defined(Q_OS_LINUX)
  bool there = false;
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    there = there || !qEnvironmentVariableIsEmpty(name);
  return there;
#else
  return true;
#endif
}

std::unique_ptr<QApplication> open_display() {
  // Qt ends the program when there is no screen to open a window on.
  if (!has_display())
    throw std::runtime_error("there is no screen here to show anything on. Run this where windows open.");
  static int count = 1;
  static char name[] = "cowlcast";
  static char* arguments[] = {name, nullptr};
  return std::make_unique<QApplication>(count, arguments);
}

QScreen& projector_screen(const std::string& wanted, int width, int height) {
  Remembered remembered;
  calibration::TableMap size;
  size.width = width;
  size.height = height;
  QScreen* screen = wanted.empty() ? likely_screen(remembered.screen(), size) : screen_named(wanted);
  remembered.keep_screen(screen->name().toStdString());
  return *screen;
}

std::string show_and_look(PictureWindow& window, calibration::CameraFeed& feed,
                          const std::function<std::string(const calibration::CameraFrame&)>& look) {
  std::string told;
  const auto tell = [&](const std::string& words) {
    if (words == told || words.empty()) return;
    told = words;
    std::cout << words << '\n' << std::flush;
  };
  std::exception_ptr failed;  // none may leave Qt's loop
  QTimer timer;
  QObject::connect(&timer, &QTimer::timeout, [&] {
    try {
      if (const auto frame = feed.newest()) {
        tell(look(*frame));
        return;
      }
      tell(feed.complaint());
      if (feed.state() == calibration::SourceState::ended) window.close();
    } catch (...) {
      failed = std::current_exception();
      window.close();
    }
  });
  window.open();
  timer.start(15);
  QApplication::exec();
  if (failed) std::rethrow_exception(failed);
  if (!feed.remark().empty()) std::cerr << "Caution: " << feed.remark() << '\n';
  return feed.complaint().empty() ? told : feed.complaint();
}

QImage window_picture(const cv::Mat& grey) {
  return QImage(grey.data, grey.cols, grey.rows, static_cast<qsizetype>(grey.step), QImage::Format_Grayscale8)
      .convertToFormat(QImage::Format_RGB32);
}

}  // namespace cowlcast::projector
