// Where the cutter's centre goes: every run with the figures of both its ends, each under its own
// letter.
#include "core/sheet/milled_block.h"

#include <gtest/gtest.h>

#include <set>

#include "core/say/milled_words.h"
#include "tests/core/sheet/block_content.h"
#include "tests/core/sheet/milled_sheet.h"

namespace inchwright::test {
namespace {

/// Wide enough for any run in one line.
constexpr double kWide = 400;

/// Pieces with a box to tick, each as its texts one after the other: `X +1 to +2 Y +3 for what`.
std::vector<std::string> runsSaid(const Pieces& pieces) {
  std::vector<std::string> runs;
  for (const Piece& piece : pieces) {
    if (tickBoxesOf(piece.sketch).empty()) continue;
    std::string& run = runs.emplace_back();
    for (const TextItem& text : textsOf(piece.sketch)) run += (run.empty() ? "" : " ") + text.text;
  }
  return runs;
}

std::vector<std::string> runsSaid(const MilledPlate& plate, double width = kWide) {
  const MadeSheet made = sheetOf(plate);
  return runsSaid(milledPieces(contentOf(made), width));
}

/// A slot of 1/4 by 1 with its middle at 1 1/4, 1 1/2, cut with its own width.
MilledPlate slotted(Axis axis) {
  MilledPlate plate;
  plate.slot("S", axis, "1/4", "1", "1 1/4", "1 1/2", "1/8");
  plate.job.shop.cutters = {MilledPlate::cutter("1/4")};
  return plate;
}

// By hand: the centre stops half the width from either end, 3/8 from the middle.
TEST(MilledBlock, ARunSaysWhereItBeginsAndEnds) {
  std::vector<std::string> said = runsSaid(slotted(Axis::x));
  ASSERT_FALSE(said.empty());
  EXPECT_EQ(said.back(), "X +0.8750 to +1.6250 Y +1.5000 down the middle");
  said = runsSaid(slotted(Axis::y));
  ASSERT_FALSE(said.empty());
  EXPECT_EQ(said.back(), "X +1.2500 Y +1.1250 to +1.8750 down the middle");
}

TEST(MilledBlock, CountsAsTheReadoutDoes) {
  MilledPlate plate = slotted(Axis::x);
  plate.job.machine.xCounts = CountsX::left;
  EXPECT_EQ(runsSaid(plate).back(), "X -0.8750 to -1.6250 Y +1.5000 down the middle");
  plate.job.machine.yCounts = CountsY::towards;
  EXPECT_EQ(runsSaid(plate).back(), "X -0.8750 to -1.6250 Y -1.5000 down the middle");
  MadeSheet made = inMillimetres(sheetOf(slotted(Axis::x)));
  EXPECT_EQ(runsSaid(milledPieces(contentOf(made), kWide)).back(),
            "X +22.225 to +41.275 Y +38.100 down the middle");
}

// Along neither axis: both figures of both ends, the beginning first.
TEST(MilledBlock, ASlantedRunHasFourFigures) {
  MilledPlate plate;
  plate.point("E1", "1", "1");
  plate.point("E2", "2", "1 3/4");
  kind::Slot shape;
  shape.width = lettered("1/4");
  shape.ends = {"E1", "E2"};
  shape.depth = MilledPlate::deep("1/8");
  Feature slot;
  slot.id = "V";
  slot.shape = shape;
  plate.part.features.push_back(slot);
  plate.job.shop.cutters = {MilledPlate::cutter("1/4")};
  const std::vector<std::string> said = runsSaid(plate);
  ASSERT_FALSE(said.empty());
  EXPECT_EQ(said.back(), "X +1.0000 Y +1.0000 X +2.0000 Y +1.7500 down the middle");
}

// The drill that lets the cutter in goes where the first run begins, in a row of its own.
TEST(MilledBlock, TheDrillComesBeforeTheRuns) {
  const MadeSheet made = sheetOf(slotted(Axis::x));
  const MilledCut& cut = made.table.milled.at(0);
  ASSERT_TRUE(cut.drillFirst);
  const std::vector<std::string> said = runsSaid(milledPieces(contentOf(made), kWide));
  ASSERT_EQ(said.size(), cut.runs.size() + 1);
  EXPECT_EQ(said[0], "X " + signedText(cut.drillFirst->x) + " Y " + signedText(cut.drillFirst->y) +
                         " drill " + cut.drill + " here first");
}

MilledPlate slotAndPocket() {
  MilledPlate plate;
  plate.pocket("1", "1 1/2", "1", "1", "1/4", "1/4");
  plate.slot("S", Axis::x, "1/4", "1", "1 1/4", "2 1/2", "3/16");
  plate.job.shop.cutters = {MilledPlate::cutter("1/4"), MilledPlate::cutter("1/2")};
  return plate;
}

// The words of each cut stand with its own runs: how it begins before them, what to mind behind.
TEST(MilledBlock, WordsStandWithTheRunsOfTheirCut) {
  const MadeSheet made = sheetOf(slotAndPocket());
  ASSERT_EQ(made.table.milled.size(), 2u);
  const SheetContent content = contentOf(made);
  const std::string said = saidIn(milledPieces(content, 2000));
  std::size_t from = 0;
  const auto expectNext = [&](const std::string& words) {
    const std::size_t at = said.find(words, from);
    ASSERT_NE(at, std::string::npos) << words << "\nbehind " << said.substr(0, from);
    from = at + words.size();
  };
  std::size_t notesBehind = 0;
  for (const MilledCut& cut : made.table.milled) {
    const std::vector<std::string> notes = milledNotes(cut, made.table.step);
    ASSERT_FALSE(notes.empty());
    expectNext(notes.front());
    for (const CutterRun& run : cut.runs) expectNext(purposeOf(cut, run));
    for (std::size_t i = 1; i < notes.size(); ++i) expectNext(notes[i]);
    notesBehind += notes.size() - 1;
  }
  EXPECT_GT(notesBehind, 0u);
  EXPECT_EQ(runsSaid(milledPieces(content, kWide)).size(),
            made.table.milled[0].runs.size() + made.table.milled[1].runs.size() +
                (made.table.milled[0].drillFirst ? 1 : 0) +
                (made.table.milled[1].drillFirst ? 1 : 0));
}

/// Of a run's texts: each letter has its figure behind it, on its own line.
void expectLettersBesideFigures(const Piece& piece, double second, double width) {
  const std::vector<TextItem> texts = textsOf(piece.sketch);
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const PaperBox box = boundsOf(texts[i]);
    EXPECT_LE(box.right, width + inchwright::kRounding) << texts[i].text;
    EXPECT_LE(box.bottom, piece.height + 0.3) << texts[i].text;
    for (const PaperBox& tick : tickBoxesOf(piece.sketch)) {
      EXPECT_FALSE(tick.meets(box)) << texts[i].text;
    }
    if (texts[i].height != second) continue;
    ASSERT_GT(i, 0u);
    const TextItem& before = texts[i - 1];
    EXPECT_TRUE(before.text == "X" || before.text == "Y" || before.text == "to") << before.text;
    EXPECT_EQ(before.at.y, texts[i].at.y) << "torn from " << before.text;
    EXPECT_GT(box.left, boundsOf(before).right);
    EXPECT_LT(box.left, boundsOf(before).right + second) << "far from " << before.text;
  }
  for (std::size_t i = 0; i < texts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      EXPECT_FALSE(boundsOf(texts[i]).grownBy(-inchwright::kRounding).meets(boundsOf(texts[j])))
          << texts[i].text << " over " << texts[j].text;
    }
  }
}

