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
  const Solution solution = solved(published(R"(
      edge L x left
      edge A x
      edge B x
      edge C x
      edge D x
      edge R x right
      r1 x L R 7 1/8
      r2 x L A 7/8
      r3 x A B 3/16
      r4 x C D 3/16
      r5 x D R 7/8)"));
  EXPECT_TRUE(solution.loose.empty());
  EXPECT_EQ(writeFraction(distance(solution, "B", "C", kX)), "5");
}

// p. 43 no. 84: 15/16 + 3 1/4 + 2 1/16 + 3 3/8 + 1 13/16 + 1 1/8 = 12 9/16.
const char* const kSteppedShaft = R"(
    edge A x left
    edge B x
    edge C x
    edge D x
    edge E x
    edge G x
    edge H x right
    r1 x A B 15/16
    r2 x B C 3 1/4
    r3 x C D 2 1/16
    r4 x D E 3 3/8
    r5 x E G 1 13/16
    r6 x G H 1 1/8
)";

TEST(FractionChains, SteppedShaftOverAll) {
  const std::string shaft = kSteppedShaft;
  EXPECT_EQ(writeFraction(distance(solved(published(shaft)), "A", "H", kX)), "12 9/16");

  // Lettered over all as well, it closes; an eighth out, it does not, and by just that.
  EXPECT_TRUE(solved(published(shaft + "r7 x A H (12 9/16)")).clashes.empty());
  const Part wrong = published(shaft + "r7 x A H 12 11/16");
  const Solution clash = solved(wrong);
  ASSERT_EQ(clash.clashes.size(), 1u);
  EXPECT_EQ(nearestTick(clash.clashes[0].missesBy).value_or(Length()).magnitude(), length("1/8"));
  EXPECT_EQ(clash.clashes[0].readingIds(wrong).size(), 7u);
}

// p. 42 no. 81: a strip with three circles of 3 5/16 and webs of 7/32, four along and two across.
Part strip() {
  return published(R"(
      edge L x left
      edge A1 x
      edge A2 x
      edge B1 x
      edge B2 x
      edge C1 x
      edge C2 x
      edge R x right
      edge F y front
      edge N y
      edge M y
      edge K y back
      hole A 53/16
      hole B 53/16
      hole C 53/16
      r1 x L A1 7/32
      r2 x A1 A2 3 5/16
      r3 x A2 B1 7/32
      r4 x B1 B2 3 5/16
      r5 x B2 C1 7/32
      r6 x C1 C2 3 5/16
      r7 x C2 R 7/32
      r8 y F N 7/32
      r9 y N M 3 5/16
      r10 y M K 7/32
      midway x A A1 A2
      midway x B B1 B2
      midway x C C1 C2
      midway y A N M
      in_line y A B C)");
}

std::vector<std::string> centresFrom(const ZeroAlong& zeroX) {
  const Part three = strip();
  Setup setup;
  setup.name = "1";
  ZeroAlong zeroY;
  zeroY.axis = kY;
  zeroY.middle = {"F", "K"};
  setup.zero = {zeroX, zeroY};
  const auto table = makeTable(Job(), three, solved(three), setup);
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
  const Solution solution = solved(strip());
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
