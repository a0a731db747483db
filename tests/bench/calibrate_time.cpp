// How long calibration takes on three photographs of 12 megapixels, and what part of it OpenCV's own marker
// detection alone would take on the same photographs.
//
//   calibrate_time [--seed N] [--runs N]
//
// Each figure is the least of the runs; "cores" is processor time over time on the clock.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <filesystem>
#include <functional>
#include <opencv2/core.hpp>
#include <string>
#include <vector>

#include "calibration/detect/markers.h"
#include "calibration/detect/paper.h"
#include "calibration/sheet/sheet.h"
#include "calibration/solve/calibrate.h"
#include "calibration/target/target.h"
#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/random_room.h"

namespace {

using namespace cowlcast::calibration;
namespace vt = virtual_table;

struct Taken {
  double clock = 1e9, processor = 1e9;  // seconds
};

Taken timed(int runs, const std::function<void()>& work) {
  Taken least;
  for (int i = 0; i < runs; ++i) {
    const auto began = std::chrono::steady_clock::now();
    const std::clock_t before = std::clock();
    work();
    least.processor = std::min(least.processor, static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC);
    least.clock = std::min(least.clock,
                           std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count());
  }
  return least;
}

void print(const char* what, const Taken& taken) {
  std::printf("%-44s %6.2f s, processor %6.2f s\n", what, taken.clock, taken.processor);
}

}  // namespace

int main(int argc, char** argv) {
  int seed = 3, runs = 3;
  for (int i = 1; i + 1 < argc; i += 2) {
    if (std::strcmp(argv[i], "--seed") == 0) seed = std::atoi(argv[i + 1]);
    if (std::strcmp(argv[i], "--runs") == 0) runs = std::atoi(argv[i + 1]);
  }
  vt::RoomOptions options;
  for (int n = 1; n <= 4; ++n) options.pages.push_back(sheet_page(Paper::a4, n));
  vt::Session session = vt::random_session(static_cast<std::uint64_t>(seed), options);
  const int width = session.room.projector.width, height = session.room.projector.height;
  const cv::Mat target = target_picture(width, height), plain = plain_picture(width, height);
  const std::filesystem::path folder = std::filesystem::temp_directory_path() / "cowlcast-calibrate-time";
  std::filesystem::create_directories(folder);
  std::vector<std::string> paths;
  for (vt::Shot& shot : session.shots) {  // the same camera with a sensor of 12 megapixels
    vt::RoomCamera& camera = shot.camera;
    const double grow = 4032.0 / camera.width;
    camera.width = 4032;
    camera.height = static_cast<int>(camera.height * grow + 0.5);
    camera.optic.focal *= grow;
    camera.optic.centre =
        grow * (camera.optic.centre + Eigen::Vector2d(0.5, 0.5)) - Eigen::Vector2d(0.5, 0.5);
    paths.push_back((folder / ("photo-" + std::to_string(paths.size() + 1) + ".jpg")).string());
    vt::save_photograph(
        paths.back(), vt::photograph(shot.room, camera, shot.target ? target : plain, shot.seed), shot.file);
  }
  CalibrationRequest request;
  request.width = width;
  request.height = height;
  request.rulers = Rulers{session.ruler_across, session.ruler_down};

  std::vector<Photograph> photographs;
  const auto load = [&] {
    std::vector<std::string> unread;
    photographs = load_photographs(paths, unread);
  };
  const Taken read = timed(runs, load);
  std::printf("%zu photographs of %d x %d, %d threads\n", paths.size(), photographs[0].grey.cols,
              photographs[0].grey.rows, cv::getNumThreads());
  print("reading the files", read);
  const Taken sheets = timed(runs, [&] {
    for (const Photograph& photograph : photographs) find_sheets(photograph.grey);
  });
  print("finding the sheets", sheets);
  const Taken opencv = timed(runs, [&] {
    for (const Photograph& photograph : photographs) find_markers(photograph.grey, MarkerFamily::paper, 20.0);
  });
  print("OpenCV's markers alone, whole photographs", opencv);
  const Taken whole = timed(runs, [&] {
    load();
    calibrate(photographs, request);
  });
  print("calibrate, files read included", whole);
  std::printf("calibrate over OpenCV's markers alone: %.2f on the clock, %.2f of processor time\n",
              whole.clock / opencv.clock, whole.processor / opencv.processor);
  std::filesystem::remove_all(folder);
  return 0;
}
