// How well the corridor's watch does on simulated video.
//
//   guard_video [--hours H] [--first SEED] [--fps F] [--minutes M] [--mog2 N] [--keep DIR] [--say] [--fast]
//               [--cloth NAME] [--events]
//
// Random tables, cloths, cameras and lights, `--minutes` of each; one stroke after another is cut, with
// things that lie or come in the way, and what is projected changes: the next stroke, the band, the warning
// itself. The blade drags the cloth along by up to four millimetres, ripples go before it, the cloth slips a
// little with every stroke, and offcuts are folded away behind; with `--fast` it lies fast. With `--cloth`
// only films of that cloth are run (`sand`; several: `sand,white`); with `--events` only strokes that
// something comes in the way of, until all has come: quick, but it tells little of false marks. Told is how
// many intrusions are marked within 200 ms of their beginning, how often something is marked where nothing
// is, and how long a frame takes beside OpenCV's MOG2 on the same frames (in every N-th stroke).
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <deque>
#include <map>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <opencv2/video/background_segm.hpp>
#include <string>
#include <vector>

#include "calibration/virtual_table/truth.h"
#include "calibration/virtual_table/video_play.h"
#include "calibration/virtual_table/video_scene.h"
#include "drafting/geometry/polyline.h"
#include "projector/blade/blade_marks.h"
#include "projector/guard/overlay.h"
#include "projector/guard/watch.h"
#include "tests/bench/film.h"

