#include "core/base/sparse_least_squares.h"

#include <Eigen/SparseCholesky>
#include <algorithm>

namespace inchwright {
namespace {

using Matrix = Eigen::SparseMatrix<double>;
using Factor = Eigen::SimplicialLDLT<Matrix>;

constexpr double kOpen = 1e-13;  ///< of its own row's weight: such a pivot is rounding alone

Matrix normalMatrix(std::uint32_t unknowns, const std::vector<SparseRow>& rows) {
  std::vector<Eigen::Triplet<double>> entries;
  for (const SparseRow& row : rows) {
    for (const auto& [i, a] : row.terms) {
      for (const auto& [j, b] : row.terms) {
        entries.emplace_back(static_cast<int>(i), static_cast<int>(j), row.weight * a * b);
      }
    }
  }
  Matrix normal(unknowns, unknowns);
  normal.setFromTriplets(entries.begin(), entries.end());
  return normal;
}

bool isOpen(const Matrix& normal, const Factor& factor) {
  if (factor.info() != Eigen::Success) return true;
  const Eigen::VectorXd pivots = factor.vectorD();
  const Eigen::VectorXd own = factor.permutationP() * Eigen::VectorXd(normal.diagonal());
  for (Eigen::Index i = 0; i < pivots.size(); ++i) {
    if (!(pivots[i] > kOpen * own[i])) return true;
  }
  return false;
}

double sumOf(const SparseRow& row, const Eigen::VectorXd& unknowns) {
  double sum = 0;
  for (const auto& [i, factor] : row.terms) sum += factor * unknowns[i];
  return sum;
}

/// The entries of the inverse of L D Lᵀ at which L has one, from the last column on:
/// Z = D⁻¹ L⁻¹ + (1 − Lᵀ) Z.
class InverseEntries {
 public:
  explicit InverseEntries(const Factor& factor)
      : lower_(factor.matrixL().nestedExpression()),
        place_(factor.permutationP().indices()),
        diagonal_(factor.vectorD().cwiseInverse()),
        below_(static_cast<std::size_t>(lower_.nonZeros())) {
    for (Eigen::Index column = lower_.cols() - 1; column >= 0; --column) fill(column);
  }

  double at(std::uint32_t row, std::uint32_t column) const {
    return inPlace(place_[static_cast<Eigen::Index>(row)],
                   place_[static_cast<Eigen::Index>(column)]);
  }

 private:
  void fill(Eigen::Index column) {
    const int* rows = lower_.innerIndexPtr();
    const double* factors = lower_.valuePtr();
    const int begin = lower_.outerIndexPtr()[column], end = lower_.outerIndexPtr()[column + 1];
    for (int at = begin; at < end; ++at) {
      double sum = 0;
      for (int k = begin; k < end; ++k) sum += inPlace(rows[at], rows[k]) * factors[k];
      below_[static_cast<std::size_t>(at)] = -sum;
    }
    for (int k = begin; k < end; ++k) {
      diagonal_[column] -= below_[static_cast<std::size_t>(k)] * factors[k];
    }
  }

  double inPlace(int row, int column) const {
    if (row == column) return diagonal_[row];
    if (row < column) std::swap(row, column);
    const int* rows = lower_.innerIndexPtr();
    const int* end = rows + lower_.outerIndexPtr()[column + 1];
    const int* found = std::lower_bound(rows + lower_.outerIndexPtr()[column], end, row);
    return found != end && *found == row ? below_[static_cast<std::size_t>(found - rows)] : 0;
  }

  const Matrix& lower_;
  Eigen::VectorXi place_;
  Eigen::VectorXd diagonal_;
  std::vector<double> below_;
};

}  // namespace

std::optional<SparseFit> fitSparse(std::uint32_t unknowns, const std::vector<SparseRow>& rows) {
  SparseFit fit;
  fit.variances.assign(rows.size(), 0);
  if (unknowns == 0) return fit;
  const Matrix normal = normalMatrix(unknowns, rows);
  const Factor factor(normal);
  if (isOpen(normal, factor)) return std::nullopt;
  Eigen::VectorXd solved = Eigen::VectorXd::Zero(unknowns);
  for (int step = 0; step < 3; ++step) {
    Eigen::VectorXd left = Eigen::VectorXd::Zero(unknowns);
    for (const SparseRow& row : rows) {
      const double missing = row.weight * (row.right - sumOf(row, solved));
      for (const auto& [i, a] : row.terms) left[i] += a * missing;
    }
    solved += factor.solve(left);
  }
  fit.unknowns.assign(solved.data(), solved.data() + unknowns);
  const InverseEntries inverse(factor);
  for (std::size_t number = 0; number < rows.size(); ++number) {
    for (const auto& [i, a] : rows[number].terms) {
      for (const auto& [j, b] : rows[number].terms) {
        fit.variances[number] += a * b * inverse.at(i, j);
      }
    }
  }
  return fit;
}

}  // namespace inchwright
