#include "calibration/solve/raised.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "calibration/refusal.h"
#include "calibration/solve/plane_pose.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kThinnest = 5.0, kThickest = 120.0;  // mm: thinner tells little, thicker is out of focus
constexpr double kAgrees = 1.5;                       // mm between the board as measured and as seen
constexpr double kSigmaFloor = 0.03;                  // pixels, as for the other sheets

std::string name(int number) {
  return "sheet " + std::to_string(number);
}

// Height above the mat at which two or more photographs have the sheet's corners in one place; nothing when
// they look from nearly the same side.
std::optional<double> height_seen(const Scene& scene, const std::vector<PaperSighting>& sightings) {
  constexpr double kStep = 10.0, kFewestSlants = 2.0;  // mm; sum of squares
  double along = 0.0, square = 0.0;
  for (size_t i = 0; i < sightings.size(); ++i)
    for (size_t j = i + 1; j < sightings.size(); ++j) {
      const PaperSighting &a = sightings[i], &b = sightings[j];
      if (a.corner != b.corner || a.photo == b.photo) continue;
      const auto apart = [&](double height) -> Eigen::Vector2d {
        return scene.mat_from_photo(a.photo, a.pixel, height) -
               scene.mat_from_photo(b.photo, b.pixel, height);
      };
      const Eigen::Vector2d low = apart(0.0), slant = (apart(kStep) - low) / kStep;
      along -= low.dot(slant);
      square += slant.squaredNorm();
    }
  if (square < kFewestSlants) return std::nullopt;
  return along / square;
}

}  // namespace

std::vector<PhotoSheets> take_raised(std::vector<PhotoSheets>& photos, const RaisedSheet& raised) {
  if (!(raised.thickness >= kThinnest && raised.thickness <= kThickest))
    throw Refusal("The board under " + name(raised.sheet) + " is given as " + fixed(raised.thickness, 1) +
                  " mm thick. Use one between " + fixed(kThinnest, 0) + " and " + fixed(kThickest, 0) +
                  " mm, for example a hardback book or a kitchen board, and measure it with a rule.");
  std::vector<PhotoSheets> seen = photos;
  size_t views = 0;
  for (size_t i = 0; i < photos.size(); ++i) {
    const auto is_raised = [&](const SheetView& view) { return view.number == raised.sheet; };
    std::erase_if(photos[i].sheets, is_raised);
    std::erase_if(seen[i].sheets, [&](const SheetView& view) { return !is_raised(view); });
    views += seen[i].sheets.size();
  }
  if (views == 0)
    throw Refusal("The raised " + name(raised.sheet) +
                  " is not seen in any photograph. Check the number printed at its top, or photograph again "
                  "with all sheets in view.");
  return seen;
}

void add_raised(Scene& scene, const std::vector<PhotoSheets>& seen, const RaisedSheet& raised) {
  const double height = raised.thickness + kPaperThickness;
  bool placed = false;
  std::vector<PaperSighting> sightings;
  const int index = static_cast<int>(scene.sheets.size());
  for (const PhotoSheets& photo : seen) {
    const auto entry = std::find_if(scene.photos.begin(), scene.photos.end(),
                                    [&](const ScenePhoto& p) { return p.name == photo.name; });
    if (entry == scene.photos.end()) continue;
    const int number = static_cast<int>(entry - scene.photos.begin());
    for (const SheetView& view : photo.sheets) {
      const SheetLayout layout = sheet_layout(view.paper);
      if (!placed) {
        std::vector<Eigen::Vector2d> printed, mat;
        for (const SeenCorner& corner : view.corners) {
          printed.push_back(layout.corner(corner.index));
          mat.push_back(scene.mat_from_photo(number, corner.pixel, height));
        }
        scene.sheets.push_back(
            {view.paper, view.number, slide_and_turn(printed, mat), height, raised.thickness});
        placed = true;
      }
      for (const SeenCorner& corner : view.corners)
        sightings.push_back({number, index, corner.index, layout.corner(corner.index), corner.pixel,
                             std::hypot(corner.sigma, kSigmaFloor), true});
    }
  }
  const auto seen_height = height_seen(scene, sightings);
  if (seen_height && std::abs(*seen_height - height) > kAgrees)
    throw CertainRefusal("The board under " + name(raised.sheet) + " is given as " +
                         fixed(raised.thickness, 1) + " mm thick, but the photographs say about " +
                         fixed(*seen_height - kPaperThickness, 1) +
                         " mm. Measure it again, and see that it lies flat on the mat and the sheet on it.");
  scene.paper.insert(scene.paper.end(), sightings.begin(), sightings.end());
}

}  // namespace cowlcast::calibration
