// The whole top: options, the job, and what it says. Its files are made in top_files.cpp.
#include <algorithm>
#include <cstdio>
#include <numbers>

#include "drafting/block/block.h"
#include "drafting/export/summary.h"
#include "drafting/garment/top.h"
#include "drafting/hang/hang.h"
#include "drafting/refusal.h"
#include "projector/commands/cowl_options.h"
#include "projector/commands/files.h"
#include "projector/commands/top_files.h"

namespace cowlcast::projector {
namespace {

struct Options {
  std::string base, back, out;
  std::string paper = "a4", weight = "even";
  std::shared_ptr<CowlOptions> cowl = std::make_shared<CowlOptions>();
  double drape = 0.0, hang = 0.0, back_drape = 0.0, back_drop = -1.0, camisole_depth = 0.0;
  drafting::TopWishes top;
  std::vector<std::string> slashes, carried;
  std::string openings, body;
  bool ranges = false, cut_anyway = false;
};

[[noreturn]] void wrong(const char* option, const std::string& text, const std::string& wanted) {
  throw CLI::ValidationError(option, "cannot use \"" + text + "\": give " + wanted);
}

std::vector<double> numbers_of(const char* option, const std::string& text, const std::string& wanted) {
  std::vector<double> numbers;
  for (const std::string& part : parts_of(text, ',')) {
    const auto number = plain_number(part);
    if (!number || *number < 0.0) wrong(option, text, wanted);
    numbers.push_back(*number);
  }
  return numbers;
}

/// "70,shoulder,0.4": a slash line set by hand.
drafting::SlashWish slash_of(const std::string& text) {
  const std::vector<std::string> parts = parts_of(text, ',');
  const auto below = parts.size() == 3 ? length_mm(parts[0]) : std::nullopt;
  const auto share = parts.size() == 3 ? plain_number(parts[2]) : std::nullopt;
  if (!below || !share || (parts[1] != "shoulder" && parts[1] != "armhole"))
    wrong("--slash", text, "BELOW,SEAM,SHARE, for example 70,shoulder,0.4");
  return {*below, parts[1], *share};
}

/// Openings relative to each other from the top down: high, the topmost opens twice the lowest.
std::vector<double> proportions_of(const std::string& weight, int count) {
  if (weight == "even") return {};
  if (weight != "high" && weight != "low")
    return numbers_of("--weight", weight, "even, high, low or a number for each slash line, as 3,2,1");
  std::vector<double> proportions;
  for (int i = 0; i < count; ++i) {
    const double down = count > 1 ? static_cast<double>(i) / (count - 1) : 0.5;
    proportions.push_back(weight == "high" ? 2.0 - down : 1.0 + down);
  }
  return proportions;
}

/// The wearer's levels for the picture of the hang, when her measures are known.
std::optional<drafting::HangLevels> levels_of(const Options& options) {
  if (options.body.empty() && options.base != "demo") return std::nullopt;
  drafting::BodyMeasures measures = drafting::demo_measures();
  if (!options.body.empty()) {
    const std::vector<std::string> parts = parts_of(options.body, ',');
    std::vector<double> mm;
    for (const std::string& part : parts) mm.push_back(length_mm(part).value_or(0.0));
    if (mm.size() != 3 || *std::min_element(mm.begin(), mm.end()) < 100.0)
      wrong("--body", options.body, "bust, neck and back waist length, for example 920,370,410");
    measures.bust_girth = mm[0];
    measures.neck_girth = mm[1];
    measures.back_waist_length = mm[2];
  }
  return drafting::hang_levels(measures);
}

/// Wishes from the options alone, all but the drape. Throws ValidationError.
drafting::TopWishes wishes_of(const Options& options) {
  drafting::TopWishes wishes = options.top;
  wishes.cowl = wishes_of(*options.cowl);
  drafting::CowlWishes& cowl = wishes.cowl;
  for (const std::string& text : options.slashes) cowl.slashes.push_back(slash_of(text));
  const int count = cowl.slashes.empty() ? cowl.slash_count : static_cast<int>(cowl.slashes.size());
  cowl.proportions = proportions_of(options.weight, count);
  if (!options.openings.empty()) {
    cowl.set_openings = numbers_of("--openings", options.openings, "degrees for each slash line, as 12,10,8");
    for (double& opening : cowl.set_openings) opening *= std::numbers::pi / 180.0;
  }
  wishes.camisole = options.camisole_depth > 0.0;
  if (wishes.camisole) wishes.camisole_depth = options.camisole_depth;
  if (options.back_drape > 0.0) {
    // The same choices for the back, but for what lies on the front alone.
    drafting::CowlWishes back = cowl;
    back.drape = options.back_drape;
    if (options.back_drop >= 0.0) back.neckline_drop = options.back_drop;
    back.slashes.clear();
    back.set_openings.clear();
    back.proportions = proportions_of(cowl.slashes.empty() ? options.weight : "even", back.slash_count);
    back.tacked_length = 0.0;
    wishes.back_cowl = back;
  }
  return wishes;
}

std::string words(const char* format, double a, double b, double c = 0.0, double d = 0.0) {
  char text[200];
  std::snprintf(text, sizeof text, format, a, b, c, d);
  return text;
}

/// The drapes that work for a base with its openings free, and how deep they hang.
std::string range_in_words(const drafting::Piece& base, drafting::CowlWishes wishes) {
  wishes.set_openings.clear();  // set one by one, they fix the drape all but for the swing
  const drafting::DrapeRange range = drafting::drape_range(base, wishes);
  const double span = 2.0 * base.points.at("neck-point").x();
  const auto depth = [&](double drape) { return drape > span ? drafting::hang_depth(span, drape) : 0.0; };
  return words("drape %.1f to %.1f mm, hanging %.0f to %.0f mm deep", range.least, range.most,
               depth(range.least), depth(range.most));
}

/// The top; a refusal of a hang says the depths that work, not lengths alone.
drafting::Top top_of(const drafting::Piece& front, const drafting::Piece& back,
                     const drafting::TopWishes& wishes, bool by_hang) {
  try {
    return drafting::draft_top(front, back, wishes);
  } catch (const drafting::Refusal& reason) {
    if (!by_hang) throw;
    throw drafting::Refusal(reason.what() + (" What works: " + range_in_words(front, wishes.cowl)) + ".");
  }
}

void say_ranges(const drafting::Piece& front, const drafting::Piece& back, const Options& options) {
  drafting::TopWishes wishes = wishes_of(options);
  std::cout << "What works with this base and these choices, front:\n";
  for (int count = 1; count <= 6; ++count) {
    if (!options.slashes.empty()) count = 6;
    wishes.cowl.slash_count = count;
    if (wishes.cowl.slashes.empty() && (options.weight == "high" || options.weight == "low"))
      wishes.cowl.proportions = proportions_of(options.weight, count);
    std::cout << "  "
              << (options.slashes.empty() ? std::to_string(count) + " slash lines: " : "your slash lines: ");
    try {
      std::cout << range_in_words(front, wishes.cowl) << '\n';
    } catch (const drafting::Refusal& reason) {
      std::cout << "none. " << reason.what() << '\n';
    }
  }
  if (wishes.back_cowl) std::cout << "back:\n  " << range_in_words(back, *wishes.back_cowl) << '\n';
}

void draft_and_write(const drafting::Piece& front, const drafting::Piece& back, const Options& options) {
  drafting::TopWishes wishes = wishes_of(options);
  const double span = 2.0 * front.points.at("neck-point").x();
  wishes.cowl.drape = options.hang > 0.0 ? drafting::drape_for_depth(span, options.hang) : options.drape;
  for (const std::string& name : options.carried)
    wishes.carried.push_back(
        drafting::piece_from_json(read_file(name, "a piece file to carry over, such as a sleeve's")));
  const drafting::Top top = top_of(front, back, wishes, options.hang > 0.0);
  const double depth = wishes.cowl.drape > span ? drafting::hang_depth(span, wishes.cowl.drape) : 0.0;
  const auto levels = levels_of(options);

  std::cout << drafting::summary(top.cowl);
  std::cout << words("hangs               %8.1f mm below the neck points, as a chain would", depth, 0.0)
            << (levels ? ": " + drafting::depth_in_words(depth, *levels) : "") << '\n';
  std::cout << "what works          front: " << range_in_words(front, wishes.cowl) << '\n';
  if (wishes.back_cowl)
    std::cout << "                    back: " << range_in_words(back, *wishes.back_cowl) << '\n';
  std::cout << "\nSeams walked (within 0.01 mm; bend: how far the joined edges run from straight;\n"
               "where the cowl meets the back neck a corner is meant)\n";
  for (const drafting::Walk& walk : top.walks)
    std::cout << drafting::walk_in_words(walk) << (drafting::walks(walk) ? "" : "  DOES NOT WALK") << '\n';
  std::cout.flush();
  try {
    drafting::require_walk(top, options.cut_anyway);
  } catch (const drafting::Refusal& reason) {
    throw drafting::Refusal(reason.what() + std::string(" Say so with --cut-anyway."));
  }

  const std::vector<NamedFile> files =
      files_of(top, options.paper,
               levels && depth > 0.0 ? drafting::hang_to_svg(span, wishes.cowl.drape, *levels) : "");
  const std::filesystem::path out(options.out);
  make_folder(out);
  std::cout << "\nIn " << out.string() << ":";
  for (const NamedFile& file : files) {
    write_file(out / file.name, file.bytes);
    std::cout << ' ' << file.name;
  }
  std::cout << '\n';
}

void add_options(CLI::App& command, const std::shared_ptr<Options>& options) {
  Options& o = *options;
  drafting::CowlWishes& cowl = o.cowl->wishes;
  command
      .add_option("--base", o.base,
                  "base front: a piece file (.json), an SVG drawing with named edges, or the word demo")
      ->required();
  command.add_option("--back", o.back, "base back, the same way; demo has its own");
  CLI::Option* drape =
      add_length(command, "--drape", o.drape, "length of the cowl from shoulder seam to shoulder seam", 1.0);
  add_length(command, "--hang", o.hang, "or: how low it hangs below the neck points", 1.0)->excludes(drape);
  add_cowl_options(command, o.cowl);
  command
      .add_option("--slash", o.slashes,
                  "a slash line set by hand, from the top down; may be given again: how far below the\n"
                  "lowered neckline it starts, shoulder or armhole, and the share of that seam from its\n"
                  "upper end, for example 70,shoulder,0.4")
      ->type_name("BELOW,SEAM,SHARE")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  command
      .add_option("--weight", o.weight,
                  "where it opens most: even, high (the topmost twice the lowest), low, or a number for\n"
                  "each slash line from the top down, as 3,2,1")
      ->type_name("WEIGHT")
      ->capture_default_str();
  command.add_option("--openings", o.openings, "openings set one by one from the top down, as 12,10,8")
      ->type_name("DEGREES,...");
  add_length(command, "--swing-centre", cowl.pivot_height,
             "height over the hem, on the centre front, that the front swings about [0]");
  add_length(command, "--crossing", cowl.allowed_crossing,
             "how far parts may lie over the centre front, to be cut away [0]");
  command.add_flag("--separate-facing", cowl.separate_facing, "the facing as a piece of its own");
  add_length(command, "--tack-up", cowl.tacked_length, "extra front length, tacked up at the side seams");
  CLI::Option* bias =
      command.add_flag("--bias", cowl.on_bias, "woven cloth: grain at 45 degrees, cut full in one layer");
  add_length(command, "--trial-hang", cowl.trial_hang,
             "how far the centre dropped in a trial hang on the bias, taken out at the hem")
      ->needs(bias);
  CLI::Option* back_cowl =
      add_length(command, "--back-cowl", o.back_drape,
                 "a cowl in the back as well: its drape; other choices as in front", 1.0);
  add_length(command, "--back-drop", o.back_drop, "how far the back neckline is lowered [as in front]")
      ->needs(back_cowl);
  CLI::Option* camisole = add_length(
      command, "--camisole", o.camisole_depth,
      "an inner panel under the cowl: its top edge below the neck point, at the centre front", 1.0);
  add_length(command, "--camisole-length", o.top.camisole_length,
             "of the panel, along the side seam below the armhole [110]")
      ->needs(camisole);
  command
      .add_option("--carry", o.carried, "a piece file to carry over unchanged (a sleeve); may be given again")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  add_length(command, "--sleeve-ease", o.top.sleeve_ease,
             "of a sleeve-cap edge, taken up in the armholes [0]");
  command.add_option("--elastic-stretch", o.top.elastic_stretch, "back neck seam over its elastic")
      ->check(CLI::Range(1.0, 1.5))
      ->capture_default_str();
  add_length(command, "--elastic-tail", o.top.elastic_tail, "of each end of the elastic [13]");
  command.add_option("--binding-stretch", o.top.binding_stretch, "armhole over its binding")
      ->check(CLI::Range(1.0, 1.5))
      ->capture_default_str();
  command.add_option("--body", o.body, "bust, neck and back waist length, for hang.svg; demo has its own")
      ->type_name("BUST,NECK,BACK-WAIST");
  command.add_option("--paper", o.paper, "of top.pdf: tiles of a4 or letter, a0 pages, or one large page")
      ->check(CLI::IsMember({"a4", "letter", "a0", "one"}))
      ->capture_default_str();
  command.add_flag("--cut-anyway", o.cut_anyway, "write the pieces even when a seam does not walk");
  command.add_flag("--ranges", o.ranges,
                   "only say which drapes work, with 1 to 6 slash lines; writes nothing");
  command.add_option("--out", o.out, "folder for the files");
}

}  // namespace

void add_top(CLI::App& app, Job& job) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("top", "draft the whole top: cowl front, back, facing, panel");
  add_options(*command, options);
  command->footer(
      "Writes NAME.json and NAME.svg for each piece, top.pdf and top.dxf (all pieces), record.txt and\n"
      "record.pdf (every number), steps.svg, opening.svg (moving) and handout.pdf (how it is drafted), and\n"
      "hang.svg. Refuses a top whose seams do not walk, unless --cut-anyway.\n"
      "Lengths: a plain number is mm; 48cm and 19in are understood. Edges: neckline, shoulder, armhole,\n"
      "side-seam, hem, cowl-edge, facing-edge, facing-shoulder, camisole-top, camisole-hem.\n"
      "Example: cowlcast top --base demo --hang 17cm --weight high --camisole 130 --out top");
  command->callback([options, &job] {
    Options& o = *options;
    if (o.back.empty() && o.base != "demo")
      throw CLI::ValidationError("--back", "is missing: give the base back that belongs to this base front");
    if (!o.ranges && o.drape <= 0.0 && o.hang <= 0.0)
      throw CLI::ValidationError("--drape", "is missing: give it, or --hang, or --ranges to see what works");
    if (!o.ranges && o.out.empty()) throw CLI::ValidationError("--out", "is missing: give a folder");
    wishes_of(o);  // what is written wrongly is found before anything is read
    levels_of(o);
    job = [options] {
      const drafting::Piece front = read_base_front(options->base);
      const drafting::Piece back = read_base_back(options->back.empty() ? "demo" : options->back);
      if (options->ranges)
        say_ranges(front, back, *options);
      else
        draft_and_write(front, back, *options);
    };
  });
}

}  // namespace cowlcast::projector
