// Holes whose place is not found by their own sheet's coordinates: what table, plan, sheet and page
// say of them, and in which order they come.
#include <gtest/gtest.h>

#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

using nlohmann::ordered_json;

/// Two plates with four holes each: A is drilled once through both, B of the front one is spotted
/// through the back one's, C is drilled on assembly, D waits for what it has to suit.
ordered_json twoPlates() {
  ordered_json job = ordered_json::parse(R"({
  "inchwright": 1,
  "job": {"title": "Trial plates", "unit": "in"},
  "machine": {"unit": "in", "step": "0.0005", "finder": "0.200"},
  "parts": []})");
  for (const char* name : {"Back plate", "Front plate"}) {
    ordered_json part = ordered_json::parse(R"({
      "name": "", "material": "brass",
      "features": [
        {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
        {"id": "R", "kind": "edge", "axis": "x", "side": "right"},
        {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
        {"id": "K", "kind": "edge", "axis": "y", "side": "back"},
        {"id": "U", "kind": "edge", "axis": "z", "side": "bottom"},
        {"id": "T", "kind": "edge", "axis": "z", "side": "top"},
        {"id": "A", "kind": "hole", "diameter": "1/4", "make": "ream"},
        {"id": "B", "kind": "hole", "diameter": "1/8"},
        {"id": "C", "kind": "hole", "diameter": "1/8"},
        {"id": "D", "kind": "hole", "diameter": "3/16", "make": "ream"}
      ],
      "readings": [
        {"id": "r1", "axis": "x", "from": "L", "to": "R", "text": "4"},
        {"id": "r2", "axis": "y", "from": "F", "to": "K", "text": "2"},
        {"id": "r3", "axis": "z", "from": "U", "to": "T", "text": "1/8"},
        {"id": "r4", "axis": "x", "from": "L", "to": "A", "text": "1"},
        {"id": "r5", "axis": "x", "from": "L", "to": "B", "text": "2"},
        {"id": "r6", "axis": "x", "from": "L", "to": "C", "text": "2 1/2"},
        {"id": "r7", "axis": "x", "from": "L", "to": "D", "text": "3"}
      ],
      "understood": [{"kind": "in_line", "axis": "y", "of": ["A", "B", "C", "D"]}],
      "setups": [{"name": "1", "face": "top", "zero": {"x": {"at": "L"}, "y": {"at": "F"}}}]
    })");
    part["name"] = name;
    part["readings"].push_back(
        {{"id", "r8"}, {"axis", "y"}, {"from", "F"}, {"to", "A"}, {"text", "1"}});
    job["parts"].push_back(part);
  }
  ordered_json& back = job["parts"][0]["features"];
  ordered_json& front = job["parts"][1]["features"];
  back[6]["locate"] = "pair";
  front[6]["locate"] = "pair";
  front[6]["mate"] = {{"part", "Back plate"}, {"place", "A"}};
  front[7]["locate"] = "mate";
  front[7]["mate"] = {{"part", "Back plate"}, {"place", "B"}};
  front[8]["locate"] = "assembly";
  front[8]["mate"] = {{"part", "Back plate"}, {"place", "C"}};
  front[9]["locate"] = "suit";
  return job;
}

class Located : public testing::Test {
 protected:
  Located() { write(); }
  void write() { file_ = scratch_.write("two.inchwright", job_.dump()); }
  std::map<std::string, nlohmann::json> rowsOf(const char* part) const {
    std::map<std::string, nlohmann::json> rows;
    const auto table = say({"table", file_, "--part", part, "--json"}).json();
    for (const auto& row : table["sheets"][0]["rows"]) {
      order_.push_back(row["id"]);
      rows[row["id"]] = row;
    }
    return rows;
  }

  ordered_json job_ = twoPlates();
  Scratch scratch_;
  std::string file_;
  mutable std::vector<std::string> order_;
};

TEST_F(Located, EachSaysHowItsPlaceIsFoundAndThroughWhat) {
  auto back = rowsOf("Back plate"), front = rowsOf("Front plate");
  const auto note = [](const nlohmann::json& row) { return row["note"].get<std::string>(); };
  EXPECT_NE(note(back["A"]).find("clamped to A of Front plate and drilled once by this sheet"),
            std::string::npos)
      << note(back["A"]);
  EXPECT_TRUE(back["A"]["by_coordinates"]);
  EXPECT_NE(note(front["A"]).find("drilled together with A of Back plate by that part's sheet"),
            std::string::npos)
      << note(front["A"]);
  EXPECT_FALSE(front["A"]["by_coordinates"]);
  EXPECT_NE(note(front["B"]).find("spotted through B of Back plate"), std::string::npos);
  EXPECT_FALSE(front["B"]["by_coordinates"]);
  EXPECT_NE(note(front["C"]).find("drilled on assembly, once C of Back plate is in place"),
            std::string::npos);
  EXPECT_FALSE(front["C"]["by_coordinates"]);
  EXPECT_TRUE(front["D"]["by_coordinates"]);
  EXPECT_NE(note(front["D"]).find("its size waits"), std::string::npos);
}

TEST_F(Located, TwoLikeHolesOnePairEachNameTheirOwnMate) {
  for (auto& part : job_["parts"]) {
    part["features"][7] = part["features"][6];
    part["features"][7]["id"] = "B";
  }
  job_["parts"][1]["features"][7]["mate"]["place"] = "B";
  write();
  auto back = rowsOf("Back plate");
  for (const std::string id : {"A", "B"}) {
    const std::string note = back[id]["note"];
    EXPECT_NE(note.find("clamped to " + id + " of Front plate"), std::string::npos) << note;
  }
}

TEST_F(Located, WhatIsMadeElsewhereComesLast) {
  rowsOf("Front plate");
  ASSERT_EQ(order_.size(), 4u);
  EXPECT_EQ(order_.front(), "D");
}

TEST_F(Located, TextGivesTheExpectedPlaceInBrackets) {
  const std::string text = say({"table", file_, "--part", "Front plate"}).out;
  EXPECT_NE(text.find("(+2.0000)"), std::string::npos) << text;
  EXPECT_EQ(say({"table", file_, "--part", "Back plate"}).out.find("(+"), std::string::npos);
}

TEST_F(Located, ThePageForATabletSaysSoWithItsSteps) {
  const std::string out = scratch_.path("s.html");
  say({"sheet", file_, "--part", "Front plate", "--out", out});
  const std::string page = Scratch::read(out);
  EXPECT_NE(page.find("not by coordinates"), std::string::npos);
  EXPECT_NE(page.find("(+2.0000)"), std::string::npos);
}

TEST_F(Located, AMateThatIsNotThereIsSaid) {
  job_["parts"][1]["features"][7]["mate"]["place"] = "Q";
  write();
  EXPECT_NE(
      say({"table", file_, "--part", "Front plate"}).out.find("the job has no Q of Back plate"),
      std::string::npos);
}

TEST_F(Located, APairLeadsOnceAndGoesThroughBoth) {
  const auto plan = say({"plan", file_, "--part", "Back plate", "--json"}).json();
  for (const auto& hole : plan["plans"][0]["holes"]) {
    if (hole["id"] != "A") continue;
    for (const auto& step : hole["steps"]) {
      if (step["op"] != "drill") continue;
      EXPECT_EQ(step["full_depth"], "0.2815");  // 1/8 and 1/8 and 1/32 below: .28125
    }
  }
}

}  // namespace
}  // namespace inchwright::app
