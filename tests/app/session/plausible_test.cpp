#include "app/session/plausible.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/lines/lines.h"

namespace inchwright::app {
namespace {

Part traced() {
  Part part;
  part.name = "Plate";
  for (const char* line : {"edge L left", "edge R right", "hole A 1/4", "hole B 1/4", "L A 3/8",
                           "A R 3 1/8", "r3 x A B 1 3/8", "r4 x L B 3/8"}) {
    auto next = applyLine(part, line, {});
    EXPECT_TRUE(next.ok()) << line;
    if (next.ok()) part = std::move(next->part);
  }
  const auto put = [&](const char* id, std::vector<std::string> at) {
    for (Feature& feature : part.features) {
      if (feature.id == id) feature.traced = at;
    }
  };
  put("L", {"0"});
  put("R", {"3.5"});
  put("A", {"0.37", "0.44"});
  put("B", {"0.38", "1.81"});
  return part;
}

TEST(TracingEvidence, ObjectsToWhatLiesElsewhere) {
  Part part = traced();
  EXPECT_TRUE(TracingEvidence(part).toScale(Axis::x));
  EXPECT_EQ(TracingEvidence(part).objection(*part.reading("r1")), "");
  EXPECT_EQ(TracingEvidence(part).objection(*part.reading("r4")), "");
  Reading misread = *part.reading("r2");
  misread.figure.value = Length::ticks(2 * Length::kTicksPerInch);
  EXPECT_EQ(TracingEvidence(part).objection(misread), "the tracing says about 3 1/8");
}

TEST(TracingEvidence, ObjectsToADistanceBetweenTwoInLine) {
  const Part part = traced();
  EXPECT_EQ(TracingEvidence(part).objection(*part.reading("r3")),
            "the tracing puts the two in line");
}

// A tracing speaks once two readings agree with it and more than half do.
TEST(TracingEvidence, SpeaksOnlyOnceItIsKnownToBeToScale) {
  const auto isToScale = [](std::initializer_list<const char*> kept) {
    Part part = traced();
    std::erase_if(part.readings, [&](const Reading& one) {
      return std::find(kept.begin(), kept.end(), one.id) == kept.end();
    });
    return TracingEvidence(part).toScale(Axis::x);
  };
  EXPECT_FALSE(isToScale({}));
  EXPECT_FALSE(isToScale({"r1"}));
  EXPECT_TRUE(isToScale({"r1", "r2"}));
  EXPECT_FALSE(isToScale({"r1", "r3"}));
  EXPECT_TRUE(isToScale({"r1", "r2", "r3"}));
  EXPECT_TRUE(isToScale({"r1", "r2", "r3", "r4"}));
  Part part = traced();
  EXPECT_FALSE(TracingEvidence(part).toScale(Axis::y)) << "nothing is read along Y";
  for (Reading& one : part.readings) {
    if (one.id == "r4") one.figure = *readLength("2");
  }
  EXPECT_FALSE(TracingEvidence(part).toScale(Axis::x)) << "two of four are not more than half";
}

// The first hole of a row stands where the row was traced; another hole of it says nothing.
TEST(TracingEvidence, ARowWasTracedAtItsFirstHole) {
  Part part = traced();
  auto next = applyLine(part, "row S x 3 holes pitch 1/2 drill 1/8", {});
  ASSERT_TRUE(next.ok()) << next.error().text;
  part = std::move(next->part);
  part.features.back().traced = {"1.5", "1"};
  const TracingEvidence evidence(part);
  ASSERT_TRUE(evidence.distance("L", "S1", Axis::x));
  EXPECT_DOUBLE_EQ(*evidence.distance("L", "S1", Axis::x), 1.5);
  EXPECT_DOUBLE_EQ(*evidence.distance("S1", "L", Axis::x), -1.5);
  EXPECT_FALSE(evidence.distance("L", "S2", Axis::x));
  EXPECT_FALSE(evidence.distance("L", "A1", Axis::x)) << "no hole of a hole";
  EXPECT_FALSE(evidence.distance("L", "", Axis::x));
}

// Drawn in each quarter about A, by hand: 1 in over and 1 in up are 45 degrees, and so on round.
// A clockwise angle is told as it is lettered, the other way round.
TEST(TracingEvidence, SaysWhichAngleIsDrawnInItsOwnSense) {
  struct Case {
    const char* x;
    const char* y;
    const char* lettered;
    Sense sense;
    const char* says;
  };
  constexpr Sense cw = Sense::clockwise, acw = Sense::anticlockwise;
  for (const Case& one : {Case{"1.37", "1.44", "45", acw, ""},
                          {"1.37", "1.44", "315", cw, ""},
                          {"1.37", "1.44", "-45", cw, ""},
                          {"1.37", "1.44", "45", cw, "the tracing says about 315 degrees"},
                          {"1.37", "1.44", "30", acw, "the tracing says about 45 degrees"},
                          {"-.63", "1.44", "30", acw, "the tracing says about 135 degrees"},
                          {"-.63", "-.56", "30", acw, "the tracing says about 225 degrees"},
                          {"1.37", "-.56", "30", acw, "the tracing says about 315 degrees"},
                          {"1.37", "-.56", "30", cw, "the tracing says about 45 degrees"},
                          {"1.37", "-.56", "45", cw, ""},
                          {"1.37", ".44", "90", acw, "the tracing says about 0 degrees"},
                          {".37", "1.44", "30", cw, "the tracing says about 270 degrees"}}) {
    Part part = traced();
    for (Feature& feature : part.features) {
      if (feature.id == "B") feature.traced = {one.x, one.y};
    }
    Reading reading;
    reading.kind = ReadingKind::angle;
    reading.from = "A";
    reading.to = "B";
    reading.angle = *readAngle(one.lettered);
    reading.sense = one.sense;
    EXPECT_EQ(TracingEvidence(part).objection(reading, true), one.says)
        << one.x << ' ' << one.y << ' ' << one.lettered;
    // Nobody knows yet whether this print is to scale upwards.
    EXPECT_EQ(TracingEvidence(part).objection(reading), "");
    reading.against = {"L", "R"};
    EXPECT_EQ(TracingEvidence(part).objection(reading, true), "") << "any of four rays is meant";
  }
}

}  // namespace
}  // namespace inchwright::app
