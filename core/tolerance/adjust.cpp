#include "core/tolerance/adjust.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/sparse_least_squares.h"
#include "core/graph/elimination.h"
#include "core/graph/forest.h"
#include "core/tolerance/grouped_network.h"

namespace inchwright {
namespace {

constexpr double kOneInAThousand = 3.29;  ///< of a normal residual, either way
constexpr double kNothingChecks = 1e-9;

// The upper tail of chi-square: by the regularised incomplete gamma function, as a series below
// and a continued fraction above (Abramowitz and Stegun 6.5.29, 6.5.31).
double chanceBeyond(double squares, int freedom) {
  const double a = freedom / 2.0;
  const double x = squares / 2;
  if (x <= 0) return 1;
  const double lead = std::exp(-x + a * std::log(x) - std::lgamma(a));
  if (x < a + 1) {
    double term = 1 / a;
    double sum = term;
    for (int n = 1; n < 10'000 && term > sum * 1e-15; ++n) {
      term *= x / (a + n);
      sum += term;
    }
    return 1 - sum * lead;
  }
  constexpr double kTiny = 1e-300;
  double b = x + 1 - a;
  double c = 1 / kTiny;
  double d = 1 / b;
  double fraction = d;
  for (int n = 1; n < 10'000; ++n) {
    const double factor = -n * (n - a);
    b += 2;
    d = factor * d + b;
    if (std::fabs(d) < kTiny) d = kTiny;
    c = b + factor / c;
    if (std::fabs(c) < kTiny) c = kTiny;
    d = 1 / d;
    fraction *= d * c;
    if (std::fabs(d * c - 1) < 1e-15) break;
  }
  return fraction * lead;
}

/// A value as a fraction, fine enough that nothing is lost that doubles hold of a length.
Rational exactOf(double value) {
  constexpr std::int64_t kParts = std::int64_t{1} << 30;
  return Rational::of(static_cast<Int128>(std::llround(value)) * kParts +
                          std::llround((value - std::round(value)) * kParts),
                      kParts)
      .value_or(Rational());
}

Error contradicts(std::uint32_t number) {
  return {ErrorCode::unsolvable, "what is exact contradicts what is held", std::to_string(number)};
}

/// The fixed nodes and the conditions, solved for as many nodes as there are independent ones.
Result<Elimination> exactly(const std::vector<std::pair<std::uint32_t, double>>& fixed,
                            const std::vector<Condition>& conditions) {
  Elimination elimination;
  const auto add = [&](const Sparse& factors, const Rational& sum,
                       std::uint32_t number) -> std::optional<Error> {
    // Which equation an expression is made of is not asked for: one number for all.
    const auto added = elimination.add(0, factors, sum);
    if (!added) return added.error();
    if (*added && std::fabs((*added)->constant.toDouble()) > 1) return contradicts(number);
    return std::nullopt;
  };
  for (const auto& [node, value] : fixed) {
    if (const auto failed = add({{node, Rational(1)}}, exactOf(value), node)) return *failed;
  }
  for (std::uint32_t i = 0; i < conditions.size(); ++i) {
    Sparse factors;
    for (const auto& [node, factor] : conditions[i].terms) {
      addScaled(factors, {{node, Rational(factor)}}, Rational(1));
    }
    if (const auto failed = add(factors, conditions[i].sum, i)) return *failed;
  }
  return elimination;
}

/// Nodes as sums of the unknowns that are left.
class Unknowns {
 public:
  explicit Unknowns(const Elimination& elimination) : elimination_(elimination) {}

  /// factor · node into a row, its constant off the right side.
  void addTo(SparseRow& row, std::uint32_t node, double factor) {
    const Elimination::Expression expression = elimination_.of(node);
    row.right -= factor * expression.constant.toDouble();
    for (const auto& [free, share] : expression.free) {
      const auto column =
          static_cast<std::uint32_t>(columns_.emplace(free, columns_.size()).first->second);
      const auto same = std::find_if(row.terms.begin(), row.terms.end(),
                                     [&](const auto& term) { return term.first == column; });
      if (same == row.terms.end()) {
        row.terms.emplace_back(column, factor * share.toDouble());
      } else {
        same->second += factor * share.toDouble();
      }
    }
  }

