#include "core/plan/budget_from_zero.h"

#include <gtest/gtest.h>

#include "core/say/stack_words.h"
#include "tests/support/part_text.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

using test::kInch;
using test::kThou;
using test::partFrom;

// .500, 1.000 and .500 in a chain; M midway, W loose.
Part heldRail() {
  Part part = partFrom(R"(
    edge L x left
    edge A x
    edge B x
    edge R x right
    edge M x
    edge W x
    edge T z top
    r1 x L A .500 ±.002
    r2 x A B 1.000 ±.002
    r3 x B R .500 ±.001
    midway x M L R
  )");
  Setup setup;
  setup.name = "1";
  setup.zero = {{Axis::x, {}, "L", false, std::nullopt, {}}};
  part.setups = {setup};
  return part;
}

struct Frame {
  Part part = heldRail();
  Machine machine;

  Result<std::vector<StackMember>> members(const char* from, const char* to,
                                           std::optional<Length> held = std::nullopt,
                                           Axis axis = Axis::x) const {
    const auto solution = solve(part);
    EXPECT_TRUE(solution.ok());
    return membersFromZero({part, *solution, part.setups[0], machine}, axis, from, to, held);
  }
};

TEST(MembersFromZero, AreTwoCoordinatesWithTheirBudgets) {
  const auto members = Frame().members("A", "R");
  ASSERT_TRUE(members.ok()) << members.error().text;
  ASSERT_EQ(members->size(), 2u);
  const StackMember& a = (*members)[0];
  EXPECT_EQ(memberName(a), "A");
  EXPECT_EQ(beginsAt(a), "zero");
  EXPECT_EQ(a.to, "A");
  EXPECT_EQ(a.factor, Rational(-1));
  EXPECT_EQ(a.nominal, kInch / 2);
  EXPECT_EQ(a.low, kInch / 2 - 3 * kThou / 2);
  EXPECT_EQ(a.high, kInch / 2 + 3 * kThou / 2);
  const StackMember& r = (*members)[1];
  EXPECT_EQ(r.factor, Rational(1));
  EXPECT_EQ(r.high, 2 * kInch + kThou / 2);
  EXPECT_EQ(stackOf(*members)->worst, (Span{1498 * kThou, 1502 * kThou}));
}

TEST(MembersFromZero, AreHeldAsTheyAreTold) {
  const auto members = Frame().members("R", "A", Length::ticks(kThou));
  ASSERT_TRUE(members.ok());
  EXPECT_EQ(stackOf(*members)->worst, (Span{-1502 * kThou, -1498 * kThou}));
}

// The print allows −.001 +.003 to A: its budget lies about .501, the nominal stays the print's.
TEST(MembersFromZero, KeepThePrintsNominalWhereTheTargetIsAnother) {
  Frame frame;
  frame.part.readings[0].figure = *readLength(".500 +.003 -.001");
  frame.part.readings[1].figure = *readLength("1.000 ±.010");
  const auto members = frame.members("L", "A");
  ASSERT_TRUE(members.ok());
  EXPECT_EQ((*members)[1].nominal, kInch / 2);
  EXPECT_EQ((*members)[1].low, 499 * kThou);
  EXPECT_EQ((*members)[1].high, 503 * kThou);
}

TEST(MembersFromZero, TheZeroPlaceHasTheFindersError) {
  Frame frame;
  frame.machine.finderError = *readLength(".0003");
  const auto members = frame.members("L", "A", Length::ticks(kThou));
  ASSERT_TRUE(members.ok());
  EXPECT_EQ((*members)[0].low, -3 * kThou / 10);
  EXPECT_EQ((*members)[0].high, 3 * kThou / 10);
}

// M is only midway, which no toleranced reading limits.
TEST(MembersFromZero, TakeTheMachinesAccuracyWhereNothingLimits) {
  Frame frame;
  const auto unknown = frame.members("L", "M");
  ASSERT_FALSE(unknown.ok());
  EXPECT_EQ(unknown.error().code, ErrorCode::badRequest);
  EXPECT_EQ(unknown.error().place, "M");
  frame.machine.accuracy = *readLength(".0004");
  const auto known = frame.members("L", "M");
  ASSERT_TRUE(known.ok()) << known.error().text;
  EXPECT_EQ((*known)[1].low, kInch - 4 * kThou / 10);
  EXPECT_EQ((*known)[1].high, kInch + 4 * kThou / 10);
  EXPECT_EQ(frame.members("L", "W").error().code, ErrorCode::unsolvable);
}

TEST(MembersFromZero, FromAPlaceToItselfThereIsNone) {
  const auto members = Frame().members("A", "A");
  ASSERT_TRUE(members.ok());
  EXPECT_TRUE(members->empty());
}

TEST(MembersFromZero, SayWhatIsMissing) {
  EXPECT_EQ(Frame().members("A", "Q").error().code, ErrorCode::notFound);
  EXPECT_EQ(Frame().members("Q", "A").error().place, "Q");
  const auto across = Frame().members("T", "T", std::nullopt, Axis::z);
  ASSERT_FALSE(across.ok());
  EXPECT_NE(across.error().text.find("no zero along z"), std::string::npos);
  EXPECT_EQ(Frame().members("A", "T").error().code, ErrorCode::badRequest);
}

// Zero at row D is zero at its first hole: that one has no room of its own, which would halve those
// of the places that are read from it.
TEST(BudgetFromZero, ZeroAtARowIsZeroAtItsFirstHole) {
  Part part = partFrom(R"(
    row D x 3 1/2
    hole A 1/4
    r1 x D1 A 2.000 ±.002
  )");
  inchwright::Setup setup;
  setup.name = "1";
  for (const char* zero : {"D", "D1"}) {
    setup.zero = {{Axis::x, {}, zero, false, std::nullopt, {}}};
    part.setups = {setup};
    const auto solution = solve(part);
    const Machine machine;
    const auto budget = budgetAlong({part, *solution, setup, machine}, Axis::x);
    ASSERT_TRUE(budget.ok()) << zero;
    for (const PlaceBudget& one : budget->places) {
      const bool isZero = one.id == "D" || one.id == "D1";
      EXPECT_EQ(one.isZero, isZero) << zero << ' ' << one.id;
      EXPECT_EQ(one.plusMinus, isZero ? 0 : 2 * kThou) << zero << ' ' << one.id;
    }
  }
}

}  // namespace
}  // namespace inchwright
