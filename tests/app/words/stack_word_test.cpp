#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "tests/app/words/rail.h"
#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

using nlohmann::json;
using Texts = std::vector<std::string>;

class StackWord : public testing::Test {
 protected:
  Spoken stack(const Texts& options) { return stackOf(rail(), options); }
  Spoken stackOf(const nlohmann::ordered_json& job, const Texts& options) {
    Texts args{"stack", scratch_.write("rail.inchwright", job.dump())};
    args.insert(args.end(), options.begin(), options.end());
    return say(args);
  }

  const Texts fromAToR_{"--from", "A", "--to", "R", "--axis", "x"};
  Texts fromAToR(const Texts& more) const {
    Texts all = fromAToR_;
    all.insert(all.end(), more.begin(), more.end());
    return all;
  }
  Scratch scratch_;
};

TEST_F(StackWord, AddsTheChainUp) {
  const Spoken spoken = stack(fromAToR({"--json"}));
  ASSERT_EQ(spoken.status, 0) << spoken.err;
  const json all = spoken.json();
  EXPECT_EQ(all["inchwright"], 1);
  EXPECT_EQ(all["part"], "Rail");
  EXPECT_EQ(all["nominal"], "1.5000");
  EXPECT_EQ(all["nominal_ticks"], 3'810'000'000);
  EXPECT_EQ(all["worst"], json({"1.4970", "1.5030"}));
  EXPECT_EQ(all["worst_ticks"], json({3'802'380'000, 3'817'620'000}));
  // √(2² + 1²) = 2.2361 thou is 5 679 613 ticks.
  EXPECT_EQ(all["rss_ticks"], json({3'810'000'000 - 5'679'613, 3'810'000'000 + 5'679'613}));
  ASSERT_EQ(all["members"].size(), 2u);
  EXPECT_EQ(all["members"][0]["reading"], "r2");
  EXPECT_EQ(all["members"][0]["sign"], 1);
  EXPECT_EQ(all["members"][0]["plus"], "0.0020");
  EXPECT_EQ(all["members"][0]["minus"], "0.0020");
  EXPECT_NEAR(all["members"][0]["share"].get<double>(), 0.8, 1e-12);
  EXPECT_EQ(all["unassured"], json::array());
  EXPECT_FALSE(all.contains("required"));
  EXPECT_FALSE(all.contains("from_zero"));
}

// √(2² + 1²) · 1.5 = 3.354 thou, but both together come to no more than 3.
TEST_F(StackWord, WidensToNoMoreThanTheWorstCaseAndSaysSo) {
  const json held = stack(fromAToR({"--json"})).json();
  EXPECT_EQ(held["inflated_ticks"], held["worst_ticks"]);
  EXPECT_EQ(held["inflated_held"], true);
  const std::string lines = stack(fromAToR_).out;
  EXPECT_NE(
      lines.find("widened by 1.5   1.4970 to 1.5030  (-0.0030 +0.0030), held to the worst case"),
      std::string::npos)
      << lines;
  // 2.2361 · 1.25 = 2.795 thou stays below.
  const json free = stack(fromAToR({"--factor", "1.25", "--json"})).json();
  EXPECT_EQ(free["inflated_held"], false);
  EXPECT_EQ(free["inflated_ticks"], json({3'810'000'000 - 7'099'516, 3'810'000'000 + 7'099'516}));
  const std::string freely = stack(fromAToR({"--factor", "1.25"})).out;
  EXPECT_NE(freely.find("widened by 1.25  1.497"), std::string::npos) << freely;
  EXPECT_EQ(freely.find("held to"), std::string::npos);
}

TEST_F(StackWord, BackwardsIsNegative) {
  const json all = stack({"--from=R", "--to=A", "--axis=x", "--json", "--factor", "2"}).json();
  EXPECT_EQ(all["nominal"], "-1.5000");
  EXPECT_EQ(all["worst"], json({"-1.5030", "-1.4970"}));
  EXPECT_EQ(all["members"][0]["reading"], "r3");
  EXPECT_EQ(all["members"][0]["sign"], -1);
  EXPECT_EQ(all["inflation"], 2.0);
}

TEST_F(StackWord, SaysItInLines) {
  const Spoken spoken = stack(fromAToR_);
  EXPECT_EQ(spoken.status, 0);
  EXPECT_NE(spoken.out.find("A to R along x: 1.5000"), std::string::npos) << spoken.out;
  EXPECT_NE(spoken.out.find("1.4970 to 1.5030  (-0.0030 +0.0030)"), std::string::npos);
  EXPECT_NE(spoken.out.find("80 %"), std::string::npos);
  EXPECT_EQ(spoken.out.find("has to be"), std::string::npos);
}

TEST_F(StackWord, FromZeroTakesTwoCoordinatesAsTheyAreHeld) {
  const Spoken spoken = stack(fromAToR({"--from-zero", "1", "--held", "±.001", "--json"}));
  ASSERT_EQ(spoken.status, 0) << spoken.err;
  const json all = spoken.json();
  EXPECT_EQ(all["worst"], json({"1.4970", "1.5030"}));
  const json made = all["from_zero"];
  EXPECT_EQ(made["setup"], "1");
  EXPECT_EQ(made["nominal"], "1.5000");
  EXPECT_EQ(made["worst"], json({"1.4980", "1.5020"}));
  ASSERT_EQ(made["members"].size(), 2u);
  EXPECT_EQ(made["members"][0]["reading"], "A");
  EXPECT_EQ(made["members"][0]["from"], "zero");
  EXPECT_EQ(made["members"][0]["nominal"], "0.5000");
  EXPECT_EQ(made["members"][0]["sign"], -1);
  EXPECT_EQ(made["members"][1]["plus"], "0.0010");
  // The place that zero is on has no error of its own.
  const json fromL = stack({"--from", "L", "--to", "R", "--axis", "x", "--from-zero", "1", "--held",
                            ".001", "--json"})
                         .json();
  EXPECT_EQ(fromL["from_zero"]["worst"], json({"1.9990", "2.0010"}));
}

// r3 leaves B and R ±.0005 each (half of ±.001); r2 then leaves A ±.0015 of its ±.002.
TEST_F(StackWord, FromZeroTakesTheBudgetsOtherwise) {
  const Spoken spoken = stack(fromAToR({"--from-zero", "1", "--json"}));
  const json made = spoken.json()["from_zero"];
  EXPECT_EQ(made["members"][0]["plus"], "0.0015");
  EXPECT_EQ(made["members"][1]["plus"], "0.0005");
  EXPECT_EQ(made["worst"], json({"1.4980", "1.5020"}));
  const Spoken lines = stack(fromAToR({"--from-zero", "1"}));
  EXPECT_NE(lines.out.find("as drawn"), std::string::npos) << lines.out;
  EXPECT_NE(lines.out.find("from zero of 1"), std::string::npos);
  const std::string worst = lines.out.substr(lines.out.find("worst case"));
  const std::string line = worst.substr(0, worst.find('\n'));
  EXPECT_NE(line.find("1.4970 to 1.5030"), std::string::npos) << line;
  EXPECT_NE(line.find("1.4980 to 1.5020"), std::string::npos) << line;
}

// M is only midway, so nothing limits it: the machine's accuracy counts, and the finder's error.
TEST_F(StackWord, FromZeroFallsBackOnTheMachine) {
  nlohmann::ordered_json job = rail();
  job["machine"]["finder_error"] = "0.0003";
  job["parts"][0]["features"].push_back({{"id", "M"}, {"kind", "edge"}, {"axis", "x"}});
  job["parts"][0]["understood"] = {
      {{"kind", "midway"}, {"axis", "x"}, {"of", "M"}, {"between", {"L", "R"}}, {"stated", true}}};
  const Texts fromLToM{"--from", "L", "--to", "M", "--axis", "x", "--from-zero", "1", "--json"};
  const Spoken unknown = stackOf(job, fromLToM);
  EXPECT_EQ(unknown.status, 2);
  EXPECT_NE(unknown.err.find("say how closely it is held"), std::string::npos) << unknown.err;
  job["machine"]["accuracy"] = "0.0004";
  const Spoken known = stackOf(job, fromLToM);
  ASSERT_EQ(known.status, 0) << known.err;
  EXPECT_EQ(known.json()["from_zero"]["worst_ticks"],
            json({2'540'000'000 - 1'778'000, 2'540'000'000 + 1'778'000}));
}

TEST_F(StackWord, AGapBeyondItsLimitsIsAFinding) {
  const Spoken spoken = stack({"--gap", "play", "--json"});
  EXPECT_EQ(spoken.status, 1) << spoken.err;
  const json all = spoken.json();
  EXPECT_EQ(all["gap"], "play");
  EXPECT_EQ(all["nominal"], "0.0020");
  EXPECT_EQ(all["worst"], json({"-0.0010", "0.0050"}));
  EXPECT_EQ(all["required"], json({"0.0010", "0.0040"}));
  EXPECT_EQ(all["keeps"]["worst"], false);
  EXPECT_EQ(all["keeps"]["rss"], false);
  EXPECT_EQ(all["members"][0]["part"], "Rail");
  EXPECT_EQ(all["members"][0]["reading"], "r2");
  EXPECT_EQ(all["members"][1]["reading"], "block");
  EXPECT_EQ(all["members"][1]["sign"], -1);
  const Spoken lines = stack({"--gap", "play"});
  EXPECT_NE(lines.out.find("may be 0.0020 too little or 0.0010 too much"), std::string::npos)
      << lines.out;
  EXPECT_NE(lines.out.find("0.0010 to 0.0040"), std::string::npos);
}

// An arm and a rail in one gap: the arm is 1.500 ±.003 in two steps, of which its zero needs but
// its ends.
nlohmann::ordered_json railAndArm() {
  nlohmann::ordered_json job = rail();
  job["parts"].push_back(nlohmann::ordered_json::parse(R"json({
    "name": "Arm",
    "features": [
      {"id": "S", "kind": "edge", "axis": "x", "side": "left"},
      {"id": "M", "kind": "edge", "axis": "x"},
      {"id": "E", "kind": "edge", "axis": "x", "side": "right"}
    ],
    "readings": [
      {"id": "a1", "axis": "x", "from": "S", "to": "M", "text": ".750 ±.001"},
      {"id": "a2", "axis": "x", "from": "M", "to": "E", "text": ".750 ±.002"}
    ],
    "setups": [{"name": "lathe", "face": "top", "zero": {"x": {"at": "S"}}},
               {"name": "1", "face": "top", "zero": {"x": {"at": "E"}}}]
  })json"));
  job["gaps"].push_back(nlohmann::ordered_json::parse(R"json(
      {"name": "arm", "least": "0", "members": [
        {"part": "Rail", "axis": "x", "from": "A", "to": "R", "sign": "+"},
        {"part": "Arm", "axis": "x", "from": "S", "to": "E", "sign": "-"}]})json"));
  return job;
}

// The rail: A ±.0015 and R ±.0005 by their budgets (see FromZeroTakesTheBudgetsOtherwise). The
// arm from S: E and M share a2's ±.002, so ±.001 for E.
TEST_F(StackWord, AGapIsMadeFromTheZerosOfItsParts) {
  const Spoken both =
      stackOf(railAndArm(), {"--gap", "arm", "--from-zero", "Rail=1,Arm=lathe", "--json"});
  EXPECT_EQ(both.status, 1) << both.err;
  const json all = both.json();
  EXPECT_EQ(all["worst"], json({"-0.0060", "0.0060"}));
  const json made = all["from_zero"];
  EXPECT_EQ(made["worst"], json({"-0.0030", "0.0030"}));
  EXPECT_EQ(made["setups"], json({{"Rail", "1"}, {"Arm", "lathe"}}));
  EXPECT_EQ(made["keeps"]["worst"], false);
  ASSERT_EQ(made["members"].size(), 4u);
  EXPECT_EQ(made["members"][0]["reading"], "A");
  EXPECT_EQ(made["members"][0]["from"], "zero");
  EXPECT_EQ(made["members"][0]["part"], "Rail");
  EXPECT_EQ(made["members"][3]["part"], "Arm");
  EXPECT_EQ(made["members"][3]["sign"], -1);
  // One name for all of them: the arm's zero is then on its other end.
  const json one = stackOf(railAndArm(), {"--gap", "arm", "--from-zero", "1", "--json"}).json();
  EXPECT_EQ(one["from_zero"]["setups"], json({{"Rail", "1"}, {"Arm", "1"}}));
  // S and M then share a1's ±.001.
  EXPECT_EQ(one["from_zero"]["worst"], json({"-0.0025", "0.0025"}));
}

TEST_F(StackWord, PartsWithoutANamedZeroAreAsDrawn) {
  const Spoken spoken = stackOf(railAndArm(), {"--gap", "arm", "--from-zero", "Arm=lathe"});
  EXPECT_NE(spoken.out.find("from zero of Arm lathe, the rest as drawn"), std::string::npos)
      << spoken.out;
  EXPECT_NE(spoken.out.find("-0.0040 to 0.0040"), std::string::npos) << spoken.out;
  const Spoken held = stackOf(
      railAndArm(), {"--gap", "arm", "--from-zero", "Arm=lathe", "--held", ".0002", "--json"});
  EXPECT_EQ(held.json()["from_zero"]["worst_ticks"], json({-32 * 254'000, 32 * 254'000}));
}

// Where two distances from one zero meet, the place between them cancels.
TEST_F(StackWord, WhatLiesBetweenTwoDistancesFromOneZeroCancels) {
  nlohmann::ordered_json job = railAndArm();
  job["gaps"].push_back(nlohmann::ordered_json::parse(R"json(
      {"name": "steps", "members": [
        {"part": "Rail", "axis": "x", "from": "A", "to": "B", "sign": "+"},
        {"part": "Rail", "axis": "x", "from": "B", "to": "R", "sign": "+"}]})json"));
  const Texts call{"--gap", "steps", "--from-zero", "1", "--held", ".001", "--json"};
  EXPECT_EQ(stackOf(job, call).json()["from_zero"]["members"].size(), 2u);
  EXPECT_EQ(stackOf(job, call).json()["from_zero"]["worst"], json({"1.4980", "1.5020"}));
  job["parts"][0]["quantity"] = 2;  // now each member is another piece
  EXPECT_EQ(stackOf(job, call).json()["from_zero"]["worst"], json({"1.4960", "1.5040"}));
}

TEST_F(StackWord, WhatIsMissingForAGapFromZeroIsSaid) {
  struct Missing {
    const char* zero;
    const char* says;
  };
  for (const Missing& one : std::initializer_list<Missing>{
           {"lathe", "the gap runs through Rail, which has no setup “lathe”; it has 1"},
           {"Arm=mill", "the gap runs through Arm, which has no setup “mill”; it has lathe and 1"},
           {"Clock=1", "the job has no part “Clock”"},
           {"Arm=1,Arm=lathe", "Arm is named twice"},
           {"1,lathe", "name no part"},
           {"", "has no setup “”"}}) {
    const Spoken spoken = stackOf(railAndArm(), {"--gap", "arm", "--from-zero", one.zero});
    EXPECT_EQ(spoken.status, 2) << one.zero;
    EXPECT_NE(spoken.err.find(one.says), std::string::npos) << spoken.err;
  }
  const Spoken elsewhere = stackOf(railAndArm(), {"--gap", "play", "--from-zero", "Arm=1"});
  EXPECT_NE(elsewhere.err.find("gap play measures nothing in Arm"), std::string::npos)
      << elsewhere.err;
  EXPECT_EQ(stackOf(railAndArm(), {"--gap", "arm", "--held", ".001"}).status, 2);
  nlohmann::ordered_json noZero = railAndArm();
  noZero["parts"][1]["setups"][0]["zero"] = nlohmann::ordered_json::object();
  noZero["parts"][1]["setups"][0]["face"] = "left";
  const Spoken face = stackOf(noZero, {"--gap", "arm", "--from-zero", "Arm=lathe"});
  EXPECT_EQ(face.status, 2);
  EXPECT_NE(face.err.find("Arm: setup lathe has no zero along x"), std::string::npos) << face.err;
}

TEST_F(StackWord, LimitsOfTheCallGoBeforeThoseOfTheGap) {
  const Spoken spoken = stack({"--gap", "play", "--least=0", "--greatest", "1/64", "--json"});
  EXPECT_EQ(spoken.status, 1);
  EXPECT_EQ(spoken.json()["required_ticks"], json({0, 39'687'500}));
  // The greatest is the gap's own .004.
  EXPECT_EQ(stack({"--gap", "play", "--least", "0"}).status, 1);
  nlohmann::ordered_json job = rail();
  job["gaps"][0]["greatest"] = ".005";
  EXPECT_EQ(stackOf(job, {"--gap", "play"}).status, 1);
  job["gaps"][0].erase("least");
  const Spoken keeps = stackOf(job, {"--gap", "play"});
  EXPECT_EQ(keeps.status, 0) << keeps.out;
  EXPECT_NE(keeps.out.find("keeps to it"), std::string::npos);
  EXPECT_NE(keeps.out.find("0.0050 or less"), std::string::npos) << keeps.out;
}

// By 1 nothing is added to √5 thou.
TEST_F(StackWord, AFactorOfOneAddsNothing) {
  const json plain = stack(fromAToR({"--factor", "1", "--json"})).json();
  EXPECT_EQ(plain["inflated_ticks"], plain["rss_ticks"]);
  EXPECT_EQ(stack(fromAToR({"--factor", "0.99"})).status, 2);
}

TEST_F(StackWord, LimitsJudgeAStackOfOnePartToo) {
  EXPECT_EQ(stack(fromAToR({"--least", "1.497", "--greatest", "1.503"})).status, 0);
  EXPECT_EQ(stack(fromAToR({"--least", "1.4971"})).status, 1);
  EXPECT_EQ(stack(fromAToR({"--greatest", "1.5029"})).status, 1);
  EXPECT_EQ(stack(fromAToR({"--least", "1.5", "--greatest", "1.5"})).status, 1) << "one size alone";
  EXPECT_EQ(stack(fromAToR({"--greatest", "1.5029", "--from-zero", "1", "--held", "0"})).status, 1);
}

// A reading of 1/64 either way: 1.500 may come out at 1.515625. At a step of .0005 that is
// no 1.5155.
TEST_F(StackWord, WorstCasesAreShownOutwards) {
  const auto job = railWith({{1, "1 ±1/64"}, {2, ".500 BSC"}});
  const Spoken lines = stackOf(job, fromAToR({"--greatest", "1.5155"}));
  EXPECT_EQ(lines.status, 1);
  EXPECT_NE(lines.out.find("1.4840 to 1.5160  (-0.0160 +0.0160)"), std::string::npos) << lines.out;
  EXPECT_NE(lines.out.find("may be 0.0005 too much"), std::string::npos) << lines.out;
  const json all = stackOf(job, fromAToR({"--json"})).json();
  EXPECT_EQ(all["nominal"], "1.5000");
  EXPECT_EQ(all["worst"], json({"1.4840", "1.5160"}));
  EXPECT_EQ(all["members"][0]["plus"], "0.0160");
  EXPECT_EQ(all["members"][0]["minus"], "0.0160");
}

// A limit between two steps, and the worst case between the same two: shown finer until they
// differ.
TEST_F(StackWord, FiguresNeverContradictTheVerdict) {
  const auto job = railWith({{1, "1 ±1/64"}, {2, ".500 BSC"}});
  const Spoken keeps = stackOf(job, fromAToR({"--greatest", "1.5157"}));
  EXPECT_EQ(keeps.status, 0);
  EXPECT_NE(keeps.out.find("to 1.51565  ("), std::string::npos) << keeps.out;
  EXPECT_NE(keeps.out.find("1.51570 or less"), std::string::npos) << keeps.out;
  const Spoken over = stackOf(job, fromAToR({"--greatest", "1.5156"}));
  EXPECT_EQ(over.status, 1);
  EXPECT_NE(over.out.find("may be 0.0005 too much"), std::string::npos) << over.out;
  EXPECT_NE(over.out.find("1.5155 or less"), std::string::npos) << over.out;
}

// Normal with the limits at 3 sd: sd = √5 / 3 = .74536 thou. From .002 it is 1.3416 sd down to
// .001 (8.986 % below) and 2.6833 sd up to .004 (0.364 % above).
TEST_F(StackWord, SimulatesWithTheSameFiguresEachTime) {
  const Texts call{"--gap", "play", "--runs", "100000", "--seed", "7", "--json"};
  const Spoken spoken = stack(call);
  ASSERT_EQ(spoken.status, 1) << spoken.err;
  EXPECT_EQ(stack(call).out, spoken.out);
  const json simulation = spoken.json()["simulation"];
  EXPECT_EQ(simulation["runs"], 100000);
  EXPECT_EQ(simulation["seed"], 7);
  EXPECT_EQ(simulation["spread"], "normal");
  EXPECT_NEAR(simulation["below"].get<double>(), 0.08986, 0.004);
  EXPECT_NEAR(simulation["above"].get<double>(), 0.00364, 0.001);
  EXPECT_NEAR(simulation["out"].get<double>(),
              simulation["below"].get<double>() + simulation["above"].get<double>(), 1e-12);
  // The same in words, to a tenth of a percent.
  const std::string words = stack({"--gap", "play", "--runs", "100000", "--seed", "7"}).out;
  std::size_t at = words.find("out of limits: ");
  ASSERT_NE(at, std::string::npos) << words;
  for (const char* share : {"out", "below", "above"}) {
    at = words.find_first_of("0123456789", at);
    EXPECT_NEAR(figureAt(std::string_view(words).substr(at)), simulation[share].get<double>() * 100,
                0.0501)
        << share;
    at = words.find('%', at);
  }
  EXPECT_NEAR(simulation["sd_ticks"].get<double>(), std::sqrt(5.0) / 3 * 2'540'000, 20'000);
  ASSERT_EQ(simulation["percentiles"].size(), 5u);
  EXPECT_EQ(simulation["percentiles"][2]["percent"], 50);
  EXPECT_EQ(simulation["percentiles"][2]["value"], "0.0020");
  const json bars = simulation["histogram"]["runs"];
  EXPECT_EQ(std::accumulate(bars.begin(), bars.end(), 0,
                            [](int sum, const json& one) { return sum + one.get<int>(); }),
            100000);
  const json otherSeed =
      stack({"--gap", "play", "--runs", "100000", "--seed", "8", "--json"}).json()["simulation"];
  EXPECT_NE(otherSeed["histogram"], simulation["histogram"]);
}

TEST_F(StackWord, SimulationInLinesHasItsHistogram) {
  const Spoken spoken =
      stack(fromAToR({"--runs", "20000", "--spread", "rectangular", "--from-zero", "1"}));
  EXPECT_EQ(spoken.status, 0);
  EXPECT_NE(spoken.out.find("A to R along x, as drawn: 20000 put together at random, spread "
                            "rectangular, seed 1"),
            std::string::npos)
      << spoken.out;
  EXPECT_NE(spoken.out.find("A to R along x, from zero of 1: 20000"), std::string::npos);
  EXPECT_NE(spoken.out.find("########################################\n"), std::string::npos);
  EXPECT_EQ(spoken.out.find("out of limits"), std::string::npos);
  const Spoken limited = stack({"--gap", "play", "--runs", "5000", "--spread", "triangular"});
  EXPECT_NE(limited.out.find("out of limits: "), std::string::npos) << limited.out;
}

// Of a stack with one limit only that one may be missed: half of all lies below the middle.
TEST_F(StackWord, OneLimitAloneIsCountedToo) {
  for (const bool least : {true, false}) {
    const json simulation =
        stack(fromAToR({"--runs", "20000", least ? "--least" : "--greatest", "1.500", "--json"}))
            .json()["simulation"];
    EXPECT_NEAR(simulation["out"].get<double>(), 0.5, 0.02);
    EXPECT_EQ(simulation[least ? "below" : "above"], simulation["out"]);
    EXPECT_EQ(simulation[least ? "above" : "below"], 0);
  }
}

// A stack of ±.0002 at a step of .0005: sixteen classes that would all begin at .5000.
TEST_F(StackWord, LabelsOfTheHistogramDiffer) {
  const auto job = railWith({{2, ".500 ±.0002"}});
  const Spoken spoken = stackOf(job, {"--from", "B", "--to", "R", "--axis", "x", "--runs", "5000",
                                      "--spread", "rectangular"});
  EXPECT_NE(spoken.out.find("  0.499800 "), std::string::npos) << spoken.out;
  EXPECT_NE(spoken.out.find("  0.499825 "), std::string::npos) << spoken.out;
}

// A print that dimensions an overall beside its chain is over-dimensioned, not wrong: nothing
// clashes, so it is said and no more.
TEST_F(StackWord, ALooseOverallIsSaidButIsNoFinding) {
  const Spoken spoken =
      stackOf(railWith({{3, "2.000 ±.003"}}), {"--from", "L", "--to", "R", "--axis", "x"});
  EXPECT_EQ(spoken.status, 0) << spoken.out;
  EXPECT_NE(spoken.out.find("2.000 ±.003 from L to R allows 1.9970 to 2.0030, but"),
            std::string::npos)
      << spoken.out;
}

TEST_F(StackWord, AClashIsStillAFinding) {
  EXPECT_EQ(stackOf(railWith({{3, "2.100 ±.003"}}), fromAToR_).status, 1);
  EXPECT_EQ(stackOf(railWith({{3, "2.100 ±.003"}}), {"--gap", "play", "--least", "-1"}).status, 2);
  nlohmann::ordered_json job = railWith({{3, "2.100 ±.003"}});
  job["gaps"][0].erase("least");
  job["gaps"][0].erase("greatest");
  EXPECT_EQ(stackOf(job, {"--gap", "play"}).status, 1);
}

TEST_F(StackWord, WhatCantBeUsedIsRefusedInOneLine) {
  const struct {
    Texts options;
    const char* says;
  } cases[] = {
      {{"--from", "A", "--to", "R"}, "--axis"},
      {{"--from", "A", "--axis", "x"}, "--to"},
      {{"--to", "A", "--axis", "x"}, "--from"},
      {{"--from", "A", "--to", "R", "--axis", "w"}, "no axis"},
      {{"--from", "A", "--to", "Q", "--axis", "x"}, "no place Q"},
      {{"--from", "A", "--to", "R", "--axis", "y"}, "along y"},
      {fromAToR({"--factor", "0.9"}), "--factor"},
      {fromAToR({"--factor", "wide"}), "--factor"},
      {fromAToR({"--from-zero", "2"}), "there is 1"},
      {fromAToR({"--held", ".001"}), "goes with --from-zero"},
      {fromAToR({"--from-zero", "1", "--held", "close"}), "--held"},
      {fromAToR({"--from-zero", "1", "--held", "-.001"}), "below 0"},
      {fromAToR({"--seed", "2"}), "goes with --runs"},
      {fromAToR({"--spread", "normal"}), "goes with --runs"},
      {fromAToR({"--runs", "0"}), "--runs"},
      {fromAToR({"--runs", "many"}), "--runs"},
      {fromAToR({"--runs", "1000000001"}), "--runs"},
      {fromAToR({"--runs", "9999999999999999999"}), "--runs"},
      {fromAToR({"--runs", "10", "--seed", "-1"}), "--seed"},
      {fromAToR({"--runs", "10", "--spread", "even"}), "triangular"},
      {fromAToR({"--least", "2", "--greatest", "1"}), "less than the least"},
      {fromAToR({"--least", "wide"}), "--least"},
      {{"--gap", "fit"}, "there is play and lost"},
      {{"--gap", "lost"}, "/gaps/1/members/0/to"},
      {{"--gap", "play", "--from", "A"}, "--from"},
      {{"--gap", "play", "--axis", "x"}, "--axis"},
      {{"--gap", "play", "--part", "Rail"}, "--part"},
  };
  for (const auto& one : cases) {
    const Spoken spoken = stack(one.options);
    EXPECT_EQ(spoken.status, 2) << one.says;
    EXPECT_TRUE(spoken.out.empty()) << one.says;
    EXPECT_NE(spoken.err.find(one.says), std::string::npos) << spoken.err;
    EXPECT_EQ(std::count(spoken.err.begin(), spoken.err.end(), '\n'), 1) << spoken.err;
  }
}

TEST_F(StackWord, CheckNamesGapsThatCantBeAddedUp) {
  const std::string file = scratch_.write("rail.inchwright", rail().dump());
  const Spoken spoken = say({"check", file, "--json"});
  EXPECT_EQ(spoken.status, 1);
  ASSERT_EQ(spoken.json()["gaps"].size(), 1u);
  EXPECT_EQ(spoken.json()["gaps"][0]["place"], "/gaps/1/members/0/to");
  EXPECT_NE(say({"check", file}).out.find("/gaps/1/members/0/to"), std::string::npos);
  EXPECT_EQ(say({"check", file, "--part", "Rail"}).status, 0);
  nlohmann::ordered_json whole = rail();
  whole["gaps"].erase(1);
  const Spoken good = say({"check", scratch_.write("whole.inchwright", whole.dump()), "--json"});
  EXPECT_EQ(good.json()["gaps"], json::array());
  // The other gap can be added up, and may not keep to its limits: that is a finding too.
  EXPECT_EQ(good.status, 1);
  ASSERT_EQ(good.json()["together"].size(), 1u);
  EXPECT_NE(good.json()["together"][0].get<std::string>().find("may not keep to it"),
            std::string::npos);
}

}  // namespace
}  // namespace inchwright::app
