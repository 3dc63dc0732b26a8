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

// Found by hand: stock on a side whose edge is not named as that side was left out of the preset.
TEST(TouchOff, StockCountsOnASideThatNoEdgeBearsTheNameOf) {
  Plate plate;
  plate.edge("E", Axis::x, 32).edge("S", Axis::x, 64).edge("R", Axis::x, 160, Side::right);
  plate.edge("F", Axis::y, -16, Side::front);
  auto setup = setupWith({zeroAt(Axis::x, "E"), zeroAt(Axis::y, "F")});
  leaveOn(setup, Side::left, "1/16");
  const SetupWords words = saidOf(plate, setup).words;
  EXPECT_EQ(words.touchOff[0].steps.at(0),
            "Touch the left side (E, 1/16 still on it) with the 0.200 tip: set X -0.1625");
  ASSERT_EQ(words.warnings.size(), 1u);
  EXPECT_EQ(
      words.warnings[0],
      "stock is left on the left side, but no edge is named as it: E, the outermost, is taken "
      "for it");
  // No edge can be the back: that is told, and nothing is made up.
  leaveOn(setup, Side::left, "0");
  leaveOn(setup, Side::back, "1/16");
  plate.part.features.back().shape = kind::Edge{Axis::y, Side::front};
  const SetupWords missing = saidOf(plate, setup).words;
  ASSERT_EQ(missing.warnings.size(), 1u);
  EXPECT_EQ(missing.warnings[0],
            "stock is left on the back side, but no edge is named as it: no preset counts it in");
}

TEST(TouchOff, AMiddleWithAStandInHalvesTheStockAsItIs) {
  Plate plate;
  plate.edge("E", Axis::x, 32).edge("R", Axis::x, 160, Side::right);
  plate.edge("F", Axis::y, -16, Side::front);
  auto setup = setupWith({zeroMiddle(Axis::x, "E", "R", true), zeroAt(Axis::y, "F")});
  leaveOn(setup, Side::left, "1/16");
  const Touch touch = touchesOf(plate, setup, jobWith()).at(0);
  ASSERT_EQ(touch.steps.size(), 3u);
  EXPECT_TRUE(touch.steps[1].ends_with("should read about +2.2625")) << touch.steps[1];
  EXPECT_EQ(touch.steps[2],
            "Drive back to half of what it reads, the middle of the stock: set X +0.0000");
}

// Found by hand: of two sides that don't face apart the tip does not cancel.
TEST(TouchOff, SidesThatDontFaceApartAreNotHalved) {
  Plate plate = block();
  plate.edge("L2", Axis::x, 96, Side::left);
  const Touch same = touchesOf(plate, setupWith({zeroMiddle(Axis::x, "L", "L2")}), jobWith()).at(0);
  ASSERT_EQ(same.steps.size(), 2u);
  // Zero at 1.000; L is half an inch to the left of it and touched from its left.
  EXPECT_EQ(same.steps[0], "Touch the left side (L) with the 0.200 tip: set X -0.6000");
  EXPECT_EQ(same.steps[1], "Touch the left side (L2) with the 0.200 tip: X should read +0.4000");
}

TEST(TouchOff, SidesThatFaceEachOtherAreTouchedFromBetween) {
  Plate plate;
  plate.edge("A", Axis::x, 32, Side::right).edge("B", Axis::x, 160, Side::left);
  plate.edge("F", Axis::y, 0, Side::front);
  const Touch touch =
      touchesOf(plate, setupWith({zeroMiddle(Axis::x, "A", "B"), zeroAt(Axis::y, "F")}), jobWith())
          .at(0);
  ASSERT_EQ(touch.steps.size(), 3u);
  // Two inches between them, less the tip.
  EXPECT_TRUE(touch.steps[1].ends_with("should read about +1.8000")) << touch.steps[1];
  EXPECT_TRUE(touch.steps[2].ends_with("set X +0.0000")) << touch.steps[2];
}

TEST(TouchOff, AHoleThatThisSetupMakesCantBePickedUpYet) {
  Plate plate = block();
  plate.hole("A", 64, 32, "1/4");
  const auto setup = setupWith({zeroAt(Axis::x, "A"), zeroAt(Axis::y, "F")});
  const auto warned = [&] { return saidOf(plate, setup).words.warnings; };
  ASSERT_EQ(warned().size(), 1u);
  EXPECT_EQ(warned()[0],
            "X0 is on A, which this setup makes: there is nothing to pick up until it is made. Set "
            "zero on a side first");
  // Made in an earlier setup, or on another face, it is there.
  auto earlier = lowerCorner();
  earlier.name = "0";
  plate.part.setups = {earlier, setup};
  EXPECT_TRUE(warned().empty());
  plate.part.setups[0].face = Face::bottom;
  EXPECT_EQ(warned().size(), 1u);
  plate.part.features.back().face = Face::bottom;
  EXPECT_TRUE(warned().empty());
}

