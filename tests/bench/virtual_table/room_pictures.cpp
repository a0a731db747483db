// Renders a random session of the simulated room to look at:
//
//   room_pictures OUT_DIR SEED [--fault NAME] [--hardness H] [--target PNG] [PAGE_PNG ...]
//
// Without files it lays chessboard pages and projects a chessboard. It writes the
// photographs, the view from above with a cloth, and says how long each took.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <string>
#include <vector>

#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/top_view.h"
#include "calibration/virtual_table/truth.h"

namespace room = cowlcast::calibration::virtual_table;

namespace {

cv::Mat chessboard(int width, int height, int square, int margin) {
  cv::Mat board(height, width, CV_8U, cv::Scalar(255));
  for (int y = margin; y + square <= height - margin; y += square)
    for (int x = margin; x + square <= width - margin; x += square)
      if (((x - margin) / square + (y - margin) / square) % 2 == 0)
        board(cv::Rect(x, y, square, square)).setTo(cv::Scalar(0));
  return board;
}

double seconds_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fprintf(
        stderr,
        "usage: room_pictures OUT_DIR SEED [--fault NAME] [--hardness H] [--target PNG] [PAGE_PNG ...]\n");
    return 2;
  }
  const std::filesystem::path out = argv[1];
  std::filesystem::create_directories(out);
  room::RoomOptions options;
  cv::Mat target = chessboard(1920, 1080, 60, 30);
  for (int i = 3; i < argc; ++i) {
    const std::string word = argv[i];
    const std::string next = i + 1 < argc ? argv[i + 1] : "";
    if (word == "--fault") {
      for (int f = 0; f <= static_cast<int>(room::Fault::one_sheet); ++f)
        if (room::name_of(static_cast<room::Fault>(f)) == next) options.fault = static_cast<room::Fault>(f);
      ++i;
    } else if (word == "--hardness") {
      options.hardness = std::atof(argv[++i]);
    } else if (word == "--target") {
      target = cv::imread(argv[++i]);
    } else {
      options.pages.push_back(cv::imread(word, cv::IMREAD_GRAYSCALE));
    }
  }
  if (options.pages.empty()) options.pages.assign(4, chessboard(3508, 2480, 354, 150));
  options.projector = target.size();
  auto start = std::chrono::steady_clock::now();
  const room::Session session = room::random_session(std::strtoull(argv[2], nullptr, 10), options);
  std::printf("session drawn in %.3f s, projector %.0f mm up\n", seconds_since(start),
              session.room.projector.reference);
  const cv::Mat plain(target.size(), CV_8U, cv::Scalar(255));
  for (std::size_t i = 0; i < session.shots.size(); ++i) {
    const room::Shot& shot = session.shots[i];
    start = std::chrono::steady_clock::now();
    const std::clock_t work = std::clock();
    const cv::Mat photo = room::photograph(shot.room, shot.camera, shot.target ? target : plain, shot.seed);
    const double took = seconds_since(start);
    room::save_photograph(out / ("photo-" + std::to_string(i + 1) + ".jpg"), photo, shot.file);
    const Eigen::Vector3d eye = shot.camera.camera_from_room.inverse().translation();
    std::printf(
        "photograph %zu, %s: %dx%d in %.2f s (%.2f s of one core), from (%.0f, %.0f, %.0f) mm, focal %.0f "
        "px, JPEG %d\n",
        i + 1, shot.target ? "target" : "plain", photo.cols, photo.rows, took,
        static_cast<double>(std::clock() - work) / CLOCKS_PER_SEC, eye.x(), eye.y(), eye.z(),
        shot.camera.optic.focal.x(), shot.file.quality);
  }
  start = std::chrono::steady_clock::now();
  cv::imwrite(
      (out / "above.png").string(),
      room::top_view(session.room, {.left = -800, .bottom = -500, .width = 1600, .height = 1000}, target));
  room::Room with_cloth = session.room;
  with_cloth.cloth = room::Cloth{.size = {700, 450}, .place = {20.0, 10.0, 0.05}};
  cv::Mat lines(target.size(), CV_8UC3, cv::Scalar::all(0));
  cv::ellipse(lines, cv::Point(lines.cols / 2, lines.rows / 2), cv::Size(lines.cols / 4, lines.rows / 4), 10,
              0, 360, cv::Scalar::all(255), 2, cv::LINE_AA);
  cv::line(lines, cv::Point(lines.cols / 2, lines.rows / 4), cv::Point(lines.cols / 2, 3 * lines.rows / 4),
           cv::Scalar(80, 220, 255), 1, cv::LINE_AA);
  cv::imwrite(
      (out / "cloth.png").string(),
      room::top_view(with_cloth, {.left = -800, .bottom = -500, .width = 1600, .height = 1000}, lines));
  cv::imwrite(
      (out / "cloth-near.png").string(),
      room::top_view(with_cloth,
                     {.left = -60, .bottom = 150, .width = 120, .height = 80, .pixels_per_mm = 10}, lines));
  std::printf("three views from above in %.2f s\n", seconds_since(start));
  return 0;
}
