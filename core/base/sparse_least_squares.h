#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

namespace inchwright {

/// Σ factor · unknown = right, counted `weight` times; no unknown comes up twice. One of weight 0
/// is only asked for its variance.
struct SparseRow {
  std::vector<std::pair<std::uint32_t, double>> terms;
  double right = 0;
  double weight = 1;
};

struct SparseFit {
  std::vector<double> unknowns;
  /// By row: the variance of Σ factor · unknown, where one of weight w has the variance 1/w.
  std::vector<double> variances;
};

/// Weighted least squares of few unknowns a row, in double precision: by the normal equations'
/// sparse LDLᵀ with two steps of refinement, the variances from those entries of the inverse that
/// the factor has (K. Takahashi, J. Fagan, M.-S. Chin, 1973). Empty when the rows leave an unknown
/// open. Two rows x = 9 and x = 11 give 10, with a variance of 1/2 each.
///
/// Cost: that of the factor, nearly linear for chains and trees.
std::optional<SparseFit> fitSparse(std::uint32_t unknowns, const std::vector<SparseRow>& rows);

}  // namespace inchwright
