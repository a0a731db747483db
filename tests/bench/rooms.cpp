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

struct Truth {
  double rms = 0.0, worst = 0.0, height_worst = 0.0, height_stated = 0.0;
  double height_alone = 0.0;  // the most that the cloth's height adds to the miss on the mat
  int within = 0, height_within = 0, points = 0;
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
    out.height_over_stated = std::max(out.height_over_stated, miss_high / stated_high);
    const double stated = map.error_at(found[i]);
    out.within += miss <= stated;
    out.over_stated = std::max(out.over_stated, miss / stated);
    ++out.points;
  }
  out.rms = std::sqrt(square / static_cast<double>(found.size()));
  return out;
}

}  // namespace

int main(int argc, char** argv) {
  std::map<std::string, std::string> options = {{"--first", "1"},
                                                {"--count", "10"},
                                                {"--hardness", "0.5"},
                                                {"--fault", "none"},
                                                {"--projector", "1920x1080"},
                                                {"--board", "0"},
                                                {"--conditions", "usual"},
                                                {"--keep", ""}};
  bool rulers = true, span = false, lamp = false;
  for (int i = 1; i < argc; ++i) {
    const std::string name = argv[i];
    if (name == "--no-rulers") {
      rulers = false;
    } else if (name == "--span") {
      span = true;
    } else if (name == "--lamp") {
      lamp = true;
    } else if (options.count(name) != 0 && i + 1 < argc) {
      options[name] = argv[++i];
    } else {
      std::fprintf(
          stderr,
          "usage: rooms [--first N] [--count N] [--hardness H] [--fault NAME|mixed] [--projector "
          "WxH] [--no-rulers] [--span] [--lamp] [--board MM] [--conditions usual|mixed] [--keep DIR]\n");
      return 2;
    }
  }
  vt::RoomOptions room_options;
  room_options.hardness = std::stod(options["--hardness"]);
  room_options.board = std::stod(options["--board"]);
  for (int n = 1; n <= (room_options.board > 0.0 ? 5 : 4); ++n)
    room_options.pages.push_back(sheet_page(Paper::a4, n));
  std::sscanf(options["--projector"].c_str(), "%dx%d", &room_options.projector.width,
              &room_options.projector.height);

  const int first = std::stoi(options["--first"]), count = std::stoi(options["--count"]);
  // Of this run alone: two at once must not read each other's photographs.
  const std::filesystem::path own_folder =
      std::filesystem::temp_directory_path() / ("cowlcast-rooms-" + std::to_string(std::random_device{}()));
  std::vector<double> rms, worst, times, covered, on_cloth, by_height;
  int refused = 0, far = 0, over_three = 0, faultless = 0, refused_faultless = 0, refused_faulty = 0,
      named = 0;
  int over_three_high = 0;
  long within = 0, within_high = 0, points = 0;
  for (int seed = first; seed < first + count; ++seed) {
    vt::RoomOptions own = room_options;
    if (options["--fault"] == "mixed") {
      if (seed % 2 == 0)
        own.fault = static_cast<vt::Fault>(1 + (seed / 2) % static_cast<int>(vt::Fault::one_sheet));
    } else {
      for (int f = 0; f <= static_cast<int>(vt::Fault::one_sheet); ++f)
        if (vt::name_of(static_cast<vt::Fault>(f)) == options["--fault"])
          own.fault = static_cast<vt::Fault>(f);
    }
    if (options["--conditions"] == "mixed") draw_conditions(seed, own);
    const vt::Session session = vt::random_session(static_cast<std::uint64_t>(seed), own);
    const int width = session.room.projector.width, height = session.room.projector.height;
    if (options["--conditions"] == "mixed")
      std::printf("     hardness %.2f, %d x %d%s%s\n", own.hardness, width, height,
                  own.electronic_keystone ? ", keystone" : "",
                  own.rolling_shutter ? ", rolling shutter" : "");
    const cv::Mat target = target_picture(width, height), plain = plain_picture(width, height);
    double began = seconds();
    std::filesystem::path folder = own_folder;
    if (!options["--keep"].empty()) folder = std::filesystem::path(options["--keep"]) / std::to_string(seed);
    std::filesystem::create_directories(folder);
    std::vector<std::string> paths;
    for (size_t i = 0; i < session.shots.size(); ++i) {
      const vt::Shot& shot = session.shots[i];
      paths.push_back((folder / ("photo-" + std::to_string(i + 1) + ".jpg")).string());
      if (std::filesystem::exists(paths.back())) continue;
      vt::save_photograph(paths.back(),
                          vt::photograph(shot.room, shot.camera, shot.target ? target : plain, shot.seed),
                          shot.file);
    }
    const double rendered = seconds() - began;
    CalibrationRequest request;
    request.width = width;
    request.height = height;
    if (rulers) request.rulers = Rulers{session.ruler_across, session.ruler_down};
    if (span && session.tape)
      request.spans.push_back({session.tape->from + 1, session.tape->to + 1, session.tape->mm});
    if (own.board > 0.0) request.raised = RaisedSheet{static_cast<int>(own.pages.size()), own.board};
    if (lamp) request.lamp_height = std::round(lamp_height(session.room.projector) / 10.0) * 10.0;
    const bool fault = session.fault != vt::Fault::none && session.fault != vt::Fault::refocused;
    faultless += !fault;
    began = seconds();
    try {
      std::vector<std::string> unread;
      const std::vector<Photograph> photographs = load_photographs(paths, unread);
      const CalibrationReport report = calibrate(photographs, request);
      times.push_back(seconds() - began);
      const Truth truth = compare(report.map, session.room.projector, 5.0);
      rms.push_back(truth.rms);
      on_cloth.push_back(truth.height_worst);
      by_height.push_back(truth.height_alone);
      worst.push_back(truth.worst);
      far += truth.worst > 1.0;
      over_three += truth.over_stated > 3.0;
      over_three_high += truth.height_over_stated > 3.0;
      within += truth.within;
      within_high += truth.height_within;
      points += truth.points;
      covered.push_back(static_cast<double>(truth.within) / truth.points);
      std::printf(
          "%4d %-18s rms %.3f worst %.3f stated %.3f within %.2f, at most %.2f of it; cloth5 %.3f (stated "
          "%.3f, at most %.2f of it; height alone %.3f) lamp %.0f (is %.0f)  "
          "%.2f s (rendered %.1f s)\n",
          seed, vt::name_of(session.fault).c_str(), truth.rms, truth.worst,
          *std::max_element(report.map.error.mm95.begin(), report.map.error.mm95.end()), covered.back(),
          truth.over_stated, truth.height_worst, truth.height_stated, truth.height_over_stated,
          truth.height_alone, report.map.lamp().z(), lamp_height(session.room.projector), times.back(),
          rendered);
      for (const std::string& warning : report.warnings) std::printf("       ! %s\n", warning.c_str());
    } catch (const Refusal& refusal) {
      ++refused;
      refused_faultless += !fault;
      refused_faulty += fault;
      const bool right = fault && named_right(session.fault, refusal.what());
      named += right;
      std::printf("%4d %-18s REFUSED%s %s  %.2f s\n", seed, vt::name_of(session.fault).c_str(),
                  fault && !right ? " MISNAMED" : "", refusal.what(), seconds() - began);
    }
    std::fflush(stdout);
    if (options["--keep"].empty()) std::filesystem::remove_all(folder);
  }
  std::printf("\nrooms %d, refused %d (%d of %d without fault); cause named right in %d of %d faulty\n",
              count, refused, refused_faultless, faultless, named, refused_faulty);
  std::printf("rms: median %.3f mm; worst point: median %.3f, 95%% %.3f, most %.3f mm\n",
              percentile(rms, 0.5), percentile(worst, 0.5), percentile(worst, 0.95), percentile(worst, 1.0));
  std::printf("worst point on cloth of 5 mm: median %.3f, 95%% %.3f, most %.3f mm\n",
              percentile(on_cloth, 0.5), percentile(on_cloth, 0.95), percentile(on_cloth, 1.0));
  const auto within_quarter = [](const std::vector<double>& misses) {
    return std::count_if(misses.begin(), misses.end(), [](double miss) { return miss <= 0.25; });
  };
  std::printf(
      "of it by the height alone: median %.3f, 95%% %.3f, most %.3f mm; within 0.25 mm: %ld, by the height "
      "alone %ld of %zu rooms\n",
      percentile(by_height, 0.5), percentile(by_height, 0.95), percentile(by_height, 1.0),
      within_quarter(on_cloth), within_quarter(by_height), on_cloth.size());
  std::printf("accepted with any point beyond 1 mm: %d; beyond three times the stated error: %d\n", far,
              over_three);
  const auto share = [&](long part) {
    return points == 0 ? 0.0 : 100.0 * static_cast<double>(part) / static_cast<double>(points);
  };
  std::printf(
      "points within the stated error: %.1f %%; on cloth of 5 mm %.1f %% (rooms beyond three times: %d)\n",
      share(within), share(within_high), over_three_high);
  std::printf("calibrate, files read included: median %.2f s, most %.2f s\n", percentile(times, 0.5),
              percentile(times, 1.0));
  return 0;
}
