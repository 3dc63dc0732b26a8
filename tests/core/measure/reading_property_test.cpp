#include <gtest/gtest.h>

#include <random>

#include "core/measure/lettered.h"
#include "core/measure/writing.h"
#include "tests/core/measure/ticks.h"

namespace inchwright {
namespace {

/// Lengths of every size alike: a random number of bits, then random bits.
std::int64_t anyTicks(std::mt19937_64& random, int mostBits) {
  const auto bits = static_cast<int>(random() % static_cast<unsigned>(mostBits)) + 1;
  const auto size = static_cast<std::int64_t>(random() >> (64 - bits));
  return random() % 2 == 0 ? size : -size;
}

TEST(ReadingProperty, FractionsReadBackAsWritten) {
  constexpr std::uint64_t kSeed = 20'240'517;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 400'000; ++i) {
    const Length length = Length::ticks(in128(anyTicks(random, 24)));
    const std::string text = writeFraction(length);
    ASSERT_FALSE(text.empty());
    const auto read = readLength(text);
    ASSERT_TRUE(read.ok()) << text;
    ASSERT_EQ(read->value, length) << text;
    ASSERT_TRUE(read->exact && read->questions.empty()) << text;
    ASSERT_EQ(read->lettering, Lettering::fraction) << text;
    ASSERT_EQ(writeFraction(read->value), text);
    const std::string mirrored = writeFraction(length.negated());
    ASSERT_EQ(mirrored, length.isZero() ? "0" : text[0] == '-' ? text.substr(1) : '-' + text);
  }
}

TEST(ReadingProperty, DecimalsReadBackToTheTick) {
  constexpr std::uint64_t kSeed = 20'240'517;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 600'000; ++i) {
    const Length length = Length::ticks(anyTicks(random, 62));
    const Unit unit = i % 2 == 0 ? Unit::inch : Unit::millimetre;
    const std::string text = writeDecimal(length, unit);
    const auto read = readLength(text, ReadingOptions{unit});
    ASSERT_TRUE(read.ok()) << text;
    ASSERT_EQ(read->value, length) << text;
    ASSERT_EQ(writeDecimal(read->value, unit), text);
    const std::string mirrored = writeDecimal(length.negated(), unit);
    ASSERT_EQ(mirrored, length.isZero() ? "0" : text[0] == '-' ? text.substr(1) : '-' + text);
    ASSERT_TRUE(read->exact || unit == Unit::inch) << text;
  }
}

TEST(ReadingProperty, AChainReadsAsTheSumOfItsTerms) {
  constexpr std::uint64_t kSeed = 20'240'517;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 20'000; ++i) {
    std::string text;
    std::int64_t sum = 0;
    const int terms = static_cast<int>(random() % 8) + 1;
    for (int term = 0; term < terms; ++term) {
      const auto ticks = in64(static_cast<std::int64_t>(random() % 512) + 1);
      const bool subtract = term > 0 && random() % 2 == 0;
      if (term > 0) text += subtract ? " - " : " + ";
      text += writeFraction(Length::ticks(ticks));
      sum += subtract ? -ticks : ticks;
    }
    const auto read = readLength(text);
    ASSERT_TRUE(read.ok()) << text;
    ASSERT_EQ(read->value.ticks(), sum) << text;
    ASSERT_TRUE(read->exact);
  }
}

TEST(ReadingProperty, TolerancesReadBackAsWritten) {
  constexpr std::uint64_t kSeed = 20'240'517;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 50'000; ++i) {
    const std::int64_t value = tenths(static_cast<std::int64_t>(random() % 100'000) + 1000);
    const std::int64_t a = tenths(static_cast<std::int64_t>(random() % 100) + 1);
    const std::int64_t b = tenths(static_cast<std::int64_t>(random() % 100));
    const auto write = [](std::int64_t ticks) {
      return writeDecimal(Length::ticks(ticks), Unit::inch);
    };
    const std::string nominal = write(value);
    const auto pair = readLength(nominal + " -" + write(b) + " +" + write(a));
    ASSERT_TRUE(pair.ok());
    ASSERT_EQ(pair->value.ticks(), value);
    ASSERT_EQ(*pair->tolerance, (Tolerance{Length::ticks(a), Length::ticks(-b)}));
    const auto symmetric = readLength(nominal + " \u00B1" + write(a));
    ASSERT_TRUE(symmetric.ok());
    ASSERT_EQ(*symmetric->tolerance, Tolerance::symmetric(Length::ticks(a)));
  }
}

/// Bytes that look like figures often enough to get far into the grammar.
std::string anyText(std::mt19937_64& random) {
  static const std::vector<std::string> kPieces = {
      "1",      "3/16",   ".375",   "2",      "0",      " ",      " ",
      "+",      "-",      "/",      "x",      "(",      ")",      "\"",
      "'",      "mm",     "in",     "thou",   "R",      "DIA",    "REF",
      "BSC",    ",",      ".",      "\u00B1", "\u215C", "\u00B3", "\u2044",
      "\u2081", "\u00D8", "\u2212", "TYP",    "\xC3",   "16",     "9999999999999",
      "and"};
  std::string text;
  for (auto pieces = random() % 12; pieces > 0; --pieces) {
    text += random() % 40 == 0 ? std::string(1, static_cast<char>(random()))
                               : kPieces[random() % kPieces.size()];
  }
  return text;
}

TEST(ReadingProperty, AnyBytesAreReadOrRefusedInPlace) {
  constexpr std::uint64_t kSeed = 20'240'517;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  int readable = 0;
  for (int i = 0; i < 300'000; ++i) {
    const std::string text = anyText(random);
    const auto read = readLength(text, ReadingOptions{i % 2 == 0 ? Unit::inch : Unit::millimetre});
    if (!read) {
      ASSERT_TRUE(read.error().at.has_value()) << text;
      ASSERT_LE(*read.error().at, text.size()) << text;
      ASSERT_FALSE(read.error().text.empty());
      continue;
    }
    ++readable;
    ASSERT_EQ(read->text, text);
    ASSERT_LT(read->value.magnitude().ticks(), std::int64_t{1} << 62);
    ASSERT_TRUE(!read->tolerance || read->tolerance->width().ticks() > 0) << text;
  }
  EXPECT_GT(readable, 3000);  // or the pieces no longer reach what they are meant to
}

}  // namespace
}  // namespace inchwright
