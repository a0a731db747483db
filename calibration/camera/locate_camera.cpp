#include "calibration/camera/locate_camera.h"

#include <Eigen/Geometry>
#include <Eigen/LU>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>
#include <stdexcept>

#include "calibration/detect/light.h"
#include "calibration/detect/markers.h"
#include "calibration/detect/paper.h"
#include "calibration/refusal.h"
#include "calibration/solve/fit.h"
#include "calibration/solve/plane_pose.h"
#include "calibration/solve/start.h"
#include "calibration/target/target.h"
#include "calibration/watch/edge_tags.h"
#include "calibration/watch/patch_tracker.h"
#include "calibration/watch/pictures.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kFocalStarts[] = {0.5, 0.7, 0.9, 1.2, 1.7};  // over the frame's longer side
constexpr double kCloser = 2.0;                               // enlargement that markers are looked for at
constexpr double kMarkerReach = 12.0;                         // picture pixels a lens may bend markers by
constexpr size_t kFewestMarkers = 8;
constexpr double kSigmaFloor = 0.05;             // frame pixels: no corner is trusted beyond this
constexpr double kFewestShare = 0.5;             // of the target's corners
constexpr int kLeftOut = 4;                      // every fourth corner is kept out of the trial fit
constexpr int kPartsAcross = 4, kPartsDown = 3;  // of the light
constexpr size_t kParts = kPartsAcross * kPartsDown;
constexpr double kRadius95 =
    2.86;  // 95 % radius over sigma: two coordinates, a spread known from twelve parts
constexpr double kMostMiss = 1.0;     // mm
constexpr double kMostStrays = 0.3;   // of the corners seen
constexpr double kOtherSize = 0.006;  // of a sheet: light that has been raised, tilted or zoomed
constexpr double kSheetMiss = 1.2;    // mm: the same where it has been bent

cv::Mat mean_frame(const std::vector<cv::Mat>& frames) {
  cv::Mat sum, out;
  for (const cv::Mat& frame : frames) {
    if (frame.type() != CV_8UC1 || frame.size() != frames.front().size())
      throw std::invalid_argument("frames to locate a camera by are 8-bit grey and of one size");
    if (sum.empty())
      frame.convertTo(sum, CV_32F);
    else
      cv::accumulate(frame, sum);
  }
  if (frames.empty()) throw std::invalid_argument("a camera is located by a frame of each picture at least");
  sum.convertTo(out, CV_8U, 1.0 / static_cast<double>(frames.size()));
  return out;
}

struct Markers {
  std::vector<cv::Point2d> picture, frame;
};

// A frame enlarged, since what is small in it is found so; and a pixel of that back in the frame.
cv::Mat closer(const cv::Mat& grey) {
  cv::Mat out;
  cv::resize(grey, out, {}, kCloser, kCloser, cv::INTER_CUBIC);
  return out;
}

Eigen::Vector2d from_closer(const Eigen::Vector2d& pixel) {
  return (pixel + Eigen::Vector2d(0.5, 0.5)) / kCloser - Eigen::Vector2d(0.5, 0.5);
}

Markers markers_in(const cv::Mat& grey, const TargetLayout& layout) {
  Markers out;
  for (const FoundMarker& marker : find_markers(closer(grey), MarkerFamily::light, 12.0)) {
    if (marker.code >= layout.marker_count()) continue;
    const auto shown = layout.marker_corners(marker.code);
    for (size_t c = 0; c < 4; ++c) {
      const Eigen::Vector2d at = from_closer(marker.corners[c]);
      out.picture.emplace_back(shown[c].x(), shown[c].y());
      out.frame.emplace_back(at.x(), at.y());
    }
  }
  return out;
}

