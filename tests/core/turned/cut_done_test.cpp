#include "core/turned/cut_done.h"

#include <gtest/gtest.h>

#include "core/part/edit.h"

namespace inchwright {
namespace {

Cut cutOf(CutOp op, std::vector<Id> of, const char* length, const char* dia) {
  Cut cut;
  cut.op = op;
  cut.of = std::move(of);
  if (length) cut.length = LatheFigure{length, readLength(length)->value, true};
  if (dia) cut.dia = LatheFigure{dia, readLength(dia)->value, true};
  return cut;
}

TEST(CutDone, IsNamedByItsExactFigures) {
  EXPECT_EQ(doneName(cutOf(CutOp::finish, {"B"}, "1/2", "1/4")), "finish 12.7 x 6.35 mm");
  EXPECT_EQ(doneName(cutOf(CutOp::partOff, {"L"}, "-1/2", nullptr)), "part_off -12.7 mm");
  EXPECT_EQ(doneName(cutOf(CutOp::deburr, {"B"}, nullptr, nullptr)), "deburr");
}

TEST(CutDone, IsTickedAndTakenBack) {
  Part part;
  const Cut rough = cutOf(CutOp::rough, {"B"}, "1/2", ".270");
  const Cut finish = cutOf(CutOp::finish, {"B"}, "1/2", ".250");
  EXPECT_FALSE(isCutDone(part, "1", rough));
  part = withCutDone(part, "1", rough, true);
  EXPECT_TRUE(isCutDone(part, "1", rough));
  EXPECT_FALSE(isCutDone(part, "1", finish));
  EXPECT_FALSE(isCutDone(part, "2", rough));
  part = withCutDone(withCutDone(part, "1", finish, true), "1", rough, false);
  EXPECT_FALSE(isCutDone(part, "1", rough));
  EXPECT_TRUE(isCutDone(part, "1", finish));
  EXPECT_TRUE(withCutDone(part, "1", finish, false).made.empty());
}

TEST(CutDone, OtherFiguresTakeTheTickOff) {
  const Cut before = cutOf(CutOp::finish, {"B"}, "1/2", ".250");
  const Cut now = cutOf(CutOp::finish, {"B"}, "1/2", ".2505");
  Part part = withCutDone({}, "1", before, true);
  EXPECT_FALSE(isCutDone(part, "1", now));
  part = withCutDone(part, "1", now, true);
  EXPECT_EQ(madeAt(part, "B", "1").ticks, std::vector<std::string>{"finish 12.7 x 6.3627 mm"});
}

TEST(CutDone, OfSeveralIsDoneWhenAllAre) {
  const Cut all = cutOf(CutOp::deburr, {"B", "C"}, nullptr, nullptr);
  Part part = withCutDone({}, "1", all, true);
  EXPECT_TRUE(isCutDone(part, "1", all));
  MadePlace second = madeAt(part, "C", "1");
  second.ticks.clear();
  EXPECT_FALSE(isCutDone(withMade(part, second), "1", all));
}

TEST(CutDone, KeepsWhatWasMeasured) {
  MadePlace made;
  made.place = "B";
  made.setup = "1";
  made.size = *readLength(".2496");
  const Part part =
      withCutDone(withMade({}, made), "1", cutOf(CutOp::rough, {"B"}, "1", "1/2"), true);
  EXPECT_EQ(madeAt(part, "B", "1").size->text, ".2496");
}

}  // namespace
}  // namespace inchwright
