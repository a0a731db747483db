#include <QApplication>
#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <numbers>
#include <utility>

#include "calibration/check/hand_check.h"
#include "calibration/refusal.h"
#include "drafting/refusal.h"
#include "projector/commands/command.h"
#include "projector/commands/display.h"
#include "projector/commands/files.h"
#include "projector/cutting/begin.h"
#include "projector/cutting/live_watch.h"
#include "projector/cutting/now.h"
#include "projector/cutting/remembered.h"
#include "projector/cutting/window.h"
#include "projector/guard/cut_watch.h"

namespace cowlcast::projector {
namespace {

struct CastOptions {
  std::string table, piece, screen, record, camera, fixed_camera;
  PlaceOption at;
  AreaSize mat;
  bool placed = false, anyway = false, sound = false, inches = false;
  double height = 0.0;
  WorkOptions work;
};

CuttingWishes wishes_of(const CastOptions& options) {
  CuttingWishes wishes;
  if (options.placed)
    wishes.at = Laying{options.at.x, options.at.y, options.at.angle, options.work.mirrored, options.height};
  wishes.mirrored = options.work.mirrored;
  wishes.height = options.height;
  wishes.cloth = options.work.cloth;
  wishes.blade = blade_for(options.work, options.height);
  wishes.band = options.work.band;
  wishes.inches = options.inches;
  wishes.hand = options.work.hand == "left" ? Hand::left : Hand::right;
  if (options.mat.width > 0.0) wishes.mat = Point(options.mat.width, options.mat.depth);
  return wishes;
}

// The record so far, and what speaks against the calibration waived in it, when she says so.
Record record_to_go_on_with(const CastOptions& options, const calibration::TableMap& map,
                            const std::vector<calibration::CheckedReading>& checks,
                            const drafting::Piece& piece, const std::string& started) {
  Record record;
  if (!options.record.empty() && std::filesystem::exists(options.record))
    record = record_from_json(read_file(options.record, "a cutting record"));
  if (!record.piece.empty() && record.piece != piece.name)
    throw drafting::Refusal("The cutting record is of another piece, " + record.piece +
                            ". Give another --record file.");
  if (!belongs_to(record, piece))
    throw drafting::Refusal(
        "By the record " + options.record + ", " + std::to_string(record.cut) + " of " +
        std::to_string(record.strokes) + " strokes are cut of a " + record.piece +
        " with another cut line than " + options.piece +
        " has. Go on with the piece file as it was then, or give another --record file to "
        "begin this one on fresh cloth.");
  if (const auto block = calibration_block(map, checks, record, started)) {
    if (!options.anyway)
      throw calibration::Refusal(*block + " To cut all the same, say --anyway; it is written in the record.");
    record = waived(record, *block, map.made_at, started);
  }
  if (record.cut == 0) record.table_made_at = map.made_at;
  return record;
}

// The watch of the table by the camera named, if one is.
std::optional<Watching> watching_wished(const CastOptions& options, const calibration::TableMap& map) {
  if (options.camera.empty()) return std::nullopt;
  const auto camera = calibration::FixedCamera::from_json(
      read_file(options.fixed_camera, "a camera file made by `cowlcast camera`"));
  return watching_by(map, camera, options.sound ? beep_soon : std::function<void()>());
}

// A table found again is kept, so that the next sitting begins with it.
void keep_found_again(const CastOptions& options, const TableWatch& table) {
  try {
    const std::string text = read_file(options.table, "a table file");
    write_file(options.table, calibration::with_checks(text, &table.map(), {}, present_time()));
    write_file(options.fixed_camera, table.camera().to_json());
    std::cout << "The table was found again at another place. Written to " << options.table << " and "
              << options.fixed_camera << ".\n"
              << std::flush;
  } catch (const std::exception& error) {  // the work goes on by what is known
    std::cerr << "Caution: the table was found again, but that is not kept: calibrate before the next "
                 "sitting. "
              << error.what() << '\n';
  }
}

void run(const CastOptions& options) {
  const std::string table_text = read_file(options.table, "a table file made by `cowlcast calibrate`");
  const auto map = calibration::TableMap::from_json(table_text);
  const drafting::Piece piece = read_piece(options.piece);
  std::optional<Watching> watching = watching_wished(options, map);
  const std::string started = present_time();
  Record record = record_to_go_on_with(options, map, calibration::kept_checks(table_text), piece, started);
  Remembered remembered;
  record.cautions_read_at = std::max(record.cautions_read_at, remembered.cautions_read_at());
  CuttingView first = begun(map, piece, wishes_of(options), record, started);
  const auto keep = [&options](const Record& kept) {
    if (!options.record.empty()) write_file(options.record, record_to_json(kept));
  };
  keep(record);  // a folder that is not there is not found out after the last cut
  const auto application = open_display();
  QScreen& screen = projector_screen(options.screen, map.width, map.height);
  if (const std::string advice = dim_room_advice(options.work.cloth); !advice.empty())
    std::cout << advice << '\n';
  if (const std::string caution = thick_cloth_caution(map, lit_outline(map, options.height), options.height);
      !caution.empty())
    std::cerr << caution << '\n';

  CuttingWindow window(map, std::move(first), screen);
  // A stroke more or less, and a piece that was laid anew.
  const auto kept_at = [](const CuttingView& view) {
    return std::pair(view.cut, view.phase == Phase::cutting);
  };
  auto so_far = kept_at(window.view());
  bool cautions_kept = false;
  window.changed = [&](const CuttingView& shown) {
    if (shown.cautions_read && !cautions_kept) remembered.keep_cautions_read_at(present_time());
    cautions_kept = shown.cautions_read;
    if (kept_at(shown) == so_far) return;
    so_far = kept_at(shown);
    try {
      record = recorded(shown, record, present_time());
      keep(record);
    } catch (const FileError& error) {  // the work goes on; it is tried again at the next stroke
      std::cerr << "Caution: " << error.what() << '\n';
    }
  };
  std::optional<LiveWatch> live;
  if (watching) {
    const calibration::FixedCamera& camera = watching->table().camera();
    live.emplace(
        lines_of(window),
        calibration::CameraRequest{
            .spec = options.camera, .width = camera.width, .height = camera.height, .hold_after = 2.0},
        *watching);
    live->ended = [&window] { window.close(); };
    live->found_again = [&options](const TableWatch& table) { keep_found_again(options, table); };
  }
  window.open();
  QApplication::exec();
  keep(recorded(window.view(), record, present_time()));
  const Laying& end = window.view().laying;
  char at[100];
  std::snprintf(at, sizeof at, "--at %.2f,%.2f,%.3f%s", end.x, end.y, end.angle * 180.0 / std::numbers::pi,
                end.mirrored ? " --mirrored" : "");
  std::cout << at << '\n';
  if (live) live->rethrow();
}

}  // namespace

void add_cast(CLI::App& app, Job& job) {
  const auto options = std::make_shared<CastOptions>();
  CLI::App* command = app.add_subcommand("cast", "show a piece on the projector's screen and cut by it");
  command->add_option("--table", options->table, "table file made by `cowlcast calibrate`")->required();
  command->add_option("--piece", options->piece, "piece file made by `cowlcast draft`")->required();
  command->add_option("--screen", options->screen,
                      "the projector's screen: its name or number [the one used last]");
  add_place(
      *command, "--at", options->at,
      "where the piece's origin comes to lie, mm, and its anticlockwise turn, degrees [middle of the light]");
  add_cloth_height(*command, options->height);
  add_work_options(*command, options->work);
  const auto read_mat = [options](const std::string& text) {
    const auto size = area_size(text);
    if (!size)
      throw CLI::ValidationError("--mat",
                                 "cannot use \"" + text + "\": give width and depth, for example 900x600");
    options->mat = *size;
  };
  command
      ->add_option_function<std::string>(
          "--mat", read_mat,
          "size of the cutting mat, its middle under the light's, to tell which strokes leave it")
      ->type_name("WIDTHxDEPTH");
  command->add_option("--record", options->record,
                      "file that keeps what is cut, to stop and go on another day");
  auto* camera =
      command->add_option("--camera", options->camera,
                          "a camera that stays where it is and watches whether anything is moved, and "
                          "what lies ahead of the blade: "
                          "a number such as 0, a device, a "
                          "film or an address with ://");
  auto* fixed_camera = command->add_option("--fixed-camera", options->fixed_camera,
                                           "where that camera stands: file made by `cowlcast camera`");
  camera->needs(fixed_camera);
  fixed_camera->needs(camera);
  command
      ->add_flag("--sound", options->sound, "a short sound when the camera sees something ahead of the blade")
      ->needs(camera);
  command->add_flag("--inches", options->inches, "say lengths on the table in inches");
  command->add_flag("--anyway", options->anyway,
                    "cut by an old, changed or doubted calibration all the same");
  command->footer(
      "Arrow keys move the piece by 1 mm, with shift 10 mm, with ctrl or alt 0.1 mm; Q and E turn it,\n"
      "F flips it, the mouse drags it, H brings it back to its laid-out place, to which moves near it go\n"
      "by themselves; G shows a line along the grain, N the next part of a piece larger than the light,\n"
      "L hides the legend, K the band. Space or Page Down begins to cut and goes to the next stroke, Page\n"
      "Up goes back, U lays the piece anew, Escape ends and prints where the piece lay. A presenter's\n"
      "remote and a page-turning pedal send Page Up and Page Down.\n"
      "With --camera the camera learns the table when cutting begins, and lines go when mat, projector or\n"
      "camera are moved; R lets it look where they are now, or learn anew. It learns the bare cloth too: "
      "what\n"
      "then lies or comes ahead of the blade gets a ring of light. It tells late, and misses small things "
      "and\n"
      "things of the cloth's own colour. Band, marks and rings are an aid to the eye: keep your hand out of "
      "the\n"
      "blade's way.\n"
      "Example: cowlcast cast --table table.json --piece cowl/front.json --screen HDMI-1 --at 0,-300,0");
  command->callback([options, command, &job] {
    options->placed = command->count("--at") > 0;
    job = [options] { run(*options); };
  });
}

}  // namespace cowlcast::projector
