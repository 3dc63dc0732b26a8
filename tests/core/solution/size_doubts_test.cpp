// Sizes of one feature or title block that contradict one another, figures read twice, and members
// that look misspelt.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/say/doubt_words.h"
#include "core/solution/solution.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

Lettered lettered(const char* text) {
  return *readLength(text);
}

// What is odd about the sizes of the feature `A` or of the title block.
std::vector<SizeOddity> oddities(const Part& part) {
  const auto solution = solve(part);
  if (!solution) return {};
  for (const Doubt& doubt : solution->doubts) {
    if (doubt.key.topic == DoubtTopic::oddSizes) return doubt.sizes;
  }
  return {};
}

Part plateWith(const Drilled& drilled) {
  Part part = test::partFrom("edge U z bottom\nedge T z top\nr1 z U T 1/4\nhole A 1/4");
  part.features.back().as<kind::Hole>()->drilled = drilled;
  return part;
}

Drilled tapped(const char* thread, const char* diameter) {
  Drilled drilled;
  drilled.make = Make::tap;
  drilled.thread = thread;
  drilled.diameter = lettered(diameter);
  return drilled;
}

TEST(OddSizes, OfAThread) {
  // #8-32: .164 outside, .1302 inside a nut, so .1470 at half its depth. 1/4-20: .250 and .1959.
  struct Row {
    const char* thread;
    const char* diameter;
    bool isOdd;
  };
  for (const Row& row :
       {Row{"8-32 UNC", ".164", false}, Row{"8-32 UNC", ".136", false},
        Row{"8-32 UNC", "9/64", false}, Row{"8-32 UNC", ".120", true},
        Row{"8-32 UNC", ".152", true}, Row{"8-32 UNC", "1/4", true},
        Row{"1/4-20 UNC", "1/4", false}, Row{"1/4-20 UNC", ".201", false},
        Row{"1/4-20 UNC", ".185", true}, Row{"1/4-20 UNC", ".235", true}, Row{"M3", "3 mm", false},
        Row{"M3", "2.5 mm", false}, Row{"M3", "3.5 mm", true}, Row{"8-34 UNC", "1/4", false}}) {
    const auto odd = oddities(plateWith(tapped(row.thread, row.diameter)));
    EXPECT_EQ(!odd.empty(), row.isOdd) << row.thread << ' ' << row.diameter;
    for (const SizeOddity& one : odd) EXPECT_EQ(one.what, SizeOddity::What::offThread);
  }
  Drilled drilled = tapped("8-32 UNC", ".136");
  drilled.make = Make::drill;
  EXPECT_EQ(oddities(plateWith(drilled))[0].what, SizeOddity::What::notTapped);
  drilled.make = Make::counterbore;
  drilled.seatDiameter = lettered("3/8");
  EXPECT_TRUE(oddities(plateWith(drilled)).empty());
  drilled = {};
  drilled.make = Make::tap;
  EXPECT_EQ(oddities(plateWith(drilled)),
            (std::vector<SizeOddity>{{SizeOddity::What::threadNotSaid, "", ""}}));
}

TEST(OddSizes, OfASeat) {
  Drilled drilled;
  drilled.diameter = lettered("1/4");
  drilled.make = Make::counterbore;
  EXPECT_EQ(oddities(plateWith(drilled))[0].what, SizeOddity::What::seatNotSaid);
  drilled.seatDiameter = lettered("1/4");
  EXPECT_EQ(oddities(plateWith(drilled)),
            (std::vector<SizeOddity>{{SizeOddity::What::seatNotWider, "1/4", "1/4"}}));
  drilled.seatDiameter = lettered("17/64");
  drilled.seatDepth = lettered("1/8");
  EXPECT_TRUE(oddities(plateWith(drilled)).empty());
  drilled.depth = {false, lettered("1/8")};
  EXPECT_EQ(oddities(plateWith(drilled)),
            (std::vector<SizeOddity>{{SizeOddity::What::seatTooDeep, "1/8", "1/8"}}));
  drilled.depth = {false, lettered("9/64")};
  EXPECT_TRUE(oddities(plateWith(drilled)).empty());
}

