#include "core/seen/plane.h"

#include <gtest/gtest.h>

#include <random>

#include "core/seen/parts.h"

namespace inchwright::seen {
namespace {

Grey noise(int width, int height, std::uint32_t seed, int inked) {
  std::mt19937 random(seed);
  Grey g(width, height);
  for (auto& v : g.at)
    v = random() % 100 < static_cast<unsigned>(inked) ? 255
                                                      : static_cast<std::uint8_t>(random() % 50);
  return g;
}

TEST(Plane, TransposesAndTurns) {
  Grey g(3, 2);
  g.at = {1, 2, 3, 4, 5, 6};
  EXPECT_EQ(transposed(g).at, (std::vector<std::uint8_t>{1, 4, 2, 5, 3, 6}));
  // Clockwise: the first column, read from below, becomes the first row.
  EXPECT_EQ(turnedUpright(g).at, (std::vector<std::uint8_t>{4, 1, 5, 2, 6, 3}));
}

// Several squares are summed at once; what is left over at the right, one by one.
TEST(Plane, ShrinkingIsTheMeanOfEachSquare) {
  std::mt19937 random(5);
  for (const int by : {2, 3, 4}) {
    Grey g(37, 13);
    for (auto& v : g.at) v = static_cast<std::uint8_t>(random() % 256);
    const Grey small = shrunk(g, by);
    ASSERT_EQ(small.width, 37 / by);
    ASSERT_EQ(small.height, 13 / by);
    for (int y = 0; y < small.height; ++y) {
      for (int x = 0; x < small.width; ++x) {
        int sum = by * by / 2;
        for (int k = 0; k < by * by; ++k) sum += g.row(y * by + k / by)[x * by + k % by];
        ASSERT_EQ(small.row(y)[x], sum / (by * by)) << by << " at " << x << ", " << y;
      }
    }
  }
}

TEST(Plane, ShrinksToMeansAndKeepsAPixel) {
  Grey g(4, 2);
  g.at = {0, 10, 20, 30, 20, 30, 40, 51};
  EXPECT_EQ(shrunk(g, 2).at, (std::vector<std::uint8_t>{15, 35}));
  const Grey one(1, 1, 77);
  EXPECT_EQ(shrunk(one, 4).at, one.at);
}

TEST(Plane, CutsBeyondItsEdges) {
  const Grey g(2, 2, 9);
  const Grey c = cut(g, {-1, -1, 4, 3});
  EXPECT_EQ(c.at, (std::vector<std::uint8_t>{0, 0, 0, 0, 0, 9, 9, 0, 0, 9, 9, 0}));
  EXPECT_EQ(cut(g, {5, 5, 1, 1}).at, std::vector<std::uint8_t>{0});
}

// The running extremes agree with looking at every window.
TEST(Plane, ExtremesAgreeWithBruteForce) {
  for (const std::uint32_t seed : {1U, 2U, 3U}) {
    const Grey g = noise(23 + static_cast<int>(seed), 17, seed, 20);
    for (const int reach : {1, 2, 5, 30}) {
      const Grey most = widened(g, reach), least = narrowed(g, reach);
      for (int y = 0; y < g.height; ++y) {
        for (int x = 0; x < g.width; ++x) {
          std::uint8_t high = 0, low = 255;
          for (int v = std::max(0, y - reach); v <= std::min(g.height - 1, y + reach); ++v) {
            for (int u = std::max(0, x - reach); u <= std::min(g.width - 1, x + reach); ++u) {
              high = std::max(high, g.row(v)[u]);
              low = std::min(low, g.row(v)[u]);
            }
          }
          ASSERT_EQ(most.row(y)[x], high) << "seed " << seed << " reach " << reach;
          ASSERT_EQ(least.row(y)[x], low) << "seed " << seed << " reach " << reach;
        }
      }
    }
  }
}

// Each way the mean is rounded once.
TEST(Plane, BlurIsTheMeanOfEachWindow) {
  const Grey g = noise(26, 17, 4, 30);
  for (const int reach : {1, 2, 5, 30}) {
    const Grey means = blurred(g, reach);
    for (int y = 0; y < g.height; ++y) {
      for (int x = 0; x < g.width; ++x) {
        double sum = 0;
        for (int v = y - reach; v <= y + reach; ++v) {
          for (int u = x - reach; u <= x + reach; ++u)
            sum += g.row(std::clamp(v, 0, g.height - 1))[std::clamp(u, 0, g.width - 1)];
        }
        const double mean = sum / ((2 * reach + 1) * (2 * reach + 1));
        ASSERT_NEAR(means.row(y)[x], mean, 1.01) << reach << " at " << x << ", " << y;
      }
    }
  }
}

TEST(Plane, BlurKeepsAnEvenToneAndSamplesBlend) {
  const Grey even(9, 7, 100);
  EXPECT_EQ(blurred(even, 3).at, even.at);
  Grey g(2, 1);
  g.at = {0, 100};
  EXPECT_DOUBLE_EQ(sampled(g, 0.25, 0), 25);
  EXPECT_DOUBLE_EQ(sampled(g, 1.5, 0), 50);  // half of it lies beyond the edge
  EXPECT_DOUBLE_EQ(sampled(g, -3, 0), 0);
}

int flooded(const Grey& g, std::uint8_t above) {
  Plane<std::uint8_t> seen(g.width, g.height, 0);
  int count = 0;
  for (int y = 0; y < g.height; ++y) {
    for (int x = 0; x < g.width; ++x) {
      if (g.row(y)[x] <= above || seen.row(y)[x] != 0) continue;
      ++count;
      std::vector<std::pair<int, int>> open{{x, y}};
      while (!open.empty()) {
        const auto [u, v] = open.back();
        open.pop_back();
        if (!g.holds(u, v) || g.row(v)[u] <= above || seen.row(v)[u] != 0) continue;
        seen.row(v)[u] = 1;
        for (int j = -1; j <= 1; ++j) {
          for (int i = -1; i <= 1; ++i) open.emplace_back(u + i, v + j);
        }
      }
    }
  }
  return count;
}

TEST(Parts, AgreeWithFlooding) {
  for (std::uint32_t seed = 1; seed <= 20; ++seed) {
    const Grey g = noise(31, 29, seed, static_cast<int>(10 + 3 * seed));
    const Parts parts = partsOf(g, kInk);
    EXPECT_EQ(static_cast<int>(parts.list.size()), flooded(g, kInk)) << "seed " << seed;
    int inked = 0, area = 0;
    for (std::size_t i = 0; i < g.at.size(); ++i) {
      inked += g.at[i] > kInk;
      EXPECT_EQ(parts.of.at[i] >= 0, g.at[i] > kInk);
    }
    for (const Part& p : parts.list) area += p.area;
    EXPECT_EQ(area, inked) << "seed " << seed;
  }
}

TEST(Parts, HoldTheirBoxesAndCorners) {
  Grey g(5, 3);
  g.row(0)[0] = g.row(1)[1] = 255;  // corner to corner: one
  g.row(2)[4] = 255;
  const Parts parts = partsOf(g, kInk);
  ASSERT_EQ(parts.list.size(), 2U);
  EXPECT_EQ(parts.list[0].box, (Box{0, 0, 2, 2}));
  EXPECT_EQ(parts.list[1].box, (Box{4, 2, 1, 1}));
  EXPECT_TRUE(partsOf(Grey(), kInk).list.empty());
}

}  // namespace
}  // namespace inchwright::seen
