#pragma once

#include <compare>
#include <cstdint>
#include <optional>

#include "core/base/checked.h"

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

  std::optional<Rational> plus(const Rational& other) const {
    return isWhole() && other.isWhole() ? ofWhole(addChecked(numerator_, other.numerator_))
                                        : plusFraction(other);
  }
  std::optional<Rational> minus(const Rational& other) const {
    return isWhole() && other.isWhole() ? ofWhole(subtractChecked(numerator_, other.numerator_))
                                        : plusFraction(other.negated());
  }
  std::optional<Rational> times(const Rational& other) const;
  /// Empty also when `other` is 0.
  std::optional<Rational> over(const Rational& other) const;
  Rational negated() const {
    Rational result = *this;
    result.numerator_ = -result.numerator_;
    return result;
  }
  Rational magnitude() const { return sign() < 0 ? negated() : *this; }

  /// The nearest whole number, ties away from zero; empty when it does not fit 64 bits.
  std::optional<std::int64_t> rounded() const {
    const auto narrow = static_cast<std::int64_t>(numerator_);
    const bool fits = narrow == numerator_ && narrow != INT64_MIN;
    return isWhole() && fits ? std::optional(narrow) : roundedFraction();
  }
  /// The whole numbers next to it: at or below, and at or above.
  Int128 floor() const;
  Int128 ceiling() const;
  /// For display and plotting only.
  double toDouble() const;

  bool operator==(const Rational&) const = default;
  /// Exact order, never overflows.
  std::strong_ordering operator<=>(const Rational& other) const {
    return isWhole() && other.isWhole() ? numerator_ <=> other.numerator_ : orderTo(other);
  }

 private:
  // Whole numbers, which nearly all are, are worked out where they are asked for.
  static constexpr Int128 kLowest = static_cast<Int128>(1) << 126 << 1;
  static std::optional<Rational> ofWhole(std::optional<Int128> value) {
    if (!value || *value == kLowest) return std::nullopt;
    Rational result;
    result.numerator_ = *value;
    return result;
  }
  std::optional<Rational> plusFraction(const Rational& other) const;
  std::optional<std::int64_t> roundedFraction() const;
  std::strong_ordering orderTo(const Rational& other) const;

  Int128 numerator_ = 0;
  Int128 denominator_ = 1;
};

}  // namespace inchwright
