#include <QApplication>

#include "calibration/camera/frame_source.h"
#include "calibration/refusal.h"
#include "calibration/target/target.h"
#include "projector/commands/command.h"
#include "projector/commands/display.h"
#include "projector/commands/files.h"
#include "projector/cutting/window.h"
#include "projector/showing/picture_window.h"
#include "projector/table/live_capture.h"

namespace cowlcast::projector {
namespace {

struct CaptureOptions {
  PictureSize projector, camera_size{1920, 1080};
  std::string screen, camera, photos, show;
  int sides = 2;
  bool fixed = false;
};

// For people who photograph with a phone: the space bar changes between the two pictures.
void show_alone(const CaptureOptions& options) {
  const auto application = open_display();
  const auto [width, height] = options.projector;
  const QImage target = window_picture(calibration::target_picture(width, height)),
               plain = window_picture(calibration::plain_picture(width, height));
  bool shows_target = options.show == "target";
  PictureWindow window(projector_screen(options.screen, width, height), shows_target ? target : plain);
  window.key = [&](int key) {
    if (key != Qt::Key_Space) return;
    shows_target = !shows_target;
    window.show_picture(shows_target ? target : plain);
  };
  std::cout << "Space changes between target and plain light, Escape ends.\n" << std::flush;
  window.open();
  QApplication::exec();
}

void take(const CaptureOptions& options) {
  calibration::CaptureSettings settings;
  settings.width = options.projector.width;
  settings.height = options.projector.height;
  settings.sides = options.sides;
  settings.fixed = options.fixed;
  const std::filesystem::path folder(options.photos);
  make_folder(folder);
  if (!files_ending(folder, {".jpg", ".jpeg", ".png"}).empty())
    throw calibration::Refusal("There are photographs in \"" + options.photos +
                               "\" already, and calibrating uses all of a folder. Give a new folder.");
  LiveCapture capture(settings, options.photos);
  const auto application = open_display();
  const QImage target = window_picture(calibration::target_picture(settings.width, settings.height)),
               plain = window_picture(calibration::plain_picture(settings.width, settings.height));
  PictureWindow window(projector_screen(options.screen, settings.width, settings.height), target);
  calibration::CameraFeed feed(
      {.spec = options.camera, .width = options.camera_size.width, .height = options.camera_size.height});

  const std::string last = show_and_look(window, feed, [&](const calibration::CameraFrame& frame) {
    const LiveCapture::Seen seen = capture.look(frame);
    window.show_picture(seen.step.show == calibration::ShownPicture::target ? target : plain);
    if (capture.done()) window.close();
    if (!seen.taken.empty()) return "Taken: " + seen.taken;
    return seen.step.hints.empty() ? seen.step.say : seen.step.hints.front();
  });
  const std::string taken = std::to_string(capture.files().size());
  if (!capture.done())
    throw calibration::Refusal(capture.files().empty()
                                   ? "No photograph was taken. " + last
                                   : "Only " + taken +
                                         " photographs were taken. Begin again with a new folder.");
  std::cout << taken << " photographs in " << options.photos << ". Now: cowlcast calibrate --photos "
            << options.photos << " ...\n";
}

}  // namespace

void add_capture(CLI::App& app, Job& job) {
  const auto options = std::make_shared<CaptureOptions>();
  CLI::App* command = app.add_subcommand(
      "capture", "show target and plain light, and take the photographs with a live camera");
  add_picture_size(*command, options->projector)->required();
  command->add_option("--screen", options->screen,
                      "the projector's screen: its name or number [the one used last]");
  auto* camera = command->add_option("--camera", options->camera,
                                     "a number such as 0, a device, a film or an address with ://");
  add_camera_size(*command, options->camera_size);
  auto* photos = command->add_option("--photos", options->photos, "new folder for the photographs");
  command->add_option("--sides", options->sides, "sides to photograph from, carrying the camera")
      ->check(CLI::Range(1, 5))
      ->capture_default_str();
  command->add_flag("--fixed", options->fixed, "the camera stands still: one side");
  auto* show = command->add_option("--show", options->show, "only show that picture, for another camera")
                   ->check(CLI::IsMember({"target", "plain"}));
  show->excludes(camera)->excludes(photos);
  camera->needs(photos);
  command->footer(
      "Lay the sheets in the light and hold the camera so that it sees all of it. Photographs are taken by\n"
      "themselves when the view stands still; what is amiss is said here. Escape ends. With --show, space\n"
      "changes between target and plain light while you photograph with something else.\n"
      "Example: cowlcast capture --projector 1920x1080 --screen HDMI-1 --camera 0 --photos photos");
  command->callback([options, &job] {
    if (options->show.empty() && options->camera.empty())
      throw CLI::ValidationError("--camera", "give a camera and --photos, or --show target");
    job = [options] { options->show.empty() ? take(*options) : show_alone(*options); };
  });
}

void add_screens(CLI::App& app, Job& job) {
  CLI::App* command = app.add_subcommand("screens", "list the screens that pictures can be shown on");
  command->footer("Each line: number, name, pixels. Example: cowlcast screens");
  command->callback([&job] {
    job = [] {
      const auto application = open_display();
      int number = 0;
      for (const ScreenSeen& screen : screens_seen())
        std::cout << ++number << ": " << in_words(screen) << '\n';
    };
  });
}

}  // namespace cowlcast::projector
