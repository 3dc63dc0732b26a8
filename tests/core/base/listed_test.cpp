#include "core/base/listed.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

TEST(Listed, AsASentenceHasThem) {
  EXPECT_EQ(listed({}), "");
  EXPECT_EQ(listed({"A"}), "A");
  EXPECT_EQ(listed({"A", "B"}), "A and B");
  EXPECT_EQ(listed({"A", "B", "C"}), "A, B and C");
}

TEST(Listed, JoinedByWhatIsAskedFor) {
  EXPECT_EQ(joined({}, "; "), "");
  EXPECT_EQ(joined({"A"}, "; "), "A");
  EXPECT_EQ(joined({"", "B", ""}, "; "), "; B; ");
}

}  // namespace
}  // namespace inchwright
