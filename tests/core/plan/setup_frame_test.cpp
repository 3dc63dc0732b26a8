#include "core/plan/setup_frame.h"

#include <gtest/gtest.h>

#include <random>
#include <string>

#include "tests/core/plan/plates.h"

namespace inchwright {
namespace {

using namespace plates;

// Zero at the lower side of each axis, so that every face has one.
Setup lowerSides(Face face, int turn) {
  return setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F"), zeroAt(Axis::z, "U")}, face, turn);
}

SetupFrame framed(const Setup& setup, const Machine& machine = jobWith().machine) {
  const Plate plate = block();
  const Result<SetupFrame> frame = frameOf(plate.part, plate.solution, setup, machine);
  EXPECT_TRUE(frame.ok());
  return frame.ok() ? *frame : SetupFrame{};
}

TEST(SetupFrame, BothAxesOfTheTableAreThoseOfTheFace) {
  for (const Face face : kFaces) {
    for (const int turn : {0, 90, 180, 270}) {
      SCOPED_TRACE(std::string(nameOf(face)) + " " + std::to_string(turn));
      const SetupFrame frame = framed(lowerSides(face, turn));
      EXPECT_EQ(frame.axes, machineAxes(face, turn));
      EXPECT_EQ(frame.x.part, frame.axes.x);
      EXPECT_EQ(frame.y.part, frame.axes.y);
      EXPECT_EQ(frame.x.letter(), 'X');
      EXPECT_EQ(frame.y.letter(), 'Y');
      for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const TableAxis* along = frame.along(axis);
        const bool inFace = axis != frame.axes.z.axis;
        ASSERT_EQ(along != nullptr, inFace);
        if (!inFace) continue;
        EXPECT_EQ(along->part.axis, axis);
        ASSERT_TRUE(along->zero.has_value());
      }
    }
  }
}

// What stands at zero shows 0; what stands an inch farther along the part's axis shows an inch,
// with the sign of the way it lies and the way the readout counts.
TEST(SetupFrame, PositionsAreTakenFromZeroInTheReadoutsOwnWay) {
  for (const Face face : kFaces) {
    for (const int turn : {0, 90, 180, 270}) {
      for (const bool flipped : {false, true}) {
        const Machine machine = flipped ? jobWith(CountsX::left, CountsY::towards).machine
                                        : jobWith(CountsX::right, CountsY::away).machine;
        const SetupFrame frame = framed(lowerSides(face, turn), machine);
        for (const TableAxis* axis : {&frame.x, &frame.y}) {
          const Rational zero = axis->zero->ticks;
          const Rational inch(Length::kTicksPerInch);
          EXPECT_EQ(axis->onTable(zero), Rational(0));
          EXPECT_EQ(axis->onReadout(zero), Rational(0));
          const auto there = zero.plus(inch);
          ASSERT_TRUE(there.has_value());
          const Rational onTable = axis->part.sign > 0 ? inch : inch.negated();
          EXPECT_EQ(axis->onTable(*there), onTable);
          EXPECT_EQ(axis->onReadout(*there), flipped ? onTable.negated() : onTable);
          EXPECT_EQ(axis->counts, flipped ? -1 : 1);
        }
      }
    }
  }
}

// The turn by 180° is the same as both readouts counting the other way.
TEST(SetupFrame, HalfATurnCountsBackwards) {
  constexpr unsigned kFrameSeed = 90;
  SCOPED_TRACE("seed " + std::to_string(kFrameSeed));
  std::mt19937_64 random(kFrameSeed);
  for (const Face face : kFaces) {
    const SetupFrame plain = framed(lowerSides(face, 0));
    const SetupFrame turned =
        framed(lowerSides(face, 180), jobWith(CountsX::left, CountsY::towards).machine);
    for (int i = 0; i < 50; ++i) {
      const Rational at(static_cast<std::int64_t>(random() % 10'000'000'000));
      EXPECT_EQ(plain.x.onReadout(at), turned.x.onReadout(at));
      EXPECT_EQ(plain.y.onReadout(at), turned.y.onReadout(at));
    }
  }
}

TEST(SetupFrame, WithoutAZeroOrBeyondTheRangeThereIsNoFigure) {
  SetupFrame frame = framed(lowerSides(Face::top, 0));
  const Rational huge = *Rational::of(Int128{1} << 126, 1);
  frame.x.zero->ticks = huge.negated();
  EXPECT_EQ(frame.x.onTable(huge), std::nullopt);
  frame.x.zero.reset();
  EXPECT_EQ(frame.x.onTable(Rational(0)), std::nullopt);
  EXPECT_EQ(frame.x.onReadout(Rational(0)), std::nullopt);
  const auto none = coordinateOf(std::nullopt, true, Step{});
  ASSERT_FALSE(none.ok());
  EXPECT_EQ(none.error().code, ErrorCode::outOfRange);
}

TEST(CoordinateOf, IsRoundedOnceAndSaysWhatItIs) {
  const Step step;  // 0.0005 in
  const auto at = [&](const Rational& ticks, bool exact) {
    return coordinateOf(ticks, exact, step).value();
  };
  EXPECT_EQ(at(Rational(kSixtyFourth), true).text, "0.0155");
  EXPECT_TRUE(at(Rational(kSixtyFourth), true).exact);
  EXPECT_EQ(at(Rational(kSixtyFourth), true).value.ticks(), kSixtyFourth);
  EXPECT_FALSE(at(Rational(kSixtyFourth), false).exact);
  EXPECT_FALSE(at(*Rational::of(1, 3), true).exact);
  EXPECT_EQ(at(Rational(-3 * 635'000), true).text, "-0.0010");  // a tie goes away from zero
  EXPECT_FALSE(coordinateOf(*Rational::of(Int128{1} << 62, 1), true, step).ok());
}

TEST(FrameOf, PassesOnWhatIsWrongWithAZero) {
  const Plate plate = block();
  for (const auto& [place, code] : {std::pair<const char*, ErrorCode>{"Q", ErrorCode::notFound},
                                    {"F", ErrorCode::badRequest}}) {
    const auto frame =
        frameOf(plate.part, plate.solution, setupWith({zeroAt(Axis::x, place)}), jobWith().machine);
    ASSERT_FALSE(frame.ok()) << place;
    EXPECT_EQ(frame.error().code, code) << place;
  }
}

}  // namespace
}  // namespace inchwright
