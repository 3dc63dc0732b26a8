#include <gtest/gtest.h>

#include "core/measure/lettered.h"
#include "tests/core/measure/ticks.h"

namespace inchwright {
namespace {

struct ToleranceRow {
  const char* text;
  std::int64_t value;
  std::int64_t upper;
  std::int64_t lower;
};

void expectRows(const std::vector<ToleranceRow>& rows, Unit print) {
  for (const ToleranceRow& row : rows) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text, ReadingOptions{print});
    if (!read) {
      ADD_FAILURE() << read.error().text << " at " << *read.error().at;
      continue;
    }
    EXPECT_EQ(read->value.ticks(), row.value);
    ASSERT_TRUE(read->tolerance.has_value());
    EXPECT_EQ(read->tolerance->upper.ticks(), row.upper);
    EXPECT_EQ(read->tolerance->lower.ticks(), row.lower);
    EXPECT_TRUE(read->exact);
    EXPECT_TRUE(read->questions.empty());
  }
}

TEST(ReadTolerance, PlusMinus) {
  expectRows(
      {
          {"1 3/16 \u00B11/64", in64(76), in64(1), in64(-1)},
          {"1 3/16\u00B11/64", in64(76), in64(1), in64(-1)},
          {"1 3/16 \u00B1 1/64", in64(76), in64(1), in64(-1)},
          {"1 3/16 +/-1/64", in64(76), in64(1), in64(-1)},
          {"1 3/16 +/- 1/64", in64(76), in64(1), in64(-1)},
          {"1 3/16 +-1/64", in64(76), in64(1), in64(-1)},
          {"1 3/16 +/\u22121/64", in64(76), in64(1), in64(-1)},
          {"1 3/16\" \u00B11/64\"", in64(76), in64(1), in64(-1)},
          {"1 3/16 \u00B11/64\"", in64(76), in64(1), in64(-1)},
          {"1 1/2 \u00B10.005", in64(96), tenths(50), tenths(-50)},
          {".500 \u00B1.001", tenths(5000), tenths(10), tenths(-10)},
          {".500 \u00B1 5 thou", tenths(5000), tenths(50), tenths(-50)},
          {"1 3/16 \u00B1 5 thou", in64(76), tenths(50), tenths(-50)},
          {"2 \u00B1 5 thou", in64(128), tenths(50), tenths(-50)},
          {"5 thou \u00B11", tenths(50), tenths(10), tenths(-10)},
          {"12.7 mm \u00B10.1", in64(32), microns(100), microns(-100)},
          {"12.7 \u00B10.1 mm", in64(32), microns(100), microns(-100)},
          {"12.7 mm \u00B15 \u00B5m", in64(32), microns(5), microns(-5)},
          {"1 in \u00B10.1 mm", in64(64), microns(100), microns(-100)},
          {".250 DIA \u00B1.001", tenths(2500), tenths(10), tenths(-10)},
          {"\u00D8 .250 \u00B1.001", tenths(2500), tenths(10), tenths(-10)},
          {"R 1/2 \u00B11/64", in64(32), in64(1), in64(-1)},
          {"3/8 + 1/4 \u00B11/64", in64(40), in64(1), in64(-1)},
          {"(3/8 + 1/4) \u00B11/64", in64(40), in64(1), in64(-1)},
          {"1 in + 5 thou \u00B1.001", tenths(10'050), tenths(10), tenths(-10)},
          {"5 thou + 2 thou \u00B11", tenths(70), tenths(10), tenths(-10)},
          {"1 cm + 2 mm \u00B10.1", microns(12'000), microns(100), microns(-100)},
          {"0 \u00B1.005", 0, tenths(50), tenths(-50)},
          {"-3/8 \u00B1.005", in64(-24), tenths(50), tenths(-50)},
      },
      Unit::inch);
  expectRows(
      {
          {"12.7 \u00B10.1", in64(32), microns(100), microns(-100)},
          {"100 \u00B11", microns(100'000), microns(1000), microns(-1000)},
          {"100 \u00B10,5", microns(100'000), microns(500), microns(-500)},
          {"1 in \u00B1.005", in64(64), tenths(50), tenths(-50)},
      },
      Unit::millimetre);
}

TEST(ReadTolerance, TwoDeviations) {
  expectRows(
      {
          {".500 +.002 -.000", tenths(5000), tenths(20), 0},
          {".500 +.002/-.000", tenths(5000), tenths(20), 0},
          {".500 +.002 / -.000", tenths(5000), tenths(20), 0},
          {".500+.002-.000", tenths(5000), tenths(20), 0},
          {".500+.002/-.000", tenths(5000), tenths(20), 0},
          {".500 -.000 +.002", tenths(5000), tenths(20), 0},
          {".500 +.002\n-.000", tenths(5000), tenths(20), 0},
          {".500 +.000 \u2212.002", tenths(5000), 0, tenths(-20)},
          {".500 +.001 -.002", tenths(5000), tenths(10), tenths(-20)},
          {".500 -.001 -.003", tenths(5000), tenths(-10), tenths(-30)},
          {".500 -.003 -.001", tenths(5000), tenths(-10), tenths(-30)},
          {".500 +.003 +.001", tenths(5000), tenths(30), tenths(10)},
          {".500 +.002 -0", tenths(5000), tenths(20), 0},
          {".500 +.002 0", tenths(5000), tenths(20), 0},
          {".500 +.002/0", tenths(5000), tenths(20), 0},
          {".500 0/-.002", tenths(5000), 0, tenths(-20)},
          {".500 0 -.002", tenths(5000), 0, tenths(-20)},
          {"1 3/16 +1/64 -1/32", in64(76), in64(1), in64(-2)},
          {"1 3/16 +1/64 -0", in64(76), in64(1), 0},
          {"1 3/16 +1/64/-1/32", in64(76), in64(1), in64(-2)},
          {".500 +2 thou -1 thou", tenths(5000), tenths(20), tenths(-10)},
          {".500 +2 -1 thou", tenths(5000), tenths(20), tenths(-10)},
          {"20 mm 0/-0.021", microns(20'000), 0, microns(-21)},
          {"20 0/-0.021 mm", microns(20'000), 0, microns(-21)},
          {"60 mm +0.1 0", microns(60'000), microns(100), 0},
          {".250 DIA +.0005 -.0000", tenths(2500), tenths(5), 0},
          {".005 +.005 -.000", tenths(50), tenths(50), 0},
      },
      Unit::inch);
  expectRows(
      {
          {"20 +0.1 -0.2", microns(20'000), microns(100), microns(-200)},
          {"241 -0.07 +0", microns(241'000), 0, microns(-70)},
          {"20 0/-0,021", microns(20'000), 0, microns(-21)},
      },
      Unit::millimetre);
}

TEST(ReadTolerance, Limits) {
  expectRows(
      {
          {".4995/.5005", tenths(5000), tenths(5), tenths(-5)},
          {".5005/.4995", tenths(5000), tenths(5), tenths(-5)},
          {".4995 / .5005", tenths(5000), tenths(5), tenths(-5)},
          {".4995\"/.5005\"", tenths(5000), tenths(5), tenths(-5)},
          {".4995/.5005 in", tenths(5000), tenths(5), tenths(-5)},
          {"\u00D8 .4995/.5005", tenths(5000), tenths(5), tenths(-5)},
          {".4995/.5005 DIA", tenths(5000), tenths(5), tenths(-5)},
          {".499/.5005", tenths(4990) + 1'905'000, 1'905'000, -1'905'000},
          {"12.65/12.75 mm", in64(32), microns(50), microns(-50)},
          {"12,65/12,75 mm", in64(32), microns(50), microns(-50)},
          {"24.95/25 mm", microns(24'975), microns(25), microns(-25)},
          {"25/24.95 mm", microns(24'975), microns(25), microns(-25)},
          {".010/.020", tenths(150), tenths(50), tenths(-50)},
          {"9.00/10.00", tenths(95'000), tenths(5'000), tenths(-5'000)},
      },
      Unit::inch);
  expectRows(
      {
          {"12.65/12.75", in64(32), microns(50), microns(-50)},
          {"215.935/215.995", microns(215'965), microns(30), microns(-30)},
          {"24.935/25.065", microns(25'000), microns(65), microns(-65)},
          {"15.7/16", microns(15'850), microns(150), microns(-150)},  // no 15 7/16 in metric
      },
      Unit::millimetre);
}

TEST(ReadTolerance, LimitsAnOddNumberOfTicksApartKeepBothEnds) {
  const auto read = readLength("0.00000001/0.00000004 mm");
  ASSERT_TRUE(read.ok());
  EXPECT_FALSE(read->exact);
  EXPECT_EQ(read->value.ticks(), 3);  // 2.5, away from zero
  EXPECT_EQ(read->value.ticks() + read->tolerance->upper.ticks(), 4);
  EXPECT_EQ(read->value.ticks() + read->tolerance->lower.ticks(), 1);
}

TEST(ReadTolerance, FinerThanATickIsRoundedInwards) {
  const auto limits = readLength("10.0000000012/10.0000000098 mm");
  EXPECT_FALSE(limits.ok());  // no whole tick between them
  const auto pair = readLength("10 mm +0.0000000199 -0.0000000199");
  ASSERT_TRUE(pair.ok());
  EXPECT_EQ(pair->tolerance->upper.ticks(), 1);
  EXPECT_EQ(pair->tolerance->lower.ticks(), -1);
}

TEST(ReadTolerance, WidthIsUpperLessLower) {
  EXPECT_EQ(readLength(".500 -.001 -.003")->tolerance->width().ticks(), tenths(20));
  EXPECT_EQ(readLength("1 \u00B11/64")->tolerance->width().ticks(), in64(2));
}

struct Marked {
  const char* text;
  std::int64_t value;
  SizeSymbol symbol;
  bool reference;
  bool basic;
};

TEST(ReadMarks, SymbolsReferenceAndBasic) {
  constexpr auto kNone = SizeSymbol::none;
  constexpr auto kRadius = SizeSymbol::radius;
  constexpr auto kDiameter = SizeSymbol::diameter;
  const Marked rows[] = {
      {"(2 3/8)", in64(152), kNone, true, false},
      {"( 2 3/8 )", in64(152), kNone, true, false},
      {"((2))", in64(128), kNone, true, false},
      {"(2)\"", in64(128), kNone, true, false},
      {"(2\")", in64(128), kNone, true, false},
      {"(3/8 + 1/4)", in64(40), kNone, true, false},
      {"(-3/8)", in64(-24), kNone, true, false},
      {"2 3/8 REF", in64(152), kNone, true, false},
      {"2 3/8 ref.", in64(152), kNone, true, false},
      {"REF 2 3/8", in64(152), kNone, true, false},
      {"(2 3/8) REF", in64(152), kNone, true, false},
      {"R 3/8", in64(24), kRadius, false, false},
      {"R3/8", in64(24), kRadius, false, false},
      {"R.375", tenths(3750), kRadius, false, false},
      {"r 3/8", in64(24), kRadius, false, false},
      {"3/8 R", in64(24), kRadius, false, false},
      {"3/8R", in64(24), kRadius, false, false},
      {"3/8 RAD", in64(24), kRadius, false, false},
      {"3/8 RAD.", in64(24), kRadius, false, false},
      {"3/8 radius", in64(24), kRadius, false, false},
      {"3/8\" R", in64(24), kRadius, false, false},
      {"R 6 mm", microns(6000), kRadius, false, false},
      {"\u00D8 1/4", in64(16), kDiameter, false, false},
      {"\u00D81/4", in64(16), kDiameter, false, false},
      {"\u00F8 1/4", in64(16), kDiameter, false, false},
      {"\u2300 1/4", in64(16), kDiameter, false, false},
      {"\u2205 1/4", in64(16), kDiameter, false, false},
      {"\u03C6 1/4", in64(16), kDiameter, false, false},
      {"\u2300.250", tenths(2500), kDiameter, false, false},
      {"1/4 DIA", in64(16), kDiameter, false, false},
      {"1/4 dia.", in64(16), kDiameter, false, false},
      {"1/4 DIAM", in64(16), kDiameter, false, false},
      {"1/4 diameter", in64(16), kDiameter, false, false},
      {"1/4 D", in64(16), kDiameter, false, false},
      {"DIA 1/4", in64(16), kDiameter, false, false},
      {"DIA.250", tenths(2500), kDiameter, false, false},
      {"1/4 in. dia.", in64(16), kDiameter, false, false},
      {"(\u00D8 1/4)", in64(16), kDiameter, true, false},
      {"\u00D8 (1/4)", in64(16), kDiameter, true, false},
      {"1/4 DIA REF", in64(16), kDiameter, true, false},
      {"2.500 BSC", tenths(25'000), kNone, false, true},
      {"2.500 BASIC", tenths(25'000), kNone, false, true},
      {"2.500 bsc.", tenths(25'000), kNone, false, true},
      {"\u00D8 2.500 BSC", tenths(25'000), kDiameter, false, true},
  };
  for (const Marked& row : rows) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text);
    if (!read) {
      ADD_FAILURE() << read.error().text << " at " << *read.error().at;
      continue;
    }
    EXPECT_EQ(read->value.ticks(), row.value);
    EXPECT_EQ(read->symbol, row.symbol);
    EXPECT_EQ(read->reference, row.reference);
    EXPECT_EQ(read->basic, row.basic);
    EXPECT_TRUE(read->questions.empty());
  }
}

TEST(ReadMarks, BracketsThatOnlyGroupAreNoReference) {
  for (const char* text : {"(1/4 + 3/8) / 2", "2 x (1/4)", "(1/4) + (3/8)", "(1/4) \u00B11/64"}) {
    SCOPED_TRACE(text);
    const auto read = readLength(text);
    ASSERT_TRUE(read.ok());
    EXPECT_FALSE(read->reference);
  }
  const auto doubtful = readLength("(2 3/8 \u00B11/64)");
  ASSERT_TRUE(doubtful.ok());
  EXPECT_TRUE(doubtful->reference);
  EXPECT_EQ(doubtful->questions.size(), 1u);
}

}  // namespace
}  // namespace inchwright
