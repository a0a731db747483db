// How well it is noticed that cloth was dragged, on simulated video.
//
//   dragged_cloth [--scenes N] [--first SEED] [--rests K] [--printed] [--chalk] [--local] [--cut] [--say]
//
// Random tables, cloths, cameras and lights. Between strokes the cloth lies still, dragged by nothing or by
// up to eight millimetres since it was learnt, and the next stroke is shown for four seconds; in half of
// these rests hand and cutter come. Told is, by how far the cloth went in truth, how many rests were told,
// on printed and on even cloth. `--printed`: on printed alone. `--chalk`: crosses are chalked on even cloth
// before it is learnt. `--local`: the cloth went so far about a place of the stroke alone, and less all
// around. `--cut`: after each rest the stroke is cut, with all that comes in its way; the blade drags the
// cloth by up to four millimetres, of which a part stays for good and adds up, and told is also what was
// said while less than one millimetre had.
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <map>
#include <string>
#include <vector>

#include "calibration/virtual_table/video_play.h"
#include "projector/frame/style.h"
#include "projector/guard/cloth_shift.h"
#include "projector/guard/watch.h"
#include "tests/bench/film.h"

namespace {

using namespace cowlcast;
using namespace cowlcast::projector;
using namespace cowlcast::projector::bench;

constexpr double kStep = 0.1;                                // s from frame to frame
constexpr double kRest = 4.0;                                // s
constexpr double kEdges[] = {0.0, 1.0, 2.0, 3.0, 5.0, 8.1};  // mm

struct Options {
  int scenes = 10, rests = 8;
  std::uint64_t first = 1;
  bool printed = false, chalk = false, local = false, cut = false, say = false;
};

struct Bin {
  int rests = 0, told = 0, at_stroke = 0;
  double off = 0.0;  // of what is told, mm
};

// A cross of chalk, arms of 12 mm.
vt::Thing cross() {
  vt::Thing thing{"chalk", {}};
  for (const double turn : {0.0, 1.5708}) {
    vt::Part arm;
    for (const Point& p : {Point(-12, -1.2), Point(12, -1.2), Point(12, 1.2), Point(-12, 1.2)})
      arm.outline.push_back(Eigen::Rotation2Dd(turn) * p);
    arm.height = 0.0;
    arm.albedo = vt::Colour(0.8f, 0.8f, 0.8f);
    thing.parts.push_back(arm);
  }
  return thing;
}

double cpu_ms() {
  return 1e3 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

class Bench {
 public:
  explicit Bench(const Options& options) : options_(options) {}

  void scene(std::uint64_t seed) {
    vt::Dice dice(seed * 7919);
    const vt::VideoScene scene = vt::random_video_scene(dice);
    const bool even = scene.print.kind == vt::ClothPrint::Kind::none;
    if (options_.printed ? even : options_.chalk && !even) return;
    const TableSight sight = sight_of(scene, dice);
    vt::TableVideo video(scene.room, scene.camera, scene.print);
    const cv::Size size(sight.map.width, sight.map.height);
    video.show(1, cv::Mat(size, CV_8U, cv::Scalar(255)));
    video.show(0, cv::Mat(size, CV_8U, cv::Scalar(0)));
    video.show(2, cv::Mat(size, CV_8U, cv::Scalar(Backdrop::kFaint)));
    chalk_.clear();
    if (options_.chalk)
      for (double x = -400.0; x <= 400.0; x += 90.0)
        for (double y = -250.0; y <= 250.0; y += 90.0)
          chalk_.push_back({x + dice.uniform(-20.0, 20.0), y + dice.uniform(-20.0, 20.0)});
    Backdrop backdrop(sight);
    std::uint64_t frame_seed = seed << 32;
    double now = 0.0;
    constexpr Backdrop::Light lights[] = {Backdrop::Light::none, Backdrop::Light::full,
                                          Backdrop::Light::faint};
    for (int k = 0; k < 24; ++k, now += kStep) {
      vt::Moment moment = scene.light.at(now);
      moment.picture = k % 3;
      add_chalk(moment, {0.0, 0.0});
      backdrop.learn(video.frame(moment, frame_seed++, scene.jpeg), lights[k % 3]);
    }
    if (backdrop.not_ready()) return;
    ClothShift shift(backdrop);
    slipped_ = {0.0, 0.0};
    gives_way_ = std::max(dice.uniform(-1.0, 4.0), 0.0);
    for (int k = 0; k < options_.rests; ++k)
      rest(dice, scene, sight, video, backdrop, shift, now, frame_seed, even);
  }

  void tell() const {
    for (const auto& [cloth, bins] : bins_)
      for (const auto& [edge, bin] : bins)
        std::printf(
            "%-14s %.0f to %.0f mm: told %d of %d rests (%d of them had patches at the stroke), off by %.2f "
            "mm\n",
            cloth.c_str(), kEdges[edge], kEdges[edge + 1], bin.told, bin.rests, bin.at_stroke,
            bin.told > 0 ? bin.off / bin.told : 0.0);
    if (options_.cut)
      std::printf("while cutting, %.1f minutes: told %d times with less than 1 mm gone\n", minutes_, false_);
    std::printf("a frame: %.2f ms of one core, on the mean\n", ms_ / std::max(frames_, 1));
  }

 private:
  void add_chalk(vt::Moment& moment, const Point& slipped) const {
    for (const Point& at : chalk_)
      moment.things.push_back({cross(), {{at.x() + slipped.x(), at.y() + slipped.y(), 0.0}}});
  }

  void rest(vt::Dice& dice, const vt::VideoScene& scene, const TableSight& sight, vt::TableVideo& video,
            const Backdrop& backdrop, ClothShift& shift, double& now, std::uint64_t& frame_seed, bool even) {
    const Polyline path = draw_stroke(dice, scene, sight);
    const vt::CuttingPlay play(dice, {.stroke = path,
                                      .skin = scene.skin,
                                      .gives_way = options_.cut ? gives_way_ : 0.0,
                                      .slipped = slipped_,
                                      .offcut = options_.cut ? 0.3 : 0.0,
                                      .underside = scene.room.cloth->albedo,
                                      .mat = scene.room.mat.albedo});
    const double drawn = dice.chance(0.4) ? dice.uniform(0.0, 0.9) : dice.uniform(1.0, 8.0),
                 angle = dice.uniform(0.0, 6.2832);
    const Point slipped = options_.cut ? slipped_ : Point(drawn * Point(std::cos(angle), std::sin(angle)));
    const double far = slipped.norm();
    const bool comes = !options_.cut && dice.chance(0.5);
    const QRgb cloth = qRgb(120, 120, 120);
    const cv::Mat picture =
        bgr(rendered(sight.map, frame_marks(path, {}, true, style_for_cloth(cloth)), sight.cloth));
    video.show(3, picture);
    // The piece: a strip of cloth about the stroke.
    Polyline piece = path;
    const drafting::Box box = drafting::box_of(path);
    piece = {box.low - Point(40, 40), Point(box.high.x() + 40, box.low.y() - 40), box.high + Point(40, 40),
             Point(box.low.x() - 40, box.high.y() + 40)};
    shift.about({.stroke = path, .piece = piece, .cut = {}});
    const Point middle = drafting::point_at(path, dice.uniform(0.3, 0.7) * drafting::length(path));
    const double reach = dice.uniform(60.0, 120.0);
    bool told = false, at_stroke = shift.sees();
    Point by(0.0, 0.0);
    for (double t = 0.0; t < kRest; t += kStep, now += kStep) {
      vt::Moment moment = scene.light.at(now);
      moment.picture = 3;
      moment.drag = options_.local ? vt::Drag{.at = middle, .moved = slipped, .reach = reach}
                                   : vt::Drag{.slipped = slipped};
      add_chalk(moment, slipped);
      if (comes)
        for (vt::PosedThing& thing : play.things(std::min(t, 2.0), scene.exposure))
          moment.things.push_back(std::move(thing));
      const cv::Mat& frame = video.frame(moment, frame_seed++, scene.jpeg);
      const double begun = cpu_ms();
      shift.look(frame, picture, now, {});
      ms_ += cpu_ms() - begun;
      ++frames_;
      if (shift.told()) by = shift.told()->by;
      told = shift.told().has_value();  // in the end: what the rest before has left told must go
    }
    if (options_.cut) cut(play, path, picture, scene, video, backdrop, shift, now, frame_seed);
    const auto edge = static_cast<size_t>(std::upper_bound(std::begin(kEdges), std::end(kEdges), far) -
                                          std::begin(kEdges)) -
                      1;
    const std::string name = even ? (options_.chalk ? "chalked" : "even") : scene.cloth;
    Bin& bin = bins_[name][edge];
    ++bin.rests;
    bin.told += told;
    bin.at_stroke += at_stroke;
    if (told) bin.off += (by - slipped).norm();
    if (options_.say) {
      const auto said = shift.said(now);
      std::printf("%s: gone %.1f %.1f, told %d: %.1f %.1f; patches %zu, first", scene.cloth.c_str(),
                  slipped.x(), slipped.y(), told, by.x(), by.y(), said.size());
      for (size_t i = 0; i < said.size() && i < 6; ++i)
        std::printf(" (%.1f %.1f)", said[i].by.x(), said[i].by.y());
      std::printf("\n");
    }
    std::fflush(stdout);
  }

  void cut(const vt::CuttingPlay& play, const Polyline& path, const cv::Mat& picture,
           const vt::VideoScene& scene, vt::TableVideo& video, const Backdrop& backdrop, ClothShift& shift,
           double& now, std::uint64_t& frame_seed) {
    CorridorWatch watch(backdrop, {.stroke = path});
    watch.project(picture, now);
    bool said = false;
    for (double t = 0.0; t < play.seconds(); t += kStep, now += kStep) {
      vt::Moment moment = scene.light.at(now);
      moment.picture = 3;
      moment.things = play.things(t, scene.exposure);
      moment.drag = play.drag(t);
      const Point gone = moment.drag ? Point(moment.drag->slipped) : Point(0.0, 0.0);
      const cv::Mat& frame = video.frame(moment, frame_seed++, scene.jpeg);
      const double front = watch.look(frame, now).front;
      std::optional<Point> blade;
      if (front > 30.0) blade = drafting::point_at(path, front);
      shift.look(frame, picture, now, blade);
      slipped_ = gone;
      if (!shift.told() || gone.norm() >= 1.0 || said) continue;
      ++false_;
      said = true;
      if (options_.say)
        std::printf("  %s, false, %.1f s, front %.0f: %.1f %.1f\n", scene.cloth.c_str(), t, front,
                    shift.told()->by.x(), shift.told()->by.y());
    }
    minutes_ += play.seconds() / 60.0;
  }

  Options options_;
  std::vector<Point> chalk_;
  std::map<std::string, std::map<size_t, Bin>> bins_;
  double ms_ = 0.0;
  int frames_ = 0, false_ = 0;
  Point slipped_{0.0, 0.0};
  double gives_way_ = 0.0, minutes_ = 0.0;
};

}  // namespace

int main(int argc, char** argv) {
  Options options;
  for (int i = 1; i < argc; ++i) {
    const std::string name = argv[i];
    const auto value = [&] { return i + 1 < argc ? argv[++i] : "0"; };
    if (name == "--scenes")
      options.scenes = std::atoi(value());
    else if (name == "--first")
      options.first = std::strtoull(value(), nullptr, 10);
    else if (name == "--rests")
      options.rests = std::atoi(value());
    else if (name == "--chalk")
      options.chalk = true;
    else if (name == "--printed")
      options.printed = true;
    else if (name == "--local")
      options.local = true;
    else if (name == "--cut")
      options.cut = true;
    else if (name == "--say")
      options.say = true;
    else {
      std::fprintf(stderr, "unknown: %s\n", argv[i]);
      return 2;
    }
  }
  cv::setNumThreads(1);
  Bench bench(options);
  for (int k = 0; k < options.scenes; ++k) bench.scene(options.first + static_cast<std::uint64_t>(k));
  bench.tell();
  return 0;
}
