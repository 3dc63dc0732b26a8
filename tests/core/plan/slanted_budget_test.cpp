#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <random>

#include "core/plan/budget_from_zero.h"
#include "tests/core/place/mixed_print.h"
#include "tests/core/plan/plates.h"
#include "tests/support/part_text.h"
#include "tests/support/solved_part.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

using namespace plates;
using test::kThou;

const Setup kCorner = setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}, Face::top, 0);

/// The budgets of a part along both axes of its top.
struct Budgets {
  Job job = jobWith();
  Part part;
  Solution solution;
  std::array<Budget, 2> along;

  explicit Budgets(Part given) : part(std::move(given)), solution(solved(part)) {
    for (const Axis axis : {Axis::x, Axis::y}) {
      const auto budget = budgetAlong({part, solution, kCorner, job.machine}, axis);
      EXPECT_TRUE(budget.ok()) << (budget ? "" : budget.error().text);
      if (budget) along[static_cast<std::size_t>(axis)] = *budget;
    }
  }
  const PlaceBudget& of(const Id& id, Axis axis) const {
    for (const PlaceBudget& one : along[static_cast<std::size_t>(axis)].places) {
      if (one.id == id) return one;
    }
    ADD_FAILURE() << "no budget for " << id;
    static const PlaceBudget kNone;
    return kNone;
  }
  /// Whether both its ends are placed, along the axes that it runs along.
  bool has(const Reading& reading) const {
    for (const Axis axis : {Axis::x, Axis::y}) {
      if (reading.kind == ReadingKind::along && reading.axis != axis) continue;
      for (const Id& end : {reading.from, reading.to}) {
        const auto& places = along[static_cast<std::size_t>(axis)].places;
        if (std::none_of(places.begin(), places.end(),
                         [&](const PlaceBudget& one) { return one.id == end; })) {
          return false;
        }
      }
    }
    return true;
  }
  Source source(const Id& reading) const {
    return {SourceKind::reading,
            static_cast<std::uint32_t>(part.reading(reading) - part.readings.data())};
  }
  bool isGuaranteed(const Id& reading) const {
    for (const Budget& one : along) {
      const auto& open = one.notGuaranteed;
      if (std::find(open.begin(), open.end(), source(reading)) != open.end()) return false;
    }
    return true;
  }
};

// 2 ±.004 at 60° of which A is held to nothing else along X: |cos| and |sin| share alike, each of
// two places with half: .004 / (.5 + .866) / 2 = .001464.
TEST(SlantedBudget, ACentreDistanceIsSharedByCosineAndSine) {
  Part part = test::PartText::read(
      "edge L x left\nedge F y front\nhole A 1/4\nhole C 1/4\n"
      "b1 x L A 1 ±.1\nb2 y F A 1 ±.1\nr1 centres A C 2.000 ±.004\nr2 angle A C 60\n");
  part.general = {};
  const Budgets budgets(part);
  for (const Axis axis : {Axis::x, Axis::y}) {
    for (const char* id : {"A", "C"}) {
      const PlaceBudget& one = budgets.of(id, axis);
      ASSERT_TRUE(one.plusMinus) << id;
      // Straying square to it takes off .004² / 2 / 2 in at the most: 4 millionths.
      EXPECT_NEAR(static_cast<double>(*one.plusMinus), 1.464 * kThou, 0.004 * kThou) << id;
      EXPECT_EQ(one.heldBy, (std::vector<Source>{budgets.source("r1")})) << id;
    }
  }
}

// An angle binds square to itself: 1/4° at 2 in is .00873 in, all of it along Y at 0°.
TEST(SlantedBudget, AnAngleBindsSquareToItself) {
  Part part = test::PartText::read(
      "edge L x left\nedge F y front\nhole A 1/4\nhole C 1/4\n"
      "b1 x L A 1 ±.1\nb2 y F A 1 ±.1\nr1 centres A C (2)\nr2 angle A C 0 ±1/4\nb3 x A C 2 ±.01\n");
  const Budgets budgets(part);
  EXPECT_NEAR(static_cast<double>(*budgets.of("C", Axis::y).plusMinus), 4.34 * kThou, 0.03 * kThou);
  // Lengthwise no more is given than that, though .010 along X would leave .005 to each.
  EXPECT_NEAR(static_cast<double>(*budgets.of("C", Axis::x).plusMinus), 4.34 * kThou, 0.03 * kThou);
}

