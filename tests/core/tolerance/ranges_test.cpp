#include "core/tolerance/ranges.h"

#include <gtest/gtest.h>

#include <functional>
#include <map>
#include <random>

#include "core/tolerance/grouped_network.h"
#include "core/tolerance/relation_ranges.h"
#include "tests/core/tolerance/random_limits.h"
#include "tests/support/named.h"
#include "tests/support/part_text.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

using test::kInch;
using test::kThou;
using test::partFrom;
using test::readings;

Ranges ranges(const Part& part, const std::string& from) {
  const auto network = toleranceNetworkOf(part, Axis::x);
  EXPECT_TRUE(network.ok());
  const auto found = rangesFrom(part, *network, from);
  EXPECT_TRUE(found.ok());
  return found ? *found : Ranges{};
}

const PlaceRange* rangeOf(const Ranges& all, const Id& id) {
  for (const PlaceRange& one : all.places) {
    if (one.id == id) return &one;
  }
  return nullptr;
}

TEST(Ranges, OfAVeryLongChainOnlyTheLastMembersAreNamed) {
  std::string text = "edge P0 x\n";
  constexpr std::size_t kPlaces = 2'001;
  for (std::size_t i = 1; i < kPlaces; ++i) {
    const std::string here = std::to_string(i), before = std::to_string(i - 1);
    text += "edge P" + here + " x\n r" + here + " x P" + before + " P" + here + " .100 ±.001\n";
  }
  const Ranges all = ranges(partFrom(text), "P0");
  const PlaceRange* last = rangeOf(all, "P2000");
  ASSERT_NE(last, nullptr);
  EXPECT_EQ(last->span, (Span{198 * kInch, 202 * kInch}));
  ASSERT_EQ(last->highBy.size(), kMostMembersNamed / kPlaces);
  EXPECT_EQ(last->highBy.back(), readings({2000}).front());
  EXPECT_EQ(rangeOf(all, "P3")->lowBy, readings({1, 2, 3}));
}

TEST(Ranges, AShorterWayRoundSetsTheEnd) {
  const Ranges all = ranges(partFrom(R"(
    edge L x left
    edge R x right
    hole A 1/4
    r1 x L A 1 ±.010
    r2 x A R 1 ±.001
    r3 x L R 2 ±.002
  )"),
                            "L");
  const PlaceRange* a = rangeOf(all, "A");
  ASSERT_NE(a, nullptr);
  EXPECT_EQ(a->span, (Span{kInch - 3 * kThou, kInch + 3 * kThou}));
  EXPECT_EQ(a->highBy, readings({3, 2}));
  EXPECT_EQ(a->nominal, kInch);
  EXPECT_EQ(rangeOf(all, "R")->span, (Span{2 * kInch - 2 * kThou, 2 * kInch + 2 * kThou}));
  EXPECT_EQ(rangeOf(all, "L")->span, (Span{0, 0}));
}

TEST(Ranges, TolerancesThatCantAllHoldAreNamed) {
  const Ranges all = ranges(partFrom(R"(
    edge L x left
    edge R x right
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.001
    r2 x A R 1 ±.001
    r3 x L R 2.003 ±.0005
    r4 x R B 1 ±.001
  )"),
                            "L");
  std::vector<Source> named = all.contradiction;
  std::sort(named.begin(), named.end());
  EXPECT_EQ(named, readings({1, 2, 3}));
  EXPECT_TRUE(all.places.empty());
}

TEST(Ranges, PlacesInLineShareARange) {
  const Ranges all = ranges(partFrom(R"(
    edge L x left
    hole A 1/4
    hole B 1/4
    r1 x L A 1 +.002 -.001
    in_line x A B
  )"),
                            "B");
  EXPECT_EQ(rangeOf(all, "L")->span, (Span{-kInch - 2 * kThou, -kInch + kThou}));
  EXPECT_EQ(rangeOf(all, "A")->span, (Span{0, 0}));
}

TEST(Ranges, AMiddleIsExactFromEitherEnd) {
  const Part part = partFrom(R"(
    edge L x left
    edge R x right
    hole A 1/4
    hole B 1/4
    r1 x L R 2 ±.004
    midway x A L R
    midway x B L R
  )");
  const Ranges all = ranges(part, "L");
  EXPECT_EQ(rangeOf(all, "A")->span, (Span{kInch - 2 * kThou, kInch + 2 * kThou}));
  EXPECT_EQ(rangeOf(all, "A")->highBy, readings({1}));
  const Ranges back = ranges(part, "A");
  EXPECT_EQ(rangeOf(back, "R")->span, (Span{kInch - 2 * kThou, kInch + 2 * kThou}));
  EXPECT_EQ(rangeOf(back, "B")->span, (Span{0, 0}));
  EXPECT_TRUE(all.leftOut.empty());
}

