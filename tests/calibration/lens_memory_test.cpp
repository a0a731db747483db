#include "calibration/solve/lens_memory.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <opencv2/imgproc.hpp>

#include "calibration/detect/paper.h"
#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "calibration/solve/calibrate.h"
#include "calibration/target/target.h"
#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration {
namespace {

namespace vt = virtual_table;

// A room photographed at half size by a camera that tells its name.
struct Table {
  vt::Session session;
  std::vector<Photograph> photographs;
  CalibrationRequest request;
  CalibrationReport report;

  Table() {
    vt::RoomOptions options;
    for (int n = 1; n <= 4; ++n) options.pages.push_back(sheet_page(Paper::a4, n));
    options.hardness = 0.2;
    session = vt::random_session(21, options);
    request.width = session.room.projector.width;
    request.height = session.room.projector.height;
    request.rulers = Rulers{session.ruler_across, session.ruler_down};
    for (vt::Shot& shot : session.shots) {
      vt::RoomCamera& camera = shot.camera;
      camera.width /= 2;
      camera.height /= 2;
      camera.optic.focal *= 0.5;
      camera.optic.centre =
          0.5 * (camera.optic.centre + Eigen::Vector2d(0.5, 0.5)) - Eigen::Vector2d(0.5, 0.5);
      Photograph photograph;
      photograph.name = "photograph " + std::to_string(photographs.size() + 1);
      photograph.camera = "Invented One";
      const cv::Mat picture = shot.target ? target_picture(request.width, request.height)
                                          : plain_picture(request.width, request.height);
      cv::cvtColor(vt::photograph(shot.room, camera, picture, shot.seed), photograph.grey,
                   cv::COLOR_BGR2GRAY);
      photographs.push_back(photograph);
    }
    report = calibrate(photographs, request);
  }

  // So many photographs of the target alone: little to tell a lens by.
  std::vector<Photograph> targets(size_t count) const {
    std::vector<Photograph> out;
    for (size_t i = 0; i < photographs.size() && out.size() < count; ++i)
      if (session.shots[i].target) out.push_back(photographs[i]);
    return out;
  }
  double worst_miss(const TableMap& map) const {
    std::vector<Eigen::Vector2d> found, real;
    for (int i = 0; i <= 6; ++i)
      for (int j = 0; j <= 8; ++j) {
        const Eigen::Vector2d pixel(j * (map.width - 1) / 8.0, i * (map.height - 1) / 6.0);
        found.push_back(map.mat_from_projector(pixel));
        real.push_back(*vt::mat_from_projector(session.room.projector, pixel));
      }
    const Eigen::Isometry2d fit = vt::rigid_fit(found, real);
    double worst = 0.0;
    for (size_t i = 0; i < found.size(); ++i) worst = std::max(worst, (fit * found[i] - real[i]).norm());
    return worst;
  }
};

const Table& table() {
  static const Table made;
  return made;
}

double stated(const TableMap& map) {
  return *std::max_element(map.error.mm95.begin(), map.error.mm95.end());
}

TEST(LensMemory, IsKeptAsTextAndReplacedByWhatIsKnownBetter) {
  KnownLens lens{
      "Invented One", 1600, 1200, {1400, 799, 599, 0.1, 0, 0, 0, 0}, {0.002, 3, 3, 0.01, 0.01, 0.01, 0, 0}};
  std::vector<KnownLens> memory;
  keep_lens(memory, lens);
  KnownLens other = lens;
  other.width = 800;
  keep_lens(memory, other);
  EXPECT_EQ(memory.size(), 2U);  // another size is another lens
  KnownLens worse = lens;
  worse.sigma[0] = 0.01;
  keep_lens(memory, worse);
  EXPECT_EQ(memory[0].sigma[0], 0.002);
  const auto back = lens_memory_from_json(lens_memory_to_json(memory));
  ASSERT_EQ(back.size(), 2U);
  EXPECT_EQ(back[0].camera, lens.camera);
  EXPECT_EQ(back[0].lens, lens.lens);
  EXPECT_THROW(lens_memory_from_json("{}"), Refusal);
  EXPECT_THROW(lens_memory_from_json("nonsense"), Refusal);
}

TEST(LensMemory, SharpensACalibrationThatKnowsLittleOfItsLens) {
  const Table& t = table();
  ASSERT_EQ(t.report.lenses.size(), 1U);
  EXPECT_EQ(t.report.lenses[0].camera, "Invented One");
  CalibrationRequest with = t.request;
  with.known_lenses = t.report.lenses;
  const CalibrationReport alone = calibrate(t.targets(2), t.request), helped = calibrate(t.targets(2), with);
  EXPECT_LT(stated(helped.map), stated(alone.map));
  EXPECT_LT(t.worst_miss(helped.map), 1.5 * stated(helped.map));
}

TEST(LensMemory, DoesNotMakeUpForSheetsThatAreMissing) {
  const Table& t = table();
  std::vector<Photograph> one = t.targets(1);
  one.front().grey = one.front().grey.clone();
  const std::vector<SheetView> sheets = find_sheets(one.front().grey);
  for (size_t i = 1; i < sheets.size(); ++i) {  // the others are taken away
    std::vector<cv::Point2f> corners;
    for (const SeenCorner& corner : sheets[i].corners)
      corners.emplace_back(static_cast<float>(corner.pixel.x()), static_cast<float>(corner.pixel.y()));
    cv::Rect part = cv::boundingRect(corners);
    part = (part - cv::Point(30, 30) + cv::Size(60, 60)) & cv::Rect({0, 0}, one.front().grey.size());
    one.front().grey(part).setTo(60);
  }
  const auto refusal = [&](const CalibrationRequest& request) -> std::string {
    try {
      calibrate(one, request);
    } catch (const Refusal& why) {
      return why.what();
    }
    return "";
  };
  CalibrationRequest with = t.request;
  with.known_lenses = t.report.lenses;
  EXPECT_NE(refusal(t.request).find("lens is not known"), std::string::npos) << refusal(t.request);
  EXPECT_NE(refusal(with).find("lens is remembered"), std::string::npos) << refusal(with);
}

TEST(LensMemory, OfAnotherLensIsDroppedAndSaid) {
  const Table& t = table();
  CalibrationRequest wrong = t.request;
  wrong.known_lenses = t.report.lenses;
  wrong.known_lenses[0].lens[0] *= 1.06;  // the same phone's name, another crop
  const CalibrationReport report = calibrate(t.photographs, wrong);
  EXPECT_TRUE(std::any_of(report.warnings.begin(), report.warnings.end(), [](const std::string& warning) {
    return warning.find("Invented One") != std::string::npos;
  }));
  EXPECT_LT(t.worst_miss(report.map), t.worst_miss(t.report.map) + 0.02);
}

}  // namespace
}  // namespace cowlcast::calibration
