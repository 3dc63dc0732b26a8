// Ewen & Nelson, "Elementary Technical Mathematics", sections 1.7 and 1.8: chains of fractions.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "core/plan/table.h"
#include "tests/outside/published_part.h"

namespace inchwright {
namespace {

constexpr Axis kX = Axis::x;
constexpr Axis kY = Axis::y;

// p. 42 no. 74: overall 7 1/8; steps 7/8, 3/16, 7/8, 3/16; the missing one is 5.
TEST(FractionChains, ShaftWithAMissingStep) {
  PublishedPart shaft;
  shaft.edge("L", kX, Side::left).edge("R", kX, Side::right);
  for (const char* shoulder : {"A", "B", "C", "D"}) shaft.edge(shoulder, kX);
  shaft.along(kX, "L", "R", "7 1/8").along(kX, "L", "A", "7/8").along(kX, "A", "B", "3/16");
  shaft.along(kX, "D", "R", "7/8").along(kX, "C", "D", "3/16");
  const Solution solution = shaft.solved();
  EXPECT_TRUE(solution.loose.empty());
  EXPECT_EQ(writeFraction(distance(solution, "B", "C", kX)), "5");
}

// p. 43 no. 84: 15/16 + 3 1/4 + 2 1/16 + 3 3/8 + 1 13/16 + 1 1/8 = 12 9/16.
TEST(FractionChains, SteppedShaftOverAll) {
  const std::vector<std::string> steps = {"15/16", "3 1/4", "2 1/16", "3 3/8", "1 13/16", "1 1/8"};
  PublishedPart shaft;
  shaft.edge("S0", kX, Side::left);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const Id from = "S" + std::to_string(i);
    const Id to = "S" + std::to_string(i + 1);
    const bool last = i + 1 == steps.size();
    shaft.edge(to, kX, last ? std::optional(Side::right) : std::nullopt);
    shaft.along(kX, from, to, steps[i]);
  }
  EXPECT_EQ(writeFraction(distance(shaft.solved(), "S0", "S6", kX)), "12 9/16");

  // Lettered over all as well, it closes; an eighth out, it does not, and by just that.
  PublishedPart agreeing = shaft;
  EXPECT_TRUE(agreeing.along(kX, "S0", "S6", "(12 9/16)").solved().clashes.empty());
  PublishedPart clashing = shaft;
  const Solution clash = clashing.along(kX, "S0", "S6", "12 11/16").solved();
  ASSERT_EQ(clash.clashes.size(), 1u);
  EXPECT_EQ(nearestTick(clash.clashes[0].missesBy).value_or(Length()).magnitude(), length("1/8"));
  EXPECT_EQ(clash.clashes[0].readingIds().size(), 7u);
}

// p. 42 no. 81: a strip with three circles of 3 5/16 and webs of 7/32, four along and two across.
PublishedPart strip() {
  PublishedPart strip;
  strip.edge("L", kX, Side::left).edge("R", kX, Side::right);
  strip.edge("F", kY, Side::front).edge("K", kY, Side::back).edge("N", kY).edge("U", kY);
  strip.along(kY, "F", "N", "7/32").along(kY, "N", "U", "3 5/16").along(kY, "U", "K", "7/32");
  Id last = "L";
  for (const char* circle : {"A", "B", "C"}) {
    const Id from = std::string(circle) + "l";
    const Id to = std::string(circle) + "r";
    strip.edge(from, kX).edge(to, kX).hole(circle, "3 5/16");
    strip.along(kX, last, from, "7/32").along(kX, from, to, "3 5/16");
    strip.midway(kX, circle, from, to).midway(kY, circle, "N", "U");
    last = to;
  }
  strip.along(kX, last, "R", "7/32");
  return strip;
}

std::vector<std::string> centresFrom(const ZeroAlong& zeroX) {
  const PublishedPart three = strip();
  Setup setup;
  setup.name = "1";
  ZeroAlong zeroY;
  zeroY.axis = kY;
  zeroY.middle = {"F", "K"};
  setup.zero = {zeroX, zeroY};
  const auto table = makeTable(Job(), three.part(), three.solved(), setup);
  if (!table) {
    ADD_FAILURE() << table.error().text;
    return {};
  }
  std::vector<std::string> centres(3);
  for (const TableRow& row : table->rows) {
    centres.at(static_cast<std::size_t>(row.id[0] - 'A')) = writeFraction(row.x.value);
    EXPECT_TRUE(row.x.exact);
    EXPECT_TRUE(row.y.value.isZero());
  }
  return centres;
}

TEST(FractionChains, StripWithThreeCircles) {
  const Solution solution = strip().solved();
  EXPECT_TRUE(solution.loose.empty());
  EXPECT_EQ(writeFraction(distance(solution, "L", "R", kX)), "10 13/16");
  EXPECT_EQ(writeFraction(distance(solution, "F", "K", kY)), "3 3/4");
}

// The same strip rebased; the centres are computed, not printed in the source.
TEST(FractionChains, StripRebased) {
  ZeroAlong left;
  left.at = "L";
  EXPECT_EQ(centresFrom(left), (std::vector<std::string>{"1 7/8", "5 13/32", "8 15/16"}));
  ZeroAlong middle;
  middle.middle = {"L", "R"};
  EXPECT_EQ(centresFrom(middle), (std::vector<std::string>{"-3 17/32", "0", "3 17/32"}));
}

// p. 42 no. 72: a rod of 13 13/16 less pieces of 1 3/8, 2 5/16, 4 3/4 and three cuts of 1/16.
TEST(FractionChains, RodWithSawCuts) {
  EXPECT_EQ(length("13 13/16 - 1 3/8 - 2 5/16 - 4 3/4 - 3 x 1/16"), length("5 3/16"));
  EXPECT_EQ(writeFraction(length("13 13/16 - 1 3/8 - 2 5/16 - 4 3/4 - 3 x 1/16")), "5 3/16");
}

}  // namespace
}  // namespace inchwright
