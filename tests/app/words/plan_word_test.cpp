#include <gtest/gtest.h>

#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

using nlohmann::ordered_json;

/// A plate of 2 × 1 1/2 × 1/2 in with a reamed, a tapped and a blind hole, held in a vice.
ordered_json heldPlate() {
  return ordered_json::parse(R"({
  "inchwright": 1,
  "job": {"title": "Trial plate", "unit": "in"},
  "machine": {"unit": "in", "step": "0.0005", "finder": "0.200"},
  "parts": [{
    "name": "Plate", "material": "brass",
    "features": [
      {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
      {"id": "R", "kind": "edge", "axis": "x", "side": "right"},
      {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
      {"id": "K", "kind": "edge", "axis": "y", "side": "back"},
      {"id": "U", "kind": "edge", "axis": "z", "side": "bottom"},
      {"id": "T", "kind": "edge", "axis": "z", "side": "top"},
      {"id": "A", "kind": "hole", "diameter": "1/4", "make": "ream"},
      {"id": "B", "kind": "hole", "make": "tap", "thread": "1/4-20 UNC"},
      {"id": "C", "kind": "hole", "diameter": "1/8", "depth": "1/4"}
    ],
    "readings": [
      {"id": "r1", "axis": "x", "from": "L", "to": "R", "text": "2"},
      {"id": "r2", "axis": "y", "from": "F", "to": "K", "text": "1 1/2"},
      {"id": "r3", "axis": "z", "from": "U", "to": "T", "text": "1/2"},
      {"id": "r4", "axis": "x", "from": "L", "to": "A", "text": "1/2"},
      {"id": "r5", "axis": "y", "from": "F", "to": "A", "text": "3/4"},
      {"id": "r6", "axis": "x", "from": "L", "to": "B", "text": "1 1/2"},
      {"id": "r7", "axis": "y", "from": "F", "to": "B", "text": "3/4"},
      {"id": "r8", "axis": "x", "from": "L", "to": "C", "text": "1"},
      {"id": "r9", "axis": "y", "from": "F", "to": "C", "text": "1"}
    ],
    "setups": [{"name": "1", "face": "top", "zero": {"x": {"at": "L"}, "y": {"at": "F"}},
                "jaw": "front", "stop": "left"}]
  }]
})");
}

ordered_json& setupOf(ordered_json& document) {
  return document["parts"][0]["setups"][0];
}

const nlohmann::json& holeIn(const nlohmann::json& plan, const std::string& id) {
  for (const auto& hole : plan["holes"]) {
    if (hole["id"] == id) return hole;
  }
  ADD_FAILURE() << "no hole " << id;
  return plan["holes"][0];
}

nlohmann::json stepOf(const nlohmann::json& hole, const std::string& op) {
  for (const auto& step : hole["steps"]) {
    if (step["op"] == op) return step;
  }
  ADD_FAILURE() << "no step " << op;
  return {};
}

TEST(PlanWord, SaysTheStepsOfEachHole) {
  const Scratch scratch;
  const Spoken spoken = say({"plan", scratch.write("p.inchwright", heldPlate().dump()), "--json"});
  EXPECT_EQ(spoken.status, kFine) << spoken.err << spoken.out;
  const auto plans = spoken.json()["plans"];
  ASSERT_EQ(plans.size(), 1u);
  EXPECT_EQ(plans[0]["part"], "Plate");
  EXPECT_EQ(plans[0]["setup"], "1");
  EXPECT_EQ(plans[0]["findings"].size(), 0u);
  const auto drill = stepOf(holeIn(plans[0], "A"), "drill");
  EXPECT_EQ(drill["tool"], "C");
  EXPECT_EQ(drill["size"], "0.2420");
  EXPECT_EQ(drill["size_ticks"], 614'680'000);
  EXPECT_EQ(drill["full_depth"], "0.5315");  // through 1/2 in and 1/32
  EXPECT_EQ(drill["rule"], "before_reamer");
  EXPECT_EQ(drill["speed"], 3157);
  EXPECT_TRUE(drill["not"].is_null());
  const auto ream = stepOf(holeIn(plans[0], "A"), "ream");
  EXPECT_EQ(ream["not"], "1/4");
  EXPECT_EQ(ream["measure"], false);
  const auto tapDrill = stepOf(holeIn(plans[0], "B"), "drill");
  EXPECT_EQ(tapDrill["tool"], "#7");
  EXPECT_DOUBLE_EQ(tapDrill["percent"].get<double>(), 75.4);
  EXPECT_EQ(stepOf(holeIn(plans[0], "B"), "tap")["not"], "1/4");
  const auto blind = stepOf(holeIn(plans[0], "C"), "drill");
  EXPECT_EQ(blind["full_depth_ticks"], 635'000'000);
  EXPECT_EQ(blind["point_depth"], "0.2875");  // 1/16 · cot 59° further: .28755
  EXPECT_EQ(plans[0]["tools"],
            nlohmann::json::parse(
                R"(["spot", "1/8", "#7", "C", "ream 1/4", "tap 1/4-20 UNC", "deburr"])"));
  EXPECT_EQ(plans[0]["room"]["x"][1], "1.5000");
}

TEST(PlanWord, SpeaksInTheUnitAskedFor) {
  const Scratch scratch;
  const std::string file = scratch.write("p.inchwright", heldPlate().dump());
  const Spoken spoken = say({"plan", file, "--unit", "mm", "--step", "0.01", "--json"});
  EXPECT_EQ(stepOf(holeIn(spoken.json()["plans"][0], "A"), "drill")["size"], "6.15");
}

TEST(PlanWord, KeepsToTheShopOfTheDocument) {
  const Scratch scratch;
  ordered_json document = heldPlate();
  document["shop"] = ordered_json::parse(R"({"drills": ["metric 1 to 10 by 0.1"], "reamers": []})");
  const Spoken spoken = say({"plan", scratch.write("p.inchwright", document.dump()), "--json"});
  EXPECT_EQ(spoken.status, kFindings);
  const auto plan = spoken.json()["plans"][0];
  EXPECT_EQ(stepOf(holeIn(plan, "B"), "drill")["tool"], "5.2 mm");
  EXPECT_EQ(stepOf(holeIn(plan, "C"), "drill")["tool"], "3.2 mm");
  ASSERT_EQ(plan["findings"].size(), 1u);
  EXPECT_EQ(plan["findings"][0]["code"], "no_tool");
  EXPECT_EQ(plan["findings"][0]["places"], nlohmann::json::parse(R"(["A"])"));
  EXPECT_TRUE(plan["findings"][0]["by"].is_null());
  EXPECT_NE(plan["findings"][0]["text"].get<std::string>().find("buy the reamer"),
            std::string::npos);
}

TEST(PlanWord, NamesCollisionsAndPieces) {
  const Scratch scratch;
  ordered_json document = heldPlate();
  setupOf(document)["parallels"] =
      ordered_json::parse(R"([{"jaw": "fixed", "thick": "1/8", "tall": "1", "gap": "11/16"}])");
  setupOf(document)["pieces"] =
      ordered_json::parse(R"([{"name": "1", "x": "2.1"}, {"name": "2", "x": "1.99"}])");
  setupOf(document)["stock"] = {{"left", "1/32"}};
  const std::string file = scratch.write("p.inchwright", document.dump());
  const Spoken spoken = say({"plan", file, "--json"});
  EXPECT_EQ(spoken.status, kFindings);
  const auto plan = spoken.json()["plans"][0];
  std::map<std::string, int> codes;
  for (const auto& finding : plan["findings"]) ++codes[finding["code"].get<std::string>()];
  EXPECT_EQ(codes, (std::map<std::string, int>{{"parallel", 2}, {"stock_too_small", 1}}));
  EXPECT_EQ(plan["findings"][0]["by_ticks"], 2'540'000'000LL * 7 / 32);
  EXPECT_EQ(plan["pieces"][0]["cleans_up"], true);
  EXPECT_EQ(plan["pieces"][0]["left"]["right"], "0.0690");  // 2.1 − 2 − 1/32 = .06875
  EXPECT_EQ(plan["pieces"][1]["cleans_up"], false);
  EXPECT_LT(plan["pieces"][1]["left"]["right_ticks"], 0);
  const Spoken words = say({"plan", file});
  EXPECT_EQ(words.status, kFindings);
  EXPECT_NE(words.out.find("runs into the parallel at the fixed jaw"), std::string::npos)
      << words.out;
  EXPECT_NE(words.out.find("never drill 1/4"), std::string::npos);
  // The same in `check`, and its exit status.
  const Spoken checked = say({"check", file, "--json"});
  EXPECT_EQ(checked.status, kFindings);
  EXPECT_EQ(checked.json()["parts"][0]["findings"].size(), 3u);
}

TEST(PlanWord, CheckFindsNothingOnASoundPlate) {
  const Scratch scratch;
  const std::string file = scratch.write("p.inchwright", heldPlate().dump());
  const Spoken checked = say({"check", file, "--json"});
  EXPECT_EQ(checked.status, kFine) << checked.out;
  EXPECT_EQ(checked.json()["parts"][0]["findings"].size(), 0u);
}

TEST(PlanWord, BoresByTheDial) {
  const Scratch scratch;
  ordered_json document = heldPlate();
  document["parts"][0]["features"][6] = ordered_json::parse(
      R"({"id": "A", "kind": "hole", "diameter": "5/8", "make": "bore", "limits": "H7"})");
  document["shop"] = ordered_json::parse(
      R"({"boring": {"least": "3/8", "greatest": "2", "dial": "slide", "division": "0.0005"},
          "drills": ["fractional 1/16 to 1/2"], "cutters": []})");
  const Spoken spoken = say({"plan", scratch.write("p.inchwright", document.dump()), "--json"});
  EXPECT_EQ(spoken.status, kFine) << spoken.out;
  const auto hole = holeIn(spoken.json()["plans"][0], "A");
  std::int64_t at = 0;
  for (const auto& step : hole["steps"]) {
    if (step["op"] == "drill") at = step["size_ticks"];
    if (step["op"] != "bore") continue;
    EXPECT_EQ(step["size_ticks"].get<std::int64_t>() - at,
              2 * step["dial_ticks"].get<std::int64_t>());
    EXPECT_EQ(step["measure"], true);
    at = step["size_ticks"];
  }
  EXPECT_GE(at, hole["limits_ticks"][0].get<std::int64_t>());
  EXPECT_LE(at, hole["limits_ticks"][1].get<std::int64_t>());
  EXPECT_EQ(hole["go"], "0.6250");
}

ordered_json slotted() {
  ordered_json document = heldPlate();
  ordered_json& part = document["parts"][0];
  part["features"].push_back({{"id", "S"},
                              {"kind", "slot"},
                              {"axis", "x"},
                              {"width", ".250"},
                              {"length", "3/4"},
                              {"depth", "1/8"}});
  part["readings"].push_back(
      {{"id", "s1"}, {"axis", "x"}, {"from", "L"}, {"to", "S"}, {"text", "1"}});
  part["readings"].push_back(
      {{"id", "s2"}, {"axis", "y"}, {"from", "F"}, {"to", "S"}, {"text", "3/8"}});
  return document;
}

TEST(PlanWord, SaysWhereTheCutterGoes) {
  const Scratch scratch;
  const std::string file = scratch.write("p.inchwright", slotted().dump());
  const Spoken spoken = say({"plan", file});
  for (const char* words :
       {"S down the middle: X +0.7190 to +1.2815, Y +0.3750",
        "S along the wall: X +0.7500 to +1.2500, Y +0.4065", "slots when every drill has had whole",
        "Room wanted from zero: X 0.0000 to 1.5000", "Nobody said how far the table travels"}) {
    EXPECT_NE(spoken.out.find(words), std::string::npos) << words << spoken.out;
  }
  const auto sheet = say({"table", file, "--json"}).json()["sheets"][0];
  ASSERT_EQ(sheet["milled"].size(), 1u);
  EXPECT_EQ(sheet["milled"][0]["id"], "S");
  EXPECT_EQ(sheet["milled"][0]["tool"], "end mill 3/16");
  ASSERT_EQ(sheet["milled"][0]["runs"].size(), 3u);
  EXPECT_EQ(sheet["milled"][0]["runs"][0]["from"][0], "0.7190");
  EXPECT_EQ(sheet["milled"][0]["runs"][0]["from_ticks"][0], 1'825'625'000);
  EXPECT_NE(say({"table", file}).out.find("its centre goes as told below"), std::string::npos);
}

TEST(PlanWord, SaysPiecesPutInOtherwise) {
  const Scratch scratch;
  ordered_json document = heldPlate();
  setupOf(document)["pieces"] = {{{"name", "1"}, {"x", "2 1/16"}, {"y", "1 1/2"}}};
  const std::string file = scratch.write("p.inchwright", document.dump());
  const auto plan = say({"plan", file, "--json"}).json()["plans"][0];
  ASSERT_EQ(plan["put_in_otherwise"].size(), 2u);
  const auto& ends = plan["put_in_otherwise"][0];
  EXPECT_EQ(ends["how"], "end_for_end");
  EXPECT_EQ(ends["at_stop"], "right");
  EXPECT_EQ(ends["left_at_stop"], "0.0625");  // the piece is 2 1/16, the part 2
  EXPECT_EQ(ends["left_at_stop_ticks"], 158'750'000);
  EXPECT_EQ(ends["left_at_jaw"], "0.0000");
  EXPECT_EQ(ends["left_at_jaw_ticks"], 0);
  EXPECT_EQ(ends["rows"][0]["id"], "A");
  EXPECT_EQ(ends["rows"][0]["x"], "1.5625");
  EXPECT_EQ(ends["rows"][0]["y"], "0.7500");
  EXPECT_NE(say({"plan", file}).out.find("Turned over along the jaws"), std::string::npos);
}

TEST(PlanWord, RefusesWhatItCannotUse) {
  const Scratch scratch;
  EXPECT_EQ(say({"plan"}).status, kUnusable);
  EXPECT_EQ(say({"plan", "nowhere.inchwright"}).status, kUnusable);
  ordered_json document = heldPlate();
  document["shop"] = {{"drills", {"7"}}};
  const Spoken refused = say({"plan", scratch.write("p.inchwright", document.dump())});
  EXPECT_EQ(refused.status, kUnusable);
  EXPECT_NE(refused.err.find("/shop/drills/0"), std::string::npos) << refused.err;
  EXPECT_NE(say({"plan", "--help"}).out.find("inchwright plan FILE"), std::string::npos);
}

}  // namespace
}  // namespace inchwright::app
