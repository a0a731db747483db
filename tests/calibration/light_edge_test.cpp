#include "calibration/verdict/light_edge.h"

#include <gtest/gtest.h>

#include <opencv2/imgproc.hpp>

#include "calibration/solve/light.h"

namespace cowlcast::calibration {
namespace {

Placement from_above(double height) {
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() = Eigen::Vector3d(1.0, -1.0, -1.0).asDiagonal();
  pose.translation() = Eigen::Vector3d(0.0, 0.0, height);
  return Placement::of(pose);
}

// A projector of 1280 x 800 lights 1000 x 625 mm of the mat; a photograph from above, two thirds of a pixel
// to the millimetre.
Scene scene() {
  Scene out;
  out.lenses.push_back({{1200, 799.5, 599.5, 0, 0, 0, 0, 0}});
  out.lens_sizes.emplace_back(1600, 1200);
  out.exif_focals.emplace_back();
  ScenePhoto photo;
  photo.camera_from_mat = from_above(1200.0);
  out.photos.push_back(photo);
  out.projector_lens.numbers = {1664, 639.5, 399.5, 0, 0, 0, 0, 0};
  out.projector_from_mat = from_above(1300.0);
  out.projector_size = {1280, 800};
  return out;
}

// The light as a projector leaves it that was bumped after the target was photographed: slid by `slide` mm,
// and wider on one side by `keystone`.
cv::Mat plain_light(const Scene& scene, const Eigen::Vector2d& slide, double keystone) {
  std::vector<cv::Point> rim;
  constexpr int kShift = 6;  // of the drawing's fixed point
  for (const Eigen::Vector2d& corner : {Eigen::Vector2d(-0.5, -0.5), Eigen::Vector2d(1279.5, -0.5),
                                        Eigen::Vector2d(1279.5, 799.5), Eigen::Vector2d(-0.5, 799.5)}) {
    Eigen::Vector2d mat = mat_from_picture(scene, corner);
    mat.y() *= 1.0 + keystone * mat.x() / 500.0;
    const Eigen::Vector2d pixel = *scene.photo_from_mat(0, mat + slide);
    rim.emplace_back(static_cast<int>(std::lround(pixel.x() * (1 << kShift))),
                     static_cast<int>(std::lround(pixel.y() * (1 << kShift))));
  }
  cv::Mat out(1200, 1600, CV_8UC1, cv::Scalar(40));
  // The mat ends beside the light: an edge that does not move with it.
  cv::rectangle(out, {140, 60}, {1460, 1140}, cv::Scalar(60), cv::FILLED);
  cv::fillConvexPoly(out, rim, cv::Scalar(180), cv::LINE_AA, kShift);
  cv::GaussianBlur(out, out, {}, 1.0);
  return out;
}

TEST(LightEdge, StandsWhereItStood) {
  const Scene s = scene();
  EXPECT_EQ(light_edge_shift(s, 0, plain_light(s, {0, 0}, 0.0)).value_or(-1.0), 0.0);
  EXPECT_EQ(light_edge_shift(s, 0, plain_light(s, {0.4, -0.3}, 0.0)).value_or(-1.0), 0.0);
}

// Two sides slide in themselves and look as they did: they must not outvote the others.
TEST(LightEdge, SeesASlideAlongItsSides) {
  const Scene s = scene();
  for (const Eigen::Vector2d& slide : {Eigen::Vector2d(3.5, 0.0), Eigen::Vector2d(0.0, -3.5)}) {
    const auto moved = light_edge_shift(s, 0, plain_light(s, slide, 0.0));
    ASSERT_TRUE(moved);
    EXPECT_NEAR(*moved, 3.5, 0.5);
  }
}

// A mat that ends some millimetres within the light along one side, or a ruler that lies there: the light has
// not moved, for its other three sides stand where they stood.
TEST(LightEdge, IsNotMisledByAnotherEdgeAlongOneSide) {
  const Scene s = scene();
  cv::Mat picture = plain_light(s, {0, 0}, 0.0);
  const auto corner = [&](double u, double v) {
    const Eigen::Vector2d at = *s.photo_from_mat(0, mat_from_picture(s, {u, v}));
    return cv::Point(cvRound(at.x()), cvRound(at.y()));
  };
  cv::rectangle(picture, corner(-1.0, -10.0), corner(4.5, 810.0), cv::Scalar(40), cv::FILLED);
  const auto moved = light_edge_shift(s, 0, picture);
  EXPECT_TRUE(!moved || *moved == 0.0) << *moved;
}

TEST(LightEdge, SeesAPictureThatWasBumpedOutOfShape) {
  const Scene s = scene();
  const auto moved = light_edge_shift(s, 0, plain_light(s, {-9.0, -3.0}, 0.02));
  ASSERT_TRUE(moved);
  EXPECT_GT(*moved, 3.0);
}

}  // namespace
}  // namespace cowlcast::calibration
