#include <gtest/gtest.h>

#include <cmath>

#include "core/solution/solution.h"
#include "tests/support/part_text.h"
#include "tests/support/solved_part.h"

namespace inchwright::test {
namespace {

double apart(const Solution& solution, const char* a, const char* b) {
  const auto x = solution.between(a, b, Axis::x), y = solution.between(a, b, Axis::y);
  EXPECT_TRUE(x && y) << a << " " << b;
  if (!x || !y) return 0;
  return std::hypot(x->toDouble(), y->toDouble()) / static_cast<double>(Length::kTicksPerInch);
}

Solution solvedText(const std::string& text) {
  Part part = PartText::read(text);
  part.name = "Case";
  return solved(part);
}

// Precision Locating and Dividing Methods (Machinery's Reference Series 135, Industrial Press
// 1914): buttons of 1.070, .790 and .650 that touch one another stand .930, .720 and .860 apart.
TEST(PlacingCases, ButtonsThatTouch) {
  const Solution solution = solvedText(
      "hole A 1.070\nhole B .790\nhole C .650\nin_line y A B\n"
      "tangent A B\ntangent B C\ntangent C A\n"
      "traced A 0 0\ntraced B 0.93 0\ntraced C 0.52 0.68\n");
  EXPECT_NEAR(apart(solution, "A", "B"), 0.930, 1e-9);
  EXPECT_NEAR(apart(solution, "B", "C"), 0.720, 1e-9);
  EXPECT_NEAR(apart(solution, "C", "A"), 0.860, 1e-9);
}

// US Army subcourse OD1640, Machine Shop Calculation, ed. 7, p. 89: 8 and 10 with 78 degrees
// between give a third side of 11.434 (exact 11.433903).
TEST(PlacingCases, LawOfCosines) {
  const Solution solution = solvedText(
      "hole A 1/4\nhole B 1/4\nhole C 1/4\nin_line y A B\n"
      "r1 x A B 8\nr2 centres A C 10\nr3 angle A C 78\n");
  EXPECT_NEAR(apart(solution, "B", "C"), 11.433903, 5e-7);
}

// Two circles of radius 9 and 4 that touch one another and a line (hugi.is, a question site: the
// figures are given there, 2√(9·4) = 12 is computed).
TEST(PlacingCases, TwoCirclesOnALine) {
  const Solution solution = solvedText(
      "edge L x left\nedge F y front\nhole A 18\nhole B 8\nr1 x L A 20\n"
      "tangent A F\ntangent B F\nr2 centres A B 13\n"
      "traced L 0\ntraced F 0\ntraced A 20 9\ntraced B 32 4\n");
  const auto x = solution.between("A", "B", Axis::x);
  ASSERT_TRUE(x);
  EXPECT_NEAR(x->toDouble() / static_cast<double>(Length::kTicksPerInch), 12, 1e-9);
}

}  // namespace
}  // namespace inchwright::test
