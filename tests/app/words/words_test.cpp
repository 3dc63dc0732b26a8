#include "app/words/words.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

constexpr const char* kEveryWord[] = {"read",       "check",   "table",  "sheet", "plan", "stack",
                                      "ranges",     "budget",  "adjust", "why",   "made", "mend",
                                      "difference", "outline", "curve",  "offers"};

/// The options that a word's help lists, as `--step STEP` or `--json`.
std::vector<std::string> optionsInHelpOf(const std::string& word) {
  std::vector<std::string> options;
  std::istringstream lines(say({word, "--help"}).out);
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("  --", 0) != 0) continue;
    std::string heads = line.substr(2, line.find("  ", 2) - 2);
    for (std::size_t next = 0; next != std::string::npos;) {
      next = heads.find("--", 2);
      std::string one = heads.substr(0, next);
      one.erase(one.find_last_not_of(", ") + 1);
      options.push_back(one);
      if (next != std::string::npos) heads = heads.substr(next);
    }
  }
  return options;
}

TEST(Words, TellsWordsFromADocument) {
  const auto are = [](const std::vector<std::string>& args) { return areWords(args); };
  EXPECT_TRUE(are({"read", "1"}));
  EXPECT_TRUE(are({"--version"}));
  EXPECT_TRUE(are({"-h"}));
  EXPECT_FALSE(are({}));
  EXPECT_FALSE(are({"plate.inchwright"}));
  EXPECT_FALSE(are({"--", "read"}));
}

TEST(Words, AMistypedWordIsSaidSoAndOpensNothing) {
  const auto are = [](const std::vector<std::string>& args) { return areWords(args); };
  EXPECT_TRUE(are({"chek", "plate.inchwright"}));
  EXPECT_TRUE(are({"tabel"}));
  EXPECT_TRUE(are({"a.inchwright", "b.inchwright"})) << "one document at a time";
  EXPECT_FALSE(are({"a.inchwright", "--lamplight"}));
  EXPECT_FALSE(are({"./plate"})) << "a file to come is told of at the desk";
  for (const char* letters : {"azAZ", "a", "z", "A", "Z"}) EXPECT_TRUE(are({letters})) << letters;
  for (const char* other : {"`a", "{a", "@a", "[a", "a1", "a-b", ""}) {
    EXPECT_FALSE(are({other})) << other;
  }
  const Spoken close = say({"chek", "plate.inchwright"});
  EXPECT_EQ(close.status, kUnusable);
  EXPECT_EQ(close.err,
            "inchwright: chek: there is no such word, and no such file; did you mean check?\n");
  EXPECT_EQ(close.out, "");
  EXPECT_NE(say({"sing"}).err.find("inchwright --help"), std::string::npos);
}

TEST(Words, AFileThatIsThereIsNoMistypedWord) {
  const Scratch scratch;
  scratch.write("chek", "x");
  const std::filesystem::path before = std::filesystem::current_path();
  std::filesystem::current_path(scratch.folder());
  EXPECT_FALSE(areWords(std::vector<std::string>{"chek"}));
  std::filesystem::current_path(before);
}

TEST(Words, HelpIsAWordAsWell) {
  EXPECT_EQ(say({"help"}).out, say({"--help"}).out);
  EXPECT_EQ(say({"help", "check"}).out, say({"check", "--help"}).out);
  EXPECT_EQ(say({"help", "chek"}).status, kUnusable);
}

TEST(Words, VersionIsOneLine) {
  const Spoken spoken = say({"--version"});
  EXPECT_EQ(spoken.status, kFine);
  EXPECT_EQ(spoken.out, "inchwright " INCHWRIGHT_VERSION "\n");
}

TEST(Words, OverviewNamesEveryWordAndEachHasHelp) {
  const std::string overview = say({"--help"}).out;
  for (const std::string word : kEveryWord) {
    SCOPED_TRACE(word);
    EXPECT_NE(overview.find("\n  " + word + " "), std::string::npos);
    for (const std::string option : {"--help", "-h"}) {
      const Spoken spoken = say({word, option});
      EXPECT_EQ(spoken.status, kFine);
      EXPECT_EQ(spoken.out.rfind("inchwright " + word + " ", 0), 0u);
      EXPECT_NE(spoken.out.find("Exit status:"), std::string::npos);
      EXPECT_EQ(spoken.err, "");
    }
  }
}

TEST(Words, HelpIsNoWiderThanNinetySixColumnsButForItsFirstLine) {
  for (const std::string word : kEveryWord) {
    std::istringstream lines(say({word, "--help"}).out);
    std::string line;
    std::getline(lines, line);
    while (std::getline(lines, line)) EXPECT_LE(line.size(), 96u) << word << ": " << line;
  }
}

TEST(Words, AnOptionTakesAValueWhereItsHelpSaysSo) {
  int values = 0, flags = 0;
  for (const std::string word : kEveryWord) {
    for (const std::string& option : optionsInHelpOf(word)) {
      SCOPED_TRACE(word + " " + option);
      const std::string name = option.substr(0, option.find(' '));
      const bool takesValue = option != name;
      ++(takesValue ? values : flags);
      EXPECT_EQ(say({word, name}).err.find("needs a value") != std::string::npos, takesValue);
      EXPECT_EQ(say({word, name + "=x"}).err.find("takes no value") != std::string::npos,
                !takesValue);
      EXPECT_EQ(say({word, name + "=x"}).err.find("no such option"), std::string::npos);
    }
  }
  EXPECT_GT(values, 40);
  EXPECT_GT(flags, 20);
}

TEST(Words, HelpBehindTwoDashesIsAText) {
  EXPECT_EQ(say({"read", "--", "--help"}).status, kUnusable);
}

TEST(Words, AnUnknownOptionIsRefusedInOneLine) {
  for (const std::vector<std::string>& args : std::vector<std::vector<std::string>>{
           {"--nothing"}, {"-q"}, {"read", "--nothing"}, {"check", "--unit", "in", "x"}}) {
    const Spoken spoken = say(args);
    EXPECT_EQ(spoken.status, kUnusable);
    EXPECT_EQ(spoken.out, "");
    EXPECT_EQ(std::count(spoken.err.begin(), spoken.err.end(), '\n'), 1) << spoken.err;
  }
}

}  // namespace
}  // namespace inchwright::app
