#include "core/turned/lathe_work.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "tests/core/turned/arbor.h"

namespace inchwright {
namespace {

TEST(LatheWork, CountsFromTheFacedEndTowardsTheChuck) {
  Arbor arbor = stepped();
  arbor.held(Side::left);
  EXPECT_EQ(rowsOf(arbor.work()),
            "A 1.750 0.500\n"
            "B 1.250 0.750\n"
            "C 1.000 0.375\n");
  // The other end in the chuck: the same, from the left end.
  Arbor turned = stepped();
  turned.held(Side::right);
  EXPECT_EQ(rowsOf(turned.work()),
            "A 0.500 0.500\n"
            "B 0.750 0.750\n"
            "C 1.750 0.375\n");
}

TEST(LatheWork, FollowsTheReadout) {
  Arbor arbor = stepped();
  arbor.held(Side::left);
  Lathe lathe;
  lathe.carriageCounts = CarriageCounts::right;
  lathe.crossCounts = CrossCounts::radius;
  lathe.unit = Unit::millimetre;
  lathe.step = "0.005";
  EXPECT_EQ(rowsOf(arbor.work(0, lathe)),
            "A -44.450 6.350\n"
            "B -31.750 9.525\n"
            "C -25.400 4.765\n");  // 4.7625 is as near to one step as to the next: away from 0
}

TEST(LatheWork, TakesZeroWhereTheSetupSays) {
  Arbor arbor = stepped();
  arbor.held(Side::left);
  ZeroAlong zero;
  zero.at = "T";
  arbor.part().setups[0].zero.push_back(zero);
  EXPECT_EQ(rowsOf(arbor.work()),
            "A 0.750 0.500\n"
            "B 0.250 0.750\n"
            "C 0.000 0.375\n");
  EXPECT_EQ(arbor.work().zeroAt, "T");
}

TEST(LatheWork, ReachesWhatStandsOut) {
  Arbor arbor = stepped();
  arbor.held(Side::left, "1 1/4").held(Side::right);
  const LatheWork first = arbor.work(0);
  EXPECT_EQ(rowsOf(first), "B 1.250 0.750\nC 1.000 0.375\n");
  EXPECT_EQ(first.inTheChuck, std::vector<Id>{"A"});
  EXPECT_EQ(rowsOf(arbor.work(1)),
            "A 0.500 0.500\n"
            "B 0.750 0.750 done\n"
            "C 1.750 0.375 done\n");
}

TEST(LatheWork, LeavesWhatLiesBehindTheLargestForTheOtherEnd) {
  Arbor arbor = stepped();
  arbor.held(Side::left).held(Side::right);
  EXPECT_EQ(rowsOf(arbor.work(0)), "B 1.250 0.750\nC 1.000 0.375\n");
  EXPECT_EQ(arbor.work(1).whole->text, "1.750");
}

// Worked out by hand on paper. 4 in over all: a journal .375 × 1/2, a taper of 1/2 in per foot that
// is 1 in thick at the collar 2 5/8 further on, a collar 1 1/4 × 1/4, and 5/8 of 1/2-13 thread.
TEST(LatheWork, BothEndsOfAnArborAgainstFiguresByHand) {
  Arbor arbor;
  arbor.edge("L", Side::left).edge("S").edge("T").edge("N").edge("R", Side::right);
  arbor.reads("L", "S", "1/2").reads("S", "T", "2 5/8").reads("T", "N", "1/4").reads("L", "R", "4");
  arbor.outside("A", "L", "S", ".375");
  arbor.add("B", kind::Taper{{"S", "T"}, lettered("1"), {}, {}, lettered("1/2"), "T"});
  arbor.outside("C", "T", "N", "1 1/4");
  arbor.add("D", kind::Screwed{{"N", "R"}, "1/2-13 UNC", Hand::left, lettered("1/16")});
  arbor.held(Side::left, "7/8").held(Side::right);
  const LatheWork first = arbor.work(0);
  // From R: the collar ends 4 − 3 1/8, the thread 4 − 3 3/8 away.
  EXPECT_EQ(rowsOf(first), "C 0.875 1.250\nD 0.625 0.500\n");
  EXPECT_EQ(first.inTheChuck, (std::vector<Id>{"A", "B"}));
  ASSERT_TRUE(first.rows[1].thread);
  EXPECT_EQ(first.rows[1].thread->perInch, 13);
  EXPECT_EQ(first.rows[1].thread->pitch.text, "0.077");
  EXPECT_EQ(first.rows[1].thread->depth.text, "0.047");  // .613435 / 13
  EXPECT_TRUE(first.rows[1].thread->leftHand);
  EXPECT_EQ(first.rows[1].thread->runout, "1/16");
  const LatheWork second = arbor.work(1);
  // From L, and what the first end had is not cut again.
  EXPECT_EQ(rowsOf(second),
            "A 0.500 0.375\n"
            "B 3.125 1.000\n"
            "C 3.375 1.250 done\n"
            "D 4.000 0.500 done\n");
  EXPECT_EQ(second.whole->text, "4.000");
  EXPECT_NEAR(*second.rows[1].topSlide, 1.19349, 1e-5);  // atan(1/48)
  // .109375 over 2 5/8, so 1/6 over 4; half of that.
  EXPECT_EQ(second.rows[1].setOver->text, "0.083");
  EXPECT_EQ(cutsOf(second),
            "face L 0.000 -\n"
            "rough B 3.125 1.020\n"
            "rough A 0.500 0.395\n"
            "finish B 3.125 1.000\n"
            "finish A 0.500 0.375\n"
            "deburr A B - -\n");
}

TEST(LatheWork, SaysWhatAGrooveAndAKnurlWant) {
  Arbor arbor = stepped();
  arbor.held(Side::left, "2");
  arbor.edge("E").reads("E", "R", "3/32");
  arbor.add("G", kind::Groove{{"E", "R"}, lettered(".300")});
  arbor.add("M", kind::Knurl{{"S", "T"}, lettered("1/32"), "diamond"});
  const LatheWork work = arbor.work();
  const auto row = [&](const Id& id) {
    return *std::find_if(work.rows.begin(), work.rows.end(),
                         [&](const LatheRow& one) { return one.id == id; });
  };
  EXPECT_EQ(row("G").width->text, "0.094");
  EXPECT_EQ(row("M").knurl, "diamond, pitch 1/32");
  EXPECT_FALSE(row("A").width);
  EXPECT_TRUE(row("A").knurl.empty());
}

TEST(LatheWork, AShortTaperNeedsNoTailstock) {
  Arbor arbor = stepped();
  arbor.held(Side::left, "2");
  arbor.add("B2", kind::Taper{{"T", "R"}, lettered("3/8"), {}, {}, lettered("1/2"), "T"});
  const LatheWork work = arbor.work();
  EXPECT_FALSE(work.rows.back().setOver);
  EXPECT_TRUE(work.rows.back().topSlide);
}

TEST(LatheWork, CutsInOrder) {
  Arbor arbor = stepped();
  arbor.held(Side::left, "2");
  arbor.edge("E").reads("E", "R", "1/2");
  arbor.add("D", kind::Bored{{"E", "R"}, lettered("1/4")});
  arbor.add("G", kind::Groove{{"E", "R"}, lettered(".300")});
  arbor.add("H", kind::Screwed{{"E", "R"}, "3/8-16 UNC", Hand::right, std::nullopt});
  arbor.add("J", kind::CentreDrill{"R", "#2"});
  arbor.add("K", kind::Chamfer{"R", lettered("1/32"), std::nullopt});
  arbor.add("M", kind::Knurl{{"S", "T"}, std::nullopt, "diamond"});
  arbor.part().setups[0].chucked->partOff = PartOff{lettered("3/32"), ToolCorner::left, {}};
  EXPECT_EQ(cutsOf(arbor.work()),
            "face R 0.000 -\n"
            "centre_drill J 0.000 -\n"
            "rough B 1.250 0.770\n"
            "rough A 1.750 0.520\n"
            "rough C 1.000 0.395\n"
            "drill D 0.500 0.219\n"
            "bore D 0.500 0.250\n"
            "knurl M 1.250 -\n"
            "finish B 1.250 0.750\n"
            "finish A 1.750 0.500\n"
            "finish C 1.000 0.375\n"
            "groove G 0.500 0.300\n"
            "chamfer K 0.000 -\n"
            "thread H 0.500 0.375\n"
            "deburr A B C D G H M - -\n"
            "part_off L 1.844 -\n");
  // By the right corner the tool reads the length itself.
  arbor.part().setups[0].chucked->partOff->corner = ToolCorner::right;
  EXPECT_EQ(arbor.work().cuts.back().length->text, "1.750");
}

TEST(LatheWork, SetsTheTopSlideToHalfATaper) {
  Arbor arbor = stepped();
  arbor.add(
      "T1",
      kind::Taper{{"T", "R"}, lettered("3/4"), std::nullopt, std::nullopt, lettered("1/2"), "T"});
  arbor.held(Side::left);
  const LatheWork work = arbor.work();
  const LatheRow& row = work.rows.back();
  EXPECT_EQ(row.dia->text, "0.750");
  // 1/2 in per foot: 2.3859° included (2 atan (1/48)).
  ASSERT_TRUE(row.topSlide);
  EXPECT_NEAR(*row.topSlide, 1.19348, 1e-5);
  const TurnedStretch* taper = work.shape.stretch("T1");
  EXPECT_EQ(taper->atRight->ticks(), 1'799'166'667);  // 3/4 − 1/24 in, to the nearest tick
}

TEST(TurnedShape, NamesWhatCannotBe) {
  Arbor arbor = stepped();
  arbor.add("G", kind::Groove{{"T", "R"}, lettered("3/8")});
  arbor.add("D", kind::Bored{{"T", "R"}, lettered("7/16")});
  arbor.add("E", kind::Screwed{{"T", "R"}, "nonsense", Hand::right, std::nullopt});
  arbor.add("P",
            kind::Taper{{"T", "R"}, lettered("1/2"), std::nullopt, std::nullopt, std::nullopt, ""});
  arbor.add(
      "Q",
      kind::Taper{{"T", "R"}, lettered("1/2"), lettered("3/8"), std::nullopt, lettered("1"), ""});
  arbor.held(Side::left);
  const TurnedShape shape = arbor.work().shape;
  const auto has = [&](TurnedFaultKind kind, const Id& id, const Id& other, const char* by) {
    return std::find(shape.faults.begin(), shape.faults.end(),
                     TurnedFault{kind, id, other, lettered(by).value}) != shape.faults.end();
  };
  EXPECT_TRUE(has(TurnedFaultKind::grooveTooLarge, "G", "C", "0"));
  EXPECT_TRUE(has(TurnedFaultKind::boreTooLarge, "D", "C", "1/16"));
  EXPECT_TRUE(has(TurnedFaultKind::noSuchThread, "E", "", "0"));
  EXPECT_TRUE(has(TurnedFaultKind::taperUnsaid, "P", "", "0"));
  EXPECT_TRUE(has(TurnedFaultKind::boreTooLarge, "D", "Q", "1/16"));
  EXPECT_TRUE(has(TurnedFaultKind::twoSurfaces, "Q", "C", "0"));
  EXPECT_EQ(shape.faults.size(), 8u);
}

TEST(TurnedShape, NamesWhatCannotBeAtAnEdgeOrComesToNothing) {
  Arbor arbor = stepped();
  arbor.add("M", kind::Chamfer{"R", lettered("10"), std::nullopt});
  arbor.add("N", kind::Chamfer{"R", lettered("1/64"), std::nullopt});
  arbor.add("V", kind::CentreDrill{"T", "#1"});
  arbor.add("W", kind::CentreDrill{"R", "#1"});
  arbor.add("P", kind::Taper{
                     {"T", "R"}, lettered("1/64"), std::nullopt, std::nullopt, lettered("2"), ""});
  arbor.held(Side::left);
  const LatheWork work = arbor.work();
  std::vector<std::pair<TurnedFaultKind, Id>> found;
  for (const TurnedFault& one : work.shape.faults) found.push_back({one.kind, one.id});
  const auto count = [&](TurnedFaultKind kind, const Id& id) {
    return std::count(found.begin(), found.end(), std::pair(kind, id));
  };
  EXPECT_GE(count(TurnedFaultKind::chamferTooLong, "M"), 1);
  EXPECT_EQ(count(TurnedFaultKind::chamferTooLong, "N"), 0);
  EXPECT_EQ(count(TurnedFaultKind::drilledWithin, "V"), 1);
  EXPECT_EQ(count(TurnedFaultKind::drilledWithin, "W"), 0);
  EXPECT_EQ(count(TurnedFaultKind::taperToNothing, "P"), 1);
  EXPECT_TRUE(work.isFaulty());
}

TEST(LatheWork, TellsOfAZeroInTheChuckAndOfWorkHeldByNothing) {
  Arbor arbor = stepped();
  arbor.held(Side::left, "1 3/4");
  EXPECT_FALSE(arbor.work().standsOutTooFar);  // as much as the part is long
  EXPECT_FALSE(arbor.work().zeroInChuck);
  arbor.part().setups[0].chucked->standsOut = lettered("1 49/64");
  EXPECT_TRUE(arbor.work().standsOutTooFar);
  arbor.part().setups[0].chucked->partOff = PartOff{lettered("1/16"), ToolCorner::left, {}};
  EXPECT_FALSE(arbor.work().standsOutTooFar);  // the bar goes on
  ZeroAlong zero;
  zero.at = "L";
  arbor.part().setups[0].zero = {zero};
  EXPECT_TRUE(arbor.work().zeroInChuck);
}

TEST(LatheWork, TellsOfAToolThatWouldComeIntoTheJaws) {
  Arbor arbor = stepped();
  arbor.held(Side::left, "1 13/16");
  arbor.part().setups[0].chucked->partOff = PartOff{lettered("1/16"), ToolCorner::left, {}};
  EXPECT_TRUE(arbor.work().partOffInJaws.isZero());  // 1 3/4 and 1/16: just clear
  arbor.part().setups[0].chucked->standsOut = lettered("1 3/4");
  EXPECT_EQ(arbor.work().partOffInJaws, lettered("1/16").value);
  arbor.part().setups[0].chucked->partOff.reset();
  EXPECT_TRUE(arbor.work().partOffInJaws.isZero());
}

TEST(LatheWork, TellsOfAStretchThatNothingSizes) {
  Arbor arbor = stepped();
  arbor.add("D", kind::Outside{{"T", "R"}, std::nullopt});
  arbor.held(Side::left);
  const LatheWork work = arbor.work();
  EXPECT_EQ(work.shape.faults,
            (std::vector<TurnedFault>{{TurnedFaultKind::noDiameter, "D", "", {}}}));
  EXPECT_EQ(cutsOf(work).find("rough D"), std::string::npos);
}

TEST(LatheWork, IsRefusedWhereItCannotBeWorkedOut) {
  Arbor arbor = stepped();
  arbor.held(Side::left);
  arbor.part().setups[0].chucked.reset();
  const auto solution = solve(arbor.part());
  EXPECT_EQ(latheWork({}, arbor.part(), *solution, arbor.part().setups[0]).error().code,
            ErrorCode::badRequest);
  Arbor loose;
  loose.edge("L", Side::left).edge("R").outside("A", "L", "R", "1/2").held(Side::left);
  const auto free = solve(loose.part());
  EXPECT_EQ(latheWork({}, loose.part(), *free, loose.part().setups[0]).error().code,
            ErrorCode::unsolvable);
}

// .1245 +.0003 shows as .125 at a step of .001, which is over its greatest; .1870 ±.0005 is not.
TEST(LatheWork, TellsAFigureThatTheStepPutsOutsideItsLimits) {
  Arbor arbor;
  arbor.edge("L", Side::left).edge("S").edge("R", Side::right);
  arbor.reads("L", "S", "1/2").reads("S", "R", "1/4");
  arbor.outside("A", "L", "S", ".1870 \u00B1.0005").outside("B", "S", "R", ".1245 +.0003 -.0000");
  arbor.held(Side::left);
  const LatheWork work = arbor.work();
  ASSERT_EQ(work.rows.size(), 2u);
  EXPECT_FALSE(work.rows[0].roundsOut);
  EXPECT_TRUE(work.rows[1].roundsOut);
  EXPECT_EQ(work.rows[1].limits->least, lettered(".1245").value);
  EXPECT_EQ(work.rows[1].limits->greatest, lettered(".1248").value);
  // Half of .1870 is .0935 and shows as .094, which is .188; half of .1245 shows as .062: .124.
  Lathe radius;
  radius.crossCounts = CrossCounts::radius;
  EXPECT_TRUE(arbor.work(0, radius).rows[0].roundsOut);
  EXPECT_TRUE(arbor.work(0, radius).rows[1].roundsOut);
  Lathe fine;
  fine.step = "0.0001";
  EXPECT_FALSE(arbor.work(0, fine).rows[1].roundsOut);
}

// A figure without limits of its own is measured by its general tolerance: nothing is added.
TEST(LatheWork, AddsNoLimitsToAPlainFigure) {
  Arbor arbor;
  arbor.edge("L", Side::left).edge("R", Side::right).reads("L", "R", "1/2");
  arbor.outside("A", "L", "R", "1/4").held(Side::left);
  EXPECT_FALSE(arbor.work().rows.at(0).limits.has_value());
}

/// 3/4 over 1/2, a neck of 3/8 for 1/4, a collar of 5/8 for 1/2, then 1/4 for 3/4 to the right end.
Arbor necked() {
  Arbor arbor;
  arbor.edge("L", Side::left).edge("S").edge("T").edge("U").edge("R", Side::right);
  arbor.reads("L", "S", "1/2").reads("S", "T", "1/4").reads("T", "U", "1/2").reads("U", "R", "3/4");
  arbor.outside("A", "L", "S", "3/4").outside("N", "S", "T", "3/8");
  return arbor.outside("C", "T", "U", "5/8").outside("D", "U", "R", "1/4");
}

const LatheRow& rowOf(const LatheWork& work, const Id& id) {
  static const LatheRow none;
  for (const LatheRow& row : work.rows) {
    if (row.id == id) return row;
  }
  ADD_FAILURE() << "no row " << id;
  return none;
}

TEST(LatheWorkTest, ANeckBehindACollarIsCutBetweenItsShoulders) {
  const LatheWork work = necked().held(Side::left).work();
  EXPECT_EQ(rowOf(work, "N").behind, "C");
  ASSERT_TRUE(rowOf(work, "N").from);
  EXPECT_EQ(rowOf(work, "N").from->text, "1.250");
  EXPECT_EQ(rowOf(work, "N").length.text, "1.500");
  for (const Id id : {"A", "C", "D"}) EXPECT_EQ(rowOf(work, id).behind, "") << id;
  int told = 0;
  for (const Cut& cut : work.cuts) {
    if (cut.of != std::vector<Id>{"N"}) continue;
    EXPECT_EQ(cut.behind, "C");
    ASSERT_TRUE(cut.from);
    EXPECT_EQ(cut.from->text, "1.250");
    ++told;
  }
  EXPECT_EQ(told, 2) << "roughed and finished";
}

TEST(LatheWorkTest, FromTheOtherEndANeckLiesBehindTheLargest) {
  Arbor arbor = necked();
  const LatheWork work = arbor.held(Side::right).work();
  EXPECT_EQ(rowOf(work, "N").behind, "A");
  EXPECT_EQ(rowOf(work, "C").behind, "A");
  EXPECT_EQ(rowOf(work, "A").behind, "");
}

TEST(LatheWorkTest, NoDrillGoesThroughASmallerBoreOrSolidMetal) {
  Arbor arbor = stepped();
  arbor.add("P", kind::Bored{{"S", "T"}, lettered("1/4")});
  arbor.add("Q", kind::Bored{{"T", "R"}, lettered("1/8")});
  const LatheWork recess = arbor.held(Side::left).work();
  EXPECT_EQ(rowOf(recess, "P").behind, "Q");
  EXPECT_EQ(rowOf(recess, "Q").behind, "");
  for (const Cut& cut : recess.cuts) {
    EXPECT_TRUE(cut.op != CutOp::drill || cut.of == std::vector<Id>{"Q"});
  }
  Arbor closed = stepped();
  closed.add("P", kind::Bored{{"S", "T"}, lettered("1/4")});
  const LatheWork shut = closed.held(Side::left).work();
  EXPECT_EQ(rowOf(shut, "P").behind, "P");
  for (const Cut& cut : shut.cuts) EXPECT_NE(cut.op, CutOp::drill);
}

TEST(LatheWorkTest, ABoreThatBeginsWhereALargerOneEndsIsOpen) {
  for (const Side held : {Side::left, Side::right}) {
    const bool fromRight = held == Side::left;
    Arbor graded = stepped();
    graded.add("P", kind::Bored{{fromRight ? "T" : "L", fromRight ? "R" : "S"}, lettered("1/4")});
    graded.add("Q", kind::Bored{{"S", "T"}, lettered("1/8")});
    const LatheWork work = graded.held(held).work();
    EXPECT_EQ(rowOf(work, "P").behind, "");
    EXPECT_EQ(rowOf(work, "Q").behind, "");
  }
}

TEST(LatheWorkTest, ABlindBoreIsDrilledToThePoint) {
  Arbor arbor = stepped();
  arbor.add("P", kind::Bored{{"T", "R"}, lettered("1/4")});
  const auto drillOf = [](const LatheWork& work) {
    for (const Cut& cut : work.cuts) {
      if (cut.op == CutOp::drill) return cut;
    }
    ADD_FAILURE() << "nothing is drilled";
    return Cut{};
  };
  EXPECT_EQ(drillOf(Arbor(arbor).held(Side::left).work()).drillTo, DrillTo::point);
  Arbor through = stepped();
  through.add("P", kind::Bored{{"L", "R"}, lettered("1/4")});
  EXPECT_EQ(drillOf(through.held(Side::left).work()).drillTo, DrillTo::through);
}

}  // namespace
}  // namespace inchwright
