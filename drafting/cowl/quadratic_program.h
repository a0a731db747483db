// A small strictly convex quadratic programme, solved exactly.
//
//   QuadraticProgram qp(4);
//   qp.hessian = ...; qp.gradient = ...;
//   qp.equal(row, value); qp.at_least(row, value);
//   std::optional<SmallVector> x = qp.solve();
//
// Dual active-set method: Goldfarb and Idnani, Mathematical Programming 27
// (1983), 1-33. Deterministic; no allocation in the size of the unknowns.
#pragma once

#include <Eigen/Core>
#include <optional>
#include <vector>

namespace cowlcast::drafting {

inline constexpr int most_unknowns = 8;
using SmallVector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, most_unknowns, 1>;
using SmallMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, most_unknowns, most_unknowns>;

class QuadraticProgram {
 public:
  explicit QuadraticProgram(int unknowns);

  SmallMatrix hessian;   ///< positive definite
  SmallVector gradient;  ///< of the objective at zero

  void equal(const SmallVector& row, double value) { equalities_.push_back({row, value}); }
  void at_least(const SmallVector& row, double value) { inequalities_.push_back({row, value}); }

  /// The minimum of ½ xᵀ hessian x + gradientᵀ x; none when no x meets the constraints.
  std::optional<SmallVector> solve() const;

 private:
  struct Constraint {
    SmallVector row;
    double value;
  };
  std::vector<Constraint> equalities_, inequalities_;
};

}  // namespace cowlcast::drafting
