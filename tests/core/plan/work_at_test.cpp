#include "core/plan/work_at.h"

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

/// The axes of the block's work in a setup.
struct Axes {
  MachineAxes axes;
  TableAxis x;
  TableAxis y;
};

Axes framed(const Setup& setup, const Job& job = jobWith()) {
  const Plate plate = block();
  const Result<WorkAt> work = workAt(job, plate.part, plate.solution, setup);
  EXPECT_TRUE(work.ok());
  if (!work) return {};
  for (const Axis axis : kAxes) {
    const TableAxis* along = work->along(axis);
    EXPECT_EQ(along != nullptr, axis != work->axes.z.axis);
    if (along == nullptr) continue;
    EXPECT_EQ(along->part.axis, axis);
    EXPECT_TRUE(along->zero.has_value());
  }
  return {work->axes, work->x, work->y};
}

TEST(WorkAt, BothAxesOfTheTableAreThoseOfTheFace) {
  for (const Face face : kSides) {
    for (const int turn : {0, 90, 180, 270}) {
      SCOPED_TRACE(std::string(nameOf(face)) + " " + std::to_string(turn));
      const Axes frame = framed(lowerSides(face, turn));
      EXPECT_EQ(frame.axes, machineAxes(face, turn));
      EXPECT_EQ(frame.x.part, frame.axes.x);
      EXPECT_EQ(frame.y.part, frame.axes.y);
      EXPECT_EQ(frame.x.letter(), 'X');
      EXPECT_EQ(frame.y.letter(), 'Y');
    }
  }
}

// What stands at zero shows 0; what stands an inch farther along the part's axis shows an inch,
// with the sign of the way it lies and the way the readout counts.
TEST(WorkAt, PositionsAreTakenFromZeroInTheReadoutsOwnWay) {
  for (const Face face : kSides) {
    for (const int turn : {0, 90, 180, 270}) {
      for (const bool flipped : {false, true}) {
        const Job machine = flipped ? jobWith(CountsX::left, CountsY::towards) : jobWith();
        const Axes frame = framed(lowerSides(face, turn), machine);
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
TEST(WorkAt, HalfATurnCountsBackwards) {
  constexpr unsigned kFrameSeed = 90;
  SCOPED_TRACE("seed " + std::to_string(kFrameSeed));
  std::mt19937_64 random(kFrameSeed);
  for (const Face face : kSides) {
    const Axes plain = framed(lowerSides(face, 0));
    const Axes turned = framed(lowerSides(face, 180), jobWith(CountsX::left, CountsY::towards));
    for (int i = 0; i < 50; ++i) {
      const Rational at(static_cast<std::int64_t>(random() % 10'000'000'000));
      EXPECT_EQ(plain.x.onReadout(at), turned.x.onReadout(at));
      EXPECT_EQ(plain.y.onReadout(at), turned.y.onReadout(at));
    }
  }
}

TEST(WorkAt, WithoutAZeroOrBeyondTheRangeThereIsNoFigure) {
  Axes frame = framed(lowerSides(Face::top, 0));
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

TEST(WorkAt, PassesOnWhatIsWrongWithAZero) {
  const Plate plate = block();
  for (const auto& [place, code] : {std::pair<const char*, ErrorCode>{"Q", ErrorCode::notFound},
                                    {"F", ErrorCode::badRequest}}) {
    const auto setup = setupWith({zeroAt(Axis::x, place)});
    const Job job = jobWith();
    const auto work = workAt(job, plate.part, plate.solution, setup);
    ASSERT_FALSE(work.ok()) << place;
    EXPECT_EQ(work.error().code, code) << place;
  }
}

}  // namespace
}  // namespace inchwright
