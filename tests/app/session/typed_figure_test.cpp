#include "app/session/typed_figure.h"

#include <gtest/gtest.h>

namespace inchwright::app {
namespace {

TEST(ReadTyped, MeansTheSameInTheUnitOfTheDocument) {
  const struct {
    const char* typed;
    Unit at;
    Unit kept;
    const char* text;
  } cases[] = {
      {"9.525", Unit::millimetre, Unit::inch, "9.525 mm"},
      {"9.525 mm", Unit::millimetre, Unit::inch, "9.525 mm"},
      {"3/8", Unit::inch, Unit::millimetre, "3/8 in"},
      {"3/8", Unit::inch, Unit::inch, "3/8"},
      {"-0.25", Unit::inch, Unit::millimetre, "-0.25 in"},
      {"0", Unit::millimetre, Unit::inch, "0"},
  };
  for (const auto& one : cases) {
    SCOPED_TRACE(one.typed);
    const auto read = readTyped(one.typed, one.at, one.kept);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->text, one.text);
    EXPECT_EQ(read->value, readLength(one.typed, {one.at})->value);
    EXPECT_EQ(*readLength(read->text, {one.kept}), *read) << "as the document reads it again";
  }
  EXPECT_FALSE(readTyped("1 3/0", Unit::inch, Unit::millimetre).ok());
}

}  // namespace
}  // namespace inchwright::app
