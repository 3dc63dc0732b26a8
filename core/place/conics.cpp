#include "core/place/conics.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace inchwright {
namespace {

constexpr std::size_t kMostVariables = 6;

// Σ q_ij x_i x_j + Σ l_i x_i + c, about a point near by so that nothing cancels.
struct Polynomial {
  Eigen::MatrixXd quadratic;
  Eigen::VectorXd linear;
  double constant = 0;
};

// A row in a form that is a polynomial where directions stand still; empty for kinds that are none.
std::optional<double> polynomialValue(const Equations& equations, const Row& row,
                                      std::span<const double> variables) {
  std::array<double, kMostOperands> v{};
  for (std::size_t i = 0; i < operandsOf(row.kind); ++i) {
    v[i] = equations.valueOf(row.of[i], variables);
  }
  const auto squared = [](double dx, double dy) { return dx * dx + dy * dy; };
  switch (row.kind) {
    case RowKind::distance: {
      const double length = v[6] + row.signA * v[4] + row.signB * v[5];
      return squared(v[2] - v[0], v[3] - v[1]) - length * length;
    }
    case RowKind::direction: {
      const double angle = row.signA * v[4] + v[5];
      return std::cos(angle) * (v[3] - v[1]) - std::sin(angle) * (v[2] - v[0]);
    }
    case RowKind::inLine:
      return (v[4] - v[0]) * (v[3] - v[1]) - (v[5] - v[1]) * (v[2] - v[0]);
    case RowKind::spacing:
      return squared(v[2] - v[0], v[3] - v[1]) - squared(v[4] - v[2], v[5] - v[3]);
    case RowKind::turn: {
      const double angle = std::atan2(v[7] - v[5], v[6] - v[4]) + v[8];
      return std::cos(angle) * (v[3] - v[1]) - std::sin(angle) * (v[2] - v[0]);
    }
    case RowKind::off:
    case RowKind::same:
    case RowKind::halved:
    case RowKind::across:
      break;
  }
  return equations.evaluate(row, variables).residual;
}

// The operands of a row that turn it, and so must not move.
std::pair<std::size_t, std::size_t> turningOperands(RowKind kind) {
  switch (kind) {
    case RowKind::direction:
      return {4, 6};
    case RowKind::turn:
      return {4, 9};
    case RowKind::off:
      return {2, 3};
    case RowKind::halved:
    case RowKind::across:
      return {4, 5};
    default:
      return {0, 0};
  }
}

bool isPolynomial(const Equations& equations, const Row& row, const Block& block) {
  const auto [first, last] = turningOperands(row.kind);
  for (std::size_t i = first; i < last; ++i) {
    for (const Term& term : equations.termsOf(row.of[i])) {
      if (std::find(block.variables.begin(), block.variables.end(), term.variable) !=
          block.variables.end()) {
        return false;
      }
    }
  }
  return true;
}

// Fits the polynomial of a row about the start, by values at the start and at points a step off.
std::optional<Polynomial> polynomialOf(const Equations& equations, const Row& row,
                                       const Block& block, std::span<double> at) {
  if (!isPolynomial(equations, row, block)) return std::nullopt;
  const std::size_t count = block.variables.size();
  const double step = 1;
  const auto value = [&] { return polynomialValue(equations, row, at).value_or(0); };
  const auto n = static_cast<Eigen::Index>(count);
  Polynomial out{Eigen::MatrixXd::Zero(n, n), Eigen::VectorXd::Zero(n), value()};
  std::vector<double> up(count), down(count);
  for (std::size_t i = 0; i < count; ++i) {
    double& one = at[block.variables[i]];
    const double kept = one;
    one = kept + step;
    up[i] = value();
    one = kept - step;
    down[i] = value();
    one = kept;
    const auto k = static_cast<Eigen::Index>(i);
    out.linear[k] = (up[i] - down[i]) / (2 * step);
    out.quadratic(k, k) = (up[i] + down[i] - 2 * out.constant) / (2 * step * step);
  }
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      double& one = at[block.variables[i]];
      double& other = at[block.variables[j]];
      const double keptOne = one, keptOther = other;
      one += step;
      other += step;
      const double both = value();
      one = keptOne;
      other = keptOther;
      const auto a = static_cast<Eigen::Index>(i), b = static_cast<Eigen::Index>(j);
      const double mixed = (both - up[i] - up[j] + out.constant) / (2 * step * step);
      out.quadratic(a, b) = out.quadratic(b, a) = mixed;
    }
  }
  return out;
}

std::vector<std::vector<double>> asAnswers(const Block& block, std::span<const double> at,
                                           const std::vector<Eigen::VectorXd>& moves) {
  std::vector<std::vector<double>> answers;
  for (const Eigen::VectorXd& move : moves) {
    if (!move.allFinite()) continue;
    answers.emplace_back();
    for (std::size_t i = 0; i < block.variables.size(); ++i) {
      answers.back().push_back(at[block.variables[i]] + move[static_cast<Eigen::Index>(i)]);
    }
  }
  return answers;
}

