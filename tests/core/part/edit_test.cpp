#include "core/part/edit.h"

#include <gtest/gtest.h>

#include <random>
#include <string>

#include "tests/core/part/sample_part.h"

namespace inchwright {
namespace {

using Strings = std::vector<std::string>;

TEST(EditFeatures, AddRefusesATakenId) {
  const Part part = samplePart();
  const Result<Part> grown = addFeature(part, onTop("H", FeatureKind::hole));
  ASSERT_TRUE(grown.ok());
  EXPECT_EQ(grown->features.size(), part.features.size() + 1);
  EXPECT_EQ(grown->features.back().id, "H");
  EXPECT_EQ(part, samplePart());
  const Result<Part> refused = addFeature(part, onTop("G2", FeatureKind::hole));
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.error().place, "/features/14/id");
}

TEST(EditFeatures, ReplaceKeepsThePlaceInTheList) {
  const Part part = samplePart();
  Feature bigger = *part.feature("A");
  bigger.drilled()->diameter = sixtyFourths(32, "1/2");
  const Result<Part> edited = replaceFeature(part, "A", bigger);
  ASSERT_TRUE(edited.ok());
  EXPECT_EQ(edited->features[4], bigger);
  EXPECT_EQ(edited->readings, part.readings);
}

TEST(EditFeatures, ReplaceRefusesToTakeAwayWhatIsNamed) {
  const Part part = samplePart();
  Feature smaller = *part.feature("G");
  smaller.as<kind::Ring>()->holes = 2;
  const Result<Part> refused = replaceFeature(part, "G", smaller);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.error().place, "/readings/1/to");
  EXPECT_EQ(replaceFeature(part, "Q", smaller).error().code, ErrorCode::notFound);
}

Strings keysOf(const Part& part) {
  Strings keys;
  for (const AcceptedDoubt& one : part.accepted) keys.push_back(one.key);
  return keys;
}

TEST(EditFeatures, RenameChangesEveryMention) {
  const Part part = samplePart();
  const Result<Part> edited = renameFeature(part, "A", "centre hole");
  ASSERT_TRUE(edited.ok()) << edited.error().text;
  EXPECT_EQ(edited->feature("A"), nullptr);
  EXPECT_EQ(edited->features[4].id, "centre hole");
  EXPECT_EQ(edited->feature("M")->as<kind::Round>()->about, "centre hole");
  EXPECT_EQ(edited->feature("P")->as<kind::Line>()->through, (Strings{"centre hole", "L"}));
  EXPECT_EQ(edited->readings[0].to, "centre hole");
  EXPECT_EQ(edited->readings[1].from, "centre hole");
  EXPECT_EQ(edited->understood[0].of, (Strings{"centre hole"}));
  EXPECT_EQ(edited->setups[0].checks, (Strings{"centre hole", "G2"}));
  EXPECT_EQ(keysOf(*edited), (Strings{"loose:centre hole:y", "loose:G3:x"}));
  EXPECT_TRUE(mentionsOf(*edited, "A").empty());
}

TEST(EditFeatures, RenameTakesHolesAndEndsAlong) {
  const Part part = samplePart();
  const Result<Part> ring = renameFeature(part, "G", "W");
  ASSERT_TRUE(ring.ok());
  EXPECT_EQ(ring->readings[1].to, "W3");
  EXPECT_EQ(ring->setups[0].checks, (Strings{"A", "W2"}));
  EXPECT_EQ(keysOf(*ring), (Strings{"loose:A:y", "loose:W3:x"}));
  const Result<Part> row = renameFeature(part, "D", "W");
  ASSERT_TRUE(row.ok());
  EXPECT_EQ(row->setups[0].zero[1].at, "W1");
}

