#include "core/seen/lettering.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfLetters = 200;  // the sheet's inch, pixels

// A picture with these boxes inked.
Grey inked(const std::vector<Box>& boxes) {
  Grey out(600, 300);
  for (const Box& box : boxes) {
    for (int y = box.y; y < box.bottom(); ++y) std::fill_n(out.row(y) + box.x, box.w, 255);
  }
  return out;
}

std::vector<Box> blocksIn(const std::vector<Box>& boxes, const Grey& dashed = {}) {
  std::vector<Box> out;
  for (const Block& block : letteringOf(inked(boxes), kOfLetters, dashed, Stop()).blocks)
    out.push_back(block.box);
  return out;
}

// A character 12 by 25, and what else stands 10 pixels beside it: a speck of two pixels is none of
// it, nor what is larger than 80. What is 17 pixels off is by itself.
TEST(Lettering, WhatIsLetteringAndWhatIsOneBlock) {
  const Box own{100, 100, 12, 25};
  struct Case {
    Box other;
    std::vector<Box> blocks;
  };
  const Case cases[] = {
      {{122, 110, 2, 2}, {own}},
      {{122, 110, 3, 3}, {around(own, {122, 110, 3, 3})}},
      {{122, 110, 1, 3}, {own}},
      {{122, 100, 80, 4}, {around(own, {122, 100, 80, 4})}},
      {{122, 100, 81, 4}, {own}},
      {{122, 60, 4, 81}, {own}},
      {{128, 100, 12, 25}, {around(own, {128, 100, 12, 25})}},
      {{129, 100, 12, 25}, {own, {129, 100, 12, 25}}},
      {{100, 141, 12, 25}, {around(own, {100, 141, 12, 25})}},
      {{100, 142, 12, 25}, {own, {100, 142, 12, 25}}},
      {{128, 141, 12, 25}, {around(own, {128, 141, 12, 25})}},
      // No larger than ten pixels it is no character by itself.
      {{200, 100, 10, 10}, {own}},
      {{200, 100, 13, 13}, {own, {200, 100, 13, 13}}},
  };
  for (const Case& one : cases) {
    EXPECT_EQ(blocksIn({own, one.other}), one.blocks)
        << one.other.x << " " << one.other.y << " " << one.other.w << " " << one.other.h;
  }
}

// A small part on a dashed line is a dash of it; one that is as thick as a character is none.
TEST(Lettering, DashesAreLeftOut) {
  const Box own{100, 100, 12, 25};
  Grey dashed(600, 300);
  for (int y = 98; y < 128; ++y) std::fill_n(dashed.row(y), 600, 1);
  EXPECT_EQ(blocksIn({own, {122, 112, 20, 3}}), std::vector<Box>{around(own, {122, 112, 20, 3})});
  EXPECT_EQ(blocksIn({own, {122, 112, 20, 3}}, dashed), std::vector<Box>{own});
  EXPECT_EQ(blocksIn({own, {122, 112, 20, 5}}, dashed), std::vector<Box>{own});
  EXPECT_EQ(blocksIn({own, {122, 112, 20, 6}}, dashed),
            std::vector<Box>{around(own, {122, 112, 20, 6})});
  EXPECT_EQ(blocksIn({own, {122, 128, 20, 3}}, dashed),
            std::vector<Box>{around(own, {122, 128, 20, 3})});
}

// Its own ink and a pixel round it, and nothing of what else lies in the box.
TEST(Lettering, ACutHasTheInkOfItsOwnParts) {
  Grey cover = inked({{100, 100, 12, 25}, {116, 100, 12, 25}});
  cover.row(99)[105] = 40;  // too faint to be a part, but round one
  cover.row(90)[105] = 40;
  const Lettering all = letteringOf(cover, kOfLetters, {}, Stop());
  ASSERT_EQ(all.parts.list.size(), 2U);
  const Box box{100, 88, 28, 37};
  const Grey cut = inkOf(all, {0}, box);
  ASSERT_EQ(cut.width, 30);
  ASSERT_EQ(cut.height, 39);
  for (int y = 0; y < cut.height; ++y) {
    for (int x = 0; x < cut.width; ++x) {
      const bool isOwn = x >= 1 && x < 13 && y >= 13 && y < 38;
      const bool isRound = x == 6 && y == 12;
      EXPECT_EQ(cut.row(y)[x], isOwn ? 255 : isRound ? 40 : 0) << x << ", " << y;
    }
  }
  // At the picture's edge there is nothing beyond.
  Grey corner(20, 20);
  for (int y = 0; y < 10; ++y) std::fill_n(corner.row(y), 10, 255);
  const Grey first = inkOf(letteringOf(corner, 50, {}, Stop()), {0}, {0, 0, 10, 10});
  EXPECT_EQ(first.row(0)[0], 0);
  EXPECT_EQ(first.row(1)[1], 255);
  EXPECT_EQ(first.row(10)[10], 255);
  EXPECT_EQ(first.row(11)[11], 0);
}

}  // namespace
}  // namespace inchwright::seen
