#include "core/tolerance/simulation.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/tolerance/draw_loop.h"

namespace inchwright {
namespace {

Stack stackOfHalves(const std::vector<std::int64_t>& halves) {
  std::vector<StackMember> members;
  for (const std::int64_t half : halves) {
    StackMember member;
    member.nominal = 1'000'000;
    member.low = member.nominal - half;
    member.high = member.nominal + half;
    members.push_back(member);
  }
  const auto stack = stackOf(members);
  EXPECT_TRUE(stack.ok());
  return *stack;
}

TEST(Simulation, IsTheSameOnAnyThreadsAndByEitherLoop) {
  const Stack stack = stackOfHalves({3'000, 5'000, 250'000, 40'000});
  for (const Spread spread : {Spread::normal, Spread::rectangular, Spread::triangular}) {
    SimulationOptions options{100'003, 42, spread, 1, Span{3'900'000, 4'100'000}, true};
    const auto plain = simulate(stack, options);
    ASSERT_TRUE(plain.ok());
    EXPECT_GT(plain->below + plain->above, 0u);
    for (const unsigned threads : {1u, 2u, 3u, 7u}) {
      options.threads = threads;
      options.plainLoop = false;
      EXPECT_EQ(*simulate(stack, options), *plain) << threads;
    }
    options.seed = 43;
    EXPECT_NE(*simulate(stack, options), *plain);
  }
}

TEST(Simulation, EveryRunIsInOneBar) {
  const auto result = simulate(stackOfHalves({1'000, 2'000}), {50'000});
  EXPECT_EQ(std::accumulate(result->bars.begin(), result->bars.end(), std::uint64_t{0}), 50'000u);
  EXPECT_EQ(result->range, (Span{1'997'000, 2'003'000}));
}

// 400 000 runs: the mean is off by less than 5 standard errors, σ / √runs, the deviation by 1 %.
TEST(Simulation, MeanAndDeviationAreThoseOfTheShapes) {
  const double half = 600'000;
  const std::vector<std::pair<Spread, double>> deviations{{Spread::normal, half / 3},
                                                          {Spread::rectangular, half / 1.7320508},
                                                          {Spread::triangular, half / 2.4494897}};
  for (const auto& [spread, deviation] : deviations) {
    const auto result = simulate(stackOfHalves({600'000}), {400'000, 7, spread});
    EXPECT_NEAR(static_cast<double>(result->mean), 1'000'000, 5 * deviation / 632);
    EXPECT_NEAR(static_cast<double>(result->deviation), deviation, deviation * 0.01);
  }
}

TEST(Simulation, ANormalMemberHasNormalPercentiles) {
  const auto result = simulate(stackOfHalves({3'000'000}), {4'000'000, 11});
  // In standard deviations. One standard error is 0.004 at 99.865 %, 0.0014 at 97.5 % and 0.0006 at
  // 50 %; four of them, and what the classes round.
  const std::array<double, 5> wanted{-3.0, -1.95996, 0, 1.95996, 3.0};
  const std::array<double, 5> allowed{0.018, 0.007, 0.004, 0.007, 0.018};
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    EXPECT_NEAR(static_cast<double>(result->percentiles[i] - 1'000'000) / 1e6, wanted[i],
                allowed[i]);
  }
}

// The probability that the sum of eight uniform numbers from 0 to 1 is below x: J. O. Irwin and P.
// Hall, Biometrika 19, 1927. Only for the lower half, where little cancels.
long double sumOfEightBelow(long double x) {
  long double sum = 0;
  long double choose = 1;  // (8 over k) / 8!
  for (int i = 2; i <= 8; ++i) choose /= i;
  for (int k = 0; static_cast<long double>(k) < x; ++k) {
    sum += (k % 2 == 0 ? 1 : -1) * choose * std::pow(x - static_cast<long double>(k), 8.0L);
    choose = choose * static_cast<long double>(8 - k) / static_cast<long double>(k + 1);
  }
  return sum;
}

// Exact, without drawing: where a deviate reaches so many standard deviations, the sum it is made
// of has to have the probability that the normal distribution has there.
TEST(Simulation, TheNormalDeviateHasNormalPercentilesAsFarAsFourAndAQuarter) {
  const std::int32_t perDeviation = deviatesPerHalf(Spread::normal) / 3;
  std::int32_t sum = -4 * 65'535;
  for (int quarters = -17; quarters <= 0; ++quarters) {
    while (normalDeviateOf(sum) < quarters * perDeviation / 4) ++sum;
    const long double probability = sumOfEightBelow((sum + 4 * 65'536 - 0.5L) / 65'536);
    const auto normal = [](long double z) { return std::erfc(-z / std::sqrt(2.0L)) / 2; };
    const long double wanted = quarters / 4.0L;
    EXPECT_LT(normal(wanted - 0.0011L), probability) << quarters;
    EXPECT_GT(normal(wanted + 0.0011L), probability) << quarters;
  }
}

TEST(Simulation, TheNormalDeviateRisesAndIsEvenAboutTheMiddle) {
  std::int32_t last = normalDeviateOf(-4 * 65'535);
  EXPECT_LT(-last, furthestDeviate(Spread::normal));
  for (std::int32_t sum = -4 * 65'535; sum <= 4 * 65'535; ++sum) {
    const std::int32_t now = normalDeviateOf(sum);
    ASSERT_GE(now, last);
    // Shifts round downwards: to 0.001 of a standard deviation.
    ASSERT_LE(std::abs(now + normalDeviateOf(-sum)), 8);
    last = now;
  }
  EXPECT_LT(last, furthestDeviate(Spread::normal));
}

TEST(Simulation, CountsWhatIsOutOfLimits) {
  // A rectangular member of ±1000 kept to ±500: half of it is out, a quarter each side.
  const auto result = simulate(stackOfHalves({1'000}),
                               {400'000, 3, Spread::rectangular, 2, Span{999'500, 1'000'500}});
  EXPECT_NEAR(static_cast<double>(result->below), 100'000, 1'500);
  EXPECT_NEAR(static_cast<double>(result->above), 100'000, 1'500);
}

TEST(Simulation, WithoutWidthEveryRunIsAlike) {
  const auto result = simulate(stackOfHalves({0, 0}), {10, 1, Spread::normal, 1, Span{0, 1}});
  EXPECT_EQ(result->mean, 2'000'000);
  EXPECT_EQ(result->above, 10u);
  EXPECT_FALSE(simulate(stackOfHalves({1}), {0}).ok());
}

}  // namespace
}  // namespace inchwright
