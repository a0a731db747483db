#include "drafting/export/piece_svg.h"
#include "drafting/export/summary.h"
#include "projector/commands/base_options.h"
#include "projector/commands/cowl_options.h"
#include "projector/commands/files.h"
#include "projector/project/drawn_slashes.h"

namespace cowlcast::projector {

void add_draft(CLI::App& app, Job& job) {
  struct Options {
    std::shared_ptr<BaseOptions> base = std::make_shared<BaseOptions>();
    std::shared_ptr<CowlOptions> cowl = std::make_shared<CowlOptions>();
    std::string out;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("draft", "draft a draped cowl front from a base front");
  add_base_options(*command, options->base);
  add_length(*command, "--drape", options->cowl->wishes.drape,
             "length of the cowl from shoulder seam to shoulder seam", 1.0)
      ->required();
  add_cowl_options(*command, options->cowl);
  command->add_option("--out", options->out, "folder for front.json, base.json and front.svg")->required();
  command->footer(
      "Lengths: a plain number is mm; 48cm and 19in are understood. Edges that can have an allowance, where\n"
      "a piece has them: " +
      edges_with_allowance() +
      ".\nExample: cowlcast draft --base demo --drape 480 --allowance hem=30 --out cowl");
  command->callback([options, &job] {
    check(*options->base);
    job = [options] {
      const drafting::Piece base = read_base_front(*options->base);
      drafting::CowlWishes wishes = wishes_of(*options->cowl);
      if (!says_slash_lines(*options->cowl)) wishes.slashes = slashes_along(read_slash_lines(*options->base));
      const drafting::CowlDraft draft = drafting::draft_cowl_front(base, wishes);
      require_edges(*options->cowl, {draft.front});
      const std::filesystem::path out(options->out);
      make_folder(out);
      write_file(out / "front.json", drafting::piece_to_json(draft.front));
      write_file(out / "base.json", drafting::piece_to_json(draft.base));
      write_file(out / "front.svg", drafting::piece_to_svg(draft.front));
      std::cout << drafting::summary(draft) << "written             front.json, base.json and front.svg in "
                << out.string() << '\n';
    };
  });
}

}  // namespace cowlcast::projector
