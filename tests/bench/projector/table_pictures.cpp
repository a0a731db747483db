// Pictures to look at: the cutting view on cloths of several colours, as seen on a simulated table by day and
// in a dim room.
//
//   table_pictures OUT [WIDTHxHEIGHT] [PIECE.json]
#include <QGuiApplication>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <string>

#include "calibration/virtual_table/top_view.h"
#include "drafting/geometry/polyline.h"
#include "projector/cutting/view_marks.h"
#include "tests/bench/projector/scene.h"

using namespace cowlcast;
using namespace cowlcast::projector;
namespace room_model = calibration::virtual_table;

namespace {

// Checks 24 mm wide, as a gingham has them; one colour is plain cloth.
cv::Mat cloth_picture(const std::vector<QRgb>& colours, const cv::Size& mm) {
  // A sheet's picture is how much light it sends back, linear.
  const auto linear = [](int value) { return 255.0 * std::pow(value / 255.0, 2.2); };
  const auto bgr = [&](QRgb c) { return cv::Scalar(linear(qBlue(c)), linear(qGreen(c)), linear(qRed(c))); };
  cv::Mat picture(mm, CV_8UC3, bgr(colours.front()));
  const int check = 24;
  for (int y = 0; colours.size() > 1 && y < mm.height; y += check)
    for (int x = 0; x < mm.width; x += check)
      cv::rectangle(picture, cv::Rect(x, y, check, check) & cv::Rect({0, 0}, mm),
                    bgr(colours[static_cast<size_t>(x / check + y / check) % colours.size()]), cv::FILLED);
  return picture;
}

}  // namespace

int main(int argc, char** argv) {
  int width = 1920, height = 1080;
  if (argc < 2 || argc > 4 || (argc > 2 && std::sscanf(argv[2], "%dx%d", &width, &height) != 2)) {
    std::fputs("Usage: table_pictures OUT [WIDTHxHEIGHT] [PIECE.json]\n", stderr);
    return 2;
  }
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication application(argc, argv);
  drafting::Piece piece = testing::cowl_front();
  if (argc > 3) {
    std::ifstream in(argv[3], std::ios::binary);
    piece = drafting::piece_from_json(std::string(std::istreambuf_iterator<char>(in), {}));
    if (piece.mirror) piece = drafting::unfolded(piece);
  }
  const std::string out = argv[1];
  std::filesystem::create_directories(out);
  testing::TrueTable table = testing::true_table(5, {width, height}, 0.3);
  const drafting::Box lit = drafting::box_of(lit_outline(table.map, 1.0));
  const room_model::TopView top{lit.low.x(), lit.low.y(), lit.width(), lit.height(), 1.3};

  struct Named {
    std::string name;
    std::vector<QRgb> colours;
  };
  for (const Named& cloth :
       {Named{"black", {0xff181818}}, Named{"white", {0xfff0f0ec}}, Named{"red", {0xffb01828}},
        Named{"navy", {0xff1c284c}}, Named{"pattern", {0xff1c284c, 0xfff0f0ec}}}) {
    const int across = static_cast<int>(lit.width()) - 20, down = static_cast<int>(lit.height()) - 20;
    room_model::PaperSheet fabric;  // a printed sheet as large as the light
    fabric.page = cloth_picture(cloth.colours, {across, down});
    fabric.pixel_mm = 1.0;
    fabric.paper = {across, down};
    fabric.thickness = 1.0;
    const Point middle = 0.5 * (lit.low + lit.high);
    fabric.place = {middle.x(), middle.y(), 0.0};
    fabric.paper_albedo = {1.0f, 1.0f, 1.0f};
    fabric.ink_albedo = {0.01f, 0.01f, 0.01f};
    table.room.sheets = {fabric};
    const int strokes = static_cast<int>(bench::demo_view(table, piece, cloth.colours, 0).plan.size());
    for (const bool dim : {false, true})
      for (int stroke = 0; stroke <= strokes; ++stroke) {
        if ((dim || cloth.name != "black") && stroke > 2) continue;
        table.room.light.lux = dim ? 15.0 : 150.0;
        const CuttingView view = bench::demo_view(table, piece, cloth.colours, stroke);
        const QImage frame =
            rendered(table.map, view_marks(view, table.map), 1.0).convertToFormat(QImage::Format_BGR888);
        const cv::Mat picture(frame.height(), frame.width(), CV_8UC3, const_cast<uchar*>(frame.constBits()),
                              static_cast<size_t>(frame.bytesPerLine()));
        const std::string name = cloth.name + (dim ? "-dim-" : "-") + std::to_string(stroke) + ".png";
        cv::imwrite(out + "/" + name, room_model::top_view(table.room, top, picture));
        if (!dim && cloth.name == "black")
          cv::imwrite(out + "/frame-" + std::to_string(stroke) + ".png", picture);
      }
  }
  return 0;
}
