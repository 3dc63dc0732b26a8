#include "core/kit/as_made.h"

#include <gtest/gtest.h>

#include "tests/core/kit/kit_job.h"

namespace inchwright {
namespace {

AsMade worked(const std::string& plate, const std::string& arbor = {}) {
  const KitJob kit(plate, arbor);
  auto made = asMade(kit.job, kit.solutions);
  EXPECT_TRUE(made.ok()) << made.error().text;
  return *std::move(made);
}

std::vector<Verdict> verdictsFor(const std::string& plate) {
  const AsMade made = worked(plate);
  return made.rows.empty() ? std::vector<Verdict>{} : made.rows[0].verdicts;
}

std::string at(const char* rest) {
  return std::string(R"({"place": "A", "setup": "1")") + rest + "}";
}

// ISO 286: H7 over 6 up to 10 mm is 0 to +15 µm; 1/4 in is 6.35 mm: .2500 to .2505906.
TEST(AsMade, SetsFoundBesideWanted) {
  const AsMade made =
      worked(at(R"(, "x": "1.0004", "y": ".7500", "size": ".2503", "with": {"error": ".0002"})"));
  ASSERT_EQ(made.rows.size(), 1u);
  const MadeRow& row = made.rows[0];
  EXPECT_EQ(row.wantedX->text, "1.0000");
  EXPECT_EQ(row.wantedY->text, "0.7500");
  EXPECT_EQ(row.wantedSize->limits.least, inTenThousandths(2500));
  EXPECT_EQ(row.wantedSize->limits.greatest.ticks() - row.wantedSize->limits.least.ticks(),
            15 * 100'000);
  EXPECT_EQ(row.foundSize, tenths(2501, 2505));
  EXPECT_EQ(*row.offX, inTenThousandths(4));
  EXPECT_EQ(row.verdicts, std::vector<Verdict>{Verdict::in});
}

TEST(AsMade, GivesTheVerdictsOfEachManner) {
  using V = std::vector<Verdict>;
  EXPECT_EQ(verdictsFor(at(R"(, "size": ".2501")")), V{Verdict::in});
  EXPECT_EQ(verdictsFor(at(R"(, "size": ".2518", "with": {"error": ".0003"})")), V{Verdict::over});
  EXPECT_EQ(verdictsFor(at(R"(, "size": ".2490")")), V{Verdict::under});
  EXPECT_EQ(verdictsFor(at(R"(, "size": ".2505", "with": {"error": ".0003"})")),
            V{Verdict::cannotTell});
  EXPECT_EQ(verdictsFor(at(R"(, "ticks": ["drill 15/64"])")), V{Verdict::notMeasured});
  // Both pins: at least .2500, at most .2505.
  EXPECT_EQ(verdictsFor(at(R"(, "go": {"size": ".2500", "class": "X", "sign": "plus"},
      "no_go": {"size": ".2505", "class": "X", "sign": "minus"})")),
            V{Verdict::in});
  EXPECT_EQ(verdictsFor(at(R"(, "go": {"size": ".2500", "class": "X", "sign": "plus"})")),
            V{Verdict::cannotTell});
  EXPECT_EQ(verdictsFor(at(R"(, "x": "1.0100", "y": ".7500")")), V{Verdict::offPlace});
  EXPECT_EQ(verdictsFor(at(R"(, "x": "1.0001", "y": ".7500")")), V{Verdict::in});
  EXPECT_EQ(verdictsFor(at(R"(, "x": "1.0100", "size": ".2518")")),
            (V{Verdict::over, Verdict::offPlace}));
}

TEST(AsMade, LeavesOutWhatIsNoLongerThere) {
  const AsMade nowhere = worked(R"({"place": "Z", "setup": "1", "size": ".25"})");
  EXPECT_TRUE(nowhere.rows.empty());
  ASSERT_EQ(nowhere.nowhere.size(), 1u);
  EXPECT_EQ(nowhere.nowhere[0].place, "Z");
  EXPECT_EQ(nowhere.nowhere[0].setup, "");
  const AsMade gone = worked(R"({"place": "A", "setup": "9", "x": "1", "size": ".2502"})");
  EXPECT_FALSE(gone.rows[0].wantedX);
  ASSERT_EQ(gone.nowhere.size(), 1u);
  EXPECT_EQ(gone.nowhere[0].setup, "9");
  EXPECT_EQ(gone.rows[0].verdicts, std::vector<Verdict>{Verdict::in});
}

TEST(AsMade, WorksMatesFromWhatWasFound) {
  // As drawn: hole .2500 to .2505906, shaft .2490 to .2493.
  const AsMade drawn = worked({});
  EXPECT_EQ(drawn.mates[0].clearance.least, inTenThousandths(7));
  EXPECT_FALSE(drawn.mates[0].measured);
  EXPECT_EQ(drawn.mates[0].verdict, Verdict::in);
  const AsMade over = worked(at(R"(, "size": ".2518", "with": {"error": ".0003"})"));
  EXPECT_EQ(over.mates[0].clearance, tenths(22, 31));
  EXPECT_EQ(over.mates[0].verdict, Verdict::over);
  // The shaft made to suit brings it back.
  const AsMade suited =
      worked(at(R"(, "size": ".2518", "with": {"error": ".0003"})"),
             R"({"place": "D", "setup": "1", "size": ".2507", "with": {"error": ".0001"}})");
  EXPECT_EQ(suited.mates[0].clearance, tenths(7, 15));
  EXPECT_EQ(suited.mates[0].verdict, Verdict::in);
}

// Lettered 1/4 in 1/4 is no slip where a clearance is wanted; .251 in 1/4 is, and where it is to be
// tight it is meant.
TEST(AsMade, AShaftLetteredLargerThanItsHoleIsTold) {
  const auto isTold = [](const char* shaft, const char* least) {
    KitJob kit;
    kit.job.mates[0].shaft = *readLength(shaft);
    kit.job.mates[0].least = *readLength(least);
    const AsMade made = *asMade(kit.job, kit.solutions);
    EXPECT_FALSE(made.mates[0].fault.has_value());
    return made.mates[0].tightAsLettered;
  };
  EXPECT_FALSE(isTold(".2500", ".0007"));
  EXPECT_FALSE(isTold(".2490", ".0007"));
  EXPECT_TRUE(isTold(".2501", ".0007"));
  EXPECT_TRUE(isTold(".2501", "0"));
  EXPECT_FALSE(isTold(".2501", "-.0005"));
}

// The shaft as drawn is .2490 to .2493. Of one piece the last measurement counts.
TEST(AsMade, OfSeveralPiecesAMateIsAllThatAnyMayBe) {
  const auto piece = [&](const char* name, const char* size) {
    return at((R"(, "piece": ")" + std::string(name) + R"(", "size": ")" + size + "\"").c_str());
  };
  const std::string first = piece("1", ".2505"), second = piece("2", ".2503"),
                    third = piece("3", ".2504"), again = piece("2", ".2502");
  EXPECT_EQ(worked(first + "," + second).mates[0].clearance, tenths(10, 15));
  EXPECT_EQ(worked(second + "," + third + "," + first).mates[0].clearance, tenths(10, 15));
  EXPECT_EQ(worked(first + "," + second + "," + again).mates[0].clearance, tenths(9, 15));
}

// A pin that goes in says how large the hole is at least, one that does not how large at most: the
// mate is known at that end alone.
TEST(AsMade, WhatOneEndOfIsKnownIsKnownAtThatEndOnly) {
  const MateState go =
      worked(at(R"(, "go": {"size": ".2500", "class": "X", "sign": "plus"})")).mates[0];
  EXPECT_TRUE(go.clearance.least.has_value());
  EXPECT_FALSE(go.clearance.greatest.has_value());
  EXPECT_EQ(go.verdict, Verdict::cannotTell);
  const MateState noGo =
      worked(at(R"(, "no_go": {"size": ".2505", "class": "X", "sign": "minus"})")).mates[0];
  EXPECT_FALSE(noGo.clearance.least.has_value());
  EXPECT_TRUE(noGo.clearance.greatest.has_value());
  EXPECT_EQ(noGo.verdict, Verdict::cannotTell);
  // A shaft measured by ring gauges alike.
  const MateState shaft =
      worked(
          {},
          R"({"place": "D", "setup": "1", "go": {"size": ".2493", "class": "X", "sign": "plus"}})")
          .mates[0];
  EXPECT_NE(shaft.clearance.least.has_value(), shaft.clearance.greatest.has_value());
}

// ANSI B4.1, RC4 over .24 to .40 in: hole +.9 −0, shaft −.5 −1.1 thou: .5 to 2.0 (as in the table).
TEST(AsMade, TakesAFitAtTheHolesNominalSize) {
  const AsMade made = worked(R"({"place": "B", "setup": "1", "size": ".2504"})");
  EXPECT_EQ(made.mates[1].wanted, tenths(5, 20));
  EXPECT_EQ(made.mates[1].clearance, tenths(11, 14));
  EXPECT_EQ(made.mates[1].verdict, Verdict::in);
}

TEST(AsMade, PutsFoundDistancesAndSizesIntoGaps) {
  const AsMade drawn = worked({});
  ASSERT_EQ(drawn.gaps.size(), 2u);
  EXPECT_EQ(drawn.gaps[0].asMade, drawn.gaps[0].asDrawn);
  EXPECT_TRUE(drawn.gaps[0].keeps);
  EXPECT_FALSE(drawn.gaps[0].fault);
  const AsMade made = worked(
      R"({"place": "A", "setup": "1", "x": "1.0002", "with": {"error": ".0001"}},
         {"place": "B", "setup": "1", "x": "2.0027", "with": {"error": ".0002"}})");
  EXPECT_EQ(made.gaps[0].asMade.low, inTenThousandths(10022).ticks());
  EXPECT_EQ(made.gaps[0].asMade.high, inTenThousandths(10028).ticks());
  EXPECT_FALSE(made.gaps[0].keeps);
  // Half the clearance either way.
  const AsMade loose = worked(at(R"(, "size": ".2520")"));
  EXPECT_EQ(loose.gaps[1].asMade.high, inTenThousandths(15).ticks());
}

// Setups that cannot be worked, whose zero is on a place that is not there or that the print leaves
// loose, hide nothing that was measured in another.
TEST(AsMade, AGapIsToldOfTheSetupThatWasMeasured) {
  for (const char* zero : {"Q", "C"}) {
    KitJob kit(R"({"place": "A", "setup": "1", "x": "1.0002"},
                  {"place": "B", "setup": "1", "x": "2.0027"})");
    Part& plate = kit.job.parts[0];
    std::erase_if(plate.readings, [](const Reading& one) { return one.id == "r7"; });
    kit.solutions[0] = *solve(plate);
    inchwright::Setup other = plate.setups[0];
    other.name = "0";
    other.zero[0].at = zero;
    plate.setups.insert(plate.setups.begin(), other);
    const auto made = asMade(kit.job, kit.solutions);
    ASSERT_TRUE(made.ok()) << zero;
    EXPECT_EQ(made->gaps[0].asMade.low, inTenThousandths(10025).ticks()) << zero;
    EXPECT_EQ(made->gaps[0].asMade.high, inTenThousandths(10025).ticks()) << zero;
  }
}

TEST(AsMade, SaysWhatCannotBeWorkedOut) {
  KitJob kit;
  kit.job.mates[0].shaft = PartPlace{"Spindle", "D", {}};
  kit.job.mates[1].fit.clear();
  const auto made = asMade(kit.job, kit.solutions);
  ASSERT_TRUE(made.ok());
  ASSERT_TRUE(made->mates[0].fault);
  EXPECT_EQ(made->mates[0].fault->code, ErrorCode::notFound);
  ASSERT_TRUE(made->mates[1].fault);
}

TEST(AsMade, RefusesAMateWhoseLimitsAreTheWrongWayRound) {
  KitJob kit;
  std::swap(kit.job.mates[0].least, kit.job.mates[0].greatest);
  const auto made = asMade(kit.job, kit.solutions);
  ASSERT_TRUE(made.ok());
  ASSERT_TRUE(made->mates[0].fault);
  EXPECT_NE(made->mates[0].fault->text.find("above its greatest"), std::string::npos);
}

TEST(DrawnSize, FollowsWhatThePrintSays) {
  const KitJob kit;
  const Part& plate = kit.job.parts[0];
  EXPECT_EQ(drawnSize(plate, "B")->limits,
            (SizeLimits{inTenThousandths(2500), inTenThousandths(2510)}));
  EXPECT_EQ(drawnSize(plate, "C")->nominal, inTenThousandths(1360)) << "8-32, its drill #29";
  EXPECT_LT(drawnSize(plate, "C")->limits.greatest, inTenThousandths(1640)) << "the screw's own";
  EXPECT_EQ(drawnSize(plate, "L").error().code, ErrorCode::badRequest);
  EXPECT_EQ(drawnSize(plate, "Q").error().code, ErrorCode::notFound);
  EXPECT_EQ(drawnSize(kit.job.parts[1], "D")->limits.greatest, inTenThousandths(2493));
}

// The lathe counts from the arbor's free end, an inch from the chuck's.
TEST(AsMade, ALengthAlongTheLatheIsSetBesideItsCarriage) {
  const AsMade made = worked({}, R"({"place": "D", "setup": "1", "x": "1.0012"})");
  ASSERT_EQ(made.rows.size(), 1u);
  ASSERT_TRUE(made.rows[0].wantedX.has_value());
  EXPECT_EQ(made.rows[0].wantedX->text, "1.000");
  EXPECT_EQ(made.rows[0].wantedX->value, inTenThousandths(10000));
  EXPECT_EQ(made.rows[0].offX, inTenThousandths(12));
}

TEST(AsMade, OfOnePartItsOwnRowsAndWhatItIsAMemberOf) {
  const KitJob kit(at(R"(, "size": ".2503")"), R"({"place": "D", "setup": "1", "size": ".2491"})");
  const AsMade all = *asMade(kit.job, kit.solutions);
  const auto namesOf = [&](const char* part) {
    std::vector<std::string> names;
    const AsMade its = concerning(kit.job, all, part);
    for (const MadeRow& row : its.rows) names.push_back(row.place);
    for (const MateState& mate : its.mates) names.push_back(mate.name);
    for (const GapState& gap : its.gaps) names.push_back(gap.name);
    return names;
  };
  EXPECT_EQ(namesOf("Plate"),
            (std::vector<std::string>{"A", "arbor in A", "pin in B", "pitch", "rock"}));
  EXPECT_EQ(namesOf("Arbor"), (std::vector<std::string>{"D", "arbor in A", "rock"}));
  EXPECT_EQ(namesOf("Spindle"), std::vector<std::string>{});
}

TEST(AsMade, OfOnePartItsOwnThatIsNowhereAndWhatWasChosenOtherwise) {
  KitJob kit(R"({"place": "Z", "setup": "1", "size": ".25"},
                {"place": "A", "setup": "1", "size": ".2518", "with": {"error": ".0003"}})",
             R"({"place": "Y", "setup": "1", "size": ".25"})");
  kit.job.parts[0].mended.push_back({"A", {}, WayOut::openToSize, {}, "", {}, {}});
  const AsMade all = *asMade(kit.job, kit.solutions);
  const AsMade plate = concerning(kit.job, all, "Plate"), arbor = concerning(kit.job, all, "Arbor");
  ASSERT_EQ(plate.nowhere.size(), 1u);
  EXPECT_EQ(plate.nowhere[0].place, "Z");
  ASSERT_EQ(arbor.nowhere.size(), 1u);
  EXPECT_EQ(arbor.nowhere[0].place, "Y");
  ASSERT_EQ(plate.changed.size(), 1u);
  EXPECT_EQ(plate.changed[0].place, "A");
  EXPECT_TRUE(arbor.changed.empty());
}

}  // namespace
}  // namespace inchwright
