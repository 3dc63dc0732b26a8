#include "core/base/result.h"

#include <gtest/gtest.h>

#include <memory>

namespace inchwright {
namespace {

TEST(Result, HoldsAValue) {
  Result<std::string> result = std::string("1 3/16");
  ASSERT_TRUE(result.ok());
  EXPECT_TRUE(static_cast<bool>(result));
  EXPECT_EQ(*result, "1 3/16");
  EXPECT_EQ(result->size(), 6u);
  result->append("\"");
  EXPECT_EQ(result.value(), "1 3/16\"");
}

TEST(Result, HoldsAnError) {
  const Result<int> result = Error{ErrorCode::badText, "no figure", "", 3};
  ASSERT_FALSE(result.ok());
  EXPECT_FALSE(static_cast<bool>(result));
  EXPECT_EQ(result.error(), (Error{ErrorCode::badText, "no figure", "", 3}));
  EXPECT_EQ(*result.error().at, 3u);
}

TEST(Result, OfAnErrorlikeValueIsStillAValue) {
  const Result<Done> done = Done{};
  EXPECT_TRUE(done.ok());
}

TEST(Result, GivesUpWhatCanOnlyBeMoved) {
  Result<std::unique_ptr<int>> result = std::make_unique<int>(7);
  const std::unique_ptr<int> taken = std::move(result).value();
  EXPECT_EQ(*taken, 7);
}

}  // namespace
}  // namespace inchwright
