// What is said beside the figures: queries, what to mind, how close to work, what the head bears.
#include "core/sheet/notes_block.h"

#include <gtest/gtest.h>

#include "core/sheet/closeness_block.h"
#include "core/sheet/head_block.h"
#include "core/sheet/places_block.h"
#include "core/sheet/zero_block.h"
#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

constexpr double kColumn = 120;

bool says(const std::string& all, const std::string& words) {
  return all.find(words) != std::string::npos;
}

std::size_t timesSaid(const std::string& all, const std::string& words) {
  std::size_t count = 0;
  for (std::size_t at = all.find(words); at != std::string::npos; at = all.find(words, at + 1)) {
    ++count;
  }
  return count;
}

std::string queriesOf(const MadeSheet& made) {
  return saidIn(queryPieces(contentOf(made), kColumn));
}

// The front plate has a misread figure and an understanding the print does not state.
TEST(NotesBlock, CountsWhatHoldsTheSheetUp) {
  MadeSheet made = frontPlate();
  EXPECT_TRUE(says(queriesOf(made), "OPEN QUERIES: 2 \u00B7 a draft until they are settled"));
  // Each accepted by its key, in the document.
  const std::vector<Doubt> doubts = made.solution.doubts;
  std::size_t open = 2;
  for (const Doubt& doubt : doubts) {
    if (!doubt.holdsUp()) continue;
    made.part.accepted.push_back({doubt.key.text()});
    made.solution = solve(made.part).value();
    made.plan();
    --open;
    const std::string said = queriesOf(made);
    EXPECT_EQ(says(said, "OPEN QUERIES: " + std::to_string(open)), open > 0) << said;
  }
  const std::string said = queriesOf(made);
  EXPECT_EQ(open, 0u);
  EXPECT_FALSE(says(said, "OPEN QUERIES")) << said;
  EXPECT_EQ(timesSaid(said, "ASSUMED AND ACCEPTED"), 1u) << said;
  EXPECT_EQ(timesSaid(said, "LOOKED AT AND LET STAND"), 1u) << said;
  EXPECT_LT(said.find("ASSUMED AND ACCEPTED"), said.find("LOOKED AT AND LET STAND"));
  EXPECT_EQ(queriesOf(settledPlate(Paper::a4)), "");
}

// Loose along X and Y: one query each, told in full under MIND and by name alone below.
TEST(NotesBlock, WhatIsLooseIsToldOnce) {
  MadeSheet made = settledPlate(Paper::a4);
  std::erase_if(made.part.readings, [](const Reading& one) {
    return one.id == "r15" || one.id == "r16" || one.id == "r17";
  });
  std::erase_if(made.part.understood, [](const Understanding& one) {
    return std::find(one.of.begin(), one.of.end(), "E") != one.of.end();
  });
  made.solution = solve(made.part).value();
  made.plan();
  const SheetContent content = contentOf(made);
  const std::string mind = saidIn(warningPieces(content, kColumn));
  const std::string queries = saidIn(queryPieces(content, kColumn));
  EXPECT_EQ(timesSaid(mind, "along the part's X"), 1u) << mind;
  EXPECT_EQ(timesSaid(mind, "along the part's Y"), 1u) << mind;
  EXPECT_EQ(timesSaid(queries, "Not placed yet, as under MIND: "), 1u) << queries;
  EXPECT_FALSE(says(queries, "nothing says")) << queries;
  const auto held = std::count_if(made.solution.doubts.begin(), made.solution.doubts.end(),
                                  [](const Doubt& one) { return one.holdsUp(); });
  EXPECT_GT(held, 2);
  EXPECT_TRUE(says(queries, "OPEN QUERIES: " + std::to_string(held) + " ")) << queries;
}

TEST(NotesBlock, LeavesOutWhatThereIsNothingOf) {
  const MadeSheet made = settledPlate(Paper::a4);
  const SheetContent content = contentOf(made);
  EXPECT_TRUE(queryPieces(content, kColumn).empty());
  EXPECT_TRUE(directCheckPieces(content, kColumn).empty());
  EXPECT_TRUE(curvePieces(content, kColumn).empty());
  EXPECT_TRUE(closenessPieces(content, kColumn).empty());
  EXPECT_TRUE(editionPieces(content, kColumn).empty());
}

// Only the head of a draft is stamped; pages behind the first have a smaller name and the same
// facts.
TEST(HeadBlock, StampsDraftsAndNumbersPages) {
  for (const bool isDraft : {true, false}) {
    MadeSheet made = solvedPlate(!isDraft);
    const SheetContent content = contentOf(made);
    const Piece first = headPiece(content, kColumn, 1, 3),
                third = headPiece(content, kColumn, 3, 3);
    const std::string one = saidIn({first}), three = saidIn({third});
    for (const std::string& all : {one, three}) {
      EXPECT_EQ(says(all, "DRAFT"), isDraft);
      for (const std::string& words :
           {std::string("Front plate"), content.number, std::string("SETUP 1"),
            std::string("2026-11-25"), std::string("make two in brass \u00B7 left hand")}) {
        EXPECT_TRUE(says(all, words)) << words << ": " << all;
      }
    }
    EXPECT_TRUE(says(one, "1 of 3"));
    EXPECT_TRUE(says(three, "3 of 3"));
    EXPECT_LT(third.height, first.height);
  }
}

