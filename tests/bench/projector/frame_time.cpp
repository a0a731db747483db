// How long a frame takes on one core, and a key press until its frame is painted in the window.
//
//   frame_time             without a screen
//   frame_time --window    in a real window on the screen there is, of the map's size
//
// Processor time of this thread's work and time by the clock are both told, and both as multiples of what
// Qt's own painter needs to fill the same outlines on the same picture with antialiasing.
#include <QApplication>
#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <functional>
#include <string>
#include <vector>

#include "projector/cutting/window.h"
#include "tests/bench/projector/scene.h"

using namespace cowlcast;
using namespace cowlcast::projector;

namespace {

struct Times {
  double clock = 0.0, processor = 0.0, best = 0.0, most = 0.0;  // ms: medians, the least and the 98th of 100
};

Times times_of(int count, const std::function<void(int)>& work) {
  std::vector<double> clock, processor;
  for (int i = 0; i < count; ++i) {
    const std::clock_t cpu = std::clock();
    const auto start = std::chrono::steady_clock::now();
    work(i);
    clock.push_back(
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    processor.push_back(1000.0 * static_cast<double>(std::clock() - cpu) / CLOCKS_PER_SEC);
  }
  std::sort(clock.begin(), clock.end());
  std::sort(processor.begin(), processor.end());
  const auto n = static_cast<size_t>(count);
  return {clock[n / 2], processor[n / 2], clock.front(), clock[n * 98 / 100]};
}

// The same outlines by Qt's painter, from points that are already projected.
double by_qt(const calibration::TableMap& map, const std::vector<Mark>& marks, double cloth) {
  std::vector<std::pair<QPainterPath, QColor>> paths;
  for (const Mark& mark : marks) {
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (const Polyline& line : mark.lines) {
      const Rings rings =
          mark.width > 0.0 ? stroke_rings(line, {.closed = mark.closed, .width = mark.width}) : Rings{line};
      for (const Polyline& ring : rings) {
        QPolygonF polygon;
        for (const Point& point : ring) {
          const Eigen::Vector2d at = map.projector_from_mat(point, cloth);
          polygon << QPointF(at.x() + 0.5, at.y() + 0.5);
        }
        path.addPolygon(polygon);
        path.closeSubpath();
      }
    }
    paths.emplace_back(path, QColor(mark.colour));
  }
  QImage picture(map.width, map.height, QImage::Format_RGB32);
  return times_of(40,
                  [&](int) {
                    picture.fill(Qt::black);
                    QPainter painter(&picture);
                    painter.setRenderHint(QPainter::Antialiasing);
                    painter.setPen(Qt::NoPen);
                    for (const auto& [path, colour] : paths) {
                      painter.setBrush(colour);
                      painter.drawPath(path);
                    }
                  })
      .processor;
}

void time_frames(const char* name, const calibration::TableMap& map, CuttingView view) {
  FramePainter painter;
  painter.draw(map, view_marks(view, map), view.laying.height);
  const Times frame = times_of(120, [&](int i) {
    view = after(std::move(view), i % 2 ? Act::left : Act::right, Pace::fine);
    painter.draw(map, view_marks(view, map), view.laying.height);
  });
  const double qt = by_qt(map, view_marks(view, map), view.laying.height);
  QImage from = painter.picture().copy(), to = from.copy();
  const double copied = times_of(40, [&](int) {
                          std::memcpy(to.bits(), from.constBits(), static_cast<size_t>(from.sizeInBytes()));
                        }).processor;
  std::printf(
      "%-10s %d x %d: processor %.2f ms, clock %.2f ms (best %.2f, 98 %% %.2f); Qt's painter %.2f ms, a "
      "copy of the picture %.2f ms\n",
      name, map.width, map.height, frame.processor, frame.clock, frame.best, frame.most, qt, copied);
}

void time_keys(const testing::TrueTable& table, const drafting::Piece& piece) {
  for (const int stroke : {0, 2}) {
    CuttingWindow window(table.map, bench::demo_view(table, piece, {0xff8a3a4c}, stroke),
                         *QGuiApplication::primaryScreen());
    window.open();
    for (int i = 0; i < 10; ++i) QCoreApplication::processEvents();
    const Times key = times_of(120, [&](int i) {
      const int code = stroke > 0 ? Qt::Key_K : i % 2 ? Qt::Key_Left : Qt::Key_Right;
      QKeyEvent press(QEvent::KeyPress, code, Qt::ControlModifier);
      QCoreApplication::sendEvent(&window, &press);
      QCoreApplication::processEvents();
    });
    std::printf(
        "key press to painted window, %-8s %d x %d: processor %.2f ms, clock %.2f ms (best %.2f, 98 %% "
        "%.2f); a display period is 16.67 ms\n",
        stroke > 0 ? "cutting," : "laying,", table.map.width, table.map.height, key.processor, key.clock,
        key.best, key.most);
  }
}

}  // namespace

int main(int argc, char** argv) {
  const bool window = argc > 1 && std::strcmp(argv[1], "--window") == 0;
  if (!window) qputenv("QT_QPA_PLATFORM", "offscreen");
  const QApplication application(argc, argv);
  const drafting::Piece piece = testing::cowl_front();
  if (window) {
    const QSize screen = QGuiApplication::primaryScreen()->size();
    time_keys(testing::true_table(5, {screen.width(), screen.height()}, 0.3), piece);
    return 0;
  }
  for (const cv::Size& size : {cv::Size(1920, 1080), cv::Size(3840, 2160)}) {
    const testing::TrueTable table = testing::true_table(5, size, 0.3);
    time_frames("laying", table.map, bench::demo_view(table, piece, {0xff8a3a4c}, 0));
    time_frames("cutting", table.map, bench::demo_view(table, piece, {0xff8a3a4c}, 2));
  }
  return 0;
}
