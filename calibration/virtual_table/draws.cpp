#include "calibration/virtual_table/draws.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <opencv2/imgproc.hpp>

#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration::virtual_table {

namespace {

constexpr double degree = std::numbers::pi / 180.0;

double distance(const RoomProjector& projector, const Eigen::Vector2d& a, const Eigen::Vector2d& b) {
  return (*mat_from_projector(projector, a) - *mat_from_projector(projector, b)).norm();
}

// Moves the room's frame so that the middle of the picture lights the origin and its rows run along x there.
void centre_room(RoomProjector& projector) {
  const Eigen::Vector2d middle(0.5 * (projector.width - 1), 0.5 * (projector.height - 1));
  const Eigen::Vector2d origin = *mat_from_projector(projector, middle);
  const Eigen::Vector2d along = *mat_from_projector(projector, middle + Eigen::Vector2d(1.0, 0.0)) - origin;
  Eigen::Isometry3d old_from_new = Eigen::Isometry3d::Identity();
  old_from_new.translate(Eigen::Vector3d(origin.x(), origin.y(), 0.0));
  old_from_new.rotate(Eigen::AngleAxisd(std::atan2(along.y(), along.x()), Eigen::Vector3d::UnitZ()));
  projector.projector_from_room = projector.projector_from_room * old_from_new;
}

// Squares the picture on the mat by resampling: the largest upright rectangle of its shape about the
// middle that the panel can light becomes the picture.
void add_keystone(RoomProjector& projector) {
  const double w = projector.width, h = projector.height;
  const auto corners = [&](double half_width) {
    std::vector<cv::Point2f> panel;
    for (const Eigen::Vector2d& sign :
         {Eigen::Vector2d(-1, 1), Eigen::Vector2d(1, 1), Eigen::Vector2d(1, -1), Eigen::Vector2d(-1, -1)}) {
      const auto pixel =
          projector_from_mat(projector, {sign.x() * half_width, sign.y() * half_width * h / w});
      if (!pixel || pixel->x() < 0.0 || pixel->y() < 0.0 || pixel->x() > w - 1.0 || pixel->y() > h - 1.0)
        return std::vector<cv::Point2f>{};
      panel.emplace_back(static_cast<float>(pixel->x()), static_cast<float>(pixel->y()));
    }
    return panel;
  };
  double low = 10.0, high = 2000.0;
  for (int step = 0; step < 40; ++step) {
    const double half = 0.5 * (low + high);
    (corners(half).empty() ? high : low) = half;
  }
  const std::vector<cv::Point2f> panel = corners(low);
  const auto right = static_cast<float>(w - 1.0), bottom = static_cast<float>(h - 1.0);
  const std::vector<cv::Point2f> picture = {{0, 0}, {right, 0}, {right, bottom}, {0, bottom}};
  const cv::Mat map = cv::getPerspectiveTransform(picture, panel);
  Eigen::Matrix3d homography;
  for (int r = 0; r < 3; ++r)
    for (int c = 0; c < 3; ++c) homography(r, c) = map.at<double>(r, c);
  projector.panel_from_picture = homography;
  centre_room(projector);
}

// One attempt; false where no sane person would leave the projector like that.
bool try_projector(Dice& dice, const RoomOptions& options, RoomProjector& projector) {
  const double w = projector.width, h = projector.height, hard = options.hardness;
  const double throw_ratio = dice.uniform(1.25 - 0.7 * hard, 1.7);  // distance over width of the picture
  Optic& optic = projector.optic;
  optic.focal = Eigen::Vector2d::Constant(throw_ratio * w);
  // Most projectors throw their picture wholly to one side of the axis, some straight ahead.
  const double lift = dice.chance(0.3)   ? dice.uniform(0.3, 0.7)
                      : dice.chance(0.5) ? dice.uniform(0.92, 1.15)
                                         : dice.uniform(-0.15, 0.08);
  optic.centre = {0.5 * (w - 1) + w * dice.uniform(-0.04, 0.04), lift * h};
  double slope2 = 0.0;
  for (double x : {-0.5, w - 0.5})
    for (double y : {-0.5, h - 0.5})
      slope2 =
          std::max(slope2, (Eigen::Vector2d(x, y) - optic.centre).cwiseQuotient(optic.focal).squaredNorm());
  // Makers keep the bend at the corner within a percent or two, whatever the throw.
  optic.k1 = dice.uniform(-0.04, 0.04) * std::min(1.0, 0.45 / slope2);
  optic.k2 = dice.uniform(-0.2, 0.2) * optic.k1 / slope2;
  optic.p1 = dice.normal(0.0003);
  optic.p2 = dice.normal(0.0003);
  optic.wobble = 0.12 * hard * dice.uniform(0.0, 1.0);
  optic.wobble_waves = dice.uniform(1.0, 2.5);
  optic.wobble_phase = dice.uniform(0.0, 2.0 * std::numbers::pi);
  if (optic.valid_slope() < 1.3 * std::sqrt(slope2)) return false;

  const double tilt = (8.0 + 12.0 * hard) * degree;
  Eigen::Matrix3d room_from_axes = (Eigen::AngleAxisd(dice.uniform(-tilt, tilt), Eigen::Vector3d::UnitX()) *
                                    Eigen::AngleAxisd(dice.uniform(-tilt, tilt), Eigen::Vector3d::UnitY()))
                                       .toRotationMatrix();
  room_from_axes = room_from_axes * Eigen::Vector3d(1.0, -1.0, -1.0).asDiagonal();
  Eigen::Isometry3d room_from_projector = Eigen::Isometry3d::Identity();
  room_from_projector.linear() = room_from_axes;
  room_from_projector.translation() = Eigen::Vector3d(0.0, 0.0, 1000.0);
  projector.projector_from_room = room_from_projector.inverse();
  const double right = w - 0.5, bottom = h - 0.5;
  for (const Eigen::Vector2d& corner : {Eigen::Vector2d(-0.5, -0.5), Eigen::Vector2d(right, -0.5),
                                        Eigen::Vector2d(right, bottom), Eigen::Vector2d(-0.5, bottom)}) {
    const auto point = mat_from_projector(projector, corner);
    if (!point || point->norm() > 2500.0) return false;
  }
  const double top = distance(projector, {-0.5, -0.5}, {right, -0.5}),
               foot = distance(projector, {-0.5, bottom}, {right, bottom});
  const double left_side = distance(projector, {-0.5, -0.5}, {-0.5, bottom}),
               right_side = distance(projector, {right, -0.5}, {right, bottom});
  const double most = 1.25 + 0.25 * hard;
  if (std::max(top / foot, foot / top) > most ||
      std::max(left_side / right_side, right_side / left_side) > most)
    return false;
  // Raising the projector widens the picture in proportion.
  const double height = 1000.0 * dice.uniform(1000.0, 1400.0) / (0.5 * (top + foot));
  if (height < 450.0 || height > 2600.0) return false;
  room_from_projector.translation().z() = height;
  projector.projector_from_room = room_from_projector.inverse();
  projector.reference = height;
  return true;
}

}  // namespace

