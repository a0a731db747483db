#include "projector/frame/laying.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

double wrapped(double angle) {
  return std::remainder(angle, 2.0 * std::numbers::pi);
}

}  // namespace

Point mat_from_piece(const Laying& laying, const Point& piece) {
  const double c = std::cos(laying.angle), s = std::sin(laying.angle);
  const double px = laying.mirrored ? -piece.x() : piece.x();
  return {laying.x + c * px - s * piece.y(), laying.y + s * px + c * piece.y()};
}

Point piece_from_mat(const Laying& laying, const Point& mat) {
  const double c = std::cos(laying.angle), s = std::sin(laying.angle);
  const Point moved{mat.x() - laying.x, mat.y() - laying.y};
  const double px = c * moved.x() + s * moved.y();
  return {laying.mirrored ? -px : px, -s * moved.x() + c * moved.y()};
}

Polyline laid(const Laying& laying, const Polyline& piece) {
  Polyline on_mat;
  on_mat.reserve(piece.size());
  for (const Point& point : piece) on_mat.push_back(mat_from_piece(laying, point));
  return on_mat;
}

Laying in_the_middle(const Polyline& area, const drafting::Piece& piece, double height) {
  Laying laying{.angle = 0.5 * std::numbers::pi, .height = height};
  const drafting::Box lit = drafting::box_of(area);
  const drafting::Box lain = drafting::box_of(laid(laying, piece.cut_line));
  const Point shift = 0.5 * (lit.low + lit.high) - 0.5 * (lain.low + lain.high);
  laying.x = shift.x();
  laying.y = shift.y();
  return laying;
}

Laying turned_about(const Laying& laying, const Point& mat, double angle) {
  const Point kept = piece_from_mat(laying, mat);
  Laying turned = laying;
  turned.angle = wrapped(laying.angle + angle);
  const Point now = mat_from_piece(turned, kept);
  turned.x += mat.x() - now.x();
  turned.y += mat.y() - now.y();
  return turned;
}

Laying flipped_about(const Laying& laying, const Point& mat) {
  const Point kept = piece_from_mat(laying, mat);
  Laying flipped = laying;
  flipped.mirrored = !laying.mirrored;
  flipped.angle = wrapped(-laying.angle);
  const Point now = mat_from_piece(flipped, kept);
  flipped.x += mat.x() - now.x();
  flipped.y += mat.y() - now.y();
  return flipped;
}

double apart(const Laying& a, const Laying& b, const Polyline& piece) {
  if (a.mirrored != b.mirrored) return std::numeric_limits<double>::infinity();
  double farthest = 0.0;
  for (const Point& point : piece)
    farthest = std::max(farthest, (mat_from_piece(a, point) - mat_from_piece(b, point)).norm());
  return farthest;
}

Laying snapped(const Laying& before, const Laying& after, const Laying& kept, const Polyline& piece,
               double reach) {
  const double there = apart(after, kept, piece);
  return there <= reach && there < apart(before, kept, piece) ? kept : after;
}

}  // namespace cowlcast::projector
