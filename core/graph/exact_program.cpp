#include "core/graph/exact_program.h"

#include <algorithm>

namespace inchwright {
namespace {

constexpr std::uint32_t kHelper = 0xfffffffe;  ///< the variable that makes a first point possible

Error programTooWide() {
  return {ErrorCode::outOfRange, "the exact fractions of this system leave their range", ""};
}

}  // namespace

ExactProgram::ExactProgram(std::uint32_t variables) : variables_(variables), columns_(variables) {
  for (std::uint32_t i = 0; i < variables; ++i) column_.push_back(i);
}

void ExactProgram::addAtMost(const Sparse& factors, const Rational& bound) {
  std::vector<Rational> row(columns_ + 1);
  for (const auto& [variable, factor] : factors) row[variable] = factor.negated();
  row[columns_] = bound;
  basic_.push_back(variables_ + static_cast<std::uint32_t>(rows_.size()));
  rows_.push_back(std::move(row));
}

// target has a part of what `column` stood for; puts in its place what that comes to now.
bool ExactProgram::subtractRow(std::vector<Rational>& target, const std::vector<Rational>& source,
                               std::size_t column) {
  const Rational factor = target[column];
  if (factor.isZero()) return true;
  target[column] = Rational(0);
  for (std::size_t j = 0; j < source.size(); ++j) {
    if (source[j].isZero()) continue;
    const auto product = source[j].times(factor);
    const auto sum = product ? target[j].plus(*product) : std::nullopt;
    if (!sum) return false;
    target[j] = *sum;
  }
  return true;
}

bool ExactProgram::pivot(std::size_t row, std::size_t column) {
  std::vector<Rational>& own = rows_[row];
  const auto inverse = Rational(1).over(own[column]);
  if (!inverse) return false;
  own[column] = Rational(-1);
  for (Rational& value : own) {
    if (value.isZero()) continue;
    const auto scaled = value.times(inverse->negated());
    if (!scaled) return false;
    value = *scaled;
  }
  std::swap(basic_[row], column_[column]);
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (i != row && !subtractRow(rows_[i], own, column)) return false;
  }
  return true;
}

// The bound that is met first when a column grows (or shrinks); ties to the lowest number.
std::optional<std::size_t> ExactProgram::blockingRow(std::size_t column, int direction,
                                                     bool& wide) const {
  std::optional<std::size_t> blocking;
  Rational least;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (isFree(basic_[i])) continue;
    const Rational& factor = rows_[i][column];
    if (factor.sign() * direction >= 0) continue;
    const auto ratio = rows_[i][columns_].over(factor);
    if (!ratio) {
      wide = true;
      return std::nullopt;
    }
    const Rational room = ratio->magnitude();
    const bool better = !blocking || room < least;
    if (!better && !(room == least && basic_[i] < basic_[*blocking])) continue;
    blocking = i;
    least = room;
  }
  return blocking;
}

ExactProgram::Step ExactProgram::improve(std::vector<Rational>& objective) {
  std::optional<std::size_t> entering;
  for (std::size_t j = 0; j < columns_; ++j) {
    const int sign = objective[j].sign();
    if (sign == 0 || (sign < 0 && !isFree(column_[j]))) continue;
    if (!entering || column_[j] < column_[*entering]) entering = j;
  }
  if (!entering) return Step::done;
  bool wide = false;
  const auto row = blockingRow(*entering, objective[*entering].sign(), wide);
  if (wide) return Step::tooWide;
  if (!row) return Step::unbounded;
  if (!pivot(*row, *entering)) return Step::tooWide;
  return subtractRow(objective, rows_[*row], *entering) ? Step::moved : Step::tooWide;
}

// Widens every bound by one helper, and brings that down to nothing.
Result<Done> ExactProgram::makeFeasible() {
  ready_ = true;
  std::size_t worst = rows_.size();
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (rows_[i][columns_].sign() >= 0) continue;
    if (worst == rows_.size() || rows_[i][columns_] < rows_[worst][columns_]) worst = i;
  }
  if (worst == rows_.size()) return Done{};
  for (std::vector<Rational>& row : rows_) row.insert(row.end() - 1, Rational(1));
  column_.push_back(kHelper);
  ++columns_;
  if (!pivot(worst, columns_ - 1)) return programTooWide();
  std::vector<Rational> objective = rows_[worst];
  for (Rational& value : objective) value = value.negated();
  for (;;) {
    const Step step = improve(objective);
    if (step == Step::tooWide) return programTooWide();
    if (step != Step::moved) break;
  }
  if (!objective[columns_].isZero()) {
    contradiction_ = rowsIn(objective);
    return Error{ErrorCode::unsolvable, "these bounds contradict each other", ""};
  }
  const auto held = std::find(basic_.begin(), basic_.end(), kHelper);
  if (held != basic_.end()) {
    const auto row = static_cast<std::size_t>(held - basic_.begin());
    std::size_t column = 0;
    while (column < columns_ && rows_[row][column].isZero()) ++column;
    if (column < columns_ && !pivot(row, column)) return programTooWide();
  }
  const auto at = std::find(column_.begin(), column_.end(), kHelper);
  if (at != column_.end()) {
    for (std::vector<Rational>& row : rows_) row.erase(row.begin() + (at - column_.begin()));
    column_.erase(at);
    --columns_;
  }
  return Done{};
}

std::optional<std::vector<Rational>> ExactProgram::inCurrentColumns(const Sparse& objective) const {
  std::vector<Rational> current(columns_ + 1);
  for (std::size_t j = 0; j < columns_; ++j) {
    const auto found = objective.find(column_[j]);
    if (found != objective.end()) current[j] = found->second;
  }
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const auto found = objective.find(basic_[i]);
    if (found == objective.end()) continue;
    for (std::size_t j = 0; j <= columns_; ++j) {
      const auto product = rows_[i][j].times(found->second);
      const auto sum = product ? current[j].plus(*product) : std::nullopt;
      if (!sum) return std::nullopt;
      current[j] = *sum;
    }
  }
  return current;
}

// The rows whose bounds an objective is up against.
std::vector<std::uint32_t> ExactProgram::rowsIn(const std::vector<Rational>& objective) const {
  std::vector<std::uint32_t> rows;
  for (std::size_t j = 0; j < columns_; ++j) {
    if (objective[j].isZero() || isFree(column_[j]) || column_[j] == kHelper) continue;
    rows.push_back(column_[j] - variables_);
  }
  std::sort(rows.begin(), rows.end());
  return rows;
}

Result<ExactProgram::Best> ExactProgram::maximise(const Sparse& objective) {
  if (!ready_) {
    const Result<Done> feasible = makeFeasible();
    if (!feasible) return feasible.error();
  }
  auto current = inCurrentColumns(objective);
  if (!current) return programTooWide();
  for (;;) {
    const Step step = improve(*current);
    if (step == Step::tooWide) return programTooWide();
    if (step == Step::unbounded) return Best{};
    if (step == Step::done) break;
  }
  return Best{true, (*current)[columns_], rowsIn(*current)};
}

}  // namespace inchwright
