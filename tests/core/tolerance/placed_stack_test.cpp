#include "core/tolerance/placed_stack.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "core/solution/solution.h"
#include "core/tolerance/simulation.h"
#include "core/tolerance/slanted_links.h"
#include "tests/support/part_text.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

using test::kInch;
using test::kThou;
using test::partFrom;

constexpr std::optional<Axis> kStraight;

Reading centres(const char* id, const char* from, const char* to, const char* text) {
  Reading reading;
  reading.id = id;
  reading.kind = ReadingKind::centres;
  reading.from = from;
  reading.to = to;
  reading.figure = *readLength(text);
  return reading;
}

Reading angle(const char* id, const char* from, const char* to, const char* text) {
  Reading reading;
  reading.id = id;
  reading.kind = ReadingKind::angle;
  reading.from = from;
  reading.to = to;
  reading.angle = *readAngle(text);
  reading.figure.text = text;
  return reading;
}

// A at the origin's place, B 3 in to its right; C 2.500 from A at 53.13° (3-4-5 by 0.5).
Part heldByAngle(const char* swing, const char* far = "2.500 ±.002") {
  Part part = partFrom(R"(
    edge L x left
    edge F y front
    hole A 1/4
    hole B 1/4
    hole C 1/4
    traced C 2.5 3
    r1 x L A 1.000 ±.001
    r2 y F A 1.000 ±.001
    r3 x A B 3.000 ±.003
    r4 y A B 0 ±.004
  )");
  part.readings.push_back(centres("d", "A", "C", far));
  part.readings.push_back(angle("w", "A", "C", swing));
  return part;
}

const StackMember& member(const Stack& stack, std::string_view reading) {
  static const StackMember none;
  for (const StackMember& one : stack.members) {
    if (one.reading() && *one.reading() == reading) return one;
  }
  ADD_FAILURE() << "no member " << reading;
  return none;
}

// x(C) − x(A) = d cos w: cos w an inch an inch, −d sin w · π/180 an inch a degree.
TEST(PlacedStack, ADistanceAndAnAngleByHand) {
  const Part part = heldByAngle("60° ±0.1°");
  const auto stack = drawnStack(part, Axis::x, "A", "C");
  ASSERT_TRUE(stack.ok()) << stack.error().text;
  ASSERT_EQ(stack->members.size(), 2u);
  EXPECT_NEAR(stack->nominal.toDouble(), 1.25 * kInch, 1);
  EXPECT_EQ(member(*stack, "d").factor, Rational::of(1, 2));
  const double slope = -2.5 * std::sin(std::numbers::pi / 3) * std::numbers::pi / 180;
  EXPECT_NEAR(member(*stack, "w").factor.toDouble() * 3.6e9 / kInch, slope, 1e-6);
  EXPECT_TRUE(member(*stack, "w").isAngle);
  EXPECT_EQ(member(*stack, "w").high - member(*stack, "w").nominal, Angle::kPerDegree / 10);
  const double half = 0.5 * .002 + std::fabs(slope) * 0.1;
  EXPECT_NEAR(static_cast<double>(stack->worst.width()), 2 * half * kInch, 400);
  EXPECT_FALSE(stack->secondOrder.has_value());
  const double rss = std::hypot(0.5 * .002, slope * 0.1);
  EXPECT_NEAR(static_cast<double>(stack->rss.width()), 2 * rss * kInch, 400);
}

// From the edge the chain to A comes first: what is exact has a whole factor.
TEST(PlacedStack, ChainsAndCentreDistancesTogether) {
  const auto stack = drawnStack(heldByAngle("60° ±0.1°"), Axis::x, "L", "C");
  ASSERT_TRUE(stack.ok()) << stack.error().text;
  ASSERT_EQ(stack->members.size(), 3u);
  EXPECT_EQ(member(*stack, "r1").factor, Rational(1));
  EXPECT_FALSE(member(*stack, "r1").isSlanted);
  const auto back = drawnStack(heldByAngle("60° ±0.1°"), Axis::x, "C", "L");
  EXPECT_EQ(member(*back, "r1").factor, Rational(-1));
  EXPECT_EQ(back->worst.low, -stack->worst.high);
}

