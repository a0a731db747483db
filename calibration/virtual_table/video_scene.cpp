#include "calibration/virtual_table/video_scene.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "calibration/virtual_table/draws.h"
#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration::virtual_table {

namespace {

struct ClothKind {
  const char* name;
  Colour colour, print;
  ClothPrint::Kind kind;
};

const std::vector<ClothKind>& kinds() {
  using enum ClothPrint::Kind;
  static const std::vector<ClothKind> all = {
      {"white", {0.75f, 0.75f, 0.73f}, {0.0f, 0.0f, 0.0f}, none},
      {"black", {0.025f, 0.025f, 0.027f}, {0.0f, 0.0f, 0.0f}, none},
      {"red", {0.42f, 0.04f, 0.05f}, {0.0f, 0.0f, 0.0f}, none},
      {"navy", {0.025f, 0.035f, 0.10f}, {0.0f, 0.0f, 0.0f}, none},
      {"grey", {0.30f, 0.30f, 0.31f}, {0.0f, 0.0f, 0.0f}, none},
      {"green", {0.07f, 0.22f, 0.10f}, {0.0f, 0.0f, 0.0f}, none},
      {"sand", {0.50f, 0.42f, 0.30f}, {0.0f, 0.0f, 0.0f}, none},
      {"wine", {0.16f, 0.03f, 0.06f}, {0.0f, 0.0f, 0.0f}, none},
      {"navy and white stripes", {0.03f, 0.04f, 0.11f}, {0.6f, 0.6f, 0.58f}, stripes},
      {"red checks", {0.6f, 0.58f, 0.55f}, {0.4f, 0.04f, 0.05f}, checks},
      {"white dots on green", {0.06f, 0.2f, 0.12f}, {0.65f, 0.65f, 0.62f}, dots},
  };
  return all;
}

RoomCamera draw_webcam(Dice& dice, const Room& room) {
  RoomCamera camera;
  camera.width = 1280;
  camera.height = 720;
  const auto outline = lit_outline(room.projector, 0.0);
  const Eigen::Vector3d eye(dice.uniform(-300.0, 300.0), dice.uniform(-250.0, 350.0),
                            dice.uniform(1000.0, 1500.0));
  const Eigen::Vector3d target(dice.normal(20.0), dice.normal(20.0), 0.0);
  const Eigen::Vector3d forward = (target - eye).normalized();
  const Eigen::Vector3d right = forward.cross(Eigen::Vector3d::UnitY()).normalized();
  Eigen::Isometry3d room_from_camera = Eigen::Isometry3d::Identity();
  room_from_camera.linear() << right, forward.cross(right), forward;
  room_from_camera.translation() = eye;
  camera.camera_from_room = room_from_camera.inverse();
  camera.optic.centre = {639.5 + dice.normal(6.0), 359.5 + dice.normal(6.0)};
  camera.optic.k1 = dice.uniform(-0.08, 0.04);
  camera.optic.k2 = -0.3 * camera.optic.k1;
  double most = 0.0;  // focal length so that the light fills the frame
  for (const auto& point : outline) {
    const Eigen::Vector3d seen = camera.camera_from_room * Eigen::Vector3d(point.x(), point.y(), 0.0);
    most = std::max({most, std::abs(seen.x() / seen.z()) / 640.0, std::abs(seen.y() / seen.z()) / 360.0});
  }
  camera.optic.focal = Eigen::Vector2d::Constant(dice.uniform(0.9, 0.98) / most);
  camera.blur = dice.uniform(0.5, 0.9);
  camera.vignetting = dice.uniform(0.1, 0.4);
  camera.electrons_per_lux = dice.uniform(12.0, 30.0);
  camera.full_well = dice.uniform(3000.0, 8000.0);
  camera.read_noise = dice.uniform(3.0, 8.0);
  camera.sharpening = dice.chance(0.5) ? dice.uniform(0.0, 0.5) : 0.0;
  camera.white_balance =
      Colour(static_cast<float>(dice.uniform(0.95, 1.05)), 1.0f, static_cast<float>(dice.uniform(0.95, 1.1)));
  return camera;
}

LightPlay draw_light_play(Dice& dice) {
  LightPlay light;
  const double pi = std::numbers::pi;
  light.swell = {dice.uniform(0.0, 0.18), dice.uniform(0.0, 0.08), dice.uniform(0.0, 0.01)};
  light.pace = {2.0 * pi / dice.uniform(20.0, 90.0), 2.0 * pi / dice.uniform(3.0, 12.0),
                2.0 * pi / dice.uniform(0.2, 0.6)};
  for (double& phase : light.phase) phase = dice.uniform(0.0, 2.0 * pi);
  for (double t = dice.uniform(10.0, 200.0); t < 3600.0; t += dice.uniform(60.0, 200.0))
    light.switches.push_back({t, dice.chance(0.5) ? dice.uniform(0.6, 0.8) : dice.uniform(1.25, 1.6)});
  light.warmth = dice.uniform(0.0, 0.05);
  light.lean = dice.uniform(0.0, 0.25);
  light.lean_pace = dice.uniform(0.2, 0.8);
  light.follows = dice.uniform(0.0, 0.9);
  return light;
}

}  // namespace