  std::uint32_t count() const { return static_cast<std::uint32_t>(columns_.size()); }

 private:
  const Elimination& elimination_;
  std::map<std::uint32_t, std::size_t> columns_;
};

std::optional<Error> faultOf(const std::vector<Observation>& observed,
                             const std::vector<std::pair<std::uint32_t, double>>& fixed) {
  if (fixed.empty()) return Error{ErrorCode::badRequest, "one place has to be fixed", ""};
  for (std::size_t i = 0; i < observed.size(); ++i) {
    if (observed[i].deviation > 0) continue;
    return Error{ErrorCode::badRequest, "a deviation is greater than 0", std::to_string(i)};
  }
  return std::nullopt;
}

/// Residuals, their sum and what stands out, from the rows of the observations.
void judge(const std::vector<Observation>& observed, const std::vector<SparseRow>& rows,
           const SparseFit& fit, Adjustment& result) {
  double largest = kOneInAThousand;
  for (std::size_t i = 0; i < observed.size(); ++i) {
    double residual = -rows[i].right;
    for (const auto& [column, factor] : rows[i].terms) residual += factor * fit.unknowns[column];
    residual /= observed[i].deviation;
    const double spare = 1 - fit.variances[i] / (observed[i].deviation * observed[i].deviation);
    result.squares += residual * residual;
    const double normalised = spare > kNothingChecks ? residual / std::sqrt(spare) : 0;
    result.residuals.push_back({residual * observed[i].deviation, normalised});
    if (result.freedom < 2 || std::fabs(normalised) <= largest) continue;
    largest = std::fabs(normalised);
    result.blunder = i;
  }
  if (result.freedom > 0) {
    result.s0 = std::sqrt(result.squares / result.freedom);
    result.chance = chanceBeyond(result.squares, result.freedom);
  }
}

}  // namespace

Result<Adjustment> adjustDifferences(std::uint32_t nodes, const std::vector<Observation>& observed,
                                     const std::vector<std::pair<std::uint32_t, double>>& fixed,
                                     const std::vector<Condition>& conditions) {
  if (const auto fault = faultOf(observed, fixed)) return *fault;
  const Result<Elimination> exact = exactly(fixed, conditions);
  if (!exact) return exact.error();
  Unknowns unknowns(*exact);
  std::set<std::uint32_t> places;
  std::vector<SparseRow> rows;
  for (const Observation& one : observed) {
    places.insert({one.from, one.to});
    SparseRow row{{}, one.value, 1 / (one.deviation * one.deviation)};
    unknowns.addTo(row, one.from, -1);
    unknowns.addTo(row, one.to, 1);
    rows.push_back(std::move(row));
  }
  for (const auto& [node, value] : fixed) places.insert(node);
  for (const Condition& one : conditions) {
    for (const auto& [node, factor] : one.terms) places.insert(node);
  }
  for (const std::uint32_t node : places) {
    if (node >= nodes) return Error{ErrorCode::badRequest, "there is no such node", ""};
    rows.push_back({{}, 0, 0});
    unknowns.addTo(rows.back(), node, 1);
  }
  const std::optional<SparseFit> fit = fitSparse(unknowns.count(), rows);
  if (!fit) return Error{ErrorCode::unsolvable, "nothing joins some of it to what is fixed", ""};
  Adjustment result;
  std::size_t row = observed.size();
  for (const std::uint32_t node : places) {
    double value = -rows[row].right;
    for (const auto& [column, factor] : rows[row].terms) value += factor * fit->unknowns[column];
    result.places.push_back({node, value, std::sqrt(std::max(0.0, fit->variances[row]))});
    ++row;
  }
  result.freedom = static_cast<int>(observed.size()) - static_cast<int>(unknowns.count());
  judge(observed, rows, *fit, result);
  return result;
}

}  // namespace inchwright
