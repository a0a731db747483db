#include "calibration/watch/recalibrate.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>

#include "calibration/refusal.h"
#include "calibration/verdict/verdict.h"
#include "calibration/watch/edge_tags.h"
#include "calibration/watch/nudge.h"
#include "calibration/watch/pictures.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kFarthest = 80.0;  // mm: a larger move was no accident, and may have brought others with it
constexpr double kMostTurn = 0.15;  // radians, of the mat
constexpr double kMostMiss = 0.35;  // mm: what mat or light may miss by, after the fit
constexpr double kMostViewMiss = 0.5;  // pixels, of a camera that was moved
constexpr double kModel = 0.01;        // of a move: what the camera's own model is trusted within
constexpr double kMissFloor = 0.03;    // mm
constexpr double kSigma = 0.05;        // pixels
constexpr int kMarkReach = 70;         // pixels
constexpr double kRayleigh95 = 2.4477;
constexpr double kTurnPrior = 0.05, kSlidePrior = 50.0;  // radians, mm: of a knock

const std::string kSheets = " Lay out the sheets and calibrate.";

// Where every sight is now, in means of frames. Nothing: not found.
std::vector<std::optional<SightShift>> shifts_in(const Watch& watch, const WatchLight& light) {
  const std::vector<FoundMarker> tags = find_edge_tags(light);
  const cv::Mat alone = light_alone(light);
  std::vector<std::optional<SightShift>> out;
  for (const WatchedSight& sight : watch.sights()) {
    out.emplace_back();
    std::optional<PatchShift> found;
    if (sight.sight.kind == SightKind::mark) {
      // The light alone, as it was learnt, looked for in the light alone.
      const PatchTracker tracker = sight.tracker.light_alone();
      if (const auto guess = tracker.search(alone, {0.0, 0.0}, kMarkReach))
        found = tracker.track(alone, *guess);
    } else if (sight.sight.kind == SightKind::tag) {
      for (const FoundMarker& tag : tags) {
        if (tag.code != edge_tag_code(sight.number)) continue;
        Eigen::Vector2d middle = Eigen::Vector2d::Zero();
        for (const Eigen::Vector2d& corner : tag.corners) middle += 0.25 * corner;
        found = sight.tracker.track(light.marked, middle - sight.sight.pixel);
      }
    } else {
      found = sight.tracker.track(light.marked, {0.0, 0.0});
    }
    if (found) out.back() = SightShift{found->shift, kSigma};
  }
  return out;
}

// Least squares over six small numbers, from zero, by numeric slopes. `misses` fills in weighed misses.
struct SixFit {
  SixNumbers size = SixNumbers::Zero();
  Eigen::Matrix<double, 6, 6> covariance = Eigen::Matrix<double, 6, 6>::Zero();  // for unit noise
  double rms = 0.0;  // of a coordinate, freedoms allowed for
};

template <typename Misses>
SixFit fit_six(const Misses& misses, double noise) {
  SixFit out;
  SixNumbers prior;
  prior << kTurnPrior, kTurnPrior, kTurnPrior, kSlidePrior, kSlidePrior, kSlidePrior;
  prior /= noise;  // in units of the misses' noise
  Eigen::VectorXd now = misses(out.size);
  for (int step = 0; step < 12; ++step) {
    const Eigen::MatrixXd slopes = slopes_of(misses, out.size);
    const SixNumbers belief = prior.cwiseInverse().cwiseAbs2();
    const Eigen::Matrix<double, 6, 6> normal =
        slopes.transpose() * slopes + Eigen::Matrix<double, 6, 6>(belief.asDiagonal());
    const Eigen::LDLT<Eigen::Matrix<double, 6, 6>> solver(normal);
    const SixNumbers change = -solver.solve(slopes.transpose() * now + belief.cwiseProduct(out.size));
    out.size += change;
    now = misses(out.size);
    out.covariance = solver.solve(Eigen::Matrix<double, 6, 6>::Identity());
    if (change.head<3>().norm() < 1e-9 && change.tail<3>().norm() < 1e-6) break;
  }
  out.rms = std::sqrt(now.squaredNorm() / std::max<double>(1.0, static_cast<double>(now.size()) - 6.0));
  return out;
}

