#pragma once

#include <compare>
#include <cstdint>
#include <optional>

namespace inchwright {

__extension__ typedef __int128 Int128;

/// An exact fraction, always in lowest terms with a positive denominator.
///
/// Used inside the solver, where a middle or a third of a row need not be a whole tick; it is
/// rounded once, at the end. Numerator and denominator are 128 bits wide. Arithmetic is checked:
/// an operation that would overflow returns empty and never a wrong value.
class Rational {
 public:
  constexpr Rational() = default;
  // Implicit on purpose: every whole number is a fraction.
  constexpr Rational(std::int64_t whole) : numerator_(whole) {}

  /// numerator / denominator in lowest terms; empty when the denominator is 0.
  static std::optional<Rational> of(Int128 numerator, Int128 denominator);

  Int128 numerator() const { return numerator_; }
  Int128 denominator() const { return denominator_; }
  bool isWhole() const { return denominator_ == 1; }
  bool isZero() const { return numerator_ == 0; }
  int sign() const { return numerator_ > 0 ? 1 : numerator_ < 0 ? -1 : 0; }

  std::optional<Rational> plus(const Rational& other) const;
  std::optional<Rational> minus(const Rational& other) const;
  std::optional<Rational> times(const Rational& other) const;
  /// Empty also when `other` is 0.
  std::optional<Rational> over(const Rational& other) const;
  Rational negated() const;
  Rational magnitude() const { return sign() < 0 ? negated() : *this; }

  /// The nearest whole number, ties away from zero; empty when it does not fit 64 bits.
  std::optional<std::int64_t> rounded() const;
  /// The whole numbers next to it: at or below, and at or above.
  Int128 floor() const;
  Int128 ceiling() const;
  /// For display and plotting only.
  double toDouble() const;

  bool operator==(const Rational&) const = default;
  /// Exact order, never overflows.
  std::strong_ordering operator<=>(const Rational& other) const;

 private:
  Int128 numerator_ = 0;
  Int128 denominator_ = 1;
};

}  // namespace inchwright
