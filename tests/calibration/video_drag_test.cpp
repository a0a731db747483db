// Cloth that a blade drags, on film: by rays drawn anew, and that a film forgets it again.
#include "calibration/virtual_table/video_drag.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "calibration/virtual_table/truth.h"
#include "calibration/virtual_table/video_scene.h"

namespace room = cowlcast::calibration::virtual_table;
using Eigen::Vector2d;
using Eigen::Vector3d;

namespace {

const Vector3d kEye(200.0, -150.0, 1200.0), kLamp(-300.0, 400.0, 1500.0);

TEST(VideoDrag, MovesMostAtTheBladeAndLessAllAround) {
  const room::Drag drag{.slipped = {1.0, 0.5}, .at = {10.0, 20.0}, .moved = {0.0, 3.0}, .reach = 50.0};
  const Vector2d here = room::rumpled(drag, drag.at, kEye, kLamp).cloth;
  EXPECT_LT((here + Vector2d(1.0, 3.5)).norm(), 1e-9);
  const Vector2d beside = room::rumpled(drag, {60.0, 20.0}, kEye, kLamp).cloth;
  EXPECT_LT((beside + Vector2d(1.0, 0.5 + 3.0 / std::numbers::e)).norm(), 1e-9);
  EXPECT_LT((room::rumpled(drag, {600.0, 20.0}, kEye, kLamp).cloth + drag.slipped).norm(), 1e-9);
}

TEST(VideoDrag, ShowsACrestWhereItsRaysMeetTheTable) {
  const room::Drag drag{.at = {0.0, 0.0}, .ripple = 4.0, .ripple_length = 20.0};
  const Vector2d place(0.0, 10.0);  // half a length before the blade: its top
  const double height = 4.0 * std::exp(-0.5 / 1.2);
  const room::Rumple seen = room::rumpled(drag, place, kEye, kLamp);
  const Vector3d flat(place.x(), place.y(), 0.0), raised = flat + (kEye - flat) * (height / kEye.z());
  EXPECT_LT((seen.cloth - (raised - flat).head<2>()).norm(), 0.02);
  const Vector3d lit = raised + (raised - kLamp) * (height / (kLamp.z() - height));
  EXPECT_NEAR(lit.z(), 0.0, 1e-9);
  EXPECT_LT((seen.light - (lit - flat).head<2>()).norm(), 0.02);
  EXPECT_GT(height * 0.1, 0.2) << "not a matter of rounding";
}

TEST(VideoDrag, IsForgottenByTheNextFrame) {
  room::Dice dice(3);
  room::VideoScene scene = room::random_video_scene(dice);
  scene.camera.width = 320;
  scene.camera.height = 180;
  scene.camera.optic.focal *= 0.25;
  scene.camera.optic.centre *= 0.25;
  scene.print.kind = room::ClothPrint::Kind::checks;
  scene.print.step = 40.0;
  scene.print.colour = {0.9f, 0.9f, 0.9f};
  room::TableVideo video(scene.room, scene.camera, scene.print);
  video.show(0, cv::Mat(scene.room.projector.height, scene.room.projector.width, CV_8U, cv::Scalar(90)));
  const cv::Mat before = video.frame({}, 5).clone();
  room::Moment dragged;
  dragged.drag = room::Drag{.slipped = {6.0, 0.0}};
  EXPECT_GT(cv::norm(before, video.frame(dragged, 5), cv::NORM_INF), 20.0) << "it shows";
  EXPECT_EQ(cv::norm(before, video.frame({}, 5), cv::NORM_INF), 0.0);
}

}  // namespace
