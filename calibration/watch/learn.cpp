#include <algorithm>
#include <cmath>
#include <map>
#include <opencv2/imgproc.hpp>

#include "calibration/detect/markers.h"
#include "calibration/refusal.h"
#include "calibration/watch/border_marks.h"
#include "calibration/watch/edge_tags.h"
#include "calibration/watch/pictures.h"
#include "calibration/watch/watch.h"

namespace cowlcast::calibration {
namespace {

constexpr size_t kFewestTags = 4, kFewestMarks = 6;
constexpr int kRim = 5;                   // pixels around a tag or mark that its patch takes in
constexpr int kLargest = 34;              // pixels: half a side of a patch
constexpr double kLeastContrast = 0.006;  // of a mark's or tag's light, of full white
constexpr double kSigmaFloor = 0.02;      // pixels
constexpr double kCloser = 2.0;           // enlargement that small tags are looked for at
constexpr int kMostRoomSights = 8, kRoomHalf = 13;
constexpr double kDimmer = 0.75;  // of the dark picture's light: more light darkens nothing

cv::Rect box_around(const std::vector<Eigen::Vector2d>& points, const Eigen::Vector2d& middle) {
  Eigen::Vector2d reach = Eigen::Vector2d::Zero();
  for (const Eigen::Vector2d& p : points) reach = reach.cwiseMax((p - middle).cwiseAbs());
  const int half_x = std::min(kLargest, static_cast<int>(std::ceil(reach.x())) + kRim),
            half_y = std::min(kLargest, static_cast<int>(std::ceil(reach.y())) + kRim);
  const int x = static_cast<int>(std::lround(middle.x())), y = static_cast<int>(std::lround(middle.y()));
  return {x - half_x, y - half_y, 2 * half_x + 1, 2 * half_y + 1};
}

bool inside(const cv::Rect& box, const cv::Size& size) {
  const int room = PatchTracker::kReach + 2;
  return box.x >= room && box.y >= room && box.x + box.width + room <= size.width &&
         box.y + box.height + room <= size.height;
}

void add_tags(const WatchLight& light, std::vector<WatchedSight>& sights) {
  for (const FoundMarker& found : find_edge_tags(light)) {
    Eigen::Vector2d middle = Eigen::Vector2d::Zero();
    for (const Eigen::Vector2d& corner : found.corners) middle += 0.25 * corner;
    const cv::Rect box = box_around({found.corners.begin(), found.corners.end()}, middle);
    if (!inside(box, light.marked.size())) continue;
    PatchTracker tracker = PatchTracker::of_print(light.marked, box);
    if (tracker.contrast() < kLeastContrast) continue;
    sights.push_back(
        {{SightKind::tag, middle, Eigen::Vector2d::Zero()}, *edge_tag(found.code), std::move(tracker), 0.05});
  }
}

void add_marks(const TableMap& map, const FixedCamera& camera, const WatchLight& light,
               std::vector<WatchedSight>& sights) {
  const BorderMarks marks = border_marks(map.width, map.height);
  for (size_t i = 0; i < marks.centres.size(); ++i) {
    const auto seen = [&](const Eigen::Vector2d& picture) {
      return camera.pixel_from_mat(map.mat_from_projector(picture));
    };
    const auto middle = seen(marks.centres[i]);
    std::vector<Eigen::Vector2d> corners;
    for (const double x : {-1.0, 1.0})
      for (const double y : {-1.0, 1.0})
        if (const auto at = seen(marks.centres[i] + marks.square * Eigen::Vector2d(x, y)))
          corners.push_back(*at);
    if (!middle || corners.size() < 4) continue;
    const cv::Rect box = box_around(corners, *middle);
    if (!inside(box, light.marked.size())) continue;
    PatchTracker tracker = PatchTracker::of_light(light.dark, light.plain, light.marked, box);
    if (tracker.contrast() < kLeastContrast) continue;
    sights.push_back(
        {{SightKind::mark, *middle, marks.centres[i]}, static_cast<int>(i), std::move(tracker), 0.05});
  }
}

// Anything with corners beside tags and light may tell that the camera moved.
void add_room(const TableMap& map, const FixedCamera& camera, const WatchLight& light,
              std::vector<WatchedSight>& sights) {
  cv::Mat seen;
  cv::sqrt(light.marked, seen);
  cv::Mat allowed(seen.size(), CV_8UC1, cv::Scalar(255));
  std::vector<cv::Point> busy;
  for (const WatchedSight& sight : sights) {
    const cv::Rect& box = sight.tracker.box();
    busy.emplace_back(box.tl());
    busy.emplace_back(box.br());
    busy.emplace_back(box.x, box.y + box.height);
    busy.emplace_back(box.x + box.width, box.y);
  }
  for (const Eigen::Vector2d& mat : map.lit_area)
    if (const auto at = camera.pixel_from_mat(mat)) busy.emplace_back(cvRound(at->x()), cvRound(at->y()));
  std::vector<cv::Point> hull;
  cv::convexHull(busy, hull);
  cv::fillConvexPoly(allowed, hull, cv::Scalar(0));
  const int rim = kRoomHalf + kLargest;  // a patch of its own, and the mat's edge beyond the tags
  cv::erode(allowed, allowed, cv::Mat::ones(2 * rim + 1, 2 * rim + 1, CV_8U), {-1, -1}, 1,
            cv::BORDER_CONSTANT, cv::Scalar(255));
  std::vector<cv::Point2f> corners;
  cv::goodFeaturesToTrack(seen, corners, kMostRoomSights, 0.05, 50.0, allowed, 9);
  for (const cv::Point2f& corner : corners) {
    const cv::Rect box(cvRound(corner.x) - kRoomHalf, cvRound(corner.y) - kRoomHalf, 2 * kRoomHalf + 1,
                       2 * kRoomHalf + 1);
    if (!inside(box, light.marked.size())) continue;
    PatchTracker tracker = PatchTracker::of_print(light.marked, box);
    if (tracker.contrast() < kLeastContrast) continue;
    try {
      camera.mat_from_pixel({corner.x, corner.y});
    } catch (const Refusal&) {
      continue;  // above the horizon of the mat
    }
    sights.push_back(
        {{SightKind::room, {corner.x, corner.y}, Eigen::Vector2d::Zero()}, 0, std::move(tracker), 0.05});
  }
}

// How well single frames agree with what was learnt; sights that do not are of no use.
void measure_noise(const std::vector<cv::Mat>& frames, std::vector<WatchedSight>& sights) {
  std::vector<WatchedSight> kept;
  for (WatchedSight& sight : sights) {
    double squares = 0.0, misfit = 0.0;
    size_t seen = 0;
    sight.tracker.believed = 0.8;
    for (const cv::Mat& frame : frames)
      if (const auto moved = sight.tracker.track(frame, {0.0, 0.0})) {
        squares += moved->shift.squaredNorm();
        misfit = std::max(misfit, moved->misfit);
        ++seen;
      }
    if (seen * 5 < frames.size() * 4) continue;
    sight.sigma = std::max(kSigmaFloor, std::sqrt(0.5 * squares / static_cast<double>(seen)));
    // A mat that moved under a mark changes how it looks; a covered mark looks like nothing.
    sight.tracker.believed = (sight.sight.kind == SightKind::mark ? 0.35 : 0.2) + 1.3 * misfit;
    const bool of_use = sight.sigma < (sight.sight.kind == SightKind::room ? 0.15 : 0.4) && misfit < 0.45;
    if (of_use) kept.push_back(std::move(sight));
  }
  sights = std::move(kept);
}

// A camera that sets its exposure anew for each picture shows what the projector does not light darker under
// more light.
void check_exposure(const WatchLight& light) {
  cv::Mat dark;
  cv::resize(light.dark, dark, cv::Size(32, 18), 0, 0, cv::INTER_AREA);
  dark = cv::max(dark, 1e-4);
  for (const cv::Mat* more : {&light.plain, &light.marked}) {
    cv::Mat ratio;
    cv::resize(*more, ratio, dark.size(), 0, 0, cv::INTER_AREA);
    ratio /= dark;
    std::vector<float> values(ratio.begin<float>(), ratio.end<float>());
    const auto low = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 20);
    std::nth_element(values.begin(), low, values.end());
    if (*low < kDimmer)
      throw Refusal(
          "The camera changes its exposure with the picture that is shown, so nothing can be learnt. Hold "
          "its "
          "exposure, in its own settings, and try again.");
  }
}

size_t count_of(const std::vector<WatchedSight>& sights, SightKind kind) {
  return static_cast<size_t>(std::count_if(sights.begin(), sights.end(),
                                           [&](const WatchedSight& s) { return s.sight.kind == kind; }));
}

}  // namespace

