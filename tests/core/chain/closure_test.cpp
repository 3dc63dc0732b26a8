#include "core/chain/closure.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <numeric>
#include <random>
#include <utility>
#include <vector>

#include "core/base/rational.h"

namespace inchwright {
namespace {

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t kLeast = std::numeric_limits<std::int64_t>::min();

TEST(CloseLinks, ChainWithAnOverall) {
  const std::vector<Link> links{{0, 1, 3}, {1, 2, 19}, {2, 3, 7}, {0, 3, 29}};
  const auto closure = closeLinks(4, links);
  ASSERT_TRUE(closure.ok());
  EXPECT_EQ(closure->position, (std::vector<std::int64_t>{0, 3, 22, 29}));
  EXPECT_EQ(closure->component, (std::vector<std::uint32_t>{0, 0, 0, 0}));
  EXPECT_EQ(closure->spares, 1u);
  EXPECT_TRUE(closure->misses.empty());
}

TEST(CloseLinks, MissIsLetteredLessSummed) {
  const std::vector<Link> links{{0, 1, 3}, {1, 2, 4}, {0, 2, 8}, {2, 0, -8}, {2, 0, -7}};
  const auto closure = closeLinks(3, links);
  ASSERT_TRUE(closure.ok());
  EXPECT_EQ(closure->spares, 3u);
  ASSERT_EQ(closure->misses.size(), 2u);
  EXPECT_EQ(closure->misses[0].link, 2u);
  EXPECT_EQ(closure->misses[0].miss, 1);
  EXPECT_EQ(closure->misses[1].link, 3u);
  EXPECT_EQ(closure->misses[1].miss, -1);
}

TEST(CloseLinks, ComponentsAreNamedByTheirFirst) {
  const std::vector<Link> links{{4, 2, 5}, {3, 1, 1}};
  const auto closure = closeLinks(6, links);
  ASSERT_TRUE(closure.ok());
  EXPECT_EQ(closure->component, (std::vector<std::uint32_t>{0, 1, 2, 1, 2, 5}));
  EXPECT_EQ(closure->position, (std::vector<std::int64_t>{0, 0, 0, -1, -5, 0}));
}

TEST(CloseLinks, LinkToItself) {
  const auto closed = closeLinks(1, std::vector<Link>{{0, 0, 0}});
  ASSERT_TRUE(closed.ok());
  EXPECT_EQ(closed->spares, 1u);
  EXPECT_TRUE(closed->misses.empty());
  const auto missing = closeLinks(1, std::vector<Link>{{0, 0, 2}});
  ASSERT_TRUE(missing.ok());
  EXPECT_EQ(missing->misses.at(0).miss, 2);
}

TEST(CloseLinks, NothingAtAll) {
  const auto closure = closeLinks(0, {});
  ASSERT_TRUE(closure.ok());
  EXPECT_TRUE(closure->position.empty());
}

TEST(CloseLinks, RefusesNodesThatAreNotThere) {
  EXPECT_EQ(closeLinks(2, std::vector<Link>{{0, 2, 1}}).error().code, ErrorCode::badRequest);
  EXPECT_EQ(closeLinks(2, std::vector<Link>{{7, 1, 1}}).error().code, ErrorCode::badRequest);
  // Also where nodes are asked for ahead of their turn.
  std::vector<Link> many(100'000, Link{0, 1, 0});
  many.push_back({0, 0xffffffff, 0});
  EXPECT_EQ(closeLinks(100'000, many).error().code, ErrorCode::badRequest);
}

TEST(CloseLinks, FarthestPositionsFit) {
  const auto up = closeLinks(3, std::vector<Link>{{0, 1, kMost}, {2, 0, kMost}});
  ASSERT_TRUE(up.ok());
  EXPECT_EQ(up->position, (std::vector<std::int64_t>{0, kMost, -kMost}));
  const auto down = closeLinks(2, std::vector<Link>{{0, 1, kLeast}});
  ASSERT_TRUE(down.ok());
  EXPECT_EQ(down->position[1], kLeast);
  // The way leads out of range and back in: only positions count.
  const auto back = closeLinks(3, std::vector<Link>{{1, 2, kMost}, {1, 0, kMost}, {0, 2, 0}});
  ASSERT_TRUE(back.ok());
  EXPECT_EQ(back->position, (std::vector<std::int64_t>{0, -kMost, 0}));
  EXPECT_TRUE(back->misses.empty());
}

TEST(CloseLinks, RefusesPositionsBeyondTheRange) {
  const std::vector<Link> tooFar{{0, 1, kMost}, {1, 2, 1}};
  EXPECT_EQ(closeLinks(3, tooFar).error().code, ErrorCode::outOfRange);
  const std::vector<Link> backwards{{1, 0, kLeast}};
  EXPECT_EQ(closeLinks(2, backwards).error().code, ErrorCode::outOfRange);
  // All the way round 64 bits: a wrapped sum would seem to close.
  const std::vector<Link> round{{0, 1, kLeast}, {1, 2, kLeast}, {0, 2, 0}};
  EXPECT_EQ(closeLinks(3, round).error().code, ErrorCode::outOfRange);
  const std::vector<Link> farMiss{{0, 1, kMost}, {0, 1, kLeast}};
  EXPECT_EQ(closeLinks(2, farMiss).error().code, ErrorCode::outOfRange);
}

// Against a plain search, at sizes on both sides of where the engine asks ahead.
TEST(CloseLinks, AgreesWithASearch) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    const auto count = static_cast<std::uint32_t>(seed % 20 == 0 ? 50'000 : 1 + random() % 40);
    std::vector<std::int64_t> truth(count);
    // Some seeds go to lengths whose sums need more than 64 bits on the way.
    const std::int64_t scale = seed % 3 == 0 ? kMost / 4 : 1'000'000;
    for (auto& one : truth) one = static_cast<std::int64_t>(random() % 1000) * (scale / 1000);
    std::vector<Link> links;
    for (std::uint32_t i = 0; i < count * 6 / 5; ++i) {
      const auto a = static_cast<std::uint32_t>(random() % count);
      const auto b = static_cast<std::uint32_t>(random() % count);
      links.push_back({a, b, truth[b] - truth[a]});
    }
    const auto closure = closeLinks(count, links);
    ASSERT_TRUE(closure.ok());
    EXPECT_TRUE(closure->misses.empty());
    std::vector<std::uint32_t> first(count);
    std::iota(first.begin(), first.end(), 0u);
    for (bool changed = true; changed;) {
      changed = false;
      for (const Link& link : links) {
        const std::uint32_t low = std::min(first[link.from], first[link.to]);
        changed = changed || first[link.from] != low || first[link.to] != low;
        first[link.from] = first[link.to] = low;
      }
    }
    ASSERT_EQ(closure->component, first);
    std::uint32_t components = 0;
    for (std::uint32_t i = 0; i < count; ++i) {
      ASSERT_EQ(closure->position[i], truth[i] - truth[first[i]]);
      components += first[i] == i ? 1 : 0;
    }
    EXPECT_EQ(closure->spares, links.size() - (count - components));
    // One link spoilt on a loop must show; on none it can't.
    links[0].ticks += 1;
    const auto spoilt = closeLinks(count, links);
    ASSERT_TRUE(spoilt.ok());
    std::vector<Link> without(links.begin() + 1, links.end());
    const auto rest = closeLinks(count, without);
    const bool bridge = rest->component[links[0].from] != rest->component[links[0].to];
    EXPECT_EQ(spoilt->misses.empty(), bridge);
  }
}

// Held against joining whole components link by link.
TEST(CloseLinks, EarlierLinksPlaceAndLaterOnesMiss) {
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    const auto count = static_cast<std::uint32_t>(2 + random() % 40);
    std::vector<Link> links;
    for (std::uint32_t i = 0; i < count * 3 / 2; ++i) {
      // Half of them numbered along the list, as a print mostly is.
      const auto near = static_cast<std::uint32_t>(std::min<std::uint64_t>(i + 1, count - 1));
      const auto a = static_cast<std::uint32_t>(random() % count);
      const auto b = static_cast<std::uint32_t>(random() % count);
      links.push_back({random() % 2 == 0 ? near : a, b, static_cast<std::int64_t>(random() % 3)});
    }
    std::vector<std::uint32_t> first(count);
    std::iota(first.begin(), first.end(), 0u);
    std::vector<std::int64_t> at(count);
    std::vector<std::pair<std::uint32_t, std::int64_t>> misses;
    for (std::uint32_t i = 0; i < links.size(); ++i) {
      const Link& link = links[i];
      const std::int64_t gap = at[link.from] + link.ticks - at[link.to];
      const std::uint32_t kept = std::min(first[link.from], first[link.to]);
      const std::uint32_t joined = std::max(first[link.from], first[link.to]);
      if (kept == joined) {
        if (gap != 0) misses.emplace_back(i, gap);
        continue;
      }
      const std::int64_t shift = first[link.to] == joined ? gap : -gap;
      for (std::uint32_t node = 0; node < count; ++node) {
        if (first[node] != joined) continue;
        first[node] = kept;
        at[node] += shift;
      }
    }
    const auto closure = closeLinks(count, links);
    ASSERT_TRUE(closure.ok());
    EXPECT_EQ(closure->position, at);
    EXPECT_EQ(closure->component, first);
    std::vector<std::pair<std::uint32_t, std::int64_t>> found;
    for (const Miss& miss : closure->misses) found.emplace_back(miss.link, miss.miss);
    EXPECT_EQ(found, misses);
  }
}

TEST(CloseLinks, WhetherAnythingMissesDoesNotDependOnOrder) {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    std::vector<Link> links;
    for (int i = 0; i < 8; ++i) {
      links.push_back({static_cast<std::uint32_t>(random() % 6),
                       static_cast<std::uint32_t>(random() % 6),
                       static_cast<std::int64_t>(random() % 2)});
    }
    const auto once = closeLinks(6, links);
    std::shuffle(links.begin(), links.end(), random);
    const auto again = closeLinks(6, links);
    EXPECT_EQ(once->misses.empty(), again->misses.empty());
    EXPECT_EQ(once->spares, again->spares);
    EXPECT_EQ(once->component, again->component);
  }
}

}  // namespace
}  // namespace inchwright
