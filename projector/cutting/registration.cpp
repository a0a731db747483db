#include "projector/cutting/registration.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <numbers>
#include <numeric>
#include <optional>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr double kMostApart = 30.0;  // mm: of some mark from the middle of all, at least
constexpr size_t kMostCrosses = 6;   // every order of them is tried

// What a small shift and turn of the piece about its origin does to a point of it.
Eigen::Matrix<double, 2, 3> motion_of(const Point& piece) {
  Eigen::Matrix<double, 2, 3> motion;
  motion << 1.0, 0.0, -piece.y(), 0.0, 1.0, piece.x();
  return motion;
}

Point middle_of(const std::vector<Point>& points) {
  return std::accumulate(points.begin(), points.end(), Point(Point::Zero())) /
         static_cast<double>(points.size());
}

double spread_of(const std::vector<Point>& points) {
  const Point middle = middle_of(points);
  double spread = 0.0;
  for (const Point& point : points) spread = std::max(spread, (point - middle).norm());
  return spread;
}

// The turn and shift that bring `piece` nearest to `mat`.
Laying fitted(const std::vector<Point>& piece, const std::vector<Point>& mat, const Laying& like) {
  Laying laying;
  laying.mirrored = like.mirrored;
  laying.height = like.height;
  const std::vector<Point> from = laid(laying, piece);
  const Point from_middle = middle_of(from), to_middle = middle_of(mat);
  double along = 0.0, across = 0.0;
  for (size_t i = 0; i < from.size(); ++i) {
    const Point a = from[i] - from_middle, b = mat[i] - to_middle;
    along += a.dot(b);
    across += a.x() * b.y() - a.y() * b.x();
  }
  laying.angle = std::atan2(across, along);
  const Point at = to_middle - mat_from_piece(laying, middle_of(piece));
  laying.x = at.x();
  laying.y = at.y();
  return laying;
}

// The marks taken in one order.
struct Reading {
  Found found;
  double worst = 0.0;  // residual, mm
  double turn = 0.0;   // from the expected laying, radians, without sign
  double away = 0.0;   // the farthest that a cross lies from where it was expected, mm
};

std::vector<Point> chosen(const std::vector<Point>& points, const std::vector<size_t>& which) {
  std::vector<Point> some;
  for (const size_t i : which) some.push_back(points[i]);
  return some;
}

Reading reading_of(const std::vector<Point>& crosses, const std::vector<Point>& pointed,
                   const Laying& expected, std::vector<size_t> which) {
  const std::vector<Point> piece = chosen(crosses, which);
  Reading reading{{fitted(piece, pointed, expected), std::move(which)}};
  for (size_t i = 0; i < piece.size(); ++i) {
    const double residual = (mat_from_piece(reading.found.laying, piece[i]) - pointed[i]).norm();
    reading.found.residuals.push_back(residual);
    reading.worst = std::max(reading.worst, residual);
  }
  reading.turn =
      std::abs(std::remainder(reading.found.laying.angle - expected.angle, 2.0 * std::numbers::pi));
  reading.away = apart(reading.found.laying, expected, crosses);
  return reading;
}

// In every order; the one that the marks are thought to follow comes first.
std::vector<Reading> readings_of(const std::vector<Point>& crosses, const std::vector<Point>& pointed,
                                 const Laying& expected) {
  std::vector<size_t> order(crosses.size());
  std::iota(order.begin(), order.end(), size_t{0});
  std::vector<Reading> readings;
  std::vector<size_t> before;
  do {  // orders that begin alike follow one another
    std::vector<size_t> which(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(pointed.size()));
    if (which == before) continue;
    before = which;
    readings.push_back(reading_of(crosses, pointed, expected, std::move(which)));
  } while (std::next_permutation(order.begin(), order.end()));
  return readings;
}

std::string in_degrees(double angle) {
  char text[32];
  std::snprintf(text, sizeof text, "%.0f", angle * 180.0 / std::numbers::pi);
  return text;
}

