#include <gtest/gtest.h>

#include "core/measure/lettered.h"

namespace inchwright {
namespace {

struct RefusedRow {
  std::string text;
  std::size_t at;
};

void expectRefused(const std::vector<RefusedRow>& rows, ErrorCode code = ErrorCode::badText,
                   Unit print = Unit::inch) {
  for (const RefusedRow& row : rows) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text, ReadingOptions{print});
    if (read) {
      ADD_FAILURE() << "was read";
      continue;
    }
    EXPECT_EQ(read.error().code, code);
    EXPECT_EQ(read.error().at, row.at) << read.error().text;
    EXPECT_FALSE(read.error().text.empty());
    EXPECT_EQ(read.error().text.find('\n'), std::string::npos);
  }
}

TEST(RefuseLength, NothingAndUnfinished) {
  expectRefused({
      {"", 0},
      {"   ", 3},
      {"()", 1},
      {"-", 1},
      {"+", 1},
      {"\"", 0},
      {"R", 1},
      {"REF", 3},
      {"mm", 0},
      {"in 2", 0},
      {"3/", 2},
      {"/16", 0},
      {"3/8 +", 5},
      {"3/8 + + 1/4", 6},
      {"3/8 - -1/4", 6},
      {"--3/8", 1},
      {"3/8 x", 5},
      {"x 3/8", 0},
      {"3/8 / ", 6},
      {"(3/8", 4},
      {"3/8)", 3},
      {"(3/8))", 5},
      {"1 and", 2},
      {"1 and 2", 2},
      {"\u00B1"
       "1/64",
       0},
  });
}

TEST(RefuseLength, BrokenNumbers) {
  expectRefused({
      {".", 0},
      {"2.", 1},
      {"2. 375", 1},
      {"1.2.3", 3},
      {"1,234,567", 1},
      {"1.234,5", 5},
      {"1,250", 1},  // 1.250 or 1250
      {"12,500 mm", 2},
      {"007", 0},
      {"03/8", 0},
      {"1 3/08", 4},
      {"1/0", 0},
      {"0/8", 0},
      {"1 0/8", 2},
      {"\u2189", 0},
      {"\u215F", 3},
      {"1\u00B2", 1},       // a power
      {"\u2081\u2086", 0},  // the bottom alone
      {"1e3", 1},
      {"0x10", 1},
      {"nan", 0},
      {"inf", 0},
  });
}

TEST(RefuseLength, FiguresThatDoNotBelongTogether) {
  expectRefused({
      {"1 3", 2},
      {"1 3/16 3/8", 7},
      {"1 1 3/16", 2},
      {"1.5 3/16", 4},
      {"1 15/8", 2},  // no fraction after a whole is 1 or more
      {"1 16/16", 2},
      {"1 3 / 16", 2},
      {"3/8 1/4", 4},
      {"\u215C\u215C", 3},
      {"\u215C"
       "5",
       3},
      {"2 (3/8)", 2},
      {"(1)(2)", 3},
      {"1 3/16 (30.2)", 7},
      {"3/8\" 1/4\"", 5},
      {"2\"\"", 2},
      {"2 in mm", 5},
      {"(2 in) mm", 7},
      {"R 3/8 DIA", 6},
      {"1' 2 mm", 5},
      {"1.5' 2\"", 5},
      {"1' 2' 3'", 4},
  });
}

TEST(RefuseLength, WhatCouldMeanTwoThings) {
  expectRefused({
      {"1 -3/16", 2},  // joined, taken off, or a deviation
      {"1- 3/16", 1},
      {"1\u22123/16", 1},  // the true minus sign joins nothing
      {"2-1", 1},
      {".500-.001", 4},
      {"3/8-1/4", 3},
      {"1 3/16 +1/64", 7},  // half a tolerance, or a sum
      {"1 3/16 -1/64", 7},
      {".500 +.002", 5},
      {".500+.002", 4},
      {".500+2-1", 6},  // whole inches are no deviations
      {".500+.002-1", 4},
      {".500 + .002 - .000", 12},
      {".4995 - .5005", 6},  // limits, or a difference
      {"13/16/2", 5},
      {"1/2/3", 3},
      {".500/2", 4},
      {"1.5/2", 3},
      {"1.2/16", 3},  // old British lettering would be in lowest terms
      {"1.03/16", 4},
      {"1.3/10", 3},
      {"1.17/16", 4},
      {".3/16", 2},
      {"1,3/16", 3},
      {"1.000/.250", 0},  // too far apart for limits
      {"8.99/10.00", 0},  // by more than a tenth
      {"3X .500", 1},     // how many places, or a product
      {"4X \u00D8 1/4", 1},
      {"4 x R 1/4", 2},
      {"4 X .250 DIA", 0},  // how many holes, not one of 1 in
      {"4 x 1/4\" DIA", 0},
      {"(4 x 1/4) DIA", 1},
      {"R 1/4 x 2", 2},
      {"1/2 FULL", 4},
      {"1/2 BARE", 4},
      {"16 GA", 3},
      {"1/2 C/A", 4},
      {"1/2 C/CC", 4},
      {"CC 1/2", 0},  // a place's name
      {"OA 1/2", 0},
      {"1/16 x 45", 5},  // a chamfer
      {".06 X 45", 4},
      {"1/4 x 1/2", 4},  // a bar's section
      {"3/8 + 2 mm", 0},
      {"2 mm + 3/8", 7},
      {"1 in + 3 + 2 mm", 7},
      {"5 + 3 thou", 0},
      {"1 + 2'", 0},
      {"2' - 3\"", 3},
      {"3' \u00B1"
       "1/8",
       5},
      {"1 in + 2 mm \u00B1.1", 14},
      {"1 in + 2 mm + 1 in \u00B1.1", 21},
      {"2 mil", 2},
  });
  expectRefused({{"1 in + 3/8", 7}, {"1.3/16", 0}, {"3/8 + 5 thou", 0}}, ErrorCode::badText,
                Unit::millimetre);
}

