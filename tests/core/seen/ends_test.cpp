#include "core/seen/ends.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/seen/looked_at.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfEnds = 200;  // the sheet's inch, pixels

View viewOfPen(const Grey& cover) {
  View level = viewOf(cover, kOfEnds);
  level.plumbs =
      chained(viewOf(transposed(cover), kOfEnds).strokes, 0.2 * kOfEnds, 0.02 * kOfEnds + 1);
  return level;
}

// The one place within two pixels.
const End* at(const std::vector<End>& ends, double x, double y) {
  const auto found = std::find_if(ends.begin(), ends.end(), [&](const End& one) {
    return std::abs(one.x - x) < 2 && std::abs(one.y - y) < 2;
  });
  return found == ends.end() ? nullptr : &*found;
}

// A level line at 150 from 120 to 300, and a plumb one at 310 from 60 to 240: where they cross, or
// would if the one were a tenth of an inch longer, or the other three, a dimension may end.
TEST(Ends, AreLookedForWhereALineCrossesAPlumbOneOrNearlyDoes) {
  struct Row {
    double past;         ///< where the level line ends
    double top, bottom;  ///< of the plumb one
    double thick;        ///< of the level one
    bool isOne, isCarried;
  };
  const Row rows[] = {
      {310, 60, 240, 2, true, true},   {293, 60, 240, 2, true, true},
      {286, 60, 240, 2, false, false}, {327, 60, 240, 2, true, true},
      {300, 205, 275, 2, true, true},  {300, 215, 285, 2, false, false},
      {300, 25, 95, 2, true, true},    {300, 15, 85, 2, false, false},
      {310, 125, 170, 2, true, false}, {310, 128, 172, 2, true, false},
      {293, 60, 240, 6, false, false},
  };
  for (const Row& row : rows) {
    for (const bool isMirrored : {false, true}) {
      Pen pen(420, 300);
      const auto x = [&](double one) { return isMirrored ? 419 - one : one; };
      pen.line(x(120), 150, x(row.past), 150, row.thick);
      pen.line(x(310), row.top, x(310), row.bottom, 2);
      const auto ends = placesOfEnds(viewOfPen(pen.cover));
      const End* end = at(ends, x(310), 150);
      ASSERT_EQ(end != nullptr, row.isOne) << row.past << " " << row.top << " " << isMirrored;
      if (end != nullptr) {
        EXPECT_EQ(end->crossed, row.isCarried) << row.past << " " << row.top;
      }
      // Its free end is one as well, where it is no outline.
      EXPECT_EQ(at(ends, x(120), 150) != nullptr, row.thick < 4) << row.thick;
    }
  }
}

// A head beside a plumb line whose own line is too short to be seen: ink on one side a head's
// length out, or on both sides a dot's.
TEST(Ends, AreLookedForWhereInkStandsBesideAPlumbLine) {
  struct Row {
    double near, far;  ///< of the ink, to the left of the line
    bool isBoth, isOne;
  };
  for (const Row& row : {Row{3, 17, false, true}, Row{2, 11, false, true}, Row{2, 5, true, true},
                         Row{2, 5, false, false}, Row{12, 26, false, false}}) {
    for (const int side : {-1, 1}) {
      Pen pen(300, 300);
      pen.line(150, 60, 150, 240, 2);
      pen.line(150 + side * row.near, 140, 150 + side * row.far, 140, 5);
      if (row.isBoth) pen.line(150 - side * row.near, 140, 150 - side * row.far, 140, 5);
      const auto ends = placesOfEnds(viewOfPen(pen.cover));
      const End* end = at(ends, 150, 140);
      ASSERT_EQ(end != nullptr, row.isOne) << row.near << " " << row.far << " " << side;
      if (end != nullptr) {
        EXPECT_TRUE(end->crossed);
      }
      EXPECT_EQ(ends.size(), row.isOne ? 1U : 0U);
    }
  }
}

// 100 pixels to the sheet's inch, whatever the raster has.
TEST(Ends, WhatLiesRoundThemIsTakenAtOneScale) {
  for (const int scale : {1, 2, 3}) {
    Pen pen(100 * scale, 60 * scale);
    pen.line(0, 30 * scale, 100 * scale, 30 * scale, 4 * scale);
    pen.line(50 * scale, 0, 50 * scale, 30 * scale, 4 * scale);
    const View view = viewOf(pen.cover, 100 * scale);
    const Patch patch = patchAt(view, 50 * scale - 0.5, 30 * scale - 0.5);
    const auto ink = [&](int right, int down) {
      return patch[static_cast<std::size_t>((kPatchHigh / 2 + down) * kPatchWide + kPatchWide / 2 +
                                            right)];
    };
    for (const int right : {-17, -9, 0, 9, 17}) EXPECT_GT(ink(right, 0), 200) << scale << right;
    EXPECT_GT(ink(0, -8), 200) << scale;
    EXPECT_LT(ink(0, 8), 60) << scale;
    for (const int right : {-9, 9}) {
      EXPECT_LT(ink(right, -8), 60) << scale;
      EXPECT_LT(ink(right, 8), 60) << scale;
    }
  }
}

// A print with more lines than any has is not looked at.
TEST(Ends, OfWhatIsNoPrintThereAreNone) {
  View view;
  view.inch = kOfEnds;
  view.cover = Grey(400, 300);
  view.lines = {{{100, 200, 150, 150, 2}}};
  view.plumbs = {{{100, 200, 150, 150, 2}}};
  EXPECT_EQ(placesOfEnds(view).size(), 3U) << "the crossing and both free ends";
  view.plumbs.resize(4000, view.plumbs[0]);
  EXPECT_FALSE(placesOfEnds(view).empty());
  view.plumbs.push_back(view.plumbs[0]);
  EXPECT_TRUE(placesOfEnds(view).empty());
}

}  // namespace
}  // namespace inchwright::seen
