// The simulated room must put everything where its truth says, far more exactly
// than any calibration that is to be judged by it: a hundredth of a millimetre.
#include <gtest/gtest.h>

#include <cmath>
#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>

#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/top_view.h"
#include "calibration/virtual_table/truth.h"

namespace room = cowlcast::calibration::virtual_table;
using Eigen::Vector2d;
using Eigen::Vector3d;

namespace {

constexpr double kPi = 3.14159265358979323846;

// A camera `away` mm from the point (x, y, 0) of the table, leaning by `tilt` and turned by `roll`.
room::RoomCamera camera_over(double x, double y, double away, double tilt, double roll) {
  room::RoomCamera camera;
  camera.width = 640;
  camera.height = 480;
  camera.optic.focal = {1200.0, 1200.0};
  camera.optic.centre = {322.3, 237.1};
  camera.blur = 0.6;
  Eigen::Matrix3d room_from_camera = Eigen::AngleAxisd(tilt, Vector3d::UnitX()).toRotationMatrix();
  room_from_camera = room_from_camera * Vector3d(1.0, -1.0, -1.0).asDiagonal();
  room_from_camera = room_from_camera * Eigen::AngleAxisd(roll, Vector3d::UnitZ()).toRotationMatrix();
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() = room_from_camera;
  pose.translation() = Vector3d(x, y, 0.0) - away * room_from_camera.col(2);
  camera.camera_from_room = pose.inverse();
  return camera;
}

room::Room bare_room() {
  room::Room bare;
  bare.mat.albedo = bare.mat.print_albedo = bare.mat.table_albedo = room::Colour::Constant(0.5f);
  bare.mat.grain = 0.0f;
  bare.mat.numerals = bare.mat.diagonals = false;
  bare.mat.fine_step = bare.mat.heavy_step = 0.0;
  bare.mat.size = {3000.0, 3000.0};
  bare.projector.tint = bare.light.tint = room::Colour::Ones();
  return bare;
}

room::RoomProjector projector_over(double height, double tilt) {
  room::RoomProjector projector;
  projector.width = 320;
  projector.height = 200;
  projector.optic.focal = {420.0, 420.0};
  projector.optic.centre = {158.0, 205.0};  // the axis leaves through the picture's foot
  projector.optic.k1 = -0.03;
  projector.optic.p1 = 0.0004;
  projector.vignetting = 0.0;
  projector.reference = height;
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() = Eigen::AngleAxisd(tilt, Vector3d(0.6, 0.8, 0.0)).toRotationMatrix() *
                  Vector3d(1.0, -1.0, -1.0).asDiagonal();
  pose.translation() = Vector3d(0.0, 0.0, height);
  projector.projector_from_room = pose.inverse();
  return projector;
}

// Centroid of what differs from `ground` within `reach` pixels of `about`, in one channel.
Vector2d centroid(const cv::Mat& image, const Vector2d& about, int reach, float ground) {
  double weight = 0.0;
  Vector2d moment = Vector2d::Zero();
  const int x0 = static_cast<int>(std::lround(about.x())), y0 = static_cast<int>(std::lround(about.y()));
  for (int y = y0 - reach; y <= y0 + reach; ++y)
    for (int x = x0 - reach; x <= x0 + reach; ++x) {
      const double w = static_cast<double>(image.at<cv::Vec3f>(y, x)[1] - ground);
      weight += w;
      moment += w * Vector2d(x, y);
    }
  return moment / weight;
}

// Centre of gravity of the polygon: where the centroid of a projected shape must be (shoelace).
Vector2d middle_of(const std::vector<Vector2d>& polygon) {
  double area = 0.0;
  Vector2d moment = Vector2d::Zero();
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vector2d &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    const double cross = a.x() * b.y() - a.y() * b.x();
    area += cross;
    moment += cross * (a + b);
  }
  return moment / (3.0 * area);
}