TEST(Ranges, AMiddleAlsoNarrowsWhatReadingsAllow) {
  // A = (L + R) / 2 with A dimensioned as well: R = 2 A is tighter than its own reading.
  const Ranges all = ranges(partFrom(R"(
    edge L x left
    edge R x right
    hole A 1/4
    r1 x L R 2 ±.010
    r2 x L A 1 ±.001
    midway x A L R
  )"),
                            "L");
  EXPECT_EQ(rangeOf(all, "R")->span, (Span{2 * kInch - 2 * kThou, 2 * kInch + 2 * kThou}));
  EXPECT_EQ(rangeOf(all, "A")->span, (Span{kInch - kThou, kInch + kThou}));
}

TEST(Ranges, AMiddleThatContradictsNamesTheReadings) {
  const Ranges all = ranges(partFrom(R"(
    edge L x left
    edge R x right
    hole A 1/4
    hole B 1/4
    r1 x L R 2 ±.001
    r2 x L A 1.010 ±.001
    r3 x A B 1 ±.001
    midway x A L R
  )"),
                            "L");
  std::vector<Source> named = all.contradiction;
  std::sort(named.begin(), named.end());
  EXPECT_EQ(named, readings({1, 2}));
}

// D1 and D2 lie half an inch apart by their shape, and both midway; M has nothing to do with it.
TEST(Ranges, UnderstandingsThatContradictOneAnotherAreNamed) {
  const Ranges all = ranges(partFrom(R"(
    edge L x left
    edge R x right
    row D x 2 1/2
    hole M 1/4
    r1 x L R 2 ±.001
    midway x M L R
    midway x D1 L R
    midway x D2 L R
  )"),
                            "L");
  std::vector<Source> named = all.contradiction;
  std::sort(named.begin(), named.end());
  EXPECT_EQ(named,
            (std::vector<Source>{{SourceKind::understanding, 1}, {SourceKind::understanding, 2}}));
}

TEST(Ranges, TooManyMiddlesAreNamedAsLeftOut) {
  std::string text = "edge L x left\nedge R x right\nr0 x L R 2 ±.010\nmidway x H0 L R\n";
  for (int i = 0; i < 60; ++i) {
    const std::string hole = "H" + std::to_string(i);
    text = "hole " + hole + " 1/8\n" + text;
    text +=
        "r" + std::to_string(i + 1) + " x L " + hole + " 1 ±.00" + std::to_string(1 + i % 9) + "\n";
  }
  const Ranges all = ranges(partFrom(text), "L");
  EXPECT_EQ(all.leftOut, (std::vector<Source>{{SourceKind::understanding, 0}}));
  EXPECT_EQ(rangeOf(all, "H0")->span, (Span{kInch - kThou, kInch + kThou}));
}

TEST(Ranges, TheOrderOfTheReadingsDoesNotMatter) {
  Part part = partFrom(R"(
    edge L x left
    edge R x right
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.003
    r2 x A R 1 ±.003
    r3 x L B 1 ±.003
    r4 x B R 1 ±.003
    r5 x L R 2 ±.001
  )");
  const Ranges first = ranges(part, "A");
  std::reverse(part.readings.begin(), part.readings.end());
  std::reverse(part.features.begin(), part.features.end());
  Ranges turned = ranges(part, "A");
  for (PlaceRange& one : turned.places) {
    for (std::vector<Source>* by : {&one.lowBy, &one.highBy}) {
      for (Source& source : *by) source.index = 4 - source.index;
    }
  }
  EXPECT_EQ(turned, first);
}

TEST(Unassured, OnlyTheOverallReadingThatTheChainDoesNotKeep) {
  const Part part = partFrom(R"(
    edge L x left
    edge R x right
    hole A 1/4
    r1 x L A 1 ±.003
    r2 x A R 1 ±.003
    r3 x L R 2 ±.004
  )");
  const auto network = toleranceNetworkOf(part, Axis::x);
  const auto found = unassuredReadings(part, *network);
  ASSERT_TRUE(found.ok());
  ASSERT_EQ(found->found.size(), 1u);
  EXPECT_EQ(found->found[0].reading, "r3");
  EXPECT_EQ(found->found[0].others, (Span{2 * kInch - 6 * kThou, 2 * kInch + 6 * kThou}));
  EXPECT_EQ(found->found[0].highBy, readings({1, 2}));
  const auto among = unassuredReadings(part, *network, {"r1"});
  EXPECT_TRUE(among->found.empty());
}

