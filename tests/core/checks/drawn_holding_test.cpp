#include "core/checks/drawn_holding.h"

#include <gtest/gtest.h>

#include "tests/core/checks/held_plate.h"

namespace inchwright::test {
namespace {

/// A plate of 4 x 2 x 1 in with a hole at its middle, zero at its near left corner, in the vice.
HeldPlate heldPlate() {
  HeldPlate plate("4", "2", "1");
  plate.hole("A", "2", "1", "1/4");
  plate.setup.jaw = Side::front;
  plate.setup.zero = {{Axis::x, {}, "L", false, {}, {}}, {Axis::y, {}, "F", false, {}, {}}};
  return plate;
}

HeldWork drawn(const HeldPlate& plate) {
  const Solution solution = solved(plate.part);
  const auto work = workAt(plate.job, plate.part, solution, plate.setup);
  EXPECT_TRUE(work.ok());
  return heldWork(*work);
}

/// Those of a kind.
std::vector<HeldThing> of(FindingCode code, const HeldWork& held) {
  std::vector<HeldThing> some;
  for (const HeldThing& thing : held.drawn.things) {
    if (thing.code == code) some.push_back(thing);
  }
  return some;
}

void expectBox(const HeldThing& thing, double left, double near, double right, double far) {
  EXPECT_NEAR(thing.low.x, left * 25.4, 1e-9);
  EXPECT_NEAR(thing.low.y, near * 25.4, 1e-9);
  EXPECT_NEAR(thing.high.x, right * 25.4, 1e-9);
  EXPECT_NEAR(thing.high.y, far * 25.4, 1e-9);
}

TEST(DrawnHolding, ParallelsLieWhereTheChecksLookForThem) {
  HeldPlate plate = heldPlate();
  plate.parallel(Jaw::fixed, "1/8", "1", "0");
  plate.parallel(Jaw::moving, "1/8", "1", "3/4");
  LaidParallel& third = plate.parallel(Jaw::fixed, "1/4", "1", "1/4");
  third.from = lettered("1/2");
  third.to = lettered("1");
  const HeldWork held = drawn(plate);
  const std::vector<HeldThing> parallels = of(FindingCode::parallel, held);
  ASSERT_EQ(parallels.size(), 3u);
  expectBox(parallels[0], 0, 0, 4, 0.125);
  EXPECT_FALSE(parallels[0].met);
  EXPECT_EQ(parallels[0].away, (PlanePoint{0, 1}));
  expectBox(parallels[1], 0, 1.125, 4, 1.25);
  EXPECT_TRUE(parallels[1].met);  // the hole's edge with its margin reaches to 1.15625
  EXPECT_EQ(parallels[1].away, (PlanePoint{0, -1}));
  expectBox(parallels[2], 0.5, 0.25, 1, 0.5);
  ASSERT_EQ(held.drawn.found.size(), 1u);
  EXPECT_EQ(held.drawn.found[0].place, "A");
  EXPECT_NEAR(held.drawn.found[0].at.x, 50.8, 1e-9);
}

TEST(DrawnHolding, TurnsWithTheWork) {
  HeldPlate plate = heldPlate();
  plate.parallel(Jaw::fixed, "1/8", "1", "1/4");
  plate.setup.turn = 90;  // the part's Y points to the left
  const std::vector<HeldThing> parallels = of(FindingCode::parallel, drawn(plate));
  ASSERT_EQ(parallels.size(), 1u);
  expectBox(parallels[0], -0.375, 0, -0.25, 4);
  EXPECT_EQ(parallels[0].away, (PlanePoint{-1, 0}));
}

TEST(DrawnHolding, JawsLieOutsideTheWorkAndStopWhereItOverhangs) {
  HeldPlate plate = heldPlate();
  plate.setup.held.overhang[static_cast<std::size_t>(Side::right)] = lettered("1");
  const std::vector<HeldThing> jaws = of(FindingCode::jaw, drawn(plate));
  ASSERT_EQ(jaws.size(), 2u);
  EXPECT_EQ(jaws[0].jaw, Jaw::fixed);
  expectBox(jaws[0], -0.25, -0.25, 3, 0);
  expectBox(jaws[1], -0.25, 2, 3, 2.25);
}

TEST(DrawnHolding, ClampsAndWhatIsToBeKeptClearOf) {
  HeldPlate plate = heldPlate();
  plate.setup.jaw.reset();
  Obstacle clamp;
  clamp.along[0] = std::pair(lettered("1"), lettered("1 1/2"));
  clamp.along[1] = std::pair(lettered("-1"), lettered("15/16"));
  plate.setup.held.clamps = {clamp};
  Obstacle rail;
  rail.along[1] = std::pair(lettered("1 3/4"), lettered("3"));
  plate.setup.held.clearOf = {rail};
  const HeldWork held = drawn(plate);
  ASSERT_EQ(of(FindingCode::clamp, held).size(), 1u);
  expectBox(of(FindingCode::clamp, held)[0], 1, -0.25, 1.5, 0.9375);
  EXPECT_FALSE(of(FindingCode::clamp, held)[0].met);
  ASSERT_EQ(of(FindingCode::clearOf, held).size(), 1u);
  expectBox(of(FindingCode::clearOf, held)[0], -0.25, 1.75, 4.25, 2.25);
}

TEST(DrawnHolding, OfWorkWithoutASizeIsEmpty) {
  HeldPlate plate = heldPlate();
  std::erase_if(plate.part.features, [](const Feature& one) { return one.id == "R"; });
  std::erase_if(plate.part.readings, [](const Reading& one) { return one.to == "R"; });
  EXPECT_EQ(drawn(plate).drawn, DrawnHolding{});
}

}  // namespace
}  // namespace inchwright::test
