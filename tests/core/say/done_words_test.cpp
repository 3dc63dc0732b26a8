#include "core/say/done_words.h"

#include <gtest/gtest.h>

#include "tests/core/plan/said.h"

namespace inchwright {
namespace {

using plates::figure;

HoleStep stepOf(Op op, const char* tool, const char* named, std::optional<Length> size) {
  HoleStep step;
  step.op = op;
  step.tool = tool;
  step.named = named;
  step.size = size;
  return step;
}

HoleStep reamOf(const char* text, Unit unit = Unit::inch) {
  const Lettered size = figure(text, unit);
  const std::string named = sizeName(size.value, size.unit);
  HoleStep step = stepOf(Op::ream, ("ream " + named).c_str(), named.c_str(), size.value);
  step.kind = ToolKind::reamer;
  step.unit = size.unit;
  return step;
}

TEST(DoneWords, NameAnOperationByItsKindAndSize) {
  const Length seven = Length::ticks(2010 * 254'000LL);
  EXPECT_EQ(doneName(stepOf(Op::drill, "#7", "#7", seven)), "drill #7");
  EXPECT_EQ(doneName(stepOf(Op::spot, "spot", "", {})), "spot");
  EXPECT_EQ(doneName(reamOf("1/4")), "ream 1/4");
  HoleStep bar = stepOf(Op::bore, "bore", "", figure("3/4").value);
  bar.kind = ToolKind::bar;
  EXPECT_EQ(doneName(bar), "bore 3/4");
  // However the readout shows it: a metric figure names its unit.
  EXPECT_EQ(doneName(reamOf("6", Unit::millimetre)), "ream 6 mm");
}

// What was ticked stays ticked when its tool is called otherwise, and another size is another hole.
TEST(DoneWords, TellWhatWasDoneByKindAndDiameter) {
  struct Row {
    const char* tick;
    HoleStep step;
    bool done;
  };
  const HoleStep drill = stepOf(Op::drill, "15/64", "15/64", figure("15/64").value);
  const HoleStep tap = stepOf(Op::tap, "tap 1/4-20 UNC", "1/4-20 UNC", figure("1/4").value);
  const HoleStep spot = stepOf(Op::spot, "spot", "", {});
  const Row rows[] = {{"drill 15/64", drill, true},
                      {"drill .234375", drill, true},
                      {"drill to 15/64", drill, true},
                      {"pilot 15/64", drill, false},
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
