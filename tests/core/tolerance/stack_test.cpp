#include "core/tolerance/stack.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "tests/support/part_text.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

using test::kInch;
using test::kThou;
using test::partFrom;

Stack stackBetween(const Part& part, const std::string& from, const std::string& to) {
  const auto network = toleranceNetworkOf(part, Axis::x);
  EXPECT_TRUE(network.ok());
  auto members = chainBetween(part, *network, from, to);
  EXPECT_TRUE(members.ok()) << members.error().text;
  if (!members) return {};
  const auto stack = stackOf(*members);
  EXPECT_TRUE(stack.ok());
  return *stack;
}

std::vector<Id> labels(const Stack& stack) {
  std::vector<Id> ids;
  for (const StackMember& member : stack.members) {
    const auto* shape = std::get_if<member::Shape>(&member.what);
    ids.push_back(shape ? shape->feature : *member.reading());
  }
  return ids;
}

const char* const kStackedPlate = R"(
  edge L x left
  edge R x right
  hole A 1/4
  hole B 1/4
  r1 x L A .500 +.002 -.000
  r2 x A B 1.000 ±.003
  r3 x B R .4995/.5005
  r4 x L R (2)
)";

TEST(Stack, AddsUnequalTolerancesAndLimitsExactly) {
  const Stack stack = stackBetween(partFrom(kStackedPlate), "L", "R");
  EXPECT_EQ(labels(stack), (std::vector<Id>{"r1", "r2", "r3"}));
  EXPECT_EQ(stack.nominal, Rational(2 * kInch));
  EXPECT_EQ(stack.worst, (Span{2 * kInch - 7 * kThou / 2, 2 * kInch + 11 * kThou / 2}));
  EXPECT_EQ(stack.middle, Rational(2 * kInch + kThou));
  // √(1² + 3² + ½²) = 3.201562118716424 thou about the shifted middle.
  EXPECT_EQ(stack.rss.high, 2 * kInch + kThou + 8'131'968);
  EXPECT_EQ(stack.rss.low, 2 * kInch + kThou - 8'131'968);
  // Widened by a half it would be 4.8 thou, and three members come to no more than 4½.
  EXPECT_EQ(stack.inflated, stack.worst);
}

TEST(Stack, HalvesOfATickComeToWholeOnes) {
  Part part = partFrom(R"(
    edge L x left
    slot S x 1/4 1
    slot T x 1/4 1
    hole A 1/4
    r1 x L S 2
    r2 x S2 A 1/2
    r3 x A T1 1/2
  )");
  for (Feature& feature : part.features) {
    auto* slot = feature.as<kind::Slot>();
    if (slot) slot->length->value = Length::ticks(slot->width->value.ticks() + 5);
  }
  EXPECT_EQ(stackBetween(part, "L", "T").nominal, Rational(3 * kInch + 5));
  EXPECT_EQ(stackBetween(part, "T", "L").nominal, Rational(-3 * kInch - 5));
  EXPECT_EQ(stackBetween(part, "L", "A").nominal, *Rational::of(5 * kInch + 5, 2));
}

TEST(Stack, SharesAddUpToOne) {
  const Stack stack = stackBetween(partFrom(kStackedPlate), "L", "R");
  double share = 0;
  double worst = 0;
  for (const StackMember& member : stack.members) {
    share += member.share;
    worst += member.worstShare;
  }
  EXPECT_NEAR(share, 1, 1e-12);
  EXPECT_NEAR(worst, 1, 1e-12);
  EXPECT_NEAR(stack.members[1].share, 9 / 10.25, 1e-12);
  EXPECT_NEAR(stack.members[1].worstShare, 3 / 4.5, 1e-12);
}

TEST(Stack, BackwardsIsTheSameTurnedRound) {
  const Stack there = stackBetween(partFrom(kStackedPlate), "A", "R");
  const Stack back = stackBetween(partFrom(kStackedPlate), "R", "A");
  EXPECT_EQ(back.nominal, there.nominal.negated());
  EXPECT_EQ(back.worst, (Span{-there.worst.high, -there.worst.low}));
  EXPECT_EQ(labels(back), (std::vector<Id>{"r3", "r2"}));
  EXPECT_EQ(back.members[0].sign(), -1);
  EXPECT_EQ(back.members[0].from, "R");
}

