// The watch of the table as she meets it: through the view and the pictures that the window shows, on a
// simulated table under a fixed camera.
#include "projector/cutting/watching.h"

#include <gtest/gtest.h>

#include "drafting/geometry/polyline.h"
#include "projector/cutting/begin.h"
#include "projector/cutting/view_marks.h"
#include "projector/guard/cut_watch.h"
#include "tests/calibration/watched_room.h"
#include "tests/projector/test_piece.h"

namespace cowlcast::projector {
namespace {

using namespace calibration;
using namespace calibration::testing;

cv::Mat grey_of(const QImage& shown) {
  const QImage grey = shown.convertToFormat(QImage::Format_Grayscale8);
  return cv::Mat(grey.height(), grey.width(), CV_8UC1, const_cast<unsigned char*>(grey.constBits()),
                 static_cast<size_t>(grey.bytesPerLine()))
      .clone();
}

const WatchedRoom& quiet_room() {
  static const WatchedRoom made = [] {
    WatchedRoom room = watched_room(12);
    int number = 0;
    for (const vt::PaperSheet& tag : room.room.sheets)  // as they were seen when the camera was located
      room.camera.tags.push_back({++number, room.camera.mat_from_pixel(*vt::camera_from_room(
                                                room.eye, {tag.place.x, tag.place.y, tag.thickness}))});
    return room;
  }();
  return made;
}

CuttingView first_view(const TableMap& map) {
  Record record;
  record.cautions_read_at = map.made_at;
  return begun(map, projector::testing::small_front(), {}, record, map.made_at);
}

// She, her table and the camera: what the view shows is projected, and the camera sees it.
class Sitting {
 public:
  Sitting()
      : room(quiet_room()),
        watching(TableWatch(room.map, room.camera)),
        view(first_view(room.map)),
        dark_(vt::linear_photograph(room.room, room.eye, black_picture(room.room))),
        film_(light_of(painter.draw(watching.map(), view)), room.eye,
              {{0, 0, room.eye.width, room.eye.height}},
              {.lamps = 0.03, .projector = 0.02, .exposure = 0.02}) {}

  Sitting(const Sitting& other)
      : room(other.room),
        watching(other.watching.table()),
        view(other.view),
        painter(other.painter),
        seconds(other.seconds),
        dark_(other.dark_),
        film_(other.film_),
        seed_(other.seed_) {}

  void run(double for_seconds, const std::optional<vt::FilmArm>& arm = {}, double step = 0.1) {
    for (const double end = seconds + for_seconds; seconds < end; seconds += step) {
      const CameraFrame frame{film_.frame(seconds, ++seed_, arm), seconds};
      pictures.push_back(view.light);
      look(frame, "");
    }
  }
  void run_blind(double for_seconds, const std::string& complaint) {
    for (const double end = seconds + for_seconds; seconds < end; seconds += 0.1) look({}, complaint);
  }
  void look(const std::optional<CameraFrame>& frame, const std::string& complaint) {
    const bool heard = watching.said(view);  // what was pressed
    watching.look(view, painter.picture(), frame, complaint, seconds);
    if (watching.said(view) || heard) project();
  }
  void press(Act act) {
    view = after(view, act, Pace::normal);
    project();
  }
  void become(const WatchedRoom& other) {
    room = other;
    dark_ = vt::linear_photograph(room.room, room.eye, black_picture(room.room));
    project();
  }
  void learn() {
    run(0.2);
    press(Act::next);  // to cut
    run(0.2);
    press(Act::next);  // the camera learns
    run_slowly();
  }
  // Long enough to learn, by a camera that sends five frames a second.
  void run_slowly() { run(10.5, {}, 0.2); }

  WatchedRoom room;
  Watching watching;
  CuttingView view;
  ViewPainter painter;
  double seconds = 0.0;
  std::vector<Light> pictures;  // shown at each frame

 private:
  vt::FilmLight light_of(const QImage& shown) {
    const cv::Mat picture = grey_of(shown);
    if (cv::countNonZero(picture) == 0) return {dark_, dark_};
    return {dark_, vt::linear_photograph(room.room, room.eye, picture)};
  }
  void project() { film_.change(light_of(painter.draw(watching.map(), view))); }

