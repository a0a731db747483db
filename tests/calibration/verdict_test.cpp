#include "calibration/verdict/verdict.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "calibration/refusal.h"
#include "calibration/solve/fit.h"
#include "calibration/verdict/lamp_doubt.h"

namespace cowlcast::calibration {
namespace {

constexpr double kWide = 1920, kHigh = 1080;

Eigen::Isometry3d looking_down(const Eigen::Vector3d& axis, double slant, double turn,
                               const Eigen::Vector3d& from) {
  Eigen::Isometry3d out = Eigen::Isometry3d::Identity();
  out.linear() = (Eigen::AngleAxisd(slant, axis) * Eigen::AngleAxisd(M_PI, Eigen::Vector3d::UnitX()) *
                  Eigen::AngleAxisd(turn, Eigen::Vector3d::UnitZ()))
                     .toRotationMatrix();
  out.translation() = -out.linear() * from;
  return out;
}

// Four sheets and a target on a flat mat, seen by a pinhole camera from three sides without any noise: a
// scene at its best fit. The projector hangs 1400 mm over the mat and
// slants sideways by so much: lengthwise its picture may be thrown aslant by the lens itself.
Scene flat_table(double slant) {
  Scene scene;
  scene.lenses.push_back({{3000, 1999.5, 1499.5, 0, 0, 0, 0, 0}});
  scene.lens_sizes.emplace_back(4000, 3000);
  scene.exif_focals.emplace_back();
  scene.reading.sigma_across = scene.reading.sigma_down = 3e-4;
  scene.projector_size = {kWide, kHigh};
  scene.projector_lens = {{1.3 * kWide, 0.5 * (kWide - 1), 0.5 * (kHigh - 1), 0, 0, 0, 0, 0}};
  scene.projector_from_mat = Placement::of(
      looking_down(Eigen::Vector3d::UnitY(), slant, 0.0, {1400.0 * std::tan(slant), 0.0, 1400.0}));
  for (int n = 0; n < 4; ++n) {
    SceneSheet sheet;
    sheet.number = n + 1;
    sheet.place = {n % 2 == 0 ? -450.0 : 200.0, n < 2 ? -300.0 : 100.0, 0.1 * n};
    scene.sheets.push_back(sheet);
  }
  for (int x = 0; x < 12; ++x)
    for (int y = 0; y < 7; ++y) {
      LightPoint point;
      point.picture = {(x + 0.5) * kWide / 12, (y + 0.5) * kHigh / 7};
      const Eigen::Vector2d mat = scene.projector().mat_from_projector(point.picture);
      point.mat = {mat.x(), mat.y()};
      scene.lights.push_back(point);
    }
  const SheetLayout layout = sheet_layout(Paper::a4);
  for (int p = 0; p < 3; ++p) {
    const double turn = 2.1 * p;
    ScenePhoto photo;
    photo.target = true;
    photo.camera_from_mat = Placement::of(looking_down(
        Eigen::Vector3d::UnitX(), 0.5, turn, {800.0 * std::sin(turn), -800.0 * std::cos(turn), 1500.0}));
    scene.photos.push_back(photo);
    for (int sheet = 0; sheet < 4; ++sheet)
      for (int corner = 0; corner < layout.corner_count(); ++corner)
        if (const auto pixel = scene.photo_from_sheet(p, sheet, layout.corner(corner)))
          scene.paper.push_back({p, sheet, corner, layout.corner(corner), *pixel, 0.2, true});
    for (size_t i = 0; i < scene.lights.size(); ++i)
      if (const auto pixel = scene.photo_from_mat(p, {scene.lights[i].mat[0], scene.lights[i].mat[1]}))
        scene.light.push_back({p, static_cast<int>(i), *pixel, 0.2, true, *pixel});
  }
  return scene;
}

CalibrationReport report_of(const Scene& scene) {
  CalibrationReport report;
  report.map = scene.projector();
  report.map.scale.source = "rulers";
  for (const auto& corner : {Eigen::Vector2d(0, 0), Eigen::Vector2d(kWide, 0), Eigen::Vector2d(kWide, kHigh),
                             Eigen::Vector2d(0, kHigh)})
    report.map.lit_area.push_back(report.map.mat_from_projector(corner));
  report.map.error = {{-500, -300}, 500.0, 3, 2, std::vector<double>(6, 0.2), {}};
  return report;
}

// Errors along two coordinates, each normal: beyond r goes a share of exp(-r²/2σ²) (Rayleigh's distribution).
TEST(Verdict, RefusesWhatMayGoBeyondAMillimetreThoughItIsStatedBelow) {
  const double sigma = kMostStated / std::sqrt(-2.0 * std::log(0.05));
  EXPECT_LT(std::exp(-0.5 * std::pow(kMostError / sigma, 2)), 0.0025);
  const Scene scene = flat_table(0.1);
  CalibrationReport report = report_of(scene);
  ErrorEstimate error;
  error.shape95 = 0.6;
  error.worst95 = 0.65;
  EXPECT_NO_THROW(judge(scene, error, report));

  error.worst95 = 0.75;
  report.warnings = {"Sheet 4 moved between photographs. That was left out."};
  try {
    judge(scene, error, report);
    FAIL() << "accepted";
  } catch (const Refusal& refusal) {
    const std::string why = refusal.what();
    EXPECT_EQ(why.find("Sheet 4 moved"), 0U) << why;
    EXPECT_NE(why.find("only within 0.75 mm"), std::string::npos) << why;
    EXPECT_EQ(why.find("Measure both rulers"), std::string::npos) << "they were: " << why;
  }
}

TEST(LampDoubt, IsSmallWhereTheLightSlantsAndLargeWhereItFallsStraight) {
  const FitNoise noise{1.0, 1.0, 0.02};
  const double straight = lamp_doubt(flat_table(0.0), noise), slanting = lamp_doubt(flat_table(0.4), noise);
  EXPECT_GT(straight, 0.3);
  EXPECT_LT(slanting, 0.1);
}

}  // namespace
}  // namespace cowlcast::calibration
