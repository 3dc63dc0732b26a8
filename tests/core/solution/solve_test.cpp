#include <gtest/gtest.h>

#include "core/say/doubt_words.h"
#include "core/solution/solution.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

using test::partFrom;

const char* kContractExample = R"(
edge L x left
edge R x right
edge F y front
edge K y back
hole A 1/4
hole B 3/16
hole C 1/8
traced A 0.41 0.77
traced C 0.76 1.24
r1 x L A 3/8
r2 x A B 1 3/16
r3 x B R 7/16
r4 x L R (2)
r5 y F K 1 1/2
r6 centres A C 5/8
r7 angle A C 55
midway y A F K
in_line y A B assumed
)";

struct Solved : Solution {
  Part part;

  ReadingStatus statusOf(std::string_view id) const {
    return status.at(static_cast<std::size_t>(part.reading(id) - part.readings.data()));
  }
};

Solved solved(const std::string& text) {
  Part part = partFrom(text);
  auto result = solve(part);
  EXPECT_TRUE(result.ok()) << (result.ok() ? "" : result.error().text);
  return {result.ok() ? *result : Solution{}, part};
}

std::string at(const Solution& solution, const Id& id, Axis axis) {
  const Position* position = solution.position(id, axis);
  if (position == nullptr) return "none";
  if (position->group != 0) return "loose";
  const Rational inches =
      position->ticks.over(Rational(Length::kTicksPerInch)).value_or(Rational());
  std::string text = std::to_string(static_cast<long long>(inches.numerator()));
  if (!inches.isWhole()) text += "/" + std::to_string(static_cast<long long>(inches.denominator()));
  if (!position->isExact()) text += " about";
  if (position->disputed) text += " disputed";
  return text;
}

const Doubt* doubt(const Solution& solution, const std::string& key) {
  for (const Doubt& one : solution.doubts) {
    if (one.key.text() == key) return &one;
  }
  return nullptr;
}

// What is said of it, without whom it suspects.
std::string textOf(const Solved& solution, const std::string& key) {
  const Doubt* found = doubt(solution, key);
  const std::string text = found == nullptr ? "none" : doubtText(solution.part, solution, *found);
  const bool suspects = found != nullptr && found->key.topic == DoubtTopic::clash;
  return suspects ? text.substr(0, text.find(';')) : text;
}

std::string keys(const Solution& solution) {
  std::string text;
  for (const Doubt& one : solution.doubts) text += one.key.text() + "\n";
  return text;
}

