#include "calibration/camera/frame_source.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <opencv2/videoio.hpp>

namespace cowlcast::calibration {
namespace {

namespace fs = std::filesystem;

// A film of `count` pictures that grow lighter; its name.
fs::path film(int count) {
  const fs::path path =
      fs::temp_directory_path() / ("cowlcast-frame-source-" + std::to_string(count) + ".avi");
  cv::VideoWriter writer(path.string(), cv::CAP_OPENCV_MJPEG, cv::VideoWriter::fourcc('M', 'J', 'P', 'G'),
                         50.0, cv::Size(160, 120));
  EXPECT_TRUE(writer.isOpened());
  for (int i = 0; i < count; ++i) writer.write(cv::Mat(120, 160, CV_8UC3, cv::Scalar::all(20.0 * (i + 1))));
  return path;
}

// A camera that gives `alive` pictures, is gone for `gone` tries to open it, and then comes back.
struct Cable {
  int alive = 3, gone = 2, opened = 0;

  OpenCamera opener() {
    return [this](const CameraRequest&) -> std::unique_ptr<CameraDevice> {
      ++opened;
      if (opened > 1 && opened <= 1 + gone) return nullptr;
      struct Device : CameraDevice {
        int left;
        explicit Device(int count) : left(count) {}
        bool read(cv::Mat& picture) override {
          if (left-- <= 0) return false;
          picture = cv::Mat(48, 64, CV_8UC1, cv::Scalar(7));
          return true;
        }
        bool is_film() const override { return false; }
        double frames_a_second() const override { return 0.0; }
      };
      return std::make_unique<Device>(alive);
    };
  }
};

TEST(FrameSource, ReadsAFilmToItsEnd) {
  const fs::path path = film(5);
  FrameSource source({path.string()});
  double last = -1.0, level = 0.0;
  int count = 0;
  while (auto frame = source.read()) {
    EXPECT_GE(frame->seconds, last);
    const double now = cv::mean(frame->picture)[0];
    EXPECT_GT(now, level + 10.0);  // none twice, none left out of order
    last = frame->seconds;
    level = now;
    ++count;
  }
  EXPECT_EQ(count, 5);
  EXPECT_EQ(source.size(), cv::Size(160, 120));
  EXPECT_EQ(source.state(), SourceState::ended);
  EXPECT_NE(source.complaint().find("end"), std::string::npos);
  fs::remove(path);
}

TEST(FrameSource, SaysWhatIsMissing) {
  FrameSource source({"/nowhere/film.avi"});
  EXPECT_EQ(source.state(), SourceState::lost);
  EXPECT_NE(source.complaint().find("/nowhere/film.avi"), std::string::npos);
  EXPECT_FALSE(source.read());
  FrameSource none({"97"});
  EXPECT_EQ(none.state(), SourceState::lost);
  EXPECT_FALSE(none.read());
}

TEST(FrameSource, HoldsTheCamerasSettingsOnceAfterAWhileAndAgainWhenItComesBack) {
  int held = 0, left = 5;
  struct Device : CameraDevice {
    int *holds, *pictures;
    Device(int* h, int* p) : holds(h), pictures(p) {}
    bool read(cv::Mat& picture) override {
      picture = cv::Mat(48, 64, CV_8UC1, cv::Scalar(7));
      return (*pictures)-- > 0;
    }
    bool is_film() const override { return false; }
    double frames_a_second() const override { return 0.0; }
    void hold() override { ++*holds; }
  };
  double now = 50.0;
  FrameSource source(
      {.spec = "0", .hold_after = 1.0},
      [&](const CameraRequest&) { return std::make_unique<Device>(&held, &left); }, [&] { return now; });
  const auto read_on = [&](int count) {
    for (int i = 0; i < count; ++i, now += 0.5) source.read();
  };
  read_on(2);
  EXPECT_EQ(held, 0) << "it still finds its exposure";
  read_on(3);
  EXPECT_EQ(held, 1);
  read_on(1);  // the cable is pulled
  EXPECT_EQ(source.state(), SourceState::lost);
  left = 100;
  now += 3.0;
  read_on(8);
  EXPECT_EQ(source.state(), SourceState::running);
  EXPECT_EQ(held, 2);
}

TEST(FrameSource, SurvivesAPulledCableAndFindsTheCameraAgain) {
  Cable cable;
  double now = 100.0;
  FrameSource source({.spec = "0", .width = 640, .height = 480}, cable.opener(), [&] { return now; });
  for (int i = 0; i < 3; ++i, now += 0.1) ASSERT_TRUE(source.read());
  EXPECT_NE(source.remark().find("64 x 48"), std::string::npos);  // not the size asked for
  EXPECT_FALSE(source.read());
  EXPECT_EQ(source.state(), SourceState::lost);
  EXPECT_FALSE(source.complaint().empty());
  for (int i = 0; i < 10; ++i) EXPECT_FALSE(source.read());  // at once: no hammering at the device
  EXPECT_EQ(cable.opened, 1);
  int tries = 0;
  while (source.state() == SourceState::lost && tries < 10) {
    now += 2.1;
    source.read();
    ++tries;
  }
  EXPECT_EQ(tries, 3);
  EXPECT_EQ(source.state(), SourceState::running);
  EXPECT_TRUE(source.complaint().empty());
  EXPECT_TRUE(source.read());
}

TEST(CameraFeed, HandsOutTheNewestPictureOnceAndEndsQuietly) {
  const fs::path path = film(4);
  CameraFeed feed({path.string()});
  const double until = steady_seconds() + 5.0;
  int seen = 0;
  while (feed.state() != SourceState::ended && steady_seconds() < until) seen += feed.newest() ? 1 : 0;
  seen += feed.newest() ? 1 : 0;
  EXPECT_GE(seen, 1);
  EXPECT_LE(seen, 4);
  EXPECT_FALSE(feed.newest());
  EXPECT_EQ(feed.state(), SourceState::ended);
  CameraFeed missing({"/nowhere/film.avi"});
  EXPECT_EQ(missing.state(), SourceState::lost);  // and its thread ends with it
  fs::remove(path);
}

}  // namespace
}  // namespace cowlcast::calibration
