#include "core/seen/offered.h"

#include <gtest/gtest.h>

namespace inchwright::seen {
namespace {

using namespace std::chrono_literals;

ReadingOffer reading(const std::string& letters, std::vector<std::string> texts, double from = 0) {
  ReadingOffer r;
  r.from = {from, -0.5};
  r.to = {from + 1, -0.5};
  std::int64_t ticks = 0;
  for (const std::string& t : texts) r.candidates.push_back({t, ++ticks, 0.9, 0.2, false});
  r.witnesses.plain = letters.find('G') != std::string::npos;
  r.witnesses.unsure = letters.find('g') != std::string::npos;
  r.witnesses.scale = letters.find('S') != std::string::npos;
  r.witnesses.closes = letters.find('C') != std::string::npos;
  EXPECT_EQ(r.witnesses.letters(), letters);
  return r;
}

TEST(PutReading, AsTheTableSays) {
  const PutReading ready = putReading(reading("G S", {"1 3/16", "1 5/16"}));
  EXPECT_EQ(ready.how, Put::ready);
  EXPECT_EQ(ready.strip, "1 3/16");
  const PutReading choice = putReading(reading("g S C", {"1", "2", "3", "4"}));
  EXPECT_EQ(choice.how, Put::choice);
  EXPECT_EQ(choice.choices, (std::vector<std::string>{"1", "2", "3"}));
  EXPECT_EQ(choice.strip, "");
  const PutReading asked = putReading(reading("G", {"1 3/16"}));
  EXPECT_EQ(asked.how, Put::asked);
  EXPECT_EQ(asked.asked, "1 3/16");
  EXPECT_EQ(asked.strip, "");
  for (const char* letters : {"S", "C", "g", "", "g C", "S C"}) {
    const PutReading typed = putReading(reading(letters, {"1 3/16"}));
    EXPECT_EQ(typed.how, Put::typed) << letters;
    EXPECT_EQ(typed.strip, "") << letters;
  }
  EXPECT_EQ(putReading(reading("S", {})).how, Put::typed);
}

TEST(PutReading, BlindOnesShowNothing) {
  const PutReading blind = putReading(reading("G S", {"1 3/16"}), true);
  EXPECT_EQ(blind, (PutReading{Put::typed, "", {}, "", true}));
}

TEST(PutReading, ChoicesOfOneValueStandOnce) {
  ReadingOffer r = reading("g S", {"1/2", ".5", "3/4"});
  r.candidates[1].ticks = r.candidates[0].ticks;
  EXPECT_EQ(putReading(r).choices, (std::vector<std::string>{"1/2", "3/4"}));
}

Offers some() {
  Offers o;
  o.features.resize(2);
  o.readings = {reading("G S", {"1"}, 3), reading("g S", {"2"}, 1), reading("G", {"3"}, 2)};
  return o;
}

TEST(Offered, FeaturesFirstThenReadingsAlongTheirLane) {
  Offered list(some(), 0ms);
  EXPECT_EQ(list.feature(), &list.offers().features[0]);
  EXPECT_EQ(list.reading(), nullptr);
  EXPECT_TRUE(list.confirm(500ms));
  list.drop(600ms);
  ASSERT_NE(list.reading(), nullptr);
  EXPECT_EQ(list.reading()->candidates[0].text, "2");
  list.pass(700ms);
  EXPECT_EQ(list.reading()->candidates[0].text, "3");
  list.pass(800ms);
  EXPECT_EQ(list.reading()->candidates[0].text, "1");
  list.pass(900ms);
  EXPECT_EQ(list.reading()->candidates[0].text, "2");  // what was passed comes again
  EXPECT_EQ(list.open(), 3);
  EXPECT_EQ(list.confirmed(), 1);
}

TEST(Offered, EnterIsDeafAfterEachCut) {
  Offered list(some(), 1000ms);
  EXPECT_FALSE(list.confirm(1399ms));
  EXPECT_TRUE(list.confirm(1400ms));
  EXPECT_FALSE(list.confirm(1401ms));  // leaning on the key takes nothing
  EXPECT_EQ(list.confirmed(), 1);
}

TEST(Offered, AReadingNeedsAFigure) {
  Offered list(some(), 0ms);
  list.drop(1ms);
  list.drop(2ms);
  EXPECT_FALSE(list.confirm(1s));
  EXPECT_TRUE(list.confirm(1s, "2"));
}

TEST(Offered, UndoGoesBackOneAtATime) {
  Offered list(some(), 0ms);
  const Offered before = list;
  EXPECT_FALSE(list.undo(0ms));
  EXPECT_TRUE(list.confirm(500ms));
  list.drop(1s);
  EXPECT_TRUE(list.undo(2s));
  EXPECT_EQ(list.feature(), &list.offers().features[1]);
  EXPECT_TRUE(list.undo(0ms));
  EXPECT_EQ(list, before);
}

TEST(Offered, EveryTenthReadyOneIsBlind) {
  Offers o;
  for (int i = 0; i < 25; ++i) o.readings.push_back(reading("G S", {"1"}, i));
  Offered list(o, 0ms);
  int blind = 0;
  for (int i = 0; i < 25; ++i) {
    const PutReading put = list.put();
    blind += put.blind;
    EXPECT_EQ(put.blind, i % 10 == 9);
    EXPECT_TRUE(list.confirm(std::chrono::seconds(i + 1), "1"));
  }
  EXPECT_EQ(blind, 2);
  EXPECT_EQ(list.reading(), nullptr);
  EXPECT_EQ(list.open(), 0);
  list.drop(100s);
  list.pass(100s);
  EXPECT_EQ(list.confirmed(), 25);
}

TEST(Offered, KeepsItsWitnessesOnlyForWhatWasOffered) {
  const ReadingOffer r = reading("G S", {"1 3/16", "1 5/16"});
  EXPECT_EQ(Offered::offeredOf(r, "1 3/16"), "G S");
  EXPECT_EQ(Offered::offeredOf(r, "1 5/16"), "");
  EXPECT_EQ(Offered::offeredOf(r, "7"), "");
}

// A feature is confirmed along with the reading that ends at it, unless it was settled already or
// is the one that is asked about.
TEST(Offered, AFeatureIsConfirmedAlong) {
  Offered offered(some(), 0ms);
  ASSERT_EQ(offered.lit(), 0U);
  offered.confirmAlso(0);
  EXPECT_TRUE(offered.isOpen(0)) << "it is lit";
  offered.confirmAlso(1);
  EXPECT_FALSE(offered.isOpen(1));
  EXPECT_EQ(offered.confirmed(), 1);
  offered.confirmAlso(1);
  EXPECT_EQ(offered.confirmed(), 1);
  ASSERT_TRUE(offered.undo(1000ms));
  EXPECT_TRUE(offered.isOpen(1)) << "once is taken back at once";
  offered.light(1, 1000ms);
  offered.drop(2000ms);
  offered.confirmAlso(1);
  EXPECT_EQ(offered.confirmed(), 0) << "what was dropped does not come back";
}

}  // namespace
}  // namespace inchwright::seen
