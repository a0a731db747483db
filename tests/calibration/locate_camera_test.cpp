#include "calibration/camera/locate_camera.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <opencv2/imgproc.hpp>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "calibration/target/target.h"
#include "tests/calibration/watched_room.h"

namespace cowlcast::calibration {
namespace {

using namespace testing;

// What the room's camera sees of the target and of plain light, a few frames of each.
LocateRequest frames_of(const WatchedRoom& r) {
  const vt::RoomProjector& projector = r.room.projector;
  const std::vector<cv::Rect> whole{{0, 0, r.eye.width, r.eye.height}};
  vt::FixedFilm film(film_light(r, plain_picture(projector.width, projector.height)), r.eye, whole,
                     {.lamps = 0.03, .projector = 0.02, .exposure = 0.02});
  LocateRequest out;
  out.plain = vt::film_frames(film, 6, 0.0, 1);
  film.change(film_light(r, target_picture(projector.width, projector.height)));
  out.target = vt::film_frames(film, 6, 1.0, 100);
  film.change(film_light(r, black_picture(r.room)));
  out.dark = vt::film_frames(film, 6, 2.0, 200);
  return out;
}

void add_sheet(WatchedRoom& r, int number) {
  vt::PaperSheet sheet;
  const SheetLayout layout = sheet_layout(Paper::a4);
  sheet.page = sheet_page(Paper::a4, number);
  sheet.pixel_mm = layout.page_width / sheet.page.cols;
  sheet.paper = {layout.page_width, layout.page_height};
  sheet.place = {r.room.mat.place.x - 40.0, r.room.mat.place.y + 20.0, 0.4};
  r.room.sheets.push_back(sheet);
}

TEST(LocateCamera, SeesTheMatWithinWhatItStates) {
  for (const std::uint64_t seed : {12U, 44U}) {
    const WatchedRoom r = watched_room(seed);
    const LocatedCamera found = locate_camera(r.map, frames_of(r));
    std::vector<double> misses;
    for (const Eigen::Vector2d& picture : lit_pixels(r.room.projector)) {
      const Eigen::Vector2d mat = *vt::mat_from_projector(r.room.projector, picture);
      const Eigen::Vector2d pixel = *vt::camera_from_room(r.eye, {mat.x(), mat.y(), 0.0});
      misses.push_back((found.camera.mat_from_pixel(pixel) - mat).norm());
    }
    // Out to the very corners of the light.
    EXPECT_LT(*std::max_element(misses.begin(), misses.end()), r.map.error_at({0, 0}) + found.within) << seed;
    EXPECT_LT(found.within, 1.5) << seed;
    EXPECT_GE(found.camera.tags.size(), 6U) << seed;
    for (const TagPlace& tag : found.camera.tags) {
      const vt::Place& place = r.room.sheets[static_cast<size_t>(tag.number) - 1].place;
      EXPECT_LT((tag.at - Eigen::Vector2d(place.x, place.y)).norm(), 1.2) << seed << ": tag " << tag.number;
    }
    EXPECT_EQ(found.sheets, 0);
    EXPECT_FALSE(found.warnings.empty()) << "nothing bore out that the light lies as calibrated";
    const FixedCamera back = FixedCamera::from_json(found.camera.to_json());
    EXPECT_EQ(back.to_json(), found.camera.to_json());
  }
}

std::string refusal_of(const TableMap& map, const LocateRequest& request) {
  try {
    locate_camera(map, request);
  } catch (const Refusal& refusal) {
    return refusal.what();
  }
  return "";
}

TEST(LocateCamera, LetsASheetTellWhetherTheLightLiesAsCalibrated) {
  WatchedRoom r = watched_room(12);
  add_sheet(r, 3);
  const LocatedCamera found = locate_camera(r.map, frames_of(r));
  EXPECT_EQ(found.sheets, 1);
  // The projector is raised by a hundredth of its height: all lines grow, and the target still fits.
  WatchedRoom raised = r;
  Eigen::Isometry3d lift = Eigen::Isometry3d::Identity();
  lift.translation().z() = 0.012 * (r.room.projector.projector_from_room.translation()).z();
  raised.room.projector.projector_from_room = lift * r.room.projector.projector_from_room;
  const std::string reason = refusal_of(r.map, frames_of(raised));
  EXPECT_NE(reason.find("sheet 3"), std::string::npos) << reason;
}

TEST(LocateCamera, RefusesWhatItCannotSeeWithTheReason) {
  const WatchedRoom r = watched_room(12);
  const LocateRequest good = frames_of(r);
  LocateRequest half = good, dark = good;
  for (auto* frames : {&half.target, &half.plain})
    for (cv::Mat& frame : *frames) frame.colRange(0, frame.cols * 2 / 5).setTo(20);
  EXPECT_NE(refusal_of(r.map, half).find("left third"), std::string::npos) << refusal_of(r.map, half);
  dark.target = dark.plain;
  EXPECT_NE(refusal_of(r.map, dark).find("does not read the target"), std::string::npos);
  TableMap other = r.map;  // the table file of another projector
  other.lens.k1 += 0.25;
  other.lens.focal *= 1.1;
  other.lens.centre += Eigen::Vector2d(150, -60);
  EXPECT_FALSE(refusal_of(other, good).empty());
}

}  // namespace
}  // namespace cowlcast::calibration
