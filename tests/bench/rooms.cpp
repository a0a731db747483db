// How right calibration is: random simulated rooms, calibrated and compared with the truth.
//
//   rooms [--first N] [--count N] [--hardness H] [--fault NAME|mixed] [--projector WxH] [--no-rulers]
//   [--span] [--lamp] [--board MM] [--conditions usual|mixed] [--keep DIR]
//
// `--span` gives the tape between two sheets, `--lamp` the one up to the lens, `--board` a fifth sheet on a
// board. `--fault mixed` brings a fault into every other room. `--conditions mixed` draws the rest too:
// hardness, the projector's size, electronic keystone, rolling shutter, turned files. `--projector 0x0` draws
// the size alone. `--keep` keeps the photographs, and uses those kept by a run with the same options. One
// line a room, then the figures over all.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <map>
#include <numbers>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "calibration/solve/calibrate.h"
#include "calibration/target/target.h"
#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/truth.h"

namespace {

using namespace cowlcast::calibration;
namespace vt = virtual_table;

double seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

double percentile(std::vector<double> values, double part) {
  if (values.empty()) return NAN;
  std::sort(values.begin(), values.end());
  return values[static_cast<size_t>(std::lround(part * static_cast<double>(values.size() - 1)))];
}

// A tape up to the lens, read to a centimetre.
double lamp_height(const vt::RoomProjector& projector) {
  return projector.projector_from_room.inverse().translation().z();
}

// Whether the message names what is wrong in the room.
bool named_right(vt::Fault fault, const std::string& message) {
  const auto says = [&](const char* words) { return message.find(words) != std::string::npos; };
  switch (fault) {
    case vt::Fault::sheet_moved:
      return says("moved between photographs") && says("Sheet ");
    case vt::Fault::projector_moved:
      return says("picture moved");
    case vt::Fault::sheet_other_scale:
      return says("another scale");
    case vt::Fault::curled_sheet:
      return says("lifted or curled");
    case vt::Fault::blurred_photograph:
      return says("blurred");
    case vt::Fault::too_dark:
      return says("too dark");
    case vt::Fault::sheets_to_one_side:
      return says("only the left");
    case vt::Fault::one_sheet:
      return says("Only one sheet");
    case vt::Fault::glare:
      return says("shin") || says("glare");
    case vt::Fault::shadow:
      return says("shadow");
    case vt::Fault::none:
    case vt::Fault::refocused:
      break;
  }
  return false;
}

// How a session is drawn beyond its fault.
void draw_conditions(int seed, vt::RoomOptions& options) {
  std::mt19937 dice(static_cast<unsigned>(seed) * 2654435761U);
  const auto chance = [&](double part) { return static_cast<double>(dice()) / 4294967296.0 < part; };
  options.hardness = static_cast<double>(dice()) / 4294967296.0;
  options.projector = cv::Size(0, 0);
  options.electronic_keystone = chance(0.2);
  options.rolling_shutter = chance(0.3);
  options.turned_files = chance(0.3);
}

constexpr double kNear = 0.25;  // mm: how near to true lines on thick cloth are to be

struct Truth {
  double rms = 0.0, worst = 0.0, height_worst = 0.0, height_stated = 0.0;
  double height_alone = 0.0;  // the most that the cloth's height adds to the miss on the mat
  int within = 0, height_within = 0, height_near = 0, points = 0;
  double over_stated = 0.0, height_over_stated = 0.0;  // the miss over the stated error, at the worst place
};

// Slides and turns of the whole are taken out, on the mat and on the cloth: no cut piece can notice them.
Truth compare(const TableMap& map, const vt::RoomProjector& projector, double height) {
  std::vector<Eigen::Vector2d> found, real, found_high, real_high;
  for (int i = 0; i <= 20; ++i)
    for (int j = 0; j <= 32; ++j) {
      const Eigen::Vector2d pixel(j * (map.width - 1) / 32.0, i * (map.height - 1) / 20.0);
      const auto at = vt::mat_from_projector(projector, pixel),
                 high = vt::mat_from_projector(projector, pixel, height);
      if (!at || !high) continue;
      found.push_back(map.mat_from_projector(pixel));
      found_high.push_back(map.mat_from_projector(pixel, height));
      real.push_back(*at);
      real_high.push_back(*high);
    }
  const Eigen::Isometry2d fit = vt::rigid_fit(found, real), fit_high = vt::rigid_fit(found_high, real_high);
  Truth out;
  double square = 0.0;
  for (size_t i = 0; i < found.size(); ++i) {
    const Eigen::Vector2d off = fit * found[i] - real[i], off_high = fit_high * found_high[i] - real_high[i];
    const double miss = off.norm();
    square += miss * miss;
    out.worst = std::max(out.worst, miss);
    const double stated_high = map.error_at(found_high[i], height), miss_high = off_high.norm();
    out.height_alone = std::max(out.height_alone, (off_high - off).norm());
    out.height_stated = std::max(out.height_stated, stated_high);
    out.height_worst = std::max(out.height_worst, miss_high);
    out.height_within += miss_high <= stated_high;
    out.height_near += miss_high <= kNear;
    out.height_over_stated = std::max(out.height_over_stated, miss_high / stated_high);
    const double stated = map.error_at(found[i]);
    out.within += miss <= stated;
    out.over_stated = std::max(out.over_stated, miss / stated);
    ++out.points;
  }
  out.rms = std::sqrt(square / static_cast<double>(found.size()));
  return out;
}

struct Options {
  std::map<std::string, std::string> values = {{"--first", "1"},
                                               {"--count", "10"},
                                               {"--hardness", "0.5"},
                                               {"--fault", "none"},
                                               {"--projector", "1920x1080"},
                                               {"--board", "0"},
                                               {"--conditions", "usual"},
                                               {"--keep", ""}};
  bool rulers = true, span = false, lamp = false;

