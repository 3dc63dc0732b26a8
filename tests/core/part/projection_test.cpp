#include "core/part/projection.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

TEST(ProjectionTest, NamesLeadBack) {
  for (const Projection one : {Projection::first, Projection::third}) {
    EXPECT_EQ(projectionNamed(nameOf(one)), one);
  }
  EXPECT_FALSE(projectionNamed("second"));
}

}  // namespace
}  // namespace inchwright
