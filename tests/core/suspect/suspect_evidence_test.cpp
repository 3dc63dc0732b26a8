// The conditions of a block and what its tracing says, under the ranking of suspects.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/chain/network.h"
#include "core/solution/solution.h"
#include "core/suspect/correction_cost.h"
#include "core/suspect/explanation.h"
#include "core/suspect/missing_block.h"
#include "core/suspect/tracing.h"
#include "tests/core/suspect/drawn_print.h"
#include "tests/support/part_text.h"
#include "tests/support/system_along.h"

namespace inchwright {
namespace {

using drawn::Maker;
using drawn::Manner;
using drawn::Print;
using drawn::Trace;

// The blocks that still miss once readings are longer by so much.
std::vector<MissingBlock> blocksAfter(const Part& part, AxisNetwork network,
                                      const std::vector<Correction>& corrections) {
  for (const Correction& one : corrections) network.links[one.link].ticks += one.longer;
  const auto system = AxisSystem::of(part, std::move(network));
  EXPECT_TRUE(system.ok());
  return ConditionSpace(part, *system).blocks();
}

struct Wrong {
  Axis axis;
  std::vector<Correction> truth;  ///< what would mend it
};

// The misread links along the axis of the first of them, as corrections.
Wrong wrongIn(const Print& print) {
  Wrong wrong{print.part.reading(print.misread.front().reading)->axis, {}};
  const AxisSystem system = test::systemAlong(print.part, wrong.axis);
  const AxisNetwork& network = system.network();
  for (std::uint32_t i = 0; i < network.links.size(); ++i) {
    const Reading& reading = print.part.readings[network.links[i].source.index];
    for (const auto& misread : print.misread) {
      if (misread.reading != reading.id) continue;
      wrong.truth.push_back({i, misread.truth.ticks() - reading.figure.value.ticks()});
    }
  }
  return wrong;
}

TEST(SuspectBlocks, NoneWhenAllCloses) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    SCOPED_TRACE(seed);
    const Print print = Maker(seed, Manner::chained).make(0, Trace::none);
    for (const Axis axis : {Axis::x, Axis::y}) {
      const AxisSystem system = test::systemAlong(print.part, axis);
      EXPECT_TRUE(ConditionSpace(print.part, system).blocks().empty());
    }
  }
}

TEST(SuspectBlocks, TheTruthMendsEveryCondition) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    const Print print = Maker(seed, Manner::chained).make(1, Trace::none);
    const Wrong wrong = wrongIn(print);
    const AxisSystem system = test::systemAlong(print.part, wrong.axis);
    const AxisNetwork& network = system.network();
    const ConditionSpace space(print.part, system);
    ASSERT_EQ(space.blocks().size(), 1u);
    EXPECT_TRUE(blocksAfter(print.part, network, wrong.truth).empty());
    // As the columns say without solving again.
    const MissingBlock& block = space.blocks().front();
    const Correction& truth = wrong.truth.front();
    const auto at = std::find(block.readings.begin(), block.readings.end(), truth.link);
    ASSERT_NE(at, block.readings.end());
    const auto& column = block.columns[at - block.readings.begin()];
    for (std::size_t i = 0; i < block.misses.size(); ++i) {
      EXPECT_TRUE(block.misses[i] + Int128{truth.longer} * column[i] == 0);
      EXPECT_TRUE(block.slack[i] == 0);
    }
  }
}

// A links-and-midway system, by hand: 2 · r1 − r2 must vanish and misses by 2 · 19/16 − 21/8 =
// −1/4.
TEST(SuspectBlocks, AMidwayIsOneCondition) {
  AxisNetwork network;
  network.places = {"A", "L", "R"};
  network.owners = {0, 1, 2};
  constexpr std::int64_t k16th = Length::kTicksPerInch / 16;
  network.links = {{1, 0, 19 * k16th, true, {SourceKind::reading, 0}},
                   {1, 2, 42 * k16th, true, {SourceKind::reading, 1}}};
  network.relations = {{{{0, 2}, {1, -1}, {2, -1}}, {SourceKind::understanding, 0}}};
  Part part;
  part.readings.resize(2);
  part.understood.resize(1);
  part.features.resize(3);
  const auto system = AxisSystem::of(part, network);
  ASSERT_TRUE(system.ok());
  const ConditionSpace space(part, *system);
  ASSERT_EQ(space.blocks().size(), 1u);
  const MissingBlock& block = space.blocks().front();
  EXPECT_EQ(block.relations, std::vector<std::uint32_t>{0});
  ASSERT_EQ(block.misses.size(), 1u);
  EXPECT_EQ(block.columns[0][0], -2 * block.columns[1][0]);
  EXPECT_TRUE(block.misses[0] * 2 == Int128{block.columns[0][0]} * -4 * k16th);
}

