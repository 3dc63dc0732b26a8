#include "core/place/settle.h"

#include <Eigen/Cholesky>
#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>
#include <type_traits>
#include <utility>

namespace inchwright {
namespace {

constexpr std::uint32_t kHeld = 0xffffffff;

// Two points as far apart as this are no print; steps beyond are cut.
constexpr double kFarthestInches = 1e9;

// One search from one start. `Dense` keeps JᵀJ whole, else as a sparse lower half.
template <bool Dense>
class Search {
 public:
  Search(const Equations& equations, std::span<const std::uint32_t> rows,
         std::span<const std::uint32_t> open, std::span<double> variables,
         const SettleOptions& options)
      : equations_(equations),
        rows_(rows),
        open_(open),
        variables_(variables),
        options_(options),
        gradient_(size()),
        undamped_(size()),
        diagonal_(Eigen::VectorXd::Zero(size())),
        before_(open.size()) {
    if constexpr (Dense) {
      // A small block of many variables: looked up among its own.
      for (std::uint32_t i = 0; i < open.size(); ++i) columns_.push_back({open[i], i});
      std::sort(columns_.begin(), columns_.end());
      normal_.resize(size(), size());
    } else {
      columnOf_.assign(equations.variableCount(), kHeld);
      for (std::uint32_t i = 0; i < open.size(); ++i) columnOf_[open[i]] = i;
    }
  }

  SettleSummary run();

 private:
  Eigen::Index size() const { return static_cast<Eigen::Index>(open_.size()); }

  std::uint32_t columnOf(std::uint32_t variable) const;
  double squares(double& greatest) const;
  void linearise();
  void keepPattern();
  double& onDiagonal(Eigen::Index i);
  bool solveStep(double damping);

  const Equations& equations_;
  std::span<const std::uint32_t> rows_;
  std::span<const std::uint32_t> open_;
  std::span<double> variables_;
  const SettleOptions& options_;
  std::vector<std::pair<std::uint32_t, std::uint32_t>> columns_;
  std::vector<std::uint32_t> columnOf_;
  Eigen::VectorXd gradient_, undamped_, step_;
  Eigen::VectorXd diagonal_;  // the greatest so far
  std::vector<double> before_;

