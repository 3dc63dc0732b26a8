#include <gtest/gtest.h>

#include <clocale>
#include <cstdlib>

#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

TEST(ReadWord, EchoesFractionDecimalAndMillimetres) {
  const Spoken spoken = say({"read", "1 3/16"});
  EXPECT_EQ(spoken.status, kFine);
  EXPECT_EQ(spoken.out, "1 3/16  1 3/16  1.1875 in  30.1625 mm\n");
  EXPECT_EQ(spoken.err, "");
}

TEST(ReadWord, GivesEveryKeyOfTheContract) {
  const nlohmann::json all = say({"read", "1 3/16 ±1/64", "(2 3/8)", "--json"}).json();
  EXPECT_EQ(all["inchwright"], 1);
  ASSERT_EQ(all["read"].size(), 2u);
  const nlohmann::json& first = all["read"][0];
  EXPECT_EQ(first["text"], "1 3/16 ±1/64");
  EXPECT_EQ(first["fraction"], "1 3/16");
  EXPECT_EQ(first["inches"], "1.1875");
  EXPECT_EQ(first["mm"], "30.1625");
  EXPECT_EQ(first["ticks"], 3'016'250'000);
  EXPECT_EQ(first["plus_ticks"], 39'687'500);
  EXPECT_EQ(first["minus_ticks"], 39'687'500);
  EXPECT_EQ(first["reference"], false);
  const nlohmann::json& second = all["read"][1];
  EXPECT_EQ(second["reference"], true);
  EXPECT_TRUE(second["plus_ticks"].is_null());
  EXPECT_TRUE(second["minus_ticks"].is_null());
}

TEST(ReadWord, KeepsUnequalTolerancesApart) {
  const nlohmann::json all = say({"read", ".500 +.002 -.000", "--json"}).json();
  EXPECT_EQ(all["read"][0]["plus_ticks"], 5'080'000);
  EXPECT_EQ(all["read"][0]["minus_ticks"], 0);
  EXPECT_NE(say({"read", ".500 +.002 -.001"}).out.find("+0.002 -0.001"), std::string::npos);
}

TEST(ReadWord, TakesBareFiguresInTheUnitAskedFor) {
  EXPECT_EQ(say({"read", "12.7", "--unit", "mm", "--json"}).json()["read"][0]["inches"], "0.5");
  EXPECT_EQ(say({"read", "12.7", "--unit", "cubits"}).status, kUnusable);
}

TEST(ReadWord, RefusedTextsHaveTheirPlaceAndTheOthersAreStillRead) {
  const Spoken spoken = say({"read", "3/8", "1 3/0", "--json"});
  EXPECT_EQ(spoken.status, kUnusable);
  EXPECT_EQ(std::count(spoken.err.begin(), spoken.err.end(), '\n'), 1);
  EXPECT_NE(spoken.err.find("“1 3/0”: at character"), std::string::npos) << spoken.err;
  const nlohmann::json all = spoken.json();
  EXPECT_EQ(all["read"][0]["fraction"], "3/8");
  EXPECT_EQ(all["read"][1]["text"], "1 3/0");
  EXPECT_FALSE(all["read"][1]["error"].get<std::string>().empty());
  EXPECT_TRUE(all["read"][1]["at"].is_number_unsigned());
}

TEST(ReadWord, NeedsSomethingToRead) {
  EXPECT_EQ(say({"read"}).status, kUnusable);
}

TEST(ReadWord, BytesThatAreNoTextComeBackAsValidJson) {
  const Spoken spoken = say({"read", "\xff\xfe", "--json"});
  EXPECT_EQ(spoken.status, kUnusable);
  EXPECT_TRUE(nlohmann::json::accept(spoken.out));
}

TEST(ReadWord, AnswersAlikeWhateverTheLocale) {
  // Holds under the decimal comma that tests/run sets for its second pass; LC_ALL says which.
  const char* const locale = std::getenv("LC_ALL");
  if (locale != nullptr && std::string(locale).rfind("de_DE", 0) == 0) {
    ASSERT_STREQ(std::localeconv()->decimal_point, ",");
  }
  EXPECT_EQ(say({"read", "1.5"}).out, "1.5  1 1/2  1.5 in  38.1 mm\n");
}

}  // namespace
}  // namespace inchwright::app
