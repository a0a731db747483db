#include <QApplication>
#include <QDateTime>
#include <QSettings>
#include <filesystem>
#include <numbers>

#include "calibration/refusal.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"
#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/cutting/window.h"

namespace cowlcast::projector {
namespace {

// The present time, as records have it.
std::string now() {
  return QDateTime::currentDateTimeUtc().toString(QStringLiteral("yyyy-MM-ddTHH:mm:ssZ")).toStdString();
}

// Qt ends the program when there is no screen to open a window on.
void check_display() {
#if defined(Q_OS_LINUX)
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    if (!qEnvironmentVariableIsEmpty(name)) return;
  throw std::runtime_error(
      "there is no screen here to show the piece on. Run this where windows open, or draw a picture with "
      "`cowlcast frame`.");
#endif
}

struct CastOptions {
  std::string table, piece, screen, hand = "right", record;
  PlaceOption at;
  bool placed = false, mirrored = false, anyway = false;
  double height = 0.0, band = BladeOverlay{}.band_width;
  unsigned cloth = 0xff808080;
  Blade blade;
};

void run(const CastOptions& options) {
  auto map =
      calibration::TableMap::from_json(read_file(options.table, "a table file made by `cowlcast calibrate`"));
  drafting::Piece piece = read_piece(options.piece);
  check_cloth(options.height);
  Record record;
  if (!options.record.empty() && std::filesystem::exists(options.record))
    record = record_from_json(read_file(options.record, "a cutting record"));
  if (!record.piece.empty() && record.piece != piece.name)
    throw drafting::Refusal("The cutting record is of another piece, " + record.piece +
                            ". Give another --record file.");
  const std::string started = now();
  if (const auto block = calibration_block(map, record, started)) {
    if (!options.anyway)
      throw calibration::Refusal(*block + " To cut all the same, say --anyway; it is written in the record.");
    record = waived(record, *block, started);
  }
  if (record.cut == 0) record.table_made_at = map.made_at;

  if (!options.record.empty())
    write_file(options.record, record_to_json(record));  // not found out after the last cut
  check_display();

  int count = 1;
  char name[] = "cowlcast";
  char* arguments[] = {name, nullptr};
  const QApplication application(count, arguments);
  QSettings settings(QStringLiteral("cowlcast"), QStringLiteral("cowlcast"));
  const QString remembered = QStringLiteral("projector-screen");
  QScreen* screen = options.screen.empty()
                        ? likely_screen(settings.value(remembered).toString().toStdString(), map)
                        : screen_named(options.screen);
  check_screen(*screen, map);
  settings.setValue(remembered, screen->name());

  const Polyline lit = lit_outline(map, options.height);
  Laying laying{options.at.x, options.at.y, options.at.angle, options.mirrored, options.height};
  if (!options.placed) {
    laying = in_the_middle(lit, piece, options.height);
    if (options.mirrored)
      laying = flipped_about(laying, 0.5 * (drafting::box_of(lit).low + drafting::box_of(lit).high));
  }
  std::vector<Cut> plan = cuts_of(cut_runs(piece), options.blade, {});
  CuttingView view = new_view(std::move(piece), std::move(plan), laying, style_for_cloth(options.cloth));
  view.person = standing_before(lit, options.hand == "left" ? Hand::left : Hand::right);
  view.overlay.hand = view.person.hand;
  view.overlay.band_width = options.band;
  Polyline outline = laid(laying, view.piece.cut_line);
  outline.push_back(outline.front());
  const Reach reach = reach_of(map, {outline}, laying.height);
  if (!reach.any_inside)
    throw calibration::Refusal(
        "No part of the piece lies in the light. Leave --at out to lay it in the middle.");
  if (record.cut > 0)
    view = resumed(std::move(view), record);
  else if (reach.outside > 0.0)
    view = in_parts(std::move(view), lit);
  if (cautions_due(record, started)) {
    view.phase = Phase::cautions;
    view.cautions_shown = 1;
  }

  CuttingWindow window(std::move(map), std::move(view), *screen);
  const double before = record.seconds;
  const auto keep = [&](const CuttingView& shown) {
    if (options.record.empty()) return;
    record = recorded(shown, record, now());
    record.seconds = before + seconds_between(started, now()).value_or(0.0);
    write_file(options.record, record_to_json(record));
  };
  int cut_so_far = window.view().cut;
  window.changed = [&](const CuttingView& shown) {
    if (shown.cut == cut_so_far) return;
    cut_so_far = shown.cut;
    try {
      keep(shown);
    } catch (const FileError& error) {  // the work goes on; it is tried again at the next stroke
      std::cerr << "Caution: " << error.what() << '\n';
    }
  };
  window.open();
  QApplication::exec();
  keep(window.view());
  const Laying& end = window.view().laying;
  std::cout << "--at " << end.x << ',' << end.y << ',' << end.angle * 180.0 / std::numbers::pi
            << (end.mirrored ? " --mirrored" : "") << '\n';
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
  command->add_flag("--mirrored", options->mirrored, "lay the piece face down");
  add_length(*command, "--height", options->height, "of the cloth's upper face above the mat");
  add_colour(*command, "--cloth", options->cloth, "colour of the cloth, to choose the lights by [grey]");
  add_length(*command, "--blade", options->blade.diameter, "diameter of the round blade [45]", 1.0);
  add_length(*command, "--band", options->band, "width of the keep-out band for the other hand [60]");
  command->add_option("--hand", options->hand, "the hand that holds the blade")
      ->check(CLI::IsMember({"right", "left"}))
      ->capture_default_str();
  command->add_option("--record", options->record,
                      "file that keeps what is cut, to stop and go on another day");
  command->add_flag("--anyway", options->anyway, "cut by an old or changed calibration all the same");
  command->footer(
      "Arrow keys move the piece by 1 mm, with shift 10 mm, with ctrl or alt 0.1 mm; Q and E turn it,\n"
      "F flips it, the mouse drags it, G shows a line along the grain, N the next part of a piece larger\n"
      "than the light, L hides the legend, B the band. Space or Page Down begins to cut and goes to the "
      "next\n"
      "stroke, Page Up goes back, U unlocks the laying, Escape ends and prints where the piece lay.\n"
      "The band and the marks are an aid to the eye. They see no hand: keep yours out of the blade's way.\n"
      "Example: cowlcast cast --table table.json --piece cowl/front.json --screen HDMI-1 --at 0,-300,0");
  command->callback([options, command, &job] {
    options->placed = command->count("--at") > 0;
    job = [options] { run(*options); };
  });
}

}  // namespace cowlcast::projector
