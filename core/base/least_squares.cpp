#include "core/base/least_squares.h"

#include <Eigen/QR>

namespace inchwright {

LeastSquaresSolution solveLeastSquares(const LeastSquaresSystem& system, double threshold) {
  using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  const auto rows = static_cast<Eigen::Index>(system.rows);
  const auto columns = static_cast<Eigen::Index>(system.columns);
  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> factors(
      Eigen::Map<const RowMajor>(system.design.data(), rows, columns));
  factors.setThreshold(threshold);
  LeastSquaresSolution solution;
  solution.rank = static_cast<std::size_t>(factors.rank());
  const Eigen::VectorXd unknowns =
      factors.solve(Eigen::Map<const Eigen::VectorXd>(system.right.data(), rows));
  solution.unknowns.assign(unknowns.data(), unknowns.data() + columns);
  return solution;
}

}  // namespace inchwright