// Marker corners that lie as one flat picture; by the frame itself or by the light alone, whichever shows
// more.
Markers flat_markers(const cv::Mat& target, const cv::Mat& plain, const TargetLayout& layout) {
  Markers best;
  for (const cv::Mat& grey : {target, quotient(linear_light(target), linear_light(plain))}) {
    const Markers all = markers_in(grey, layout);
    if (all.frame.size() < 4 * kFewestMarkers) continue;
    cv::Mat obeys;
    if (cv::findHomography(all.frame, all.picture, cv::RANSAC, kMarkerReach, obeys, 5000, 0.9999).empty())
      continue;
    Markers good;
    for (int i = 0; i < obeys.rows; ++i) {
      if (obeys.at<unsigned char>(i) == 0) continue;
      good.picture.push_back(all.picture[static_cast<size_t>(i)]);
      good.frame.push_back(all.frame[static_cast<size_t>(i)]);
    }
    if (good.frame.size() > best.frame.size()) best = std::move(good);
  }
  if (best.frame.size() < 4 * kFewestMarkers)
    throw Refusal(
        "The camera does not read the target in the light. Turn it so that the light fills its view, focus "
        "on "
        "the mat, dim the room, and try again.");
  return best;
}

// The mat as the one sheet of a scene with one photograph: its points are known, and nothing of it may
// stretch.
Scene scene_of(const cv::Size& size, const std::optional<LensBelief>& belief) {
  Scene scene;
  scene.lenses.emplace_back();
  scene.lens_sizes.emplace_back(size.width, size.height);
  scene.exif_focals.emplace_back();
  if (belief) scene.beliefs = {belief};
  scene.photos.emplace_back();
  SceneSheet mat;
  mat.height = 0.0;
  scene.sheets.push_back(mat);
  scene.reading = {1.0, 1.0, 1e-7, 1e-7};
  return scene;
}

void add_sighting(Scene& scene, int corner, const Eigen::Vector2d& mat, const Eigen::Vector2d& pixel,
                  double sigma) {
  PaperSighting sighting;
  sighting.corner = corner;
  sighting.printed = mat;
  sighting.pixel = pixel;
  sighting.sigma = sigma;
  scene.paper.push_back(sighting);
}

// Lens and pose from marker corners, begun from several focal lengths.
Scene started(const TableMap& map, const Markers& markers, const cv::Size& size,
              const std::optional<LensBelief>& belief) {
  Scene scene = scene_of(size, belief);
  std::vector<cv::Point2d> mat;
  for (size_t i = 0; i < markers.picture.size(); ++i) {
    const Eigen::Vector2d at = map.mat_from_projector({markers.picture[i].x, markers.picture[i].y});
    mat.emplace_back(at.x(), at.y());
    add_sighting(scene, -1, at, {markers.frame[i].x, markers.frame[i].y}, 0.5);
  }
  const cv::Mat flat = cv::findHomography(mat, markers.frame, 0);
  Eigen::Matrix3d frame_from_mat = Eigen::Matrix3d::Identity();
  for (int i = 0; i < 3 && !flat.empty(); ++i)
    for (int j = 0; j < 3; ++j) frame_from_mat(i, j) = flat.at<double>(i, j);
  Scene best;
  double least = std::numeric_limits<double>::infinity();
  const Eigen::Vector2d centre(0.5 * (size.width - 1), 0.5 * (size.height - 1));
  std::vector<double> focals;
  for (const double focal : kFocalStarts) focals.push_back(focal * std::max(size.width, size.height));
  if (belief) focals = {belief->middle[0]};
  for (const double focal : focals) {
    const auto placed = pose_over_mat(frame_from_mat, {.focal = focal, .centre = centre});
    if (!placed) continue;
    Scene guess = scene;
    guess.lenses.front().numbers = {focal, centre.x(), centre.y(), 0, 0, 0, 0, 0};
    if (belief) guess.lenses.front().numbers = belief->middle;
    guess.photos.front().camera_from_mat = *placed;
    const double cost = fit_scene(guess, {FitPart::paper, {}, true, 40});
    if (cost < 0.0 || cost >= least) continue;
    least = cost;
    best = std::move(guess);
  }
  if (!std::isfinite(least))
    throw Refusal(
        "What the camera sees of the target fits no place above the table. Check that the table file is the "
        "one of this projector, and that the camera's picture is not mirrored.");
  return best;
}

std::optional<Eigen::Vector2d> seen_at(const Scene& scene, const TableMap& map,
                                       const Eigen::Vector2d& picture) {
  return scene.photo_from_mat(0, map.mat_from_projector(picture));
}