// Where a polynomial vanishes on base + t·way. Just missing counts as touching: the rows decide.
std::vector<Eigen::VectorXd> along(const Polynomial& p, const Eigen::VectorXd& base,
                                   const Eigen::VectorXd& way) {
  const double a = way.dot(p.quadratic * way);
  const double b = 2 * base.dot(p.quadratic * way) + p.linear.dot(way);
  const double c = base.dot(p.quadratic * base) + p.linear.dot(base) + p.constant;
  if (std::abs(a) < 1e-12) {
    if (std::abs(b) < 1e-12) return {};
    return {base - c / b * way};
  }
  const double inside = b * b - 4 * a * c;
  if (inside <= 0) return {base - b / (2 * a) * way};
  const double q = -(b + std::copysign(std::sqrt(inside), b)) / 2;
  return {base + q / a * way, base + c / q * way};
}

}  // namespace

std::optional<std::vector<std::vector<double>>> conicAnswers(const Equations& equations,
                                                             std::span<const Row> rows,
                                                             const Block& block,
                                                             std::span<double> at) {
  const std::size_t count = block.variables.size();
  if (count > kMostVariables || rows.size() != count) return std::nullopt;
  std::vector<Polynomial> linear;
  std::optional<Polynomial> curved;
  for (const Row& row : rows) {
    auto polynomial = polynomialOf(equations, row, block, at);
    if (!polynomial) return std::nullopt;
    const double size = std::max({polynomial->quadratic.cwiseAbs().maxCoeff(),
                                  polynomial->linear.cwiseAbs().maxCoeff(), 1e-300});
    if (polynomial->quadratic.cwiseAbs().maxCoeff() < 1e-11 * size) {
      linear.push_back(std::move(*polynomial));
      continue;
    }
    if (!curved) {
      curved = std::move(polynomial);
      continue;
    }
    const double share = (polynomial->quadratic.cwiseProduct(curved->quadratic)).sum() /
                         curved->quadratic.squaredNorm();
    Polynomial left{polynomial->quadratic - share * curved->quadratic,
                    polynomial->linear - share * curved->linear,
                    polynomial->constant - share * curved->constant};
    if (left.quadratic.cwiseAbs().maxCoeff() > 1e-10 * size) return std::nullopt;
    linear.push_back(std::move(left));
  }
  const auto n = static_cast<Eigen::Index>(count);
  Eigen::MatrixXd factors(static_cast<Eigen::Index>(linear.size()), n);
  Eigen::VectorXd right(static_cast<Eigen::Index>(linear.size()));
  for (std::size_t i = 0; i < linear.size(); ++i) {
    const double size = std::max(linear[i].linear.norm(), 1e-300);
    factors.row(static_cast<Eigen::Index>(i)) = linear[i].linear.transpose() / size;
    right[static_cast<Eigen::Index>(i)] = -linear[i].constant / size;
  }
  if (!curved) {
    const Eigen::FullPivLU<Eigen::MatrixXd> solver(factors);
    if (!solver.isInvertible()) return asAnswers(block, at, {});
    return asAnswers(block, at, {solver.solve(right)});
  }
  if (linear.empty()) {
    return asAnswers(block, at, along(*curved, Eigen::VectorXd::Zero(n), Eigen::VectorXd::Ones(n)));
  }
  const Eigen::FullPivLU<Eigen::MatrixXd> solver(factors);
  const Eigen::MatrixXd kernel = solver.kernel();
  // Concentric circles, parallel lines: nothing in common, or everything.
  if (solver.rank() != n - 1 || kernel.cols() != 1) return asAnswers(block, at, {});
  return asAnswers(block, at, along(*curved, solver.solve(right), kernel.col(0).normalized()));
}

std::optional<std::vector<std::vector<double>>> lineAnswers(const Equations& equations,
                                                            std::span<const Row> rows,
                                                            const Block& block,
                                                            std::span<const double> at) {
  if (rows.size() != 2 || block.variables.size() != 2) return std::nullopt;
  const auto isAlone = [&](std::uint32_t quantity, std::uint32_t variable) {
    const auto terms = equations.termsOf(quantity);
    return terms.size() == 1 && terms[0].variable == variable && terms[0].factor == 1;
  };
  std::array<double, 2> x{}, y{}, apart{};
  for (std::size_t i = 0; i < 2; ++i) {
    const Row& row = rows[i];
    if (row.kind != RowKind::off || !isAlone(row.of[2], block.variables[0]) ||
        !isAlone(row.of[3], block.variables[1])) {
      return std::nullopt;
    }
    for (const std::size_t held : {0U, 1U, 4U, 5U}) {
      for (const Term& term : equations.termsOf(row.of[held])) {
        if (term.variable == block.variables[0] || term.variable == block.variables[1]) {
          return std::nullopt;
        }
      }
    }
    x[i] = equations.valueOf(row.of[0], at);
    y[i] = equations.valueOf(row.of[1], at);
    apart[i] =
        row.signB * equations.valueOf(row.of[4], at) + row.signA * equations.valueOf(row.of[5], at);
  }
  const double length = std::hypot(x[1] - x[0], y[1] - y[0]);
  std::vector<std::vector<double>> answers;
  if (length < 1e-12) return answers;
  const double way = std::atan2(y[1] - y[0], x[1] - x[0]);
  // n·(P1 − P0) = length · sin(way − t) is the difference of the distances.
  const double sine = std::clamp((apart[1] - apart[0]) / length, -1.0, 1.0);
  for (const double turn : {std::asin(sine), std::numbers::pi - std::asin(sine)}) {
    const double t = way - turn;
    answers.push_back({t, std::cos(t) * y[0] - std::sin(t) * x[0] - apart[0]});
  }
  return answers;
}

}  // namespace inchwright
