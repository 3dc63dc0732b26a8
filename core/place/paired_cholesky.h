#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace inchwright {

/// A sparse symmetric positive definite matrix, its factors L·Lᵀ, and what follows from them.
///
/// Rows and columns come in pairs, as the coordinates of places do: two that meet the same others
/// are eliminated as one, in blocks of 2 × 2. What finds no partner stands alone, beside a 1 on the
/// diagonal. The order is of minimum degree, and with the pattern is found once: values may change
/// as often as they like. Rows are factorised one after another (Davis 2006, chapter 4).
class PairedCholesky {
 public:
  /// Where values will come, in the order in which they are added: (row, column), both below
  /// `size`, either way round, as often as wanted. The diagonal is there without being named.
  PairedCholesky(std::uint32_t size,
                 std::span<const std::pair<std::uint32_t, std::uint32_t>> entries);

  /// All to 0, before they are added anew.
  void clear();
  /// Adds to the entry that was named at this number.
  void add(std::size_t number, double value) { values_[slots_[number]] += value; }
  double diagonal(std::uint32_t i) const { return values_[diagonalSlots_[i]]; }

  /// Factorises the matrix with something more on its diagonal. False: it is not positive definite,
  /// and there are no factors.
  bool factorise(std::span<const double> onDiagonal);
  /// Solves in place by the last factors. Requires: there are some.
  void solve(std::span<double> x);

 private:
  struct alignas(16) Pair2x2 {
    double by[4] = {};  // column after column
  };
  // The factor of a diagonal block: 1/l₀₀, l₁₀, 1/l₁₁.
  struct Corner {
    double first, below, second;
  };
  using Entries = std::span<const std::pair<std::uint32_t, std::uint32_t>>;

  void pairUp(Entries entries);
  void order(Entries entries);
  void lay(Entries entries);
  void findFactors();
  bool factoriseRow(std::uint32_t k);

  std::uint32_t size_;
  std::uint32_t nodes_ = 0;
  std::vector<std::uint32_t> at_;  // by variable: twice its place in the order, and which of two
  std::vector<std::uint32_t> neighbourStart_, neighbours_;  // by node: those that it meets

  // The lower triangle row by row, the diagonal last.
  std::vector<std::uint32_t> rowStart_, columns_;
  std::vector<double> values_;  // four a block
  std::vector<std::size_t> slots_, diagonalSlots_;

  // Where factors stand: by row in an order in which it can be solved, by column as they come.
  std::vector<std::uint32_t> reachStart_, reach_;
  std::vector<std::uint32_t> columnStart_, filled_, factorRows_;
  std::vector<Pair2x2> factors_, work_;
  std::vector<Corner> corners_;
  std::vector<double> added_;    // on the diagonal, as ordered
  std::vector<double> ordered_;  // of a solve
};

}  // namespace inchwright
