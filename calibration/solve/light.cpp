#include "calibration/solve/light.h"

#include <Eigen/Geometry>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <opencv2/calib3d.hpp>
#include <optional>

#include "calibration/detect/light.h"
#include "calibration/detect/markers.h"
#include "calibration/refusal.h"
#include "calibration/solve/fit.h"
#include "calibration/solve/plane_pose.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kAround = 600.0;      // mm beyond the sheets in which light is looked for
constexpr int kLongestSide = 2200;     // pixels of a laid picture
constexpr size_t kStandIns = 240;      // marker corners that stand in for the target at first
constexpr double kTargetShare = 0.3;   // of corners seen where a target's corners would be
constexpr int kSample = 40;            // corners asked whether a photograph shows the target
constexpr size_t kManyMarkers = 24;    // enough to look no further
constexpr size_t kFewestMarkers = 6;   // of the target in a photograph, to believe in it
constexpr double kMarkerReach = 15.0;  // projector pixels by which a lens may bend a marker off a flat map
constexpr double kSigmaFloor = 0.04;   // photograph pixels
constexpr double kMarkerStill = 2.5;   // mm: a marker found this near its place has not moved
constexpr double kSameWindow = 0.5;    // photograph pixels: a corner looked for this near needs no new look
constexpr double kPaperWindow = 4.4;   // mm: half a paper corner's window and the light's blur
constexpr double kPaperRim = 8.0;      // mm: light nearer to the rim of a raised sheet is left alone
constexpr double kBoardRim = 60.0;     // mm: so far a board may stand out from under its sheet

using LaidMarkers = std::map<int, std::array<Eigen::Vector2d, 4>>;  // code to corners on the mat, mm

MatRegion region_of(const Scene& scene) {
  Eigen::AlignedBox2d box;
  for (size_t i = 0; i < scene.sheets.size(); ++i)
    box.extend(scene.mat_from_sheet(static_cast<int>(i), {0, 0}));
  const Eigen::Vector2d low = box.min().array() - kAround, high = box.max().array() + kAround;
  MatRegion region;
  region.upper_left = {low.x(), high.y()};
  region.mm_per_pixel = std::max(1.0, (high - low).maxCoeff() / kLongestSide);
  region.columns = static_cast<int>((high.x() - low.x()) / region.mm_per_pixel);
  region.rows = static_cast<int>((high.y() - low.y()) / region.mm_per_pixel);
  return region;
}

LaidMarkers markers_in(const cv::Mat& picture, const MatRegion& region, const TargetLayout& layout) {
  LaidMarkers out;
  for (const FoundMarker& marker : find_markers(picture, MarkerFamily::light, 10.0)) {
    if (marker.code >= layout.marker_count()) continue;
    auto& corners = out[marker.code];
    for (size_t c = 0; c < 4; ++c) corners[c] = region.mat(marker.corners[c]);
  }
  return out;
}

struct Correspondence {
  std::vector<cv::Point2d> mat, picture;
};

void append(const LaidMarkers& markers, const TargetLayout& layout, Correspondence& out) {
  for (const auto& [code, corners] : markers) {
    const auto shown = layout.marker_corners(code);
    for (size_t c = 0; c < 4; ++c) {
      out.mat.emplace_back(corners[c].x(), corners[c].y());
      out.picture.emplace_back(shown[c].x(), shown[c].y());
    }
  }
}

// Picture from mat, and which correspondences obey it.
std::optional<Eigen::Matrix3d> flat_map(const Correspondence& seen, std::vector<bool>& obeys) {
  obeys.assign(seen.mat.size(), false);
  if (seen.mat.size() < 4 * kFewestMarkers) return std::nullopt;
  cv::Mat mask;
  const cv::Mat h = cv::findHomography(seen.mat, seen.picture, cv::RANSAC, kMarkerReach, mask, 5000, 0.9999);
  if (h.empty()) return std::nullopt;
  size_t good = 0;
  for (size_t i = 0; i < obeys.size(); ++i) {
    obeys[i] = mask.at<unsigned char>(static_cast<int>(i)) != 0;
    good += obeys[i];
  }
  if (good < 4 * kFewestMarkers) return std::nullopt;
  Eigen::Matrix3d out;
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) out(i, j) = h.at<double>(i, j);
  return out;
}

