#include "calibration/sheet/sheet.h"
#include "calibration/watch/edge_tags.h"

#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/frame/png.h"

namespace cowlcast::projector {

void add_sheets(CLI::App& app, Job& job) {
  struct Options {
    std::string paper;
    int count = 4;
    bool edge_tags = false;
    std::string out;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("sheets", "make the marker sheets to print and lay on the mat");
  command->add_option("--paper", options->paper, "paper size")
      ->required()
      ->check(CLI::IsMember({"a4", "letter"}, CLI::ignore_case));
  command->add_option("--count", options->count, "how many sheets; four serve most tables")
      ->check(CLI::Range(1, calibration::kMostSheets))
      ->capture_default_str();
  command->add_flag("--edge-tags", options->edge_tags,
                    "also edge-tags.pdf: small tags for the mat's edge, for watching with a fixed camera");
  command->add_option("--out", options->out, "folder for sheets.pdf and sheet-1.png, sheet-2.png, ...")
      ->required();
  command->footer(
      "Print sheets.pdf at 100 % (no fitting to the page). Then measure the two rulers of one sheet with a\n"
      "steel rule, end tick to end tick, to a tenth of a millimetre: `cowlcast calibrate --ruler` wants "
      "both.\n"
      "Example: cowlcast sheets --paper a4 --count 4 --out sheets");
  command->callback([options, &job] {
    job = [options] {
      const auto paper = options->paper == "a4" ? calibration::Paper::a4 : calibration::Paper::letter;
      const std::filesystem::path out(options->out);
      make_folder(out);
      write_file(out / "sheets.pdf", calibration::sheets_pdf(paper, options->count));
      if (options->edge_tags) write_file(out / "edge-tags.pdf", calibration::edge_tags_pdf(paper));
      for (int number = 1; number <= options->count; ++number)
        write_file(out / ("sheet-" + std::to_string(number) + ".png"),
                   png_bytes(calibration::sheet_page(paper, number), 300.0));
      std::cout
          << options->count << (options->count == 1 ? " sheet" : " sheets") << " in "
          << (out / "sheets.pdf").string()
          << ". Print at 100 %, then measure the two rulers (240 mm and 180 mm as designed) to a tenth\n"
             "of a millimetre.\n";
    };
  });
}

}  // namespace cowlcast::projector
