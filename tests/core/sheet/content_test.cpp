// What stands on a sheet, and when.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "core/say/doubt_words.h"
#include "core/sheet/bounds.h"
#include "core/sheet/sheet_number.h"
#include "tests/core/sheet/made_sheet.h"

namespace inchwright {
namespace {

std::string allText(const std::vector<Page>& pages) {
  std::string all;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + " ";
    }
  }
  return all;
}

bool has(const std::string& all, const std::string& words) {
  return all.find(words) != std::string::npos;
}

std::string numberOf(const MadeSheet& made) {
  const std::string all = allText(made.pages());
  const std::size_t at = all.find("SHEET ") + 6;
  return all.substr(at, all.find(" EDITION") - at);
}

/// Squares of a tick box's size, from the rows on.
std::size_t tickBoxes(const std::vector<Page>& pages, double size) {
  std::size_t count = 0;
  for (const Page& page : pages) {
    for (const DrawItem& item : page.items) {
      const auto* shape = std::get_if<PolylineItem>(&item);
      if (!shape || !shape->closed || shape->filled || shape->points.size() != 4) continue;
      const double width = shape->points[1].x - shape->points[0].x;
      if (std::abs(width - size) < 1e-6) ++count;
    }
  }
  return count;
}

TEST(SheetContent, HeadSaysWhatTheSheetIsFor) {
  const std::string all = allText(frontPlate().pages());
  for (const char* words : {"Front plate", "INCHES", "step 0.0005", "SETUP 1", "top face up",
                            "not turned", "make two in brass", "sheet 2, second edition",
                            "Clock plates", "2026-11-25", "1 of 2", "DRAFT"}) {
    EXPECT_TRUE(has(all, words)) << words;
  }
  EXPECT_TRUE(has(allText(inMillimetres(frontPlate()).pages()), "MILLIMETRES"));
}

// Accepted doubts of every kind stay on the sheet: a centre distance that is not placed too.
TEST(SheetContent, WhatWasLookedAtAndLetStandStaysOnTheSheet) {
  MadeSheet made = settledPlate(Paper::a4);
  made.solution.doubts.push_back(asked("the centre distance A to C is kept, not placed"));
  EXPECT_TRUE(has(allText(made.pages()), "OPEN QUERIES: 1"));
  made.solution.doubts.back().accepted = true;
  const std::string all = allText(made.pages());
  EXPECT_TRUE(has(all, "LOOKED AT AND LET STAND"));
  EXPECT_TRUE(has(all, "the centre distance A to C"));
  EXPECT_FALSE(has(all, "OPEN QUERIES"));
  EXPECT_FALSE(has(all, "ASSUMED AND ACCEPTED"));
}

// The circles of holes in dispute are dashed and their names bear a question mark.
TEST(SheetContent, DisputedHolesAreDrawnAndNamedSo) {
  const auto dashed = [](const std::vector<Page>& pages) {
    std::size_t count = 0;
    for (const DrawItem& item : pages[0].items) {
      const auto* circle = std::get_if<CircleItem>(&item);
      count += circle && circle->filled && !circle->stroke.dash.empty();
    }
    return count;
  };
  const MadeSheet draft = frontPlate();
  const auto disputed = static_cast<std::size_t>(
      std::count_if(draft.picture.circles.begin(), draft.picture.circles.end(),
                    [](const DrawnHole& hole) { return hole.disputed; }));
  EXPECT_GT(disputed, 0u);
  EXPECT_LT(disputed, draft.picture.circles.size());
  EXPECT_EQ(dashed(draft.pages()), disputed);
  EXPECT_TRUE(has(allText(draft.pages()), "F2 ?"));
  EXPECT_TRUE(has(allText(draft.pages()), "Dashed holes with ? are in dispute."));
  EXPECT_EQ(dashed(settledPlate(Paper::a4).pages()), 0u);
  EXPECT_FALSE(has(allText(settledPlate(Paper::a4).pages()), " ? "));
}