struct Seen {
  const WatchedSight* sight;
  Eigen::Vector2d shift;
};

std::vector<Seen> of_kind(const Watch& watch, const std::vector<std::optional<SightShift>>& shifts, bool tags,
                          bool marks) {
  std::vector<Seen> out;
  for (size_t i = 0; i < shifts.size(); ++i) {
    const SightKind kind = watch.sights()[i].sight.kind;
    if (shifts[i] && ((tags && kind == SightKind::tag) || (marks && kind == SightKind::mark)))
      out.push_back({&watch.sights()[i], shifts[i]->shift});
  }
  return out;
}

// Places that do not go with the rest (a loose tag, a covered mark) are left out, the worst first.
template <typename Fit, typename Miss>
void leave_out_strays(std::vector<Seen>& seen, size_t fewest, double most, const Fit& fit, const Miss& miss) {
  for (;;) {
    fit();
    const auto worst = std::max_element(seen.begin(), seen.end(),
                                        [&](const Seen& a, const Seen& b) { return miss(a) < miss(b); });
    if (seen.size() <= fewest || worst == seen.end() || miss(*worst) <= most) return;
    seen.erase(worst);
  }
}

// The six numbers that leave least of `misses_of(size, seen)`, a list of a pair each; what strays further
// than `most` is left out.
template <typename MissesOf>
SixFit fit_seen(std::vector<Seen>& seen, size_t fewest, double most, const MissesOf& misses_of) {
  SixFit fit;
  leave_out_strays(
      seen, fewest, most,
      [&] { fit = fit_six([&](const SixNumbers& size) { return misses_of(size, seen); }, 0.1); },
      [&](const Seen& s) { return misses_of(fit.size, {s}).norm(); });
  return fit;
}

void mat_moved(const Watch& watch, std::vector<Seen> tags, Recalibration& out) {
  const FixedCamera& camera = watch.camera();
  const auto before = [&](const Seen& s) { return camera.mat_from_pixel(s.sight->sight.pixel); };
  const auto after = [&](const Seen& s) { return camera.mat_from_pixel(s.sight->sight.pixel + s.shift); };
  Eigen::Isometry2d old_from_new = Eigen::Isometry2d::Identity();
  const auto miss = [&](const Seen& s) { return (old_from_new * before(s) - after(s)).norm(); };
  leave_out_strays(
      tags, 4, 3.0 * kMostMiss,
      [&] {
        Eigen::Vector2d from = Eigen::Vector2d::Zero(), to = from;
        for (const Seen& s : tags) {
          from += before(s) / static_cast<double>(tags.size());
          to += after(s) / static_cast<double>(tags.size());
        }
        double along = 0.0, across = 0.0;
        for (const Seen& s : tags) {
          const Eigen::Vector2d a = before(s) - from, b = after(s) - to;
          along += a.dot(b);
          across += a.x() * b.y() - a.y() * b.x();
        }
        old_from_new = Eigen::Translation2d(to) * Eigen::Rotation2Dd(std::atan2(across, along)) *
                       Eigen::Translation2d(-from);
      },
      miss);
  double squares = 0.0;
  for (const Seen& s : tags) squares += miss(s) * miss(s);
  const double rms = std::sqrt(0.5 * squares / static_cast<double>(tags.size()));
  const double turn = Eigen::Rotation2Dd(old_from_new.rotation()).angle();
  if (tags.size() < 4 || rms > kMostMiss || std::abs(turn) > kMostTurn)
    throw Refusal("The mat moved, but its tags do not tell well enough where to (they miss by " +
                  fixed(rms, 2) + " mm)." + kSheets);
  Eigen::Isometry3d lifted = Eigen::Isometry3d::Identity();
  lifted.linear().topLeftCorner<2, 2>() = old_from_new.linear();
  lifted.translation().head<2>() = old_from_new.translation();
  out.map.projector_from_mat_frame = watch.map().projector_from_mat_frame * lifted;
  out.camera.camera_from_mat = camera.camera_from_mat * lifted;
  const Eigen::Isometry2d new_from_old = old_from_new.inverse();
  for (Eigen::Vector2d& p : out.map.lit_area) p = new_from_old * p;
  out.map.error = watch.map().error.moved_by(new_from_old);
  out.added95 =
      kRayleigh95 * std::max(kMissFloor, rms) * std::sqrt(3.0 / (2.0 * static_cast<double>(tags.size()))) +
      kModel * out.motion.mm;
}

