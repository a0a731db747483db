#include "calibration/table_map/sound.h"

#include <algorithm>
#include <cmath>

#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

constexpr int kMostPixels = 99'999;       // a side of the picture
constexpr double kMostLit = 20'000.0;     // mm from the middle of the light: beyond any table
constexpr double kMostHeight = 20'000.0;  // mm: of a lens above the mat
constexpr double kMostError = 1000.0;     // mm, and mm for each of cloth
constexpr double kMostRelative = 1.0;     // of a relative standard deviation
constexpr double kSamePixel = 0.05;       // pixels; files keep numbers whole
constexpr double kSameCorner = 0.05;      // mm

[[noreturn]] void damaged(const char* what) {
  throw Refusal(std::string("The table file was changed or damaged: ") + what +
                ". Calibrate anew, or use a copy of the file from before.");
}

bool between(double value, double least, double most) {
  return value >= least && value <= most;  // false for what is no number
}

bool sizes_sound(const TableMap& map) {
  const auto nodes =
      static_cast<size_t>(std::max(0, map.error.columns)) * static_cast<size_t>(std::max(0, map.error.rows));
  return between(map.width, 1, kMostPixels) && between(map.height, 1, kMostPixels) && nodes > 0 &&
         between(map.error.step, 1e-3, kMostLit) && map.error.first.allFinite() &&
         map.error.mm95.size() == nodes &&
         (map.error.mm95_per_mm.empty() || map.error.mm95_per_mm.size() == nodes);
}

bool errors_sound(const TableMap& map) {
  const auto is_error = [](double value) { return between(value, 0.0, kMostError); };
  return std::all_of(map.error.mm95.begin(), map.error.mm95.end(), is_error) &&
         std::all_of(map.error.mm95_per_mm.begin(), map.error.mm95_per_mm.end(), is_error) &&
         between(map.scale.relative_sigma, 0.0, kMostRelative) && between(map.lamp_sigma, 0.0, kMostRelative);
}

// How far a pixel lies from the picture's outermost edge.
double from_border(const TableMap& map, const Eigen::Vector2d& pixel) {
  const Eigen::Vector2d half(0.5 * map.width, 0.5 * map.height);
  const Eigen::Vector2d beyond = (pixel + Eigen::Vector2d(0.5, 0.5) - half).cwiseAbs() - half;
  return std::hypot(std::max(0.0, beyond.x()), std::max(0.0, beyond.y())) +
         std::abs(std::min(0.0, beyond.maxCoeff()));
}

bool outline_sound(const TableMap& map) {
  try {
    for (const Eigen::Vector2d& p : map.lit_area)
      if (!(p.norm() < kMostLit) || !(from_border(map, map.projector_from_mat(p)) < kSamePixel)) return false;
    const double right = map.width - 0.5, low = map.height - 0.5;
    for (const Eigen::Vector2d& pixel : {Eigen::Vector2d(-0.5, low), Eigen::Vector2d(right, low),
                                         Eigen::Vector2d(right, -0.5), Eigen::Vector2d(-0.5, -0.5)}) {
      const Eigen::Vector2d corner = map.mat_from_projector(pixel);
      if (std::none_of(map.lit_area.begin(), map.lit_area.end(),
                       [&](const Eigen::Vector2d& p) { return (p - corner).norm() < kSameCorner; }))
        return false;
    }
    return true;
  } catch (const Refusal&) {  // light that the lens cannot throw
    return false;
  }
}

}  // namespace

void refuse_unsound(const TableMap& map) {
  if (!sizes_sound(map)) damaged("its sizes do not go together");
  if (!errors_sound(map)) damaged("it states errors that cannot be");
  if (!between(map.scale.across, 0.5, 2.0) || !between(map.scale.down, 0.5, 2.0) || map.revision < 0)
    damaged("it states a scale that no print has");
  if (!between(map.lamp().z(), 1.0, kMostHeight)) damaged("its lens is not above the table");
  if (!outline_sound(map)) damaged("the light's outline is not where lens and picture say");
}

}  // namespace cowlcast::calibration
