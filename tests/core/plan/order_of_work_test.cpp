#include "core/plan/order_of_work.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <set>

namespace inchwright {
namespace {

std::vector<WorkStop> randomStops(std::mt19937& random, int count) {
  std::vector<WorkStop> stops;
  for (int i = 0; i < count; ++i) {
    // Whole numbers on purpose: plenty of ties.
    stops.push_back({"H" + std::to_string(i + 1), static_cast<double>(random() % 40) - 20,
                     static_cast<double>(random() % 30) - 10});
  }
  return stops;
}

std::vector<std::string> idsOf(const std::vector<WorkStop>& stops,
                               const std::vector<std::size_t>& order) {
  std::vector<std::string> ids;
  for (std::size_t i : order) ids.push_back(stops[i].id);
  return ids;
}

TEST(StandsBefore, CountsAsPeopleDo) {
  EXPECT_TRUE(standsBefore("D2", "D10"));
  EXPECT_FALSE(standsBefore("D10", "D2"));
  EXPECT_TRUE(standsBefore("A", "B"));
  EXPECT_TRUE(standsBefore("A", "A1"));
  EXPECT_FALSE(standsBefore("A", "A"));
  EXPECT_TRUE(standsBefore("A1B3", "A1B20"));
  EXPECT_NE(standsBefore("A01", "A1"), standsBefore("A1", "A01"));
  EXPECT_TRUE(standsBefore("H99999999999999999998", "H99999999999999999999"));
}

TEST(ShortTravel, TakesTheNearestOfFewStops) {
  const std::vector<WorkStop> line{{"C", 30, 0}, {"A", 10, 0}, {"B", 20, 0}};
  EXPECT_EQ(idsOf(line, shortTravel(line)), (std::vector<std::string>{"A", "B", "C"}));
  EXPECT_DOUBLE_EQ(travelThrough(line, shortTravel(line)), 30);
  EXPECT_TRUE(shortTravel({}).empty());
}

TEST(ShortTravel, BreaksTiesById) {
  const std::vector<WorkStop> tied{{"D10", 0, 5}, {"D2", 5, 0}};
  EXPECT_EQ(idsOf(tied, nearestFirst(tied)).front(), "D2");
}

TEST(ShortTravel, IsNeverLongerThanNearestFirstAndVisitsAll) {
  constexpr unsigned kSeed = 4711;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  double improved = 0, plain = 0;
  for (int round = 0; round < 200; ++round) {
    const std::vector<WorkStop> stops = randomStops(random, 1 + static_cast<int>(random() % 40));
    const std::vector<std::size_t> order = shortTravel(stops);
    EXPECT_EQ(std::set<std::size_t>(order.begin(), order.end()).size(), stops.size());
    ASSERT_EQ(order.size(), stops.size());
    const double ours = travelThrough(stops, order),
                 first = travelThrough(stops, nearestFirst(stops));
    ASSERT_LE(ours, first);
    improved += ours;
    plain += first;
  }
  // It has to do something for its work: some per cent on random plates.
  EXPECT_LT(improved, 0.97 * plain);
}

TEST(ShortTravel, DoesNotDependOnTheOrderGiven) {
  constexpr unsigned kSeed = 815;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  for (int round = 0; round < 50; ++round) {
    std::vector<WorkStop> stops = randomStops(random, 25);
    const std::vector<std::string> once = idsOf(stops, shortTravel(stops));
    std::shuffle(stops.begin(), stops.end(), random);
    ASSERT_EQ(idsOf(stops, shortTravel(stops)), once);
  }
}

// All orders of a few stops tried: 2-opt from the nearest comes close to the best there is.
TEST(ShortTravel, ComesCloseToTheBestOfSmallPlates) {
  constexpr unsigned kSeed = 99;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  for (int round = 0; round < 30; ++round) {
    const std::vector<WorkStop> stops = randomStops(random, 7);
    std::vector<std::size_t> order(stops.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    double best = INFINITY;
    do {
      best = std::min(best, travelThrough(stops, order));
    } while (std::next_permutation(order.begin(), order.end()));
    const double ours = travelThrough(stops, shortTravel(stops));
    EXPECT_GE(ours, best - 1e-9);
    EXPECT_LE(ours, 1.35 * best);
  }
}

TEST(ShortTravel, SweepsVeryManyStops) {
  std::mt19937 random(7);
  const std::vector<WorkStop> stops = randomStops(random, static_cast<int>(kLongestImproved) + 500);
  const std::vector<std::size_t> order = shortTravel(stops);
  EXPECT_EQ(std::set<std::size_t>(order.begin(), order.end()).size(), stops.size());
  std::vector<std::size_t> asGiven(stops.size());
  std::iota(asGiven.begin(), asGiven.end(), std::size_t{0});
  EXPECT_LT(travelThrough(stops, order), 0.2 * travelThrough(stops, asGiven));
}

}  // namespace
}  // namespace inchwright
