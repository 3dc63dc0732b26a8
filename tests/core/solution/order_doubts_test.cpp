// Where things lie against the part and one another, against the tracing, and against what is said
// of their order.
#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

#include "core/say/doubt_words.h"
#include "core/solution/solution.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

using test::partFrom;

const char* const kSides = R"(
edge L x left
edge R x right
edge F y front
edge K y back
r1 x L R 4
r2 y F K 2
)";

std::vector<Doubt> doubtsOn(const Part& part, DoubtTopic topic) {
  const auto solution = solve(part);
  EXPECT_TRUE(solution.ok());
  std::vector<Doubt> found;
  for (const Doubt& doubt : solution ? solution->doubts : std::vector<Doubt>{}) {
    if (doubt.key.topic == topic) found.push_back(doubt);
  }
  return found;
}

std::vector<Doubt> doubtsOn(const std::string& text, DoubtTopic topic) {
  return doubtsOn(partFrom(kSides + text), topic);
}

std::string saidOf(const Part& part, DoubtTopic topic) {
  const auto solution = solve(part);
  std::string all;
  for (const Doubt& doubt : solution->doubts) {
    if (doubt.key.topic == topic) all += doubtText(part, *solution, doubt) + "\n";
  }
  return all;
}

TEST(OrderDoubts, StepsOfOneBoreDoNotRunIntoEachOther) {
  const std::string apart = "hole A 1/2\nhole B 1/4\nr3 x L A 1\nr4 y F A 1\nr5 x L B 1\nr6 y F B ";
  EXPECT_TRUE(doubtsOn(apart + "1\n", DoubtTopic::holesMeet).empty()) << "a step in one bore";
  EXPECT_EQ(doubtsOn(apart + "1 1/16\n", DoubtTopic::holesMeet).size(), 1u) << "off its centre";
  const std::string alike =
      "hole A 1/4\nhole B 1/4\nhole C 1/8\nr3 x L A 1\nr4 y F A 1\n"
      "r7 x L C 3\nr8 y F C 1\n";
  EXPECT_EQ(doubtsOn(alike + "r5 x L B 1\nr6 y F B 1\n", DoubtTopic::holesMeet).size(), 1u)
      << "the same hole twice";
  EXPECT_TRUE(doubtsOn(alike + "concentric A B\n", DoubtTopic::holesMeet).empty());
  EXPECT_EQ(doubtsOn(alike + "in_line x A B\nin_line y A B\n", DoubtTopic::holesMeet).size(), 1u)
      << "in line is no word for one centre";
}

TEST(OrderDoubts, AHoleWiderThanThePartIsToldByHowMuch) {
  const auto wide = doubtsOn("hole A 2.125\nr3 x L A 2\nr4 y F A 1\n", DoubtTopic::breaksEdge);
  ASSERT_EQ(wide.size(), 1u);
  EXPECT_EQ(wide[0].key.axis, Axis::y);
  EXPECT_EQ(wide[0].by, Length::ticks(Length::kTicksPerInch / 8));
  EXPECT_TRUE(doubtsOn("hole A 2\nr3 x L A 2\nr4 y F A 1\n", DoubtTopic::breaksEdge).empty());
}

// Whole 64ths of an inch in millimetres, from 1/16 in on.
TEST(OrderDoubts, DecimalsThatAreFractionsInMillimetres) {
  for (const auto& [text, isOdd] : {std::pair{"12.7", true},
                                    {"25.4", true},
                                    {"3.175", true},
                                    {"1.5875", true},
                                    {"6.35", true},
                                    {"1.190625", false},
                                    {"0.79375", false},
                                    {"12.71", false},
                                    {"2.54", false},
                                    {"12.75", false},
                                    {"12.7 mm", false},
                                    {"1/2", false},
                                    {"127", false}}) {
    const auto found =
        doubtsOn("hole A 1/4\nr3 x L A " + std::string(text) + "\n", DoubtTopic::millimetres);
    EXPECT_EQ(!found.empty(), isOdd) << text;
  }
}

