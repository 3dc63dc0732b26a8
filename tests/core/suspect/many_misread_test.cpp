#include "core/suspect/many_misread.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/solution/solution.h"
#include "tests/core/suspect/drawn_print.h"
#include "tests/support/part_text.h"
#include "tests/support/suspected.h"

namespace inchwright {
namespace {

struct ManyTally {
  int clashes = 0;
  int firstRight = 0;   ///< the first suspect was misread
  int figureRight = 0;  ///< and would be what the print says
};

// Twenty of some four hundred readings misread, and no tracing to help.
ManyTally tallyOf(drawn::Manner manner, drawn::Slip slip, int spares) {
  ManyTally tally;
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    const auto print = drawn::Maker(seed, manner, slip).make(20, drawn::Trace::none, 196, spares);
    const auto solution = solve(print.part);
    EXPECT_TRUE(solution.ok());
    for (const test::Suspected& clash : test::suspectedIn(print.part, *solution)) {
      ++tally.clashes;
      if (clash.suspects.empty()) continue;
      const Suspect& first = clash.suspects.front();
      for (const drawn::Misreading& one : print.misread) {
        if (one.reading != first.reading) continue;
        ++tally.firstRight;
        tally.figureRight += first.wouldBe == one.truth ? 1 : 0;
      }
    }
  }
  return tally;
}

TEST(ManyMisread, OfTwentyWithoutATracingTheFirstSuspectsAreMostlyMisread) {
  using drawn::Manner;
  using drawn::Slip;
  int clashes = 0, firstRight = 0;
  for (const Manner manner :
       {Manner::baseline, Manner::ladder, Manner::chained, Manner::decimals}) {
    for (const Slip slip : {Slip::lookalike, Slip::any}) {
      for (const int spares : {100, 400}) {
        const ManyTally tally = tallyOf(manner, slip, spares);
        std::printf("%-9s %-10s spares %d clashes %3d  first right %3d  its figure %3d\n",
                    drawn::nameOf(manner), drawn::nameOf(slip), spares, tally.clashes,
                    tally.firstRight, tally.figureRight);
        // The least is 52 of 82: from one edge alone, few readings check each other.
        EXPECT_GE(5 * tally.firstRight, 3 * tally.clashes);
        clashes += tally.clashes;
        firstRight += tally.firstRight;
      }
    }
  }
  EXPECT_GE(100 * firstRight, 85 * clashes);
}

// Four of twelve places in a row are misread, each by another amount, and so is the middle of the
// ninth, and nothing is traced: each heads the loop of three that it is on.
TEST(ManyMisread, EachOfSeveralHeadsItsOwnLoop) {
  std::string text = "edge L x left\n";
  const char* wrong[] = {"1/2", "1/2", "9/16", "1/2", "1/2", "11/16",
                         "1/2", "3/8", "1/2",  "1/2", "7/8", "1/2"};
  for (int i = 1; i <= 12; ++i) {
    const std::string id = "H" + std::to_string(i), before = "H" + std::to_string(i - 1);
    text += "hole " + id + " 1/4\n";
    text += "a" + id + " x " + (i == 1 ? "L" : before) + " " + id + " " + wrong[i - 1] + "\n";
    text += "b" + id + " x L " + id + " " + std::to_string(i) + "/2\n";
    text += "hole M" + id + " 1/4\nmidway x M" + id + " L " + id + "\n";
    text += "m" + id + " x L M" + id + " " + (i == 9 ? "2" : std::to_string(i) + "/4") + "\n";
  }
  const Part part = test::partFrom(text);
  const auto solution = solve(part);
  ASSERT_TRUE(solution.ok());
  std::set<Id> heads;
  for (const test::Suspected& clash : test::suspectedIn(part, *solution)) {
    ASSERT_FALSE(clash.suspects.empty());
    heads.insert(clash.suspects.front().reading);
    const bool isMiddle = clash.suspects.front().reading == "mH9";
    EXPECT_EQ(clash.suspects.front().wouldBe,
              Length::ticks(Length::kTicksPerInch / 4 * (isMiddle ? 9 : 2)));
  }
  EXPECT_EQ(heads, (std::set<Id>{"aH11", "aH3", "aH6", "aH8", "mH9"}));
}

// M is half of A, T a third of the way to H12, and from T to W it is as far as from M to T: half of
// the one and two thirds of the other meet in one loop. W is misread as 3 9/16, it is 3 1/2; by
// itself, and with four others.
TEST(ManyMisread, HalvesAndThirdsMeetInOneLoop) {
  const std::string thirds =
      "hole T 1/4\nhole U 1/4\nequal x L T U H12\nhole A 1/4\nhole M 1/4\nmidway x M L A\n"
      "hole W 1/4\nequal x M T W\na x L A 1\nw x L W 3 9/16\n";
  for (const bool many : {false, true}) {
    std::string text = "edge L x left\n";
    for (int i = 1; i <= 12; ++i) {
      const std::string id = "H" + std::to_string(i), before = "H" + std::to_string(i - 1);
      text += "hole " + id + " 1/4\n";
      const bool wrong = many && (i == 3 || i == 6 || i == 8 || i == 11);
      text += "a" + id + " x " + (i == 1 ? "L" : before) + " " + id + (wrong ? " 11/16" : " 1/2") +
              "\n";
      text += "b" + id + " x L " + id + " " + std::to_string(i) + "/2\n";
    }
    const Part part = test::partFrom(text + thirds);
    const auto solution = solve(part);
    ASSERT_TRUE(solution.ok());
    std::map<Id, Suspect> heads;
    std::map<Id, Length> would;
    for (const test::Suspected& clash : test::suspectedIn(part, *solution)) {
      ASSERT_FALSE(clash.suspects.empty());
      heads[clash.suspects.front().reading] = clash.suspects.front();
      for (const Suspect& one : clash.suspects) would[one.reading] = one.wouldBe;
    }
    // By itself it may also be A that is wrong, twice as much.
    if (!many) {
      EXPECT_EQ(would["a"], Length::ticks(Length::kTicksPerInch / 8 * 7));
    }
    EXPECT_EQ(heads.size(), many ? 5U : 1U);
    ASSERT_TRUE(heads.contains("w")) << many;
    EXPECT_EQ(heads["w"].wouldBe, Length::ticks(Length::kTicksPerInch / 2 * 7)) << many;
    EXPECT_EQ(heads["w"].together.size(), many ? 4U : 0U);
    EXPECT_EQ(heads["w"].closesAll, !many);
  }
}

// Three even spaces on 3, the first lettered 1 1/4: it is 1, or the whole is 3 3/4.
TEST(ManyMisread, AThirdOfALengthIsCheckedByTheWhole) {
  const Part part = test::partFrom(
      "edge L x left\nhole A 1/4\nhole B 1/4\nedge R x right\nequal x L A B R\n"
      "o x L R 3\nr x L A 1 1/4\n");
  const auto solution = solve(part);
  ASSERT_TRUE(solution.ok());
  const auto clashes = test::suspectedIn(part, *solution);
  ASSERT_EQ(clashes.size(), 1U);
  std::map<Id, Length> would;
  for (const Suspect& one : clashes[0].suspects) would[one.reading] = one.wouldBe;
  constexpr auto quarter = Length::kTicksPerInch / 4;
  EXPECT_EQ(would, (std::map<Id, Length>{{"o", Length::ticks(15 * quarter)},
                                         {"r", Length::ticks(4 * quarter)}}));
}

}  // namespace
}  // namespace inchwright