// Discs of 4 mm radius on a page 120 by 90 mm, at 300 dots an inch as exactly as grey levels allow.
const std::vector<Vector2d> kDiscs = {{20.0, 20.0}, {60.3, 45.2}, {100.0, 22.1}, {22.0, 70.4}, {99.7, 69.6}};
constexpr double kDiscRadius = 4.0;
cv::Mat disc_page() {
  const double pitch = 25.4 / 300.0;
  cv::Mat page(static_cast<int>(std::ceil(90.0 / pitch)), static_cast<int>(std::ceil(120.0 / pitch)), CV_8U);
  for (int j = 0; j < page.rows; ++j)
    for (int i = 0; i < page.cols; ++i) {
      const Vector2d at((i + 0.5) * pitch, (j + 0.5) * pitch);
      double ink = 0.0;
      for (const auto& disc : kDiscs)
        ink = std::max(ink, std::clamp((kDiscRadius - (at - disc).norm()) / pitch + 0.5, 0.0, 1.0));
      page.at<unsigned char>(j, i) = static_cast<unsigned char>(std::lround(255.0 * (1.0 - ink)));
    }
  return page;
}

room::PaperSheet disc_sheet() {
  room::PaperSheet sheet;
  sheet.page = disc_page();
  sheet.paper = {120.0, 90.0};
  sheet.across = 1.006;
  sheet.down = 0.995;
  sheet.shift = {0.7, -0.4};
  sheet.place = {12.0, -7.0, 0.35};
  sheet.paper_albedo = room::Colour::Constant(0.8f);
  sheet.ink_albedo = room::Colour::Constant(0.05f);
  return sheet;
}

// Distance on paper between the discs of a photograph and where they belong, mm; the worst of them.
double worst_disc(const room::Room& bare, const room::RoomCamera& camera) {
  const cv::Mat photo = room::linear_photograph(bare, camera, {});
  const room::PaperSheet& sheet = bare.sheets.front();
  double worst = 0.0;
  for (const auto& disc : kDiscs) {
    std::vector<Vector2d> outline;
    for (int k = 0; k < 360; ++k) {
      const double a = 2.0 * kPi * k / 360.0;
      outline.push_back(*room::camera_from_room(
          camera, room::room_from_page(sheet, disc + kDiscRadius * Vector2d(std::cos(a), std::sin(a)))));
    }
    const Vector2d expected = middle_of(outline);
    const auto ground = static_cast<float>(bare.light.lux) * sheet.paper_albedo.y();
    const int reach = static_cast<int>(std::lround((outline[0] - expected).norm())) + 6;
    const Vector2d found = centroid(photo, expected, reach, ground);
    const double pixels_a_mm = (outline[0] - outline[180]).norm() / (2.0 * kDiscRadius);
    worst = std::max(worst, (found - expected).norm() / pixels_a_mm);
  }
  return worst;
}

}  // namespace

// Outside reference: OpenCV's projectPoints with the same five coefficients.
TEST(Optic, AgreesWithOpenCv) {
  room::Optic optic{.focal = {3011.0, 2987.0},
                    .centre = {2003.2, 1511.7},
                    .k1 = 0.12,
                    .k2 = -0.21,
                    .k3 = 0.05,
                    .p1 = 0.0011,
                    .p2 = -0.0007};
  const cv::Matx33d matrix(optic.focal.x(), 0, optic.centre.x(), 0, optic.focal.y(), optic.centre.y(), 0, 0,
                           1);
  const std::vector<double> bend = {optic.k1, optic.k2, optic.p1, optic.p2, optic.k3};
  std::vector<cv::Point3d> points;
  for (int i = -5; i <= 5; ++i)
    for (int j = -4; j <= 4; ++j) points.emplace_back(0.11 * i, 0.1 * j, 1.0);
  std::vector<cv::Point2d> pixels;
  cv::projectPoints(points, cv::Vec3d(0, 0, 0), cv::Vec3d(0, 0, 0), matrix, bend, pixels);
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Vector2d pixel = optic.pixel_from_ray({points[i].x, points[i].y});
    EXPECT_NEAR(pixel.x(), pixels[i].x, 1e-9);
    EXPECT_NEAR(pixel.y(), pixels[i].y, 1e-9);
  }
}

TEST(Optic, UndoesItselfWobbleIncluded) {
  room::Optic optic{.focal = {3000.0, 3000.0},
                    .centre = {2000.0, 1500.0},
                    .k1 = -0.13,
                    .k2 = 0.05,
                    .k3 = -0.01,
                    .p1 = 0.001,
                    .p2 = 0.002,
                    .wobble = 0.4,
                    .wobble_waves = 2.0,
                    .wobble_phase = 1.0};
  for (double x = -0.6; x <= 0.6; x += 0.15)
    for (double y = -0.5; y <= 0.5; y += 0.125) {
      const auto ray = optic.ray_from_pixel(optic.pixel_from_ray({x, y}));
      ASSERT_TRUE(ray);
      EXPECT_LT((*ray - Vector2d(x, y)).norm(), 1e-12);
    }
}