[[noreturn]] void refuse(const std::vector<Reading>& readings, const FindRules& rules) {
  const auto by_worst = [](const Reading& a, const Reading& b) { return a.worst < b.worst; };
  const Reading& best = *std::min_element(readings.begin(), readings.end(), by_worst);
  if (best.worst <= rules.residual)
    throw drafting::Refusal("The marks fit only with the piece turned by " + in_degrees(best.turn) +
                            " degrees. Turn the cloth as it lay before and point them out again.");
  // Of the order she was asked for, unless only another can have been meant.
  const Reading& told = readings.front().turn <= rules.turn ? readings.front() : best;
  throw drafting::Refusal("The marks are " + in_mm(told.worst) + " off where they should be, more than " +
                          in_mm(rules.residual) +
                          ". The cloth is stretched or a mark is wrong: smooth it out and point again.");
}

// What each mark is off by, by what was presumed and by what the residuals show.
double sigma_shown_by(const std::vector<double>& residuals, double presumed) {
  const double free = 2.0 * static_cast<double>(residuals.size()) - 3.0;
  double sum = 0.0;
  for (const double residual : residuals) sum += residual * residual;
  return std::max(presumed, std::sqrt(sum / free));
}

}  // namespace

double LayingDoubt::at(const Point& piece) const {
  const Eigen::Matrix<double, 2, 3> motion = motion_of(piece);
  const Eigen::Matrix2d here = motion * covariance * motion.transpose();
  const double half = 0.5 * here.trace();
  const double most = half + std::hypot(0.5 * (here(0, 0) - here(1, 1)), here(0, 1));
  const double least = std::max(0.0, 2.0 * half - most);
  // Chi-square at 95 %: 3.841 of one number, 5.991 of two.
  return std::sqrt(3.841 * most + (5.991 - 3.841) * least);
}

double LayingDoubt::farthest(const std::vector<Point>& piece) const {
  double most = 0.0;
  for (const Point& point : piece) most = std::max(most, at(point));
  return most;
}

LayingDoubt operator+(const LayingDoubt& a, const LayingDoubt& b) {
  return {a.covariance + b.covariance};
}

LayingDoubt doubt_of_meeting(const std::vector<Point>& crosses, double sigma) {
  Eigen::Matrix3d known = Eigen::Matrix3d::Zero();
  for (const Point& cross : crosses) known += motion_of(cross).transpose() * motion_of(cross);
  return {sigma * sigma * known.inverse()};
}

Found found_laying(const std::vector<Point>& crosses, const std::vector<Point>& pointed,
                   const Laying& expected, const FindRules& rules) {
  if (pointed.size() < 2 || pointed.size() > crosses.size() || crosses.size() > kMostCrosses)
    throw drafting::Refusal("Two marks at least are needed to find the piece again. Point out one more.");
  if (!(spread_of(pointed) >= kMostApart))
    throw drafting::Refusal(
        "The marks are too close together to turn the piece by. Point out some that are farther apart.");
  const std::vector<Reading> readings = readings_of(crosses, pointed, expected);
  std::vector<const Reading*> fitting;
  for (const Reading& reading : readings)
    if (reading.worst <= rules.residual && reading.turn <= rules.turn) fitting.push_back(&reading);
  if (fitting.empty()) refuse(readings, rules);
  const Reading* nearest = *std::min_element(
      fitting.begin(), fitting.end(), [](const Reading* a, const Reading* b) { return a->away < b->away; });
  // Several fit: number and nearness have to agree.
  if (fitting.size() > 1 && nearest != &readings.front())
    throw drafting::Refusal(
        "It is not clear which marks these are. Point out all of them, in the order of their numbers.");
  Found found = nearest->found;
  found.doubt =
      doubt_of_meeting(chosen(crosses, found.which), sigma_shown_by(found.residuals, rules.mark_sigma));
  return found;
}

Found find_again(const std::vector<Point>& crosses, const std::vector<Point>& pointed, const Laying& expected,
                 const std::vector<Point>& shown, const FindRules& rules) {
  Found found = found_laying(crosses, pointed, expected, rules);
  const double own = found.doubt.farthest(shown);
  if (!(own <= rules.at_cut_line))
    throw drafting::Refusal("By these marks a cut line of this part may be " + in_mm(own) +
                            " off, more than " + in_mm(rules.at_cut_line) +
                            ". Smooth out the cloth and point out all marks, right on their middles.");
  return found;
}

std::string in_mm(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f mm", value);
  return text;
}

}  // namespace cowlcast::projector