  const std::string& text(const std::string& name) const { return values.at(name); }
  int number(const std::string& name) const { return std::stoi(text(name)); }
  bool mixed(const std::string& name) const { return text(name) == "mixed"; }
};

std::optional<Options> options_from(int argc, char** argv) {
  Options out;
  for (int i = 1; i < argc; ++i) {
    const std::string name = argv[i];
    if (name == "--no-rulers")
      out.rulers = false;
    else if (name == "--span")
      out.span = true;
    else if (name == "--lamp")
      out.lamp = true;
    else if (out.values.count(name) != 0 && i + 1 < argc)
      out.values[name] = argv[++i];
    else
      return std::nullopt;
  }
  return out;
}

// What is asked of all rooms; each then draws its own conditions.
vt::RoomOptions room_options(const Options& options) {
  vt::RoomOptions out;
  out.hardness = std::stod(options.text("--hardness"));
  out.board = std::stod(options.text("--board"));
  for (int n = 1; n <= (out.board > 0.0 ? 5 : 4); ++n) out.pages.push_back(sheet_page(Paper::a4, n));
  std::sscanf(options.text("--projector").c_str(), "%dx%d", &out.projector.width, &out.projector.height);
  return out;
}

vt::RoomOptions room_of(int seed, const vt::RoomOptions& all, const Options& options) {
  constexpr int kLast = static_cast<int>(vt::Fault::one_sheet);
  vt::RoomOptions out = all;
  if (options.mixed("--fault")) {
    if (seed % 2 == 0) out.fault = static_cast<vt::Fault>(1 + (seed / 2) % kLast);
  } else {
    for (int f = 0; f <= kLast; ++f)
      if (vt::name_of(static_cast<vt::Fault>(f)) == options.text("--fault"))
        out.fault = static_cast<vt::Fault>(f);
  }
  if (options.mixed("--conditions")) draw_conditions(seed, out);
  return out;
}

// The session's photographs as files; those that are there already stay.
std::vector<std::string> take_photographs(const vt::Session& session, const std::filesystem::path& folder) {
  const cv::Size size(session.room.projector.width, session.room.projector.height);
  const cv::Mat target = target_picture(size.width, size.height),
                plain = plain_picture(size.width, size.height);
  std::filesystem::create_directories(folder);
  std::vector<std::string> paths;
  for (const vt::Shot& shot : session.shots) {
    paths.push_back((folder / ("photo-" + std::to_string(paths.size() + 1) + ".jpg")).string());
    if (std::filesystem::exists(paths.back())) continue;
    vt::save_photograph(paths.back(),
                        vt::photograph(shot.room, shot.camera, shot.target ? target : plain, shot.seed),
                        shot.file);
  }
  return paths;
}

CalibrationRequest request_for(const vt::Session& session, const vt::RoomOptions& room,
                               const Options& options) {
  CalibrationRequest out;
  out.width = session.room.projector.width;
  out.height = session.room.projector.height;
  if (options.rulers) out.rulers = Rulers{session.ruler_across, session.ruler_down};
  if (options.span && session.tape)
    out.spans.push_back({session.tape->from + 1, session.tape->to + 1, session.tape->mm});
  if (room.board > 0.0) out.raised = RaisedSheet{static_cast<int>(room.pages.size()), room.board};
  if (options.lamp) out.lamp_height = std::round(lamp_height(session.room.projector) / 10.0) * 10.0;
  return out;
}

// What is told over all rooms.
class Figures {
 public:
  void room(bool fault) {
    ++rooms_;
    faultless_ += !fault;
  }
  void accepted(const Truth& truth, double time) {
    times_.push_back(time);
    rms_.push_back(truth.rms);
    worst_.push_back(truth.worst);
    on_cloth_.push_back(truth.height_worst);
    by_height_.push_back(truth.height_alone);
    far_ += truth.worst > 1.0;
    over_three_ += truth.over_stated > 3.0;
    over_three_high_ += truth.height_over_stated > 3.0;
    within_ += truth.within;
    within_high_ += truth.height_within;
    near_high_ += truth.height_near;
    points_ += truth.points;
  }
  void refused(bool fault, bool named_right) {
    (fault ? refused_faulty_ : refused_faultless_) += 1;
    named_ += named_right;
  }
  void print() const {
    std::printf("\nrooms %d, refused %d (%d of %d without fault); cause named right in %d of %d faulty\n",
                rooms_, refused_faulty_ + refused_faultless_, refused_faultless_, faultless_, named_,
                refused_faulty_);
    std::printf("rms: median %.3f mm; worst point: median %.3f, 95%% %.3f, most %.3f mm\n",
                percentile(rms_, 0.5), percentile(worst_, 0.5), percentile(worst_, 0.95),
                percentile(worst_, 1.0));
    std::printf(
        "worst point on cloth of 5 mm: median %.3f, 95%% %.3f, most %.3f mm; points within 0.25 mm: %.1f "
        "%%\n",
        percentile(on_cloth_, 0.5), percentile(on_cloth_, 0.95), percentile(on_cloth_, 1.0),
        share(near_high_));
    std::printf(
        "of it by the height alone: median %.3f, 95%% %.3f, most %.3f mm; within 0.25 mm: %ld, by the height "
        "alone %ld of %zu rooms\n",
        percentile(by_height_, 0.5), percentile(by_height_, 0.95), percentile(by_height_, 1.0),
        near(on_cloth_), near(by_height_), on_cloth_.size());
    std::printf("accepted with any point beyond 1 mm: %d; beyond three times the stated error: %d\n", far_,
                over_three_);
    std::printf(
        "points within the stated error: %.1f %%; on cloth of 5 mm %.1f %% (rooms beyond three times: %d)\n",
        share(within_), share(within_high_), over_three_high_);
    std::printf("calibrate, files read included: median %.2f s, most %.2f s\n", percentile(times_, 0.5),
                percentile(times_, 1.0));
  }

