// Ranges, contradictions and chains of prints as they are lettered, against searches by brute force
// over what the letterer meant.

#include <gtest/gtest.h>

#include <bit>
#include <optional>
#include <set>
#include <tuple>

#include "core/tolerance/ranges.h"
#include "tests/core/tolerance/lettered_print.h"
#include "tests/support/named.h"
#include "tests/support/part_text.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

using test::kThou;
using test::letteredAtRandom;
using test::LetteredPrint;
using test::LetteredPrintWriter;
using Limits = LetteredPrint::Limits;

constexpr std::int64_t kFree = std::numeric_limits<std::int64_t>::max() / 4;

/// The greatest position of each hole less that of each other, in thou, by what is `taken`; nothing
/// when it can't all hold.
template <class Taken>
std::optional<std::vector<std::vector<std::int64_t>>> mostOf(const LetteredPrint& print,
                                                             Taken taken) {
  const std::uint32_t n = print.holes;
  std::vector<std::vector<std::int64_t>> most(n, std::vector<std::int64_t>(n, kFree));
  for (std::uint32_t i = 0; i < n; ++i) most[i][i] = 0;
  for (const Limits& one : print.limits) {
    if (!one.id.empty() && !taken(one.id)) continue;
    most[one.from][one.to] = std::min(most[one.from][one.to], one.high);
    most[one.to][one.from] = std::min(most[one.to][one.from], -one.low);
  }
  for (std::uint32_t k = 0; k < n; ++k) {
    for (std::uint32_t i = 0; i < n; ++i) {
      for (std::uint32_t j = 0; j < n; ++j) {
        if (most[i][k] == kFree || most[k][j] == kFree) continue;
        most[i][j] = std::min(most[i][j], most[i][k] + most[k][j]);
      }
    }
  }
  for (std::uint32_t i = 0; i < n; ++i) {
    if (most[i][i] < 0) return std::nullopt;
  }
  return most;
}

auto allOf() {
  return [](const std::string&) { return true; };
}
auto only(const std::vector<Id>& ids) {
  return [of = std::set<Id>(ids.begin(), ids.end())](const std::string& id) {
    return of.contains(id);
  };
}

std::vector<Id> readingsOf(const LetteredPrint& print) {
  std::vector<Id> ids;
  for (const Limits& one : print.limits) {
    if (!one.id.empty()) ids.push_back(one.id);
  }
  return ids;
}

// The ends by hand, and that what is named as setting them does so by itself.
void expectRanges(const LetteredPrint& print, const Part& part, const Ranges& ranges,
                  std::uint32_t from) {
  const auto most = mostOf(print, allOf());
  std::size_t joined = 0;
  for (std::uint32_t hole = 0; hole < print.holes; ++hole) {
    const auto one =
        std::find_if(ranges.places.begin(), ranges.places.end(),
                     [&](const auto& place) { return place.id == LetteredPrint::nameOf(hole); });
    ASSERT_EQ(one != ranges.places.end(), (*most)[from][hole] != kFree);
    if (one == ranges.places.end()) continue;
    ++joined;
    EXPECT_EQ(one->span, (Span{-(*most)[hole][from] * kThou, (*most)[from][hole] * kThou}))
        << one->id;
    EXPECT_EQ((*mostOf(print, only(test::idsOf(part, one->highBy))))[from][hole],
              (*most)[from][hole])
        << one->id;
    EXPECT_EQ((*mostOf(print, only(test::idsOf(part, one->lowBy))))[hole][from],
              (*most)[hole][from])
        << one->id;
  }
  EXPECT_EQ(ranges.places.size(), joined);
}

// Calls check(print, part, network, random) for so many prints of up to `holes` holes.
template <class Check>
void overRandomPrints(std::uint32_t seed, int rounds, std::uint32_t holes, const Check& check) {
  std::mt19937_64 random(seed);
  for (int round = 0; round < rounds && !testing::Test::HasFatalFailure(); ++round) {
    const LetteredPrint print = letteredAtRandom(random, holes).print();
    SCOPED_TRACE("round " + std::to_string(round) + " of seed " + std::to_string(seed) + "\n" +
                 print.text);
    const Part part = test::partFrom(print.text);
    const auto network = toleranceNetworkOf(part, Axis::x);
    ASSERT_TRUE(network.ok());
    check(print, part, *network, random);
  }
}

