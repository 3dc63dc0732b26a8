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
    stops.push_back(
        {"H" + std::to_string(i + 1),
         {static_cast<double>(random() % 40) - 20, static_cast<double>(random() % 30) - 10}});
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
  const std::vector<WorkStop> line{{"C", {30, 0}}, {"A", {10, 0}}, {"B", {20, 0}}};
  EXPECT_EQ(idsOf(line, shortTravel(line)), (std::vector<std::string>{"A", "B", "C"}));
  EXPECT_DOUBLE_EQ(travelThrough(line, shortTravel(line)), 30);
  EXPECT_TRUE(shortTravel({}).empty());
}

TEST(ShortTravel, BreaksTiesById) {
  const std::vector<WorkStop> tied{{"D10", {0, 5}}, {"D2", {5, 0}}};
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

/// The same way found by looking at every stop and every pair.
std::vector<std::size_t> plainNearestFirst(const std::vector<WorkStop>& stops) {
  std::vector<std::size_t> left(stops.size()), order;
  std::iota(left.begin(), left.end(), std::size_t{0});
  std::sort(left.begin(), left.end(),
            [&](std::size_t a, std::size_t b) { return standsBefore(stops[a].id, stops[b].id); });
  double x = 0, y = 0;
  while (!left.empty()) {
    const auto next = std::min_element(left.begin(), left.end(), [&](std::size_t a, std::size_t b) {
      const auto square = [&](std::size_t i) {
        return (stops[i].at.x - x) * (stops[i].at.x - x) +
               (stops[i].at.y - y) * (stops[i].at.y - y);
      };
      return square(a) < square(b);
    });
    order.push_back(*next);
    x = stops[*next].at.x;
    y = stops[*next].at.y;
    left.erase(next);
  }
  return order;
}

std::vector<std::size_t> plainShortTravel(const std::vector<WorkStop>& stops) {
  const std::vector<std::size_t> nearest = plainNearestFirst(stops);
  std::vector<std::size_t> order = nearest;
  const auto leg = [&](std::size_t before, std::size_t to) {  // places in the order, from 1
    const double x = before == 0 ? 0 : stops[order[before - 1]].at.x;
    const double y = before == 0 ? 0 : stops[order[before - 1]].at.y;
    return std::hypot(stops[order[to - 1]].at.x - x, stops[order[to - 1]].at.y - y);
  };
  for (bool improved = true; improved;) {
    improved = false;
    for (std::size_t i = 1; i <= order.size(); ++i) {
      for (std::size_t j = i + 1; j <= order.size(); ++j) {
        double gain = leg(i - 1, i) - leg(i - 1, j);
        if (j < order.size()) gain += leg(j, j + 1) - leg(i, j + 1);
        const WorkStop& from = stops[order[i - 1]];
        if (gain <= 1e-9 * (std::abs(from.at.x) + std::abs(from.at.y) + 1e-9)) continue;
        std::reverse(order.begin() + static_cast<std::ptrdiff_t>(i) - 1,
                     order.begin() + static_cast<std::ptrdiff_t>(j));
        improved = true;
      }
    }
  }
  return travelThrough(stops, order) <= travelThrough(stops, nearest) ? order : nearest;
}

/// Scattered, in clusters far apart, all in a line, or in rows as on a plate.
std::vector<WorkStop> stopsOfManner(std::mt19937& random, int manner, int count) {
  std::vector<WorkStop> stops = randomStops(random, count);
  for (std::size_t i = 0; i < stops.size(); ++i) {
    WorkStop& stop = stops[i];
    const auto fine = [&] { return static_cast<double>(random() % 100'000) / 5'000; };
    if (manner == 1) {
      stop.at.x = static_cast<double>(random() % 3) * 300 + fine();
      stop.at.y = static_cast<double>(random() % 2) * 500 + fine();
    } else if (manner == 2) {
      stop.at.y = 7;
    } else if (manner == 3) {
      stop.at.x = static_cast<double>(i % 12) * 0.375;
      stop.at.y = static_cast<double>(i / 12) * 0.5;
    }
  }
  return stops;
}

TEST(ShortTravel, FindsTheWayThatTryingEveryPairFinds) {
  for (unsigned seed = 1; seed <= 160; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    const std::vector<WorkStop> stops =
        stopsOfManner(random, static_cast<int>(seed % 4), 1 + static_cast<int>(random() % 90));
    ASSERT_EQ(nearestFirst(stops), plainNearestFirst(stops));
    ASSERT_EQ(shortTravel(stops), plainShortTravel(stops));
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
  // Spread evenly: strips as wide as is best make 0.92 of the root of count times area.
  std::vector<WorkStop> spread = stops;
  for (WorkStop& stop : spread) {
    stop.at = {static_cast<double>(random() % 100'000), static_cast<double>(random() % 100'000)};
  }
  EXPECT_LT(travelThrough(spread, shortTravel(spread)),
            0.96 * std::sqrt(static_cast<double>(spread.size())) * 100'000);
}

}  // namespace
}  // namespace inchwright
