// All that is told of a small print that is placed beyond its chains, worked out by hand.
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "tests/core/place/placed_part.h"
#include "tests/support/part_text.h"

namespace inchwright::test {
namespace {

// A at (1/2, 3/4), B 3 in to its right and D halfway between. C is 2 1/2 from both: 2 in above D.
const std::string kTold =
    "edge R x right\nedge K y back\nedge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\n"
    "hole C 1/8\nhole D 1/8\nb0 x L R 4\nb1 x L A 1/2\nb2 y F A 3/4\nb3 x A B 3\nb4 x A D 1 1/2\n"
    "b5 y F K 4\nin_line y A B D\nr1 centres A C 2 1/2\nr2 centres B C 2 1/2\ntraced C 2.01 2.74\n";

std::set<Id> idsOf(const Part& part, const auto& readings) {
  std::set<Id> ids;
  for (const std::uint32_t one : readings) ids.insert(part.readings[one].id);
  return ids;
}
using Ids = std::set<Id>;

void expectAt(const std::array<Length, 2>& at, double x, double y) {
  EXPECT_NEAR(at[0].toInches(), x, 1e-8);
  EXPECT_NEAR(at[1].toInches(), y, 1e-8);
}

TEST(ToldPlacing, OfAPlaceThatTheTracingTells) {
  const PlacedForTest part = PlacedForTest::of(PartText::read(kTold));
  EXPECT_TRUE(part.placed.clashes.empty());
  ASSERT_EQ(part.placed.answers.size(), 1U);
  const SeveralAnswers& several = part.placed.answers[0];
  EXPECT_EQ(several.place, "C");
  EXPECT_EQ(several.about, std::vector<Id>{"C"});
  EXPECT_TRUE(several.isTaken);
  EXPECT_FALSE(several.mayHaveMore || several.isLine);
  // From the sides at the lower ends: the one above first, since it is taken.
  ASSERT_EQ(several.answers.size(), 2U);
  expectAt(several.answers[0], 2, 2.75);
  expectAt(several.answers[1], 2, -1.25);
  EXPECT_EQ(idsOf(part.part, part.placed.used), (Ids{"r1", "r2"}));
  EXPECT_TRUE(part.placed.checked.empty());
  EXPECT_TRUE(part.placed.free.empty());
  EXPECT_TRUE(part.placed.weak.empty());
  ASSERT_TRUE(part.placed.held.contains("C"));
  const HeldBy& held = part.placed.held.at("C");
  EXPECT_EQ(idsOf(part.part, held.readings), (Ids{"r1", "r2"}));
  EXPECT_EQ(held.from, (std::vector<Id>{"A", "B"}));
  EXPECT_TRUE(held.together.empty() && held.understood.empty());
  EXPECT_EQ(part.placed.held.size(), 1U);
}

// From D it is lettered 2 1/8. For that r1 or r2 would have to be √7.28125 = 2.69838, and A and B
// 2.65625 apart; where D lies across bears on it only at the second order.
TEST(ToldPlacing, OfASpareReadingThatMisses) {
  const PlacedForTest part = PlacedForTest::of(PartText::read(kTold + "r3 centres D C 2 1/8\n"));
  ASSERT_EQ(part.placed.clashes.size(), 1U);
  const CentresClash& clash = part.placed.clashes[0];
  EXPECT_EQ(clash.axes, (std::array{Axis::x, Axis::y}));
  EXPECT_EQ(idsOf(part.part, clash.members), (Ids{"b3", "r1", "r2", "r3"}));
  EXPECT_TRUE(std::is_sorted(clash.members.begin(), clash.members.end()));
  EXPECT_TRUE(clash.understood.empty());
  EXPECT_NEAR(clash.missesBy, 0.125, 1e-8) << "it says more than the others make";
  EXPECT_EQ(part.part.readings[clash.spare.value()].id, "r3");
  EXPECT_FALSE(clash.isOfSeveral);
  const std::map<Id, double> wanted{
      {"b3", 2.65625}, {"r1", std::sqrt(7.28125)}, {"r2", std::sqrt(7.28125)}, {"r3", 2}};
  ASSERT_EQ(clash.wouldBe.size(), wanted.size());
  for (const WouldBe& one : clash.wouldBe) {
    const Id& id = part.part.readings[one.reading].id;
    EXPECT_NEAR(one.length.toInches(), wanted.at(id), 1e-7) << id;
    EXPECT_TRUE(one.closesAll) << id;
    EXPECT_NEAR(one.misfit, 0, 1e-6) << id;
    EXPECT_FALSE(one.degrees) << id;
  }
  EXPECT_EQ(idsOf(part.part, part.placed.used), (Ids{"r1", "r2", "r3"}));
  EXPECT_EQ(idsOf(part.part, part.placed.checked), (Ids{"b3", "r1", "r2", "r3"}));
  for (const Axis axis : {Axis::x, Axis::y}) {
    EXPECT_TRUE(part.position("C", axis)->disputed);
    EXPECT_FALSE(part.position("B", axis)->disputed);
  }
  EXPECT_NEAR(part.from("F", "C", Axis::y), 2.75, 1e-8) << "and never moves it";
}

// Two spare ones, and the angle agrees with where C is: nothing but r3 alone mends all.
TEST(ToldPlacing, OfTwoSpareReadingsOfWhichOneAgrees) {
  const PlacedForTest part =
      PlacedForTest::of(PartText::read(kTold + "r3 centres D C 2 1/8\nr4 angle A C 53.13\n"));
  ASSERT_EQ(part.placed.clashes.size(), 1U);
  for (const WouldBe& one : part.placed.clashes[0].wouldBe) {
    const Id& id = part.part.readings[one.reading].id;
    EXPECT_EQ(one.closesAll, id == "r3") << id;
    EXPECT_EQ(one.misfit > 1, id != "r3") << id << " " << one.misfit;
  }
  EXPECT_EQ(idsOf(part.part, part.placed.used), (Ids{"r1", "r2", "r3", "r4"}));
}

// Untraced, and E further on agrees with neither: told of the nearest, each reading as what asks
// least of it. C may be at (1 1/2, ±2) from A, E at (1 1/2, 3): 1 or 5 from it, and 1 1/4 is
// lettered.
TEST(ToldPlacing, OfAReadingThatNoAnswerAgreesWith) {
  std::string text = kTold + "hole E 1/8\nb6 x A E 1 1/2\nb7 y A E 3\nr3 centres E C 1 1/4\n";
  text.erase(text.find("traced C 2.01 2.74\n"), 19);
  const PlacedForTest part = PlacedForTest::of(PartText::read(text));
  EXPECT_FALSE(part.isPlaced("C", Axis::x));
  ASSERT_EQ(part.placed.clashes.size(), 1U);
  const CentresClash& clash = part.placed.clashes[0];
  EXPECT_TRUE(clash.isOfSeveral);
  EXPECT_NEAR(clash.missesBy, 0.25, 1e-8);
  std::map<Id, double> would;
  for (const WouldBe& one : clash.wouldBe) {
    would[part.part.readings[one.reading].id] = one.length.toInches();
  }
  EXPECT_NEAR(would.at("r3"), 1, 1e-7);
  // Or E lies that quarter higher.
  EXPECT_NEAR(would.at("b7"), 3.25, 1e-7);
  ASSERT_EQ(part.placed.answers.size(), 1U);
  EXPECT_FALSE(part.placed.answers[0].isTaken);
  EXPECT_EQ(part.placed.answers[0].answers.size(), 2U);
}

}  // namespace
}  // namespace inchwright::test