// A photograph about corner `corner` of the target; nothing where it does not show all of it.
std::optional<LocalView> local_view(const Scene& scene, size_t photo, const cv::Mat& picture,
                                    const TargetLayout& layout, int corner) {
  const TableMap projector = scene.projector();
  const Spot spot = spot_of_picture(scene, layout.corner(corner));
  if (!spot.certain) return std::nullopt;
  LocalView view{&picture, {}, {}};
  Eigen::Vector2d pixel[3];
  const Eigen::Vector2d steps[] = {{0, 0}, {1, 0}, {0, 1}};
  for (int k = 0; k < 3; ++k) try {
      const Eigen::Vector2d mat = projector.mat_from_projector(layout.corner(corner) + steps[k], spot.height);
      const auto at = scene.photo_from_mat(static_cast<int>(photo), mat, spot.height);
      if (!at) return std::nullopt;
      pixel[k] = *at;
    } catch (const Refusal&) {
      return std::nullopt;
    }
  view.at = pixel[0];
  view.slope << pixel[1] - pixel[0], pixel[2] - pixel[0];
  const double margin = 3.0 + layout.inset * view.slope.norm();
  const bool inside = view.at.x() > margin && view.at.y() > margin && view.at.x() < picture.cols - margin &&
                      view.at.y() < picture.rows - margin;
  return inside ? std::optional(view) : std::nullopt;
}

// Share of the target's corners, a sample of them, that a photograph shows: as it
// is, or divided by another one. (Divided by another of the target it shows none,
// and one of plain light divided by one of the target shows their opposite.)
double share_seen(const Scene& scene, size_t photo, const std::vector<cv::Mat>& pictures,
                  const TargetLayout& layout) {
  double best = 0.0;
  const int stride = std::max(1, layout.corner_count() / kSample);
  for (size_t other = 0; other < pictures.size(); ++other) {
    int asked = 0, seen = 0;
    for (int c = stride / 2; c < layout.corner_count(); c += stride) {
      const auto view = local_view(scene, photo, pictures[photo], layout, c);
      const auto under = other == photo ? std::nullopt : local_view(scene, other, pictures[other], layout, c);
      if (!view || (other != photo && !under)) continue;
      ++asked;
      seen += find_light_corner(layout, c, *view, under ? &*under : nullptr).has_value();
    }
    if (asked >= 10) best = std::max(best, static_cast<double>(seen) / asked);
  }
  return best;
}

struct Seen {
  Correspondence all;
  std::vector<bool> obeys;
  std::optional<Eigen::Matrix3d> flat;  // picture from mat
  size_t count() const { return static_cast<size_t>(std::count(obeys.begin(), obeys.end(), true)); }
};

Seen look(const cv::Mat& picture, const MatRegion& region, const TargetLayout& layout) {
  Seen out;
  append(markers_in(picture, region, layout), layout, out.all);
  out.flat = flat_map(out.all, out.obeys);
  return out;
}

// What each photograph shows of the target, laid on the mat; and the laid pictures.
struct Looked {
  std::vector<cv::Mat> laid;
  std::vector<Seen> seen;
};

Looked look_at_all(const Scene& scene, const std::vector<cv::Mat>& pictures, const MatRegion& region,
                   const TargetLayout& layout) {
  const int count = static_cast<int>(pictures.size());
  Looked out{std::vector<cv::Mat>(pictures.size()), std::vector<Seen>(pictures.size())};
  cv::parallel_for_({0, count}, [&](const cv::Range& range) {
    for (int i = range.start; i < range.end; ++i) {
      const auto n = static_cast<size_t>(i);
      out.laid[n] = lay_on_mat(pictures[n], region,
                               [&](const Eigen::Vector2d& mat) { return scene.photo_from_mat(i, mat); });
      out.seen[n] = look(laid_picture(out.laid[n]), region, layout);
    }
  });
  return out;
}

