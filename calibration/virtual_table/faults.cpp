#include <cmath>
#include <numbers>

#include "calibration/virtual_table/draws.h"
#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration::virtual_table {

namespace {

double either(Dice& dice, double low, double high) {
  return dice.uniform(low, high) * (dice.chance(0.5) ? 1.0 : -1.0);
}

// Applies `edit` to the room as it stands from photograph `from` on, and in the end.
template <typename Edit>
void from_shot_on(Session& session, int from, Edit edit) {
  for (std::size_t i = static_cast<std::size_t>(from); i < session.shots.size(); ++i)
    edit(session.shots[i].room);
  edit(session.room);
}

void curl_corner(Dice& dice, PaperSheet& sheet) {
  const double w = sheet.paper.x(), h = sheet.paper.y();
  const Eigen::Vector2d corner(dice.chance(0.5) ? 0.0 : w, dice.chance(0.5) ? 0.0 : h);
  const Eigen::Vector2d middle = 0.5 * sheet.paper;
  sheet.curl.towards = corner;
  sheet.curl.from = corner + (middle - corner).normalized() * dice.uniform(90.0, 150.0);
  sheet.curl.height = dice.uniform(8.0, 25.0);
}

}  // namespace

std::string name_of(Fault fault) {
  switch (fault) {
    case Fault::none:
      return "none";
    case Fault::sheet_moved:
      return "sheet_moved";
    case Fault::projector_moved:
      return "projector_moved";
    case Fault::sheet_other_scale:
      return "sheet_other_scale";
    case Fault::curled_sheet:
      return "curled_sheet";
    case Fault::blurred_photograph:
      return "blurred_photograph";
    case Fault::too_dark:
      return "too_dark";
    case Fault::glare:
      return "glare";
    case Fault::shadow:
      return "shadow";
    case Fault::refocused:
      return "refocused";
    case Fault::sheets_to_one_side:
      return "sheets_to_one_side";
    case Fault::one_sheet:
      return "one_sheet";
  }
  return "unknown";
}

void bring_fault(Dice& dice, const RoomOptions& options, Session& session) {
  const auto sheets = static_cast<int>(session.room.sheets.size()),
             shots = static_cast<int>(session.shots.size());
  if (shots == 0) return;
  const int sheet = dice.below(sheets), shot = dice.below(shots),
            later = shots > 1 ? 1 + dice.below(shots - 1) : 0;
  const auto index = static_cast<std::size_t>(sheet);
  switch (options.fault) {
    case Fault::none:
    case Fault::sheets_to_one_side:
    case Fault::one_sheet:
      return;
    case Fault::sheet_moved: {
      const double dx = either(dice, 3.0, 15.0), dy = either(dice, 3.0, 15.0), turn = dice.normal(0.02);
      from_shot_on(session, later, [&](Room& room) {
        Place& place = room.sheets[index].place;
        place = {place.x + dx, place.y + dy, place.turn + turn};
      });
      session.faulty_sheet = sheet;
      session.faulty_shot = later;
      return;
    }
    case Fault::projector_moved: {
      const Eigen::AngleAxisd bump(
          either(dice, 0.002, 0.008),
          Eigen::Vector3d(dice.normal(1.0), dice.normal(1.0), dice.normal(1.0)).normalized());
      from_shot_on(session, later, [&](Room& room) { room.projector.projector_from_room.prerotate(bump); });
      session.faulty_shot = later;
      return;
    }
    case Fault::sheet_other_scale: {
      const double scale = dice.chance(0.5) ? dice.uniform(0.93, 0.98) : dice.uniform(1.015, 1.04);
      from_shot_on(session, 0, [&](Room& room) {
        room.sheets[index].across *= scale;
        room.sheets[index].down *= scale;
      });
      session.faulty_sheet = sheet;
      return;
    }
    case Fault::curled_sheet: {
      PaperSheet curled = session.room.sheets[index];
      curl_corner(dice, curled);
      from_shot_on(session, 0, [&](Room& room) { room.sheets[index].curl = curled.curl; });
      session.faulty_sheet = sheet;
      return;
    }
    case Fault::blurred_photograph: {
      RoomCamera& camera = session.shots[static_cast<std::size_t>(shot)].camera;
      if (dice.chance(0.5))
        camera.blur = dice.uniform(4.0, 8.0);
      else
        camera.shake = {either(dice, 10.0, 25.0), either(dice, 5.0, 25.0)};
      session.faulty_shot = shot;
      return;
    }
    case Fault::too_dark: {
      const double light = dice.uniform(0.5, 2.0);
      from_shot_on(session, 0, [&](Room& room) {
        room.light.lux = light;
        room.projector.white_lux = 4.0 * light;
      });
      for (Shot& each : session.shots) each.camera.exposure_stops = dice.uniform(-4.0, -2.5);
      return;
    }
    case Fault::glare: {
      const double gloss = dice.uniform(0.1, 0.4), width = dice.uniform(0.06, 0.15);
      from_shot_on(session, 0, [&](Room& room) {
        for (PaperSheet& each : room.sheets) {
          each.gloss = static_cast<float>(gloss);
          each.gloss_width = static_cast<float>(width);
        }
      });
      return;
    }
    case Fault::shadow: {
      for (Shot& each : session.shots) {
        if (!dice.chance(0.7)) continue;
        Shadow shadow;
        shadow.place = {dice.uniform(-400.0, 400.0), dice.uniform(-350.0, 150.0), dice.uniform(-0.6, 0.6)};
        shadow.radii = {dice.uniform(80.0, 220.0), dice.uniform(150.0, 400.0)};
        shadow.softness = dice.uniform(10.0, 80.0);
        shadow.ambient_left = static_cast<float>(dice.uniform(0.2, 0.6));
        shadow.projector_left = dice.chance(0.5) ? 1.0f : 0.0f;
        each.room.light.shadows.push_back(shadow);
      }
      return;
    }
    case Fault::refocused:
      for (Shot& each : session.shots) each.camera.optic.focal *= 1.0 + dice.normal(0.008);
      return;
  }
}

}  // namespace cowlcast::calibration::virtual_table
