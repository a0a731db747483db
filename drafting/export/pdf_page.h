// PdfSheet: drawing in millimetres on PDF pages, by Cairo.
#pragma once

#include <cairo.h>

#include <string>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

inline constexpr double points_per_mm = 72.0 / 25.4;

/// A PDF being written: pages in mm, origin at the top left, y down.
class PdfSheet {
 public:
  PdfSheet(double width_mm, double height_mm);
  ~PdfSheet();
  PdfSheet(const PdfSheet&) = delete;
  PdfSheet& operator=(const PdfSheet&) = delete;

  /// Starts another page; the first is there already.
  void next_page(double width_mm, double height_mm);
  void line(const Polyline& points, bool closed, double width_mm, const std::vector<double>& dashes = {});
  void fill(const Polyline& points, double grey);
  void text(const Point& at, const std::string& words, double size_mm);
  void clip(double x, double y, double width, double height);
  void unclip();

  /// The file; the sheet is closed after. Throws Refusal when Cairo failed.
  std::string finish();

 private:
  std::string bytes_;
  cairo_surface_t* surface_;
  cairo_t* cairo_;
};

}  // namespace cowlcast::drafting
