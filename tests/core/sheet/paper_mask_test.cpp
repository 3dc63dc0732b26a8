#include "core/sheet/paper_mask.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <random>
#include <vector>

namespace inchwright {
namespace {

struct Disc {
  PlanePoint centre;
  double radius;

  bool meets(const PaperBox& box) const {
    const double dx = std::max({box.left - centre.x, 0.0, centre.x - box.right});
    const double dy = std::max({box.top - centre.y, 0.0, centre.y - box.bottom});
    return dx * dx + dy * dy < radius * radius;
  }
};

double drawn(std::mt19937& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random() % 100'000) / 1e5;
}

// Boxes and discs strewn over the paper and beyond its borders: the mask is never sure of what is
// not so, and is sure of most.
TEST(PaperMask, IsSureOnlyOfWhatIsSo) {
  constexpr unsigned kSeed = 20260;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  const auto within = [&](double low, double high) { return drawn(random, low, high); };
  const PaperBox paper{7.3, 11.9, 107.6, 81.2};
  int asked = 0, sure = 0, taken = 0;
  for (int round = 0; round < 60; ++round) {
    PaperMask mask(paper);
    std::vector<PaperBox> boxes;
    std::vector<Disc> discs;
    for (int i = 0; i < round; ++i) {
      const PlanePoint at{within(-10, 120), within(0, 95)};
      boxes.push_back({at.x, at.y, at.x + within(0.1, 14), at.y + within(0.1, 5)});
      mask.mark(boxes.back());
      discs.push_back({{within(-10, 120), within(0, 95)}, within(0.05, 6)});
      mask.mark(discs.back().centre, discs.back().radius);
    }
    for (int i = 0; i < 400; ++i) {
      const PlanePoint at{within(7.3, 90), within(11.9, 75)};
      const PaperBox box{at.x, at.y, at.x + within(0.2, 17), at.y + within(0.2, 6)};
      bool meets = false;
      for (const PaperBox& other : boxes) meets = meets || other.meets(box);
      for (const Disc& disc : discs) meets = meets || disc.meets(box);
      if (mask.isTaken(box)) {
        ASSERT_TRUE(meets) << box.left << ' ' << box.top;
        ++taken;
      }
      ASSERT_FALSE(mask.isEmpty(box) && meets) << box.left << ' ' << box.top;
      ASSERT_FALSE(mask.isTaken(box) && mask.isEmpty(box));
      ++asked;
      sure += mask.isTaken(box) || mask.isEmpty(box) ? 1 : 0;
    }
  }
  EXPECT_GT(sure, 0.8 * asked);
  EXPECT_GT(taken, 0.2 * asked);
}

// Of boxes at least as large as room was looked for: none that is free is said to find no room,
// and most that are surely taken are.
TEST(PaperMask, SaysThatABoxFindsNoRoomOnlyWhereItIsTaken) {
  constexpr unsigned kSeed = 20261;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  const auto within = [&](double low, double high) { return drawn(random, low, high); };
  int free = 0, taken = 0, told = 0;
  for (int round = 0; round < 60; ++round) {
    // One, two and several words of squares across.
    const double wide = std::array{30.2, 64.0, 141.0}[static_cast<std::size_t>(round % 3)];
    const PaperBox paper{7.3, 11.9, 7.3 + wide, 61.2};
    PaperMask mask(paper);
    for (int i = 0; i < 5 * round; ++i) {
      mask.mark({within(7.3, paper.right), within(11.9, 61.2)}, within(0.05, 2.5));
    }
    const double least = within(1.2, 9), low = within(1.2, 5);
    mask.findRoomFor(least + 3, low + 3);
    mask.findRoomFor(least, low + 9);
    mask.findRoomFor(least, low);
    for (int i = 0; i < 400; ++i) {
      const PlanePoint at{within(7.3, paper.right - 14), within(11.9, 52)};
      const PaperBox box{at.x, at.y, at.x + least + within(0, 5), at.y + low + within(0, 4)};
      if (mask.isTaken(box)) {
        ++taken;
        told += mask.mayHold(box) ? 0 : 1;
      } else {
        ++free;
        ASSERT_TRUE(mask.mayHold(box)) << box.left << ' ' << box.top << ' ' << least << ' ' << low;
      }
    }
  }
  EXPECT_GT(free, 1000);
  EXPECT_GT(taken, 1000);
  EXPECT_GT(2 * told, taken);

  // A box so narrow that it covers no whole square may lie in one that is marked.
  PaperMask mask({0, 0, 20, 20});
  mask.mark(PaperBox{4.6, 4.6, 4.7, 4.7});
  mask.findRoomFor(0.8, 3);
  EXPECT_TRUE(mask.mayHold({4.75, 3, 5.55, 6}));
  EXPECT_TRUE(mask.mayHold({19.7, 16, 20, 20}));
}

}  // namespace
}  // namespace inchwright
