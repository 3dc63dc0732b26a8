#include "core/tolerance/adjust.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "core/base/least_squares.h"
#include "core/chain/label.h"
#include "core/graph/forest.h"

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

/// The unknowns of the normal equations.
struct Unknowns {
  std::map<std::uint32_t, double> fixed;
  std::map<std::uint32_t, std::size_t> column;
};

Result<Unknowns> unknownsOf(std::uint32_t nodes, const std::vector<Observation>& observed,
                            const std::vector<std::pair<std::uint32_t, double>>& fixed) {
  if (fixed.empty()) return Error{ErrorCode::badRequest, "one place has to be fixed", ""};
  Unknowns unknowns;
  Sets sets(nodes);
  for (const auto& [node, value] : fixed) {
    unknowns.fixed[node] = value;
    sets.unite(fixed.front().first, node);
  }
  for (const Observation& one : observed) {
    if (!(one.deviation > 0)) {
      return Error{ErrorCode::badRequest, "a deviation is greater than 0", one.label};
    }
    sets.unite(one.from, one.to);
  }
  for (const Observation& one : observed) {
    if (sets.find(one.from) != sets.find(fixed.front().first)) {
      return Error{ErrorCode::unsolvable, "nothing joins this to what is fixed", one.label};
    }
    for (const std::uint32_t node : {one.from, one.to}) {
      if (unknowns.fixed.count(node) != 0) continue;
      unknowns.column.emplace(node, unknowns.column.size());
    }
  }
  return unknowns;
}

/// The columns in which an observation's row of the design has something; two at most.
std::vector<std::size_t> columnsOf(const Unknowns& unknowns, const Observation& one) {
  std::vector<std::size_t> columns;
  for (const std::uint32_t node : {one.from, one.to}) {
    const auto column = unknowns.column.find(node);
    if (column != unknowns.column.end()) columns.push_back(column->second);
  }
  return columns;
}

}  // namespace

Result<Adjustment> adjustDifferences(std::uint32_t nodes, const std::vector<Observation>& observed,
                                     const std::vector<std::pair<std::uint32_t, double>>& fixed) {
  const Result<Unknowns> unknowns = unknownsOf(nodes, observed, fixed);
  if (!unknowns) return unknowns.error();
  const std::size_t rows = observed.size();
  const std::size_t columns = unknowns->column.size();
  LeastSquaresSystem system(rows, columns);
  for (std::size_t i = 0; i < rows; ++i) {
    const Observation& one = observed[i];
    system.right[i] = one.value / one.deviation;
    for (const auto& [node, sign] : {std::pair(one.from, -1.0), std::pair(one.to, 1.0)}) {
      const auto column = unknowns->column.find(node);
      if (column != unknowns->column.end()) {
        system.at(i, column->second) += sign / one.deviation;
      } else {
        system.right[i] -= sign * unknowns->fixed.at(node) / one.deviation;
      }
    }
  }
  const double threshold = std::numeric_limits<double>::epsilon() * static_cast<double>(columns);
  const LeastSquaresSolution solved = solveLeastSquares(system, threshold, true);
  const auto cofactor = [&](std::size_t i, std::size_t j) {
    return solved.cofactor[i * columns + j];
  };

  Adjustment result;
  for (const auto& [node, value] : unknowns->fixed) result.places.push_back({node, value, 0});
  for (const auto& [node, column] : unknowns->column) {
    result.places.push_back({node, solved.unknowns[column], std::sqrt(cofactor(column, column))});
  }
  std::sort(result.places.begin(), result.places.end(),
            [](const auto& a, const auto& b) { return a.node < b.node; });
  result.freedom = static_cast<int>(rows) - static_cast<int>(columns);
  double largest = kOneInAThousand;
  for (std::size_t i = 0; i < rows; ++i) {
    double residual = -system.right[i];
    double spare = 1;
    const std::vector<std::size_t> members = columnsOf(*unknowns, observed[i]);
    for (const std::size_t column : members) {
      residual += system.at(i, column) * solved.unknowns[column];
      for (const std::size_t across : members) {
        spare -= system.at(i, column) * cofactor(column, across) * system.at(i, across);
      }
    }
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
  return result;
}

std::vector<Observation> observationsOf(const Part& part, const ToleranceNetwork& network) {
  std::vector<Observation> observed;
  double closest = 0;
  for (const TolerancedLink& link : network.links) {
    const double deviation = static_cast<double>(link.width()) / 6;
    if (deviation > 0 && (closest == 0 || deviation < closest)) closest = deviation;
  }
  if (closest == 0) closest = static_cast<double>(Length::kTicksPerInch) / 1000;
  for (const TolerancedLink& link : network.links) {
    const double deviation =
        link.width() > 0 ? static_cast<double>(link.width()) / 6 : closest / 10;
    const double middle = (static_cast<double>(link.low) + static_cast<double>(link.high)) / 2;
    observed.push_back({labelOf(part, link.source), link.from, link.to, middle, deviation});
  }
  return observed;
}

}  // namespace inchwright
