#include <numbers>

#include "drafting/block/block.h"
#include "drafting/cowl/cowl_front.h"
#include "drafting/export/piece_svg.h"
#include "drafting/export/summary.h"
#include "drafting/intake/svg_base.h"
#include "projector/commands/command.h"
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

}  // namespace

void add_draft(CLI::App& app, Job& job) {
  struct Options {
    std::string base, out;
    drafting::CowlWishes wishes;
    bool full = false;
    double max_swing = 30.0;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("draft", "draft a draped cowl front from a base front");
  command
      ->add_option("--base", options->base,
                   "base front: a piece file (.json), an SVG drawing with named edges, or the word demo")
      ->required();
  add_length(*command, "--drape", options->wishes.drape,
             "length of the cowl from shoulder seam to shoulder seam", 1.0)
      ->required();
  add_length(*command, "--neckline-drop", options->wishes.neckline_drop,
             "how far the neckline is lowered at the centre front [60]");
  command->add_option("--slashes", options->wishes.slash_count, "slash lines")
      ->check(CLI::Range(1, 6))
      ->capture_default_str();
  add_length(*command, "--facing", options->wishes.facing_depth, "depth of the self-facing [50.8]");
  command
      ->add_option_function<std::vector<std::string>>(
          "--allowance",
          [options](const std::vector<std::string>& texts) {
            for (const std::string& text : texts) set_allowance(options->wishes.allowances, text);
          },
          "seam allowance of an edge; may be given again")
      ->type_name("EDGE=LENGTH")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  command->add_flag("--full", options->full, "cut full, in single cloth, not on the fold");
  command->add_option("--max-swing", options->max_swing, "most turn of the whole front, degrees")
      ->check(CLI::Range(0.0, 90.0))
      ->capture_default_str();
  add_length(*command, "--cloth-width", options->wishes.cloth_width, "width of the cloth [1500]", 1.0);
  command->add_option("--out", options->out, "folder for front.json, base.json and front.svg")->required();
  command->footer(
      "Lengths: a plain number is mm; 48cm and 19in are understood. Edges: neckline, shoulder, armhole,\n"
      "side-seam, hem, cowl-edge, facing-edge, facing-shoulder.\n"
      "Example: cowlcast draft --base demo --drape 480 --allowance hem=30 --out cowl");
  command->callback([options, &job] {
    job = [options] {
      drafting::Piece base;
      if (options->base == "demo") {
        base = drafting::block_front(drafting::demo_measures());
      } else {
        const std::string text = read_file(options->base, "a base front (SVG or piece file), or say demo");
        const bool is_piece = text.find_first_not_of(" \t\r\n") != std::string::npos &&
                              text[text.find_first_not_of(" \t\r\n")] == '{';
        base = is_piece ? drafting::piece_from_json(text) : drafting::base_front_from_svg(text);
      }
      drafting::CowlWishes wishes = options->wishes;
      wishes.on_fold = !options->full;
      wishes.max_swing = options->max_swing * std::numbers::pi / 180.0;
      const drafting::CowlDraft draft = drafting::draft_cowl_front(base, wishes);
      const std::filesystem::path out(options->out);
      make_folder(out);
      write_file(out / "front.json", drafting::piece_to_json(draft.front));
      write_file(out / "base.json", drafting::piece_to_json(draft.base));
      write_file(out / "front.svg", drafting::piece_to_svg(draft.front));
      std::cout << drafting::summary(draft);
    };
  });
}

}  // namespace cowlcast::projector
