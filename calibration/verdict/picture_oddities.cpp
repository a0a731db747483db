// Whether the projected picture stood still between photographs.
#include <algorithm>
#include <map>
#include <vector>

#include "calibration/refusal.h"
#include "calibration/solve/start.h"
#include "calibration/verdict/findings.h"
#include "calibration/verdict/light_edge.h"

namespace cowlcast::calibration {
namespace {

constexpr double kApart = 0.8;  // mm: a corner in light lies this far from itself only when something moved
constexpr double kEdgeMoved = 1.5;  // mm: the light's edge is soft
constexpr size_t kFewestCorners = 30;

// Where each corner of the target falls by one photograph alone, whose pose is taken from paper alone: in the
// joint fit, paper would give way to light that moved.
std::map<int, Eigen::Vector2d> fallen(const Scene& by_paper, int photo) {
  std::map<int, Eigen::Vector2d> out;
  for (const LightSighting& s : by_paper.light) {
    const LightPoint& point = by_paper.lights[static_cast<size_t>(s.point)];
    if (s.photo != photo) continue;
    try {
      out[point.corner] = by_paper.mat_from_photo(photo, s.pixel, by_paper.height_of(point));
    } catch (const Refusal&) {  // beyond the lens: no place
    }
  }
  return out;
}

// How far apart two photographs have the light, mm; nothing with too few corners in common.
std::optional<double> apart(const std::map<int, Eigen::Vector2d>& a,
                            const std::map<int, Eigen::Vector2d>& b) {
  std::vector<double> sizes;
  for (const auto& [corner, place] : a)
    if (const auto other = b.find(corner); other != b.end()) sizes.push_back((place - other->second).norm());
  if (sizes.size() < kFewestCorners) return std::nullopt;
  const auto middle = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2);
  std::nth_element(sizes.begin(), middle, sizes.end());
  return *middle;
}

}  // namespace

std::vector<Finding> find_picture_oddities(const Scene& scene, const std::vector<cv::Mat>& pictures) {
  std::vector<Finding> out;
  Scene by_paper = scene;
  settle_paper(by_paper);
  std::map<int, std::map<int, Eigen::Vector2d>> places;
  for (int photo = 0; photo < static_cast<int>(scene.photos.size()); ++photo) {
    double size = 0.0;
    if (scene.photos[static_cast<size_t>(photo)].target) {
      places[photo] = fallen(by_paper, photo);
      for (const auto& [other, where] : places)
        if (other != photo) size = std::max(size, apart(places[photo], where).value_or(0.0));
      if (size < kApart) size = 0.0;
    } else {
      const auto moved = light_edge_shift(scene, photo, pictures[static_cast<size_t>(photo)]);
      if (moved && *moved > kEdgeMoved) size = *moved;
    }
    if (size > 0.0) out.push_back({Oddity::picture_moved, -1, photo, size, {}});
  }
  return out;
}

}  // namespace cowlcast::calibration
