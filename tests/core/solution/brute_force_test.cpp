// The solver against plain searches: all paths and loops of small graphs, and ranks of small
// matrices over a prime field where there are relations.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "core/chain/network.h"
#include "core/graph/loops.h"
#include "core/solution/solution.h"
#include "tests/core/solution/small_print.h"
#include "tests/support/solved_part.h"
#include "tests/support/system_along.h"

namespace inchwright {
namespace {

using test::SmallPrint;
using test::smallPrint;

// ---- ranks ----

constexpr std::uint32_t kNowhere = 0xffffffff;
constexpr std::int64_t kPrime = 1'000'000'007;
using EquationRow = std::vector<std::int64_t>;

std::int64_t inverse(std::int64_t value) {
  std::int64_t result = 1;
  for (std::int64_t power = kPrime - 2; power > 0; power /= 2) {
    if (power % 2 == 1) result = result * value % kPrime;
    value = value * value % kPrime;
  }
  return result;
}

std::size_t rankOf(std::vector<EquationRow> rows) {
  std::size_t rank = 0;
  for (std::size_t column = 0; !rows.empty() && column < rows[0].size(); ++column) {
    std::size_t pivot = rank;
    while (pivot < rows.size() && rows[pivot][column] == 0) ++pivot;
    if (pivot == rows.size()) continue;
    std::swap(rows[pivot], rows[rank]);
    const std::int64_t scale = inverse(rows[rank][column]);
    for (std::size_t i = rank + 1; i < rows.size(); ++i) {
      const std::int64_t factor = rows[i][column] * scale % kPrime;
      for (std::size_t j = 0; j < rows[i].size(); ++j) {
        rows[i][j] = ((rows[i][j] - factor * rows[rank][j]) % kPrime + kPrime) % kPrime;
      }
    }
    ++rank;
  }
  return rank;
}

// Links, then relations; with the right side as a last column if wanted.
std::vector<EquationRow> rowsOf(const AxisNetwork& network, bool withRight) {
  std::vector<EquationRow> rows;
  const std::size_t width = network.places.size() + (withRight ? 1 : 0);
  const auto add = [](std::int64_t& cell, std::int64_t value) {
    cell = ((cell + value) % kPrime + kPrime) % kPrime;
  };
  for (const AxisLink& link : network.links) {
    EquationRow row(width);
    add(row[link.to], 1);
    add(row[link.from], -1);
    if (withRight) add(row.back(), link.ticks);
    rows.push_back(row);
  }
  for (const AxisRelation& relation : network.relations) {
    EquationRow row(width);
    for (const auto& [node, coefficient] : relation.terms) add(row[node], coefficient);
    rows.push_back(row);
  }
  return rows;
}

void checkByRanks(const SmallPrint& print, bool isTrue) {
  const Part& part = print.part;
  const AxisNetwork network = test::networkAlong(part, Axis::x);
  const Solution solution = solved(part);
  const std::vector<EquationRow> rows = rowsOf(network, false);
  const std::size_t rank = rankOf(rows);
  EXPECT_EQ(solution.clashes.empty(), rankOf(rowsOf(network, true)) == rank);

  // Two places share a group exactly when their difference is in the span of the rows.
  for (std::size_t a = 0; a < network.places.size(); ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      std::vector<EquationRow> more = rows;
      EquationRow difference(network.places.size());
      difference[a] = 1;
      difference[b] = kPrime - 1;
      more.push_back(difference);
      const auto apart = solution.between(network.places[b], network.places[a], Axis::x);
      EXPECT_EQ(apart.has_value(), rankOf(more) == rank)
          << network.places[a] << " " << network.places[b];
      if (apart && isTrue) {
        EXPECT_EQ(*apart, Rational(print.truth[a] - print.truth[b]));
      }
    }
  }
  // A reading is alone exactly when without it less is known.
  for (std::size_t i = 0; i < network.links.size(); ++i) {
    std::vector<EquationRow> less = rows;
    less.erase(less.begin() + static_cast<std::ptrdiff_t>(i));
    const std::uint32_t reading = network.links[i].source.index;
    EXPECT_EQ(solution.status.at(reading) == ReadingStatus::alone, rankOf(less) < rank)
        << part.readings[reading].id;
  }
}

TEST(BruteForce, TruePrintsWithRelations) {
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    SCOPED_TRACE(seed);
    const SmallPrint print = smallPrint(seed, {.edges = 3 + static_cast<int>(seed % 6),
                                               .readings = static_cast<int>(seed % 9),
                                               .understandings = static_cast<int>(seed % 5)});
    checkByRanks(print, true);
    if (testing::Test::HasFailure()) return;
  }
}

