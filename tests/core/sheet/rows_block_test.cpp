// The rows of coordinates: columns that line up, in the widest shape that there is room for, at
// full height as long as any shape has room.
#include "core/sheet/rows_block.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/sheet/row_plan.h"
#include "core/sheet/text_measure.h"
#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

constexpr RowShape kShapes[] = {RowShape::fractionsBeside, RowShape::fractionsBelow,
                                RowShape::stacked, RowShape::stackedBare};

bool isFigure(const TextItem& text) {
  return text.text.size() > 3 && (text.text[0] == '+' || text.text[0] == '-');
}

std::vector<TextItem> figuresOf(const std::vector<TextItem>& texts) {
  std::vector<TextItem> figures;
  std::copy_if(texts.begin(), texts.end(), std::back_inserter(figures), isFigure);
  return figures;
}

bool saysSmallerFigures(const Pieces& pieces) {
  return saidIn(pieces).find("Figures smaller than the reading distance asks for") !=
         std::string::npos;
}

/// The shape as an eye tells it.
RowShape shapeOf(const Pieces& pieces) {
  const std::vector<TextItem> texts = textsOf(pieces);
  const std::vector<TextItem> figures = figuresOf(texts);
  const bool stacked = figures.at(0).at.y != figures.at(1).at.y;
  // A is 1 5/16 left of the middle and 3/4 from the front edge.
  const bool beside = std::any_of(texts.begin(), texts.end(),
                                  [](const TextItem& one) { return one.text == "Y 3/4"; });
  if (stacked) return beside ? RowShape::stacked : RowShape::stackedBare;
  return beside ? RowShape::fractionsBeside : RowShape::fractionsBelow;
}

TEST(RowsBlock, FallsToNarrowerShapesBeforeItsFiguresShrink) {
  for (const double distance : {700.0, 1000.0, 1600.0}) {
    MadeSheet made = settledPlate(Paper::a4);
    made.options.readingDistance = distance;
    const SheetContent content = contentOf(made);
    for (std::size_t i = 0; i < std::size(kShapes); ++i) {
      SCOPED_TRACE(std::to_string(i) + " at " + std::to_string(distance));
      const double width = rowsWidth(content, kShapes[i]);
      EXPECT_TRUE(i == 0 || width < rowsWidth(content, kShapes[i - 1]));
      const Pieces fitting = rowsPieces(content, width), tight = rowsPieces(content, width - 0.01);
      EXPECT_EQ(shapeOf(fitting), kShapes[i]);
      EXPECT_EQ(shapeOf(tight), kShapes[std::min<std::size_t>(i + 1, 3)]);
      for (const TextItem& figure : figuresOf(textsOf(fitting))) {
        EXPECT_EQ(figure.height, content.style.figure());
      }
      EXPECT_FALSE(saysSmallerFigures(fitting));
      EXPECT_EQ(saysSmallerFigures(tight), i == 3);
    }
  }
}

// As much smaller as they must be and no more: by tenths, until they are on the paper.
TEST(RowsBlock, FiguresShrinkOnlyAsFarAsTheyMust) {
  const MadeSheet made = settledPlate(Paper::a4);
  const SheetContent content = contentOf(made);
  const double least = rowsWidth(content, RowShape::stackedBare);
  for (const double less : {1.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0}) {
    const double width = least - less;
    const Pieces pieces = rowsPieces(content, width);
    EXPECT_TRUE(saysSmallerFigures(pieces));
    const double height = figuresOf(textsOf(pieces)).at(0).height;
    EXPECT_LT(height, content.style.figure());
    EXPECT_LE(planRows(content, RowShape::stackedBare, height).width, width);
    EXPECT_GT(planRows(content, RowShape::stackedBare, height / 0.9).width, width);
    for (const TextItem& text : textsOf(pieces)) EXPECT_LE(boundsOf(text).right, width + kRounding);
  }
}

/// Where the point of a figure stands: the digits before it are what moves it.
double pointOf(const TextItem& figure) {
  TextItem whole = figure;
  whole.text = figure.text.substr(0, figure.text.find('.'));
  return boundsOf(whole).right;
}

std::size_t distinct(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const auto last = std::unique(values.begin(), values.end(),
                                [](double a, double b) { return std::abs(a - b) < kRounding; });
  return static_cast<std::size_t>(last - values.begin());
}

// From group to group too: one plan holds for all of them.
TEST(RowsBlock, PointsAndTicksLineUpDownTheWholeSheet) {
  const MadeSheet made = settledPlate(Paper::a4);
  const SheetContent content = contentOf(made);
  for (const RowShape shape : kShapes) {
    SCOPED_TRACE(static_cast<int>(shape));
    const Pieces pieces = rowsPieces(content, rowsWidth(content, shape));
    const std::vector<TextItem> texts = textsOf(pieces);
    std::vector<double> points, middles;
    for (const TextItem& figure : figuresOf(texts)) points.push_back(pointOf(figure));
    EXPECT_EQ(points.size(), 2 * made.table.rows.size());
    EXPECT_EQ(distinct(points), isStacked(shape) ? 1u : 2u);
    for (const PaperBox& box : tickBoxesOf(joined(pieces).sketch)) {
      if (box.left > 10) middles.push_back((box.left + box.right) / 2);
    }
    EXPECT_EQ(distinct(middles), extentsOf(made.table, English::uk).steps);
    for (const TextItem& text : texts) {
      const bool isLabel =
          text.text == "SPOT" || text.text == "DRILL" || text.text == "REAM" || text.text == "TAP";
      if (!isLabel) continue;
      EXPECT_EQ(text.align, TextAlign::centre);
      EXPECT_TRUE(std::any_of(middles.begin(), middles.end(), [&](double middle) {
        return std::abs(middle - text.at.x) < kRounding;
      })) << text.text;
    }
  }
}

