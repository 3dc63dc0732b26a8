#include "core/shop/clearance.h"

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <vector>

#include "core/shop/clearance_rows.h"
#include "core/shop/drills.h"

namespace inchwright {
namespace {

constexpr std::int64_t kThou = Length::kTicksPerInch / 1000;
constexpr std::int64_t kMicron = Length::kTicksPerMillimetre / 1000;

struct PublishedHole {
  const char* fit;
  const char* screw;
  const char* drill;
  std::int64_t hole;   // ticks
  std::int64_t major;  // ticks
};

// ASME B18.2.8 normal holes as Machinery's Handbook, 31st ed., Table 1a lists their drills; loose
// ones by its least sizes. The customary chart is S2, ISO 273 S17 and S18, British Association S6.
const PublishedHole kPublishedHoles[] = {
    {"normal", "#6-32", "#18", 1695 * kThou / 10, 138 * kThou},
    {"normal", "#8-32 UNC", "#9", 196 * kThou, 164 * kThou},
    {"normal", "10-24", "#2", 221 * kThou, 190 * kThou},
    {"normal", "1/4-20", "9/32", Length::kTicksPerInch * 9 / 32, 250 * kThou},
    {"normal", "1/4-28 UNF", "9/32", Length::kTicksPerInch * 9 / 32, 250 * kThou},
    {"loose", "1/4-20", "19/64", Length::kTicksPerInch * 19 / 64, 250 * kThou},
    {"Loose", "3/8-16", "27/64", Length::kTicksPerInch * 27 / 64, 375 * kThou},
    {"shop close", "#8-32", "#18", 1695 * kThou / 10, 164 * kThou},
    {"free", "#8-32", "#16", 177 * kThou, 164 * kThou},
    {"Shop  Close", "1/4-20", "F", 257 * kThou, 250 * kThou},
    {" free ", "1/4-20", "H", 266 * kThou, 250 * kThou},
    {"fine", "M3", "3.2 mm", 3200 * kMicron, 3000 * kMicron},
    {"medium", "M3", "3.4 mm", 3400 * kMicron, 3000 * kMicron},
    {"coarse", "M3", "3.6 mm", 3600 * kMicron, 3000 * kMicron},
    {"normal", "M6", "6.6 mm", 6600 * kMicron, 6000 * kMicron},
    {"close", "M1.6", "1.7 mm", 1700 * kMicron, 1600 * kMicron},
    {"loose", "M16", "18.5 mm", 18500 * kMicron, 16000 * kMicron},
    {"clear", "2 BA", "#12", 189 * kThou, 4700 * kMicron},
    {"clear", "10BA", "#50", 70 * kThou, 1700 * kMicron},
};

TEST(ClearanceHole, AgreesWithThePublishedTables) {
  for (const PublishedHole& published : kPublishedHoles) {
    SCOPED_TRACE(std::string(published.fit) + " for " + published.screw);
    const auto hole = clearanceHole(published.fit, published.screw);
    ASSERT_TRUE(hole.ok()) << hole.error().text;
    EXPECT_EQ(hole->drill, published.drill);
    EXPECT_EQ(hole->hole.ticks(), published.hole);
    EXPECT_EQ(hole->screw.major.ticks(), published.major);
    EXPECT_EQ(hole->clearance().ticks(), published.hole - published.major);
    EXPECT_FALSE(hole->source.empty());
  }
}

TEST(ClearanceHole, SaysWhereItComesFrom) {
  EXPECT_EQ(clearanceHole("normal", "1/4-20")->source,
            "ASME B18.2.8 in Machinery's Handbook, 31st ed. (S63)");
  EXPECT_EQ(clearanceHole("close", "1/4-20")->source, "ASME B18.2.8, from memory");
  EXPECT_EQ(clearanceHole("free", "1/4-20")->source, "customary US shop chart (S2)");
  EXPECT_EQ(clearanceHole("medium", "M5")->source, "ISO 273 (S17 S18)");
  EXPECT_EQ(clearanceHole("clear", "4 BA")->source, "British Association custom (S6)");
}

TEST(ClearanceHole, RefusesWhatItDoesNotKnow) {
  struct Refused {
    const char* fit;
    const char* screw;
    ErrorCode code;
    const char* says;
  };
  const Refused kRefused[] = {
      {"", "1/4-20", ErrorCode::badText, "is no clearance known here"},
      {"H7", "1/4-20", ErrorCode::badText, "close, normal and loose"},
      {"tight", "M4", ErrorCode::badText, "fine, medium and coarse"},
      {"closest", "2 BA", ErrorCode::badText, "clear, from 0 BA"},
      {"medium", "1/4-20", ErrorCode::notFound, "no medium hole"},
      {"clear", "M4", ErrorCode::notFound, "no clear hole"},
      {"close", "2 BA", ErrorCode::notFound, "clear, from 0 BA"},
      {"normal", "9/16-12", ErrorCode::notFound, "but for #12 and 9/16"},
      {"normal", "#12-24", ErrorCode::notFound, "but for #12 and 9/16"},
      {"free", "5/8-11", ErrorCode::notFound, "up to 1/2 in"},
      {"clear", "12 BA", ErrorCode::notFound, "no 12 BA"},
      {"close", "wood screw", ErrorCode::badText, ""},
      {"close", "1/4-21", ErrorCode::notFound, "1/4-20"},
  };
  for (const Refused& refused : kRefused) {
    SCOPED_TRACE(std::string(refused.fit) + " for " + refused.screw);
    const auto hole = clearanceHole(refused.fit, refused.screw);
    ASSERT_FALSE(hole.ok());
    EXPECT_EQ(hole.error().code, refused.code);
    EXPECT_NE(hole.error().text.find(refused.says), std::string::npos) << hole.error().text;
  }
}

// Misprints show: a drill of another size than the table of drills has, a hole smaller than its
// screw, a looser fit that is no larger, a size printed twice.
TEST(ClearanceTable, HoldsTogether) {
  std::map<std::tuple<ClearanceStandard, std::string, Length>, Length> last;
  std::set<std::tuple<ClearanceStandard, std::string, Length, std::string>> seen;
  for (const ClearanceRow& row : clearanceRows()) {
    SCOPED_TRACE(std::string(row.thread) + row.drill + " " + row.fit);
    EXPECT_TRUE(seen.emplace(row.standard, row.thread, row.major, row.fit).second);
    const auto screw = row.thread[0] ? threadNamed(row.thread) : Result<Thread>(Thread{});
    ASSERT_TRUE(screw.ok());
    const Length major = row.thread[0] ? screw->major : row.major;
    EXPECT_GT(row.hole, major);
    Length& before = last[{row.standard, row.thread, row.major}];
    EXPECT_GT(row.hole, before);
    before = row.hole;
    EXPECT_NE(std::string(row.sourceKeys), "");
    const Drill* drill = drillNamed(row.drill);
    // The table of drills ends at 13 mm, and at 1 in.
    const bool metric = std::string_view(row.drill).ends_with("mm");
    EXPECT_EQ(drill == nullptr, row.hole.ticks() > (metric ? 13'000 * kMicron : 1000 * kThou));
    if (drill) {
      EXPECT_EQ(drill->diameter, row.hole);
    }
  }
  EXPECT_EQ(clearanceRows().size(), 137u);
}

TEST(ClearanceHole, EveryScrewOfATableIsReachedByItsName) {
  for (const Thread& screw : threads()) {
    const bool metric = screw.series == ThreadSeries::metric;
    const char* fit = screw.series == ThreadSeries::ba ? "clear" : metric ? "medium" : "normal";
    const auto hole = clearanceHole(fit, screw.name);
    bool there = false;
    for (const ClearanceRow& row : clearanceRows()) {
      const std::string name = row.thread;
      there = there || (row.fit == std::string(fit) &&
                        (name.empty() ? row.major == screw.major &&
                                            (row.standard == ClearanceStandard::iso) == metric
                                      : name == screw.name));
    }
    EXPECT_EQ(hole.ok(), there) << screw.name;
    if (hole.ok()) {
      EXPECT_EQ(hole->screw, screw);
    }
  }
}

}  // namespace
}  // namespace inchwright