TEST(Stack, TakesTheFewestMembersThenTheNarrowest) {
  const Part part = partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    hole C 1/4
    r1 x L A 1 ±.001
    r2 x A B 1 ±.001
    r3 x L B 2 ±.010
    r4 x L C 1 ±.001
    r5 x C A 0 ±.020
    r6 x C B 1 ±.002
  )");
  EXPECT_EQ(labels(stackBetween(part, "L", "B")), (std::vector<Id>{"r3"}));
  EXPECT_EQ(labels(stackBetween(part, "A", "C")), (std::vector<Id>{"r5"}));
  const Part square = partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    hole C 1/4
    r1 x L A 1 ±.001
    r2 x A B 1 ±.003
    r3 x L C 1 ±.001
    r4 x C B 1 ±.002
  )");
  EXPECT_EQ(labels(stackBetween(square, "L", "B")), (std::vector<Id>{"r3", "r4"}));
}

TEST(Stack, GoesOverMiddlesByHalves) {
  const Part part = partFrom(R"(
    edge L x left
    edge R x right
    hole A 1/4
    r1 x L R 2 ±.004
    midway x A L R
  )");
  const Stack stack = stackBetween(part, "L", "A");
  EXPECT_EQ(labels(stack), (std::vector<Id>{"r1"}));
  EXPECT_EQ(stack.members[0].factor, *Rational::of(1, 2));
  EXPECT_EQ(stack.worst, (Span{kInch - 2 * kThou, kInch + 2 * kThou}));
}

TEST(Stack, UnderstoodPlacesTakeNoTolerance) {
  const Part part = partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    row D x 3 1/2
    r1 x L A 1 ±.004
    in_line x A B
    r2 x B D1 1/4 ±.001
  )");
  const Stack stack = stackBetween(part, "L", "D3");
  EXPECT_EQ(stack.worst, (Span{kInch * 9 / 4 - 5 * kThou, kInch * 9 / 4 + 5 * kThou}));
  EXPECT_EQ(labels(stack), (std::vector<Id>{"r1", "r2", "D", "D"}));
}

StackMember oneTo(std::int64_t low, std::int64_t high, const Rational& factor = 1) {
  StackMember member;
  member.factor = factor;
  member.nominal = low;
  member.low = low;
  member.high = high;
  return member;
}

TEST(Stack, AFewMembersAreNotWidenedBeyondTheirWorst) {
  // One of ±10, two of ±10 and three of ±10: 15, 21.2 and 25.98 against 10, 20 and 30.
  const auto one = stackOf({oneTo(90, 110)});
  EXPECT_EQ(one->rss, one->worst);
  EXPECT_EQ(one->inflated, (Span{90, 110}));
  EXPECT_TRUE(one->inflatedIsHeld);
  const auto two = stackOf({oneTo(90, 110), oneTo(90, 110)});
  EXPECT_EQ(two->rss, (Span{186, 214}));
  EXPECT_EQ(two->inflated, (Span{180, 220}));
  EXPECT_TRUE(two->inflatedIsHeld);
  const auto three = stackOf({oneTo(90, 110), oneTo(90, 110), oneTo(90, 110)});
  EXPECT_EQ(three->inflated, (Span{274, 326}));
  EXPECT_FALSE(three->inflatedIsHeld);
  // Nothing is held back where nothing is widened, nor where nothing strays.
  EXPECT_FALSE(stackOf({oneTo(90, 110)}, 1)->inflatedIsHeld);
  EXPECT_FALSE(stackOf({oneTo(90, 90), oneTo(7, 7)})->inflatedIsHeld);
  EXPECT_FALSE(stackOf({})->inflatedIsHeld);
}