TEST(EditFeatures, RenameThereAndBackIsNothing) {
  const Part part = samplePart();
  for (const Feature& feature : part.features) {
    const Result<Part> there = renameFeature(part, feature.id, "elsewhere");
    ASSERT_TRUE(there.ok()) << feature.id << ": " << there.error().text;
    EXPECT_NE(*there, part);
    const Result<Part> back = renameFeature(*there, "elsewhere", feature.id);
    ASSERT_TRUE(back.ok());
    EXPECT_EQ(*back, part) << feature.id;
  }
}

TEST(EditFeatures, RenameRefusesATakenId) {
  const Part part = samplePart();
  EXPECT_EQ(renameFeature(part, "A", "B").error().code, ErrorCode::badDocument);
  EXPECT_EQ(renameFeature(part, "A", "").error().code, ErrorCode::badDocument);
  EXPECT_EQ(renameFeature(part, "Q", "W").error().code, ErrorCode::notFound);
}

TEST(EditFeatures, RenameLeavesOtherKeysOfDoubtsAlone) {
  Part part = samplePart();
  ASSERT_TRUE((part = *addFeature(part, onTop("x", FeatureKind::hole))).feature("x"));
  part.accepted = {{"loose:x:x"},  {"kind:tangent:x+A"},   {"clash:x:r1+r2"},
                   {"question:x"}, {"question:feature:x"}, {"outside:x::A\\+x+x"},
                   {"x"}};
  const Result<Part> edited = renameFeature(part, "x", "W");
  ASSERT_TRUE(edited.ok());
  EXPECT_EQ(keysOf(*edited),
            (Strings{"loose:W:x", "kind:tangent:W+A", "clash:x:r1+r2", "question:x",
                     "question:feature:W", "outside:x::A\\+x+W", "x"}));
}

TEST(EditFeatures, MentionsAreNamed) {
  const Part part = samplePart();
  EXPECT_EQ(mentionsOf(part, "G"),
            (Strings{"reading r2", "reading r7", "understanding 5", "check place of setup 1"}));
  EXPECT_EQ(mentionsOf(part, "R"), (Strings{"round N", "understanding 6", "zero of setup 1"}));
  EXPECT_TRUE(mentionsOf(part, "E").empty());
  EXPECT_TRUE(mentionsOf(part, "Q").empty());
}

TEST(EditFeatures, RemoveTakesWhatNamesItAlong) {
  const Part part = samplePart();
  const Result<Removal> removal = removeFeature(part, "A");
  ASSERT_TRUE(removal.ok()) << removal.error().place << removal.error().text;
  const Part& left = removal->part;
  EXPECT_EQ(removal->gone, mentionsOf(part, "A"));
  EXPECT_EQ(left.feature("M")->as<kind::Round>()->about, "");
  EXPECT_EQ(left.feature("P")->as<kind::Line>()->through, (Strings{"L"}));
  EXPECT_EQ(left.reading("r1"), nullptr);
  EXPECT_EQ(left.reading("r4"), nullptr);
  EXPECT_NE(left.reading("r3"), nullptr);
  ASSERT_EQ(left.understood.size(), 2U);
  EXPECT_EQ(left.understood[0].of, (Strings{"B", "C"}));
  EXPECT_EQ(left.understood[1].kind, UnderstandingKind::parallel);
  EXPECT_EQ(left.setups[0].checks, (Strings{"G2"}));
}

TEST(EditFeatures, RemovingAnythingLeavesASoundPart) {
  const Part part = samplePart();
  for (const Feature& feature : part.features) {
    const Result<Removal> removal = removeFeature(part, feature.id);
    ASSERT_TRUE(removal.ok()) << feature.id << ": " << removal.error().text;
    EXPECT_TRUE(checkPart(removal->part).ok());
    EXPECT_EQ(removal->part.feature(feature.id), nullptr);
  }
  EXPECT_EQ(removeFeature(part, "Q").error().code, ErrorCode::notFound);
}

