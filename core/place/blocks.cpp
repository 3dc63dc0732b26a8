#include "core/place/blocks.h"

#include <Eigen/LU>
#include <Eigen/SVD>
#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <optional>
#include <utility>

namespace inchwright {
namespace {

constexpr std::uint32_t kNobody = 0xffffffff;
constexpr std::size_t kMostDense = 60;

using SparseRow = std::vector<std::pair<std::uint32_t, double>>;  // by column

// Column numbers of the open variables.
std::vector<std::uint32_t> columnsOf(const Equations& equations,
                                     std::span<const std::uint32_t> open) {
  std::vector<std::uint32_t> columns(equations.variableCount(), kNobody);
  for (std::uint32_t i = 0; i < open.size(); ++i) columns[open[i]] = i;
  return columns;
}

// The slopes of a row by column, those of a variable that comes twice added up. A variable that
// stands in the row stays in it though its slope is 0 here.
SparseRow slopesOf(const Equations& equations, std::uint32_t index, std::span<const double> at,
                   const std::vector<std::uint32_t>& columns) {
  SparseRow out;
  const Row& row = equations.rows()[index];
  equations.forEachSlope(row, equations.evaluateAtRest(row, at),
                         [&](std::uint32_t variable, double slope) {
                           const std::uint32_t column = columns[variable];
                           if (column == kNobody) return;
                           for (auto& [known, sum] : out) {
                             if (known == column) {
                               sum += slope;
                               return;
                             }
                           }
                           out.push_back({column, slope});
                         });
  return out;
}

// Rows in echelon form as they come. Each kept row has no entry in the pivots of earlier ones.
class Echelon {
 public:
  explicit Echelon(std::size_t columns)
      : pivotOf_(columns, kNobody), value_(columns), isIn_(columns) {}

  // Takes a row unless those before it make it already.
  bool take(const SparseRow& row, double threshold) {
    double size = 0;
    for (const auto& [column, slope] : row) {
      put(column, slope);
      size = std::max(size, std::abs(slope));
    }
    // A kept row has no entry in earlier pivots: those still to come are all further on.
    for (std::size_t word = firstWord_; word < endWord_;) {
      if (pivots_[word] == 0) {
        ++word;
        continue;
      }
      const std::size_t kept =
          64 * word + static_cast<std::size_t>(std::countr_zero(pivots_[word]));
      const std::span above(&entries_[start_[kept]], start_[kept + 1] - start_[kept]);
      pivots_[word] &= pivots_[word] - 1;
      const double factor = value_[above[0].first] / above[0].second;
      if (factor == 0) continue;
      for (const auto& [column, slope] : above) put(column, -factor * slope);
      value_[above[0].first] = 0;
    }
    firstWord_ = pivots_.size();
    endWord_ = 0;
    std::size_t greatest = entries_.size();
    for (const std::uint32_t column : touched_) {
      if (std::abs(value_[column]) > threshold * size) {
        entries_.push_back({column, value_[column]});
        if (std::abs(value_[column]) > std::abs(entries_[greatest].second)) {
          greatest = entries_.size() - 1;
        }
      }
      value_[column] = 0;
      isIn_[column] = false;
    }
    touched_.clear();
    if (entries_.size() == start_.back()) return false;
    std::swap(entries_[start_.back()], entries_[greatest]);
    const std::size_t number = start_.size() - 1;
    pivotOf_[entries_[start_.back()].first] = static_cast<std::uint32_t>(number);
    if (number % 64 == 0) pivots_.push_back(0);
    start_.push_back(entries_.size());
    return true;
  }

 private:
  void put(std::uint32_t column, double value) {
    value_[column] += value;
    if (isIn_[column]) return;
    isIn_[column] = true;
    touched_.push_back(column);
    const std::uint32_t pivot = pivotOf_[column];
    if (pivot == kNobody) return;
    pivots_[pivot / 64] |= std::uint64_t{1} << pivot % 64;
    firstWord_ = std::min<std::size_t>(firstWord_, pivot / 64);
    endWord_ = std::max<std::size_t>(endWord_, pivot / 64 + 1);
  }

  std::vector<std::uint32_t> pivotOf_;
  SparseRow entries_;                  // of the kept rows, in each the pivot first
  std::vector<std::size_t> start_{0};  // of each, and the end
  std::vector<double> value_;
  std::vector<char> isIn_;
  std::vector<std::uint32_t> touched_;
  std::vector<std::uint64_t> pivots_;        // that a row is still to be freed of: one bit each
  std::size_t firstWord_ = 0, endWord_ = 0;  // about them
};

// Which variable each row settles, so that no two settle the same: augmenting paths, shortest
// first.
class Matching {
 public:
  Matching(const std::vector<std::vector<std::uint32_t>>& columnsByRow, std::size_t columns)
      : byRow_(columnsByRow), rowOf_(columns, kNobody), columnOf_(columnsByRow.size(), kNobody) {
    for (std::uint32_t row = 0; row < byRow_.size(); ++row) {
      for (const std::uint32_t column : byRow_[row]) {
        if (rowOf_[column] != kNobody) continue;
        rowOf_[column] = row;
        columnOf_[row] = column;
        break;
      }
    }
    std::vector<std::uint32_t> seenBy(columns, kNobody);
    std::vector<std::uint32_t> cameBy(columns, kNobody);
    for (std::uint32_t row = 0; row < byRow_.size(); ++row) {
      if (columnOf_[row] == kNobody) augment(row, seenBy, cameBy);
    }
  }

