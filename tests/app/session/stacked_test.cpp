#include "app/session/stacked.h"

#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

constexpr std::int64_t kThou = Length::kTicksPerInch / 1000;

/// Two holes read off the left side, ±.002 and ±.008, and a gap of a shaft in its frame.
class StackedTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    Job job = jobOfPlate();
    Gap& gap = job.gaps.emplace_back();
    gap.name = "end shake";
    gap.members.resize(2);
    gap.members[0].length = *readLength("1.000 ±.002");
    gap.members[1].length = *readLength(".998 ±.003");
    gap.members[1].sign = -1;
    put(job);
    enterLines({"edge L left", "edge F front", "hole A 1/4", "hole B 1/4", "x L A .500 ±.002",
                "x A B 1.000 ±.008", "y F A 1/2", "y F B 1/2", "zero x L", "zero y F"});
  }

  /// With limits of its own.
  Stacked gapWithin(const char* least, const char* greatest) {
    Job job = desk.job();
    job.gaps[0].least = *readLength(least);
    job.gaps[0].greatest = *readLength(greatest);
    desk.apply(job, QStringLiteral("limits"));
    const auto stacked = stackAcross(desk, "end shake");
    EXPECT_TRUE(stacked.ok()) << stacked.error().text;
    return stacked.ok() ? *stacked : Stacked{};
  }
};

