// How long the whole top takes, beside one Clipper offset of the same outlines.
//
//   bench_top [repeats]
#include <algorithm>
#include <chrono>
#include <clipper.hpp>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "drafting/block/block.h"
#include "drafting/garment/top.h"

using namespace cowlcast::drafting;

namespace {

template <typename Work>
double median_ms(int repeats, Work work) {
  std::vector<double> times;
  for (int i = 0; i < repeats; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    times.push_back(
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
}

}  // namespace

int main(int count, char** words) {
  const int repeats = count > 1 ? std::max(1, std::atoi(words[1])) : 300;
  const BodyMeasures measures = demo_measures();
  const Piece front = block_front(measures), back = block_back(measures);
  for (const double drape : {200.0, 480.0, 800.0}) {
    TopWishes wishes;
    wishes.cowl.drape = drape;
    const std::vector<Piece> pieces = pieces_of(draft_top(front, back, wishes));
    std::vector<ClipperLib::Path> paths;
    for (const Piece& piece : pieces) {
      ClipperLib::Path path;
      for (const Point& p : piece.seam_line)
        path.emplace_back(std::llround(p.x() * 1e4), std::llround(p.y() * 1e4));
      paths.push_back(path);
    }
    size_t corners = 0;
    const double top =
        median_ms(repeats, [&] { corners += draft_top(front, back, wishes).back.cut_line.size(); });
    const double clipper = median_ms(repeats, [&] {
      for (const auto& path : paths) {
        ClipperLib::ClipperOffset offset;
        offset.AddPath(path, ClipperLib::jtMiter, ClipperLib::etClosedPolygon);
        ClipperLib::Paths moved;
        offset.Execute(moved, 1e5);
        corners += moved.size();
      }
    });
    std::printf(
        "drape %3.0f mm: whole top median %.3f ms, %zu pieces; one Clipper offset of them %.3f ms; ratio "
        "%.2f\n",
        drape, top, pieces.size(), clipper, top / clipper);
    if (corners == 0) return 1;
  }
}