// Finding zero stands on two pages at most, in boxes that are closed.
TEST(SheetContent, FindingZeroIsNotTornBetweenPages) {
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    for (const double distance : {700.0, 1000.0, 1300.0}) {
      MadeSheet made = settledPlate(paper);
      made.options.readingDistance = distance;
      const std::vector<Page> pages = made.pages();
      std::set<std::size_t> on;
      for (std::size_t i = 0; i < pages.size(); ++i) {
        const std::string all = allText({pages[i]});
        for (const char* box : {"X0 ", "Y0 ", "Z0 "}) {
          if (has(all, box)) on.insert(i);
        }
      }
      EXPECT_LE(on.size(), 2u) << distance;
    }
  }
}

TEST(SheetContent, ASettledSheetIsNoDraft) {
  const std::string all = allText(settledPlate(Paper::a4).pages());
  EXPECT_FALSE(has(all, "DRAFT"));
  EXPECT_FALSE(has(all, "QUERIES"));
  EXPECT_FALSE(has(all, "DISPUTED"));
}

TEST(SheetContent, QueriesStandOnADraftAndAcceptedOnesAreNamed) {
  MadeSheet made = frontPlate();
  std::string all = allText(made.pages());
  EXPECT_TRUE(has(all, "OPEN QUERIES: 2"));
  EXPECT_TRUE(has(all, "DISPUTED"));
  for (Doubt& doubt : made.solution.doubts) doubt.accepted = true;
  all = allText(made.pages());
  EXPECT_FALSE(has(all, "OPEN QUERIES"));
  EXPECT_TRUE(has(all, "ASSUMED AND ACCEPTED"));
  EXPECT_FALSE(has(all, "DRAFT"));
}

// Breaking the edges, done in one go at the end, has one for all.
TEST(SheetContent, EveryOperationHasATickBox) {
  const MadeSheet made = settledPlate(Paper::a4);
  std::size_t steps = 0;
  for (const TableRow& row : made.table.rows) steps += fittingsOf(*row.plan).size() - 1;
  EXPECT_EQ(tickBoxes(made.pages(), 6.2), steps + 1);
  EXPECT_TRUE(has(allText(made.pages()), "BREAK THE EDGES"));
}

TEST(SheetContent, DirectChecksOnlyWhenThereAreSome) {
  MadeSheet made = settledPlate(Paper::a4);
  EXPECT_FALSE(has(allText(made.pages()), "MEASURE ON THE PART"));
  made.options.directChecks = {"A to C: 2.500"};
  EXPECT_TRUE(has(allText(made.pages()), "MEASURE ON THE PART"));
  EXPECT_TRUE(has(allText(made.pages()), "A to C: 2.500"));
}

TEST(SheetContent, ClosenessOnlyWhenAskedFor) {
  MadeSheet made = settledPlate(Paper::a4);
  EXPECT_FALSE(has(allText(made.pages()), "HOW CLOSE TO WORK"));
  Closeness closeness;
  const Length four = Length::ticks(4 * 2'540'000);
  closeness.bands = {{MachineAxis::x, four, {"A", "B"}},
                     {MachineAxis::y, four, {"B"}},
                     {MachineAxis::x, Length::ticks(8 * 2'540'000), {"C"}}};
  closeness.aims = {{"C", MachineAxis::x, inches(1.5, made.table.step)}};
  closeness.directChecks = {{{SourceKind::reading, 0}, MachineAxis::x, {}, {}}};
  ClosenessAdvice advice;
  advice.places = {"A"};
  advice.plusMinus = four;
  advice.readings = {{SourceKind::reading, 0}};
  closeness.advice = {advice};
  made.options.closeness = closeness;
  const std::string all = allText(made.pages());
  for (const char* words :
       {"HOW CLOSE TO WORK", "\u00B10.0040", "X: A, B \u00B7 Y: B", "\u00B10.0080", "X: C",
        "Aim at C X +1.5000", "Hold A to \u00B10.0040 along X: 11/16 (L to A) asks for it.",
        "MEASURE ON THE PART", "L to A along X: 11/16"}) {
    EXPECT_TRUE(has(all, words)) << words;
  }
}

TEST(SheetContent, ManyPlacesOfTheWidestBandAreNotNamedOneByOne) {
  MadeSheet made = settledPlate(Paper::a4);
  const std::vector<Id> many{"A", "B", "C", "D", "E", "F", "G"};
  const Length thou = Length::ticks(2'540'000);
  made.options.closeness = Closeness{{{MachineAxis::x, thou, many},
                                      {MachineAxis::y, thou, many},
                                      {MachineAxis::x, Length::ticks(2 * 2'540'000), many}},
                                     {},
                                     {},
                                     {}};
  const std::string all = allText(made.pages());
  EXPECT_TRUE(has(all, "X: A, B, C, D, E, F, G \u00B7 Y: all ")) << all;
  EXPECT_TRUE(has(all, "X: all others")) << all;
}

