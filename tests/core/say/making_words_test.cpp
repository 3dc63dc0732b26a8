#include "core/say/making_words.h"

#include <gtest/gtest.h>

#include "tests/core/plan/said.h"

namespace inchwright {
namespace {

using plates::figure;

Feature holeOf(Make make, std::string_view diameter) {
  Feature hole;
  hole.id = "A";
  hole.shape = kind::Hole{};
  hole.drilled()->make = make;
  if (!diameter.empty()) hole.drilled()->diameter = figure(diameter);
  return hole;
}

/// What is said of a hole, made with all customary tools.
struct Said {
  std::string size;
  std::string run;
  std::string note;
};

Said saidOf(const Feature& feature, Unit shown = Unit::inch) {
  HoleWork work;
  work.drilled = *feature.drilled();
  TableRow row;
  row.plan = planHole(work, ToolsOwned(inchwright::Shop{}), {});
  const Step step = *readStep(shown == Unit::inch ? "0.0005" : "0.005", shown);
  return {sizeWords(feature, *row.plan, shown), stepsWords(row, shown),
          noteWords(feature, row, step, English::uk)};
}

TEST(MakingWords, NameTheSizeAndTheRunOfTools) {
  struct Row {
    Make make;
    const char* diameter;
    const char* size;
    const char* run;
  };
  const Row rows[] = {
      {Make::drill, "1/4", "Ø1/4 drill, through", "spot, drill 1/4, deburr"},
      {Make::drill, "0.201", "Ø0.201 drill, through", "spot, drill #7, deburr"},
      {Make::drill, "Ø 3/16", "Ø3/16 drill, through", "spot, drill 3/16, deburr"},
      {Make::drill, "1/4 DIA", "Ø1/4 drill, through", "spot, drill 1/4, deburr"},
      {Make::drill, "6.5 mm", "Ø6.5 mm drill, through", "spot, drill 6.5 mm, deburr"},
      {Make::ream, "1/4", "Ø1/4 ream, through", "spot, drill C, ream 1/4, deburr"},
      {Make::ream, ".250 +.001 -.000", "Ø.250 +.001 -.000 ream, through",
       "spot, drill C, ream 1/4, deburr"},
      {Make::drill, "1/8 + 1/8", "Ø1/4 drill, through", "spot, drill 1/4, deburr"},
  };
  for (const Row& row : rows) {
    const Said said = saidOf(holeOf(row.make, row.diameter));
    EXPECT_EQ(said.size, row.size);
    EXPECT_EQ(said.run, row.run) << row.diameter;
    EXPECT_EQ(said.note, "");
  }
}

// On a metric readout `ream 0.205` would be taken for millimetres.
TEST(MakingWords, SizesInInchesSaySoOnAMetricReadout) {
  EXPECT_EQ(saidOf(holeOf(Make::ream, "0.205"), Unit::millimetre).run.find("ream 0.205 in") !=
                std::string::npos,
            true);
  EXPECT_EQ(saidOf(holeOf(Make::ream, "6 mm"), Unit::millimetre).run,
            "spot, drill 5.8 mm, ream 6 mm, deburr");
}

TEST(MakingWords, SayWhatThePrintLacks) {
  Feature hole = holeOf(Make::counterbore, "1/4");
  EXPECT_EQ(saidOf(hole).note, "the print gives no size for the counterbore");
  hole.drilled()->seatDiameter = figure("7/16");
  hole.drilled()->seatDepth = figure("1/8");
  EXPECT_EQ(saidOf(hole).size, "Ø1/4 drill, through; counterbore Ø7/16, 1/8 deep");
  EXPECT_EQ(saidOf(hole).run, "spot, drill 1/4, counterbore 7/16, deburr");
  EXPECT_EQ(saidOf(hole).note, "");
  EXPECT_EQ(saidOf(holeOf(Make::ream, "")).note, "the print names no diameter");
  EXPECT_EQ(saidOf(holeOf(Make::tap, "")).note, "the print names no thread");
  hole = holeOf(Make::tap, "");
  hole.drilled()->thread = "9/7-3 odd";
  EXPECT_EQ(saidOf(hole).run, "incomplete: spot, deburr");
  EXPECT_NE(saidOf(hole).note.find("9/7-3 odd"), std::string::npos);
}

}  // namespace
}  // namespace inchwright
