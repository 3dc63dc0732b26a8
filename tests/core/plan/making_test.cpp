#include "core/plan/making.h"

#include <gtest/gtest.h>

#include "tests/core/plan/said.h"

namespace inchwright {
namespace {

using plates::figure;

Feature holeOf(Make make, std::string_view diameter, Unit unit = Unit::inch) {
  Feature hole;
  hole.id = "A";
  hole.shape = kind::Hole{};
  hole.drilled()->make = make;
  if (!diameter.empty()) hole.drilled()->diameter = figure(diameter, unit);
  return hole;
}

/// What is said of a feature and how it is made.
struct Said {
  std::string size;
  std::string run;
  std::string note;
  std::vector<std::string> depths;
};

Said saidOf(const Feature& feature, Unit shown = Unit::inch) {
  const Making making = makingOf(feature);
  Said said{sizeWords(feature, shown, English::uk), {}, {}, {}};
  TableRow row;
  row.faults = making.faults;
  said.note = noteWords(feature, row, English::uk);
  for (const MakingStep& step : making.steps) {
    said.run += (said.run.empty() ? "" : " + ") + toolName(step, shown, English::uk);
    said.depths.push_back(depthText(step, shown));
  }
  return said;
}

struct MakingRow {
  Make make;
  const char* diameter;
  const char* size;
  const char* run;
};

TEST(MakingOf, ChoosesTheRunOfTools) {
  const MakingRow kRows[] = {
      {Make::drill, "1/4", "Ø1/4 drill, through", "spot + 1/4"},
      {Make::drill, "0.201", "Ø0.201 drill, through", "spot + #7"},
      {Make::drill, ".234", "Ø.234 drill, through", "spot + A"},
      {Make::drill, "Ø 3/16", "Ø3/16 drill, through", "spot + 3/16"},
      {Make::drill, "1/4 DIA", "Ø1/4 drill, through", "spot + 1/4"},
      {Make::drill, "1 1/8", "Ø1 1/8 drill, through", "spot + drill to 1 1/8"},
      {Make::ream, "1/4", "Ø1/4 ream, through", "spot + 15/64 + ream 1/4"},
      {Make::ream, "1/8", "Ø1/8 ream, through", "spot + 7/64 + ream 1/8"},
      {Make::ream, "1 1/2", "Ø1 1/2 ream, through",
       "spot + drill and bore under 1 1/2 + ream 1 1/2"},
      {Make::bore, "3/4", "Ø3/4 bore, through", "spot + 23/32 + bore to 3/4"},
  };
  for (const MakingRow& row : kRows) {
    const Feature hole = holeOf(row.make, row.diameter);
    const Said said = saidOf(hole);
    EXPECT_EQ(said.size, row.size);
    EXPECT_EQ(said.run, row.run) << row.diameter;
    for (const MakingStep& step : makingOf(hole).steps) EXPECT_FALSE(step.rule.empty());
  }
}

TEST(MakingOf, DrillsMetricHolesWithMetricDrills) {
  const Said metric = saidOf(holeOf(Make::ream, "6", Unit::millimetre), Unit::millimetre);
  EXPECT_EQ(metric.run, "spot + 5.8 mm + ream 6");
  const Said inches = saidOf(holeOf(Make::drill, "6.5 mm"));
  EXPECT_EQ(inches.size, "Ø6.5 mm drill, through");
  EXPECT_EQ(inches.run, "spot + 6.5 mm");
}

TEST(MakingOf, TapsByTheTableOfThreads) {
  Feature hole = holeOf(Make::tap, "");
  hole.drilled()->thread = "1/4-20 UNC";
  hole.drilled()->depth.through = false;
  hole.drilled()->depth.length = figure("3/8");
  const Making making = makingOf(hole);
  EXPECT_EQ(saidOf(hole).size, "1/4-20 UNC tap, 3/8 deep");
  EXPECT_EQ(saidOf(hole).run, "spot + #7 + tap 1/4-20 UNC");
  ASSERT_EQ(making.steps.size(), 3u);
  EXPECT_EQ(making.steps[1].diameter.ticks(), 2010 * 254'000LL);
  EXPECT_EQ(saidOf(hole).depths[1], "3/8");
  EXPECT_NE(making.steps[1].rule.find("deeper"), std::string::npos);
  EXPECT_TRUE(making.faults.empty());
}

TEST(MakingOf, AnUnknownThreadIsNotedNotRefused) {
  Feature hole = holeOf(Make::tap, "");
  hole.drilled()->thread = "9/7-3 odd";
  EXPECT_EQ(saidOf(hole).run, "spot + drill tapping size for 9/7-3 odd + tap 9/7-3 odd");
  EXPECT_FALSE(saidOf(hole).note.empty());
  hole.drilled()->thread.clear();
  EXPECT_EQ(saidOf(hole).run,
            "spot + drill tapping size for thread not given + tap thread not given");
  EXPECT_EQ(saidOf(hole).note, "the print gives no thread");
}

TEST(MakingOf, SinksSeats) {
  Feature hole = holeOf(Make::counterbore, "1/4");
  hole.drilled()->seatDiameter = figure("7/16");
  hole.drilled()->seatDepth = figure("1/8");
  EXPECT_EQ(saidOf(hole).size, "Ø1/4 drill, through; counterbore Ø7/16, 1/8 deep");
  EXPECT_EQ(saidOf(hole).run, "spot + 1/4 + counterbore 7/16");
  EXPECT_EQ(saidOf(hole).depths, (std::vector<std::string>{"", "through", "1/8"}));
  hole.drilled()->make = Make::countersink;
  hole.drilled()->seatDiameter.reset();
  EXPECT_EQ(saidOf(hole).note, "the print gives no size for the countersink");
  hole.drilled()->make = Make::spotface;
  EXPECT_EQ(makingOf(hole).steps.back().kind, StepKind::spotface);
}

TEST(MakingOf, LacksNothingItNeedsToSay) {
  for (const Make make : {Make::drill, Make::ream, Make::bore}) {
    const Said said = saidOf(holeOf(make, ""));
    EXPECT_EQ(said.note, "the print gives no diameter");
    EXPECT_EQ(said.run, "spot + drill to size");
  }
}

TEST(MakingOf, KeepsATolerance) {
  EXPECT_EQ(saidOf(holeOf(Make::ream, ".250 +.001 -.000")).size, "Ø.250 +.001 -.000 ream, through");
  EXPECT_EQ(saidOf(holeOf(Make::drill, "1/4 ±1/64")).size, "Ø1/4 ±1/64 drill, through");
  EXPECT_EQ(saidOf(holeOf(Make::drill, "1/8 + 1/8")).size, "Ø1/4 drill, through");
  EXPECT_EQ(saidOf(holeOf(Make::ream, "Ø.250 +.001 -.000")).size, "Ø1/4 +0.001 +0 ream, through");
}

TEST(MakingOf, RanksTheWork) {
  EXPECT_LT(makingOf(holeOf(Make::drill, "1/4")).rank, makingOf(holeOf(Make::bore, "1/4")).rank);
  EXPECT_LT(makingOf(holeOf(Make::bore, "1/4")).rank, makingOf(holeOf(Make::ream, "1/4")).rank);
  EXPECT_LT(makingOf(holeOf(Make::ream, "1/4")).rank, makingOf(holeOf(Make::tap, "1/4")).rank);
  Feature point;
  EXPECT_LT(makingOf(point).rank, makingOf(holeOf(Make::drill, "1")).rank);
}

}  // namespace
}  // namespace inchwright
