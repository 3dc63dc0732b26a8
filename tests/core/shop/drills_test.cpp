#include "core/shop/drills.h"

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <utility>

#include "core/measure/lettered.h"

namespace inchwright {
namespace {

constexpr std::int64_t kTenThousandth = 254'000;

std::map<DrillSeries, int> counted() {
  std::map<DrillSeries, int> count;
  for (const Drill& drill : drills()) ++count[drill.series];
  return count;
}

TEST(Drills, HoldEverySeriesWhole) {
  const auto count = counted();
  EXPECT_EQ(count.at(DrillSeries::fraction), 64);
  EXPECT_EQ(count.at(DrillSeries::number), 80);
  EXPECT_EQ(count.at(DrillSeries::letter), 26);
  EXPECT_EQ(count.at(DrillSeries::metric), 102);
}

TEST(Drills, StandInOrderOfSizeThenSeries) {
  for (std::size_t i = 1; i < drills().size(); ++i) {
    const Drill &before = drills()[i - 1], &after = drills()[i];
    ASSERT_TRUE(before.diameter < after.diameter ||
                (before.diameter == after.diameter && before.series < after.series))
        << before.name << " before " << after.name;
  }
}

TEST(Drills, FractionsAreExactSixtyFourths) {
  int n = 0;
  for (const Drill& drill : drills()) {
    if (drill.series != DrillSeries::fraction) continue;
    ++n;
    EXPECT_EQ(drill.diameter.ticks(), n * 39'687'500LL) << drill.name;
    const std::size_t bar = drill.name.find('/');
    const int over = std::stoi(drill.name);
    const int under = bar == std::string::npos ? 1 : std::stoi(drill.name.substr(bar + 1));
    EXPECT_EQ(over * (64 / under), n) << drill.name;
    EXPECT_TRUE(over % 2 == 1 || under == 1) << drill.name << " is not in lowest terms";
  }
}

TEST(Drills, MetricAreExactTenths) {
  for (const Drill& drill : drills()) {
    if (drill.series != DrillSeries::metric) continue;
    EXPECT_EQ(drill.diameter.ticks() % 10'000'000, 0) << drill.name;
    EXPECT_EQ(readLength(drill.name)->value, drill.diameter) << drill.name;
  }
}

// ASME B94.11M, from memory of wall charts, apart from the table the program was made from.
TEST(Drills, AgreeWithWallChartSizes) {
  const std::pair<const char*, int> kSizes[] = {
      {"#1", 2280},  {"#2", 2210},  {"#7", 2010},  {"#10", 1935}, {"#21", 1590}, {"#25", 1495},
      {"#29", 1360}, {"#31", 1200}, {"#36", 1065}, {"#43", 890},  {"#50", 700},  {"#53", 595},
      {"#60", 400},  {"#80", 135},  {"A", 2340},   {"E", 2500},   {"F", 2570},   {"I", 2720},
      {"Q", 3320},   {"U", 3680},   {"W", 3860},   {"Z", 4130}};
  for (const auto& [name, size] : kSizes) {
    const Drill* drill = drillNamed(name);
    ASSERT_NE(drill, nullptr) << name;
    EXPECT_EQ(drill->diameter.ticks(), size * kTenThousandth) << name;
  }
}

TEST(Drills, NumbersFallAndLettersRise) {
  for (int n = 1; n < 80; ++n) {
    EXPECT_GT(drillNamed("#" + std::to_string(n))->diameter,
              drillNamed("#" + std::to_string(n + 1))->diameter)
        << n;
  }
  for (char c = 'A'; c < 'Z'; ++c) {
    EXPECT_LT(drillNamed(std::string(1, c))->diameter,
              drillNamed(std::string(1, static_cast<char>(c + 1)))->diameter)
        << c;
  }
}

TEST(Drills, AreFoundByName) {
  EXPECT_EQ(drillNamed("15/64")->name, "15/64");
  EXPECT_EQ(drillNamed("f")->name, "F");
  EXPECT_EQ(drillNamed("5.1mm")->name, "5.1 mm");
  EXPECT_EQ(drillNamed("5 MM")->name, "5 mm");
  EXPECT_EQ(drillNamed("1")->name, "1");
  EXPECT_EQ(drillNamed(" 11/32 ")->name, "11/32");
  for (const char* unknown :
       {"1 1/32", "", "#0", "#81", "AA", "15/63", "2/8", "13.1 mm", "mm", "-1/4"}) {
    EXPECT_EQ(drillNamed(unknown), nullptr) << unknown;
  }
}

TEST(Drills, AtOrBelowKeepsToTheSets) {
  const Length quarter = Length::ticks(16 * 39'687'500LL);
  EXPECT_EQ(drillAtOrBelow(quarter)->name, "1/4");  // E is the same size and stands later
  EXPECT_EQ(drillAtOrBelow(quarter, {false, true, true, false})->name, "E");
  EXPECT_EQ(drillAtOrBelow(quarter, {false, true, false, false})->name, "#1");
  EXPECT_EQ(drillAtOrBelow(quarter, {false, false, false, true})->name, "6.3 mm");
  EXPECT_EQ(drillAtOrBelow(quarter, {false, false, false, false}), nullptr);
  EXPECT_EQ(drillAtOrBelow(Length::ticks(1)), nullptr);
  EXPECT_EQ(drillAtOrBelow(Length::ticks(quarter.ticks() - 1))->name, "6.3 mm");
  EXPECT_EQ(drillAtOrBelow(Length::ticks(Length::kTicksPerInch * 5))->name, "1");
}

TEST(Drills, OfSizeIsExact) {
  const Length size = drillNamed("#7")->diameter;
  EXPECT_EQ(drillOfSize(size)->name, "#7");
  EXPECT_EQ(drillOfSize(Length::ticks(size.ticks() + 1)), nullptr);
  EXPECT_EQ(drillOfSize(size, DrillSets::customaryFor(Unit::millimetre)), nullptr);
}

TEST(Drills, NameTheirSources) {
  for (const DrillSeries series :
       {DrillSeries::fraction, DrillSeries::number, DrillSeries::letter, DrillSeries::metric}) {
    EXPECT_FALSE(sourceOf(series).empty());
  }
}

}  // namespace
}  // namespace inchwright
