#include "core/chain/polar.h"

#include "core/measure/angle.h"

namespace inchwright {
namespace {

__extension__ typedef __float128 Wide;

// π as three doubles; their sum is right to 2^-160.
Wide pi() {
  return Wide{0x1.921fb54442d18p+1} + Wide{0x1.1a62633145c07p-53} + Wide{-0x1.f1976b7ed8fbcp-109};
}

// Σ (−1)^k x^(2k + first) / (2k + first)!, for |x| ≤ π/4: the cosine (first = 0) or the sine (1).
Wide series(Wide x, int first) {
  Wide term = first == 0 ? Wide{1} : x;
  Wide sum = 0;
  // x^30/30! is below 2^-118 there; what follows does not reach the last bit.
  for (int n = first; n < 32; n += 2) {
    sum += term;
    term *= -x * x / (Wide{1} * ((n + 1) * (n + 2)));
  }
  return sum;
}

// numerator / denominator ticks; the denominator is not 0.
Offset divided(Int128 numerator, Int128 denominator, bool exact = true) {
  return {Rational::of(numerator, denominator).value_or(Rational()), exact};
}

// diameter / 2 · cos or sin of an angle of the first octant.
Offset octantOffset(std::int64_t diameter, const Rational& angle, bool cosine) {
  constexpr std::int64_t kThirty = 30 * Angle::kPerDegree;
  if (angle.isZero()) return cosine ? divided(diameter, 2) : Offset{};
  if (!cosine && angle == Rational(kThirty)) return divided(diameter, 4);
  if (diameter == 0) return {};
  const Wide radians =
      Wide(angle.numerator()) / Wide(angle.denominator()) / Wide(180 * Angle::kPerDegree) * pi();
  const Wide value = Wide(diameter) / 2 * series(radians, cosine ? 0 : 1);
  constexpr Int128 kFinest = Int128{1} << 20;
  return divided(static_cast<Int128>(value * Wide(kFinest) + Wide{0.5}), kFinest, false);
}

Offset negated(Offset offset) {
  return {offset.ticks.negated(), offset.exact};
}

}  // namespace

std::pair<Offset, Offset> polarOffset(std::int64_t diameter, const Rational& microArcseconds) {
  constexpr Int128 kQuarter = Int128{90} * Angle::kPerDegree;
  const Int128 denominator = microArcseconds.denominator();
  const Int128 quarter = kQuarter * denominator;
  Int128 rest = microArcseconds.numerator() % (4 * quarter);
  if (rest < 0) rest += 4 * quarter;
  const int quadrant = static_cast<int>(rest / quarter);
  rest %= quarter;
  // Beyond 45° the other function of the complement serves.
  const bool mirrored = 2 * rest > quarter;
  if (mirrored) rest = quarter - rest;
  // rest < 2^64 · denominator and both were held in a Rational already: `of` cannot fail.
  const Rational angle = Rational::of(rest, denominator).value_or(Rational());
  const Offset cosine = octantOffset(diameter, angle, !mirrored);
  const Offset sine = octantOffset(diameter, angle, mirrored);
  switch (quadrant) {
    case 0:
      return {cosine, sine};
    case 1:
      return {negated(sine), cosine};
    case 2:
      return {negated(cosine), negated(sine)};
    default:
      break;
  }
  return {sine, negated(cosine)};
}

}  // namespace inchwright