void camera_moved(const Watch& watch, std::vector<Seen> all, Recalibration& out) {
  const FixedCamera& before = watch.camera();
  const auto misses = [&](const SixNumbers& size, const std::vector<Seen>& seen) {
    const Eigen::Isometry3d camera_from_mat = nudged(before.camera_from_mat, size);
    Eigen::VectorXd off(2 * static_cast<Eigen::Index>(seen.size()));
    Eigen::Index row = 0;
    for (const Seen& s : seen) {
      const Eigen::Vector2d& pixel = s.sight->sight.pixel;
      const Eigen::Vector2d mat = before.mat_from_pixel(pixel);
      const Eigen::Vector3d at = camera_from_mat * Eigen::Vector3d(mat.x(), mat.y(), 0.0);
      off.segment<2>(row) = before.lens.pixel_from_ray(at.head<2>() / at.z()) - pixel - s.shift;
      row += 2;
    }
    return off;
  };
  const SixFit fit = fit_seen(all, 8, 3.0 * kMostViewMiss, misses);
  if (all.size() < 8 || fit.rms > kMostViewMiss)
    throw Refusal("The camera moved, but tags and marks do not tell well enough where to (they miss by " +
                  fixed(fit.rms, 2) + " pixels). Locate the camera again.");
  out.camera.camera_from_mat = nudged(before.camera_from_mat, fit.size);
}

void projector_moved(const Watch& watch, std::vector<Seen> marks, Recalibration& out) {
  const FixedCamera& camera = watch.camera();
  TableMap bare;  // the light alone: no need to copy the rest time and again
  bare.width = watch.map().width;
  bare.height = watch.map().height;
  bare.lens = watch.map().lens;
  bare.keystone = watch.map().keystone;
  const auto moved_by = [&](const SixNumbers& size) {
    bare.projector_from_mat_frame = nudged(watch.map().projector_from_mat_frame, size);
    return bare;
  };
  // By how much the light moved on the mat, as the camera sees it; where it was, by the map.
  const auto misses = [&](const SixNumbers& size, const std::vector<Seen>& seen) {
    const TableMap moved = moved_by(size);
    Eigen::VectorXd off(2 * static_cast<Eigen::Index>(seen.size()));
    Eigen::Index row = 0;
    for (const Seen& s : seen) {
      const Sight& sight = s.sight->sight;
      const Eigen::Vector2d slid =
          camera.mat_from_pixel(sight.pixel + s.shift) - camera.mat_from_pixel(sight.pixel);
      off.segment<2>(row) =
          moved.mat_from_projector(sight.picture) - watch.map().mat_from_projector(sight.picture) - slid;
      row += 2;
    }
    return off;
  };
  const SixFit fit = fit_seen(marks, 6, 3.0 * kMostMiss, misses);
  if (marks.size() < 6 || fit.rms > kMostMiss)
    throw Refusal(
        "The projector moved, or was zoomed or refocused: its marks do not lie as a move alone would lay "
        "them (they miss by " +
        fixed(fit.rms, 2) + " mm)." + kSheets);
  out.map.projector_from_mat_frame = nudged(watch.map().projector_from_mat_frame, fit.size);

  const double noise = std::max(kMissFloor, fit.rms);
  const auto added_at = [&](const Eigen::Vector2d& picture) {
    const auto slopes = slopes_of(
        [&](const SixNumbers& size) { return moved_by(size).mat_from_projector(picture); }, fit.size);
    const Eigen::Matrix2d spread = slopes * fit.covariance * slopes.transpose();
    return kRayleigh95 * noise * std::sqrt(0.5 * spread.trace());
  };
  for (int i = 0; i <= 4; ++i)
    for (int j = 0; j <= 4; ++j)
      out.added95 =
          std::max(out.added95,
                   added_at(0.25 * Eigen::Vector2d(j * (out.map.width - 1.0), i * (out.map.height - 1.0))));
  out.added95 += kModel * out.motion.mm;
  for (double& node : out.map.error.mm95) node = std::hypot(node, out.added95);
  const Eigen::Isometry3d& now = out.map.projector_from_mat_frame;
  const Eigen::Vector3d lamp = now.inverse().translation();
  if (!(lamp.z() > 0.0)) throw Refusal("The projector's place came out under the table." + kSheets);
  for (size_t i = 0; i < out.map.lit_area.size(); ++i)
    out.map.lit_area[i] = out.map.mat_from_projector(watch.map().projector_from_mat(watch.map().lit_area[i]));
}

}  // namespace