// A reading of 1 3/16, to be longer by a ratio.
TEST(NearestCorrection, IsAFigureThatAPrintWouldHave) {
  AxisNetwork network;
  network.links = {{0, 1, Length::kTicksPerInch * 19 / 16, true, {SourceKind::reading, 0}}};
  const auto longer = [&](Ratio by, Int128 slack) -> std::optional<std::int64_t> {
    const auto found = nearestCorrection(network, 0, by, slack);
    return found ? std::optional(found->longer) : std::nullopt;
  };
  EXPECT_EQ(longer({25, 5}, 0), 5);
  EXPECT_EQ(longer({25, -5}, 0), -5);
  EXPECT_EQ(longer({26, 5}, 0), std::nullopt) << "no whole number of ticks";
  // A 64th off, give or take what the others are rounded by.
  constexpr std::int64_t k64th = Length::kTicksPerInch / 64;
  for (const std::int64_t off : {-3, 0, 3}) EXPECT_EQ(longer({k64th + off, 1}, 2), k64th) << off;
  EXPECT_EQ(longer({2 * k64th + 1, 2}, 2), k64th);
  for (const std::int64_t off : {-4, 4}) EXPECT_EQ(longer({k64th + off, 1}, 2), k64th + off);
  // The nearest of them: two fifths above one and three below the next.
  EXPECT_EQ(longer({k64th + k64th * 2 / 5, 1}, k64th / 2), k64th);
  EXPECT_EQ(longer({k64th + k64th * 3 / 5, 1}, k64th / 2), 2 * k64th);
  // To 1.2000, which is no 64th.
  constexpr std::int64_t kMore = Length::kTicksPerInch / 10'000 * 125;
  for (const std::int64_t off : {-3, 0, 3}) EXPECT_EQ(longer({kMore + off, 1}, 2), kMore) << off;
  EXPECT_EQ(longer({-25 * k64th + 1, 1}, 2), -25 * k64th);
  const Int128 largest = Int128{1} << 62;
  EXPECT_EQ(longer({largest * 2, 2}, 0), std::int64_t{1} << 62);
  EXPECT_EQ(longer({largest * 2 + 2, 2}, 0), std::nullopt);
  EXPECT_EQ(longer({-largest * 2 - 2, 2}, 0), std::nullopt);
}

TEST(SuspectTracing, FitsTheTruthBest) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    const Print print = Maker(seed, Manner::ladder).make(1, Trace::gaussian);
    const Wrong wrong = wrongIn(print);
    const Correction& truth = wrong.truth.front();
    if (std::abs(truth.longer) < Length::kTicksPerInch / 4) continue;
    const AxisSystem system = test::systemAlong(print.part, wrong.axis);
    const AxisNetwork& network = system.network();
    const ConditionSpace space(print.part, system);
    ASSERT_EQ(space.blocks().size(), 1u);
    const Tracing tracing(print.part, network, space, space.blocks().front());
    ASSERT_TRUE(tracing.isUsable());
    EXPECT_EQ(tracing.cost({}), tracing.cost({}));
    // Only where the reading carries a place: a spare one moves nothing.
    if (space.forest().holds(truth.link)) {
      EXPECT_LT(tracing.cost({truth}), tracing.cost({}));
      EXPECT_LT(tracing.cost({truth}), tracing.cost({{truth.link, -truth.longer}}));
    }
    const auto length = tracing.lengthOf(truth.link);
    ASSERT_TRUE(length.has_value());
    const double now = Length::ticks(network.links[truth.link].ticks).toInches();
    const double then = Length::ticks(network.links[truth.link].ticks + truth.longer).toInches();
    EXPECT_LT(std::abs(*length - then), std::abs(*length - now));
  }
}