TEST(SheetContent, RoundingOnlyWhenAskedFor) {
  MadeSheet made = settledPlate(Paper::a4);
  EXPECT_FALSE(has(allText(made.pages()), "rounded by"));
  made.options.showRounding = true;
  // H stands at 23/32 = 0.71875, shown as 0.7190: 0.00025 more.
  EXPECT_TRUE(has(allText(made.pages()), "rounded by X 0.00025, Y 0.00025"));
}

TEST(SheetContent, WhatHasNoCoordinatesIsNamed) {
  MadeSheet made = settledPlate(Paper::a4);
  made.table.unplaced = {{"Q", Axis::y, Loose::Lacks::distance, {}, "F"}};
  const std::string all = allText(made.pages());
  EXPECT_TRUE(has(all, "Q is not on this sheet"));
  EXPECT_TRUE(has(all, "give its distance"));
}

// What lies loose along an axis of this sheet is told once, under MIND; what lies loose along
// another, or in another place, is told in full among the doubts.
TEST(SheetContent, OnlyWhatStandsUnderMindIsNotToldAgain) {
  MadeSheet made = settledPlate(Paper::a4);
  made.table.unplaced = {{"Q", Axis::y, Loose::Lacks::distance, {}, "F"}};
  made.solution.loose = {{"Q", Axis::y, Loose::Lacks::distance, {}, "F"},
                         {"Q", Axis::z, Loose::Lacks::distance, {}, "F"},
                         {"P", Axis::y, Loose::Lacks::distance, {}, "F"}};
  made.solution.doubts.clear();
  for (std::size_t i = 0; i < made.solution.loose.size(); ++i) {
    Doubt doubt;
    doubt.key.topic = DoubtTopic::loose;
    doubt.key.places = {made.solution.loose[i].id};
    doubt.key.axis = made.solution.loose[i].axis;
    doubt.index = i;
    made.solution.doubts.push_back(doubt);
  }
  const std::string all = allText(made.pages());
  EXPECT_TRUE(has(all, "Not placed yet, as under MIND: Q")) << all;
  EXPECT_FALSE(has(all, "Q: nothing says where it lies along Y")) << all;
  EXPECT_TRUE(has(all, "Q: nothing says where it lies along Z")) << all;
  EXPECT_TRUE(has(all, "P: nothing says where it lies along Y")) << all;
}

TEST(SheetContent, SaysThatEarlierSheetsAreToGo) {
  const std::string all = allText(frontPlate().pages());
  EXPECT_TRUE(has(all, "replaces every earlier one of this part and setup: destroy those."));
  EXPECT_TRUE(has(all, "qualified practice"));
}

TEST(SheetNumber, ChangesWithEveryFigureAndWithNothingElse) {
  const MadeSheet made = frontPlate();
  const std::string number = numberOf(made);
  MadeSheet other = made;
  other.options.date = "2027-01-01";
  other.options.readingDistance = 1500;
  EXPECT_EQ(numberOf(other), number);
  other = made;
  other.table.rows[4].y = inches(2.0005, other.table.step);
  EXPECT_NE(numberOf(other), number);
  other = made;
  other.job.print = "sheet 2, third edition";
  EXPECT_NE(numberOf(other), number);
  EXPECT_NE(numberOf(inMillimetres(made)), number);
}

