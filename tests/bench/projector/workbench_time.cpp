// How soon the workbench can be used, and how long a move of a dragged handle takes until it is seen.
//
//   QT_QPA_PLATFORM=offscreen workbench_time [moves]
#include <QApplication>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "projector/workbench/canvas/canvas.h"
#include "projector/workbench/window.h"

using namespace cowlcast::projector;
using Clock = std::chrono::steady_clock;

namespace {

double ms_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

/// On the clock and of the processor: other work on the machine lengthens the first alone.
struct Spent {
  std::vector<double> clock, processor;
};

void say(const char* what, const char* of, std::vector<double> times) {
  std::sort(times.begin(), times.end());
  const size_t last = times.size() - 1;
  std::printf("%-22s %-10s median %5.1f ms, 95 %% %5.1f ms, most %5.1f ms of %zu moves\n", what, of,
              times[last / 2], times[last * 95 / 100], times[last], times.size());
}

void send(Canvas& canvas, QEvent::Type type, const QPointF& at) {
  QMouseEvent event(type, at, canvas.mapToGlobal(at), Qt::LeftButton, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(&canvas, &event);
}

/// Each move: the event, the draft, all of the window that changed painted.
void time_drag(Canvas& canvas, const std::string& handle, const QPointF& way, int moves) {
  const Point at = canvas.handle_pixel(handle).value();
  const QPointF from(at.x(), at.y());
  send(canvas, QEvent::MouseButtonPress, from);
  Spent spent;
  for (int i = 1; i <= moves; ++i) {
    const double share = 0.5 - 0.5 * std::cos(6.2831853 * i / moves);
    const Clock::time_point start = Clock::now();
    const std::clock_t ticks = std::clock();
    send(canvas, QEvent::MouseMove, from + share * way);
    QApplication::processEvents();  // what changed is painted
    spent.clock.push_back(ms_since(start));
    spent.processor.push_back(1e3 * static_cast<double>(std::clock() - ticks) / CLOCKS_PER_SEC);
  }
  send(canvas, QEvent::MouseButtonRelease, from);
  say(("drag of the " + handle).c_str(), "clock", spent.clock);
  say("", "processor", spent.processor);
}

}  // namespace

int main(int argc, char** argv) {
  const Clock::time_point start = Clock::now();
  const int moves = argc > 1 ? std::max(10, std::atoi(argv[1])) : 200;
  const QApplication application(argc, argv);
  const QTemporaryDir folder;
  Settings settings(folder.filePath(QStringLiteral("settings.ini")));
  Document document(Keeping{folder.filePath(QStringLiteral("work"))});
  WorkbenchWindow window(document, settings);
  window.resize(1920, 1080);
  window.show();
  QApplication::processEvents();
  window.repaint();
  std::printf("from main to a window that can be used: %.0f ms\n", ms_since(start));

  document.change("size", [](Project& project) {
    project.pattern.source = PatternSource::size;
    project.pattern.size = "12";
  });
  const Clock::time_point going = Clock::now();
  window.go_to(Place::cowl);
  QApplication::processEvents();
  window.repaint();
  std::printf("to the cowl: %.0f ms\n", ms_since(going));
  Canvas* canvas = nullptr;
  for (Canvas* one : window.findChildren<Canvas*>())
    if (one->isVisible()) canvas = one;
  if (canvas == nullptr) return 1;
  std::printf("canvas of %d x %d pixels in a window of 1920 x 1080\n", canvas->width(), canvas->height());
  time_drag(*canvas, "drape", {150, 0}, moves);
  time_drag(*canvas, "neckline", {0, 40}, moves);
  time_drag(*canvas, "start-2", {0, 30}, moves);
  document.give_up();
  return 0;
}