TEST(Stack, EachSpanLiesWithinTheNextWhateverTheMembers) {
  std::mt19937_64 random(1'066);
  for (int round = 0; round < 2'000; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1066");
    std::vector<StackMember> members;
    for (std::uint64_t left = 1 + random() % 6; left > 0; --left) {
      const auto low = static_cast<std::int64_t>(random() % 2'000) - 1'000;
      const auto width = static_cast<std::int64_t>(random() % (random() % 2 == 0 ? 3 : 1'000));
      const auto over = static_cast<std::int64_t>(random() % 7) - 3;
      members.push_back(oneTo(low, low + width, *Rational::of(over == 0 ? 1 : over, 2)));
    }
    const double factor = 1 + static_cast<double>(random() % 5) / 4;
    const auto stack = stackOf(members, factor);
    ASSERT_TRUE(stack.ok());
    EXPECT_LE(stack->worst.low, stack->inflated.low);
    EXPECT_LE(stack->inflated.low, stack->rss.low);
    EXPECT_LE(stack->rss.low, stack->rss.high);
    EXPECT_LE(stack->rss.high, stack->inflated.high);
    EXPECT_LE(stack->inflated.high, stack->worst.high);
    // The corners of the box that the members span, one after another.
    double least = 1e18;
    double greatest = -1e18;
    for (std::uint32_t corner = 0; corner < 1u << members.size(); ++corner) {
      double sum = 0;
      for (std::size_t i = 0; i < members.size(); ++i) {
        const auto end = (corner >> i & 1) != 0 ? members[i].high : members[i].low;
        sum += members[i].factor.toDouble() * static_cast<double>(end);
      }
      least = std::min(least, sum);
      greatest = std::max(greatest, sum);
    }
    // Halves of whole numbers are exact in a double.
    EXPECT_EQ(static_cast<double>(stack->worst.low), std::floor(least));
    EXPECT_EQ(static_cast<double>(stack->worst.high), std::ceil(greatest));
  }
}

TEST(Stack, LengthsAtTheEndOfTheRangeAreRefusedNotWrapped) {
  constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
  EXPECT_EQ(stackOf({oneTo(-kMost, kMost)}).error().code, ErrorCode::outOfRange);
  EXPECT_EQ(stackOf({oneTo(kMost, kMost), oneTo(1, 1)}).error().code, ErrorCode::outOfRange);
  EXPECT_EQ(stackOf({oneTo(-kMost - 1, 0, Rational(-1))}).error().code, ErrorCode::outOfRange);
  EXPECT_TRUE(stackOf({oneTo(kMost / 4, kMost / 4)}).ok());
}

TEST(Stack, SaysWhatCantBeStacked) {
  const Part part = partFrom(kStackedPlate);
  const auto network = toleranceNetworkOf(part, Axis::x);
  ASSERT_TRUE(network.ok());
  EXPECT_EQ(chainBetween(part, *network, "L", "nowhere").error().code, ErrorCode::notFound);
  const Part loose = partFrom("edge L x left\nedge R x right\nr1 x L R (2)\nedge F y front");
  const auto bare = toleranceNetworkOf(loose, Axis::x);
  ASSERT_TRUE(bare.ok());
  EXPECT_EQ(chainBetween(loose, *bare, "L", "R").error().code, ErrorCode::unsolvable);
  EXPECT_EQ(chainBetween(loose, *bare, "L", "F").error().code, ErrorCode::badRequest);
  EXPECT_EQ(chainBetween(loose, *bare, "L", "L")->size(), 0u);
}

TEST(Stack, RefusesAFactorBelowOneAndTurnedLimits) {
  EXPECT_FALSE(stackOf({}, 0.5).ok());
  StackMember member;
  member.low = 2;
  member.high = 1;
  EXPECT_FALSE(stackOf({member}).ok());
}

TEST(ToleranceNetwork, TheGeneralToleranceFollowsTheLettering) {
  const Part part =
      partFrom("edge L x left\nedge R x right\nhole A 1/4\nr1 x L R 2\nr2 x L A .500");
  const auto network = toleranceNetworkOf(part, Axis::x);
  ASSERT_TRUE(network.ok());
  ASSERT_EQ(network->links.size(), 2u);
  for (const TolerancedLink& link : network->links) {
    const bool whole = link.nominal == 2 * kInch;
    EXPECT_EQ(link.width(), whole ? kInch / 32 : 10 * kThou);
  }
}

// Of figures that may not stray none has a share in it.
TEST(Stack, WhereNothingStraysNothingHasAShare) {
  StackMember exact;
  exact.what = member::Read{"r1"};
  exact.factor = Rational(1);
  exact.nominal = exact.low = exact.high = kInch;
  const auto stack = stackOf({exact, exact});
  ASSERT_TRUE(stack.ok());
  EXPECT_EQ(stack->worst, (Span{2 * kInch, 2 * kInch}));
  for (const StackMember& one : stack->members) {
    EXPECT_EQ(one.share, 0);
    EXPECT_EQ(one.worstShare, 0);
  }
}

}  // namespace
}  // namespace inchwright
