#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/graph/elimination.h"

namespace inchwright {

/// A linear program over exact rationals, for small systems: free variables, rows
/// Σ factor · variable ≤ bound, and one objective after another over the same rows.
///
/// The simplex method with Bland's rule (R. G. Bland, New finite pivoting rules for the simplex
/// method, 1977), which never runs in circles. Every step costs rows × variables fractions.
class ExactProgram {
 public:
  explicit ExactProgram(std::uint32_t variables);

  /// Requires: all variables below the count given; not called after `maximise`.
  void addAtMost(const Sparse& factors, const Rational& bound);

  struct Best {
    bool bounded = false;
    Rational value;
    std::vector<std::uint32_t> rows;  ///< those that hold it there, ascending
  };
  /// Errors: `unsolvable` when the rows contradict each other, `outOfRange` when a fraction leaves
  /// 128 bits; the program is then of no more use.
  Result<Best> maximise(const Sparse& objective);

  /// After `unsolvable`: rows that contradict each other, none of which can be spared (they are the
  /// support of an extreme certificate: J. Gleeson and J. Ryan, Identifying minimally infeasible
  /// subsystems of inequalities, 1990). Ascending.
  const std::vector<std::uint32_t>& contradiction() const { return contradiction_; }

 private:
  enum class Step { moved, done, unbounded, tooWide };

  bool isFree(std::uint32_t variable) const { return variable < variables_; }
  bool pivot(std::size_t row, std::size_t column);
  bool subtractRow(std::vector<Rational>& target, const std::vector<Rational>& source,
                   std::size_t column);
  Step improve(std::vector<Rational>& objective);
  std::optional<std::size_t> blockingRow(std::size_t column, int direction, bool& wide) const;
  Result<Done> makeFeasible();
  std::vector<std::uint32_t> rowsIn(const std::vector<Rational>& objective) const;
  std::optional<std::vector<Rational>> inCurrentColumns(const Sparse& objective) const;

  std::uint32_t variables_;
  std::uint32_t columns_;
  bool ready_ = false;
  /// basic_[i] = rows_[i][columns_] + Σ rows_[i][j] · column_[j]. Numbers below `variables_` are
  /// the caller's; the rest are what is left to a row's bound, never below 0.
  std::vector<std::vector<Rational>> rows_;
  std::vector<std::uint32_t> basic_;
  std::vector<std::uint32_t> column_;
  std::vector<std::uint32_t> contradiction_;
};

}  // namespace inchwright