// Straight from B to C, neither lettered: by the cosine rule √7.75 in at 60°.
TEST(PlacedStack, StraightFromPlaceToPlace) {
  const Part part = heldByAngle("60° ±0.1°");
  const auto stack = drawnStack(part, kStraight, "B", "C");
  ASSERT_TRUE(stack.ok()) << stack.error().text;
  const double far = std::sqrt(7.75);
  EXPECT_NEAR(stack->nominal.toDouble(), far * kInch, 2);
  // By d: (d − 3 cos w) / far; by r3: (3 − d cos w) / far; by r4: −d sin w / far.
  EXPECT_NEAR(member(*stack, "d").factor.toDouble(), 1.0 / far, 1e-6);
  EXPECT_NEAR(member(*stack, "r3").factor.toDouble(), 1.75 / far, 1e-6);
  EXPECT_NEAR(std::fabs(member(*stack, "r4").factor.toDouble()),
              2.5 * std::sin(std::numbers::pi / 3) / far, 1e-6);
  EXPECT_EQ(stack->members.size(), 4u);
  // Lettered itself, it is that reading and no more.
  const auto direct = drawnStack(part, kStraight, "C", "A");
  ASSERT_EQ(direct->members.size(), 1u);
  EXPECT_EQ(direct->worst, (Span{5 * kInch / 2 - 2 * kThou, 5 * kInch / 2 + 2 * kThou}));
}

// Where two chains place both, the straight distance hangs on all their readings.
TEST(PlacedStack, StraightBetweenPlacesOfChains) {
  const Part part = partFrom(R"(
    hole A 1/4
    hole B 1/4
    r1 x A B 3 ±.002
    r2 y A B 4 ±.001
  )");
  const auto stack = drawnStack(part, kStraight, "A", "B");
  ASSERT_TRUE(stack.ok()) << stack.error().text;
  EXPECT_EQ(stack->nominal, Rational(5 * kInch));
  EXPECT_NEAR(member(*stack, "r1").factor.toDouble(), 0.6, 1e-6);
  EXPECT_NEAR(member(*stack, "r2").factor.toDouble(), 0.8, 1e-6);
  EXPECT_NEAR(static_cast<double>(stack->worst.width()), 4.0 * kThou, 20);
}

// Held almost across: a few degrees bend it by more than a tenth of its width.
TEST(PlacedStack, SaysWhereTheFirstOrderIsNotEnough) {
  const auto stack = drawnStack(heldByAngle("2° ±3°"), Axis::x, "A", "C");
  ASSERT_TRUE(stack.ok());
  ASSERT_TRUE(stack->secondOrder.has_value());
  EXPECT_GT(*stack->secondOrder * 10, stack->worst.width());
}

TEST(PlacedStack, WhatIsNotPlacedIsSaid) {
  Part part = heldByAngle("60°");
  part.readings.pop_back();
  EXPECT_EQ(drawnStack(part, Axis::x, "A", "C").error().code, ErrorCode::unsolvable);
  EXPECT_EQ(drawnStack(part, kStraight, "B", "C").error().code, ErrorCode::unsolvable);
  EXPECT_EQ(drawnStack(part, kStraight, "B", "Q").error().code, ErrorCode::notFound);
  EXPECT_EQ(drawnStack(part, kStraight, "B", "L").error().code, ErrorCode::badRequest);
}

