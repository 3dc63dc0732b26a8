#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

#include "core/tolerance/budget.h"
#include "tests/core/tolerance/print_at_random.h"
#include "tests/support/named.h"

namespace inchwright {
namespace {

using test::PrintAtRandom;

// A hundredth of a millimetre, or a thousandth of an inch.
constexpr std::int64_t kMetricStep = 1'000'000;
constexpr std::int64_t kInchStep = 2'540'000;

/// A part is made by going to every target and straying.
struct Stray {
  std::int64_t target = 0;
  std::optional<std::int64_t> room;  ///< none: as far as it likes
};

std::map<Id, Stray> straysOf(const Budget& budget, const BudgetRequest& request) {
  std::map<Id, Stray> strays;
  for (const PlaceBudget& one : budget.places) {
    strays[one.id] = {one.target, one.isZero ? std::optional(request.finderError) : one.plusMinus};
  }
  return strays;
}

// Both worst corners of every reading the budget answers for.
void expectEveryCornerHolds(const Part& part, const Budget& budget,
                            const std::map<Id, Stray>& strays) {
  const std::vector<Id> out = test::idsOf(part, budget.notGuaranteed);
  for (const Reading& reading : part.readings) {
    if (!reading.figure.tolerance) continue;
    if (std::binary_search(out.begin(), out.end(), reading.id)) continue;
    const Stray& from = strays.at(reading.from);
    const Stray& to = strays.at(reading.to);
    ASSERT_TRUE(from.room && to.room) << reading.id;
    const std::int64_t length = to.target - from.target;
    const std::int64_t both = *from.room + *to.room;
    const std::int64_t figure = reading.figure.value.ticks();
    EXPECT_LE(length + both, figure + reading.figure.tolerance->upper.ticks()) << reading.id;
    EXPECT_GE(length - both, figure + reading.figure.tolerance->lower.ticks()) << reading.id;
  }
}

BudgetRequest requestAbout(const PrintAtRandom& print, std::mt19937_64& random) {
  BudgetRequest request;
  const std::size_t zero = random() % print.truth.size();
  for (std::size_t i = 0; i < print.truth.size(); ++i) {
    request.places.push_back(
        {print.part.features[i].id, Rational(print.truth[i] - print.truth[zero]), i == zero});
  }
  return request;
}

TEST(BudgetAttack, NoCornerOfAnyBudgetBreaksAReading) {
  std::mt19937_64 random(25'111'912);
  int withRoom = 0;
  for (int round = 0; round < 600; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 25111912");
    const PrintAtRandom print(random, round % 2 == 0 ? kMetricStep : kInchStep);
    const auto network = toleranceNetworkOf(print.part, Axis::x);
    ASSERT_TRUE(network.ok());
    const BudgetRequest request = requestAbout(print, random);
    const auto budget = budgetOf(print.part, *network, request);
    ASSERT_TRUE(budget.ok());
    ASSERT_EQ(budget->places.size(), print.truth.size());
    EXPECT_TRUE(budget->notGuaranteed.empty());
    for (const PlaceBudget& one : budget->places) withRoom += one.plusMinus > 0 ? 1 : 0;
    expectEveryCornerHolds(print.part, *budget, straysOf(*budget, request));
    if (HasFailure()) return;
  }
  EXPECT_GT(withRoom, 2'000);
}

TEST(BudgetAttack, NorWhereTheMachineAndTheFinderStray) {
  std::mt19937_64 random(17'760'704);
  std::size_t named = 0;
  for (int round = 0; round < 600; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 17760704");
    const PrintAtRandom print(random, kInchStep);
    const auto network = toleranceNetworkOf(print.part, Axis::x);
    BudgetRequest request = requestAbout(print, random);
    request.accuracy = static_cast<std::int64_t>(random() % 3) * kInchStep / 2;
    request.finderError = static_cast<std::int64_t>(random() % 3) * kInchStep / 4;
    const auto budget = budgetOf(print.part, *network, request);
    ASSERT_TRUE(budget.ok());
    named += budget->notGuaranteed.size();
    for (const PlaceBudget& one : budget->places) {
      EXPECT_GE(one.isZero ? request.accuracy : one.plusMinus.value_or(INT64_MAX), request.accuracy)
          << one.id;
    }
    expectEveryCornerHolds(print.part, *budget, straysOf(*budget, request));
    if (HasFailure()) return;
  }
  EXPECT_GT(named, 100u);
}

TEST(BudgetAttack, NorOnceTargetsAreRoundedToWhatIsDialled) {
  std::mt19937_64 random(5);
  for (int round = 0; round < 200; ++round) {
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 5");
    const PrintAtRandom print(random, kMetricStep);
    const auto network = toleranceNetworkOf(print.part, Axis::x);
    const BudgetRequest request = requestAbout(print, random);
    const auto budget = budgetOf(print.part, *network, request);
    ASSERT_TRUE(budget.ok());
    // A readout in inches to .0002 for a print in millimetres.
    constexpr std::int64_t kDial = 508'000;
    std::map<Id, Stray> strays = straysOf(*budget, request);
    for (const PlaceBudget& one : budget->places) {
      if (one.isZero || !one.plusMinus) continue;
      const std::int64_t dialled =
          (one.target + (one.target >= 0 ? kDial : -kDial) / 2) / kDial * kDial;
      const std::int64_t left = leftAfterRounding(*one.plusMinus, one.target, dialled);
      // Where nothing is left the target can't be dialled, and stays what it was.
      if (std::abs(dialled - one.target) <= *one.plusMinus) strays[one.id] = {dialled, left};
    }
    expectEveryCornerHolds(print.part, *budget, strays);
    if (HasFailure()) return;
  }
}

}  // namespace
}  // namespace inchwright
