#include "calibration/virtual_table/random_room.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "calibration/virtual_table/draws.h"
#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration::virtual_table {

namespace {

// Two convex outlines overlap unless a line along some edge parts them.
bool overlap(const std::vector<Eigen::Vector2d>& p, const std::vector<Eigen::Vector2d>& q) {
  for (const auto* outline : {&p, &q})
    for (std::size_t i = 0; i < outline->size(); ++i) {
      const Eigen::Vector2d edge = (*outline)[(i + 1) % outline->size()] - (*outline)[i];
      const Eigen::Vector2d across(-edge.y(), edge.x());
      double p_low = 1e30, p_high = -1e30, q_low = 1e30, q_high = -1e30;
      for (const auto& point : p) {
        p_low = std::min(p_low, across.dot(point));
        p_high = std::max(p_high, across.dot(point));
      }
      for (const auto& point : q) {
        q_low = std::min(q_low, across.dot(point));
        q_high = std::max(q_high, across.dot(point));
      }
      if (p_high < q_low || q_high < p_low) return false;
    }
  return true;
}

// Where people put sheets when told to spread them: places in the lit area, -1 .. 1 each way.
std::vector<Eigen::Vector2d> spread(std::size_t count) {
  switch (count) {
    case 1:
      return {{0.0, 0.0}};
    case 2:
      return {{-0.55, 0.1}, {0.55, -0.1}};
    case 3:
      return {{-0.6, 0.4}, {0.6, 0.4}, {0.0, -0.5}};
    case 4:
      return {{-0.62, 0.52}, {0.62, 0.52}, {-0.62, -0.52}, {0.62, -0.52}};
    default:
      break;
  }
  std::vector<Eigen::Vector2d> places;
  const std::size_t columns = (count + 1) / 2;
  for (std::size_t i = 0; i < count; ++i) {
    const double along =
        columns > 1 ? 2.0 * static_cast<double>(i / 2) / static_cast<double>(columns - 1) - 1.0 : 0.0;
    places.emplace_back(0.7 * along, i % 2 == 0 ? 0.52 : -0.52);
  }
  return places;
}

std::vector<PaperSheet> draw_sheets(Dice& dice, const RoomOptions& options, const RoomProjector& projector) {
  std::vector<cv::Mat> pages = options.pages;
  if (options.fault == Fault::one_sheet) pages.resize(1);
  Eigen::Vector2d low(1e9, 1e9), high(-1e9, -1e9);
  for (const auto& point : lit_outline(projector)) {
    low = low.cwiseMin(point);
    high = high.cwiseMax(point);
  }
  const Eigen::Vector2d middle = 0.5 * (low + high), half = 0.5 * (high - low);
  const double across = 1.0 + dice.uniform(-0.006, 0.006), down = 1.0 + dice.uniform(-0.006, 0.006);
  const double white = dice.uniform(0.72, 0.88), ink = dice.uniform(0.03, 0.08);
  std::vector<Eigen::Vector2d> places = spread(pages.size());
  if (options.fault == Fault::sheets_to_one_side)
    for (auto& place : places) place.x() = -0.72 + 0.25 * place.x();
  std::vector<std::size_t> order(pages.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  for (std::size_t i = order.size(); i > 1; --i)
    std::swap(order[i - 1], order[static_cast<std::size_t>(dice.below(static_cast<int>(i)))]);

  std::vector<PaperSheet> sheets;
  double room_to_move = 0.10;
  for (int attempt = 0; sheets.size() < pages.size(); ++attempt) {
    if (attempt > 0 && attempt % 400 == 0) {  // a crowded table: begin again and let them lie farther out
      sheets.clear();
      room_to_move += 0.04;
    }
    const std::size_t next = sheets.size();
    PaperSheet sheet;
    sheet.page = pages[next];
    sheet.pixel_mm = options.pixel_mm;
    sheet.paper = options.paper;
    sheet.across = across + dice.normal(0.00005);
    sheet.down = down + dice.normal(0.00005);
    sheet.shift = {dice.uniform(-1.5, 1.5), dice.uniform(-1.5, 1.5)};
    const Eigen::Vector2d place =
        middle + half.cwiseProduct(places[order[next]] + Eigen::Vector2d(dice.normal(room_to_move),
                                                                         dice.normal(1.4 * room_to_move)));
    sheet.place = {place.x(), place.y(), 0.0};
    sheet.place.turn = dice.chance(0.6) ? 0.5 * std::numbers::pi * dice.below(4) + dice.normal(0.25)
                                        : dice.uniform(-std::numbers::pi, std::numbers::pi);
    sheet.paper_albedo = static_cast<float>(white) * Colour(1.0f, 1.0f, 0.98f);
    sheet.ink_albedo = Colour::Constant(static_cast<float>(ink));
    sheet.gloss = static_cast<float>(0.03 * options.hardness * dice.uniform(0.0, 1.0));
    sheet.gloss_width = 0.3f;
    bool free = (place - middle).cwiseQuotient(half).cwiseAbs().maxCoeff() < 0.9;
    const bool no_room = attempt > 400 * 40;  // more paper than table: some must lie over others
    for (const PaperSheet& other : sheets)
      free = free && (no_room || !overlap(paper_outline(sheet), paper_outline(other)));
    if (free) sheets.push_back(sheet);
  }
  return sheets;
}

// Reads rulers and tape as a person does.
void measure(Dice& dice, const RoomOptions& options, Session& session) {
  double across = 0.0, down = 0.0;
  for (const PaperSheet& sheet : session.room.sheets) {
    across += sheet.across / static_cast<double>(session.room.sheets.size());
    down += sheet.down / static_cast<double>(session.room.sheets.size());
  }
  session.ruler_across = 240.0 * across + dice.normal(options.ruler_sigma);
  session.ruler_down = 180.0 * down + dice.normal(options.ruler_sigma);
  Tape longest;
  for (int i = 0; i < static_cast<int>(session.room.sheets.size()); ++i)
    for (int j = i + 1; j < static_cast<int>(session.room.sheets.size()); ++j) {
      const auto& from = session.room.sheets[static_cast<std::size_t>(i)];
      const auto& to = session.room.sheets[static_cast<std::size_t>(j)];
      const double mm = (room_from_page(from, 0.5 * from.paper) - room_from_page(to, 0.5 * to.paper)).norm();
      if (mm > longest.mm) longest = {i, j, mm};
    }
  const double error = dice.normal(options.tape_sigma);
  if (longest.mm > 0.0) session.tape = Tape{longest.from, longest.to, longest.mm + error};
}

}  // namespace

Session random_session(std::uint64_t seed, const RoomOptions& options) {
  if (options.pages.empty()) throw std::invalid_argument("a random session needs the pages of its sheets");
  // Each part has dice of its own, so that a change to one leaves the others as they were.
  const auto dice_for = [&](std::uint64_t part) {
    return Dice(Dice(seed * 0x9e3779b97f4a7c15ull + part).bits());
  };
  Session session;
  session.fault = options.fault;
  Dice projector_dice = dice_for(1), mat_dice = dice_for(2), sheet_dice = dice_for(3),
       light_dice = dice_for(4), camera_dice = dice_for(5), file_dice = dice_for(6), fault_dice = dice_for(7),
       tape_dice = dice_for(8);
  session.room.projector = draw_projector(projector_dice, options);
  session.room.mat = draw_mat(mat_dice, session.room.projector);
  session.room.sheets = draw_sheets(sheet_dice, options, session.room.projector);
  session.room.sheets.back().thickness += options.board;
  session.room.light = draw_light(light_dice, options);

  const RoomCamera phone = draw_camera(camera_dice, options);
  const std::vector<RoomCamera> poses = draw_poses(camera_dice, options, phone, session.room,
                                                   options.target_photographs + options.plain_photographs);
  std::vector<bool> targets(poses.size(), false);
  std::fill(targets.begin(), targets.begin() + options.target_photographs, true);
  for (std::size_t i = targets.size(); i > 1; --i) {
    const auto other = static_cast<std::size_t>(file_dice.below(static_cast<int>(i)));
    const bool kept = targets[i - 1];
    targets[i - 1] = targets[other];
    targets[other] = kept;
  }
  const PhotographFile file = draw_file(file_dice, options, phone);
  for (std::size_t i = 0; i < poses.size(); ++i) {
    Shot shot{session.room, poses[i], targets[i], file, file_dice.bits()};
    if (options.turned_files) shot.file.orientation = orientation_of(poses[i]);
    session.shots.push_back(shot);
  }
  measure(tape_dice, options, session);
  bring_fault(fault_dice, options, session);
  return session;
}

}  // namespace cowlcast::calibration::virtual_table
