#include "core/part/made.h"

#include <gtest/gtest.h>

#include "core/part/edit.h"

namespace inchwright {
namespace {

Part withPointP() {
  Part part;
  part.name = "Plate";
  Feature point;
  point.id = "P";
  part.features.push_back(point);
  return part;
}

MadePlace ticked(const char* tick) {
  MadePlace made;
  made.place = "P";
  made.setup = "Setup 1";
  made.ticks = {tick};
  return made;
}

TEST(Made, IsPutDownReplacedAndRemoved) {
  const Part once = withMade(withPointP(), ticked("spot"));
  EXPECT_EQ(madeAt(once, "P", "Setup 1"), ticked("spot"));
  EXPECT_TRUE(madeAt(once, "P", "Setup 2").empty());
  const Part twice = withMade(once, ticked("drill 1/4"));
  ASSERT_EQ(twice.made.size(), 1u);
  EXPECT_EQ(twice.made[0].ticks[0], "drill 1/4");
  MadePlace none = ticked("");
  none.ticks.clear();
  EXPECT_EQ(withMade(twice, none), withPointP());
}

TEST(Made, FollowsItsFeature) {
  const Part part = withMade(withPointP(), ticked("spot"));
  const auto renamedPart = renameFeature(part, "P", "Q");
  ASSERT_TRUE(renamedPart.ok());
  EXPECT_EQ(renamedPart->made[0].place, "Q");
  const auto removed = removeFeature(part, "P");
  ASSERT_TRUE(removed.ok());
  EXPECT_TRUE(removed->part.made.empty());
}

TEST(Made, MoreThanOnePlaceIsKept) {
  MadePlace second = ticked("spot");
  second.setup = "Setup 2";
  const Part part = withMade(withMade(withPointP(), ticked("spot")), second);
  EXPECT_EQ(part.made.size(), 2u);
}

}  // namespace
}  // namespace inchwright