TEST(BruteForce, MisreadPrintsWithRelations) {
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    SCOPED_TRACE(seed);
    const SmallPrint print = smallPrint(seed, {.edges = 3 + static_cast<int>(seed % 6),
                                               .readings = 1 + static_cast<int>(seed % 9),
                                               .understandings = static_cast<int>(seed % 4),
                                               .misread = 1 + static_cast<int>(seed % 2)});
    checkByRanks(print, false);
    if (testing::Test::HasFailure()) return;
  }
}

// ---- paths and loops ----

struct Search {
  const AxisNetwork& network;
  std::vector<bool> seen = std::vector<bool>(network.places.size());

  // Every simple path: visit(end, sum, links).
  template <class Visit>
  void paths(std::uint32_t node, std::int64_t sum, std::vector<std::uint32_t>& links,
             const Visit& visit) {
    visit(node, sum, links);
    seen[node] = true;
    for (std::uint32_t i = 0; i < network.links.size(); ++i) {
      const AxisLink& link = network.links[i];
      for (const bool forwards : {true, false}) {
        const std::uint32_t here = forwards ? link.from : link.to;
        const std::uint32_t next = forwards ? link.to : link.from;
        if (here != node || seen[next]) continue;
        links.push_back(i);
        paths(next, sum + (forwards ? link.ticks : -link.ticks), links, visit);
        links.pop_back();
      }
    }
    seen[node] = false;
  }
};

// Every simple loop: its links and by how much it misses.
std::map<std::set<std::uint32_t>, std::int64_t> allLoops(const AxisNetwork& network) {
  std::map<std::set<std::uint32_t>, std::int64_t> loops;
  for (std::uint32_t i = 0; i < network.links.size(); ++i) {
    const AxisLink& link = network.links[i];
    Search search{network};
    std::vector<std::uint32_t> way;
    search.paths(link.to, 0, way, [&](std::uint32_t end, std::int64_t sum, const auto& links) {
      if (end != link.from || std::count(links.begin(), links.end(), i) != 0) return;
      std::set<std::uint32_t> loop(links.begin(), links.end());
      loop.insert(i);
      loops.emplace(loop, sum + link.ticks);
    });
  }
  return loops;
}

// A lower outer side, else an upper one, else the first by id.
std::uint32_t originOf(const Part& part, const AxisNetwork& network, const Solution& solution,
                       int group) {
  std::optional<std::pair<int, Id>> best;
  for (const Feature& feature : part.features) {
    if (solution.position(feature.id, Axis::x)->group != group) continue;
    const int rank = !sideOf(feature) ? 2 : outward(*sideOf(feature)) < 0 ? 0 : 1;
    const std::pair<int, Id> key{rank, feature.id};
    if (!best || key < *best) best = key;
  }
  return static_cast<std::uint32_t>(
      std::find(network.places.begin(), network.places.end(), best->second) -
      network.places.begin());
}

void checkByPaths(const Part& part) {
  const AxisNetwork network = test::networkAlong(part, Axis::x);
  const Solution solution = solved(part);
  const auto loops = allLoops(network);
  std::size_t shortest = 0;
  std::set<Id> onMissing;
  for (const auto& [links, miss] : loops) {
    if (miss == 0) continue;
    shortest = shortest == 0 ? links.size() : std::min(shortest, links.size());
    for (const std::uint32_t link : links) {
      onMissing.insert(network.places[network.links[link].from]);
      onMissing.insert(network.places[network.links[link].to]);
    }
  }
  ASSERT_EQ(solution.clashes.empty(), shortest == 0);
  if (shortest != 0) {
    EXPECT_EQ(solution.clashes[0].loop.size(), shortest);
  }

  for (const Clash& clash : solution.clashes) {
    std::set<std::uint32_t> links;
    Rational running;
    for (std::size_t i = 0; i < clash.loop.size(); ++i) {
      const LoopMember& member = clash.loop[i];
      EXPECT_EQ(member.to, clash.loop[(i + 1) % clash.loop.size()].from);
      running = *running.plus(member.step);
      EXPECT_EQ(member.running, running);
      for (std::uint32_t j = 0; j < network.links.size(); ++j) {
        if (network.links[j].source == member.source) links.insert(j);
      }
    }
    EXPECT_EQ(running, clash.missesBy.negated());
    EXPECT_EQ(clash.loop.back().sign, -1);
    const auto found = loops.find(links);
    ASSERT_NE(found, loops.end());
    EXPECT_EQ(Rational(std::abs(found->second)),
              clash.missesBy.sign() < 0 ? clash.missesBy.negated() : clash.missesBy);
  }

  // A figure is in dispute when ways to it differ, or when its place lies on a missing loop.
  for (std::uint32_t at = 0; at < network.places.size(); ++at) {
    const Id& place = network.places[at];
    const Position& position = *solution.position(place, Axis::x);
    const std::uint32_t origin = originOf(part, network, solution, position.group);
    std::set<std::int64_t> sums;
    Search search{network};
    std::vector<std::uint32_t> way;
    search.paths(origin, 0, way, [&](std::uint32_t end, std::int64_t sum, const auto&) {
      if (end == at) sums.insert(sum);
    });
    if (!position.disputed) {
      EXPECT_EQ(sums, std::set<std::int64_t>{*position.ticks.rounded()}) << place;
      EXPECT_EQ(onMissing.count(place), 0u) << place;
    } else {
      EXPECT_TRUE(onMissing.count(place) != 0 || sums.size() > 1) << place;
    }
  }
}

