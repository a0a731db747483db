#include "calibration/solve/start.h"

#include <Eigen/Geometry>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <map>
#include <opencv2/calib3d.hpp>

#include "calibration/refusal.h"
#include "calibration/solve/fit.h"
#include "calibration/solve/plane_pose.h"

namespace cowlcast::calibration {
namespace {

// Focal lengths to begin from, over the longer side of the photograph: from a
// wide phone lens to a portrait lens.
constexpr double kFocalStarts[] = {0.55, 0.7, 0.85, 1.05, 1.4, 2.0};
constexpr double kSigmaFloor = 0.03;  // pixels: no corner is trusted beyond this

using Homography = Eigen::Matrix3d;
using SheetKey = std::pair<int, int>;

SheetKey key(const SheetView& view) {
  return {static_cast<int>(view.paper), view.number};
}

std::optional<Homography> homography(const std::vector<cv::Point2d>& from,
                                     const std::vector<cv::Point2d>& to) {
  if (from.size() < 4) return std::nullopt;
  const cv::Mat h = cv::findHomography(from, to, 0);
  if (h.empty()) return std::nullopt;
  Homography out;
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) out(i, j) = h.at<double>(i, j);
  return out;
}

struct FlatPlace {
  Eigen::Rotation2Dd turn{0.0};
  Eigen::Vector2d shift = Eigen::Vector2d::Zero();
  Eigen::Vector2d operator()(const Eigen::Vector2d& p) const { return shift + turn * p; }
};

using Places = std::map<SheetKey, FlatPlace>;

// Photograph from mat, by the sheets already placed.
std::optional<Homography> view_of(const PhotoSheets& photo, const Places& places) {
  std::vector<cv::Point2d> mat, pixel;
  for (const SheetView& view : photo.sheets) {
    const auto place = places.find(key(view));
    if (place == places.end()) continue;
    const SheetLayout layout = sheet_layout(view.paper);
    for (const SeenCorner& corner : view.corners) {
      const Eigen::Vector2d m = place->second(layout.corner(corner.index));
      mat.emplace_back(m.x(), m.y());
      pixel.emplace_back(corner.pixel.x(), corner.pixel.y());
    }
  }
  return homography(mat, pixel);
}

// The place of a sheet on the mat, by its corners thrown back through a view.
FlatPlace place_of(const SheetView& view, const Homography& photo_from_mat) {
  const Homography back = photo_from_mat.inverse();
  const SheetLayout layout = sheet_layout(view.paper);
  std::vector<Eigen::Vector2d> printed, mat;
  for (const SeenCorner& corner : view.corners) {
    printed.push_back(layout.corner(corner.index));
    mat.push_back((back * corner.pixel.homogeneous()).hnormalized());
  }
  const auto [x, y, turn] = slide_and_turn(printed, mat);
  FlatPlace place;
  place.turn = Eigen::Rotation2Dd(turn);
  place.shift = {x, y};
  return place;
}

size_t corners_in(const PhotoSheets& photo, const Places& places) {
  size_t sum = 0;
  for (const SheetView& view : photo.sheets)
    if (places.count(key(view)) != 0) sum += view.corners.size();
  return sum;
}

// Grows a layout from one photograph's best sheet through all that share sheets.
Places grow(const std::vector<PhotoSheets>& photos, size_t first) {
  Places places;
  const auto best = std::max_element(
      photos[first].sheets.begin(), photos[first].sheets.end(),
      [](const SheetView& a, const SheetView& b) { return a.corners.size() < b.corners.size(); });
  places[key(*best)] = {};
  for (int round = 0; round < 6; ++round) {
    std::map<SheetKey, size_t> weight;  // the view with the most placed corners places a sheet
    for (const PhotoSheets& photo : photos) {
      const auto view = view_of(photo, places);
      if (!view) continue;
      const size_t support = corners_in(photo, places);
      for (const SheetView& sheet : photo.sheets) {
        const bool anchor = key(sheet) == key(*best);
        if (anchor || weight[key(sheet)] > support) continue;
        weight[key(sheet)] = support;
        places[key(sheet)] = place_of(sheet, *view);
      }
    }
  }
  return places;
}

int lens_of(Scene& scene, const PhotoSheets& photo) {
  for (size_t i = 0; i < scene.lenses.size(); ++i) {
    const bool same_focal =
        scene.exif_focals[i].has_value() == photo.exif_focal.has_value() &&
        (!photo.exif_focal || std::abs(*photo.exif_focal / *scene.exif_focals[i] - 1.0) < 1e-3);
    if (scene.lens_sizes[i] == photo.size && same_focal) return static_cast<int>(i);
  }
  scene.lenses.emplace_back();
  scene.lens_sizes.push_back(photo.size);
  scene.exif_focals.push_back(photo.exif_focal);
  return static_cast<int>(scene.lenses.size()) - 1;
}

template <typename Sighting>
double reject(std::vector<Sighting>& sightings, const std::vector<double>& residuals) {
  std::vector<double> sizes;
  for (size_t i = 0; i < sightings.size(); ++i) sizes.push_back(residuals[i] / sightings[i].sigma);
  if (sizes.empty()) return 1.0;
  std::vector<double> sorted = sizes;
  const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
  std::nth_element(sorted.begin(), middle, sorted.end());
  const double typical = *middle / 1.1774;  // median of Rayleigh's distribution
  for (size_t i = 0; i < sightings.size(); ++i) sightings[i].used = sizes[i] < 4.5 * typical;
  return typical;
}

}  // namespace

