#include "core/plan/touch_off.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <string>

#include "tests/core/plan/said.h"

namespace inchwright {
namespace {

using namespace plates;

using Touch = SetupWords::Touch;

std::vector<Touch> touchesOf(const Plate& plate, const Setup& setup, const Job& job) {
  return saidOf(plate, setup, job).words.touchOff;
}

/// A little shop of its own, in inches and doubles: a block on a table, a tip that is driven
/// against a side of it, and a readout. Knows nothing of the code under test.
struct Shop {
  // Unit vectors of the machine in the part's frame before the turn, from the contract.
  static std::array<std::array<double, 3>, 2> flat(Face up) {
    switch (up) {
      case Face::top:
        return {{{1, 0, 0}, {0, 1, 0}}};
      case Face::bottom:
        return {{{1, 0, 0}, {0, -1, 0}}};
      case Face::front:
        return {{{1, 0, 0}, {0, 0, 1}}};
      case Face::back:
        return {{{-1, 0, 0}, {0, 0, 1}}};
      case Face::left:
        return {{{0, -1, 0}, {0, 0, 1}}};
      case Face::right:
        break;
    }
    return {{{0, 1, 0}, {0, 0, 1}}};
  }

  Shop(Face up, int turn, bool right, bool away) : right_(right), away_(away) {
    const auto before = flat(up);
    constexpr int kCos[] = {1, 0, -1, 0}, kSin[] = {0, 1, 0, -1};
    const int q = turn / 90;
    for (std::size_t i = 0; i < 3; ++i) {
      x_[i] = kCos[q] * before[0][i] - kSin[q] * before[1][i];
      y_[i] = kSin[q] * before[0][i] + kCos[q] * before[1][i];
    }
  }

  // What the readout of the machine's X or Y gives at a spot of the part.
  double readout(bool alongX, const std::array<double, 3>& spot) const {
    const std::array<double, 3>& axis = alongX ? x_ : y_;
    const double table = axis[0] * spot[0] + axis[1] * spot[1] + axis[2] * spot[2];
    return (alongX ? right_ : away_) ? table : -table;
  }

  // Which of the machine's axes a direction of the part runs along.
  bool runsAlongX(const std::array<double, 3>& way) const {
    return x_[0] * way[0] + x_[1] * way[1] + x_[2] * way[2] != 0;
  }
  const char* facing(const std::array<double, 3>& way) const {
    const double x = x_[0] * way[0] + x_[1] * way[1] + x_[2] * way[2];
    const double y = y_[0] * way[0] + y_[1] * way[1] + y_[2] * way[2];
    return x > 0 ? "right" : x < 0 ? "left" : y > 0 ? "far" : "near";
  }

