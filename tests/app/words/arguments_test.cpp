#include "app/words/arguments.h"

#include <gtest/gtest.h>

namespace inchwright::app {
namespace {

Result<Arguments> sorted(const std::vector<std::string>& args) {
  return sortArguments(args, {{"--json"}, {"--part", true}});
}

TEST(Arguments, SortsOptionsFromTheRest) {
  const Result<Arguments> found = sorted({"a", "--json", "--part", "Front plate", "b"});
  ASSERT_TRUE(found.ok());
  EXPECT_TRUE(found->has("--json"));
  EXPECT_EQ(found->value("--part"), "Front plate");
  EXPECT_EQ(found->rest, (std::vector<std::string>{"a", "b"}));
}

TEST(Arguments, TakesAValueBehindEqualsOrTheNextWordWhateverItLooksLike) {
  EXPECT_EQ(sorted({"--part=a=b"})->value("--part"), "a=b");
  EXPECT_EQ(sorted({"--part="})->value("--part"), "");
  EXPECT_EQ(sorted({"--part", "--json"})->value("--part"), "--json");
}

TEST(Arguments, TwoDashesEndTheOptions) {
  const Result<Arguments> found = sorted({"--json", "--", "--part", "--", ".5"});
  ASSERT_TRUE(found.ok());
  EXPECT_EQ(found->rest, (std::vector<std::string>{"--part", "--", ".5"}));
}

TEST(Arguments, ASignedFigureIsNoOption) {
  const Result<Arguments> found = sorted({"-1/8", "-.5", "-", "-¼"});
  ASSERT_TRUE(found.ok());
  EXPECT_EQ(found->rest.size(), 4u);
}

TEST(Arguments, HelpIsAlwaysKnown) {
  EXPECT_TRUE(sorted({"-h"})->has("--help"));
  EXPECT_TRUE(sorted({"--help", "--help"})->has("--help"));
}

struct Bad {
  std::vector<std::string> args;
  std::string place;
};

TEST(Arguments, RefusesWhatItCantUseAndNamesTheOption) {
  const std::vector<Bad> table{
      {{"--jsn"}, "--jsn"},
      {{"--json=yes"}, "--json"},
      {{"--json", "--json"}, "--json"},
      {{"--part"}, "--part"},
      {{"--part", "a", "--part", "b"}, "--part"},
      {{"-x"}, "-x"},
      {{"-a"}, "-a"},
      {{"-z"}, "-z"},
      {{"-A"}, "-A"},
      {{"-Z"}, "-Z"},
      {{"--nothing=1"}, "--nothing"},
  };
  for (const Bad& bad : table) {
    SCOPED_TRACE(bad.args.front());
    const Result<Arguments> found = sorted(bad.args);
    ASSERT_FALSE(found.ok());
    EXPECT_EQ(found.error().code, ErrorCode::badRequest);
    EXPECT_EQ(found.error().place, bad.place);
  }
}

}  // namespace
}  // namespace inchwright::app