double reject_stray_paper(Scene& scene) {
  return reject(scene.paper, paper_residuals(scene));
}
double reject_stray_light(Scene& scene) {
  return reject(scene.light, light_residuals(scene));
}

void settle_paper(Scene& scene) {
  for (int round = 0; round < 2; ++round) {
    FitNoise noise;
    noise.paper = std::max(0.5, reject_stray_paper(scene));
    fit_scene(scene, {FitPart::paper, noise, true, 20});
  }
}

Scene start_scene(const std::vector<PhotoSheets>& photos, const ScaleReading& reading,
                  std::vector<std::string>& left_out) {
  Places places;
  size_t most = 0;
  for (size_t i = 0; i < photos.size(); ++i) {
    if (photos[i].sheets.empty()) continue;
    Places grown = grow(photos, i);
    size_t held = 0;
    for (const PhotoSheets& photo : photos) held += corners_in(photo, grown);
    if (held > most) {
      most = held;
      places = std::move(grown);
    }
  }
  if (places.empty())
    throw Refusal(
        "No printed sheet is seen in any photograph. Lay the sheets in the light, hold the camera so that "
        "each sheet is sharp and large in the picture, and photograph again.");

  Scene scene;
  scene.reading = reading;
  scene.print_scale = {std::log(reading.across), std::log(reading.down)};
  std::map<SheetKey, int> index;
  std::vector<Homography> views;
  for (const auto& [which, place] : places) {
    index[which] = static_cast<int>(scene.sheets.size());
    scene.sheets.push_back({static_cast<Paper>(which.first),
                            which.second,
                            {place.shift.x(), place.shift.y(), place.turn.angle()},
                            kPaperThickness,
                            std::nullopt});
  }
  for (const PhotoSheets& photo : photos) {
    const auto view = view_of(photo, places);
    if (!view) {
      left_out.push_back(photo.name);
      continue;
    }
    views.push_back(*view);
    const int number = static_cast<int>(scene.photos.size());
    ScenePhoto entry;
    entry.name = photo.name;
    entry.lens = lens_of(scene, photo);
    scene.photos.push_back(entry);
    for (const SheetView& sheet : photo.sheets) {
      if (index.count(key(sheet)) == 0) continue;
      const SheetLayout layout = sheet_layout(sheet.paper);
      for (const SeenCorner& corner : sheet.corners) {
        PaperSighting sighting;
        sighting.photo = number;
        sighting.sheet = index[key(sheet)];
        sighting.corner = corner.index;
        sighting.printed = layout.corner(corner.index);
        sighting.pixel = corner.pixel;
        sighting.sigma = std::hypot(corner.sigma, kSigmaFloor);
        scene.paper.push_back(sighting);
      }
    }
  }

  constexpr int kStarts = static_cast<int>(std::size(kFocalStarts));
  std::vector<Scene> guesses(kStarts, scene);
  std::vector<double> costs(kStarts, std::numeric_limits<double>::infinity());
  cv::parallel_for_({0, kStarts}, [&](const cv::Range& range) {
    for (int n = range.start; n < range.end; ++n) {
      Scene& guess = guesses[static_cast<size_t>(n)];
      for (size_t i = 0; i < guess.lenses.size(); ++i) {
        const Eigen::Vector2d& size = guess.lens_sizes[i];
        guess.lenses[i].numbers = {
            kFocalStarts[n] * size.maxCoeff(), 0.5 * (size.x() - 1), 0.5 * (size.y() - 1), 0, 0, 0, 0, 0};
      }
      bool posed = true;
      for (size_t i = 0; i < guess.photos.size(); ++i) {
        ScenePhoto& photo = guess.photos[i];
        const auto placed = pose_over_mat(views[i], guess.lenses[static_cast<size_t>(photo.lens)].lens());
        if (placed) photo.camera_from_mat = *placed;
        posed = posed && placed.has_value();
      }
      // Wide noise first: nothing is a stray until the scene has its shape.
      if (!posed || fit_scene(guess, {FitPart::paper, {40.0, 1.0, 1.0}, false, 15}) < 0.0) continue;
      const double cost = fit_scene(guess, {FitPart::paper, {}, true, 15});
      if (cost >= 0.0) costs[static_cast<size_t>(n)] = cost;
    }
  });
  const auto least = std::min_element(costs.begin(), costs.end());
  const double best_cost = *least;
  Scene best = guesses[static_cast<size_t>(least - costs.begin())];
  if (!std::isfinite(best_cost))
    throw Refusal(
        "The sheets in the photographs cannot be brought together. Check that the sheets lie flat and were "
        "not moved between photographs, and photograph again.");
  settle_paper(best);
  return best;
}

}  // namespace cowlcast::calibration
