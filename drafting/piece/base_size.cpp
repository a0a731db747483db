#include "drafting/piece/base_size.h"

#include <cstdio>

#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

constexpr double inch = 25.4;
constexpr double least_girth = 31.125 * inch * 0.9, most_girth = 46.0 * inch * 1.2;  // mm
constexpr double least_neck = 45.0, most_neck = 100.0;                               // mm

std::string cm_and_in(double mm) {
  char text[64];
  std::snprintf(text, sizeof text, "%.1f cm (%.1f in)", mm / 10.0, mm / inch);
  return text;
}

}  // namespace

BaseSize size_of_base(const Piece& base) {
  const Box box = box_of(base.seam_line);
  const Point neck = edge_of(base, "shoulder").points.back();
  return {box.width(), neck.y() - box.low.y(), 2.0 * edge_of(base, "armhole").points.front().x(), neck.x()};
}

std::string base_size_in_words(const Piece& base) {
  const BaseSize size = size_of_base(base);
  return base.name + ": half " + cm_and_in(size.width) + " wide, " + cm_and_in(size.length) +
         " long; whole " + cm_and_in(size.chest) + " across from underarm to underarm";
}

std::vector<std::string> base_size_cautions(const Piece& base) {
  const BaseSize size = size_of_base(base);
  std::vector<std::string> cautions;
  if (2.0 * size.chest < least_girth || 2.0 * size.chest > most_girth) {
    cautions.push_back("The " + base.name + " measures " + cm_and_in(size.chest) +
                       " across from underarm to underarm, a bust girth of " + cm_and_in(2.0 * size.chest) +
                       ", which fits hardly any body. Check the drawing's scale against the printed pattern "
                       "before you cut.");
  }
  if (size.neck_point < least_neck || size.neck_point > most_neck) {
    cautions.push_back("The neck point of the " + base.name + " stands " + cm_and_in(size.neck_point) +
                       " from the centre, where hardly any neck ends. Check the drawing's scale.");
  }
  return cautions;
}

}  // namespace cowlcast::drafting