TEST(MilledBlock, NoFigureIsTornFromItsLetterOrRunsOut) {
  bool inOneLine = false, inSeveral = false;
  for (const double distance : {600.0, 1000.0, 2000.0}) {
    const MadeSheet made = sheetOf(slotAndPocket(), distance);
    const SheetContent content = contentOf(made);
    for (const double width : {88.0, 122.0, 191.0}) {
      SCOPED_TRACE(std::to_string(distance) + " in " + std::to_string(width));
      for (const Piece& piece : milledPieces(content, width)) {
        if (tickBoxesOf(piece.sketch).empty()) continue;
        expectLettersBesideFigures(piece, content.style.second(), width);
        std::set<double> lines;
        for (const TextItem& text : textsOf(piece.sketch)) lines.insert(text.at.y);
        (lines.size() == 1 ? inOneLine : inSeveral) = true;
      }
    }
  }
  EXPECT_TRUE(inOneLine && inSeveral);
}

// Wherever a page begins, it says again what these figures are.
TEST(MilledBlock, EveryPieceHasTheTitleAboveIt) {
  const MadeSheet made = sheetOf(slotAndPocket());
  const Pieces pieces = milledPieces(contentOf(made), 191);
  ASSERT_GT(pieces.size(), 3u);
  EXPECT_TRUE(pieces.front().keepWithNext);
  EXPECT_EQ(saidIn({pieces.front()}), "SLOTS AND POCKETS: WHERE THE CUTTER'S CENTRE GOES ");
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    if (pieces[i].sketch.empty()) continue;
    ASSERT_TRUE(pieces[i].heading) << i;
    EXPECT_EQ(saidIn({*pieces[i].heading}), saidIn({pieces.front()}));
  }
}

TEST(MilledBlock, SaysNothingWhereNothingIsMilled) {
  const MadeSheet made = sheetOf(MilledPlate());
  EXPECT_TRUE(milledPieces(contentOf(made), 191).empty());
}

// A figure in dispute is named so at each run that rests on it.
TEST(MilledBlock, RunsInDisputeSaySo) {
  MilledPlate plate = slotted(Axis::x);
  for (const std::string& said : runsSaid(plate)) {
    EXPECT_EQ(said.find("DISPUTE"), std::string::npos) << said;
  }
  plate.read(Axis::x, "L", "S", "1 3/8");
  const MadeSheet made = sheetOf(plate);
  ASSERT_TRUE(made.solution.isDraft());
  std::size_t runs = 0;
  for (const std::string& said : runsSaid(milledPieces(contentOf(made), kWide))) {
    if (said.find("here first") != std::string::npos) continue;
    EXPECT_NE(said.find("IN DISPUTE"), std::string::npos) << said;
    ++runs;
  }
  EXPECT_EQ(runs, made.table.milled.at(0).runs.size());
}

}  // namespace
}  // namespace inchwright::test
