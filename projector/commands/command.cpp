#include "projector/commands/command.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "calibration/refusal.h"
#include "calibration/target/target.h"
#include "projector/commands/files.h"
#include "projector/frame/render.h"
#include "projector/frame/style.h"
#include "projector/table/slant_trouble.h"

namespace cowlcast::projector {
namespace {

[[noreturn]] void wrong(const std::string& name, const std::string& text, const std::string& wanted) {
  throw CLI::ValidationError(name, "cannot use \"" + text + "\": give " + wanted);
}

std::string plainly(double mm) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4g", mm);
  return text;
}

}  // namespace

CLI::Option* add_length(CLI::App& command, const std::string& name, double& mm, const std::string& help,
                        double at_least, double at_most) {
  const auto read = [name, &mm, at_least, at_most](const std::string& text) {
    const auto value = length_mm(text);
    if (!value) wrong(name, text, "a length such as 480, 48cm or 19in (a plain number is mm)");
    if (!(*value >= at_least && *value <= at_most))
      wrong(name, text,
            std::isfinite(at_most) ? "a length from " + plainly(at_least) + " to " + plainly(at_most) + " mm"
                                   : "a length of " + plainly(at_least) + " mm or more");
    mm = *value;
  };
  return command.add_option_function<std::string>(name, read, help)->type_name("LENGTH");
}

CLI::Option* add_place(CLI::App& command, const std::string& name, PlaceOption& place,
                       const std::string& help) {
  const auto read = [name, &place](const std::string& text) {
    const std::vector<std::string> parts = parts_of(text, ',');
    const char* const wanted = "X,Y,DEGREES, for example -200,-310,12";
    if (parts.size() != 3) wrong(name, text, wanted);
    const auto x = length_mm(parts[0]), y = length_mm(parts[1]), angle = angle_radians(parts[2]);
    if (!x || !y || !angle) wrong(name, text, wanted);
    place = {*x, *y, *angle};
  };
  return command.add_option_function<std::string>(name, read, help)->type_name("X,Y,DEGREES");
}

CLI::Option* add_picture_size(CLI::App& command, PictureSize& size) {
  const auto read = [&size](const std::string& text) {
    const auto value = picture_size(text);
    if (!value) wrong("--projector", text, "the picture's width and height in pixels, for example 1920x1080");
    try {
      calibration::target_layout(value->width, value->height);
    } catch (const calibration::Refusal& refusal) {
      throw CLI::ValidationError("--projector", refusal.what());
    }
    size = *value;
  };
  return command
      .add_option_function<std::string>("--projector", read,
                                        "the projector's own picture, pixels, for example 1920x1080")
      ->type_name("WIDTHxHEIGHT");
}

CLI::Option* add_camera_size(CLI::App& command, PictureSize& size) {
  const auto read = [&size](const std::string& text) {
    const auto value = picture_size(text);
    if (!value) wrong("--camera-size", text, "width and height in pixels, for example 1280x720");
    size = *value;
  };
  return command
      .add_option_function<std::string>("--camera-size", read,
                                        "pixels to ask the camera for [" + std::to_string(size.width) + "x" +
                                            std::to_string(size.height) + "]")
      ->type_name("WIDTHxHEIGHT");
}

CLI::Option* add_cloth_height(CLI::App& command, double& mm) {
  return add_length(command, "--height", mm,
                    "of the cloth's upper face above the mat: its thickness as it lies, all layers [0]", 0.0,
                    50.0);
}

void add_work_options(CLI::App& command, WorkOptions& options) {
  const auto read = [&options](const std::string& text) {
    options.cloth.clear();
    for (const std::string& part : parts_of(text, ',')) {
      const auto value = colour_value(part);
      if (!value)
        wrong(
            "--cloth", text,
            "a colour such as #1b2a4a, or black, white, grey, red, navy, green, yellow; for patterned cloth "
            "its colours with commas between, such as navy,white");
      options.cloth.push_back(*value);
    }
  };
  command
      .add_option_function<std::string>(
          "--cloth", read,
          "colour of the cloth, or its colours where it is patterned, to choose the lights by [grey]")
      ->type_name("COLOUR[,COLOUR]");
  command.add_flag("--mirrored", options.mirrored, "lay the piece face down");
  add_length(command, "--blade", options.blade, "diameter of the round blade [45]", 10.0, 100.0);
  add_length(command, "--band", options.band, "width of the keep-out band for the other hand [60]", 10.0,
             300.0);
  command.add_option("--hand", options.hand, "the hand that holds the blade")
      ->check(CLI::IsMember({"right", "left"}, CLI::ignore_case))
      ->capture_default_str();
}

Blade blade_for(const WorkOptions& options, double height) {
  Blade blade{.diameter = options.blade};
  blade.cloth = std::max(blade.cloth, height);
  return blade;
}

std::string dim_room_advice(const std::vector<unsigned>& cloth) {
  if (!wants_dim_room(style_for_cloth(cloth), cloth)) return "";
  return "Dim the room: cloth this dark sends back so little light that lines are hard to see by day or "
         "lamp light.";
}

std::string thick_cloth_caution(const calibration::TableMap& map, const Polyline& places, double height) {
  const auto trouble = slant_trouble(map, places, height);
  if (!trouble) return {};
  char text[320];
  std::snprintf(
      text, sizeof text,
      "Caution: on cloth %.1f mm high lines may be off by up to %.2f mm, since it is little known how the "
      "light slants. Measure the height of the projector's lens over the mat and calibrate again with "
      "--lamp-height, or with one more sheet on a board (--raised).",
      height, *trouble);
  return text;
}

std::string lit_box(const calibration::TableMap& map, double height) {
  const Polyline outline = lit_outline(map, height);
  Point low = outline.front(), high = outline.front();
  for (const Point& point : outline) {
    low = low.cwiseMin(point);
    high = high.cwiseMax(point);
  }
  char text[160];
  std::snprintf(text, sizeof text, "area reaches from x %.0f to %.0f mm and y %.0f to %.0f mm", low.x(),
                high.x(), low.y(), high.y());
  return text;
}

drafting::Piece read_piece(const std::string& path) {
  drafting::Piece piece = drafting::piece_from_json(read_file(path, "a piece file made by `cowlcast draft`"));
  return piece.mirror ? drafting::unfolded(piece) : piece;
}

}  // namespace cowlcast::projector