TEST(Solve, ContractExample) {
  const Solved solution = solved(kContractExample);
  EXPECT_EQ(at(solution, "L", Axis::x), "0");
  EXPECT_EQ(at(solution, "A", Axis::x), "3/8");
  EXPECT_EQ(at(solution, "B", Axis::x), "25/16");
  EXPECT_EQ(at(solution, "R", Axis::x), "2");
  EXPECT_EQ(at(solution, "A", Axis::y), "3/4");
  EXPECT_EQ(at(solution, "B", Axis::y), "3/4");
  // 5/8 at 55 degrees from A.
  const auto across = solution.between("A", "C", Axis::x);
  const auto up = solution.between("A", "C", Axis::y);
  ASSERT_TRUE(across && up);
  EXPECT_EQ(*across, Rational(910'552'593));
  EXPECT_EQ(*up, Rational(1'300'403'870));
  EXPECT_EQ(solution.placed, (std::vector<Id>{"L", "R", "F", "K", "A", "B", "C"}));
  EXPECT_TRUE(solution.clashes.empty());
  for (const char* id : {"r1", "r2", "r3", "r4"}) {
    EXPECT_EQ(solution.statusOf(id), ReadingStatus::agrees) << id;
  }
  EXPECT_EQ(solution.statusOf("r5"), ReadingStatus::alone);
  EXPECT_EQ(solution.statusOf("r6"), ReadingStatus::alone);
  EXPECT_EQ(solution.statusOf("r7"), ReadingStatus::alone);
  EXPECT_EQ(keys(solution), "assumed:in_line:y:A+B\nalone\n");
  EXPECT_EQ(textOf(solution, "assumed:in_line:y:A+B"),
            "A and B are taken to be in line along Y; the print does not say so");
  EXPECT_EQ(textOf(solution, "alone"),
            "nothing checks 1 1/2 from F to K, 5/8 from A straight to C and 55° from A to C; read "
            "them twice");
  EXPECT_TRUE(solution.isDraft());
}

TEST(Solve, ClashToldInOrder) {
  const Solved solution = solved(R"(
edge L x left
edge R x right
hole A 1/4
hole B 1/4
hole C 1/4
r1 x L A 3/8
r2 x A B 1 3/16
r3 x B R 7/16
r4 x L R (2 1/16)
r5 x A C 1/4
r6 x L C 5/8
in_line y A B C
)");
  ASSERT_EQ(solution.clashes.size(), 1u);
  const Clash& clash = solution.clashes[0];
  EXPECT_EQ(clash.readingIds(solution.part), (std::vector<Id>{"r1", "r2", "r3", "r4"}));
  EXPECT_EQ(clash.missesBy, Rational(Length::kTicksPerInch / 16));
  EXPECT_EQ(clash.loop[1].running, Rational(Length::kTicksPerInch / 16 * 25));
  EXPECT_EQ(clash.loop[3].running, Rational(-Length::kTicksPerInch / 16));
  EXPECT_EQ(clash.loop[3].sign, -1);
  EXPECT_EQ(clash.loop[3].from, "R");
  EXPECT_EQ(clash.loop[3].to, "L");
  EXPECT_EQ(
      textOf(solution, "clash:x:r1+r2+r3+r4"),
      "L–A–B–R: 3/8 + 1 3/16 + 7/16 makes 2, the print says 2 1/16 in brackets from L to R: 1/16 "
      "too long");
  EXPECT_EQ(solution.statusOf("r1"), ReadingStatus::clashes);
  // They close with r1 in a loop of their own, but what r1 clashes with they do not check.
  EXPECT_EQ(solution.statusOf("r5"), ReadingStatus::agrees);
  EXPECT_EQ(solution.statusOf("r6"), ReadingStatus::agrees);
  EXPECT_EQ(at(solution, "A", Axis::x), "3/8 disputed");
  EXPECT_EQ(at(solution, "R", Axis::x), "2 disputed");
}

TEST(Solve, WhatHangsBehindABadBlockIsDisputedAndWhatHangsBeforeItIsNot) {
  const Solved solution = solved(R"(
edge L x left
hole A 1/4
hole B 1/4
hole C 1/4
hole D 1/4
r1 x L A 1
r2 x L A 1 1/8
r3 x A B 1
r4 x L C 2
r5 x C D 1
)");
  EXPECT_EQ(at(solution, "L", Axis::x), "0 disputed");
  EXPECT_EQ(at(solution, "B", Axis::x), "2 disputed");
  EXPECT_EQ(at(solution, "C", Axis::x), "2");
  EXPECT_EQ(at(solution, "D", Axis::x), "3");
  ASSERT_EQ(solution.clashes.size(), 1u);
  EXPECT_EQ(solution.statusOf("r1"), ReadingStatus::clashes);
  EXPECT_EQ(solution.statusOf("r3"), ReadingStatus::alone);
}

TEST(Solve, MidwayIsCheckedWhenRedundant) {
  const std::string print = R"(
edge F y front
edge K y back
hole A 1/4
midway y A F K
r1 y F K 1 5/8
)";
  const Solved free = solved(print);
  EXPECT_EQ(at(free, "A", Axis::y), "13/16");
  EXPECT_EQ(free.statusOf("r1"), ReadingStatus::alone);

  const Solved closed = solved(print + "r2 y F A 13/16\n");
  EXPECT_TRUE(closed.clashes.empty());
  EXPECT_EQ(closed.statusOf("r1"), ReadingStatus::agrees);
  EXPECT_EQ(closed.statusOf("r2"), ReadingStatus::agrees);

  const Solved missing = solved(print + "r2 y F A 3/4\n");
  ASSERT_EQ(missing.clashes.size(), 1u);
  EXPECT_EQ(missing.clashes[0].missesBy, Rational(Length::kTicksPerInch / 8));
  EXPECT_EQ(
      textOf(missing, "clash:y:r1+r2"),
      "F–A–K (with A midway F–K): 2 × 3/4 makes 1 1/2, the print says 1 5/8 from F to K: 1/8 too "
      "long");
  EXPECT_EQ(at(missing, "A", Axis::y), "3/4 disputed");
}

TEST(Solve, MiddleNeedNotBeAWholeTick) {
  const Solved solution = solved(R"(
edge L x left
edge R x right
hole A 1/4
hole B 1/4
equal x L A B R
r1 x L R 1
)");
  EXPECT_EQ(at(solution, "A", Axis::x), "1/3");
  EXPECT_EQ(at(solution, "B", Axis::x), "2/3");
  EXPECT_EQ(solution.statusOf("r1"), ReadingStatus::alone);
}

TEST(Solve, SymmetricPairNeedsItsSpread) {
  const std::string print = R"(
edge L x left
hole C 1/4
hole A 1/4
hole B 1/4
symmetric x A B about C
r1 x L C 1
)";
  EXPECT_EQ(at(solved(print), "A", Axis::x), "loose");
  const Solved spread = solved(print + "r2 x A B 1 1/4\n");
  EXPECT_EQ(at(spread, "A", Axis::x), "3/8");
  EXPECT_EQ(at(spread, "B", Axis::x), "13/8");
}

