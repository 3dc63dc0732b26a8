// What a part's sheet is told of the rest of the kit: mates, what came out wrong, ways out chosen.
#include "core/kit/kit_of_part.h"

#include <gtest/gtest.h>

#include "core/say/kit_words.h"
#include "tests/core/kit/kit_job.h"

namespace inchwright {
namespace {

constexpr const char* kOverA =
    R"({"place": "A", "setup": "1", "size": ".2518", "with": {"name": "gauge", "error": ".0003"}})";
constexpr const char* kTrueA =
    R"({"place": "A", "setup": "1", "size": ".2503", "with": {"name": "gauge", "error": ".0001"}})";

KitOfPart kitOf(const KitJob& kit, std::size_t part) {
  auto found = kitOfPart(kit.job, kit.job.parts[part], kit.solutions[part]);
  EXPECT_TRUE(found.ok());
  return found.ok() ? *std::move(found) : KitOfPart{};
}

KitJob chosen(const char* way) {
  KitJob kit(kOverA);
  kit.job.parts[0].mended.push_back(
      {"A", {}, *wayOutNamed(way), {}, "it is not turned yet", {}, {}});
  return kit;
}

TEST(KitOfPart, BothPartsNameTheMate) {
  const KitJob kit;
  const KitOfPart plate = kitOf(kit, 0), arbor = kitOf(kit, 1);
  ASSERT_EQ(plate.suits.size(), 2u);
  EXPECT_TRUE(plate.suits[0].isHole);
  EXPECT_EQ(plate.suits[0].place, "A");
  EXPECT_EQ(plate.suits[0].otherPart, "Arbor");
  EXPECT_EQ(plate.suits[0].otherPlace, "D");
  EXPECT_EQ(plate.suits[1].place, "B");
  EXPECT_EQ(plate.suits[1].otherPart, "");
  ASSERT_EQ(arbor.suits.size(), 1u);
  EXPECT_FALSE(arbor.suits[0].isHole);
  EXPECT_EQ(arbor.suits[0].otherPart, "Plate");
  EXPECT_EQ(arbor.suits[0].lettered, ".2490 +.0003 -0");
  EXPECT_FALSE(arbor.suits[0].otherMeasured);
  EXPECT_FALSE(arbor.suits[0].replaces());
  EXPECT_TRUE(plate.cameOut.empty());
}

// The print's size is struck out once it no longer counts: not where it is left as it came out.
TEST(KitOfPart, TheSheetStrikesOutWhatNoLongerCounts) {
  const Step step{Length::ticks(254'000), Unit::inch};
  const auto lineOf = [&](const KitJob& kit) {
    KitOfPart own = kitOf(kit, 0);
    own.suits.clear();
    const std::vector<KitLine> lines = kitLines(own, step);
    EXPECT_EQ(lines.size(), 1u);
    return lines.empty() ? KitLine() : lines[0];
  };
  const KitLine open = lineOf(KitJob(kOverA));
  EXPECT_TRUE(open.mind);
  EXPECT_FALSE(open.found);
  EXPECT_EQ(open.struckOut, "");
  EXPECT_TRUE(open.words.ends_with("No way out is chosen yet")) << open.words;
  for (const char* way : {"shaft", "bush", "plug", "leave"}) {
    const KitLine line = lineOf(chosen(way));
    EXPECT_FALSE(line.mind) << way << ": " << line.words;
    EXPECT_EQ(line.struckOut.empty(), way == std::string("leave")) << line.struckOut;
    EXPECT_NE(line.words.find("it is not turned yet"), std::string::npos) << line.words;
  }
}

// .2515 to .2521 with .0007 to .0016 of clearance: .2521 - .0016 = .2505 to .2515 - .0007 = .2508.
TEST(KitOfPart, TellsWhatSuitsTheHoleAsFound) {
  const KitJob kit(kOverA);
  const Suits suits = kitOf(kit, 1).suits[0];
  EXPECT_TRUE(suits.otherMeasured);
  EXPECT_EQ(suits.make, tenths(2505, 2508));
  // Nobody chose it: the print's figure still stands.
  EXPECT_FALSE(suits.replaces());
  const CameOut out = kitOf(kit, 0).cameOut.at(0);
  EXPECT_TRUE(out.isWrong());
  EXPECT_FALSE(out.chosen.has_value());
}

// The hole for a shaft: .2494 + .0007 to .2494 + .0016, the shaft measured without an error.
TEST(KitOfPart, TellsWhatHoleSuitsTheShaftAsFound) {
  const KitJob kit({}, R"({"place": "D", "setup": "1", "size": ".2494"})");
  EXPECT_EQ(kitOf(kit, 0).suits[0].make, tenths(2501, 2510));
}

TEST(KitOfPart, ASizeChosenToSuitReplacesThePrints) {
  const KitJob kit = chosen("shaft");
  EXPECT_TRUE(kitOf(kit, 1).suits[0].replaces());
  EXPECT_EQ(kitOf(kit, 1).suits[0].chosen->reason, "it is not turned yet");
  EXPECT_TRUE(kitOf(kit, 0).suits[0].suited);
  // The hole's own sheet says what was chosen, with its figures.
  const CameOut out = kitOf(kit, 0).cameOut.at(0);
  ASSERT_TRUE(out.way.has_value());
  EXPECT_EQ(out.way->shaft, tenths(2505, 2508));
}

// Chosen on other figures than the newest measurement gives: told, and so until chosen again.
TEST(KitOfPart, AChoiceOnOtherFiguresIsTold) {
  for (const char* way : {"next_size", "bush", "shaft"}) {
    KitJob kit = chosen(way);
    EXPECT_FALSE(kitOf(kit, 0).cameOut.at(0).changed) << way << ": nothing is kept of it";
    ChosenFigures& was = kit.job.parts[0].mended[0].chosen;
    was = figuresOf(*kitOf(kit, 0).cameOut.at(0).way);
    EXPECT_FALSE(kitOf(kit, 0).cameOut.at(0).changed) << way;
    for (auto* figure : {&was.bore, &was.least}) {
      if (*figure) *figure = (*figure)->plus(inTenThousandths(1));
    }
    EXPECT_TRUE(kitOf(kit, 0).cameOut.at(0).changed) << way;
    const auto made = asMade(kit.job, kit.solutions);
    ASSERT_TRUE(made.ok());
    ASSERT_EQ(made->changed.size(), 1u) << way;
    EXPECT_EQ(made->changed[0].place, "A");
    was.exact = false;  // as a readout showed it
    EXPECT_FALSE(kitOf(kit, 0).cameOut.at(0).changed) << way;
  }
}

// What was measured of a place, be it one coordinate alone; what was only ticked off is not.
TEST(KitOfPart, WhatWasMeasuredCameOut) {
  const KitJob kit(R"({"place": "A", "setup": "1", "x": "1.0001"},
                      {"place": "B", "setup": "1", "y": ".7501"},
                      {"place": "C", "setup": "1", "ticks": ["drill 15/64"]})");
  std::vector<Id> places;
  for (const CameOut& one : kitOf(kit, 0).cameOut) places.push_back(one.row.place);
  EXPECT_EQ(places, (std::vector<Id>{"A", "B"}));
}

TEST(KitOfPart, AHoleThatIsOverByNowCannotBeOpened) {
  const KitJob kit = chosen("open_to_size");
  EXPECT_TRUE(kitOf(kit, 0).cameOut.at(0).changed);
}

TEST(KitOfPart, ALinedHoleCountsAsDrawn) {
  for (const char* way : {"bush", "plug"}) {
    const KitJob kit = chosen(way);
    const Suits suits = kitOf(kit, 1).suits[0];
    EXPECT_FALSE(suits.otherMeasured) << way;
    EXPECT_EQ(suits.other, sizeAsDrawn(kit.job, kit.job.mates[0].hole)->size) << way;
    EXPECT_FALSE(suits.replaces()) << way;
  }
}

TEST(KitOfPart, AHoleThatCameOutWellChoosesNothing) {
  KitJob kit(kTrueA);
  kit.job.parts[0].mended.push_back({"A", {}, WayOut::shaft, {}, "an older hole", {}, {}});
  EXPECT_FALSE(kitOf(kit, 1).suits[0].replaces());
  EXPECT_FALSE(kitOf(kit, 0).cameOut.at(0).chosen.has_value());
}

// A fraction lets a hole pass that is far too large for its mate: what was chosen is followed there
// as well, and until it is done nothing stands in the way.
TEST(KitOfPart, AShaftIsMadeToSuitAHoleThatItsOwnPrintLetsPass) {
  KitJob kit(kOverA);
  kit.job.parts[0].features[4].drilled()->limits.clear();
  kit.solutions[0] = *solve(kit.job.parts[0]);
  EXPECT_FALSE(kitOf(kit, 0).cameOut.at(0).isWrong());
  const auto loose = asMade(kit.job, kit.solutions);
  ASSERT_TRUE(loose.ok());
  EXPECT_EQ(loose->mates[0].verdict, Verdict::over);
  EXPECT_FALSE(loose->mates[0].toBeSuited);
  // Only what is followed can be chosen: no bush is planned for a hole that is well.
  const auto ways = waysOut(kit.job, kit.solutions, "Plate", "A");
  ASSERT_TRUE(ways.ok());
  ASSERT_EQ(ways->size(), 2u);
  EXPECT_EQ(ways->front().way, WayOut::shaft);
  EXPECT_EQ(ways->back().way, WayOut::leave);

  kit.job.parts[0].mended.push_back({"A", {}, WayOut::shaft, {}, "not turned yet", {}, {}});
  EXPECT_TRUE(kitOf(kit, 1).suits[0].replaces());
  EXPECT_EQ(kitOf(kit, 1).suits[0].make, tenths(2505, 2508));
  EXPECT_TRUE(kitOf(kit, 0).cameOut.at(0).chosen.has_value());
  const auto work =
      latheWorkToSuit(kit.job, kit.job.parts[1], kit.solutions[1], kit.job.parts[1].setups[0]);
  ASSERT_TRUE(work.ok());
  EXPECT_TRUE(work->rows[0].struckOut.has_value());
  EXPECT_TRUE(asMade(kit.job, kit.solutions)->mates[0].toBeSuited);
  // Once the shaft is turned and measured, it is the mate that counts again.
  kit.job.parts[1].made.push_back({});
  kit.job.parts[1].made[0].place = "D";
  kit.job.parts[1].made[0].setup = "1";
  kit.job.parts[1].made[0].size = readLength(".2507").value();
  EXPECT_EQ(asMade(kit.job, kit.solutions)->mates[0].verdict, Verdict::in);
  kit.job.parts[1].made[0].size = readLength(".2492").value();
  EXPECT_EQ(asMade(kit.job, kit.solutions)->mates[0].verdict, Verdict::over);
  EXPECT_FALSE(asMade(kit.job, kit.solutions)->mates[0].toBeSuited);
}

// The middle of .2505 to .2508 stands at the readout's step of .001 as .251; exactly .25065.
TEST(KitOfPart, TheLatheTurnsToWhatWasChosen) {
  const KitJob kit = chosen("shaft");
  const Part& arbor = kit.job.parts[1];
  const auto work = latheWorkToSuit(kit.job, arbor, kit.solutions[1], arbor.setups[0]);
  ASSERT_TRUE(work.ok());
  ASSERT_EQ(work->rows.size(), 1u);
  EXPECT_EQ(work->rows[0].dia->value, Length::ticks(25'065 * 25'400));
  ASSERT_TRUE(work->rows[0].struckOut.has_value());
  EXPECT_EQ(work->rows[0].struckOut->value, inTenThousandths(2490));
  const auto dia = [&](CutOp op) {
    std::vector<LatheFigure> all;
    for (const Cut& cut : work->cuts) {
      if (cut.op == op) all.push_back(*cut.dia);
    }
    return all;
  };
  EXPECT_EQ(dia(CutOp::finish), (std::vector<LatheFigure>{*work->rows[0].dia}));
  ASSERT_EQ(dia(CutOp::rough).size(), 1u);
  EXPECT_EQ(dia(CutOp::rough)[0].value, Length::ticks((25'065 + 2'000) * 25'400));
  EXPECT_TRUE(dia(CutOp::rough)[0].exact && work->rows[0].dia->exact);
  const KitJob plain(kOverA);
  const auto asDrawn = latheWorkToSuit(plain.job, arbor, plain.solutions[1], arbor.setups[0]);
  EXPECT_EQ(*asDrawn, *latheWork(plain.job, arbor, plain.solutions[1], arbor.setups[0]));
}

TEST(KitOfPart, WhatCannotBeTurnedIsNotTurnedToSuitEither) {
  const KitJob kit = chosen("shaft");
  const Part& arbor = kit.job.parts[1];
  inchwright::Setup milled;
  milled.name = "1";
  const auto plain = latheWork(kit.job, arbor, kit.solutions[1], milled);
  const auto suited = latheWorkToSuit(kit.job, arbor, kit.solutions[1], milled);
  ASSERT_FALSE(plain.ok());
  ASSERT_FALSE(suited.ok());
  EXPECT_EQ(suited.error().text, plain.error().text);
}

TEST(KitOfPart, NothingIsMadeToSuitASlipOfThePoint) {
  // 2.518 for .2518, and millimetres for inches.
  for (const char* size : {"2.518", ".2518 mm"}) {
    const std::string over =
        R"({"place": "A", "setup": "1", "size": ")" + std::string(size) + "\"}";
    KitJob kit(over.c_str());
    kit.job.parts[0].mended.push_back({"A", {}, WayOut::shaft, {}, "not turned yet", {}, {}});
    const Suits suits = kitOf(kit, 1).suits[0];
    EXPECT_TRUE(suits.otherUnlikely);
    EXPECT_FALSE(suits.replaces());
    EXPECT_FALSE(kitOf(kit, 0).suits[0].suited);
    EXPECT_TRUE(kitOf(kit, 0).cameOut.at(0).row.unlikely);
    const Part& arbor = kit.job.parts[1];
    const auto work = latheWorkToSuit(kit.job, arbor, kit.solutions[1], arbor.setups[0]);
    auto drawn = latheWork(kit.job, arbor, kit.solutions[1], arbor.setups[0]);
    ASSERT_EQ(drawn->rows.size(), 1u);
    EXPECT_FALSE(drawn->rows[0].unsuited);
    drawn->rows[0].unsuited = true;
    EXPECT_EQ(*work, *drawn);
  }
}

TEST(KitOfPart, ASizeIsUnlikelyOverASixteenthAndAQuarterOff) {
  const auto unlikely = [](std::int64_t found, std::int64_t nominal) {
    return isUnlikely(tenths(found, found), inTenThousandths(nominal));
  };
  EXPECT_FALSE(unlikely(3125, 2500));
  EXPECT_TRUE(unlikely(3126, 2500));
  EXPECT_FALSE(unlikely(1875, 2500));
  EXPECT_TRUE(unlikely(1874, 2500));
  EXPECT_FALSE(unlikely(12500, 10000));
  EXPECT_TRUE(unlikely(12501, 10000));
  EXPECT_FALSE(isUnlikely({}, inTenThousandths(2500)));
}

}  // namespace
}  // namespace inchwright
