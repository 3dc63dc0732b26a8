// What readings and understandings that place in two dimensions have to say.

#include <gtest/gtest.h>

#include <functional>

#include "tests/core/part/sample_part.h"

namespace inchwright {
namespace {

/// The sample with a line `V`, an arc `W` and one of each new reading and understanding.
Part placingPart() {
  Part part = samplePart();
  part.features.push_back(onTop("V", FeatureKind::line));
  part.features.back().traced = {"0", "0", "1", "0.5"};
  part.features.push_back(onTop("W", FeatureKind::arc));
  part.features.back().traced = {"1", "1", "0.25"};
  part.readings = {ofKind("r1", ReadingKind::squareOff, "A", "V"),
                   ofKind("r2", ReadingKind::squareOff, "W", "L"),
                   ofKind("r3", ReadingKind::angle, "V"),
                   ofKind("r4", ReadingKind::angle, "A", "B"),
                   ofKind("r5", ReadingKind::angle, "A", "B"),
                   ofKind("r6", ReadingKind::centres, "A", "M0"),
                   ofKind("r7", ReadingKind::radius, "W")};
  for (std::size_t i = 2; i < 5; ++i) {
    part.readings[i].angle = LetteredAngle{"5/8", Angle::degrees(1), std::nullopt, false};
  }
  part.readings[3].against = {"V"};
  part.readings[3].sense = Sense::clockwise;
  part.readings[3].reversed = true;
  part.readings[4].against = {"A", "C"};
  const auto add = [&](UnderstandingKind kind, std::vector<Id> of) -> Understanding& {
    part.understood.push_back(understood(kind, std::nullopt, std::move(of)));
    return part.understood.back();
  };
  part.understood.clear();
  add(UnderstandingKind::on, {"A", "B"}).about = "V";                          // 0
  add(UnderstandingKind::on, {"A"}).about = "G";                               // 1
  add(UnderstandingKind::wayRound, {"A", "B", "C"}).sense = Sense::clockwise;  // 2
  add(UnderstandingKind::beside, {"A"}).about = "V";                           // 3
  part.understood[3].side = Side::left;
  add(UnderstandingKind::inLine, {"A", "B", "C"});                       // 4
  add(UnderstandingKind::midway, {"A"}).between = {"B", "C"};            // 5
  add(UnderstandingKind::symmetric, {"A", "B"}).about = "L";             // 6
  add(UnderstandingKind::equal, {"A", "B", "C"}).by = EqualBy::spacing;  // 7
  add(UnderstandingKind::equal, {"M", "W"}).by = EqualBy::radius;        // 8
  add(UnderstandingKind::tangent, {"M", "W"}).touch = Touch::inside;     // 9
  add(UnderstandingKind::tangent, {"V", "A"});                           // 10
  add(UnderstandingKind::square, {"V", "L"});                            // 11
  return part;
}

struct BadPlacing {
  const char* place;
  const char* says;
  std::function<void(Part&)> change;
};

void expectRefused(const BadPlacing& row) {
  SCOPED_TRACE(std::string(row.place) + " " + row.says);
  Part part = placingPart();
  row.change(part);
  const Result<Done> result = checkPart(part);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().place, row.place);
  EXPECT_NE(result.error().text.find(row.says), std::string::npos) << result.error().text;
}

TEST(CheckPlacing, TakesOneOfEach) {
  const Result<Done> result = checkPart(placingPart());
  EXPECT_TRUE(result.ok()) << result.error().place << " " << result.error().text;
}

TEST(CheckPlacing, ALineIsMeasuredAgainstAnEdgeOrAnotherLineOfItsFace) {
  Part part = placingPart();
  part.features.push_back(onTop("U2", FeatureKind::line));
  part.features.back().traced = {"0", "0", "1", "0.5"};
  for (const char* other : {"L", "U2"}) {
    part.readings[2].against = {other};
    EXPECT_TRUE(checkPart(part).ok()) << other << ": " << checkPart(part).error().text;
  }
  part.readings[2].against = {"V"};
  EXPECT_EQ(checkPart(part).error().text, "`V` is named twice here");
  part.readings[2].against = {"U2"};
  part.features.back().face = Face::left;
  EXPECT_EQ(checkPart(part).error().place, "/readings/2/against");
}

TEST(CheckPlacing, Readings) {
  const BadPlacing rows[] = {
      {"/readings/0/from", "no `Q`", [](Part& p) { p.readings[0].from = "Q"; }},
      {"/readings/0/from", "no point", [](Part& p) { p.readings[0].from = "L"; }},
      {"/readings/0/to", "missing", [](Part& p) { p.readings[0].to.clear(); }},
      {"/readings/0/to", "neither a line", [](Part& p) { p.readings[0].to = "B"; }},
      {"/readings/0/to", "the face of `A`", [](Part& p) { p.features[14].face = Face::left; }},
      {"/readings/1/to", "the face of `W`",
       [](Part& p) {
         p.features[0].shape = kind::Edge{Axis::z, std::nullopt};
       }},
      {"/readings/0/text", "square to a line",
       [](Part& p) { p.readings[0].figure = sixtyFourths(0, "0"); }},
      {"/readings/2/to", "own direction", [](Part& p) { p.readings[2].to = "A"; }},
      {"/readings/3/against", "neither a line", [](Part& p) { p.readings[3].against = {"B"}; }},
      {"/readings/3/against", "no `Q`", [](Part& p) { p.readings[3].against = {"Q"}; }},
      {"/readings/3/reversed", "against", [](Part& p) { p.readings[3].against.clear(); }},
      {"/readings/4/against/1", "twice",
       [](Part& p) {
         p.readings[4].against = {"A", "A"};
       }},
      {"/readings/4/against/1", "no point",
       [](Part& p) {
         p.readings[4].against = {"A", "L"};
       }},
      {"/readings/4/against", "two places",
       [](Part& p) {
         p.readings[4].against = {"A", "B", "C"};
       }},
      {"/readings/5/to", "no `M1`", [](Part& p) { p.readings[5].to = "M1"; }},
      {"/readings/6/from", "no radius", [](Part& p) { p.readings[6].from = "V"; }},
  };
  for (const BadPlacing& row : rows) expectRefused(row);
}

TEST(CheckPlacing, Understandings) {
  const BadPlacing rows[] = {
      {"/understood/0/about", "on says", [](Part& p) { p.understood[0].about.clear(); }},
      {"/understood/0/about", "on says", [](Part& p) { p.understood[0].about = "C"; }},
      {"/understood/0/about", "no `Q`", [](Part& p) { p.understood[0].about = "Q"; }},
      {"/understood/0/about", "the face of",
       [](Part& p) {
         p.readings.clear();
         p.features[14].face = Face::front;
       }},
      {"/understood/0/of/1", "no point",
       [](Part& p) {
         p.understood[0].of = {"A", "R"};
       }},
      {"/understood/1/about", "on says", [](Part& p) { p.understood[1].about = "G1"; }},
      {"/understood/2/sense", "the `sense`", [](Part& p) { p.understood[2].sense.reset(); }},
      {"/understood/2/of", "three", [](Part& p) { p.understood[2].of.pop_back(); }},
      {"/understood/2/of/2", "no point", [](Part& p) { p.understood[2].of[2] = "L"; }},
      {"/understood/3/side", "the `side`", [](Part& p) { p.understood[3].side.reset(); }},
      {"/understood/3/about", "neither a line", [](Part& p) { p.understood[3].about = "W"; }},
      {"/understood/4/of", "three or more", [](Part& p) { p.understood[4].of.pop_back(); }},
      {"/understood/4/of/2", "the face in which", [](Part& p) { p.understood[4].of[2] = "E"; }},
      {"/understood/5/between/1", "no point", [](Part& p) { p.understood[5].between[1] = "L"; }},
      {"/understood/6/about", "neither a line", [](Part& p) { p.understood[6].about = "C"; }},
      {"/understood/7/by", "equal says", [](Part& p) { p.understood[7].by.reset(); }},
      {"/understood/7/by", "equal says", [](Part& p) { p.understood[7].axis = Axis::x; }},
      {"/understood/7/of", "three or more", [](Part& p) { p.understood[7].of.pop_back(); }},
      {"/understood/8/of/1", "no radius", [](Part& p) { p.understood[8].of[1] = "V"; }},
      {"/understood/9/of/1", "no line, edge or curve",
       [](Part& p) { p.understood[9].of[1] = "C"; }},
      {"/understood/10/touch", "two curves",
       [](Part& p) { p.understood[10].touch = Touch::outside; }},
      {"/understood/11/of/1", "no direction", [](Part& p) { p.understood[11].of[1] = "A"; }},
      {"/understood/11/touch", "square says",
       [](Part& p) { p.understood[11].touch = Touch::outside; }},
      {"/understood/11/side", "square says", [](Part& p) { p.understood[11].side = Side::left; }},
      {"/understood/11/sense", "square says",
       [](Part& p) { p.understood[11].sense = Sense::clockwise; }},
      {"/understood/11/by", "square says", [](Part& p) { p.understood[11].by = EqualBy::radius; }},
  };
  for (const BadPlacing& row : rows) expectRefused(row);
}

TEST(CheckPlacing, SlotsBetweenPlacesAndRoundCentres) {
  const auto slot = [](Part& p) -> kind::Slot& { return *p.features[7].as<kind::Slot>(); };
  Part part = placingPart();
  slot(part).axis.reset();
  slot(part).ends = {"A", "B"};
  EXPECT_TRUE(checkPart(part).ok());
  slot(part).about = "C";
  EXPECT_TRUE(checkPart(part).ok());
  const BadPlacing rows[] = {
      {"/features/7/axis", "not both",
       [&](Part& p) {
         slot(p).ends = {"A", "B"};
       }},
      {"/features/7/axis", "not both", [&](Part& p) { slot(p).about = "C"; }},
      {"/features/7/ends", "two places",
       [&](Part& p) {
         slot(p).axis.reset();
         slot(p).ends = {"A"};
       }},
      {"/features/7/ends/1", "itself",
       [&](Part& p) {
         slot(p).axis.reset();
         slot(p).ends = {"A", "S2"};
       }},
      {"/features/7/ends/1", "along y",
       [&](Part& p) {
         slot(p).axis.reset();
         slot(p).ends = {"A", "L"};
       }},
      {"/features/7/length", "leave `length` out",
       [&](Part& p) {
         slot(p).axis.reset();
         slot(p).ends = {"A", "B"};
         slot(p).length = sixtyFourths(64, "1");
       }},
      {"/features/7/about", "itself",
       [&](Part& p) {
         slot(p).axis.reset();
         slot(p).about = "S1";
       }},
      {"/features/7/about", "along x",
       [&](Part& p) {
         slot(p).axis.reset();
         slot(p).about = "F";
       }},
      {"/features/7/cutter", "greater", [&](Part& p) { slot(p).cutter = sixtyFourths(0, "0"); }},
  };
  for (const BadPlacing& row : rows) expectRefused(row);
}

TEST(CheckPlacing, WhatAHoleMaySay) {
  const auto hole = [](Part& p) -> Drilled& { return *p.features[4].drilled(); };
  for (const char* limits : {"H7", "js12", "0.2490/0.2493", "P9", "ZA1"}) {
    Part part = placingPart();
    hole(part).limits = limits;
    hole(part).meets = {"B", "E"};
    hole(part).mate = PartPlace{"Back plate", "A", {}};
    EXPECT_TRUE(checkPart(part).ok()) << limits;
  }
  const BadPlacing rows[] = {
      {"/features/4/limits", "a class", [&](Part& p) { hole(p).limits = "close"; }},
      {"/features/4/limits", "a class", [&](Part& p) { hole(p).limits = "7"; }},
      {"/features/4/limits", "a class", [&](Part& p) { hole(p).limits = "H"; }},
      {"/features/4/limits", "a class", [&](Part& p) { hole(p).limits = "ABC7"; }},
      {"/features/4/limits", "a class", [&](Part& p) { hole(p).limits = "H7x"; }},
      {"/features/4/limits", "a class", [&](Part& p) { hole(p).limits = "H777"; }},
      {"/features/4/limits", "a class", [&](Part& p) { hole(p).limits = "1/4"; }},
      {"/features/4/meets/0", "no `Q`", [&](Part& p) { hole(p).meets = {"Q"}; }},
      {"/features/4/meets/0", "into itself", [&](Part& p) { hole(p).meets = {"A"}; }},
      {"/features/4/mate", "say both",
       [&](Part& p) {
         hole(p).mate = PartPlace{"Back plate", "", {}};
       }},
  };
  for (const BadPlacing& row : rows) expectRefused(row);
}

TEST(CheckPlacing, TracesOfLinesAndArcs) {
  Part part = placingPart();
  for (const std::size_t count : {2U, 3U, 6U}) {
    part.features[15].traced.assign(count, "1");
    EXPECT_TRUE(checkPart(part).ok()) << count;
  }
  const BadPlacing rows[] = {
      {"/features/14/traced", "two points", [](Part& p) { p.features[14].traced.pop_back(); }},
      {"/features/15/traced", "centre", [](Part& p) { p.features[15].traced = {"1"}; }},
  };
  for (const BadPlacing& row : rows) expectRefused(row);
}

}  // namespace
}  // namespace inchwright