TEST(OrderDoubts, RoundsOnCornersHaveToFitTheirSides) {
  EXPECT_TRUE(doubtsOn("round Q 2 corner L F\n", DoubtTopic::breaksEdge).empty());
  const auto larger = doubtsOn("round Q 2.125 corner L F\n", DoubtTopic::breaksEdge);
  ASSERT_EQ(larger.size(), 1u);
  EXPECT_EQ(larger[0].key.axis, Axis::y);
  EXPECT_EQ(larger[0].by, Length::ticks(Length::kTicksPerInch / 8));
  EXPECT_TRUE(
      doubtsOn("round Q 1 corner L F\nround V 1 corner K L\n", DoubtTopic::holesMeet).empty());
  const auto meet =
      doubtsOn("round V 1.25 corner L F\nround Q 1 corner K L\n", DoubtTopic::holesMeet);
  ASSERT_EQ(meet.size(), 1u);
  EXPECT_EQ(meet[0].key.places, (std::vector<Id>{"Q", "V"}));
  EXPECT_EQ(meet[0].by, Length::ticks(Length::kTicksPerInch / 4));
  EXPECT_TRUE(
      doubtsOn("round V 1.25 corner L F\nround Q 1 corner R K\n", DoubtTopic::holesMeet).empty())
      << "no edge of theirs is the same";
  EXPECT_EQ(
      doubtsOn("round V 2 corner L F\nround Q 2.5 corner F R\n", DoubtTopic::holesMeet).size(), 1u);
}

TEST(OrderDoubts, AWayRoundThatTheReadingsContradict) {
  const std::string holes =
      "hole A 1/8\nhole B 1/8\nhole C 1/8\nr3 x L A 1\nr4 y F A 1/2\n"
      "r5 x L B 3\nr6 y F B 1/2\nr7 x L C 2\nr8 y F C 1 1/2\n";
  Part part = partFrom(kSides + holes);
  Understanding what;
  what.kind = UnderstandingKind::wayRound;
  what.of = {"A", "B", "C"};
  what.sense = Sense::anticlockwise;
  what.stated = true;
  part.understood.push_back(what);
  EXPECT_TRUE(doubtsOn(part, DoubtTopic::wrongWay).empty());
  part.understood[0].sense = Sense::clockwise;
  EXPECT_EQ(saidOf(part, DoubtTopic::wrongWay),
            "A, B and C are said to go round clockwise, and the readings have them the other way "
            "round\n");
  EXPECT_TRUE(doubtsOn(part, DoubtTopic::wrongWay)[0].isFinding());
  part.understood[0].of = {"A", "C", "B"};
  EXPECT_TRUE(doubtsOn(part, DoubtTopic::wrongWay).empty());
  std::erase_if(part.readings, [](const Reading& one) { return one.id == "r8"; });
  part.understood[0].sense = Sense::anticlockwise;
  EXPECT_TRUE(doubtsOn(part, DoubtTopic::wrongWay).empty()) << "C is loose";
}

// Only the choice puts C there: nothing else would tell that it is the mirror image of the drawn
// one.
TEST(OrderDoubts, AWayRoundThatTheTracingContradicts) {
  const std::string holes =
      "hole A 1/8\nhole B 1/8\nhole C 1/8\nr3 x L A 1\nr4 y F A 1\nr5 x L B 3\nr6 y F B 1\n"
      "r7 centres A C 1 1/4\nr8 centres B C 1 1/4\ntraced A 1 1\ntraced B 3 1\n";
  Understanding what;
  what.kind = UnderstandingKind::wayRound;
  what.of = {"A", "B", "C"};
  what.sense = Sense::anticlockwise;
  what.stated = true;
  for (const bool isMirrored : {false, true}) {
    Part part = partFrom(kSides + holes + (isMirrored ? "traced C 2 0.25\n" : "traced C 2 1.75\n"));
    part.understood.push_back(what);
    EXPECT_EQ(saidOf(part, DoubtTopic::offTrace),
              isMirrored
                  ? "A, B and C are said to go round anticlockwise, and the tracing has them "
                    "the other way round\n"
                  : "");
  }
}

TEST(OrderDoubts, ASideThatTheReadingsContradict) {
  Part part = partFrom(kSides + std::string("edge M y\nr3 y F M 1\nhole A 1/8\nr4 y F A 1/2\n"));
  Understanding what;
  what.kind = UnderstandingKind::beside;
  what.of = {"A"};
  what.about = "M";
  what.side = Side::front;
  what.stated = true;
  part.understood.push_back(what);
  EXPECT_TRUE(doubtsOn(part, DoubtTopic::wrongWay).empty());
  part.understood[0].side = Side::back;
  EXPECT_EQ(saidOf(part, DoubtTopic::wrongWay),
            "A is said to lie beside M, on its back side, and the readings put it on the other\n");
  EXPECT_EQ(doubtsOn(part, DoubtTopic::wrongWay)[0].nearby, std::vector<Id>{"M"});
}

// ---- what only the tracing knows ----

const char* const kTraced = R"(
traced L 0
traced R 4
traced F 0
traced K 2
hole A 1/4
traced A 1 1
r3 x L A 1
r4 y F A 1
)";

