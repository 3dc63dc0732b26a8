#include "core/base/sets.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

TEST(Sets, TheLowestStandsForAll) {
  Sets sets(5);
  EXPECT_EQ(sets.unite(4, 2), 2u);
  EXPECT_EQ(sets.unite(3, 4), 2u);
  EXPECT_EQ(sets.find(3), 2u);
  EXPECT_EQ(sets.find(1), 1u);
  EXPECT_EQ(sets.unite(1, 3), 1u);
  EXPECT_EQ(sets.find(4), 1u);
  EXPECT_EQ(sets.find(0), 0u);
}

TEST(Sets, JoiningSaysWhetherTheyWereApart) {
  Sets sets(6);
  EXPECT_TRUE(sets.join(5, 3));
  EXPECT_TRUE(sets.join(1, 2));
  EXPECT_TRUE(sets.join(2, 5));
  EXPECT_FALSE(sets.join(3, 1));
  EXPECT_FALSE(sets.join(4, 4));
  for (const std::uint32_t one : {1u, 2u, 3u, 5u}) EXPECT_EQ(sets.find(one), 1u);
  for (std::uint32_t one = 0; one < 6; ++one) {
    EXPECT_EQ(sets.isLowest(one), one == 0 || one == 1 || one == 4) << one;
  }
}

}  // namespace
}  // namespace inchwright
