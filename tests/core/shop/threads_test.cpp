#include "core/shop/threads.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>
#include <string>

#include "core/measure/lettered.h"
#include "core/shop/drills.h"
#include "core/shop/thread_name.h"

namespace inchwright {
namespace {

struct Good {
  const char* text;
  const char* name;
  const char* tapDrill;
};

TEST(ThreadNamed, ReadsWhatPrintsWrite) {
  const Good kGood[] = {
      {"1/4-20", "1/4-20 UNC", "#7"},
      {"1/4-20 UNC", "1/4-20 UNC", "#7"},
      {"1/4-20UNC-2B", "1/4-20 UNC", "#7"},
      {"1/4\"-20 UNC", "1/4-20 UNC", "#7"},
      {"1/4 - 20 unc 2B", "1/4-20 UNC", "#7"},
      {"1/4 UNC", "1/4-20 UNC", "#7"},
      {"1/4 x 20 TPI", "1/4-20 UNC", "#7"},
      {".250-20", "1/4-20 UNC", "#7"},
      {"0.25-28", "1/4-28 UNF", "#3"},
      {"1/4-28", "1/4-28 UNF", "#3"},
      {"1/4 NF", "1/4-28 UNF", "#3"},
      {"#8-32", "#8-32 UNC", "#29"},
      {"8-32", "#8-32 UNC", "#29"},
      {"8-32 UNC", "#8-32 UNC", "#29"},
      {"No. 8-32", "#8-32 UNC", "#29"},
      {"No 8 - 36", "#8-36 UNF", "#29"},
      {"#10-32 UNF-2B", "#10-32 UNF", "#21"},
      {"#4-40", "#4-40 UNC", "#43"},
      {"0-80", "#0-80 UNF", "3/64"},
      {"1-8", "1-8 UNC", "7/8"},
      {"1-64", "#1-64 UNC", "#53"},
      {"1-72 UNF", "#1-72 UNF", "#53"},
      {"5/8-11", "5/8-11 UNC", "17/32"},
      {"2 BA", "2 BA", "4 mm"},
      {"2BA", "2 BA", "4 mm"},
      {"2ba", "2 BA", "4 mm"},
      {"No 2 B.A.", "2 BA", "4 mm"},
      {"10 BA", "10 BA", "1.4 mm"},
      {"0BA", "0 BA", "5.1 mm"},
      {"M3", "M3", "2.5 mm"},
      {"m3 x 0.5", "M3", "2.5 mm"},
      {"M3x0.5", "M3", "2.5 mm"},
      {"M3 × 0,5 - 6H", "M3", "2.5 mm"},
      {"M2.5", "M2.5", "2.05 mm"},
      {"M10x1.5", "M10", "8.5 mm"},
      {"M8-6H", "M8", "6.8 mm"},
      {"1/4 BSW", "1/4-20 BSW", "5.1 mm"},
      {"1/4 Whit", "1/4-20 BSW", "5.1 mm"},
      {"1/4-20 Whit.", "1/4-20 BSW", "5.1 mm"},
      {"3/16-24", "3/16-24 BSW", "3.7 mm"},
      {"1/4 BSF", "1/4-26 BSF", "5.3 mm"},
      {"1/4-26 brass", "1/4-26 brass", "5.6 mm"},
      {"1/4 x 40 ME", "1/4-40 ME", "5.8 mm"},
      {"3/16-40 ME", "3/16-40 ME", "4.1 mm"},
      {"3/16-40ME", "3/16-40 ME", "4.1 mm"},
      {"3/16 × 40", "3/16-40 ME", "4.1 mm"},
      {"5/32 x 40 M.E.", "5/32-40 ME", "3.3 mm"},
      {"  #6-32  ", "#6-32 UNC", "#36"},
  };
  for (const Good& good : kGood) {
    const Result<Thread> thread = threadNamed(good.text);
    ASSERT_TRUE(thread.ok()) << good.text << ": " << thread.error().text;
    EXPECT_EQ(thread->name, good.name) << good.text;
    EXPECT_EQ(thread->tapDrill, good.tapDrill) << good.text;
    EXPECT_FALSE(thread->source.empty()) << good.text;
  }
}

TEST(ThreadNamed, RefusesWhatItCantRead) {
  for (const char* bad : {"",
                          " ",
                          "UNC",
                          "BA",
                          "-20",
                          "1/4",
                          "8",
                          "#8",
                          "M",
                          "M3x",
                          "M3x0.5x2",
                          "1/4-",
                          "1/4-20 XYZ",
                          "1/0-20",
                          "1/4-20 UNCX",
                          "1/3-20",
                          "1/4-99999",
                          "M3.00001",
                          "1/4-26",
                          "1/8-40",
                          "3/8 ME",
                          "##8-32",
                          "1/4--20",
                          "\xC3",
                          "1/4\xC3",
                          "99999999999999999999-20"}) {
    const Result<Thread> thread = threadNamed(bad);
    ASSERT_FALSE(thread.ok()) << bad << " became " << thread->name;
    EXPECT_EQ(thread.error().code, ErrorCode::badText) << bad;
    EXPECT_FALSE(thread.error().text.empty()) << bad;
  }
}

// A gauge number n is .060 and n times .013 in (ASME B1.1), also of threads that no table has.
TEST(ThreadName, SaysHowLargeItIs) {
  for (const auto& [name, size] : std::vector<std::pair<const char*, std::int64_t>>{
           {"#0-80", 600}, {"8-32", 1640}, {"#7-32", 1510}, {"10-24", 1900}, {"1/4-20", 2500}}) {
    const Result<ThreadName> read = readThreadName(name);
    ASSERT_TRUE(read.ok()) << name;
    EXPECT_EQ(read->size.ticks(), size * 254'000) << name;
  }
}

TEST(ThreadNamed, SaysWhatTheTableLacks) {
  for (const char* absent : {"1/4-24", "M3x0.35", "M64", "12 BA", "#7-32", "2-8", "3/8-24 BSW"}) {
    const Result<Thread> thread = threadNamed(absent);
    ASSERT_FALSE(thread.ok()) << absent;
    EXPECT_EQ(thread.error().code, ErrorCode::notFound) << absent;
  }
  EXPECT_NE(threadNamed("1/4-24").error().text.find("1/4-20 UNC"), std::string::npos);
}

TEST(ThreadNamed, NeverPassesALeftHandThreadForARightHandOne) {
  EXPECT_FALSE(threadNamed("1/4-20 UNC LH").ok());
}

TEST(Threads, EveryNameReadsBackAsItself) {
  std::set<std::string> names;
  for (const Thread& thread : threads()) {
    EXPECT_TRUE(names.insert(thread.name).second) << thread.name << " is there twice";
    const Result<Thread> again = threadNamed(thread.name);
    ASSERT_TRUE(again.ok()) << thread.name << ": " << again.error().text;
    EXPECT_EQ(*again, thread);
  }
  EXPECT_EQ(names.size(), 105u);
}

TEST(Threads, PitchesAreExact) {
  EXPECT_EQ(threadNamed("#8-32")->pitch, Rational(79'375'000));
  EXPECT_EQ(threadNamed("1/4-28")->pitch, *Rational::of(2'540'000'000, 28));
  EXPECT_EQ(threadNamed("M3")->pitch, Rational(50'000'000));
  EXPECT_EQ(threadNamed("5/32-32 BSW")->major.ticks(), 10 * 39'687'500LL);
}

// BS 93: pitch 0.9^k mm to two places, diameter 6 p^1.2 mm to one place, p being the rounded pitch.
// One published table gives 2 BA a pitch of 0.89 mm; the formula makes it 0.81.
TEST(Threads, BritishAssociationFollowsItsFormula) {
  for (int k = 0; k <= 10; ++k) {
    const Result<Thread> thread = threadNamed(std::to_string(k) + " BA");
    ASSERT_TRUE(thread.ok()) << k;
    const double pitch = std::round(std::pow(0.9, k) * 100) / 100;
    const double major = std::round(6 * std::pow(pitch, 1.2) * 10) / 10;
    EXPECT_EQ(thread->pitch, Rational(std::llround(pitch * 100) * 1'000'000)) << k;
    EXPECT_EQ(thread->major.ticks(), std::llround(major * 10) * 10'000'000) << k;
  }
}

// The customary choice leaves 58 to 98 % of the thread's full depth (2 × 0.6495 p for the 60°
// series, 0.6403 p a side Whitworth, 0.6 p a side BA); outside of that a row has been mistyped.
TEST(Threads, TapDrillsLeaveAThread) {
  for (const Thread& thread : threads()) {
    double depth = 1.299;
    if (thread.series == ThreadSeries::ba) depth = 1.2;
    if (thread.series >= ThreadSeries::bsw && thread.series <= ThreadSeries::brass) depth = 1.2806;
    const double share =
        static_cast<double>(thread.major.ticks() - thread.tapDrillDiameter.ticks()) /
        (depth * thread.pitch.toDouble());
    EXPECT_GT(share, 0.57) << thread.name;
    EXPECT_LT(share, 0.99) << thread.name;
  }
}

TEST(Threads, TapDrillsAreTheDrillsTheyName) {
  for (const Thread& thread : threads()) {
    const Drill* drill = drillNamed(thread.tapDrill);
    if (drill) {
      EXPECT_EQ(drill->diameter, thread.tapDrillDiameter) << thread.name;
      continue;
    }
    // Half tenths of a millimetre are sold for tapping but are not in the general list.
    ASSERT_TRUE(thread.tapDrill.ends_with(" mm")) << thread.name;
    EXPECT_EQ(readLength(thread.tapDrill)->value, thread.tapDrillDiameter) << thread.name;
  }
}

TEST(Threads, EverySeriesNamesItsSource) {
  for (const Thread& thread : threads()) EXPECT_FALSE(sourceOf(thread.series).empty());
}

// Any bytes are read or refused; the alphabet is near enough to names to get deep into the reader.
TEST(ThreadNamed, SurvivesAnyBytes) {
  constexpr unsigned kSeed = 20261125;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  const std::string alphabet = "0123456789/-#. xXMBAUNCFSWE\"\xC3\x97\xFF,HG";
  for (int i = 0; i < 200'000; ++i) {
    std::string text;
    for (std::size_t n = random() % 12; n > 0; --n) text += alphabet[random() % alphabet.size()];
    const Result<Thread> thread = threadNamed(text);
    if (!thread && thread.error().at) {
      ASSERT_LE(*thread.error().at, text.size()) << text;
    }
  }
}

}  // namespace
}  // namespace inchwright
