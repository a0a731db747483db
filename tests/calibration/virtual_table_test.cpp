// The simulated room apart from its geometry: light adds up, files come back,
// lines are read where they lie, and random rooms are what they promise.
#include "calibration/virtual_table/random_room.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>
#include <exiv2/exiv2.hpp>
#include <numbers>
#include <opencv2/imgcodecs.hpp>
#include <set>

#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/read_back.h"
#include "calibration/virtual_table/truth.h"

namespace room = cowlcast::calibration::virtual_table;
using Eigen::Vector2d;
using Eigen::Vector3d;

namespace {

room::RoomOptions small_options() {
  room::RoomOptions options;
  options.pages.assign(4, cv::Mat(620, 877, CV_8U, cv::Scalar(255)));
  options.pixel_mm = 297.0 / 877.0;
  options.projector = {320, 180};
  return options;
}

// A session's photograph, small enough for a test.
room::RoomCamera small_camera(const room::Shot& shot) {
  room::RoomCamera camera = shot.camera;
  const double scale = 400.0 / camera.width;
  camera.optic.focal *= scale;
  camera.optic.centre = scale * (camera.optic.centre + Vector2d(0.5, 0.5)) - Vector2d(0.5, 0.5);
  camera.width = 400;
  camera.height = 300;
  return camera;
}

double worst_difference(const cv::Mat& a, const cv::Mat& b) {
  return cv::norm(a, b, cv::NORM_INF);
}

double away_from(const std::vector<Vector2d>& line, const Vector2d& point) {
  double nearest = 1e9;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Vector2d way = line[i] - line[i - 1];
    const double t = std::clamp((point - line[i - 1]).dot(way) / way.squaredNorm(), 0.0, 1.0);
    nearest = std::min(nearest, (point - line[i - 1] - t * way).norm());
  }
  return nearest;
}

// A frame in which the line is drawn `offset` mm to its left, 1 mm wide, evenly lit inside: each pixel as
// bright as the share of it that the stroke covers.
cv::Mat drawn(const room::RoomProjector& projector, const std::vector<Vector2d>& line, double offset,
              double height) {
  cv::Mat frame(projector.height, projector.width, CV_8U, cv::Scalar(0));
  const int fine = 5;
  for (int v = 0; v < frame.rows; ++v)
    for (int u = 0; u < frame.cols; ++u) {
      const auto middle = room::mat_from_projector(projector, Vector2d(u, v), height);
      if (!middle || away_from(line, *middle) > 3.0) continue;
      int covered = 0;
      for (int k = 0; k < fine * fine; ++k) {
        const Vector2d pixel(u - 0.5 + (k % fine + 0.5) / fine, v - 0.5 + (k / fine + 0.5) / fine);
        const auto mat = room::mat_from_projector(projector, pixel, height);
        if (!mat) continue;
        for (std::size_t i = 1; i < line.size(); ++i) {
          const Vector2d way = (line[i] - line[i - 1]).normalized(), from = *mat - line[i - 1];
          const double along = from.dot(way), left = way.x() * from.y() - way.y() * from.x();
          if (along < 0.0 || along > (line[i] - line[i - 1]).norm() || std::abs(left - offset) > 0.5)
            continue;
          ++covered;
          break;
        }
      }
      const double share = static_cast<double>(covered) / (fine * fine);
      frame.at<unsigned char>(v, u) =
          static_cast<unsigned char>(std::lround(255.0 * std::pow(share, 1.0 / projector.gamma)));
    }
  return frame;
}

}  // namespace

TEST(RoomLight, AddsUp) {
  const room::Session session = room::random_session(3, small_options());
  const room::RoomCamera camera = small_camera(session.shots[0]);
  room::Room both = session.room, lamp_only = session.room, beam_only = session.room;
  beam_only.light.lux = 0.0;
  cv::Mat picture(180, 320, CV_8UC3, cv::Scalar(30, 120, 255));
  picture(cv::Rect(100, 50, 60, 40)).setTo(cv::Scalar(255, 255, 0));
  const cv::Mat sum =
      room::linear_photograph(lamp_only, camera, {}) + room::linear_photograph(beam_only, camera, picture);
  EXPECT_LT(worst_difference(room::linear_photograph(both, camera, picture), sum),
            1e-3 * both.projector.white_lux * 1e-2);
}