// A frame about a corner of the target, as the scene has it.
std::optional<LocalView> local_view(const Scene& scene, const TableMap& map, const cv::Mat& grey,
                                    const Eigen::Vector2d& picture) {
  const auto at = seen_at(scene, map, picture), right = seen_at(scene, map, picture + Eigen::Vector2d(1, 0)),
             below = seen_at(scene, map, picture + Eigen::Vector2d(0, 1));
  if (!at || !right || !below) return std::nullopt;
  LocalView view{&grey, *at, {}};
  view.slope << *right - *at, *below - *at;
  constexpr double kRim = 12.0;
  const bool inside =
      at->x() > kRim && at->y() > kRim && at->x() < grey.cols - kRim && at->y() < grey.rows - kRim;
  return inside ? std::optional(view) : std::nullopt;
}

// The target's corners near where the scene has them take the place of its sightings.
void find_corners(Scene& scene, const TableMap& map, const cv::Mat& target, const cv::Mat& plain,
                  const TargetLayout& layout) {
  const Scene before = scene;
  scene.paper.clear();
  for (int c = 0; c < layout.corner_count(); ++c) {
    const Eigen::Vector2d picture = layout.corner(c);
    const auto view = local_view(before, map, target, picture);
    if (!view) continue;
    LocalView under = *view;
    under.grey = &plain;
    const auto corner = find_light_corner(layout, c, *view, &under);
    if (!corner) continue;
    const double size = std::sqrt(std::abs(view->slope.determinant()));
    add_sighting(scene, c, map.mat_from_projector(picture), view->at + view->slope * corner->moved,
                 std::max(kSigmaFloor, size * corner->sigma));
  }
}

void settle(Scene& scene) {
  for (int round = 0; round < 3; ++round) {
    FitNoise noise;
    noise.paper = std::max(0.5, reject_stray_paper(scene));
    fit_scene(scene, {FitPart::paper, noise, round < 2, 25});
  }
}

FixedCamera camera_of(const Scene& scene, const cv::Size& size) {
  FixedCamera camera;
  camera.width = size.width;
  camera.height = size.height;
  camera.lens = scene.lenses.front().lens(std::exp(scene.photos.front().focus));
  camera.camera_from_mat = scene.photos.front().camera_from_mat.transform();
  return camera;
}

// The part of the light that a corner of the target is in.
size_t part_of(const TargetLayout& layout, int corner) {
  const int column = corner % (layout.columns - 1), row = corner / (layout.columns - 1);
  return static_cast<size_t>(kPartsAcross * (kPartsDown * row / (layout.rows - 1)) +
                             kPartsAcross * column / (layout.columns - 1));
}

// Without every corner that `dropped` picks, fitted again from where it stands.
template <typename Dropped>
FixedCamera camera_without(const Scene& scene, const cv::Size& size, const Dropped& dropped) {
  Scene trial = scene;
  std::vector<PaperSighting> kept;
  for (size_t i = 0; i < scene.paper.size(); ++i)
    if (scene.paper[i].used && !dropped(i)) kept.push_back(scene.paper[i]);
  trial.paper = std::move(kept);
  fit_scene(trial, {FitPart::paper, {}, false, 15});
  return camera_of(trial, size);
}

// How far from their places on the mat corners are seen that the fit has not known: their mean over each
// part of the light, the worst of these, mm. Single corners stray by their own noise, which is none of the
// camera's.
double left_out_miss(const Scene& scene, const TargetLayout& layout, const cv::Size& size) {
  const FixedCamera camera = camera_without(scene, size, [](size_t i) { return i % kLeftOut == 0; });
  struct Part {
    Eigen::Vector2d sum = Eigen::Vector2d::Zero();
    int count = 0;
  };
  std::array<Part, kParts> parts;
  for (size_t i = 0; i < scene.paper.size(); i += kLeftOut) {
    const PaperSighting& s = scene.paper[i];
    if (!s.used) continue;
    Part& part = parts[part_of(layout, s.corner)];
    part.sum += camera.mat_from_pixel(s.pixel) - s.printed;
    ++part.count;
  }
  double worst = 0.0;
  for (const Part& part : parts)
    if (part.count >= 3) worst = std::max(worst, part.sum.norm() / part.count);
  return worst;
}

