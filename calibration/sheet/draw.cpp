#include <cairo-pdf.h>
#include <cairo.h>

#include <cmath>
#include <memory>

#include "calibration/detect/markers.h"
#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"

namespace cowlcast::calibration {
namespace {

constexpr double kPointsPerMm = 72.0 / 25.4;
constexpr double kThin = 0.2, kThick = 0.4;  // line widths, mm
constexpr double kText = 4.2;                // size of the plain-words lines, mm
constexpr double kSmallText = 3.2;           // size of what is said about the rulers, mm

struct Destroy {
  void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
  void operator()(cairo_t* c) const { cairo_destroy(c); }
};
using Surface = std::unique_ptr<cairo_surface_t, Destroy>;
using Context = std::unique_ptr<cairo_t, Destroy>;

// Page coordinates here: mm from the page's upper left corner, y down.
void square(cairo_t* c, double left, double top, double side) {
  cairo_rectangle(c, left, top, side, side);
}

void line(cairo_t* c, double x0, double y0, double x1, double y1, double width) {
  cairo_set_line_width(c, width);
  cairo_move_to(c, x0, y0);
  cairo_line_to(c, x1, y1);
  cairo_stroke(c);
}

void text(cairo_t* c, double x, double y, double size, const std::string& words) {
  cairo_set_font_size(c, size);
  cairo_move_to(c, x, y);
  cairo_show_text(c, words.c_str());
}

void draw_board(cairo_t* c, const SheetLayout& layout, Paper paper, int number) {
  const double left = 0.5 * layout.page_width + layout.board.x();
  const double top = 0.5 * layout.page_height - layout.board.y() - layout.square * layout.rows;
  for (int row = 0; row < layout.rows; ++row)
    for (int column = 0; column < layout.columns; ++column)
      if ((row + column) % 2 == 1)
        square(c, left + column * layout.square, top + row * layout.square, layout.square);
  cairo_fill(c);
  const int side = marker_side(MarkerFamily::paper);
  const double cell = layout.marker / side;
  for (int slot = 0; slot < layout.marker_count(); ++slot) {
    const cv::Mat cells = marker_cells(MarkerFamily::paper, marker_code({paper, number, slot}));
    const Eigen::Vector2d corner = layout.marker_corners(slot)[0];
    const double x = 0.5 * layout.page_width + corner.x(), y = 0.5 * layout.page_height - corner.y();
    for (int i = 0; i < side; ++i)
      for (int j = 0; j < side; ++j)
        if (cells.at<unsigned char>(i, j) == 0) square(c, x + j * cell, y + i * cell, cell);
    cairo_fill(c);  // one fill a marker: no seams between its cells
  }
}

// A ruler from (x, y): along +x, or up the page. End ticks are its exact ends.
void draw_ruler(cairo_t* c, double x, double y, double length, bool upright) {
  cairo_save(c);
  cairo_translate(c, x, y);
  if (upright) cairo_rotate(c, -M_PI / 2.0);
  line(c, 0, 0, length, 0, kThin);
  const double inward = upright ? 1.0 : -1.0;
  for (int mm = 0; mm <= static_cast<int>(length); mm += 10) {
    const bool end = mm == 0 || mm == static_cast<int>(length);
    line(c, mm, 0, mm, inward * (end ? 4.0 : mm % 50 == 0 ? 3.0 : 2.0), kThin);
  }
  cairo_restore(c);
}

void draw_sheet(cairo_t* c, Paper paper, int number) {
  const SheetLayout layout = sheet_layout(paper);
  const double width = layout.page_width, height = layout.page_height;
  cairo_set_source_rgb(c, 1, 1, 1);
  cairo_paint(c);
  cairo_set_source_rgb(c, 0, 0, 0);
  cairo_select_font_face(c, "sans-serif", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  draw_board(c, layout, paper, number);
  line(c, 0.5 * width - 8, 0.5 * height, 0.5 * width + 8, 0.5 * height, kThick);
  line(c, 0.5 * width, 0.5 * height - 8, 0.5 * width, 0.5 * height + 8, kThick);

  const double across_left = 0.5 * (width - kRulerAcross), across_y = height - 14.0;
  draw_ruler(c, across_left, across_y, kRulerAcross, false);
  text(c, across_left + 62.0, across_y + 5.0, kSmallText,
       "This ruler: 240 mm from end tick to end tick, as designed.");
  const double down_foot = 0.5 * (height + kRulerDown);
  draw_ruler(c, 7.0, down_foot, kRulerDown, true);
  // Words keep 3 mm off the board and 2 mm off the rulers' ticks.
  text(c, 22.0, 30.0, kSmallText, "Ruler at the left edge: 180 mm from end tick to end tick, as designed.");
  text(
      c, across_left, across_y - 7.0, kSmallText,
      "Measure both rulers of one sheet on the paper with a steel rule, to a tenth of a millimetre: printers "
      "stretch.");

  const std::string name = paper == Paper::a4 ? "A4" : "Letter";
  text(c, 22.0, 17.0, kText,
       "Cowlcast sheet " + std::to_string(number) + ", " + name +
           ".  Print at 100 % (actual size), one side, plain paper.");
  text(c, 22.0, 23.5, kText,
       "Lay it flat on the mat, anywhere in the light, and leave it there for all photographs.");
}

void check_number(int number) {
  if (number < 1 || number > kMostSheets)
    throw Refusal("There are sheets 1 to " + std::to_string(kMostSheets) +
                  ". Ask for a number in that range.");
}

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

std::string sheets_pdf(Paper paper, int count) {
  check_number(count);
  const SheetLayout layout = sheet_layout(paper);
  std::string bytes;
  const Surface surface(cairo_pdf_surface_create_for_stream(append, &bytes, layout.page_width * kPointsPerMm,
                                                            layout.page_height * kPointsPerMm));
  const Context context(cairo_create(surface.get()));
  cairo_scale(context.get(), kPointsPerMm, kPointsPerMm);
  for (int number = 1; number <= count; ++number) {
    draw_sheet(context.get(), paper, number);
    cairo_show_page(context.get());
  }
  cairo_surface_finish(surface.get());
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error("the sheets could not be drawn");
  return bytes;
}

cv::Mat sheet_page(Paper paper, int number, double dots_per_inch) {
  check_number(number);
  const SheetLayout layout = sheet_layout(paper);
  const double scale = dots_per_inch / 25.4;
  const int width = static_cast<int>(std::lround(layout.page_width * scale));
  const int height = static_cast<int>(std::lround(layout.page_height * scale));
  const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height));
  const Context context(cairo_create(surface.get()));
  cairo_scale(context.get(), scale, scale);
  draw_sheet(context.get(), paper, number);
  cairo_surface_flush(surface.get());
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error("the sheet could not be drawn");
  const cv::Mat view(height, width, CV_8UC4, cairo_image_surface_get_data(surface.get()),
                     static_cast<size_t>(cairo_image_surface_get_stride(surface.get())));
  cv::Mat page;
  cv::extractChannel(view, page, 1);
  return page;
}

}  // namespace cowlcast::calibration
