// The words about the whole kit: made, mend, difference.

#include <gtest/gtest.h>

#include <string>

#include "tests/app/words/spoken.h"
#include "tests/core/kit/kit_job.h"

namespace inchwright::app {
namespace {

std::string kitText(const std::string& plate, const std::string& arbor = {}) {
  std::string text = kKitJob;
  text.replace(text.find("MADE"), 4, plate);
  text.replace(text.find("ARBOR"), 5, arbor);
  return text;
}

constexpr const char* kOverSize =
    R"({"place": "A", "setup": "1", "x": "1.0010", "y": ".7500", "size": ".2518", "with": {"name": "gauge", "error": ".0003"}})";

TEST(MadeWord, PrintsWantedAndFoundByContract) {
  const Scratch scratch;
  const std::string file = scratch.write("kit.inchwright", kitText(kOverSize));
  const Spoken spoken = say({"made", file, "--json"});
  EXPECT_EQ(spoken.status, 1) << spoken.err;
  const auto all = spoken.json();
  EXPECT_EQ(all["inchwright"], 1);
  const auto& row = all["made"][0];
  EXPECT_EQ(row["part"], "Plate");
  EXPECT_EQ(row["place"], "A");
  EXPECT_EQ(row["setup"], "1");
  EXPECT_EQ(row["wanted"]["x"], "1.0000");
  EXPECT_EQ(row["wanted"]["x_ticks"], 2'540'000'000);
  EXPECT_EQ(row["wanted"]["size"][0], "0.2500");
  EXPECT_EQ(row["found"]["x"], "1.0010");
  EXPECT_EQ(row["found"]["size"][1], "0.2521");
  EXPECT_EQ(row["found"]["size_ticks"][1], 2521 * 254'000);
  EXPECT_EQ(row["verdict"][0], "over");
  const auto& mate = all["mates"][0];
  EXPECT_EQ(mate["name"], "arbor in A");
  EXPECT_EQ(mate["clearance"][0], "0.0022");
  EXPECT_EQ(mate["wanted_ticks"][1], 16 * 254'000);
  EXPECT_EQ(mate["verdict"][0], "over");
  EXPECT_EQ(all["gaps"][1]["name"], "rock");
  EXPECT_FALSE(all["gaps"][1]["keeps"].get<bool>());
}

TEST(MadeWord, IsFineWhereAllIsIn) {
  const Scratch scratch;
  const std::string file = scratch.write(
      "kit.inchwright",
      kitText(
          R"({"place": "A", "setup": "1", "size": ".2503"}, {"place": "B", "setup": "1", "ticks": ["drill 15/64"]})"));
  const Spoken spoken = say({"made", file});
  EXPECT_EQ(spoken.status, 0) << spoken.out << spoken.err;
  EXPECT_NE(spoken.out.find("Plate, A: size 0.2503"), std::string::npos) << spoken.out;
  EXPECT_NE(spoken.out.find("not measured"), std::string::npos);
  EXPECT_NE(spoken.out.find("goes together"), std::string::npos);
}

// A hole that the print gives no size has no clearance: what is missing is said in its place.
TEST(MadeWord, AMateThatCannotBeWorkedOutSaysWhy) {
  const Scratch scratch;
  auto kit = nlohmann::ordered_json::parse(kitText(""));
  auto& hole = kit["parts"][0]["features"][4];
  ASSERT_EQ(hole["id"], "A");
  hole.erase("diameter");
  hole.erase("limits");
  const Spoken spoken = say({"made", scratch.write("kit.inchwright", kit.dump()), "--json"});
  const auto mate = spoken.json()["mates"][0];
  EXPECT_EQ(mate["name"], "arbor in A");
  EXPECT_EQ(mate["error"], "`A` of `Plate` has no size on the print");
  EXPECT_EQ(mate["verdict"], nlohmann::json::array());
  const auto sound = say({"made", scratch.write("kit.inchwright", kitText("")), "--json"}).json();
  EXPECT_FALSE(sound["mates"][0].contains("error"));
}

TEST(MadeWord, SpeaksInTheUnitAsked) {
  const Scratch scratch;
  const std::string file = scratch.write("kit.inchwright", kitText(kOverSize));
  const auto all = say({"made", file, "--json", "--unit", "mm", "--step", "0.001"}).json();
  EXPECT_EQ(all["made"][0]["wanted"]["x"], "25.400");
  EXPECT_EQ(say({"made", file, "--unit", "ell"}).status, 2);
  EXPECT_EQ(say({"made"}).status, 2);
}

TEST(MendWord, GivesTheFiguresOfEachWay) {
  const Scratch scratch;
  const std::string file = scratch.write("kit.inchwright", kitText(kOverSize));
  const Spoken spoken = say({"mend", file, "--part", "Plate", "--place", "A", "--json"});
  EXPECT_EQ(spoken.status, 0) << spoken.err;
  const auto ways = spoken.json()["ways"];
  ASSERT_EQ(ways[0]["way"], "shaft");
  EXPECT_EQ(ways[0]["figures"]["size"], (nlohmann::json{"0.2505", "0.2508"}));
  ASSERT_EQ(ways[1]["way"], "bush");
  EXPECT_EQ(ways[1]["figures"]["bore"], "0.3125");
  EXPECT_EQ(ways[1]["figures"]["inside"], "0.2500");
  EXPECT_EQ(ways[1]["figures"]["setup"], "1");
  EXPECT_EQ(ways[1]["figures"]["centre"][1], "0.7500");
  EXPECT_EQ(ways[1]["figures"]["toward"][0], "-0.0010");
  EXPECT_EQ(ways.back()["way"], "leave");
  bool seen = false;
  for (const auto& effect : ways.back()["effects"]) {
    if (effect["of"] != "mate" || effect["name"] != "arbor in A") continue;
    seen = true;
    EXPECT_FALSE(effect["holds"].get<bool>());
  }
  EXPECT_TRUE(seen);
  const Spoken words = say({"mend", file, "--part", "Plate", "--place", "A"});
  EXPECT_NE(words.out.find("A shaft to suit (arbor in A): make it 0.2505 to 0.2508"),
            std::string::npos)
      << words.out;
}

// Of several parts one is named; the only one need not be.
TEST(MendWord, TheOnlyPartNeedNotBeNamed) {
  const Scratch scratch;
  auto kit = nlohmann::ordered_json::parse(kitText(kOverSize));
  EXPECT_EQ(say({"mend", scratch.write("kit.inchwright", kit.dump()), "--place", "A"}).status, 2);
  kit["parts"].erase(1);
  for (const char* member : {"mates", "gaps"}) kit.erase(member);
  const std::string file = scratch.write("alone.inchwright", kit.dump());
  const Spoken alone = say({"mend", file, "--place", "A", "--json"});
  EXPECT_EQ(alone.status, 0) << alone.err;
  EXPECT_EQ(alone.out, say({"mend", file, "--part", "Plate", "--place", "A", "--json"}).out);
}

TEST(MendWord, RefusesInOneLine) {
  const Scratch scratch;
  const std::string file = scratch.write("kit.inchwright", kitText(kOverSize));
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"mend", file, "--place", "A"},
        {"mend", file, "--part", "Plate"},
        {"mend", file, "--part", "Plate", "--place", "Z"},
        {"mend", file, "--part", "Plate", "--place", "B"},
        {"mend", file, "--part", "Nowhere", "--place", "A"}}) {
    const Spoken spoken = say(words);
    EXPECT_EQ(spoken.status, 2);
    EXPECT_EQ(std::count(spoken.err.begin(), spoken.err.end(), '\n'), 1) << spoken.err;
  }
}

/// Two levers, nearly alike: H is another size, J lies elsewhere, K is only in the second.
constexpr const char* kLevers = R"({
  "inchwright": 1, "job": {"title": "", "unit": "in"}, "machine": {"unit": "in", "step": "0.0005"},
  "parts": [
    {"name": "Front", "features": [
      {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
      {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
      {"id": "A", "kind": "hole", "diameter": "1/4"}, {"id": "H", "kind": "hole", "diameter": "9/32"},
      {"id": "J", "kind": "hole", "diameter": "1/8"}],
     "readings": [
      {"id": "r1", "axis": "x", "from": "L", "to": "A", "text": "1/2"}, {"id": "r2", "axis": "y", "from": "F", "to": "A", "text": "1/2"},
      {"id": "r3", "axis": "x", "from": "A", "to": "H", "text": "1"}, {"id": "r4", "axis": "y", "from": "F", "to": "H", "text": "1/2"},
      {"id": "r5", "axis": "x", "from": "A", "to": "J", "text": "2"}, {"id": "r6", "axis": "y", "from": "F", "to": "J", "text": "1/2"}]},
    {"name": "Back", "features": [
      {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
      {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
      {"id": "A", "kind": "hole", "diameter": "1/4"}, {"id": "H", "kind": "hole", "diameter": "5/16"},
      {"id": "N", "kind": "hole", "diameter": "1/8"}, {"id": "K", "kind": "hole", "diameter": "1/16"}],
     "readings": [
      {"id": "r1", "axis": "x", "from": "L", "to": "A", "text": ".5"}, {"id": "r2", "axis": "y", "from": "F", "to": "A", "text": "1/2"},
      {"id": "r3", "axis": "x", "from": "A", "to": "H", "text": "1"}, {"id": "r4", "axis": "y", "from": "F", "to": "H", "text": "1/2"},
      {"id": "r5", "axis": "x", "from": "A", "to": "N", "text": "2 1/16"}, {"id": "r6", "axis": "y", "from": "F", "to": "N", "text": "1/2"},
      {"id": "r7", "axis": "x", "from": "A", "to": "K", "text": "1"}, {"id": "r8", "axis": "y", "from": "F", "to": "K", "text": "1"}]}
  ]})";

TEST(DifferenceWord, MatchesByIdThenByNearness) {
  const Scratch scratch;
  const std::string file = scratch.write("levers.inchwright", kLevers);
  const Spoken spoken = say({"difference", file, "--part", "Front", "--part", "Back", "--json"});
  EXPECT_EQ(spoken.status, 0) << spoken.err;
  const auto found = spoken.json()["difference"];
  EXPECT_EQ(found["parts"], (nlohmann::json{"Front", "Back"}));
  EXPECT_EQ(found["alike"], nlohmann::json::array({nlohmann::json::array({"A", "A"})}));
  ASSERT_EQ(found["moved"].size(), 1u) << found;
  EXPECT_EQ(found["moved"][0]["ids"], (nlohmann::json{"J", "N"}));
  EXPECT_EQ(found["moved"][0]["dx"], "0.0625");
  EXPECT_EQ(found["moved"][0]["dy_ticks"], 0);
  ASSERT_EQ(found["changed"].size(), 1u);
  EXPECT_EQ(found["changed"][0]["member"], "diameter");
  EXPECT_EQ(found["changed"][0]["a"], "9/32");
  EXPECT_EQ(found["changed"][0]["b"], "5/16");
  ASSERT_EQ(found["only"].size(), 1u);
  EXPECT_EQ(found["only"][0]["id"], "K");
  EXPECT_EQ(found["only"][0]["part"], "Back");
  // The other way about the signs turn.
  const auto back = say({"difference", file, "--part=Back", "--part=Front", "--json"}).json();
  EXPECT_EQ(back["difference"]["moved"][0]["dx"], "-0.0625");
  EXPECT_NE(say({"difference", file}).out.find("H: diameter 9/32 in Front, 5/16 in Back"),
            std::string::npos);
}

TEST(DifferenceWord, RefusesInOneLine) {
  const Scratch scratch;
  const std::string file = scratch.write("levers.inchwright", kLevers);
  EXPECT_EQ(say({"difference", file, "--part", "Front"}).status, 2);
  EXPECT_EQ(say({"difference", file, "--part", "Front", "--part", "Middle"}).status, 2);
  EXPECT_EQ(say({"difference", file, "--part", "A", "--part", "B", "--part", "C"}).status, 2);
}

}  // namespace
}  // namespace inchwright::app
