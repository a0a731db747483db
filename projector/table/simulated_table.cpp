#include "projector/table/simulated_table.h"

#include <cmath>
#include <utility>

#include "calibration/sheet/sheet.h"
#include "calibration/target/target.h"
#include "calibration/virtual_table/top_view.h"
#include "calibration/virtual_table/truth.h"
#include "drafting/geometry/polyline.h"
#include "projector/frame/png.h"
#include "projector/frame/render.h"

namespace cowlcast::projector {
namespace {

namespace room_model = calibration::virtual_table;

constexpr int kSheets = 4;
constexpr std::uint64_t kRoom = 5;  // which of the random rooms; gentle as a good living room
constexpr double kHardness = 0.3, kAround = 40.0;

Eigen::Isometry2d room_from_mat(const calibration::TableMap& map,
                                const room_model::RoomProjector& projector) {
  std::vector<Eigen::Vector2d> from, to;
  for (int i = 0; i <= 12; ++i)
    for (int j = 0; j <= 8; ++j) {
      const Eigen::Vector2d pixel(i * (map.width - 1) / 12.0, j * (map.height - 1) / 8.0);
      if (const auto truth = room_model::mat_from_projector(projector, pixel)) {
        from.push_back(map.mat_from_projector(pixel));
        to.push_back(*truth);
      }
    }
  return room_model::rigid_fit(from, to);
}

room_model::Colour albedo_of(unsigned colour) {
  const auto linear = [](unsigned byte) {  // IEC 61966-2-1
    const double c = byte / 255.0;
    return static_cast<float>(c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4));
  };
  return {linear(colour >> 16 & 0xffu), linear(colour >> 8 & 0xffu), linear(colour & 0xffu)};
}

}  // namespace

SimulatedTable simulated_table(std::vector<cv::Mat> pages) {
  for (int number = 1; pages.size() < kSheets; ++number)
    pages.push_back(calibration::sheet_page(calibration::Paper::a4, number));
  room_model::RoomOptions options{.pages = std::move(pages)};
  options.hardness = kHardness;
  return {room_model::random_session(kRoom, options)};
}

SimulatedTable bare_simulated_table() {
  return simulated_table(std::vector<cv::Mat>(kSheets));
}

double tape_on_simulated_table(const calibration::TableMap& map, const Point& from, const Point& to) {
  const room_model::RoomProjector projector = bare_simulated_table().session.room.projector;
  const auto there = [&](const Point& drawn) {
    return room_model::mat_from_projector(projector, map.projector_from_mat(drawn)).value_or(drawn);
  };
  return (there(from) - there(to)).norm();
}

int photograph_count(const SimulatedTable& table) {
  return static_cast<int>(table.session.shots.size());
}

std::vector<unsigned char> photograph_file(const SimulatedTable& table, int index) {
  const room_model::Shot& shot = table.session.shots.at(static_cast<size_t>(index));
  const int width = shot.room.projector.width, height = shot.room.projector.height;
  const cv::Mat shown =
      shot.target ? calibration::target_picture(width, height) : calibration::plain_picture(width, height);
  return room_model::encode_photograph(room_model::photograph(shot.room, shot.camera, shown, shot.seed),
                                       shot.file);
}

calibration::CalibrationRequest request_for(const SimulatedTable& table) {
  const auto read = [](double mm) { return std::round(mm * 10.0) / 10.0; };
  const room_model::Room& room = table.session.room;
  calibration::CalibrationRequest request;
  request.width = room.projector.width;
  request.height = room.projector.height;
  request.rulers = calibration::Rulers{read(calibration::kRulerAcross * room.sheets.front().across),
                                       read(calibration::kRulerDown * room.sheets.front().down)};
  return request;
}

SimulatedCloth cloth_for(const drafting::Piece& piece, const Laying& laying, double around) {
  Laying straight = laying;
  straight.x = straight.y = straight.angle = 0.0;
  drafting::Box box = drafting::box_of(laid(straight, piece.cut_line));
  const drafting::Box close = box;
  box.low -= Point::Constant(around);
  box.high += Point::Constant(around);
  if (piece.fold) {  // upright, as the centre of a piece is
    const double fold = laid(straight, {piece.fold->from}).front().x();
    const bool left = fold - close.low.x() < close.high.x() - fold;
    (left ? box.low : box.high).x() = fold;
  }
  const Eigen::Rotation2Dd turn(laying.angle);
  return {.middle = turn * Point(0.5 * (box.low + box.high)) + Point(laying.x, laying.y),
          .size = box.high - box.low,
          .turn = laying.angle,
          .height = laying.height};
}

room_model::Cloth laid_on(const SimulatedTable& table, const calibration::TableMap& map,
                          const SimulatedCloth& cloth) {
  const Eigen::Isometry2d to_room = room_from_mat(map, table.session.room.projector);
  const Point middle = to_room * cloth.middle;
  const double turn = std::atan2(to_room.linear()(1, 0), to_room.linear()(0, 0));
  room_model::Cloth out{
      .size = cloth.size, .place = {middle.x(), middle.y(), turn + cloth.turn}, .height = cloth.height};
  out.albedo = albedo_of(cloth.colour);
  return out;
}

QImage seen_from_above(const SimulatedTable& table, const calibration::TableMap& map, const QImage& frame,
                       const SimulatedCloth& cloth, double pixels_per_mm) {
  room_model::Room room = table.session.room;
  room.sheets.clear();
  room.light.lux *= cloth.room_light;
  room.cloth = laid_on(table, map, cloth);
  Polyline lit = room_model::lit_outline(room.projector);
  if (lit.empty()) lit = map.lit_area;
  const drafting::Box box = drafting::box_of(lit);
  const room_model::TopView view{box.low.x() - kAround, box.low.y() - kAround, box.width() + 2.0 * kAround,
                                 box.height() + 2.0 * kAround, pixels_per_mm};
  return image_from(room_model::top_view(room, view, bgr_from(frame)));
}

room_model::ReadBack line_on_cloth(const SimulatedTable& table, const calibration::TableMap& map,
                                   const Polyline& line, bool closed, double height) {
  const room_model::RoomProjector& projector = table.session.room.projector;
  const cv::Mat frame = bgr_from(rendered(map, {{.lines = {line}, .closed = closed}}, height));
  const Eigen::Isometry2d to_room = room_from_mat(map, projector);
  Polyline truth;
  for (const Point& point : line) truth.push_back(to_room * point);
  room_model::ReadBackOptions options;
  options.height = height;
  options.closed = closed;
  return room_model::read_back(projector, frame, truth, options);
}

}  // namespace cowlcast::projector