// Names as long as people give them: none is cut off, and a longer one is never larger.
TEST(HeadBlock, LongNamesAreSetSmallerAndWhole) {
  double last = 99;
  MadeSheet made = settledPlate(Paper::a4);
  for (const char* name :
       {"Cock", "Front plate of the clock", "Front plate of the clock with the long pendulum",
        "Front plate of the clock with the long pendulum, second of the pair, after the change of "
        "the third wheel"}) {
    made.part.name = name;
    const SheetContent content = contentOf(made);
    const Piece head = headPiece(content, 100, 1, 1);
    const double height = textsOf(head.sketch).at(0).height;
    EXPECT_LE(height, last) << name;
    last = height;
    std::string said = saidIn({head});
    EXPECT_TRUE(says(said, std::string(name) + " ")) << said;
  }
  EXPECT_LT(last, 6);
}

// Setup zero in boxes: every axis with its steps counted from 1, presets as large as figures that
// are needed once.
TEST(ZeroBlock, NumbersTheStepsOfEveryAxis) {
  for (const double width : {95.0, 190.0}) {
    const MadeSheet made = settledPlate(Paper::a4);
    const SheetContent content = contentOf(made);
    const std::vector<TextItem> texts = textsOf(zeroPieces(content, width));
    for (std::size_t i = 0; i < made.table.touchOff.size(); ++i) {
      const std::string letter = made.table.touchOff[i].axis.letter() + std::string("0");
      EXPECT_EQ(std::count_if(texts.begin(), texts.end(),
                              [&](const TextItem& one) { return one.text == letter; }),
                1)
          << letter;
    }
    std::size_t most = 0;
    for (const auto& touch : content.words.touchOff) most = std::max(most, touch.steps.size());
    for (std::size_t step = 1; step <= most; ++step) {
      const auto wanted =
          std::count_if(content.words.touchOff.begin(), content.words.touchOff.end(),
                        [&](const SetupWords::Touch& one) { return one.steps.size() >= step; });
      EXPECT_EQ(std::count_if(texts.begin(), texts.end(),
                              [&](const TextItem& one) {
                                return one.text == std::to_string(step) &&
                                       one.face == Typeface::bold;
                              }),
                wanted)
          << step << " at " << width;
    }
    const bool presets = std::any_of(texts.begin(), texts.end(), [&](const TextItem& one) {
      return one.height == content.style.second() && one.text[0] == '-';
    });
    EXPECT_TRUE(presets);
  }
}

// Each edge once, with its letter and what is to come off; points below each other.
TEST(PlacesBlock, EdgesSayWhereTheyStandAndWhatComesOff) {
  const MadeSheet made = settledPlate(Paper::a4);
  const SheetContent content = contentOf(made);
  const Pieces pieces = edgePieces(content, kColumn);
  const std::string said = saidIn(pieces);
  EXPECT_EQ(timesSaid(said, "1/16 in to come off"), 2u) << said;
  for (const char* edge : {"L X -2.0000 left side", "R X +2.0000 right side",
                           "F Y +0.0000 front side", "K Y +2.7500 back side"}) {
    EXPECT_TRUE(says(said, edge)) << edge << ": " << said;
  }
  std::set<long> points;
  for (TextItem text : textsOf(pieces)) {
    const std::size_t point = text.text.find('.');
    if (text.height != content.style.second() || point == std::string::npos) continue;
    text.text.resize(point);
    points.insert(std::lround(boundsOf(text).right * 1000));
  }
  EXPECT_EQ(points.size(), 1u);
}

// A place to drive to and look has a box to tick and both its figures, one below the other where
// the column is narrow.
TEST(PlacesBlock, ChecksHaveABoxAndBothFigures) {
  const MadeSheet made = settledPlate(Paper::a4);
  const SheetContent content = contentOf(made);
  ASSERT_FALSE(made.table.checks.empty());
  for (const double width : {48.0, 190.0}) {
    const Pieces pieces = checkPieces(content, width);
    EXPECT_EQ(tickBoxesOf(joined(pieces).sketch).size(), made.table.checks.size());
    std::vector<TextItem> figures;
    for (const TextItem& text : textsOf(pieces)) {
      if (text.height == content.style.second()) figures.push_back(text);
    }
    ASSERT_EQ(figures.size(), 2 * made.table.checks.size());
    for (std::size_t i = 0; i < made.table.checks.size(); ++i) {
      EXPECT_EQ(figures[2 * i].text, signedText(made.table.checks[i].x));
      EXPECT_EQ(figures[2 * i + 1].text, signedText(made.table.checks[i].y));
      EXPECT_EQ(figures[2 * i].at.y < figures[2 * i + 1].at.y, width < 100);
    }
  }
}

}  // namespace
}  // namespace inchwright