// Found by hand: with another finder the presets differ, and the sheet bore the same number.
TEST(SheetNumber, FollowsFromEverythingOnThePage) {
  const MadeSheet made = frontPlate();
  std::set<std::string> numbers{numberOf(made)};
  const auto expectNew = [&](const char* what, const auto& change) {
    MadeSheet other = made;
    change(other);
    other.plan();
    EXPECT_TRUE(numbers.insert(numberOf(other)).second) << what;
  };
  expectNew("finder", [](MadeSheet& one) { one.job.machine.finder = lettered("0.500"); });
  expectNew("finder assumed", [](MadeSheet& one) { one.job.machine.finder.reset(); });
  expectNew("note", [](MadeSheet& one) { one.part.features[4].note = "after hardening"; });
  expectNew("stop", [](MadeSheet& one) { one.part.setups[0].stop = Side::right; });
  expectNew("jaw", [](MadeSheet& one) { one.part.setups[0].jaw.reset(); });
  expectNew("stock", [](MadeSheet& one) {
    one.part.setups[0].stock[static_cast<std::size_t>(Side::back)] = lettered("1/32");
  });
  expectNew("check", [](MadeSheet& one) { one.part.setups[0].checks = {"A"}; });
  expectNew("material", [](MadeSheet& one) { one.part.material = "steel"; });
  expectNew("hand", [](MadeSheet& one) { one.part.hand = "right"; });
  expectNew("pieces", [](MadeSheet& one) { one.part.quantity = 3; });
  expectNew("job", [](MadeSheet& one) { one.job.title = "Clock"; });
  expectNew("query", [](MadeSheet& one) {
    one.solution.clashes.at(0).missesBy = Rational(Length::kTicksPerInch);
  });
  expectNew("accepted", [](MadeSheet& one) { one.solution.doubts[0].accepted = true; });
  expectNew("to measure", [](MadeSheet& one) { one.options.directChecks = {"A to C"}; });
  expectNew("rounding", [](MadeSheet& one) { one.options.showRounding = true; });
  expectNew("counts", [](MadeSheet& one) { one.job.machine.xCounts = CountsX::left; });
  expectNew("drawn size",
            [](MadeSheet& one) { one.part.features[4].drilled()->seatDiameter = lettered("1/2"); });
  MadeSheet american = made;
  american.options.english = English::us;
  EXPECT_EQ(numberOf(american), numberOf(made));
}

// Long enough that chance plays no part: 20 000 sheets that differ in one figure by a step.
TEST(SheetNumber, IsSharedByNoOther) {
  MadeSheet made = settledPlate(Paper::a4);
  std::set<std::string> numbers;
  const SetupWords words = setupWords(made.part, made.table);
  const std::vector<std::string> doubts = doubtTexts(made.part, made.solution);
  for (int i = 0; i < 20'000; ++i) {
    made.table.rows[0].x = coordinate(i * 1'270'000LL, made.table.step);
    numbers.insert(sheetNumber({made.job,
                                made.part,
                                made.solution,
                                made.table,
                                nullptr,
                                made.options,
                                Style(1000),
                                {},
                                words,
                                doubts}));
  }
  EXPECT_EQ(numbers.size(), 20'000u);
  EXPECT_EQ(numbers.begin()->size(), std::string("1.1 ACDE-ACDE-ACDE").size());
}

TEST(SheetContent, TheSameInputGivesTheSamePages) {
  EXPECT_EQ(frontPlate().pages(), frontPlate().pages());
}

TEST(SheetContent, TwoRowsOfADifferentGroupEachHaveTheirTools) {
  const std::string all = allText(settledPlate(Paper::a4).pages());
  EXPECT_TRUE(has(all, "SPOT \u00B7 DRILL C \u00B7 REAM 1/4 \u00B7 DEBURR"));
  EXPECT_TRUE(has(all, "SPOT \u00B7 DRILL #43 \u00B7 TAP #4-40 UNC"));
}

TEST(SheetContent, PointsStandBelowEachOther) {
  const MadeSheet made = settledPlate(Paper::a4);
  for (const Page& page : made.pages()) {
    std::vector<double> lefts;
    for (const DrawItem& item : page.items) {
      const auto* text = std::get_if<TextItem>(&item);
      if (!text || text->height != 8 || text->text.find('.') == std::string::npos) continue;
      TextItem whole = *text;
      whole.text = text->text.substr(0, text->text.find('.'));
      lefts.push_back(boundsOf(whole).right);
    }
    // One point for X, one for Y.
    std::sort(lefts.begin(), lefts.end());
    const auto last = std::unique(lefts.begin(), lefts.end(),
                                  [](double a, double b) { return std::abs(a - b) < 1e-6; });
    EXPECT_LE(last - lefts.begin(), 2);
  }
}

}  // namespace
}  // namespace inchwright
