#include "core/lines/typed_name.h"

#include <gtest/gtest.h>

#include "core/lines/pasted.h"

namespace inchwright {
namespace {

Part part() {
  Part empty;
  empty.name = "Plate";
  const auto read = applyLines(empty, "edge L left\nhole A 1/4\nL A 3/8\n", {});
  EXPECT_TRUE(read.ok()) << read.error().text;
  return read.ok() ? *read : empty;
}

TEST(TypedName, IsNoFigure) {
  struct Case {
    const char* name;
    const char* fault;
  };
  for (const Case& one : {Case{"B", ""},
                          {"R1", ""},
                          {"m6", ""},
                          {"x", ""},
                          {"O1", ""},
                          {"A.1", ""},
                          {"A", ""},
                          {"5", "`5` reads as a figure, and can't be a name"},
                          {"3/8", "`3/8` reads as a figure, and can't be a name"},
                          {".5", "`.5` reads as a figure, and can't be a name"},
                          {"½", "`½` reads as a figure, and can't be a name"},
                          {"R.25", "`R.25` reads as a figure, and can't be a name"},
                          {"l/4", "`l/4` reads as a figure with a letter in it: is 1/4 meant?"},
                          {"O.25", "`O.25` reads as a figure with a letter in it: is 0.25 meant?"},
                          {"1O", "`1O` reads as a figure with a letter in it: is 10 meant?"}}) {
    EXPECT_EQ(nameFault(one.name), one.fault) << one.name;
  }
}

TEST(TypedName, ThatDiffersInCapitalsOnlyIsAskedAbout) {
  EXPECT_EQ(nameQuestion(part(), "a"), "`a` and `A` differ in capitals only");
  EXPECT_EQ(nameQuestion(part(), "l"), "`l` and `L` differ in capitals only");
  EXPECT_EQ(nameQuestion(part(), "a", "A"), "") << "it is the one that is renamed";
  EXPECT_EQ(nameQuestion(part(), "A"), "");
  EXPECT_EQ(nameQuestion(part(), "B"), "");
}

}  // namespace
}  // namespace inchwright