TEST(SlantedBudget, WhatIsCloserThanTheMachineGoesIsToBeMeasured) {
  Part part = test::PartText::read(
      "edge L x left\nedge F y front\nhole A 1/4\nhole C 1/4\n"
      "b1 x L A 1 ±.1\nb2 y F A 1 ±.1\nr1 centres A C 2.000 ±.001\nr2 angle A C 60\n");
  Job job = jobWith();
  job.machine.accuracy = *readLength(".001");
  const Solution solution = solved(part);
  const auto budget = budgetAlong({part, solution, kCorner, job.machine}, Axis::x);
  ASSERT_TRUE(budget.ok());
  EXPECT_EQ(budget->notGuaranteed, (std::vector<Source>{{SourceKind::reading, 2}}));
}

// Whether a reading holds where places are put; ticks by axis and id.
bool holds(const Part& part, const Reading& reading,
           const std::array<std::map<Id, double>, 2>& at) {
  const auto way = [&](std::size_t k) { return at[k].at(reading.to) - at[k].at(reading.from); };
  if (reading.kind == ReadingKind::angle) {
    const double off = std::remainder(std::atan2(way(1), way(0)) - reading.angle->value.toRadians(),
                                      2 * std::numbers::pi);
    return std::abs(off) <= part.general.angles->value.toRadians() + 1e-7;
  }
  const auto by = toleranceOf(reading.figure, part.general);
  if (!by) return true;
  const double length = reading.kind == ReadingKind::centres
                            ? std::hypot(way(0), way(1))
                            : way(static_cast<std::size_t>(reading.axis));
  const auto off = length - static_cast<double>(reading.figure.value.ticks());
  // Rounded targets cost a tick at each end.
  return off <= static_cast<double>(by->upper.ticks()) + 3 &&
         off >= static_cast<double>(by->lower.ticks()) - 3;
}

// Every place at a corner of its budget, or anywhere within.
std::array<std::map<Id, double>, 2> madeAt(const Budgets& budgets, double stretched, bool corner,
                                           std::mt19937_64& random) {
  std::array<std::map<Id, double>, 2> at;
  for (const std::size_t k : {0U, 1U}) {
    for (const PlaceBudget& one : budgets.along[k].places) {
      const double share = corner ? (random() % 2 == 0 ? -1 : 1)
                                  : std::uniform_real_distribution<double>(-1, 1)(random);
      at[k][one.id] = static_cast<double>(one.target) +
                      share * stretched * static_cast<double>(one.plusMinus.value_or(0));
    }
  }
  return at;
}

// Parts at random within the budgets keep every reading that is said to be guaranteed; budgets a
// fifth wider would not.
TEST(SlantedBudget, NoPartWithinTheBudgetsFailsAReading) {
  std::mt19937_64 random(14);
  int slanted = 0, broken = 0;
  for (std::uint64_t seed = 1; seed <= 150; ++seed) {
    Part part = test::MixedPrintMaker(seed).make(6 + static_cast<int>(seed % 6), true).part;
    part.general.fractions = *readLength(".005");
    part.general.threePlaces = *readLength(".003");
    part.general.twoPlaces = *readLength(".005");
    part.general.angles = *readAngle("1/2");
    const Budgets budgets(part);
    for (const Reading& reading : part.readings) {
      if (!budgets.isGuaranteed(reading.id) || reading.kind == ReadingKind::along) continue;
      if (budgets.has(reading)) ++slanted;
    }
    for (int made = 0; made < 60; ++made) {
      const auto within = madeAt(budgets, 1, made % 3 != 0, random);
      const auto beyond = madeAt(budgets, 1.2, true, random);
      for (const Reading& reading : part.readings) {
        if (!budgets.isGuaranteed(reading.id) || !budgets.has(reading)) continue;
        EXPECT_TRUE(holds(part, reading, within)) << reading.id << " of seed " << seed;
        broken += holds(part, reading, beyond) ? 0 : 1;
      }
    }
  }
  EXPECT_GE(slanted, 500);
  EXPECT_GE(broken, 100);
}

}  // namespace
}  // namespace inchwright
