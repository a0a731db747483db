#include "projector/cutting/registration.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

// The upright rectangle about the light's middle that lies within its outline, by shrinking its box.
drafting::Box inside_box(const Polyline& lit) {
  const drafting::Box whole = drafting::box_of(lit);
  const Point middle = 0.5 * (whole.low + whole.high), half = 0.5 * (whole.high - whole.low);
  double share = 1.0;
  for (; share > 0.05; share -= 0.01) {
    bool fits = true;
    for (const Point& sign : {Point(-1, -1), Point(1, -1), Point(1, 1), Point(-1, 1)})
      fits = fits && drafting::contains(lit, middle + share * half.cwiseProduct(sign));
    if (fits) break;
  }
  return {middle - share * half, middle + share * half};
}

std::string in_mm(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f mm", value);
  return text;
}

}  // namespace

std::vector<LightStep> light_steps(const Polyline& outline, const Laying& laying, const Polyline& lit,
                                   const StepRules& rules) {
  const drafting::Box light = inside_box(lit);
  const Point low = light.low + Point(rules.margin, rules.margin);
  const Point high = light.high - Point(rules.margin, rules.margin);
  const drafting::Box lain = drafting::box_of(laid(laying, outline));
  const double wide = high.x() - low.x();
  if (lain.height() > high.y() - low.y())
    throw drafting::Refusal("The piece is " + in_mm(lain.height()) + " deep as it lies and the light only " +
                            in_mm(high.y() - low.y()) +
                            ". Turn it so that its long side lies across the table.");
  if (wide <= 1.5 * rules.overlap)
    throw drafting::Refusal("The light is too narrow to show this piece part by part. Raise the projector.");

  Laying first = laying;  // brought up or down into the light
  first.y += std::clamp(0.0, low.y() - lain.low.y(), high.y() - lain.high.y());
  if (lain.width() <= wide) {
    first.x += std::clamp(0.0, low.x() - lain.low.x(), high.x() - lain.high.x());
    return {{first}};
  }
  const int count = static_cast<int>(std::ceil((lain.width() - rules.overlap) / (wide - rules.overlap)));
  const double advance = (lain.width() - wide) / (count - 1);
  std::vector<LightStep> steps;
  for (int i = 0; i < count; ++i) {
    Laying here = first;
    here.x += low.x() - lain.low.x() - i * advance;
    LightStep step{here};
    if (i + 1 < count) {
      // In the strip that the next step shows too: near its far and near edge.
      const double x = high.x() - 0.5 * (wide - advance);
      const double up = 0.25 * lain.height();
      const double y = 0.5 * (lain.low.y() + lain.high.y()) + (first.y - laying.y);
      for (const double dy : {-up, up}) step.chalk.push_back(piece_from_mat(here, {x, y + dy}));
    }
    steps.push_back(step);
  }
  return steps;
}

Found found_laying(const std::vector<Point>& piece, const std::vector<Point>& mat, const Laying& like,
                   double tolerance) {
  if (piece.size() < 2 || piece.size() != mat.size())
    throw drafting::Refusal("Two marks at least are needed to find the piece again. Point out one more.");
  Laying upright;
  upright.mirrored = like.mirrored;
  upright.height = like.height;
  const double count = static_cast<double>(piece.size());
  const Polyline from = laid(upright, piece);
  Point from_middle = Point::Zero(), to_middle = Point::Zero();
  for (size_t i = 0; i < from.size(); ++i) {
    from_middle += from[i] / count;
    to_middle += mat[i] / count;
  }
  double along = 0.0, across = 0.0, spread = 0.0;
  for (size_t i = 0; i < from.size(); ++i) {
    const Point a = from[i] - from_middle, b = mat[i] - to_middle;
    along += a.dot(b);
    across += a.x() * b.y() - a.y() * b.x();
    spread = std::max(spread, a.norm());
  }
  if (!(spread >= 30.0))
    throw drafting::Refusal(
        "The marks are too close together to turn the piece by. Chalk them at least 60 mm apart.");
  Found found{upright};
  found.laying.angle = std::atan2(across, along);
  const Point at = to_middle - mat_from_piece(found.laying, piece_from_mat(upright, from_middle));
  found.laying.x = at.x();
  found.laying.y = at.y();
  for (size_t i = 0; i < piece.size(); ++i)
    found.residual = std::max(found.residual, (mat_from_piece(found.laying, piece[i]) - mat[i]).norm());
  if (!(found.residual <= tolerance))
    throw drafting::Refusal("The marks are " + in_mm(found.residual) +
                            " off where they should be, more than " + in_mm(tolerance) +
                            ". The cloth is stretched or a mark is wrong: smooth it out and point again.");
  return found;
}

}  // namespace cowlcast::projector