TEST(BruteForce, PathsAndLoops) {
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    SCOPED_TRACE(seed);
    const SmallPrint print = smallPrint(seed, {.edges = 2 + static_cast<int>(seed % 5),
                                               .readings = static_cast<int>(seed % 10),
                                               .misread = static_cast<int>(seed % 4)});
    checkByPaths(print.part);
    if (testing::Test::HasFailure()) return;
  }
}

// ---- shortest loops ----

std::vector<Link> bareLinks(const AxisNetwork& network) {
  std::vector<Link> links;
  for (const AxisLink& link : network.links) links.push_back({link.from, link.to, link.ticks});
  return links;
}

TEST(ShortLoops, TogetherAsShortAsCanBe) {
  for (std::uint64_t seed = 1; seed <= 800; ++seed) {
    SCOPED_TRACE(seed);
    const SmallPrint print = smallPrint(seed, {.edges = 2 + static_cast<int>(seed % 5),
                                               .readings = 2 + static_cast<int>(seed % 9)});
    const AxisNetwork network = test::networkAlong(print.part, Axis::x);
    // Only a joined block is allowed: take the links joined to the first.
    std::set<std::uint32_t> nodes{network.links[0].from};
    for (std::size_t i = 0; i < network.links.size(); ++i) {
      for (const AxisLink& link : network.links) {
        if (nodes.count(link.from) != 0) nodes.insert(link.to);
        if (nodes.count(link.to) != 0) nodes.insert(link.from);
      }
    }
    std::vector<std::uint32_t> block;
    for (std::uint32_t i = 0; i < network.links.size(); ++i) {
      if (nodes.count(network.links[i].from) != 0) block.push_back(i);
    }
    const auto found = shortLoops(bareLinks(network), block);
    ASSERT_EQ(found.size(), block.size() + 1 - nodes.size());
    std::size_t length = 0;
    for (const Loop& loop : found) length += loop.size();

    // Greedily over every simple loop, shortest first, which gives a least basis (a matroid).
    std::vector<std::set<std::uint32_t>> all;
    for (const auto& one : allLoops(network)) {
      if (std::count(block.begin(), block.end(), *one.first.begin()) != 0) all.push_back(one.first);
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const auto& a, const auto& b) { return a.size() < b.size(); });
    std::vector<EquationRow> basis;
    std::size_t least = 0;
    for (const auto& loop : all) {
      // A loop as flow: independence over a large prime, with the sign of each link as walked.
      EquationRow row(network.links.size());
      std::uint32_t at = network.links[*loop.begin()].from;
      std::set<std::uint32_t> left = loop;
      while (!left.empty()) {
        const auto next = std::find_if(left.begin(), left.end(), [&](std::uint32_t link) {
          return network.links[link].from == at || network.links[link].to == at;
        });
        const bool forwards = network.links[*next].from == at;
        row[*next] = forwards ? 1 : kPrime - 1;
        at = forwards ? network.links[*next].to : network.links[*next].from;
        left.erase(next);
      }
      basis.push_back(row);
      if (rankOf(basis) < basis.size()) {
        basis.pop_back();
      } else {
        least += loop.size();
      }
    }
    ASSERT_EQ(basis.size(), found.size());
    EXPECT_EQ(length, least);
  }
}

// In a block too large to try every starting point the loops are still closed and independent.
TEST(ShortLoops, LargeBlock) {
  constexpr std::uint32_t kRungs = 3000;
  std::vector<Link> links;
  for (std::uint32_t i = 0; i < kRungs; ++i) {
    links.push_back({2 * i, 2 * i + 1, 0});
    if (i + 1 == kRungs) break;
    links.push_back({2 * i, 2 * i + 2, 0});
    links.push_back({2 * i + 1, 2 * i + 3, 0});
  }
  std::vector<std::uint32_t> block(links.size());
  for (std::uint32_t i = 0; i < block.size(); ++i) block[i] = i;
  const auto loops = shortLoops(links, block);
  ASSERT_EQ(loops.size(), kRungs - 1);
  for (const Loop& loop : loops) {
    std::uint32_t at = kNowhere;
    for (const auto& [link, sign] : loop) {
      const std::uint32_t from = sign > 0 ? links[link].from : links[link].to;
      if (at != kNowhere) {
        ASSERT_EQ(from, at);
      }
      at = sign > 0 ? links[link].to : links[link].from;
    }
  }
}

}  // namespace
}  // namespace inchwright
