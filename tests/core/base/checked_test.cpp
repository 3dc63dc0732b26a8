#include "core/base/checked.h"

#include <gtest/gtest.h>

#include "core/base/rational.h"

namespace inchwright {
namespace {

TEST(Checked, EmptyExactlyWhenTheTrueResultDoesNotFit) {
  // Every pair of bytes, against arithmetic that can't overflow.
  for (int a = -128; a <= 127; ++a) {
    for (int b = -128; b <= 127; ++b) {
      const auto x = static_cast<signed char>(a);
      const auto y = static_cast<signed char>(b);
      const auto fits = [](int value) { return value >= -128 && value <= 127; };
      const auto expectIs = [&](std::optional<signed char> found, int truth) {
        ASSERT_EQ(found.has_value(), fits(truth)) << a << ' ' << b;
        ASSERT_EQ(found ? int{*found} : truth, truth) << a << ' ' << b;
      };
      expectIs(addChecked(x, y), a + b);
      expectIs(subtractChecked(x, y), a - b);
      expectIs(multiplyChecked(x, y), a * b);
    }
  }
}

TEST(Checked, WideIntegers) {
  const Int128 half = Int128{1} << 126;
  EXPECT_FALSE(addChecked(half, half));
  EXPECT_FALSE(multiplyChecked(half, Int128{-4}));
  EXPECT_TRUE(subtractChecked(-half, half) == -half - half);
  EXPECT_FALSE(addChecked(std::int64_t{INT64_MAX}, std::int64_t{1}));
}

}  // namespace
}  // namespace inchwright
