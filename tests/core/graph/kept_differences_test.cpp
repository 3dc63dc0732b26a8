#include "core/graph/kept_differences.h"

#include <gtest/gtest.h>

#include <random>

#include "core/graph/difference_graph.h"

namespace inchwright {
namespace {

using Edges = std::vector<DifferenceEdge>;

TEST(KeptDifferences, TakesWhatFitsAndMovesNoMoreThanItMust) {
  KeptDifferences kept({0, 0, 0});
  EXPECT_TRUE(kept.take(Edges{{0, 1, 1, 2}}));
  EXPECT_TRUE(kept.take(Edges{{1, 2, 5, 6}}));
  EXPECT_FALSE(kept.take(Edges{{0, 2, 9, 10}})) << "8 at the most";
  EXPECT_TRUE(kept.take(Edges{{0, 2, 8, 10}})) << "the refused one left nothing behind";
  const auto& at = kept.positions();
  EXPECT_EQ(at[1] - at[0], 2);
  EXPECT_EQ(at[2] - at[1], 6);
}

TEST(KeptDifferences, AllOfAGroupOrNone) {
  KeptDifferences kept({0, 0, 0});
  EXPECT_TRUE(kept.take(Edges{{0, 1, 3, 3}}));
  EXPECT_FALSE(kept.take(Edges{{1, 2, 4, 4}, {0, 1, 2, 2}}));
  EXPECT_TRUE(kept.take(Edges{{1, 2, 9, 9}})) << "the first of the group is not held either";
  EXPECT_TRUE(kept.take(Edges{{1, 1, -1, 0}}));
  EXPECT_FALSE(kept.take(Edges{{1, 1, 1, 2}})) << "from itself";
}

// One after the other, each is taken exactly when the graph of those taken and it can hold.
TEST(KeptDifferences, AgreesWithTheWholeGraphOverRandomEdges) {
  int refused = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    const auto below = [&](int bound) { return static_cast<int>(random() % unsigned(bound)); };
    constexpr std::uint32_t kNodes = 9;
    std::vector<std::int64_t> start(kNodes);
    for (auto& one : start) one = below(60);
    KeptDifferences kept(start);
    Edges taken;
    for (int i = 0; i < 30; ++i) {
      const std::int64_t low = below(80) - 40;
      const DifferenceEdge edge{std::uint32_t(below(kNodes)), std::uint32_t(below(kNodes)), low,
                                low + below(25)};
      Edges with = taken;
      with.push_back(edge);
      const bool can = DifferenceGraph(kNodes, with).feasible(start).has_value();
      ASSERT_EQ(kept.take(Edges{edge}), can);
      if (can) {
        taken = std::move(with);
      } else {
        ++refused;
      }
      for (const DifferenceEdge& one : taken) {
        const std::int64_t apart = kept.positions()[one.b] - kept.positions()[one.a];
        ASSERT_GE(apart, one.low);
        ASSERT_LE(apart, one.high);
      }
    }
  }
  EXPECT_GT(refused, 1000);
}

}  // namespace
}  // namespace inchwright
