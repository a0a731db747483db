#include "calibration/verdict/light_edge.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "calibration/detect/patch.h"
#include "calibration/solve/light.h"

namespace cowlcast::calibration {
namespace {

constexpr int kPerSide = 40;
constexpr double kReach = 25.0, kStep = 0.5;  // mm along the normal
constexpr int kWindow = 12;                   // samples either side of a step
constexpr size_t kFewestSteps = 30;
constexpr double kHeld = 0.1;  // weight that keeps freedoms at nothing which no step tells of
constexpr std::ptrdiff_t kFewestTelling = 15;
constexpr double kStill = 0.35;               // share of telling steps on an unmoved rim, at the least
constexpr double kTogether = 1.3;             // steps that moved together over those that stayed
constexpr std::ptrdiff_t kFewestOnSide = 10;  // steps that moved together along a side that moved
constexpr double kNear = 1.2;                 // mm: a step that belongs to the rim

// What moves a picture on the mat, as a homography near to none does: slides, an affine change, keystone.
using Freedoms = Eigen::Matrix<double, 8, 1>;

// What each freedom does along the normal at a place about the middle, the light's half-width being 1.
Freedoms displaced(const Eigen::Vector2d& normal, const Eigen::Vector2d& place) {
  const double along = normal.dot(place);
  Freedoms out;
  out << normal, normal * place.x(), normal * place.y(), along * place;
  return out;
}

struct RimStep {
  Eigen::Vector2d mat, normal;
  double offset = 0.0;  // mm outwards
  size_t side = 0;
};

// Where brightness falls off across the rim, on the way outwards.
std::optional<double> step_offset(const Scene& scene, int photo, const cv::Mat& picture,
                                  const Eigen::Vector2d& mat, const Eigen::Vector2d& normal) {
  std::vector<double> profile;
  for (double t = -kReach; t <= kReach; t += kStep) {
    const auto at = scene.photo_from_mat(photo, mat + t * normal);
    if (!at) return std::nullopt;
    const double value = sample(picture, *at);
    if (!std::isfinite(value)) return std::nullopt;
    profile.push_back(value);
  }
  // The place where the mean of a window inside exceeds that of one outside the most.
  double best = 0.0;
  int place = -1;
  std::vector<double> fall(profile.size(), 0.0);
  for (int i = kWindow; i + kWindow <= static_cast<int>(profile.size()); ++i) {
    double inside = 0.0, outside = 0.0;
    for (int k = 0; k < kWindow; ++k) {
      inside += profile[static_cast<size_t>(i - 1 - k)];
      outside += profile[static_cast<size_t>(i + k)];
    }
    fall[static_cast<size_t>(i)] = (inside - outside) / kWindow;
    if (fall[static_cast<size_t>(i)] > best) {
      best = fall[static_cast<size_t>(i)];
      place = i;
    }
  }
  if (place <= kWindow || place + kWindow + 1 >= static_cast<int>(profile.size()) || best < 12.0)
    return std::nullopt;
  const double before = fall[static_cast<size_t>(place - 1)], after = fall[static_cast<size_t>(place + 1)];
  const double bend = before - 2.0 * best + after;
  const double between = bend < 0.0 ? 0.5 * (before - after) / bend : 0.0;
  return -kReach + kStep * (place - 0.5 + std::clamp(between, -1.0, 1.0));
}

}  // namespace

std::optional<double> light_edge_shift(const Scene& scene, int photo, const cv::Mat& picture) {
  const double right = scene.projector_size.x() - 0.5, low = scene.projector_size.y() - 0.5;
  const Eigen::Vector2d corners[] = {{-0.5, -0.5}, {right, -0.5}, {right, low}, {-0.5, low}};
  std::vector<RimStep> steps;
  const Eigen::Vector2d middle = mat_from_picture(scene, {0.5 * right, 0.5 * low});
  double far = 0.0;
  for (size_t side = 0; side < 4; ++side)
    for (int i = 1; i < kPerSide; ++i) {
      const Eigen::Vector2d along = corners[(side + 1) % 4] - corners[side];
      const Eigen::Vector2d pixel = corners[side] + along * i / static_cast<double>(kPerSide);
      const Eigen::Vector2d mat = mat_from_picture(scene, pixel);
      const Eigen::Vector2d tangent = mat_from_picture(scene, pixel + 0.01 * along) - mat;
      Eigen::Vector2d normal = Eigen::Vector2d(-tangent.y(), tangent.x()).normalized();
      if (normal.dot(mat - middle) < 0.0) normal = -normal;
      const auto offset = step_offset(scene, photo, picture, mat, normal);
      if (!offset) continue;
      steps.push_back({mat, normal, *offset, side});
      far = std::max(far, (mat - middle).norm());
    }
  if (steps.size() < kFewestSteps) return std::nullopt;
  const auto slope_of = [&](const RimStep& step) {
    return displaced(step.normal, (step.mat - middle) / far);
  };
  Freedoms shift = Freedoms::Zero();
  double spread = kReach;
  for (int round = 0; round < 10; ++round) {
    Eigen::Matrix<double, 8, 8> normal = Eigen::Matrix<double, 8, 8>::Identity() * kHeld;
    Freedoms side = -kHeld * shift;
    std::vector<double> sizes;
    for (const RimStep& step : steps) {
      const Freedoms slope = slope_of(step);
      const double left = step.offset - slope.dot(shift);
      sizes.push_back(std::abs(left));
      const double weight = 1.0 / (1.0 + left * left / (4.0 * spread * spread));
      normal += weight * slope * slope.transpose();
      side += weight * left * slope;
    }
    shift += normal.ldlt().solve(side);
    std::nth_element(sizes.begin(), sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2),
                     sizes.end());
    spread = std::max(0.3, 1.4826 * sizes[sizes.size() / 2]);
  }
  // The rim is not the only edge about: mats and sheets end there too. Only steps
  // that the move would displace can tell: along a side that slides in itself
  // nothing changes. The rim stands where it should when a good part of them lie
  // there; it has moved when few do and more lie elsewhere together, along two sides at least: a light that
  // moves takes more than one along, and an edge that runs beside a single one is something else's.
  std::ptrdiff_t telling = 0, moved = 0, still = 0;
  std::array<std::ptrdiff_t, 4> moved_on{}, still_on{};
  double square = 0.0;
  for (const RimStep& step : steps) {
    const double shifted = slope_of(step).dot(shift);
    if (std::abs(shifted) < kNear) continue;
    ++telling;
    square += shifted * shifted;
    moved_on[step.side] += std::abs(step.offset - shifted) < kNear;
    still_on[step.side] += std::abs(step.offset) < kNear;
  }
  const auto more_moved = [](std::ptrdiff_t went, std::ptrdiff_t stayed) {
    return static_cast<double>(went) >= kTogether * static_cast<double>(stayed);
  };
  int sides = 0;
  for (size_t side = 0; side < 4; ++side) {
    moved += moved_on[side];
    still += still_on[side];
    sides += moved_on[side] >= kFewestOnSide && more_moved(moved_on[side], still_on[side]);
  }
  if (telling < kFewestTelling || static_cast<double>(still) > kStill * static_cast<double>(telling))
    return 0.0;
  if (sides < 2 || !more_moved(moved, still)) return std::nullopt;
  return std::sqrt(square / static_cast<double>(telling));
}

}  // namespace cowlcast::calibration
