#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

#include "core/tolerance/budget.h"

namespace inchwright {
namespace {

// A hundredth of a millimetre, or a thousandth of an inch.
constexpr std::int64_t kMetricStep = 1'000'000;
constexpr std::int64_t kInchStep = 2'540'000;

/// A print drawn at random about a true part, so that all of it can hold: readings with equal and
/// unequal tolerances and with limits, basic ones, places in line, middles, symmetric places and
/// equal spaces.
class PrintAtRandom {
 public:
  PrintAtRandom(std::mt19937_64& random, std::int64_t step) : random_(random), step_(step) {
    addPoint(0);
    const std::uint64_t points = 2 + random_() % 24;
    while (part.features.size() < points) grow();
    for (std::uint64_t more = random_() % points; more > 0; --more) read(any(), any());
  }

  Part part;
  std::vector<std::int64_t> truth;  ///< by feature

 private:
  std::size_t any() { return random_() % truth.size(); }

  std::size_t addPoint(std::int64_t at) {
    Feature point;
    point.id = "P" + std::to_string(100 + part.features.size());
    point.kind = FeatureKind::point;
    part.features.push_back(point);
    truth.push_back(at);
    return truth.size() - 1;
  }

  void grow() {
    const std::size_t a = any();
    const std::size_t b = any();
    switch (random_() % 8) {
      case 0:
        return understand(UnderstandingKind::inLine, {a, addPoint(truth[a])}, {});
      case 1:
        if (a == b || (truth[a] + truth[b]) % 2 != 0) break;
        return understand(UnderstandingKind::midway, {addPoint((truth[a] + truth[b]) / 2)}, {a, b});
      case 2:
        if (a == b) break;
        return understand(UnderstandingKind::equal, {a, b, addPoint(2 * truth[b] - truth[a])}, {});
      case 3:
        if (a == b) break;
        return mirror(a, addPoint(2 * truth[b] - truth[a]), b);
      default:
        break;
    }
    read(a, addPoint(static_cast<std::int64_t>(random_() % 20'000) * step_));
  }

  void understand(UnderstandingKind kind, const std::vector<std::size_t>& of,
                  const std::vector<std::size_t>& between) {
    Understanding one;
    one.kind = kind;
    one.axis = Axis::x;
    for (const std::size_t i : of) one.of.push_back(part.features[i].id);
    for (const std::size_t i : between) one.between.push_back(part.features[i].id);
    part.understood.push_back(one);
  }

  void mirror(std::size_t a, std::size_t b, std::size_t about) {
    understand(UnderstandingKind::symmetric, {a, b}, {});
    part.understood.back().about = part.features[about].id;
  }

  // The truth lies within the limits: about the figure, all to one side of it, or at a limit.
  void read(std::size_t a, std::size_t b) {
    if (a == b) return;
    Reading reading;
    reading.id = "r" + std::to_string(100 + part.readings.size());
    reading.from = part.features[a].id;
    reading.to = part.features[b].id;
    const std::int64_t length = truth[b] - truth[a];
    const auto steps = [&](std::uint64_t most) {
      return static_cast<std::int64_t>(random_() % (most + 1)) * step_;
    };
    const std::uint64_t kind = random_() % 8;
    if (kind == 0) {
      reading.figure.value = Length::ticks(length);
      reading.figure.exact = true;
      part.readings.push_back(reading);
      return;
    }
    const std::int64_t low = length - (kind == 1 ? 0 : steps(12));
    const std::int64_t high = length + (kind == 2 ? 0 : steps(12));
    const std::int64_t figure = kind == 3 ? (low + high) / 2 : kind == 4 ? high : low - steps(3);
    reading.figure.value = Length::ticks(figure);
    reading.figure.tolerance = Tolerance{Length::ticks(high - figure), Length::ticks(low - figure)};
    part.readings.push_back(reading);
  }

  std::mt19937_64& random_;
  std::int64_t step_;
};

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
  for (const Reading& reading : part.readings) {
    if (!reading.figure.tolerance) continue;
    const auto& out = budget.notGuaranteed;
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