// The 95 % radius of the places of the mat, where it is largest over the light, out to its very corners, mm.
// By the jackknife over parts of the light (Efron, The Jackknife, the Bootstrap and Other Resampling Plans,
// 1982): each part is left out in turn, and how much the places follow tells how well the others hold them.
// Parts, not corners: what pulls at one corner pulls at its neighbours.
double jackknife95(const TableMap& map, const Scene& scene, const TargetLayout& layout,
                   const cv::Size& size) {
  const FixedCamera whole = camera_of(scene, size);
  std::vector<Eigen::Vector2d> pixels;
  for (int i = 0; i <= 4; ++i)
    for (int j = 0; j <= 6; ++j)
      if (const auto pixel = whole.pixel_from_mat(
              map.mat_from_projector({j * (map.width - 1) / 6.0, i * (map.height - 1) / 4.0})))
        pixels.push_back(*pixel);
  std::vector<double> square(pixels.size(), 0.0);
  int parts = 0;
  for (size_t part = 0; part < kParts; ++part) {
    const auto in_part = [&](size_t i) { return part_of(layout, scene.paper[i].corner) == part; };
    bool any = false;
    for (size_t i = 0; i < scene.paper.size(); ++i) any = any || (scene.paper[i].used && in_part(i));
    if (!any) continue;
    ++parts;
    const FixedCamera camera = camera_without(scene, size, in_part);
    for (size_t i = 0; i < pixels.size(); ++i)
      square[i] += (camera.mat_from_pixel(pixels[i]) - whole.mat_from_pixel(pixels[i])).squaredNorm();
  }
  const double most = square.empty() ? 0.0 : *std::max_element(square.begin(), square.end());
  return kRadius95 * std::sqrt(0.5 * most * (parts - 1) / std::max(1, parts));
}

void check_coverage(const Scene& scene, const TargetLayout& layout) {
  int thirds[3] = {}, all = 0;
  for (const PaperSighting& s : scene.paper) {
    if (!s.used) continue;
    ++all;
    ++thirds[std::min(2, 3 * (s.corner % (layout.columns - 1)) / (layout.columns - 1))];
  }
  const char* const names[] = {"left", "middle", "right"};
  for (size_t k = 0; k < 3; ++k)
    if (3.0 * thirds[k] < kFewestShare * layout.corner_count())
      throw Refusal(
          std::string("The camera sees too little of the ") + names[k] +
          " third of the light clearly. Turn it so that it sees the whole light, clear the light of "
          "what lies in it, dim the room, and try again.");
  if (all < kFewestShare * layout.corner_count())
    throw Refusal("The camera sees only " + std::to_string(all) + " of the " +
                  std::to_string(layout.corner_count()) +
                  " corners of the target clearly. Focus it on the mat, dim the room, and try again.");
}

// Sheets that still lie about: are they as large in the light's millimetres as they were printed?
int check_sheets(const TableMap& map, const FixedCamera& camera, const cv::Mat& plain) {
  int checked = 0;
  for (const SheetView& sheet : find_sheets(plain)) {
    const SheetLayout layout = sheet_layout(sheet.paper);
    if (4 * static_cast<int>(sheet.corners.size()) < 3 * layout.corner_count()) continue;
    std::vector<Eigen::Vector2d> printed, seen;
    for (const SeenCorner& corner : sheet.corners) {
      printed.push_back(
          layout.corner(corner.index).cwiseProduct(Eigen::Vector2d(map.scale.across, map.scale.down)));
      seen.push_back(camera.mat_from_pixel(corner.pixel, kPaperThickness));
    }
    const auto [x, y, turn] = slide_and_turn(printed, seen);
    std::vector<double> misses;
    double own = 0.0, along = 0.0;
    for (size_t i = 0; i < printed.size(); ++i) {
      const Eigen::Vector2d from_middle = Eigen::Rotation2Dd(turn) * printed[i],
                            found = seen[i] - Eigen::Vector2d(x, y);
      own += from_middle.squaredNorm();
      along += from_middle.dot(found);
      misses.push_back((found - from_middle).norm());
    }
    std::nth_element(misses.begin(), misses.begin() + static_cast<std::ptrdiff_t>(misses.size() / 2),
                     misses.end());
    const double larger = along / own - 1.0;
    if (std::abs(larger) > kOtherSize || misses[misses.size() / 2] > kSheetMiss)
      throw Refusal("The light does not lie where the table file says: sheet " +
                    std::to_string(sheet.number) + " seems " + fixed(100.0 * std::abs(larger), 1) +
                    " % too " + (larger > 0.0 ? "large" : "small") +
                    ". The projector was moved or zoomed since, or the sheet is bent. Calibrate again, then "
                    "locate the camera.");
    ++checked;
  }
  return checked;
}