TEST(Unassured, NoneWhereTheChainIsCloseEnoughOrOpen) {
  for (const char* last : {"r3 x L R 2 ±.006", "r3 x L R (2)", "r3 x L R 2"}) {
    const Part part = partFrom(std::string("edge L x left\nedge R x right\nhole A 1/4\n"
                                           "r1 x L A 1 ±.003\nr2 x A R 1 ±.003\n") +
                               last);
    const auto network = toleranceNetworkOf(part, Axis::x);
    EXPECT_TRUE(unassuredReadings(part, *network)->found.empty()) << last;
  }
}

// The pitch lettered of a row is no reading: D1 and D2 are let be ±.006 apart and that is asked of
// nobody. The reading to D2 is, ±.004 by the other two.
TEST(Unassured, OnlyOfReadings) {
  const Part part =
      partFrom("edge L x left\nrow D x 2 1/2 ±.001\nr1 x L D1 1 ±.003\nr2 x L D2 1 1/2 ±.003\n");
  const auto found = unassuredReadings(part, *toleranceNetworkOf(part, Axis::x));
  ASSERT_TRUE(found.ok());
  ASSERT_EQ(found->found.size(), 1u);
  EXPECT_EQ(found->found[0].reading, "r2");
  EXPECT_EQ(found->found[0].allowed, (Span{1497 * kThou, 1503 * kThou}));
  EXPECT_EQ(found->found[0].others, (Span{1496 * kThou, 1504 * kThou}));
  // Nor of two rows side by side, of which the one lets the other be further out than its own
  // pitch.
  const Part rows = partFrom(
      "row D x 2 2 ±.001\nrow E x 2 2 ±.003\nedge L x left\nhole A 1/4\nin_line x D1 E1\n"
      "in_line x D2 E2\nr1 x L D1 1 ±.001\nr2 x L A 1 ±.001\n");
  EXPECT_TRUE(unassuredReadings(rows, *toleranceNetworkOf(rows, Axis::x))->found.empty());
}

// A and B are in line: a reading that lets them be holds whatever happens, one that does not is
// impossible by itself, and only a toleranced one, or a basic figure, joins two groups.
TEST(GroupedNetwork, WhatLiesWithinOneGroupHoldsOrIsImpossible) {
  const Part part = partFrom(
      "edge L x left\nhole A 1/4\nhole B 1/4\nhole C 1/4\nin_line x A B\nr1 x A B 0 ±.001\n"
      "r2 x A B .010 ±.001\nr3 x L A 1 ±.001\nr4 x A C 1.000 BASIC\nr5 x B C 1.0 ±.01\n");
  const auto network = toleranceNetworkOf(part, Axis::x);
  ASSERT_TRUE(network.ok());
  const auto idsOf = [&](const std::vector<std::uint32_t>& links) {
    std::vector<Id> ids;
    for (const std::uint32_t link : links) {
      const Source& source = network->links[link].source;
      ids.push_back(source.kind == SourceKind::reading ? part.readings[source.index].id : "shape");
    }
    std::sort(ids.begin(), ids.end());
    return ids;
  };
  using Ids = std::vector<Id>;
  const GroupedNetwork shapes = groupRigidly(*network);
  EXPECT_EQ(shapes.groups, 3u);
  EXPECT_EQ(idsOf(shapes.inner), Ids{"r1"});
  EXPECT_EQ(idsOf(shapes.impossible), Ids{"r2"});
  EXPECT_EQ(idsOf(shapes.linkOf), (Ids{"r3", "r4", "r5"}));
  const GroupedNetwork basic = groupRigidly(*network, Rigid::shapesAndBasic);
  EXPECT_EQ(basic.groups, 2u);
  EXPECT_EQ(idsOf(basic.inner), (Ids{"r1", "r5"}));
  EXPECT_EQ(idsOf(basic.impossible), Ids{"r2"});
  EXPECT_EQ(idsOf(basic.linkOf), Ids{"r3"});
}

