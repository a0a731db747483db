#include <QGuiApplication>
#include <cstdio>
#include <filesystem>
#include <utility>

#include "calibration/check/hand_check.h"
#include "calibration/refusal.h"
#include "projector/blade/blade_marks.h"
#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/commands/headless.h"
#include "projector/frame/piece_marks.h"
#include "projector/frame/png.h"

namespace cowlcast::projector {
namespace {

struct FrameOptions {
  std::string table, piece, only, out;
  PlaceOption at;
  double height = 0.0;
  int stroke = 0;
  WorkOptions work;
};

std::vector<Mark> marks_for(const FrameOptions& options, const calibration::TableMap& map,
                            const drafting::Piece& piece, const Laying& laying) {
  if (options.only == "cut-line") return cut_line_alone(piece, laying);
  const FrameStyle style = style_for_cloth(options.work.cloth);
  Drawing drawing = piece_drawing(piece, laying, style, {});
  std::vector<Polyline> clear_of = lines_to_keep_clear(piece, laying);
  const Polyline lit = lit_outline(map, laying.height);
  if (options.stroke > 0) {
    const Hand hand = options.work.hand == "left" ? Hand::left : Hand::right;
    const std::vector<Cut> cuts =
        ordered_cuts(cuts_of(cut_runs(piece), blade_for(options.work, options.height), {}), laying,
                     standing_before(lit, hand));
    if (options.stroke > static_cast<int>(cuts.size()))
      throw calibration::Refusal("The piece has " + std::to_string(cuts.size()) +
                                 " strokes. Give --stroke a number from 1 to that.");
    const BladeOverlay overlay{.hand = hand, .band_width = options.work.band};
    Drawing blade = blade_drawing(cuts[static_cast<size_t>(options.stroke - 1)], laying, style, overlay);
    for (Mark& mark : blade.marks) {
      clear_of.insert(clear_of.end(), mark.lines.begin(), mark.lines.end());
      drawing.marks.push_back(std::move(mark));
    }
    drawing.words.insert(drawing.words.begin(), blade.words.begin(), blade.words.end());
  }
  for (Mark& mark : settled(drawing.words, clear_of, lit)) drawing.marks.push_back(std::move(mark));
  return std::move(drawing.marks);
}

std::string check_picture_name(const std::string& name) {
  std::string ending = std::filesystem::path(name).extension().string();
  for (char& c : ending)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return ending == ".png"
             ? std::string()
             : "cannot use \"" + name +
                   "\": give a name that ends in .png, which keeps every pixel; others smear lines";
}

void run(const FrameOptions& options) {
  const std::string table_text = read_file(options.table, "a table file made by `cowlcast calibrate`");
  const auto map = calibration::TableMap::from_json(table_text);
  const drafting::Piece piece = read_piece(options.piece);
  const Laying laying{options.at.x, options.at.y, options.at.angle, options.work.mirrored, options.height};
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
  if (const auto failed = failed_check(calibration::kept_checks(table_text))) {
    calibration::CheckFigure figure;
    figure.number = failed->reading.figure;
    std::cerr << "Caution: a check by hand did not agree with this calibration, from "
              << figure.label(failed->reading.from) << " to " << figure.label(failed->reading.to)
              << ". Check again before cutting, or calibrate again.\n";
  }
  if (const std::string caution = thick_cloth_caution(map, outline, laying.height); !caution.empty())
    std::cerr << caution << '\n';
  std::cout << map.width << " x " << map.height << " pixels in " << options.out << ".\n";
  if (const std::string advice = dim_room_advice(options.work.cloth); options.only.empty() && !advice.empty())
    std::cout << advice << '\n';
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
  add_cloth_height(*command, options->height);
  add_work_options(*command, options->work);
  command->add_option("--stroke", options->stroke, "show the blade's path for this stroke of the cut line")
      ->check(CLI::Range(1, 999));
  command->add_option("--out", options->out, "the PNG file to write")->required()->check(check_picture_name);
  command->footer(
      "Lengths: a plain number is mm; cm and in are understood. Show the picture full screen, one pixel\n"
      "to a pixel. A piece partly outside the light is drawn with a caution; one wholly outside is refused.\n"
      "Example: cowlcast frame --table table.json --piece cowl/front.json --at -200,-310,12 --out frame.png");
  command->callback([options, &job] { job = [options] { run(*options); }; });
}

}  // namespace cowlcast::projector
