#include "core/seen/lettered_size.h"

#include <gtest/gtest.h>

#include "tests/core/seen/letterer.h"

namespace inchwright::seen {
namespace {

/// Rows of the letterer's capitals, 24 pixels high with their strokes of 3 about them, or shrunk.
Grey lettered(int rows, int shrunkRows) {
  const auto drawn = [](int count) {
    Letterer page(700, 40 + 60 * std::max(1, count));
    for (int i = 0; i < count; ++i) page.text("DRILL HOLE REAM MELT", 20, 20 + 60 * i);
    return page.cover;
  };
  const Grey large = drawn(rows), small = shrunk(drawn(shrunkRows), 2);
  Grey all(700, large.height + small.height);
  for (int y = 0; y < large.height; ++y) std::copy_n(large.row(y), 700, all.row(y));
  for (int y = 0; y < small.height; ++y)
    std::copy_n(small.row(y), small.width, all.row(large.height + y));
  return all;
}

double capitals(const Grey& cover) {
  return heightOfCapitals(cover, builtInNets().glyphs, Stop());
}

// Half as many as those of the smaller, in its title, still are the drawing's own.
TEST(LetteredSize, IsTheGreatestThatManyCapitalsHave) {
  EXPECT_NEAR(capitals(lettered(2, 0)), 27, 1);
  EXPECT_NEAR(capitals(shrunk(lettered(2, 0), 2)), 13.5, 1);
  EXPECT_NEAR(capitals(lettered(2, 3)), 27, 1);
  EXPECT_NEAR(capitals(lettered(1, 6)), 13.5, 1);
  EXPECT_EQ(capitals(lettered(0, 0)), 0);
  EXPECT_EQ(capitals(Grey()), 0);
}

}  // namespace
}  // namespace inchwright::seen
