#include <QApplication>

#include "calibration/camera/frame_source.h"
#include "calibration/camera/locate_camera.h"
#include "calibration/refusal.h"
#include "calibration/solve/calibrate.h"
#include "projector/commands/command.h"
#include "projector/commands/display.h"
#include "projector/commands/files.h"
#include "projector/showing/picture_window.h"
#include "projector/table/lens_file.h"
#include "projector/table/live_capture.h"

namespace cowlcast::projector {
namespace {

struct CameraOptions {
  PictureSize size{1280, 720};
  std::string table, screen, camera, photos, out, lens_memory, camera_name;
};

// Photographs that `cowlcast capture --fixed` took: their names tell what was shown.
calibration::LocateRequest from_photographs(const std::string& folder) {
  calibration::LocateRequest out;
  for (const auto& path : files_ending(folder, {".jpg", ".jpeg", ".png"})) {
    const std::string name = path.stem().string();
    for (const auto& [word, frames] :
         {std::pair{"target", &out.target}, std::pair{"plain", &out.plain}, std::pair{"dark", &out.dark}})
      if (name.ends_with(word)) frames->push_back(calibration::load_photograph(path.string()).grey);
  }
  if (out.target.empty() || out.plain.empty())
    throw calibration::Refusal("There are no photographs in \"" + folder +
                               "\" whose names end in target and in plain. Take them with `cowlcast capture "
                               "--fixed`, or name --camera instead.");
  for (const auto* frames : {&out.target, &out.plain, &out.dark})
    for (const cv::Mat& frame : *frames)
      if (frame.size() != out.target.front().size())
        throw calibration::Refusal(
            "The photographs differ in size. Give those of the one camera that stays where it is.");
  return out;
}

// Target, plain light and darkness shown in turn, and frames taken of each while nothing moves.
calibration::LocateRequest from_camera(const CameraOptions& options, const calibration::TableMap& map) {
  const auto application = open_display();
  LiveLocating locating(map);
  PictureWindow window(projector_screen(options.screen, map.width, map.height), locating.picture());
  calibration::CameraFeed feed(
      {.spec = options.camera, .width = options.size.width, .height = options.size.height});
  const std::string last = show_and_look(window, feed, [&](const calibration::CameraFrame& frame) {
    locating.look(frame);
    window.show_picture(locating.picture());
    if (locating.done()) window.close();
    return std::string(locating.disturbed() ? "Something moves. Stand clear of the light."
                                            : "Stand clear of the light for some seconds.");
  });
  if (!locating.done()) throw calibration::Refusal("The camera's place was not found. " + last);
  return locating.request();
}

void run(const CameraOptions& options) {
  const auto map =
      calibration::TableMap::from_json(read_file(options.table, "a table file made by `cowlcast calibrate`"));
  calibration::LocateRequest request =
      options.photos.empty() ? from_camera(options, map) : from_photographs(options.photos);
  const cv::Mat& frame = request.target.front();
  request.lens = calibration::believed_lens(read_lens_memory(lens_memory_path(options.lens_memory)),
                                            options.camera_name, frame.cols, frame.rows);
  const calibration::LocatedCamera found = calibration::locate_camera(map, request);
  write_file(options.out, found.camera.to_json());
  for (const std::string& warning : found.warnings) std::cerr << "Caution: " << warning << '\n';
  std::cout << found.summary;
  if (!options.camera_name.empty())
    std::cout << (request.lens ? "Its lens is remembered by that name.\n"
                               : "No lens is remembered by that name and size; it was found here.\n");
  std::cout << "Written to " << options.out << ".\n";
}

}  // namespace

void add_camera(CLI::App& app, Job& job) {
  const auto options = std::make_shared<CameraOptions>();
  CLI::App* command = app.add_subcommand(
      "camera", "find where a camera stands that stays there, so that it can watch the table");
  command->add_option("--table", options->table, "table file made by `cowlcast calibrate`")->required();
  auto* camera = command->add_option("--camera", options->camera,
                                     "a number such as 0, a device, a film or an address with ://");
  command->add_option("--screen", options->screen,
                      "the projector's screen: its name or number [the one used last]");
  add_camera_size(*command, options->size);
  auto* photos = command->add_option("--photos", options->photos,
                                     "photographs of the target and of plain light that it has taken");
  camera->excludes(photos);
  command->add_option("--out", options->out, "the camera file to write, for example camera.json")->required();
  command->add_option("--camera-name", options->camera_name, "the name its lens is remembered by");
  command->add_option("--lens-memory", options->lens_memory,
                      "file in which lenses are remembered, or none [one in your own data folder]");
  command->footer(
      "Fix the camera so that it sees the whole light and the edge of the mat, glue the edge tags\n"
      "(`cowlcast sheets --edge-tags`) around that edge, and do this right after calibrating, the sheets "
      "still\n"
      "lying there. Target, plain light and darkness are shown in turn; stand clear. The result is checked\n"
      "against corners that were left out, and refused with the reason when it does not hold.\n"
      "Example: cowlcast camera --table table.json --camera 0 --screen HDMI-1 --out camera.json");
  command->callback([options, &job] {
    if (options->camera.empty() && options->photos.empty())
      throw CLI::ValidationError("camera", "give --camera, or --photos that it has taken");
    job = [options] { run(*options); };
  });
}

}  // namespace cowlcast::projector
