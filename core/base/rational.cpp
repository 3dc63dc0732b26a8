#include "core/base/rational.h"

#include <limits>
#include <numeric>

namespace inchwright {
namespace {

__extension__ typedef unsigned __int128 UInt128;

UInt128 bare(Int128 value) {
  return value < 0 ? UInt128{0} - static_cast<UInt128>(value) : static_cast<UInt128>(value);
}

UInt128 greatestCommonDivisor(UInt128 a, UInt128 b) {
  constexpr UInt128 kNarrow = std::numeric_limits<std::uint64_t>::max();
  if (a == 1 || b == 1) return 1;
  while (b != 0) {
    if (a <= kNarrow && b <= kNarrow) {
      return std::gcd(static_cast<std::uint64_t>(a), static_cast<std::uint64_t>(b));
    }
    const UInt128 rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

/// A wide division is the dearest step of all; most fractions are in lowest terms already.
Int128 divided(Int128 value, UInt128 common) {
  return common == 1 ? value : value / static_cast<Int128>(common);
}

// Floor division for a positive divisor.
Int128 floorDivide(Int128 a, Int128 b) {
  const Int128 quotient = a / b;
  return (a % b < 0) ? quotient - 1 : quotient;
}

}  // namespace

std::optional<Rational> Rational::of(Int128 numerator, Int128 denominator) {
  if (denominator == 0 || numerator == kLowest || denominator == kLowest) {
    return std::nullopt;
  }
  const UInt128 common = greatestCommonDivisor(bare(numerator), bare(denominator));
  Rational result;
  result.numerator_ = divided(numerator, common);
  result.denominator_ = divided(denominator, common);
  if (result.denominator_ < 0) {
    result.numerator_ = -result.numerator_;
    result.denominator_ = -result.denominator_;
  }
  return result;
}

std::optional<Rational> Rational::plusFraction(const Rational& other) const {
  // Over the least common denominator, which keeps the intermediates as small as they can be.
  const Int128 common =
      static_cast<Int128>(greatestCommonDivisor(bare(denominator_), bare(other.denominator_)));
  const Int128 scaleThis = other.denominator_ / common;
  const Int128 scaleOther = denominator_ / common;
  const auto a = multiplyChecked(numerator_, scaleThis);
  const auto b = multiplyChecked(other.numerator_, scaleOther);
  const auto denominator = multiplyChecked(denominator_, scaleThis);
  if (!a || !b || !denominator) return std::nullopt;
  const auto sum = addChecked(*a, *b);
  if (!sum) return std::nullopt;
  return of(*sum, *denominator);
}

std::optional<Rational> Rational::times(const Rational& other) const {
  if (isZero() || other.isZero()) return Rational(0);
  const UInt128 crossA = greatestCommonDivisor(bare(numerator_), bare(other.denominator_));
  const UInt128 crossB = greatestCommonDivisor(bare(other.numerator_), bare(denominator_));
  const auto numerator =
      multiplyChecked(divided(numerator_, crossA), divided(other.numerator_, crossB));
  const auto denominator =
      multiplyChecked(divided(denominator_, crossB), divided(other.denominator_, crossA));
  if (!numerator || !denominator || *numerator == kLowest) return std::nullopt;
  // Nothing is left in common, and both denominators were positive.
  Rational result;
  result.numerator_ = *numerator;
  result.denominator_ = *denominator;
  return result;
}

std::optional<Rational> Rational::over(const Rational& other) const {
  const auto inverse = of(other.denominator_, other.numerator_);
  if (!inverse) return std::nullopt;
  return times(*inverse);
}

std::optional<std::int64_t> Rational::roundedFraction() const {
  const UInt128 size = bare(numerator_);
  const UInt128 divisor = static_cast<UInt128>(denominator_);
  UInt128 whole = size / divisor;
  const UInt128 rest = size % divisor;
  if (rest >= divisor - rest) ++whole;
  if (whole > static_cast<UInt128>(std::numeric_limits<std::int64_t>::max())) return std::nullopt;
  const auto value = static_cast<std::int64_t>(whole);
  return numerator_ < 0 ? -value : value;
}

Int128 Rational::floor() const {
  const Int128 quotient = numerator_ / denominator_;
  return numerator_ % denominator_ < 0 ? quotient - 1 : quotient;
}

Int128 Rational::ceiling() const {
  const Int128 quotient = numerator_ / denominator_;
  return numerator_ % denominator_ > 0 ? quotient + 1 : quotient;
}

double Rational::toDouble() const {
  return static_cast<double>(numerator_) / static_cast<double>(denominator_);
}

std::strong_ordering Rational::orderTo(const Rational& other) const {
  // Compare whole parts, then the reciprocals of what is left: a continued fraction, so that no
  // cross product can overflow.
  Int128 a = numerator_, b = denominator_, c = other.numerator_, d = other.denominator_;
  bool swapped = false;
  for (;;) {
    const Int128 wholeA = floorDivide(a, b), wholeC = floorDivide(c, d);
    if (wholeA != wholeC) {
      const auto order = wholeA <=> wholeC;
      return swapped ? 0 <=> order : order;
    }
    const Int128 restA = a - wholeA * b, restC = c - wholeC * d;
    if (restA == 0 || restC == 0) {
      const auto order =
          restA == 0 ? (restC == 0 ? std::strong_ordering::equal : std::strong_ordering::less)
                     : std::strong_ordering::greater;
      return swapped ? 0 <=> order : order;
    }
    a = b;
    b = restA;
    c = d;
    d = restC;
    swapped = !swapped;
  }
}

}  // namespace inchwright