  using Matrix = std::conditional_t<Dense, Eigen::MatrixXd, Eigen::SparseMatrix<double>>;
  using Solver = std::conditional_t<Dense, Eigen::LLT<Eigen::MatrixXd>,
                                    Eigen::SimplicialLLT<Eigen::SparseMatrix<double>>>;
  Matrix normal_;
  Solver solver_;
  bool analysed_ = false;
  std::vector<Eigen::Triplet<double>> triplets_;
  std::vector<Eigen::Index> slots_;  // of the sparse matrix's values, by triplet
  std::vector<std::pair<std::uint32_t, double>> slopes_;
};

template <bool Dense>
std::uint32_t Search<Dense>::columnOf(std::uint32_t variable) const {
  if constexpr (Dense) {
    const auto found = std::lower_bound(columns_.begin(), columns_.end(), std::pair(variable, 0U));
    return found != columns_.end() && found->first == variable ? found->second : kHeld;
  } else {
    return columnOf_[variable];
  }
}

template <bool Dense>
double Search<Dense>::squares(double& greatest) const {
  double sum = 0;
  greatest = 0;
  for (const std::uint32_t row : rows_) {
    const double residual = equations_.evaluate(equations_.rows()[row], variables_).residual;
    sum += residual * residual;
    greatest = std::max(greatest, std::abs(residual));
  }
  return sum;
}

template <bool Dense>
void Search<Dense>::linearise() {
  gradient_.setZero();
  if constexpr (Dense) {
    normal_.setZero();
  } else {
    std::fill_n(normal_.valuePtr(), normal_.nonZeros(), 0.0);
  }
  std::size_t next = 0;
  for (const std::uint32_t index : rows_) {
    const Row& row = equations_.rows()[index];
    const RowValue value = equations_.evaluate(row, variables_);
    slopes_.clear();
    equations_.forEachSlope(row, value, [&](std::uint32_t variable, double slope) {
      const std::uint32_t column = columnOf(variable);
      if (column == kHeld || (Dense && slope == 0)) return;
      for (auto& [known, sum] : slopes_) {
        if (known == column) {
          sum += slope;
          return;
        }
      }
      slopes_.push_back({column, slope});
    });
    for (const auto& [i, a] : slopes_) {
      gradient_[i] += a * value.residual;
      for (const auto& [j, b] : slopes_) {
        if (j > i) continue;
        if constexpr (Dense) {
          normal_(i, j) += a * b;
        } else if (!slots_.empty()) {
          normal_.valuePtr()[slots_[next++]] += a * b;
        } else {
          triplets_.emplace_back(static_cast<int>(i), static_cast<int>(j), a * b);
        }
      }
    }
  }
  if constexpr (!Dense) {
    if (slots_.empty()) keepPattern();
  }
  for (Eigen::Index i = 0; i < size(); ++i) undamped_[i] = onDiagonal(i);
  diagonal_ = diagonal_.cwiseMax(undamped_);
}

// The same entries come in the same order every time: where each goes is looked up once.
template <bool Dense>
void Search<Dense>::keepPattern() {
  if constexpr (!Dense) {
    const std::size_t count = triplets_.size();
    for (int i = 0; i < size(); ++i) triplets_.emplace_back(i, i, 0.0);
    normal_.resize(size(), size());
    normal_.setFromTriplets(triplets_.begin(), triplets_.end());
    for (std::size_t i = 0; i < count; ++i) {
      const auto* outer = normal_.outerIndexPtr() + triplets_[i].col();
      const auto* rows = normal_.innerIndexPtr();
      slots_.push_back(std::lower_bound(rows + outer[0], rows + outer[1], triplets_[i].row()) -
                       rows);
    }
  }
}

template <bool Dense>
double& Search<Dense>::onDiagonal(Eigen::Index i) {
  if constexpr (Dense) {
    return normal_(i, i);
  } else {
    // The first of its column in a lower half.
    return normal_.valuePtr()[normal_.outerIndexPtr()[i]];
  }
}

template <bool Dense>
bool Search<Dense>::solveStep(double damping) {
  // A variable that no row feels at this point is held rather than divided by.
  const double least = options_.leastWeight * std::max(diagonal_.maxCoeff(), 1e-12);
  for (Eigen::Index i = 0; i < size(); ++i) {
    onDiagonal(i) = undamped_[i] + damping * std::max(diagonal_[i], least) + 1e-30;
  }
  if constexpr (Dense) {
    solver_.compute(normal_);
  } else {
    if (!analysed_) solver_.analyzePattern(normal_);
    analysed_ = true;
    solver_.factorize(normal_);
  }
  if (solver_.info() != Eigen::Success) return false;
  step_ = solver_.solve(-gradient_);
  return step_.allFinite();
}

template <bool Dense>
SettleSummary Search<Dense>::run() {
  SettleSummary summary;
  double greatest = 0;
  double sum = squares(greatest);
  double damping = options_.firstDamping;
  double growth = 2;
  bool fresh = true;
  for (; summary.steps < options_.mostSteps && greatest > options_.enough; ++summary.steps) {
    if (fresh) linearise();
    fresh = false;
    double better = sum;
    double trialGreatest = 0;
    bool moved = false;
    if (solveStep(damping)) {
      for (std::size_t i = 0; i < open_.size(); ++i) {
        double& variable = variables_[open_[i]];
        before_[i] = variable;
        variable = std::clamp(variable + step_[static_cast<Eigen::Index>(i)], -kFarthestInches,
                              kFarthestInches);
      }
      moved = true;
      better = squares(trialGreatest);
    }
    if (better < sum) {
      const double expected = step_.dot(damping * diagonal_.cwiseProduct(step_) - gradient_);
      const double ratio = expected > 0 ? (sum - better) / expected : 1;
      const double change = 1 - std::pow(2 * std::min(ratio, 1.5) - 1, 3);
      const bool still = sum - better <= 1e-14 * sum;
      sum = better;
      greatest = trialGreatest;
      damping = std::max(damping * std::max(1.0 / 10, change), 1e-16);
      growth = 2;
      fresh = true;
      if (still) break;
    } else {
      for (std::size_t i = 0; moved && i < open_.size(); ++i) variables_[open_[i]] = before_[i];
      if (damping > 1e12) break;
      damping *= growth;
      growth *= 2;
    }
  }
  summary.residual = greatest;
  if (greatest <= 100 * options_.enough) {
    summary.outcome = SettleOutcome::settled;
  } else {
    summary.outcome =
        summary.steps < options_.mostSteps ? SettleOutcome::stalled : SettleOutcome::unended;
  }
  return summary;
}

}  // namespace

Result<Done> SettleOptions::isValid() const {
  if (mostSteps < 1) return Error{ErrorCode::badRequest, "mostSteps is less than 1", "mostSteps"};
  if (!(enough > 0)) return Error{ErrorCode::badRequest, "enough is not above 0", "enough"};
  if (!(firstDamping > 0)) {
    return Error{ErrorCode::badRequest, "firstDamping is not above 0", "firstDamping"};
  }
  if (!(leastWeight > 0 && leastWeight <= 1)) {
    return Error{ErrorCode::badRequest, "leastWeight is not between 0 and 1", "leastWeight"};
  }
  return Done{};
}

SettleSummary settle(const Equations& equations, std::span<const std::uint32_t> rows,
                     std::span<const std::uint32_t> open, std::span<double> variables,
                     const SettleOptions& options) {
  if (open.empty() || rows.empty()) {
    const double residual = greatestResidual(equations, rows, variables);
    const bool holds = residual <= 100 * options.enough;
    return {holds ? SettleOutcome::settled : SettleOutcome::stalled, 0, residual};
  }
  if (open.size() <= options.denseUpTo) {
    return Search<true>(equations, rows, open, variables, options).run();
  }
  return Search<false>(equations, rows, open, variables, options).run();
}

double greatestResidual(const Equations& equations, std::span<const std::uint32_t> rows,
                        std::span<const double> variables) {
  double greatest = 0;
  for (const std::uint32_t row : rows) {
    greatest =
        std::max(greatest, std::abs(equations.evaluate(equations.rows()[row], variables).residual));
  }
  return greatest;
}

}  // namespace inchwright