TEST(Solve, RowsBySpacesAndByReadings) {
  const Solved pitched = solved(R"(
edge L x left
edge F y front
row D x 4 9/16
r1 x L D 1/2
r2 y F D 3/4
r3 x L D4 2 3/16
)");
  EXPECT_EQ(at(pitched, "D1", Axis::x), "1/2");
  EXPECT_EQ(at(pitched, "D4", Axis::x), "35/16");
  EXPECT_EQ(at(pitched, "D3", Axis::y), "3/4");
  EXPECT_EQ(pitched.statusOf("r3"), ReadingStatus::agrees);
  EXPECT_EQ(pitched.placed, (std::vector<Id>{"L", "F", "D"}));

  const Solved spaced = solved(R"(
edge L x left
row D x 4 -
r1 x L D 1/2
r2 x L D4 2
r3 x D2 D3 1/2
)");
  EXPECT_EQ(at(spaced, "D2", Axis::x), "1");
  EXPECT_EQ(spaced.statusOf("r3"), ReadingStatus::agrees);

  const Solved wrong = solved(R"(
edge L x left
row D x 4 9/16
r1 x L D 1/2
r3 x L D4 2 1/4
)");
  ASSERT_EQ(wrong.clashes.size(), 1u);
  EXPECT_EQ(wrong.clashes[0].loop.size(), 3u) << "the row's steps are told as one";
  EXPECT_EQ(textOf(wrong, "clash:x:r1+r3"),
            "L–D–D4: 1/2 + 1 11/16 (row D) makes 2 3/16, the print says 2 1/4 from L to D4: 1/16 "
            "too long");
}

