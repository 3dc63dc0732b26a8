#include <gtest/gtest.h>

#include "core/measure/lettered.h"
#include "tests/core/measure/ticks.h"

namespace inchwright {
namespace {

struct ValueRow {
  const char* text;
  std::int64_t ticks;
  int places = 0;     ///< of a decimal
  int questions = 0;  ///< how many are asked
};

void expectRows(const std::vector<ValueRow>& rows, Unit print, Unit unit, Lettering lettering) {
  for (const ValueRow& row : rows) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text, ReadingOptions{print});
    if (!read) {
      ADD_FAILURE() << read.error().text << " at " << *read.error().at;
      continue;
    }
    EXPECT_EQ(read->text, row.text);
    EXPECT_EQ(read->value.ticks(), row.ticks);
    EXPECT_TRUE(read->exact);
    EXPECT_EQ(read->unit, unit);
    EXPECT_EQ(read->lettering, lettering);
    EXPECT_EQ(read->places, row.places);
    EXPECT_FALSE(read->tolerance);
    EXPECT_FALSE(read->basic);
    EXPECT_EQ(read->questions.size(), static_cast<std::size_t>(row.questions));
  }
}

TEST(ReadLength, FractionsInEveryCustomaryForm) {
  const std::vector<ValueRow> rows = {
      {"1 3/16", in64(76)},
      {"1-3/16", in64(76)},
      {"1\u20133/16", in64(76)},  // en dash
      {"1\u20103/16", in64(76)},  // hyphen
      {"1.3/16", in64(76)},       // old British
      {"1\u00B73/16", in64(76)},  // with the raised point
      {"2.31/32", in64(190)},
      {"1 and 3/16", in64(76)},
      {"1   3/16", in64(76)},
      {"  1 3/16  ", in64(76)},
      {"\t1 3/16\n", in64(76)},
      {"1\u00A03/16", in64(76)},  // no-break space
      {"1\u20093/16", in64(76)},  // thin space
      {"1\u202F3/16", in64(76)},  // narrow no-break space
      {"3/16", in64(12)},
      {"1/2", in64(32)},
      {"1/64", in64(1)},
      {"63/64", in64(63)},
      {"1/128", in128(1)},
      {"127/128", in128(127)},
      {"12 127/128", in128(12 * 128 + 127)},
      {"0 3/16", in64(12)},
      {"\u00BC", in64(16)},
      {"\u00BD", in64(32)},
      {"\u00BE", in64(48)},
      {"\u215B", in64(8)},
      {"\u215C", in64(24)},
      {"\u215D", in64(40)},
      {"\u215E", in64(56)},
      {"1\u215C", in64(88)},
      {"1 \u215C", in64(88)},
      {"1-\u215C", in64(88)},
      {"12\u215C", in64(12 * 64 + 24)},
      {"1\u00B3\u2044\u2081\u2086", in64(76)},  // ³⁄₁₆
      {"1 \u00B3\u2044\u2081\u2086", in64(76)},
      {"\u00B3/\u2081\u2086", in64(12)},
      {"\u00B9\u00B3\u2044\u2081\u2086", in64(52)},  // ¹³⁄₁₆
      {"\u00B3\u204416", in64(12)},
      {"3\u204416", in64(12)},
      {"3\u221516", in64(12)},
      {"1 3\u204416", in64(76)},
      {"\u215F\u2081\u2086", in64(4)},  // ⅟₁₆
      {"\u215F16", in64(4)},
      {"2", in64(128)},
      {"0", 0},
      {"12", in64(12 * 64)},
      {"2\"", in64(128)},
      {"2\u2033", in64(128)},
      {"2\u201D", in64(128)},
      {"2''", in64(128)},
      {"2\u2032\u2032", in64(128)},
      {"1 3/16\"", in64(76)},
      {"1 3/16 \"", in64(76)},
      {"1 3/16 in", in64(76)},
      {"1 3/16 in.", in64(76)},
      {"1 3/16in", in64(76)},
      {"1 3/16 IN", in64(76)},
      {"1 3/16 inch", in64(76)},
      {"1 3/16 inches", in64(76)},
      {"+3/8", in64(24)},
      {"-3/8", in64(-24)},
      {"- 3/8", in64(-24)},
      {"\u22123/8", in64(-24)},
      {"\u20133/8", in64(-24)},
      {"-1 3/16", in64(-76)},
      {"-1-3/16", in64(-76)},
      {"-2", in64(-128)},
      {"3 / 16", in64(12)},
      {"3 /16", in64(12)},
  };
  expectRows(rows, Unit::inch, Unit::inch, Lettering::fraction);
}

