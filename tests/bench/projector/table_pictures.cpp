// Pictures to look at: the cutting view on cloths of several colours, as seen on a simulated table.
//
//   table_pictures table.json front.json OUT     (table and front as `cowlcast demo` leaves them)
#include <QGuiApplication>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <numbers>
#include <opencv2/imgcodecs.hpp>
#include <string>

#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/top_view.h"
#include "calibration/virtual_table/truth.h"
#include "drafting/geometry/polyline.h"
#include "projector/cutting/view.h"

using namespace cowlcast;
namespace room_model = calibration::virtual_table;

namespace {

std::string text_of(const char* path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

float linear(int value) {
  return static_cast<float>(std::pow(value / 255.0, 2.2));
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 4) {
    std::fputs("Usage: table_pictures table.json front.json OUT\n", stderr);
    return 2;
  }
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication application(argc, argv);
  const auto map = calibration::TableMap::from_json(text_of(argv[1]));
  const drafting::Piece piece = drafting::piece_from_json(text_of(argv[2]));

  room_model::RoomOptions options{.pages = std::vector<cv::Mat>(4)};
  options.hardness = 0.3;
  room_model::Room room = room_model::random_session(5, options).room;
  room.sheets.clear();

  projector::Laying laying{.angle = 0.5 * std::numbers::pi, .height = 1.0};
  const drafting::Box lit = drafting::box_of(projector::lit_outline(map, 1.0));
  const drafting::Box lain = drafting::box_of(projector::laid(laying, piece.cut_line));
  const projector::Point shift = 0.5 * (lit.low + lit.high) - 0.5 * (lain.low + lain.high);
  laying.x = shift.x();
  laying.y = shift.y();

  struct Named {
    const char* name;
    unsigned colour;
  };
  for (const Named& cloth : {Named{"black", 0xff181818}, Named{"white", 0xfff0f0ec}, Named{"red", 0xffb01828},
                             Named{"navy", 0xff1c284c}, Named{"yellow", 0xffe8c83c}}) {
    room.cloth = room_model::Cloth{
        .size = {1150, 640},
        .place = {0, 0, 0},
        .height = 1.0,
        .albedo = {linear(qRed(cloth.colour)), linear(qGreen(cloth.colour)), linear(qBlue(cloth.colour))}};
    projector::CuttingView view =
        projector::new_view(piece, projector::cuts_of(projector::cut_runs(piece), projector::Blade{}, {}),
                            laying, projector::style_for_cloth(cloth.colour));
    const drafting::Box mat = drafting::box_of(room_model::lit_outline(room.projector));
    const room_model::TopView top{mat.low.x(), mat.low.y(), mat.width(), mat.height(), 1.3};
    for (int stroke = -1; stroke < static_cast<int>(view.plan.size()); stroke += 2) {
      view.phase = stroke < 0 ? projector::Phase::laying : projector::Phase::cutting;
      view.cut = std::max(0, stroke);
      const QImage frame = projector::rendered(map, projector::view_marks(view, map), laying.height)
                               .convertToFormat(QImage::Format_BGR888);
      const cv::Mat picture(frame.height(), frame.width(), CV_8UC3, const_cast<uchar*>(frame.constBits()),
                            static_cast<size_t>(frame.bytesPerLine()));
      cv::imwrite(std::string(argv[3]) + "/" + cloth.name + "-" + std::to_string(stroke + 1) + ".png",
                  room_model::top_view(room, top, picture));
      if (cloth.name == std::string("black"))
        cv::imwrite(std::string(argv[3]) + "/frame-" + std::to_string(stroke + 1) + ".png", picture);
    }
  }
  return 0;
}
