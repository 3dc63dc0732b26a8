// What the program answers, word for word: of every sample by every word that looks at one, of
// holes of every kind in shops of every kind, and of each deceit what is said of it beside the word
// that `cases.txt` asks for. To renew them after a wanted change, run this test with
// INCHWRIGHT_RENEW_GOLDEN=1, read what differs, and commit it.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>

#include "tests/app/words/spoken.h"
#include "tests/deceits/told/cases.h"

namespace inchwright::app {
namespace {

using Texts = std::vector<std::string>;

class Transcripts : public testing::Test {
 protected:
  /// What is answered to a call about a document, without the name of the folder it lies in.
  std::string answerTo(const std::string& document, Texts call) {
    const std::string file = folder_.write("job.inchwright", document);
    call.insert(call.begin() + 1, file);
    const Spoken spoken = say(call);
    std::string text = spoken.out + spoken.err;
    for (std::size_t at = text.find(file); at != std::string::npos; at = text.find(file)) {
      text.replace(at, file.size(), "job.inchwright");
    }
    return text + "= " + std::to_string(spoken.status) + "\n";
  }

  std::string transcript(const std::string& document, const std::vector<Texts>& calls) {
    std::string text;
    for (const Texts& call : calls) {
      text += "$";
      for (const std::string& word : call) text += " " + word;
      text += "\n" + answerTo(document, call);
    }
    return text;
  }

  void expectKept(const std::string& name, const std::string& text) {
    const std::string path = INCHWRIGHT_SOURCE_DIR "/tests/golden/told/" + name + ".txt";
    if (std::getenv("INCHWRIGHT_RENEW_GOLDEN") != nullptr) {
      std::ofstream(path, std::ios::binary) << text;
      return;
    }
    ASSERT_TRUE(std::filesystem::exists(path)) << path;
    const std::string kept = Scratch::read(path);
    std::istringstream was(kept), is(text);
    std::string oldLine, newLine;
    for (int line = 1; std::getline(was, oldLine); ++line) {
      std::getline(is, newLine);
      ASSERT_EQ(newLine, oldLine) << path << ":" << line;
    }
    EXPECT_EQ(text, kept);
  }

