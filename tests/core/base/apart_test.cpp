#include "core/base/apart.h"

#include <gtest/gtest.h>

#include <string>

namespace inchwright {
namespace {

TEST(Apart, IsWhatAnOptionalIs) {
  Apart<std::string> none;
  EXPECT_FALSE(none);
  EXPECT_FALSE(none.has_value());
  EXPECT_FALSE(none.held().has_value());
  Apart<std::string> seat(std::string("3/8"));
  ASSERT_TRUE(seat);
  EXPECT_EQ(*seat, "3/8");
  EXPECT_EQ(seat->size(), 3u);
  EXPECT_NE(seat, none);
  seat.reset();
  EXPECT_EQ(seat, none);
  EXPECT_EQ(Apart<std::string>(std::nullopt), none);
  EXPECT_EQ(Apart<std::string>(std::optional<std::string>()), none);
  const Apart<std::string> drilled(std::optional<std::string>("1/4"));
  const std::optional<std::string>& read = drilled;
  EXPECT_EQ(read, "1/4");
}

TEST(Apart, CopiesHoldValuesOfTheirOwn) {
  Apart<std::string> one(std::string("3/8"));
  Apart<std::string> other = one;
  EXPECT_EQ(one, other);
  *other = "7/16";
  EXPECT_EQ(*one, "3/8");
  EXPECT_NE(one, other);
  one = other;
  *other = "1/2";
  EXPECT_EQ(*one, "7/16");
  one = Apart<std::string>();
  EXPECT_FALSE(one);
  const Apart<std::string>& self = other;
  other = self;
  EXPECT_EQ(*other, "1/2");
}

}  // namespace
}  // namespace inchwright
