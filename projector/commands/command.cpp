#include "projector/commands/command.h"
#include "calibration/refusal.h"
#include "projector/commands/files.h"

#include <cstdio>

#include "projector/frame/render.h"

namespace cowlcast::projector {
namespace {

[[noreturn]] void wrong(const std::string& name, const std::string& text, const std::string& wanted) {
  throw CLI::ValidationError(name, "cannot use \"" + text + "\": give " + wanted);
}

}  // namespace

CLI::Option* add_length(CLI::App& command, const std::string& name, double& mm, const std::string& help,
                        double at_least) {
  const auto read = [name, &mm, at_least](const std::string& text) {
    const auto value = length_mm(text);
    if (!value) wrong(name, text, "a length such as 480, 48cm or 19in (a plain number is mm)");
    if (*value < at_least) wrong(name, text, "a length of " + std::to_string(at_least) + " mm or more");
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
    size = *value;
  };
  return command
      .add_option_function<std::string>("--projector", read,
                                        "the projector's own picture, pixels, for example 1920x1080")
      ->type_name("WIDTHxHEIGHT");
}

CLI::Option* add_colour(CLI::App& command, const std::string& name, unsigned& colour,
                        const std::string& help) {
  const auto read = [name, &colour](const std::string& text) {
    const auto value = colour_value(text);
    if (!value)
      wrong(name, text, "a colour such as #1b2a4a, or black, white, grey, red, navy, green, yellow");
    colour = *value;
  };
  return command.add_option_function<std::string>(name, read, help)->type_name("COLOUR");
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

void check_cloth(double height) {
  constexpr double kThickest = 50.0;  // mm
  if (height > kThickest)
    throw calibration::Refusal(
        "Cloth 50 mm thick is the most that lines are drawn on. Give --height the thickness of "
        "the cloth as it lies, all layers together.");
}

}  // namespace cowlcast::projector
