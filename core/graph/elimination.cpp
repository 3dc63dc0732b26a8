#include "core/graph/elimination.h"

#include <vector>

namespace inchwright {
namespace {

Error tooWide() {
  return {ErrorCode::outOfRange, "the understandings lead to fractions beyond the exact range", ""};
}

// sum + factor · addend.
std::optional<Rational> plusScaled(const Rational& sum, const Rational& addend,
                                   const Rational& factor) {
  const auto product = addend.times(factor);
  return product ? sum.plus(*product) : std::nullopt;
}

}  // namespace

bool addScaled(Sparse& sum, const Sparse& addend, const Rational& factor) {
  for (const auto& [key, value] : addend) {
    const auto found = sum.find(key);
    const auto total = plusScaled(found == sum.end() ? Rational(0) : found->second, value, factor);
    if (!total) return false;
    if (total->isZero()) {
      if (found != sum.end()) sum.erase(found);
    } else {
      sum[key] = *total;
    }
  }
  return true;
}

// Replaces settled variables by what they come to.
bool Elimination::substitute(Sparse& factors, Rational& constant, Sparse& equations) const {
  std::vector<std::pair<const Expression*, Rational>> replacements;
  for (const auto& [variable, factor] : factors) {
    const auto found = settled_.find(variable);
    if (found != settled_.end()) replacements.push_back({&found->second, factor});
  }
  std::erase_if(factors, [&](const auto& one) { return settled_.count(one.first) != 0; });
  for (const auto& [expression, factor] : replacements) {
    const auto rest = plusScaled(constant, expression->constant, factor.negated());
    if (!rest || !addScaled(factors, expression->free, factor) ||
        !addScaled(equations, expression->equations, factor.negated())) {
      return false;
    }
    constant = *rest;
  }
  return true;
}

// Puts a newly settled variable into every expression that still uses it, and keeps its own.
bool Elimination::settle(std::uint32_t pivot, Expression expression) {
  const std::set<std::uint32_t> users = std::move(users_[pivot]);
  users_.erase(pivot);
  for (const std::uint32_t user : users) {
    Expression& old = settled_.at(user);
    const Rational factor = old.free.at(pivot);
    old.free.erase(pivot);
    for (const auto& one : old.free) users_[one.first].erase(user);
    const auto constant = plusScaled(old.constant, expression.constant, factor);
    if (!constant || !addScaled(old.free, expression.free, factor) ||
        !addScaled(old.equations, expression.equations, factor)) {
      return false;
    }
    old.constant = *constant;
    for (const auto& one : old.free) users_[one.first].insert(user);
  }
  for (const auto& one : expression.free) users_[one.first].insert(pivot);
  settled_.emplace(pivot, std::move(expression));
  return true;
}

Result<std::optional<Elimination::Dependence>> Elimination::add(std::uint32_t equation,
                                                                const Sparse& factors,
                                                                const Rational& constant) {
  Sparse left = factors;
  Rational right = constant;
  Sparse made{{equation, Rational(1)}};
  if (!substitute(left, right, made)) return tooWide();
  if (left.empty()) return std::optional(Dependence{std::move(made), right});

  // The variable that fewest expressions use: least to rewrite. Of those the one with the largest
  // factor, so that a middle is expressed by its two ends rather than an end by the middle.
  std::uint32_t pivot = left.begin()->first;
  std::size_t fewest = static_cast<std::size_t>(-1);
  for (const auto& one : left) {
    const auto found = users_.find(one.first);
    const std::size_t uses = found == users_.end() ? 0 : found->second.size();
    if (uses < fewest || (uses == fewest && one.second.magnitude() > left.at(pivot).magnitude())) {
      fewest = uses;
      pivot = one.first;
    }
  }
  const auto scale = Rational(1).over(left.at(pivot));
  left.erase(pivot);
  Expression expression;
  const auto scaled = scale ? right.times(*scale) : std::nullopt;
  if (!scaled || !addScaled(expression.free, left, scale->negated()) ||
      !addScaled(expression.equations, made, *scale)) {
    return tooWide();
  }
  expression.constant = *scaled;
  if (!settle(pivot, std::move(expression))) return tooWide();
  return std::optional<Dependence>();
}

Elimination::Expression Elimination::of(std::uint32_t variable) const {
  const auto found = settled_.find(variable);
  if (found != settled_.end()) return found->second;
  return {{{variable, Rational(1)}}, Rational(0), {}};
}

}  // namespace inchwright
