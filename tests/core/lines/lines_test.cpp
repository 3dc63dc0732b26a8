#include "core/lines/lines.h"

#include <gtest/gtest.h>

#include <string>

#include "core/part/common_axis.h"
#include "core/part/edit.h"

namespace inchwright {
namespace {

/// The part that lines make one after another; the test fails at a line that is refused.
Part made(const std::vector<std::string>& lines, Part part = {}) {
  part.name = "Plate";
  for (const std::string& line : lines) {
    auto next = applyLine(part, line, {});
    EXPECT_TRUE(next.ok()) << line << ": " << (next.ok() ? "" : next.error().text);
    if (next.ok()) part = std::move(next->part);
  }
  return part;
}

Part plate() {
  return made({"edge L left", "edge R right", "edge F front", "edge K back", "hole A 1/4 ream",
               "hole B 3/16", "point P"});
}

TEST(Lines, ASlipOfTheKeysIsAskedAboutAndNeverTaken) {
  for (const auto& [line, meant] : std::vector<std::pair<std::string, std::string>>{
           {"hoel C 1/4", "is `hole` meant?"},
           {"zerro x L", "is `zero` meant?"},
           {"midwya y A F K", "is `midway` meant?"},
           {"centrse A B 5/8", "is `centres` meant?"},
           {"hole C 1/4 reem", "is REAM meant?"},
           {"hole C 1/4 driill 3/8 deep", "is DRILL meant?"},
           {"ring G 3 hloes 1/8 on 1 pcd", "is HOLE meant?"}}) {
    const auto outcome = applyLine(plate(), line, {});
    ASSERT_FALSE(outcome.ok()) << line;
    EXPECT_NE(outcome.error().text.find(meant), std::string::npos) << outcome.error().text;
  }
  const auto strange = applyLine(plate(), "Frobnicate A", {});
  ASSERT_FALSE(strange.ok());
  EXPECT_EQ(strange.error().text, "there is no feature and no word `Frobnicate`");
}

TEST(Lines, TellWhatALineMayBeginWith) {
  for (const char* word : {"hole", "centre_drill", "zero", "stock", "delete", "rename", "found",
                           "locate", "centres", "midway"}) {
    EXPECT_TRUE(beginsALine(word)) << word;
  }
  for (const char* other : {"", "A", "hoel", "in_line", "Hole"}) {
    EXPECT_FALSE(beginsALine(other)) << other;
  }
}

// A thread that no table knows is still named by what stands before or behind `tap`.
TEST(Lines, AThreadOfOnesOwnIsKeptAsNamed) {
  for (const char* line : {"hole C gas pipe 28 tap", "hole C tap gas pipe 28"}) {
    const auto outcome = applyLine(plate(), line, {});
    ASSERT_TRUE(outcome.ok()) << line << ": " << outcome.error().text;
    EXPECT_EQ(outcome->part.features.back().drilled()->thread, "gas pipe 28") << line;
    EXPECT_EQ(outcome->part.features.back().drilled()->make, Make::tap) << line;
  }
}

// In the words of the line as well as lettered.
TEST(Lines, ARingTurnsAsIsSaid) {
  for (const auto& [line, sense] : std::vector<std::pair<const char*, Sense>>{
           {"ring M 6 on 2 1/8 from 30 turning clockwise", Sense::clockwise},
           {"ring M 6 on 2 1/8 from 30 turning anticlockwise", Sense::anticlockwise},
           {"ring M 6 HOLES 1/8 DRILL ON 2 1/8 PCD from 30 turning clockwise", Sense::clockwise},
           {"ring M 6 HOLES 1/8 DRILL ON 2 1/8 PCD turning clockwise from 30", Sense::clockwise},
           {"ring M 6 HOLES 1/8 DRILL ON 2 1/8 PCD from 30", Sense::anticlockwise}}) {
    const auto outcome = applyLine(plate(), line, {});
    ASSERT_TRUE(outcome.ok()) << line << ": " << outcome.error().text;
    const kind::Ring& ring = *outcome->part.features.back().as<kind::Ring>();
    EXPECT_EQ(ring.sense, sense) << line;
    EXPECT_EQ(ring.firstAngle->value, Angle::degrees(30)) << line;
  }
}

TEST(Lines, AReadingIsTwoEndsAndAFigure) {
  const auto outcome = applyLine(plate(), "L A 3/8", {});
  ASSERT_TRUE(outcome.ok()) << outcome.error().text;
  EXPECT_EQ(outcome->did, LineDid::reading);
  ASSERT_EQ(outcome->part.readings.size(), 1u);
  const Reading& reading = outcome->part.readings[0];
  EXPECT_EQ(reading.id, "r1");
  EXPECT_EQ(reading.axis, Axis::x);
  EXPECT_EQ(reading.from, "L");
  EXPECT_EQ(reading.to, "A");
  EXPECT_EQ(reading.figure.text, "3/8");
  EXPECT_EQ(reading.figure.value, Length::ticks(952'500'000));
  EXPECT_EQ(outcome->said, "r1: L to A along X, 3/8");
}

TEST(Lines, TheEndsSettleTheAxisBeforeTheContextDoes) {
  LineContext along;
  along.axis = Axis::x;
  const auto up = applyLine(plate(), "F A 1/2", along);
  ASSERT_TRUE(up.ok());
  EXPECT_EQ(up->part.readings[0].axis, Axis::y);
  along.axis = Axis::y;
  const auto between = applyLine(plate(), "A B 1 3/16", along);
  ASSERT_TRUE(between.ok());
  EXPECT_EQ(between->part.readings[0].axis, Axis::y);
  const auto said = applyLine(plate(), "x A B 1 3/16", along);
  ASSERT_TRUE(said.ok());
  EXPECT_EQ(said->part.readings[0].axis, Axis::x);
}

TEST(Lines, AReadingMayBringItsOwnIdAndTolerance) {
  const auto outcome = applyLine(plate(), "r7 x A B 1 3/16 ±1/64", {});
  ASSERT_TRUE(outcome.ok()) << outcome.error().text;
  EXPECT_EQ(outcome->id, "r7");
  EXPECT_TRUE(outcome->part.readings[0].figure.tolerance.has_value());
  const auto reference = applyLine(plate(), "L R (2 3/8)", {});
  ASSERT_TRUE(reference.ok());
  EXPECT_TRUE(reference->part.readings[0].figure.reference);
}

TEST(Lines, CentresAndAngles) {
  const Part part = made({"centres A B 5/8", "centers A P 1", "angle A B 55"}, plate());
  ASSERT_EQ(part.readings.size(), 3u);
  EXPECT_EQ(part.readings[0].kind, ReadingKind::centres);
  EXPECT_EQ(part.readings[1].kind, ReadingKind::centres);
  EXPECT_EQ(part.readings[2].kind, ReadingKind::angle);
  EXPECT_TRUE(part.readings[2].angle.has_value());
}

TEST(Lines, HolesOfEveryMake) {
  const Part part = made({"hole A 1/4 ream", "hole B 3/16 deep 1/2", "hole C 10-32 tap",
                          "hole tap 2 BA", "hole 1/8", "hole Ø 1/4"});
  ASSERT_EQ(part.features.size(), 6u);
  EXPECT_EQ(part.features[0].drilled()->make, Make::ream);
  EXPECT_EQ(part.features[0].drilled()->diameter->text, "1/4");
  EXPECT_FALSE(part.features[1].drilled()->depth.through);
  EXPECT_EQ(part.features[1].drilled()->depth.length->text, "1/2");
  EXPECT_EQ(part.features[2].drilled()->thread, "10-32");
  EXPECT_EQ(part.features[2].drilled()->make, Make::tap);
  EXPECT_FALSE(part.features[2].drilled()->diameter.has_value());
  EXPECT_EQ(part.features[3].drilled()->thread, "2 BA");
  EXPECT_EQ(part.features[3].id, "D");
  EXPECT_EQ(part.features[4].id, "E");
  EXPECT_EQ(part.features[5].drilled()->diameter->value, Length::ticks(635'000'000));
}

TEST(Lines, TheOtherFeatures) {
  const Part part = made({"edge L left", "edge S x", "slot T2 x 1/4 by 1",
                          "ring G 6 on 2 1/2 from 30 drill 1/8", "row D x 5 holes pitch 9/16 1/8",
                          "row E y 4 spaces", "hole A 1/4", "round U2 3/8 about A left"});
  ASSERT_EQ(part.features.size(), 8u);
  EXPECT_EQ(sideOf(part.features[0]), Side::left);
  EXPECT_EQ(axisOf(part.features[0]), Axis::x);
  EXPECT_FALSE(sideOf(part.features[1]).has_value());
  EXPECT_EQ(part.features[2].as<kind::Slot>()->width->text, "1/4");
  EXPECT_EQ(part.features[2].as<kind::Slot>()->length->text, "1");
  EXPECT_EQ(part.features[3].as<kind::Ring>()->holes, 6);
  EXPECT_EQ(part.features[3].as<kind::Ring>()->pitchDiameter->text, "2 1/2");
  EXPECT_EQ(part.features[3].drilled()->diameter->text, "1/8");
  EXPECT_EQ(part.features[4].as<kind::Row>()->holes, 5);
  EXPECT_EQ(part.features[4].as<kind::Row>()->pitch->text, "9/16");
  EXPECT_EQ(part.features[5].as<kind::Row>()->holes, 5);
  EXPECT_TRUE(part.features[5].as<kind::Row>()->countedBySpaces);
  EXPECT_EQ(part.features[7].as<kind::Round>()->about, "A");
  EXPECT_EQ(sideOf(part.features[7]), Side::left);
}

// What is being traced may be named again, as a whole line begins: the name is never dropped.
TEST(Lines, AFeatureNamedAgainKeepsItsName) {
  for (const auto& [tail, id] :
       std::vector<std::pair<std::string, std::string>>{{"hole Z 5/32", "Z"},
                                                        {"hole A 5/32", "A"},
                                                        {"Z 5/32", "Z"},
                                                        {"hole 5/32", "C"},
                                                        {"X 5/32", "X"},
                                                        {"hole X 5/32", "X"}}) {
    const auto line = readFeatureLine(plate(), FeatureKind::hole, tail, {});
    ASSERT_TRUE(line.ok()) << tail;
    EXPECT_EQ(line->feature.id, id) << tail;
    EXPECT_EQ(line->feature.drilled()->diameter->text, "5/32") << tail;
  }
  // Its kind alone is no name, unless a feature has it: L, R, F, K, A, B and P are there.
  const auto idOf = [](FeatureKind kind, const char* tail, const Part& part) {
    const auto line = readFeatureLine(part, kind, tail, {});
    return line.ok() ? line->feature.id : line.error().text;
  };
  EXPECT_EQ(idOf(FeatureKind::edge, "edge left", plate()), "C");
  EXPECT_EQ(idOf(FeatureKind::edge, "edge x", plate()), "C");
  EXPECT_EQ(idOf(FeatureKind::edge, "edge M left", plate()), "M");
  EXPECT_EQ(idOf(FeatureKind::point, "point", plate()), "C");
  EXPECT_EQ(idOf(FeatureKind::ring, "ring 6 on 2 1/8", plate()), "C");
  EXPECT_EQ(idOf(FeatureKind::ring, "ring M 6 on 2 1/8", plate()), "M");
  EXPECT_EQ(idOf(FeatureKind::slot, "slot 3/16 x 5/8", plate()), "C");
  EXPECT_EQ(idOf(FeatureKind::slot, "X5/8", plate()), "C") << "a times begins no name";
  // Abbreviations of three letters begin callouts; two capitals are rather a name.
  EXPECT_EQ(idOf(FeatureKind::hole, "CSK 82° x 3/8", plate()), "C");
  EXPECT_EQ(idOf(FeatureKind::hole, "DRL .250 THRU", plate()), "C");
  EXPECT_EQ(idOf(FeatureKind::hole, "dr 1/4", plate()), "C");
  EXPECT_EQ(idOf(FeatureKind::hole, "DR 1/4", plate()), "DR");
  Part named = plate();
  named.features[0].id = "edge";
  EXPECT_EQ(idOf(FeatureKind::edge, "edge left", named), "edge");
}

TEST(Lines, WhatIsUnderstood) {
  const Part part = made({"in line y A B", "midway y A F K", "equal x A B P stated",
                          "symmetric x A B about P", "concentric A B"},
                         plate());
  ASSERT_EQ(part.understood.size(), 5u);
  EXPECT_EQ(part.understood[0].kind, UnderstandingKind::inLine);
  EXPECT_EQ(part.understood[0].of, (std::vector<Id>{"A", "B"}));
  EXPECT_FALSE(part.understood[0].stated);
  EXPECT_EQ(part.understood[1].of, (std::vector<Id>{"A"}));
  EXPECT_EQ(part.understood[1].between, (std::vector<Id>{"F", "K"}));
  EXPECT_TRUE(part.understood[2].stated);
  EXPECT_EQ(part.understood[3].about, "P");
  EXPECT_FALSE(part.understood[4].axis.has_value());
}

TEST(Lines, ZeroAndStockMakeTheSetupTheyNeed) {
  const Part part =
      made({"zero y F", "zero x middle L R stock", "stock left 1/16", "zero x A"}, plate());
  ASSERT_EQ(part.setups.size(), 1u);
  const inchwright::Setup& setup = part.setups[0];
  ASSERT_EQ(setup.zero.size(), 2u);
  EXPECT_EQ(setup.zero[0].axis, Axis::x);
  EXPECT_EQ(setup.zero[0].at, "A");
  EXPECT_EQ(setup.zero[1].at, "F");
  EXPECT_EQ(setup.stock[static_cast<std::size_t>(Side::left)]->text, "1/16");
}

// The setup in sight takes it; where none has the face, one more is made, named by its number.
TEST(Lines, ZeroGoesIntoTheSetupThatIsMeant) {
  Part part = made({"zero x L", "zero y F"}, plate());
  LineContext context;
  context.setup = 1;
  context.face = Face::front;
  auto next = applyLine(part, "zero x R", context);
  ASSERT_TRUE(next.ok()) << next.error().text;
  ASSERT_EQ(next->part.setups.size(), 2u);
  EXPECT_EQ(next->part.setups[1].name, "2");
  EXPECT_EQ(next->part.setups[1].face, Face::front);
  EXPECT_EQ(next->part.setups[1].zero[0].at, "R");
  EXPECT_EQ(next->part.setups[0], part.setups[0]);
  context.setup = 0;
  next = applyLine(next->part, "zero x A", context);
  ASSERT_TRUE(next.ok());
  EXPECT_EQ(next->part.setups[0].zero[0].at, "A");
  EXPECT_EQ(next->part.setups[1].zero[0].at, "R");
  // Far behind the last: one more, and it is that one which is set.
  context.setup = 7;
  next = applyLine(next->part, "zero x B", context);
  ASSERT_TRUE(next.ok());
  ASSERT_EQ(next->part.setups.size(), 3u);
  EXPECT_EQ(next->part.setups[2].zero[0].at, "B");
}

// The old classes stand behind a dash and say nothing about the tap; a count behind it is one.
TEST(Lines, AClassBehindAThreadIsPassedOver) {
  const auto read = [](const char* callout) {
    return readFeatureLine(plate(), FeatureKind::hole, callout, {});
  };
  const auto classed = read("5/16-18 NC - 2 1/2 DEEP");
  ASSERT_TRUE(classed.ok()) << classed.error().text;
  const auto bare = read("5/16-18 NC 1/2 DEEP");
  ASSERT_TRUE(bare.ok()) << bare.error().text;
  EXPECT_EQ(classed->feature.drilled()->thread, bare->feature.drilled()->thread);
  EXPECT_EQ(classed->feature.drilled()->depth, bare->feature.drilled()->depth);
  EXPECT_EQ(classed->alike, 0);
  const auto counted = read("5/16-18 NC - 2 HOLES");
  ASSERT_TRUE(counted.ok()) << counted.error().text;
  EXPECT_EQ(counted->alike, 2);
  const auto ends = read("5/16-18 NC -");
  EXPECT_FALSE(ends.ok() && ends->alike != 0);
}

// What a callout says beyond what is held is kept as it was lettered.
TEST(Lines, WhatACalloutSaysBesidesIsItsNote) {
  const auto drilled = readFeatureLine(plate(), FeatureKind::hole, "5/32 DRILL, 3/16 REAM", {});
  ASSERT_TRUE(drilled.ok()) << drilled.error().text;
  EXPECT_EQ(drilled->feature.note, "5/32 DRILL, 3/16 REAM");
  const auto plain = readFeatureLine(plate(), FeatureKind::hole, "3/16 REAM", {});
  ASSERT_TRUE(plain.ok());
  EXPECT_EQ(plain->feature.note, "");
}

TEST(Lines, SayHowThePlaceOfAHoleIsFound) {
  const Part part = made({"locate A mate B of Back plate", "locate B pair"}, plate());
  const Drilled& a = *part.feature("A")->drilled();
  EXPECT_EQ(a.locate, Locate::mate);
  ASSERT_TRUE(a.mate.has_value());
  EXPECT_EQ(a.mate->part, "Back plate");
  EXPECT_EQ(a.mate->place, "B");
  EXPECT_EQ(part.feature("B")->drilled()->locate, Locate::pair);
  EXPECT_FALSE(part.feature("B")->drilled()->mate.has_value());
  const Part back = made({"locate A coordinate"}, part);
  EXPECT_EQ(*back.feature("A")->drilled(), *plate().feature("A")->drilled());
  const auto said = applyLine(plate(), "locate A assembly B of Back plate", {});
  ASSERT_TRUE(said.ok());
  EXPECT_EQ(said->said, "A: assembly, B of Back plate");
  for (const char* line : {"locate", "locate L mate B of X", "locate A", "locate A somehow",
                           "locate A mate", "locate A mate B", "locate A mate B off X"}) {
    EXPECT_FALSE(applyLine(plate(), line, {}).ok()) << line;
  }
}

TEST(Lines, DeletingTakesWhatHangsOnIt) {
  const Part before = made({"L A 3/8", "A B 1", "in line y A B"}, plate());
  const auto after = applyLine(before, "delete A", {});
  ASSERT_TRUE(after.ok()) << after.error().text;
  EXPECT_EQ(after->part.feature("A"), nullptr);
  EXPECT_TRUE(after->part.readings.empty());
  EXPECT_TRUE(after->part.understood.empty());
  const auto one = applyLine(before, "delete r1", {});
  ASSERT_TRUE(one.ok());
  EXPECT_EQ(one->part.readings.size(), 1u);
}

TEST(Lines, RenamingFollowsEverywhere) {
  const Part part = made({"L A 3/8", "rename A M"}, plate());
  EXPECT_NE(part.feature("M"), nullptr);
  EXPECT_EQ(part.readings[0].to, "M");
}

TEST(Lines, AnIdWinsOverAWord) {
  Part part = plate();
  Feature named;
  named.id = "zero";
  part.features.push_back(named);
  const auto outcome = applyLine(part, "zero A 3/8", {});
  ASSERT_TRUE(outcome.ok()) << outcome.error().text;
  EXPECT_EQ(outcome->part.readings[0].from, "zero");
}

struct BadLine {
  const char* line;
  int at;            ///< byte of the fault; -1 where the whole line is at fault
  const char* says;  ///< how the refusal begins
};

TEST(Lines, TheFirstAngleOfARingEndsWhereItIsClear) {
  struct Row {
    const char* line;
    const char* angle;
    const char* diameter;  ///< null: none
  };
  const Row rows[] = {
      {"ring M 6 on 2 1/8 from 90 drill 1/8", "90", "1/8"},
      {"ring M 6 on 2 1/8 from 90 .125", "90", ".125"},
      {"ring M 6 on 2 1/8 from 90 deg 1/8", "90 deg", "1/8"},
      {"ring M 6 on 2 1/8 from 22 1/2 deg", "22 1/2 deg", nullptr},
      {"ring M 8 on 2 1/8 from 22 1/2 drill 1/8", "22 1/2", "1/8"},
      {"ring M 8 on 2 1/8 drill 1/8 from 22 1/2", "22 1/2", "1/8"},
      {"ring M 8 on 2 1/8 from 22.5", "22.5", nullptr},
  };
  for (const Row& row : rows) {
    SCOPED_TRACE(row.line);
    const auto outcome = applyLine(plate(), row.line, {});
    ASSERT_TRUE(outcome.ok()) << outcome.error().text;
    const kind::Ring& ring = *outcome->part.features.back().as<kind::Ring>();
    ASSERT_TRUE(ring.firstAngle.has_value());
    EXPECT_EQ(ring.firstAngle->text, row.angle);
    ASSERT_EQ(ring.drilled.diameter.has_value(), row.diameter != nullptr);
    if (row.diameter != nullptr) {
      EXPECT_EQ(ring.drilled.diameter->text, row.diameter);
    }
  }
}

TEST(Lines, ARingSaysWhatEachFigureWasTakenFor) {
  const auto outcome = applyLine(plate(), "ring M 6 on 2 1/8 from 90 drill 1/8", {});
  ASSERT_TRUE(outcome.ok());
  EXPECT_EQ(outcome->said, "ring M: 6 holes on 2 1/8, the first at 90 degrees, 1/8 across");
}

// What does not begin with a letter is part of the callout, and the hole is named as usual.
TEST(Lines, ANameBeginsWithALetter) {
  for (const char* line : {"hole (A) 1/4", "hole , 1/4"}) {
    Part named;
    named.name = "Plate";
    const auto outcome = applyLine(named, line, {});
    ASSERT_TRUE(outcome.ok()) << line << ": " << outcome.error().text;
    EXPECT_EQ(outcome->part.features[0].id, "A") << line;
  }
}

TEST(Lines, WhatIsRefusedAndWhere) {
  const BadLine rows[] = {
      {"", 0, "the line is empty"},
      {"   ", 3, "the line is empty"},
      {"L A", 3, "give the figure as lettered on the print"},
      {"hole ? 1/4", 5, "`?` is not understood here"},
      {"L A 3/0", 4, "a fraction over 0"},
      {"L A three", 4, "this word has no place in a size"},
      {"L Q 3/8", 0, "a reading names two features and then the figure"},
      {"y", 1, "name the feature the dimension runs from"},
      {"y L", 3, "name the feature the dimension runs to"},
      {"y L A 3/8", 6, "these two can't be measured along Y"},
      {"L F 3/8", -1, "L and F have no axis in common"},
      {"radius", 6, "name the feature whose size this is"},
      {"diameter Q 3/8", 9, "name the feature whose size this is"},
      {"radius A B 3/8", 9, "this word has no place in a size"},
      {"pcd A", 5, "give the figure as lettered on the print"},
      {"hole A 1/4", -1, "the id `A` is there twice"},
      {"row D x 5 pitch 1/2", 10, "say whether these are `holes` or `spaces`"},
      {"row D 1/8 DRILL 1/2 CRS", 6, "give a whole number here: how many"},
      {"ring G six on 2", 7, "give a whole number here: how many"},
      {"ring G 1/8 ON 1 PCD", 7, "give a whole number here: how many"},
      {"ring G 6 on 2 from", 18, "give the angle of the first hole here"},
      {"ring G 6 on 2 from up", 19, "this word has no place in a size"},
      {"ring M 6 on 2 1/8 from 90 1/8", 26, "is this part of the angle, or the diameter?"},
      {"ring M 6 on 2 1/8 from 22 1/2 turning clockwise", 26, "is this part of the angle"},
      {"round E R 1/8 about", 19, "name the hole or point it is struck about"},
      {"round E about", 13, "name the hole or point it is struck about"},
      {"in a row A B", 3, "say `in line` and then the axis"},
      {"midway y A F", -1, "midway says one `of` and two `between`"},
      {"equal x A B", -1, "equal says three or more `of`"},
      {"hole C 1/4 3/8", 14, "what is 1/4? Say so, as in `1/4 DRILL`"},
      {"hole C 3 HOLES 1/8 ON 1 PCD", 27, "these lie on a circle: trace a ring"},
      {"hole C 3 HOLES 1/8 1/2 CRS", 26, "these lie in a row: trace a row, or read the distance"},
      {"hole C 1/4 DRILL 30°", 21, "what is this angle of?"},
      {"hole C REAM .2500-.2505", 17, "are these limits?"},
      {"hole C 1/8 R", 12, "a hole is lettered by its diameter, not its radius"},
      {"hole C 1/4 CHAMFER 1/16 x 45°", 30, "a chamfered hole is countersunk: say its diameter"},
      {"slot S 3/16 x 5/8 x 1/2", 20, "the length is given already"},
      {"zero", 4, "say along which axis: `zero x` or `zero y`"},
      {"zero x", -1, "zero is in the `middle` of two places or `at` one"},
      {"stock outside 1/16", 6, "name the side"},
      {"stock left -1/16", -1, "what is still to come off is 0 or more"},
      {"delete Q", -1, "there is no feature `Q`"},
      {"delete", 6, "name the feature or the reading to take away"},
      {"rename A", 8, "name the feature and then its new name"},
      {"rename A B", -1, "the id `B` is there twice"},
      {"edge L left left2", 12, "this word means nothing for edge"},
      {"twaddle", 0, "there is no feature and no word `twaddle`"},
  };
  for (const BadLine& row : rows) {
    SCOPED_TRACE(row.line);
    const Part before = plate();
    const auto outcome = applyLine(before, row.line, {});
    ASSERT_FALSE(outcome.ok());
    EXPECT_EQ(outcome.error().text.find(row.says), 0u) << outcome.error().text;
    EXPECT_EQ(outcome.error().at ? static_cast<int>(*outcome.error().at) : -1, row.at);
    EXPECT_EQ(before, plate());
  }
}

TEST(Lines, TheAxisTwoPlacesShare) {
  const Part part = plate();
  EXPECT_EQ(axisBetween(part, "L", "A", Axis::y).value(), Axis::x);
  EXPECT_EQ(axisBetween(part, "A", "B", Axis::y).value(), Axis::y);
  EXPECT_EQ(axisBetween(part, "L", "F", Axis::x).error().code, ErrorCode::badRequest);
  EXPECT_EQ(axisBetween(part, "L", "Q", Axis::x).error().code, ErrorCode::notFound);
}

TEST(Lines, AReadingIsNotAlongTheAxisInWhichBothAreTracedInLine) {
  Part part = plate();
  const auto trace = [&](const char* id, const char* x, const char* y) {
    for (Feature& feature : part.features) {
      if (feature.id == id) feature.traced = {x, y};
    }
  };
  trace("A", "0.375", "0.43");
  trace("B", "0.380", "1.81");
  trace("P", "1.75", "1.12");
  EXPECT_EQ(applyLine(part, "A B 1 3/8", {})->part.readings[0].axis, Axis::y);
  // Said, it is as it was said; well apart along both, it is as it was going.
  EXPECT_EQ(applyLine(part, "r1 x A B 1 3/8", {})->part.readings[0].axis, Axis::x);
  EXPECT_EQ(applyLine(part, "A P 1 3/8", {})->part.readings[0].axis, Axis::x);
  // A sixteenth is lettered; what is close along both tells nothing.
  trace("B", "0.4375", "1.81");
  EXPECT_EQ(axisOfReading(part, "A", "B", Axis::x).value(), Axis::x);
  trace("B", "0.380", "0.50");
  EXPECT_EQ(axisOfReading(part, "A", "B", Axis::x).value(), Axis::x);
  // In line is what lies less than 1/32 apart as traced, apart what lies 1/8: A is at .375, .43.
  struct Case {
    const char* x;
    const char* y;
    Axis axis;
  };
  for (const Case& one : {Case{"0.405", "0.56", Axis::y},
                          {"0.345", "0.30", Axis::y},
                          {"0.405", "0.55", Axis::x},
                          {"0.407", "0.56", Axis::x},
                          {"0.420", "1.81", Axis::x},
                          {"0.343", "1.81", Axis::x}}) {
    trace("B", one.x, one.y);
    EXPECT_EQ(axisOfReading(part, "A", "B", Axis::x).value(), one.axis) << one.x << ' ' << one.y;
  }
  EXPECT_EQ(axisOfReading(part, "L", "F", Axis::x).error().code, ErrorCode::badRequest);
}

}  // namespace
}  // namespace inchwright
