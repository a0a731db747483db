#include "calibration/solve/fit.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <opencv2/calib3d.hpp>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <string>

namespace cowlcast::calibration {
namespace {

// Real photographs of a chessboard of 9 × 6 inner corners, 640 × 480 pixels, and
// the camera's intrinsics as published with them: Debian package opencv-doc,
// examples/data/left01.jpg ... and left_intrinsics.yml.
// (Packages unpacked instead of installed: the set-up says where, in COWLCAST_SYSROOT.)
const char* const kSysroot = std::getenv("COWLCAST_SYSROOT");
const std::filesystem::path kPhotographs =
    std::string(kSysroot ? kSysroot : "") + "/usr/share/doc/opencv-doc/examples/data";
constexpr double kPublishedFocal = 535.9157;  // mean of fx and fy in left_intrinsics.yml

TEST(Fit, AgreesWithOpenCvOnRealPhotographs) {
  if (!std::filesystem::exists(kPhotographs / "left01.jpg"))
    GTEST_SKIP() << "the package opencv-doc is not installed";
  std::vector<std::vector<cv::Point3f>> board;
  std::vector<std::vector<cv::Point2f>> seen;
  std::vector<cv::Point3f> corners;
  for (int i = 0; i < 6; ++i)
    for (int j = 0; j < 9; ++j)
      corners.emplace_back(30.0F * static_cast<float>(j), 30.0F * static_cast<float>(5 - i), 0.0F);
  for (int n = 1; n <= 14; ++n) {
    const std::string name = (n < 10 ? "left0" : "left") + std::to_string(n) + ".jpg";
    const cv::Mat grey = cv::imread((kPhotographs / name).string(), cv::IMREAD_GRAYSCALE);
    std::vector<cv::Point2f> found;
    if (grey.empty() || !cv::findChessboardCorners(grey, {9, 6}, found)) continue;
    cv::cornerSubPix(grey, found, {5, 5}, {-1, -1},
                     {cv::TermCriteria::COUNT + cv::TermCriteria::EPS, 50, 1e-4});
    board.push_back(corners);
    seen.push_back(found);
  }
  ASSERT_GE(seen.size(), 10U);

  cv::Mat pinhole = cv::Mat::eye(3, 3, CV_64F), terms;
  std::vector<cv::Mat> turns, shifts;
  const double reference_rms =
      cv::calibrateCamera(board, seen, {640, 480}, pinhole, terms, turns, shifts, cv::CALIB_FIX_ASPECT_RATIO);

  Scene scene;
  scene.lenses.push_back({{600, 319.5, 239.5, 0, 0, 0, 0, 0}});
  scene.lens_sizes.emplace_back(640, 480);
  scene.exif_focals.emplace_back();
  scene.sheets.emplace_back();
  scene.reading.sigma_across = scene.reading.sigma_down = 1e-6;  // the squares are taken as true
  for (size_t i = 0; i < seen.size(); ++i) {
    // Begun from OpenCV's pose for a plain pinhole, which is some way off.
    cv::Mat turn, shift;
    cv::solvePnP(corners, seen[i], cv::Matx33d(600, 0, 319.5, 0, 600, 239.5, 0, 0, 1), cv::noArray(), turn,
                 shift);
    ScenePhoto photo;
    photo.camera_from_mat.numbers = {turn.at<double>(0),  turn.at<double>(1),  turn.at<double>(2),
                                     shift.at<double>(0), shift.at<double>(1), shift.at<double>(2)};
    scene.photos.push_back(photo);
    for (size_t c = 0; c < corners.size(); ++c) {
      PaperSighting s;
      s.photo = static_cast<int>(i);
      s.printed = {corners[c].x, corners[c].y};
      s.pixel = {seen[i][c].x, seen[i][c].y};
      s.sigma = 0.1;
      scene.paper.push_back(s);
    }
  }
  ASSERT_GE(fit_scene(scene, {FitPart::paper, {1.0, 1.0, 1.0}, true, 100}), 0.0);

  const Lens lens = scene.lenses[0].lens();
  const double focal = pinhole.at<double>(0, 0);
  EXPECT_NEAR(lens.focal, focal, 0.005 * focal);
  EXPECT_NEAR(lens.focal, kPublishedFocal, 0.01 * kPublishedFocal);
  EXPECT_NEAR(lens.centre.x(), pinhole.at<double>(0, 2), 3.0);
  EXPECT_NEAR(lens.centre.y(), pinhole.at<double>(1, 2), 3.0);
  // It explains the photographs as well as OpenCV does.
  double square = 0.0;
  for (const double r : paper_residuals(scene)) square += r * r;
  EXPECT_LT(std::sqrt(square / static_cast<double>(scene.paper.size())), 1.05 * reference_rms);
  // Each camera stands where cv::solvePnP puts it when it is given the same lens.
  for (size_t i = 0; i < seen.size(); ++i) {
    const std::vector<double> bend = {lens.k1, lens.k2, lens.p1, lens.p2, lens.k3};
    const double own = lens.focal * std::exp(scene.photos[i].focus);
    const cv::Matx33d camera(own, 0, lens.centre.x(), 0, own, lens.centre.y(), 0, 0, 1);
    cv::Mat turn, shift, matrix;
    ASSERT_TRUE(cv::solvePnP(corners, seen[i], camera, bend, turn, shift));
    cv::Rodrigues(turn, matrix);
    const Eigen::Isometry3d ours = scene.photos[i].camera_from_mat.transform();
    double apart = 0.0;  // of the board's corners, mm
    for (const cv::Point3f& corner : corners) {
      const cv::Mat point = matrix * (cv::Mat_<double>(3, 1) << corner.x, corner.y, 0.0) + shift;
      const Eigen::Vector3d theirs(point.at<double>(0), point.at<double>(1), point.at<double>(2));
      apart = std::max(apart, (ours * Eigen::Vector3d(corner.x, corner.y, kPaperThickness) - theirs).norm());
    }
    EXPECT_LT(apart, 0.005 * shift.at<double>(2)) << "photograph " << i;
  }
  // The terms trade against each other and against a turn of the camera; what
  // they do to the picture beyond that does not.
  const std::vector<double> reference = {terms.at<double>(0), terms.at<double>(1), terms.at<double>(2),
                                         terms.at<double>(3), terms.at<double>(4)};
  std::vector<Eigen::Vector2d> differences;
  Eigen::Vector2d mean = Eigen::Vector2d::Zero();
  for (double x = 20; x <= 620; x += 50)
    for (double y = 20; y <= 460; y += 50) {
      std::vector<cv::Point2d> ray, pixel = {{x, y}};
      cv::undistortPoints(pixel, ray, pinhole, reference);
      differences.push_back(focal * (lens.ray_from_pixel({x, y}) - Eigen::Vector2d(ray[0].x, ray[0].y)));
      mean += differences.back();
    }
  mean /= static_cast<double>(differences.size());
  double spread = 0.0;
  for (const Eigen::Vector2d& difference : differences) spread += (difference - mean).squaredNorm();
  EXPECT_LT(std::sqrt(spread / static_cast<double>(differences.size())), 1.0);  // pixels
}

}  // namespace
}  // namespace cowlcast::calibration
