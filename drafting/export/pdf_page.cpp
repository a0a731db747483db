#include "drafting/export/pdf_page.h"

#include <cairo-pdf.h>

#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

cairo_status_t keep(void* bytes, const unsigned char* data, unsigned int size) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

PdfSheet::PdfSheet(double width_mm, double height_mm)
    : surface_(cairo_pdf_surface_create_for_stream(keep, &bytes_, width_mm * points_per_mm,
                                                   height_mm * points_per_mm)),
      cairo_(cairo_create(surface_)) {
  cairo_scale(cairo_, points_per_mm, points_per_mm);
  cairo_set_line_join(cairo_, CAIRO_LINE_JOIN_ROUND);
  cairo_select_font_face(cairo_, "sans-serif", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
}

PdfSheet::~PdfSheet() {
  if (cairo_ != nullptr) cairo_destroy(cairo_);
  if (surface_ != nullptr) cairo_surface_destroy(surface_);
}

void PdfSheet::next_page(double width_mm, double height_mm) {
  cairo_show_page(cairo_);
  cairo_pdf_surface_set_size(surface_, width_mm * points_per_mm, height_mm * points_per_mm);
}

void PdfSheet::line(const Polyline& points, bool closed, double width_mm, const std::vector<double>& dashes) {
  cairo_new_path(cairo_);
  for (const Point& p : points) cairo_line_to(cairo_, p.x(), p.y());
  if (closed) cairo_close_path(cairo_);
  cairo_set_source_rgb(cairo_, 0, 0, 0);
  cairo_set_line_width(cairo_, width_mm);
  cairo_set_dash(cairo_, dashes.data(), static_cast<int>(dashes.size()), 0.0);
  cairo_stroke(cairo_);
}

void PdfSheet::fill(const Polyline& points, double grey) {
  cairo_new_path(cairo_);
  for (const Point& p : points) cairo_line_to(cairo_, p.x(), p.y());
  cairo_set_source_rgb(cairo_, grey, grey, grey);
  cairo_fill(cairo_);
}

void PdfSheet::text(const Point& at, const std::string& words, double size_mm) {
  cairo_set_source_rgb(cairo_, 0, 0, 0);
  cairo_set_font_size(cairo_, size_mm);
  cairo_move_to(cairo_, at.x(), at.y());
  cairo_show_text(cairo_, words.c_str());
}

void PdfSheet::clip(double x, double y, double width, double height) {
  cairo_save(cairo_);
  cairo_rectangle(cairo_, x, y, width, height);
  cairo_clip(cairo_);
}

void PdfSheet::unclip() {
  cairo_restore(cairo_);
}

std::string PdfSheet::finish() {
  cairo_destroy(cairo_);
  cairo_ = nullptr;
  cairo_surface_finish(surface_);
  const cairo_status_t status = cairo_surface_status(surface_);
  cairo_surface_destroy(surface_);
  surface_ = nullptr;
  if (status != CAIRO_STATUS_SUCCESS) {
    throw Refusal(std::string("The PDF could not be made (") + cairo_status_to_string(status) +
                  "). Try again with fewer pieces.");
  }
  return std::move(bytes_);
}

}  // namespace cowlcast::drafting