TEST(TracedDoubts, BothAxesTellWhetherTheDrawingIsToScale) {
  // Along x only the overall length agrees; y has two more.
  const Part part = partFrom(R"(
edge L x left
edge R x right
edge F y front
edge K y back
traced L 0
traced R 2
traced F 0
traced K 1.5
hole A 1/4
traced A 0.646 0.75
r1 x L R 2
r2 y F K 1 1/2
r3 x L A 1 5/8
r4 y F A 3/4
)");
  EXPECT_EQ(saidOf(part, DoubtTopic::offTrace),
            "L to A says 1 5/8 and is traced at about 41/64; nothing else checks it\n");
}

TEST(TracedDoubts, TwoThatAgreeOfThreeMakeADrawingToScale) {
  const std::string two =
      "edge L x left\nedge R x right\nhole A 1/4\nhole B 1/4\ntraced L 0\ntraced R 2\n"
      "traced A 0.646 1\ntraced B 1.5 1\nr1 x L R 2\nr3 x L A 1 5/8\n";
  EXPECT_EQ(doubtsOn(partFrom(two + "r4 x L B 1 1/2\n"), DoubtTopic::offTrace).size(), 1u);
  EXPECT_TRUE(doubtsOn(partFrom(two), DoubtTopic::offTrace).empty()) << "one of two";
}

TEST(TracedDoubts, WhatAFeaturesOwnFiguresHoldIsDrawnWithIt) {
  // A row, a slot and a ring are traced by one place each; readings go to their holes and ends.
  const std::string drawn = R"(
edge L x left
edge R x right
edge F y front
edge K y back
traced L 0
traced R 4
traced F 0
traced K 2
row D x 4 1/4
traced D 0.75 1.75
slot S x 1/4 3/4
traced S 1.25 1.25
ring G 6 1 30
traced G 3 1
r1 x L R 4
r2 y F K 2
)";
  const auto said = [&](const char* readings) {
    return saidOf(partFrom(drawn + readings), DoubtTopic::offTrace);
  };
  EXPECT_EQ(said("r3 x L D3 1 1/4\nr4 y D3 K 1/4\nr5 x L S1 1\nr6 x S2 R 2 1/2\nr7 x G1 R .567\n"),
            "");
  EXPECT_EQ(said("r3 x L D3 3/4\n"),
            "L to D3 says 3/4 and is traced at about 1 1/4; nothing else checks it\n");
  EXPECT_EQ(said("r4 y D3 K 1 1/4\n"),
            "D3 to K says 1 1/4 and is traced at about 1/4; nothing else checks it\n");
  EXPECT_EQ(said("r5 x L S1 1 1/4\n"),
            "L to S1 says 1 1/4 and is traced at about 1; nothing else checks it\n");
  EXPECT_EQ(said("r7 x G1 R 1\n"),
            "G1 to R says 1 and is traced at about 9/16; nothing else checks it\n");
}

/// Five holes of a plate, 4 by 2, each from the left and the front; every other one of the traced
/// places is off by `off` inches. `overall` is the length, `last` the last hole's from the left.
std::string heldToTheTracing(double off, const std::string& overall, const std::string& last) {
  auto traced = [&, number = 0](double value) mutable {
    const double error = ++number % 3 == 0 ? off : number % 3 == 1 ? -off : 0;
    std::ostringstream text;
    text << value + error;
    return " " + text.str();
  };
  std::ostringstream text;
  text << "edge L x left\nedge R x right\nedge F y front\nedge K y back\ntraced L 0\ntraced R 4\n"
          "traced F 0\ntraced K 2\nr1 x L R "
       << overall << "\nr2 y F K 2\n";
  const char* const across[] = {"1/2", "1", "1 3/4", "2 1/2", "3 1/2"};
  const char* const up[] = {"3/4", "1 1/2", "3/8", "1 1/4", "1"};
  const double x[] = {0.5, 1, 1.75, 2.5, 3.5}, y[] = {0.75, 1.5, 0.375, 1.25, 1};
  for (int i = 0; i < 5; ++i) {
    text << "hole H" << i << " 1/8\ntraced H" << i << traced(x[i]) << traced(y[i]) << "\na" << i
         << " x L H" << i << ' ' << (i == 4 ? last : across[i]) << "\nb" << i << " y F H" << i
         << ' ' << up[i] << '\n';
  }
  return saidOf(partFrom(text.str()), DoubtTopic::offTrace);
}

