// ranges, budget and adjust: statuses, keys, figures worked out by hand, what is refused.

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <sstream>

#include "core/measure/length.h"
#include "tests/app/words/rail.h"
#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

using nlohmann::json;
using Texts = std::vector<std::string>;

class ToleranceWords : public testing::Test {
 protected:
  Spoken ask(const char* word, const nlohmann::ordered_json& job, const Texts& options) {
    Texts args{word, scratch_.write("rail.inchwright", job.dump())};
    args.insert(args.end(), options.begin(), options.end());
    return say(args);
  }
  void expectRefused(const char* word, const Texts& options, const char* says) {
    const Spoken spoken = ask(word, rail(), options);
    EXPECT_EQ(spoken.status, 2) << says;
    EXPECT_TRUE(spoken.out.empty()) << says;
    EXPECT_NE(spoken.err.find(says), std::string::npos) << spoken.err;
    EXPECT_EQ(std::count(spoken.err.begin(), spoken.err.end(), '\n'), 1) << spoken.err;
  }

  const Texts fromL_{"--from", "L", "--axis", "x"};
  const Texts fromLJson_{"--from", "L", "--axis", "x", "--json"};
  Scratch scratch_;
};

json entryOf(const json& list, const char* id) {
  for (const json& one : list) {
    if (one["id"] == id) return one;
  }
  ADD_FAILURE() << "nothing for " << id;
  return json::object();
}

TEST_F(ToleranceWords, HelpFitsAnOrdinaryTerminal) {
  for (const std::string word : {"stack", "ranges", "budget", "adjust"}) {
    const Spoken spoken = say({word, "--help"});
    EXPECT_EQ(spoken.status, 0);
    EXPECT_EQ(spoken.out.rfind("inchwright " + word + " FILE", 0), 0u) << spoken.out;
    EXPECT_NE(spoken.out.find("Exit status:"), std::string::npos);
    std::istringstream lines(spoken.out);
    for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 96u) << line;
  }
}

