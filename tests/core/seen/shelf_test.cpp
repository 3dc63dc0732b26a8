// Which lettering stands where the figure of a line should be.
#include <gtest/gtest.h>

#include "core/seen/figures_of_spans.h"

namespace inchwright::seen {
namespace {

constexpr double kShelfInch = 100;

/// Blots in place of figures, each a block of its own.
Lettering letteringOf(const std::vector<Box>& blots) {
  Lettering out;
  out.cover = Grey(300, 300);
  for (const Box& box : blots) {
    for (int y = box.y; y < box.bottom(); ++y) {
      for (int x = box.x; x < box.right(); ++x) out.cover.row(y)[x] = 255;
    }
  }
  out.parts = partsOf(out.cover, 76);
  for (std::size_t i = 0; i < out.parts.list.size(); ++i) {
    out.blocks.push_back({out.parts.list[i].box, {static_cast<int>(i)}});
  }
  return out;
}

/// Where a plumb line was taken out.
Lettering withoutLineAt(int x) {
  Lettering out;
  out.ruled = Grey(300, 300);
  for (int y = 0; y < 300; ++y) out.ruled.row(y)[x] = 2;
  return out;
}

struct Shelf {
  Lettering whole, bare;
  FigureShelf figures{whole, bare, kShelfInch, Unit::inch, builtInNets().glyphs};

  std::vector<NearFigure> near(bool plumb, double from, double to, double across) {
    return figures.near(plumb, from, to, across, false);
  }
};

Shelf shelfOf(const std::vector<Box>& blots) {
  return {letteringOf(blots), {}};
}

// A's middle lies 14.5 pixels from the line's and B's 1.5, both half a pixel off its row: a pixel
// along counts 0.15, one across 0.4.
TEST(FigureShelf, NearestFirstAndNeighboursTogetherOnce) {
  const Box a{30, 15, 12, 10}, b{46, 15, 12, 10};
  Shelf shelf = shelfOf({a, b});
  const auto near = shelf.near(false, 0, 100, 20);
  ASSERT_EQ(near.size(), 3U);
  EXPECT_EQ(near[0].reads->box, b);
  EXPECT_NEAR(near[0].far, (0.4 * 0.5 + 0.15 * 1.5) / kShelfInch, 1e-9);
  EXPECT_EQ(near[1].reads->box, a);
  EXPECT_NEAR(near[1].far, (0.4 * 0.5 + 0.15 * 14.5) / kShelfInch, 1e-9);
  EXPECT_EQ(near[2].reads->box, around(a, b));
  EXPECT_NEAR(near[2].far, near[0].far + 0.02, 1e-9);
  for (const NearFigure& one : near) EXPECT_FALSE(one.beside);
  // Each alone has the other beside it, which may be a part of it.
  EXPECT_TRUE(near[0].reads->crowded && near[1].reads->crowded);
  EXPECT_FALSE(near[2].reads->crowded);
}

TEST(FigureShelf, TogetherIsWhatIsLessThanAWordApart) {
  const auto count = [](int x, int y) {
    return shelfOf({{30, 15, 12, 10}, {x, y, 12, 10}}).near(false, 0, 140, 20).size();
  };
  EXPECT_EQ(count(30 + 12 + 16, 15), 3U);
  EXPECT_EQ(count(30 + 12 + 17, 15), 2U);
  // Below it, off the row itself.
  EXPECT_EQ(count(30, 15 + 10 + 16), 2U);
  EXPECT_EQ(count(30, 15 + 10 + 17), 1U);
}

TEST(FigureShelf, OffTheRowAndBeyondTheEndsIsNone) {
  const auto near = [](int x, int y, double to) {
    return shelfOf({{x, y, 11, 11}}).near(false, 20, to, 100);
  };
  // Its middle lies on the row at 95; half of it and 13 pixels away is the furthest.
  EXPECT_EQ(near(60, 95 - 18, 120).size(), 1U);
  EXPECT_EQ(near(60, 95 - 19, 120).size(), 0U);
  EXPECT_EQ(near(60, 95 + 19, 120).size(), 0U);
  // A long line has its figure between its ends, a short one may have it beside it.
  EXPECT_EQ(near(116, 95, 120).size(), 0U);
  EXPECT_FALSE(near(114, 95, 120).at(0).beside);
  const auto beside = near(140, 95, 100);
  ASSERT_EQ(beside.size(), 1U);
  EXPECT_TRUE(beside[0].beside);
  EXPECT_NEAR(beside[0].far, (145 + 5.5 - 100 + 0.15 * (145 - 60)) / kShelfInch, 1e-9);
  EXPECT_EQ(near(160, 95, 100).size(), 0U);
}

TEST(FigureShelf, AlongAPlumbLineBothWaysUp) {
  Shelf shelf = shelfOf({{15, 46, 10, 12}});
  const auto near = shelf.near(true, 0, 100, 20);
  ASSERT_EQ(near.size(), 2U);
  EXPECT_FALSE(near[0].reads->turned);
  EXPECT_TRUE(near[1].reads->turned);
  for (const NearFigure& one : near) {
    EXPECT_NEAR(one.far, (0.4 * 0.5 + 0.15 * 1.5) / kShelfInch, 1e-9);
  }
}

// A line up to 12 pixels behind it may have taken a last digit with it, drawn a pixel to either
// side.
TEST(FigureShelf, ALineCloseBehindIsToldOf) {
  for (const auto& [line, crowded] : {std::pair(50 + 13, true), std::pair(50 + 14, false)}) {
    Shelf shelf{letteringOf({{40, 15, 10, 10}}), withoutLineAt(line)};
    EXPECT_EQ(shelf.near(false, 0, 100, 20).at(0).reads->crowded, crowded) << line;
  }
}

TEST(FigureShelf, RoundAPlaceByTheNearestEdge) {
  Shelf shelf = shelfOf({{60, 15, 12, 10}, {30, 15, 12, 10}});
  const auto near = shelf.figures.round(49, 19.5, 11);
  ASSERT_EQ(near.size(), 2U);
  EXPECT_EQ(near[0].reads->box.x, 30);
  EXPECT_NEAR(near[0].far, (49 - 35.5 - 6) / kShelfInch, 1e-9);
  EXPECT_NEAR(near[1].far, (65.5 - 49 - 6) / kShelfInch, 1e-9);
  EXPECT_EQ(shelf.figures.round(49, 19.5, 10).size(), 1U);
  EXPECT_EQ(shelf.figures.round(35.5, 40, 16).size(), 1U) << "15.5 below its edge";
  EXPECT_EQ(shelf.figures.round(35.5, 40, 15).size(), 0U);
}

}  // namespace
}  // namespace inchwright::seen
