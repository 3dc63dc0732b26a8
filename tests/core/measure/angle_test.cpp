#include "core/measure/angle.h"

#include <gtest/gtest.h>

#include <numbers>
#include <random>

namespace inchwright {
namespace {

constexpr std::int64_t kDegree = 3'600'000'000;
constexpr std::int64_t kMinute = 60'000'000;
constexpr std::int64_t kSecond = 1'000'000;

struct AngleRow {
  const char* text;
  std::int64_t value;
  std::int64_t plusMinus = 0;
  bool reference = false;
};

TEST(ReadAngle, WhatPrintsLetter) {
  const AngleRow rows[] = {
      {"55", 55 * kDegree},
      {"0", 0},
      {"55\u00B0", 55 * kDegree},
      {"55 \u00B0", 55 * kDegree},
      {"55 deg", 55 * kDegree},
      {"55 degrees", 55 * kDegree},
      {"1 degree", kDegree},
      {"55 DEG.", 55 * kDegree},
      {"22.5\u00B0", 45 * kDegree / 2},
      {"22,5\u00B0", 45 * kDegree / 2},
      {"22.5", 45 * kDegree / 2},
      {".5\u00B0", kDegree / 2},
      {"0.000001\u00B0", 3600},
      {"30 1/2", 61 * kDegree / 2},
      {"30 1/2\u00B0", 61 * kDegree / 2},
      {"30-1/2\u00B0", 61 * kDegree / 2},
      {"30\u00BD\u00B0", 61 * kDegree / 2},
      {"1/2\u00B0", kDegree / 2},
      {"1/3\u00B0", kDegree / 3},
      {"22\u00B0 30'", 45 * kDegree / 2},
      {"22\u00B030'", 45 * kDegree / 2},
      {"22\u00B0 30\u2032", 45 * kDegree / 2},
      {"22\u00B0 30\u2019", 45 * kDegree / 2},
      {"22 deg 30 min", 45 * kDegree / 2},
      {"22\u00B0 30' 15\"", 22 * kDegree + 30 * kMinute + 15 * kSecond},
      {"22\u00B0 30\u2032 15\u2033", 22 * kDegree + 30 * kMinute + 15 * kSecond},
      {"22\u00B0 30' 15.5\"", 22 * kDegree + 30 * kMinute + 31 * kSecond / 2},
      {"22 deg 30 min 15 sec", 22 * kDegree + 30 * kMinute + 15 * kSecond},
      {"22\u00B0 15\"", 22 * kDegree + 15 * kSecond},
      {"22\u00B0 30.5'", 22 * kDegree + 61 * kMinute / 2},
      {"30'", 30 * kMinute},
      {"90'", 90 * kMinute},
      {"15\"", 15 * kSecond},
      {"-10\u00B0", -10 * kDegree},
      {"\u221210\u00B0 15'", -10 * kDegree - 15 * kMinute},
      {"+10\u00B0", 10 * kDegree},
      {"-0\u00B0 30'", -30 * kMinute},
      {"360000", 360'000 * kDegree},
      {"-360000\u00B0", -360'000 * kDegree},
      {"45\u00B0 \u00B1"
       "1/2\u00B0",
       45 * kDegree, kDegree / 2},
      {"45 \u00B1 1/2", 45 * kDegree, kDegree / 2},
      {"45\u00B0 +/- 30'", 45 * kDegree, 30 * kMinute},
      {"45\u00B0\u00B10.25\u00B0", 45 * kDegree, kDegree / 4},
      {"45\u00B0 \u00B1"
       "1",
       45 * kDegree, kDegree},
      {"45\u00B0 \u00B1"
       "0\u00B0 30'",
       45 * kDegree, 30 * kMinute},
      {"22\u00B0 30' \u00B1"
       "10'",
       22 * kDegree + 30 * kMinute, 10 * kMinute},
      {"(45\u00B0)", 45 * kDegree, 0, true},
      {"(45)", 45 * kDegree, 0, true},
      {"45\u00B0 REF", 45 * kDegree, 0, true},
      {"45\u00B0 TYP", 45 * kDegree},
      {"  45 ", 45 * kDegree},
  };
  for (const AngleRow& row : rows) {
    SCOPED_TRACE(row.text);
    const auto read = readAngle(row.text);
    if (!read) {
      ADD_FAILURE() << read.error().text << " at " << *read.error().at;
      continue;
    }
    EXPECT_EQ(read->text, row.text);
    EXPECT_EQ(read->value.microArcseconds(), row.value);
    EXPECT_EQ(read->plusMinus.value_or(Angle()).microArcseconds(), row.plusMinus);
    EXPECT_EQ(read->reference, row.reference);
  }
}

TEST(ReadAngle, RefusesInPlace) {
  const struct {
    const char* text;
    std::size_t at;
    ErrorCode code = ErrorCode::badText;
  } rows[] = {
      {"", 0},
      {"-", 1},
      {"\u00B0", 0},
      {"abc", 0},
      {"45 mm", 3},
      {"45 ft", 3, ErrorCode::badText},
      {"22\u00B0 30", 5},  // minutes or seconds?
      {"22 30'", 3},       // two figures, the first unmarked
      {"22\u00B0 60'", 5},
      {"22\u00B0 30' 60\"", 9},
      {"22.5\u00B0 30'", 7},  // a fraction before the last part
      {"30' 22\u00B0", 4},    // the wrong way round
      {"22\u00B0 22\u00B0", 5},
      {"45\u00B0 \u00B1", 7},
      {"45\u00B0 \u00B1"
       "0",
       5},
      {"22\u00B0 30' \u00B1"
       "10",
       9},  // of what?
      {"45\u00B0 +1\u00B0 -0\u00B0", 5},
      {"45\u00B0 + 1\u00B0", 5},
      {"45 x 2", 3},
      {"45\u00B0 BSC", 5},
      {"45)", 2},
      {"(45", 0},
      {"1/0", 0},
      {"45\u00B0\xFF", 4},
      {"360001", 0, ErrorCode::outOfRange},
      {"-360000\u00B0 1'", 0, ErrorCode::outOfRange},
      {"99999999999999999999999", 0, ErrorCode::outOfRange},
      {"99999999999999'", 0, ErrorCode::outOfRange},
  };
  for (const auto& row : rows) {
    SCOPED_TRACE(row.text);
    const auto read = readAngle(row.text);
    if (read) {
      ADD_FAILURE() << "was read as " << read->value.microArcseconds();
      continue;
    }
    EXPECT_EQ(read.error().code, row.code);
    EXPECT_EQ(read.error().at, row.at) << read.error().text;
  }
}

TEST(ReadAngle, DegreesMinutesSecondsReadBack) {
  constexpr std::uint64_t kSeed = 20'240'519;
  SCOPED_TRACE(kSeed);
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 100'000; ++i) {
    const auto seconds = static_cast<std::int64_t>(random() % (360 * 3600));
    const bool negative = random() % 2 == 0;
    const std::string text = (negative ? "-" : "") + std::to_string(seconds / 3600) + "\u00B0 " +
                             std::to_string(seconds / 60 % 60) + "' " +
                             std::to_string(seconds % 60) + "\"";
    const auto read = readAngle(text);
    ASSERT_TRUE(read.ok()) << text;
    ASSERT_EQ(read->value.microArcseconds(), (negative ? -seconds : seconds) * kSecond) << text;
  }
}

TEST(Angle, InDegreesAndRadians) {
  EXPECT_EQ(Angle::degrees(45).toDegrees(), 45.0);
  // One rounding each in the division and the product: well within four units in the last place.
  EXPECT_DOUBLE_EQ(Angle::degrees(180).toRadians(), std::numbers::pi);
  EXPECT_LT(Angle::degrees(44), Angle::degrees(45));
}

}  // namespace
}  // namespace inchwright
