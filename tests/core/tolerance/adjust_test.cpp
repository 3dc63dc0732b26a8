#include "core/tolerance/adjust.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "tests/support/part_text.h"

namespace inchwright {
namespace {

TEST(Adjust, TheChanceIsThatOfChiSquare) {
  // Two observations of one difference, two apart: squares 2 with 1 to spare; P = erfc(1).
  const auto result = adjustDifferences(2, {{{}, 0, 1, 9, 1}, {{}, 0, 1, 11, 1}}, {{0, 0}});
  EXPECT_NEAR(result->squares, 2, 1e-12);
  EXPECT_NEAR(*result->chance, std::erfc(1.0), 1e-9);
  EXPECT_FALSE(result->blunder.has_value());
}

TEST(Adjust, NamesABlunderWhereItCanBeTold) {
  const auto result = adjustDifferences(3,
                                        {{{}, 0, 1, 10, 1},
                                         {{}, 1, 2, 10, 1},
                                         {{}, 0, 2, 20, 1},
                                         {{}, 0, 1, 30, 1},
                                         {{}, 1, 2, 10, 1}},
                                        {{0, 0}});
  ASSERT_TRUE(result->blunder.has_value());
  EXPECT_EQ(*result->blunder, 3u);
}

// 0 and 2 fixed at 0 and 10, 1 midway: 3 is 4 from 1 and 2 from 2, of like weight; 9 and 12.
TEST(Adjust, HoldsConditionsExactly) {
  const auto result = adjustDifferences(4, {{{}, 1, 3, 4, 1}, {{}, 2, 3, 2, 1}, {{}, 0, 1, 7, 1}},
                                        {{0, 0}, {2, 10}}, {{{{0, 1}, {2, 1}, {1, -2}}, 0}});
  ASSERT_TRUE(result.ok());
  EXPECT_NEAR(result->places[1].value, 5, 1e-12);
  EXPECT_EQ(result->places[1].deviation, 0);
  EXPECT_NEAR(result->places[3].value, 10.5, 1e-12);
  EXPECT_NEAR(result->places[3].deviation, std::sqrt(0.5), 1e-12);
  EXPECT_NEAR(result->residuals[2].value, -2, 1e-12);
  EXPECT_EQ(result->freedom, 2);
  EXPECT_EQ(adjustDifferences(3, {{{}, 0, 1, 4, 1}}, {{0, 0}, {1, 50}, {2, 10}},
                              {{{{0, 1}, {2, 1}, {1, -2}}, 0}})
                .error()
                .code,
            ErrorCode::unsolvable);
}

// The middle of two places that readings reach by one side only: 2 M = L + R − 1 in is no more than
// the print says, and what nothing reaches is named.
TEST(Adjust, AnAxisWithMiddlesRowsAndPlacesOfItsOwn) {
  const Part part = test::partFrom(R"(
    edge L x left
    edge R x right
    hole M 1/4
    hole N 1/4
    hole P 1/4
    hole Q 1/4
    row D x 3 1/2
    r1 x L R 2.000 ±.003
    r2 x L R 2.006 ±.003
    r3 x M N .250 ±.001
    r4 x M D1 .125 ±.001
    r5 x P Q .5 ±.001
    midway x M L R
  )");
  const auto network = toleranceNetworkOf(part, Axis::x);
  ASSERT_TRUE(network.ok());
  const auto adjusted = adjustAxis(part, *network, {"L", {}, {}});
  ASSERT_TRUE(adjusted.ok()) << adjusted.error().text;
  const auto at = [&](std::string_view id) {
    for (const AdjustedAxis::Place& one : adjusted->places) {
      if (one.id == id) return one.value / Length::kTicksPerInch;
    }
    return -1.0;
  };
  EXPECT_NEAR(at("R"), 2.003, 1e-9);
  EXPECT_NEAR(at("M"), 1.0015, 1e-9);
  EXPECT_NEAR(at("N"), 1.2515, 1e-9);
  EXPECT_NEAR(at("D3"), 2.1265, 1e-9);
  EXPECT_EQ(adjusted->notJoined, (std::vector<Id>{"P", "Q"}));
  EXPECT_EQ(adjusted->result.freedom, 1);
  EXPECT_EQ(adjusted->observed.size(), 4u);
  const auto other = adjustAxis(part, *network, {"P", {}, {}});
  ASSERT_TRUE(other.ok());
  EXPECT_EQ(other->places.size(), 2u);
  EXPECT_EQ(adjustAxis(part, *network, {"A", {}, {}}).error().code, ErrorCode::notFound);
}

// Basic figures that contradict each other are no matter of weights.
TEST(Adjust, BasicFiguresThatContradictAreRefused) {
  const Part part = test::partFrom(R"(
    edge L x left
    edge R x right
    r1 x L R 2.000 BSC
    r2 x L R 2.001 BSC
    r3 x L R 2.000 ±.003
  )");
  const auto network = toleranceNetworkOf(part, Axis::x);
  EXPECT_EQ(adjustAxis(part, *network, {}).error().code, ErrorCode::unsolvable);
}

// A chain with a second reading of every third pair: what each pair comes to is known by hand.
TEST(Adjust, LongChainsStayNearlyLinear) {
  constexpr std::uint32_t kNodes = 20'001;
  std::vector<Observation> observed;
  for (std::uint32_t i = 0; i + 1 < kNodes; ++i) {
    observed.push_back({{}, i, i + 1, 1000, 1});
    if (i % 3 == 0) observed.push_back({{}, i, i + 1, 1003, 2});
  }
  const auto result = adjustDifferences(kNodes, observed, {{0, 0}});
  ASSERT_TRUE(result.ok());
  // (4 · 1000 + 1003) / 5 with a variance of 4/5 for every third, 1000 and 1 for the others.
  EXPECT_NEAR(result->places[3].value, 3000.6, 1e-6);
  EXPECT_NEAR(result->places[kNodes - 1].value, 20'000'000 + 6'667 * 0.6, 1e-3);
  EXPECT_NEAR(result->places[kNodes - 1].deviation, std::sqrt(6'667 * 0.8 + 13'333), 1e-3);
}

TEST(Adjust, ADeviationIsAboveNought) {
  for (const double deviation : {0.0, -1.0, std::nan("")}) {
    const auto refused =
        adjustDifferences(2, {{{}, 0, 1, 9, 1}, {{}, 0, 1, 11, deviation}}, {{0, 0}});
    ASSERT_FALSE(refused.ok()) << deviation;
    EXPECT_EQ(refused.error().code, ErrorCode::badRequest) << deviation;
    EXPECT_EQ(refused.error().place, "1") << "which of them";
  }
}

TEST(Adjust, RefusesWhatItCantDo) {
  EXPECT_FALSE(adjustDifferences(2, {{{}, 0, 1, 1, 0}}, {{0, 0}}).ok());
  EXPECT_FALSE(adjustDifferences(2, {{{}, 0, 1, 1, 1}}, {}).ok());
  EXPECT_EQ(adjustDifferences(4, {{{}, 2, 3, 1, 1}}, {{0, 0}}).error().code, ErrorCode::unsolvable);
}

}  // namespace
}  // namespace inchwright