// The first order against solving the part anew for each draw: the ends of 95 and of 99.7 in 100
// within a tenth of the width.
TEST(PlacedStack, FirstOrderAgreesWithSolvingEachDraw) {
  std::mt19937_64 random(1'618);
  for (int round = 0; round < 6; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1618");
    std::uniform_int_distribution<int> degrees(15, 75), quarters(6, 14);
    const std::string swing = std::to_string(degrees(random)) + "° ±0.2°";
    const std::string far = std::to_string(quarters(random) * 250) + " thou ±4 thou";
    Part part = heldByAngle(swing.c_str(), far.c_str());
    const Axis axis = round % 2 == 0 ? Axis::x : Axis::y;
    const auto stack = drawnStack(part, axis, "B", "C");
    ASSERT_TRUE(stack.ok()) << stack.error().text;
    SimulationOptions options;
    options.spread = Spread::rectangular;
    const auto first = simulate(*stack, options);
    std::vector<double> came;
    std::uniform_real_distribution<double> any(-1, 1);
    for (int draw = 0; draw < 1'500; ++draw) {
      Part one = part;
      for (Reading& reading : one.readings) {
        if (reading.angle) {
          const double by = any(random) * 0.2 * Angle::kPerDegree;
          reading.angle->value =
              Angle::microArcseconds(reading.angle->value.microArcseconds() + std::llround(by));
        } else {
          const double by =
              any(random) * static_cast<double>(reading.figure.tolerance->upper.ticks());
          reading.figure.value = Length::ticks(reading.figure.value.ticks() + std::llround(by));
        }
      }
      const auto solved = solve(one, {false});
      const auto apart = solved->between("B", "C", axis);
      ASSERT_TRUE(apart.has_value());
      came.push_back(apart->toDouble());
    }
    std::sort(came.begin(), came.end());
    const auto at = [&](double share) {
      return came[static_cast<std::size_t>(share * static_cast<double>(came.size()))];
    };
    const double tenth = static_cast<double>(stack->worst.width()) / 10;
    EXPECT_NEAR(at(0.025), static_cast<double>(first->percentiles[1]), tenth);
    EXPECT_NEAR(at(0.5), static_cast<double>(first->percentiles[2]), tenth);
    EXPECT_NEAR(at(0.975), static_cast<double>(first->percentiles[3]), tenth);
    EXPECT_GT(came.front(), static_cast<double>(stack->worst.low) - tenth);
    EXPECT_LT(came.back(), static_cast<double>(stack->worst.high) + tenth);
  }
}

// Along X from A: C by the centre distance and the angle, within their worst case whatever they
// are; solved anew for each draw.
TEST(PlacedRanges, WhatNoChainReachesIsRangedBySlopes) {
  const Part part = heldByAngle("60° ±0.1°");
  const auto solution = solve(part);
  const auto network = toleranceNetworkOf(part, Axis::x);
  auto ranges = rangesFrom(part, *network, "A");
  ASSERT_TRUE(ranges.ok());
  const auto find = [&](const Id& id) {
    return std::find_if(ranges->places.begin(), ranges->places.end(),
                        [&](const PlaceRange& one) { return one.id == id; });
  };
  EXPECT_TRUE(find("C") == ranges->places.end());
  ASSERT_TRUE(addPlacedRanges(part, *solution, Axis::x, "A", *ranges).ok());
  const auto found = find("C");
  ASSERT_TRUE(found != ranges->places.end());
  EXPECT_EQ(found->span, drawnStack(part, Axis::x, "A", "C")->worst);
  // The last two readings of the part.
  EXPECT_EQ(found->lowBy,
            (std::vector<Source>{{SourceKind::reading, 4}, {SourceKind::reading, 5}}));
  EXPECT_TRUE(ranges->leftOut.empty());
  std::mt19937_64 random(14);
  std::uniform_real_distribution<double> share(-1, 1);
  const std::int64_t beyond = found->span.width() / 20;
  for (int draw = 0; draw < 200; ++draw) {
    Part made = part;
    for (Reading& reading : made.readings) {
      if (reading.id == "d") {
        reading.figure.value =
            Length::ticks(reading.figure.value.ticks() + std::llround(share(random) * 2 * kThou));
      } else if (reading.id == "w") {
        reading.angle->value =
            Angle::microArcseconds(reading.angle->value.microArcseconds() +
                                   std::llround(share(random) * Angle::kPerDegree / 10));
      }
    }
    const auto there = solve(made)->between("A", "C", Axis::x)->rounded();
    EXPECT_GE(*there, found->span.low - beyond);
    EXPECT_LE(*there, found->span.high + beyond);
  }
}

TEST(PlacedRanges, AReadingToSpareIsNamedAsLeftOut) {
  Part part = heldByAngle("60° ±0.1°");
  part.readings.push_back(centres("s", "B", "C", "2.784 ±.001"));
  const auto solution = solve(part);
  auto ranges = rangesFrom(part, *toleranceNetworkOf(part, Axis::x), "A");
  ASSERT_TRUE(addPlacedRanges(part, *solution, Axis::x, "A", *ranges).ok());
  // Which one placed nothing is for the placing to say; one of the three did not.
  EXPECT_EQ(ranges->leftOut.size(), 1u);
}

TEST(PlacedRanges, AlongAnAxisThatChainsReachWhollyNothingIsLeftOut) {
  const Part part = partFrom(
      "edge L x left\nedge F y front\nhole A 1/4\nhole C 1/4\nb1 x L A 1 ±.002\n"
      "b2 y F A 1 ±.002\nin_line y A C\nr1 centres A C 1 ±.002\ntraced C 2 1\n");
  const auto solution = solve(part);
  ASSERT_FALSE(solution->beyond.used.empty());
  auto ranges = rangesFrom(part, *toleranceNetworkOf(part, Axis::y), "F");
  ASSERT_TRUE(addPlacedRanges(part, *solution, Axis::y, "F", *ranges).ok());
  EXPECT_TRUE(ranges->leftOut.empty());
}

// Lettered without one, and with none in the title block.
TEST(PlacedStack, AnAngleIsCustomarilyMadeToHalfADegree) {
  EXPECT_EQ(drawnStack(heldByAngle("60°"), Axis::x, "A", "C")->worst,
            drawnStack(heldByAngle("60° ±1/2°"), Axis::x, "A", "C")->worst);
}

// B lies an inch to the right of A, ±.005. Straying across by h lengthens it by h²/2(1 − h), of
// which a tenth of what is left above is given away: h = √(.2 · 1 · .005) = .0316228, and .0044837
// are left. No further than a quarter of its length in any case.
TEST(SlantedLinks, ADistanceAlongAnAxisLetsItsEndStrayAcross) {
  const auto linkOf = [](const std::string& text, Axis axis) {
    const Part part = partFrom(
        "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\na1 x L A 1/2\na2 y F A 1/2\n"
        "in_line y A B\ntraced A .5 .5\ntraced B 1.5 .5\nd centres A B " +
        text + "\n");
    const auto links = slantedLinks(part, *solve(part), *toleranceNetworkOf(part, axis));
    EXPECT_TRUE(links.ok());
    EXPECT_EQ(links->links.size(), 1U);
    return links->links.at(0);
  };
  const double inch = static_cast<double>(kInch);
  const TolerancedLink along = linkOf("1.000 ±.005", Axis::x);
  EXPECT_EQ(along.nominal, kInch);
  EXPECT_EQ(along.low, kInch - 5 * kThou);
  EXPECT_NEAR(static_cast<double>(along.high) / inch, 1.0044837, 1e-7);
  const TolerancedLink across = linkOf("1.000 ±.005", Axis::y);
  EXPECT_EQ(across.nominal, 0);
  EXPECT_NEAR(static_cast<double>(across.low) / inch, -0.0316228, 1e-7);
  EXPECT_EQ(across.high, -across.low);
  EXPECT_NEAR(static_cast<double>(linkOf("1.000 ±.5", Axis::y).high) / inch, 0.25, 1e-9);
}

// From A to B is 3 by 4: 5, ±.005. Straying as far sideways lengthens it by .005²/2(5 − .005),
// which the upper limit gives up. Both axes together get what there is, three fifths and four: each
// ±.005 or .0049975 over 1.4, whole ticks inwards, and turned round the other way about.
TEST(SlantedLinks, ADistanceAcrossBothAxesIsSharedBetweenThem) {
  for (const auto& [ends, sign] : {std::pair("A B", 1), std::pair("B A", -1)}) {
    const Part part = partFrom(
        "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\na1 x L A 1/2\na2 y F A 1/2\n"
        "a3 x A B 3\na4 y A B 4\nd centres " +
        std::string(ends) + " 5.000 ±.005\n");
    for (const auto& [axis, way] : {std::pair(Axis::x, 3 * kInch), std::pair(Axis::y, 4 * kInch)}) {
      const auto found = slantedLinks(part, *solve(part), *toleranceNetworkOf(part, axis));
      ASSERT_TRUE(found.ok());
      ASSERT_EQ(found->links.size(), 1U);
      const TolerancedLink& link = found->links[0];
      EXPECT_EQ(link.nominal, sign * way);
      // 12 700 000 ticks over 1.4 are 9 071 428.57; 12 693 643.6 are 9 066 888.3.
      const std::int64_t low = sign > 0 ? -9'071'428 : -9'066'888;
      const std::int64_t high = sign > 0 ? 9'066'888 : 9'071'428;
      EXPECT_EQ(link.low - link.nominal, low) << ends;
      EXPECT_EQ(link.high - link.nominal, high) << ends;
      EXPECT_TRUE(link.toleranced);
      EXPECT_EQ(link.source, (Source{SourceKind::reading, 4}));
    }
  }
}

// Lettered 53° ±1/2° where 53.1301° are placed: .3699° are left one way and .6301° the other, on 5
// in. By t/(1 + t) of the tangent t, .0320733 and .0543908, each over 1.4. Seen from below the part
// is turned over, and the angle with it.
TEST(SlantedLinks, AnAngleLetsTheFarEndStrayFurtherOnTheSideItIsShortOf) {
  for (const bool isBelow : {false, true}) {
    const std::string face = isBelow ? " 1/4 bottom\n" : " 1/4\n";
    Part part = partFrom("edge L x left\nedge F y front\nhole A" + face + "hole B" + face +
                         "a1 x L A 1/2\na2 y F A 1/2\na3 x A B 3\na4 y A B 4\n"
                         "w angle A B 53° ±1/2°\n");
    if (isBelow) part.readings.back().sense = Sense::clockwise;
    const auto strays = [&](Axis axis) {
      const auto found = slantedLinks(part, *solve(part), *toleranceNetworkOf(part, axis));
      EXPECT_TRUE(found.ok());
      EXPECT_EQ(found->links.size(), 1U);
      const TolerancedLink& link = found->links.at(0);
      return std::pair(static_cast<double>(link.low - link.nominal) / kInch,
                       static_cast<double>(link.high - link.nominal) / kInch);
    };
    const auto x = strays(Axis::x), y = strays(Axis::y);
    EXPECT_NEAR(x.first, -.0229093, 2e-7) << isBelow;
    EXPECT_NEAR(x.second, .0388506, 2e-7) << isBelow;
    EXPECT_NEAR(y.first, -.0388506, 2e-7) << isBelow;
    EXPECT_NEAR(y.second, .0229093, 2e-7) << isBelow;
  }
}

}  // namespace
}  // namespace inchwright
