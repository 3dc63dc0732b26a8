#include "core/place/placing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <string>

#include "core/place/plane_rows.h"
#include "tests/core/place/placed_part.h"
#include "tests/support/part_text.h"

namespace inchwright::test {
namespace {

constexpr double kTick = 1.0 / 2'540'000'000.0;
constexpr double kDegree = std::numbers::pi / 180;

PlacedForTest placed(const std::string& text) {
  return PlacedForTest::of(PartText::read(text));
}

// L and F at 0, A at (1/2, 3/4), B level with it.
const std::string kBase =
    "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\n"
    "b1 x L A 1/2\nb2 y F A 3/4\nb3 x A B 3\nin_line y A B\n";

TEST(Placing, ACentreDistanceAndAnAngle) {
  const auto part = placed(kBase + "hole C 1/8\nr1 centres A C 5/8\nr2 angle A C 55\n");
  EXPECT_NEAR(part.from("A", "C", Axis::x), 0.625 * std::cos(55 * kDegree), kTick);
  EXPECT_NEAR(part.from("A", "C", Axis::y), 0.625 * std::sin(55 * kDegree), kTick);
  EXPECT_EQ(part.position("C", Axis::x)->how, How::numeric);
  EXPECT_EQ(part.position("A", Axis::x)->how, How::exact);
  EXPECT_LE(part.placed.residual, kTick);
  EXPECT_TRUE(part.placed.answers.empty());
}

// Three distances of one trust, rounded to three places: C lies (.625² − 2.691² + 9) / 6 = .358191
// to the right of A by two of them, .80614 from D where .806 is lettered. Which one only checks
// follows from their ids, however the document lists them.
TEST(Placing, WhichReadingOnlyChecksDoesNotHangOnTheirOrder) {
  const std::string base = kBase + "hole D 1/8\nb4 x A D 1\nb5 y A D 1\nhole C 1/8\n";
  std::vector<std::string> lines{"r2 centres A C .625\n", "r10 centres B C 2.691\n",
                                 "r11 centres D C .806\n"};
  std::sort(lines.begin(), lines.end());
  const double right = (0.625 * 0.625 - 2.691 * 2.691 + 9) / 6;
  do {
    const auto part = placed(base + lines[0] + lines[1] + lines[2]);
    EXPECT_NEAR(part.from("A", "C", Axis::x), right, kTick) << lines[0] << lines[1];
    EXPECT_NEAR(part.from("A", "C", Axis::y), std::sqrt(0.625 * 0.625 - right * right), kTick);
    EXPECT_TRUE(part.placed.clashes.empty());
  } while (std::next_permutation(lines.begin(), lines.end()));
}

TEST(Placing, WhatIsChainedFromItFollowsExactly) {
  const auto part = placed(kBase +
                           "hole C 1/8\nhole D 1/8\nr1 centres A C 5/8\nr2 angle A C 55\n"
                           "r3 x C D 1 1/4\nr4 y C D 3/8\nhole E 1/8\nr5 centres D E 1\n"
                           "r6 angle D E 100\n");
  EXPECT_EQ(
      part.position("D", Axis::x)->ticks.toDouble() - part.position("C", Axis::x)->ticks.toDouble(),
      1.25 * 2'540'000'000.0);
  EXPECT_NEAR(part.from("D", "E", Axis::x), std::cos(100 * kDegree), kTick);
}

TEST(Placing, TwoDistancesNameBothAnswersFromTheLowerSides) {
  const std::string text = kBase + "hole C 1/8\nr1 centres A C 2\nr2 centres B C 2\n";
  const auto open = placed(text);
  EXPECT_FALSE(open.isPlaced("C", Axis::x));
  ASSERT_EQ(open.placed.answers.size(), 1U);
  const SeveralAnswers& several = open.placed.answers[0];
  EXPECT_EQ(several.place, "C");
  EXPECT_FALSE(several.isTaken);
  ASSERT_EQ(several.answers.size(), 2U);
  EXPECT_NEAR(several.answers[0][0].toInches(), 2, 1e-9);
  EXPECT_NEAR(std::abs(several.answers[0][1].toInches() - 0.75), std::sqrt(1.75), 1e-9);
  const auto traced = placed(text + "traced C 2.01 2.06\n");
  ASSERT_EQ(traced.placed.answers.size(), 1U);
  EXPECT_TRUE(traced.placed.answers[0].isTaken);
  EXPECT_NEAR(traced.from("F", "C", Axis::y), 0.75 + std::sqrt(1.75), kTick);
  EXPECT_NEAR(traced.placed.answers[0].answers[0][1].toInches(), 0.75 + std::sqrt(1.75), kTick);
}

// A line that touches both holes, 1/8 and 1/4 across: four ways, each shown by where it passes A.
TEST(Placing, ALineThatCanRunInSeveralWaysIsNamed) {
  const std::string text = kBase + "line M\ntangent M A\ntangent M B\n";
  const auto open = placed(text);
  EXPECT_FALSE(open.placed.lines[0].contains("M"));
  ASSERT_EQ(open.placed.answers.size(), 1U);
  const SeveralAnswers& several = open.placed.answers[0];
  EXPECT_EQ(several.place, "M");
  EXPECT_TRUE(several.isLine);
  EXPECT_FALSE(several.isTaken);
  ASSERT_EQ(several.answers.size(), 4U);
  for (const auto& [x, y] : several.answers) {
    EXPECT_NEAR(std::hypot(x.toInches() - 0.5, y.toInches() - 0.75), 1.0 / 8, 1e-9);
  }
  // Traced: the holes are 1/4 in wide, so it is clear which is meant.
  const auto traced = placed(text + "traced M 0.5 0.88 3.5 0.87\n");
  EXPECT_TRUE(traced.placed.lines[0].contains("M"));
  EXPECT_TRUE(traced.placed.answers.empty());
}

// The line that crosses between the holes is as near to the trace at one end, and far off at the
// other.
TEST(Placing, TheTracingTellsALineBesideTwoHolesFromOneThatCrosses) {
  const auto part = placed(
      "edge L x left\nedge F y front\nhole A .42024781\nhole B .70763565\nb1 x L A 25.889347\n"
      "b2 y F A 4.179017\nb3 x L B 10.911743\nb4 y F B 20.795255\nline M\ntangent M A\n"
      "tangent M B\ntraced M 26.03388 4.32384 11.18829 21.02973\n");
  ASSERT_TRUE(part.placed.lines[0].contains("M"));
  const PlaneLine& line = part.placed.lines[0].at("M");
  EXPECT_NEAR(leftOf(line, {25.889347, 4.179017}), .42024781 / 2, 1e-9);
  EXPECT_NEAR(leftOf(line, {10.911743, 20.795255}), .70763565 / 2, 1e-9);
}

// C hangs on A and B, which are level; M runs through both. Right of a level line says nothing.
TEST(Placing, ASideThatNeitherOfTwoIsSettlesNothing) {
  const std::string text =
      "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nb1 x L A 1\nb2 y F A 2\n"
      "b3 x A B 3\nin_line y A B\nhole C 1/4\nr1 centres A C 2\nr2 centres B C 2\nline M\n";
  for (const Side side : {Side::left, Side::right, Side::front, Side::back}) {
    Part part = PartText::read(text);
    for (Feature& one : part.features) {
      if (auto* line = one.as<kind::Line>()) line->through = {"A", "B"};
    }
    Understanding what;
    what.kind = UnderstandingKind::beside;
    what.of = {"C"};
    what.about = "M";
    what.side = side;
    part.understood.push_back(what);
    const bool settles = side == Side::front || side == Side::back;
    EXPECT_EQ(PlacedForTest::of(part).isPlaced("C", Axis::y), settles) << nameOf(side);
  }
}

// D is as far from A and from C as B is: no two holes are one, so it lies on the other side of the
// way from A to C, which rises at acos(3/4).
TEST(Placing, NoPlaceStandsWhereOneThatItHangsOnStands) {
  const auto part = placed(kBase +
                           "hole C 1/8\nr1 centres A C 2\nr2 centres B C 2\ntraced C 2 2.07\n"
                           "hole D 1/8\nr3 centres A D 3\nr4 centres C D 2\n");
  ASSERT_TRUE(part.isPlaced("D", Axis::x));
  EXPECT_NEAR(part.from("A", "D", Axis::x), 3.0 / 8, 1e-8);
  EXPECT_NEAR(part.from("A", "D", Axis::y), 9.0 / 8 * std::sqrt(7.0), 1e-8);
  ASSERT_EQ(part.placed.answers.size(), 1U) << "only of C is there another";
  EXPECT_EQ(part.placed.answers[0].place, "C");
}

TEST(Placing, AGroupMovesAsOneAndIsNamedWhole) {
  const auto part = placed(kBase +
                           "hole C 1/8\nhole D 1/8\nx1 x C D 1/2\nx2 y C D 1/4\n"
                           "r1 centres A D 2\nr2 centres B D 2\ntraced C 1.5 1.81\n");
  ASSERT_EQ(part.placed.answers.size(), 1U);
  EXPECT_EQ(part.placed.answers[0].about, (std::vector<Id>{"C", "D"}));
}

TEST(Placing, ASpareDistanceThatMissesIsAClashWithWhatEachWouldBe) {
  const auto part = placed(kBase +
                           "hole C 1/8\nr1 centres A C 2\nr2 centres B C 2\nr3 angle A C 40\n"
                           "traced C 2 2.07\n");
  // acos(3/4) is 41.41 degrees: 40 misses it by more than a quarter of a degree.
  EXPECT_NEAR(part.from("A", "C", Axis::x), 1.5, kTick);
  ASSERT_EQ(part.placed.clashes.size(), 1U);
  const CentresClash& clash = part.placed.clashes[0];
  ASSERT_TRUE(clash.spare);
  EXPECT_EQ(part.part.readings[*clash.spare].id, "r3");
  EXPECT_TRUE(part.position("C", Axis::x)->disputed);
  std::map<Id, WouldBe> by;
  for (const WouldBe& one : clash.wouldBe) by[part.part.readings[one.reading].id] = one;
  ASSERT_TRUE(by.contains("r1") && by.contains("r2") && by.contains("r3") && by.contains("b3"));
  EXPECT_NEAR(*by["r3"].degrees, std::acos(0.75) / kDegree, 1e-7);
  // At 40 degrees, 2 from A, B would have to be this far from C.
  EXPECT_NEAR(by["r2"].length.toInches(),
              std::hypot(2 * std::cos(40 * kDegree) - 3, 2 * std::sin(40 * kDegree)), 1e-9);
}

TEST(Placing, ASpareOneWithinItsLastPlaceAgrees) {
  const auto part = placed(kBase +
                           "hole C 1/8\nr1 centres A C 2\nr2 centres B C 2\nr3 angle A C 41 1/2\n"
                           "traced C 2 2.07\n");
  EXPECT_TRUE(part.placed.clashes.empty());
  std::set<Id> checked;
  for (const auto index : part.placed.checked) checked.insert(part.part.readings[index].id);
  EXPECT_TRUE(checked.contains("r1") && checked.contains("r2") && checked.contains("r3"));
  EXPECT_TRUE(checked.contains("b3"));
  EXPECT_FALSE(checked.contains("b1"));
}

TEST(Placing, DistancesThatDoNotMeetPlaceNothing) {
  const auto part = placed(kBase + "hole C 1/8\nr1 centres A C 1\nr2 centres B C 1 1/2\n");
  EXPECT_FALSE(part.isPlaced("C", Axis::x));
  ASSERT_EQ(part.placed.clashes.size(), 1U);
  const CentresClash& clash = part.placed.clashes[0];
  EXPECT_FALSE(clash.spare);
  EXPECT_NEAR(std::abs(clash.missesBy), 0.5, 0.01);
  for (const WouldBe& one : clash.wouldBe) {
    const bool isSecond = part.part.readings[one.reading].id == "r2";
    EXPECT_TRUE(!isSecond || std::abs(one.length.toInches() - 2) < 0.01);
  }
}

// What is missing is what lies between the two circles, wherever beside the way between them or on
// it the third was traced.
TEST(Placing, CirclesMissEachOtherByTheGapBetweenThem) {
  std::mt19937_64 random(2026);
  const auto thous = [&](unsigned low, unsigned high) {
    return static_cast<int>(low + random() % (high - low));
  };
  const auto text = [](int thou) { return std::to_string(thou) + "/1000"; };
  for (int run = 0; run < 200; ++run) {
    const int apart = thous(500, 4000), near = thous(100, 200 + static_cast<unsigned>(apart) / 2);
    const bool isInside = run % 4 == 3;
    const int gap = thous(20, 150);
    const int far = isInside ? apart + near + gap : apart - near - gap;
    if (far < 50) continue;
    SCOPED_TRACE(std::to_string(apart) + " " + std::to_string(near) + " " + std::to_string(far));
    const auto part = placed(
        "edge L x left\nedge F y front\nhole A 1/64\nhole B 1/64\nhole C 1/64\n"
        "b1 x L A 1\nb2 y F A 1\nin_line y A B\nb3 x A B " +
        text(apart) + "\nr1 centres A C " + text(near) + "\nr2 centres B C " + text(far) +
        "\ntraced C " + std::to_string(1 + thous(0, 3)) + " " + std::to_string(thous(0, 3)) + "\n");
    ASSERT_EQ(part.placed.clashes.size(), 1U);
    EXPECT_NEAR(std::abs(part.placed.clashes[0].missesBy), gap / 1000.0, 1e-5);
  }
}

TEST(Placing, HowAHalfHeldPlaceCanMoveIsSaid) {
  const auto swings = placed(kBase + "hole C 1/8\nr1 centres A C 1\n");
  ASSERT_EQ(swings.placed.free.size(), 1U);
  EXPECT_EQ(swings.placed.free[0], (FreePlace{"C", FreeWay::swings, "A"}));
  const auto slides = placed(kBase + "hole C 1/8\nr1 angle A C 30\n");
  ASSERT_EQ(slides.placed.free.size(), 1U);
  EXPECT_EQ(slides.placed.free[0], (FreePlace{"C", FreeWay::slides, "A"}));
}

// Chains alone place what is dimensioned along axes; anything else needs the plane, if it be the
// only such thing on the print.
TEST(Placing, WhatIsNoChainNeedsThePlane) {
  const std::string holes = "hole A 1/4\nhole B 1/4\nhole C 1/4\n";
  for (const char* line : {"r1 x A B 2", "r1 diameter A 1/4", "in_line y A B", "equal x A B C",
                           "symmetric x A B about C", "midway x A B C", "concentric A B"}) {
    EXPECT_FALSE(speaksOfPlanes(PartText::read(holes + line + "\n"))) << line;
  }
  for (const char* line :
       {"r1 centres A B 2", "r1 angle A B 30", "line M", "arc N", "tangent A B", "in_line A B C",
        "equal A B C", "symmetric A B about C", "r2 x A B 1\nr1 centres A B 2"}) {
    EXPECT_TRUE(speaksOfPlanes(PartText::read(holes + line + "\n"))) << line;
  }
  // No reading along an axis at all: B lies 2 from A at 30°.
  const auto part = placed("hole A 1/4\nhole B 1/4\nr1 centres A B 2\nr2 angle A B 30\n");
  EXPECT_NEAR(part.from("A", "B", Axis::x), std::sqrt(3.0), 1e-8);
  EXPECT_NEAR(part.from("A", "B", Axis::y), 1, 1e-8);
}

TEST(Placing, ALeverHangsOnItsFirstHole) {
  const auto part = placed(
      "hole A 1/4\nhole B 1/4\nhole C 1/8\nin_line y A B\nr1 x A B 2\n"
      "r2 centres A C 1\nr3 angle A C 120\n");
  EXPECT_NEAR(part.from("A", "C", Axis::x), -0.5, kTick);
}

TEST(Placing, WhatIsSeenFromBehindIsTurnedOver) {
  const auto part = placed(
      "edge L x left\nedge F y front\nhole A 1/4 bottom\nhole C 1/4 bottom\n"
      "b1 x L A 1\nb2 y F A 2\nr1 centres A C 1\nr2 angle A C 30\n");
  EXPECT_NEAR(part.from("A", "C", Axis::x), std::cos(30 * kDegree), kTick);
  EXPECT_NEAR(part.from("A", "C", Axis::y), -0.5, kTick);
}

TEST(Placing, WeaklyHeldIsSaidWithTheFigure) {
  // Two circles that nearly only touch: their crossing moves many times what either does.
  const auto part = placed(kBase +
                           "hole C 1/8\nr1 centres A C 1.505\nr2 centres B C 1.505\n"
                           "traced C 2.0 0.87\n");
  ASSERT_EQ(part.placed.weak.size(), 1U);
  EXPECT_EQ(part.placed.weak[0].place, "C");
  EXPECT_GT(part.placed.weak[0].factor, 5);
}

TEST(Placing, APartWithoutSuchReadingsComesBackAsItWas) {
  const auto part = placed(kBase);
  EXPECT_TRUE(part.placed.answers.empty() && part.placed.clashes.empty());
  EXPECT_EQ(part.placed.positions[0], part.systems[0].positions());
}

// The line through A is held by its angle from the way A to B, which lies at 30°: at 75°, or with
// the sense turned at −15°.
TEST(Placing, TheAngleOfALineAgainstTwoPlaces) {
  for (const bool isClockwise : {false, true}) {
    Part part = PartText::read(
        "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nline M\n"
        "b1 x L A 1\nb2 y F A 1\nr1 centres A B 2\nr2 angle A B 30\nr3 angle M - 45\n");
    part.readings.back().to.clear();
    part.readings.back().against = {"A", "B"};
    if (isClockwise) part.readings.back().sense = Sense::clockwise;
    part.features.back().as<kind::Line>()->through = {"A"};
    const PlacedForTest placed = PlacedForTest::of(part);
    ASSERT_TRUE(placed.placed.lines[0].contains("M"));
    const double direction = placed.placed.lines[0].at("M").direction * 180 / std::numbers::pi;
    const double wanted = isClockwise ? -15 : 75;
    EXPECT_NEAR(std::remainder(direction - wanted, 180), 0, 1e-7);
    EXPECT_TRUE(placed.placed.clashes.empty());
  }
}

/// In thousandths, with a point wherever it is run.
std::string decimal(double inches) {
  const long long count = std::llround(std::abs(inches) * 1000);
  const std::string digits = std::to_string(1000 + count % 1000).substr(1);
  return (inches < 0 ? "-" : "") + std::to_string(count / 1000) + "." + digits;
}

// N runs at 30°; M is lettered 45° from it: at 75°, or with the sense turned at −15°. Where the
// print does not say which way, the tracing does.
TEST(Placing, TheAngleOfALineAgainstAnother) {
  const auto directionOf = [](std::optional<Sense> sense, double traced) {
    Part part = PartText::read(
        "edge L x left\nedge F y front\nhole A 1/4\nhole B 1/4\nline N\nline M\n"
        "b1 x L A 1\nb2 y F A 1\nb3 x A B 2\nb4 y A B 1\nr1 angle N - 30\nr2 angle M - 45\n");
    for (Reading& reading : part.readings) {
      if (reading.kind == ReadingKind::angle) reading.to.clear();
    }
    part.readings.back().against = {"N"};
    part.readings.back().sense = sense;
    for (Feature& feature : part.features) {
      if (auto* line = feature.as<kind::Line>()) line->through = {feature.id == "N" ? "A" : "B"};
      if (feature.id == "A") feature.traced = {"1", "1"};
      if (feature.id == "B") feature.traced = {"3", "2"};
    }
    const double c = std::cos(traced * kDegree), s = std::sin(traced * kDegree);
    for (const double far : {-1.0, 1.0}) {
      part.features.back().traced.push_back(decimal(3 + far * c));
      part.features.back().traced.push_back(decimal(2 + far * s));
    }
    const PlacedForTest placed = PlacedForTest::of(part);
    EXPECT_TRUE(placed.placed.clashes.empty());
    const auto found = placed.placed.lines[0].find("M");
    if (found == placed.placed.lines[0].end()) return 1000.0;
    return std::remainder(found->second.direction / kDegree, 180);
  };
  EXPECT_NEAR(directionOf(Sense::anticlockwise, 75), 75, 1e-7);
  EXPECT_NEAR(directionOf(Sense::clockwise, -15), -15, 1e-7);
  EXPECT_NEAR(directionOf(std::nullopt, 73), 75, 1e-7);
  EXPECT_NEAR(directionOf(std::nullopt, -17), -15, 1e-7);
}

// A copy that is stretched by a twentieth and lies seven inches along: which of two images C is at
// is seen by where it stands among the others.
TEST(Placing, AStretchedTracingTellsWhichAnswerIsMeant) {
  const std::string text = kBase + "hole C 1/8\nr1 centres A C 1.8\nr2 centres B C 1.8\n";
  const double rise = std::sqrt(1.8 * 1.8 - 1.5 * 1.5);
  for (const int side : {-1, 1}) {
    const std::string y = decimal(4 + 0.75 + side * rise);
    const auto part = placed(text +
                             "traced L 7\ntraced F 4\ntraced A 7.525 4.75\ntraced B 10.675 4.75\n"
                             "traced C 9.1 " +
                             y + "\n");
    ASSERT_TRUE(part.isPlaced("C", Axis::y)) << side;
    EXPECT_NEAR(part.from("A", "C", Axis::y), side * rise, 1e-8);
    EXPECT_NEAR(part.from("A", "C", Axis::x), 1.5, 1e-8);
  }
  // Traced between the two it says nothing.
  EXPECT_FALSE(placed(text + "traced L 7\ntraced F 4\ntraced A 7.525 4.75\ntraced B 10.675 4.75\n"
                             "traced C 9.1 4.8\n")
                   .isPlaced("C", Axis::y));
}

// C is a thou off the line and lies near A: from A through C, B would be a twentieth of an inch
// off.
TEST(Placing, ALineIsHeldByThoseOfItsPlacesTracedFurthestApart) {
  for (const char* order : {"A B C", "A C B", "C A B"}) {
    SCOPED_TRACE(order);
    const auto part =
        placed(kBase + "hole C 1/8\nb4 x A C 1/50\nb5 y A C 1/1000\nin_line " + order +
               "\nhole D 1/8\nr1 centres A D 1\nr2 angle A D 40\n"
               "traced A 0.5 0.75\ntraced B 3.5 0.75\ntraced C 0.52 0.75\n");
    EXPECT_TRUE(part.placed.clashes.empty());
  }
}

// A hole of 1/2 lies within the part, on whichever side it touches; an arc of that radius may as
// well be a hollow, its centre beyond the side.
TEST(Placing, WhatTouchesAnOuterSideLiesWithin) {
  const std::string plate =
      "edge L x left\nedge R x right\nedge F y front\nedge K y back\nb1 x L R 3\nb2 y F K 2\n";
  struct Row {
    const char *side, *held;
    Axis axis;
    double at;
  };
  for (const Row& row : {Row{"L", "y F", Axis::x, 0.25}, Row{"R", "y F", Axis::x, 2.75},
                         Row{"F", "x L", Axis::y, 0.25}, Row{"K", "x L", Axis::y, 1.75}}) {
    const std::string held = "b3 " + std::string(row.held), side = row.side;
    const auto hole = placed(plate + "hole A 1/2\n" + held + " A 1\ntangent " + side + " A\n");
    EXPECT_TRUE(hole.placed.answers.empty()) << side;
    EXPECT_NEAR(hole.from(row.axis == Axis::x ? "L" : "F", "A", row.axis), row.at, 1e-9) << side;
    Part part = PartText::read(plate + "arc A\n" + held + " A 1\ntangent " + side + " A\n");
    part.features.back().as<kind::Arc>()->radius = *readLength("1/4");
    const auto arc = PlacedForTest::of(part);
    EXPECT_FALSE(arc.isPlaced("A", row.axis)) << side;
    ASSERT_EQ(arc.placed.answers.size(), 1U) << side;
    EXPECT_EQ(arc.placed.answers[0].answers.size(), 2U) << side;
  }
}

// A pocket with its left wall at 1/2 and its front one at 1/4, and a round of 1/8 between: it lies
// inside. Where its back wall is loose nobody knows on which hand.
TEST(Placing, ARoundInACornerOfAPocket) {
  const auto pocket = [](const std::string& back) {
    Part part = PartText::read(
        "edge L x left\nedge F y front\nedge P x\nedge Q x\nedge M y\nedge N y\n"
        "round U 1/8 corner P M\nb1 x L P 1/2\nb2 x L Q 2\nb3 y F M 1/4\n" +
        back);
    GivenOutline outline;
    outline.follows = {"M", "Q", "N", "P", "U"};
    outline.isInner = true;
    part.outlines.push_back(outline);
    return PlacedForTest::of(part);
  };
  const PlacedForTest whole = pocket("b4 y F N 1\n");
  EXPECT_EQ(whole.from("L", "U", Axis::x), 0.625);
  EXPECT_EQ(whole.from("F", "U", Axis::y), 0.375);
  EXPECT_FALSE(whole.position("U", Axis::x)->disputed || whole.position("U", Axis::y)->disputed);
  const PlacedForTest loose = pocket("");
  EXPECT_FALSE(loose.isPlaced("U", Axis::x) || loose.isPlaced("U", Axis::y));
  // What is said of either wall that it lies between is said of the round, along that axis alone.
  for (const Id wall : {"P", "Q", "M", "N"}) {
    const bool isX = wall == "P" || wall == "Q";
    std::array<std::vector<Position>, 3> positions;
    for (std::size_t i = 0; i < 3; ++i) positions[i] = whole.systems[i].positions();
    for (bool Position::*const is : {&Position::disputed, &Position::assumed}) {
      auto said = positions;
      const std::size_t which = isX ? 0 : 1;
      said[which][*whole.systems[which].node(wall)].*is = true;
      const auto again = placePart(whole.part, whole.systems, said, {});
      ASSERT_TRUE(again.ok());
      for (const std::size_t i : {0U, 1U}) {
        const Position& round = again->positions[i][*whole.systems[i].node("U")];
        EXPECT_EQ(round.*is, i == which) << wall;
        EXPECT_FALSE(round.disputed && round.assumed) << wall;
      }
    }
  }
}

}  // namespace
}  // namespace inchwright::test