 private:
  static long near(const std::vector<double>& misses) {
    return std::count_if(misses.begin(), misses.end(), [](double miss) { return miss <= kNear; });
  }
  double share(long part) const {
    return points_ == 0 ? 0.0 : 100.0 * static_cast<double>(part) / static_cast<double>(points_);
  }

  std::vector<double> rms_, worst_, times_, on_cloth_, by_height_;
  int rooms_ = 0, refused_faulty_ = 0, refused_faultless_ = 0, faultless_ = 0, named_ = 0;
  int far_ = 0, over_three_ = 0, over_three_high_ = 0;
  long within_ = 0, within_high_ = 0, near_high_ = 0, points_ = 0;
};

void try_room(int seed, const vt::RoomOptions& room, const Options& options,
              const std::filesystem::path& folder, Figures& figures) {
  const vt::Session session = vt::random_session(static_cast<std::uint64_t>(seed), room);
  if (options.mixed("--conditions"))
    std::printf("     hardness %.2f, %d x %d%s%s\n", room.hardness, session.room.projector.width,
                session.room.projector.height, room.electronic_keystone ? ", keystone" : "",
                room.rolling_shutter ? ", rolling shutter" : "");
  const std::string fault_name = vt::name_of(session.fault);
  const bool fault = session.fault != vt::Fault::none && session.fault != vt::Fault::refocused;
  figures.room(fault);
  double began = seconds();
  const std::vector<std::string> paths = take_photographs(session, folder);
  const double rendered = seconds() - began;
  began = seconds();
  try {
    std::vector<std::string> unread;
    const std::vector<Photograph> photographs = load_photographs(paths, unread);
    const CalibrationReport report = calibrate(photographs, request_for(session, room, options));
    const double time = seconds() - began;
    const Truth truth = compare(report.map, session.room.projector, 5.0);
    figures.accepted(truth, time);
    const std::vector<double>& error = report.map.error.mm95;
    std::printf(
        "%4d %-18s rms %.3f worst %.3f stated %.3f within %.2f, at most %.2f of it; cloth5 %.3f (stated "
        "%.3f, at most %.2f of it; height alone %.3f) lamp %.0f (is %.0f)  "
        "%.2f s (rendered %.1f s)\n",
        seed, fault_name.c_str(), truth.rms, truth.worst, *std::max_element(error.begin(), error.end()),
        static_cast<double>(truth.within) / truth.points, truth.over_stated, truth.height_worst,
        truth.height_stated, truth.height_over_stated, truth.height_alone, report.map.lamp().z(),
        lamp_height(session.room.projector), time, rendered);
    for (const std::string& warning : report.warnings) std::printf("       ! %s\n", warning.c_str());
  } catch (const Refusal& refusal) {
    const double time = seconds() - began;
    const bool right = fault && named_right(session.fault, refusal.what());
    figures.refused(fault, right);
    std::printf("%4d %-18s REFUSED%s %s  %.2f s\n", seed, fault_name.c_str(),
                fault && !right ? " MISNAMED" : "", refusal.what(), time);
  }
  std::fflush(stdout);
}

}  // namespace

int main(int argc, char** argv) {
  const std::optional<Options> options = options_from(argc, argv);
  if (!options) {
    std::fprintf(
        stderr,
        "usage: rooms [--first N] [--count N] [--hardness H] [--fault NAME|mixed] [--projector "
        "WxH] [--no-rulers] [--span] [--lamp] [--board MM] [--conditions usual|mixed] [--keep DIR]\n");
    return 2;
  }
  const vt::RoomOptions all = room_options(*options);
  const std::string& keep = options->text("--keep");
  // Of this run alone: two at once must not read each other's photographs.
  const std::filesystem::path own =
      std::filesystem::temp_directory_path() / ("cowlcast-rooms-" + std::to_string(std::random_device{}()));
  Figures figures;
  const int first = options->number("--first");
  for (int seed = first; seed < first + options->number("--count"); ++seed) {
    const std::filesystem::path folder =
        keep.empty() ? own : std::filesystem::path(keep) / std::to_string(seed);
    try_room(seed, room_of(seed, all, *options), *options, folder, figures);
    if (keep.empty()) std::filesystem::remove_all(folder);
  }
  figures.print();
  return 0;
}
