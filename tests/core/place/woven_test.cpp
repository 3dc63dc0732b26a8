#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/place/plane.h"
#include "core/place/settle.h"
#include "tests/support/random_placing.h"

namespace inchwright::test {
namespace {

constexpr double kOneTick = 1 / 2'540'000'000.0;

// A woven placing of which one place lies nearly between the two that hold it, so that it and what
// hangs on it can fold over a little.
RandomPlacing nearlyFlat(std::uint32_t count, double off, std::uint64_t seed) {
  RandomPlacing placing = RandomPlacing::make(RandomPlacing::Kind::woven, count, seed);
  const std::uint32_t flat = static_cast<std::uint32_t>(seed) % count;
  std::vector<PlanePoint> held;
  for (const RandomPlacing::Reading& reading : placing.readings) {
    if (reading.to == flat) held.push_back(placing.places[reading.from].truth);
  }
  const double dx = held[1].x - held[0].x, dy = held[1].y - held[0].y, far = std::hypot(dx, dy);
  RandomPlacing::Place& place = placing.places[flat];
  const PlanePoint strays{place.traced.x - place.truth.x, place.traced.y - place.truth.y};
  place.truth = {(held[0].x + held[1].x) / 2 - off * dy / far,
                 (held[0].y + held[1].y) / 2 + off * dx / far};
  place.traced = {place.truth.x + strays.x, place.truth.y + strays.y};
  for (RandomPlacing::Reading& reading : placing.readings) {
    const PlanePoint p = placing.places[reading.from].truth, q = placing.places[reading.to].truth;
    reading.value = std::hypot(q.x - p.x, q.y - p.y);
  }
  return placing;
}

// The greatest way that any place goes between two answers.
double apart(const PlaneProblem& problem, const std::vector<double>& a,
             const std::vector<double>& b) {
  double most = 0;
  for (const PlacedPoint& point : problem.points) {
    const auto moved = [&](std::uint32_t quantity) {
      return problem.equations.valueOf(quantity, a) - problem.equations.valueOf(quantity, b);
    };
    most = std::max(most, std::hypot(moved(point.x), moved(point.y)));
  }
  return most;
}

// Another answer within an eighth of the one that was taken, by brute force.
bool hasAnotherNear(const PlaneProblem& problem, const PlaneOutcome& outcome, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> shaken(-0.125, 0.125);
  std::vector<std::uint32_t> open;
  for (std::uint32_t i = 0; i < problem.kinds.size(); ++i) {
    if (problem.kinds[i] != VariableKind::figure) open.push_back(i);
  }
  for (int run = 0; run < 80; ++run) {
    std::vector<double> at = outcome.variables;
    for (const std::uint32_t one : open) at[one] += shaken(random);
    if (settle(problem.equations, problem.rows, open, at).residual > kOneTick / 4) continue;
    const double off = apart(problem, at, outcome.variables);
    if (off > kOneAnswerInches && off <= 0.125) return true;
  }
  return false;
}

TEST(Woven, TracedWellAllIsPlacedAndListedAsAssumed) {
  for (const std::uint32_t count : {8U, 20U, 50U, 60U}) {
    const RandomPlacing placing = RandomPlacing::make(RandomPlacing::Kind::woven, count, count);
    const PlaneProblem problem = placing.problem();
    const PlaneOutcome outcome = placeInPlane(problem);
    EXPECT_LE(outcome.residual, kOneTick / 4) << count;
    for (std::uint32_t i = 0; i < placing.places.size(); ++i) {
      const PlacedPoint& point = problem.points[i];
      EXPECT_NEAR(outcome.equations.valueOf(point.x, outcome.variables), placing.places[i].truth.x,
                  3 * kOneTick);
      EXPECT_NEAR(outcome.equations.valueOf(point.y, outcome.variables), placing.places[i].truth.y,
                  3 * kOneTick);
    }
    const auto isListed = [](const PlacedBlock& block) {
      return block.block.variables.size() <= 12 || block.fate == BlockFate::mirrorTaken;
    };
    EXPECT_TRUE(std::all_of(outcome.blocks.begin(), outcome.blocks.end(), isListed)) << count;
  }
}

// Where anything could be mistaken for what was traced, nothing is placed.
TEST(Woven, NothingIsPlacedThatHasAnotherAnswerNearBy) {
  int placed = 0, told = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const double off = 0.004 * static_cast<double>(seed);
    const PlaneProblem problem =
        nearlyFlat(7 + static_cast<std::uint32_t>(seed % 6), off, seed).problem();
    const PlaneOutcome outcome = placeInPlane(problem);
    const bool isPlaced =
        std::all_of(outcome.isPlaced.begin(), outcome.isPlaced.end(), [](bool one) { return one; });
    placed += isPlaced ? 1 : 0;
    told += std::any_of(outcome.blocks.begin(), outcome.blocks.end(),
                        [](const PlacedBlock& one) { return one.fate == BlockFate::twoAnswers; })
                ? 1
                : 0;
    EXPECT_FALSE(isPlaced && hasAnotherNear(problem, outcome, seed)) << seed;
  }
  EXPECT_GE(placed, 15);
  EXPECT_GE(told, 10);
}

// A large block without a trace names its answers and places none.
TEST(Woven, UntracedNothingIsPlaced) {
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    RandomPlacing placing = RandomPlacing::make(RandomPlacing::Kind::woven, 9, seed);
    PlaneProblem problem = placing.problem();
    for (PlacedPoint& point : problem.points) point.traced.reset();
    problem.isTraced.assign(problem.isTraced.size(), false);
    const PlaneOutcome outcome = placeInPlane(problem);
    for (const PlacedBlock& block : outcome.blocks) {
      EXPECT_NE(block.fate, BlockFate::mirrorTaken);
      EXPECT_FALSE(block.fate == BlockFate::placed && block.mayHaveMore);
    }
  }
}

}  // namespace
}  // namespace inchwright::test