TEST(LetteredRanges, AgreeWithAllPairsHoweverTheToleranceIsLettered) {
  overRandomPrints(1759, 400, 14,
                   [](const auto& print, const auto& part, const auto& network, auto& random) {
                     const auto from = static_cast<std::uint32_t>(random() % print.holes);
                     const auto ranges = rangesFrom(part, network, LetteredPrint::nameOf(from));
                     ASSERT_TRUE(ranges.ok());
                     ASSERT_TRUE(ranges->contradiction.empty());
                     expectRanges(print, part, *ranges, from);
                   });
}

// How few readings suffice to contradict each other, by trying all sets of them.
std::size_t fewestThatContradict(const LetteredPrint& print) {
  const std::vector<Id> all = readingsOf(print);
  std::size_t fewest = all.size() + 1;
  for (std::uint32_t set = 1; set < 1u << all.size(); ++set) {
    const auto size = static_cast<std::size_t>(std::popcount(set));
    if (size >= fewest) continue;
    std::vector<Id> these;
    for (std::size_t i = 0; i < all.size(); ++i) {
      if ((set >> i & 1) != 0) these.push_back(all[i]);
    }
    if (!mostOf(print, only(these))) fewest = size;
  }
  return fewest;
}

TEST(LetteredRanges, AMisletteredReadingIsInTheSmallestSetThatCantHold) {
  std::mt19937_64 random(1'760);
  int contradicting = 0;
  for (int round = 0; round < 400; ++round) {
    LetteredPrintWriter writer = letteredAtRandom(random, 7);
    const std::uint32_t holes = writer.print().holes;
    writer.read(0, static_cast<std::uint32_t>(random() % holes), 20 + writer.upTo(30));
    const LetteredPrint& print = writer.print();
    if (readingsOf(print).size() > 9) continue;
    SCOPED_TRACE("round " + std::to_string(round) + " of seed 1760\n" + print.text);
    const Part part = test::partFrom(print.text);
    const auto network = toleranceNetworkOf(part, Axis::x);
    ASSERT_TRUE(network.ok());
    const auto ranges = rangesFrom(part, *network, LetteredPrint::nameOf(0));
    ASSERT_TRUE(ranges.ok());
    const bool holds = mostOf(print, allOf()).has_value();
    ASSERT_EQ(ranges->contradiction.empty(), holds);
    if (holds) continue;
    ++contradicting;
    ASSERT_TRUE(ranges->places.empty());
    ASSERT_EQ(ranges->contradiction.size(), fewestThatContradict(print));
    ASSERT_FALSE(mostOf(print, only(test::idsOf(part, ranges->contradiction))).has_value());
  }
  EXPECT_GT(contradicting, 40);
}

/// Toleranced readings on a way, their width in thou, and all its steps.
using Price = std::tuple<std::size_t, std::int64_t, std::size_t>;

// The cheapest way of all that come to no place twice.
void tryWays(const LetteredPrint& print, std::uint32_t at, std::uint32_t to, const Price& paid,
             std::vector<bool>& seen, std::optional<Price>& least) {
  if (at == to) {
    if (!least || paid < *least) least = paid;
    return;
  }
  seen[at] = true;
  for (const Limits& one : print.limits) {
    if (one.from != at && one.to != at) continue;
    const std::uint32_t next = one.from == at ? one.to : one.from;
    if (seen[next]) continue;
    const auto [members, width, steps] = paid;
    tryWays(print, next, to,
            {members + (one.toleranced ? 1 : 0), width + one.high - one.low, steps + 1}, seen,
            least);
  }
  seen[at] = false;
}

// Walks the members from hole to hole; what lies in line may be stepped over between them.
void expectWalk(const LetteredPrint& print, const std::vector<StackMember>& members,
                std::uint32_t from, std::uint32_t to) {
  const auto inLine = *mostOf(print, only({}));
  std::uint32_t at = from;
  const auto expectHere = [&](std::uint32_t hole) {
    EXPECT_EQ(inLine[at][hole], 0) << "from " << at << " to " << hole;
  };
  for (const StackMember& member : members) {
    const auto one =
        std::find_if(print.limits.begin(), print.limits.end(),
                     [&](const Limits& limits) { return limits.id == *member.reading(); });
    ASSERT_NE(one, print.limits.end());
    EXPECT_EQ(member.low, one->low * kThou);
    EXPECT_EQ(member.high, one->high * kThou);
    const bool forward = member.sign() > 0;
    expectHere(forward ? one->from : one->to);
    at = forward ? one->to : one->from;
    EXPECT_EQ(member.to, LetteredPrint::nameOf(at));
  }
  expectHere(to);
}

TEST(ChainBetween, IsTheCheapestOfAllWays) {
  overRandomPrints(
      1761, 300, 9, [](const auto& print, const auto& part, const auto& network, auto& random) {
        const auto from = static_cast<std::uint32_t>(random() % print.holes);
        const auto to = static_cast<std::uint32_t>(random() % print.holes);
        std::optional<Price> least;
        std::vector<bool> seen(print.holes, false);
        tryWays(print, from, to, {0, 0, 0}, seen, least);
        const auto members =
            chainBetween(part, network, LetteredPrint::nameOf(from), LetteredPrint::nameOf(to));
        ASSERT_EQ(members.ok(), least.has_value());
        if (!members) {
          EXPECT_EQ(members.error().code, ErrorCode::unsolvable);
          return;
        }
        std::size_t toleranced = 0;
        std::int64_t width = 0;
        for (const StackMember& member : *members) {
          const auto one =
              std::find_if(print.limits.begin(), print.limits.end(),
                           [&](const Limits& limits) { return limits.id == *member.reading(); });
          toleranced += one != print.limits.end() && one->toleranced ? 1 : 0;
          width += member.high - member.low;
        }
        EXPECT_EQ(toleranced, std::get<0>(*least));
        EXPECT_EQ(width, std::get<1>(*least) * kThou);
        expectWalk(print, *members, from, to);
        // What the readings let be lies within what the chain alone does.
        const auto stack = stackOf(*members);
        const auto ranges = rangesFrom(part, network, LetteredPrint::nameOf(from));
        for (const PlaceRange& place : ranges->places) {
          if (place.id != LetteredPrint::nameOf(to)) continue;
          EXPECT_GE(place.span.low, stack->worst.low);
          EXPECT_LE(place.span.high, stack->worst.high);
        }
      });
}

// Two readings of the same distance that can't both be, in lengths whose sums soon leave 64 bits
// when somebody goes round them again and again.
TEST(LetteredRanges, ContradictionsOfHugeLengthsAreStillFound) {
  std::string text = "edge A x\nedge B x\nr1 x A B 600000000 ±.001\nr2 x A B 1 ±.001\n";
  for (int i = 0; i < 20; ++i) {
    const std::string here = "C" + std::to_string(100 + i);
    text += "edge " + here + " x\ns" + std::to_string(i) + " x B " + here + " 1 ±.001\n";
  }
  const Part part = test::partFrom(text);
  const auto network = toleranceNetworkOf(part, Axis::x);
  ASSERT_TRUE(network.ok());
  const auto ranges = rangesFrom(part, *network, "A");
  ASSERT_TRUE(ranges.ok());
  std::vector<Id> named = test::idsOf(part, ranges->contradiction);
  std::sort(named.begin(), named.end());
  EXPECT_EQ(named, (std::vector<Id>{"r1", "r2"}));
  // Lengths that could leave the range altogether are refused.
  const auto beyond = toleranceNetworkOf(test::partFrom(text + "r9 x A B 900000000\n"), Axis::x);
  ASSERT_FALSE(beyond.ok());
  EXPECT_EQ(beyond.error().code, ErrorCode::outOfRange);
}

}  // namespace
}  // namespace inchwright