RoomProjector draw_projector(Dice& dice, const RoomOptions& options) {
  const double hard = options.hardness;
  RoomProjector projector;
  projector.width = options.projector.width;
  projector.height = options.projector.height;
  if (projector.width <= 0) {
    const std::array<cv::Size, 4> usual = {cv::Size(1280, 720), cv::Size(1280, 800), cv::Size(1920, 1080),
                                           cv::Size(3840, 2160)};
    const cv::Size size = usual[static_cast<std::size_t>(dice.below(4))];
    projector.width = size.width;
    projector.height = size.height;
  }
  while (!try_projector(dice, options, projector)) {
  }
  projector.white_lux = dice.uniform(900.0 - 500.0 * hard, 2200.0);
  projector.tint =
      Colour(static_cast<float>(dice.uniform(0.9, 1.05)), 1.0f, static_cast<float>(dice.uniform(0.95, 1.15)));
  projector.gamma = dice.uniform(2.1, 2.3);
  projector.black = 1.0 / dice.uniform(400.0, 2500.0);
  projector.fill = dice.uniform(0.88, 1.0);
  projector.blur = dice.uniform(0.3, 0.5 + 0.3 * hard);
  projector.vignetting = dice.uniform(0.05, 0.15 + 0.2 * hard);
  projector.bounce = dice.uniform(0.0, 0.02);
  if (options.rolling_shutter) {
    projector.flicker = dice.uniform(0.0, 0.15);
    projector.flicker_rows = dice.uniform(300.0, 2000.0);
  }
  centre_room(projector);
  if (options.electronic_keystone) add_keystone(projector);
  return projector;
}

