// The whole top: the job and what it says. Its options are in top_options.cpp, its files made in
// top_files.cpp.
#include <algorithm>
#include <cstdio>
#include <numbers>
#include <set>

#include "drafting/export/summary.h"
#include "drafting/refusal.h"
#include "projector/commands/files.h"
#include "projector/commands/top_files.h"
#include "projector/commands/top_options.h"

namespace cowlcast::projector {
namespace {

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

/// How far each slash line opens at one drape, and could open.
void say_openings(const drafting::Piece& base, drafting::CowlWishes wishes, double drape) {
  constexpr double degrees = 180.0 / std::numbers::pi;
  wishes.drape = drape;
  const drafting::OpeningRanges ranges = drafting::opening_ranges(base, wishes);
  std::cout << words("  at %.1f mm, swing %.1f degrees:", drape, ranges.swing * degrees);
  for (size_t i = 0; i < ranges.openings.size(); ++i) {
    const drafting::OpeningRange& one = ranges.openings[i];
    std::cout << (i == 0 ? " " : ", ")
              << words("%.1f (%.1f to %.1f)", one.drafted * degrees, one.least * degrees, one.most * degrees);
  }
  std::cout << '\n';
}

void say_ranges(const drafting::Piece& front, const drafting::Piece& back, const TopOptions& options) {
  const drafting::TopWishes asked = wishes_of(options);
  drafting::TopWishes wishes = asked;
  std::cout << "What works with this base and these choices, front:\n";
  for (int count = 1; count <= 6; ++count) {
    if (!wishes.cowl.slashes.empty()) count = 6;
    wishes.cowl.slash_count = count;
    if (wishes.cowl.slashes.empty() && (options.weight == "high" || options.weight == "low"))
      wishes.cowl.proportions = proportions_of(options.weight, count);
    std::cout << "  "
              << (wishes.cowl.slashes.empty() ? std::to_string(count) + " slash lines: "
                                              : "your slash lines: ");
    try {
      std::cout << range_in_words(front, wishes.cowl) << '\n';
    } catch (const drafting::Refusal& reason) {
      std::cout << "none. " << reason.what() << '\n';
    }
  }
  std::cout << "The longest comes from the swing and the lowest line, so more lines do not lengthen it;\n"
               "they share out what opens in between.\n";
  if (wishes.back_cowl) std::cout << "back:\n  " << range_in_words(back, *wishes.back_cowl) << '\n';

  const double span = 2.0 * front.points.at("neck-point").x();
  std::cout << "Openings from the top down, degrees, and how far each could be set with the others free:\n";
  if (options.drape > 0.0 || options.hang > 0.0) {
    say_openings(front, asked.cowl,
                 options.hang > 0.0 ? drafting::drape_for_depth(span, options.hang) : options.drape);
    return;
  }
  drafting::CowlWishes free = asked.cowl;
  free.set_openings.clear();
  const drafting::DrapeRange range = drafting::drape_range(front, free);
  for (const double drape : {range.least, 0.5 * (range.least + range.most), range.most})
    say_openings(front, free, drape);
}

/// What an earlier run, or somebody else, left in the folder: it does not belong to this top.
void say_left_over(const std::filesystem::path& out, const std::vector<NamedFile>& files) {
  std::set<std::string> names, others;
  for (const NamedFile& file : files) names.insert(file.name);
  std::error_code failed;
  for (const auto& entry : std::filesystem::directory_iterator(out, failed)) {
    const std::string name = entry.path().filename().string();
    if (!names.contains(name) && !name.starts_with('.')) others.insert(name);
  }
  if (others.empty()) return;
  std::string list;
  for (const std::string& name : others) list += ' ' + name;
  std::cerr << "Caution: not of this top, but in " << out.string() << " from before:" << list
            << ". Do not cut by those, or give another --out.\n";
}

void draft_and_write(const drafting::Piece& front, const drafting::Piece& back, const TopOptions& options) {
  drafting::TopWishes wishes = wishes_of(options);
  const double span = 2.0 * front.points.at("neck-point").x();
  wishes.cowl.drape = options.hang > 0.0 ? drafting::drape_for_depth(span, options.hang) : options.drape;
  for (const std::string& name : options.carried)
    wishes.carried.push_back(
        drafting::piece_from_json(read_file(name, "a piece file to carry over, such as a sleeve's")));
  const drafting::Top top = top_of(front, back, wishes, options.hang > 0.0);
  require_edges(*options.cowl, drafting::pieces_of(top));
  const double depth = wishes.cowl.drape > span ? drafting::hang_depth(span, wishes.cowl.drape) : 0.0;
  const auto levels = levels_of(options);

  std::cout << drafting::summary(top.cowl);
  std::cout << words("hangs               %8.1f mm below the neck points, as a chain would", depth, 0.0)
            << (levels ? ": " + drafting::depth_in_words(depth, *levels) : "") << '\n';
  std::cout << "what works          front: " << range_in_words(front, wishes.cowl) << '\n';
  if (wishes.back_cowl)
    std::cout << "                    back: " << range_in_words(back, *wishes.back_cowl) << '\n';
  if (!top.finishes.empty()) std::cout << "\nFinishes\n";
  for (const drafting::FinishedEdge& edge : top.finishes)
    std::cout << drafting::finish_in_words(edge) << '\n';
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
  std::cout.flush();
  say_left_over(out, files);
}

}  // namespace

void add_top(CLI::App& app, Job& job) {
  const auto options = std::make_shared<TopOptions>();
  CLI::App* command = app.add_subcommand("top", "draft the whole top: cowl front, back, facing, inner panel");
  add_top_options(*command, options);
  command->footer(
      "Writes NAME.json and NAME.svg for each piece, top.pdf and top.dxf (all pieces), record.txt and\n"
      "record.pdf (every number), steps.svg, opening.svg (moving) and handout.pdf (how it is drafted), and\n"
      "hang.svg. Refuses a top whose seams do not walk, unless --cut-anyway.\n"
      "Lengths: a plain number is mm; 48cm and 19in are understood. Edges that can have an allowance, where\n"
      "a piece has them: " +
      edges_with_allowance() +
      ".\nExample: cowlcast top --base demo --hang 17cm --weight high --inner-panel 130 --out top");
  command->callback([options, &job] {
    check(*options);
    job = [options] {
      const drafting::Piece front = read_base_front(*options->base);
      options->drawn_slashes = read_slash_lines(*options->base);
      const drafting::Piece back = read_base_back(*options->base, options->back);
      if (options->ranges)
        say_ranges(front, back, *options);
      else
        draft_and_write(front, back, *options);
    };
  });
}

}  // namespace cowlcast::projector
