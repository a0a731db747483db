#include "drafting/export/piece_svg.h"
#include "drafting/export/summary.h"
#include "projector/commands/cowl_options.h"
#include "projector/commands/files.h"

namespace cowlcast::projector {

void add_draft(CLI::App& app, Job& job) {
  struct Options {
    std::string base, out;
    std::shared_ptr<CowlOptions> cowl = std::make_shared<CowlOptions>();
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("draft", "draft a draped cowl front from a base front");
  command
      ->add_option("--base", options->base,
                   "base front: a piece file (.json), an SVG drawing with named edges, or the word demo")
      ->required();
  add_length(*command, "--drape", options->cowl->wishes.drape,
             "length of the cowl from shoulder seam to shoulder seam", 1.0)
      ->required();
  add_cowl_options(*command, options->cowl);
  command->add_option("--out", options->out, "folder for front.json, base.json and front.svg")->required();
  command->footer(
      "Lengths: a plain number is mm; 48cm and 19in are understood. Edges: neckline, shoulder, armhole,\n"
      "side-seam, hem, cowl-edge, facing-edge, facing-shoulder.\n"
      "Example: cowlcast draft --base demo --drape 480 --allowance hem=30 --out cowl");
  command->callback([options, &job] {
    job = [options] {
      const drafting::CowlDraft draft =
          drafting::draft_cowl_front(read_base_front(options->base), wishes_of(*options->cowl));
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