TEST(EditFeatures, RemovingAllInAnyOrderLeavesNothing) {
  constexpr unsigned kSeed = 20261125;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  std::mt19937 random(kSeed);
  for (int round = 0; round < 50; ++round) {
    Part part = samplePart();
    while (!part.features.empty()) {
      const Id id = part.features[random() % part.features.size()].id;
      const Result<Removal> removal = removeFeature(part, id);
      ASSERT_TRUE(removal.ok()) << id;
      part = removal->part;
    }
    EXPECT_TRUE(part.readings.empty());
    EXPECT_TRUE(part.understood.empty());
    EXPECT_TRUE(part.setups[0].zero.empty());
  }
}

TEST(EditFeatures, MoveTraceKeepsTheSize) {
  const Part part = samplePart();
  const Result<Part> moved = moveTrace(part, "A", {"0.5", "0.75"});
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(moved->feature("A")->traced, (Strings{"0.5", "0.75"}));
  EXPECT_EQ(diameterOf(*moved->feature("A")), diameterOf(*part.feature("A")));
  EXPECT_EQ(moveTrace(part, "A", {"0.5"}).error().place, "/features/4/traced");
  EXPECT_EQ(moveTrace(part, "Q", {}).error().code, ErrorCode::notFound);
}

TEST(EditReadings, AddReplaceRemove) {
  const Part part = samplePart();
  const Reading reading = along("r9", Axis::x, "A", "R", sixtyFourths(28, "7/16"));
  const Result<Part> grown = addReading(part, reading);
  ASSERT_TRUE(grown.ok());
  EXPECT_EQ(grown->readings.back(), reading);
  Reading other = reading;
  other.to = "B";
  const Result<Part> changed = replaceReading(*grown, "r9", other);
  ASSERT_TRUE(changed.ok());
  EXPECT_EQ(changed->readings.back(), other);
  const Result<Part> back = removeReading(*changed, "r9");
  ASSERT_TRUE(back.ok());
  EXPECT_EQ(*back, part);
  EXPECT_EQ(addReading(part, *part.reading("r1")).error().place, "/readings/8/id");
  EXPECT_EQ(replaceReading(part, "r10", reading).error().code, ErrorCode::notFound);
  EXPECT_EQ(removeReading(part, "r10").error().code, ErrorCode::notFound);
}

TEST(EditUnderstandings, AddAndRemove) {
  const Part part = samplePart();
  const Understanding level = understood(UnderstandingKind::inLine, Axis::y, {"S", "G"});
  const Result<Part> grown = addUnderstanding(part, level);
  ASSERT_TRUE(grown.ok());
  EXPECT_EQ(*removeUnderstanding(*grown, 6), part);
  EXPECT_EQ(removeUnderstanding(part, 6).error().code, ErrorCode::notFound);
}

TEST(EditSetups, AddReplaceRemove) {
  const Part part = samplePart();
  inchwright::Setup second;
  second.name = "2";
  second.face = Face::bottom;
  const Result<Part> grown = addSetup(part, second);
  ASSERT_TRUE(grown.ok());
  second.name = "underside";
  const Result<Part> changed = replaceSetup(*grown, "2", second);
  ASSERT_TRUE(changed.ok());
  EXPECT_NE(changed->setup("underside"), nullptr);
  EXPECT_EQ(*removeSetup(*changed, "underside"), part);
  EXPECT_EQ(addSetup(part, part.setups[0]).error().place, "/setups/1/name");
  EXPECT_EQ(replaceSetup(part, "2", second).error().code, ErrorCode::notFound);
  EXPECT_EQ(removeSetup(part, "2").error().code, ErrorCode::notFound);
}

TEST(EditDoubts, AcceptingReplacesAndConfirmsWhatClicksGave) {
  Part part = samplePart();
  kind::Ring& ring =
      *part.features[std::size_t(part.feature("G") - part.features.data())].as<kind::Ring>();
  ring.byTrace = {"pcd"};
  AcceptedDoubt other("assumed:in_line:y:G");
  other.reason = "no trace";
  const Part kept = withAccepted(part, other);
  EXPECT_EQ(kept.feature("G")->as<kind::Ring>()->byTrace, Strings{"pcd"});
  AcceptedDoubt accepted("assumed:::G");
  accepted.reason = "stepped off with dividers";
  const Part confirmed = withAccepted(withAccepted(kept, AcceptedDoubt("assumed:::G")), accepted);
  EXPECT_TRUE(confirmed.feature("G")->as<kind::Ring>()->byTrace.empty());
  ASSERT_EQ(confirmed.accepted.size(), part.accepted.size() + 2);
  EXPECT_EQ(confirmed.accepted.end()[-2], other);
  EXPECT_EQ(confirmed.accepted.back(), accepted);
}

