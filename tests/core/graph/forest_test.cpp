#include "core/graph/forest.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <random>
#include <vector>

#include "core/graph/branches.h"

namespace inchwright {
namespace {

TEST(Forest, LaterLinksAreSpareAndSayByHowMuchTheyMiss) {
  const auto forest = Forest::of(3, {{0, 1, 3}, {1, 2, 4}, {0, 2, 8}, {2, 2, 5}});
  ASSERT_TRUE(forest.ok());
  EXPECT_EQ(forest->position(0), 0);
  EXPECT_EQ(forest->position(1), 3);
  EXPECT_EQ(forest->position(2), 7);
  EXPECT_TRUE(forest->holds(0) && forest->holds(1));
  EXPECT_FALSE(forest->holds(2));
  EXPECT_TRUE(forest->missOf(2) == 1);
  EXPECT_FALSE(forest->holds(3)) << "from a node to itself";
  EXPECT_TRUE(forest->missOf(3) == 5);
  EXPECT_EQ(forest->loopOver(2), (Loop{{2, 1}, {1, -1}, {0, -1}}));
}

TEST(Forest, ATreeHangsFromItsLowestNode) {
  // 5 → 3 → 1 ← 4, and 0 and 2 by themselves.
  const auto forest = Forest::of(6, {{5, 3, 10}, {3, 1, 20}, {4, 1, -7}});
  ASSERT_TRUE(forest.ok());
  const auto told = [&](std::uint32_t node) {
    return std::vector<std::int64_t>{forest->root(node), forest->depth(node),
                                     forest->position(node)};
  };
  using Told = std::vector<std::int64_t>;
  EXPECT_EQ(told(0), (Told{0, 0, 0}));
  EXPECT_EQ(told(1), (Told{1, 0, 0}));
  EXPECT_EQ(told(2), (Told{2, 0, 0}));
  EXPECT_EQ(told(3), (Told{1, 1, -20}));
  EXPECT_EQ(told(4), (Told{1, 1, 7}));
  EXPECT_EQ(told(5), (Told{1, 2, -30}));
  EXPECT_EQ(forest->parent(5), 3u);
  EXPECT_EQ(forest->linkAbove(5), 0u);
  EXPECT_EQ(forest->signAbove(5), -1);
  EXPECT_EQ(forest->parent(1), kNone);
  EXPECT_EQ(forest->linkAbove(1), kNone);
  EXPECT_EQ(forest->linkAbove(2), kNone);
}

TEST(Forest, WhatDoesNotFitIsRefused) {
  constexpr auto kMost = std::numeric_limits<std::int64_t>::max();
  constexpr auto kLeast = std::numeric_limits<std::int64_t>::min();
  EXPECT_EQ(Forest::of(2, {{0, 2, 1}}).error().code, ErrorCode::badRequest);
  EXPECT_EQ(Forest::of(2, {{2, 0, 1}}).error().code, ErrorCode::badRequest);
  EXPECT_EQ(Forest::of(3, {{0, 1, kMost}, {1, 2, 1}}).error().code, ErrorCode::outOfRange);
  EXPECT_EQ(Forest::of(2, {{1, 0, kLeast}}).error().code, ErrorCode::outOfRange);
  EXPECT_EQ(Forest::of(2, {{0, 1, kLeast}}).value().position(1), kLeast);
  EXPECT_EQ(Forest::of(3, {{0, 1, kMost}, {2, 1, 1}}).value().position(2), kMost - 1);
}

// What a forest has to be, told as plainly as can be: a link is held when its ends are not yet
// joined by those before it; positions follow link by link.
void expectAForest(std::uint32_t nodes, const std::vector<Link>& links) {
  const auto made = Forest::of(nodes, links);
  ASSERT_TRUE(made.ok());
  std::vector<std::uint32_t> lowest(nodes);
  for (std::uint32_t node = 0; node < nodes; ++node) lowest[node] = node;
  for (std::uint32_t i = 0; i < links.size(); ++i) {
    const std::uint32_t a = lowest[links[i].from], b = lowest[links[i].to];
    ASSERT_EQ(made->holds(i), a != b);
    std::replace(lowest.begin(), lowest.end(), std::max(a, b), std::min(a, b));
    ASSERT_TRUE(a == b || made->missOf(i) == 0);
  }
  const Branches branches(*made);
  for (std::uint32_t node = 0; node < nodes; ++node) {
    ASSERT_EQ(made->root(node), lowest[node]);
    std::uint32_t met = 0;
    branches.walkFrom(node, [&](std::uint32_t at, std::uint32_t from, std::uint32_t link) {
      ++met;
      ASSERT_EQ(lowest[at], lowest[node]);
      if (link == kNone) return;
      ASSERT_EQ(links[link].from ^ links[link].to, at ^ from);
      if (lowest[node] != node) return;
      ASSERT_EQ(made->parent(at), from);
      ASSERT_EQ(made->linkAbove(at), link);
      ASSERT_EQ(made->depth(at), made->depth(from) + 1);
    });
    ASSERT_EQ(met, std::count(lowest.begin(), lowest.end(), lowest[node]));
    if (lowest[node] != node) continue;
    ASSERT_EQ(made->position(node), 0);
    ASSERT_EQ(made->depth(node), 0u);
    ASSERT_EQ(made->parent(node), kNone);
  }
}

TEST(Forest, IsWhatItHasToBeForAnyLinks) {
  std::mt19937_64 random(1911);
  for (int round = 0; round < 400; ++round) {
    SCOPED_TRACE(round);
    const auto nodes = static_cast<std::uint32_t>(1 + random() % 24);
    std::vector<Link> links(random() % (2 * nodes));
    for (Link& link : links) {
      link = {static_cast<std::uint32_t>(random() % nodes),
              static_cast<std::uint32_t>(random() % nodes),
              static_cast<std::int64_t>(random() % 2000) - 1000};
    }
    expectAForest(nodes, links);
    if (HasFatalFailure()) return;
  }
}

TEST(Branches, NearerOnesComeFirst) {
  const Forest forest = Forest::of(5, {{0, 1, 1}, {1, 2, 1}, {1, 3, 1}, {3, 4, 1}}).value();
  std::vector<std::uint32_t> walked;
  Branches(forest).walkFrom(
      2, [&](std::uint32_t node, std::uint32_t, std::uint32_t) { walked.push_back(node); });
  EXPECT_EQ(walked, (std::vector<std::uint32_t>{2, 1, 0, 3, 4}));
}

}  // namespace
}  // namespace inchwright
