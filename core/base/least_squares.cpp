#include "core/base/least_squares.h"

#include <Eigen/QR>

namespace inchwright {

LeastSquaresSolution solveLeastSquares(const LeastSquaresSystem& system, double threshold,
                                       bool wantsCofactor) {
  using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  const auto rows = static_cast<Eigen::Index>(system.rows);
  const auto columns = static_cast<Eigen::Index>(system.columns);
  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> factors(
      Eigen::Map<const RowMajor>(system.design.data(), rows, columns));
  factors.setThreshold(threshold);
  const auto solveFor = [&](const Eigen::VectorXd& right) -> Eigen::VectorXd {
    return factors.solve(right);
  };
  LeastSquaresSolution solution;
  solution.rank = static_cast<std::size_t>(factors.rank());
  const Eigen::VectorXd unknowns =
      solveFor(Eigen::Map<const Eigen::VectorXd>(system.right.data(), rows));
  solution.unknowns.assign(unknowns.data(), unknowns.data() + columns);
  if (!wantsCofactor) return solution;
  // With the pseudo-inverse P of the design D, P Pᵀ is the inverse of DᵀD; column by column of P.
  solution.cofactor.assign(system.columns * system.columns, 0);
  for (Eigen::Index row = 0; row < rows; ++row) {
    const Eigen::VectorXd column = solveFor(Eigen::VectorXd::Unit(rows, row));
    for (std::size_t i = 0; i < system.columns; ++i) {
      for (std::size_t j = 0; j < system.columns; ++j) {
        solution.cofactor[i * system.columns + j] +=
            column(static_cast<Eigen::Index>(i)) * column(static_cast<Eigen::Index>(j));
      }
    }
  }
  return solution;
}

}  // namespace inchwright