TEST(EditParts, AddReplaceRemove) {
  const Job job;
  const Result<Job> one = addPart(job, samplePart());
  ASSERT_TRUE(one.ok());
  EXPECT_EQ(addPart(*one, samplePart()).error().place, "/parts/1/name");
  EXPECT_EQ(*removePart(*one, "Front plate"), job);
  EXPECT_EQ(removePart(job, "x").error().code, ErrorCode::notFound);
}

TEST(NextIds, SidesHaveTheirLetters) {
  Part part;
  EXPECT_EQ(nextFeatureId(part, Side::left), "L");
  EXPECT_EQ(nextFeatureId(part, Side::right), "R");
  EXPECT_EQ(nextFeatureId(part, Side::front), "F");
  EXPECT_EQ(nextFeatureId(part, Side::back), "K");
  EXPECT_EQ(nextFeatureId(part, Side::top), "T");
  EXPECT_EQ(nextFeatureId(part, Side::bottom), "U");
  part.features = {edge("L", Axis::x, Side::left)};
  EXPECT_EQ(nextFeatureId(part, Side::left), "A");
}

TEST(NextIds, LettersFollowEachOther) {
  Part part;
  std::string all;
  for (int i = 0; i < 40; ++i) {
    const Id id = nextFeatureId(part);
    all += id + " ";
    part.features.push_back(onTop(id, FeatureKind::hole));
  }
  EXPECT_EQ(all,
            "A B C D E G H J M N P Q S V W X Y Z "
            "AA AB AC AD AE AG AH AJ AM AN AP AQ AS AV AW AX AY AZ BA BB BC BD ");
}

TEST(NextIds, LeaveRoomForHolesAndEnds) {
  Part part;
  part.features = {onTop("A", FeatureKind::slot), onTop("B7", FeatureKind::hole)};
  EXPECT_EQ(nextFeatureId(part), "C");
  part.features.push_back(onTop("C", FeatureKind::slot));
  part.features[0].as<kind::Slot>()->axis = Axis::x;
  part.features[2].as<kind::Slot>()->axis = Axis::x;
  part.name = "p";
  EXPECT_TRUE(checkPart(part).ok());
}

TEST(NextIds, WhatWasMadeUnderANameIsNotTakenForAnother) {
  Part part;
  MadePlace made;
  made.place = "A3";
  part.made = {made};
  Mended mended;
  mended.place = "B";
  part.mended = {mended};
  EXPECT_EQ(nextFeatureId(part), "C");
}

TEST(EditParts, AWayOutStaysWithItsHole) {
  Part part;
  part.name = "p";
  part.features = {onTop("A", FeatureKind::hole)};
  Mended mended;
  mended.place = "A";
  part.mended = {mended};
  const Result<Part> renamed = renameFeature(part, "A", "B");
  ASSERT_TRUE(renamed);
  EXPECT_EQ(renamed->mended[0].place, "B");
}

TEST(NextIds, ReadingsCountOn) {
  Part part;
  EXPECT_EQ(nextReadingId(part), "r1");
  part.readings = {ofKind("r2", ReadingKind::radius, "A"), ofKind("r10", ReadingKind::radius, "A"),
                   ofKind("r7b", ReadingKind::radius, "A"),
                   ofKind("r99999999999999999999", ReadingKind::radius, "A")};
  EXPECT_EQ(nextReadingId(part), "r11");
}

}  // namespace
}  // namespace inchwright
