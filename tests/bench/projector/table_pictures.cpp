// Pictures to look at: the cutting view on cloths of several colours, as seen on a simulated table by day and
// in a dim room; and for each how the strokes of its words stand out, as contrasts by WCAG 2.2.
//
//   table_pictures OUT [WIDTHxHEIGHT] [PIECE.json]
#include <QGuiApplication>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <string>

#include "calibration/virtual_table/photograph.h"
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

// Linear light of the table from far above, white paper in the projector's light being about 1.
cv::Mat linear_view(const room_model::Room& room, const room_model::TopView& top, const cv::Mat& picture) {
  constexpr double kHigh = 1e4;  // mm
  room_model::RoomCamera camera;
  camera.width = static_cast<int>(top.width * top.pixels_per_mm);
  camera.height = static_cast<int>(top.height * top.pixels_per_mm);
  Eigen::Isometry3d room_from_camera = Eigen::Isometry3d::Identity();
  room_from_camera.linear() = Eigen::Vector3d(1.0, -1.0, -1.0).asDiagonal();
  room_from_camera.translation() =
      Eigen::Vector3d(top.left + 0.5 * top.width, top.bottom + 0.5 * top.height, kHigh);
  camera.camera_from_room = room_from_camera.inverse();
  camera.optic.focal = Eigen::Vector2d::Constant(kHigh * top.pixels_per_mm);
  camera.optic.centre = {0.5 * camera.width - 0.5, 0.5 * camera.height - 0.5};
  camera.blur = 0.0;
  return room_model::linear_photograph(room, camera, picture);
}

double luminance(const cv::Vec3f& bgr) {
  return 0.0722 * bgr[0] + 0.7152 * bgr[1] + 0.2126 * bgr[2];
}

// Words are filled marks of many outlines.
bool is_words(const Mark& mark) {
  return mark.width <= 0.0 && mark.lines.size() > 3;
}

cv::Mat picture_of(const QImage& frame) {
  const QImage same = frame.convertToFormat(QImage::Format_BGR888);
  return cv::Mat(same.height(), same.width(), CV_8UC3, const_cast<uchar*>(same.constBits()),
                 static_cast<size_t>(same.bytesPerLine()))
      .clone();
}

// For each of the cloth's colours: the light of words' strokes over that of the same places without words.
void tell_words(const std::string& name, const testing::TrueTable& table, const room_model::TopView& top,
                const std::vector<Mark>& marks, const std::vector<QRgb>& colours) {
  std::vector<Mark> others;
  std::copy_if(marks.begin(), marks.end(), std::back_inserter(others),
               [](const Mark& mark) { return !is_words(mark); });
  const cv::Mat with = linear_view(table.room, top, picture_of(rendered(table.map, marks, 1.0))),
                without = linear_view(table.room, top, picture_of(rendered(table.map, others, 1.0))),
                white = linear_view(table.room, top,
                                    cv::Mat(table.map.height, table.map.width, CV_8U, cv::Scalar(255)));
  cv::Mat strokes = cv::Mat::zeros(with.size(), CV_8U);
  for (const Mark& mark : marks) {
    if (!is_words(mark)) continue;
    std::vector<std::vector<cv::Point>> outlines;
    for (const Polyline& line : mark.lines) {
      outlines.emplace_back();
      for (const Point& at : line)
        outlines.back().emplace_back(
            static_cast<int>(16.0 * ((at.x() - top.left) * top.pixels_per_mm - 0.5)),
            static_cast<int>(16.0 * ((top.bottom + top.height - at.y()) * top.pixels_per_mm - 0.5)));
    }
    cv::fillPoly(strokes, outlines, cv::Scalar(255), cv::LINE_8, 4);
  }
  // A place's colour by what it sends back of white light.
  struct Sum {
    double with = 0.0, without = 0.0, white = 0.0;
    int count = 0;
  };
  double brightest = 0.0;
  for (int y = 0; y < white.rows; ++y)
    for (int x = 0; x < white.cols; ++x)
      brightest = std::max(brightest, luminance(white.at<cv::Vec3f>(y, x)));
  Sum sums[2];
  for (int y = 0; y < strokes.rows; ++y)
    for (int x = 0; x < strokes.cols; ++x) {
      if (strokes.at<uchar>(y, x) == 0) continue;
      const double lit = luminance(white.at<cv::Vec3f>(y, x));
      Sum& sum = sums[colours.size() > 1 && lit < 0.2 * brightest ? 1 : 0];
      sum.with += luminance(with.at<cv::Vec3f>(y, x));
      sum.without += luminance(without.at<cv::Vec3f>(y, x));
      sum.white += lit;
      ++sum.count;
    }
  const auto contrast = [](double a, double b, double full) { return (a / full + 0.05) / (b / full + 0.05); };
  std::printf("%-22s", name.c_str());
  for (const Sum& sum : sums) {
    if (sum.count == 0) continue;
    const double n = sum.count;
    std::printf("  %s %5.2f:1 to an eye set to it, %5.2f:1 to one set to white, %4.0f mm2 of strokes;",
                &sum == sums ? "light" : "dark", contrast(sum.with, sum.without, sum.white),
                contrast(sum.with / n, sum.without / n, brightest),
                n / (top.pixels_per_mm * top.pixels_per_mm));
  }
  if (sums[1].count > 0)
    std::printf("  strokes on dark over unlit light %.2f",
                sums[1].with / sums[1].count / (sums[0].without / sums[0].count));
  std::printf("\n");
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
        const std::vector<Mark> marks = view_marks(view, table.map);
        const cv::Mat picture = picture_of(rendered(table.map, marks, 1.0));
        const std::string name = cloth.name + (dim ? "-dim-" : "-") + std::to_string(stroke);
        cv::imwrite(out + "/" + name + ".png", room_model::top_view(table.room, top, picture));
        if (stroke == 1) tell_words(name, table, top, marks, cloth.colours);
        if (!dim && cloth.name == "black")
          cv::imwrite(out + "/frame-" + std::to_string(stroke) + ".png", picture);
      }
  }
  return 0;
}