TEST(Solve, RingIsExactOnlyAtQuarters) {
  const Solved solution = solved(R"(
edge L x left
edge F y front
hole M 1/2
ring E 8 2 0
r1 x L M 2
r2 y F M 2
concentric M E
)");
  EXPECT_EQ(at(solution, "E1", Axis::x), "3");
  EXPECT_EQ(at(solution, "E3", Axis::y), "3");
  EXPECT_EQ(at(solution, "E3", Axis::x), "2");
  // 1 in · cos 45° = 1 796 051 224.2… ticks, kept to 2^-20.
  EXPECT_EQ(solution.between("E", "E2", Axis::x), *Rational::of(1'883'296'208'481'242, 1 << 20));
  EXPECT_FALSE(solution.position("E2", Axis::x)->isExact());
  EXPECT_EQ(solution.between("E", "E4", Axis::x), *Rational::of(-1'883'296'208'481'242, 1 << 20));
}

TEST(Solve, ChordOfARingReadToFourPlacesAgrees) {
  const std::string print = R"(
edge L x left
edge F y front
ring E 8 2 0
r1 x L E 2
r2 y F E 2
)";
  const Solved fine = solved(print + "r3 x E E2 .7071\n");
  EXPECT_TRUE(fine.clashes.empty());
  EXPECT_EQ(fine.statusOf("r3"), ReadingStatus::agrees);
  EXPECT_EQ(fine.between("E", "E2", Axis::x)->rounded(), 1'796'051'224) << "its shape comes first";
  EXPECT_EQ(solved(print + "r3 x E E2 .7072\n").clashes.size(), 1u);
  EXPECT_EQ(solved(print + "r3 x E E2 45/64\n").clashes.size(), 1u);
}

TEST(Solve, AnglesRunFromEachFacesOwnX) {
  struct Row {
    const char* face;
    Axis first, second;
    int firstSign, secondSign;
  };
  // As `turn` is explained in the contract: back X = −part X, left X = −part Y, and the bottom is
  // rolled over its X axis, so that its Y is −part Y.
  for (const Row& row :
       {Row{"top", Axis::x, Axis::y, 1, 1}, Row{"bottom", Axis::x, Axis::y, 1, -1},
        Row{"front", Axis::x, Axis::z, 1, 1}, Row{"back", Axis::x, Axis::z, -1, 1},
        Row{"left", Axis::y, Axis::z, -1, 1}, Row{"right", Axis::y, Axis::z, 1, 1}}) {
    SCOPED_TRACE(row.face);
    const std::string print = std::string("ring E 2 2 30 @ ") + row.face + "\n";
    const Solved solution = solved(print);
    const auto first = solution.between("E", "E1", row.first);
    const auto second = solution.between("E", "E1", row.second);
    ASSERT_TRUE(first && second);
    EXPECT_EQ(first->sign(), row.firstSign);
    EXPECT_EQ(*second, Rational(row.secondSign * Length::kTicksPerInch / 2));
    const Solved other = solved(std::string("ring E 4 2 30 clockwise @ ") + row.face + "\n");
    EXPECT_EQ(other.between("E", "E2", row.first),
              Rational(row.firstSign * Length::kTicksPerInch / 2));
  }
}

TEST(Solve, SlotsAndRounds) {
  const Solved solution = solved(R"(
edge L x left
edge R x right
edge F y front
edge W y
slot S x 1/4 1 1/2
hole A 1/4
round Q 3/8 about A right
round P 1/8 corner R F
round U 1/8 corner L W
r1 x L S 1
r2 y F S 1/2
r3 x L Q 3
r4 x L R 4
r5 y F A 5/8
r6 y F W 1
)");
  EXPECT_EQ(at(solution, "S1", Axis::x), "3/8");
  EXPECT_EQ(at(solution, "S2", Axis::x), "13/8");
  EXPECT_EQ(at(solution, "S2", Axis::y), "1/2");
  EXPECT_EQ(at(solution, "A", Axis::x), "21/8");
  EXPECT_EQ(at(solution, "Q", Axis::y), "5/8");
  EXPECT_EQ(at(solution, "P", Axis::x), "31/8");
  EXPECT_EQ(at(solution, "P", Axis::y), "1/8");
  EXPECT_EQ(at(solution, "U", Axis::x), "1/8");
  EXPECT_EQ(at(solution, "U", Axis::y), "loose");
  ASSERT_NE(doubt(solution, "loose:U:y"), nullptr);
  EXPECT_NE(textOf(solution, "loose:U:y").find("which side of the part W is"), std::string::npos);
}

TEST(Solve, ViewsAreJoined) {
  // A cross hole in the front face shares X with the plan; the same length stands in both views.
  const Solved solution = solved(R"(
edge L x left
edge R x right
hole A 1/4
hole H 1/8 front
r1 x L A 3/4
r2 x A H 1/2
r3 x L H 1 1/4
r4 x L R 2
r5 x L R 2 1/64
)");
  EXPECT_EQ(solution.statusOf("r2"), ReadingStatus::agrees);
  ASSERT_EQ(solution.clashes.size(), 1u);
  EXPECT_EQ(solution.clashes[0].readingIds(solution.part), (std::vector<Id>{"r4", "r5"}));
  EXPECT_EQ(at(solution, "H", Axis::x), "5/4");
}

TEST(Solve, PlainReadingsPlaceBeforeBracketedOnes) {
  // Both ways to R miss; the chain is followed, not the reference, wherever it stands in the list.
  const Solved solution = solved(R"(
edge L x left
edge R x right
edge W x
a1 x L R (3)
r1 x L W 1
r2 x W R 1
)");
  EXPECT_EQ(at(solution, "R", Axis::x), "2 disputed");
  EXPECT_EQ(solution.clashes[0].missesBy, Rational(Length::kTicksPerInch));
}

TEST(Solve, UnderstandingsStandInLoops) {
  const Solved solution = solved(R"(
edge L x left
hole A 1/4
hole B 1/4
in_line x A B
r1 x L A 1
r2 x L B 1 1/4
)");
  ASSERT_EQ(solution.clashes.size(), 1u);
  EXPECT_EQ(textOf(solution, "clash:x:r1+r2"),
            "L–A–B (with A, B in line) makes 1, the print says 1 1/4 from L to B: 1/4 too long");
}

TEST(Solve, AReadingToItselfIsToldPlainly) {
  const Solved solution = solved("edge L x left\nr1 x L L 1\n");
  ASSERT_EQ(solution.clashes.size(), 1u);
  EXPECT_EQ(solution.clashes[0].missesBy, Rational(Length::kTicksPerInch));
  EXPECT_EQ(solution.statusOf("r1"), ReadingStatus::clashes);
  EXPECT_EQ(textOf(solution, "clash:x:r1").substr(0, 32), "1 is measured from L to itself");
}

TEST(Solve, LooseOnesThatHangTogetherSaySo) {
  const Solved solution = solved(R"(
edge L x left
hole A 1/4
hole B 1/4
slot S x 1/4 1
r1 x A B 1
)");
  ASSERT_NE(doubt(solution, "loose:A:x"), nullptr);
  EXPECT_EQ(textOf(solution, "loose:A:x"),
            "A: nothing says where it lies along X; it hangs together with B; give its distance "
            "along X from L, or say what it is in line with");
  EXPECT_NE(doubt(solution, "loose:S:x"), nullptr);
  EXPECT_EQ(doubt(solution, "loose:S1:x"), nullptr) << "one entry for the slot is enough";
}

TEST(Solve, DoubtsAboutReadings) {
  const Solved solution = solved(R"(
edge L x left
edge R x right
edge F y front
hole A 1/4
line M
r1 x L R 2 1/3
r2 x L A 3/8
again r2 5/8
r3 diameter A 5/16
accepted loose:A:y
)");
  EXPECT_EQ(keys(solution),
            "loose:A:y\nkind:feature:M\nquestion:r1\nsize::r3:A\nreadtwice:r2\nalone\n");
  EXPECT_TRUE(doubt(solution, "loose:A:y") == nullptr || doubt(solution, "loose:A:y")->accepted);
  EXPECT_EQ(textOf(solution, "readtwice:r2"),
            "L to A was read as 3/8 and then as 5/8; a third look at the print settles it");
  EXPECT_EQ(textOf(solution, "size::r3:A"), "the print says 5/16 for A, which is entered as 1/4");
}

TEST(Solve, OnlyWhatIsAloneDoesNotHoldUp) {
  const Solved solution = solved("edge L x left\nedge R x right\nr1 x L R 2\n");
  EXPECT_EQ(keys(solution), "alone\n");
  EXPECT_FALSE(solution.isDraft());
}

TEST(Solve, PositionsBeyondTheExactRangeAreRefused) {
  Part part = partFrom("edge L x left\nedge A x\nedge B x\nedge R x right\n");
  const std::vector<Id> chain{"L", "A", "B", "R"};
  for (std::size_t i = 0; i < 3; ++i) {
    Reading reading;
    reading.id = "r" + std::to_string(i);
    reading.from = chain[i];
    reading.to = chain[i + 1];
    reading.figure.value = Length::ticks(std::int64_t{3} << 60);
    part.readings.push_back(reading);
    // One is 3/4 of 2^62, the farthest a position may lie.
    const auto result = solve(part);
    ASSERT_EQ(result.ok(), i == 0) << i;
    if (!result.ok()) {
      EXPECT_EQ(result.error().code, ErrorCode::outOfRange);
    }
  }
}

TEST(Solve, LoopsBeyondTheExactRangeAreRefused) {
  Part part = partFrom("edge L x left\nedge R x right\nr1 x L R 1\nr2 x L R 2\n");
  part.readings[0].figure.value = Length::ticks(-(std::int64_t{1} << 62));
  part.readings[1].figure.value = Length::ticks(std::int64_t{3} << 61);
  const auto result = solve(part);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().code, ErrorCode::outOfRange);
}

}  // namespace
}  // namespace inchwright
