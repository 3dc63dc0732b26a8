// What goes together, typed: lines to mates, gaps and other hands, and back.
#include "core/kit/kit_line.h"

#include <gtest/gtest.h>

#include <random>

#include "core/document/document.h"
#include "core/kit/as_made.h"
#include "core/kit/kit_edits.h"

namespace inchwright {
namespace {

Job sample(const char* name) {
  auto job = loadDocument(std::string(INCHWRIGHT_SOURCE_DIR "/samples/") + name + ".inchwright");
  return job ? *std::move(job) : Job();
}

/// What a line is refused with; empty when it is taken.
std::string refusal(const Job& job, const std::string& line) {
  const auto outcome = applyKitLine(job, line);
  return outcome ? std::string() : outcome.error().text;
}

TEST(KitLine, KnowsItsOwn) {
  for (const char* line : {"mate a: hole", "gap x", "  mate b", "change mate a: x",
                           "delete gap a b", "other hand of P across x called Q", "other hand"}) {
    EXPECT_TRUE(isKitLine(line)) << line;
  }
  for (const char* line : {"", "mate", "L A 3/8", "hole A 1/4", "mates a", "delete A",
                           "delete mate", "locate A mate B of C", "gaps", "other", "change A"}) {
    EXPECT_FALSE(isKitLine(line)) << line;
  }
}

TEST(KitLine, EveryMateAndGapOfTheSamplesIsReadAsItIsWritten) {
  int seen = 0;
  for (const char* name : {"click_work", "end_shake"}) {
    const Job job = sample(name);
    for (const Mate& mate : job.mates) {
      const auto again = readMateLine(job, mateLine(mate));
      ASSERT_TRUE(again) << mateLine(mate) << ": " << again.error().text;
      EXPECT_EQ(*again, mate) << mateLine(mate);
      EXPECT_EQ(applyKitLine(job, "change " + mateLine(mate))->job, job);
      ++seen;
    }
    for (const Gap& gap : job.gaps) {
      const auto again = readGapLine(job, gapLine(gap));
      ASSERT_TRUE(again) << gapLine(gap) << ": " << again.error().text;
      EXPECT_EQ(*again, gap) << gapLine(gap);
      EXPECT_EQ(applyKitLine(job, "change " + gapLine(gap))->job, job);
      ++seen;
    }
  }
  EXPECT_EQ(seen, 9);
}

TEST(KitLine, AMateIsMadeChangedAndTakenAway) {
  const Job job = sample("click_work");
  const auto made = applyKitLine(
      job, "mate arbor in the plate: hole B of Click plate, shaft .1245/.1250, fit RC 4");
  ASSERT_TRUE(made) << made.error().text;
  EXPECT_EQ(made->thing, KitThing::mate);
  EXPECT_EQ(made->name, "arbor in the plate");
  ASSERT_EQ(made->job.mates.size(), 4u);
  EXPECT_EQ(std::get<PartPlace>(made->job.mates[3].hole), (PartPlace{"Click plate", "B", {}}));
  EXPECT_EQ(std::get<Lettered>(made->job.mates[3].shaft).text, ".1245/.1250");
  EXPECT_EQ(made->job.mates[3].fit, "RC 4");

  // One that is there is not replaced unasked, and a change keeps its place in the list.
  EXPECT_EQ(refusal(job,
                    "mate click on its pivot: hole A of Front click, shaft P of Click pivot, "
                    "least .001"),
            "there is a mate `click on its pivot` already; no two may be called alike");
  const auto changed = applyKitLine(job,
                                    "change mate arbor in its bush: hole B of Bush shaft P of "
                                    "Ratchet arbor least ,0005, greatest .002");
  ASSERT_TRUE(changed) << changed.error().text;
  EXPECT_EQ(changed->job.mates[1].least->text, ",0005");
  EXPECT_EQ(changed->job.mates[1].greatest->text, ".002");
  const auto gone = applyKitLine(job, "delete mate arbor in its bush");
  ASSERT_TRUE(gone);
  EXPECT_TRUE(gone->removed);
  EXPECT_EQ(gone->job.mates.size(), 2u);
}

TEST(KitLine, ACommaMayStandBehindAnyWord) {
  const Job job = sample("click_work");
  const auto plain = readMateLine(job, "mate m: hole A of Click plate shaft P of Bush fit LN2");
  ASSERT_TRUE(plain.ok()) << plain.error().text;
  for (const char* line : {"mate m: hole, A of Click plate, shaft, P of Bush, fit, LN2",
                           "mate m: hole A of Click plate, shaft P of Bush, fit LN2,"}) {
    const auto read = readMateLine(job, line);
    ASSERT_TRUE(read.ok()) << line << read.error().text;
    EXPECT_EQ(*read, *plain) << line;
  }
}

// Each of the places that go on together is a hole of that part.
TEST(KitLine, PlacesThatGoOnTogetherAreHoles) {
  const Job job = sample("click_work");
  Mate mate = *readMateLine(job, "mate m: hole A of Click plate, shaft .1245/.1250, fit RC 4");
  const auto isTaken = [&](std::vector<Id> places) {
    mate.places = std::move(places);
    return withMate(job, {}, mate).ok();
  };
  EXPECT_TRUE(isTaken({"A"}));
  EXPECT_TRUE(isTaken({"A", "B"}));
  EXPECT_FALSE(isTaken({"A", "Q"})) << "no such place";
  EXPECT_FALSE(isTaken({"L"})) << "an edge";
}

TEST(KitLine, MembersThatAreNotKnownAreKept) {
  Job job = sample("click_work");
  job.mates[0].extra = {{"note", "\"mine\""}};
  const auto changed = applyKitLine(
      job, "change mate bush in the plate: hole A of Click plate, shaft P of Bush, fit LN1");
  ASSERT_TRUE(changed);
  EXPECT_EQ(changed->job.mates[0].fit, "LN1");
  EXPECT_EQ(changed->job.mates[0].extra, job.mates[0].extra);
}

TEST(KitLine, AGapIsAddedUp) {
  const Job job = sample("end_shake");
  // By hand: 1.562 − 2 × .031 − 2 × .031 − (.375 + .300 + .750) = .013.
  const auto made =
      applyKitLine(job,
                   "gap mine: S to E of Pillar; - N to T of Plate; - N to T of Plate; - "
                   "L to M of Bush; - L to M of Bush; - x S to E of Arbor; least .0015; "
                   "greatest .025");
  ASSERT_TRUE(made) << made.error().text;
  const auto mine = gapStack(made->job, made->job.gaps.back());
  ASSERT_TRUE(mine);
  EXPECT_EQ(mine->stack, gapStack(job, job.gaps[0])->stack);
  EXPECT_EQ(made->job.gaps.back().members[1].axis, Axis::z) << "the only one they share";
}

TEST(KitLine, WhatIsWrongIsSaidInWords) {
  const Job job = sample("click_work");
  const std::pair<const char*, const char*> cases[] = {
      // Hole and shaft the wrong way round: the clearance would have the wrong sign.
      {"mate m: hole P of Bush, shaft A of Click plate, fit LN2",
       "`P` of `Bush` is no hole: is it the shaft?"},
      {"mate m: hole A of Click plate, shaft B of Bush, fit LN2",
       "`B` of `Bush` is a hole: what goes into it is the shaft"},
      {"mate m: hole A of Click plate, shaft P of Bush, least .002, greatest .001",
       "the least, .002, is more than the greatest, .001"},
      {"mate m: hole A of Click plate, shaft P of Bush, fit LN2, least .002",
       "give the fit's name, or `least` and `greatest`, not both"},
      {"mate m: hole A of Click plate, shaft P of Bush",
       "say how it has to go together: `fit` and its name, or `least` and `greatest`"},
      {"mate m: hole Q of Click plate, shaft P of Bush, fit LN2",
       "the part `Click plate` has no place `Q`"},
      {"mate m: hole A of Clock plate, shaft P of Bush, fit LN2",
       "the job has no part `Clock plate`"},
      {"mate m: shaft P of Bush, fit LN2", "say which hole, or its size"},
      {"mate m: hole A of Click plate, fit LN2", "say which shaft, or its size"},
      {"mate m: hole A of Click plate, shaft P of Bush, least", "a figure is wanted here"},
      {"mate m: hole 1/4, shaft 1/4, fit LN2",
       "two sizes alone are no mate: name a place of a part, such as `A of Plate`"},
      {"mate m hole A of Click plate", "give the mate a name, with a colon behind it"},
      {"mate : hole A of Click plate, shaft P of Bush, fit LN2",
       "a mate needs a name of 1 to 64 letters"},
      {"mate m: hole A of Click plate, hole B of Bush", "the hole is said twice"},
      {"mate m: bore A of Click plate",
       "`bore`: a mate says hole, shaft, fit, least, greatest or places"},
      {"change mate m: hole A of Click plate, shaft P of Bush, fit LN2", "there is no mate `m`"},
      {"delete mate m", "there is no mate `m`"},
      {"gap g: least .001", "say what the gap is made of, such as `+ A to B of Plate`"},
      {"gap g: A to B of Click plate", "say along which axis, such as `x A to B`, or `centres`"},
      {"gap g: z L to R of Click plate", "these two can't be measured along z"},
      {"gap g: x A to Q of Click plate", "there is no `Q`"},
      {"gap g: x A to B of Click plate - M to S of Click pivot",
       "`-`: a semicolon stands between the members of a gap"},
      {"gap g: length 1/4; fit RC44 at 1/4", "member 2: `RC44` is no fit known here"},
      {"gap g: hole P of Bush, shaft P of Ratchet arbor",
       "`P` of `Bush` is no hole: is it the shaft?"},
      {"gap g: hole A of Click plate", "name the shaft as well, such as `shaft A of Plate`"},
      {"gap g: length .25; least .3; greatest .2", "the least, .3, is more than the greatest, .2"},
      {"delete gap g", "there is no gap `g`"},
      {"other hand of Bush called x",
       "say what is turned round: `across x` (left becomes right) or `across y`"},
      {"other hand of Nut across x called y", "the job has no part of that name here"},
      {"other hand of Front click across z called y", "a part is turned round across x or y"},
      {"other hand of Front click across x called Bush",
       "there is a part `Bush` already; no two may be called alike"},
  };
  for (const auto& [line, said] : cases) {
    const std::string refused = refusal(job, line);
    EXPECT_EQ(refused.substr(0, std::string(said).size()), said) << line;
  }
}

TEST(KitLine, AFaultIsShownWhereItStands) {
  const Job job = sample("click_work");
  const std::string line = "change mate bush in the plate: hole A of Click plate, shaft 1//4";
  const auto outcome = applyKitLine(job, line);
  ASSERT_FALSE(outcome);
  ASSERT_TRUE(outcome.error().at);
  EXPECT_GE(*outcome.error().at, line.find("1//4"));
}

TEST(KitLine, AnOtherHandFollowsUntilItStandsAlone) {
  const Job job = sample("click_work");
  const auto made =
      applyKitLine(job, "other hand of Front click across x called Left, front click");
  ASSERT_TRUE(made) << made.error().text;
  EXPECT_EQ(made->thing, KitThing::otherHand);
  const Part* other = made->job.part("Left, front click");
  ASSERT_NE(other, nullptr);
  EXPECT_EQ(other->opposite, (OppositeOf{"Front click", Axis::x}));
  EXPECT_EQ(other->feature("L")->as<kind::Edge>()->side, Side::right);
  EXPECT_EQ(other->quantity, 1);
  EXPECT_EQ(other, made->job.part("Front click") + 1) << "it stands behind the one it follows";
  EXPECT_EQ(refusal(made->job, "other hand of Left, front click across x called again"),
            "`Left, front click` is itself the other hand of `Front click`");
  const auto text = writeDocument(made->job);
  EXPECT_EQ(*readDocument(text), made->job) << "saved and opened again";

  const auto alone = standingAlone(made->job, "Left, front click");
  ASSERT_TRUE(alone);
  EXPECT_EQ(alone->part("Left, front click")->features, other->features);
  EXPECT_FALSE(alone->part("Left, front click")->opposite);
  EXPECT_FALSE(standingAlone(job, "Front click"));
}

TEST(KitLine, WhateverIsTypedIsRefusedOrCanBeSavedAndTypedAgain) {
  const Job job = sample("click_work");
  const char* words[] = {"mate",   "gap",   "m:",       "change",   "delete", "hole",   "shaft",
                         "A",      "of",    "Bush",     "Click",    "plate",  "P",      "fit",
                         "LN2",    "least", ".001",     "greatest", "2",      "places", ";",
                         "-",      "+",     "length",   "1/4,",     "screw",  "#8-32",  "close",
                         "at",     "to",    "x",        "z",        "other",  "hand",   "across",
                         "called", "B",     "\xCE\xB2", "1//2",     ":"};
  const std::string begun[] = {"mate m: hole A of Click plate, shaft P of Bush, ",
                               "gap g: x A to B of Click plate; ", "other hand of Front click ",
                               "change gap side shake of the click: "};
  std::mt19937 random(20261129);
  int taken = 0;
  for (int i = 0; i < 4000; ++i) {
    std::string line = random() % 4 == 0 ? "" : begun[random() % std::size(begun)];
    for (auto count = random() % 7; count > 0; --count) {
      line += std::string(words[random() % std::size(words)]) + " ";
    }
    const auto outcome = applyKitLine(job, line);
    if (!outcome) {
      EXPECT_FALSE(outcome.error().text.empty()) << line;
      EXPECT_LE(outcome.error().at.value_or(0), line.size()) << line;
      continue;
    }
    ++taken;
    const auto again = readDocument(writeDocument(outcome->job));
    ASSERT_TRUE(again) << line << ": " << again.error().place << " " << again.error().text;
    EXPECT_EQ(*again, outcome->job) << line;
    for (const Mate& mate : outcome->job.mates) {
      EXPECT_EQ(applyKitLine(outcome->job, "change " + mateLine(mate))->job, outcome->job) << line;
    }
  }
  EXPECT_GT(taken, 100);
}

TEST(KitLine, WhatThePrintDoesNotSayYetIsNoReason) {
  Job job = sample("click_work");
  for (Part& part : job.parts) {
    if (part.name != "Click plate") continue;
    for (Feature& one : part.features) {
      if (one.id == "B" && one.drilled()) {
        one.drilled()->diameter.reset();
        one.drilled()->limits.clear();
      }
    }
    part.readings.clear();
  }
  EXPECT_EQ(refusal(job, "mate m: hole B of Click plate, shaft P of Bush, fit RC4"), "");
  EXPECT_EQ(refusal(job, "gap g: x A to B of Click plate"), "");
}

}  // namespace
}  // namespace inchwright
