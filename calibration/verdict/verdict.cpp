#include "calibration/verdict/verdict.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kMostStrays = 0.35;    // share of sightings that may be thrown out
constexpr double kMostPaperMiss = 0.8;  // pixels
constexpr double kMostLightMiss = 0.6;  // mm on the mat
constexpr double kMostBySlant = 0.25;   // mm, of what the slant alone makes on cloth

template <typename Sighting>
double stray_share(const std::vector<Sighting>& sightings) {
  const auto strays =
      std::count_if(sightings.begin(), sightings.end(), [](const Sighting& s) { return !s.used; });
  return sightings.empty() ? 0.0 : static_cast<double>(strays) / static_cast<double>(sightings.size());
}

template <typename Sighting>
double miss(const std::vector<Sighting>& sightings, const std::vector<double>& residuals) {
  double sum = 0.0;
  size_t count = 0;
  for (size_t i = 0; i < sightings.size(); ++i) {
    if (!sightings[i].used) continue;
    sum += residuals[i] * residuals[i];
    ++count;
  }
  return count == 0 ? 0.0 : std::sqrt(sum / static_cast<double>(count));
}

// Millimetres of mat to a pixel of the photographs, about the first sheet.
double mm_per_pixel(const Scene& scene) {
  const Eigen::Vector2d here = scene.mat_from_sheet(0, {0, 0}), there = scene.mat_from_sheet(0, {10, 0});
  for (size_t i = 0; i < scene.photos.size(); ++i) {
    const auto a = scene.photo_from_mat(static_cast<int>(i), here),
               b = scene.photo_from_mat(static_cast<int>(i), there);
    if (a && b) return (there - here).norm() / (*a - *b).norm();
  }
  return 1.0;
}

// "left third" and the like when all sheets lie to one side of the light, and the side to lay another at.
std::optional<std::pair<std::string, std::string>> one_side(const Scene& scene, const TableMap& map) {
  const Eigen::Isometry3d map_from_working =
      map.projector_from_mat_frame.inverse() * scene.projector_from_mat.transform();
  Eigen::AlignedBox2d lit, sheets;
  for (const Eigen::Vector2d& p : map.lit_area) lit.extend(p);
  for (size_t i = 0; i < scene.sheets.size(); ++i) {
    const SheetLayout layout = sheet_layout(scene.sheets[i].paper);
    for (const int corner :
         {0, layout.columns - 2, layout.corner_count() - layout.columns + 1, layout.corner_count() - 1}) {
      const Eigen::Vector2d mat = scene.mat_from_sheet(static_cast<int>(i), layout.corner(corner));
      sheets.extend((map_from_working * Eigen::Vector3d(mat.x(), mat.y(), 0.0)).head<2>());
    }
  }
  const char* sides[2][2] = {{"left", "right"}, {"near", "far"}};
  for (int axis = 0; axis < 2; ++axis) {
    const double low = (sheets.min()[axis] - lit.min()[axis]) / lit.sizes()[axis],
                 high = (sheets.max()[axis] - lit.min()[axis]) / lit.sizes()[axis];
    const double covered = std::min(high, 1.0 - low);
    if (covered > 0.6) continue;
    const int side = high < 1.0 - low ? 0 : 1;
    return std::pair(std::string(sides[axis][side]) + (covered < 0.42 ? " third" : " half"),
                     std::string(sides[axis][1 - side]));
  }
  return std::nullopt;
}

std::string remedy(const Scene& scene, const TableMap& map) {
  if (const auto side = one_side(scene, map))
    return "The sheets cover only the " + side->first + " of the light: lay at least one at the " +
           side->second + " and photograph again.";
  if (scene.photos.size() < 2)
    return "Only one photograph could be used. Take two more from other sides, with all sheets in view.";
  if (scene.sheets.size() < 4)
    return "Only " + std::to_string(scene.sheets.size()) +
           " sheets are seen. Lay four, spread towards the corners of the lit area, and photograph again.";
  return "Spread the sheets towards the corners of the lit area, hold the camera higher and at a slant, and "
         "take two "
         "more photographs of the target.";
}

// What was found and left out on the way, before what that leads to.
std::string so_far(const std::vector<std::string>& warnings) {
  std::string out;
  for (const std::string& warning : warnings) out += warning + ' ';
  return out;
}

// The stated error at the worst place of the light on cloth this thick, mm.
double worst_on_cloth(const TableMap& map, double cloth) {
  double worst = 0.0;
  for (const Eigen::Vector2d& p : map.lit_area) worst = std::max(worst, map.error_at(p, cloth));
  return worst;
}