// The photograph that shows the most markers; failing that, the best quotient of two.
Seen best_of(const Looked& looked, const MatRegion& region, const TargetLayout& layout) {
  Seen best;
  const auto better = [&](const Seen& seen) { return seen.flat && seen.count() > best.count(); };
  for (const Seen& seen : looked.seen)
    if (better(seen)) best = seen;
  for (size_t i = 0; i < looked.laid.size(); ++i)
    for (size_t j = 0; j < looked.laid.size(); ++j) {
      if (i == j || best.count() >= 4 * kManyMarkers) continue;
      const Seen seen = look(quotient(looked.laid[i], looked.laid[j]), region, layout);
      if (better(seen)) best = seen;
    }
  return best;
}

// A photograph that shows the target, but not where the projector is thought to
// throw it, was taken before or after something moved. One that shows it there, only too dimly, shows the
// target.
void check_others(Scene& scene, const std::vector<Seen>& all) {
  for (size_t i = 0; i < all.size(); ++i) {
    if (scene.photos[i].target) continue;
    const Seen& seen = all[i];
    std::vector<double> moved;
    for (size_t k = 0; k < seen.obeys.size(); ++k)
      if (seen.obeys[k]) {
        const Eigen::Vector2d here(seen.all.mat[k].x, seen.all.mat[k].y);
        const Eigen::Vector2d picture(seen.all.picture[k].x, seen.all.picture[k].y);
        moved.push_back((here - mat_from_picture(scene, picture)).norm());
      }
    if (!seen.flat || moved.empty()) continue;
    std::nth_element(moved.begin(), moved.begin() + static_cast<std::ptrdiff_t>(moved.size() / 2),
                     moved.end());
    if (moved[moved.size() / 2] < kMarkerStill) {
      scene.photos[i].target = true;
      continue;
    }
    throw CertainRefusal(
        "The projector's picture moved between photographs: in " + scene.photos[i].name + " it lies " +
        fixed(moved[moved.size() / 2], 0) +
        " mm from where the others have it. Let projector, table and cloth stand still, and take all "
        "photographs again.");
  }
}

}  // namespace

Eigen::Vector2d mat_from_picture(const Scene& scene, const Eigen::Vector2d& pixel) {
  return scene.projector().mat_from_projector(pixel);
}

Spot spot_of_picture(const Scene& scene, const Eigen::Vector2d& pixel) {
  const TableMap projector = scene.projector();
  for (size_t i = 0; i < scene.sheets.size(); ++i) {
    const SceneSheet& sheet = scene.sheets[i];
    if (!sheet.board) continue;
    const Eigen::Vector2d mat = projector.mat_from_projector(pixel, sheet.height);
    const Eigen::Vector2d on_sheet =
        Eigen::Rotation2Dd(-sheet.place[2]) * (mat - Eigen::Vector2d(sheet.place[0], sheet.place[1]));
    const SheetLayout layout = sheet_layout(sheet.paper);
    const double beyond =
        (on_sheet.cwiseAbs() - 0.5 * Eigen::Vector2d(layout.page_width, layout.page_height)).maxCoeff();
    if (beyond < -kPaperRim) return {mat, sheet.height, static_cast<int>(i), true};
    if (beyond < kBoardRim) return {mat, sheet.height, -1, false};
  }
  return {projector.mat_from_projector(pixel), 0.0, -1, true};
}

