// cowlcast: the one program. See `command.h` for how a command is made.
#include <exception>
#include <new>

#include "calibration/refusal.h"
#include "drafting/refusal.h"
#include "projector/commands/command.h"
#include "projector/commands/display.h"
#include "projector/commands/files.h"
#include "projector/project/project_file.h"

namespace {

int failed(int code, const std::string& message) {
  std::cerr << "cowlcast: " << message << '\n';
  return code;
}

}  // namespace

int main(int argc, char** argv) {
  using namespace cowlcast;
  CLI::App app(
      "Drafts a draped cowl front and projects its cutting lines, in true size, onto the cloth.\n"
      "Without a command its window opens; `cowlcast NAME.cowlcast` opens that project in it.\n"
      "Lengths are mm unless a unit is written: 480, 48cm, 19in. Angles are degrees, anticlockwise.",
      "cowlcast");
  app.require_subcommand(1);
  app.set_version_flag("--version", COWLCAST_VERSION);
  app.footer(
      "Exit codes: 0 done, 2 wrong usage, 3 refused with a reason, 1 anything else.\n"
      "`cowlcast COMMAND --help` tells more. New here? Try: cowlcast demo --out demo");
  projector::Job job;
  projector::add_sheets(app, job);
  projector::add_targets(app, job);
  projector::add_screens(app, job);
  projector::add_capture(app, job);
  projector::add_calibrate(app, job);
  projector::add_camera(app, job);
  projector::add_check(app, job);
  projector::add_locate(app, job);
  projector::add_draft(app, job);
  projector::add_top(app, job);
  projector::add_teach(app, job);
  projector::add_frame(app, job);
  projector::add_cast(app, job);
  projector::add_demo(app, job);
  try {
    if (argc == 1 && projector::has_display()) {
      job = [] { projector::open_workbench(); };
    } else if (argc == 2 && QString::fromLocal8Bit(argv[1]).endsWith(projector::kProjectEnding)) {
      job = [file = std::string(argv[1])] { projector::open_workbench(file); };
    } else {
      app.parse(argc, argv);
    }
  } catch (const CLI::Success& answer) {  // --help, --version
    return app.exit(answer);
  } catch (const CLI::ParseError& error) {
    const auto chosen = app.get_subcommands();
    if (chosen.empty() && argc > 1)
      return failed(2, "There is no command \"" + std::string(argv[1]) + "\". `cowlcast --help` lists them.");
    const std::string command = chosen.empty() ? "" : " " + chosen.front()->get_name();
    std::string reason = error.what();
    while (reason.ends_with('.')) reason.pop_back();
    if (argc == 1) reason += ", since there is no screen here to open the window on";
    return failed(2, reason + ". See: cowlcast" + command + " --help");
  }
  try {
    job();
    std::cout.flush();
    if (!std::cout) return failed(1, "The answer could not be written out. Check where the output goes.");
    return 0;
  } catch (const calibration::Refusal& refusal) {
    return failed(3, refusal.what());
  } catch (const drafting::Refusal& refusal) {
    return failed(3, refusal.what());
  } catch (const projector::FileError& error) {
    return failed(1, error.what());
  } catch (const std::bad_alloc&) {
    return failed(1, "There is not enough memory for this. Close other programs or use smaller pictures.");
  } catch (const std::exception& error) {
    return failed(1, error.what());
  }
}