TEST(OddSizes, OfLimits) {
  Drilled drilled;
  drilled.diameter = lettered("1/4");
  const auto what = [&](const char* limits) {
    drilled.limits = limits;
    const auto odd = oddities(plateWith(drilled));
    return odd.empty() ? std::optional<SizeOddity::What>() : odd[0].what;
  };
  EXPECT_EQ(what("H7"), std::nullopt);
  EXPECT_EQ(what(".2495/.2505"), std::nullopt);
  // A 64th off is what a fit may take, more is another size.
  EXPECT_EQ(what(".2656/.2660"), std::nullopt);
  EXPECT_EQ(what(".265625/.2660"), std::nullopt);
  EXPECT_EQ(what(".2657/.2660"), SizeOddity::What::offLimits);
  EXPECT_EQ(what(".2340/.2343"), SizeOddity::What::offLimits);
  EXPECT_EQ(what(".2340/.234375"), std::nullopt);
  EXPECT_EQ(what("g6"), SizeOddity::What::shaftLimits);
  EXPECT_EQ(what("Q7"), SizeOddity::What::limitsUnknown);
  drilled.diameter.reset();
  EXPECT_EQ(what(""), SizeOddity::What::sizeNotSaid);
}

TEST(OddSizes, OfSlotsRingsAndTheTitleBlock) {
  const std::string plate = "edge U z bottom\nedge T z top\nr1 z U T 1/4\n";
  Part slotted = test::partFrom(plate + "slot S x 1/8 1/2");
  auto& depth = slotted.features.back().as<kind::Slot>()->depth;
  depth = {false, lettered("15/64")};
  EXPECT_TRUE(oddities(slotted).empty());
  depth = {false, lettered("1/4")};
  EXPECT_EQ(oddities(slotted),
            (std::vector<SizeOddity>{{SizeOddity::What::deeperThanPart, "1/4", "1/4"}}));
  // The part's own thickness is wrong or not known: nothing to hold the depth to.
  for (const char* thickness : {"-1/4", "0 in"}) {
    slotted.readings[0].figure = lettered(thickness);
    EXPECT_TRUE(oddities(slotted).empty()) << thickness;
  }
  slotted.readings.clear();
  EXPECT_TRUE(oddities(slotted).empty());
  depth = {true, std::nullopt};
  EXPECT_TRUE(oddities(slotted).empty());
  Part seated = test::partFrom(plate + "hole A 1/4");
  auto& drilled = *seated.features.back().drilled();
  drilled.make = Make::counterbore;
  drilled.seatDiameter = lettered("3/8");
  drilled.seatDepth = lettered("15/64");
  EXPECT_TRUE(oddities(seated).empty());
  drilled.seatDepth = lettered("1/4");
  EXPECT_EQ(oddities(seated),
            (std::vector<SizeOddity>{{SizeOddity::What::deeperThanPart, "1/4", "1/4"}}));
  EXPECT_TRUE(oddities(test::partFrom("ring E 2 1 359")).empty());
  EXPECT_EQ(oddities(test::partFrom("ring E 2 1 360"))[0].what, SizeOddity::What::pastFullTurn);
  EXPECT_EQ(oddities(test::partFrom("ring E 1 1 0"))[0].what, SizeOddity::What::oneHole);
  EXPECT_EQ(oddities(test::partFrom("row E x 1 1/4"))[0].what, SizeOddity::What::oneHole);
  EXPECT_TRUE(oddities(test::partFrom("row E x 2 1/4")).empty());
  Part part;
  part.general.twoPlaces = part.general.threePlaces = lettered(".005");
  EXPECT_TRUE(oddities(part).empty());
  part.general.threePlaces = lettered(".006");
  EXPECT_EQ(oddities(part),
            (std::vector<SizeOddity>{{SizeOddity::What::generalOrder, ".006", ".005"}}));
  part.general = {};
  part.general.fractions = lettered("1/46");
  EXPECT_EQ(oddities(part)[0].what, SizeOddity::What::generalOdd);
}