void keep_tags(FixedCamera& camera, const cv::Mat& dark, const cv::Mat& plain) {
  const cv::Mat beside = linear_light(dark), lit = linear_light(plain);
  for (const FoundMarker& marker : find_edge_tags(WatchLight{beside, lit, lit})) {
    Eigen::Vector2d middle = Eigen::Vector2d::Zero();
    for (const Eigen::Vector2d& corner : marker.corners) middle += 0.25 * corner;
    camera.tags.push_back({*edge_tag(marker.code), camera.mat_from_pixel(middle)});
  }
}

}  // namespace

LocatedCamera locate_camera(const TableMap& map, const LocateRequest& request) {
  const TargetLayout layout = target_layout(map.width, map.height);
  const cv::Mat target = mean_frame(request.target), plain = mean_frame(request.plain);
  if (target.size() != plain.size())
    throw Refusal("The frames of the target and of plain light differ in size. Take both with one camera.");
  Scene scene = started(map, flat_markers(target, plain, layout), target.size(), request.lens);
  for (int round = 0; round < 2; ++round) {  // again from where the lens now says the corners are
    find_corners(scene, map, target, plain, layout);
    if (scene.paper.size() < 40)
      throw Refusal(
          "The camera sees too little of the target clearly. Focus it on the mat and dim the room.");
    settle(scene);
  }
  check_coverage(scene, layout);

  LocatedCamera out;
  out.corners = static_cast<int>(
      std::count_if(scene.paper.begin(), scene.paper.end(), [](const PaperSighting& s) { return s.used; }));
  const double left_out = left_out_miss(scene, layout, target.size());
  if (!(left_out <= kMostMiss) || out.corners < (1.0 - kMostStrays) * static_cast<double>(scene.paper.size()))
    throw Refusal(
        "No lens and place explain what the camera sees: corners of the target lie " + fixed(left_out, 1) +
        " mm from where the table file has them. Lay nothing in the light that is not flat, see that "
        "the table file is of this projector, switch off the camera's own corrections, and try "
        "again.");
  out.within = std::max(left_out, jackknife95(map, scene, layout, target.size()));
  out.camera = camera_of(scene, target.size());
  out.sheets = check_sheets(map, out.camera, plain);
  keep_tags(out.camera, request.dark.empty() ? plain : mean_frame(request.dark), plain);
  if (out.sheets == 0)
    out.warnings.push_back(
        "No printed sheet lies in view, so it was not checked whether the light still lies as it was "
        "calibrated. Locate the camera right after calibrating, with the sheets still there.");
  if (out.camera.tags.size() < 4)
    out.warnings.push_back("Only " + std::to_string(out.camera.tags.size()) +
                           " edge tags are seen. To watch the table eight around the mat's edge are wanted: "
                           "`cowlcast sheets --edge-tags` prints them.");
  const Eigen::Vector3d eye = out.camera.eye();
  out.summary =
      "The camera stands " + fixed(eye.z(), 0) + " mm above the mat. " + std::to_string(out.corners) +
      " of " + std::to_string(layout.corner_count()) +
      " corners of the target bear that out; corners left out are seen within " + fixed(left_out, 2) +
      " mm of their places in every part of the light. Out to its very corners places are right within " +
      fixed(out.within, 2) + " mm.\n" + "Edge tags seen: " + std::to_string(out.camera.tags.size()) +
      "; sheets that agree with the light: " + std::to_string(out.sheets) + ".\n";
  return out;
}

}  // namespace cowlcast::calibration