cv::Mat mean_light(const std::vector<cv::Mat>& frames) {
  cv::Mat sum;
  for (const cv::Mat& frame : frames) {
    if (frame.type() != CV_8UC1 || (!sum.empty() && frame.size() != sum.size()))
      throw std::invalid_argument("frames to watch by are 8-bit grey and of one size");
    if (sum.empty())
      sum = linear_light(frame);
    else
      sum += linear_light(frame);
  }
  return sum / static_cast<double>(frames.size());
}

WatchLight watch_light(const WatchPictures& pictures) {
  if (pictures.dark.empty() || pictures.plain.empty() || pictures.marked.empty())
    throw std::invalid_argument("watching needs frames of the dark, the plain and the marked picture");
  WatchLight out{mean_light(pictures.dark), mean_light(pictures.plain), mean_light(pictures.marked)};
  return out;
}

cv::Mat light_alone(const WatchLight& light) {
  const cv::Mat answer = cv::max(light.plain - light.dark, 1e-4);
  return cv::min(cv::max(cv::Mat((light.marked - light.dark) / answer), -0.5), 1.5);
}

std::vector<FoundMarker> find_edge_tags(const cv::Mat& grey) {
  std::map<int, FoundMarker> found;
  for (const FoundMarker& marker : find_markers(grey, MarkerFamily::paper, 14.0))
    if (edge_tag(marker.code)) found.emplace(marker.code, marker);
  std::vector<FoundMarker> out;
  for (const auto& [code, marker] : found) out.push_back(marker);
  return out;
}