TEST(RoomLight, OfThePanelIsKeptHoweverItFalls) {
  // Light per pixel is constant without vignetting, so what falls on a square millimetre goes as the inverse
  // of the area a pixel covers there, tilt and distance included.
  room::RoomOptions options = small_options();
  options.hardness = 1.0;
  room::Room bare = room::random_session(11, options).room;
  bare.sheets.clear();
  bare.mat.albedo = room::Colour::Ones();
  bare.mat.fine_step = bare.mat.heavy_step = 0.0;
  bare.mat.diagonals = bare.mat.numerals = false;
  bare.mat.grain = 0.0f;
  bare.mat.size = {4000.0, 4000.0};
  bare.light.lux = 0.0;
  bare.projector.vignetting = bare.projector.bounce = 0.0;
  bare.projector.tint = room::Colour::Ones();
  bare.projector.optic.k1 = bare.projector.optic.k2 = bare.projector.optic.p1 = bare.projector.optic.p2 = 0.0;
  bare.projector.optic.wobble = 0.0;
  room::RoomCamera camera;
  camera.width = 500;
  camera.height = 400;
  camera.optic.focal = {400.0, 400.0};
  camera.optic.centre = {250.0, 200.0};
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() = Vector3d(1.0, -1.0, -1.0).asDiagonal();
  pose.translation() = Vector3d(0.0, 0.0, 1700.0);
  camera.camera_from_room = pose.inverse();
  const cv::Mat light = room::linear_photograph(bare, camera, cv::Mat(180, 320, CV_8U, cv::Scalar(255)));
  double first = 0.0;
  for (const Vector2d& pixel :
       {Vector2d(20, 15), Vector2d(300, 20), Vector2d(160, 90), Vector2d(15, 165), Vector2d(305, 160)}) {
    const Vector2d at = *room::mat_from_projector(bare.projector, pixel);
    const Vector2d right = *room::mat_from_projector(bare.projector, pixel + Vector2d(0.01, 0)) - at;
    const Vector2d down = *room::mat_from_projector(bare.projector, pixel + Vector2d(0, 0.01)) - at;
    const double area = std::abs(right.x() * down.y() - right.y() * down.x()) * 1e4;
    const Vector2d seen = *room::camera_from_room(camera, {at.x(), at.y(), 0.0});
    const double flux =
        area * static_cast<double>(light.at<cv::Vec3f>(static_cast<int>(std::lround(seen.y())),
                                                       static_cast<int>(std::lround(seen.x())))[1]);
    if (first == 0.0) first = flux;
    EXPECT_NEAR(flux / first, 1.0, 0.003);
  }
}

TEST(RoomPhotograph, SameSeedSameBytes) {
  const room::Session session = room::random_session(5, small_options());
  const room::RoomCamera camera = small_camera(session.shots[1]);
  const cv::Mat picture(180, 320, CV_8U, cv::Scalar(200));
  const cv::Mat once = room::photograph(session.room, camera, picture, 9);
  const cv::Mat again = room::photograph(room::random_session(5, small_options()).room, camera, picture, 9);
  EXPECT_EQ(worst_difference(once, again), 0.0);
  EXPECT_GT(worst_difference(once, room::photograph(session.room, camera, picture, 10)), 0.0);
}

TEST(RoomLight, IsNeverBelowBlackHoweverTheHandShakes) {
  room::Session session = room::random_session(3, small_options());
  session.room.light.lux = 0.0;
  room::RoomCamera camera = small_camera(session.shots[0]);
  camera.shake = {40.0, 25.0};
  cv::Mat picture(180, 320, CV_8UC3, cv::Scalar::all(0));
  picture(cv::Rect(100, 50, 60, 40)).setTo(cv::Scalar::all(255));
  double least = 0.0;
  cv::minMaxLoc(room::linear_photograph(session.room, camera, picture).reshape(1), &least);
  EXPECT_GE(least, 0.0);
}

