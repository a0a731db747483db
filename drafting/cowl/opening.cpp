#include "drafting/cowl/opening.h"

#include <algorithm>
#include <cmath>

#include "drafting/cowl/quadratic_program.h"

namespace cowlcast::drafting {
namespace {

// Swing weighed against unevenness, degree for degree.
constexpr double swing_weight = 0.5;
// Keeps the objective convex; far below what a maker could see.
constexpr double ridge = 1e-4;

/// The front after an opening: motions, hinges and the neck point where they are.
struct Opened {
  std::vector<Motion> motions;
  std::vector<Point> hinges;
  Point neck = Point::Zero();
};

Opened opened(const SlashedFront& front, const Opening& opening) {
  Opened result;
  result.motions = motions_of(front, opening);
  for (size_t i = 0; i < front.hinges.size(); ++i) {
    result.hinges.push_back(result.motions[i] * front.hinges[i]);
  }
  result.neck = result.motions[0] * front.neck_point;
  return result;
}

/// The lowest part turns about its own hem corner, which keeps it on its side,
/// unless the swing's centre was put elsewhere.
bool counts_at_centre(const SlashedFront& front, size_t part) {
  return part + 1 < front.corners.size() || front.pivot.y() > 0.0;
}

/// Rows of d x and d y of a point of `part`, by the hinge angles and the swing.
struct Slope {
  SmallVector x, y;
};

Slope slope_of(const SlashedFront& front, const Opened& now, size_t part, const Point& point) {
  const int n = static_cast<int>(front.hinges.size());
  Slope slope{SmallVector::Zero(n + 1), SmallVector::Zero(n + 1)};
  for (int i = static_cast<int>(part); i < n; ++i) {
    slope.x[i] = point.y() - now.hinges[i].y();
    slope.y[i] = -(point.x() - now.hinges[i].x());
  }
  slope.x[n] = point.y() - front.pivot.y();
  slope.y[n] = -(point.x() - front.pivot.x());
  return slope;
}

SmallMatrix objective_of(const SlashedFront& front) {
  const int n = static_cast<int>(front.hinges.size());
  if (!front.wished.empty()) {
    SmallMatrix nearness = SmallMatrix::Identity(n + 1, n + 1);
    nearness(n, n) = ridge;
    return nearness;
  }
  SmallMatrix deviation = SmallMatrix::Zero(n, n);
  for (int i = 0; i < n; ++i) {
    for (int j = 0; j < n; ++j) {
      deviation(i, j) = ((i == j ? 1.0 : 0.0) - 1.0 / n) / front.weights[j];
    }
  }
  SmallMatrix hessian = ridge * SmallMatrix::Identity(n + 1, n + 1);
  hessian.topLeftCorner(n, n) += deviation.transpose() * deviation;
  hessian(n, n) += swing_weight;
  return hessian;
}

Opening opening_from(const SmallVector& x) {
  const int n = static_cast<int>(x.size()) - 1;
  Opening opening;
  for (int i = 0; i < n; ++i) opening.angles.push_back(std::max(0.0, x[i]));
  opening.swing = std::max(0.0, x[n]);
  return opening;
}

/// Sequential quadratic programming from `x`; false when a step has no answer.
bool approach(const SlashedFront& front, const SmallMatrix& hessian, double distance, SmallVector& x) {
  const int n = static_cast<int>(front.hinges.size());
  constexpr double furthest = 0.25;  // radians in one step: the motion is far from linear beyond
  for (int iteration = 0; iteration < 80; ++iteration) {
    const Opened now = opened(front, opening_from(x));
    QuadraticProgram step(n + 1);
    step.hessian = hessian;
    SmallVector from_wish = x;
    for (size_t i = 0; i < front.wished.size(); ++i) from_wish[static_cast<int>(i)] -= front.wished[i];
    step.gradient = hessian * from_wish;
    const Slope neck = slope_of(front, now, 0, now.neck);
    step.equal(neck.x, distance - now.neck.x());
    for (size_t part = 0; part < front.corners.size(); ++part) {
      for (const Point& corner : front.corners[part]) {
        const Point place = now.motions[part] * corner;
        const Slope slope = slope_of(front, now, part, place);
        if (counts_at_centre(front, part)) step.at_least(slope.x, -front.allowed_crossing - place.x());
        if ((place - now.neck).norm() > 1e-6) step.at_least(neck.y - slope.y, place.y() - now.neck.y());
      }
    }
    for (int i = 0; i <= n; ++i) {
      SmallVector unit = SmallVector::Zero(n + 1);
      unit[i] = 1.0;
      step.at_least(unit, -x[i]);
      step.at_least(-unit, x[i] - (i < n ? front.max_opening : front.max_swing));
    }
    const auto move = step.solve();
    if (!move) return false;
    const double size = move->cwiseAbs().maxCoeff();
    // A cycle between two sets of constraints dies out in shorter steps.
    const double damping = iteration < 30 ? 1.0 : 0.5;
    x += *move * std::min(damping, furthest / std::max(size, 1e-300));
    if (size < 1e-11) return true;
  }
  return true;  // judged by what it reached
}

bool reached(const SlashedFront& front, const Opening& opening, double distance) {
  const Opened now = opened(front, opening);
  const Trespass trespass = trespass_of(front, opening);
  return std::abs(now.neck.x() - distance) < 1e-9 && trespass.over_centre < front.allowed_crossing + 1e-8 &&
         trespass.above_edge < 1e-8 && opening.swing <= front.max_swing + 1e-9;
}

/// The opening of least cost by `hessian` that the limits allow.
std::optional<Opening> open_by(const SlashedFront& front, const SmallMatrix& hessian, double distance) {
  const int n = static_cast<int>(front.hinges.size());
  const double closed = front.neck_point.x();
  for (const int stages : {1, 6, 24}) {
    SmallVector x = SmallVector::Zero(n + 1);
    bool on_the_way = true;
    for (int stage = 1; stage <= stages && on_the_way; ++stage) {
      on_the_way = approach(front, hessian, closed + (distance - closed) * stage / stages, x);
    }
    if (!on_the_way) continue;
    const Opening opening = opening_from(x);
    if (reached(front, opening, distance)) return opening;
  }
  return std::nullopt;
}

}  // namespace

std::vector<Motion> motions_of(const SlashedFront& front, const Opening& opening) {
  const size_t n = front.hinges.size();
  std::vector<Motion> motions(n + 1);
  motions[n] = turn_about(front.pivot, -opening.swing);
  for (size_t i = n; i-- > 0;) {
    motions[i] = motions[i + 1] * turn_about(front.hinges[i], -opening.angles[i]);
  }
  return motions;
}

std::optional<Opening> open_to(const SlashedFront& front, double distance) {
  return open_by(front, objective_of(front), distance);
}

std::optional<Opening> open_furthest(const SlashedFront& front, double distance, size_t hinge, bool most) {
  const int n = static_cast<int>(front.hinges.size());
  SlashedFront towards = front;
  towards.wished.assign(front.hinges.size(), 0.0);
  towards.wished[hinge] = most ? 2.0 : -2.0;  // radians: out of reach
  SmallMatrix hessian = ridge * SmallMatrix::Identity(n + 1, n + 1);
  hessian(static_cast<int>(hinge), static_cast<int>(hinge)) = 1.0;
  return open_by(towards, hessian, distance);
}

std::optional<double> swing_to(const SlashedFront& front, const std::vector<double>& angles,
                               double distance) {
  const Point arm = motions_of(front, {angles, 0.0})[0] * front.neck_point - front.pivot;
  const double reach = arm.norm();
  if (distance > reach) return std::nullopt;
  const double swing = std::asin(distance / reach) - std::atan2(arm.x(), arm.y());
  if (swing < -1e-12 || swing > front.max_swing) return std::nullopt;
  return std::max(0.0, swing);
}

Trespass trespass_of(const SlashedFront& front, const Opening& opening) {
  const Opened now = opened(front, opening);
  Trespass worst;
  for (size_t part = 0; part < front.corners.size(); ++part) {
    for (const Point& corner : front.corners[part]) {
      const Point place = now.motions[part] * corner;
      if (counts_at_centre(front, part)) worst.over_centre = std::max(worst.over_centre, -place.x());
      worst.above_edge = std::max(worst.above_edge, place.y() - now.neck.y());
    }
  }
  return worst;
}

}  // namespace cowlcast::drafting
