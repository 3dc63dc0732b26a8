// Published cases of tolerances that are handed on, and of sums of chances.

#include <gtest/gtest.h>

#include <cmath>

#include "core/plan/gap.h"
#include "core/tolerance/simulation.h"

namespace inchwright {
namespace {

GapMember millimetres(const std::string& text, int sign) {
  const auto read = readLength(text, {Unit::millimetre});
  EXPECT_TRUE(read.ok()) << text;
  GapMember member;
  member.length = *read;
  member.sign = sign;
  return member;
}

// What a closing dimension has to keep to, and whether the chain that is worked to does it.
bool keepsAtWorst(const char* least, const char* greatest, const std::vector<GapMember>& members) {
  Gap gap;
  gap.least = *readLength(least, {Unit::millimetre});
  gap.greatest = *readLength(greatest, {Unit::millimetre});
  gap.members = members;
  const auto sum = gapStack(Job{}, gap);
  EXPECT_TRUE(sum.ok());
  return sum && sum->keeps(sum->stack.worst);
}

// Lycée de Ben Guerir, "Transfert de cotes": the print asks A = 60 ±0.15 and B = 35 ±0.2; A and C
// are worked, with B = A − C. C has to be 24.95 +0.1/0, i.e. 24.95 to 25.05 (the source misprints
// 25.5).
TEST(ToleranceTransfer, OneDimensionWorkedInPlaceOfAnother) {
  const auto holds = [](const char* c) {
    return keepsAtWorst("34.8", "35.2", {millimetres("60 ±0.15", 1), millimetres(c, -1)});
  };
  EXPECT_TRUE(holds("24.95/25.05"));
  EXPECT_FALSE(holds("24.94999/25.05"));
  EXPECT_FALSE(holds("24.95/25.05001"));
  EXPECT_FALSE(holds("24.95/25.5"));
}

// Process chain of a bushing (ukrbukva.net, pages 17–18): closing 24.935 to 25.065 from Б1 − Б2.
// With a tolerance of 0.46 on Б1 no Б2 does it; with Б1 = 241 −0.07, Б2 is 215.935 to 215.995.
TEST(ToleranceTransfer, AProcessDimensionLeavesTheNextItsShare) {
  const auto holds = [](const char* b1, const char* b2) {
    return keepsAtWorst("24.935", "25.065", {millimetres(b1, 1), millimetres(b2, -1)});
  };
  EXPECT_TRUE(holds("241 +0 -0.07", "215.935/215.995"));
  EXPECT_FALSE(holds("241 +0 -0.07", "215.93499/215.995"));
  EXPECT_FALSE(holds("241 +0 -0.07", "215.935/215.99501"));
  for (int hundredths = 21550; hundredths <= 21650; ++hundredths) {
    const std::string exact = std::to_string(hundredths / 100) + "." +
                              std::to_string(hundredths % 100 / 10) +
                              std::to_string(hundredths % 10) + " BSC";
    EXPECT_FALSE(holds("241 +0 -0.46", exact.c_str())) << exact;
  }
}

constexpr std::int64_t kUnit = 1'000'000;  // ticks for one of the source's units

Stack fourAlike(double halfWidth) {
  const auto half = static_cast<std::int64_t>(std::llround(halfWidth * kUnit));
  std::vector<StackMember> members(4);
  for (StackMember& member : members) {
    member.low = -half;
    member.high = half;
  }
  return *stackOf(members, 1);
}

void expectDistribution(const Simulation& found, double deviation, double reach) {
  EXPECT_NEAR(static_cast<double>(found.mean) / kUnit, 0, 0.01);
  EXPECT_NEAR(static_cast<double>(found.deviation) / kUnit, deviation, 0.006);
  // A million runs find this percentile to 0.005 (one standard error); the deviates are within
  // 0.03 of a standard deviation of a member.
  EXPECT_NEAR(static_cast<double>(found.percentiles[1]) / kUnit, -reach, 0.02);
  EXPECT_NEAR(static_cast<double>(found.percentiles[3]) / kUnit, reach, 0.02);
}

// JCGM 101:2008, §9.2.2: the sum of four N(0, 1) has u = 2.0 and lies within ±3.92 for 95 %. The
// limits of a normal member stand at three of its standard deviations.
TEST(SumsOfChances, FourNormalOnes) {
  const auto found = simulate(fourAlike(3), {1'000'000, 1, Spread::normal, 2});
  ASSERT_TRUE(found.ok());
  expectDistribution(*found, 2, 3.92);
}

// JCGM 101:2008, §9.2.3: four rectangular ones of the same u = 1 lie within ±3.88 for 95 % (exact
// 3.8794), where the law of propagation still says 3.92.
TEST(SumsOfChances, FourRectangularOnes) {
  const Stack stack = fourAlike(std::sqrt(3.0));
  const auto found = simulate(stack, {1'000'000, 1, Spread::rectangular, 2});
  ASSERT_TRUE(found.ok());
  expectDistribution(*found, 2, 3.8794);
  EXPECT_LT(static_cast<double>(found->percentiles[3]) / kUnit, 3.90);
  EXPECT_EQ(stack.worst.high, 4 * 1'732'051);
}

// GUM, JCGM 100:2008, H.1, an end gauge of 50 mm against a standard: l = 50.000838 mm, u = 32 nm
// (the results as two public test files quote them; the contributions of 25, 9.7, 2.9 and 16.6 nm
// from memory). Its effective freedom of 16 is nothing a stack knows.
TEST(SumsOfChances, TheEndGaugeOfTheGuide) {
  const auto member = [](std::int64_t nominal, std::int64_t deviation) {
    StackMember one;
    one.nominal = nominal;
    one.low = nominal - 3 * deviation;
    one.high = nominal + 3 * deviation;
    return one;
  };
  // In ticks of 0.01 nm.
  const auto stack = stackOf(
      {member(5'000'062'300, 2500), member(21'500, 970), member(0, 290), member(0, 1660)}, 1);
  ASSERT_TRUE(stack.ok());
  EXPECT_EQ(stack->nominal, Rational(5'000'083'800));
  const double u = static_cast<double>(stack->rss.high - stack->rss.low) / 6 / 100;
  EXPECT_NEAR(u, 31.7, 0.05);
  EXPECT_EQ(std::lround(u), 32);
}

// EA-4/02 M, Supplement 1, S10 (from memory), a vernier caliper at 150 mm: two rectangular
// contributions, ±50 and ±25 µm, give u 33 µm and lie within ±0.06 mm for 95 % (exact 32.275 and
// 59.19).
TEST(SumsOfChances, TheCaliperOfTheSupplement) {
  Gap gap;
  gap.members = {millimetres("150 ±0.050", 1), millimetres("0 ±0.025", 1)};
  const auto sum = gapStack(Job{}, gap);
  ASSERT_TRUE(sum.ok());
  const auto found = simulate(sum->stack, {1'000'000, 1, Spread::rectangular, 2});
  ASSERT_TRUE(found.ok());
  const double micrometre = 100'000;
  EXPECT_NEAR(static_cast<double>(found->deviation) / micrometre, 32.275, 0.1);
  const double reach = static_cast<double>(found->percentiles[3] - found->percentiles[1]) / 2;
  EXPECT_NEAR(reach / micrometre, 59.19, 0.3);
}

// S. Bell, NPL Good Practice Guide 11, issue 2 (from memory): 2.5, 0.3, 5.8 and 0.7 mm combine to
// 6.4 mm (exact 6.3616), twice that is 12.8; the string is 5.017 + 0.010 = 5.027 m long.
TEST(SumsOfChances, TheStringOfTheGuide) {
  Gap gap;
  gap.members = {millimetres("5017 ±7.5", 1), millimetres("10 ±0.9", 1), millimetres("0 ±17.4", 1),
                 millimetres("0 ±2.1", 1)};
  const auto sum = gapStack(Job{}, gap);
  ASSERT_TRUE(sum.ok());
  EXPECT_EQ(sum->stack.nominal, readLength("5027 mm")->value.rational());
  const double u = static_cast<double>(sum->stack.rss.width()) / 6 / Length::kTicksPerMillimetre;
  EXPECT_NEAR(u, 6.3616, 0.00005);
  EXPECT_EQ(std::lround(u * 10), 64);
}

// JCGM 100:2008, §5.1.2 eq. (10) (rule found, figures worked out): halving two touches of ±.0005
// each strays ±.0005 at worst and ±.00035355 by root sum square.
TEST(SumsOfChances, HalvingTwoTouches) {
  StackMember touch;
  touch.factor = *Rational::of(1, 2);
  touch.high = readLength(".0005")->value.ticks();
  touch.low = -touch.high;
  const auto stack = stackOf({touch, touch}, 1);
  ASSERT_TRUE(stack.ok());
  EXPECT_EQ(stack->worst.high, touch.high);
  EXPECT_EQ(stack->worst.low, touch.low);
  EXPECT_NEAR(static_cast<double>(stack->rss.high) / Length::kTicksPerInch, .00035355, 5e-9);
}

}  // namespace
}  // namespace inchwright
