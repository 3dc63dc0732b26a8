// How close to work: each figure beside the places it is for, along the machine's own axes.
#include "core/sheet/closeness_block.h"

#include <gtest/gtest.h>

#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

/// A plate with zero at L and F, and how close its readings ask to work.
MadeSheet heldTo(const std::string& text, int turn = 0) {
  MadeSheet made;
  made.part = test::partFrom(text);
  Setup setup;
  setup.name = "1";
  setup.turn = turn;
  for (const auto& [axis, at] : {std::pair{Axis::x, "L"}, {Axis::y, "F"}}) {
    ZeroAlong zero;
    zero.axis = axis;
    zero.at = at;
    setup.zero.push_back(zero);
  }
  made.part.setups = {setup};
  made.solution = solve(made.part).value();
  made.plan();
  return made;
}

void work(MadeSheet& made, const TableOptions& with = {}) {
  made.plan(with);
  const auto at = workAt(made.job, made.part, made.solution, made.part.setups.front(), with);
  ASSERT_TRUE(at.ok());
  made.options.closeness = closenessOf(*at, made.table).value();
}

// By hand: A and B share 2 thou between them, C may be off by 20, and along Y all by 10.
constexpr const char* kShared = R"(
  edge L x left
  edge F y front
  hole A 1/4
  hole B 1/4
  hole C 1/4
  r1 x L A 1 ±.004
  r2 x A B 1 ±.002
  r3 x L C 1.500 ±.020
  r4 y F A 1/2 ±.010
  in_line y A B C
)";

/// The lines of the block, each its texts from left to right.
std::vector<std::string> linesIn(const Pieces& pieces) {
  std::vector<std::string> lines;
  double last = -1;
  for (const TextItem& text : textsOf(pieces)) {
    if (lines.empty() || std::abs(text.at.y - last) > kRounding) {
      lines.push_back(text.text);
    } else {
      lines.back() += " " + text.text;
    }
    last = text.at.y;
  }
  return lines;
}

std::vector<std::string> linesOf(const MadeSheet& made, double width = 600) {
  return linesIn(closenessPieces(contentOf(made), width));
}

TEST(ClosenessBlock, NamesEachFigureWithItsPlaces) {
  MadeSheet made = heldTo(kShared);
  work(made);
  EXPECT_EQ(linesOf(made),
            (std::vector<std::string>{
                "HOW CLOSE TO WORK, so that the print holds", "±0.0010 X: A, B",
                "±0.0100 Y: A, B, C", "±0.0200 X: C",
                "Hold A and B to ±0.0010 along X, or measure 1 ±.002 (A to B) on the part and "
                "hold all to ±0.0040.",
                "Hold A, B and C to ±0.0100 along Y, or measure 1/2 ±.010 (F to A) on the "
                "part."}));
}

// The part lies turned: what the print gives along its X is held along the machine's Y.
TEST(ClosenessBlock, GoesByTheAxesOfTheMachine) {
  MadeSheet made = heldTo(kShared, 90);
  work(made);
  const std::vector<std::string> lines = linesOf(made);
  ASSERT_GT(lines.size(), 3u);
  EXPECT_EQ(lines[1], "±0.0010 Y: A, B");
  EXPECT_EQ(lines[2], "±0.0100 X: A, B, C");
}

// In the readout's unit, never looser than the print: 0.001 in is 0.0254 mm, held to 0.025.
TEST(ClosenessBlock, IsSaidInTheUnitOfTheReadout) {
  MadeSheet made = heldTo(kShared);
  work(made, {Unit::millimetre, "0.005"});
  const std::vector<std::string> lines = linesOf(made);
  ASSERT_GT(lines.size(), 3u);
  EXPECT_EQ(lines[1], "±0.025 X: A, B");
}

// What is as close along both axes stands on one line, each axis with its letter.
TEST(ClosenessBlock, EqualFiguresShareALine) {
  MadeSheet made = heldTo(R"(
    edge L x left
    edge F y front
    hole A 1/4
    hole B 1/4
    r1 x L A 1 ±.004
    r2 x L B 2 ±.006
    r3 y F A 1 ±.004
    r4 y F B 1 ±.004
  )");
  work(made);
  const std::vector<std::string> lines = linesOf(made);
  ASSERT_GT(lines.size(), 2u);
  EXPECT_EQ(lines[1], "±0.0040 X: A · Y: A, B");
  EXPECT_EQ(lines[2], "±0.0060 X: B");
}

