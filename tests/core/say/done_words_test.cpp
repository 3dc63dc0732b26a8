#include "core/say/done_words.h"

#include <gtest/gtest.h>

#include "tests/core/plan/said.h"

namespace inchwright {
namespace {

using plates::figure;

MakingStep stepOf(StepKind kind, Tool::Way way, const char* name, Length diameter) {
  return {kind, {way, name, {}}, diameter, {}, {}};
}

MakingStep reamOf(const char* text, Unit unit = Unit::inch) {
  return {
      StepKind::ream, {Tool::Way::sized, {}, figure(text, unit)}, figure(text, unit).value, {}, {}};
}

TEST(DoneWords, NameAnOperationByItsKindAndSize) {
  const Length seven = Length::ticks(2010 * 254'000LL);
  EXPECT_EQ(doneName(stepOf(StepKind::drill, Tool::Way::named, "#7", seven)), "drill #7");
  EXPECT_EQ(doneName(stepOf(StepKind::spot, Tool::Way::plain, "", {})), "spot");
  EXPECT_EQ(doneName(reamOf("1/4")), "ream 1/4");
  // However the readout shows it: a metric figure names its unit.
  EXPECT_EQ(doneName(reamOf("6", Unit::millimetre)), "ream 6 mm");
}

// What was ticked stays ticked when its tool is called otherwise, and another size is another hole.
TEST(DoneWords, TellWhatWasDoneByKindAndDiameter) {
  struct Row {
    const char* tick;
    MakingStep step;
    bool done;
  };
  const MakingStep drill =
      stepOf(StepKind::drill, Tool::Way::named, "15/64", figure("15/64").value);
  const MakingStep tap = stepOf(StepKind::tap, Tool::Way::named, "1/4-20 UNC", figure("1/4").value);
  const MakingStep spot = stepOf(StepKind::spot, Tool::Way::plain, "", {});
  const Row rows[] = {{"drill 15/64", drill, true},
                      {"drill .234375", drill, true},
                      {"drill to 15/64", drill, true},
                      {"drill 1/4", drill, false},
                      {"ream 15/64", drill, false},
                      {"drill", drill, false},
                      {"drilled 15/64", drill, false},
                      {"ream .250", reamOf("1/4"), true},
                      {"ream 6.35 mm", reamOf("1/4"), true},
                      {"ream 6", reamOf("6 mm"), true},
                      {"ream 6", reamOf("1/4"), false},
                      {"tap 1/4-20 UNC", tap, true},
                      {"tap 1/4-20", tap, true},
                      {"tap 2 BA", tap, false},
                      {"spot", spot, true},
                      {"spot 1/4", spot, false},
                      {"", spot, false}};
  for (const Row& row : rows) {
    MadePlace made;
    made.ticks = {"mark", row.tick};
    EXPECT_EQ(isDone(made, row.step), row.done) << row.tick;
  }
}

TEST(DoneWords, TickAndTakeBack) {
  MadePlace made;
  made.ticks = {"spot", "ream .2500"};
  made = withDone(made, reamOf("1/4"), true);
  EXPECT_EQ(made.ticks, (std::vector<std::string>{"spot", "ream 1/4"}));
  made = withDone(made, reamOf("1/4"), false);
  EXPECT_EQ(made.ticks, (std::vector<std::string>{"spot"}));
}

}  // namespace
}  // namespace inchwright
