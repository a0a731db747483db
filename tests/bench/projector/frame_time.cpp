// How long a frame takes: a whole front with the blade's path, on one core.
//
//   frame_time table.json front.json
#include <QGuiApplication>
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <numbers>
#include <string>
#include <vector>

#include "drafting/geometry/polyline.h"
#include "projector/cutting/view.h"

using namespace cowlcast;

namespace {

std::string text_of(const char* path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

void time_frames(const char* name, const calibration::TableMap& map, projector::CuttingView view) {
  std::vector<double> ms;
  QImage frame;
  for (int i = 0; i < 60; ++i) {
    view = projector::after(std::move(view), i % 2 ? projector::Act::left : projector::Act::right,
                            projector::Pace::fine);
    const auto start = std::chrono::steady_clock::now();
    projector::render_into(frame, map, projector::view_marks(view, map), view.laying.height);
    ms.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  std::sort(ms.begin(), ms.end());
  std::printf("%-28s %d x %d: median %.2f ms, best %.2f ms, 95 %% %.2f ms\n", name, map.width, map.height,
              ms[ms.size() / 2], ms.front(), ms[ms.size() * 95 / 100]);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fputs("Usage: frame_time table.json front.json\n", stderr);
    return 2;
  }
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication application(argc, argv);
  auto map = calibration::TableMap::from_json(text_of(argv[1]));
  const drafting::Piece piece = drafting::piece_from_json(text_of(argv[2]));
  projector::Laying laying{.angle = 0.5 * std::numbers::pi, .height = 1.0};
  const drafting::Box lit = drafting::box_of(projector::lit_outline(map, 1.0));
  const drafting::Box lain = drafting::box_of(projector::laid(laying, piece.cut_line));
  const projector::Point shift = 0.5 * (lit.low + lit.high) - 0.5 * (lain.low + lain.high);
  laying.x = shift.x();
  laying.y = shift.y();
  for (const int scale : {1, 2}) {
    if (scale == 2) {
      map.lens.focal *= 2.0;
      map.lens.centre = 2.0 * map.lens.centre + Eigen::Vector2d(0.5, 0.5);
      map.width *= 2;
      map.height *= 2;
    }
    projector::CuttingView view =
        projector::new_view(piece, projector::cuts_of(projector::cut_runs(piece), projector::Blade{}, {}),
                            laying, projector::FrameStyle{});
    time_frames("laying", map, view);
    view.phase = projector::Phase::cutting;
    view.cut = 1;
    time_frames("cutting, blade's path", map, view);
  }
  return 0;
}
