#include "app/machine/measured.h"

#include <gtest/gtest.h>

#include "core/measure/lettered.h"

namespace inchwright::app {
namespace {

Length in(const char* text) {
  return readLength(text)->value;
}

TEST(Measured, ASlipOfTheSignIsTold) {
  EXPECT_TRUE(isSignSlip(in("-0.3752"), in("0.375")));
  EXPECT_TRUE(isSignSlip(in("0.3752"), in("-0.375")));
  EXPECT_FALSE(isSignSlip(in("0.3752"), in("0.375")));
  EXPECT_FALSE(isSignSlip(in("-0.875"), in("0.375"))) << "something else altogether";
  EXPECT_FALSE(isSignSlip(in("0.0004"), in("0"))) << "zero has no sign";
  EXPECT_FALSE(isSignSlip(in("-0.0004"), in("0")));
}

TEST(Measured, TheDifferenceIsFromWhatTheReadoutShows) {
  const Step step;
  Coordinate wanted;
  wanted.value = in("11/32");  // 0.34375, shown as 0.3440
  wanted.rounding = Length::ticks(in("0.344").ticks() - wanted.value.ticks());
  EXPECT_EQ(differenceText(in("0.344"), wanted, step), "");
  EXPECT_EQ(differenceText(in("0.345"), wanted, step), "+0.0010");
  EXPECT_EQ(differenceText(in("0.3425"), wanted, step), "-0.0015");
}

}  // namespace
}  // namespace inchwright::app