TEST(SuspectTracing, UntracedPrintsSayNothing) {
  const Print print = Maker(3, Manner::ladder).make(1, Trace::none);
  const Wrong wrong = wrongIn(print);
  const AxisSystem system = test::systemAlong(print.part, wrong.axis);
  const AxisNetwork& network = system.network();
  const ConditionSpace space(print.part, system);
  ASSERT_EQ(space.blocks().size(), 1u);
  const Tracing tracing(print.part, network, space, space.blocks().front());
  EXPECT_FALSE(tracing.isUsable());
  EXPECT_EQ(tracing.cost(wrong.truth), 0);
  EXPECT_EQ(tracing.lengthOf(wrong.truth.front().link), std::nullopt);
}

TEST(SuspectTracing, ALinkBearsOnWhatHangsBelowIt) {
  const Print print = Maker(5, Manner::ladder).make(1, Trace::uniform);
  const Wrong wrong = wrongIn(print);
  const AxisSystem system = test::systemAlong(print.part, wrong.axis);
  const AxisNetwork& network = system.network();
  const ConditionSpace space(print.part, system);
  ASSERT_EQ(space.blocks().size(), 1u);
  const Tracing tracing(print.part, network, space, space.blocks().front());
  for (std::uint32_t node = 0; node < network.places.size(); ++node) {
    Int128 sum = 0;
    for (std::uint32_t link = 0; link < network.links.size(); ++link) {
      sum += Int128{network.links[link].ticks} * tracing.shareOf(node, link);
    }
    EXPECT_TRUE(sum == space.forest().position(node)) << network.places[node];
  }
}

// Whatever is offered closes every condition, and the truth is among it.
TEST(SuspectExplanations, EveryOneClosesTheBlock) {
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    for (const Trace trace : {Trace::none, Trace::gaussian}) {
      SCOPED_TRACE(seed);
      const Print print = Maker(seed, Manner::chained).make(1, trace);
      const Wrong wrong = wrongIn(print);
      const AxisSystem system = test::systemAlong(print.part, wrong.axis);
      const AxisNetwork& network = system.network();
      const ConditionSpace space(print.part, system);
      ASSERT_EQ(space.blocks().size(), 1u);
      const MissingBlock& block = space.blocks().front();
      const Tracing tracing(print.part, network, space, block);
      const auto explanations = explain(print.part, network, space, block, tracing);
      ASSERT_FALSE(explanations.empty());
      bool hasTruth = false;
      for (std::size_t i = 0; i < explanations.size(); ++i) {
        const Explanation& one = explanations[i];
        EXPECT_EQ(one.reasons.size(), one.corrections.size());
        EXPECT_GE(one.cost, explanations[i == 0 ? 0 : i - 1].cost);
        hasTruth = hasTruth || one.corrections == wrong.truth;
        EXPECT_TRUE(blocksAfter(print.part, network, one.corrections).empty());
        for (const Correction& each : one.corrections) {
          const std::int64_t now = network.links[each.link].ticks;
          EXPECT_TRUE(now + each.longer > 0 || now + each.longer == -now) << "ends swapped at most";
          EXPECT_NE(each.longer, 0);
        }
      }
      EXPECT_TRUE(hasTruth);
    }
  }
}

// Two fractions are misread, and decimals between the same places miss by what rounding takes: the
// two explain all, whatever the rounding leaves.
TEST(SuspectExplanations, WhatRoundingTakesStandsInNoWay) {
  const Part part = test::partFrom(
      "edge L x left\nhole A 1/4\nhole B 1/4\nhole C 1/4\nhole D 1/4\nhole E 1/4\n"
      "r1 x L A 1\nr2 x A B 1\nr3 x L B 2 1/8\nr4 x B C 1\nr5 x L C 3 1/4\n"
      "d1 x L D .333\nd2 x D E .333\nd3 x L E .667\nd4 x E B 1.333\n");
  const AxisSystem system = test::systemAlong(part, Axis::x);
  const AxisNetwork& network = system.network();
  const ConditionSpace space(part, system);
  ASSERT_EQ(space.blocks().size(), 1u);
  const MissingBlock& block = space.blocks().front();
  const Tracing tracing(part, network, space, block);
  const auto explanations = explain(part, network, space, block, tracing);
  ASSERT_FALSE(explanations.empty());
  std::map<Id, std::int64_t> eighths;
  for (const Correction& one : explanations[0].corrections) {
    eighths[part.readings[network.links[one.link].source.index].id] =
        one.longer / (Length::kTicksPerInch / 8);
  }
  EXPECT_EQ(eighths, (std::map<Id, std::int64_t>{{"r3", -1}, {"r5", -2}}));
}