  std::uint32_t rowOf(std::uint32_t column) const { return rowOf_[column]; }
  std::uint32_t columnOf(std::uint32_t row) const { return columnOf_[row]; }

 private:
  void augment(std::uint32_t start, std::vector<std::uint32_t>& seenBy,
               std::vector<std::uint32_t>& cameBy) {
    std::vector<std::uint32_t> queue{start};
    for (std::size_t i = 0; i < queue.size(); ++i) {
      for (std::uint32_t column : byRow_[queue[i]]) {
        if (seenBy[column] == start) continue;
        seenBy[column] = start;
        cameBy[column] = queue[i];
        if (rowOf_[column] != kNobody) {
          queue.push_back(rowOf_[column]);
          continue;
        }
        while (column != kNobody) {
          const std::uint32_t row = cameBy[column];
          const std::uint32_t next = columnOf_[row];
          rowOf_[column] = row;
          columnOf_[row] = column;
          column = row == start ? kNobody : next;
        }
        return;
      }
    }
  }

  const std::vector<std::vector<std::uint32_t>>& byRow_;
  std::vector<std::uint32_t> rowOf_, columnOf_;
};

// Strongly connected rows, each set behind those it hangs on (Tarjan 1972, without recursion).
std::vector<std::vector<std::uint32_t>> connectedRows(
    const std::vector<std::vector<std::uint32_t>>& columnsByRow, const Matching& matching,
    const std::vector<bool>& leftOut) {
  const auto count = static_cast<std::uint32_t>(columnsByRow.size());
  std::vector<std::uint32_t> number(count, kNobody), low(count), next(count);
  std::vector<bool> onStack(count);
  std::vector<std::uint32_t> stack, path;
  std::vector<std::vector<std::uint32_t>> sets;
  std::uint32_t counter = 0;
  for (std::uint32_t root = 0; root < count; ++root) {
    if (number[root] != kNobody || leftOut[root]) continue;
    path.push_back(root);
    while (!path.empty()) {
      const std::uint32_t row = path.back();
      if (number[row] == kNobody) {
        number[row] = low[row] = counter++;
        stack.push_back(row);
        onStack[row] = true;
      }
      bool descended = false;
      while (next[row] < columnsByRow[row].size()) {
        const std::uint32_t other = matching.rowOf(columnsByRow[row][next[row]++]);
        if (number[other] == kNobody) {
          path.push_back(other);
          descended = true;
          break;
        }
        if (onStack[other]) low[row] = std::min(low[row], number[other]);
      }
      if (descended) continue;
      path.pop_back();
      if (!path.empty()) low[path.back()] = std::min(low[path.back()], low[row]);
      if (low[row] != number[row]) continue;
      sets.emplace_back();
      for (std::uint32_t member = kNobody; member != row;) {
        member = stack.back();
        stack.pop_back();
        onStack[member] = false;
        sets.back().push_back(member);
      }
    }
  }
  return sets;
}

// What an alternating path from a free column reaches: columns and rows.
std::pair<std::vector<bool>, std::vector<bool>> reachedFromFree(
    const std::vector<std::vector<std::uint32_t>>& columnsByRow, const Matching& matching,
    std::size_t columns) {
  std::vector<std::vector<std::uint32_t>> rowsByColumn(columns);
  for (std::uint32_t row = 0; row < columnsByRow.size(); ++row) {
    for (const std::uint32_t column : columnsByRow[row]) rowsByColumn[column].push_back(row);
  }
  std::vector<bool> reached(columns), reachedRow(columnsByRow.size());
  std::vector<std::uint32_t> queue;
  for (std::uint32_t column = 0; column < columns; ++column) {
    if (matching.rowOf(column) != kNobody) continue;
    reached[column] = true;
    queue.push_back(column);
  }
  for (std::size_t i = 0; i < queue.size(); ++i) {
    for (const std::uint32_t row : rowsByColumn[queue[i]]) {
      reachedRow[row] = true;
      const std::uint32_t column = matching.columnOf(row);
      if (reached[column]) continue;
      reached[column] = true;
      queue.push_back(column);
    }
  }
  return {std::move(reached), std::move(reachedRow)};
}

Eigen::MatrixXd slopeMatrix(const Equations& equations, std::span<const std::uint32_t> rows,
                            std::span<const std::uint32_t> open, std::span<const double> at) {
  const auto column = [&](std::uint32_t variable) {
    return std::find(open.begin(), open.end(), variable) - open.begin();
  };
  Eigen::MatrixXd slopes = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(rows.size()),
                                                 static_cast<Eigen::Index>(open.size()));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = equations.rows()[rows[i]];
    equations.forEachSlope(row, equations.evaluateAtRest(row, at),
                           [&](std::uint32_t variable, double slope) {
                             const auto j = column(variable);
                             if (j < slopes.cols())
                               slopes(static_cast<Eigen::Index>(i), j) += slope;
                           });
  }
  return slopes;
}

}  // namespace