TEST(RoomPhotograph, IsItsLightExposed) {
  const room::Session session = room::random_session(5, small_options());
  const room::RoomCamera camera = small_camera(session.shots[1]);
  const cv::Mat picture(180, 320, CV_8U, cv::Scalar(200));
  const cv::Mat light = room::linear_photograph(session.room, camera, picture);
  EXPECT_EQ(
      worst_difference(room::expose(light, camera, 9), room::photograph(session.room, camera, picture, 9)),
      0.0);
}

// Outside reference: OpenCV turns a photograph as its EXIF entry says.
TEST(RoomPhotograph, TurnedFilesShowTheOperatorsSideAtTheFoot) {
  std::set<int> seen;
  room::RoomOptions options = small_options();
  options.turned_files = true;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    const room::Session session = room::random_session(seed, options);
    for (const room::Shot& shot : session.shots) {
      seen.insert(shot.file.orientation);
      if (seed > 4) continue;
      room::Room bare = session.room;  // one white sheet on the far side of a black mat
      bare.sheets.resize(1);
      bare.sheets[0].place = {0.0, 250.0, 0.0};
      bare.mat.albedo = bare.mat.print_albedo = bare.mat.table_albedo = room::Colour::Constant(0.01f);
      const cv::Mat photo = room::photograph(bare, small_camera(shot), {}, 1);
      const cv::Mat turned = cv::imdecode(room::encode_photograph(photo, shot.file), cv::IMREAD_GRAYSCALE);
      const double above = cv::sum(turned.rowRange(0, turned.rows / 2))[0];
      EXPECT_GT(above, cv::sum(turned.rowRange(turned.rows / 2, turned.rows))[0]);
    }
  }
  EXPECT_EQ(seen, (std::set<int>{1, 3, 6, 8}));
}

TEST(RoomPhotograph, NoiseFollowsTheLight) {
  // Shot noise (Poisson): the variance in electrons equals their number.
  room::Room bare;
  bare.mat.albedo = room::Colour::Constant(0.5f);
  bare.mat.fine_step = bare.mat.heavy_step = 0.0;
  bare.mat.diagonals = bare.mat.numerals = false;
  bare.mat.grain = 0.0f;
  bare.mat.size = {4000.0, 4000.0};
  bare.light.tint = room::Colour::Ones();
  room::RoomCamera camera;
  camera.width = camera.height = 300;
  camera.optic.focal = {600.0, 600.0};
  camera.optic.centre = {150.0, 150.0};
  camera.vignetting = camera.read_noise = 0.0;
  camera.full_well = 2000.0;
  camera.electrons_per_lux = 1e6;
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() = Vector3d(1.0, -1.0, -1.0).asDiagonal();
  pose.translation() = Vector3d(0.0, 0.0, 500.0);
  camera.camera_from_room = pose.inverse();
  const cv::Mat photo = room::photograph(bare, camera, {}, 1);
  double sum = 0.0, squares = 0.0;
  for (int y = 0; y < 300; ++y)
    for (int x = 0; x < 300; ++x) {
      const double s = photo.at<cv::Vec3b>(y, x)[1] / 255.0;
      const double linear = s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
      sum += linear;
      squares += linear * linear;
    }
  const double mean = sum / 90000.0, variance = squares / 90000.0 - mean * mean;
  EXPECT_NEAR(mean, 0.22, 0.005);  // a middle tone
  EXPECT_NEAR(variance * 2000.0 / mean, 1.0, 0.1);
}

TEST(RoomPhotograph, RefusesAPictureThatDoesNotFit) {
  const room::Session session = room::random_session(5, small_options());
  const room::RoomCamera camera = small_camera(session.shots[1]);
  EXPECT_THROW(room::photograph(session.room, camera, cv::Mat(100, 320, CV_8U, cv::Scalar(0)), 1),
               std::invalid_argument);
  EXPECT_THROW(room::photograph(session.room, camera, cv::Mat(180, 320, CV_32F, cv::Scalar(0)), 1),
               std::invalid_argument);
}

