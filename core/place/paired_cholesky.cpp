#include "core/place/paired_cholesky.h"

#include <Eigen/Core>
#include <Eigen/OrderingMethods>
#include <algorithm>
#include <cmath>

namespace inchwright {
namespace {

constexpr std::uint32_t kNoNode = 0xffffffff;

using Block2x2 = Eigen::Map<Eigen::Matrix2d, Eigen::Aligned16>;
using ConstBlock2x2 = Eigen::Map<const Eigen::Matrix2d, Eigen::Aligned16>;

// Spreads a number over 64 bits (Vigna 2015).
std::uint64_t spread(std::uint64_t number) {
  number = (number + 0x9e3779b97f4a7c15) * 0xbf58476d1ce4e5b9;
  return number ^ (number >> 31);
}

}  // namespace

PairedCholesky::PairedCholesky(std::uint32_t size, Entries entries) : size_(size) {
  pairUp(entries);
  order(entries);
  lay(entries);
  findFactors();
}

// Two variables that stand in the same entries with the same others make a node; where the sums
// agree by chance the node is no better than two, and no worse.
void PairedCholesky::pairUp(Entries entries) {
  std::vector<std::pair<std::uint64_t, std::uint32_t>> company(size_);
  for (std::uint32_t i = 0; i < size_; ++i) company[i].second = i;
  for (const auto& [i, j] : entries) {
    company[i].first += spread(j);
    if (i != j) company[j].first += spread(i);
  }
  std::sort(company.begin(), company.end());
  at_.resize(size_);
  for (std::uint32_t i = 0; i < size_; ++nodes_) {
    const bool hasPartner = i + 1 < size_ && company[i].first == company[i + 1].first;
    at_[company[i++].second] = 2 * nodes_;
    if (hasPartner) at_[company[i++].second] = 2 * nodes_ + 1;
  }
}

// Minimum degree over the nodes; `at_` then counts by it, and so does who meets whom.
void PairedCholesky::order(Entries entries) {
  const auto meeting = [&] {
    neighbourStart_.assign(nodes_ + 2, 0);
    for (const auto& [i, j] : entries) {
      if (at_[i] / 2 != at_[j] / 2) ++neighbourStart_[std::max(at_[i], at_[j]) / 2 + 2];
    }
    for (std::uint32_t k = 2; k < nodes_ + 2; ++k) neighbourStart_[k] += neighbourStart_[k - 1];
    neighbours_.resize(neighbourStart_.back());
    for (const auto& [i, j] : entries) {
      const auto [low, high] = std::minmax({at_[i] / 2, at_[j] / 2});
      if (low != high) neighbours_[neighbourStart_[high + 1]++] = low;
    }
    // Each once.
    std::vector<std::uint32_t> seen(nodes_, kNoNode);
    std::uint32_t next = 0, from = 0;
    for (std::uint32_t k = 0; k < nodes_; ++k) {
      const std::uint32_t to = neighbourStart_[k + 1];
      neighbourStart_[k] = next;
      for (std::uint32_t p = from; p < to; ++p) {
        if (seen[neighbours_[p]] == k) continue;
        seen[neighbours_[p]] = k;
        neighbours_[next++] = neighbours_[p];
      }
      from = to;
    }
    neighbourStart_[nodes_] = next;
  };
  meeting();
  std::vector<Eigen::Triplet<double>> lower;
  for (std::uint32_t k = 0; k < nodes_; ++k) {
    lower.emplace_back(static_cast<int>(k), static_cast<int>(k), 1.0);
    for (std::uint32_t p = neighbourStart_[k]; p < neighbourStart_[k + 1]; ++p) {
      lower.emplace_back(static_cast<int>(k), static_cast<int>(neighbours_[p]), 1.0);
    }
  }
  Eigen::SparseMatrix<double> pattern(nodes_, nodes_);
  pattern.setFromTriplets(lower.begin(), lower.end());
  Eigen::AMDOrdering<int>::PermutationType ordered;
  Eigen::AMDOrdering<int>()(pattern.selfadjointView<Eigen::Lower>(), ordered);
  std::vector<std::uint32_t> placeOf(nodes_);
  for (std::uint32_t k = 0; k < nodes_; ++k) {
    placeOf[static_cast<std::uint32_t>(ordered.indices()[k])] = k;
  }
  for (std::uint32_t& one : at_) one = 2 * placeOf[one / 2] + one % 2;
  meeting();
}

// Where each entry's value goes.
void PairedCholesky::lay(Entries entries) {
  rowStart_.resize(nodes_ + 1);
  for (std::uint32_t k = 0; k < nodes_; ++k) {
    rowStart_[k] = static_cast<std::uint32_t>(columns_.size());
    const auto first = neighbours_.begin();
    columns_.insert(columns_.end(), first + neighbourStart_[k], first + neighbourStart_[k + 1]);
    std::sort(columns_.begin() + rowStart_[k], columns_.end());
    columns_.push_back(k);
  }
  rowStart_[nodes_] = static_cast<std::uint32_t>(columns_.size());
  values_.resize(4 * columns_.size());
  const auto slotOf = [&](std::uint32_t i, std::uint32_t j) {
    const auto [low, high] = std::minmax({at_[i], at_[j]});
    const auto from = columns_.begin() + rowStart_[high / 2];
    const auto to = columns_.begin() + rowStart_[high / 2 + 1];
    const auto block = std::lower_bound(from, to, low / 2) - columns_.begin();
    return 4 * static_cast<std::size_t>(block) + 2 * (low % 2) + high % 2;
  };
  slots_.reserve(entries.size());
  for (const auto& [i, j] : entries) slots_.push_back(slotOf(i, j));
  for (std::uint32_t i = 0; i < size_; ++i) diagonalSlots_.push_back(slotOf(i, i));
  neighbourStart_.clear();
  neighbours_.clear();
}

// The elimination tree, what each row reaches in it, and so how many factors a column holds.
void PairedCholesky::findFactors() {
  std::vector<std::uint32_t> parent(nodes_, kNoNode), seen(nodes_, kNoNode), path;
  columnStart_.assign(nodes_ + 1, 0);
  for (std::uint32_t k = 0; k < nodes_; ++k) {
    reachStart_.push_back(static_cast<std::uint32_t>(reach_.size()));
    seen[k] = k;
    for (std::uint32_t p = rowStart_[k]; p + 1 < rowStart_[k + 1]; ++p) {
      for (std::uint32_t i = columns_[p]; seen[i] != k; i = parent[i]) {
        seen[i] = k;
        if (parent[i] == kNoNode) parent[i] = k;
        reach_.push_back(i);
        ++columnStart_[i + 1];
      }
    }
    // Ascending, each comes behind all that bear on it.
    std::sort(reach_.begin() + reachStart_.back(), reach_.end());
  }
  reachStart_.push_back(static_cast<std::uint32_t>(reach_.size()));
  for (std::uint32_t k = 0; k < nodes_; ++k) columnStart_[k + 1] += columnStart_[k];
  factorRows_.resize(reach_.size());
  factors_.resize(reach_.size());
  work_.resize(nodes_);
  corners_.resize(nodes_);
  ordered_.resize(2 * nodes_);
}

void PairedCholesky::clear() {
  std::fill(values_.begin(), values_.end(), 0.0);
}

bool PairedCholesky::factorise(std::span<const double> onDiagonal) {
  // What stands alone has a partner of 1, which nothing else meets.
  added_.assign(2 * nodes_, 1);
  for (std::uint32_t i = 0; i < size_; ++i) added_[at_[i]] = onDiagonal[i];
  filled_.assign(columnStart_.begin(), columnStart_.end() - 1);
  std::fill(work_.begin(), work_.end(), Pair2x2{});
  for (std::uint32_t k = 0; k < nodes_; ++k) {
    if (!factoriseRow(k)) return false;
  }
  return true;
}

bool PairedCholesky::factoriseRow(std::uint32_t k) {
  const std::uint32_t last = rowStart_[k + 1] - 1;
  for (std::uint32_t p = rowStart_[k]; p < last; ++p) {
    std::copy_n(values_.begin() + 4 * p, 4, work_[columns_[p]].by);
  }
  const double* own = &values_[4 * std::size_t{last}];
  double first = own[0] + added_[2 * k], below = own[1], second = own[3] + added_[2 * k + 1];
  for (std::uint32_t r = reachStart_[k]; r < reachStart_[k + 1]; ++r) {
    const std::uint32_t i = reach_[r];
    Pair2x2 row = work_[i];
    work_[i] = {};
    const Corner& corner = corners_[i];
    for (const std::size_t half : {0U, 1U}) {
      row.by[half] *= corner.first;
      row.by[2 + half] = (row.by[2 + half] - row.by[half] * corner.below) * corner.second;
    }
    const ConstBlock2x2 here(row.by);
    for (std::uint32_t p = columnStart_[i]; p < filled_[i]; ++p) {
      Block2x2(work_[factorRows_[p]].by).noalias() -=
          here.lazyProduct(ConstBlock2x2(factors_[p].by).transpose());
    }
    first -= row.by[0] * row.by[0] + row.by[2] * row.by[2];
    below -= row.by[0] * row.by[1] + row.by[2] * row.by[3];
    second -= row.by[1] * row.by[1] + row.by[3] * row.by[3];
    factorRows_[filled_[i]] = k;
    factors_[filled_[i]++] = row;
  }
  if (!(first > 0)) return false;
  Corner& corner = corners_[k];
  corner.first = 1 / std::sqrt(first);
  corner.below = below * corner.first;
  second -= corner.below * corner.below;
  if (!(second > 0)) return false;
  corner.second = 1 / std::sqrt(second);
  return true;
}

void PairedCholesky::solve(std::span<double> x) {
  std::vector<double>& y = ordered_;
  std::fill(y.begin(), y.end(), 0.0);
  for (std::uint32_t i = 0; i < size_; ++i) y[at_[i]] = x[i];
  for (std::uint32_t k = 0; k < nodes_; ++k) {
    const double a = y[2 * k] * corners_[k].first;
    const double b = (y[2 * k + 1] - corners_[k].below * a) * corners_[k].second;
    y[2 * k] = a;
    y[2 * k + 1] = b;
    for (std::uint32_t p = columnStart_[k]; p < columnStart_[k + 1]; ++p) {
      const double* factor = factors_[p].by;
      y[2 * factorRows_[p]] -= factor[0] * a + factor[2] * b;
      y[2 * factorRows_[p] + 1] -= factor[1] * a + factor[3] * b;
    }
  }
  for (std::uint32_t k = nodes_; k-- > 0;) {
    double a = y[2 * k], b = y[2 * k + 1];
    for (std::uint32_t p = columnStart_[k]; p < columnStart_[k + 1]; ++p) {
      const double* factor = factors_[p].by;
      const double c = y[2 * factorRows_[p]], d = y[2 * factorRows_[p] + 1];
      a -= factor[0] * c + factor[1] * d;
      b -= factor[2] * c + factor[3] * d;
    }
    y[2 * k + 1] = b * corners_[k].second;
    y[2 * k] = (a - corners_[k].below * y[2 * k + 1]) * corners_[k].first;
  }
  for (std::uint32_t i = 0; i < size_; ++i) x[i] = y[at_[i]];
}

}  // namespace inchwright
