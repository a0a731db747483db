// How the watch does over simulated film of a fixed camera: moves found, causes, false alarms, time.
//
//   watch_video [--first N] [--trials N] [--mm MM] [--hours H] [--rooms N]
//
// Each trial is a room of its own, learnt, filmed at 10 frames a second with flicker, wandering
// exposure and, in half of them, an arm over the table; then mat, projector or camera is knocked in a random
// direction so that the farthest point of the lit mat shifts by `--mm`. `--hours` of film in which nothing
// moves, arms coming and going, are shared among `--rooms` rooms. OpenCV runs on one thread.
#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>

#include "calibration/refusal.h"
#include "tests/calibration/watched_room.h"

namespace {

using namespace cowlcast::calibration;
using namespace cowlcast::calibration::testing;

// Processor time, so that other programs on the machine do not count.
double now_ms() {
  return 1e3 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

struct Timing {
  std::vector<double> ms;
  WatchReport look(Watch& watch, const cv::Mat& frame, double seconds) {
    const double before = now_ms();
    WatchReport report = watch.look(frame, seconds);
    ms.push_back(now_ms() - before);
    return report;
  }
  double part(double share) {
    if (ms.empty()) return 0.0;
    std::sort(ms.begin(), ms.end());
    return ms[static_cast<size_t>(share * static_cast<double>(ms.size() - 1))];
  }
};

vt::FilmFlicker draw_flicker(vt::Dice& dice) {
  return {.lamps = dice.uniform(0.0, 0.06),
          .lamp_rows = dice.uniform(250.0, 900.0),
          .projector = dice.uniform(0.0, 0.05),
          .projector_rows = dice.uniform(200.0, 900.0),
          .exposure = dice.uniform(0.0, 0.05)};
}

// Somebody at work: reaches in from one side, stays a while, moves on.
class Worker {
 public:
  explicit Worker(vt::Dice& dice) : dice_(dice) { rest(0.0); }
  std::optional<vt::FilmArm> at(double seconds) {
    if (seconds > until_) {
      if (!working_ || dice_.chance(0.25))
        toggle(seconds);
      else
        aim(seconds);
    }
    if (!working_) return std::nullopt;
    const double t = std::clamp((seconds - since_) / 0.6, 0.0, 1.0);
    vt::FilmArm arm;
    arm.hand = from_ + t * (to_ - from_);
    arm.elbow = elbow_;
    arm.radius = radius_;
    arm.tone = tone_;
    return arm;
  }

 private:
  void rest(double seconds) {
    working_ = false;
    until_ = seconds + dice_.uniform(1.0, 12.0);
  }
  void aim(double seconds) {
    from_ = to_;
    to_ = {dice_.uniform(0.0, 1280.0), dice_.uniform(0.0, 720.0)};
    since_ = seconds;
    until_ = seconds + dice_.uniform(0.7, 4.0);
  }
  void toggle(double seconds) {
    if (working_) {
      rest(seconds);
      return;
    }
    working_ = true;
    elbow_ = {dice_.uniform(100.0, 1180.0), dice_.chance(0.8) ? 800.0 : -80.0};
    to_ = elbow_;
    radius_ = dice_.uniform(25.0, 60.0);
    tone_ = static_cast<float>(dice_.uniform(0.05, 0.7));
    aim(seconds);
  }

  vt::Dice& dice_;
  bool working_ = false;
  double since_ = 0.0, until_ = 0.0, radius_ = 40.0;
  float tone_ = 0.3f;
  Eigen::Vector2d elbow_{0, 0}, from_{0, 0}, to_{0, 0};
};

struct Tally {
  int trials = 0, found = 0, right = 0, early = 0;
  double error = 0.0, latest = 0.0;
};

void trial(int number, double mm, std::array<Tally, 3>& tallies, Timing& timing, int& unlearnt) {
  constexpr Mover kMovers[] = {Mover::mat, Mover::projector, Mover::camera};
  const size_t which = static_cast<size_t>(number % 3);
  vt::Dice dice(static_cast<std::uint64_t>(number) * 1009 + 11);
  const WatchedRoom room = watched_room(static_cast<std::uint64_t>(number), dice.uniform(0.0, 1.0));
  const vt::FilmFlicker flicker = draw_flicker(dice);
  const cv::Mat picture = marked_picture(room.room);
  const vt::FilmLight light = film_light(room, picture);
  std::optional<Watch> watch;
  try {
    watch = Watch::learn(room.map, room.camera, learning_pictures(room, light, 8, flicker, dice.bits()));
  } catch (const Refusal& refusal) {
    ++unlearnt;
    std::printf("%d: %s\n", number, refusal.what());
    return;
  }
  const WatchedRoom after = knocked(room, kMovers[which], mm, dice);
  vt::FixedFilm film(light, room.eye, places_of(*watch), flicker);
  Worker worker(dice);
  const bool with_arm = number % 2 == 1;
  Tally& tally = tallies[which];
  ++tally.trials;
  std::uint64_t seed = dice.bits();
  const double start =
      with_arm ? dice.uniform(5.0, 40.0) : 0.0;  // the worker is somewhere in the middle of it
  if (with_arm)
    for (double s = 0.0; s < start; s += 0.1) worker.at(s);
  bool early = false;
  double found_at = -1.0;
  WatchReport report;
  for (int i = 0; i < 25; ++i) {
    const double seconds = start + 0.1 * i;
    if (i == 15) film.change(film_light(after, picture));
    report = timing.look(*watch, film.frame(seconds, ++seed, with_arm ? worker.at(seconds) : std::nullopt),
                         seconds);
    const bool moved = report.state == WatchState::moved;
    if (moved && i < 15) early = true;
    // The first frame of the move is its beginning; ten frames later a second has gone by.
    if (moved && found_at < 0.0 && i >= 15) found_at = 0.1 * (i - 15);
  }
  const bool found = found_at >= 0.0 && !early;
  tally.early += early ? 1 : 0;
  tally.found += found ? 1 : 0;
  const bool right = found && report.moved.size() == 1 && report.moved.front().what == kMovers[which];
  tally.right += right ? 1 : 0;
  if (found) {
    tally.error = std::max(tally.error, std::abs(report.moved.front().mm - mm));
    tally.latest = std::max(tally.latest, found_at);
  }
  if (!found || !right)
    std::printf("%d: %s: %s (tags %d, marks %d, speaks for %.2f mm) %s\n", number,
                name_of(kMovers[which]).c_str(),
                early   ? "early"
                : found ? "other cause"
                        : "missed",
                report.tags, report.marks, report.shift, report.message.c_str());
  std::fflush(stdout);
}

void quiet_hours(int first, double hours, int rooms, Timing& timing) {
  int alarms = 0, unseen = 0, frames = 0;
  double most = 0.0;
  const int each = static_cast<int>(hours * 36000.0 / rooms);
  for (int r = 0; r < rooms; ++r) {
    const int number = first + r;
    vt::Dice dice(static_cast<std::uint64_t>(number) * 31337 + 7);
    const WatchedRoom room = watched_room(static_cast<std::uint64_t>(number), dice.uniform(0.0, 1.0));
    const vt::FilmFlicker flicker = draw_flicker(dice);
    const vt::FilmLight light = film_light(room, marked_picture(room.room));
    std::optional<Watch> watch;
    try {
      watch = Watch::learn(room.map, room.camera, learning_pictures(room, light, 8, flicker, dice.bits()));
    } catch (const Refusal& refusal) {
      std::printf("room %d: %s\n", number, refusal.what());
      continue;
    }
    const Watch fresh = *watch;
    vt::FixedFilm film(light, room.eye, places_of(*watch), flicker);
    Worker worker(dice);
    std::uint64_t seed = dice.bits();
    for (int i = 0; i < each; ++i, ++frames) {
      const double seconds = 0.1 * i;
      const WatchReport report =
          timing.look(*watch, film.frame(seconds, ++seed, worker.at(seconds)), seconds);
      most = std::max(most, report.shift);
      unseen += report.state == WatchState::unseen ? 1 : 0;
      if (report.state == WatchState::moved) {
        ++alarms;
        std::printf("room %d, %.1f s: false alarm: %s (tags %d, marks %d)\n", number, seconds,
                    report.message.c_str(), report.tags, report.marks);
        watch = fresh;
      }
    }
    std::fflush(stdout);
  }
  std::printf(
      "quiet film: %d frames (%.2f h), false alarms %d, frames without enough in view %d, largest shift "
      "spoken for %.2f mm\n",
      frames, frames / 36000.0, alarms, unseen, most);
}

}  // namespace

int main(int argc, char** argv) {
  int first = 1, trials = 300, rooms = 12;
  double mm = 1.0, hours = 1.0;
  for (int i = 1; i + 1 < argc; i += 2) {
    const std::string option = argv[i];
    const double value = std::atof(argv[i + 1]);
    if (option == "--first") first = static_cast<int>(value);
    if (option == "--trials") trials = static_cast<int>(value);
    if (option == "--rooms") rooms = static_cast<int>(value);
    if (option == "--mm") mm = value;
    if (option == "--hours") hours = value;
  }
  cv::setNumThreads(1);
  std::array<Tally, 3> tallies;
  Timing timing;
  int unlearnt = 0;
  for (int i = 0; i < trials; ++i) trial(first + i, mm, tallies, timing, unlearnt);
  Tally sum;
  const char* const names[] = {"mat", "projector", "camera"};
  for (size_t k = 0; k < tallies.size(); ++k) {
    const Tally& t = tallies[k];
    std::printf(
        "%-9s  %d trials, found within a second %d, right cause %d, alarms before the move %d, size off by "
        "at "
        "most %.2f mm, latest after %.1f s\n",
        names[k], t.trials, t.found, t.right, t.early, t.error, t.latest);
    sum.trials += t.trials;
    sum.found += t.found;
    sum.right += t.right;
  }
  if (sum.trials > 0)
    std::printf(
        "all        %d trials of %.1f mm: found %.1f %%, right cause in %.1f %% of them; rooms that could "
        "not be learnt "
        "%d\n",
        sum.trials, mm, 100.0 * sum.found / sum.trials, 100.0 * sum.right / std::max(1, sum.found), unlearnt);
  if (hours > 0.0) quiet_hours(first + 5000, hours, rooms, timing);
  std::printf(
      "processor time of a 1280 x 720 frame: median %.2f ms, 95 %% %.2f ms, 99.9 %% %.2f ms, worst %.2f ms\n",
      timing.part(0.5), timing.part(0.95), timing.part(0.999), timing.part(1.0));
  return 0;
}
