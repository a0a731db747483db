#include <algorithm>
#include <cmath>
#include <numbers>

#include "calibration/virtual_table/draws.h"
#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration::virtual_table {

namespace {

constexpr double degree = std::numbers::pi / 180.0;

struct Box {
  Eigen::Vector2d low{1e9, 1e9}, high{-1e9, -1e9};
  bool whole = true;
};

// Extent in the photograph of the points that must be seen.
Box box_of(const RoomCamera& camera, const std::vector<Eigen::Vector2d>& points) {
  Box box;
  for (const auto& point : points) {
    const auto pixel = camera_from_room(camera, {point.x(), point.y(), 0.0});
    if (!pixel) {
      box.whole = false;
      return box;
    }
    box.low = box.low.cwiseMin(*pixel);
    box.high = box.high.cwiseMax(*pixel);
  }
  return box;
}

// How somebody holds a phone: from which side, how tilted, how turned, looking where.
struct Hold {
  double side = 0.0;  // direction from the table to the person, from +x anticlockwise
  double tilt = 0.0;  // of the view from straight down
  double roll = 0.0;
  Eigen::Vector2d look{0.0, 0.0};
};

Eigen::Isometry3d camera_from_room_of(const Hold& hold, double away) {
  const Eigen::Vector3d out(std::cos(hold.side) * std::sin(hold.tilt),
                            std::sin(hold.side) * std::sin(hold.tilt), std::cos(hold.tilt));
  const Eigen::Vector3d right(-std::sin(hold.side), std::cos(hold.side),
                              0.0);  // of the person who looks at the table
  Eigen::Matrix3d room_from_camera;
  room_from_camera.col(2) = -out;
  room_from_camera.col(0) = right;
  room_from_camera.col(1) = room_from_camera.col(2).cross(room_from_camera.col(0));
  room_from_camera =
      room_from_camera * Eigen::AngleAxisd(hold.roll, Eigen::Vector3d::UnitZ()).toRotationMatrix();
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() = room_from_camera;
  pose.translation() = Eigen::Vector3d(hold.look.x(), hold.look.y(), 0.0) + away * out;
  return pose.inverse();
}

// The nearest distance at which everything fits, looking so that it sits in the middle; below 0: none.
double step_back(RoomCamera& camera, Hold& hold, const std::vector<Eigen::Vector2d>& points, double margin) {
  const Eigen::Vector2d size(camera.width - 1.0, camera.height - 1.0);
  const auto fits = [&](double away) {
    camera.camera_from_room = camera_from_room_of(hold, away);
    const Box box = box_of(camera, points);
    const double free = margin * size.x();
    return box.whole && box.low.minCoeff() > free && (size - box.high).minCoeff() > free;
  };
  double found = -1.0;
  for (int round = 0; round < 4; ++round) {
    double low = 300.0, high = 4000.0;
    if (!fits(high)) return -1.0;
    for (int step = 0; step < 24; ++step) {
      const double away = 0.5 * (low + high);
      (fits(away) ? high : low) = away;
    }
    found = high;
    if (!fits(found)) return -1.0;
    const Box box = box_of(camera, points);
    const auto aim = mat_from_camera(camera, 0.5 * (box.low + box.high)),
               now = mat_from_camera(camera, 0.5 * size);
    if (!aim || !now) return -1.0;
    if (round < 3) hold.look += *aim - *now;
  }
  return found;
}

}  // namespace

std::vector<RoomCamera> draw_poses(Dice& dice, const RoomOptions& options, const RoomCamera& phone,
                                   const Room& room, int count) {
  std::vector<Eigen::Vector2d> points = lit_outline(room.projector);
  Eigen::Vector2d middle = Eigen::Vector2d::Zero();
  for (const auto& point : points) middle += point / static_cast<double>(points.size());
  for (const PaperSheet& sheet : room.sheets)
    for (const auto& corner : paper_outline(sheet)) points.push_back(corner);

  std::vector<RoomCamera> poses;
  std::vector<double> sides;
  const double first_side = -0.5 * std::numbers::pi + dice.normal(50.0 * degree);
  for (int shot = 0; shot < count; ++shot) {
    RoomCamera best = phone;
    double best_miss = 1e9, best_side = 0.0;
    for (int attempt = 0; attempt < 60 && best_miss > 0.0; ++attempt) {
      Hold hold;
      hold.side = shot == 0 ? first_side : first_side + dice.uniform(-110.0, 110.0) * degree;
      hold.tilt = dice.uniform(10.0, 40.0) * degree;
      hold.roll = dice.normal(7.0 * degree);
      const int quarters = dice.below(4);
      const bool fits_better = dice.chance(0.8);  // most people turn the phone to fill the picture
      hold.look = middle;
      bool alone = true;
      for (double side : sides)
        alone = alone && std::abs(std::remainder(side - hold.side, 2.0 * std::numbers::pi)) > 20.0 * degree;
      if (!alone) continue;
      RoomCamera camera = phone;
      camera.shake = {dice.normal(0.3 + 0.5 * options.hardness), dice.normal(0.3 + 0.5 * options.hardness)};
      if (options.rolling_shutter) camera.rolling = {dice.normal(0.5), dice.normal(0.5)};
      const double margin = dice.uniform(0.015, 0.08);
      Hold turned = hold;
      turned.roll += 0.5 * std::numbers::pi;
      Hold as_is = hold;
      const bool upright =
          step_back(camera, turned, points, margin) < step_back(camera, as_is, points, margin);
      hold.roll += 0.5 * std::numbers::pi * (fits_better ? (upright ? 1 : 0) + 2 * (quarters / 2) : quarters);
      const double away = step_back(camera, hold, points, margin);
      if (away < 0.0) continue;
      // An arm's reach: the phone between 0.8 and 1.4 m over the mat, as near as that can be had.
      const double height = away * std::cos(hold.tilt);
      const double miss = std::max({0.0, 800.0 - height, height - 1400.0});
      if (miss >= best_miss) continue;
      best_miss = miss;
      best_side = hold.side;
      // Focusing near moves the glass out, and the image grows.
      camera.optic.focal *= 1.0 + options.breathing / away;
      best = camera;
    }
    sides.push_back(best_side);
    best.exposure_stops = dice.normal(0.15);
    poses.push_back(best);
  }
  return poses;
}

int orientation_of(const RoomCamera& camera) {
  const auto here = camera_from_room(camera, {0.0, 0.0, 0.0}),
             beyond = camera_from_room(camera, {0.0, 10.0, 0.0});
  if (!here || !beyond) return 1;
  const Eigen::Vector2d up = *beyond - *here;
  if (std::abs(up.y()) >= std::abs(up.x())) return up.y() < 0.0 ? 1 : 3;
  return up.x() < 0.0 ? 6 : 8;
}

}  // namespace cowlcast::calibration::virtual_table
