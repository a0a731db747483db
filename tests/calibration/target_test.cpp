#include "calibration/target/target.h"

#include <gtest/gtest.h>

#include "calibration/detect/markers.h"
#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

class Resolutions : public testing::TestWithParam<std::pair<int, int>> {};

TEST_P(Resolutions, EveryMarkerIsReadWhereTheLayoutSays) {
  const auto [width, height] = GetParam();
  const TargetLayout layout = target_layout(width, height);
  EXPECT_LE(layout.marker_count(), marker_codes(MarkerFamily::light));
  const std::vector<FoundMarker> found = find_markers(target_picture(width, height), MarkerFamily::light, 10);
  EXPECT_GE(static_cast<int>(found.size()), layout.marker_count() * 95 / 100);
  for (const FoundMarker& marker : found) {
    const auto expected = layout.marker_corners(marker.code);
    for (size_t c = 0; c < 4; ++c) EXPECT_LT((marker.corners[c] - expected[c]).norm(), 1.6) << marker.code;
  }
}

INSTANTIATE_TEST_SUITE_P(Usual, Resolutions,
                         testing::Values(std::pair{1920, 1080}, std::pair{1280, 720}, std::pair{1280, 800},
                                         std::pair{1024, 768}, std::pair{854, 480}, std::pair{1920, 1200},
                                         std::pair{3840, 2160}));

// A corner lies on the edge between pixels: half a pixel from both centres.
TEST(Target, CornersLieBetweenPixels) {
  const TargetLayout layout = target_layout(1920, 1080);
  const cv::Mat picture = target_picture(1920, 1080);
  for (const int index : {0, 37, layout.corner_count() - 1}) {
    const Eigen::Vector2d at = layout.corner(index);
    const int u = static_cast<int>(at.x() + 0.5), v = static_cast<int>(at.y() + 0.5);
    EXPECT_DOUBLE_EQ(at.x(), u - 0.5);
    EXPECT_DOUBLE_EQ(at.y(), v - 0.5);
    EXPECT_EQ(picture.at<unsigned char>(v - 1, u - 1), picture.at<unsigned char>(v, u));
    EXPECT_EQ(picture.at<unsigned char>(v - 1, u), picture.at<unsigned char>(v, u - 1));
    EXPECT_NE(picture.at<unsigned char>(v, u), picture.at<unsigned char>(v - 1, u));
  }
}

TEST(Target, RefusesPicturesNoProjectorShows) {
  EXPECT_THROW(target_layout(100, 100), Refusal);
  EXPECT_THROW(target_layout(1080, 1920), Refusal);
  EXPECT_THROW(target_layout(5000, 1000), Refusal);
  EXPECT_THROW(plain_picture(0, 0), Refusal);
}

}  // namespace
}  // namespace cowlcast::calibration
