#include "core/lines/found_line.h"

#include <gtest/gtest.h>

#include "core/lines/lines.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

Part measuredPlate() {
  Part part = test::partFrom("edge L x left\nedge F y front\nhole A 1/4\nrow D x 4 9/16\n");
  part.name = "Plate";
  part.setups.resize(2);
  part.setups[0].name = "1";
  part.setups[1].name = "other way: up";
  return part;
}

TEST(FoundLine, PutsDownWhatWasMeasured) {
  const auto found = readFoundLine(
      measuredPlate(), " 1: A x 0.3752 y -0.7498 size 0.2503; D3 size 4.02 mm", Unit::inch);
  ASSERT_TRUE(found.ok()) << found.error().text;
  ASSERT_EQ(found->size(), 2u);
  EXPECT_EQ((*found)[0].place, "A");
  EXPECT_EQ((*found)[0].setup, "1");
  EXPECT_EQ((*found)[0].y->text, "-0.7498");
  EXPECT_EQ((*found)[1].size->value, readLength("4.02 mm")->value);
  EXPECT_FALSE((*found)[1].x);
}

TEST(FoundLine, KeepsWhatWasKnown) {
  Part part = measuredPlate();
  MadePlace known;
  known.place = "A";
  known.setup = "other way: up";
  known.ticks = {"spot"};
  known.x = *readLength("0.1");
  part.made = {known};
  const auto outcome = applyLine(part, "found other way: up: A size 1/4", LineContext{});
  ASSERT_TRUE(outcome.ok()) << outcome.error().text;
  ASSERT_EQ(outcome->part.made.size(), 1u);
  EXPECT_EQ(outcome->part.made[0].ticks, known.ticks);
  EXPECT_EQ(outcome->part.made[0].x, known.x);
  EXPECT_EQ(outcome->part.made[0].size->text, "1/4");
  EXPECT_EQ(outcome->did, LineDid::found);
}

TEST(FoundLine, RefusesWithThePlace) {
  struct Case {
    const char* tail;
    std::size_t at;
  };
  for (const Case& one : {Case{"", 0},
                          {"A size 1/4", 0},
                          {"2: A size 1/4", 0},
                          {" : A size 1/4", 0},
                          {"1: ", 3},
                          {"1: Z size 1/4", 3},
                          {"1: A", 3},
                          {"1: A 1/4", 5},
                          {"1: A size", 9},
                          {"1: A size what", 10},
                          {"1: A size 1/4; Z x 1", 15}}) {
    const auto found = readFoundLine(measuredPlate(), one.tail, Unit::inch);
    ASSERT_FALSE(found.ok()) << one.tail;
    EXPECT_EQ(found.error().at, one.at) << one.tail << ": " << found.error().text;
  }
}

}  // namespace
}  // namespace inchwright
