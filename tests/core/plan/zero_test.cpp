#include "core/plan/zero.h"

#include <gtest/gtest.h>

#include "tests/core/plan/plates.h"

namespace inchwright {
namespace {

using namespace plates;

Rational sixtyFourthsAt(int n) {
  return Rational(n * kSixtyFourth);
}

Result<std::optional<FoundZero>> zeroAlong(const Plate& plate, const Setup& setup, Axis axis) {
  return findZero({plate.part, plate.solution, setup, jobWith().machine}, axis);
}

FoundZero zeroOf(const Plate& plate, const Setup& setup, Axis axis) {
  const auto found = zeroAlong(plate, setup, axis);
  EXPECT_TRUE(found.ok()) << found.error().text;
  EXPECT_TRUE(*found);
  return found.ok() && *found ? **found : FoundZero();
}

TEST(FindZero, IsAtAPlace) {
  EXPECT_EQ(zeroOf(block(), setupWith({zeroAt(Axis::x, "L")}), Axis::x).ticks, sixtyFourthsAt(32));
  auto offset = setupWith({zeroAt(Axis::x, "R")});
  offset.zero[0].offset = figure("-1/4");
  EXPECT_EQ(zeroOf(block(), offset, Axis::x).ticks, sixtyFourthsAt(144));
}

TEST(FindZero, IsTheExactMiddle) {
  Plate plate = block();
  plate.putTicks("R", Axis::x, Rational(160 * kSixtyFourth + 1));
  const FoundZero zero = zeroOf(plate, setupWith({zeroMiddle(Axis::x, "L", "R")}), Axis::x);
  EXPECT_EQ(zero.ticks, *Rational::of(192 * kSixtyFourth + 1, 2));  // half a tick is kept
  EXPECT_TRUE(zero.stockShift.isZero());
}

// Stock of 1/16 left and 3/32 right: the middle of the stock lies 1/64 to the right of the part's.
TEST(FindZero, KeepsMiddleOfStockAndOfPartApart) {
  auto setup = setupWith({zeroMiddle(Axis::x, "L", "R"), zeroMiddle(Axis::y, "F", "K", true)});
  leaveOn(setup, Side::left, "1/16");
  leaveOn(setup, Side::right, "3/32");
  leaveOn(setup, Side::front, "1/8");
  const FoundZero finished = zeroOf(block(), setup, Axis::x);
  EXPECT_EQ(finished.ticks, sixtyFourthsAt(96));
  EXPECT_EQ(finished.stockShift, sixtyFourthsAt(1));
  const FoundZero stock = zeroOf(block(), setup, Axis::y);
  EXPECT_EQ(stock.stockShift, sixtyFourthsAt(-4));
  EXPECT_EQ(stock.ticks, sixtyFourthsAt(32 - 4));
}

TEST(FindZero, EqualStockShiftsNothing) {
  auto setup = setupWith({zeroMiddle(Axis::x, "L", "R", true)});
  leaveOn(setup, Side::left, "1/16");
  leaveOn(setup, Side::right, "1/16");
  EXPECT_TRUE(zeroOf(block(), setup, Axis::x).stockShift.isZero());
  EXPECT_EQ(zeroOf(block(), setup, Axis::x).ticks, sixtyFourthsAt(96));
}

TEST(FindZero, CarriesDoubtsOfItsPlaces) {
  Plate plate = block();
  plate.at("R", Axis::x).disputed = true;
  plate.at("L", Axis::x).how = How::rounded;
  const FoundZero zero = zeroOf(plate, setupWith({zeroMiddle(Axis::x, "L", "R")}), Axis::x);
  EXPECT_TRUE(zero.disputed);
  EXPECT_FALSE(zero.exact);
}

TEST(FindZero, IsAsExactAsItsOffset) {
  auto setup = setupWith({zeroAt(Axis::x, "L")});
  setup.zero[0].offset = figure("1/4");
  EXPECT_TRUE(zeroOf(block(), setup, Axis::x).exact);
  setup.zero[0].offset = figure("1/3");
  EXPECT_FALSE(zeroOf(block(), setup, Axis::x).exact);
  Plate plate = block();
  plate.at("L", Axis::x).how = How::rounded;
  setup.zero[0].offset = figure("1/4");
  EXPECT_FALSE(zeroOf(plate, setup, Axis::x).exact);
}

TEST(FindZero, RefusesWhatCantBeZero) {
  Plate plate = block();
  plate.hole("A", 64, 32, "1/4");
  plate.at("A", Axis::x).group = 1;
  const auto code = [&](std::vector<ZeroAlong> zero) {
    const auto found = zeroAlong(plate, setupWith(std::move(zero)), Axis::x);
    return found.ok() ? std::string("none") : found.error().text;
  };
  EXPECT_EQ(code({zeroAt(Axis::x, "Q")}), "zero is on Q, which the part does not have");
  EXPECT_EQ(code({zeroAt(Axis::x, "A")}), "zero is on A, which nothing places along x");
  EXPECT_EQ(code({zeroAt(Axis::x, "F")}),
            "zero along x can't be on F, which has no position there");
  ZeroAlong odd = zeroMiddle(Axis::x, "L", "R");
  odd.middle.push_back("L");
  EXPECT_EQ(code({odd}), "a middle lies between two places");
  EXPECT_EQ(zeroAlong(plate, setupWith({zeroAt(Axis::x, "Q")}), Axis::x).error().code,
            ErrorCode::notFound);
  EXPECT_EQ(zeroAlong(plate, setupWith({zeroAt(Axis::x, "A")}), Axis::x).error().code,
            ErrorCode::unsolvable);
}

TEST(FindZero, RefusesAnOverflow) {
  Plate plate = block();
  plate.putTicks("R", Axis::x, *Rational::of((Int128{1} << 126), 1));
  plate.putTicks("L", Axis::x, *Rational::of((Int128{1} << 126), 1));
  const auto zero = zeroAlong(plate, setupWith({zeroMiddle(Axis::x, "L", "R")}), Axis::x);
  ASSERT_FALSE(zero.ok());
  EXPECT_EQ(zero.error().code, ErrorCode::outOfRange);
}

TEST(CustomaryZero, IsTheLowerOuterSideElseTheFirstPlace) {
  EXPECT_EQ(customaryZero(block().part, block().solution, Axis::x)->at, "L");
  EXPECT_EQ(customaryZero(block().part, block().solution, Axis::z)->at, "U");
  Plate bare;
  bare.hole("A", 64, 32, "1/4").hole("B", 96, 32, "1/4");
  bare.at("A", Axis::x).group = 1;
  EXPECT_EQ(customaryZero(bare.part, bare.solution, Axis::x)->at, "B");
  EXPECT_EQ(customaryZero(bare.part, bare.solution, Axis::y)->at, "A");
  EXPECT_FALSE(customaryZero(bare.part, bare.solution, Axis::z));
  const auto none = zeroAlong(bare, setupWith({}), Axis::z);
  ASSERT_TRUE(none.ok());
  EXPECT_FALSE(*none);
}

TEST(FeatureOfPlace, FindsTheHolesOfRingsAndTheEndsOfSlots) {
  Plate plate;
  plate.feature("D", FeatureKind::ring, 0, 0);
  plate.last().as<kind::Ring>()->holes = 12;
  plate.feature("S", FeatureKind::slot, 0, 0);
  EXPECT_EQ(featureOfPlace(plate.part, "D12")->id, "D");
  EXPECT_EQ(featureOfPlace(plate.part, "S2")->id, "S");
  for (const char* absent : {"D13", "D0", "S3", "", "E"}) {
    EXPECT_EQ(featureOfPlace(plate.part, absent), nullptr) << absent;
  }
}

}  // namespace
}  // namespace inchwright
