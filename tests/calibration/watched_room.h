// A simulated table under a fixed camera, with tags at the mat's edge, that can be knocked.
#pragma once

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <opencv2/calib3d.hpp>

#include "calibration/camera/fixed_camera.h"
#include "calibration/table_map/table_map.h"
#include "calibration/virtual_table/fixed_film.h"
#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/textures.h"
#include "calibration/virtual_table/truth.h"
#include "calibration/watch/border_marks.h"
#include "calibration/watch/edge_tags.h"
#include "calibration/watch/watch.h"

namespace cowlcast::calibration::testing {

namespace vt = virtual_table;

struct WatchedRoom {
  vt::Room room;
  vt::RoomCamera eye;
  TableMap map;        // what a calibration would have found, all but exactly
  FixedCamera camera;  // found with a focal length that is a little off
};

inline Eigen::Vector2d laid(const vt::Place& place, const Eigen::Vector2d& own) {
  return Eigen::Vector2d(place.x, place.y) + Eigen::Rotation2Dd(place.turn) * own;
}

// The map of the room's projector; its wobble is left out.
inline TableMap true_map(const vt::RoomProjector& projector) {
  TableMap map;
  map.width = projector.width;
  map.height = projector.height;
  map.lens.focal = projector.optic.focal.mean();
  map.lens.centre = projector.optic.centre;
  map.lens.k1 = projector.optic.k1;
  map.lens.k2 = projector.optic.k2;
  map.lens.k3 = projector.optic.k3;
  map.lens.p1 = projector.optic.p1;
  map.lens.p2 = projector.optic.p2;
  map.projector_from_mat_frame = projector.projector_from_room;
  for (const Eigen::Vector2d& p : vt::lit_outline(projector)) map.lit_area.push_back(p);
  map.error.first = {-800.0, -500.0};
  map.error.step = 1600.0;
  map.error.columns = map.error.rows = 2;
  map.error.mm95.assign(4, 0.2);
  map.made_at = "2000-01-01T00:00:00Z";
  return map;
}

inline std::vector<Eigen::Vector2d> lit_pixels(const vt::RoomProjector& projector) {
  std::vector<Eigen::Vector2d> out;
  for (int i = 0; i <= 4; ++i)
    for (int j = 0; j <= 6; ++j)
      out.emplace_back((projector.width - 1) * j / 6.0, (projector.height - 1) * i / 4.0);
  return out;
}

// How far light lands from where the map says, worst place of the picture, mm; the mat has gone with
// `room_from_mat`.
inline double worst_miss(const TableMap& map, const vt::RoomProjector& projector,
                         const Eigen::Isometry2d& room_from_mat = Eigen::Isometry2d::Identity()) {
  double worst = 0.0;
  for (const Eigen::Vector2d& pixel : lit_pixels(projector))
    worst = std::max(
        worst,
        (room_from_mat * map.mat_from_projector(pixel) - *vt::mat_from_projector(projector, pixel)).norm());
  return worst;
}

// Where the mat's own frame has gone when the mat went from one place to another.
inline Eigen::Isometry2d mat_gone(const vt::Place& from, const vt::Place& to) {
  const auto frame_of = [](const vt::Place& p) {
    return Eigen::Isometry2d(Eigen::Translation2d(p.x, p.y) * Eigen::Rotation2Dd(p.turn));
  };
  return frame_of(to) * frame_of(from).inverse();
}

// Eight tags along the mat's edge, clear of the marks of light.
inline void add_tags(vt::Room& room, const TableMap& map) {
  const Eigen::Vector2d half = 0.5 * room.mat.size - Eigen::Vector2d::Constant(32.0);
  const BorderMarks marks = border_marks(map.width, map.height);
  const double around = 4.0 * (half.x() + half.y());
  const auto on_edge = [&](double way) {
    way = std::fmod(way, around);
    const double w = 2.0 * half.x(), h = 2.0 * half.y();
    if (way < w) return Eigen::Vector2d(-half.x() + way, -half.y());
    if (way < w + h) return Eigen::Vector2d(half.x(), -half.y() + way - w);
    if (way < 2 * w + h) return Eigen::Vector2d(half.x() - (way - w - h), half.y());
    return Eigen::Vector2d(-half.x(), half.y() - (way - 2 * w - h));
  };
  const double paper = kEdgeTagSide + 2.0 * kEdgeTagRim;
  for (int k = 0; k < 8; ++k) {
    for (int step = 0; step < 40; ++step) {  // nearer to the wanted place first
      const double aside = 12.0 * (step % 2 == 0 ? step / 2 : -(step / 2 + 1));
      const Eigen::Vector2d own = on_edge(around * k / 8.0 + aside + around), at = laid(room.mat.place, own);
      bool clear = true;
      for (const Eigen::Vector2d& centre : marks.centres)
        clear = clear && (map.mat_from_projector(centre) - at).norm() > 75.0;
      if (!clear) continue;
      vt::PaperSheet tag;
      tag.page = edge_tag_picture(k + 1, 6.0);
      tag.pixel_mm = paper / tag.page.cols;
      tag.paper = {paper, paper};
      tag.place = {at.x(), at.y(), room.mat.place.turn + 0.1 * k};
      room.sheets.push_back(tag);
      break;
    }
  }
}

// A camera on a stand that has light and tags just in view.
inline vt::RoomCamera draw_eye(vt::Dice& dice, const vt::Room& room) {
  vt::RoomCamera eye;
  eye.width = 1280;
  eye.height = 720;
  const double slant = dice.uniform(0.0, 0.35), side = dice.uniform(0.0, 2.0 * std::numbers::pi);
  const Eigen::Vector3d from(1300.0 * std::tan(slant) * std::cos(side),
                             1300.0 * std::tan(slant) * std::sin(side), dice.uniform(1200.0, 1600.0));
  const Eigen::Vector3d middle(room.mat.place.x, room.mat.place.y, 0.0);
  const Eigen::Vector3d view = (middle - from).normalized();
  const Eigen::Vector3d right = Eigen::Vector3d(view.cross(Eigen::Vector3d::UnitY())).normalized();
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() << right, view.cross(right), view;
  pose.linear() =
      pose.linear() * Eigen::AngleAxisd(dice.normal(0.03), Eigen::Vector3d::UnitZ()).toRotationMatrix();
  pose.translation() = from;
  eye.camera_from_room = pose.inverse();
  double widest = 0.0;
  const auto see = [&](const Eigen::Vector2d& p) {
    const Eigen::Vector3d seen = eye.camera_from_room * Eigen::Vector3d(p.x(), p.y(), 0.0);
    widest = std::max({widest, std::abs(seen.x() / seen.z()) / 640.0, std::abs(seen.y() / seen.z()) / 360.0});
  };
  for (const Eigen::Vector2d& p : vt::lit_outline(room.projector)) see(p);
  for (const vt::PaperSheet& tag : room.sheets)
    for (const Eigen::Vector2d& p : vt::paper_outline(tag)) see(p);
  eye.optic.focal = Eigen::Vector2d::Constant(0.93 / widest);
  eye.optic.centre = {639.5 + dice.normal(4.0), 359.5 + dice.normal(4.0)};
  eye.optic.k1 = dice.uniform(-0.08, 0.03);
  eye.optic.k2 = -0.2 * eye.optic.k1;
  eye.blur = dice.uniform(0.5, 0.9);
  eye.vignetting = dice.uniform(0.1, 0.4);
  eye.electrons_per_lux = dice.uniform(5.0, 12.0);
  eye.full_well = dice.uniform(4000.0, 9000.0);
  eye.read_noise = dice.uniform(2.0, 5.0);
  return eye;
}

// The camera as somebody located it: focal length off by a few thousandths, the pose fitted to that.
inline FixedCamera located(vt::Dice& dice, const vt::RoomCamera& eye, const vt::Room& room) {
  FixedCamera camera;
  camera.width = eye.width;
  camera.height = eye.height;
  camera.lens.focal = eye.optic.focal.mean() * (1.0 + dice.normal(0.003));
  camera.lens.centre = eye.optic.centre;
  camera.lens.k1 = eye.optic.k1;
  camera.lens.k2 = eye.optic.k2;
  std::vector<cv::Point3d> mat;
  std::vector<cv::Point2d> seen;
  for (const Eigen::Vector2d& pixel : lit_pixels(room.projector)) {
    const Eigen::Vector2d at = *vt::mat_from_projector(room.projector, pixel);
    const Eigen::Vector2d in_frame = *vt::camera_from_room(eye, {at.x(), at.y(), 0.0});
    mat.emplace_back(at.x(), at.y(), 0.0);
    seen.emplace_back(in_frame.x() + dice.normal(0.1), in_frame.y() + dice.normal(0.1));
  }
  const cv::Matx33d matrix(camera.lens.focal, 0, camera.lens.centre.x(), 0, camera.lens.focal,
                           camera.lens.centre.y(), 0, 0, 1);
  const cv::Vec<double, 5> terms(camera.lens.k1, camera.lens.k2, 0, 0, 0);
  cv::Vec3d turn, shift;
  cv::solvePnP(mat, seen, matrix, terms, turn, shift);
  const double angle = cv::norm(turn);
  camera.camera_from_mat.linear() =
      Eigen::AngleAxisd(angle, Eigen::Vector3d(turn[0], turn[1], turn[2]) / angle).toRotationMatrix();
  camera.camera_from_mat.translation() = Eigen::Vector3d(shift[0], shift[1], shift[2]);
  return camera;
}

inline WatchedRoom watched_room(std::uint64_t seed, double hardness = 0.3) {
  vt::RoomOptions options;
  options.pages = {cv::Mat()};
  options.hardness = hardness;
  WatchedRoom out;
  out.room = vt::random_session(seed, options).room;
  out.room.sheets.clear();
  out.map = true_map(out.room.projector);
  vt::Dice dice(seed * 77 + 5);
  add_tags(out.room, out.map);
  out.eye = draw_eye(dice, out.room);
  out.camera = located(dice, out.eye, out.room);
  return out;
}

inline cv::Mat black_picture(const vt::Room& room) {
  return cv::Mat(room.projector.height, room.projector.width, CV_8UC1, cv::Scalar(0));
}
inline cv::Mat plain_light(const vt::Room& room) {
  return cv::Mat(room.projector.height, room.projector.width, CV_8UC1, cv::Scalar(255));
}
inline cv::Mat marked_picture(const vt::Room& room) {
  cv::Mat out = black_picture(room);
  draw_border_marks(out);
  return out;
}

// Light of the scene without and with a picture.
inline vt::FilmLight film_light(const WatchedRoom& r, const cv::Mat& picture) {
  vt::FilmLight out;
  out.dark = vt::linear_photograph(r.room, r.eye, black_picture(r.room));
  out.lit = vt::linear_photograph(r.room, r.eye, picture);
  return out;
}

// `count` frames each of dark, plain and marked light, as one camera with one exposure sees them.
inline WatchPictures learning_pictures(const WatchedRoom& r, const vt::FilmLight& marked, int count,
                                       const vt::FilmFlicker& flicker, std::uint64_t seed) {
  const std::vector<cv::Rect> whole{{0, 0, r.eye.width, r.eye.height}};
  vt::FixedFilm film(marked, r.eye, whole, flicker);
  WatchPictures out;
  out.marked = vt::film_frames(film, count, 0.0, seed);
  film.change({marked.dark, marked.dark});
  out.dark = vt::film_frames(film, count, 1.0, seed + 1000);
  film.change({marked.dark, vt::linear_photograph(r.room, r.eye, plain_light(r.room))});
  out.plain = vt::film_frames(film, count, 2.0, seed + 2000);
  return out;
}

// The places that a watch looks at, with room around them.
inline std::vector<cv::Rect> places_of(const Watch& watch, int more = 16) {
  std::vector<cv::Rect> out;
  for (const WatchedSight& sight : watch.sights()) {
    const cv::Rect& box = sight.tracker.box();
    out.emplace_back(box.x - more, box.y - more, box.width + 2 * more, box.height + 2 * more);
  }
  return out;
}

// A knock in a random direction that shifts the farthest point of the lit mat by `mm`.
inline WatchedRoom knocked(const WatchedRoom& before, Mover mover, double mm, vt::Dice& dice) {
  Eigen::Matrix<double, 6, 1> way;
  for (int i = 0; i < 3; ++i) way[i] = dice.normal(1e-3);
  for (int i = 3; i < 6; ++i) way[i] = dice.normal(1.0);
  const auto moved_by = [&](double size) {
    WatchedRoom after = before;
    Eigen::Isometry3d nudge = Eigen::Isometry3d::Identity();
    nudge.translation() = size * way.tail<3>();
    nudge.linear() =
        Eigen::AngleAxisd(size * way.head<3>().norm(), way.head<3>().normalized()).toRotationMatrix();
    if (mover == Mover::projector) {
      after.room.projector.projector_from_room = nudge * before.room.projector.projector_from_room;
    } else if (mover == Mover::camera) {
      after.eye.camera_from_room = nudge * before.eye.camera_from_room;
    } else {
      const auto slide = [&](vt::Place& place) {
        const Eigen::Vector2d at =
            Eigen::Rotation2Dd(size * way[0]) * Eigen::Vector2d(place.x, place.y) + size * way.segment<2>(3);
        place = {at.x(), at.y(), place.turn + size * way[0]};
      };
      slide(after.room.mat.place);
      for (vt::PaperSheet& tag : after.room.sheets) slide(tag.place);
    }
    return after;
  };
  const auto farthest = [&](const WatchedRoom& after, double size) {
    double most = 0.0;
    for (const Eigen::Vector2d& pixel : lit_pixels(before.room.projector)) {
      const Eigen::Vector2d at = *vt::mat_from_projector(before.room.projector, pixel);
      Eigen::Vector2d now = at;
      if (mover == Mover::projector)
        now = *vt::mat_from_projector(after.room.projector, pixel);
      else if (mover == Mover::camera)
        now = *vt::mat_from_camera(after.eye, *vt::camera_from_room(before.eye, {at.x(), at.y(), 0.0}));
      else
        now = Eigen::Rotation2Dd(size * way[0]) * at + size * way.segment<2>(3);
      most = std::max(most, (now - at).norm());
    }
    return most;
  };
  double size = 1.0;
  for (int round = 0; round < 5; ++round) size *= mm / farthest(moved_by(size), size);
  return moved_by(size);
}

}  // namespace cowlcast::calibration::testing
