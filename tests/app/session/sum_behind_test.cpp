#include "app/session/sum_behind.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class SumBehindTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    Job job = jobOfPlate();
    job.parts[0].general.fractions = *readLength("1/64");
    put(job);
    enterLines({"edge L left", "edge R right", "edge F front", "edge K back", "hole A 1/4",
                "hole B 1/4", "L A 3/8", "A B 1 3/16", "B R 7/16", "F A 3/4", "A K 3/4",
                "in line y A B"});
  }
};

TEST_F(SumBehindTest, EachReadingIsALineWithWhatItMakesSoFar) {
  const auto sum = sumBehind(desk, "B", MachineAxis::x);
  ASSERT_TRUE(sum.ok()) << sum.error().text;
  EXPECT_EQ(sum->title, "B, X: +1.5625");
  EXPECT_TRUE(sum->zero.contains('L'));
  ASSERT_EQ(sum->lines.size(), 3u);
  EXPECT_EQ(sum->lines[0].reading, "r1");
  EXPECT_EQ(sum->lines[0].text, "+ 3/8   L to A   makes 3/8");
  EXPECT_EQ(sum->lines[1].text, "+ 1 3/16   A to B   makes 1 9/16");
  EXPECT_EQ(sum->lines[1].places, (std::vector<Id>{"A", "B"}));
  EXPECT_TRUE(sum->remark.isEmpty());
}

TEST_F(SumBehindTest, AZeroInTheMiddleTakesHalfOff) {
  work.zero();
  enterLines({"L R"});
  work.look();
  const auto sum = sumBehind(desk, "A", MachineAxis::x);
  ASSERT_TRUE(sum.ok()) << sum.error().text;
  EXPECT_TRUE(sum->zero.contains(QStringLiteral("half way")));
  ASSERT_EQ(sum->lines.size(), 3u);
  // 3/8 less half of 2.
  EXPECT_TRUE(sum->lines[1].text.contains(QStringLiteral("makes -5/8")))
      << qPrintable(sum->lines[1].text);
  EXPECT_EQ(sum->title, "A, X: -0.6250");
}

TEST_F(SumBehindTest, APlaceHeldByCentreDistancesBringsItsTriangle) {
  // 3/4 from both, 1 3/16 apart: half of it across, and up by the rest of the triangle.
  enterLines({"hole C 1/8", "centres A C 3/4", "centres B C 3/4", "way_round A B C anticlockwise"});
  const auto sum = sumBehind(desk, "C", MachineAxis::x);
  ASSERT_TRUE(sum.ok()) << sum.error().text;
  ASSERT_EQ(sum->held.size(), 1u);
  const HeldTriangle& held = sum->held[0];
  EXPECT_EQ(held.name, "C");
  ASSERT_EQ(held.ends.size(), 2u);
  const double across = 19.0 / 32, up = std::sqrt(0.5625 - across * across);
  EXPECT_EQ(held.ends[0].name, "A");
  EXPECT_NEAR(held.ends[0].at.x(), -across, 1e-6);
  EXPECT_NEAR(held.ends[0].at.y(), -up, 1e-6);
  EXPECT_NEAR(held.ends[1].at.x(), across, 1e-6);
  EXPECT_TRUE(held.ends[0].apart.startsWith("0.7500")) << qPrintable(held.ends[0].apart);
  EXPECT_TRUE(held.words.contains("C is held by")) << qPrintable(held.words);
  // Of a place that a chain leads to there is none.
  EXPECT_TRUE(sumBehind(desk, "B", MachineAxis::x)->held.empty());
}

// 3/4 from A and 1 from B hold above their line and below it: the other answer is its image, twice
// as far down as C is up. C lies (d² + a² − b²) / 2d along from A.
TEST_F(SumBehindTest, TheOtherAnswerOfATriangleIsItsImage) {
  enterLines({"hole C 1/8", "centres A C 3/4", "centres B C 1"});
  Part traced = desk.part();
  for (Feature& feature : traced.features) {
    if (feature.id == "C") feature.traced = {"0.785", "1.378"};
  }
  ASSERT_TRUE(desk.applyPart(traced, QStringLiteral("trace")));
  const auto sum = sumBehind(desk, "C", MachineAxis::x);
  ASSERT_TRUE(sum.ok()) << sum.error().text;
  ASSERT_EQ(sum->held.size(), 1u);
  const HeldTriangle& held = sum->held[0];
  const double d = 19.0 / 16, along = (d * d + 0.5625 - 1) / (2 * d);
  const double up = std::sqrt(0.5625 - along * along);
  ASSERT_EQ(held.ends.size(), 2u);
  EXPECT_NEAR(held.ends[0].at.x(), -along, 1e-6);
  EXPECT_NEAR(held.ends[1].at.x(), d - along, 1e-6);
  ASSERT_EQ(held.others.size(), 1u);
  EXPECT_NEAR(held.others[0].x(), 0, 1e-6);
  EXPECT_NEAR(held.others[0].y(), -2 * up, 1e-6);
}

TEST_F(SumBehindTest, WhatMySheetHasNoRowOfIsRefused) {
  EXPECT_FALSE(sumBehind(desk, "NONE", MachineAxis::x).ok());
}

}  // namespace
}  // namespace inchwright::app
