#include "calibration/watch/watch.h"

#include <gtest/gtest.h>

#include <set>

#include "calibration/detect/markers.h"
#include "calibration/refusal.h"
#include "calibration/watch/recalibrate.h"
#include "tests/calibration/watched_room.h"

namespace cowlcast::calibration {
namespace {

using namespace testing;

const vt::FilmFlicker kFlicker{.lamps = 0.03, .projector = 0.02, .exposure = 0.02};

// One room, learnt once for all tests.
struct Learnt {
  WatchedRoom room = watched_room(12);
  vt::FilmLight light = film_light(room, marked_picture(room.room));
  Watch watch = Watch::learn(room.map, room.camera, learning_pictures(room, light, 6, kFlicker, 1));
};
const Learnt& learnt() {
  static const Learnt made;
  return made;
}

// What the watch says at the end of a second and a bit after the scene became `light`.
WatchReport after_a_second(const vt::FilmLight& light, const std::optional<vt::FilmArm>& arm = {}) {
  const Learnt& l = learnt();
  Watch watch = l.watch;
  vt::FixedFilm film(l.light, l.room.eye, places_of(watch), kFlicker);
  WatchReport report;
  for (int i = 0; i < 8; ++i) {
    report = watch.look(film.frame(0.1 * i, static_cast<std::uint64_t>(50 + i), arm), 0.1 * i);
    EXPECT_EQ(report.state, WatchState::steady) << report.message;
  }
  film.change(light);
  for (int i = 8; i < 18; ++i)
    report = watch.look(film.frame(0.1 * i, static_cast<std::uint64_t>(50 + i), arm), 0.1 * i);
  return report;
}

TEST(EdgeTags, ShareNoCodeWithTheSheetsAndAreFoundAsDrawn) {
  std::set<int> codes;
  for (int tag = 1; tag <= kEdgeTags; ++tag) {
    const int code = edge_tag_code(tag);
    EXPECT_LT(code, marker_codes(MarkerFamily::paper));
    EXPECT_FALSE(sheet_marker(code));
    EXPECT_EQ(edge_tag(code), tag);
    codes.insert(code);
    cv::Mat page;
    cv::copyMakeBorder(edge_tag_picture(tag, 3.0), page, 160, 160, 160, 160, cv::BORDER_CONSTANT,
                       cv::Scalar(90));
    const auto found = find_markers(page, MarkerFamily::paper, 20.0);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found.front().code, code);
  }
  EXPECT_EQ(codes.size(), static_cast<size_t>(kEdgeTags));
  EXPECT_FALSE(edge_tag(edge_tag_code(1) - 1));
  EXPECT_THROW(edge_tag_code(0), Refusal);
  EXPECT_TRUE(edge_tags_pdf(Paper::letter).starts_with("%PDF"));
}

TEST(BorderMarks, LieInsideThePictureAndApart) {
  for (const cv::Size size :
       {cv::Size(1280, 720), cv::Size(1920, 1080), cv::Size(3840, 2160), cv::Size(1280, 800)}) {
    const BorderMarks marks = border_marks(size.width, size.height);
    ASSERT_EQ(marks.centres.size(), 12U);
    for (size_t i = 0; i < marks.grounds.size(); ++i) {
      EXPECT_EQ(marks.grounds[i] & cv::Rect({0, 0}, size), marks.grounds[i]);
      for (size_t j = 0; j < i; ++j) EXPECT_TRUE((marks.grounds[i] & marks.grounds[j]).empty());
    }
  }
  cv::Mat picture(720, 1280, CV_8UC1, cv::Scalar(90));
  draw_border_marks(picture);
  const BorderMarks marks = border_marks(1280, 720);
  const cv::Point corner(static_cast<int>(marks.centres[0].x() + 0.5),
                         static_cast<int>(marks.centres[0].y() + 0.5));
  EXPECT_EQ(picture.at<unsigned char>(corner), 255);  // the centre is the corner that the squares share
  EXPECT_EQ(picture.at<unsigned char>(corner - cv::Point(1, 1)), 255);
  EXPECT_EQ(picture.at<unsigned char>(corner - cv::Point(1, 0)), 0);
  EXPECT_EQ(picture.at<unsigned char>(corner - cv::Point(0, 1)), 0);
  EXPECT_EQ(picture.at<unsigned char>(360, 640), 90);
}

TEST(Watch, LearnsTagsAndMarksAndStaysCalmWhileAnArmPasses) {
  const Learnt& l = learnt();
  int tags = 0, marks = 0;
  for (const WatchedSight& sight : l.watch.sights()) {
    tags += sight.sight.kind == SightKind::tag ? 1 : 0;
    marks += sight.sight.kind == SightKind::mark ? 1 : 0;
  }
  EXPECT_EQ(tags, 8);
  EXPECT_EQ(marks, 12);
  Watch watch = l.watch;
  vt::FixedFilm film(l.light, l.room.eye, places_of(watch), kFlicker);
  int fewest = 99;
  for (int i = 0; i < 40; ++i) {
    const double way = 32.0 * i;
    const vt::FilmArm arm{.elbow = {way - 300.0, 800.0}, .hand = {way, 40.0 + 0.3 * way}};
    const WatchReport report = watch.look(film.frame(0.1 * i, static_cast<std::uint64_t>(i), arm), 0.1 * i);
    EXPECT_EQ(report.state, WatchState::steady) << i << ": " << report.message;
    fewest = std::min(fewest, report.tags + report.marks);
  }
  EXPECT_LT(fewest, 19);  // the arm did hide something
}

TEST(Watch, TellsWhatMovedAndByHowMuch) {
  const Learnt& l = learnt();
  vt::Dice dice(3);
  const std::pair<Mover, double> knocks[] = {
      {Mover::mat, 1.0}, {Mover::projector, 1.0}, {Mover::camera, 1.0}, {Mover::projector, 4.0}};
  for (const auto& [mover, mm] : knocks) {
    const WatchReport report =
        after_a_second(film_light(knocked(l.room, mover, mm, dice), marked_picture(l.room.room)));
    EXPECT_EQ(report.state, WatchState::moved) << name_of(mover);
    ASSERT_EQ(report.moved.size(), 1U) << report.message;
    EXPECT_EQ(report.moved.front().what, mover) << report.message;
    EXPECT_NEAR(report.moved.front().mm, mm, 0.15 + 0.05 * mm) << name_of(mover);
    EXPECT_NE(report.message.find(name_of(mover)), std::string::npos);
  }
}

TEST(Watch, FindsAMoveUnderACoveringArm) {
  const Learnt& l = learnt();
  vt::Dice dice(9);
  const vt::FilmArm arm{.elbow = {200.0, 760.0}, .hand = {420.0, 60.0}, .radius = 60.0};
  const WatchReport report =
      after_a_second(film_light(knocked(l.room, Mover::mat, 1.2, dice), marked_picture(l.room.room)), arm);
  ASSERT_EQ(report.state, WatchState::moved);
  EXPECT_EQ(report.moved.front().what, Mover::mat);
}

// The table found again as it stands now.
Recalibration found_again(const Watch& watch, const WatchedRoom& after) {
  return recalibrate(watch,
                     learning_pictures(after, film_light(after, marked_picture(after.room)), 5, kFlicker, 7));
}

// The room after a knock, and what came of looking for it.
struct Knocked {
  WatchedRoom after;
  Recalibration again;
};
Knocked knocked_and_found(Mover mover, double mm, std::uint64_t seed) {
  vt::Dice dice(seed);
  const WatchedRoom after = knocked(learnt().room, mover, mm, dice);
  const Recalibration again = found_again(learnt().watch, after);
  EXPECT_EQ(again.motion.moved.size(), 1U);
  EXPECT_EQ(again.motion.moved.front().what, mover);
  return {after, again};
}

TEST(Recalibrate, FollowsTheProjectorWithinWhatItStates) {
  const auto [after, again] = knocked_and_found(Mover::projector, 9.0, 21);
  const WatchedRoom& room = learnt().room;
  const double before = worst_miss(room.map, room.room.projector);
  EXPECT_LT(worst_miss(again.map, after.room.projector), before + again.added95);
  EXPECT_LT(again.added95, 0.4);
  EXPECT_GT(again.map.error_at({0, 0}), room.map.error_at({0, 0}));  // less is known than with the sheets
  EXPECT_NE(again.summary.find("projector"), std::string::npos);
}

TEST(Recalibrate, FollowsAProjectorThatSquaresItsPictureItself) {
  WatchedRoom before = learnt().room;
  const Eigen::Vector2d size(before.map.width, before.map.height);
  before.map.keystone = {.across = 0.06, .down = 0.15, .aspect = 0.02, .skew = 0.01};
  Eigen::Matrix3d widths = Eigen::Matrix3d::Identity(),
                  squared = widths;  // pixels from widths of the picture
  widths.topLeftCorner<2, 2>() *= size.x();
  widths.topRightCorner<2, 1>() = 0.5 * (size - Eigen::Vector2d::Ones());
  const Keystone& k = before.map.keystone;
  squared << 1.0 + k.aspect, k.skew, 0.0, 0.0, 1.0, 0.0, k.across, k.down, 1.0;
  before.room.projector.panel_from_picture = widths * squared.inverse() * widths.inverse();
  ASSERT_LT(worst_miss(before.map, before.room.projector), 0.3);  // map and room mean the same
  const vt::FilmLight light = film_light(before, marked_picture(before.room));
  const Watch watch =
      Watch::learn(before.map, before.camera, learning_pictures(before, light, 5, kFlicker, 1));
  vt::Dice dice(21);
  const WatchedRoom after = knocked(before, Mover::projector, 9.0, dice);
  const Recalibration again = found_again(watch, after);
  EXPECT_LT(worst_miss(again.map, after.room.projector),
            worst_miss(before.map, before.room.projector) + again.added95);
}

TEST(Recalibrate, FollowsTheMat) {
  const auto [after, again] = knocked_and_found(Mover::mat, 25.0, 22);
  const Eigen::Isometry2d room_from_mat = mat_gone(learnt().room.room.mat.place, after.room.mat.place);
  EXPECT_LT(worst_miss(again.map, after.room.projector, room_from_mat), 0.1 + again.added95);
  EXPECT_LT(again.added95, 0.5);
}

TEST(Recalibrate, FollowsTheCameraAndLeavesTheMapAlone) {
  const auto [after, again] = knocked_and_found(Mover::camera, 6.0, 23);
  EXPECT_EQ(again.map.to_json(), learnt().room.map.to_json());
  for (const Eigen::Vector2d& mat :
       {Eigen::Vector2d(0, 0), Eigen::Vector2d(300, 150), Eigen::Vector2d(-250, -100)})
    EXPECT_LT((*again.camera.pixel_from_mat(mat) - *vt::camera_from_room(after.eye, {mat.x(), mat.y(), 0.0}))
                  .norm(),
              0.5);
}

TEST(Recalibrate, AsksForTheSheetsWhenTheLensWasZoomed) {
  WatchedRoom after = learnt().room;
  after.room.projector.optic.focal *= 1.01;
  after.room.projector.optic.k1 += 0.02;
  try {
    const Recalibration again = found_again(learnt().watch, after);
    // A zoom may look like a lift of the projector: then the lines must still be right.
    EXPECT_LT(worst_miss(again.map, after.room.projector), 1.0);
  } catch (const Refusal& refusal) {
    EXPECT_NE(std::string(refusal.what()).find("sheets"), std::string::npos) << refusal.what();
  }
}

TEST(Watch, SaysWhenItCannotSee) {
  const Learnt& l = learnt();
  Watch watch = l.watch;
  const cv::Mat dark(720, 1280, CV_8UC1, cv::Scalar(3));
  WatchReport report;
  for (int i = 0; i < 45; ++i) report = watch.look(dark, 0.1 * i);
  EXPECT_EQ(report.state, WatchState::unseen);
  EXPECT_FALSE(report.trustworthy());
  EXPECT_FALSE(report.message.empty());
}

TEST(Watch, RefusesToLearnByACameraThatSetsItsExposureAnew) {
  const Learnt& l = learnt();
  WatchPictures pictures = learning_pictures(l.room, l.light, 3, {}, 1);
  for (cv::Mat& frame : pictures.plain) frame *= 0.6;
  try {
    Watch::learn(l.room.map, l.room.camera, pictures);
    FAIL();
  } catch (const Refusal& refusal) {
    EXPECT_NE(std::string(refusal.what()).find("exposure"), std::string::npos) << refusal.what();
  }
}

TEST(Watch, RefusesToLearnWithoutTags) {
  WatchedRoom bare = learnt().room;
  bare.room.sheets.resize(3);
  const vt::FilmLight light = film_light(bare, marked_picture(bare.room));
  try {
    Watch::learn(bare.map, bare.camera, learning_pictures(bare, light, 3, {}, 1));
    FAIL();
  } catch (const Refusal& refusal) {
    EXPECT_NE(std::string(refusal.what()).find("only 3 of the tags"), std::string::npos) << refusal.what();
  }
}

}  // namespace
}  // namespace cowlcast::calibration
