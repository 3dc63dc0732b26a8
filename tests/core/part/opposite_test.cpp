// The other hand of a part: what is turned round, and what follows an edit of the one it mirrors.

#include "core/part/opposite.h"

#include <gtest/gtest.h>

#include "tests/support/part_text.h"

namespace inchwright {
namespace {

using test::partFrom;

const char* const kPlate = R"(
edge L x left
edge R x right
edge F y front
edge K y back
edge U z bottom
hole A 1/4
hole B 1/4
hole C 1/8 left
ring E 6 2 30
ring G 6 2 30 clockwise @ left
round Q 1/4 about A left
round V 1/4 corner L F
traced L 0.5
traced F 0.25
traced A -1.5 0.75
traced B 0 2
traced C 1.25 -0.5
r1 x L A 3/8
r2 y F A 1/2
r3 centres A B 1
r4 angle A B 30
r5 angle B A 210
)";

const Feature& feature(const Part& part, const char* id) {
  return *part.feature(id);
}
const Reading& reading(const Part& part, const char* id) {
  return *part.reading(id);
}

TEST(Opposite, SidesTracesAndReadingsAreTurnedRoundAlongTheAxisAlone) {
  const Part part = mirrored(partFrom(kPlate), Axis::x);
  EXPECT_EQ(feature(part, "L").as<kind::Edge>()->side, Side::right);
  EXPECT_EQ(feature(part, "R").as<kind::Edge>()->side, Side::left);
  EXPECT_EQ(feature(part, "F").as<kind::Edge>()->side, Side::front);
  EXPECT_EQ(feature(part, "U").as<kind::Edge>()->side, Side::bottom);
  EXPECT_EQ(feature(part, "Q").as<kind::Round>()->side, Side::right);
  EXPECT_EQ(feature(part, "L").traced, (std::vector<std::string>{"-0.5"}));
  EXPECT_EQ(feature(part, "F").traced, (std::vector<std::string>{"0.25"}));
  EXPECT_EQ(feature(part, "A").traced, (std::vector<std::string>{"1.5", "0.75"}));
  EXPECT_EQ(feature(part, "B").traced, (std::vector<std::string>{"0", "2"})) << "no -0";
  EXPECT_EQ(feature(part, "C").face, Face::right);
  EXPECT_EQ(feature(part, "C").traced, (std::vector<std::string>{"1.25", "-0.5"}))
      << "Y and Z lie in that face";
  EXPECT_EQ(reading(part, "r1").from, "A");
  EXPECT_EQ(reading(part, "r1").to, "L");
  EXPECT_EQ(reading(part, "r2").from, "F");
  EXPECT_EQ(reading(part, "r3").from, "A") << "a centre distance runs along no axis";
}

TEST(Opposite, OfATracedArcTheRadiusStaysAndOfALineBothEndsAreTurned) {
  const char* const traced = "arc N\nline M\ntraced N 1 2 1.5\ntraced M 0.5 1 2 3\n";
  const Part across = mirrored(partFrom(traced), Axis::x), up = mirrored(partFrom(traced), Axis::y);
  EXPECT_EQ(feature(across, "N").traced, (std::vector<std::string>{"-1", "2", "1.5"}));
  EXPECT_EQ(feature(across, "M").traced, (std::vector<std::string>{"-0.5", "1", "-2", "3"}));
  EXPECT_EQ(feature(up, "N").traced, (std::vector<std::string>{"1", "-2", "1.5"}));
  EXPECT_EQ(feature(up, "M").traced, (std::vector<std::string>{"0.5", "-1", "2", "-3"}));
}

TEST(Opposite, AlongYFrontAndBackChangePlaces) {
  const Part part = mirrored(partFrom(kPlate), Axis::y);
  EXPECT_EQ(feature(part, "F").as<kind::Edge>()->side, Side::back);
  EXPECT_EQ(feature(part, "K").as<kind::Edge>()->side, Side::front);
  EXPECT_EQ(feature(part, "L").as<kind::Edge>()->side, Side::left);
  EXPECT_EQ(feature(part, "A").traced, (std::vector<std::string>{"-1.5", "-0.75"}));
  EXPECT_EQ(feature(part, "C").traced, (std::vector<std::string>{"-1.25", "-0.5"}));
  EXPECT_EQ(reading(part, "r2").from, "A");
  EXPECT_EQ(reading(part, "r4").figure.text, "330");
  EXPECT_EQ(feature(part, "E").as<kind::Ring>()->firstAngle->text, "330");
}

TEST(Opposite, AnglesAndSensesSwingTheOtherWay) {
  const Part part = mirrored(partFrom(kPlate), Axis::x);
  EXPECT_EQ(reading(part, "r4").figure.text, "150");
  EXPECT_EQ(reading(part, "r4").angle->value, Angle::degrees(150));
  EXPECT_EQ(reading(part, "r5").figure.text, "330");
  const auto& ring = *feature(part, "E").as<kind::Ring>();
  EXPECT_EQ(ring.firstAngle->text, "150");
  EXPECT_EQ(ring.sense, Sense::clockwise);
  EXPECT_EQ(feature(part, "G").as<kind::Ring>()->sense, Sense::anticlockwise);
}

TEST(Opposite, AClockwiseAngleIsWrittenAsItRunsAnticlockwise) {
  Part plate = partFrom(kPlate);
  plate.readings[3].sense = Sense::clockwise;  // r4: 30 clockwise is 330
  const Part part = mirrored(plate, Axis::x);
  EXPECT_EQ(reading(part, "r4").figure.text, "210");
  EXPECT_FALSE(reading(part, "r4").sense.has_value());
}

// Against a line it opens to no hand, unless that is said.
TEST(Opposite, AnAngleBetweenTwoKeepsItsSizeAndSwingsTheOtherWay) {
  struct Row {
    std::vector<Id> against;
    std::optional<Sense> sense, mirrored;
  };
  for (const Row& row :
       {Row{{"M"}, {}, {}}, Row{{"M"}, Sense::clockwise, Sense::anticlockwise},
        Row{{"M"}, Sense::anticlockwise, Sense::clockwise}, Row{{"A", "C"}, {}, Sense::clockwise},
        Row{{"A", "C"}, Sense::clockwise, Sense::anticlockwise}}) {
    Part plate = partFrom(kPlate);
    plate.readings[3].against = row.against;
    plate.readings[3].sense = row.sense;
    const Part part = mirrored(plate, Axis::x);
    EXPECT_EQ(reading(part, "r4").angle->value, Angle::degrees(30));
    EXPECT_EQ(reading(part, "r4").figure.text, "30");
    EXPECT_EQ(reading(part, "r4").sense, row.mirrored);
  }
}

TEST(Opposite, ALineHasNoDirection) {
  for (const auto& [angle, mirroredAngle] : {std::pair("30", "150"), std::pair("0", "0"),
                                             std::pair("90", "90"), std::pair("150", "30")}) {
    Part plate = partFrom(std::string(kPlate) + "line M\nr6 angle M - " + angle + "\n");
    plate.readings.back().to.clear();
    const Part part = mirrored(plate, Axis::x);
    EXPECT_EQ(reading(part, "r6").angle->value, readAngle(mirroredAngle)->value) << angle;
    EXPECT_EQ(reading(part, "r6").figure.text, mirroredAngle);
  }
}

TEST(Opposite, OddAnglesKeepTheirTolerances) {
  Part plate = partFrom(kPlate);
  ASSERT_EQ(plate.features[8].id, "E");
  auto& ring = *plate.features[8].as<kind::Ring>();
  ring.firstAngle = *readAngle("22° 29' 59.5\"");
  ring.firstAngle->plusMinus = readAngle("0° 30'")->value;
  const Part part = mirrored(plate, Axis::x);
  EXPECT_EQ(feature(part, "E").as<kind::Ring>()->firstAngle->text, "157° 30' 0.5\" ±0° 30'");
  const auto back = readAngle(feature(part, "E").as<kind::Ring>()->firstAngle->text);
  ASSERT_TRUE(back.ok());
  EXPECT_EQ(back->value, feature(part, "E").as<kind::Ring>()->firstAngle->value);
}

TEST(Opposite, TwiceIsThePartItself) {
  for (const Axis axis : {Axis::x, Axis::y}) {
    Part part = partFrom(kPlate);
    part.hand = "left";
    inchwright::Setup setup;
    setup.name = "1";
    setup.jaw = Side::front;
    setup.stop = Side::left;
    setup.stock[static_cast<std::size_t>(Side::left)] = *readLength("1/16", {});
    setup.stock[static_cast<std::size_t>(Side::front)] = *readLength("1/8", {});
    ZeroAlong zero;
    zero.axis = axis;
    zero.at = "A";
    zero.offset = *readLength("1/4 in", {});
    setup.zero.push_back(zero);
    part.setups.push_back(setup);
    const Part once = mirrored(part, axis);
    EXPECT_EQ(once.hand, "right");
    EXPECT_EQ(once.setups[0].zero[0].offset->value, part.setups[0].zero[0].offset->value.negated());
    EXPECT_EQ(once.setups[0].zero[0].offset->text, "-1/4 in");
    const bool alongX = axis == Axis::x;
    EXPECT_EQ(once.setups[0].stop, alongX ? Side::right : Side::left);
    EXPECT_EQ(once.setups[0].jaw, alongX ? Side::front : Side::back);
    const auto stockOn = [&](Side side) {
      return once.setups[0].stock[static_cast<std::size_t>(side)].has_value();
    };
    EXPECT_TRUE(stockOn(alongX ? Side::right : Side::left));
    EXPECT_TRUE(stockOn(alongX ? Side::front : Side::back));
    EXPECT_FALSE(stockOn(alongX ? Side::left : Side::right));
    EXPECT_EQ(mirrored(once, axis), part);
  }
}

TEST(Opposite, WhatWasMadeOfTheOneIsNotOfTheOther) {
  Part part = partFrom(kPlate);
  part.made.emplace_back().place = "A";
  part.accepted.push_back({"alone"});
  part.views.emplace_back();
  const Part other = mirrored(part, Axis::x);
  EXPECT_TRUE(other.made.empty());
  EXPECT_TRUE(other.accepted.empty());
  EXPECT_TRUE(other.views.empty());
}

TEST(Opposite, FollowsAnEditButKeepsItsOwn) {
  const Part before = partFrom(kPlate);
  Part opposite = mirrored(before, Axis::x);
  opposite.opposite = OppositeOf{"Plate", Axis::x};
  // Its own: another text of r2, another note.
  opposite.readings[1].figure = *readLength("5/8", {});
  Part after = before;
  after.readings[0].figure = *readLength("7/16", {});
  after.readings[1].figure = *readLength("9/16", {});
  std::erase_if(after.readings, [](const Reading& one) { return one.id == "r5"; });
  after.features.push_back(partFrom("hole D 3/16\n").features[0]);
  after.material = "brass";
  const Part now = followed(opposite, before, after);
  EXPECT_EQ(reading(now, "r1").figure.text, "7/16");
  EXPECT_EQ(reading(now, "r1").from, "A") << "the other way round still";
  EXPECT_EQ(reading(now, "r2").figure.text, "5/8") << "its own stays";
  EXPECT_EQ(now.reading("r5"), nullptr);
  EXPECT_NE(now.feature("D"), nullptr);
  EXPECT_EQ(now.material, "brass");
}

}  // namespace
}  // namespace inchwright