/// A plate with so many alike holes, each 1/4 from the next.
MadeSheet rowOfHoles(int count, const std::string& note = "") {
  MadeSheet made;
  std::string text = "edge L x left\nedge F y front\n";
  for (int i = 0; i < count; ++i) text += "hole A" + std::to_string(i) + " 1/4\n";
  for (int i = 0; i < count; ++i) {
    const std::string id = "A" + std::to_string(i), n = std::to_string(i);
    text += "x" + n + " x L " + id + " " + std::to_string(i + 1) + "/4\n";
    text += "y" + n + " y F " + id + " 1/2\n";
  }
  made.part = test::partFrom(text);
  for (Feature& feature : made.part.features) {
    if (feature.drilled()) feature.note = note;
  }
  made.solution = solve(made.part).value();
  made.part.setups = {defaultSetup(made.part, made.solution)};
  made.plan();
  return made;
}

// Three to five rows, then a gap, so that the eye keeps its place; none left over alone.
TEST(RowsBlock, RowsStandInBlocksOfThreeToFive) {
  for (int count = 1; count <= 40; ++count) {
    const MadeSheet made = rowOfHoles(count);
    const SheetContent content = contentOf(made);
    std::vector<int> blocks{0};
    for (const Piece& piece : rowsPieces(content, 200)) {
      if (piece.spaceOnly) {
        blocks.push_back(0);
      } else if (piece.heading) {
        ++blocks.back();
      }
    }
    std::erase(blocks, 0);
    int all = 0;
    for (const int block : blocks) {
      EXPECT_GE(block, std::min(count, 3)) << count;
      EXPECT_LE(block, 5) << count;
      all += block;
    }
    EXPECT_EQ(all, count);
  }
}

// Whatever page a row begins, its columns and its tools are named above it.
TEST(RowsBlock, EveryRowKnowsTheHeadingOfItsGroup) {
  const MadeSheet made = settledPlate(Paper::a4);
  const SheetContent content = contentOf(made);
  std::string heading;
  std::size_t headings = 0, rows = 0;
  for (const Piece& piece : rowsPieces(content, 200)) {
    if (piece.keepWithNext) {
      heading = saidIn({piece});
      ++headings;
      continue;
    }
    if (!piece.heading) continue;
    ++rows;
    std::string again = saidIn({*piece.heading});
    const std::size_t at = again.find("(continued) ");
    ASSERT_NE(at, std::string::npos) << again;
    again.erase(at, 12);
    EXPECT_EQ(again, heading);
  }
  std::set<int> groups;
  for (const TableRow& row : made.table.rows) groups.insert(row.group);
  EXPECT_EQ(headings, groups.size());
  EXPECT_EQ(rows, made.table.rows.size());
}

// More than five lines of note go on in pieces of their own: a page can end between them, and
// nothing is lost.
TEST(RowsBlock, LongNotesAreToldToTheEnd) {
  std::string note;
  for (int i = 1; i <= 120; ++i) note += "word" + std::to_string(i) + " ";
  const MadeSheet made = rowOfHoles(2, note);
  const SheetContent content = contentOf(made);
  const Pieces pieces = rowsPieces(content, 140);
  const std::string said = saidIn(pieces);
  std::size_t at = 0;
  for (int i = 1; i <= 120; ++i) {
    at = said.find("word" + std::to_string(i) + " ", at);
    ASSERT_NE(at, std::string::npos) << i;
  }
  for (const Piece& piece : pieces) EXPECT_LT(piece.height, 60);
}

// Large figures are for driving to; what is located otherwise has only small ones, in brackets.
TEST(RowsBlock, WhatIsNotLocatedByCoordinatesHasNoLargeFigures) {
  for (const Locate locate : {Locate::mate, Locate::pair, Locate::assembly, Locate::suit}) {
    MadeSheet made = rowOfHoles(3);
    for (Feature& feature : made.part.features) {
      if (feature.id == "A1") feature.drilled()->locate = locate;
    }
    made.plan();
    const SheetContent content = contentOf(made);
    const auto row = std::find_if(made.table.rows.begin(), made.table.rows.end(),
                                  [](const TableRow& one) { return one.id == "A1"; });
    const bool drivenTo = goesByCoordinates(*row->plan);
    for (const RowShape shape : kShapes) {
      const Pieces pieces = rowsPieces(content, rowsWidth(content, shape));
      const std::string said = saidIn(pieces);
      EXPECT_EQ(figuresOf(textsOf(pieces)).size(), drivenTo ? 6u : 4u);
      EXPECT_EQ(said.find("NOT BY COORDINATES") == std::string::npos, drivenTo);
      EXPECT_EQ(said.find("(about X +0.5000  Y +0.5000)") == std::string::npos, drivenTo) << said;
    }
  }
}

}  // namespace
}  // namespace inchwright
