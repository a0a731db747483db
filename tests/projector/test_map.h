// A table map written down by hand, and the same optics by OpenCV, for checks.
#pragma once

#include <Eigen/Geometry>
#include <opencv2/calib3d.hpp>
#include <opencv2/core.hpp>

#include "calibration/table_map/table_map.h"

namespace cowlcast::projector::testing {

struct Optics {
  int width = 1920, height = 1080;
  double focal = 2300.0, k1 = -0.03, k2 = 0.004, p1 = 0.0006, p2 = -0.0004;
  double away = 1500.0;                          // lens above the mat, mm
  double tilt = 0.12, roll = -0.05, pan = 0.03;  // radians
};

inline calibration::TableMap map_of(const Optics& optics) {
  calibration::TableMap map;
  map.width = optics.width;
  map.height = optics.height;
  map.lens.focal = optics.focal;
  map.lens.centre = {0.5 * (optics.width - 1) + 11.0, 0.5 * (optics.height - 1) - 7.0};
  map.lens.k1 = optics.k1;
  map.lens.k2 = optics.k2;
  map.lens.p1 = optics.p1;
  map.lens.p2 = optics.p2;
  // Looking straight down: picture right is mat right, picture down is mat near.
  Eigen::Matrix3d down;
  down << 1, 0, 0, 0, -1, 0, 0, 0, -1;
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() = (Eigen::AngleAxisd(optics.tilt, Eigen::Vector3d::UnitX()) *
                   Eigen::AngleAxisd(optics.roll, Eigen::Vector3d::UnitY()) *
                   Eigen::AngleAxisd(optics.pan, Eigen::Vector3d::UnitZ()))
                      .toRotationMatrix() *
                  down;
  pose.translation() = Eigen::Vector3d(0, 0, optics.away);
  map.projector_from_mat_frame = pose;
  for (const auto& corner :
       {Eigen::Vector2d(-0.5, optics.height - 0.5), Eigen::Vector2d(optics.width - 0.5, optics.height - 0.5),
        Eigen::Vector2d(optics.width - 0.5, -0.5), Eigen::Vector2d(-0.5, -0.5)})
    map.lit_area.push_back(map.mat_from_projector(corner));
  map.error = {.first = {-800, -500},
               .step = 1600,
               .columns = 2,
               .rows = 2,
               .mm95 = {0.1, 0.1, 0.1, 0.1},
               .mm95_per_mm = {}};
  map.made_at = "2000-01-01T00:00:00Z";
  return map;
}

/// One millimetre of the mat to one pixel, no lens error: pixel (u, v) is lit at mat (u, -v).
inline calibration::TableMap plain_map(int width, int height) {
  calibration::TableMap map;
  map.width = width;
  map.height = height;
  map.lens.focal = 1000.0;
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() << 1, 0, 0, 0, -1, 0, 0, 0, -1;
  pose.translation() = Eigen::Vector3d(0, 0, 1000.0);
  map.projector_from_mat_frame = pose;
  return map;
}

/// Where OpenCV's own projection puts a point of the cloth.
inline Eigen::Vector2d pixel_by_opencv(const calibration::TableMap& map, const Eigen::Vector2d& mat,
                                       double cloth) {
  const Eigen::Vector3d seen = map.projector_from_mat_frame * Eigen::Vector3d(mat.x(), mat.y(), cloth);
  const std::vector<cv::Point3d> points{{seen.x(), seen.y(), seen.z()}};
  const cv::Matx33d camera(map.lens.focal, 0, map.lens.centre.x(), 0, map.lens.focal, map.lens.centre.y(), 0,
                           0, 1);
  const cv::Vec<double, 5> terms(map.lens.k1, map.lens.k2, map.lens.p1, map.lens.p2, map.lens.k3);
  std::vector<cv::Point2d> pixels;
  cv::projectPoints(points, cv::Vec3d(0, 0, 0), cv::Vec3d(0, 0, 0), camera, terms, pixels);
  return {pixels.front().x, pixels.front().y};
}

}  // namespace cowlcast::projector::testing
