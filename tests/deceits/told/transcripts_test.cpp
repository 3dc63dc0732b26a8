// What the program answers, word for word: of every sample by every word that looks at one, of
// holes of every kind in shops of every kind, and of each deceit what is said of it beside the word
// that `cases.txt` asks for. To renew them after a wanted change, run this test with
// INCHWRIGHT_RENEW_GOLDEN=1, read what differs, and commit it.
#include "tests/deceits/told/transcripts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

namespace inchwright::app {
namespace {

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

std::vector<std::string> samplesThere() {
  std::vector<std::string> names;
  for (const auto& file : std::filesystem::directory_iterator(INCHWRIGHT_SOURCE_DIR "/samples")) {
    if (file.path().extension() == ".inchwright") names.push_back(file.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

class TranscriptOf : public Transcripts, public testing::WithParamInterface<std::string> {};

TEST_P(TranscriptOf, TheSample) {
  const std::string document = Scratch::read(sample(GetParam()));
  std::vector<Texts> calls{{"check"}, {"plan"},    {"table"}, {"table", "--unit", "mm"},
                           {"made"},  {"outline"}, {"curve"}};
  const auto job = nlohmann::json::parse(document);
  for (const auto& part : job["parts"]) addCalls(part, calls);
  for (const auto& gap : job.value("gaps", nlohmann::json::array())) {
    calls.push_back({"stack", "--gap", gap["name"], "--runs", "1000"});
  }
  expectKept(GetParam(), transcript(document, calls));
}

INSTANTIATE_TEST_SUITE_P(Samples, TranscriptOf, testing::ValuesIn(samplesThere()),
                         [](const auto& one) { return one.param; });

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
class Spoilt : public Transcripts, public testing::WithParamInterface<std::string> {};

TEST_P(Spoilt, InEveryMember) {
  const std::vector<test::Json> spoilt{"-1", "zz", "1/46", 7, nullptr};
  std::string text;
  const std::string name = GetParam();
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
      text += name + " " + way.to_string() + " " + value.dump() + "\n";
      for (const std::string& line : linesOf(answerTo(changed.dump(), {"check"}))) {
        if (std::find(sound.begin(), sound.end(), line) != sound.end()) continue;
        text += "    " + line + "\n";
        break;
      }
    }
  }
  expectKept("spoilt_" + GetParam(), text);
}

INSTANTIATE_TEST_SUITE_P(Documents, Spoilt, testing::Values("bracket", "click_work", "end_shake"),
                         [](const auto& one) { return std::string(one.param); });

class AnswersAbout : public Transcripts, public testing::WithParamInterface<std::string> {
 protected:
  std::vector<Deceit> mine(const std::vector<Deceit>& all) const {
    std::vector<Deceit> found;
    for (const Deceit& one : all) {
      if (one.document == GetParam()) found.push_back(one);
    }
    return found;
  }

  const Texts& soundAnswer(const Texts& asked) {
    const auto [found, isNew] = sound_.try_emplace(asked);
    if (isNew) found->second = linesOf(answerTo(soundDocument(GetParam()).dump(), asked));
    return found->second;
  }

 private:
  std::map<Texts, Texts> sound_;
};

class AskedAbout : public AnswersAbout {};
class DeceitsAbout : public AnswersAbout {};

// Of a changed document what is answered otherwise than of the sound one, so that it can be read.
TEST_P(AskedAbout, ADocument) {
  std::string text;
  for (const Deceit& one : mine(linesOfTable("asked.txt", 3))) {
    text += one.line + "\n";
    const std::string answer = answerTo(changedDocument(one), one.asked);
    if (one.changes == "-") {
      text += answer;
      continue;
    }
    Texts gone = soundAnswer(one.asked);
    for (const std::string& line : linesOf(answer)) {
      const auto as = std::find(gone.begin(), gone.end(), line);
      if (as == gone.end()) {
        text += "    + " + line + "\n";
      } else {
        gone.erase(as);
      }
    }
    for (const std::string& line : gone) text += "    - " + line + "\n";
  }
  expectKept("asked_" + GetParam(), text);
}

TEST_P(DeceitsAbout, ADocument) {
  std::string text;
  for (const Deceit& one : mine(allDeceits())) {
    const Texts& sound = soundAnswer(one.asked);
    text += one.line + "\n";
    for (const std::string& line : linesOf(answerTo(changedDocument(one), one.asked))) {
      if (std::find(sound.begin(), sound.end(), line) == sound.end()) text += "    " + line + "\n";
    }
  }
  expectKept("deceits_" + GetParam(), text);
}

INSTANTIATE_TEST_SUITE_P(Told, AskedAbout, testing::ValuesIn(documentsNamedIn("asked.txt", 3)),
                         [](const auto& one) { return one.param; });
INSTANTIATE_TEST_SUITE_P(Told, DeceitsAbout, testing::ValuesIn(documentsNamedIn("cases.txt", 4)),
                         [](const auto& one) { return one.param; });

}  // namespace
}  // namespace inchwright::app