CuttingMat draw_mat(Dice& dice, const RoomProjector& projector) {
  struct Kind {
    Colour albedo, print;
  };
  static const std::array<Kind, 9> kinds = {{
      {{0.025f, 0.025f, 0.027f}, {0.35f, 0.35f, 0.33f}},  // black, light grey print
      {{0.03f, 0.12f, 0.07f}, {0.45f, 0.45f, 0.25f}},     // green, yellow print
      {{0.02f, 0.07f, 0.05f}, {0.55f, 0.58f, 0.52f}},     // dark green, white print
      {{0.16f, 0.17f, 0.18f}, {0.55f, 0.55f, 0.55f}},     // grey, white print
      {{0.05f, 0.10f, 0.22f}, {0.50f, 0.52f, 0.55f}},     // blue, white print
      {{0.55f, 0.22f, 0.30f}, {0.75f, 0.68f, 0.70f}},     // rose, white print
      {{0.72f, 0.72f, 0.70f}, {0.12f, 0.12f, 0.13f}},     // white, black print
      {{0.45f, 0.44f, 0.40f}, {0.10f, 0.12f, 0.30f}},     // beige, blue print
      {{0.60f, 0.62f, 0.60f}, {0.60f, 0.62f, 0.60f}},     // plain light board
  }};
  const Kind& kind = kinds[static_cast<std::size_t>(dice.below(static_cast<int>(kinds.size())))];
  Eigen::Vector2d low(1e9, 1e9), high(-1e9, -1e9);
  for (const auto& point : lit_outline(projector)) {
    low = low.cwiseMin(point);
    high = high.cwiseMax(point);
  }
  CuttingMat mat;
  mat.albedo = kind.albedo;
  mat.print_albedo = kind.print;
  mat.size = (high - low).cwiseProduct(Eigen::Vector2d(dice.uniform(0.95, 1.35), dice.uniform(0.95, 1.4)));
  const Eigen::Vector2d middle = 0.5 * (low + high);
  mat.place = {middle.x() + dice.normal(20.0), middle.y() + dice.normal(20.0), dice.normal(0.04)};
  const std::array<Eigen::Vector2d, 4> steps = {
      Eigen::Vector2d(10.0, 50.0), {10.0, 100.0}, {12.7, 25.4}, {0.0, 50.0}};
  const Eigen::Vector2d& step = steps[static_cast<std::size_t>(dice.below(4))];
  mat.fine_step = step.x();
  mat.heavy_step = step.y();
  mat.fine_line = dice.uniform(0.2, 0.45);
  mat.heavy_line = dice.uniform(0.5, 1.2);
  mat.diagonals = dice.chance(0.6);
  mat.numerals = dice.chance(0.8);
  mat.grain = static_cast<float>(dice.uniform(0.02, 0.08));
  mat.wooden_table = dice.chance(0.6);
  const auto shade = static_cast<float>(dice.uniform(0.4, 1.5));
  mat.table_albedo = shade * (mat.wooden_table ? Colour(0.35f, 0.22f, 0.12f) : Colour(0.35f, 0.36f, 0.38f));
  return mat;
}

RoomLight draw_light(Dice& dice, const RoomOptions& options) {
  RoomLight light;
  light.lux = dice.uniform(60.0 - 40.0 * options.hardness, 250.0 + 200.0 * options.hardness);
  const double warm = dice.uniform(0.0, 1.0);
  light.tint = Colour(1.0f, static_cast<float>(0.97 - 0.12 * warm), static_cast<float>(0.95 - 0.35 * warm));
  light.gradient = {dice.normal(0.15 + 0.2 * options.hardness), dice.normal(0.15 + 0.2 * options.hardness)};
  light.lamp =
      Eigen::Vector3d(dice.uniform(-900.0, 900.0), dice.uniform(-900.0, 900.0), dice.uniform(1300.0, 1800.0));
  return light;
}

RoomCamera draw_camera(Dice& dice, const RoomOptions& options) {
  const double hard = options.hardness;
  const std::array<cv::Size, 4> sizes = {cv::Size(3264, 2448), cv::Size(3648, 2736), cv::Size(4000, 3000),
                                         cv::Size(4032, 3024)};
  RoomCamera camera;
  const cv::Size size = sizes[static_cast<std::size_t>(dice.below(4))];
  camera.width = size.width;
  camera.height = size.height;
  const double w = size.width, h = size.height;
  do {
    Optic& optic = camera.optic;
    optic.focal = Eigen::Vector2d::Constant(w * dice.uniform(0.65, 0.9));
    optic.centre = {0.5 * (w - 1) + dice.normal(0.006 * w), 0.5 * (h - 1) + dice.normal(0.006 * w)};
    optic.k1 = dice.uniform(-0.15, 0.15) * std::min(1.0, 0.5 + hard);
    optic.k2 = dice.uniform(-0.1, 0.1) - 0.4 * optic.k1;
    optic.k3 = dice.uniform(-0.03, 0.03);
    optic.p1 = dice.normal(0.0006);
    optic.p2 = dice.normal(0.0006);
    optic.wobble = 0.2 * hard * dice.uniform(0.0, 1.0);
    optic.wobble_waves = dice.uniform(0.8, 2.0);
    optic.wobble_phase = dice.uniform(0.0, 2.0 * std::numbers::pi);
  } while (camera.optic.valid_slope() < 1.25 * std::hypot(w, h) / 2.0 / camera.optic.focal.x());
  camera.blur = dice.uniform(0.45, 0.7 + 0.4 * hard);
  camera.vignetting = dice.uniform(0.15, 0.5);
  camera.electrons_per_lux = dice.uniform(8.0, 20.0);
  camera.full_well = dice.uniform(5000.0, 12000.0);
  camera.read_noise = dice.uniform(2.0, 6.0);
  camera.sharpening = dice.uniform(0.0, 0.3 + 0.3 * hard);
  camera.white_balance =
      Colour(static_cast<float>(dice.uniform(0.95, 1.05)), 1.0f, static_cast<float>(dice.uniform(0.95, 1.1)));
  return camera;
}

PhotographFile draw_file(Dice& dice, const RoomOptions& options, const RoomCamera& phone) {
  PhotographFile file;
  file.quality = static_cast<int>(std::lround(dice.uniform(90.0 - 30.0 * options.hardness, 96.0)));
  if (dice.chance(0.7)) {
    file.focal_35mm = focal_35mm(phone);
    if (options.breathing > 0.0) file.focal_mm = options.breathing;  // what makes it breathe is its length
  }
  return file;
}

}  // namespace cowlcast::calibration::virtual_table