// A copy drawn 4 % too long: what a reading's distance is taken for has the stretch taken off, as
// the middle one of all readings has it, whatever a misread one or a short one would say.
TEST(SuspectTracing, ReckonsWithAStretchedCopy) {
  const Part part = test::partFrom(R"(
edge L x left
hole A 1/4
hole B 1/4
hole C 1/4
edge R x right
traced L 0
traced A 1.56 0
traced B 1.771 0
traced C 3.33 0
traced R 6.45
r1 x L A 1 1/2
r2 x A B 13/16
r3 x B C 1 1/2
r4 x C R 3
r5 x L R 6 13/64
)");
  const AxisSystem system = test::systemAlong(part, Axis::x);
  const ConditionSpace space(part, system);
  ASSERT_EQ(space.blocks().size(), 1u);
  const Tracing tracing(part, system.network(), space, space.blocks()[0]);
  EXPECT_TRUE(tracing.isUsable());
  EXPECT_EQ(tracing.size(), 5u);
  for (std::uint32_t link = 0; link < system.network().links.size(); ++link) {
    const Reading& reading = part.readings[system.network().links[link].source.index];
    const double truly = reading.id == "r2" ? 13.0 / 64 : reading.figure.value.toInches();
    ASSERT_TRUE(tracing.lengthOf(link).has_value());
    // Traced to a thousandth of an inch.
    EXPECT_NEAR(*tracing.lengthOf(link), truly, 0.003) << reading.id;
  }
}

// A copy that is stretched evenly, or shifted, speaks for the same as one to size, and as clearly.
TEST(SuspectTracing, AnEvenStretchCostsNothing) {
  const auto costs = [](const std::array<const char*, 5>& at) {
    std::string text = "edge L x left\nhole A 1/4\nhole B 1/4\nhole C 1/4\nedge R x right\n";
    for (const std::size_t i : {0U, 1U, 2U, 3U, 4U}) {
      text += "traced " + std::string(1, "LABCR"[i]) + " " + at[i];
      text += i == 0 || i == 4 ? "\n" : " 0\n";
    }
    const Part part =
        test::partFrom(text + "r1 x L A 1\nr2 x A B 1\nr3 x B C 1\nr4 x C R 3\nr5 x L R 6 1/8\n");
    const AxisSystem system = test::systemAlong(part, Axis::x);
    const ConditionSpace space(part, system);
    const Tracing tracing(part, system.network(), space, space.blocks().at(0));
    const std::int64_t eighth = Length::kTicksPerInch / 8;
    return std::array{tracing.cost({{4, -eighth}}), tracing.cost({{3, eighth}}),
                      tracing.cost({{1, eighth}})};
  };
  const auto toSize = costs({"0", "1", "2", "3", "6"});
  EXPECT_LT(toSize[0], toSize[1]);
  EXPECT_LT(toSize[1], toSize[2]) << "the places beyond it move as well";
  const std::array<const char*, 5> others[] = {{"0", "1.03", "2.06", "3.09", "6.18"},
                                               {"0", ".97", "1.94", "2.91", "5.82"},
                                               {"7", "8", "9", "10", "13"}};
  for (const auto& at : others) {
    const auto other = costs(at);
    EXPECT_NEAR(other[0], toSize[0], 1e-6) << at[4];
    EXPECT_LT(other[0], other[1]) << at[4];
  }
}

// Three readings are too few to tell a stretch from a misreading.
TEST(SuspectTracing, TakesNoStretchFromThreeReadings) {
  const Part part = test::partFrom(R"(
edge L x left
hole A 1/4
edge R x right
traced L 0
traced A 1.04 0
traced R 2.08
r1 x L A 1
r2 x A R 1
r3 x L R 2 1/8
)");
  const AxisSystem system = test::systemAlong(part, Axis::x);
  const ConditionSpace space(part, system);
  ASSERT_EQ(space.blocks().size(), 1u);
  const Tracing tracing(part, system.network(), space, space.blocks()[0]);
  EXPECT_NEAR(tracing.lengthOf(0).value_or(0), 1.04, 1e-9);
}

}  // namespace
}  // namespace inchwright
