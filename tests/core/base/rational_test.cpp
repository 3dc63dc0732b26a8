#include "core/base/rational.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include "core/base/checked.h"

namespace inchwright {
namespace {

constexpr Int128 kTwo126 = Int128{1} << 126;
constexpr Int128 kMost = kTwo126 - 1 + kTwo126;  // 2^127 - 1
constexpr Int128 kLeast = -kMost - 1;

Rational of(Int128 over, Int128 under) {
  return *Rational::of(over, under);
}

TEST(Rational, IsKeptInLowestTermsWithAPositiveDenominator) {
  EXPECT_TRUE(of(6, 8).numerator() == 3 && of(6, 8).denominator() == 4);
  EXPECT_TRUE(of(6, -8).numerator() == -3 && of(6, -8).denominator() == 4);
  EXPECT_TRUE(of(-6, -8).numerator() == 3);
  EXPECT_TRUE(of(0, -5).denominator() == 1);
  EXPECT_EQ(of(0, 7), Rational(0));
  EXPECT_TRUE(of(kMost, kMost) == Rational(1));
  EXPECT_TRUE(of(4, 2).isWhole());
  EXPECT_FALSE(of(3, 2).isWhole());
}

TEST(Rational, RefusesAZeroDenominatorAndTheLowestInteger) {
  EXPECT_FALSE(Rational::of(1, 0));
  EXPECT_FALSE(Rational::of(0, 0));
  EXPECT_FALSE(Rational::of(kLeast, 1));
  EXPECT_FALSE(Rational::of(1, kLeast));
  EXPECT_TRUE(Rational::of(kMost, 1));
  EXPECT_FALSE(Rational(1).over(Rational(0)));
}

TEST(Rational, OverflowReturnsEmpty) {
  const Rational most = of(kMost, 1);
  EXPECT_FALSE(most.plus(Rational(1)));
  EXPECT_FALSE(most.negated().minus(Rational(1)));
  EXPECT_FALSE(most.times(Rational(2)));
  EXPECT_FALSE(of(1, kMost).over(Rational(2)));
  EXPECT_FALSE(of(1, kMost).plus(of(1, kMost - 1)));
  // What cancels must not overflow on the way.
  EXPECT_EQ(*most.times(of(1, kMost)), Rational(1));
  EXPECT_EQ(*most.over(most), Rational(1));
  EXPECT_EQ(*most.minus(most), Rational(0));
  EXPECT_EQ(*of(1, kMost).plus(of(-1, kMost)), Rational(0));
  EXPECT_EQ(*most.times(Rational(0)), Rational(0));
}

TEST(Rational, HasTheWholeNumbersNextToIt) {
  const auto floor = [](Int128 over, Int128 under) {
    return static_cast<std::int64_t>(of(over, under).floor());
  };
  const auto ceiling = [](Int128 over, Int128 under) {
    return static_cast<std::int64_t>(of(over, under).ceiling());
  };
  EXPECT_EQ(floor(7, 2), 3);
  EXPECT_EQ(ceiling(7, 2), 4);
  EXPECT_EQ(floor(-7, 2), -4);
  EXPECT_EQ(ceiling(-7, 2), -3);
  EXPECT_EQ(floor(1, 3), 0);
  EXPECT_EQ(ceiling(-1, 3), 0);
  EXPECT_EQ(floor(-6, 3), -2);
  EXPECT_EQ(ceiling(-6, 3), -2);
  EXPECT_TRUE(of(kMost, 1).floor() == kMost && of(-kMost, 1).ceiling() == -kMost);
}

TEST(Checked, NarrowsOnlyWhatFits) {
  constexpr Int128 kMost64 = std::numeric_limits<std::int64_t>::max();
  EXPECT_EQ(narrowed<std::int64_t>(kMost64), std::numeric_limits<std::int64_t>::max());
  EXPECT_EQ(narrowed<std::int64_t>(-kMost64 - 1), std::numeric_limits<std::int64_t>::min());
  EXPECT_FALSE(narrowed<std::int64_t>(kMost64 + 1));
  EXPECT_FALSE(narrowed<std::int64_t>(-kMost64 - 2));
}

TEST(Rational, ArithmeticAgreesWithCrossMultiplication) {
  for (int a = -6; a <= 6; ++a) {
    for (int b = 1; b <= 6; ++b) {
      for (int c = -6; c <= 6; ++c) {
        for (int d = 1; d <= 6; ++d) {
          const Rational x = of(a, b), y = of(c, d);
          ASSERT_EQ(*x.plus(y), of(a * d + c * b, b * d));
          ASSERT_EQ(*x.minus(y), of(a * d - c * b, b * d));
          ASSERT_EQ(*x.times(y), of(a * c, b * d));
          if (c != 0) {
            ASSERT_EQ(*x.over(y), of(a * d, b * c));
          }
          ASSERT_EQ(x < y, a * d < c * b);
          ASSERT_EQ(x == y, a * d == c * b);
          ASSERT_EQ(x > y, a * d > c * b);
        }
      }
    }
  }
}

TEST(Rational, RoundsTiesAwayFromZeroLikeBruteForce) {
  for (int over = -400; over <= 400; ++over) {
    for (int under = 1; under <= 24; ++under) {
      // The nearest whole number by trying them all; of two as near the one further from zero.
      const int size = std::abs(over);
      int best = 0;
      for (int whole = 0; whole <= size + 1; ++whole) {
        if (std::abs(whole * under - size) <= std::abs(best * under - size)) best = whole;
      }
      ASSERT_EQ(of(over, under).rounded(), over < 0 ? -best : best) << over << '/' << under;
    }
  }
}

TEST(Rational, RoundingKnowsTheRangeOf64Bits) {
  const Int128 most = INT64_MAX;
  EXPECT_EQ(of(most, 1).rounded(), INT64_MAX);
  EXPECT_EQ(of(-most, 1).rounded(), -INT64_MAX);
  EXPECT_FALSE(of(most + 1, 1).rounded());
  EXPECT_EQ(of(4 * most + 1, 4).rounded(), INT64_MAX);
  EXPECT_FALSE(of(2 * most + 1, 2).rounded());  // a tie that goes beyond
  EXPECT_EQ(of(1, kMost).rounded(), 0);
  EXPECT_EQ(of(kMost - 1, kMost).rounded(), 1);
}

TEST(Rational, OrderNeverOverflows) {
  // Neighbours whose cross products need 254 bits.
  const Rational low = of(kMost - 2, kMost - 1), high = of(kMost - 1, kMost);
  EXPECT_LT(low, high);
  EXPECT_GT(low.negated(), high.negated());
  EXPECT_LT(of(1, kMost), of(1, kMost - 1));
  EXPECT_LT(of(-kMost, 1), of(kMost, 1));
  EXPECT_LT(Rational(0), of(1, kMost));
  EXPECT_GT(Rational(0), of(-1, kMost));
  EXPECT_EQ(of(kMost, 3) <=> of(kMost, 3), std::strong_ordering::equal);
}

TEST(Rational, OrderIsTotalOverRandomWideFractions) {
  constexpr std::uint64_t kSeed = 20'240'520;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  std::vector<Rational> numbers;
  for (int i = 0; i < 400; ++i) {
    const auto wide = [&] {
      const Int128 high = static_cast<Int128>(random() >> 1);
      return (high << 63 | static_cast<Int128>(random() >> 1)) >> (random() % 126);
    };
    const Int128 under = wide();
    numbers.push_back(of(random() % 2 == 0 ? wide() : -wide(), under == 0 ? 1 : under));
  }
  for (const Rational& a : numbers) {
    for (const Rational& b : numbers) {
      ASSERT_EQ(a<b, b> a);
      ASSERT_EQ(a == b, (a <=> b) == std::strong_ordering::equal);
      // A long double holds 64 bits: where it tells the two apart by more than its error, we agree.
      const auto value = [](const Rational& r) {
        return static_cast<long double>(r.numerator()) / static_cast<long double>(r.denominator());
      };
      const long double gap = value(a) - value(b);
      if (std::fabs(gap) > 1e-15L * (std::fabs(value(a)) + std::fabs(value(b)))) {
        ASSERT_EQ(a > b, gap > 0);
      }
    }
  }
}

TEST(Rational, LawsHoldOverRandomFractions) {
  constexpr std::uint64_t kSeed = 20'240'520;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  const auto any = [&] {
    const auto over = static_cast<std::int64_t>(random() >> (random() % 40 + 23)) - 1000;
    return of(over, static_cast<std::int64_t>(random() >> 34) + 1);
  };
  for (int i = 0; i < 20'000; ++i) {
    const Rational a = any(), b = any();
    ASSERT_EQ(*a.plus(b), *b.plus(a));
    ASSERT_EQ(*a.plus(b)->minus(b), a);
    ASSERT_EQ(*a.times(b), *b.times(a));
    if (!b.isZero()) {
      ASSERT_EQ(*a.times(b)->over(b), a);
    }
    ASSERT_EQ(a.negated().rounded(), -*a.rounded());
    ASSERT_EQ(a.sign(), -a.negated().sign());
  }
}

TEST(Rational, ToDoubleIsForDisplay) {
  EXPECT_EQ(of(3, 16).toDouble(), 0.1875);
  EXPECT_EQ(of(-1, 2).toDouble(), -0.5);
}

}  // namespace
}  // namespace inchwright
