// The table of deceits (`cases.txt`): what could bring a wrong hole to the machine, in documents of
// every kind and in what is typed, each with the word that must be said of it. A new one is one
// line.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>

#include "tests/app/words/spoken.h"
#include "tests/deceits/told/cases.h"
#include "tests/support/bare_ids.h"

namespace inchwright::app {
namespace {

class Told : public testing::Test {
 protected:
  std::string answerTo(const std::string& document, std::vector<std::string> asked) {
    if (!document.empty()) {
      asked.insert(asked.begin() + 1, folder_.write("deceit.inchwright", document));
    }
    const Spoken spoken = say(asked);
    return spoken.out + spoken.err;
  }

  /// Whether it is said of the sound document as well, of which nothing is to be said.
  bool isSaidAnyway(const Deceit& one) {
    if (one.document == "-" || one.changes == "-") return false;
    const auto [found, isNew] = sound_.try_emplace({one.document, one.asked});
    if (isNew) found->second = answerTo(soundDocument(one.document).dump(), one.asked);
    return found->second.find(one.said) != std::string::npos;
  }

  void expectTold(const Deceit& one) {
    const std::string answer = answerTo(changedDocument(one), one.asked);
    EXPECT_NE(answer.find(one.said), std::string::npos) << one.line << "\nsays:\n" << answer;
    const bool lines = std::find(one.asked.begin(), one.asked.end(), "--json") == one.asked.end();
    // What comes of placing is put into words before it gets to the room for that.
    const bool placing = answer.find(" do not agree: ") != std::string::npos ||
                         answer.find(" do not meet: ") != std::string::npos;
    if (one.asked[0] == "check" && lines && !placing) {
      EXPECT_EQ(test::lineWithBareId(answer), "") << one.line;
    }
    EXPECT_FALSE(isSaidAnyway(one)) << "said of the sound document as well: " << one.line;
  }

 private:
  Scratch folder_;
  std::map<std::pair<std::string, std::vector<std::string>>, std::string> sound_;
};

TEST_F(Told, EveryDeceit) {
  const std::vector<Deceit> all = allDeceits();
  EXPECT_GE(all.size(), 150u);
  for (const Deceit& one : all) {
    try {
      expectTold(one);
    } catch (const std::exception& fault) {
      ADD_FAILURE() << one.line << "\n" << fault.what();
    }
  }
}

// What is listed the other way round in the document is the same print.
TEST_F(Told, TheOrderOfTheListsTakesNoWordAway) {
  int looked = 0;
  for (const Deceit& one : allDeceits()) {
    const auto document = test::Json::parse(changedDocument(one), nullptr, false);
    if (!document.is_object() || !document.contains("parts")) continue;
    test::Json turned = document;
    for (test::Json& part : turned["parts"]) {
      for (const char* list : {"features", "readings", "understood"}) {
        if (part.is_object() && part.contains(list) && part[list].is_array()) {
          std::reverse(part[list].begin(), part[list].end());
        }
      }
    }
    ++looked;
    const std::string answer = answerTo(turned.dump(), one.asked);
    EXPECT_NE(answer.find(one.said), std::string::npos) << one.line << "\nsays:\n" << answer;
  }
  EXPECT_GE(looked, 150);
}

TEST_F(Told, NoSampleIsToldOfByTheIdsOfReadings) {
  int looked = 0;
  for (const auto& file : std::filesystem::directory_iterator(INCHWRIGHT_SOURCE_DIR "/samples")) {
    if (file.path().extension() != ".inchwright") continue;
    const std::string document = Scratch::read(file.path().string());
    EXPECT_EQ(test::lineWithBareId(answerTo(document, {"check"})), "") << file.path();
    ++looked;
  }
  EXPECT_GE(looked, 8);
}

}  // namespace
}  // namespace inchwright::app