  cv::Mat dark_;
  vt::FixedFilm film_;
  std::uint64_t seed_ = 1;
};

// The table learnt once; each test goes on from a copy.
const Sitting& learnt() {
  static const Sitting made = [] {
    Sitting sitting;
    sitting.learn();
    return sitting;
  }();
  return made;
}

// Share of points along the present stroke at which the picture is lit where the room's own projector would
// light them.
double stroke_lit(const Sitting& s, const Eigen::Isometry2d& room_from_mat) {
  const TableMap truth = true_map(s.room.room.projector);
  const Polyline path =
      drafting::subdivided(laid(s.view.laying, s.view.plan[static_cast<size_t>(s.view.cut)].path), 8.0);
  const cv::Mat picture = grey_of(s.painter.picture());
  int lit = 0, asked = 0;
  for (size_t i = 1; i + 1 < path.size(); ++i) {
    const Eigen::Vector2d pixel = truth.projector_from_mat(room_from_mat * path[i]);
    ++asked;
    lit += picture.at<unsigned char>(static_cast<int>(std::lround(pixel.y())),
                                     static_cast<int>(std::lround(pixel.x()))) > 200;
  }
  EXPECT_GT(asked, 5);
  return static_cast<double>(lit) / asked;
}

TEST(Watching, AsksHerToStandClearAndLearnsByFourPictures) {
  Sitting s;
  s.run(0.5);
  EXPECT_TRUE(s.view.border_marks);
  EXPECT_TRUE(s.view.block.empty()) << "while she lays the piece nobody is in her way";
  s.press(Act::next);
  s.run(0.2);
  EXPECT_NE(s.view.block.find("not watched yet"), std::string::npos) << s.view.block;
  EXPECT_EQ(s.view.camera, CameraAsk::by_next);
  EXPECT_EQ(s.view.cut, 0);
  s.press(Act::next);
  EXPECT_EQ(s.view.cut, 0) << "that press was for the camera";
  for (int i = 0; i < 14; ++i)
    s.run(0.1, vt::FilmArm{.elbow = {300.0, 800.0}, .hand = {300.0 + 18.0 * i, 300.0}});
  EXPECT_EQ(s.view.light, Light::dark) << "her arm is in the light: not a frame is good yet";
  s.run_slowly();
  EXPECT_TRUE(s.watching.table().steady());
  EXPECT_TRUE(s.view.block.empty()) << s.view.block;
  EXPECT_TRUE(s.view.notice.words.empty()) << s.view.notice.words;
  EXPECT_EQ(s.view.light, Light::lines);
  std::vector<Light> order;
  for (const Light light : s.pictures)
    if (order.empty() || order.back() != light) order.push_back(light);
  EXPECT_EQ(order, (std::vector<Light>{Light::lines, Light::dark, Light::plain, Light::marked, Light::grey,
                                       Light::lines}));
}

TEST(Watching, SaysWhatWasMovedBeforeItLearnt) {
  for (const Mover mover : {Mover::mat, Mover::projector}) {
    Sitting s;
    vt::Dice dice(8);
    s.become(knocked(s.room, mover, 4.0, dice));
    s.learn();
    EXPECT_NE(s.view.block.find("the " + name_of(mover) + " by up to"), std::string::npos) << s.view.block;
    EXPECT_FALSE(s.watching.table().steady());
  }
}

TEST(Watching, LeavesHerInPeaceWhileNothingMovesAndGoesOnWithoutTheCamera) {
  Sitting s(learnt());
  for (int i = 0; i < 3; ++i) {
    const vt::FilmArm arm{.elbow = {300.0 * i, 800.0}, .hand = {150.0 + 400.0 * i, 250.0}};
    s.run(1.0, arm);
    EXPECT_TRUE(s.view.block.empty()) << s.view.block;
    s.press(Act::next);  // other lines, other words
  }
  EXPECT_TRUE(s.watching.table().steady());

  s.run_blind(3.0, "The camera \"0\" is gone.");
  EXPECT_TRUE(s.view.block.empty());
  EXPECT_NE(s.view.notice.words.find("Nobody watches"), std::string::npos);
  EXPECT_FALSE(s.watching.table().steady());
  s.run(1.0);
  EXPECT_TRUE(s.view.notice.words.empty()) << s.view.notice.words;
  EXPECT_TRUE(s.watching.table().steady());
  // Pulled out while it learns: the dark picture does not stay for ever.
  s.press(Act::look);
  s.run(0.5);
  EXPECT_NE(s.view.light, Light::lines);
  s.run_blind(3.0, "The camera \"0\" is gone.");
  EXPECT_EQ(s.view.light, Light::lines);
}

TEST(Watching, TakesTheLinesAwayWhenTheProjectorMovesAndGivesThemBackWhereTheyBelong) {
  Sitting s(learnt());
  vt::Dice dice(21);
  s.become(knocked(s.room, Mover::projector, 7.0, dice));
  EXPECT_LT(stroke_lit(s, Eigen::Isometry2d::Identity()), 0.5) << "it lies wrong now";
  s.run(1.0);
  ASSERT_NE(s.view.block.find("projector moved"), std::string::npos) << s.view.block;
  const double said = std::stod(s.view.block.substr(s.view.block.find("up to ") + 6));
  EXPECT_NEAR(said, 7.0, 0.5);
  EXPECT_EQ(s.view.camera, CameraAsk::by_look);
  const std::string first = s.view.block;
  s.run(1.5);
  EXPECT_EQ(s.view.block, first) << "told once, not anew with every frame";
  s.press(Act::next);
  EXPECT_EQ(s.view.cut, 0) << "nothing is cut by lines that are not shown";
  s.press(Act::look);
  s.run_slowly();
  EXPECT_TRUE(s.view.block.empty()) << s.view.block;
  EXPECT_NE(s.view.notice.words.find("projector moved"), std::string::npos) << s.view.notice.words;
  EXPECT_EQ(s.watching.table().found_again(), 1);
  EXPECT_LT(worst_miss(s.watching.map(), s.room.room.projector), s.watching.map().error_at({0, 0}));
  EXPECT_EQ(stroke_lit(s, Eigen::Isometry2d::Identity()), 1.0) << "it lies where it should again";
  s.seconds += 25.0;
  s.run(0.5);
  EXPECT_TRUE(s.view.notice.words.empty()) << "news grow old";
  EXPECT_TRUE(s.watching.table().steady());
}

// Share of a stroke that is lit in the picture, by the map.
double drawn(const Sitting& s, const Polyline& stroke) {
  const cv::Mat picture = grey_of(s.painter.picture());
  const Polyline path = drafting::subdivided(stroke, 8.0);
  int lit = 0;
  for (const drafting::Point& p : path) {
    const Eigen::Vector2d pixel = s.watching.map().projector_from_mat(p);
    lit += picture.at<unsigned char>(cvRound(pixel.y()), cvRound(pixel.x())) > 200 ? 1 : 0;
  }
  return static_cast<double>(lit) / static_cast<double>(path.size());
}

// Somebody else who looks.
class Counter : public Watcher {
 public:
  explicit Counter(int& looks) : looks_(looks) {}
  void look(const Glimpse& glimpse) override {
    ++looks_;
    EXPECT_EQ(glimpse.grey.cols, glimpse.camera.width);
    EXPECT_EQ(glimpse.shown.width(), glimpse.map.width);
  }
  CuttingView said(CuttingView view) const override {
    view.notice.words = "Something lies there. " + view.notice.words;
    return view;
  }

