#include "calibration/watch/edge_tags.h"

#include <cairo-pdf.h>
#include <cairo.h>

#include <memory>
#include <opencv2/imgproc.hpp>
#include <stdexcept>

#include "calibration/detect/markers.h"
#include "calibration/refusal.h"

namespace cowlcast::calibration {
namespace {

constexpr double kPointsPerMm = 72.0 / 25.4;
constexpr double kPaperSide = kEdgeTagSide + 2.0 * kEdgeTagRim;
constexpr int kColumns = 4, kRows = 3;
static_assert(kColumns * kRows == kEdgeTags);

struct Destroy {
  void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
  void operator()(cairo_t* c) const { cairo_destroy(c); }
};

void check_number(int tag) {
  if (tag < 1 || tag > kEdgeTags)
    throw Refusal("There are edge tags 1 to " + std::to_string(kEdgeTags) +
                  ". Ask for a number in that range.");
}

// A tag with its rim, its upper left corner at (x, y), mm.
void draw_tag(cairo_t* c, int tag, double x, double y) {
  const int side = marker_side(MarkerFamily::paper);
  const double cell = kEdgeTagSide / side;
  const cv::Mat cells = marker_cells(MarkerFamily::paper, edge_tag_code(tag));
  for (int i = 0; i < side; ++i)
    for (int j = 0; j < side; ++j)
      if (cells.at<unsigned char>(i, j) == 0)
        cairo_rectangle(c, x + kEdgeTagRim + j * cell, y + kEdgeTagRim + i * cell, cell, cell);
  cairo_fill(c);  // one fill: no seams between its cells
  cairo_set_line_width(c, 0.15);
  cairo_rectangle(c, x, y, kPaperSide, kPaperSide);
  cairo_stroke(c);
  cairo_set_font_size(c, 3.6);
  cairo_move_to(c, x + 2.0, y + kPaperSide - 2.5);
  cairo_show_text(c, std::to_string(tag).c_str());
}

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

int edge_tag_code(int tag) {
  check_number(tag);
  const int after_sheets = 2 * kMostSheets * sheet_layout(Paper::a4).marker_count();
  return after_sheets + tag - 1;
}

std::optional<int> edge_tag(int code) {
  const int tag = code - edge_tag_code(1) + 1;
  if (tag < 1 || tag > kEdgeTags) return std::nullopt;
  return tag;
}

std::string edge_tags_pdf(Paper paper) {
  const SheetLayout page = sheet_layout(paper);
  std::string bytes;
  const std::unique_ptr<cairo_surface_t, Destroy> surface(cairo_pdf_surface_create_for_stream(
      append, &bytes, page.page_width * kPointsPerMm, page.page_height * kPointsPerMm));
  const std::unique_ptr<cairo_t, Destroy> context(cairo_create(surface.get()));
  cairo_t* c = context.get();
  cairo_scale(c, kPointsPerMm, kPointsPerMm);
  cairo_set_source_rgb(c, 0, 0, 0);
  cairo_select_font_face(c, "sans-serif", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(c, 4.2);
  cairo_move_to(c, 22.0, 14.0);
  cairo_show_text(
      c, "Cowlcast edge tags.  Cut along the lines and glue eight or more flat around the mat's edge,");
  cairo_move_to(c, 22.0, 20.0);
  cairo_show_text(c, "where the camera sees them and no blade goes. They stay there.");
  const double gap = 2.0;
  const double left = 0.5 * (page.page_width - kColumns * kPaperSide - (kColumns - 1) * gap), top = 24.0;
  for (int tag = 1; tag <= kEdgeTags; ++tag)
    draw_tag(c, tag, left + (tag - 1) % kColumns * (kPaperSide + gap),
             top + (tag - 1) / kColumns * (kPaperSide + gap));
  cairo_show_page(c);
  cairo_surface_finish(surface.get());
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error("the edge tags could not be drawn");
  return bytes;
}

cv::Mat edge_tag_picture(int tag, double pixels_per_mm) {
  check_number(tag);
  const int cell = std::max(1, cvRound(kEdgeTagSide * pixels_per_mm / marker_side(MarkerFamily::paper)));
  const int rim = cvRound(kEdgeTagRim * pixels_per_mm);
  cv::Mat cells, out;
  cv::resize(marker_cells(MarkerFamily::paper, edge_tag_code(tag)), cells, {}, cell, cell, cv::INTER_NEAREST);
  cv::copyMakeBorder(cells, out, rim, rim, rim, rim, cv::BORDER_CONSTANT, cv::Scalar(255));
  return out;
}

}  // namespace cowlcast::calibration
