#include <gtest/gtest.h>

#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

TEST(CheckWord, WritesAClashAsAColleagueWould) {
  const Scratch scratch;
  const Spoken spoken = say({"check", scratch.write("p.inchwright", kClashingPlate)});
  EXPECT_EQ(spoken.status, kFindings);
  EXPECT_EQ(spoken.err, "");
  EXPECT_NE(spoken.out.find("  x: 3/8 + 1 3/16 + 7/16 = 2, the print says 2 1/16 from L to R: 1/16 "
                            "too long\n"
                            "      r1  L to A  3/8     makes 3/8\n"
                            "      r2  A to B  1 3/16  makes 1 9/16\n"
                            "      r3  B to R  7/16    makes 2\n"),
            std::string::npos)
      << spoken.out;
  EXPECT_NE(spoken.out.find("      1 3/16 from A to B may be 1 1/4: "), std::string::npos)
      << spoken.out;
  EXPECT_NE(spoken.out.find("    C along y: "), std::string::npos) << spoken.out;
  EXPECT_NE(spoken.out.find("5 of 6 features placed.\n"), std::string::npos) << spoken.out;
}

TEST(CheckWord, GivesEveryKeyOfTheContract) {
  const Scratch scratch;
  const Spoken spoken = say({"check", "--json", scratch.write("p.inchwright", kClashingPlate)});
  EXPECT_EQ(spoken.status, kFindings);
  const nlohmann::json all = spoken.json();
  EXPECT_EQ(all["inchwright"], 1);
  ASSERT_EQ(all["parts"].size(), 1u);
  const nlohmann::json& part = all["parts"][0];
  EXPECT_EQ(part["part"], "Plate");
  EXPECT_EQ(part["placed"], (nlohmann::json{"L", "R", "F", "A", "B"}));
  ASSERT_EQ(part["loose"].size(), 1u);
  EXPECT_EQ(part["loose"][0]["id"], "C");
  EXPECT_EQ(part["loose"][0]["axis"], "y");
  ASSERT_EQ(part["clashes"].size(), 1u);
  const nlohmann::json& clash = part["clashes"][0];
  EXPECT_EQ(clash["axis"], "x");
  EXPECT_EQ(clash["misses_by"], "0.0625");
  EXPECT_EQ(clash["misses_by_ticks"], 158'750'000);
  EXPECT_EQ(clash["loop"], (nlohmann::json{"r1", "r2", "r3", "r4"}));
  ASSERT_FALSE(clash["suspects"].empty());
  for (const nlohmann::json& suspect : clash["suspects"]) {
    EXPECT_TRUE(suspect["reading"].is_string());
    EXPECT_TRUE(suspect["would_be"].is_string());
    EXPECT_TRUE(suspect["would_be_ticks"].is_number_integer());
    EXPECT_FALSE(suspect["why"].get<std::string>().empty());
  }
  EXPECT_EQ(part["alone"], (nlohmann::json{"r5", "r6", "r7"}));
  EXPECT_TRUE(part["queries"].is_array());
}

// Nothing is wrong along the axes; straight from A to B the print says otherwise.
TEST(CheckWord, ACentreDistanceThatContradictsDoesNotAddUp) {
  nlohmann::json plate = nlohmann::json::parse(soundPlate());
  plate["parts"][0]["readings"].push_back(
      {{"id", "r9"}, {"kind", "centres"}, {"from", "A"}, {"to", "B"}, {"text", "1 7/16"}});
  const Scratch scratch;
  const Spoken spoken = say({"check", scratch.write("p.inchwright", plate.dump())});
  EXPECT_EQ(spoken.status, kFindings);
  EXPECT_NE(spoken.out.find("1 7/16 from A straight to B misses by"), std::string::npos)
      << spoken.out;
  EXPECT_EQ(spoken.out.find("It adds up"), std::string::npos) << spoken.out;
  EXPECT_EQ(spoken.out.find("no clash"), std::string::npos) << spoken.out;
}

TEST(CheckWord, ASoundPartIsFine) {
  const Scratch scratch;
  const Spoken spoken = say({"check", scratch.write("p.inchwright", soundPlate())});
  EXPECT_EQ(spoken.status, kFine);
  EXPECT_NE(spoken.out.find("It adds up: 6 of 6 features placed, no clash."), std::string::npos)
      << spoken.out;
}

TEST(CheckWord, TheSampleWithAMisreadingIsFound) {
  const Spoken spoken = say({"check", sample("barrel_bridge")});
  EXPECT_EQ(spoken.status, kFindings);
  EXPECT_NE(spoken.out.find("3/8 too long"), std::string::npos) << spoken.out;
  EXPECT_NE(spoken.out.find("1 1/16 from B to C may be 1 7/16"), std::string::npos) << spoken.out;
}