Blocks divide(const Equations& equations, std::span<const std::uint32_t> rows,
              std::span<const std::uint32_t> open, std::span<const double> at, double threshold) {
  Blocks blocks;
  const std::vector<std::uint32_t> columns = columnsOf(equations, open);
  Echelon echelon(open.size());
  std::vector<std::uint32_t> chosen;
  std::vector<std::vector<std::uint32_t>> columnsByRow;
  for (const std::uint32_t row : rows) {
    const SparseRow slopes = slopesOf(equations, row, at, columns);
    if (!echelon.take(slopes, threshold)) {
      blocks.spare.push_back(row);
      continue;
    }
    chosen.push_back(row);
    columnsByRow.emplace_back();
    for (const auto& entry : slopes) columnsByRow.back().push_back(entry.first);
  }
  const Matching matching(columnsByRow, open.size());
  const auto [reached, reachedRow] = reachedFromFree(columnsByRow, matching, open.size());
  for (std::uint32_t column = 0; column < open.size(); ++column) {
    if (reached[column]) blocks.loose.push_back(open[column]);
  }
  for (std::uint32_t row = 0; row < chosen.size(); ++row) {
    if (reachedRow[row]) blocks.slack.push_back(chosen[row]);
  }
  for (const auto& set : connectedRows(columnsByRow, matching, reachedRow)) {
    Block block;
    for (const std::uint32_t row : set) {
      block.rows.push_back(chosen[row]);
      block.variables.push_back(open[matching.columnOf(row)]);
    }
    std::sort(block.rows.begin(), block.rows.end());
    std::sort(block.variables.begin(), block.variables.end());
    blocks.inOrder.push_back(std::move(block));
  }
  return blocks;
}

namespace {

// Most blocks are one place by two readings: worked out without the machinery.
using TwoByTwo = std::array<double, 4>;

std::optional<TwoByTwo> twoByTwo(const Equations& equations, const Block& block,
                                 std::span<const double> at) {
  if (block.variables.size() != 2 || block.rows.size() != 2) return std::nullopt;
  TwoByTwo slopes{};
  for (const std::size_t i : {0U, 1U}) {
    const Row& row = equations.rows()[block.rows[i]];
    equations.forEachSlope(row, equations.evaluateAtRest(row, at),
                           [&](std::uint32_t variable, double slope) {
                             if (variable == block.variables[0]) slopes[2 * i] += slope;
                             if (variable == block.variables[1]) slopes[2 * i + 1] += slope;
                           });
  }
  return slopes;
}

}  // namespace

bool isFirm(const Equations& equations, const Block& block, std::span<const double> at) {
  if (const auto m = twoByTwo(equations, block, at)) {
    // The product of the singular values is the determinant, the sum of their squares that of all.
    const auto& [a, b, c, d] = *m;
    const double squares = a * a + b * b + c * c + d * d;
    const double product = std::abs(a * d - b * c);
    const double greatest = std::sqrt(
        (squares + std::sqrt(std::max(squares * squares - 4 * product * product, 0.0))) / 2);
    return greatest > 0 && product >= kFirm * greatest * greatest;
  }
  if (block.variables.size() > kMostDense) {
    const std::vector<std::uint32_t> columns = columnsOf(equations, block.variables);
    Echelon echelon(block.variables.size());
    return std::all_of(block.rows.begin(), block.rows.end(), [&](std::uint32_t row) {
      return echelon.take(slopesOf(equations, row, at, columns), kFirm);
    });
  }
  const Eigen::MatrixXd slopes = slopeMatrix(equations, block.rows, block.variables, at);
  if (slopes.rows() == 1 && slopes.cols() == 1) return std::abs(slopes(0, 0)) >= kFirm;
  // As many rows as variables, which compiles in half the time of any other.
  const Eigen::VectorXd values =
      Eigen::JacobiSVD<Eigen::MatrixXd, Eigen::NoQRPreconditioner>(slopes).singularValues();
  return values[0] > 0 && values[values.size() - 1] >= kFirm * values[0];
}

double leverageOf(const Equations& equations, const Block& block, std::span<const double> at) {
  if (block.variables.size() > kMostDense) return 0;
  if (const auto m = twoByTwo(equations, block, at)) {
    const auto& [a, b, c, d] = *m;
    return std::max({std::abs(a), std::abs(b), std::abs(c), std::abs(d)}) / std::abs(a * d - b * c);
  }
  const Eigen::MatrixXd slopes = slopeMatrix(equations, block.rows, block.variables, at);
  return slopes.fullPivLu().inverse().cwiseAbs().maxCoeff();
}

}  // namespace inchwright
