#include <array>
#include <cstdio>
#include <sstream>

#include "calibration/refusal.h"
#include "calibration/table_map/table_map.h"
#include "projector/commands/command.h"
#include "projector/commands/files.h"

namespace cowlcast::projector {
namespace {

std::optional<Eigen::Vector2d> two_numbers(const std::string& line) {
  std::istringstream words(line);
  std::string first, second, more;
  words >> first >> second;
  const auto a = plain_number(first), b = plain_number(second);
  if (!a || !b || words >> more) return std::nullopt;
  return Eigen::Vector2d(*a, *b);
}

void locate(const calibration::TableMap& map, bool from_mat, double height, std::istream& in) {
  std::string line;
  for (int number = 1; std::getline(in, line); ++number) {
    if (line.find_first_not_of(" \t\r") == std::string::npos) continue;
    const std::string where = "Line " + std::to_string(number) + " of the input: ";
    const auto from = two_numbers(line);
    if (!from)
      throw calibration::Refusal(where + "two numbers are needed, " +
                                 (from_mat ? "\"x y\" in mm." : "\"u v\" in pixels.") +
                                 " Correct it; the lines before it are answered.");
    try {
      const auto in_picture = [&map](const Eigen::Vector2d& pixel) {
        return pixel.x() >= -1.0 && pixel.y() >= -1.0 && pixel.x() <= map.width && pixel.y() <= map.height;
      };
      if (!from_mat && !in_picture(*from))
        throw calibration::Refusal("the picture has no such pixel. Give \"u v\" from 0 0 to " +
                                   std::to_string(map.width - 1) + ' ' + std::to_string(map.height - 1) +
                                   '.');
      if (from_mat && !(from->norm() < 1e5))
        throw calibration::Refusal(
            "that is no place on a table. Give \"x y\" in mm from the light's middle.");
      const Eigen::Vector2d to =
          from_mat ? map.projector_from_mat(*from, height) : map.mat_from_projector(*from, height);
      if (from_mat && !in_picture(to))
        throw calibration::Refusal("no pixel of the picture lights that point. The lit " +
                                   lit_box(map, height) + '.');
      std::array<char, 64> text{};
      std::snprintf(text.data(), text.size(), "%.9f %.9f\n", to.x(), to.y());
      std::cout << text.data();
    } catch (const calibration::Refusal& refusal) {
      throw calibration::Refusal(where + refusal.what());
    }
  }
}

}  // namespace

void add_locate(CLI::App& app, Job& job) {
  struct Options {
    std::string table;
    bool from_mat = false;
    double height = 0.0;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("locate", "tell where pixels land on the mat, or the reverse");
  command->add_option("--table", options->table, "table file made by `cowlcast calibrate`")->required();
  command->add_flag("--from-mat", options->from_mat, "read mat points and answer in pixels");
  add_cloth_height(*command, options->height);
  command->footer(
      "Reads \"u v\" a line from standard input, pixels, the centre of the first being 0 0, and answers\n"
      "\"x y\" in mm of the mat, x to the right, y away from you. Empty lines are passed over. A line that\n"
      "is not two numbers, or that the projector cannot reach, ends the work with exit code 3.\n"
      "Example: echo \"960 540\" | cowlcast locate --table table.json --height 1.2");
  command->callback([options, &job] {
    job = [options] {
      const auto map = calibration::TableMap::from_json(
          read_file(options->table, "a table file made by `cowlcast calibrate`"));
      locate(map, options->from_mat, options->height, std::cin);
    };
  });
}

}  // namespace cowlcast::projector
