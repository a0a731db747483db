#include "calibration/solve/calibrate.h"

#include <cmath>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "projector/commands/command.h"
#include "projector/commands/files.h"
#include "projector/commands/headless.h"
#include "projector/frame/png.h"
#include "projector/table/calibration_job.h"
#include "projector/table/error_picture.h"
#include "projector/table/lens_file.h"

namespace cowlcast::projector {
namespace {

calibration::Rulers rulers_from(const std::string& text) {
  const std::vector<std::string> parts = parts_of(text, ',');
  const auto across = length_mm(parts.front()), down = length_mm(parts.back());
  if (parts.size() != 2 || !across || !down || *across <= 0.0 || *down <= 0.0)
    throw CLI::ValidationError("--ruler", "cannot use \"" + text +
                                              "\": give what the 240 mm and the 180 mm ruler measure, "
                                              "for example 239.4,179.7");
  return {*across, *down};
}

calibration::Span span_from(const std::string& text) {
  std::vector<std::string> parts = parts_of(text, ',');
  const bool three = parts.size() == 3;
  parts.resize(3);
  const auto from = plain_number(parts[0]), to = plain_number(parts[1]), mm = length_mm(parts[2]);
  const auto is_sheet = [](double value) {
    return value >= 1.0 && value <= calibration::kMostSheets && value == std::floor(value);
  };
  if (!three || !from || !to || !mm || !is_sheet(*from) || !is_sheet(*to) || *mm <= 0.0)
    throw CLI::ValidationError("--span", "cannot use \"" + text +
                                             "\": give two sheet numbers and the length between their "
                                             "centre crosses, for example 1,4,912.5");
  return {static_cast<int>(*from), static_cast<int>(*to), *mm};
}

calibration::RaisedSheet raised_from(const std::string& text) {
  std::vector<std::string> parts = parts_of(text, ',');
  const bool two = parts.size() == 2;
  parts.resize(2);
  const auto sheet = plain_number(parts[0]), mm = length_mm(parts[1]);
  if (!two || !sheet || !mm || !(*sheet >= 1.0 && *sheet <= calibration::kMostSheets) ||
      *sheet != std::floor(*sheet) || *mm <= 0.0)
    throw CLI::ValidationError("--raised",
                               "cannot use \"" + text +
                                   "\": give the number of the sheet that lies on a board and the "
                                   "board's thickness, for example 5,22");
  return {static_cast<int>(*sheet), *mm};
}

}  // namespace

void add_calibrate(CLI::App& app, Job& job) {
  struct Options {
    PictureSize projector;
    std::string photos, out, error_map, lens_memory, camera_name;
    std::optional<calibration::Rulers> rulers;
    std::vector<calibration::Span> spans;
    std::optional<calibration::RaisedSheet> raised;
    std::optional<double> lamp_height;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      app.add_subcommand("calibrate", "work out from photographs where every projector pixel lands");
  add_picture_size(*command, options->projector)->required();
  command->add_option("--photos", options->photos, "folder of JPEG and PNG photographs; all are used")
      ->required();
  command
      ->add_option_function<std::string>(
          "--ruler", [options](const std::string& text) { options->rulers = rulers_from(text); },
          "what the 240 mm and the 180 mm ruler of a printed sheet really measure, mm")
      ->type_name("ACROSS,DOWN");
  command
      ->add_option_function<std::vector<std::string>>(
          "--span",
          [options](const std::vector<std::string>& texts) {
            for (const std::string& text : texts) options->spans.push_back(span_from(text));
          },
          "tape length between the centre crosses of two sheets, mm; may be given again")
      ->type_name("A,B,MM")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  command
      ->add_option_function<std::string>(
          "--raised", [options](const std::string& text) { options->raised = raised_from(text); },
          "one more sheet lies on a board this thick: for lines true on thick cloth")
      ->type_name("SHEET,MM");
  command
      ->add_option_function<std::string>(
          "--lamp-height",
          [options](const std::string& text) {
            options->lamp_height = length_mm(text);
            if (!options->lamp_height)
              throw CLI::ValidationError(
                  "--lamp-height", "cannot use \"" + text + "\": give a length, for example 1450 or 57in");
          },
          "from the mat straight up to the middle of the projector's lens, by tape; for thick cloth")
      ->type_name("LENGTH");
  command->add_option("--out", options->out, "the table file to write, for example table.json")->required();
  command->add_option("--lens-memory", options->lens_memory,
                      "file in which lenses are remembered, or none [one in your own data folder]");
  command->add_option("--camera-name", options->camera_name,
                      "the camera, for photographs that do not tell it themselves");
  command->add_option("--error-map", options->error_map,
                      "a picture to write, for example error.png: how wrong a line may be, over the table");
  command->footer(
      "Lay the sheets flat on the mat, well spread over the lit area. Photograph the whole table at\n"
      "least once under target.png and once under plain.png; two or three of each are better. Nothing\n"
      "may move in between. The result is right within its stated error, or refused with the reason.\n"
      "Example: cowlcast calibrate --projector 1920x1080 --photos photos --ruler 239.4,179.7 --out "
      "table.json");
  command->callback([options, &job] {
    job = [options] {
      for (const std::string& file : {options->out, options->error_map})
        if (!file.empty()) expect_room_for(file);
      CalibrationJob work;
      for (const auto& path : files_ending(options->photos, {".jpg", ".jpeg", ".png"}))
        work.files.push_back(path.string());
      if (work.files.empty())
        throw calibration::Refusal("There is no JPEG or PNG file in \"" + options->photos +
                                   "\". Put the photographs of the table there.");
      work.camera_name = options->camera_name;
      work.lens_memory = lens_memory_path(options->lens_memory);
      work.request.width = options->projector.width;
      work.request.height = options->projector.height;
      work.request.rulers = options->rulers;
      work.request.spans = options->spans;
      work.request.raised = options->raised;
      work.request.lamp_height = options->lamp_height;
      const CalibrationOutcome outcome = calibrated(work);
      const calibration::CalibrationReport& report = outcome.report;
      write_file(options->out, report.map.to_json());
      for (const std::string& caution : outcome.cautions) std::cerr << "Caution: " << caution << '\n';
      std::cout << report.summary;
      if (!report.summary.ends_with('\n')) std::cout << '\n';
      std::cout << "Written to " << options->out << ".\n";
      if (!options->error_map.empty()) {
        const Headless headless;
        write_file(options->error_map, png_bytes(error_picture(report.map)));
        std::cout << "How wrong a line may be is drawn in " << options->error_map << ".\n";
      }
    };
  });
}

}  // namespace cowlcast::projector
