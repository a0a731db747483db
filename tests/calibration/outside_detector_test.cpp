// The printed sheets as another detector sees them: libapriltag (Debian package libapriltag-dev; J. Wang and
// E. Olson, "AprilTag 2: Efficient and robust fiducial detection", IROS 2016), which shares no code with
// OpenCV's.
#include <apriltag/apriltag.h>
#include <apriltag/tag36h11.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>
#include <vector>

#include "calibration/detect/paper.h"
#include "calibration/sheet/sheet.h"
#include "calibration/target/target.h"
#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/random_room.h"

namespace cowlcast::calibration {
namespace {

namespace vt = virtual_table;

// A simulated photograph of four sheets under plain light.
cv::Mat photograph_of_sheets() {
  vt::RoomOptions options;
  for (int n = 1; n <= 4; ++n) options.pages.push_back(sheet_page(Paper::a4, n));
  options.hardness = 0.2;
  const vt::Session session = vt::random_session(5, options);
  const auto shot = std::find_if(session.shots.begin(), session.shots.end(),
                                 [](const vt::Shot& each) { return !each.target; });
  const cv::Mat plain = plain_picture(session.room.projector.width, session.room.projector.height);
  cv::Mat grey;
  cv::cvtColor(vt::photograph(shot->room, shot->camera, plain, shot->seed), grey, cv::COLOR_BGR2GRAY);
  return grey;
}

// Corners of each tag by its id. libapriltag has the centre of the first pixel at (0.5, 0.5).
std::map<int, std::vector<cv::Point2d>> tags_by_libapriltag(const cv::Mat& grey) {
  apriltag_detector_t* detector = apriltag_detector_create();
  apriltag_family_t* family = tag36h11_create();
  apriltag_detector_add_family_bits(detector, family, 1);
  detector->quad_decimate = 1.0F;
  detector->nthreads = 2;
  cv::Mat copy = grey.clone();
  image_u8_t image = {copy.cols, copy.rows, static_cast<int32_t>(copy.step), copy.data};
  zarray_t* found = apriltag_detector_detect(detector, &image);
  std::map<int, std::vector<cv::Point2d>> out;
  for (int i = 0; i < zarray_size(found); ++i) {
    apriltag_detection_t* tag = nullptr;
    zarray_get(found, i, &tag);
    for (const auto& corner : tag->p) out[tag->id].emplace_back(corner[0] - 0.5, corner[1] - 0.5);
  }
  apriltag_detections_destroy(found);
  apriltag_detector_destroy(detector);
  tag36h11_destroy(family);
  return out;
}

TEST(OutsideDetector, SeesTheSameTagsInTheSamePlaces) {
  const cv::Mat grey = photograph_of_sheets();
  const auto tags = tags_by_libapriltag(grey);
  const std::vector<SheetView> sheets = find_sheets(grey);
  ASSERT_EQ(sheets.size(), 4U);
  std::vector<double> apart;
  for (const SheetView& sheet : sheets) {
    const SheetLayout layout = sheet_layout(sheet.paper);
    std::vector<cv::Point2d> printed, seen;
    for (const SeenCorner& corner : sheet.corners) {
      const Eigen::Vector2d p = layout.corner(corner.index);
      printed.emplace_back(p.x(), p.y());
      seen.emplace_back(corner.pixel.x(), corner.pixel.y());
    }
    const cv::Mat photo_from_sheet = cv::findHomography(printed, seen, 0);
    for (int slot = 0; slot < layout.marker_count(); ++slot) {
      const auto tag = tags.find(marker_code({sheet.paper, sheet.number, slot}));
      if (tag == tags.end()) continue;
      for (const Eigen::Vector2d& corner : layout.marker_corners(slot)) {
        std::vector<cv::Point2d> ours, from = {{corner.x(), corner.y()}};
        cv::perspectiveTransform(from, ours, photo_from_sheet);
        double nearest = 1e9;  // the two name a tag's corners in different order
        for (const cv::Point2d& theirs : tag->second) nearest = std::min(nearest, cv::norm(ours[0] - theirs));
        apart.push_back(nearest);
      }
    }
  }
  // Most tags are found by both, and their corners lie where ours say they are. A tag's corner, by lines
  // along its border, is no better than a few tenths of a pixel; a shift of the frames by half a pixel would
  // show.
  EXPECT_GT(apart.size(), 4U * 50U);
  std::sort(apart.begin(), apart.end());
  EXPECT_LT(apart[apart.size() / 2], 0.5);
  EXPECT_LT(apart[apart.size() * 9 / 10], 0.9);
}

}  // namespace
}  // namespace cowlcast::calibration