 private:
  std::array<double, 3> x_{}, y_{};
  bool right_, away_;
};

std::string written(double inches) {
  char text[32];
  std::snprintf(text, sizeof text, "%+.4f", inches == 0 ? 0.0 : inches);
  // A readout shows a point in every locale.
  std::string shown = text;
  std::replace(shown.begin(), shown.end(), ',', '.');
  return shown;
}

struct SideOf {
  const char* id;
  Side side;
  std::array<double, 3> outward;
  double at;     ///< finished, inches along its axis
  double stock;  ///< inches
};

// The block of plates.h, with stock on every side, unequal at the two ends.
constexpr SideOf kBlockSides[] = {
    {"L", Side::left, {-1, 0, 0}, 0.5, 0.0625},  {"R", Side::right, {1, 0, 0}, 2.5, 0.1875},
    {"F", Side::front, {0, -1, 0}, -0.25, 0.25}, {"K", Side::back, {0, 1, 0}, 1.25, 0.125},
    {"U", Side::bottom, {0, 0, -1}, 0.125, 0.5}, {"T", Side::top, {0, 0, 1}, 1.125, 0.375}};

std::array<double, 3> onSide(const SideOf& side, double beyond) {
  std::array<double, 3> spot{0, 0, 0};
  for (std::size_t i = 0; i < 3; ++i) {
    if (side.outward[i] != 0) spot[i] = side.at + side.outward[i] * beyond;
  }
  return spot;
}

Setup stocked(std::vector<ZeroAlong> zero, Face face, int turn) {
  auto setup = setupWith(std::move(zero), face, turn);
  for (const SideOf& side : kBlockSides) leaveOn(setup, side.side, std::to_string(side.stock));
  return setup;
}

// Runs over every face, turn and way of counting.
template <class Check>
void inEverySetup(Check check) {
  for (const Face face : kSides) {
    for (int turn = 0; turn < 360; turn += 90) {
      for (int counts = 0; counts < 4; ++counts) {
        SCOPED_TRACE(std::string(nameOf(face)) + " turned " + std::to_string(turn) + ", counts " +
                     std::to_string(counts));
        const bool right = counts % 2 == 0, away = counts / 2 == 0;
        const Job job = jobWith(right ? CountsX::right : CountsX::left,
                                away ? CountsY::away : CountsY::towards);
        check(face, turn, Shop(face, turn, right, away), job);
      }
    }
  }
}

const Touch& along(const std::vector<Touch>& touches, bool alongX) {
  return touches.at(alongX ? 0 : 1);
}

TEST(TouchOffSimulated, ASideWithStockPresetsWhatTheReadoutMustShow) {
  int checked = 0;
  inEverySetup([&](Face face, int turn, const Shop& shop, const Job& job) {
    for (const SideOf& side : kBlockSides) {
      const Axis axis = axisAcross(side.side);
      if (axis == axisAcross(face)) continue;
      const auto setup = stocked({zeroAt(axis, side.id)}, face, turn);
      const bool alongX = shop.runsAlongX(side.outward);
      // The tip's centre is half of 0.200 outside the stock; zero is the finished side.
      const double preset = shop.readout(alongX, onSide(side, side.stock + 0.1)) -
                            shop.readout(alongX, onSide(side, 0));
      const std::vector<Touch> touches = touchesOf(block(), setup, job);
      const std::string& step = along(touches, alongX).steps.at(0);
      EXPECT_TRUE(step.ends_with(std::string("set ") + (alongX ? "X " : "Y ") + written(preset)))
          << step << " where the model has " << written(preset);
      EXPECT_NE(step.find(std::string("the ") + shop.facing(side.outward) + " side (" + side.id),
                std::string::npos)
          << step;
      ++checked;
    }
  });
  EXPECT_EQ(checked, 6 * 4 * 4 * 4);
}

TEST(TouchOffSimulated, AMiddleIsHalvedBetweenTheSidesAsTheyAre) {
  inEverySetup([&](Face face, int turn, const Shop& shop, const Job& job) {
    for (std::size_t i = 0; i < 6; i += 2) {
      const SideOf &low = kBlockSides[i], &high = kBlockSides[i + 1];
      const Axis axis = axisAcross(low.side);
      if (axis == axisAcross(face)) continue;
      for (const bool ofStock : {false, true}) {
        const auto setup = stocked({zeroMiddle(axis, low.id, high.id, ofStock)}, face, turn);
        const bool alongX = shop.runsAlongX(low.outward);
        const double one = shop.readout(alongX, onSide(low, low.stock + 0.1));
        const double other = shop.readout(alongX, onSide(high, high.stock + 0.1));
        const double finished =
            (shop.readout(alongX, onSide(low, 0)) + shop.readout(alongX, onSide(high, 0))) / 2;
        const double preset = ofStock ? 0 : (one + other) / 2 - finished;
        const Touch touch = along(touchesOf(block(), setup, job), alongX);
        ASSERT_EQ(touch.steps.size(), 3u);
        // The side touched first is the left or the near one.
        const bool lowFirst =
            std::string("left near").find(shop.facing(low.outward)) != std::string::npos;
        const double read = lowFirst ? other - one : one - other;
        EXPECT_NE(touch.steps[0].find(lowFirst ? low.id : high.id), std::string::npos);
        EXPECT_TRUE(touch.steps[1].ends_with(written(read))) << touch.steps[1] << read;
        EXPECT_TRUE(touch.steps[2].ends_with(written(preset))) << touch.steps[2] << preset;
      }
    }
  });
}

// The examples of the shop's own custom: half the tip, with the sign of the side.
TEST(TouchOff, SaysTheExampleOfTheTrade) {
  auto setup = setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")});
  std::vector<Touch> touches = touchesOf(block(), setup, jobWith());
  ASSERT_EQ(touches.size(), 3u);
  EXPECT_EQ(touches[0].steps.at(0), "Touch the left side (L) with the 0.200 tip: set X -0.1000");
  EXPECT_EQ(touches[1].steps.at(0), "Touch the near side (F) with the 0.200 tip: set Y -0.1000");
  leaveOn(setup, Side::left, "1/16");
  touches = touchesOf(block(), setup, jobWith());
  EXPECT_EQ(touches[0].steps.at(0),
            "Touch the left side (L, 1/16 still on it) with the 0.200 tip: set X -0.1625");
  touches = touchesOf(block(), setup, jobWith(CountsX::left));
  EXPECT_TRUE(touches[0].steps.at(0).ends_with("set X +0.1625"));
}

TEST(TouchOff, PresetsAreExactWhereTheStepRoundsThem) {
  auto setup = setupWith({zeroAt(Axis::x, "L")});
  leaveOn(setup, Side::left, "3/64");
  const std::vector<Touch> touches = touchesOf(block(), setup, jobWith());
  EXPECT_TRUE(touches[0].steps.at(0).ends_with("set X -0.1470 (exactly -0.146875)"))
      << touches[0].steps.at(0);
}

TEST(TouchOff, AnOffsetMovesThePreset) {
  auto setup = setupWith({zeroAt(Axis::x, "L")});
  setup.zero[0].offset = figure("1/4");
  const std::vector<Touch> touches = touchesOf(block(), setup, jobWith());
  EXPECT_EQ(touches[0].what, "at L + 1/4 to the right");
  EXPECT_TRUE(touches[0].steps.at(0).ends_with("set X -0.3500"));
}

TEST(TouchOff, PicksUpABore) {
  Plate plate = block();
  plate.hole("A", 64, 32, "1/4", Make::ream).hole("B", 128, 32, "1/4", Make::ream);
  const auto at = setupWith({zeroAt(Axis::x, "A"), zeroAt(Axis::y, "A")});
  const std::vector<Touch> touches = touchesOf(plate, at, jobWith());
  EXPECT_EQ(touches[0].steps.at(0),
            "Pick up the bore of A with an indicator or a plug: set X +0.0000");
  const auto between = setupWith({zeroMiddle(Axis::x, "B", "A"), zeroAt(Axis::y, "A")});
  const Touch middle = touchesOf(plate, between, jobWith(CountsX::left)).at(0);
  ASSERT_EQ(middle.steps.size(), 3u);
  EXPECT_NE(middle.steps[0].find("bore of A"), std::string::npos);
  EXPECT_TRUE(middle.steps[1].ends_with("should read about -1.0000")) << middle.steps[1];
  EXPECT_TRUE(middle.steps[2].ends_with("set X +0.0000"));
}

TEST(TouchOff, AnInnerEdgeMayBeTouchedFromEitherSide) {
  Plate plate = block();
  plate.edge("S", Axis::x, 64);
  const Touch touch = touchesOf(plate, setupWith({zeroAt(Axis::x, "S")}), jobWith()).at(0);
  EXPECT_EQ(
      touch.steps.at(0),
      "Touch edge S with the 0.200 tip: standing left of it, set X -0.1000; standing right of "
      "it, set X +0.1000");
}

TEST(TouchOff, AMixedMiddleIsTakenFromOneAndProvedOnTheOther) {
  Plate plate = block();
  plate.hole("A", 96, 32, "1/4");
  const Touch touch = touchesOf(plate, setupWith({zeroMiddle(Axis::x, "L", "A")}), jobWith()).at(0);
  ASSERT_EQ(touch.steps.size(), 2u);
  EXPECT_TRUE(touch.steps[0].ends_with("set X -0.6000")) << touch.steps[0];
  EXPECT_TRUE(touch.steps[1].ends_with("X should read +0.5000")) << touch.steps[1];
}

TEST(TouchOff, DepthsCountFromTheFinishedTop) {
  auto setup = setupWith({});
  EXPECT_EQ(touchesOf(block(), setup, jobWith()).at(2).steps.at(0),
            "Touch the top of the work with the tool: set Z +0.0000");
  leaveOn(setup, Side::top, "1/16");
  EXPECT_EQ(touchesOf(block(), setup, jobWith()).at(2).steps.at(0),
            "Touch the top of the work with the tool, 1/16 still on it: set Z +0.0625");
  setup.zero = {zeroAt(Axis::z, "U")};
  const Touch floor = touchesOf(block(), setup, jobWith()).at(2);
  EXPECT_EQ(floor.what, "at U");
  EXPECT_TRUE(floor.steps.at(0).ends_with("set Z +1.0625")) << floor.steps.at(0);
  // Bottom up: what was the floor is the top, so zero at the part's top lies below.
  auto rolled = setupWith({zeroAt(Axis::z, "T")}, Face::bottom);
  EXPECT_TRUE(touchesOf(block(), rolled, jobWith()).at(2).steps.at(0).ends_with("set Z +1.0000"));
}

TEST(TouchOff, AFinderThatIsNotNamedIsAssumedAndSaid) {
  Job job = jobWith();
  job.machine.finder.reset();
  const Plate plate = block();
  const auto setup = setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")});
  const SetupWords words = saidOf(plate, setup, job).words;
  ASSERT_EQ(words.warnings.size(), 1u);
  EXPECT_EQ(words.warnings[0],
            "the machine names no finder: a 0.200 tip is assumed in the presets");
  job.machine.unit = Unit::millimetre;
  job.machine.step = "0.005";
  EXPECT_TRUE(saidOf(plate, setup, job)
                  .words.touchOff[0]
                  .steps[0]
                  .ends_with("with the 10 tip: set X -5.000"));
}

TEST(TouchOff, AFinderInTheOtherUnitNamesIt) {
  Job job = jobWith();
  job.machine.finder = figure("6 mm", Unit::inch);
  EXPECT_EQ(tipWords(finderTip(job.machine, Unit::inch), Unit::inch), "6 mm");
  EXPECT_EQ(tipWords(finderTip(job.machine, Unit::millimetre), Unit::millimetre), "6");
  EXPECT_EQ(finderTip(job.machine, Unit::inch).diameter.ticks(), 600'000'000);
}

}  // namespace
}  // namespace inchwright
