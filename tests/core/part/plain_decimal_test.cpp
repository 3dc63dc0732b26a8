#include "core/part/plain_decimal.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>

namespace inchwright {
namespace {

TEST(PlainDecimal, Good) {
  const std::pair<const char*, double> rows[] = {
      {"0", 0},    {"0.41", 0.41}, {"-0.5", -0.5},
      {".5", 0.5}, {"5.", 5},      {"-.25", -0.25},
      {"007", 7},  {"-0", 0},      {"1234567890.125", 1234567890.125}};
  for (const auto& [text, value] : rows) EXPECT_EQ(plainDecimal(text), value) << text;
}

TEST(PlainDecimal, Bad) {
  for (const char* text : {"", "-", ".", "-.", "+1", "1e3", "1,5", " 1", "1 ", "1.2.3", "--1",
                           "nan", "inf", "0x1", "1/2", "٣"}) {
    EXPECT_FALSE(plainDecimal(text)) << text;
  }
  EXPECT_TRUE(plainDecimal(std::string(40, '9')));
  EXPECT_FALSE(plainDecimal(std::string(41, '9')));
  EXPECT_FALSE(plainDecimal(std::string_view("1\0", 2)));
}

}  // namespace
}  // namespace inchwright
