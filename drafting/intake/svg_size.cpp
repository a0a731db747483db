#include "drafting/intake/svg_size.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <optional>
#include <string>
#include <utility>

#include "drafting/intake/svg_scan.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

// CSS Values and Units, absolute lengths: 96 px, 72 pt and 6 pc to the inch.
constexpr std::array<std::pair<const char*, double>, 7> mm_of_unit = {{{"mm", 1.0},
                                                                       {"cm", 10.0},
                                                                       {"in", 25.4},
                                                                       {"pt", 25.4 / 72.0},
                                                                       {"pc", 25.4 / 6.0},
                                                                       {"px", 25.4 / 96.0},
                                                                       {"", 25.4 / 96.0}}};

constexpr double most_difference = 0.005;  // of the scales across and down

const char* cure = "Set the drawing's width and height in millimetres in the document settings.";

std::optional<double> length_mm(const pugi::xml_node& root, const char* name, bool& in_pixels) {
  const std::string text = root.attribute(name).value();
  if (text.empty() || text == "auto") return std::nullopt;
  Scanner scan(text);
  scan.skip_space();
  double value = 0.0;
  if (!scan.number(value)) {
    throw Refusal("The drawing's " + std::string(name) + " \"" + text + "\" is not a length. " + cure);
  }
  if (scan.peek() == '%') {
    throw Refusal("The drawing's " + std::string(name) + " is given in per cent, which is no real size. " +
                  cure);
  }
  const std::string unit = scan.word();
  scan.skip_space();
  const auto found = std::find_if(mm_of_unit.begin(), mm_of_unit.end(),
                                  [&](const auto& known) { return unit == known.first; });
  if (found == mm_of_unit.end() || !scan.at_end()) {
    throw Refusal("The drawing's " + std::string(name) + " \"" + text +
                  "\" has a unit that is no real length (mm, cm, in, pt, pc or px). " + cure);
  }
  if (!(value > 0.0)) {
    throw Refusal("The drawing's " + std::string(name) + " is not above zero. " + cure);
  }
  in_pixels = in_pixels || unit.empty() || unit == "px";
  return value * found->second;
}

}  // namespace

Eigen::Affine2d mm_from_user_units(const pugi::xml_node& root, std::vector<std::string>& cautions) {
  bool in_pixels = false;
  const auto width = length_mm(root, "width", in_pixels), height = length_mm(root, "height", in_pixels);
  if (!width && !height) throw Refusal(std::string("The drawing has no real size. ") + cure);
  if (in_pixels) {
    cautions.push_back(
        "The drawing's size is in pixels, which are taken as 96 to the inch; some programs write 72 or 90. "
        "Compare the base's size with the printed pattern, or set width and height in mm.");
  }
  const pugi::xml_attribute view = root.attribute("viewBox");
  if (!view) return Eigen::Affine2d(Eigen::Scaling(25.4 / 96.0));
  Scanner scan(view.value());
  std::array<double, 4> box{};
  for (double& value : box) {
    scan.skip_separator();
    if (!scan.number(value)) {
      throw Refusal("The drawing's viewBox is not four numbers. Save the drawing again as plain SVG.");
    }
  }
  scan.skip_space();
  if (!scan.at_end() || !(box[2] > 0.0) || !(box[3] > 0.0)) {
    throw Refusal(
        "The drawing's viewBox is not four numbers with a size above zero. Save it again as plain SVG.");
  }
  double across = width ? *width / box[2] : *height / box[3];
  double down = height ? *height / box[3] : across;
  if (std::abs(across / down - 1.0) > most_difference) {
    char words[200];
    std::snprintf(words, sizeof words,
                  "By its width a unit of the drawing is %.4g mm, by its height %.4g mm, so its true size is "
                  "not certain. ",
                  across, down);
    throw Refusal(std::string(words) + cure + " Its viewBox then needs the same proportions.");
  }
  across = down = std::min(across, down);
  if (!(across > 0.0) || !std::isfinite(across) || !std::isfinite(down)) {
    throw Refusal(std::string("The drawing has no real size. ") + cure);
  }
  Eigen::Affine2d result(Eigen::Scaling(across, down));
  return result * Eigen::Translation2d(-box[0], -box[1]);
}

}  // namespace cowlcast::drafting
