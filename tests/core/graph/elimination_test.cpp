#include "core/graph/elimination.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>
#include <vector>

namespace inchwright {
namespace {

Rational ratio(std::int64_t a, std::int64_t b) {
  return *Rational::of(a, b);
}

TEST(Elimination, MiddleOfTwo) {
  Elimination elimination;
  // x0 − 2 x1 + x2 = 3
  const auto first = elimination.add(0, {{0, 1}, {1, -2}, {2, 1}}, 3);
  ASSERT_TRUE(first.ok());
  EXPECT_FALSE(first->has_value());
  // x2 − x0 = 8 leaves one free variable: x1 = x0 + 5/2.
  const auto second = elimination.add(1, {{0, -1}, {2, 1}}, 8);
  ASSERT_TRUE(second.ok());
  EXPECT_FALSE(second->has_value());
  const auto x0 = elimination.of(0), x1 = elimination.of(1), x2 = elimination.of(2);
  EXPECT_EQ(x0.free, x1.free);
  EXPECT_EQ(x0.free, x2.free);
  EXPECT_EQ(x1.constant.minus(x0.constant), ratio(5, 2));
  EXPECT_EQ(x2.constant.minus(x0.constant), Rational(8));
}

TEST(Elimination, NamesWhatARedundantEquationRepeats) {
  Elimination elimination;
  ASSERT_TRUE(elimination.add(0, {{0, -1}, {1, 1}}, 2).ok());
  ASSERT_TRUE(elimination.add(1, {{5, -1}, {6, 1}}, 9).ok());
  ASSERT_TRUE(elimination.add(2, {{1, -1}, {2, 1}}, 3).ok());
  const auto agrees = elimination.add(3, {{0, -2}, {2, 2}}, 10);
  ASSERT_TRUE(agrees.ok() && agrees->has_value());
  EXPECT_TRUE((*agrees)->constant.isZero());
  EXPECT_EQ((*agrees)->equations, (Sparse{{0, -2}, {2, -2}, {3, 1}}));
  const auto clashes = elimination.add(4, {{0, -1}, {2, 1}}, 6);
  ASSERT_TRUE(clashes.ok() && clashes->has_value());
  EXPECT_EQ((*clashes)->constant, Rational(1));
  EXPECT_EQ((*clashes)->equations, (Sparse{{0, -1}, {2, -1}, {4, 1}}));
}

TEST(Elimination, EmptyEquation) {
  Elimination elimination;
  const auto result = elimination.add(7, {}, 0);
  ASSERT_TRUE(result.ok() && result->has_value());
  EXPECT_EQ((*result)->equations, (Sparse{{7, 1}}));
}

TEST(Elimination, RefusesWhatLeavesTheRange) {
  Elimination elimination;
  const std::int64_t big = std::numeric_limits<std::int64_t>::max();
  Rational large(big);
  for (std::uint32_t i = 0; i < 40; ++i) {
    // x(i+1) = big · x(i): the third power no longer fits 128 bits.
    const auto result = elimination.add(i, {{i, large}, {i + 1, -1}}, 1);
    if (result.ok()) continue;
    EXPECT_EQ(result.error().code, ErrorCode::outOfRange);
    return;
  }
  FAIL() << "an overflow was not seen";
}

// Every expression is the combination of equations that it says it is.
TEST(Elimination, KeepsTrackOfWhereThingsComeFrom) {
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    Elimination elimination;
    std::vector<Sparse> given;
    std::vector<Rational> right;
    for (std::uint32_t i = 0; i < 8; ++i) {
      Sparse factors;
      for (int k = 0; k < 3; ++k) {
        const auto variable = static_cast<std::uint32_t>(random() % 6);
        const auto factor = static_cast<std::int64_t>(random() % 5) - 2;
        if (factor != 0) factors[variable] = Rational(factor);
      }
      given.push_back(factors);
      right.push_back(Rational(static_cast<std::int64_t>(random() % 9)));
      const auto result = elimination.add(i, factors, right.back());
      ASSERT_TRUE(result.ok());
      if (!result->has_value()) continue;
      Sparse left;
      Rational constant;
      for (const auto& [equation, factor] : (*result)->equations) {
        ASSERT_TRUE(addScaled(left, given[equation], factor));
        constant = *constant.plus(*right[equation].times(factor));
      }
      EXPECT_TRUE(left.empty());
      EXPECT_EQ(constant, (*result)->constant);
    }
    for (std::uint32_t variable = 0; variable < 6; ++variable) {
      const auto expression = elimination.of(variable);
      Sparse left;
      Rational constant;
      for (const auto& [equation, factor] : expression.equations) {
        ASSERT_TRUE(addScaled(left, given[equation], factor));
        constant = *constant.plus(*right[equation].times(factor));
      }
      if (expression.equations.empty()) continue;
      // x − Σ free = constant.
      ASSERT_TRUE(addScaled(left, expression.free, Rational(1)));
      EXPECT_EQ(left, (Sparse{{variable, 1}}));
      EXPECT_EQ(constant, expression.constant);
    }
  }
}

}  // namespace
}  // namespace inchwright