Recalibration recalibrate(const Watch& watch, const WatchPictures& pictures) {
  const WatchLight light = watch_light(pictures);
  if (light.marked.cols != watch.camera().width || light.marked.rows != watch.camera().height)
    throw Refusal("The camera sends pictures of another size than when it was located. Locate it again.");
  const std::vector<std::optional<SightShift>> shifts = shifts_in(watch, light);
  std::vector<Sight> sights;
  for (const WatchedSight& watched : watch.sights()) sights.push_back(watched.sight);
  const Motions motions(watch.map(), watch.camera(), sights);

  Recalibration out;
  out.map = watch.map();
  out.camera = watch.camera();
  out.motion = motions.explain(shifts);
  const std::vector<Seen> tags = of_kind(watch, shifts, true, false),
                          marks = of_kind(watch, shifts, false, true);
  if (tags.size() < 4 || marks.size() < 6)
    throw Refusal(
        "Only " + std::to_string(tags.size()) + " tags and " + std::to_string(marks.size()) +
        " marks of light are found again. Clear the mat's edge and the border of the light and try again, "
        "or lay out the sheets and calibrate.");
  if (out.motion.moved.empty()) {
    out.summary = "Nothing moved: all stands where it was.";
    return out;
  }
  const Mover what = out.motion.moved.front().what;
  if (out.motion.moved.size() > 1)
    throw Refusal("More than one thing moved: the " + name_of(what) + " and the " +
                  name_of(out.motion.moved.back().what) + "." + kSheets);
  if (out.motion.mm > kFarthest)
    throw Refusal("The " + name_of(what) + " moved by " + fixed(out.motion.mm, 0) +
                  " mm, too far to be followed." + kSheets);
  if (what == Mover::mat) mat_moved(watch, tags, out);
  if (what == Mover::projector) projector_moved(watch, marks, out);
  if (what == Mover::camera)
    camera_moved(watch, of_kind(watch, shifts, true, true), out);
  else
    ++out.map.revision;

  double worst = 0.0;
  for (const Eigen::Vector2d& p : out.map.lit_area) worst = std::max(worst, out.map.error_at(p));
  if (worst > kMostError && worst > 1.001 * watch.map().error_at(out.map.lit_area.front()))
    throw Refusal("Tags and marks tell where the " + name_of(what) + " is now only within " +
                  fixed(worst, 1) + " mm." + kSheets);
  out.summary = "The " + name_of(what) + " moved, by up to " + fixed(out.motion.mm, 1) + " mm. ";
  out.summary += what == Mover::camera
                     ? "The lines are as right as before; the camera's place is known again."
                     : "That is allowed for: lines land where they were within " + fixed(out.added95, 2) +
                           " mm, and within " + fixed(worst, 2) + " mm of true.";
  return out;
}

}  // namespace cowlcast::calibration