// Outside references: OpenCV decodes the picture, Exiv2 reads the entries.
TEST(RoomPhotograph, ComesBackFromItsFile) {
  cv::Mat photo(90, 120, CV_8UC3);
  for (int y = 0; y < photo.rows; ++y)
    for (int x = 0; x < photo.cols; ++x)
      photo.at<cv::Vec3b>(y, x) =
          cv::Vec3b(static_cast<unsigned char>(2 * x), static_cast<unsigned char>(2 * y), 90);
  const auto bytes =
      room::encode_photograph(photo, {.quality = 95, .focal_35mm = 26.4, .focal_mm = 4.25, .orientation = 6});
  const cv::Mat back = cv::imdecode(bytes, cv::IMREAD_COLOR | cv::IMREAD_IGNORE_ORIENTATION);
  ASSERT_EQ(back.size(), photo.size());
  EXPECT_LT(worst_difference(back, photo), 12.0);
  const auto image = Exiv2::ImageFactory::open(bytes.data(), static_cast<long>(bytes.size()));
  image->readMetadata();
  EXPECT_EQ(image->exifData()["Exif.Photo.FocalLengthIn35mmFilm"].toLong(), 26);
  EXPECT_NEAR(image->exifData()["Exif.Photo.FocalLength"].toFloat(), 4.25, 1e-5);
  EXPECT_EQ(image->exifData()["Exif.Image.Orientation"].toLong(), 6);
}

TEST(ReadBack, FindsALineWhereItWasDrawn) {
  const room::RoomProjector projector = room::random_session(21, small_options()).room.projector;
  // A projector of 320 pixels over a metre has pixels of 3 mm; bring it near for pixels of half a millimetre.
  room::RoomProjector near = projector;
  Eigen::Isometry3d pose = near.projector_from_room.inverse();
  pose.translation() *= 0.16;
  near.projector_from_room = pose.inverse();
  for (double height : {0.0, 3.0})
    for (double offset : {0.0, 0.3, -0.3}) {
      std::vector<Vector2d> line = {{-50.0, -21.0}, {37.0, 18.0}};
      const room::ReadBack straight =
          room::read_back(near, drawn(near, line, offset, height), line, {.height = height});
      EXPECT_NEAR(straight.mean, offset, 0.02);
      EXPECT_NEAR(straight.mm95, std::abs(offset), 0.06);
      EXPECT_EQ(straight.missing, 0);
      EXPECT_GT(straight.measured, 80);
    }
  std::vector<Vector2d> ring;
  for (int k = 0; k < 180; ++k) {
    const double a = 2.0 * std::numbers::pi * k / 180.0;
    ring.emplace_back(20.0 * std::cos(a), 18.0 * std::sin(a));
  }
  std::vector<Vector2d> closed = ring;
  closed.push_back(ring.front());
  const room::ReadBack round = room::read_back(near, drawn(near, closed, 0.3, 0.0), ring, {.closed = true});
  EXPECT_NEAR(round.mean, 0.3, 0.02);
  EXPECT_EQ(round.skipped, 0);
  EXPECT_EQ(round.missing, 0);
}

TEST(ReadBack, SaysWhatItCouldNotMeasure) {
  room::RoomProjector near = room::random_session(21, small_options()).room.projector;
  Eigen::Isometry3d pose = near.projector_from_room.inverse();
  pose.translation() *= 0.16;
  near.projector_from_room = pose.inverse();
  const std::vector<Vector2d> corner = {{-30.0, -15.0}, {0.0, 20.0}, {30.0, -15.0}};
  const cv::Mat frame = drawn(near, corner, 0.0, 0.0);
  const room::ReadBack whole = room::read_back(near, frame, corner);
  EXPECT_NEAR(whole.skipped, 16, 3);  // 4 mm from both ends and to both sides of the corner
  EXPECT_EQ(whole.missing, 0);
  const room::ReadBack dark = room::read_back(near, cv::Mat::zeros(frame.size(), CV_8U), corner);
  EXPECT_EQ(dark.measured, 0);
  EXPECT_EQ(dark.missing, whole.measured);
  EXPECT_EQ(room::read_back(near, cv::Mat(frame.size(), CV_8U, cv::Scalar(255)), corner).measured, 0);
  const room::ReadBack outside = room::read_back(near, frame, {{500.0, 0.0}, {520.0, 0.0}});
  EXPECT_EQ(outside.unlit, 20);
  const room::ReadBack both = room::joined({whole, dark});
  EXPECT_EQ(both.missing, dark.missing);
  EXPECT_DOUBLE_EQ(both.worst, whole.worst);
}