TEST(TracedDoubts, AWellTracedPrintIsHeldToItsTracing) {
  EXPECT_EQ(heldToTheTracing(0, "4", "3 1/2"), "");
  EXPECT_EQ(heldToTheTracing(0, "4", "3 3/8"),
            "L to H4 says 3 3/8 and is traced at about 3 1/2; nothing else checks it\n");
  EXPECT_EQ(heldToTheTracing(0, "4 1/8", "3 1/2"),
            "L to R says 4 1/8 and is traced at about 4; nothing else checks it\n");
  // A sixteenth is no news where places are traced to a thirty-second.
  EXPECT_EQ(heldToTheTracing(0.03, "4", "3 1/2"), "");
  EXPECT_EQ(heldToTheTracing(0.03, "4", "3 7/16"), "");
  EXPECT_EQ(heldToTheTracing(0.03, "4 1/8", "3 1/2"), "");
}

TEST(TracedDoubts, ACentreDistanceIsSetAgainstTheStraightDistance) {
  const std::string hole = std::string(kTraced) + "hole P 1/8\ntraced P 1.3 1.4\n";
  EXPECT_TRUE(
      doubtsOn(hole + "c1 centres A P 1/2\na1 angle A P 53\n", DoubtTopic::offTrace).empty());
  EXPECT_TRUE(
      doubtsOn(hole + "c1 centres P A 1/2\na1 angle A P 53\n", DoubtTopic::swappedEnds).empty())
      << "it has no direction";
  const auto off = doubtsOn(hole + "c1 centres A P 7/8\na1 angle A P 53\n", DoubtTopic::offTrace);
  ASSERT_EQ(off.size(), 1u);
  EXPECT_EQ(off[0].drawn, Length::ticks(Length::kTicksPerInch / 2));
  EXPECT_FALSE(off[0].key.axis.has_value());
}

TEST(TracedDoubts, AnAngleIsSetAgainstTheDirection) {
  const auto angles = [](const std::string& place, const std::string& text) {
    return doubtsOn(std::string(kTraced) + "hole P 1/8\ntraced P " + place +
                        "\nc1 centres A P 1/2\na1 angle A P " + text + "\n",
                    DoubtTopic::offTrace);
  };
  EXPECT_TRUE(angles("1.354 1.354", "45").empty());
  EXPECT_TRUE(angles("1.354 1.354", "58").empty()) << "near enough for a tracing";
  EXPECT_TRUE(angles("1.49 0.95", "355").empty());
  EXPECT_TRUE(angles("1.49 0.95", "2").empty()) << "over the full turn";
  auto off = angles("1.354 1.354", "225");
  ASSERT_EQ(off.size(), 1u);
  EXPECT_EQ(off[0].drawnDegrees, 45);
  EXPECT_EQ(off[0].about, "225, 45 degrees");
  off = angles("1.354 0.646", "45");
  ASSERT_EQ(off.size(), 1u);
  EXPECT_EQ(off[0].drawnDegrees, 315);
}

TEST(TracedDoubts, AnAngleSwungClockwiseIsTakenSo) {
  Part part = partFrom(kSides + std::string(kTraced) +
                       "hole P 1/8\ntraced P 1.354 0.646\nc1 centres A P 1/2\na1 angle A P 45\n");
  EXPECT_EQ(doubtsOn(part, DoubtTopic::offTrace).size(), 1u);
  part.readings.back().sense = Sense::clockwise;
  EXPECT_TRUE(doubtsOn(part, DoubtTopic::offTrace).empty());
}

TEST(TracedDoubts, TheRadiusOfAnArcIsSetAgainstTheOneDrawn) {
  const auto said = [](const char* radius) {
    Part part = partFrom(kSides + std::string(kTraced) + "arc N\ntraced N 2 3 1.5\n");
    part.features.back().as<kind::Arc>()->radius = *readLength(radius);
    return saidOf(part, DoubtTopic::offTrace);
  };
  EXPECT_EQ(said("1 1/2"), "");
  EXPECT_EQ(said("1 3/4"), "") << "three points of a curve tell its radius badly";
  EXPECT_EQ(said("3"), "N is lettered R3 and is traced at about R1 1/2: look again\n");
  EXPECT_EQ(said("R 3/4"), "N is lettered R 3/4 and is traced at about R1 1/2: look again\n");
}

// ---- of what a doubt is ----

TEST(ClashDoubts, CarryTheFiguresThatTheyAreAbout) {
  const auto clash = doubtsOn("hole A 1/4\nr3 x L A 1\nr4 x A R 2 7/8\n", DoubtTopic::clash);
  ASSERT_EQ(clash.size(), 1u);
  EXPECT_EQ(clash[0].about, "r1 4, r3 1, r4 2 7/8, misses by 1/8");
}

}  // namespace
}  // namespace inchwright