 private:
  int& looks_;
};

TEST(Watching, FollowsTheMatAndAsksOthersOnlyWhileItStands) {
  Sitting s(learnt());
  int looks = 0;
  s.watching.add(std::make_unique<Counter>(looks));
  s.run(0.3);
  EXPECT_GT(looks, 0);
  EXPECT_EQ(s.view.notice.words, "Something lies there. ");
  vt::Dice dice(22);
  const vt::Place before = s.room.room.mat.place;
  s.become(knocked(s.room, Mover::mat, 12.0, dice));
  s.run(1.0);
  ASSERT_NE(s.view.block.find("mat moved"), std::string::npos) << s.view.block;
  EXPECT_TRUE(s.view.notice.words.empty());
  const int before_that = looks;
  s.run(0.3);
  EXPECT_EQ(looks, before_that);
  s.press(Act::look);
  s.run_slowly();
  ASSERT_TRUE(s.view.block.empty()) << s.view.block;
  const Eigen::Isometry2d room_from_mat = mat_gone(before, s.room.room.mat.place);
  const std::string& news = s.view.notice.words;
  const size_t within = news.find("within ");
  ASSERT_NE(within, std::string::npos) << news;
  EXPECT_LT(worst_miss(s.watching.map(), s.room.room.projector, room_from_mat),
            0.1 + std::stod(news.substr(within + 7)))
      << news;
  EXPECT_EQ(stroke_lit(s, room_from_mat), 1.0);
}

// Somebody who does not want her to cut.
class Objector : public Watcher {
 public:
  void look(const Glimpse&) override {}
  CuttingView said(CuttingView view) const override {
    return blocked(std::move(view), "Something is wrong.", "Mend it.");
  }
};

TEST(Watching, WhatOthersWithholdCanBeWavedOff) {
  Sitting s(learnt());
  s.watching.add(std::make_unique<Objector>());
  s.run(0.2);
  ASSERT_EQ(s.view.block, "Something is wrong.");
  s.press(Act::waive);
  s.run(0.2);
  EXPECT_TRUE(s.view.asked) << "saying it again does not take the question back";
  s.press(Act::waive);
  s.run(0.2);
  EXPECT_TRUE(s.view.block.empty()) << s.view.block;
  EXPECT_EQ(s.view.waived, std::vector<std::string>{"Something is wrong."});
}

// A slip of dark paper on the table.
vt::Room with_slip(vt::Room room, const drafting::Point& place) {
  vt::PaperSheet slip;
  slip.page = cv::Mat(100, 100, CV_8U, cv::Scalar(40));
  slip.paper = {45.0, 30.0};
  slip.pixel_mm = 0.45;
  slip.place = {place.x(), place.y(), 0.3};
  slip.thickness = 1.0;
  room.sheets.push_back(slip);
  return room;
}

TEST(Watching, MarksWhatLiesAheadWhileTheTableStandsAndTakesBothAwayWhenItDoesNot) {
  Sitting s;
  auto own = std::make_unique<CutWatch>();
  const CutWatch& ahead = *own;
  s.watching.add(std::move(own));
  s.learn();
  s.run(0.8);
  ASSERT_TRUE(s.watching.table().steady());
  EXPECT_TRUE(s.view.block.empty()) << s.view.block;
  EXPECT_EQ(ahead.warning().state, WatchState::clear) << s.view.notice.words;
  EXPECT_TRUE(s.view.notice.marks.empty()) << "nothing lies there";

  const WatchedRoom quiet = s.room;
  const Polyline path = laid(s.view.laying, s.view.plan[static_cast<size_t>(s.view.cut)].path);
  const drafting::Point there = drafting::point_at(path, 0.6 * drafting::length(path));
  WatchedRoom room = quiet;
  room.room = with_slip(quiet.room, there);
  s.become(room);
  s.run(0.4);
  EXPECT_EQ(ahead.warning().state, WatchState::marked) << s.view.notice.words;
  ASSERT_EQ(s.view.notice.marks.size(), 1U);
  drafting::Point middle(0.0, 0.0);
  const Polyline& ring = s.view.notice.marks.front().lines.front();
  for (const drafting::Point& p : ring) middle += p / static_cast<double>(ring.size());
  EXPECT_LT((middle - there).norm(), 15.0) << "the ring is about it";
  EXPECT_TRUE(s.view.block.empty()) << "a thing on the table has not moved the table: " << s.view.block;
  EXPECT_TRUE(s.watching.table().steady());
  s.become(quiet);
  s.run(1.8);
  EXPECT_TRUE(s.view.notice.marks.empty()) << "taken away again";

  EXPECT_GT(drawn(s, path), 0.9);
  vt::Dice dice(21);
  s.become(knocked(quiet, Mover::projector, 7.0, dice));
  s.run(1.0);
  EXPECT_NE(s.view.block.find("projector moved"), std::string::npos) << s.view.block;
  EXPECT_TRUE(s.view.notice.marks.empty()) << "no rings where places are no longer known";
  EXPECT_LT(drawn(s, path), 0.5) << "words may stand there, lines do not";
}

TEST(Watching, AsksForTheSheetsWhenTwoThingsMoved) {
  Sitting s(learnt());
  vt::Dice dice(5);
  s.become(knocked(knocked(s.room, Mover::projector, 9.0, dice), Mover::mat, 14.0, dice));
  s.run(1.5);
  ASSERT_FALSE(s.view.block.empty());
  s.press(Act::look);
  s.run_slowly();
  EXPECT_NE(s.view.block.find("sheets"), std::string::npos) << s.view.block;
  EXPECT_EQ(s.watching.table().found_again(), 0);
  s.press(Act::waive);
  s.press(Act::waive);
  s.run(0.3);
  EXPECT_TRUE(s.view.block.empty()) << "her word counts";
  EXPECT_EQ(s.view.waived.size(), 1U);
  EXPECT_FALSE(s.view.notice.words.empty()) << "but it stays on the table";
}

}  // namespace
}  // namespace cowlcast::projector
