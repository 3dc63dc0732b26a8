#include "core/plan/gap.h"

#include <gtest/gtest.h>

#include <random>

#include "core/say/stack_words.h"
#include "tests/core/plan/gaps.h"

namespace inchwright {
namespace {

using test::kInch;
using test::kThou;
using test::partFrom;
using namespace gaps;

GapStack added(const Job& job, const Gap& gap) {
  const auto stack = gapStack(job, gap);
  EXPECT_TRUE(stack.ok()) << stack.error().place << ": " << stack.error().text;
  return stack ? *stack : GapStack{};
}

TEST(Gap, AddsTheReadingsOfAllItsParts) {
  const GapStack play = added(frameAndArbor(), gapOf({distance("Frame", Axis::x, "P", "Q", 1),
                                                      distance("Arbor", Axis::x, "S", "E", -1)}));
  ASSERT_EQ(play.stack.members.size(), 3u);
  EXPECT_EQ(play.stack.members[0].part, "Frame");
  EXPECT_EQ(memberName(play.stack.members[0]), "r2");
  EXPECT_EQ(play.stack.members[1].part, "Arbor");
  EXPECT_EQ(memberName(play.stack.members[1]), "r1");
  EXPECT_EQ(play.stack.members[1].sign(), -1);
  EXPECT_EQ(play.stack.nominal, Rational(32 * kThou));
  EXPECT_EQ(play.stack.worst, (Span{29 * kThou, 39 * kThou}));
  EXPECT_EQ(play.stack.middle, Rational(34 * kThou));
  // √(2² + 2² + 1²) = 3 thou about the middle.
  EXPECT_EQ(play.stack.rss, (Span{31 * kThou, 37 * kThou}));
}

TEST(Gap, SaysWhetherItKeepsToItsLimits) {
  Gap gap =
      gapOf({distance("Frame", Axis::x, "P", "Q", 1), distance("Arbor", Axis::x, "S", "E", -1)});
  gap.least = lettered(".030");
  gap.greatest = lettered(".038");
  const GapStack play = added(frameAndArbor(), gap);
  EXPECT_FALSE(play.keeps(play.stack.worst));
  EXPECT_EQ(play.beyond(play.stack.worst), (Span{kThou, kThou}));
  EXPECT_TRUE(play.keeps(play.stack.rss));
  gap.least = lettered(".029");
  gap.greatest.reset();
  const GapStack looser = added(frameAndArbor(), gap);
  EXPECT_TRUE(looser.keeps(looser.stack.worst));
  gap.least.reset();
  const GapStack free = added(frameAndArbor(), gap);
  EXPECT_TRUE(free.keeps({-kInch, kInch}));
}

TEST(Gap, AReadingOfTheOnePieceCountsOnce) {
  Job job = frameAndArbor();
  // From P to R and back to Q: r3 goes in with both signs and cancels.
  const Gap gap =
      gapOf({distance("Frame", Axis::x, "P", "R", 1), distance("Frame", Axis::x, "Q", "R", -1)});
  const GapStack once = added(job, gap);
  ASSERT_EQ(once.stack.members.size(), 1u);
  EXPECT_EQ(memberName(once.stack.members[0]), "r2");
  EXPECT_EQ(once.stack.worst, (Span{2 * kInch, 2004 * kThou}));
  // Two frames side by side are two pieces.
  job.parts[0].quantity = 2;
  const GapStack two = added(job, gap);
  EXPECT_EQ(two.stack.members.size(), 3u);
  EXPECT_EQ(two.stack.nominal, Rational(2 * kInch));
  EXPECT_EQ(two.stack.worst, (Span{2 * kInch - kInch / 32, 2004 * kThou + kInch / 32}));
}

TEST(Gap, TheSameLengthTwiceIsTwiceAsWrong) {
  const GapStack twice = added(frameAndArbor(), gapOf({distance("Arbor", Axis::x, "S", "M", 1),
                                                       distance("Arbor", Axis::x, "S", "M", 1)}));
  ASSERT_EQ(twice.stack.members.size(), 1u);
  EXPECT_EQ(twice.stack.members[0].factor, Rational(2));
  EXPECT_EQ(twice.stack.rss, (Span{1996 * kThou, 2004 * kThou}));
}

TEST(Gap, PitchesOfARowAreMembersEach) {
  Job job;
  job.parts = {partFrom("row D x 4 .500 ±.002")};
  job.parts[0].name = "Rack";
  const GapStack rack = added(job, gapOf({distance("Rack", Axis::x, "D1", "D4", 1)}));
  EXPECT_EQ(rack.stack.nominal, Rational(1500 * kThou));
  EXPECT_EQ(rack.stack.worst, (Span{1494 * kThou, 1506 * kThou}));
}

// RC4 on 1/4 in: clearance .0005 to .0020 (ANSI B4.1), so the shaft may lie .0010 to either side.
TEST(Gap, AFitStraysHalfItsGreatestClearance) {
  for (const int sign : {1, -1}) {
    GapMember fit = fitted("RC4", "1/4");
    fit.sign = sign;
    const GapStack play = added(Job{}, gapOf({length("1.000 ±.001", 1), fit}));
    EXPECT_EQ(play.stack.nominal, Rational(kInch));
    EXPECT_EQ(play.stack.worst, (Span{998 * kThou, 1002 * kThou}));
    EXPECT_EQ(memberName(play.stack.members[1]), "fit RC4 on 1/4");
  }
}

TEST(Gap, ATightFitDoesNotStray) {
  const GapStack play = added(Job{}, gapOf({length("1.000 ±.001", 1), fitted("FN2", "1/4")}));
  EXPECT_EQ(play.stack.worst, (Span{999 * kThou, 1001 * kThou}));
  EXPECT_EQ(play.stack.members[1].share, 0);
}

TEST(Gap, MeasuredSizesGoInAsTheyStand) {
  const GapStack exact = added(Job{}, gapOf({measured(".2505", ".2495")}));
  EXPECT_EQ(exact.stack.nominal, Rational(0));
  EXPECT_EQ(exact.stack.worst, (Span{-kThou / 2, kThou / 2}));
  const GapStack limits = added(Job{}, gapOf({measured(".2500/.2506", ".2490 +.0000 -.0004")}));
  EXPECT_EQ(limits.stack.worst, (Span{-kThou, kThou}));
  const GapStack tight = added(Job{}, gapOf({measured(".2495", ".2505")}));
  EXPECT_EQ(tight.stack.worst, (Span{0, 0}));
}

// A press fit is taken up to a 64th of an inch, .015625; from there on it is the wrong hole.
TEST(Gap, AShaftAWholeSixtyFourthTooLargeIsInTheWrongHole) {
  EXPECT_TRUE(gapStack(Job{}, gapOf({measured("1", "1.01562")})).ok());
  EXPECT_TRUE(gapStack(Job{}, gapOf({measured("1", "1.01550 +.0001 -.0001")})).ok());
  for (const char* shaft : {"1.015625", "1 1/64", "1 1/32", "2"}) {
    const auto stack = gapStack(Job{}, gapOf({measured("1", shaft)}));
    ASSERT_FALSE(stack.ok()) << shaft;
    EXPECT_NE(stack.error().text.find("the shaft is larger than its hole by"), std::string::npos);
  }
}

// 1/4 in a normal hole of 9/32 (ASME B18.2.8): 1/32 clearance, so 1/64 to either side; M3 in a
// medium one of 3.4 mm (ISO 273): 0.2 mm.
TEST(Gap, AScrewInItsClearanceHoleStraysHalfOfWhatIsLeft) {
  const GapStack inch = added(Job{}, gapOf({screwed("1/4-20", "normal")}));
  EXPECT_EQ(inch.stack.nominal, Rational(0));
  EXPECT_EQ(inch.stack.worst, (Span{-kInch / 64, kInch / 64}));
  EXPECT_EQ(memberName(inch.stack.members[0]), "1/4-20 UNC in normal hole 9/32");
  const GapStack metric = added(Job{}, gapOf({length("10 mm BSC", 1), screwed("M3", "medium")}));
  const std::int64_t mm = Length::kTicksPerMillimetre;
  EXPECT_EQ(metric.stack.worst, (Span{10 * mm - mm / 5, 10 * mm + mm / 5}));
}

TEST(Gap, AScrewGoesThroughAHoleAsItIsLettered) {
  GapMember member = screwed("#8-32", "");
  member.hole = lettered(".180 +.004 -.000");
  member.name = "bridge screw";
  const GapStack wide = added(Job{}, gapOf({member}));
  EXPECT_EQ(wide.stack.worst, (Span{-10 * kThou, 10 * kThou}));
  EXPECT_EQ(memberName(wide.stack.members[0]), "bridge screw");
  member.hole = lettered(".136");  // its tapping drill: the screw is held
  EXPECT_EQ(added(Job{}, gapOf({member})).stack.worst, (Span{0, 0}));
}

TEST(Gap, ALengthTakesTheTitleBlockOfItsPart) {
  const Job job = frameAndArbor();
  EXPECT_EQ(added(job, gapOf({length("1/2", 1, "Arbor")})).stack.worst,
            (Span{kInch / 2 - kInch / 128, kInch / 2 + kInch / 128}));
  EXPECT_EQ(added(job, gapOf({length("1/2", 1)})).stack.worst,
            (Span{kInch / 2 - kInch / 64, kInch / 2 + kInch / 64}));
  EXPECT_EQ(added(job, gapOf({length("1/2 BSC", 1)})).stack.worst, (Span{kInch / 2, kInch / 2}));
}

// A screw 3/8 long under the head through a plate of 1/8 and a washer of .030: what is left
// engages the thread.
TEST(Gap, EngagementOfAScrewIsAGapLikeAnyOther) {
  Gap gap =
      gapOf({length(".375 +.000 -.020", 1), length("1/8 ±1/64", -1), length(".030 ±.002", -1)});
  gap.members[0].name = "screw";
  gap.least = lettered(".180");
  const GapStack engaged = added(Job{}, gap);
  EXPECT_EQ(memberName(engaged.stack.members[0]), "screw");
  EXPECT_EQ(engaged.stack.nominal, Rational(220 * kThou));
  EXPECT_EQ(engaged.stack.worst.low, 220 * kThou - 22 * kThou - kInch / 64);
  EXPECT_EQ(engaged.beyond(engaged.stack.worst), Span{});
}

struct Refused {
  GapMember member;
  ErrorCode code;
  const char* place;
  const char* says;
};

TEST(Gap, WhatCantBeAddedUpIsRefusedWithItsPlace) {
  GapMember lettersOnly;
  GapMember two = length("1/2", 1);
  two.fit = "RC4";
  GapMember noSize;
  noSize.fit = "RC4";
  GapMember noFit;
  noFit.size = lettered("1/4");
  GapMember noShaft;
  noShaft.hole = lettered("1/4");
  GapMember noHole;
  noHole.shaft = lettered("1/4");
  GapMember screwAndSize = screwed("1/4-20", "close");
  screwAndSize.size = lettered("1/4");
  GapMember screwAndShaft = screwed("1/4-20", "close");
  screwAndShaft.shaft = lettered("1/4");
  GapMember screwInBoth = screwed("1/4-20", "close");
  screwInBoth.hole = lettered(".266");
  GapMember noAxis = distance("Frame", Axis::x, "P", "Q", 1);
  noAxis.axis.reset();
  const std::vector<Refused> cases = {
      {lettersOnly, ErrorCode::badRequest, "/members/1", "one of"},
      {two, ErrorCode::badRequest, "/members/1", "one of"},
      {noSize, ErrorCode::badRequest, "/members/1/size", "size"},
      {noFit, ErrorCode::badRequest, "/members/1/fit", "H7/g6"},
      {noShaft, ErrorCode::badRequest, "/members/1/shaft", "shaft"},
      {noHole, ErrorCode::badRequest, "/members/1/hole", "hole"},
      {noAxis, ErrorCode::badRequest, "/members/1/axis", "axis"},
      {distance("", Axis::x, "P", "Q", 1), ErrorCode::badRequest, "/members/1/part", "part"},
      {distance("Frame", Axis::x, "", "Q", 1), ErrorCode::badRequest, "/members/1/from", "from"},
      {distance("Frame", Axis::x, "P", "", 1), ErrorCode::badRequest, "/members/1/to", "to where"},
      {distance("Clock", Axis::x, "P", "Q", 1), ErrorCode::notFound, "/members/1/part", "Clock"},
      {distance("Frame", Axis::x, "P", "Z9", 1), ErrorCode::notFound, "/members/1/to",
       "Frame: the part has no place Z9"},
      {distance("Frame", Axis::x, "Z9", "P", 1), ErrorCode::notFound, "/members/1/from", "Z9"},
      {distance("Frame", Axis::y, "P", "Q", 1), ErrorCode::badRequest, "/members/1/from", "along"},
      {length("1/2", 1, "Clock"), ErrorCode::notFound, "/members/1/part", "Clock"},
      {fitted("H7/q6", "1/4"), ErrorCode::notFound, "/members/1/fit", "grades"},
      {screwAndSize, ErrorCode::badRequest, "/members/1", "one of"},
      {screwAndShaft, ErrorCode::badRequest, "/members/1", "one of"},
      {screwInBoth, ErrorCode::badRequest, "/members/1/screw", "either"},
      {screwed("1/4-20", ""), ErrorCode::badRequest, "/members/1/screw", "either"},
      {screwed("1/4-20", "snug"), ErrorCode::badText, "/members/1/fit", "close, normal"},
      {screwed("M4", "clear"), ErrorCode::notFound, "/members/1/fit", "medium"},
      {screwed("1/4-21", "close"), ErrorCode::notFound, "/members/1/screw", "1/4-20"},
      {fitted("RC4", "12"), ErrorCode::notFound, "/members/1/fit", "up to"},
  };
  for (const Refused& one : cases) {
    const auto stack = gapStack(frameAndArbor(), gapOf({length("1", 1), one.member}));
    ASSERT_FALSE(stack.ok()) << one.place;
    EXPECT_EQ(stack.error().code, one.code) << one.place;
    EXPECT_EQ(stack.error().place, one.place);
    EXPECT_NE(stack.error().text.find(one.says), std::string::npos) << stack.error().text;
  }
  Gap upsideDown = gapOf({length("1", 1)});
  upsideDown.least = lettered(".010");
  upsideDown.greatest = lettered(".005");
  EXPECT_EQ(gapStack(Job{}, upsideDown).error().place, "/greatest");
  EXPECT_EQ(gapStack(Job{}, gapOf({})).error().place, "/members");
  EXPECT_EQ(gapStack(Job{}, gapOf({length("1", 1)}), 0.5).error().code, ErrorCode::badRequest);
  Job loose = frameAndArbor();
  loose.parts[0].readings.erase(loose.parts[0].readings.begin() + 1);
  EXPECT_EQ(gapStack(loose, gapOf({distance("Frame", Axis::x, "P", "Q", 1)})).error().code,
            ErrorCode::unsolvable);
}

TEST(Gap, FaultsOfAJobPointFromItsRoot) {
  Job job = frameAndArbor();
  job.gaps = {gapOf({length("1", 1)}), gapOf({distance("Clock", Axis::x, "P", "Q", 1)})};
  const auto faults = gapFaults(job);
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].place, "/gaps/1/members/0/part");
}

