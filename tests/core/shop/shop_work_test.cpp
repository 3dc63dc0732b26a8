#include <gtest/gtest.h>

#include <random>

#include "core/measure/lettered.h"
#include "core/shop/cutting_speeds.h"
#include "core/shop/drill_work.h"
#include "core/shop/edge_finders.h"
#include "core/shop/thread_work.h"

namespace inchwright {
namespace {

Length inch(const char* text) {
  return readLength(text)->value;
}

TEST(DrillWork, PointGrowsWithTheDiameter) {
  // 1/4: .125 · cot 59° = .0751076; hand reckoned.
  EXPECT_NEAR(pointLength(inch("1/4")).toInches(), 0.0751076, 1e-7);
  EXPECT_EQ(pointLength(inch("1/2"), 90), inch("1/4"));
  EXPECT_EQ(pointLength(Length()), Length());
  // 10 pm on 3 in at most from doubling a half.
  const std::int64_t twice = 2 * pointLength(inch("1 1/2")).ticks();
  EXPECT_LE(std::abs(twice - pointLength(inch("3")).ticks()), 1);
}

TEST(DrillWork, OversizeAndToleranceGoByTheNextLargerRow) {
  EXPECT_EQ(drillOversize(inch("1/4")).greatest, inch(".0065"));
  EXPECT_EQ(drillOversize(inch(".126")).mean, inch(".004"));
  EXPECT_EQ(drillOversize(inch("2")).greatest, inch(".009"));
  EXPECT_EQ(drilledHoleTolerance(inch("1/4")), (DrilledHoleTolerance{inch(".005"), inch(".001")}));
  EXPECT_EQ(drilledHoleTolerance(inch(".251")).over, inch(".006"));
  EXPECT_EQ(drilledHoleTolerance(inch("3")).over, inch(".012"));
}

TEST(ThreadWork, PercentGoesByTheFormsOwnDepth) {
  const auto percent = [](const char* thread, const char* drill) {
    return threadPercent(*threadNamed(thread), inch(drill));
  };
  EXPECT_EQ(percent("1/4-20 UNC", ".201"), 7544);  // .049·20/1.299038
  EXPECT_EQ(percent("1/4-20 BSW", ".201"), 7652);  // .049·20/1.280654
  EXPECT_EQ(percent("0 BA", "5.1 mm"), 7500);      // .9/1.2
  EXPECT_EQ(percent("M6", "5 mm"), 7698);          // 1/1.299038
  EXPECT_EQ(percent("1/4-20 UNC", "1/4"), 0);
  EXPECT_LT(percent("1/4-20 UNC", "17/64"), 0);
}

TEST(ThreadWork, LeadsGoByThePitch) {
  const Thread thread = *threadNamed("1/4-20 UNC");
  EXPECT_EQ(leadLength(thread, TapLead::taper), inch("1/2"));
  EXPECT_EQ(leadLength(thread, TapLead::second), inch("1/4"));
  EXPECT_EQ(leadLength(thread, TapLead::bottoming), inch(".1"));
  for (const TapLead lead : {TapLead::taper, TapLead::second, TapLead::bottoming}) {
    EXPECT_EQ(tapLeadNamed(nameOf(lead)), lead);
  }
  EXPECT_FALSE(tapLeadNamed("plug"));
}

TEST(CuttingSpeed, IsFoundByTheWordsOfAPrint) {
  struct Case {
    const char* material;
    const char* row;
  };
  for (const Case& one : {Case{"brass", "brass"},
                          {"CZ121 Brass", "brass"},
                          {"Aluminum 6061", "aluminium"},
                          {"steel", "mild steel"},
                          {"silver steel", "tool steel"},
                          {"stainless steel 303", "stainless"},
                          {"phosphor bronze", "bronze"}}) {
    const auto speed = cuttingSpeedOf(one.material);
    ASSERT_TRUE(speed) << one.material;
    EXPECT_EQ(speed->material, one.row);
  }
  for (const char* none : {"", "unobtainium", "steelwork?", "brassy"}) {
    EXPECT_FALSE(cuttingSpeedOf(none)) << none;
  }
}

TEST(CuttingSpeed, NeverRunsFasterThanTheGuideWhereTheMachineCan) {
  EXPECT_EQ(nearestSpeed(1000, {}), 1000);
  EXPECT_EQ(nearestSpeed(1000, {1100, 180, 900}), 900);
  EXPECT_EQ(nearestSpeed(1000, {500, 1000, 1001}), 1000);
  EXPECT_EQ(nearestSpeed(100, {300, 180}), 180);
  std::mt19937 random(15);
  for (int i = 0; i < 200; ++i) {
    std::vector<int> speeds(1 + random() % 8);
    for (int& speed : speeds) speed = 1 + static_cast<int>(random() % 4000);
    const int guide = 1 + static_cast<int>(random() % 4000);
    const int chosen = nearestSpeed(guide, speeds);
    for (const int speed : speeds) {
      EXPECT_FALSE(speed <= guide && speed > chosen) << "seed 15, draw " << i;
    }
  }
}

// From memory, as the table says; half of it is what is set at the readout.
TEST(EdgeFinders, TouchAtTheirCustomarySizes) {
  const std::pair<std::string_view, std::int64_t> rows[] = {
      {"edge finder, 0.200 tip", 508'000'000},
      {"edge finder, 0.500 body end", 1'270'000'000},
      {"wiggler ball", 635'000'000},
      {"wiggler disc", 254'000'000},
      {"wiggler pointer", 0},
      {"edge finder, 10 mm", 1'000'000'000},
      {"edge finder, 4 mm tip", 400'000'000},
      {"edge finder, 6 mm tip", 600'000'000}};
  ASSERT_EQ(edgeFinders().size(), std::size(rows));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    EXPECT_EQ(edgeFinders()[i].name, rows[i].first);
    EXPECT_EQ(edgeFinders()[i].contact.ticks(), rows[i].second) << rows[i].first;
  }
  EXPECT_EQ(customaryFinder(Unit::inch).contact.ticks(), 508'000'000);
  EXPECT_EQ(customaryFinder(Unit::millimetre).contact.ticks(), 1'000'000'000);
}

}  // namespace
}  // namespace inchwright
