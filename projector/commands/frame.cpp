#include "projector/frame/render.h"

#include <QGuiApplication>
#include <cstdio>

#include "calibration/refusal.h"
#include "projector/blade/blade_marks.h"
#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/commands/headless.h"
#include "projector/commands/png.h"
#include "projector/frame/piece_marks.h"

namespace cowlcast::projector {
namespace {

struct FrameOptions {
  std::string table, piece, only, out;
  PlaceOption at;
  bool mirrored = false;
  double height = 0.0;
  unsigned cloth = 0xff808080;
  int stroke = 0;
  std::string hand = "right";
  Blade blade;
};

std::vector<Mark> marks_for(const FrameOptions& options, const calibration::TableMap& map,
                            const drafting::Piece& piece, const Laying& laying) {
  if (options.only == "cut-line") return cut_line_alone(piece, laying);
  const FrameStyle style = style_for_cloth(options.cloth);
  std::vector<Mark> marks = piece_marks(piece, laying, style, {});
  if (options.stroke > 0) {
    const Hand hand = options.hand == "left" ? Hand::left : Hand::right;
    const std::vector<Cut> cuts = ordered_cuts(cuts_of(cut_runs(piece), options.blade, {}), laying,
                                               standing_before(lit_outline(map, laying.height), hand));
    if (options.stroke > static_cast<int>(cuts.size()))
      throw calibration::Refusal("The piece has " + std::to_string(cuts.size()) +
                                 " strokes. Give --stroke a number from 1 to that.");
    const BladeOverlay overlay{.hand = hand};
    for (Mark& mark : blade_marks(cuts[static_cast<size_t>(options.stroke - 1)], laying, style, overlay))
      marks.push_back(std::move(mark));
  }
  return marks;
}

void run(const FrameOptions& options) {
  const auto map =
      calibration::TableMap::from_json(read_file(options.table, "a table file made by `cowlcast calibrate`"));
  const drafting::Piece piece = read_piece(options.piece);
  check_cloth(options.height);
  const Laying laying{options.at.x, options.at.y, options.at.angle, options.mirrored, options.height};
  Polyline outline = laid(laying, piece.cut_line);
  if (!outline.empty()) outline.push_back(outline.front());
  const Reach reach = reach_of(map, {outline}, laying.height);
  if (!reach.any_inside)
    throw calibration::Refusal(
        "No part of the piece lies in the light. Change --at so that it does: the lit " +
        lit_box(map, laying.height) + ".");
  const Headless qt;
  write_file(options.out, png_bytes(rendered(map, marks_for(options, map, piece, laying), laying.height)));
  if (reach.outside > 0.0) {
    char text[200];
    std::snprintf(
        text, sizeof text,
        "Caution: part of the piece is outside the light, by up to %.1f mm, and is not drawn there. "
        "The lit ",
        reach.outside);
    std::cerr << text << lit_box(map, laying.height) << ".\n";
  }
  std::cout << map.width << " x " << map.height << " pixels in " << options.out << ".\n";
}

}  // namespace

void add_frame(CLI::App& app, Job& job) {
  const auto options = std::make_shared<FrameOptions>();
  CLI::App* command = app.add_subcommand("frame", "draw a piece as the picture to project");
  command->add_option("--table", options->table, "table file made by `cowlcast calibrate`")->required();
  command->add_option("--piece", options->piece, "piece file made by `cowlcast draft`")->required();
  add_place(*command, "--at", options->at,
            "where the piece's origin comes to lie on the mat, mm, and its anticlockwise turn, degrees")
      ->required();
  command->add_option("--only", options->only, "draw that line alone, white on black, 1 mm wide")
      ->check(CLI::IsMember({"cut-line"}));
  command->add_flag("--mirrored", options->mirrored, "lay the piece face down");
  add_length(*command, "--height", options->height, "of the cloth's upper face above the mat");
  add_colour(*command, "--cloth", options->cloth, "colour of the cloth, to choose the lights by [grey]");
  command->add_option("--stroke", options->stroke, "show the blade's path for this stroke of the cut line")
      ->check(CLI::Range(1, 999));
  add_length(*command, "--blade", options->blade.diameter, "diameter of the round blade [45]", 1.0);
  command->add_option("--hand", options->hand, "the hand that holds the blade")
      ->check(CLI::IsMember({"right", "left"}))
      ->capture_default_str();
  command->add_option("--out", options->out, "the PNG file to write")->required();
  command->footer(
      "Lengths: a plain number is mm; cm and in are understood. Show the picture full screen, one pixel\n"
      "to a pixel. A piece partly outside the light is drawn with a caution; one wholly outside is refused.\n"
      "Example: cowlcast frame --table table.json --piece cowl/front.json --at -200,-310,12 --out frame.png");
  command->callback([options, &job] { job = [options] { run(*options); }; });
}

}  // namespace cowlcast::projector