// Random loops and trees of readings against the definition: with one left out, how far the others
// let its ends be, by all pairs. All are lettered 0, so that none is longer than another.
TEST(Unassured, AgreesWithTheDefinitionOnRandomPrints) {
  std::mt19937_64 random(40'906);
  std::size_t unassured = 0;
  for (int round = 0; round < 200; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 40906");
    const auto points = static_cast<std::uint32_t>(2 + random() % 12);
    const auto more = static_cast<std::uint32_t>(random() % 6);
    const auto edges = test::possibleEdges(random, points, more, 1'000);
    Part part;
    for (std::uint32_t i = 0; i < points; ++i) {
      Feature point;
      point.id = "P" + std::to_string(100 + i);
      part.features.push_back(point);
    }
    for (std::uint32_t i = 0; i < edges.size(); ++i) {
      Reading reading;
      reading.id = "r" + std::to_string(100 + i);
      reading.from = part.features[edges[i].a].id;
      reading.to = part.features[edges[i].b].id;
      reading.figure.tolerance =
          Tolerance{Length::ticks(edges[i].high), Length::ticks(edges[i].low)};
      part.readings.push_back(reading);
    }
    const auto network = toleranceNetworkOf(part, Axis::x);
    ASSERT_TRUE(network.ok());
    const auto found = unassuredReadings(part, *network);
    ASSERT_TRUE(found.ok());
    std::map<Id, Unassured> byReading;
    for (const Unassured& one : found->found) byReading.emplace(one.reading, one);
    std::size_t expected = 0;
    for (std::uint32_t i = 0; i < edges.size(); ++i) {
      std::vector<DifferenceEdge> others = edges;
      others.erase(others.begin() + i);
      const auto most = test::allPairs(points, others);
      const DifferenceEdge& own = edges[i];
      if (most[own.a][own.b] == test::kFar) continue;
      const Span free{-most[own.b][own.a], most[own.a][own.b]};
      if (free.low >= own.low && free.high <= own.high) continue;
      const auto one = byReading.find(part.readings[i].id);
      ASSERT_NE(one, byReading.end());
      ASSERT_EQ(one->second.allowed, (Span{own.low, own.high}));
      ASSERT_EQ(one->second.others, free);
      ++expected;
    }
    ASSERT_EQ(found->found.size(), expected);
    unassured += expected;
  }
  EXPECT_GT(unassured, 100u);
}

Part chainOfPoints(std::uint32_t points, const std::function<std::int64_t(std::uint32_t)>& length) {
  Part part;
  Length along;
  const auto read = [&](std::uint32_t from, std::uint32_t to, Length figure, std::int64_t either) {
    Reading reading;
    reading.id = "r" + std::to_string(1'000'000 + part.readings.size());
    reading.from = part.features[from].id;
    reading.to = part.features[to].id;
    reading.figure.value = figure;
    reading.figure.tolerance = Tolerance{Length::ticks(either), Length::ticks(-either)};
    part.readings.push_back(reading);
  };
  for (std::uint32_t i = 0; i < points; ++i) {
    Feature point;
    point.id = "P" + std::to_string(1'000'000 + i);
    part.features.push_back(point);
    if (i == 0) continue;
    const Length step = Length::ticks(length(i));
    read(i - 1, i, step, 100);
    along = *along.plus(step);
  }
  read(0, points - 1, along, 1'000);
  return part;
}

// Only the overall can be the longest of its loop, so only it is searched for.
TEST(Unassured, OfALongLoopOnlyTheLongestIsSearchedFor) {
  const Part part = chainOfPoints(5'000, [](std::uint32_t i) { return 100'000 + 7 * i; });
  const auto network = toleranceNetworkOf(part, Axis::x);
  const auto all = unassuredReadings(part, *network);
  ASSERT_TRUE(all.ok());
  EXPECT_FALSE(all->isCutShort);
  ASSERT_EQ(all->found.size(), 1u);
  EXPECT_EQ(all->found[0].reading, part.readings.back().id);
  EXPECT_EQ(all->found[0].others.width(), 2 * 4'999 * 100);
}

// Every other member is as long: a loop of 9 000 like figures would be gone round 9 000 times.
TEST(Unassured, LoopsThatTakeTooLongAreSaidToBeCutShort) {
  Part part = chainOfPoints(9'000, [](std::uint32_t) { return 0; });
  const auto network = toleranceNetworkOf(part, Axis::x);
  const auto all = unassuredReadings(part, *network);
  ASSERT_TRUE(all.ok());
  EXPECT_TRUE(all->isCutShort);
}

}  // namespace
}  // namespace inchwright
