#include <QApplication>
#include <numbers>

#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/cutting/window.h"

namespace cowlcast::projector {
namespace {

struct CastOptions {
  std::string table, piece, screen = "1", hand = "right";
  PlaceOption at;
  bool mirrored = false;
  double height = 0.0, band = BladeOverlay{}.band_width;
  unsigned cloth = 0xff808080;
  Blade blade;
};

void run(const CastOptions& options) {
  auto map =
      calibration::TableMap::from_json(read_file(options.table, "a table file made by `cowlcast calibrate`"));
  drafting::Piece piece =
      drafting::piece_from_json(read_file(options.piece, "a piece file made by `cowlcast draft`"));
  int count = 1;
  char name[] = "cowlcast";
  char* arguments[] = {name, nullptr};
  const QApplication application(count, arguments);
  QScreen* screen = screen_named(options.screen);
  const Laying laying{options.at.x, options.at.y, options.at.angle, options.mirrored, options.height};
  std::vector<Cut> plan = cuts_of(cut_runs(piece), options.blade, {});
  CuttingView view = new_view(std::move(piece), std::move(plan), laying, style_for_cloth(options.cloth));
  view.overlay.hand = options.hand == "left" ? Hand::left : Hand::right;
  view.overlay.band_width = options.band;
  CuttingWindow window(std::move(map), std::move(view), *screen);
  window.open();
  QApplication::exec();
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
  command->add_option("--screen", options->screen, "the projector's screen: its name or number")
      ->capture_default_str();
  add_place(*command, "--at", options->at,
            "where the piece's origin comes to lie, mm, and its anticlockwise turn, degrees [0,0,0]");
  command->add_flag("--mirrored", options->mirrored, "lay the piece face down");
  add_length(*command, "--height", options->height, "of the cloth's upper face above the mat");
  add_colour(*command, "--cloth", options->cloth, "colour of the cloth, to choose the lights by [grey]");
  add_length(*command, "--blade", options->blade.diameter, "diameter of the round blade [45]", 1.0);
  add_length(*command, "--band", options->band, "width of the keep-out band for the other hand [60]");
  command->add_option("--hand", options->hand, "the hand that holds the blade")
      ->check(CLI::IsMember({"right", "left"}))
      ->capture_default_str();
  command->footer(
      "Arrow keys move the piece by 1 mm, with shift 10 mm, with ctrl or alt 0.1 mm; Q and E turn it,\n"
      "F flips it, L hides the legend, B the band. Space or Page Down begins to cut and goes to the next\n"
      "stroke, Page Up goes back, U unlocks the laying, Escape ends and prints where the piece lay.\n"
      "The band and the marks are an aid to the eye. They see no hand: keep yours out of the blade's way.\n"
      "Example: cowlcast cast --table table.json --piece cowl/front.json --screen HDMI-1 --at 0,-300,0");
  command->callback([options, &job] { job = [options] { run(*options); }; });
}

}  // namespace cowlcast::projector
