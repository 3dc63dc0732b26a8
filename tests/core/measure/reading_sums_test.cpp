// Sums, products and quotients beside what looks like them: deviations written apart, limits of
// unlike places.

#include <gtest/gtest.h>

#include "core/measure/lettered.h"
#include "tests/core/measure/ticks.h"

namespace inchwright {
namespace {

constexpr const char* kAsSum =
    "taken as a sum: a tolerance is written without a space after its signs";

TEST(ReadSum, ASumThatLooksLikeDeviationsIsAskedAbout) {
  struct Row {
    const char* text;
    std::int64_t value;
    bool asked;
  };
  for (const Row& row : {
           Row{"1 + .010 - .005", tenths(10'050), true},
           Row{"1 - .010 + .005", tenths(9'950), true},
           Row{"1.5 + .010 - .005", tenths(15'050), true},
           Row{".500 + .002", tenths(5'020), true},
           Row{".500 - .002", tenths(4'980), true},
           Row{"1 + .010", tenths(10'100), false},
           Row{"1 + .010 + .005", tenths(10'150), false},
           Row{"1 - .010 - .005", tenths(9'850), false},
           Row{"1 + 2 - .005", tenths(29'950), false},
           Row{"1 + .010 - .500", tenths(5'100), false},
           Row{"1 + .010 - .005 + .002", tenths(10'070), false},
           Row{"1.5 + .500", tenths(20'000), false},
           Row{"3/8 + 1 1/4 - 1/8", in64(96), false},
       }) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text, ReadingOptions{});
    if (!read) {
      ADD_FAILURE() << read.error().text;
      continue;
    }
    EXPECT_EQ(read->value.ticks(), row.value);
    EXPECT_FALSE(read->tolerance.has_value());
    EXPECT_EQ(read->questions,
              row.asked ? std::vector<std::string>{kAsSum} : std::vector<std::string>{});
  }
}

TEST(ReadSum, ProductsAndQuotientsGoFromLeftToRight) {
  struct Row {
    const char* text;
    std::int64_t value;
  };
  for (const Row& row : {
           Row{"12 / 2 / 3", in64(128)},
           Row{"1/2 x 6 / 2", in64(96)},
           Row{"3 x 1/4 / 2", in64(24)},
           Row{"1/2 / 2 x 3", in64(48)},
           Row{"13/16 / 2", in64(26)},
           Row{"(13/16)/2", in64(26)},
           Row{"2 x (1/4 + 1/8)", in64(48)},
           Row{"1 - (1/4 + 1/8)", in64(40)},
           Row{"1 + 3 x 9/16 - 1/4", in64(156)},
       }) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text, ReadingOptions{});
    if (!read) {
      ADD_FAILURE() << read.error().text;
      continue;
    }
    EXPECT_EQ(read->value.ticks(), row.value);
  }
}

TEST(ReadSum, WhatCouldBeEitherIsRefusedWithItsPlace) {
  struct Row {
    const char* text;
    std::size_t at;
    const char* why;
  };
  for (const Row& row : {
           Row{"6 / 2 x 1/4", 6, "two sizes are not multiplied: one must be a whole number"},
           Row{"1/2 x 1/4", 4, "two sizes are not multiplied: one must be a whole number"},
           Row{"1/4/2", 3, "two strokes run together: put spaces round the one that divides"},
           Row{"1/2 / 0", 4, "nothing can be divided by 0"},
           Row{".500 + .002 - 0", 12,
               "adding 0: a tolerance is written without a space after its sign"},
           Row{"1/4 1/2", 4, "two figures side by side: a sign is missing, or they are two sizes"},
           Row{"(1/2+1/4", 8, "a closing bracket is missing"},
           Row{"(1/2 1/4)", 5,
               "two figures side by side: a sign is missing, or they are two sizes"},
       }) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text, ReadingOptions{});
    ASSERT_FALSE(read.ok());
    EXPECT_EQ(read.error().text, row.why);
    EXPECT_EQ(read.error().at, row.at);
  }
}

TEST(ReadSum, DeviationsAndLimitsWithoutBlanks) {
  struct Row {
    const char* text;
    std::int64_t value, upper, lower;
    int places;
    Unit unit = Unit::inch;
  };
  for (const Row& row : {
           Row{".500+.002-0", tenths(5'000), tenths(20), 0, 3},
           Row{".500-0+.002", tenths(5'000), tenths(20), 0, 3},
           Row{".500+.002-.000", tenths(5'000), tenths(20), 0, 3},
           Row{".500+0-.002", tenths(5'000), 0, tenths(-20), 3},
           Row{".500-.001-.003", tenths(5'000), tenths(-10), tenths(-30), 3},
           Row{".500+.003+.001", tenths(5'000), tenths(30), tenths(10), 3},
           Row{"1 +1/64 -0", in64(64), in64(1), 0, 0},
           Row{".500/.51", tenths(5'050), tenths(50), tenths(-50), 3},
           Row{".51/.500", tenths(5'050), tenths(50), tenths(-50), 3},
           Row{".5/.51", tenths(5'050), tenths(50), tenths(-50), 2},
           Row{".500/.5005", 1'270'635'000, 635'000, -635'000, 4},
           Row{"499.5/500.5 thou", tenths(5'000), tenths(5), tenths(-5), 4},
           Row{"12.65/12.7 mm", microns(12'675), microns(25), microns(-25), 2, Unit::millimetre},
           Row{"1.25/1.27 cm", microns(12'600), microns(100), microns(-100), 1, Unit::millimetre},
           Row{"12.7 mm \u00B1.001 in", microns(12'700), tenths(10), tenths(-10), 1,
               Unit::millimetre},
       }) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text, ReadingOptions{});
    if (!read) {
      ADD_FAILURE() << read.error().text;
      continue;
    }
    EXPECT_EQ(read->value.ticks(), row.value);
    EXPECT_EQ(read->places, row.places);
    EXPECT_EQ(read->unit, row.unit);
    ASSERT_TRUE(read->tolerance.has_value());
    EXPECT_EQ(read->tolerance->upper.ticks(), row.upper);
    EXPECT_EQ(read->tolerance->lower.ticks(), row.lower);
  }
}

}  // namespace
}  // namespace inchwright