/// So many holes along X, of which the first few are held to 1 thou and the others to 5.
MadeSheet rowOf(int tight, int loose, const std::string& across = "") {
  std::string text = "edge L x left\nedge F y front\n";
  for (int i = 1; i <= tight + loose; ++i) {
    const std::string number = std::to_string(i);
    text += "hole H" + number + " 1/8\nr" + number + " x L H" + number + " " + number + "/2 " +
            (i <= tight ? "±.001" : "±.005") + "\n";
    text += "s" + number + " y F H" + number + " 1 " + across + "\n";
  }
  MadeSheet made = heldTo(text);
  work(made);
  return made;
}

// `all others` is said of the widest band alone, and only of more places than are read at a glance.
TEST(ClosenessBlock, OnlyManyOfTheWidestAreAllOthers) {
  EXPECT_EQ(linesOf(rowOf(2, 6)).at(2), "±0.0050 X: H3, H4, H5, H6, H7, H8");
  EXPECT_EQ(linesOf(rowOf(2, 7)).at(2), "±0.0050 X: all others");
  EXPECT_EQ(linesOf(rowOf(2, 7)).at(1), "±0.0010 X: H1, H2");
  EXPECT_EQ(linesOf(rowOf(7, 2)).at(1), "±0.0010 X: H1, H2, H3, H4, H5, H6, H7");
  EXPECT_EQ(linesOf(rowOf(0, 7)).at(1), "±0.0050 X: all");
  // What is closer along the other axis makes no others of them.
  EXPECT_EQ(linesOf(rowOf(0, 7, "±.001")).at(1), "±0.0010 Y: all");
  EXPECT_EQ(linesOf(rowOf(0, 7, "±.001")).at(2), "±0.0050 X: all");
}

// Unequal tolerances: the middle of them, with its sign and letter.
TEST(ClosenessBlock, SaysWhatToAimAt) {
  const char* unequal = R"(
    edge L x left
    edge F y front
    hole A 1/4
    r1 x L A 1.000 +.010 -.000
    r2 y F A 1.000 +.000 -.004
  )";
  MadeSheet made = heldTo(unequal);
  work(made);
  const auto aims = [&] {
    for (const std::string& line : linesOf(made)) {
      if (line.starts_with("Aim at")) return line;
    }
    return std::string();
  };
  EXPECT_EQ(aims(), "Aim at A X +1.0050 · A Y +0.9980");
  made.job.machine.xCounts = CountsX::left;
  work(made);
  EXPECT_EQ(aims(), "Aim at A X -1.0050 · A Y +0.9980");
  made = heldTo(kShared);
  work(made);
  EXPECT_EQ(aims(), "");
}

// In a narrow column places go on below each other, clear of the figure, which stands once.
TEST(ClosenessBlock, PlacesStandClearOfTheirFigure) {
  const MadeSheet made = rowOf(30, 2);
  const Pieces pieces = closenessPieces(contentOf(made), 88);
  const std::vector<TextItem> texts = textsOf(pieces);
  const auto figure = std::find_if(texts.begin(), texts.end(),
                                   [](const TextItem& text) { return text.text == "±0.0010"; });
  ASSERT_NE(figure, texts.end());
  EXPECT_EQ(figure->face, Typeface::bold);
  std::size_t named = 0;
  for (const TextItem& text : texts) {
    if (&text == &*figure || text.text.find('H') == std::string::npos ||
        text.text.starts_with("HOW")) {
      continue;
    }
    if (text.face == Typeface::bold || text.at.x == 0) continue;  // advice
    EXPECT_GT(text.at.x, boundsOf(*figure).right) << text.text;
    EXPECT_LE(boundsOf(text).right, 88 + kRounding) << text.text;
    named += static_cast<std::size_t>(std::count(text.text.begin(), text.text.end(), 'H'));
  }
  EXPECT_EQ(named, 32u);
  EXPECT_EQ(std::count_if(texts.begin(), texts.end(),
                          [](const TextItem& text) { return text.text == "±0.0010"; }),
            1);
  for (std::size_t i = 1; i + 1 < pieces.size(); ++i) {
    ASSERT_TRUE(pieces[i].heading) << i;
    EXPECT_EQ(saidIn({*pieces[i].heading}), saidIn({pieces.front()}));
  }
}

}  // namespace
}  // namespace inchwright
