#include <gtest/gtest.h>

#include <map>

#include "core/say/table_csv.h"
#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

std::map<std::string, nlohmann::json> rowsById(const nlohmann::json& sheet) {
  std::map<std::string, nlohmann::json> rows;
  for (const nlohmann::json& row : sheet["rows"]) rows[row["id"]] = row;
  return rows;
}

TEST(TableWord, GivesEveryKeyOfTheContractWithFiguresByHand) {
  const Scratch scratch;
  const std::string plate = scratch.write("p.inchwright", soundPlate());
  const Spoken spoken = say({"table", plate, "--setup", "1", "--json"});
  EXPECT_EQ(spoken.status, kFine) << spoken.err;
  const nlohmann::json all = spoken.json();
  EXPECT_EQ(all["inchwright"], 1);
  ASSERT_EQ(all["sheets"].size(), 1u);
  const nlohmann::json& sheet = all["sheets"][0];
  EXPECT_EQ(sheet["part"], "Plate");
  EXPECT_EQ(sheet["setup"], "1");
  EXPECT_EQ(sheet["unit"], "in");
  EXPECT_EQ(sheet["step"], "0.0005");
  EXPECT_TRUE(sheet["zero"].is_string());
  std::map<std::string, nlohmann::json> rows = rowsById(sheet);
  ASSERT_EQ(rows.size(), 3u);
  // From the middle of the 2 in: A at 3/8 − 1; B 1 3/16 further; C 1/3 further than A, no whole
  // tick.
  EXPECT_EQ(rows["A"]["x"], "-0.6250");
  EXPECT_EQ(rows["A"]["y"], "0.0000");
  EXPECT_EQ(rows["A"]["x_ticks"], -1'587'500'000);
  EXPECT_EQ(rows["A"]["exact"], true);
  EXPECT_EQ(rows["B"]["x"], "0.5625");
  EXPECT_EQ(rows["B"]["x_ticks"], 1'428'750'000);
  EXPECT_EQ(rows["C"]["x_ticks"], -740'833'333);
  EXPECT_EQ(rows["C"]["x"], "-0.2915");
  EXPECT_EQ(rows["C"]["y"], "-0.5000");
  EXPECT_EQ(rows["C"]["exact"], false);
  EXPECT_EQ(rows["A"]["kind"], "hole");
  EXPECT_NE(rows["A"]["size"].get<std::string>().find("1/4"), std::string::npos);
  EXPECT_TRUE(rows["A"]["note"].is_string());
  for (const char* key : {"edges", "unplaced", "touch_off", "checks", "warnings"}) {
    EXPECT_TRUE(sheet[key].is_array()) << key;
  }
}

TEST(TableWord, JsonAndAsJsonAreTheSame) {
  const std::string plate = sample("front_plate");
  EXPECT_EQ(say({"table", plate, "--json"}).out, say({"table", plate, "--as=json"}).out);
  EXPECT_EQ(say({"table", plate, "--json", "--as", "csv"}).status, kUnusable);
}

TEST(TableWord, ConvertsUnitAndStepAndRoundsOnce) {
  const Scratch scratch;
  const std::string plate = scratch.write("p.inchwright", soundPlate());
  const nlohmann::json sheet =
      say({"table", plate, "--setup", "1", "--unit", "mm", "--step", "0.005", "--json"})
          .json()["sheets"][0];
  EXPECT_EQ(sheet["unit"], "mm");
  EXPECT_EQ(sheet["step"], "0.005");
  // 9/16 in is 14.2875 mm: half a step, away from zero.
  EXPECT_EQ(rowsById(sheet)["B"]["x"], "14.290");
  EXPECT_EQ(rowsById(sheet)["B"]["x_ticks"], 1'428'750'000);
}

TEST(TableWord, PrintsAllSetupsOrTheOneNamed) {
  const Scratch scratch;
  const std::string plate = scratch.write("p.inchwright", soundPlate());
  EXPECT_EQ(say({"table", plate, "--json"}).json()["sheets"].size(), 2u);
  const nlohmann::json turned =
      say({"table", plate, "--setup", "turned", "--json"}).json()["sheets"];
  ASSERT_EQ(turned.size(), 1u);
  // Turned a quarter anticlockwise: the machine's X is −y of the part, its Y is x.
  EXPECT_EQ(rowsById(turned[0])["A"]["x"], "-0.7500");
  EXPECT_EQ(rowsById(turned[0])["A"]["y"], "0.3750");
  const Spoken none = say({"table", plate, "--setup", "3"});
  EXPECT_EQ(none.status, kUnusable);
  EXPECT_NE(none.err.find("there are: 1, turned"), std::string::npos) << none.err;
}

TEST(TableWord, APartWithoutSetupsGetsOneAndFindingsAreTold) {
  const Scratch scratch;
  const Spoken spoken = say({"table", scratch.write("p.inchwright", kClashingPlate), "--json"});
  EXPECT_EQ(spoken.status, kFindings);
  const nlohmann::json sheet = spoken.json()["sheets"][0];
  EXPECT_EQ(rowsById(sheet)["A"]["x"], "0.3750");
  ASSERT_EQ(sheet["unplaced"].size(), 1u);
  EXPECT_EQ(sheet["unplaced"][0]["id"], "C");
}

TEST(TableWord, TextIsAlignedAndSigned) {
  const Scratch scratch;
  const Spoken spoken = say({"table", scratch.write("p.inchwright", soundPlate()), "--setup", "1"});
  EXPECT_NE(spoken.out.find("Plate, setup 1: top up, turned 0°\n"), std::string::npos);
  EXPECT_NE(spoken.out.find("inches at a step of 0.0005\n"), std::string::npos);
  std::vector<std::size_t> ends;
  std::istringstream lines(spoken.out);
  for (std::string line; std::getline(lines, line);) {
    for (const std::string figure : {"-0.6250", "+0.5625", "-0.2915"}) {
      const std::size_t at = line.find(figure);
      if (line.rfind("  A ", 0) == 0 || line.rfind("  B ", 0) == 0 || line.rfind("  C ", 0) == 0) {
        if (at != std::string::npos) ends.push_back(at);
      }
    }
  }
  ASSERT_EQ(ends.size(), 3u) << spoken.out;
  EXPECT_TRUE(ends[0] == ends[1] && ends[1] == ends[2]) << spoken.out;
}

/// A plain reader of RFC 4180, for checking only.
std::vector<std::vector<std::string>> readCsv(const std::string& text) {
  std::vector<std::vector<std::string>> lines{{""}};
  bool inside = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    std::string& field = lines.back().back();
    if (inside) {
      if (text[i] != '"') {
        field += text[i];
      } else if (i + 1 < text.size() && text[i + 1] == '"') {
        field += text[++i];
      } else {
        inside = false;
      }
    } else if (text[i] == '"') {
      inside = true;
    } else if (text[i] == ',') {
      lines.back().emplace_back();
    } else if (text.compare(i, 2, "\r\n") == 0) {
      ++i;
      lines.push_back({""});
    } else {
      field += text[i];
    }
  }
  lines.pop_back();
  return lines;
}

TEST(TableWord, CsvHoldsQuotesCommasAndLineEnds) {
  SetupTable table;
  table.part = "Plate, \"front\"";
  table.setup = "1\r\n2";
  TableRow row;
  row.id = row.feature = "A";
  row.x.text = "-0.5000";
  row.y.text = "0.2500";
  table.rows = {row};
  Part part;
  part.features.emplace_back().id = "A";
  part.features[0].note = "says \"ream\", thrice";
  const std::vector<std::vector<std::string>> lines = readCsv(tablesAsCsv({{part, table}}));
  ASSERT_EQ(lines.size(), 2u);
  ASSERT_EQ(lines[0].size(), lines[1].size());
  std::map<std::string, std::string> by;
  for (std::size_t i = 0; i < lines[0].size(); ++i) by[lines[0][i]] = lines[1][i];
  EXPECT_EQ(by["part"], table.part);
  EXPECT_EQ(by["setup"], table.setup);
  EXPECT_EQ(by["x"], "-0.5000");
  EXPECT_EQ(by["note"], part.features[0].note);
}

TEST(TableWord, CsvHasARowForEveryRowOfTheJson) {
  const std::string plate = sample("front_plate");
  std::size_t rows = 0;
  const nlohmann::json all = say({"table", plate, "--json"}).json();
  for (const nlohmann::json& sheet : all["sheets"]) rows += sheet["rows"].size();
  EXPECT_GT(rows, 12u);
  EXPECT_EQ(readCsv(say({"table", plate, "--as", "csv"}).out).size(), rows + 1);
}

TEST(TableWord, WhatCantBeUsedIsSaidInOneLine) {
  const std::string plate = sample("front_plate");
  for (const std::vector<std::string>& more :
       std::vector<std::vector<std::string>>{{"--as", "poem"},
                                             {"--unit", "ell"},
                                             {"--step", "0"},
                                             {"--step", "x"},
                                             {"--part", "?"}}) {
    std::vector<std::string> args{"table", plate};
    args.insert(args.end(), more.begin(), more.end());
    const Spoken spoken = say(args);
    SCOPED_TRACE(spoken.err);
    EXPECT_EQ(spoken.status, kUnusable);
    EXPECT_EQ(spoken.out, "");
    EXPECT_EQ(std::count(spoken.err.begin(), spoken.err.end(), '\n'), 1);
  }
}

}  // namespace
}  // namespace inchwright::app