std::vector<FoundMarker> find_edge_tags(const WatchLight& light) {
  // Tags beside the light are seen by the room's light alone, tags in a dark room by the projector's.
  std::map<int, FoundMarker> found;
  for (const cv::Mat* picture : {&light.dark, &light.plain}) {
    cv::Mat few, closer;
    cv::resize(*picture, few, {}, 0.25, 0.25, cv::INTER_AREA);
    std::vector<float> values(few.begin<float>(), few.end<float>());
    const auto bright = values.begin() + static_cast<std::ptrdiff_t>(values.size() * 99 / 100);
    std::nth_element(values.begin(), bright, values.end());
    cv::sqrt(cv::min(cv::max(*picture / std::max(*bright, 1e-5F), 0.0), 1.0), closer);
    closer.convertTo(closer, CV_8U, 255.0);
    cv::resize(closer, closer, {}, kCloser, kCloser, cv::INTER_CUBIC);  // small tags
    for (FoundMarker marker : find_edge_tags(closer)) {
      for (Eigen::Vector2d& corner : marker.corners)
        corner = (corner + Eigen::Vector2d(0.5, 0.5)) / kCloser - Eigen::Vector2d(0.5, 0.5);
      found.emplace(marker.code, marker);
    }
  }
  std::vector<FoundMarker> out;
  for (const auto& [code, marker] : found) out.push_back(marker);
  return out;
}

Watch Watch::learn(const TableMap& map, const FixedCamera& camera, const WatchPictures& pictures) {
  const WatchLight light = watch_light(pictures);
  if (light.marked.cols != camera.width || light.marked.rows != camera.height)
    throw Refusal("The camera sends pictures of another size than when it was located. Locate it again.");
  check_exposure(light);
  std::vector<WatchedSight> sights;
  add_tags(light, sights);
  add_marks(map, camera, light, sights);
  add_room(map, camera, light, sights);
  measure_noise(pictures.marked, sights);
  const size_t tags = count_of(sights, SightKind::tag), marks = count_of(sights, SightKind::mark);
  if (tags < kFewestTags)
    throw Refusal(
        "The camera sees only " + std::to_string(tags) +
        " of the tags at the mat's edge clearly. Glue eight or more flat around the edge, where the "
        "camera sees them, clear the view, and give the room some light.");
  if (marks < kFewestMarks)
    throw Refusal(
        "The camera sees only " + std::to_string(marks) +
        " of the twelve marks at the border of the light clearly. Turn the camera so that it sees the "
        "whole light, clear the border, and dim the room.");
  return Watch(map, camera, std::move(sights));
}

}  // namespace cowlcast::calibration
