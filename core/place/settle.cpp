#include "core/place/settle.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "core/place/paired_cholesky.h"

namespace inchwright {
namespace {

constexpr std::uint32_t kHeld = 0xffffffff;

// Two points as far apart as this are no print; steps beyond are cut.
constexpr double kFarthestInches = 1e9;
// Of the sum of squares: a step that leaves no more than this was nearly a straight one.
constexpr double kFastFall = 1e-2;

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
        before_(open.size()),
        values_(rows.size()),
        tried_(rows.size()) {
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
  double squares(double& greatest);
  void findSlopes(const Row& row, const RowValue& value);
  void layFactors();
  void linearise();
  bool factorise(double damping);
  bool solveStep();
  void takeStep();
  void takeBack();
  void coast(double& sum, double& greatest);

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
  std::vector<RowValue> values_, tried_;  // of the rows: where they are, where a step led

  Eigen::MatrixXd normal_;  // JᵀJ, its lower half, and its factors
  Eigen::LLT<Eigen::MatrixXd> dense_;
  std::optional<PairedCholesky> sparse_;
  Eigen::VectorXd damped_;
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
double Search<Dense>::squares(double& greatest) {
  double sum = 0;
  greatest = 0;
  for (std::size_t k = 0; k < rows_.size(); ++k) {
    tried_[k] = equations_.evaluate(equations_.rows()[rows_[k]], variables_);
    const double residual = tried_[k].residual;
    sum += residual * residual;
    greatest = std::max(greatest, std::abs(residual));
  }
  return sum;
}

// What a row changes by with each open variable, one that comes twice added up.
template <bool Dense>
void Search<Dense>::findSlopes(const Row& row, const RowValue& value) {
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
}

// The same entries come in the same order every time: where each goes is looked up once.
template <bool Dense>
void Search<Dense>::layFactors() {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> entries;
  for (const std::uint32_t index : rows_) {
    findSlopes(equations_.rows()[index], {});
    for (const auto& [i, a] : slopes_) {
      for (const auto& [j, b] : slopes_) {
        if (j <= i) entries.push_back({i, j});
      }
    }
  }
  sparse_.emplace(static_cast<std::uint32_t>(open_.size()), entries);
}

template <bool Dense>
void Search<Dense>::linearise() {
  gradient_.setZero();
  if constexpr (Dense) {
    normal_.setZero();
  } else {
    if (!sparse_) layFactors();
    sparse_->clear();
  }
  std::size_t next = 0;
  for (std::size_t k = 0; k < rows_.size(); ++k) {
    const RowValue& value = values_[k];
    findSlopes(equations_.rows()[rows_[k]], value);
    for (const auto& [i, a] : slopes_) {
      gradient_[i] += a * value.residual;
      for (const auto& [j, b] : slopes_) {
        if (j > i) continue;
        if constexpr (Dense) {
          normal_(i, j) += a * b;
        } else {
          sparse_->add(next++, a * b);
        }
      }
    }
  }
  for (std::uint32_t i = 0; i < open_.size(); ++i) {
    undamped_[i] = Dense ? normal_(i, i) : sparse_->diagonal(i);
  }
  diagonal_ = diagonal_.cwiseMax(undamped_);
}

template <bool Dense>
bool Search<Dense>::factorise(double damping) {
  // A variable that no row feels at this point is held rather than divided by.
  const double least = options_.leastWeight * std::max(diagonal_.maxCoeff(), 1e-12);
  damped_ = (damping * diagonal_.cwiseMax(least)).array() + 1e-30;
  if constexpr (Dense) {
    normal_.diagonal() = undamped_ + damped_;
    dense_.compute(normal_);
    return dense_.info() == Eigen::Success;
  } else {
    return sparse_->factorise({damped_.data(), open_.size()});
  }
}

template <bool Dense>
bool Search<Dense>::solveStep() {
  step_ = -gradient_;
  if constexpr (Dense) {
    dense_.solveInPlace(step_);
  } else {
    sparse_->solve({step_.data(), open_.size()});
  }
  return step_.allFinite();
}

template <bool Dense>
void Search<Dense>::takeStep() {
  for (std::size_t i = 0; i < open_.size(); ++i) {
    double& variable = variables_[open_[i]];
    before_[i] = variable;
    variable = std::clamp(variable + step_[static_cast<Eigen::Index>(i)], -kFarthestInches,
                          kFarthestInches);
  }
}

template <bool Dense>
void Search<Dense>::takeBack() {
  for (std::size_t i = 0; i < open_.size(); ++i) variables_[open_[i]] = before_[i];
}

// Near the answer slopes hardly change: the factors of the last step lead on for a fifth of what
// new ones cost.
template <bool Dense>
void Search<Dense>::coast(double& sum, double& greatest) {
  for (bool isFast = true; isFast && greatest > options_.enough;) {
    gradient_.setZero();
    for (std::size_t k = 0; k < rows_.size(); ++k) {
      const auto add = [&](std::uint32_t variable, double slope) {
        const std::uint32_t column = columnOf(variable);
        if (column != kHeld) gradient_[column] += slope * values_[k].residual;
      };
      equations_.forEachSlope(equations_.rows()[rows_[k]], values_[k], add);
    }
    if (!solveStep()) return;
    takeStep();
    double trialGreatest = 0;
    const double better = squares(trialGreatest);
    if (!(better < sum)) return takeBack();
    isFast = better < kFastFall * sum;
    sum = better;
    greatest = trialGreatest;
    values_.swap(tried_);
  }
}

template <bool Dense>
SettleSummary Search<Dense>::run() {
  SettleSummary summary;
  double greatest = 0;
  double sum = squares(greatest);
  values_.swap(tried_);
  double damping = options_.firstDamping;
  double growth = 2;
  bool fresh = true;
  for (; summary.steps < options_.mostSteps && greatest > options_.enough; ++summary.steps) {
    if (fresh) linearise();
    fresh = false;
    double better = sum;
    double trialGreatest = 0;
    bool moved = false;
    if (factorise(damping) && solveStep()) {
      takeStep();
      moved = true;
      better = squares(trialGreatest);
    }
    if (better < sum) {
      const double expected = step_.dot(damping * diagonal_.cwiseProduct(step_) - gradient_);
      const double ratio = expected > 0 ? (sum - better) / expected : 1;
      const double change = 1 - std::pow(2 * std::min(ratio, 1.5) - 1, 3);
      const bool still = sum - better <= 1e-14 * sum;
      const bool isFast = better < kFastFall * sum;
      sum = better;
      greatest = trialGreatest;
      values_.swap(tried_);
      damping = std::max(damping * std::max(1.0 / 10, change), 1e-16);
      growth = 2;
      fresh = true;
      if (still) break;
      if (!Dense && isFast) coast(sum, greatest);
    } else {
      if (moved) takeBack();
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
