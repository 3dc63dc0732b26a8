#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>

#include "core/base/rational.h"
#include "core/base/result.h"

namespace inchwright {

/// A sum of numbered things with rational factors; none of the factors is 0.
using Sparse = std::map<std::uint32_t, Rational>;

/// Adds factor · addend to `sum`; false on overflow, when `sum` may be half done.
bool addScaled(Sparse& sum, const Sparse& addend, const Rational& factor);

/// Exact linear equations Σ factor · variable = constant, kept fully reduced as they come: each
/// equation that is independent of the earlier ones expresses one variable by free ones.
///
/// It remembers of which of the given equations each reduced one is made, so that a redundant
/// equation can name what it repeats or contradicts.
class Elimination {
 public:
  /// What a variable comes to: Σ factor · free variable + constant, made of `equations`.
  struct Expression {
    Sparse free;
    Rational constant;
    Sparse equations;

    bool operator==(const Expression&) const = default;
  };

  /// A combination of equations whose left side vanishes: `constant` is 0 or they contradict.
  struct Dependence {
    Sparse equations;
    Rational constant;
  };

  /// Takes an equation; yields the dependence it closes, or nothing when it was independent.
  /// Errors: `outOfRange` when a fraction leaves 128 bits; the object is then of no more use.
  Result<std::optional<Dependence>> add(std::uint32_t equation, const Sparse& factors,
                                        const Rational& constant);

  Expression of(std::uint32_t variable) const;
  bool operator==(const Elimination&) const = default;

 private:
  bool substitute(Sparse& factors, Rational& constant, Sparse& equations) const;
  bool settle(std::uint32_t pivot, Expression expression);

  std::map<std::uint32_t, Expression> settled_;
  std::map<std::uint32_t, std::set<std::uint32_t>> users_;  ///< free variable → settled ones
};

}  // namespace inchwright