TEST(Optic, AnswersNothingBeyondTheFold) {
  const room::Optic optic{.focal = {1000.0, 1000.0}, .k1 = -0.3};
  const double fold = std::sqrt(1.0 / 0.9);  // 1 - 3 * 0.3 r^2 = 0
  EXPECT_NEAR(optic.valid_slope(), fold, 1e-9);
  EXPECT_TRUE(optic.covers({0.99 * fold, 0.0}));
  EXPECT_FALSE(optic.covers({1.01 * fold, 0.0}));
  EXPECT_FALSE(optic.ray_from_pixel({900.0, 0.0}));  // the edge of the image is at 1000 * fold * 2 / 3 = 703
}

TEST(Truth, ProjectionsUndoEachOther) {
  room::RoomProjector projector = projector_over(900.0, 0.15);
  projector.panel_from_picture = Eigen::Matrix3d::Identity();
  (*projector.panel_from_picture) << 0.9, 0.02, 8.0, 0.01, 0.92, 5.0, 1e-5, -2e-5, 1.0;
  room::RoomCamera camera = camera_over(30.0, -10.0, 500.0, 0.4, 1.0);
  camera.rolling = {1.4, -0.8};
  for (double height : {0.0, 4.0})
    for (const Vector2d& pixel : {Vector2d(0.0, 0.0), Vector2d(310.5, 20.25), Vector2d(150.0, 180.0)}) {
      const Vector2d mat = *room::mat_from_projector(projector, pixel, height);
      EXPECT_LT((*room::projector_from_mat(projector, mat, height) - pixel).norm(), 1e-9);
      const Vector2d seen = *room::mat_from_camera(camera, pixel, height);
      EXPECT_LT((*room::camera_from_room(camera, {seen.x(), seen.y(), height}) - pixel).norm(), 1e-9);
    }
}

TEST(Truth, CurledPaperKeepsItsLengths) {
  room::PaperSheet sheet = disc_sheet();
  sheet.curl = {.from = {60.0, 45.0}, .towards = {120.0, 0.0}, .height = 20.0};
  double length = 0.0;
  const Vector2d from(20.0, 75.0), to(120.0, 0.0);  // along the way it rises
  for (int k = 0; k < 1000; ++k)
    length += (room::room_from_paper(sheet, from + (k + 1) / 1000.0 * (to - from)) -
               room::room_from_paper(sheet, from + k / 1000.0 * (to - from)))
                  .norm();
  EXPECT_NEAR(length, (to - from).norm(), 1e-4);
  EXPECT_NEAR(room::room_from_paper(sheet, to).z(), sheet.thickness + 20.0, 1e-9);
  EXPECT_NEAR(room::room_from_paper(sheet, from).z(), sheet.thickness, 1e-9);
}

TEST(Truth, RigidFitFindsTurnAndShiftAndNoScale) {
  Eigen::Isometry2d known = Eigen::Isometry2d::Identity();
  known.translate(Vector2d(13.0, -8.0)).rotate(0.7);
  std::vector<Vector2d> from = {{0.0, 0.0}, {500.0, 10.0}, {-300.0, 220.0}, {40.0, -350.0}}, to;
  for (const auto& point : from) to.push_back(known * point);
  EXPECT_LT((room::rigid_fit(from, to).matrix() - known.matrix()).norm(), 1e-9);
  for (auto& point : to) point *= 1.01;
  EXPECT_NEAR(room::rigid_fit(from, to).linear().determinant(), 1.0, 1e-12);
}

TEST(Photograph, ShowsPrintWhereTruthSays) {
  room::Room bare = bare_room();
  bare.sheets.push_back(disc_sheet());
  EXPECT_LT(worst_disc(bare, camera_over(10.0, -5.0, 300.0, 0.0, 0.0)), 0.003);
  room::RoomCamera camera = camera_over(10.0, -5.0, 330.0, 0.6, 0.8);
  camera.optic.k1 = -0.1;
  camera.optic.p1 = 0.002;
  camera.optic.wobble = 0.3;
  EXPECT_LT(worst_disc(bare, camera), 0.003);
  camera = camera_over(10.0, -5.0, 900.0, 0.5, -2.0);  // ten pixels to a disc: an 80th of a pixel
  EXPECT_LT(worst_disc(bare, camera), 0.0095);
  camera.shake = {2.5, -1.5};
  EXPECT_LT(worst_disc(bare, camera), 0.0095);
}