 private:
  Scratch folder_;
};

/// The calls that a part answers.
void addCalls(const nlohmann::json& part, std::vector<Texts>& calls) {
  const std::string name = part["name"];
  const Texts of{"--part", name};
  const auto add = [&](Texts call) {
    call.insert(call.end(), of.begin(), of.end());
    calls.push_back(std::move(call));
  };
  const nlohmann::json& features = part["features"];
  const std::string first = features.front()["id"];
  for (const char* axis : {"x", "y"}) {
    add({"ranges", "--from", first, "--axis", axis});
    add({"adjust", "--axis", axis});
  }
  for (const auto& made : part.value("made", nlohmann::json::array())) {
    add({"mend", "--place", made["place"]});
  }
  for (const auto& setup : part.value("setups", nlohmann::json::array())) {
    if (setup.value("kind", "") == "lathe") continue;
    add({"budget", "--setup", setup["name"]});
    for (const auto& feature : features) {
      if (feature["kind"] == "edge") continue;
      add({"why", "--setup", setup["name"], "--place", feature["id"]});
    }
  }
}

TEST_F(Transcripts, OfEverySample) {
  int samples = 0;
  for (const auto& file : std::filesystem::directory_iterator(INCHWRIGHT_SOURCE_DIR "/samples")) {
    if (file.path().extension() != ".inchwright") continue;
    const std::string document = Scratch::read(file.path().string());
    std::vector<Texts> calls{{"check"}, {"plan"},    {"table"}, {"table", "--unit", "mm"},
                             {"made"},  {"outline"}, {"curve"}};
    const auto job = nlohmann::json::parse(document);
    for (const auto& part : job["parts"]) addCalls(part, calls);
    for (const auto& gap : job.value("gaps", nlohmann::json::array())) {
      calls.push_back({"stack", "--gap", gap["name"], "--runs", "1000"});
    }
    expectKept(file.path().stem().string(), transcript(document, calls));
    ++samples;
  }
  EXPECT_GE(samples, 8);
}

TEST_F(Transcripts, OfHolesOfEveryKindInShopsOfEveryKind) {
  const std::vector<std::pair<std::string, test::Json>> shops{
      {"none said", nullptr},
      {"inch drills, two reamers, a bar", test::Json::parse(R"({
        "drills": ["fractional 1/64 to 1/2", "number 1 to 60"],
        "reamers": [{"size": "1/4"}, {"size": "3/8", "by": "hand"}],
        "taps": ["1/4-20 UNC", "M3"],
        "boring": [{"least": "1/2", "greatest": "2", "dial": "slide", "division": "0.001"}],
        "cutters": [{"size": "3/8"}, {"size": "1/2"}, {"size": "3/4"}],
        "counterbores": [], "countersinks": [{"size": "5/8", "angle": "90"}]})")},
      {"metric drills only", test::Json::parse(R"({
        "drills": ["metric 1 to 13 by 0.1"],
        "reamers": [{"size": "6 mm"}, {"size": "10 mm"}],
        "boring": [{"least": "12 mm", "greatest": "30 mm", "division": "0.01 mm"}]})")},
      {"next to nothing", test::Json::parse(R"({
        "drills": ["1/4"], "reamers": [], "taps": [], "boring": [], "cutters": [],
        "counterbores": [], "countersinks": []})")},
  };
  std::string text;
  for (const auto& [name, shop] : shops) {
    test::Json job = soundDocument("block");
    if (!shop.is_null()) job["shop"] = shop;
    text += "# " + name + "\n" + transcript(job.dump(), {{"check"}, {"plan"}, {"table"}});
  }
  expectKept("holes", text);
}

Texts linesOf(const std::string& answer) {
  Texts lines;
  std::istringstream in(answer);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// Every member of a document, once for each kind of thing that has it: the way to it.
void addWays(const test::Json& here, const test::Json::json_pointer& way, const std::string& shape,
             std::set<std::string>& seen, std::vector<test::Json::json_pointer>& ways) {
  if (here.is_array()) {
    for (std::size_t i = 0; i < here.size(); ++i) addWays(here[i], way / i, shape, seen, ways);
    return;
  }
  if (!here.is_object()) return;
  const std::string kind = here.value("kind", "") + here.value("make", "");
  for (const auto& [name, value] : here.items()) {
    const std::string inner = shape + "/" + kind + "." + name;
    if (seen.insert(inner).second) ways.push_back(way / name);
    addWays(value, way / name, inner, seen, ways);
  }
}

// Each member negative, another thing's name, an odd figure, of another kind, and gone: the first
// line that is said of it.
TEST_F(Transcripts, OfEveryMemberSpoilt) {
  const std::vector<test::Json> spoilt{"-1", "zz", "1/46", 7, nullptr};
  std::string text;
  for (const char* name : {"bracket", "click_work", "end_shake"}) {
    const test::Json document = soundDocument(name);
    const Texts sound = linesOf(answerTo(document.dump(), {"check"}));
    std::set<std::string> seen;
    std::vector<test::Json::json_pointer> ways;
    addWays(document, test::Json::json_pointer(), "", seen, ways);
    for (const test::Json::json_pointer& way : ways) {
      for (const test::Json& value : spoilt) {
        test::Json changed = document;
        if (value.is_null()) {
          changed[way.parent_pointer()].erase(way.back());
        } else {
          changed[way] = value;
        }
        text += name + std::string(" ") + way.to_string() + " " + value.dump() + "\n";
        for (const std::string& line : linesOf(answerTo(changed.dump(), {"check"}))) {
          if (std::find(sound.begin(), sound.end(), line) != sound.end()) continue;
          text += "    " + line + "\n";
          break;
        }
      }
    }
  }
  expectKept("spoilt", text);
}

TEST_F(Transcripts, OfWhatIsAsked) {
  std::string text;
  for (const Deceit& one : linesOfTable("asked.txt", 3)) {
    text += one.line + "\n" + answerTo(changedDocument(one), one.asked);
  }
  expectKept("asked", text);
}

TEST_F(Transcripts, OfEveryDeceit) {
  std::string text;
  std::map<std::pair<std::string, Texts>, std::set<std::string>> sound;
  for (const Deceit& one : allDeceits()) {
    if (one.document == "-") continue;
    const auto [found, isNew] = sound.try_emplace({one.document, one.asked});
    if (isNew) {
      const Texts lines = linesOf(answerTo(soundDocument(one.document).dump(), one.asked));
      found->second.insert(lines.begin(), lines.end());
    }
    text += one.line + "\n";
    for (const std::string& line : linesOf(answerTo(changedDocument(one), one.asked))) {
      if (found->second.count(line) == 0) text += "    " + line + "\n";
    }
  }
  expectKept("deceits", text);
}

}  // namespace
}  // namespace inchwright::app