void start_projector(Scene& scene, const std::vector<cv::Mat>& pictures, const TargetLayout& layout) {
  const MatRegion region = region_of(scene);
  const Looked looked = look_at_all(scene, pictures, region, layout);
  const Seen seen = best_of(looked, region, layout);
  if (!seen.flat)
    throw Refusal(
        "The projected target is not seen in any photograph. Show the target picture with the projector, dim "
        "the room, and photograph the whole lit area again.");
  const Eigen::Matrix3d& flat = *seen.flat;
  if (flat.determinant() / std::pow(flat(2, 2), 3) > 0.0)
    throw Refusal(
        "The projector shows its picture mirrored. Turn off rear projection or mirroring in its menu, and "
        "photograph again.");

  // The markers stand in for the corners while the lens is first guessed.
  scene.lights.clear();
  scene.light.clear();
  const size_t stride = std::max<size_t>(1, seen.count() / kStandIns);
  size_t number = 0;
  for (size_t i = 0; i < seen.obeys.size(); ++i) {
    if (!seen.obeys[i] || number++ % stride != 0) continue;
    const Eigen::Vector2d mat(seen.all.mat[i].x, seen.all.mat[i].y);
    for (size_t photo = 0; photo < pictures.size(); ++photo)
      if (const auto pixel = scene.photo_from_mat(static_cast<int>(photo), mat)) {
        scene.light.push_back({static_cast<int>(photo), static_cast<int>(scene.lights.size()), *pixel, 0.5,
                               true, Eigen::Vector2d::Constant(NAN)});
        scene.lights.push_back(
            {static_cast<int>(i), {seen.all.picture[i].x, seen.all.picture[i].y}, {mat.x(), mat.y()}, -1});
        break;
      }
  }
  Scene best;
  double best_cost = std::numeric_limits<double>::infinity();
  const double width = scene.projector_size.x(), height = scene.projector_size.y();
  for (const double focal : {0.7, 1.6})
    for (const double down : {-0.1, 0.5, 1.1}) {
      Scene guess = scene;
      const Eigen::Vector2d centre(0.5 * (width - 1), down * height);
      const auto placed = pose_over_mat(flat, {.focal = focal * width, .centre = centre});
      if (!placed) continue;
      guess.projector_from_mat = *placed;
      guess.projector_lens.numbers = {focal * width, centre.x(), centre.y(), 0, 0, 0, 0, 0};
      const double cost = fit_scene(guess, {FitPart::projector, {1.0, 1.0, 1.0}, true, 25});
      if (cost >= 0.0 && cost < best_cost) {
        best_cost = cost;
        best = guess;
      }
    }
  if (!std::isfinite(best_cost))
    throw Refusal(
        "The projected target does not fit any projector. Check that the resolution given is the one the "
        "projector shows, with no scaling, and photograph again.");
  scene = std::move(best);
  std::vector<double> shares(pictures.size());
  cv::parallel_for_({0, static_cast<int>(pictures.size())}, [&](const cv::Range& range) {
    for (int i = range.start; i < range.end; ++i)
      shares[static_cast<size_t>(i)] = share_seen(scene, static_cast<size_t>(i), pictures, layout);
  });
  for (size_t i = 0; i < pictures.size(); ++i) scene.photos[i].target = shares[i] > kTargetShare;
  check_others(scene, looked.seen);
}

