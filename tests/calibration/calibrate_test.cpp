#include "calibration/solve/calibrate.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "calibration/target/target.h"
#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration {
namespace {

namespace vt = virtual_table;

vt::Session session(std::uint64_t seed, vt::Fault fault) {
  vt::RoomOptions options;
  for (int n = 1; n <= 4; ++n) options.pages.push_back(sheet_page(Paper::a4, n));
  options.hardness = 0.2;
  options.fault = fault;
  return vt::random_session(seed, options);
}

// Photographs of half the usual width, so that the tests stay quick, or of all of it.
std::vector<Photograph> photographs(vt::Session& session, bool half = true) {
  const int width = session.room.projector.width, height = session.room.projector.height;
  const cv::Mat target = target_picture(width, height), plain = plain_picture(width, height);
  std::vector<Photograph> out;
  for (vt::Shot& shot : session.shots) {
    vt::RoomCamera& camera = shot.camera;
    if (half) {
      const Eigen::Vector2d corner(0.5, 0.5);
      camera.width /= 2;
      camera.height /= 2;
      camera.optic.focal *= 0.5;
      camera.optic.centre = 0.5 * (camera.optic.centre + corner) - corner;
    }
    const cv::Mat colour = vt::photograph(shot.room, camera, shot.target ? target : plain, shot.seed);
    Photograph photograph;
    photograph.name = "photograph " + std::to_string(out.size() + 1);
    cv::cvtColor(colour, photograph.grey, cv::COLOR_BGR2GRAY);
    out.push_back(photograph);
  }
  return out;
}

CalibrationRequest request(const vt::Session& session) {
  CalibrationRequest out;
  out.width = session.room.projector.width;
  out.height = session.room.projector.height;
  out.rulers = Rulers{session.ruler_across, session.ruler_down};
  return out;
}

double worst_miss(const TableMap& map, const vt::RoomProjector& projector) {
  std::vector<Eigen::Vector2d> found, real;
  for (int i = 0; i <= 8; ++i)
    for (int j = 0; j <= 12; ++j) {
      const Eigen::Vector2d pixel(j * (map.width - 1) / 12.0, i * (map.height - 1) / 8.0);
      found.push_back(map.mat_from_projector(pixel));
      real.push_back(*vt::mat_from_projector(projector, pixel));
    }
  const Eigen::Isometry2d fit = vt::rigid_fit(found, real);
  double worst = 0.0;
  for (size_t i = 0; i < found.size(); ++i) worst = std::max(worst, (fit * found[i] - real[i]).norm());
  return worst;
}

std::string refusal(const std::vector<Photograph>& photographs, const CalibrationRequest& request) {
  try {
    calibrate(photographs, request);
  } catch (const Refusal& reason) {
    return reason.what();
  }
  return "";
}

TEST(Calibrate, MapsAnHonestRoomWithinItsStatedError) {
  vt::Session room = session(21, vt::Fault::none);
  const std::vector<Photograph> photos = photographs(room);
  const CalibrationReport report = calibrate(photos, request(room));
  double stated = 0.0;
  for (const double e : report.map.error.mm95) stated = std::max(stated, e);
  EXPECT_LT(worst_miss(report.map, room.room.projector), 2.0 * stated);
  EXPECT_LT(worst_miss(report.map, room.room.projector), 1.0);
  EXPECT_LT(stated, 1.0);
  EXPECT_TRUE(report.warnings.empty());
  EXPECT_EQ(report.map.scale.source, "rulers");
  // The frame: the middle of the picture is the origin, its rows run along x.
  const Eigen::Vector2d middle(0.5 * (report.map.width - 1), 0.5 * (report.map.height - 1));
  EXPECT_LT(report.map.mat_from_projector(middle).norm(), 1e-9);
  const Eigen::Vector2d right = report.map.mat_from_projector(middle + Eigen::Vector2d(1, 0));
  EXPECT_GT(right.x(), 0.0);
  EXPECT_NEAR(right.y(), 0.0, 1e-3);
  EXPECT_GT(report.map.mat_from_projector(middle - Eigen::Vector2d(0, 1)).y(), 0.0);
  double area = 0.0;
  for (size_t i = 0; i < report.map.lit_area.size(); ++i) {
    const Eigen::Vector2d& a = report.map.lit_area[i];
    const Eigen::Vector2d& b = report.map.lit_area[(i + 1) % report.map.lit_area.size()];
    area += 0.5 * (a.x() * b.y() - a.y() * b.x());
  }
  EXPECT_GT(area, 0.0) << "counter-clockwise";

  // Without rulers nothing but the page's word fixes the scale, and it says so.
  CalibrationRequest bare = request(room);
  bare.rulers.reset();
  const CalibrationReport loose = calibrate(photos, bare);
  EXPECT_EQ(loose.map.scale.source, "page");
  EXPECT_GT(loose.map.scale.relative_sigma, 0.002);
  ASSERT_FALSE(loose.warnings.empty());
  EXPECT_NE(loose.warnings.front().find("rulers"), std::string::npos);
  EXPECT_LT(worst_miss(loose.map, room.room.projector), loose.map.error_at(loose.map.lit_area.front()) * 1.5);

  // One photograph of one sheet, the lens unknown: refused, and it says what to add.
  CalibrationRequest same = request(room);
  std::vector<Photograph> one;
  for (size_t i = 0; i < photos.size(); ++i)
    if (room.shots[i].target && one.empty()) one.push_back(photos[i]);
  for (int sheet = 1; sheet < 4; ++sheet) {  // the other three are covered up
    std::vector<cv::Point> outline;
    for (const Eigen::Vector2d& p : vt::paper_outline(room.room.sheets[static_cast<size_t>(sheet)])) {
      size_t shot = 0;
      while (!room.shots[shot].target) ++shot;
      const auto at = vt::camera_from_room(room.shots[shot].camera, {p.x(), p.y(), 0.0});
      ASSERT_TRUE(at);
      outline.emplace_back(static_cast<int>(at->x()), static_cast<int>(at->y()));
    }
    cv::fillConvexPoly(one.front().grey, outline, cv::Scalar(90));
  }
  EXPECT_NE(refusal(one, same).find("sheet"), std::string::npos);
}

TEST(Calibrate, HearsATapeBetweenSheetsOnlyWhenItCanBeRight) {
  vt::Session room = session(21, vt::Fault::none);
  const std::vector<Photograph> photos = photographs(room);
  const auto middle = [&](size_t sheet) {
    Eigen::Vector2d sum = Eigen::Vector2d::Zero();
    const auto outline = vt::paper_outline(room.room.sheets[sheet]);
    for (const Eigen::Vector2d& p : outline) sum += p / static_cast<double>(outline.size());
    return sum;
  };
  const double real = (middle(0) - middle(3)).norm();
  const auto why = [&](double length, bool rulers) {
    CalibrationRequest taped = request(room);
    if (!rulers) taped.rulers.reset();
    taped.spans = {{1, 4, length}};
    return refusal(photos, taped);
  };
  for (const bool rulers : {false, true}) {
    EXPECT_NE(why(0.1 * real, rulers).find("It looks like centimetres"), std::string::npos);
    EXPECT_NE(why(real / 25.4, rulers).find("It looks like inches"), std::string::npos);
    const std::string half = why(0.5 * real, rulers);
    EXPECT_NE(half.find("The tape from sheet 1 to sheet 4 is given as"), std::string::npos) << half;
    EXPECT_NE(half.find("Measure again"), std::string::npos) << half;
    EXPECT_NE(why(1.08 * real, rulers).find("The tape from sheet 1 to sheet 4"), std::string::npos);
  }
  // A photograph given twice is one; rulers that no printer makes are asked for again, and not refused.
  CalibrationRequest large = request(room);
  large.rulers = Rulers{1.045 * room.ruler_across, 1.045 * room.ruler_down};
  large.spans = {{1, 4, 1.045 * real}};
  std::vector<Photograph> twice = photos;
  twice.push_back(photos.front());
  twice.back().name = "a copy";
  const CalibrationReport report = calibrate(twice, large);
  EXPECT_EQ(report.map.scale.source, "rulers and span");
  std::string all;
  for (const std::string& warning : report.warnings) all += warning + '\n';
  EXPECT_NE(all.find("The photograph a copy is the same as photograph 1 and was left out"), std::string::npos)
      << all;
  EXPECT_NE(all.find("By the rulers the sheets are printed at 104."), std::string::npos) << all;
}

TEST(Photographs, AJpegThatBreaksOffIsSaidToBeDamaged) {
  const std::string path = ::testing::TempDir() + "broken_off.jpg";
  cv::Mat noise(600, 800, CV_8UC1);
  cv::randu(noise, 0, 255);
  std::vector<unsigned char> bytes;
  cv::imencode(".jpg", noise, bytes);
  const auto keep = [&](size_t count) {
    std::ofstream(path, std::ios::binary)
        .write(reinterpret_cast<const char*>(bytes.data()), static_cast<std::streamsize>(count));
  };
  const auto why = [&] {
    try {
      load_photograph(path);
    } catch (const Refusal& reason) {
      return std::string(reason.what());
    }
    return std::string();
  };
  keep(bytes.size());
  EXPECT_EQ(why(), "");
  for (const size_t count : {bytes.size() - 1, bytes.size() / 2, size_t{200}, size_t{20}}) {
    keep(count);
    EXPECT_NE(why().find("breaks off"), std::string::npos) << count << ' ' << why();
  }
  std::filesystem::remove(path);
}

TEST(Calibrate, RefusesASheetOfAnotherScaleByName) {
  vt::Session room = session(22, vt::Fault::sheet_other_scale);
  const std::string why = refusal(photographs(room), request(room));
  EXPECT_NE(why.find("Sheet " + std::to_string(room.faulty_sheet + 1) + " is printed at another scale"),
            std::string::npos)
      << why;
}

TEST(Calibrate, RefusesAPictureThatMoved) {
  vt::Session room = session(23, vt::Fault::projector_moved);
  const std::string why = refusal(photographs(room), request(room));
  EXPECT_NE(why.find("picture moved"), std::string::npos) << why;
}

TEST(Calibrate, LeavesOutASheetThatMovedAndSaysSo) {
  vt::Session room = session(24, vt::Fault::sheet_moved);
  const CalibrationReport report = calibrate(photographs(room), request(room));
  EXPECT_LT(worst_miss(report.map, room.room.projector), 1.0);
  ASSERT_FALSE(report.warnings.empty());
  EXPECT_NE(report.warnings.front().find("Sheet " + std::to_string(room.faulty_sheet + 1) + " moved"),
            std::string::npos)
      << report.warnings.front();
}

// A projector that squares its picture by resampling bends it about another point than the picture's own.
TEST(Calibrate, MapsAPictureThatTheProjectorSquaresItself) {
  vt::RoomOptions options;
  for (int n = 1; n <= 4; ++n) options.pages.push_back(sheet_page(Paper::a4, n));
  options.electronic_keystone = true;
  options.hardness = 0.8;
  vt::Session room = vt::random_session(2038, options);
  const std::vector<Photograph> photos = photographs(room);
  const CalibrationReport report = calibrate(photos, request(room));
  double stated = 0.0;
  for (const double e : report.map.error.mm95) stated = std::max(stated, e);
  EXPECT_LT(worst_miss(report.map, room.room.projector), 2.0 * stated);
  EXPECT_LT(worst_miss(report.map, room.room.projector), 1.0);

  // Lens, place and keystone make up for each other: a tape to the lens settles where it is.
  CalibrationRequest taped = request(room);
  const double height = room.room.projector.projector_from_room.inverse().translation().z();
  taped.lamp_height = height + 8.0;  // read a little wrong
  const CalibrationReport told = calibrate(photos, taped);
  EXPECT_NEAR(told.map.lamp().z(), height, 30.0);
  EXPECT_LT(told.map.error_at({300, 200}, 10.0), report.map.error_at({300, 200}, 10.0));
}

// Many misses that keep company, of hand-held rows that a shutter reads one after the other, look like
// keystone; they must not carry the lens down to the table.
TEST(Calibrate, DoesNotTakeMissesThatKeepCompanyForKeystone) {
  vt::RoomOptions options;
  for (int n = 1; n <= 4; ++n) options.pages.push_back(sheet_page(Paper::a4, n));
  options.fault = vt::Fault::refocused;
  options.projector = {0, 0};
  options.hardness = 0.0647;
  options.rolling_shutter = true;
  vt::Session room = vt::random_session(13062, options);
  const CalibrationReport report = calibrate(photographs(room, false), request(room));
  const double height = room.room.projector.projector_from_room.inverse().translation().z();
  EXPECT_GT(report.map.lamp().z(), 0.6 * height);
  EXPECT_LT(report.map.lamp().z(), 1.0 / 0.6 * height);
  EXPECT_LT(worst_miss(report.map, room.room.projector), 0.5);
}

// A fifth sheet on a board of 20 mm shows the slant of the light, so that lines on thick cloth come true.
TEST(Calibrate, ARaisedSheetTellsWhereTheLensOfTheProjectorIs) {
  vt::RoomOptions options;
  for (int n = 1; n <= 5; ++n) options.pages.push_back(sheet_page(Paper::a4, n));
  options.hardness = 0.2;
  options.board = 20.0;
  vt::Session room = vt::random_session(25, options);
  const std::vector<Photograph> photos = photographs(room);
  CalibrationRequest raised = request(room);
  raised.raised = RaisedSheet{5, 20.2};  // the rule was read a little wrong
  const CalibrationReport report = calibrate(photos, raised);
  const double height = room.room.projector.projector_from_room.inverse().translation().z();
  EXPECT_NEAR(report.map.lamp().z(), height, 0.02 * height);
  std::vector<Eigen::Vector2d> found, real;
  for (int i = 0; i <= 8; ++i)
    for (int j = 0; j <= 12; ++j) {
      const Eigen::Vector2d pixel(j * (report.map.width - 1) / 12.0, i * (report.map.height - 1) / 8.0);
      found.push_back(report.map.mat_from_projector(pixel, 5.0));
      real.push_back(*vt::mat_from_projector(room.room.projector, pixel, 5.0));
    }
  const Eigen::Isometry2d fit = vt::rigid_fit(found, real);
  for (size_t i = 0; i < found.size(); ++i)
    EXPECT_LT((fit * found[i] - real[i]).norm(), 1.5 * report.map.error_at(found[i], 5.0));

  // Thickness and photographs must agree.
  raised.raised = RaisedSheet{5, 28.0};
  EXPECT_NE(refusal(photos, raised).find("The board under sheet 5"), std::string::npos);
  // Kept to oneself, the board makes its sheet look printed larger: named, not swallowed.
  const std::string why = refusal(photos, request(room));
  EXPECT_NE(why.find("Sheet 5"), std::string::npos) << why;
}

TEST(Calibrate, RefusesWhatCannotBeAnswered) {
  CalibrationRequest plain;
  plain.width = 1920;
  plain.height = 1080;
  EXPECT_NE(refusal({}, plain).find("no photographs"), std::string::npos);
  Photograph black;
  black.name = "black.jpg";
  black.grey = cv::Mat(900, 1200, CV_8UC1, cv::Scalar(4));
  EXPECT_NE(refusal({black}, plain).find("black.jpg is too dark"), std::string::npos);
  CalibrationRequest wrong = plain;
  wrong.rulers = Rulers{180.0, 240.0};
  EXPECT_NE(refusal({black}, wrong).find("the long one first"), std::string::npos);
  wrong = plain;
  wrong.raised = RaisedSheet{5, 500.0};
  EXPECT_NE(refusal({black}, wrong).find("500.0 mm thick"), std::string::npos);
  wrong = plain;
  wrong.width = 12;
  EXPECT_NE(refusal({black}, wrong).find("12x1080"), std::string::npos);
}

}  // namespace
}  // namespace cowlcast::calibration