TEST(Photograph, ShowsCurledPaperAndRollingRowsWhereTruthSays) {
  room::Room bare = bare_room();
  bare.sheets.push_back(disc_sheet());
  bare.sheets.front().curl = {.from = {60.0, 45.0}, .towards = {120.0, 0.0}, .height = 18.0};
  room::RoomCamera camera = camera_over(10.0, -5.0, 330.0, 0.4, 0.3);
  camera.rolling = {3.0, -2.0};
  EXPECT_LT(worst_disc(bare, camera), 0.01);
}

TEST(Photograph, ShowsProjectedLightWhereTruthSays) {
  for (bool keystone : {false, true}) {
    room::Room bare = bare_room();
    bare.light.lux = 0.0;
    bare.projector = projector_over(600.0, 0.12);
    bare.projector.black = 0.0;
    if (keystone) {
      bare.projector.panel_from_picture = Eigen::Matrix3d::Identity();
      (*bare.projector.panel_from_picture) << 0.9, 0.02, 8.0, 0.01, 0.92, 5.0, 1e-5, -2e-5, 1.0;
    }
    const std::vector<cv::Rect> blocks = {
        {20, 20, 9, 9}, {151, 93, 8, 9}, {285, 30, 9, 9}, {30, 170, 9, 9}, {290, 165, 9, 10}};
    cv::Mat picture(200, 320, CV_8U, cv::Scalar(0));
    for (const auto& block : blocks) picture(block).setTo(255);
    const Vector2d middle = *room::mat_from_projector(bare.projector, {160.0, 100.0});
    room::RoomCamera camera = camera_over(middle.x(), middle.y(), 950.0, 0.3, 0.2);
    camera.width = 960;
    camera.height = 720;
    camera.optic.focal = {1500.0, 1500.0};
    camera.optic.centre = {480.0, 360.0};
    const cv::Mat photo = room::linear_photograph(bare, camera, picture);
    for (const auto& block : blocks) {
      std::vector<Vector2d> outline;
      const double left = block.x - 0.5, top = block.y - 0.5, right = left + block.width,
                   bottom = top + block.height;
      const Vector2d corners[] = {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
      for (int side = 0; side < 4; ++side)
        for (int k = 0; k < 20; ++k) {
          const Vector2d pixel = corners[side] + k / 20.0 * (corners[(side + 1) % 4] - corners[side]);
          const Vector2d mat = *room::mat_from_projector(bare.projector, pixel);
          outline.push_back(*room::camera_from_room(camera, {mat.x(), mat.y(), 0.0}));
        }
      const Vector2d expected = middle_of(outline);
      const Vector2d found = centroid(photo, expected, 20, 0.0f);
      const double pixels_a_mm = 1500.0 / 950.0;
      // Resampling to the panel's pixels moves a block by hundredths of a pixel (1.4 mm here), as it does in
      // a real projector; without it a hundredth of a millimetre is kept.
      EXPECT_LT((found - expected).norm() / pixels_a_mm, keystone ? 0.06 : 0.01)
          << "keystone " << keystone << " block " << block;
    }
  }
}

TEST(TopView, ShowsPrintInTrueMillimetres) {
  room::Room bare = bare_room();
  bare.sheets.push_back(disc_sheet());
  const room::TopView view{
      .left = -80.0, .bottom = -70.0, .width = 180.0, .height = 130.0, .pixels_per_mm = 3.0};
  const cv::Mat seen = room::top_view(bare, view, {});
  cv::Mat light;
  seen.convertTo(light, CV_32FC3);
  for (const auto& disc : kDiscs) {
    const Vector3d true_place = room::room_from_page(bare.sheets.front(), disc);
    const Vector2d expected((true_place.x() - view.left) * 3.0 - 0.5,
                            (view.bottom + view.height - true_place.y()) * 3.0 - 0.5);
    const float ground =
        light.at<cv::Vec3f>(static_cast<int>(expected.y()) - 15, static_cast<int>(expected.x()))[1];
    EXPECT_LT((centroid(light, expected, 16, ground) - expected).norm() / 3.0, 0.01);
  }
}
