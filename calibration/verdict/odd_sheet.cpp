#include "calibration/verdict/odd_sheet.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <opencv2/core/utility.hpp>
#include <vector>

#include "calibration/refusal.h"
#include "calibration/solve/fit.h"
#include "calibration/solve/plane_pose.h"
#include "calibration/solve/start.h"

namespace cowlcast::calibration {
namespace {

constexpr double kFits = 0.35;         // pixels: four sightings in five nearer than this fit together
constexpr double kFarBetter = 0.4;     // of the miss that may be left without the guilty sheet
constexpr double kMoved = 1.0;         // mm from one photograph to another
constexpr double kOtherScale = 0.003;  // relative
constexpr double kArm = 120.0;         // mm: a turn counts by what it does at a sheet's ends
constexpr size_t kFewestSheets = 3;    // of two sheets nobody can tell which is to blame

// What four sightings in five are nearer than, pixels.
double typical_miss(const Scene& scene) {
  std::vector<double> misses = paper_residuals(scene);
  if (misses.empty()) return 0.0;
  const auto at = misses.begin() + static_cast<std::ptrdiff_t>(misses.size() * 4 / 5);
  std::nth_element(misses.begin(), at, misses.end());
  return *at;
}

// Where one photograph has a sheet, by the rest of the scene.
struct Sight {
  int photo = 0;
  Eigen::Vector3d place = Eigen::Vector3d::Zero();  // mm, mm, radians
  double scale = 1.0;                               // printed size over that of the other sheets
  double uneven = 0.0;                              // mm: largest distance from a flat sheet
};

std::optional<Sight> sight_of(const Scene& rest, const std::vector<PaperSighting>& sightings, int photo) {
  std::vector<Eigen::Vector2d> printed, mat;
  for (const PaperSighting& s : sightings) {
    if (s.photo != photo) continue;
    printed.push_back(s.printed.cwiseProduct(
        Eigen::Vector2d(std::exp(rest.print_scale[0]), std::exp(rest.print_scale[1]))));
    mat.push_back(rest.mat_from_photo(photo, s.pixel, kPaperThickness));
  }
  if (printed.size() < 6) return std::nullopt;
  const auto [x, y, turn] = slide_and_turn(printed, mat);
  Sight out{photo, {x, y, turn}, 1.0, 0.0};
  Eigen::Vector2d printed_mean = Eigen::Vector2d::Zero(), mat_mean = Eigen::Vector2d::Zero();
  const double share = 1.0 / static_cast<double>(printed.size());
  for (size_t i = 0; i < printed.size(); ++i) {
    printed_mean += share * printed[i];
    mat_mean += share * mat[i];
  }
  double along = 0.0, square = 0.0;
  const Eigen::Rotation2Dd rotate(turn);
  for (size_t i = 0; i < printed.size(); ++i) {
    const Eigen::Vector2d arm = printed[i] - printed_mean;
    along += (rotate * arm).dot(mat[i] - mat_mean);
    square += arm.squaredNorm();
  }
  out.scale = along / square;
  for (size_t i = 0; i < printed.size(); ++i)
    out.uneven =
        std::max(out.uneven, (mat[i] - mat_mean - out.scale * (rotate * (printed[i] - printed_mean))).norm());
  return out;
}

Finding explained(const Scene& rest, int sheet, const std::vector<PaperSighting>& sightings) {
  std::vector<Sight> sights;
  for (int photo = 0; photo < static_cast<int>(rest.photos.size()); ++photo)
    if (const auto sight = sight_of(rest, sightings, photo)) sights.push_back(*sight);
  Finding moved{Oddity::sheet_moved, sheet, -1, 0.0, {}};
  double most = 0.0, scale = 0.0, uneven = 0.0;
  for (const Sight& a : sights) {
    double sum = 0.0;  // of its distances from the other photographs' places: the odd one out has the largest
    for (const Sight& b : sights) {
      const double apart =
          std::hypot((a.place - b.place).head<2>().norm(),
                     kArm * std::remainder(a.place.z() - b.place.z(), 2.0 * std::numbers::pi));
      sum += apart;
      moved.size = std::max(moved.size, apart);
    }
    if (sum > most) {
      most = sum;
      moved.photo = a.photo;
    }
    scale += (a.scale - 1.0) / static_cast<double>(sights.size());
    uneven = std::max(uneven, a.uneven);
  }
  if (moved.size > kMoved) return moved;
  if (std::abs(scale) > kOtherScale) return {Oddity::sheet_scale, sheet, -1, scale, {}};
  return {Oddity::sheet_curled, sheet, -1, uneven, {}};
}

}  // namespace

std::optional<Finding> find_odd_sheet(const Scene& scene) {
  const double all = typical_miss(scene);
  if (scene.sheets.size() < kFewestSheets || all < kFits) return std::nullopt;
  const int count = static_cast<int>(scene.sheets.size());
  std::vector<Scene> without(static_cast<size_t>(count), scene);
  std::vector<double> misses(static_cast<size_t>(count), all);
  cv::parallel_for_({0, count}, [&](const cv::Range& range) {
    for (int sheet = range.start; sheet < range.end; ++sheet) {
      Scene& rest = without[static_cast<size_t>(sheet)];
      std::erase_if(rest.paper, [&](const PaperSighting& s) { return s.sheet == sheet; });
      settle_paper(rest);
      settle_paper(rest);  // begun far off, the lens takes its time
      if (!rest.paper.empty()) misses[static_cast<size_t>(sheet)] = typical_miss(rest);
    }
  });
  const int guilty = static_cast<int>(std::min_element(misses.begin(), misses.end()) - misses.begin());
  if (misses[static_cast<size_t>(guilty)] > kFarBetter * all) return std::nullopt;
  std::vector<PaperSighting> own;
  for (const PaperSighting& s : scene.paper)
    if (s.sheet == guilty) own.push_back(s);
  try {
    return explained(without[static_cast<size_t>(guilty)], guilty, own);
  } catch (const Refusal&) {  // a line of sight that misses the table
    return std::nullopt;
  }
}

}  // namespace cowlcast::calibration