// Accepted it stands for these figures alone.
TEST(OddSizes, AreAcceptedWithTheirFigures) {
  Part part = plateWith(tapped("8-32 UNC", "1/4"));
  const Doubt doubt = solve(part)->doubts[0];
  EXPECT_EQ(doubt.key.text(), "sizes:::A");
  EXPECT_TRUE(doubt.isFinding() && doubt.holdsUp());
  AcceptedDoubt accepted(doubt.key.text());
  accepted.about = doubt.about;
  part.accepted = {accepted};
  EXPECT_TRUE(solve(part)->doubts[0].accepted);
  part.features.back().as<kind::Hole>()->drilled.diameter = lettered("5/16");
  EXPECT_FALSE(solve(part)->doubts[0].accepted);
}

TEST(Misspelt, StandsWhereItIsFoundAndMakesADraft) {
  Part part = test::partFrom("hole A 1/4\nr1 diameter A 1/4\nconcentric A A");
  const UnknownMember stray{"stok", "{}", "stock"};
  part.setups.resize(1);
  part.setups[0].name = "1:a";
  part.setups[0].stockExtra = {stray, {"seen", "1", ""}};
  part.features[0].extra = part.readings[0].extra = part.general.extra = {stray};
  const Solution solution = *solve(part);
  std::vector<std::string> keys;
  for (const Doubt& doubt : solution.doubts) {
    if (doubt.key.topic != DoubtTopic::misspelt) continue;
    keys.push_back(doubt.key.text());
    EXPECT_EQ(DoubtKey::read(keys.back()), doubt.key) << keys.back();
    EXPECT_EQ(doubt.misspelt, (std::vector<Misspelt>{{"stok", "stock", ""}}));
    EXPECT_EQ(doubt.about, "stok stock");
  }
  std::sort(keys.begin(), keys.end());
  EXPECT_EQ(keys, (std::vector<std::string>{"misspelt:::", "misspelt::::1\\:a", "misspelt:::A",
                                            "misspelt::r1:"}));
  EXPECT_TRUE(solution.isDraft());
}

TEST(Misspelt, OutsideOfParts) {
  Job job;
  job.machine.extra = {{"xcounts", "\"left\"", "x_counts"}, {"colour", "1", ""}};
  job.gaps.resize(1);
  job.gaps[0].name = "shake";
  job.gaps[0].extra = {{"greatets", "\"1\"", "greatest"}};
  EXPECT_EQ(misspeltOutsideParts(job),
            (std::vector<Misspelt>{{"xcounts", "x_counts", "machine"},
                                   {"greatets", "greatest", "gap shake"}}));
}

TEST(SizeDoubts, ASecondLookIsHeldToTheFigureAndNotToItsLettering) {
  const auto solution = solve(test::partFrom(R"(
edge L x left
hole A 1/4
hole B 1/4
r1 x L A 1/4
again r1 .250
r2 x L B 1/4
again r2 1/8
r3 angle A B 30
again r3 30° 0'
r4 angle B A 30
again r4 31
r5 diameter A 1/4
again r5 a quarter
)"));
  ASSERT_TRUE(solution.ok());
  std::vector<Id> twice;
  for (const Doubt& doubt : solution->doubts) {
    if (doubt.key.topic == DoubtTopic::readTwice) twice.push_back(doubt.key.readings.front());
  }
  EXPECT_EQ(twice, (std::vector<Id>{"r2", "r4", "r5"}));
}

TEST(SizeDoubts, ASizeReadIsHeldToTheOneEntered) {
  for (const auto& [reading, isOther] :
       {std::pair("diameter A 1/4", false), std::pair("radius A 1/8", false),
        std::pair("diameter A 1/8", true), std::pair("radius A 1/4", true),
        std::pair("radius Q 3/8", false), std::pair("diameter Q 3/4", false),
        std::pair("radius Q 3/4", true), std::pair("diameter Q 3/8", true)}) {
    const auto solution = solve(
        test::partFrom("hole A 1/4\nround Q 3/8 about A left\nr1 " + std::string(reading) + "\n"));
    ASSERT_TRUE(solution.ok());
    const bool isTold =
        std::any_of(solution->doubts.begin(), solution->doubts.end(),
                    [](const Doubt& doubt) { return doubt.key.topic == DoubtTopic::size; });
    EXPECT_EQ(isTold, isOther) << reading;
  }
}

}  // namespace
}  // namespace inchwright
