#pragma once

#include <span>
#include <vector>

namespace inchwright {

/// A dense system of more equations than unknowns, or as many.
struct LeastSquaresSystem {
  std::size_t rows = 0;
  std::size_t columns = 0;
  std::vector<double> design;  ///< row after row
  std::vector<double> right;   ///< one for each row

  LeastSquaresSystem(std::size_t equations, std::size_t unknowns)
      : rows(equations), columns(unknowns), design(equations * unknowns), right(equations) {}
  double& at(std::size_t row, std::size_t column) { return design[row * columns + column]; }
};

struct LeastSquaresSolution {
  std::size_t rank = 0;
  std::vector<double> unknowns;
};

/// By Householder's QR with pivoted columns, in double precision. A column counts towards the rank
/// while its pivot exceeds `threshold` times the largest. Cost: rows × columns².
LeastSquaresSolution solveLeastSquares(const LeastSquaresSystem& system, double threshold);

}  // namespace inchwright
