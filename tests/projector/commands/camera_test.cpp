// `cowlcast camera` as a person runs it, on pictures of a simulated table.
#include <gtest/gtest.h>

#include <opencv2/imgcodecs.hpp>

#include "calibration/target/target.h"
#include "tests/calibration/watched_room.h"
#include "tests/projector/commands/program.h"

namespace cowlcast::projector {
namespace {

namespace fs = std::filesystem;
using namespace calibration::testing;
using testing::Ran;
using testing::run_cowlcast;
using testing::text_of;

class CameraProgram : public ::testing::Test {
 protected:
  void SetUp() override {
    folder =
        fs::temp_directory_path() /
        ("cowlcast-camera-" + std::string(::testing::UnitTest::GetInstance()->current_test_info()->name()));
    fs::remove_all(folder);
    fs::create_directories(folder / "photos");
    std::ofstream(folder / "table.json") << room.map.to_json();
  }
  void TearDown() override { fs::remove_all(folder); }

  void photograph(const std::string& name, const cv::Mat& picture) const {
    vt::FixedFilm film(film_light(room, picture), room.eye, {{0, 0, room.eye.width, room.eye.height}});
    cv::imwrite((folder / "photos" / name).string(), film.frame(0.0, 3));
  }

  WatchedRoom room = watched_room(12);
  fs::path folder;
};

TEST_F(CameraProgram, FindsItsPlaceByPhotographsAndRefusesWhatIsNone) {
  const std::string line = "camera --table table.json --photos photos --lens-memory none --out camera.json";
  Ran ran = run_cowlcast(folder, line);
  EXPECT_EQ(ran.code, 3) << ran.err;
  EXPECT_NE(ran.err.find("end in target"), std::string::npos) << ran.err;

  const auto& projector = room.room.projector;
  const cv::Mat plain = calibration::plain_picture(projector.width, projector.height);
  photograph("photograph-1-target.png", calibration::target_picture(projector.width, projector.height));
  photograph("photograph-2-plain.png", plain);
  ran = run_cowlcast(folder, line);
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_NE(ran.out.find("mm above the mat"), std::string::npos) << ran.out;
  const auto camera = calibration::FixedCamera::from_json(text_of(folder / "camera.json"));
  const Eigen::Vector2d at = *vt::camera_from_room(room.eye, {100.0, 50.0, 0.0});
  EXPECT_LT((*camera.pixel_from_mat({100.0, 50.0}) - at).norm(), 0.5);

  fs::remove(folder / "camera.json");
  photograph("photograph-1-target.png", plain);
  ran = run_cowlcast(folder, line);
  EXPECT_EQ(ran.code, 3) << ran.err;
  EXPECT_FALSE(fs::exists(folder / "camera.json"));
}

TEST_F(CameraProgram, WantsBothTheCameraAndItsPlaceToWatch) {
  std::ofstream(folder / "camera.json") << room.map.to_json();
  for (const char* line : {"camera --table table.json --out c.json",
                           "camera --table table.json --camera 0 --photos p --out c.json",
                           "cast --table table.json --piece p.json --camera 0",
                           "cast --table table.json --piece p.json --fixed-camera camera.json"})
    EXPECT_EQ(run_cowlcast(folder, line).code, 2) << line;
}

}  // namespace
}  // namespace cowlcast::projector
