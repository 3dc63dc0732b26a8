// Typed lines of readings and understandings that place in two dimensions, of callouts, and of
// turned work.

#include <gtest/gtest.h>

#include "core/lines/lines.h"

namespace inchwright {
namespace {

Part partOf(const std::vector<std::string>& typed) {
  Part part;
  part.name = "Plate";
  for (const std::string& line : typed) {
    auto next = applyLine(part, line, {});
    EXPECT_TRUE(next.ok()) << line << ": " << (next.ok() ? "" : next.error().text);
    if (next.ok()) part = std::move(next->part);
  }
  return part;
}

const std::vector<std::string> kCurved{"edge L left", "hole A 1/4", "hole B 1/4", "hole C 1/4",
                                       "line V",      "arc W 3/8",  "round M 1/2"};

Part withLine(const std::string& line) {
  std::vector<std::string> lines = kCurved;
  lines.push_back(line);
  return partOf(lines);
}

TEST(PlacingLines, Readings) {
  EXPECT_EQ(withLine("square_off A V 3/8").readings[0].kind, ReadingKind::squareOff);
  std::vector<std::string> lines = kCurved;
  lines.insert(lines.end(), {"ring Q 6 on 2", "radius M 1/2", "diameter M 1/2", "pcd Q 1/2"});
  const Part sized = partOf(lines);
  const ReadingKind kinds[] = {ReadingKind::radius, ReadingKind::diameter, ReadingKind::pcd};
  ASSERT_EQ(sized.readings.size(), std::size(kinds));
  for (std::size_t i = 0; i < std::size(kinds); ++i) {
    const Reading& size = sized.readings[i];
    EXPECT_EQ(size.kind, kinds[i]);
    EXPECT_EQ(size.from, kinds[i] == ReadingKind::pcd ? "Q" : "M");
    EXPECT_TRUE(size.to.empty());
    EXPECT_EQ(size.figure.text, "1/2");
  }
  const Reading ofLine = withLine("angle V 30").readings[0];
  EXPECT_EQ(ofLine.angle->value, Angle::degrees(30));
  EXPECT_TRUE(ofLine.to.empty());
  const Reading against = withLine("angle A B 55 against V clockwise").readings[0];
  EXPECT_EQ(against.against, std::vector<Id>{"V"});
  EXPECT_EQ(against.sense, Sense::clockwise);
  EXPECT_FALSE(against.reversed);
  const Reading turned = withLine("angle A B 55 deg against A C").readings[0];
  EXPECT_EQ(turned.against, (std::vector<Id>{"A", "C"}));
  EXPECT_EQ(turned.figure.text, "55 deg");
  EXPECT_TRUE(withLine("angle A B 55 against V reversed").readings[0].reversed);
}

TEST(PlacingLines, Understandings) {
  struct Row {
    const char* line;
    UnderstandingKind kind;
    std::optional<Axis> axis;
    const char* about;
  };
  const Row rows[] = {
      {"on A B about V", UnderstandingKind::on, {}, "V"},
      {"way_round A B C clockwise", UnderstandingKind::wayRound, {}, ""},
      {"beside A about V left", UnderstandingKind::beside, {}, "V"},
      {"in line slanted A B C", UnderstandingKind::inLine, {}, ""},
      {"in line A B C", UnderstandingKind::inLine, Axis::x, ""},
      {"midway both A B C", UnderstandingKind::midway, {}, ""},
      {"symmetric A B about V", UnderstandingKind::symmetric, {}, "V"},
      {"symmetric both A B about L", UnderstandingKind::symmetric, {}, "L"},
      {"equal spacing A B C", UnderstandingKind::equal, {}, ""},
      {"equal radius M W", UnderstandingKind::equal, {}, ""},
      {"equal y A B C", UnderstandingKind::equal, Axis::y, ""},
      {"tangent M W inside", UnderstandingKind::tangent, {}, ""},
      {"parallel V L stated", UnderstandingKind::parallel, {}, ""},
      {"square V L", UnderstandingKind::square, {}, ""},
  };
  for (const Row& row : rows) {
    SCOPED_TRACE(row.line);
    const Part part = withLine(row.line);
    ASSERT_EQ(part.understood.size(), 1u);
    EXPECT_EQ(part.understood[0].kind, row.kind);
    EXPECT_EQ(part.understood[0].axis, row.axis);
    EXPECT_EQ(part.understood[0].about, row.about);
  }
  EXPECT_EQ(withLine("way_round A B C clockwise").understood[0].sense, Sense::clockwise);
  EXPECT_EQ(withLine("beside A about V left").understood[0].side, Side::left);
  EXPECT_EQ(withLine("equal radius M W").understood[0].by, EqualBy::radius);
  EXPECT_EQ(withLine("tangent M W inside").understood[0].touch, Touch::inside);
  EXPECT_TRUE(withLine("parallel V L stated").understood[0].stated);
}

TEST(CalloutLines, MakeFeatures) {
  const Part part =
      partOf({"hole A C'BORE 3/8 x 3/16 DEEP", "slot S 5/8 x 3/16", "slot T y 3/16 x 5/8",
              "ring G 3 holes 3/32 on 1 1/16 PCD from 30", "row D y 4 SPACES AT 1/2, 1/8 DRILL",
              "hole 4 x 1/8", "round R 3/8", "hole No. 30", "hole LETTER F", "slot U 5/8 by 3/16"});
  ASSERT_EQ(part.features.size(), 10u);
  EXPECT_EQ(part.features[0].drilled()->seatDepth->text, "3/16");
  const kind::Slot& slot = *part.features[1].as<kind::Slot>();
  EXPECT_EQ(slot.width->text, "3/16");
  EXPECT_EQ(slot.length->text, "5/8");
  EXPECT_EQ(slot.axis, Axis::x);
  EXPECT_EQ(part.features[2].as<kind::Slot>()->axis, Axis::y);
  const kind::Ring& ring = *part.features[3].as<kind::Ring>();
  EXPECT_EQ(ring.holes, 3);
  EXPECT_EQ(ring.pitchDiameter->text, "1 1/16");
  EXPECT_EQ(ring.firstAngle->value, Angle::degrees(30));
  EXPECT_EQ(ring.drilled.diameter->text, "3/32");
  const kind::Row& row = *part.features[4].as<kind::Row>();
  EXPECT_EQ(row.holes, 5);
  EXPECT_TRUE(row.countedBySpaces);
  EXPECT_EQ(row.axis, Axis::y);
  EXPECT_EQ(part.features[5].drilled()->diameter->text, "1/8");
  EXPECT_EQ(radiusOf(part.features[6])->text, "R 3/8");
  EXPECT_EQ(part.features[7].drilled()->diameter->value, Length::ticks(1285 * 254'000LL));
  EXPECT_EQ(part.features[8].drilled()->diameter->value, Length::ticks(2570 * 254'000LL));
  EXPECT_EQ(part.features[9].as<kind::Slot>()->width->text, "3/16");
}

TEST(CalloutLines, TellHowManyThePrintSpeaksOf) {
  const auto outcome = applyLine(partOf({}), "hole A 1/8 DRILL 4 PLACES", {});
  ASSERT_TRUE(outcome.ok());
  EXPECT_EQ(outcome->feature->alike, 4);
  EXPECT_EQ(applyLine(partOf({}), "hole A 1/8", {})->feature->alike, 0);
}

// What is put on the print as a hole may say itself that it is none.
TEST(CalloutLines, SayWhatKindTheyAreOf) {
  const std::pair<const char*, FeatureKind> said[] = {
      {"1/4 REAM", FeatureKind::hole},
      {"TAP 8-32 UNC 3 HOLES", FeatureKind::hole},
      {"3/16 x 5/8", FeatureKind::hole},
      {"1/8 DRILL 3 HOLES EQUALLY SPACED ON 2 1/4 P.C.D.", FeatureKind::ring},
      {"3 on 2 1/4 from 90 drill 1/8", FeatureKind::ring},
      {"3/32 DRILL 4 HOLES AT 5/8 PITCH", FeatureKind::row},
      {"4 holes pitch 5/8 3/32", FeatureKind::row},
      {"SLOT 3/16 x 5/8", FeatureKind::slot},
      {"3/16 KEYWAY x 5/8", FeatureKind::slot},
      {"2 SLOTS 3/16 x 5/8", FeatureKind::slot},
      {"3/16 WIDE x 5/8 CRS", FeatureKind::slot},
      {"R 3/8", FeatureKind::round},
      {"R3/8", FeatureKind::round},
      {"3/8 RAD", FeatureKind::round},
      {"L left", FeatureKind::edge},
      {"S x", FeatureKind::edge}};
  for (const auto& [text, kind] : said) {
    const auto line = readFeatureLine(partOf({}), text, {});
    ASSERT_TRUE(line.ok()) << text << ": " << line.error().text;
    EXPECT_EQ(line->feature.kind(), kind) << text;
  }
  for (const char* text : {"1/4 TAP", "4-1/8 DRILL", "1/4 wobbled"}) {
    EXPECT_FALSE(readFeatureLine(partOf({}), text, {}).ok()) << text;
  }
}

TEST(CalloutLines, NeverTakeARadiusOrASlotForAHole) {
  for (const char* text :
       {"R 3/8", "3/8 R", "3/8 RAD", "A 3/8 RAD", "SLOT 3/16 x 5/8", "A 3/16 SLOT x 5/8"}) {
    EXPECT_FALSE(readFeatureLine(partOf({}), FeatureKind::hole, text, {}).ok()) << text;
  }
}

// `M6` might be a name; where nothing else says a size it is a thread.
TEST(CalloutLines, AMetricThreadIsNoName) {
  for (const char* text : {"M6", "M6 THRO", "M6-6H", "M6 x 1 x 12 DEEP"}) {
    const auto line = readFeatureLine(partOf({}), FeatureKind::hole, text, {});
    ASSERT_TRUE(line.ok()) << text << ": " << line.error().text;
    EXPECT_EQ(line->feature.id, "A") << text;
    EXPECT_EQ(line->feature.drilled()->make, Make::tap) << text;
  }
  const auto named = readFeatureLine(partOf({}), FeatureKind::hole, "M3 1/4 REAM", {});
  ASSERT_TRUE(named.ok());
  EXPECT_EQ(named->feature.id, "M3");
}

TEST(CalloutLines, NamesAreNoCallouts) {
  const Part part = partOf({"hole CB 1/4", "hole NO 1/4 ream", "round G R 3/8", "hole X"});
  EXPECT_EQ(part.features[0].id, "CB");
  EXPECT_EQ(part.features[1].id, "NO");
  EXPECT_EQ(part.features[2].id, "G");
  EXPECT_EQ(part.features[3].id, "X");
  const auto sized = readFeatureLine(partOf({}), FeatureKind::hole, "X 1/4 ream", {});
  ASSERT_TRUE(sized.ok());
  EXPECT_EQ(sized->feature.id, "X");
  EXPECT_EQ(sized->feature.drilled()->diameter->text, "1/4");
}

// What could as well mean something else is asked about, and no other reading is tried.
TEST(CalloutLines, AskRatherThanGuess) {
  for (const char* line : {"hole A 4-1/8 DRILL", "hole A 1/4 TAP", "hole A 1/4 tap"}) {
    const auto outcome = applyLine(partOf({}), line, {});
    ASSERT_FALSE(outcome.ok()) << line;
    EXPECT_EQ(outcome.error().code, ErrorCode::badRequest) << line;
  }
}

TEST(TurnedLines, NameTheirEdges) {
  Part part = partOf({"edge L left", "edge R right", "edge M x"});
  part.turned = true;
  for (const char* line :
       {"outside J L R 3/8", "bored B L M 1/8", "groove G L M .250",
        "screwed S L M 1/4-20 UNC left runout 1/16", "taper T L M large 1/2 angle 10",
        "knurl N L M diamond .040", "chamfer C L 1/16 x 45°", "centre_drill D R #2"}) {
    auto next = applyLine(part, line, {});
    ASSERT_TRUE(next.ok()) << line << ": " << next.error().text;
    EXPECT_EQ(next->feature->alike, 0) << line << ": nothing says how many";
    part = std::move(next->part);
  }
  EXPECT_EQ(part.feature("J")->as<kind::Outside>()->between, (std::vector<Id>{"L", "R"}));
  EXPECT_EQ(part.feature("S")->as<kind::Screwed>()->hand, Hand::left);
  EXPECT_EQ(part.feature("S")->as<kind::Screwed>()->runout->text, "1/16");
  EXPECT_EQ(part.feature("T")->as<kind::Taper>()->angle->value, Angle::degrees(10));
  EXPECT_EQ(part.feature("N")->as<kind::Knurl>()->pattern, "diamond");
  EXPECT_EQ(part.feature("C")->as<kind::Chamfer>()->length->text, "1/16");
  EXPECT_EQ(part.feature("D")->as<kind::CentreDrill>()->size, "#2");
}

// Each is refused at the word that is at fault, counted from the line's beginning.
TEST(TurnedLines, AreRefusedWhereTheyGoWrong) {
  Part part = partOf({"edge L left", "edge R right", "edge M x"});
  part.turned = true;
  const std::pair<std::string, std::size_t> rows[] = {
      {"outside J", 9},
      {"outside J L", 11},
      {"outside J L R", 13},
      {"outside J L R large", 14},
      {"outside J L R 3/8 too much", 18},
      {"bored J L R 1/0", 12},
      {"groove J L R deep", 13},
      {"taper Z L M half", 12},
      {"taper Z L M large half", 18},
      {"taper Z L M large 1/2 small what", 28},
      {"taper Z L M large 1/2 angle wide", 28},
      {"taper Z L M large 1/2 angle 10 wide", 31},
      {"taper Z L M large 1/2 runout 1/16", 22},
      {"outside J L R 3/8 large", 18},
      {"screwed S L M 1/4-20 UNC runout 1/16 long", 37},
      {"screwed S L M", 13},
      {"screwed S L M 1/4-20 UNC runout long", 32},
      {"knurl N L M diamond rough", 20},
      {"knurl N L M crossed", 12},
      {"chamfer C L", 11},
      {"chamfer C L 1/16 x 45° wild", 24},
      {"centre_drill D", 14},
  };
  for (const auto& [line, at] : rows) {
    const auto next = applyLine(part, line, {});
    ASSERT_FALSE(next.ok()) << line;
    EXPECT_EQ(next.error().at, at) << line << ": " << next.error().text;
  }
  // Two figures of a taper are enough, in any order.
  for (const char* line : {"taper Z L M small 3/8 per_foot 5/8", "taper Z L M angle 10 large 1/2",
                           "knurl N L M", "knurl N L M .040"}) {
    EXPECT_TRUE(applyLine(part, line, {}).ok()) << line;
  }
}

}  // namespace
}  // namespace inchwright
