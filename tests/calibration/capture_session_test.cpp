#include "calibration/camera/capture_session.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <opencv2/imgproc.hpp>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "calibration/target/target.h"
#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/random_room.h"

namespace cowlcast::calibration {
namespace {

namespace vt = virtual_table;

// A simulated table as a live camera: frames from two sides, under target and plain light.
class Table {
 public:
  Table() {
    vt::RoomOptions options;
    for (int n = 1; n <= 4; ++n) options.pages.push_back(sheet_page(Paper::a4, n));
    options.hardness = 0.2;
    options.plain_photographs = 0;
    const vt::Session session = vt::random_session(21, options);
    settings.width = session.room.projector.width;
    settings.height = session.room.projector.height;
    const cv::Mat target = target_picture(settings.width, settings.height),
                  plain = plain_picture(settings.width, settings.height);
    for (int side = 0; side < 2; ++side) {
      vt::RoomCamera camera = session.shots[static_cast<size_t>(side)].camera;
      camera.optic.focal *= 1600.0 / camera.width;
      camera.optic.centre *= 1600.0 / camera.width;
      camera.height = camera.height * 1600 / camera.width;
      camera.width = 1600;
      for (const bool shown : {true, false})
        cv::cvtColor(vt::photograph(session.room, camera, shown ? target : plain, 5),
                     frames[side][shown ? 0 : 1], cv::COLOR_BGR2GRAY);
    }
  }
  const cv::Mat& frame(int side, ShownPicture shown) const {
    return frames[side][shown == ShownPicture::target ? 0 : 1];
  }
  CaptureSettings settings;

 private:
  cv::Mat frames[2][2];
};

const Table& table() {
  static const Table made;
  return made;
}

TEST(CaptureSession, StepsThroughTargetAndPlainFromTwoSides) {
  CaptureSession session(table().settings);
  ShownPicture shown = ShownPicture::target;
  int side = 0;
  std::vector<std::pair<int, ShownPicture>> taken;
  double carried = -1.0;
  double last_change = 0.0;
  for (int i = 0; i < 200 && !session.done(); ++i) {
    const double seconds = 0.1 * i;
    // The projector is a frame late, as real ones are.
    const CaptureStep step = session.look(table().frame(side, shown), seconds);
    if (step.take) {
      taken.emplace_back(side, shown);
      EXPECT_GE(seconds - last_change, table().settings.steady_seconds);
    }
    if (step.show != shown) last_change = seconds;
    shown = step.show;
    if (step.say.find("another side") != std::string::npos && carried < 0.0) carried = seconds;
    if (carried >= 0.0 && seconds > carried + 1.0 && side == 0) {
      side = 1;
      last_change = seconds;
    }
  }
  ASSERT_TRUE(session.done());
  const std::vector<std::pair<int, ShownPicture>> wanted = {{0, ShownPicture::target},
                                                            {0, ShownPicture::plain},
                                                            {1, ShownPicture::target},
                                                            {1, ShownPicture::plain}};
  EXPECT_EQ(taken, wanted);
}

TEST(CaptureSession, WaitsWhileAnythingMoves) {
  CaptureSession session(table().settings);
  const cv::Mat& still = table().frame(0, ShownPicture::target);
  cv::Mat shifted;
  const cv::Mat shift = (cv::Mat_<double>(2, 3) << 1, 0, 12, 0, 1, 5);
  cv::warpAffine(still, shifted, shift, still.size());
  for (int i = 0; i < 20; ++i) EXPECT_FALSE(session.look(i % 2 == 0 ? still : shifted, 0.1 * i).take);
  bool took = false;
  for (int i = 20; i < 30; ++i) took = took || session.look(still, 0.1 * i).take;
  EXPECT_TRUE(took);
}

TEST(CaptureSession, TakesNoBlurredDarkOrEmptyPictureAndSaysWhy) {
  const auto first_hint = [](const cv::Mat& frame) {
    CaptureSession session(table().settings);
    CaptureStep step;
    for (int i = 0; i < 16; ++i) {
      step = session.look(frame, 0.1 * i);
      EXPECT_FALSE(step.take);
    }
    return step.hints.empty() ? std::string() : step.hints.front();
  };
  const cv::Mat& sharp = table().frame(0, ShownPicture::target);
  cv::Mat blurred, dark;
  cv::GaussianBlur(sharp, blurred, {}, 2.3);
  sharp.convertTo(dark, CV_8U, 0.12);
  EXPECT_NE(first_hint(blurred).find("sharp"), std::string::npos) << first_hint(blurred);
  EXPECT_FALSE(first_hint(dark).empty());
  EXPECT_NE(first_hint(cv::Mat(900, 1600, CV_8UC1, cv::Scalar(120))).find("No sheet"), std::string::npos);
}

TEST(Appraisal, SeesWhereSheetsLieInTheLight) {
  const FrameAppraisal seen = appraise(table().frame(0, ShownPicture::target), table().settings, true);
  EXPECT_EQ(seen.sheets, 4);
  ASSERT_TRUE(seen.light_found);
  EXPECT_TRUE(seen.sheet_in[0]);
  EXPECT_TRUE(seen.sheet_in[2]);
  EXPECT_LT(seen.edge_width, 4.0);
  for (const double share : seen.light_seen) EXPECT_GT(share, 0.95);
}

TEST(Appraisal, SeesThatTheLightRunsOutOfView) {
  const cv::Mat& whole = table().frame(0, ShownPicture::target);
  const cv::Mat part = whole(cv::Rect(0, 0, whole.cols * 6 / 10, whole.rows)).clone();
  const FrameAppraisal seen = appraise(part, table().settings, true);
  ASSERT_TRUE(seen.light_found);
  EXPECT_LT(*std::min_element(seen.light_seen.begin(), seen.light_seen.end()), 0.6);
}

TEST(CaptureSession, RefusesAPictureNoTargetFits) {
  EXPECT_THROW(CaptureSession({.width = 100, .height = 100}), Refusal);
}

}  // namespace
}  // namespace cowlcast::calibration
