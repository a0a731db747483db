// What the benches that make films of a simulated table have in common: what a calibration would know of it,
// strokes on its cloth, and what is projected for them.
#pragma once

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>
#include <vector>

#include "calibration/virtual_table/truth.h"
#include "calibration/virtual_table/video_scene.h"
#include "drafting/geometry/polyline.h"
#include "projector/blade/blade_marks.h"
#include "projector/guard/strip.h"

namespace cowlcast::projector::bench {

namespace vt = calibration::virtual_table;

inline calibration::Lens lens_of(const vt::Optic& optic) {
  calibration::Lens lens;
  lens.focal = optic.focal.mean();
  lens.centre = optic.centre;
  lens.k1 = optic.k1;
  lens.k2 = optic.k2;
  lens.k3 = optic.k3;
  lens.p1 = optic.p1;
  lens.p2 = optic.p2;
  return lens;
}

inline Eigen::Isometry3d nudged(const Eigen::Isometry3d& pose, vt::Dice& dice, double radians, double mm) {
  Eigen::Isometry3d error = Eigen::Isometry3d::Identity();
  error.linear() = Eigen::AngleAxisd(dice.normal(radians), Eigen::Vector3d::UnitX()).toRotationMatrix() *
                   Eigen::AngleAxisd(dice.normal(radians), Eigen::Vector3d::UnitY()).toRotationMatrix();
  error.translation() = Eigen::Vector3d(dice.normal(mm), dice.normal(mm), dice.normal(mm));
  return error * pose;
}

// What a calibration would know of the room: the truth, a little off.
inline TableSight sight_of(const vt::VideoScene& scene, vt::Dice& dice) {
  TableSight sight;
  sight.map.width = scene.room.projector.width;
  sight.map.height = scene.room.projector.height;
  sight.map.lens = lens_of(scene.room.projector.optic);
  sight.map.projector_from_mat_frame = nudged(scene.room.projector.projector_from_room, dice, 1e-4, 0.15);
  sight.map.lit_area = vt::lit_outline(scene.room.projector, 0.0);
  sight.camera.width = scene.camera.width;
  sight.camera.height = scene.camera.height;
  sight.camera.lens = lens_of(scene.camera.optic);
  sight.camera.camera_from_mat = nudged(scene.camera.camera_from_room, dice, 2e-4, 0.4);
  sight.cloth = scene.room.cloth->height + dice.normal(0.2);
  return sight;
}

inline cv::Mat bgr(const QImage& image) {
  cv::Mat out;
  cv::cvtColor(cv::Mat(image.height(), image.width(), CV_8UC4, const_cast<uchar*>(image.constBits()),
                       static_cast<size_t>(image.bytesPerLine())),
               out, cv::COLOR_BGRA2BGR);
  return out;
}

// A stroke away from the person or towards the blade's hand, all of it on cloth, in light and in view.
inline Polyline draw_stroke(vt::Dice& dice, const vt::VideoScene& scene, const TableSight& sight) {
  const vt::Place& place = scene.room.cloth->place;
  for (;;) {
    const double length = dice.uniform(220.0, 520.0),
                 bend = dice.uniform(-1.0, 1.0) / dice.uniform(250.0, 1500.0);
    double angle = dice.uniform(-0.1, 2.3);
    Polyline path{Point(dice.uniform(-400.0, 300.0), dice.uniform(-260.0, 0.0))};
    for (double s = 0.0; s < length; s += 5.0) {
      angle += 5.0 * bend;
      path.push_back(path.back() + 5.0 * Point(std::cos(angle), std::sin(angle)));
    }
    bool fits = true;
    for (const double side : {-20.0, 0.0, 70.0})
      for (const Point& p : band_outline(path, std::abs(side), 1.0, side > 0.0)) {
        const Point own = Eigen::Rotation2Dd(-place.turn) * (p - Point(place.x, place.y));
        fits = fits && std::abs(own.x()) < 0.5 * scene.room.cloth->size.x() - 10.0 &&
               std::abs(own.y()) < 0.5 * scene.room.cloth->size.y() - 10.0 &&
               sight.camera.pixel_from_mat(p, 0.0) && drafting::contains(sight.map.lit_area, p);
      }
    if (fits) return path;
  }
}

inline std::vector<Mark> frame_marks(const Polyline& stroke, const Polyline& earlier, bool band,
                                     const FrameStyle& style) {
  std::vector<Mark> marks;
  const drafting::Box box = drafting::box_of(stroke);
  marks.push_back({.lines = {{box.low - Point(160, 40), Point(box.high.x() + 40, box.low.y() - 40),
                              box.high + Point(40, 40), Point(box.low.x() - 160, box.high.y() + 40)}},
                   .closed = true,
                   .width = 0.0,
                   .colour = style.ground});
  BladeOverlay overlay;
  overlay.band = band;
  Cut cut;
  cut.path = stroke;
  cut.stop_at = drafting::length(stroke);
  for (Mark& mark : blade_drawing(cut, {}, style, overlay).marks) marks.push_back(std::move(mark));
  if (!earlier.empty()) marks.push_back({.lines = {earlier}, .width = 0.7, .colour = style.cut});
  marks.push_back({.lines = {stroke}, .width = 1.5, .colour = style.cut});
  return marks;
}

}  // namespace cowlcast::projector::bench
