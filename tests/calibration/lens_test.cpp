#include "calibration/lens/lens.h"

#include <gtest/gtest.h>

#include <opencv2/calib3d.hpp>
#include <random>

#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

Lens phone() {
  return {.focal = 2900,
          .centre = {1630, 1225},
          .k1 = 0.09,
          .k2 = -0.21,
          .k3 = 0.12,
          .p1 = 0.0007,
          .p2 = -0.0004};
}

// Reference: OpenCV's cv::projectPoints, an independent implementation of the same model.
TEST(Lens, AgreesWithOpenCv) {
  const Lens lens = phone();
  const cv::Matx33d pinhole(lens.focal, 0, lens.centre.x(), 0, lens.focal, lens.centre.y(), 0, 0, 1);
  const std::vector<double> terms = {lens.k1, lens.k2, lens.p1, lens.p2, lens.k3};
  std::mt19937 random(1);
  std::uniform_real_distribution<double> spread(-0.6, 0.6);
  for (int i = 0; i < 200; ++i) {
    const Eigen::Vector2d ray(spread(random), spread(random));
    std::vector<cv::Point2d> pixel;
    cv::projectPoints(std::vector<cv::Point3d>{{ray.x(), ray.y(), 1.0}}, cv::Vec3d(), cv::Vec3d(), pinhole,
                      terms, pixel);
    const Eigen::Vector2d own = lens.pixel_from_ray(ray);
    EXPECT_NEAR(own.x(), pixel[0].x, 1e-8);
    EXPECT_NEAR(own.y(), pixel[0].y, 1e-8);
  }
}

TEST(Lens, UndoesItself) {
  std::mt19937 random(2);
  std::uniform_real_distribution<double> spread(-0.5, 0.5), radial(-0.25, 0.25), tangent(-0.003, 0.003);
  int covered = 0;
  for (int i = 0; i < 2000; ++i) {
    Lens lens{.focal = 1500,
              .centre = {900, 600},
              .k1 = radial(random),
              .k2 = radial(random),
              .k3 = radial(random),
              .p1 = tangent(random),
              .p2 = tangent(random)};
    const Eigen::Vector2d ray(spread(random), spread(random));
    if (!lens.covers(1.05 * ray)) continue;
    ++covered;
    EXPECT_LT((lens.ray_from_pixel(lens.pixel_from_ray(ray)) - ray).norm(), 1e-10) << "lens " << i;
  }
  EXPECT_GT(covered, 1500);
}

TEST(Lens, RefusesWhatItCannotSee) {
  const Lens barrel{.focal = 1000, .centre = {500, 500}, .k1 = -0.3};
  // 1 + 3 k1 r² = 0 at r = 1.054, where the picture ends 703 px from the centre.
  EXPECT_TRUE(barrel.covers({1.05, 0}));
  EXPECT_FALSE(barrel.covers({1.06, 0}));
  EXPECT_NO_THROW(barrel.ray_from_pixel({1190, 500}));
  EXPECT_THROW(barrel.ray_from_pixel({1300, 500}), Refusal);
}

}  // namespace
}  // namespace cowlcast::calibration
