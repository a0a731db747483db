#include "calibration/virtual_table/video_things.h"

#include <array>
#include <cmath>
#include <numbers>

namespace cowlcast::calibration::virtual_table {

namespace {

using Eigen::Vector2d;

Vector2d left_of(const Vector2d& way) {
  return {-way.y(), way.x()};
}

std::vector<Vector2d> block(double left, double right, double low, double high) {
  return {{left, low}, {right, low}, {right, high}, {left, high}};
}

// A round limb: dark towards its sides.
void add_limb(Thing& thing, const Vector2d& from, const Vector2d& to, double radius, double height,
              const Colour& albedo) {
  thing.parts.push_back({stadium(from, to, radius), height - 0.3 * radius, 0.72f * albedo});
  thing.parts.push_back({stadium(from, to, 0.68 * radius), height, albedo});
}

Colour pick(Dice& dice, const std::vector<Colour>& colours) {
  return colours[static_cast<std::size_t>(dice.below(static_cast<int>(colours.size())))];
}

Colour draw_sleeve(Dice& dice) {
  return pick(dice, {{0.05f, 0.05f, 0.06f}, {0.6f, 0.6f, 0.58f}, {0.08f, 0.12f, 0.3f}, {0.4f, 0.12f, 0.12f}});
}

}  // namespace

std::vector<Vector2d> stadium(const Vector2d& from, const Vector2d& to, double radius) {
  const Vector2d way = to - from;
  const double first = way.norm() > 1e-9 ? std::atan2(way.y(), way.x()) : 0.0;
  std::vector<Vector2d> outline;
  constexpr int steps = 8;
  for (int end = 0; end < 2; ++end)
    for (int k = 0; k <= steps; ++k) {
      const double angle = first + std::numbers::pi * (end - 0.5 + static_cast<double>(k) / steps);
      outline.push_back((end == 0 ? to : from) + radius * Vector2d(std::cos(angle), std::sin(angle)));
    }
  return outline;
}

Colour draw_skin(Dice& dice) {
  return static_cast<float>(dice.uniform(0.85, 1.15)) * pick(dice, {{0.60f, 0.40f, 0.30f},
                                                                    {0.50f, 0.31f, 0.21f},
                                                                    {0.36f, 0.20f, 0.12f},
                                                                    {0.21f, 0.10f, 0.06f},
                                                                    {0.11f, 0.06f, 0.04f}});
}

CutterLook draw_cutter(Dice& dice) {
  CutterLook look;
  look.skin = draw_skin(dice);
  look.sleeve = draw_sleeve(dice);
  look.holder = pick(dice, {{0.05f, 0.05f, 0.05f}, {0.5f, 0.5f, 0.5f}, {0.6f, 0.4f, 0.02f}});
  look.grip =
      pick(dice, {{0.6f, 0.42f, 0.03f}, {0.5f, 0.05f, 0.06f}, {0.04f, 0.04f, 0.05f}, {0.5f, 0.2f, 0.35f}});
  constexpr std::array<double, 4> sizes{18.0, 28.0, 45.0, 60.0};
  look.blade = sizes[static_cast<std::size_t>(dice.below(4))];
  return look;
}

Thing cutter_in_hand(const CutterLook& look, const Vector2d& travel, const Vector2d& trail,
                     const Vector2d& elbow) {
  Thing tool{"cutter", {}};
  const Vector2d side = left_of(travel);
  const double half = 0.5 * look.blade;
  tool.parts.push_back({{-half * travel - 1.5 * side, half * travel - 1.5 * side, half * travel + 1.5 * side,
                         -half * travel + 1.5 * side},
                        half,
                        {0.55f, 0.56f, 0.58f}});
  const Vector2d wrist = 165.0 * trail, palm = 105.0 * trail;
  tool.parts.push_back(
      {stadium(Vector2d(0.35 * half * travel), Vector2d(30.0 * trail), 8.0), half + 8.0, look.holder});
  tool.parts.push_back(
      {stadium(Vector2d(25.0 * trail), Vector2d(140.0 * trail), 12.0), half + 22.0, look.grip});
  // The fist around the grip, four knuckles across, and one finger along it.
  add_limb(tool, palm - 12.0 * left_of(trail), palm + 12.0 * left_of(trail), 36.0, half + 40.0, look.skin);
  add_limb(tool, palm, Vector2d(38.0 * trail), 9.0, half + 34.0, look.skin);
  add_limb(tool, palm, wrist, 29.0, half + 42.0, look.skin);
  const Vector2d cuff = wrist + 0.35 * (elbow - wrist);
  add_limb(tool, wrist, cuff, 29.0, half + 48.0, look.skin);
  add_limb(tool, cuff, elbow, 42.0, half + 60.0, look.sleeve);
  return tool;
}

Thing flat_hand(const Colour& skin, const Colour& sleeve) {
  Thing hand{"hand", {}};
  add_limb(hand, {-260.0, 0.0}, {-520.0, 0.0}, 42.0, 60.0, sleeve);
  add_limb(hand, {-170.0, 0.0}, {-260.0, 0.0}, 28.0, 35.0, skin);
  add_limb(hand, {-112.0, -14.0}, {-112.0, 14.0}, 34.0, 26.0, skin);
  const double tips[4] = {-14.0, -8.0, -9.0, -26.0};
  for (int k = 0; k < 4; ++k) {
    const double y = 31.5 - 21.0 * k;
    add_limb(hand, {-95.0, 0.8 * y}, {tips[k], y}, k == 3 ? 7.5 : 8.5, 14.0, skin);
  }
  return hand;
}

Thing pointing_hand(Dice& dice, const Colour& skin, const Colour& sleeve) {
  Thing hand{"finger", {}};
  const double radius = dice.uniform(7.0, 9.5);
  add_limb(hand, {-260.0, 0.0}, {-520.0, 0.0}, 42.0, 70.0, sleeve);
  add_limb(hand, {-150.0, 0.0}, {-260.0, 0.0}, 28.0, 50.0, skin);
  add_limb(hand, {-110.0, -16.0}, {-110.0, 10.0}, 32.0, 40.0, skin);
  add_limb(hand, {-100.0, 8.0}, {-radius, 0.0}, radius, 2.0 * radius, skin);
  hand.parts.push_back({stadium({-radius - 4.0, 0.0}, {-radius, 0.0}, 0.55 * radius), 2.0 * radius,
                        skin + Colour(0.06f, 0.05f, 0.05f)});
  return hand;
}

Thing pattern_weight(Dice& dice) {
  Thing weight{"weight", {}};
  const Colour colour =
      pick(dice, {{0.30f, 0.31f, 0.33f}, {0.06f, 0.06f, 0.07f}, {0.5f, 0.1f, 0.12f}, {0.1f, 0.25f, 0.4f}});
  const double radius = dice.uniform(15.0, 35.0);
  weight.parts.push_back({stadium({0, 0}, {0, 0}, radius), 8.0, 0.8f * colour});
  weight.parts.push_back({stadium({0, 0}, {0, 0}, 0.75 * radius), 14.0, colour});
  weight.parts.push_back({stadium({0, 0}, {0, 0}, 5.0), 24.0, 1.3f * colour});
  return weight;
}

Thing pin_cluster(Dice& dice) {
  Thing pins{"pins", {}};
  const Colour heads = pick(dice, {{0.75f, 0.75f, 0.72f}, {0.55f, 0.05f, 0.05f}, {0.6f, 0.5f, 0.05f}});
  const int count = 8 + dice.below(5);
  for (int k = 0; k < count; ++k) {
    const double angle = dice.uniform(0.0, 2.0 * std::numbers::pi);
    const double ring = 4.6 * std::sqrt(static_cast<double>(k)), spread = 2.4 * k;
    const Vector2d at(ring * std::cos(spread) * 0.95, ring * std::sin(spread) * 0.95);
    const Vector2d way(std::cos(angle), std::sin(angle));
    pins.parts.push_back({stadium(at, at + 32.0 * way, 0.35), 1.0, {0.5f, 0.5f, 0.5f}});
    const double radius = dice.uniform(2.0, 2.5);  // a ball: dark towards its rim
    pins.parts.push_back({stadium(at, at, radius), 2.5, 0.6f * heads});
    pins.parts.push_back({stadium(at, at, 0.65 * radius), 3.5, heads});
  }
  return pins;
}

Thing ruler(Dice& dice) {
  Thing rule{"ruler", {}};
  const Colour colour = pick(dice, {{0.45f, 0.46f, 0.48f}, {0.65f, 0.45f, 0.05f}, {0.55f, 0.40f, 0.22f}});
  const double half = dice.uniform(10.0, 17.5);
  rule.parts.push_back({block(-300.0, 0.0, -half, half), 2.0, colour});
  for (int k = 1; k < 29; ++k)
    rule.parts.push_back({block(-10.0 * k - 0.4, -10.0 * k + 0.4, half - (k % 5 == 0 ? 9.0 : 5.0), half),
                          2.0,
                          {0.03f, 0.03f, 0.03f}});
  return rule;
}

Thing scissors(Dice& dice) {
  Thing shears{"scissors", {}};
  const Colour grips = pick(dice, {{0.04f, 0.04f, 0.04f}, {0.55f, 0.12f, 0.03f}, {0.05f, 0.25f, 0.12f}});
  const Colour steel{0.48f, 0.49f, 0.5f};
  const double open = dice.uniform(0.02, 0.2);
  for (const double side : {-1.0, 1.0}) {
    const Vector2d way(std::cos(open), side * std::sin(open));
    shears.parts.push_back({{-90.0 * way, -90.0 * way + 14.0 * side * left_of(way),
                             -5.0 * way + 3.0 * side * left_of(way), Vector2d(0.0, 0.0)},
                            5.0,
                            steel});
    const Vector2d loop = -150.0 * way - 22.0 * side * left_of(way);
    shears.parts.push_back({stadium(-90.0 * way, loop, 9.0), 8.0, grips});
    shears.parts.push_back(
        {stadium(loop + Vector2d(-8.0, 0.0), loop + Vector2d(-34.0, 0.0), 20.0), 8.0, grips});
  }
  return shears;
}

Thing cat_paw(Dice& dice) {
  Thing paw{"cat", {}};
  const Colour fur = pick(
      dice, {{0.05f, 0.045f, 0.04f}, {0.55f, 0.52f, 0.48f}, {0.42f, 0.22f, 0.08f}, {0.2f, 0.19f, 0.18f}});
  add_limb(paw, {-30.0, 0.0}, {-240.0, 20.0}, 19.0, 45.0, fur);
  add_limb(paw, {-18.0, 0.0}, {-34.0, 0.0}, 17.0, 20.0, fur);
  for (int k = 0; k < 4; ++k) {
    const Vector2d toe(-6.5 - 2.0 * std::abs(k - 1.5), 8.5 * (k - 1.5));
    paw.parts.push_back({stadium(toe, toe, 6.5), 16.0, 1.15f * fur});
  }
  return paw;
}

Thing trifle(Dice& dice) {
  const double angle = dice.uniform(0.0, 2.0 * std::numbers::pi);
  const Vector2d way(std::cos(angle), std::sin(angle));
  switch (dice.below(3)) {
    case 0:
      return {"pin",
              {{stadium({0, 0}, 32.0 * way, 0.35), 1.0, {0.5f, 0.5f, 0.5f}},
               {stadium({0, 0}, {0, 0}, 2.2), 3.0, {0.6f, 0.06f, 0.06f}}}};
    case 1:
      return {"thread", {{stadium({0, 0}, 18.0 * way, 0.4), 0.5, {0.6f, 0.6f, 0.6f}}}};
    default:
      return {"button", {{stadium({0, 0}, {0, 0}, 3.0), 2.0, {0.4f, 0.3f, 0.2f}}}};
  }
}

}  // namespace cowlcast::calibration::virtual_table