TEST(ReadLength, FeetAndInches) {
  const std::vector<ValueRow> rows = {
      {"1' 2 3/8\"", in64(14 * 64 + 24)},
      {"1\u2032 2 3/8\u2033", in64(14 * 64 + 24)},
      {"1\u2019 2 3/8\u201D", in64(14 * 64 + 24)},
      {"1'2 3/8\"", in64(14 * 64 + 24)},
      {"1'-2 3/8\"", in64(14 * 64 + 24)},
      {"1' 2-3/8\"", in64(14 * 64 + 24)},
      {"1' 2 3/8", in64(14 * 64 + 24)},
      {"1 ft 2 3/8 in", in64(14 * 64 + 24)},
      {"1 ft. 2 in.", in64(14 * 64)},
      {"1 foot 2 inches", in64(14 * 64)},
      {"2 feet", in64(24 * 64)},
      {"2'", in64(24 * 64)},
      {"1' 3/8\"", in64(12 * 64 + 24)},
      {"1/2'", in64(6 * 64), 0, 1},
      {"-1' 2\"", in64(-14 * 64)},
      {"1' 14\"", in64(26 * 64), 0, 1},
      {"1' + 2\"", in64(14 * 64)},
      {"(1') - 2\"", in64(10 * 64)},
  };
  expectRows(rows, Unit::inch, Unit::inch, Lettering::fraction);
  expectRows({{"1' 2.375\"", tenths(143'750), 3}, {"1.5'", in64(18 * 64), 1}}, Unit::inch,
             Unit::inch, Lettering::decimal);
}

TEST(ReadLength, DecimalsAndThou) {
  const std::vector<ValueRow> rows = {
      {".375", tenths(3750), 3},
      {"0.375", tenths(3750), 3},
      {",375", tenths(3750), 3},
      {"0,375", tenths(3750), 3},
      {"1,25", tenths(12'500), 2},
      {"\u00B7375", tenths(3750), 3},
      {"1\u00B7375", tenths(13'750), 3},
      {".38", tenths(3800), 2},
      {".5", tenths(5000), 1},
      {".500", tenths(5000), 3},
      {"2.0", tenths(20'000), 1},
      {"2.000", tenths(20'000), 3},
      {"1.1875", tenths(11'875), 4},
      {"1.1875\"", tenths(11'875), 4},
      {"1.1875 in", tenths(11'875), 4},
      {"-.375", tenths(-3750), 3},
      {"-0.0005", tenths(-5), 4},
      {"0.000", 0, 3},
      {"0.0078125", in128(1), 7},
      {"12.3456", tenths(123'456), 4},
      {"0.00000005", 127, 8},
      {"1.50000000000000000000", tenths(15'000), 20},
      {"5 thou", tenths(50), 3},
      {"5thou", tenths(50), 3},
      {"62.5 thou", tenths(625), 4},
      {"1000 thou", tenths(10'000), 3},
      {"-2 thou", tenths(-20), 3},
      {".4375 + .0625", tenths(5000), 4},
      {"1.000 / 2", tenths(5000), 3},
      {"3 x .125", tenths(3750), 3},
      {".750 / .250", tenths(30'000), 3},
      {"1 + .375", tenths(13'750), 3},
      {".25 + .125", tenths(3750), 2},
  };
  expectRows(rows, Unit::inch, Unit::inch, Lettering::decimal);
}

TEST(ReadLength, Millimetres) {
  const std::vector<ValueRow> rows = {
      {"12.7 mm", in64(32), 1},
      {"12.7mm", in64(32), 1},
      {"12,7 mm", in64(32), 1},
      {"1,5mm", microns(1500), 1},
      {"12.7 MM", in64(32), 1},
      {"12.7 mm.", in64(32), 1},
      {"6 mm", microns(6000)},
      {"25.4 mm", in64(64), 1},
      {"0.005 mm", microns(5), 3},
      {"-3 mm", microns(-3000)},
      {"2.54 cm", in64(64), 1},
      {"3 cm", microns(30'000)},
      {"5 \u00B5m", microns(5), 3},
      {"5 \u03BCm", microns(5), 3},
      {"12.5 um", microns(12) + 50'000, 4},
      {"10 mm + 2.5 mm", microns(12'500), 1},
      {"3 x 4 mm", microns(12'000)},
      {"(1.5 + 2.5) mm / 2", microns(2000), 1},
      {"1/2 mm", microns(500), 0, 1},
  };
  expectRows(rows, Unit::inch, Unit::millimetre, Lettering::millimetres);
}

TEST(ReadLength, BareFiguresAreInThePrintsUnit) {
  const std::vector<ValueRow> rows = {
      {"12.7", in64(32), 1},
      {"6", microns(6000)},
      {"10 + 2.5", microns(12'500), 1},
      {"-3", microns(-3000)},
      {"7.5 - 2", microns(5500), 1},
      {"3/8", microns(375), 0, 1},  // a fraction on a metric print is questioned
  };
  expectRows(rows, Unit::millimetre, Unit::millimetre, Lettering::millimetres);
  expectRows({{"3/8\"", in64(24)}, {"1 3/16 in", in64(76)}, {"3/8 + 1/4\"", in64(40)}},
             Unit::millimetre, Unit::inch, Lettering::fraction);
}

TEST(ReadLength, SaysWhatRunsFromCentreToCentre) {
  for (const char* text : {"1/2 CRS", "CRS 1/2", "1/2 c/c", "1/2 C-C", "1/2 centers"}) {
    EXPECT_TRUE(readLength(text).value().centres) << text;
  }
  for (const char* text : {"1/2", "1/2 O/A", "1/2 STOCK", "1/2 REF"}) {
    EXPECT_FALSE(readLength(text).value().centres) << text;
  }
}

TEST(ReadLength, SumsProductsQuotientsAndBrackets) {
  const std::vector<ValueRow> rows = {
      {"3/8 + 1 1/4 + 3/8", in64(128)},
      {"3/8+1 1/4+3/8", in64(128)},
      {"3/8+ 1/4", in64(40)},
      {"2 1/8 - 1/32", in64(134)},
      {"2 1/8 \u2212 1/32", in64(134)},
      {"2 1/8 \u2013 1/32", in64(134)},
      {"2-1/32", in64(130)},          // joined: a whole and a fraction
      {"2 - 1/32", in64(126), 0, 1},  // or 2 1/32
      {"2\" - 1/32", in64(126)},
      {"3 - 1 1/4", in64(112)},
      {"1/4 - 3/8", in64(-8)},
      {"3 x 9/16", in64(108)},
      {"3x9/16", in64(108), 0, 1},  // may say how many places, or two sizes
      {"2x1/2", in64(64), 0, 1},
      {"2X1/2", in64(64), 0, 1},
      {"2×1/2", in64(64)},
      {"1/2 CRS", in64(32)},
      {"2 3/8 ctrs.", in64(152)},
      {"1/2 centres", in64(32)},
      {"1/2 C/C", in64(32)},
      {"1/2 c-c", in64(32)},
      {"3 3/8 O.A.", in64(216)},
      {"3 3/8 O/A", in64(216)},
      {"3 3/8 OVERALL", in64(216)},
      {"1/8 THK.", in64(8)},
      {"1/8 THICK", in64(8)},
      {"1/4 STOCK", in64(16)},
      {"1/2 Centers", in64(32)},
      {"3 X 9/16", in64(108)},
      {"3 \u00D7 9/16", in64(108)},
      {"3\u00D79/16", in64(108)},
      {"3 * 9/16", in64(108)},
      {"3*9/16", in64(108)},
      {"9/16 x 3", in64(108)},
      {"2 x 3 x 1/8", in64(48)},
      {"2 x 3", in64(6 * 64)},
      {"3x 9/16", in64(108), 0, 1},  // may say how many places
      {"8 x 9/16", in64(288)},
      {"13/16 / 2", in64(26)},
      {"13/16/ 2", in64(26)},
      {"13/16 \u00F7 2", in64(26)},
      {"13/16\u00F72", in64(26)},
      {"\u215C / 2", in64(12)},
      {"13/16\"/2", in64(26)},
      {"3/4 / 1 1/2", in64(32)},
      {"(1/4 + 3/8) / 2", in64(20)},
      {"(1/4 + 3/8)/2", in64(20)},
      {"2 x (1/4 + 3/8)", in64(80)},
      {"2 1/8 - (1/4 + 3/8)", in64(96)},
      {"(3/8) + (1/4)", in64(40)},
      {"((1/4 + 1/8) x 2) + 1", in64(112)},
      {"(1 + 2) x 3/8", in64(72)},
      {"-(1/4) + 1", in64(48)},
      {"3/8 + 1/4 in", in64(40)},
      {"3/8\" + 1/4\"", in64(40)},
      {"3/8 in + 1/4", in64(40)},
      {"1 + 3/8 \"", in64(88)},
      {"13 13/16 - 1 3/8 - 2 5/16 - 4 3/4 - 3 x 1/16", in64(332)},      // 5 3/16
      {"15/16 + 3 1/4 + 2 1/16 + 3 3/8 + 1 13/16 + 1 1/8", in64(804)},  // 12 9/16
      {"1 in + 25.4 mm", in64(128)},
  };
  expectRows(rows, Unit::inch, Unit::inch, Lettering::fraction);
  expectRows({{"1 + 2 mm", microns(3000), 0, 1}}, Unit::inch, Unit::millimetre,
             Lettering::millimetres);
  expectRows({{"3/8 + 5 thou", in64(24) + tenths(50)}}, Unit::inch, Unit::inch,
             Lettering::fraction);
}

TEST(ReadLength, QuestionsWhatAPrintWouldNotLetter) {
  const std::vector<ValueRow> rows = {
      {"15/8", in64(120), 0, 1},   // looks like 1 5/8
      {"1 5/8", in64(104), 0, 0},  // and is told from it
      {"16/16", in64(64), 0, 2},   // 1, and not in lowest terms
      {"2/16", in64(8), 0, 1},        {"1 4/8", in64(96), 0, 1},
      {"2/5", tenths(4000), 0, 1},  // on no rule
      {"\u2156", tenths(4000), 0, 1}, {"1 1/10", tenths(11'000), 0, 1},
      {"1/256", 9'921'875, 0, 1},  // finer than 128
      {"5/1", in64(320), 0, 1},       {"1/4 TYP", in64(16), 0, 1},
      {"1/4 typ.", in64(16), 0, 1},
  };
  expectRows(rows, Unit::inch, Unit::inch, Lettering::fraction);
}

TEST(ReadLength, WhatDoesNotComeOutIsRoundedOnceAndSaysSo) {
  const std::vector<ValueRow> rows = {
      {"1/3", 846'666'667},
      {"-1/3", -846'666'667},
      {"1 / 3", 846'666'667},
      {"2/3", 1'693'333'333},
      {"1/3 + 1/3 + 1/3", 2'540'000'000},  // exact again: nothing was rounded on the way
      {"0.0000000003", 1},
      {"0.00000000001", 0},
      {"(1 / 7) x 7", 2'540'000'000},
      {"0.000000005 mm", 1},  // half a tick, away from zero
      {"-0.000000005 mm", -1},
      {"0.000000004999 mm", 0},
  };
  for (const ValueRow& row : rows) {
    SCOPED_TRACE(row.text);
    const auto read = readLength(row.text);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->value.ticks(), row.ticks);
    EXPECT_EQ(read->exact, row.ticks == Length::kTicksPerInch);
  }
}

}  // namespace
}  // namespace inchwright
