#include <QApplication>
#include <cstdio>

#include "calibration/refusal.h"
#include "drafting/cowl/cowl_front.h"
#include "projector/commands/base_options.h"
#include "projector/commands/cowl_options.h"
#include "projector/commands/display.h"
#include "projector/commands/files.h"
#include "projector/commands/headless.h"
#include "projector/frame/png.h"
#include "projector/project/drawn_slashes.h"
#include "projector/teaching/window.h"

namespace cowlcast::projector {
namespace {

struct TeachOptions {
  std::shared_ptr<BaseOptions> base = std::make_shared<BaseOptions>();
  std::shared_ptr<CowlOptions> cowl = std::make_shared<CowlOptions>();
  std::string table, screen, pictures;
  PictureSize size{1280, 800};
  double height = 0.0;
};

void write_picture(const std::filesystem::path& path, const LessonView& view, const LessonStage& stage) {
  write_file(path, png_bytes(rendered(stage.map, lesson_marks(view, stage, {}), stage.laying.height)));
}

void write_pictures(const std::filesystem::path& folder, LessonView view, const LessonStage& stage) {
  const Headless qt;
  make_folder(folder);
  view.legend = false;
  for (view.step = 0; view.step < drafting::step_count; ++view.step) {
    view.share = 1.0;
    write_picture(folder / ("step-" + std::to_string(view.step + 1) + ".png"), view, stage);
  }
  view.step = drafting::opening_step_number;
  for (const int percent : {0, 25, 50, 75}) {
    char name[32];
    std::snprintf(name, sizeof name, "opening-%02d.png", percent);
    view.share = 0.01 * percent;
    write_picture(folder / name, view, stage);
  }
  std::cout << "step-1.png to step-" << drafting::step_count
            << ".png and opening-00.png to opening-75.png in " << folder.string() << '\n';
}

void run(const TeachOptions& options) {
  const drafting::Piece base = read_base_front(*options.base);
  LessonView view;
  drafting::CowlWishes wishes = wishes_of(*options.cowl);
  if (!says_slash_lines(*options.cowl)) wishes.slashes = slashes_along(read_slash_lines(*options.base));
  view.draft = drafting::draft_cowl_front(base, wishes);
  require_edges(*options.cowl, {view.draft.front});

  LessonStage stage;
  if (!options.table.empty()) {
    stage = stage_on_table(calibration::TableMap::from_json(
                               read_file(options.table, "a table file made by `cowlcast calibrate`")),
                           view.draft, options.height);
    const double outside = outside_of_light(stage, view.draft);
    if (outside > 0.0) {
      char text[160];
      std::snprintf(
          text, sizeof text,
          "Caution: the lesson is larger than the light, by up to %.0f mm; what lies outside is not "
          "drawn. A smaller drape or base fits.",
          outside);
      std::cerr << text << '\n';
    }
  } else {
    stage = stage_on_screen(options.size.width, options.size.height, view.draft);
  }
  if (!options.pictures.empty()) {
    write_pictures(options.pictures, std::move(view), stage);
    return;
  }
  const auto application = open_display();
  if (options.table.empty()) {
    LessonWindow window(std::move(view), {});
    window.open();
    QApplication::exec();
    return;
  }
  QScreen& screen = projector_screen(options.screen, stage.map.width, stage.map.height);
  LessonWindow window(std::move(view), {}, std::move(stage), screen);
  window.open();
  QApplication::exec();
}

}  // namespace

void add_teach(CLI::App& app, Job& job) {
  const auto options = std::make_shared<TeachOptions>();
  CLI::App* command = app.add_subcommand("teach", "play the draft step by step, on screen or on the table");
  add_base_options(*command, options->base);
  options->cowl->wishes.drape = 480.0;
  add_length(*command, "--drape", options->cowl->wishes.drape,
             "length of the cowl from shoulder seam to shoulder seam [480]", 1.0);
  add_cowl_options(*command, options->cowl);
  CLI::Option* table = command->add_option(
      "--table", options->table, "play it at true size by this table file, on the projector's screen");
  command->add_option("--screen", options->screen, "the projector's screen: its name or number")
      ->needs(table);
  add_length(*command, "--height", options->height, "of the surface above the mat [0]", 0.0, 50.0)
      ->needs(table);
  command->add_option("--pictures", options->pictures,
                      "open no window: write each step as a PNG file into this folder");
  command
      ->add_option_function<std::string>(
          "--picture-size",
          [options](const std::string& text) {
            const auto size = picture_size(text);
            if (!size || size->width < 320 || size->height < 240 || size->width > 8000 || size->height > 8000)
              throw CLI::ValidationError(
                  "--picture-size", "cannot use \"" + text + "\": give pixels from 320x240 to 8000x8000");
            options->size = *size;
          },
          "of those pictures, when no table is given [1280x800]")
      ->type_name("WIDTHxHEIGHT");
  command->footer(
      "Keys: Page Down or N the next step, Page Up back, right and left open and close the parts,\n"
      "space plays the opening, L shows or hides the keys, Escape ends. Without --table the window may have\n"
      "any size and the draft is scaled to fit; nothing is to be cut by it.\n"
      "Example: cowlcast teach --base demo --drape 480 --pictures lesson");
  command->callback([options, &job] {
    check(*options->base);
    job = [options] { run(*options); };
  });
}

}  // namespace cowlcast::projector
