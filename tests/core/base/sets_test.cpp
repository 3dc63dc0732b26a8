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

}  // namespace
}  // namespace inchwright
