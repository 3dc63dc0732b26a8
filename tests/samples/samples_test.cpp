// Every document in samples/ is what the README and its print say it is.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <ostream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "core/checks/whole_part.h"
#include "core/document/document.h"
#include "core/kit/difference.h"
#include "core/kit/ways_out.h"
#include "core/measure/writing.h"
#include "core/plan/budget_from_zero.h"
#include "core/plan/gap.h"
#include "core/plan/table.h"
#include "core/say/doubt_words.h"
#include "core/solution/solution.h"
#include "core/turned/lathe_work.h"
#include "tests/support/solved_part.h"

namespace inchwright {
namespace {

// The samples of several parts, which have tests of their own.
const char* const kEndShake = "end_shake";
const char* const kClickWork = "click_work";
// Held by hand in train_samples_test.cpp.
const char* const kWheelTrain = "wheel_train";
const char* const kCock = "cock";
// The one that shows what would go wrong; it has no print.
const char* const kPalletCock = "pallet_cock";

const std::filesystem::path kSamples = std::filesystem::path(INCHWRIGHT_SOURCE_DIR) / "samples";

struct Findings {
  std::string name;
  std::size_t features = 0;
  std::size_t setups = 1;
  std::size_t clashes = 0;
  std::size_t assumed = 0;
  bool draft = false;
};

// What a test is called by, in lists and in reports.
void PrintTo(const Findings& findings, std::ostream* out) {
  *out << findings.name;
}

const std::vector<Findings>& expected() {
  static const std::vector<Findings> kExpected = {
      {"back_plate", 18, 1, 0, 1, true},       {"barrel_bridge", 11, 1, 2, 0, true},
      {"bracket", 12, 2, 0, 0, false},         {"front_plate", 20, 2, 0, 0, false},
      {"pendulum_hanger", 13, 2, 0, 0, false},
  };
  return kExpected;
}

std::string contents(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

Job sample(const std::string& name) {
  auto job = loadDocument(kSamples / (name + ".inchwright"));
  if (!job) {
    ADD_FAILURE() << name << ": " << job.error().place << ": " << job.error().text;
    return {};
  }
  if (job->parts.size() != 1) ADD_FAILURE() << name << " has not one part";
  return *std::move(job);
}

class Sample : public testing::TestWithParam<Findings> {};

void expectWrittenAsTheProgramWritesIt(const std::string& name) {
  const std::string text = contents(kSamples / (name + ".inchwright"));
  ASSERT_FALSE(text.empty());
  const auto job = readDocument(text);
  ASSERT_TRUE(job.ok()) << job.error().place << ": " << job.error().text;
  // Not EXPECT_EQ: two whole documents would be printed.
  const std::string written = writeDocument(*job);
  const auto differs = std::mismatch(text.begin(), text.end(), written.begin(), written.end());
  EXPECT_TRUE(written == text) << "from byte " << differs.first - text.begin() << ": "
                               << std::string(differs.first, text.end()).substr(0, 60);
}

TEST(Samples, TrainAndCockAreWrittenAsTheProgramWritesThem) {
  for (const char* name : {kWheelTrain, kCock}) expectWrittenAsTheProgramWritesIt(name);
}

TEST_P(Sample, IsWrittenAsTheProgramWritesIt) {
  expectWrittenAsTheProgramWritesIt(GetParam().name);
}

TEST_P(Sample, HasTheStatedFindings) {
  const Job job = sample(GetParam().name);
  ASSERT_EQ(job.parts.size(), 1u);
  const Part& part = job.parts[0];
  const Solution solution = solved(part);
  EXPECT_EQ(part.features.size(), GetParam().features);
  EXPECT_EQ(part.setups.size(), GetParam().setups);
  EXPECT_EQ(solution.clashes.size(), GetParam().clashes);
  for (const Loose& loose : solution.loose) ADD_FAILURE() << loose.id << ": " << adviceText(loose);
  std::size_t assumed = 0;
  for (const Doubt& doubt : solution.doubts) {
    if (doubt.key.topic == DoubtTopic::assumed) ++assumed;
    const bool known = doubt.key.topic == DoubtTopic::assumed ||
                       doubt.key.topic == DoubtTopic::alone || doubt.key.topic == DoubtTopic::clash;
    EXPECT_TRUE(known) << doubtText(part, solution, doubt);
  }
  EXPECT_EQ(assumed, GetParam().assumed);
  EXPECT_EQ(solution.isDraft(), GetParam().draft);
}

TEST_P(Sample, EverySetupMakesATable) {
  const Job job = sample(GetParam().name);
  ASSERT_EQ(job.parts.size(), 1u);
  const Part& part = job.parts[0];
  const Solution solution = solved(part);
  for (const inchwright::Setup& setup : part.setups) {
    const auto table = makeTable(job, part, solution, setup);
    ASSERT_TRUE(table.ok()) << setup.name << ": " << table.error().text;
    EXPECT_FALSE(table->rows.empty()) << setup.name;
    EXPECT_TRUE(table->unplaced.empty()) << setup.name;
    for (const TableRow& row : table->rows) {
      const Feature* feature = part.feature(row.feature);
      ASSERT_NE(feature, nullptr);
      EXPECT_TRUE(!feature->is<kind::Hole>() || !row.plan->steps.empty()) << row.id;
    }
  }
}

// Tracings stray by what a hand and a copy do, 1/64 in at most, about where the feature truly is.
TEST_P(Sample, TracingsLieWhereTheFeaturesDo) {
  Job job = sample(GetParam().name);
  ASSERT_EQ(job.parts.size(), 1u);
  Part& part = job.parts[0];
  for (Reading& reading : part.readings) {
    if (GetParam().name != "barrel_bridge" || reading.id != "r3") continue;
    reading.figure = *readLength("1 7/16");
  }
  const Solution solution = solved(part);
  ASSERT_TRUE(solution.clashes.empty());
  const std::map<Axis, Id> origins = {{Axis::x, "L"}, {Axis::y, "F"}, {Axis::z, "U"}};
  for (const Feature& feature : part.features) {
    EXPECT_FALSE(feature.traced.empty()) << feature.id;
    for (const auto& [axis, origin] : origins) {
      const auto traced = tracedAlong(feature, axis);
      if (!traced) continue;
      const auto at = solution.between(origin, feature.id, axis);
      ASSERT_TRUE(at.has_value()) << feature.id;
      EXPECT_NEAR(*traced, at->toDouble() / Length::kTicksPerInch, 1.0 / 64) << feature.id;
    }
  }
}

TEST_P(Sample, HasItsPrint) {
  const std::filesystem::path print = kSamples / "prints" / (GetParam().name + ".png");
  ASSERT_TRUE(std::filesystem::exists(print)) << print;
  EXPECT_EQ(contents(print).substr(0, 8), "\x89PNG\r\n\x1a\n");
  EXPECT_LE(std::filesystem::file_size(print), 300'000u);
}

INSTANTIATE_TEST_SUITE_P(All, Sample, testing::ValuesIn(expected()),
                         [](const auto& one) { return one.param.name; });

TEST(Samples, NoneIsLeftOut) {
  std::set<std::string> found;
  for (const auto& entry : std::filesystem::directory_iterator(kSamples)) {
    if (entry.path().extension() == ".inchwright") found.insert(entry.path().stem().string());
  }
  std::set<std::string> tested;
  for (const Findings& one : expected()) tested.insert(one.name);
  tested.insert(kEndShake);
  tested.insert(kClickWork);
  tested.insert(kPalletCock);
  tested.insert(kWheelTrain);
  tested.insert(kCock);
  EXPECT_EQ(found, tested);
}

struct Place {
  const char* id;
  const char* x;  // a sum by hand, from zero
  const char* y;
};

SetupTable tableOf(const std::string& name, const std::string& setupName) {
  const Job job = sample(name);
  if (job.parts.empty()) return {};
  const Part& part = job.parts[0];
  const Setup* setup = part.setup(setupName);
  if (setup == nullptr) {
    ADD_FAILURE() << name << " has no setup " << setupName;
    return {};
  }
  auto table = makeTable(job, part, solved(part), *setup);
  if (!table) {
    ADD_FAILURE() << name << ": " << table.error().text;
    return {};
  }
  return *std::move(table);
}

void expectPlaces(const SetupTable& table, const std::vector<Place>& places) {
  for (const Place& place : places) {
    const auto row = std::find_if(table.rows.begin(), table.rows.end(),
                                  [&](const TableRow& one) { return one.id == place.id; });
    ASSERT_NE(row, table.rows.end()) << place.id;
    const auto x = readLength(place.x);
    const auto y = readLength(place.y);
    ASSERT_TRUE(x.ok() && y.ok()) << place.id;
    EXPECT_EQ(row->x.value, x->value) << place.id << " x " << row->x.text;
    EXPECT_EQ(row->y.value, y->value) << place.id << " y " << row->y.text;
  }
}

// Zero midway between the sides and at the front edge. Half of 3 7/8 is 1 15/16, so a place
// that is chained from the left edge has 1 15/16 taken off. Chains walked by hand on the print.
TEST(Samples, FrontPlateByHand) {
  const SetupTable table = tableOf("front_plate", "1");
  expectPlaces(table, {{"A", "7/16 - 1 15/16", "7/16"},
                       {"B", "7/16 + 3 - 1 15/16", "7/16"},
                       {"C", "7/16 + 3 - 1 15/16", "7/16 + 5 5/16"},
                       {"D", "7/16 - 1 15/16", "6 1/4 - 1/2"},
                       {"E", "0", "1 1/4"},
                       {"G", "0", "1 1/4 + 1 11/16"},
                       {"H", "13/16", "1 1/4 + 1 11/16 + 1 1/16"},
                       {"J", "-5/8", "6 1/4 - 1 11/32"},
                       {"N", "-5/8 - 11/16", "6 1/4 - 1 11/32"},
                       {"P", "-5/8 + 11/16", "6 1/4 - 1 11/32"},
                       {"Q", "3 7/8 - 9/16 - 1 15/16", "1 1/4 + 1 11/16 + 1 1/16 + 7/16"},
                       {"M1", "0", "1 1/4 + 1 11/16 + 1 1/8"},
                       {"S1", "1 - 1 15/16", "9/16"},
                       {"S4", "1 + 3 x 5/8 - 1 15/16", "9/16"}});
  // Half a pitch circle of 2 1/4 at 30° below the level of its centre.
  const auto lower = std::find_if(table.rows.begin(), table.rows.end(),
                                  [](const TableRow& one) { return one.id == "M3"; });
  ASSERT_NE(lower, table.rows.end());
  EXPECT_EQ(lower->y.value, readLength("1 1/4 + 1 11/16 - 9/16")->value);
  EXPECT_EQ(lower->x.text, "0.9745");  // 1 1/8 × cos 30° = 0.97428
  EXPECT_FALSE(lower->x.exact);
  const auto h = std::find_if(table.rows.begin(), table.rows.end(),
                              [](const TableRow& one) { return one.id == "H"; });
  ASSERT_NE(h, table.rows.end());
  EXPECT_EQ(h->x.text, "0.8125");
  EXPECT_EQ(h->y.text, "4.0000");
}

// `C breaks_out`, in the order of the codes.
std::vector<std::string> foundIn(const std::string& name) {
  const Job job = sample(name);
  const Part& part = job.parts.at(0);
  std::vector<std::string> lines;
  for (const Finding& finding : findingsOf(job, part, solved(part), ToolsOwned(job.shop))) {
    std::string line(nameOf(finding.code));
    for (const Id& place : finding.places) line += " " + place;
    lines.push_back(line);
  }
  return lines;
}

TEST(Samples, FrontPlateIsReadyToCut) {
  EXPECT_EQ(foundIn("front_plate"), std::vector<std::string>{});
}

TEST(Samples, PalletCockShowsWhatWouldGoWrong) {
  expectWrittenAsTheProgramWritesIt(kPalletCock);
  EXPECT_EQ(foundIn(kPalletCock),
            (std::vector<std::string>{"parallel B", "breaks_into B D", "breaks_out C"}));
}

TEST(Samples, FrontPlateCrossHoleByHand) {
  expectPlaces(tableOf("front_plate", "2"), {{"V", "3 7/8 - 2 5/8", "5/32"}});
}

TEST(Samples, BackPlateDiffersFromTheFrontInItsBackEdge) {
  const SetupTable back = tableOf("back_plate", "1");
  expectPlaces(back, {{"A", "7/16 - 1 15/16", "7/16"},
                      {"E", "0", "1 1/4"},
                      {"G", "0", "1 1/4 + 1 11/16"},
                      {"H", "13/16", "1 1/4 + 1 11/16 + 1 1/16"},
                      {"J", "-5/8", "6 1/2 - 1 19/32"},
                      {"C", "7/16 + 3 - 1 15/16", "6 1/2 - 3/4"},
                      {"N", "-5/8 - 9/16", "6 1/2 - 1 19/32 - 19/32"},
                      {"P", "-5/8 + 1/2", "6 1/2 - 1 19/32 + 19/32"},
                      {"S5", "7/16 + 1/2 + 4 x 1/2 - 1 15/16", "7/16 + 3/8"}});
  const SetupTable front = tableOf("front_plate", "1");
  std::map<Id, std::pair<Length, Length>> places;
  for (const TableRow& row : front.rows) places[row.id] = {row.x.value, row.y.value};
  for (const TableRow& row : back.rows) {
    if (std::string("ABCDEGHJ").find(row.id) == std::string::npos) continue;
    EXPECT_EQ(places.at(row.id), std::pair(row.x.value, row.y.value)) << row.id;
  }
}

// 1/16 left at one end and 3/32 at the other: the middle of the stock lies half the difference,
// 1/64, to the right of the middle of the finished part.
TEST(Samples, BracketFromTheMiddleOfStockAndOfFinished) {
  expectPlaces(tableOf("bracket", "2"), {{"A", "-1 3/4", "0"},
                                         {"B", "-1 3/4 + 1 1/8", "0"},
                                         {"C", "1 3/4 - 1 1/16", "0"},
                                         {"D", "1 3/4", "0"}});
  expectPlaces(tableOf("bracket", "1"), {{"A", "-1 3/4 - 1/64", "0"},
                                         {"B", "-1 3/4 + 1 1/8 - 1/64", "0"},
                                         {"C", "1 3/4 - 1 1/16 - 1/64", "0"},
                                         {"D", "1 3/4 - 1/64", "0"}});
}

TEST(Samples, HangerInMillimetresByHand) {
  expectPlaces(tableOf("pendulum_hanger", "1"), {{"A", "-24.5 mm", "-20 mm"},
                                                 {"B", "24.5 mm", "-20 mm"},
                                                 {"C", "0", "0"},
                                                 {"D1", "12 mm", "0"},
                                                 {"D4", "-12 mm", "0"},
                                                 {"E", "19 mm", "11 mm"}});
  expectPlaces(tableOf("pendulum_hanger", "2"), {{"H", "0", "5 mm"}});
}

// The print letters 1 1/16 between B and C where it draws 1 7/16.
TEST(Samples, BridgeNamesTheMisreadReadingFirst) {
  const Job job = sample("barrel_bridge");
  ASSERT_EQ(job.parts.size(), 1u);
  const Solution solution = solved(job.parts[0]);
  ASSERT_FALSE(solution.clashes.empty());
  for (const Clash& clash : solution.clashes) EXPECT_EQ(clash.axis, Axis::x);
  for (const std::vector<Suspect>& suspects : solution.suspects) {
    ASSERT_FALSE(suspects.empty());
    EXPECT_EQ(suspects[0].reading, "r3");
    EXPECT_EQ(suspects[0].wouldBeText, "1 7/16");
    EXPECT_TRUE(suspects[0].closesAll);
  }
}

Job endShake() {
  auto job = loadDocument(kSamples / "end_shake.inchwright");
  if (!job) {
    ADD_FAILURE() << job.error().place << ": " << job.error().text;
    return {};
  }
  return *std::move(job);
}

Span thousandths(std::int64_t tenthsLow, std::int64_t tenthsHigh) {
  constexpr std::int64_t kTenth = Length::kTicksPerInch / 10'000;
  return {tenthsLow * kTenth, tenthsHigh * kTenth};
}

TEST(EndShake, EveryPartPassesItsPrint) {
  expectWrittenAsTheProgramWritesIt(kEndShake);
  const Job job = endShake();
  ASSERT_EQ(job.parts.size(), 4u);
  for (const Part& part : job.parts) {
    const Solution solution = solved(part);
    EXPECT_TRUE(solution.clashes.empty()) << part.name;
    EXPECT_TRUE(solution.loose.empty()) << part.name;
    EXPECT_FALSE(solution.isDraft()) << part.name;
  }
  EXPECT_TRUE(gapFaults(job).empty());
}

// 1.562 − 2 × .031 − 2 × .031 − (.375 + .300 + .750) = .013; may stray by .005 (pillar), 4 × .001
// (seats and flanges) and 3 × .005 (arbor): .024. √(4 × .005² + 4 × .001²) = .0102.
TEST(EndShake, DoesNotGoTogetherAsDrawn) {
  const Job job = endShake();
  const auto shake = gapStack(job, *job.gap("end shake"));
  ASSERT_TRUE(shake.ok()) << shake.error().text;
  EXPECT_EQ(shake->stack.members.size(), 8u);
  EXPECT_EQ(shake->stack.nominal, Rational(thousandths(0, 130).high));
  EXPECT_EQ(shake->stack.worst, thousandths(-110, 370));
  EXPECT_FALSE(shake->keeps(shake->stack.worst));
  EXPECT_EQ(shake->beyond(shake->stack.worst), thousandths(125, 120));
  EXPECT_TRUE(shake->keeps(shake->stack.rss));
}

// From zero on its first shoulder the budgets leave the last one half of the .005 that the seat of
// the pinion and it may differ by: the arbor is ±.0025 instead of ±.015, and goes between the
// plates.
TEST(EndShake, GoesTogetherMadeFromOneZero) {
  const Job job = endShake();
  const Part& arbor = *job.part("Arbor");
  const Solution solution = solved(arbor);
  const auto members = membersFromZero({arbor, solution, *arbor.setup("1"), job.machine}, Axis::x,
                                       "S", "E", std::nullopt);
  ASSERT_TRUE(members.ok()) << members.error().text;
  EXPECT_EQ(stackOf(*members)->worst, thousandths(14'225, 14'275));
  const auto shake = gapStack(job, *job.gap("end shake, arbor from one zero"));
  ASSERT_TRUE(shake.ok());
  EXPECT_EQ(shake->stack.worst, thousandths(15, 245));
  EXPECT_TRUE(shake->keeps(shake->stack.worst));
}

// .8125 ±.002, half of RC4's .0013 on 3/32, half of the .001 that was measured.
TEST(EndShake, PivotsStrayInTheirBushes) {
  const Job job = endShake();
  const auto depth = gapStack(job, *job.gap("depth of wheel in pinion"));
  ASSERT_TRUE(depth.ok()) << depth.error().text;
  constexpr std::int64_t kHalfTenth = Length::kTicksPerInch / 20'000;
  EXPECT_EQ(depth->stack.worst, (Span{16'187 * kHalfTenth, 16'313 * kHalfTenth}));
  EXPECT_TRUE(depth->keeps(depth->stack.worst));
}

// .375 less .030 and less what is left of the plate below the seat, .125 − .031.
TEST(EndShake, TheScrewHasEnoughThread) {
  const Job job = endShake();
  const auto thread = gapStack(job, *job.gap("pillar screw in its thread"));
  ASSERT_TRUE(thread.ok()) << thread.error().text;
  EXPECT_EQ(thread->stack.nominal, Rational(thousandths(0, 2510).high));
  EXPECT_EQ(thread->stack.worst, thousandths(2370, 2550));
  EXPECT_TRUE(thread->keeps(thread->stack.worst));
}

Job clickWork() {
  auto job = loadDocument(kSamples / "click_work.inchwright");
  if (!job) {
    ADD_FAILURE() << job.error().place << ": " << job.error().text;
    return {};
  }
  return *std::move(job);
}

std::vector<Solution> solvedAll(const Job& job) {
  std::vector<Solution> all;
  for (const Part& part : job.parts) all.push_back(solved(part));
  return all;
}

TEST(ClickWork, EveryPartPassesItsPrint) {
  expectWrittenAsTheProgramWritesIt(kClickWork);
  const Job job = clickWork();
  ASSERT_EQ(job.parts.size(), 6u);
  for (const Part& part : job.parts) {
    const Solution solution = solved(part);
    EXPECT_TRUE(solution.clashes.empty()) << part.name;
    EXPECT_TRUE(solution.loose.empty()) << part.name;
  }
  EXPECT_TRUE(gapFaults(job).empty());
}

// The hole for the bush: .3148 ± .0003 where H7 of 5/16 is .3125 to .31309 (ISO 286: +15 µm). The
// bush's outside that LN2 wants there: shaft +.6 to +1.0 thou, hole 0 to +.6, so tight by 0 to 1.0:
// .3145 to .3155 less nothing, that is .3151 to .3155.
TEST(ClickWork, TheHoleThatWentOverIsFollowedToItsEnd) {
  const Job job = clickWork();
  const std::vector<Solution> solutions = solvedAll(job);
  const auto made = asMade(job, solutions);
  ASSERT_TRUE(made.ok()) << made.error().text;
  EXPECT_TRUE(made->rows[0].has(Verdict::over));
  EXPECT_TRUE(made->rows[1].has(Verdict::in));
  EXPECT_EQ(made->mates[0].verdict, Verdict::over);
  EXPECT_EQ(made->mates[1].verdict, Verdict::in);
  EXPECT_EQ(made->mates[2].verdict, Verdict::in);
  for (const GapState& gap : made->gaps) EXPECT_TRUE(gap.keeps) << gap.name;
  const auto ways = waysOut(job, solutions, "Click plate", "A");
  ASSERT_TRUE(ways.ok()) << ways.error().text;
  EXPECT_EQ((*ways)[0].way, job.parts[0].mended[0].way);
  EXPECT_EQ((*ways)[0].shaft->least, readLength(".3151")->value);
  EXPECT_EQ((*ways)[0].shaft->greatest, readLength(".3155")->value);
}

TEST(ClickWork, TheTwoClicksDifferInThreeThings) {
  const Job job = clickWork();
  const std::vector<Solution> solutions = solvedAll(job);
  const auto found = differenceOf(job, job.parts[1], solutions[1], job.parts[2], solutions[2]);
  ASSERT_TRUE(found.ok());
  EXPECT_EQ(found->moved.size(), 2u);  // H and the right side, 1/16 further on
  EXPECT_EQ(found->changed.size(), 1u);
  EXPECT_TRUE(easilyMistaken(*found));
}

// 1/2 in per foot from 1/4 over 3/4 in: 1/4 − 1/32 at the small end; the top slide at half of
// 2 atan (1/48) = 2.387°.
TEST(ClickWork, TheArborIsTurnedFromBothEnds) {
  const Job job = clickWork();
  const Part& arbor = *job.part("Ratchet arbor");
  const Solution solution = solved(arbor);
  const auto first = latheWork(job, arbor, solution, arbor.setups[0]);
  ASSERT_TRUE(first.ok()) << first.error().text;
  EXPECT_EQ(first->inTheChuck, std::vector<Id>{"A"});
  const auto second = latheWork(job, arbor, solution, arbor.setups[1]);
  ASSERT_TRUE(second.ok());
  ASSERT_FALSE(second->rows.empty());
  EXPECT_EQ(second->rows[0].id, "A");
  EXPECT_NEAR(*second->rows[0].topSlide, 1.1935, 1e-4);
  EXPECT_EQ(second->shape.stretch("A")->atLeft, readLength("7/32")->value);
}

}  // namespace
}  // namespace inchwright