TEST(CheckWord, ColoursAreOnlyForATerminalAndChangeNoWord) {
  const std::string plain = say({"check", sample("barrel_bridge")}).out;
  std::string coloured = say({"check", sample("barrel_bridge")}, true).out;
  EXPECT_EQ(plain.find('\x1b'), std::string::npos);
  EXPECT_NE(coloured, plain);
  for (std::size_t at = coloured.find('\x1b'); at != std::string::npos;
       at = coloured.find('\x1b')) {
    coloured.erase(at, coloured.find('m', at) - at + 1);
  }
  EXPECT_EQ(coloured, plain);
}

TEST(CheckWord, WhatCantBeUsedIsSaidInOneLine) {
  const Scratch scratch;
  const std::string plate = scratch.write("p.inchwright", soundPlate());
  const std::vector<std::vector<std::string>> table{
      {"check"},
      {"check", plate, plate},
      {"check", scratch.path("none.inchwright")},
      {"check", scratch.path("")},
      {"check", scratch.write("broken.inchwright", "{\"inchwright\": 1,")},
      {"check", scratch.write("newer.inchwright", R"({"inchwright": 99, "parts": []})")},
      {"check", scratch.write("empty.inchwright", R"({"inchwright": 1, "parts": []})")},
      {"check", plate, "--part", "Other"},
  };
  for (const std::vector<std::string>& args : table) {
    const Spoken spoken = say(args);
    SCOPED_TRACE(spoken.err);
    EXPECT_EQ(spoken.status, kUnusable);
    EXPECT_EQ(spoken.out, "");
    EXPECT_EQ(std::count(spoken.err.begin(), spoken.err.end(), '\n'), 1);
  }
}

TEST(CheckWord, NamesThePlaceOfAFault) {
  const Scratch scratch;
  nlohmann::json plate = nlohmann::json::parse(kClashingPlate);
  plate["parts"][0]["readings"][2]["to"] = "Z";
  const std::string file = scratch.write("p.inchwright", plate.dump());
  const Spoken spoken = say({"check", file});
  EXPECT_EQ(spoken.status, kUnusable);
  EXPECT_NE(spoken.err.find(file + ": /parts/0/readings/2/to: "), std::string::npos) << spoken.err;
  EXPECT_EQ(Scratch::read(file), plate.dump());
}

// By hand: 3 along and 4 up are 5 straight, at 53.130102 degrees (the tangent is 4/3).
TEST(CheckWord, TellsScriptsOfAClashInThePlane) {
  const auto clashWith = [](const char* centres, const char* angle) {
    const std::string text =
        std::string(R"({"inchwright": 1, "parts": [{"name": "Plate",
      "features": [{"id": "L", "kind": "edge", "axis": "x", "side": "left"},
                   {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
                   {"id": "A", "kind": "hole", "diameter": "1/4"},
                   {"id": "B", "kind": "hole", "diameter": "1/4"}],
      "readings": [{"id": "r1", "axis": "x", "from": "L", "to": "A", "text": "1/2"},
                   {"id": "r2", "axis": "y", "from": "F", "to": "A", "text": "1/2"},
                   {"id": "r3", "axis": "x", "from": "A", "to": "B", "text": "3"},
                   {"id": "r4", "axis": "y", "from": "A", "to": "B", "text": "4"},
                   {"id": "r5", "kind": "centres", "from": "A", "to": "B", "text": ")") +
        centres + R"("}, {"id": "r6", "kind": "angle", "from": "A", "to": "B", "text": ")" + angle +
        R"("}]}]})";
    Scratch scratch;
    const Spoken spoken = say({"check", scratch.write("plane.inchwright", text), "--json"});
    EXPECT_LT(spoken.status, 2) << spoken.err;
    return spoken.json()["parts"][0]["clashes"];
  };
  const auto suspectOf = [](const nlohmann::json& clash, const char* reading) {
    for (const auto& one : clash["suspects"]) {
      if (one["reading"] == reading) return one;
    }
    return nlohmann::json();
  };
  EXPECT_EQ(clashWith("5", "53.13").size(), 0u);
  const auto straight = clashWith("5 1/16", "53.13");
  ASSERT_EQ(straight.size(), 1u);
  EXPECT_EQ(straight[0]["axis"], "centres");
  EXPECT_EQ(straight[0]["misses_by"], "0.0625");
  EXPECT_EQ(straight[0]["misses_by_ticks"], 158'750'000);
  const auto read5 = suspectOf(straight[0], "r5");
  EXPECT_EQ(read5["would_be"], "5.0000");
  EXPECT_EQ(read5["would_be_ticks"], 12'700'000'000);
  EXPECT_EQ(read5["would_be_text"], "5");
  EXPECT_EQ(read5["closes_all"], true);
  const auto turned = clashWith("5", "35.13");
  ASSERT_EQ(turned.size(), 1u);
  const auto read6 = suspectOf(turned[0], "r6");
  EXPECT_EQ(read6["would_be"], 53.130102);
  EXPECT_EQ(read6["would_be_text"], "53.13");
  EXPECT_FALSE(read6.contains("would_be_ticks")) << "an angle has none";
}

}  // namespace
}  // namespace inchwright::app