namespace {

using namespace cowlcast;
using namespace cowlcast::projector;
using namespace cowlcast::projector::bench;

constexpr double kInTime = 0.2;   // s
constexpr double kTold = 1.0;     // s: after so much it is late for sure
constexpr double kBetween = 1.5;  // s between strokes that are not shown to their end
constexpr double kSeen = 115.0;   // mm about the strip
constexpr double kNear = 25.0;    // mm: a mark farther than this from every thing is false

struct Options {
  double hours = 0.1, fps = 10.0, minutes = 4.0;
  std::uint64_t first = 1;
  int mog2 = 25;
  std::string keep, cloths;
  bool say = false, fast = false, events = false;
};

struct Tally {
  int intrusions = 0, in_time = 0, late = 0, missed = 0, brief = 0, false_marks = 0, trifles = 0;
  long frames = 0, blind = 0;
  std::map<std::string, std::pair<int, int>> by_kind, by_cloth;  // in time, of
  std::vector<double> ms, delays, ratios;
};

double cpu_ms() {
  return 1e3 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

double percentile(std::vector<double> values, double part) {
  if (values.empty()) return NAN;
  std::sort(values.begin(), values.end());
  return values[static_cast<size_t>(std::lround(part * static_cast<double>(values.size() - 1)))];
}

// As the cutting view shows a warning: the rest dim, rings over it.
std::vector<Mark> with_rings(std::vector<Mark> marks, const Warning& warning, const FrameStyle& style) {
  if (warning.state != WatchState::marked) return marks;
  for (Mark& mark : marks)
    mark.colour = qRgb(qRed(mark.colour) / 3, qGreen(mark.colour) / 3, qBlue(mark.colour) / 3);
  marks.push_back(rings_of(warning, style));
  return marks;
}

class Bench {
 public:
  explicit Bench(const Options& options) : options_(options) {}

  void scene(std::uint64_t seed) {
    vt::Dice dice(seed * 7919);
    const vt::VideoScene scene = vt::random_video_scene(dice);
    if (!options_.cloths.empty() &&
        ("," + options_.cloths + ",").find("," + scene.cloth + ",") == std::string::npos)
      return;
    const TableSight sight = sight_of(scene, dice);
    vt::TableVideo video(scene.room, scene.camera, scene.print);
    const cv::Size size(sight.map.width, sight.map.height);
    video.show(1, cv::Mat(size, CV_8U, cv::Scalar(255)));
    video.show(0, cv::Mat(size, CV_8U, cv::Scalar(0)));
    Backdrop backdrop(sight);
    double now = 0.0;
    std::uint64_t frame_seed = seed << 32;
    video.show(2, cv::Mat(size, CV_8U, cv::Scalar(Backdrop::kFaint)));
    constexpr Backdrop::Light lights[] = {Backdrop::Light::none, Backdrop::Light::full,
                                          Backdrop::Light::faint};
    for (int k = 0; k < 15; ++k, now += 1.0 / options_.fps) {
      vt::Moment moment = scene.light.at(now);
      moment.picture = k % 3;
      backdrop.learn(video.frame(moment, frame_seed++, scene.jpeg), lights[k % 3]);
    }
    arriving_ = {{-1.0, 0}};
    last_picture_.release();
    const Tally before = tally_;
    if (const auto why = backdrop.not_ready()) {
      std::printf("scene %llu, %s: %s\n", static_cast<unsigned long long>(seed), scene.cloth.c_str(),
                  why->c_str());
    } else {
      const double latency = dice.uniform(0.03, 0.13);
      // Cloths that lie fast, and ever more slippery ones.
      gives_way_ = options_.fast ? 0.0 : std::max(dice.uniform(-1.0, 4.0), 0.0);
      slipped_ = {0.0, 0.0};
      light_ = {};
      Polyline earlier;
      for (int strokes = 0; now < 60.0 * options_.minutes; ++strokes)
        earlier = stroke(dice, scene, sight, video, backdrop, latency, earlier, now, frame_seed);
    }
    std::printf(
        "scene %llu, %s, %.0f lux, jpeg %d, gives way by %.1f mm, slipped %.1f: %d of %d in time, %d missed, "
        "%d late, %d false, "
        "%ld blind\n",
        static_cast<unsigned long long>(seed), scene.cloth.c_str(), scene.room.light.lux, scene.jpeg,
        gives_way_, slipped_.norm(), tally_.in_time - before.in_time, tally_.intrusions - before.intrusions,
        tally_.missed - before.missed, tally_.late - before.late, tally_.false_marks - before.false_marks,
        tally_.blind - before.blind);
    std::fflush(stdout);
  }

  const Tally& tally() const { return tally_; }

 private:
  Polyline stroke(vt::Dice& dice, const vt::VideoScene& scene, const TableSight& sight, vt::TableVideo& video,
                  const Backdrop& backdrop, double latency, const Polyline& earlier, double& now,
                  std::uint64_t& frame_seed) {
    const Polyline path = draw_stroke(dice, scene, sight);
    const vt::CuttingPlay play(
        dice, {.stroke = path,
               .skin = scene.skin,
               .gives_way = gives_way_,
               .slipped = slipped_,
               .offcut = options_.fast ? 0.0 : 0.3,
               .underside = static_cast<float>(dice.uniform(0.8, 1.2)) * scene.room.cloth->albedo,
               .mat = scene.room.mat.albedo});
    double end = play.seconds();
    if (options_.events) {
      if (play.intrusions().empty()) return earlier;
      double last = 0.0;
      for (const vt::Intrusion& event : play.intrusions()) last = std::max(last, event.from);
      end = std::min(end, last + kTold);
    }
    const QRgb cloth = qRgb(static_cast<int>(vt_level(scene.room.cloth->albedo[0])),
                            static_cast<int>(vt_level(scene.room.cloth->albedo[1])),
                            static_cast<int>(vt_level(scene.room.cloth->albedo[2])));
    const FrameStyle style = style_for_cloth(cloth);
    bool band = dice.chance(0.85);
    const double toggles = dice.chance(0.3) ? dice.uniform(0.0, play.seconds()) : 1e9;
    // All that the watch looks at, and some more.
    std::vector<Eigen::Vector2d> area;
    const Strip strip = corridor_strip({.stroke = path});
    for (size_t k = 0; k < strip.places.size(); k += 25)
      for (const Point& off : {Point(-kSeen, -kSeen), Point(kSeen, kSeen)})
        area.push_back(strip.places[k] + off);
    video.look_only_at(area);

    CorridorWatch watch(backdrop, {.stroke = path});
    watch.begin_in(light_);
    CalmWatch calm;
    Warning drawn;
    const auto project = [&](double t) {
      const cv::Mat picture = bgr(rendered(
          sight.map, with_rings(frame_marks(path, earlier, band, style), drawn, style), sight.cloth));
      slot_ = 2 + (slot_ - 1) % 6;
      video.show(slot_, picture);
      arriving_.push_back({t + latency, slot_});
      const double begun = cpu_ms();
      watch.project(picture, t);
      last_picture_ = picture;
      last_projected_ = t;
      return cpu_ms() - begun;
    };
    if (!last_picture_.empty()) watch.project(last_picture_, last_projected_);
    double extra = project(now);
    const bool with_mog2 = options_.mog2 > 0 && strokes_++ % options_.mog2 == 0;
    cv::Ptr<cv::BackgroundSubtractorMOG2> mog2;
    if (with_mog2) mog2 = cv::createBackgroundSubtractorMOG2();
    std::vector<double> marked_at(play.intrusions().size(), -1.0);
    double last_false = -10.0, last_trifle = -10.0;
    double own_ms = 0.0, mog2_ms = 0.0;
    const double start = now;
    for (; now - start < end; now += 1.0 / options_.fps, ++tally_.frames) {
      const double t = now - start;
      if (t > toggles && t - 1.0 / options_.fps <= toggles) {
        band = !band;
        extra += project(now);
      }
      while (arriving_.size() > 1 && arriving_[1].first <= now) arriving_.pop_front();
      vt::Moment moment = scene.light.at(now);
      moment.picture = arriving_.front().second;
      moment.things = play.things(t, scene.exposure);
      moment.drag = play.drag(t);
      exposure_ = std::exp2(moment.exposure_stops - scene.light.at(0.7).exposure_stops);
      const cv::Mat& frame = video.frame(moment, frame_seed++, scene.jpeg);
      const double begun = cpu_ms();
      const WatchReport report = watch.look(frame, now);
      const double ms = cpu_ms() - begun + extra;
      extra = 0.0;
      tally_.ms.push_back(ms);
      if (mog2) {
        cv::Mat mask;
        const double from = cpu_ms();
        mog2->apply(frame, mask);
        mog2_ms += cpu_ms() - from;
        own_ms += ms;
      }
      if (report.state == WatchState::cannot_see) {
        ++tally_.blind;
        if (options_.say && report.reason != told_)
          std::printf("  %.2f cannot see: %s\n", now, words(report.reason).c_str());
      }
      told_ = report.reason;
      for (const Blob& blob : report.blobs) {
        if (!play.anything_near(t, blob.place, kNear)) {
          if (play.anything_near(t, blob.place, kNear, true)) {
            if (now - last_trifle > 1.0) ++tally_.trifles;
            last_trifle = now;
            continue;
          }
          if (now - last_false > 1.0) {
            ++tally_.false_marks;
            keep(watch, frame, "false", blob.place, report);
          }
          last_false = now;
          continue;
        }
        for (size_t i = 0; i < marked_at.size(); ++i) {
          const vt::Intrusion& event = play.intrusions()[i];
          const double reach = 100.0 + 0.5 * std::hypot(blob.length, blob.width);
          if (marked_at[i] < 0.0 && t >= event.from && t <= event.to + kInTime &&
              (blob.place - event.where).norm() < reach)
            marked_at[i] = t + ms / 1e3;
        }
      }
      for (size_t i = 0; i < marked_at.size(); ++i) {  // kept to look at: still unmarked after its time
        const vt::Intrusion& event = play.intrusions()[i];
        if (marked_at[i] < 0.0 && event.to - event.from >= kInTime && t >= event.from + kInTime &&
            t < event.from + kInTime + 1.0 / options_.fps)
          keep(watch, frame, event.what, event.where, report);
      }
      const Warning& warning = calm.after(report, now);
      if (!warning.same_as(drawn)) {
        drawn = warning;
        extra = project(now);
      }
    }
    for (size_t i = 0; i < marked_at.size(); ++i) count(play.intrusions()[i], marked_at[i], scene.cloth);
    if (options_.events) {  // a warning goes meanwhile
      drawn = {};
      project(now);
      now += kBetween;
    }
    light_ = watch.light();
    if (const auto drag = play.drag(play.seconds())) slipped_ = drag->slipped;
    if (mog2 && mog2_ms > 0.0) tally_.ratios.push_back(own_ms / mog2_ms);
    return path;
  }

  static double vt_level(float albedo) { return 255.0 * std::pow(static_cast<double>(albedo), 1.0 / 2.2); }

  void count(const vt::Intrusion& event, double marked, const std::string& cloth) {
    if (event.to - event.from < kInTime && marked < 0.0) {
      ++tally_.brief;
      return;
    }
    ++tally_.intrusions;
    const double delay = marked - event.from;
    const bool good = marked >= 0.0 && delay <= kInTime;
    tally_.in_time += good;
    tally_.missed += marked < 0.0;
    tally_.late += marked >= 0.0 && !good;
    if (marked >= 0.0) tally_.delays.push_back(delay);
    for (auto* part : {&tally_.by_kind[event.what], &tally_.by_cloth[cloth]}) {
      part->first += good;
      part->second += 1;
    }
    if (options_.say && !good)
      std::printf("  %s %s: from %.2f to %.2f, marked %.2f\n", cloth.c_str(), event.what.c_str(), event.from,
                  event.to, marked);
  }

  void keep(const CorridorWatch& watch, const cv::Mat& frame, const std::string& why, const Point& place,
            const WatchReport& report) {
    if (options_.say)
      std::printf(
          "  %s at %.0f %.0f, front %.0f, frame %ld, room %.2f %.2f %.2f beam %.2f (in truth %.2f) agreeing "
          "%.2f\n",
          why.c_str(), place.x(), place.y(), report.front, tally_.frames,
          static_cast<double>(watch.light().room[0]), static_cast<double>(watch.light().room[1]),
          static_cast<double>(watch.light().room[2]), static_cast<double>(watch.light().beam), exposure_,
          watch.light().agreeing);
    if (options_.keep.empty() || kept_ > 60) return;
    const std::string name = options_.keep + "/" + std::to_string(kept_++) + "-" + why;
    // The strip as it is seen, its share of the expected light, and what is foreign, one below the other.
    cv::Mat seen, share, mask, both;
    cv::remap(frame, seen, watch.view().camera, cv::noArray(), cv::INTER_LINEAR);
    watch.compared().share.convertTo(share, CV_8U, 150.0);
    cv::cvtColor(share, share, cv::COLOR_GRAY2BGR);
    cv::cvtColor(watch.compared().foreign, mask, cv::COLOR_GRAY2BGR);
    cv::vconcat(std::vector<cv::Mat>{seen * 2.0, share, mask}, both);
    cv::resize(both, both, {}, 2, 2, cv::INTER_NEAREST);
    cv::imwrite(name + "-strip.png", both);
    cv::imwrite(name + ".png", frame * 2.0);
  }

  Options options_;
  Tally tally_;
  std::deque<std::pair<double, int>> arriving_{{-1.0, 0}};
  cv::Mat last_picture_;
  double last_projected_ = 0.0;  // s
  MeasuredLight light_;
  double exposure_ = 1.0;  // over that in which the cloth was learnt
  Blindness told_ = Blindness::none;
  double gives_way_ = 0.0;  // mm
  Eigen::Vector2d slipped_{0.0, 0.0};
  int slot_ = 2, strokes_ = 0, kept_ = 0;
};

}  // namespace

int main(int argc, char** argv) {
  Options options;
  for (int i = 1; i < argc; ++i) {
    const std::string name = argv[i];
    const auto value = [&] { return i + 1 < argc ? argv[++i] : "0"; };
    if (name == "--hours")
      options.hours = std::atof(value());
    else if (name == "--first")
      options.first = std::strtoull(value(), nullptr, 10);
    else if (name == "--fps")
      options.fps = std::atof(value());
    else if (name == "--minutes")
      options.minutes = std::atof(value());
    else if (name == "--mog2")
      options.mog2 = std::atoi(value());
    else if (name == "--keep")
      options.keep = value();
    else if (name == "--cloth")
      options.cloths = value();
    else if (name == "--events")
      options.events = true;
    else if (name == "--fast")
      options.fast = true;
    else if (name == "--say")
      options.say = true;
    else {
      std::fprintf(stderr, "unknown: %s\n", argv[i]);
      return 2;
    }
  }
  cv::setNumThreads(1);
  Bench bench(options);
  std::uint64_t seed = options.first;
  while (static_cast<double>(bench.tally().frames) < options.hours * 3600.0 * options.fps)
    bench.scene(seed++);

  const Tally& tally = bench.tally();
  const double minutes = static_cast<double>(tally.frames) / options.fps / 60.0;
  std::printf("\n%.2f hours of video at %.0f frames a second, scenes %llu to %llu\n", minutes / 60.0,
              options.fps, static_cast<unsigned long long>(options.first),
              static_cast<unsigned long long>(seed - 1));
  std::printf(
      "marked within 200 ms: %d of %d = %.2f %% (late %d, missed %d; %d shorter than 200 ms and not marked "
      "are "
      "left out)\n",
      tally.in_time, tally.intrusions, 100.0 * tally.in_time / std::max(tally.intrusions, 1), tally.late,
      tally.missed, tally.brief);
  std::printf("delay: median %.0f ms, 95 %% %.0f ms\n", 1e3 * percentile(tally.delays, 0.5),
              1e3 * percentile(tally.delays, 0.95));
  std::printf(
      "false marks, where nothing lies: %d = %.2f in 10 minutes; marks of trifles: %d; could not see: %.2f "
      "%% of frames\n",
      tally.false_marks, tally.false_marks * 10.0 / minutes, tally.trifles,
      100.0 * static_cast<double>(tally.blind) / static_cast<double>(tally.frames));
  std::printf(
      "a frame of 1280x720: median %.2f ms, 95 %% %.2f ms, longest %.2f ms of one core; over MOG2 on the "
      "same "
      "frames: %.2f\n",
      percentile(tally.ms, 0.5), percentile(tally.ms, 0.95), percentile(tally.ms, 1.0),
      percentile(tally.ratios, 0.5));
  for (const auto* part : {&tally.by_kind, &tally.by_cloth})
    for (const auto& [name, figures] : *part)
      std::printf("  %-24s %d of %d\n", name.c_str(), figures.first, figures.second);
  return 0;
}