TEST(RandomSession, KeepsItsPromises) {
  for (std::uint64_t seed = 1; seed <= 25; ++seed) {
    room::RoomOptions options = small_options();
    options.projector = {1920, 1080};
    options.hardness = 0.25 * static_cast<double>(seed % 5);
    options.electronic_keystone = seed % 7 == 0;
    const room::Session session = room::random_session(seed, options);
    const room::RoomProjector& projector = session.room.projector;
    const Vector2d middle(959.5, 539.5);
    EXPECT_LT(room::mat_from_projector(projector, middle)->norm(), 1e-9);
    const Vector2d along = *room::mat_from_projector(projector, middle + Vector2d(1.0, 0.0));
    EXPECT_GT(along.x(), 0.0);
    EXPECT_NEAR(along.y(), 0.0, 1e-9);
    const double width = (*room::mat_from_projector(projector, {-0.5, 539.5}) -
                          *room::mat_from_projector(projector, {1919.5, 539.5}))
                             .norm();
    EXPECT_GT(width, options.electronic_keystone ? 600.0 : 950.0);
    EXPECT_LT(width, 1450.0);
    ASSERT_EQ(session.room.sheets.size(), 4u);
    ASSERT_EQ(session.shots.size(), 3u);
    int targets = 0;
    for (const room::Shot& shot : session.shots) {
      targets += shot.target ? 1 : 0;
      EXPECT_GE(shot.camera.width * shot.camera.height, 7900000);
      const double height = shot.camera.camera_from_room.inverse().translation().z();
      EXPECT_GT(height, 600.0);
      EXPECT_LT(height, 1900.0);
      for (const Vector2d& point : room::lit_outline(projector)) {
        const auto pixel = room::camera_from_room(shot.camera, {point.x(), point.y(), 0.0});
        ASSERT_TRUE(pixel);
        EXPECT_TRUE(pixel->x() > 0 && pixel->y() > 0 && pixel->x() < shot.camera.width &&
                    pixel->y() < shot.camera.height);
      }
    }
    EXPECT_EQ(targets, 2);
    for (const room::PaperSheet& sheet : session.room.sheets) {
      EXPECT_LT(std::abs(sheet.across - 1.0), 0.0065);
      EXPECT_LT(std::abs(sheet.down - 1.0), 0.0065);
    }
    EXPECT_NEAR(session.ruler_across, 240.0 * session.room.sheets[0].across, 0.3);
    ASSERT_TRUE(session.tape);
  }
}

TEST(RandomSession, FaultsHappenWhereTheySay) {
  room::RoomOptions options = small_options();
  options.fault = room::Fault::sheet_moved;
  room::Session session = room::random_session(8, options);
  const auto sheet = static_cast<std::size_t>(session.faulty_sheet),
             shot = static_cast<std::size_t>(session.faulty_shot);
  ASSERT_GE(session.faulty_shot, 1);
  const room::Place &before = session.shots[shot - 1].room.sheets[sheet].place,
                    &after = session.shots[shot].room.sheets[sheet].place;
  EXPECT_GT(std::hypot(after.x - before.x, after.y - before.y), 3.0);
  EXPECT_EQ(session.room.sheets[sheet].place.x, after.x);

  options.fault = room::Fault::projector_moved;
  session = room::random_session(8, options);
  const auto moved = static_cast<std::size_t>(session.faulty_shot);
  const Vector2d was = *room::mat_from_projector(session.shots[moved - 1].room.projector, {160.0, 90.0});
  const Vector2d is = *room::mat_from_projector(session.room.projector, {160.0, 90.0});
  EXPECT_GT((was - is).norm(), 0.2);

  options.fault = room::Fault::one_sheet;
  EXPECT_EQ(room::random_session(8, options).room.sheets.size(), 1u);
  options.fault = room::Fault::sheets_to_one_side;
  for (const room::PaperSheet& each : room::random_session(8, options).room.sheets)
    EXPECT_LT(each.place.x, 0.0);
  EXPECT_THROW(room::random_session(8, room::RoomOptions{}), std::invalid_argument);
  options.fault = room::Fault::none;
  options.pages.assign(12, options.pages.front());  // more paper than a small table holds side by side
  EXPECT_EQ(room::random_session(8, options).room.sheets.size(), 12u);
}
