#include "projector/commands/cowl_options.h"

#include <numbers>

#include "drafting/block/block.h"
#include "drafting/intake/svg_base.h"
#include "drafting/refusal.h"
#include "projector/commands/files.h"

namespace cowlcast::projector {
namespace {

void set_allowance(drafting::Allowances& allowances, const std::string& text) {
  const std::vector<std::string> parts = parts_of(text, '=');
  const auto mm = parts.size() == 2 ? length_mm(parts[1]) : std::nullopt;
  if (!mm || *mm < 0.0)
    throw CLI::ValidationError("--allowance",
                               "cannot use \"" + text + "\": give an edge and a width, for example hem=30");
  allowances[parts[0]] = *mm;
}

/// A piece file's piece, when it can serve as a base.
drafting::Piece base_from_file(const std::string& text, const std::string& name, const char* centre) {
  const drafting::Piece piece = drafting::piece_from_json(text);
  const auto refuse = [&](const std::string& why) {
    throw drafting::Refusal("The piece in \"" + name + "\" " + why);
  };
  if (piece.cowl) refuse("has a cowl already. Give the plain base it was drafted from (base.json).");
  if (!drafting::has_edge(piece, centre))
    refuse(std::string("has no ") + centre + " edge. Give the base's other half, or name that edge.");
  if (!piece.points.contains("neck-point"))
    refuse("does not say where its neck point is. Add \"neck-point\" to its points.");
  return piece;
}

bool is_piece_file(const std::string& text) {
  const size_t first = text.find_first_not_of(" \t\r\n");
  return first != std::string::npos && text[first] == '{';
}

}  // namespace

void add_cowl_options(CLI::App& command, const std::shared_ptr<CowlOptions>& options) {
  drafting::CowlWishes& wishes = options->wishes;
  add_length(command, "--neckline-drop", wishes.neckline_drop,
             "how far the neckline is lowered at the centre front [60]");
  command.add_option("--slashes", wishes.slash_count, "slash lines")
      ->check(CLI::Range(1, 6))
      ->capture_default_str();
  add_length(command, "--facing", wishes.facing_depth, "depth of the facing [50.8]");
  command
      .add_option_function<std::vector<std::string>>(
          "--allowance",
          [options](const std::vector<std::string>& texts) {
            for (const std::string& text : texts) set_allowance(options->wishes.allowances, text);
          },
          "seam allowance of an edge; may be given again")
      ->type_name("EDGE=LENGTH")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  command.add_flag("--full", options->full, "cut full, in single cloth, not on the fold");
  command.add_option("--max-swing", options->max_swing, "most turn of the whole front, degrees")
      ->check(CLI::Range(0.0, 90.0))
      ->capture_default_str();
  add_length(command, "--cloth-width", wishes.cloth_width, "width of the cloth [1500]", 1.0);
}

drafting::CowlWishes wishes_of(const CowlOptions& options) {
  drafting::CowlWishes wishes = options.wishes;
  wishes.on_fold = !options.full;
  wishes.max_swing = options.max_swing * std::numbers::pi / 180.0;
  return wishes;
}

drafting::Piece read_base_front(const std::string& name) {
  if (name == "demo") return drafting::block_front(drafting::demo_measures());
  const std::string text = read_file(name, "a base front (SVG or piece file), or say demo");
  return is_piece_file(text) ? base_from_file(text, name, "centre-front")
                             : drafting::base_front_from_svg(text);
}

drafting::Piece read_base_back(const std::string& name) {
  if (name == "demo") return drafting::block_back(drafting::demo_measures());
  const std::string text = read_file(name, "a base back (SVG or piece file), or say demo");
  return is_piece_file(text) ? base_from_file(text, name, "centre-back") : drafting::base_back_from_svg(text);
}

}  // namespace cowlcast::projector
