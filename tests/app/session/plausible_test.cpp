#include "app/session/plausible.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace inchwright::app
