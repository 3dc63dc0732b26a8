#include "core/part/projection.h"

#include <gtest/gtest.h>

#include <set>
#include <utility>

namespace inchwright {
namespace {

TEST(ProjectionTest, NamesLeadBack) {
  for (const Projection one : {Projection::first, Projection::third}) {
    EXPECT_EQ(projectionNamed(nameOf(one)), one);
  }
  EXPECT_FALSE(projectionNamed("second"));
}

// ISO 5456-2: third angle shows what is seen from the right at the right of the main view.
TEST(ProjectionTest, ThirdAngleStandsWhereItIsSeenFromAndFirstAngleOpposite) {
  EXPECT_EQ(viewPlace(Face::right, Projection::third), (ViewPlace{1, 0}));
  EXPECT_EQ(viewPlace(Face::right, Projection::first), (ViewPlace{-1, 0}));
  EXPECT_EQ(viewPlace(Face::front, Projection::third), (ViewPlace{0, 1}));
  EXPECT_EQ(viewPlace(Face::front, Projection::first), (ViewPlace{0, -1}));
  EXPECT_EQ(viewPlace(Face::back, Projection::third), (ViewPlace{0, -1}));
}

TEST(ProjectionTest, NoTwoViewsStandInOnePlace) {
  for (const Projection one : {Projection::first, Projection::third}) {
    std::set<std::pair<int, int>> places;
    for (int face = 0; face < 6; ++face) {
      const ViewPlace place = viewPlace(static_cast<Face>(face), one);
      places.insert({place.column, place.row});
    }
    EXPECT_EQ(places.size(), 6u);
  }
}

}  // namespace
}  // namespace inchwright
