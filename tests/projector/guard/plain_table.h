// A table under a camera and a projector straight above it, a pixel a millimetre, the mat's origin in the
// middle of both: frames by a formula, for tests that need few of them.
#pragma once

#include <opencv2/imgproc.hpp>
#include <vector>

#include "projector/guard/backdrop.h"

namespace cowlcast::projector::testing {

inline constexpr int kWidth = 640, kHeight = 480;

inline TableSight plain_sight() {
  TableSight sight;
  Eigen::Isometry3d down = Eigen::Isometry3d::Identity();
  down.linear() << 1, 0, 0, 0, -1, 0, 0, 0, -1;
  down.translation() = Eigen::Vector3d(0, 0, 1000.0);
  sight.camera.width = sight.map.width = kWidth;
  sight.camera.height = sight.map.height = kHeight;
  sight.camera.lens.focal = sight.map.lens.focal = 1000.0;
  sight.camera.lens.centre = sight.map.lens.centre = {0.5 * (kWidth - 1), 0.5 * (kHeight - 1)};
  sight.camera.camera_from_mat = sight.map.projector_from_mat_frame = down;
  const double w = 0.5 * kWidth, h = 0.5 * kHeight;
  sight.map.lit_area = {{-w, -h}, {w, -h}, {w, h}, {-w, h}};
  return sight;
}

// The table's light is made of two shares; things are rectangles of another albedo.
struct Table {
  double room = 0.25, beam = 0.5;  // linear light of white, at the camera
  cv::Scalar cloth{0.3, 0.3, 0.5};
  cv::Mat print;  // albedos of cloth that is not even, three floats
  cv::RNG noise{7};

  // `picture`: what is projected, grey or BGR.
  cv::Mat frame(const cv::Mat& picture, const std::vector<cv::Rect>& things = {},
                const cv::Scalar& thing = {0.05, 0.05, 0.05}, double shade = 1.0) {
    cv::Mat albedo(kHeight, kWidth, CV_32FC3, cloth), light, three, out;
    if (!print.empty()) print.copyTo(albedo);
    for (const cv::Rect& box : things) albedo(box & cv::Rect(0, 0, kWidth, kHeight)).setTo(thing);
    picture.convertTo(light, CV_32F, 1.0 / 255.0);
    cv::pow(light, 2.2, light);
    three = light;
    if (light.channels() == 1) cv::merge(std::vector<cv::Mat>(3, light), three);
    three = three * beam + cv::Scalar::all(room * shade);
    cv::Mat linear = albedo.mul(three);
    cv::GaussianBlur(linear, linear, {}, 0.8);
    cv::pow(linear, 1.0 / 2.2, linear);
    static const cv::Mat grain = [] {
      cv::Mat made(kHeight + 64, kWidth + 64, CV_32FC3);
      cv::RNG(11).fill(made, cv::RNG::NORMAL, 0.0, 1.0);
      return made;
    }();
    linear = linear * 255.0 + grain({noise.uniform(0, 64), noise.uniform(0, 64), kWidth, kHeight});
    linear.convertTo(out, CV_8U);
    return out;
  }
};

inline cv::Mat flat(int level) {
  return {kHeight, kWidth, CV_8U, cv::Scalar(level)};
}

// A square thing with its middle at a mat place.
inline cv::Rect box_at(double x, double y, int side) {
  return {static_cast<int>(0.5 * kWidth + x) - side / 2, static_cast<int>(0.5 * kHeight - y) - side / 2, side,
          side};
}

}  // namespace cowlcast::projector::testing