double LightPlay::ambient(double t) const {
  double log = 0.0;
  for (std::size_t k = 0; k < swell.size(); ++k) log += swell[k] * std::sin(pace[k] * t + phase[k]);
  double factor = 1.0;  // of the last switch; each comes over an eighth of a second
  double last = 1.0;
  for (const Switch& lamp : switches) {
    const double share = std::clamp((t - lamp.t) / 0.125, 0.0, 1.0);
    if (share <= 0.0) break;
    factor = last + share * (lamp.factor - last);
    last = factor;
  }
  return std::exp(log) * factor;
}

Moment LightPlay::at(double t) const {
  Moment moment;
  moment.ambient = ambient(t);
  const auto drift = static_cast<float>(warmth * std::sin(0.37 * pace[0] * t + phase[1]));
  moment.tint = Colour(1.0f + drift, 1.0f, 1.0f - drift);
  moment.exposure_stops = -follows * std::log2(ambient(t - 0.4));
  if (lean > 0.0) {
    Shadow shadow;
    shadow.place = {250.0 * std::sin(lean_pace * t + phase[2]),
                    -250.0 + 150.0 * std::sin(0.6 * lean_pace * t), 0.0};
    shadow.radii = {260.0, 260.0};
    shadow.ambient_left = static_cast<float>(1.0 - lean);
    moment.leaning = shadow;
  }
  return moment;
}

VideoScene random_video_scene(Dice& dice) {
  VideoScene scene;
  RoomOptions options;
  options.hardness = dice.uniform(0.0, 0.6);
  options.projector = dice.chance(0.5) ? cv::Size(1920, 1080) : cv::Size(1280, 800);
  scene.room.projector = draw_projector(dice, options);
  scene.room.mat = draw_mat(dice, scene.room.projector);
  scene.room.light = draw_light(dice, options);
  scene.room.light.lux = dice.uniform(60.0, 400.0);
  const ClothKind& kind = kinds()[static_cast<std::size_t>(dice.below(static_cast<int>(kinds().size())))];
  Cloth cloth;
  cloth.size = {dice.uniform(950.0, 1300.0), dice.uniform(560.0, 800.0)};
  cloth.place = {dice.normal(15.0), dice.normal(15.0), dice.normal(0.03)};
  cloth.height = dice.uniform(0.4, 3.0);
  cloth.albedo = static_cast<float>(dice.uniform(0.85, 1.15)) * kind.colour;
  cloth.wale = dice.uniform(0.8, 1.6);
  cloth.relief = static_cast<float>(dice.uniform(0.1, 0.3));
  scene.room.cloth = cloth;
  scene.print = {kind.kind, kind.print, dice.uniform(12.0, 40.0)};
  scene.cloth = kind.name;
  scene.camera = draw_webcam(dice, scene.room);
  scene.light = draw_light_play(dice);
  if (dice.chance(0.3)) scene.jpeg = 80 + dice.below(16);
  scene.exposure = dice.uniform(0.006, 0.02);
  scene.skin = draw_skin(dice);
  return scene;
}

}  // namespace cowlcast::calibration::virtual_table
