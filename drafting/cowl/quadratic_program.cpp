#include "drafting/cowl/quadratic_program.h"

#include <Eigen/Dense>
#include <cmath>
#include <limits>

namespace cowlcast::drafting {
namespace {

/// The constraints in force, their multipliers, and the point so far.
class ActiveSet {
 public:
  ActiveSet(const SmallMatrix& hessian, const SmallVector& gradient)
      : factor_(hessian), x(-factor_.solve(gradient)) {}

 private:
  Eigen::LLT<SmallMatrix> factor_;

 public:
  SmallVector x;

  /// Moves to the minimum that also meets row · x = value (reached from below),
  /// dropping inequalities on the way. False when they contradict each other.
  bool add(const SmallVector& row, double value, bool equality) {
    double multiplier = 0.0;
    for (int guard = 0; guard < 200; ++guard) {
      const int k = static_cast<int>(rows_.size());
      const SmallVector free_step = factor_.solve(row);
      SmallVector along = free_step, pull = SmallVector::Zero(k);
      if (k > 0) {
        SmallMatrix normal(row.size(), k);
        for (int j = 0; j < k; ++j) normal.col(j) = rows_[j];
        const SmallMatrix solved = factor_.solve(normal);
        const SmallMatrix inner = normal.transpose() * solved;
        pull = inner.ldlt().solve(SmallVector(normal.transpose() * free_step));
        along -= solved * pull;
      }
      const double gain = along.dot(row);
      const bool can_move = gain > 1e-13 * free_step.dot(row) && k < row.size();
      const double whole = can_move ? (value - row.dot(x)) / gain : std::numeric_limits<double>::infinity();
      double step = whole;
      int drop = -1;
      for (int j = 0; j < k; ++j) {
        if (equality_[j] || pull[j] <= 1e-14) continue;
        const double limit = multipliers_[j] / pull[j];
        if (limit < step) {
          step = limit;
          drop = j;
        }
      }
      if (!std::isfinite(step)) return false;
      if (can_move) x += step * along;
      for (int j = 0; j < k; ++j) multipliers_[j] -= step * pull[j];
      multiplier += step;
      if (drop < 0) {
        rows_.push_back(row);
        equality_.push_back(equality);
        multipliers_.push_back(multiplier);
        return true;
      }
      rows_.erase(rows_.begin() + drop);
      equality_.erase(equality_.begin() + drop);
      multipliers_.erase(multipliers_.begin() + drop);
    }
    return false;
  }

 private:
  std::vector<SmallVector> rows_;
  std::vector<bool> equality_;
  std::vector<double> multipliers_;
};

}  // namespace

QuadraticProgram::QuadraticProgram(int unknowns)
    : hessian(SmallMatrix::Identity(unknowns, unknowns)), gradient(SmallVector::Zero(unknowns)) {}

std::optional<SmallVector> QuadraticProgram::solve() const {
  ActiveSet active(hessian, gradient);
  for (const Constraint& c : equalities_) {
    const bool below = c.row.dot(active.x) < c.value;
    const SmallVector row = below ? c.row : SmallVector(-c.row);
    if (!active.add(row, below ? c.value : -c.value, true)) return std::nullopt;
  }
  for (int guard = 0; guard < 300; ++guard) {
    const Constraint* worst = nullptr;
    double most = 1e-13;
    for (const Constraint& c : inequalities_) {
      const double lack = (c.value - c.row.dot(active.x)) / c.row.norm();
      if (lack > most) {
        most = lack;
        worst = &c;
      }
    }
    if (worst == nullptr) return active.x;
    if (!active.add(worst->row, worst->value, false)) return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace cowlcast::drafting