TEST(TouchOff, TheDepthSaysWhatItRounds) {
  auto setup = setupWith({});
  leaveOn(setup, Side::top, "3/64");
  EXPECT_EQ(touchesOf(block(), setup, jobWith()).at(2).steps.at(0),
            "Touch the top of the work with the tool, 3/64 still on it: set Z +0.0470 (exactly "
            "0.046875)");
}

// 2.952755905512 is not exactly 75 mm, and 0.0787 is not what the print says.
TEST(TouchOff, FiguresOfTheOtherUnitAreSaidInIt) {
  auto setup = setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")});
  leaveOn(setup, Side::left, "2 mm");
  setup.zero[1].offset = figure("75 mm");
  const std::vector<Touch> touches = touchesOf(block(), setup, jobWith());
  EXPECT_EQ(touches[0].steps.at(0),
            "Touch the left side (L, 2 mm still on it) with the 0.200 tip: set X -0.1785 (exactly "
            "-4.54 mm)");
  EXPECT_EQ(touches[1].what, "at F + 75 mm away");
  EXPECT_TRUE(touches[1].steps.at(0).ends_with("set Y -3.0530 (exactly -77.54 mm)"))
      << touches[1].steps.at(0);
}

TEST(TouchOff, OddFiguresOfASetupAreAskedAbout) {
  auto setup = setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F"), zeroAt(Axis::z, "T")});
  leaveOn(setup, Side::left, "1/46");
  setup.zero[0].offset = figure("1/3");
  setup.zero[2].offset = figure("4/12");
  Job job = jobWith();
  job.machine.finder = figure("3/17");
  const SetupWords words = saidOf(block(), setup, job).words;
  ASSERT_EQ(words.warnings.size(), 4u);
  EXPECT_TRUE(words.warnings[0].starts_with("the stock on the left is lettered 1/46: "));
  EXPECT_TRUE(words.warnings[1].starts_with("the offset of X0 is lettered 1/3: "));
  EXPECT_TRUE(words.warnings[2].starts_with("the offset of Z0 is lettered 4/12: "));
  EXPECT_TRUE(words.warnings[3].starts_with("the finder is lettered 3/17: "));
  for (const std::string& warning : words.warnings) EXPECT_FALSE(warning.ends_with(": "));
}

TEST(TouchOff, PicksUpWhatEachKindOffers) {
  Plate plate = block();
  plate.feature("G", FeatureKind::ring, 96, 32);
  plate.last().as<kind::Ring>()->holes = 2;
  plate.put("G1", Axis::x, 112)
      .put("G1", Axis::y, 32)
      .put("G2", Axis::x, 80)
      .put("G2", Axis::y, 32);
  plate.feature("D", FeatureKind::row, 48, 16);
  plate.last().as<kind::Row>()->holes = 2;
  plate.put("D1", Axis::x, 48).put("D1", Axis::y, 16).put("D2", Axis::x, 64).put("D2", Axis::y, 16);
  plate.feature("S", FeatureKind::slot, 64, 16);
  plate.put("S1", Axis::x, 48).put("S1", Axis::y, 16).put("S2", Axis::x, 80).put("S2", Axis::y, 16);
  plate.feature("P", FeatureKind::point, 40, 0);
  const auto said = [&](const char* place, English english = English::uk) {
    const auto setup = setupWith({zeroAt(Axis::x, place), zeroAt(Axis::y, "F")});
    return saidOf(plate, setup, jobWith(), english).words.touchOff.at(0).steps.at(0);
  };
  EXPECT_EQ(said("G"),
            "Pick up the centre of ring G, midway between opposite holes: set X +0.0000");
  EXPECT_EQ(said("G", English::us),
            "Pick up the center of ring G, midway between opposite holes: set X +0.0000");
  EXPECT_EQ(said("G2"), "Pick up the bore of G2 with an indicator or a plug: set X +0.0000");
  EXPECT_EQ(said("D2"), "Pick up the bore of D2 with an indicator or a plug: set X +0.0000");
  EXPECT_EQ(said("D"), "Pick up the bore of D with an indicator or a plug: set X +0.0000");
  EXPECT_EQ(said("S"), "Pick up the middle of slot S, its walls halved: set X +0.0000");
  EXPECT_EQ(said("S1"),
            "Pick up the end S1 of the slot with an indicator or a plug: set X +0.0000");
  EXPECT_EQ(said("P"), "Pick up point P with a pointer: set X +0.0000");
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