TEST_F(ToleranceWords, RangesWidenAlongTheChain) {
  const Spoken spoken = ask("ranges", rail(), fromLJson_);
  ASSERT_EQ(spoken.status, 0) << spoken.err;
  const json all = spoken.json();
  EXPECT_EQ(all["from"], "L");
  ASSERT_EQ(all["ranges"].size(), 4u);
  const json a = entryOf(all["ranges"], "A");
  EXPECT_EQ(a["nominal"], "0.5000");
  EXPECT_EQ(a["low"], "0.4980");
  EXPECT_EQ(a["high"], "0.5020");
  EXPECT_EQ(a["nominal_ticks"], 1'270'000'000);
  EXPECT_EQ(a["low_ticks"], 1'264'920'000);
  EXPECT_EQ(a["high_ticks"], 1'275'080'000);
  const json r = entryOf(all["ranges"], "R");
  EXPECT_EQ(r["low"], "1.9950");
  EXPECT_EQ(r["high"], "2.0050");
  EXPECT_EQ(r["high_by"], json({"r1", "r2", "r3"}));
  EXPECT_EQ(entryOf(all["ranges"], "L")["high_ticks"], 0);
  EXPECT_FALSE(all.contains("contradiction"));
}

// All readings agree; the overall is merely closer than the chain. The true range is the overall's.
TEST_F(ToleranceWords, RangesAreShownOutwards) {
  const Spoken spoken = ask("ranges", railWith({{0, "1/2 ±1/64"}}), fromLJson_);
  const json a = entryOf(spoken.json()["ranges"], "A");
  EXPECT_EQ(a["nominal"], "0.5000");
  EXPECT_EQ(a["low"], "0.4840");
  EXPECT_EQ(a["high"], "0.5160");
  const Spoken lines = ask("ranges", railWith({{0, "1/2 ±1/64"}}), fromL_);
  EXPECT_NE(lines.out.find("0.4840    0.5160  -0.0160  +0.0160"), std::string::npos) << lines.out;
}

TEST_F(ToleranceWords, ARedundantPrintThatAgreesIsNoFinding) {
  const auto job = railWith({{3, "2.000 ±.003"}});
  const Spoken spoken = ask("ranges", job, fromLJson_);
  ASSERT_EQ(spoken.status, 0) << spoken.err;
  const json r = entryOf(spoken.json()["ranges"], "R");
  EXPECT_EQ(r["low"], "1.9970");
  EXPECT_EQ(r["high_by"], json({"r4"}));
  ASSERT_EQ(spoken.json()["unassured"].size(), 1u);
  EXPECT_EQ(spoken.json()["unassured"][0]["reading"], "r4");
  const Spoken lines = ask("ranges", job, fromL_);
  EXPECT_EQ(lines.status, 0);
  EXPECT_NE(lines.out.find("2.000 ±.003 from L to R allows 1.9970 to 2.0030, but"),
            std::string::npos)
      << lines.out;
}

TEST_F(ToleranceWords, TolerancesThatContradictAreAFinding) {
  const auto job = railWith({{3, "2.010 ±.003"}});
  const Spoken spoken = ask("ranges", job, fromLJson_);
  EXPECT_EQ(spoken.status, 1);
  const json all = spoken.json();
  std::set<std::string> readings;
  for (const json& one : all["contradiction"]) readings.insert(one.get<std::string>());
  EXPECT_EQ(readings, (std::set<std::string>{"r1", "r2", "r3", "r4"}));
  EXPECT_FALSE(all.contains("ranges"));
  EXPECT_NE(ask("ranges", job, fromL_).out.find("can't all hold"), std::string::npos);
}

// A miss that the tolerances cover: the ranges stand, and the clash is the finding.
// As in DOE-HDBK-1016/2-93, Fig. 8: the nominals close, and the steps may add to more than the
// overall allows. All four letter their tolerances; where one does not it is loose dimensioning.
TEST_F(ToleranceWords, CheckNamesTolerancesThatCantAllHold) {
  const auto steps =
      railWith({{0, ".5 +.1 -0"}, {1, "1 +.1 -0"}, {2, ".5 +.1 -0"}, {3, "2 +.1 -0"}});
  const Spoken lines = ask("check", steps, {});
  EXPECT_EQ(lines.status, 1);
  EXPECT_NE(
      lines.out.find(
          "tolerances along x: 2 +.1 -0 from L to R allows 2.0000 to 2.1000, but .5 +.1 -0 from "
          "L to A, 1 +.1 -0 from A to B and .5 +.1 -0 from B to R can make it 2.3000: 0.2000 too "
          "much"),
      std::string::npos)
      << lines.out;
  const json part = ask("check", steps, {"--json"}).json()["parts"][0];
  ASSERT_EQ(part["tolerances"].size(), 1u);
  EXPECT_EQ(part["tolerances"][0]["axis"], "x");
  EXPECT_EQ(part["tolerances"][0]["reading"], "r4");
  EXPECT_EQ(part["clashes"], json::array());
  const auto loose = railWith({{0, ".5"}, {1, "1 +.1 -0"}, {2, ".5 +.1 -0"}, {3, "2 +.1 -0"}});
  EXPECT_EQ(ask("check", loose, {"--json"}).json()["parts"][0]["tolerances"], json::array());
  EXPECT_EQ(ask("check", rail(), {}).out.find("tolerances along"), std::string::npos);
  // The nominals close within what rounding takes, the limits don't meet at all.
  const auto apart = railWith({{0, ".500 +.002 -0"}, {3, "2.000 +0 -.002"}, {1, "1.001 +.001 -0"}});
  const json found = ask("check", apart, {"--json"}).json()["parts"][0];
  EXPECT_TRUE(!found["clashes"].empty() || !found["tolerances"].empty()) << found;
}

TEST_F(ToleranceWords, RangesOfAPrintThatClashesButCanHold) {
  const Spoken spoken = ask("ranges", railWith({{3, "2.004 ±.003"}}), fromLJson_);
  EXPECT_EQ(spoken.status, 1);
  const json r = entryOf(spoken.json()["ranges"], "R");
  EXPECT_EQ(r["low"], "2.0010");
  EXPECT_EQ(r["high"], "2.0050");
}

TEST_F(ToleranceWords, RangesRefuse) {
  expectRefused("ranges", {"--axis", "x"}, "--from");
  expectRefused("ranges", {"--from", "L"}, "--axis");
  expectRefused("ranges", {"--from", "L", "--axis", "q"}, "no axis");
  expectRefused("ranges", {"--from", "Q", "--axis", "x"}, "no place Q");
  expectRefused("ranges", {"--from", "L", "--axis", "z"}, "along z");
  expectRefused("ranges", {"--from", "L", "--axis", "x", "--part", "Clock"}, "Clock");
  expectRefused("ranges", {"--from", "L", "--axis", "x", "--to", "R"}, "--to");
}

// r3 lets B and R stray by half of .001 each; of r2's .002 that leaves A .0015.
TEST_F(ToleranceWords, BudgetSharesTheTightestEvenly) {
  const Spoken spoken = ask("budget", rail(), {"--json"});
  ASSERT_EQ(spoken.status, 0) << spoken.err;
  const json all = spoken.json();
  EXPECT_EQ(all["part"], "Rail");
  EXPECT_EQ(all["setup"], "1");
  EXPECT_EQ(all["not_guaranteed"], json::array());
  const json zero = entryOf(all["budget"], "L");
  EXPECT_EQ(zero["target"], "0.0000");
  EXPECT_EQ(zero["plus_minus"], "0.0000");
  const json a = entryOf(all["budget"], "A");
  EXPECT_EQ(a["axis"], "x");
  EXPECT_EQ(a["target"], "0.5000");
  EXPECT_EQ(a["target_ticks"], 1'270'000'000);
  EXPECT_EQ(a["plus_minus"], "0.0015");
  EXPECT_EQ(a["plus_minus_ticks"], 3'810'000);
  EXPECT_EQ(a["left_after_rounding_ticks"], 3'810'000);
  EXPECT_EQ(entryOf(all["budget"], "B")["plus_minus"], "0.0005");
  EXPECT_EQ(entryOf(all["budget"], "R")["plus_minus"], "0.0005");
  const Spoken lines = ask("budget", rail(), {});
  EXPECT_NE(lines.out.find("±0.0015"), std::string::npos) << lines.out;
}

// A target between two steps is dialled at the nearer one; what that costs comes off the budget.
TEST_F(ToleranceWords, BudgetCountsRoundingIn) {
  const json all = ask("budget", railWith({{0, ".5002 ±.002"}}), {"--json"}).json();
  const json a = entryOf(all["budget"], "A");
  EXPECT_EQ(a["target"], "0.5000");
  EXPECT_EQ(a["target_ticks"], 1'270'508'000);
  EXPECT_EQ(a["left_after_rounding_ticks"], 3'810'000 - 508'000);
}

// At ±.001 a coordinate, B and R can't keep r3 to ±.001.
TEST_F(ToleranceWords, BudgetNamesWhatTheMachineCantGuarantee) {
  nlohmann::ordered_json job = rail();
  job["machine"]["accuracy"] = "0.001";
  const Spoken spoken = ask("budget", job, {"--json"});
  EXPECT_EQ(spoken.status, 1);
  const json all = spoken.json();
  EXPECT_EQ(all["not_guaranteed"], json({"r3"}));
  EXPECT_EQ(entryOf(all["budget"], "A")["plus_minus"], "0.0010");
  EXPECT_EQ(entryOf(all["budget"], "B")["plus_minus"], "0.0010");
  EXPECT_EQ(entryOf(all["budget"], "R")["plus_minus"], nullptr);
  const Spoken lines = ask("budget", job, {});
  EXPECT_NE(lines.out.find(".500 ±.001 from B to R is not guaranteed this way"), std::string::npos)
      << lines.out;
}

TEST_F(ToleranceWords, BudgetRefuses) {
  expectRefused("budget", {"--setup", "2"}, "there is 1");
  expectRefused("budget", {"--part", "Clock"}, "Clock");
  expectRefused("budget", {"--axis", "x"}, "--axis");
  nlohmann::ordered_json job = rail();
  job["parts"][0]["setups"].push_back({{"name", "other"}});
  const Spoken spoken = ask("budget", job, {});
  EXPECT_EQ(spoken.status, 2);
  EXPECT_NE(spoken.err.find("say which setup: 1 and other"), std::string::npos) << spoken.err;
}

// The chain says 2.000 with σ = √(2² + 2² + 1²)/3 = .001, the overall 2.003 with σ = .001: they
// meet half way, each .0015 from what it said. Σ (v/σ)² = 4.5 with one to spare.
TEST_F(ToleranceWords, AdjustMeetsHalfWay) {
  const Spoken spoken = ask("adjust", railWith({{3, "2.003 ±.003"}}), {"--axis", "x", "--json"});
  ASSERT_EQ(spoken.status, 0) << spoken.err;
  const json all = spoken.json();
  EXPECT_EQ(all["freedom"], 1);
  EXPECT_NEAR(all["s0"].get<double>(), std::sqrt(4.5), 1e-9);
  EXPECT_NEAR(all["chance"].get<double>(), 0.033895, 1e-5);  // χ² of 4.5 with 1
  EXPECT_EQ(all["blunder"], nullptr);
  // Held is the first by name, A.
  const json l = entryOf(all["adjusted"], "L");
  const json r = entryOf(all["adjusted"], "R");
  EXPECT_NEAR(r["value_ticks"].get<double>() - l["value_ticks"].get<double>(),
              2.0015 * Length::kTicksPerInch, 2);
  EXPECT_EQ(entryOf(all["adjusted"], "A")["value"], "0.0000");
  ASSERT_EQ(all["residuals"].size(), 4u);
  for (const json& one : all["residuals"]) {
    EXPECT_TRUE(one["reading"] != "r4" || one["value_ticks"] == -3'810'000) << one;
  }
}

TEST_F(ToleranceWords, AdjustHoldsThePlaceItIsTold) {
  const Spoken spoken =
      ask("adjust", railWith({{3, "2.003 ±.003"}}), {"--axis", "x", "--from", "L", "--json"});
  const json r = entryOf(spoken.json()["adjusted"], "R");
  EXPECT_EQ(r["value"], "2.0015");
  // σ = .001 twice: σ/√2.
  EXPECT_NEAR(r["sd_ticks"].get<double>(), 2'540'000 / std::sqrt(2.0), 2);
  const Spoken lines = ask("adjust", railWith({{3, "2.003 ±.003"}}), {"--axis", "x"});
  EXPECT_NE(lines.out.find("Rail, adjusted along x from A\n"), std::string::npos);
}

TEST_F(ToleranceWords, AdjustNamesABlunder) {
  nlohmann::ordered_json job = rail();
  nlohmann::ordered_json& readings = job["parts"][0]["readings"];
  readings[3]["text"] = "2.000 ±.003";
  readings.push_back(
      {{"id", "r5"}, {"axis", "x"}, {"from", "L"}, {"to", "R"}, {"text", "2.030 ±.003"}});
  const Spoken spoken = ask("adjust", job, {"--axis", "x", "--json"});
  EXPECT_EQ(spoken.status, 1) << spoken.err;
  EXPECT_EQ(spoken.json()["blunder"], "r5");
  // The two others, σ = .001 either, say 2.000.
  const Spoken lines = ask("adjust", job, {"--axis", "x"});
  EXPECT_NE(lines.out.find("  measure 2.030 ±.003 from L to R again: the others make it 2.0000\n"
                           "  behind it: least squares, s0 "),
            std::string::npos)
      << lines.out;
  EXPECT_EQ(lines.out.find("more than needed"), std::string::npos) << lines.out;
  // So they do when it counts for more than they.
  EXPECT_NE(ask("adjust", job, {"--axis", "x", "--weight", "r5=2"}).out.find("make it 2.0000\n"),
            std::string::npos);
}

// .500, 1.000 and .500 against 2.003, all ±.002 but the third, basic: the miss of .003 goes over
// the other three.
TEST_F(ToleranceWords, AdjustMovesNoBasicFigure) {
  const auto job = railWith({{1, "1.000 ±.002"}, {2, ".500 BSC"}, {3, "2.003 ±.002"}});
  const json all = ask("adjust", job, fromLJson_).json();
  EXPECT_EQ(entryOf(all["adjusted"], "A")["value"], "0.5010");
  EXPECT_EQ(entryOf(all["adjusted"], "B")["value"], "1.5020");
  EXPECT_EQ(entryOf(all["adjusted"], "R")["value"], "2.0020");
  EXPECT_EQ(entryOf(all["adjusted"], "R")["value_ticks"].get<std::int64_t>() -
                entryOf(all["adjusted"], "B")["value_ticks"].get<std::int64_t>(),
            1'270'000'000);
  EXPECT_EQ(all["residuals"].size(), 3u);  // none for r3
}

TEST_F(ToleranceWords, AdjustHoldsAndWeighs) {
  const auto job = railWith({{1, "1.000 ±.002"}, {2, ".500 ±.002"}, {3, "2.003 ±.002"}});
  // R stays at the print's 2.0000 from A: L is .500 before A, or .503 by r4.
  const json held =
      ask("adjust", job, {"--axis", "x", "--hold", "A", "--hold", "R", "--json"}).json();
  EXPECT_EQ(entryOf(held["adjusted"], "A")["value"], "0.0000");
  EXPECT_EQ(entryOf(held["adjusted"], "R")["value"], "1.5000");
  EXPECT_EQ(entryOf(held["adjusted"], "R")["sd_ticks"], 0);
  EXPECT_EQ(entryOf(held["adjusted"], "L")["value"], "-0.5015");
  // r4 counts three times: three quarters of its way.
  const json weighed =
      ask("adjust", job,
          {"--axis", "x", "--hold", "A", "--hold", "R", "--weight", "r4=3", "--json"})
          .json();
  EXPECT_EQ(entryOf(weighed["adjusted"], "L")["value_ticks"], -1'275'715'000);
}

TEST_F(ToleranceWords, AdjustSaysItInAMachinistsWords) {
  const auto clash = railWith({{3, "2.010 ±.003"}});
  const Spoken bad = ask("adjust", clash, {"--axis", "x"});
  EXPECT_NE(bad.out.find("  1 figure more than needed: they disagree by more than their tolerances "
                         "explain; measure again what was moved\n"
                         "  behind it: least squares, s0 7.07, by chance greater in under 0.1 %\n"),
            std::string::npos)
      << bad.out;
  EXPECT_NE(bad.out.find("r1       L to A      .500 ±.002    0.5020   +0.0020"), std::string::npos)
      << bad.out;
  // Three say 2.000, 2.002 and 2.012, σ = .001 each: the last is farthest off, no blunder yet.
  auto three = railWith({{3, "2.002 ±.003"}});
  three["parts"][0]["readings"].push_back(
      {{"id", "r5"}, {"axis", "x"}, {"from", "L"}, {"to", "R"}, {"text", "2.004 ±.003"}});
  const Spoken first = ask("adjust", three, {"--axis", "x"});
  EXPECT_NE(first.out.find("  2 figures more than needed: they disagree by more than their "
                           "tolerances explain; measure again"),
            std::string::npos)
      << first.out;
  const Spoken good = ask("adjust", railWith({{3, "2.001 ±.003"}}), {"--axis", "x"});
  EXPECT_NE(good.out.find("1 figure more than needed: they agree as well as their "
                          "tolerances let one expect; work to these places\n  behind it: "),
            std::string::npos)
      << good.out;
  const Spoken none = ask("adjust", rail(), {"--axis", "x"});
  EXPECT_NE(none.out.find("each figure stands as lettered"), std::string::npos) << none.out;
}

TEST_F(ToleranceWords, AdjustTakesTheUntouchedSamples) {
  for (const char* name : {"front_plate", "back_plate", "bracket", "barrel_bridge", "pallet_cock",
                           "pendulum_hanger"}) {
    for (const char* axis : {"x", "y"}) {
      const std::string file =
          std::string(INCHWRIGHT_SOURCE_DIR "/samples/") + name + ".inchwright";
      const Spoken spoken = say({"adjust", file, "--axis", axis, "--json"});
      EXPECT_LE(spoken.status, 1) << name << ' ' << axis << ": " << spoken.err;
      if (spoken.status == 2) continue;
      // A print that adds up is not moved; in the one that does not, the loop shares what is over.
      std::set<std::string> moved;
      const json told = spoken.json();
      EXPECT_FALSE(told["residuals"].empty()) << name << ' ' << axis;
      for (const json& one : told["residuals"]) {
        if (one["value_ticks"] != 0) moved.insert(one["reading"]);
      }
      const bool clashes = std::string(name) == "barrel_bridge" && *axis == 'x';
      EXPECT_EQ(moved,
                clashes ? std::set<std::string>({"r2", "r3", "r6", "r7"}) : std::set<std::string>())
          << name << ' ' << axis;
    }
  }
}

TEST_F(ToleranceWords, AdjustRefuses) {
  expectRefused("adjust", {}, "--axis");
  expectRefused("adjust", {"--axis", "y"}, "no reading stands along this axis");
  expectRefused("adjust", {"--axis", "x", "--from", "Q"}, "no place Q");
  expectRefused("adjust", {"--axis", "x", "--part", "Clock"}, "Clock");
  expectRefused("adjust", {"--axis", "x", "--hold", "L", "--hold", "Q"}, "does not place Q");
  expectRefused("adjust", {"--axis", "x", "--weight", "r3"}, "no weight");
  expectRefused("adjust", {"--axis", "x", "--weight", "r3=0"}, "no weight");
  expectRefused("adjust", {"--axis", "x", "--weight", "r9=2"}, "called r9");
}

}  // namespace
}  // namespace inchwright::app
