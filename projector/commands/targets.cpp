#include "calibration/target/target.h"

#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/frame/png.h"

namespace cowlcast::projector {

void add_targets(CLI::App& app, Job& job) {
  struct Options {
    PictureSize projector;
    std::string out;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("targets", "make the two pictures to project while photographing");
  add_picture_size(*command, options->projector)->required();
  command->add_option("--out", options->out, "folder for target.png and plain.png")->required();
  command->footer(
      "Show them full screen, one pixel to a pixel: no scaling, no keystone correction.\n"
      "Example: cowlcast targets --projector 1920x1080 --out targets");
  command->callback([options, &job] {
    job = [options] {
      const auto [width, height] = options->projector;
      const std::string target = png_bytes(calibration::target_picture(width, height));
      const std::string plain = png_bytes(calibration::plain_picture(width, height));
      const std::filesystem::path out(options->out);
      make_folder(out);
      write_file(out / "target.png", target);
      write_file(out / "plain.png", plain);
      std::cout << "target.png and plain.png, " << width << " x " << height << ", in " << out.string()
                << ". Show each full screen and photograph the whole table under it.\n";
    };
  });
}

}  // namespace cowlcast::projector