TEST(RefuseLength, NonsenseInArithmetic) {
  expectRefused({
      {"1 / 0", 2},
      {"1 \u00F7 (2 - 2)", 2},
      {"0 x 3/8", 2},
      {"2 in / 1 in", 7},
      {"2 in x 3 in", 5},
      {"3/8 + 0", 4},
      {"(3/8 +1/4)", 5},
      {"R -3/8", 2},
      {"\u00D8 0", 3},
  });
}

TEST(RefuseLength, BrokenTolerances) {
  expectRefused({
      {".500 \u00B1", 7},
      {".500 \u00B1 -.001", 8},
      {".500 \u00B1"
       "0",
       5},
      {".500 +.000 -.000", 5},
      {".500 +.002 +.002", 5},
      {".500 +.002 -.001 -.001", 17},
      {".500 +.002 .001", 11},
      {".500 \u00B1.001 \u00B1.002", 12},
      {".500 \u00B1"
       "5",
       7},  // a point or a unit is missing
      {".500 +5 -2", 6},
      {".050 \u00B1.500", 5},
      {".500/.500", 0},
      {".500 BSC \u00B1.001", 0},
      {".500 MAX", 5},
      {".500 min", 5},
  });
}

TEST(RefuseLength, WhatIsNoLength) {
  expectRefused({
      {"45\u00B0", 2},
      {"45 deg", 3},
      {"M6", 0},
      {"#7", 0},
      {"No. 7", 0},
      {"1/4 DRILL", 4},
      {"1/4 - 20 UNC", 9},
      {"2 m", 2},
      {"2 PLACES", 2},
      {"[9.5]", 0},
      {"= 3/8", 0},
      {"3/8;", 3},
      {"3/8?", 3},
      {"\xEF\xBB\xBF"
       "3/8",
       0},                          // a byte order mark
      {"3/8 \xF0\x9F\x93\x8F", 4},  // a character of four bytes
      {"3/8\xC3", 3},               // cut off
      {"3/8\x80", 3},
      {"\xC0\xAF", 0},  // an overlong slash
      {"\xE0\x80\xAF", 0},
      {std::string("3/8\0", 4), 3},
      {std::string(300, '1'), 256},
      {std::string(257, ' '), 256},
      {"supercalifragilistic", 0},
  });
}

TEST(RefuseLength, BeyondItsRange) {
  expectRefused(
      {
          {"99999999999999999999", 0},
          {"1 + 99999999999999999999", 0},
          {"1999999999 in", 0},
          {"46116860184.27387904 mm", 0},
          {"-46116860184.27387904 mm", 0},
          {"1000000000000000000000000000", 0},
          {"0.0000000000000000000000000001", 0},
          {"9999999999 x 9999999999", 0},
          {"999999999999999999999999/999999999999999999999998 + "
           "1/999999999999999999999997",
           52},
      },
      ErrorCode::outOfRange);
  // The largest that is read: one tick below 2^62.
  const auto largest = readLength("46116860184.27387903 mm");
  ASSERT_TRUE(largest.ok());
  EXPECT_EQ(largest->value.ticks(), (std::int64_t{1} << 62) - 1);
  EXPECT_EQ(readLength("-46116860184.27387903 mm")->value, largest->value.negated());
}

TEST(RefuseLength, DeepBracketsAreBounded) {
  const auto nested = [](int depth) {
    return std::string(depth, '(') + "1+1" + std::string(depth, ')') + " x 2";
  };
  EXPECT_TRUE(readLength(nested(16)).ok());
  expectRefused({{nested(17), 16}, {nested(100), 16}});
}

TEST(RefuseLength, ReasonsSayWhatToDo) {
  EXPECT_EQ(readLength("2.").error().text, "no figure follows the point: one may be lost");
  EXPECT_EQ(readLength("1,250").error().text,
            "this comma may divide or only group the figures: write a point, or no mark");
  EXPECT_EQ(readLength("[9.5]").error().text,
            "square brackets letter the same size in another unit: type one of the two");
}

}  // namespace
}  // namespace inchwright
