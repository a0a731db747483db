// How well a fixed camera is located by the target's light, over simulated rooms.
//
//   locate_camera [--first N] [--count N]
//
// Each room has a webcam of 1280 x 720 pixels of its own, eight edge tags, flicker and noise. The error is
// how far from its true place on the mat the located camera has what it sees, over the light: worst of a
// grid. The map is the projector's own lens, its glass's small wobble left out.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <vector>

#include "calibration/camera/locate_camera.h"
#include "calibration/refusal.h"
#include "calibration/target/target.h"
#include "tests/calibration/watched_room.h"

namespace {

using namespace cowlcast::calibration;
using namespace cowlcast::calibration::testing;

LocateRequest frames_of(const WatchedRoom& r, vt::Dice& dice) {
  const vt::RoomProjector& projector = r.room.projector;
  const std::vector<cv::Rect> whole{{0, 0, r.eye.width, r.eye.height}};
  const vt::FilmFlicker flicker{.lamps = dice.uniform(0.0, 0.05),
                                .projector = dice.uniform(0.0, 0.04),
                                .exposure = dice.uniform(0.0, 0.03)};
  vt::FixedFilm film(film_light(r, plain_picture(projector.width, projector.height)), r.eye, whole, flicker);
  LocateRequest out;
  out.plain = vt::film_frames(film, 8, 0.0, dice.bits());
  film.change(film_light(r, target_picture(projector.width, projector.height)));
  out.target = vt::film_frames(film, 8, 1.0, dice.bits());
  film.change(film_light(r, black_picture(r.room)));
  out.dark = vt::film_frames(film, 8, 2.0, dice.bits());
  return out;
}

double worst_error(const WatchedRoom& r, const FixedCamera& camera) {
  double worst = 0.0;
  for (const Eigen::Vector2d& picture : lit_pixels(r.room.projector)) {
    const Eigen::Vector2d mat = *vt::mat_from_projector(r.room.projector, picture);
    const auto pixel = vt::camera_from_room(r.eye, {mat.x(), mat.y(), 0.0});
    if (pixel) worst = std::max(worst, (camera.mat_from_pixel(*pixel) - mat).norm());
  }
  return worst;
}

double part(std::vector<double>& values, double share) {
  if (values.empty()) return 0.0;
  std::sort(values.begin(), values.end());
  return values[static_cast<size_t>(share * static_cast<double>(values.size() - 1))];
}

}  // namespace

int main(int argc, char** argv) {
  int first = 1, count = 40;
  for (int i = 1; i + 1 < argc; i += 2) {
    const std::string option = argv[i];
    if (option == "--first") first = std::atoi(argv[i + 1]);
    if (option == "--count") count = std::atoi(argv[i + 1]);
  }
  std::vector<double> errors, stated, seconds, over;
  int refused = 0;
  size_t tags = 0;
  for (int number = first; number < first + count; ++number) {
    vt::Dice dice(static_cast<std::uint64_t>(number) * 1009 + 11);
    const WatchedRoom room = watched_room(static_cast<std::uint64_t>(number), dice.uniform(0.0, 1.0));
    const LocateRequest request = frames_of(room, dice);
    const std::clock_t before = std::clock();
    try {
      const LocatedCamera found = locate_camera(room.map, request);
      seconds.push_back(static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC);
      errors.push_back(worst_error(room, found.camera));
      stated.push_back(found.within);
      over.push_back(errors.back() - found.within);
      tags += found.camera.tags.size();
      std::printf("%d: worst %.2f mm, stated %.2f mm, %d corners, %zu tags\n", number, errors.back(),
                  found.within, found.corners, found.camera.tags.size());
    } catch (const Refusal& refusal) {
      ++refused;
      std::printf("%d: %s\n", number, refusal.what());
    }
    std::fflush(stdout);
  }
  const double found = std::max<double>(1.0, static_cast<double>(errors.size()));
  std::printf(
      "located %zu, refused %d; worst place of the light: median %.2f mm, 95 %% %.2f mm, most %.2f mm; "
      "stated: "
      "median %.2f mm; worst place beyond what is stated by at most %.2f mm; tags seen %.1f; processor time "
      "median %.1f s\n",
      errors.size(), refused, part(errors, 0.5), part(errors, 0.95), part(errors, 1.0), part(stated, 0.5),
      part(over, 1.0), static_cast<double>(tags) / found, part(seconds, 0.5));
  return 0;
}