void find_light(Scene& scene, const std::vector<cv::Mat>& pictures, const TargetLayout& layout) {
  const int corners = layout.corner_count();
  std::map<std::pair<int, int>, LightSighting> before;  // by corner and photograph
  for (const LightSighting& s : scene.light)
    before[{scene.lights[static_cast<size_t>(s.point)].corner, s.photo}] = s;
  std::vector<std::vector<LightSighting>> found(static_cast<size_t>(corners));
  cv::parallel_for_({0, corners}, [&](const cv::Range& range) {
    for (int c = range.start; c < range.end; ++c) {
      std::optional<LocalView> plain;
      bool any_plain = false;
      for (size_t i = 0; i < pictures.size() && !plain; ++i) {
        if (scene.photos[i].target) continue;
        any_plain = true;
        plain = local_view(scene, i, pictures[i], layout, c);
      }
      if (any_plain && !plain) continue;
      for (size_t i = 0; i < pictures.size(); ++i) {
        if (!scene.photos[i].target) continue;
        const auto view = local_view(scene, i, pictures[i], layout, c);
        if (!view) continue;
        const auto known = before.find({c, static_cast<int>(i)});
        if (known != before.end() && (known->second.sought - view->at).norm() < kSameWindow) {
          found[static_cast<size_t>(c)].push_back(known->second);
          continue;
        }
        const auto corner = find_light_corner(layout, c, *view, plain ? &*plain : nullptr);
        if (!corner) continue;
        const double scale = std::sqrt(std::abs(view->slope.determinant()));
        found[static_cast<size_t>(c)].push_back(
            {static_cast<int>(i), 0, view->at + view->slope * corner->moved,
             std::hypot(kSigmaFloor, scale * corner->sigma), true, view->at});
      }
    }
  });
  scene.lights.clear();
  scene.light.clear();
  for (int c = 0; c < corners; ++c) {
    const auto& sightings = found[static_cast<size_t>(c)];
    if (sightings.empty()) continue;
    const Spot spot = spot_of_picture(scene, layout.corner(c));
    scene.lights.push_back({c, layout.corner(c), {spot.mat.x(), spot.mat.y()}, spot.sheet});
    for (LightSighting sighting : sightings) {
      sighting.point = static_cast<int>(scene.lights.size()) - 1;
      scene.light.push_back(sighting);
    }
  }
}

void check_sides(const Scene& scene, const std::vector<cv::Mat>& pictures, const TargetLayout& layout) {
  const int columns = layout.columns - 1, rows = layout.rows - 1;
  std::vector<bool> found(static_cast<size_t>(layout.corner_count()), false);
  for (const LightSighting& s : scene.light)
    if (s.used) found[static_cast<size_t>(scene.lights[static_cast<size_t>(s.point)].corner)] = true;
  const auto in_view = [&](int corner) {
    for (size_t i = 0; i < pictures.size(); ++i)
      if (scene.photos[i].target && local_view(scene, i, pictures[i], layout, corner)) return true;
    return false;
  };
  const auto check = [&](const char* side, int count, const auto& corner_at) {
    int seen = 0, looked_at = 0;
    for (int k = 0; k < count; ++k) {
      seen += found[static_cast<size_t>(corner_at(k))];
      looked_at += in_view(corner_at(k));
    }
    if (looked_at >= std::max(5, count / 2) && seen * 20 < looked_at)
      // Not certain: in the dark an edge may be there, and not be seen.
      throw Refusal(std::string("The ") + side +
                    " of the target is not where it should be. Check that --projector is the size the target "
                    "was made for, that the projector shows all of it, and that it all falls on the table.");
  };
  check("upper edge", columns, [&](int k) { return k; });
  check("lower edge", columns, [&](int k) { return (rows - 1) * columns + k; });
  check("left edge", rows, [&](int k) { return k * columns; });
  check("right edge", rows, [&](int k) { return k * columns + columns - 1; });
}

void drop_crossed_paper(Scene& scene, const TargetLayout& layout) {
  const auto to_grid = [&](double value) {
    return std::abs(value - std::round(value / layout.square) * layout.square);
  };
  const auto crossed = [&](const PaperSighting& s) {
    if (!scene.photos[static_cast<size_t>(s.photo)].target) return false;
    const Eigen::Vector2d mat = scene.mat_from_sheet(s.sheet, s.printed);
    const auto at = scene.projector_from_mat_point(mat);
    const auto beside = scene.projector_from_mat_point(mat + Eigen::Vector2d(1.0, 0.0));
    if (!at || !beside) return false;  // out of the light
    const double window = kPaperWindow * (*beside - *at).norm();
    const double x = at->x() + 0.5 - layout.left, y = at->y() + 0.5 - layout.top;
    if (std::min(to_grid(x), to_grid(y)) < window) return true;
    const int column = static_cast<int>(std::floor(x / layout.square)),
              row = static_cast<int>(std::floor(y / layout.square));
    return (column + row) % 2 == 0;  // a light square: a marker fills it
  };
  std::erase_if(scene.paper, crossed);
}

}  // namespace cowlcast::calibration