// The stated error at a few places of the light, the far side first.
std::string error_table(const TableMap& map) {
  constexpr int kColumns = 5, kRows = 3;
  std::string out;
  for (int row = 0; row < kRows; ++row) {
    for (int column = 0; column < kColumns; ++column) {
      const Eigen::Vector2d pixel(column * (map.width - 1.0) / (kColumns - 1),
                                  row * (map.height - 1.0) / (kRows - 1));
      out += "  " + fixed(map.error_at(map.mat_from_projector(pixel)), 2);
    }
    out += '\n';
  }
  return out;
}

}  // namespace

void judge(const Scene& scene, const ErrorEstimate& error, CalibrationReport& report) {
  const double paper_miss = miss(scene.paper, paper_residuals(scene));
  const double light_miss = miss(scene.light, light_residuals(scene)) * mm_per_pixel(scene);
  if (paper_miss > kMostPaperMiss || stray_share(scene.paper) > kMostStrays)
    throw Refusal(
        "The sheets do not lie as one flat, unmoved table in all photographs (corners miss by " +
        fixed(paper_miss, 2) +
        " pixels). Lay them flat, do not touch them between photographs, hold the camera still, and "
        "photograph again.");
  if (light_miss > kMostLightMiss || stray_share(scene.light) > kMostStrays)
    throw Refusal("The projected target does not agree between photographs (corners miss by " +
                  fixed(light_miss, 2) +
                  " mm). Let projector and table stand still while you photograph, and do it again.");
  const bool measured = report.map.scale.source != "page";
  const double stated = measured ? error.worst95 : error.shape95;
  if (!(stated <= kMostStated)) {
    const bool read = report.map.scale.source.find("rulers") != std::string::npos;
    const bool by_scale = !read && stated > std::numbers::sqrt2 * error.shape95;
    const std::string within = fixed(stated, 2) + " mm, 95 times in 100; it must be " +
                               fixed(kMostStated, 1) + " for lines never to be off by " +
                               fixed(kMostError, 0) + " mm. ";
    throw Refusal(
        so_far(report.warnings) +
        (by_scale
             ? "The scale is known only within " + fixed(196.0 * error.scale_sigma, 2) + " %, which leaves " +
                   within + "Measure both rulers, or lay a tape between two far sheets' crosses."
             : "These photographs fix the table only within " + within + remedy(scene, report.map)));
  }
  if (!measured)
    report.warnings.push_back("Nothing but the printer's word fixes the scale: lines may be off by " +
                              fixed(error.worst95, 1) +
                              " mm at the edges. Measure the two rulers on a sheet and calibrate again.");
  for (const double scale : {report.map.scale.across, report.map.scale.down})
    if (measured && std::abs(scale - 1.0) > 0.01) {
      report.warnings.push_back("The sheets were printed at " + fixed(100.0 * scale, 1) +
                                " %. That is allowed for, but print at 100 % next time.");
      break;
    }

  size_t targets = 0;
  for (const ScenePhoto& photo : scene.photos) targets += photo.target ? 1U : 0U;
  if (targets == scene.photos.size())
    report.warnings.push_back(
        "No photograph shows the table under plain light, so a mat's print may disturb the "
        "target. Add one for a better result.");
  Eigen::AlignedBox2d lit;
  for (const Eigen::Vector2d& p : report.map.lit_area) lit.extend(p);
  report.summary =
      "Photographs used: " + std::to_string(scene.photos.size()) + " (" + std::to_string(targets) +
      " of the target); sheets: " + std::to_string(scene.sheets.size()) + ".\n" + "Lit area: about " +
      fixed(lit.sizes().x(), 0) + " x " + fixed(lit.sizes().y(), 0) + " mm.\n" + "Paper corners fit within " +
      fixed(paper_miss, 2) + " pixels, corners in light within " + fixed(light_miss, 2) + " mm (rms).\n" +
      "Print scale: " + fixed(100.0 * report.map.scale.across, 3) + " % across, " +
      fixed(100.0 * report.map.scale.down, 3) + " % down, from the " + report.map.scale.source + ".\n" +
      "Lines land within " + fixed(error.worst95, 2) +
      " mm of true, 95 times in 100, at the worst place of the lit area; " + fixed(error.shape95, 2) +
      " mm if the scale is exact. Over the light, its far edge first, mm:\n" + error_table(report.map) +
      "On cloth 1 mm thick within " + fixed(worst_on_cloth(report.map, 1.0), 2) + " mm, on 5 mm within " +
      fixed(worst_on_cloth(report.map, 5.0), 2) + " mm.\n";
  const double by_slant = std::sqrt(std::max(
      0.0, std::pow(worst_on_cloth(report.map, 5.0), 2) - std::pow(worst_on_cloth(report.map, 0.0), 2)));
  if (by_slant > kMostBySlant)
    report.summary +=
        "How the light slants is known too little for thick cloth: on 5 mm it alone may cost " +
        fixed(by_slant, 2) +
        " mm. Measure the height of the projector's lens (--lamp-height), or lay one more sheet on a "
        "board (--raised), and calibrate again.\n";
}

}  // namespace cowlcast::calibration
