#include "calibration/detect/saddle.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace cowlcast::calibration {
namespace {

// Parameters: level, slopes along x and y, contrast, x, y, slant of either edge, blur.
constexpr int kParameters = 9;
using Vector = Eigen::Matrix<double, kParameters, 1>;
using Matrix = Eigen::Matrix<double, kParameters, kParameters>;

constexpr int kSteps = 15;
constexpr double kDull = 3.0;  // residuals beyond so many typical ones lose weight

struct Edge {
  double value, slope;
};

// The blurred step and its slope, by straight lines between tabulated values: right to 1e-6, and several
// times quicker than the functions themselves.
class SoftEdge {
 public:
  SoftEdge() {
    for (int i = 0; i <= kNodes; ++i) {
      const double x = kReach * (2.0 * i / kNodes - 1.0);
      table_[static_cast<size_t>(i)] = {std::erf(x / std::numbers::sqrt2),
                                        std::sqrt(2.0 / std::numbers::pi) * std::exp(-0.5 * x * x)};
    }
  }

  Edge operator()(double x) const {
    const double at = std::clamp((x / kReach + 1.0) * (0.5 * kNodes), 0.0, kNodes - 1e-9);
    const auto i = static_cast<size_t>(at);
    const double part = at - static_cast<double>(i);
    const Edge &a = table_[i], &b = table_[i + 1];
    return {a.value + part * (b.value - a.value), a.slope + part * (b.slope - a.slope)};
  }

 private:
  static constexpr double kReach = 6.0;
  static constexpr int kNodes = 4096;
  std::array<Edge, kNodes + 1> table_ = {};
};

const SoftEdge& soft_edge() {
  static const SoftEdge edge;
  return edge;
}

double model(const SoftEdge& edge, const Vector& p, double x, double y, Vector* slope) {
  const double dx = x - p[4], dy = y - p[5], blur = p[8];
  const double u = (dx + p[6] * dy) / blur, v = (dy + p[7] * dx) / blur;
  const Edge a = edge(u), b = edge(v);
  if (slope != nullptr) {
    const double along_u = p[3] * a.slope * b.value, along_v = p[3] * a.value * b.slope;
    *slope << 1.0, x, y, a.value * b.value, -(along_u + p[7] * along_v) / blur,
        -(p[6] * along_u + along_v) / blur, along_u * dy / blur, along_v * dx / blur,
        -(along_u * u + along_v * v) / blur;
  }
  return p[0] + p[1] * x + p[2] * y + p[3] * a.value * b.value;
}

double typical(std::vector<double> sizes) {
  const auto middle = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2);
  std::nth_element(sizes.begin(), middle, sizes.end());
  return 1.4826 * *middle;
}

}  // namespace

std::optional<Saddle> fit_saddle(const Eigen::MatrixXd& patch, int sign) {
  const int n = static_cast<int>(patch.rows()), half = n / 2;
  const double count = static_cast<double>(n) * n;
  if (!patch.allFinite()) return std::nullopt;
  const SoftEdge& edge = soft_edge();
  double product = 0.0;
  for (int i = 0; i < n; ++i)
    for (int j = 0; j < n; ++j) {
      const int quadrant = (i - half) * (j - half);
      product += ((quadrant > 0) - (quadrant < 0)) * patch(i, j);
    }
  Vector p;
  p << patch.mean(), 0, 0, product / count, 0, 0, 0, 0, std::max(1.0, 0.12 * n);
  if (!(p[3] * sign > 0.0)) return std::nullopt;

  std::vector<double> sizes(static_cast<size_t>(count));
  Matrix normal = Matrix::Zero();
  double damping = 1e-3, cost = std::numeric_limits<double>::infinity(), dull = 0.0, rms = 0.0;
  const auto cost_of = [&](const Vector& q) {
    double sum = 0.0;
    for (int i = 0; i < n; ++i) {
      double row = 1.0;  // one logarithm a row
      for (int j = 0; j < n; ++j) {
        const double r = (patch(i, j) - model(edge, q, j - half, i - half, nullptr)) / dull;
        row *= 1.0 + r * r;
      }
      sum += std::log(row);
    }
    return sum;
  };
  for (int step = 0; step < kSteps; ++step) {
    Vector gradient = Vector::Zero(), slope;
    normal.setZero();
    if (step < 4) {  // the scale of a typical residual settles first
      size_t k = 0;
      for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j)
          sizes[k++] = std::abs(patch(i, j) - model(edge, p, j - half, i - half, nullptr));
      dull = std::max(kDull * typical(sizes), 1e-3 * std::abs(p[3]));
      cost = cost_of(p);
    }
    double weight_sum = 0.0, square_sum = 0.0;
    for (int i = 0; i < n; ++i)
      for (int j = 0; j < n; ++j) {
        const double r = patch(i, j) - model(edge, p, j - half, i - half, &slope);
        const double w = 1.0 / (1.0 + r * r / (dull * dull));
        normal.noalias() += w * slope * slope.transpose();
        gradient.noalias() += w * r * slope;
        weight_sum += w;
        square_sum += w * r * r;
      }
    rms = std::sqrt(square_sum / std::max(1.0, weight_sum - kParameters));
    Matrix damped = normal;
    damped.diagonal() *= 1.0 + damping;
    const Vector change = damped.ldlt().solve(gradient);
    if (!change.allFinite()) return std::nullopt;
    Vector next = p + change;
    next[8] = std::clamp(next[8], 0.3, 0.5 * n);
    const double next_cost = cost_of(next);
    if (next_cost <= cost) {
      p = next;
      cost = next_cost;
      damping = std::max(1e-9, damping * 0.2);
      if (step >= 4 && change.segment<2>(4).norm() < 1e-4) break;
    } else {
      damping *= 10.0;
      if (damping > 1e6) break;
    }
  }
  const Matrix covariance = normal.ldlt().solve(Matrix::Identity()) * (rms * rms);
  Saddle out;
  out.offset = p.segment<2>(4);
  out.sigma = std::sqrt(0.5 * (covariance(4, 4) + covariance(5, 5)));
  out.contrast = std::abs(p[3]);
  out.residual = rms;
  const bool here = out.offset.cwiseAbs().maxCoeff() < 0.6 * half && p[3] * sign > 0.0;
  const bool square_enough = std::abs(p[6]) < 0.35 && std::abs(p[7]) < 0.35 && p[8] < 0.35 * n;
  const bool clear = out.residual < 0.35 * out.contrast && out.sigma < 0.1 * half;
  if (!(here && square_enough && clear)) return std::nullopt;
  return out;
}

}  // namespace cowlcast::calibration
