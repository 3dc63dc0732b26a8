// The tools kept for all jobs on the desk count for the words as they do there.
#include <gtest/gtest.h>

#include <QFile>
#include <QSettings>

#include "app/session/desk.h"
#include "app/session/preferences.h"
#include "core/document/document.h"
#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

constexpr std::string_view kReamedPlate = R"({
  "inchwright": 1,
  "machine": {"unit": "in", "step": "0.0005"},
  "parts": [{
    "name": "Plate",
    "features": [
      {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
      {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
      {"id": "A", "kind": "hole", "diameter": "1/4", "make": "ream"}
    ],
    "readings": [
      {"id": "r1", "axis": "x", "from": "L", "to": "A", "text": "1/2"},
      {"id": "r2", "axis": "y", "from": "F", "to": "A", "text": "3/4"}
    ]
  }]
})";

Shop metricDrills() {
  Shop shop;
  shop.drills = {{*readDrillSet("metric 1 to 10 by 0.1"), {}, {}}};
  return shop;
}

class OwnTools : public testing::Test {
 protected:
  OwnTools() {
    usePrivateHome();
    Preferences::setShop(metricDrills());
  }
  ~OwnTools() override { Preferences::setShop({}); }

  std::string drillIn(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"plan", file_, "--json"};
    words.insert(words.end(), more.begin(), more.end());
    const auto plan = say(words).json();
    for (const auto& step : plan["plans"][0]["holes"][0]["steps"]) {
      if (step["op"] == "drill") return step["tool"];
    }
    return {};
  }

  Scratch scratch_;
  std::string file_ = scratch_.write("p.inchwright", std::string(kReamedPlate));
  std::string kept_ = "kept for all jobs in " + Preferences::file().toStdString();
};

TEST_F(OwnTools, CountWhereTheDocumentCarriesNone) {
  EXPECT_EQ(drillIn(), "6.1 mm");  // 6.35 less 6.1: .0098 in; 6.2 would leave .0059, less than .006
  EXPECT_EQ(drillIn({"--no-shop"}), "C");
  Preferences::setShop({});
  EXPECT_EQ(drillIn(), "C");
}

TEST_F(OwnTools, AreSaidInEveryWordThatGoesByThem) {
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"plan", file_},
        {"check", file_},
        {"table", file_},
        {"sheet", file_, "--out", scratch_.path("s.pdf")},
        {"sheet", file_, "--out", scratch_.path("s.html")}}) {
    EXPECT_NE(say(words).out.find(kept_), std::string::npos) << words[0];
    std::vector<std::string> without = words;
    without.push_back("--no-shop");
    if (words[0] == "sheet") without.push_back("--force");
    const Spoken spoken = say(without);
    EXPECT_LE(spoken.status, kFindings) << words[0] << spoken.err;
    EXPECT_EQ(spoken.out.find("kept for all jobs"), std::string::npos) << words[0];
  }
  for (const char* word : {"plan", "check", "table"}) {
    EXPECT_EQ(say({word, file_, "--json"}).json()["own_tools"], Preferences::file().toStdString());
    EXPECT_FALSE(say({word, file_, "--json", "--no-shop"}).json().contains("own_tools"));
  }
  EXPECT_NE(say({"table", file_}).out.find("6.1 mm"), std::string::npos);
}

TEST_F(OwnTools, TheDocumentsGoBeforeMemberByMember) {
  auto document = nlohmann::ordered_json::parse(kReamedPlate);
  document["shop"] = {{"reamers", nlohmann::json::array()}};
  file_ = scratch_.write("r.inchwright", document.dump());
  const Spoken both = say({"plan", file_});
  EXPECT_NE(both.out.find("Tools: the document's, else those kept"), std::string::npos) << both.out;
  EXPECT_NE(both.out.find("buy the reamer"), std::string::npos);
  document["shop"] = {{"drills", {"letter"}}};
  file_ = scratch_.write("r.inchwright", document.dump());
  EXPECT_EQ(drillIn(), "C");
  EXPECT_EQ(say({"plan", file_}).out.find("kept for all jobs"), std::string::npos);
}

TEST_F(OwnTools, PlanAsTheDeskDoes) {
  Desk desk;
  desk.take(*loadDocument(file_), QString::fromStdString(file_));
  desk.setOwnShop(*Preferences::shop());
  ASSERT_NE(desk.table(), nullptr);
  const auto table = say({"table", file_, "--json"}).json();
  ASSERT_EQ(desk.table()->rows.size(), 1u);
  std::vector<std::string> tools;
  for (const auto& step : table["sheets"][0]["rows"][0]["steps"]) tools.push_back(step["tool"]);
  std::vector<std::string> wanted;
  for (const HoleStep& step : desk.table()->rows[0].plan->steps) wanted.push_back(step.tool);
  EXPECT_EQ(tools, wanted);
}

TEST_F(OwnTools, SpoiltOnesAreToldAndNotPassedOver) {
  QSettings(Preferences::file(), QSettings::IniFormat).setValue("shop", "{\"drills\": [7]}");
  const Spoken refused = say({"plan", file_});
  EXPECT_EQ(refused.status, kUnusable);
  EXPECT_NE(refused.err.find(Preferences::file().toStdString() + ": /drills/0"), std::string::npos)
      << refused.err;
  EXPECT_NE(refused.err.find("--no-shop"), std::string::npos);
  EXPECT_EQ(drillIn({"--no-shop"}), "C");
  // A list, as a text with commas and without quotes is read.
  QSettings(Preferences::file(), QSettings::IniFormat).setValue("shop", QStringList{"{}", "{}"});
  EXPECT_EQ(say({"plan", file_}).status, kUnusable);
}

}  // namespace
}  // namespace inchwright::app
