#include "drafting/geometry/fairing.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/geometry/polyline.h"

namespace cowlcast::drafting {
namespace {

constexpr double link_length = 2.0;  // mm: chords of the tightest fairing stay within 0.01 mm

Point turned(const Point& link, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {c * link.x() - s * link.y(), s * link.x() + c * link.y()};
}

double turn_between(const Point& a, const Point& b) {
  return std::atan2(a.x() * b.y() - a.y() * b.x(), a.dot(b));
}

/// A line as links, with the length along it at each link's middle.
struct Chain {
  std::vector<Point> links;
  std::vector<double> middles;
  double total = 0.0;
};

Chain chain_of(const Polyline& line) {
  Chain chain;
  for (size_t i = 1; i < line.size(); ++i) {
    chain.links.push_back(line[i] - line[i - 1]);
    const double step = chain.links.back().norm();
    chain.middles.push_back(chain.total + 0.5 * step);
    chain.total += step;
  }
  return chain;
}

/// The line with a point at every kink, so that no link spans one.
Polyline with_points_at(const Polyline& line, const std::vector<double>& places) {
  Polyline result;
  double from = 0.0;
  for (const double place : places) {
    append(result, between(line, from, place));
    from = place;
  }
  append(result, between(line, from, length(line)));
  return result;
}

}  // namespace

Polyline faired(const Polyline& line, const std::vector<double>& kinks, double window) {
  if (kinks.empty()) return line;
  const Polyline fine = subdivided(with_points_at(line, kinks), link_length);
  const Chain chain = chain_of(fine);
  const size_t n = chain.links.size();
  std::vector<double> spread(n, 0.0);
  double sharpest = 0.0, first = chain.total, last = 0.0;
  for (size_t k = 0; k < kinks.size(); ++k) {
    const double before = k == 0 ? kinks[k] : 0.5 * (kinks[k] - kinks[k - 1]);
    const double after = k + 1 == kinks.size() ? chain.total - kinks[k] : 0.5 * (kinks[k + 1] - kinks[k]);
    const double reach = std::min({window, before, after});
    size_t next = 0;
    while (next < n && chain.middles[next] < kinks[k]) ++next;
    if (next == 0 || next == n || reach <= link_length) return line;
    const double turn = turn_between(chain.links[next - 1], chain.links[next]);
    sharpest = std::max(sharpest, std::abs(turn));
    first = std::min(first, kinks[k] - reach);
    last = std::max(last, kinks[k] + reach);
    for (size_t i = 0; i < n; ++i) {
      const double u = (chain.middles[i] - kinks[k]) / reach;
      if (std::abs(u) >= 1.0) continue;
      const double share = 0.5 * (1.0 - std::cos(std::numbers::pi * 0.5 * (1.0 - std::abs(u)) * 2.0));
      spread[i] += 0.5 * turn * share * (u < 0.0 ? 1.0 : -1.0);
    }
  }
  if (sharpest < 0.002) return line;

  // Two small waves bring the far end back to its place.
  const Point goal = fine.back() - fine.front();
  std::vector<double> wave_1(n, 0.0), wave_2(n, 0.0);
  for (size_t i = 0; i < n; ++i) {
    const double t = (chain.middles[i] - first) / (last - first);
    if (t <= 0.0 || t >= 1.0) continue;
    wave_1[i] = std::sin(std::numbers::pi * t);
    wave_2[i] = std::sin(2.0 * std::numbers::pi * t);
  }
  Eigen::Vector2d weight = Eigen::Vector2d::Zero();
  std::vector<Point> links(n);
  for (int iteration = 0; iteration < 30; ++iteration) {
    Point miss = -goal;
    Eigen::Matrix2d slope = Eigen::Matrix2d::Zero();
    for (size_t i = 0; i < n; ++i) {
      const double angle = spread[i] + weight[0] * wave_1[i] + weight[1] * wave_2[i];
      links[i] = angle == 0.0 ? chain.links[i] : turned(chain.links[i], angle);
      miss += links[i];
      const Point across(-links[i].y(), links[i].x());
      slope.col(0) += wave_1[i] * across;
      slope.col(1) += wave_2[i] * across;
    }
    if (miss.norm() < 1e-11) {
      Polyline result{fine.front()};
      result.reserve(n + 1);
      for (const Point& link : links) result.push_back(result.back() + link);
      result.back() = fine.back();
      return result;
    }
    const Eigen::Vector2d step = slope.fullPivLu().solve(-miss);
    weight += step * std::min(1.0, sharpest / std::max(step.norm(), 1e-300));
    if (!weight.allFinite() || weight.norm() > 2.0 * sharpest) return line;
  }
  return line;
}

Polyline squared_start(const Polyline& line) {
  const Chain chain = chain_of(subdivided(line, link_length));
  const size_t n = chain.links.size();
  std::vector<Point> links(chain.links);
  const double slant = std::atan2(links[0].y(), links[0].x());
  double across = 0.0;
  for (size_t i = 0; i < n; ++i) {
    const double u =
        n == 1 ? 0.0 : (chain.middles[i] - chain.middles[0]) / (chain.middles[n - 1] - chain.middles[0]);
    links[i] = turned(links[i], -slant * (1.0 - u));
    across += links[i].x();
  }
  const double scale = line.back().x() / across;
  Polyline result(n + 1);
  result[n] = line.back();
  for (size_t i = n; i-- > 0;) result[i] = result[i + 1] - scale * links[i];
  result[0] = {0.0, result[1].y()};
  return result;
}

}  // namespace cowlcast::drafting