// Whatever the members, the worst case is the sum of their own worst cases, and no draw leaves it.
TEST(Gap, RandomGapsAddUpMemberByMember) {
  const std::uint32_t seed = 20'261'125;
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  const auto upTo = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  for (int round = 0; round < 200; ++round) {
    std::vector<GapMember> members;
    std::int64_t low = 0, high = 0, nominal = 0;
    for (int i = upTo(8) + 1; i > 0; --i) {
      const int sign = upTo(2) == 0 ? 1 : -1;
      const int size = 100 + upTo(900), plus = upTo(6) + 1, minus = upTo(6) + 1;
      if (upTo(3) == 0) {
        members.push_back(
            measured("." + std::to_string(size) + " +.00" + std::to_string(plus) + " -.000",
                     "." + std::to_string(size) + " +.000 -.00" + std::to_string(minus)));
        low -= (plus + minus) * kThou;
        high += (plus + minus) * kThou;
      } else {
        members.push_back(length("." + std::to_string(size) + " +.00" + std::to_string(plus) +
                                     " -.00" + std::to_string(minus),
                                 sign));
        nominal += 2 * sign * size * kThou;
        low += 2 * kThou * (sign > 0 ? size - minus : -size - plus);
        high += 2 * kThou * (sign > 0 ? size + plus : -size + minus);
      }
    }
    const GapStack sum = added(Job{}, gapOf(members));
    EXPECT_EQ(sum.stack.nominal, Rational(nominal / 2));
    EXPECT_EQ(sum.stack.worst, (Span{low / 2, high / 2}));
    EXPECT_GE(sum.stack.rss.low, sum.stack.worst.low - 1);
    EXPECT_LE(sum.stack.rss.high, sum.stack.worst.high + 1);
  }
}

}  // namespace
}  // namespace inchwright