TEST_F(StackedTest, ADistanceIsAddedUpAsDrawnAndAsMade) {
  const auto stacked = stackBetween(desk, Axis::x, "L", "B");
  ASSERT_TRUE(stacked.ok()) << stacked.error().text;
  EXPECT_EQ(stacked->title, QStringLiteral("L to B along X"));
  ASSERT_EQ(stacked->ways.size(), 2u);
  const Stack& drawn = stacked->ways[0].stack;
  EXPECT_EQ(drawn.nominal, Rational(1'500 * kThou));
  EXPECT_EQ(drawn.worst, (Span{1'490 * kThou, 1'510 * kThou}));
  // A is held to ±.002 from zero, which leaves B ±.006.
  EXPECT_EQ(stacked->ways[1].stack.worst, (Span{1'494 * kThou, 1'506 * kThou}));
  EXPECT_TRUE(stacked->remarks.contains(
      QStringLiteral("As drawn it strays ±0.0100 at worst; made from this zero, ±0.0060.")))
      << stacked->remarks.join('\n').toStdString();
}

TEST_F(StackedTest, WhatItRunsThroughLightsUp) {
  const auto stacked = stackBetween(desk, Axis::x, "L", "B");
  ASSERT_TRUE(stacked.ok());
  EXPECT_EQ(stacked->places, (std::vector<Id>{"L", "B", "A"}));
  EXPECT_EQ(stacked->readings, (std::vector<Id>{"r1", "r2"}));
}

TEST_F(StackedTest, TheReadingThatMostOfItComesFromIsNamed) {
  const auto stacked = stackBetween(desk, Axis::x, "L", "B");
  ASSERT_TRUE(stacked.ok());
  EXPECT_TRUE(stacked->remarks.contains(
      QStringLiteral("Most of it comes from r2 (1.000 ±.008): 80 of 100.")))
      << stacked->remarks.join('\n').toStdString();
  // Of one reading there is nothing to name.
  const auto single = stackBetween(desk, Axis::x, "L", "A");
  ASSERT_TRUE(single.ok());
  EXPECT_TRUE(single->remarks.filter(QStringLiteral("Most of it")).isEmpty());
}

TEST_F(StackedTest, AGapSaysHowFarItLeavesItsLimits) {
  // .002 as lettered, −.003 to .007 at worst.
  const Stacked stacked = gapWithin("0.001", "0.006");
  ASSERT_EQ(stacked.ways.size(), 1u);
  EXPECT_EQ(stacked.ways[0].stack.worst, (Span{-3 * kThou, 7 * kThou}));
  EXPECT_FALSE(stacked.keeps(stacked.ways[0].stack.worst));
  EXPECT_TRUE(stacked.remarks.contains(QStringLiteral("At worst it is 0.0040 too little.")));
  EXPECT_TRUE(stacked.remarks.contains(QStringLiteral("At worst it is 0.0010 too much.")));
  // Both ways out are counted.
  const Simulation& drawn = stacked.ways[0].simulation;
  ASSERT_GT(drawn.below, 0u);
  ASSERT_GT(drawn.above, 0u);
  const double outside =
      100.0 * static_cast<double>(drawn.below + drawn.above) / static_cast<double>(drawn.runs);
  ASSERT_GE(outside, 10);
  EXPECT_TRUE(stacked.remarks.contains(
      QStringLiteral("Put together at random, %1 of 100 are outside.").arg(outside, 0, 'f', 0)))
      << stacked.remarks.join('\n').toStdString();
  EXPECT_TRUE(stacked.readings.empty()) << "it runs through no reading of this part";
}

TEST_F(StackedTest, AGapThatKeepsToItsLimitsSaysOnlyThat) {
  const Stacked stacked = gapWithin("-0.003", "0.007");
  EXPECT_TRUE(stacked.keeps(stacked.ways[0].stack.worst));
  EXPECT_EQ(stacked.remarks.front(), QStringLiteral("It goes together, even at worst."));
  EXPECT_TRUE(stacked.remarks.filter(QStringLiteral("At worst")).isEmpty());
}

// Often one end alone matters: that it turns at all, or that it does not rattle.
TEST_F(StackedTest, AGapIsHeldToTheOneLimitItHas) {
  const auto saidOf = [&](const char* least, const char* greatest) {
    Job job = desk.job();
    const auto read = [](const char* text) {
      return text == nullptr ? std::nullopt : std::optional(*readLength(text));
    };
    job.gaps[0].least.reset();
    job.gaps[0].greatest.reset();
    if (const auto limit = read(least)) job.gaps[0].least = *limit;
    if (const auto limit = read(greatest)) job.gaps[0].greatest = *limit;
    desk.apply(job, QStringLiteral("limits"));
    const auto stacked = stackAcross(desk, "end shake");
    EXPECT_TRUE(stacked.ok()) << stacked.error().text;
    return stacked.ok() ? stacked->remarks.filter(QStringLiteral("orst")).join(' ') : QString();
  };
  // It is −.003 to .007 at worst.
  const QString fine = QStringLiteral("It goes together, even at worst.");
  EXPECT_EQ(saidOf("-0.003", nullptr), fine);
  EXPECT_EQ(saidOf(nullptr, "0.007"), fine);
  EXPECT_EQ(saidOf("0.001", nullptr), QStringLiteral("At worst it is 0.0040 too little."));
  EXPECT_EQ(saidOf(nullptr, "0.005"), QStringLiteral("At worst it is 0.0020 too much."));
  EXPECT_EQ(saidOf(nullptr, nullptr), QString()) << "nothing is asked of it";
}

TEST_F(StackedTest, WhatIsNotThereOrNotJoinedIsRefused) {
  EXPECT_EQ(stackAcross(desk, "side shake").error().code, ErrorCode::notFound);
  EXPECT_EQ(stackBetween(desk, Axis::x, "L", "Q").error().code, ErrorCode::notFound);
  EXPECT_EQ(stackBetween(desk, Axis::y, "L", "A").error().code, ErrorCode::badRequest);
  enterLines({"hole C 1/4"});
  EXPECT_EQ(stackBetween(desk, Axis::x, "L", "C").error().code, ErrorCode::unsolvable);
}

TEST_F(StackedTest, TheHandsChooseTwoEndsOrAGapAndLeaveThemAgain) {
  work.stack();
  EXPECT_FALSE(work.stacked());
  work.point({{}, "L", {}, false});
  EXPECT_FALSE(work.stacked()) << "one end is no stack";
  work.point({{}, "B", {}, false});
  ASSERT_TRUE(work.stacked() && work.stacked()->ok());
  EXPECT_EQ(work.stacked()->value().title, QStringLiteral("L to B along X"));
  enterLines({"end shake"});
  EXPECT_EQ(work.stacked()->value().title, QStringLiteral("end shake"));
  EXPECT_TRUE(work.chosen().empty());
  work.back();
  EXPECT_FALSE(work.stacked());
  EXPECT_EQ(work.doing(), Doing::stacking);
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
}

TEST_F(StackedTest, AnEndThatDoesNotLieAlongTheFirstOnesAxisIsNotTaken) {
  work.stack();
  work.point({{}, "L", {}, false});
  work.point({{}, "F", {}, false});  // L lies across x, F across y
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"L"}));
  EXPECT_FALSE(work.enter(QStringLiteral("Q"))) << "there is no feature Q";
}

}  // namespace
}  // namespace inchwright::app
