// Going through what a print offers: one at a time, ready only where nothing speaks against it, and
// nothing in the document without Enter.

#include <gtest/gtest.h>

#include <QTest>

#include "app/session/picture_edits.h"
#include "app/session/work.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

using seen::Candidate;
using seen::OfferedFeature;
using seen::OfferedReading;

seen::FeatureOffer edge(bool alongX, double at) {
  seen::FeatureOffer out;
  out.kind = OfferedFeature::edge;
  out.alongX = alongX;
  out.at = alongX ? PlanePoint{at, 1} : PlanePoint{1.5, at};
  out.from = alongX ? PlanePoint{at, 0} : PlanePoint{0, at};
  out.to = alongX ? PlanePoint{at, 2} : PlanePoint{3, at};
  return out;
}

seen::FeatureOffer hole(double x, double y) {
  seen::FeatureOffer out;
  out.at = {x, y};
  out.drawnRadius = 0.125;
  return out;
}

Candidate lettered(const char* text) {
  return {text, readLength(text, {Unit::inch})->value.ticks(), 0.9, 0.3, false};
}

seen::ReadingOffer dimension(double from, double to, std::vector<Candidate> candidates,
                             seen::Witnesses witnesses) {
  seen::ReadingOffer out;
  out.from = {from, -0.5};
  out.to = {to, -0.5};
  out.candidates = std::move(candidates);
  out.witnesses = witnesses;
  out.figure = {100, 100, 40, 20};
  return out;
}

constexpr seen::Witnesses kReady{true, false, true, false};
constexpr seen::Witnesses kUnsure{false, true, true, false};
constexpr seen::Witnesses kPlain{true, false, false, false};

class OfferingTest : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    desk.take(job, {});
    const auto laid = layPicture(desk.job(), 0, Face::top, QStringLiteral("print"), "bytes");
    ASSERT_TRUE(laid.ok());
    const Lettered none = *readLength("0", {Unit::inch}), one = *readLength("1", {Unit::inch});
    desk.take(*setPicturePoints(*laid, "print", {{0, 0, none, none}, {100, 0, one, none}}), {});
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused = why; });
  }

  /// A plate 3 wide with a hole at 1 3/16, and what may be lettered from the left side to the hole.
  void offer(std::vector<seen::ReadingOffer> readings) {
    seen::Offers offers;
    offers.features = {hole(1.19, 1), edge(true, 0.004), edge(true, 3.003)};
    offers.readings = std::move(readings);
    const auto map = squareUp(std::vector<KnownPoint>{{{0, 0}, {0, 0}}, {{100, 0}, {1, 0}}});
    ASSERT_TRUE(map.ok());
    work.noteOffers(PictureOffers{offers, map->pixelToInches});
    work.goThroughOffers();
    ASSERT_EQ(work.doing(), Doing::offering);
  }

  void takeFeatures() {
    for (int i = 0; i < 3; ++i) enter();
    ASSERT_EQ(part().features.size(), 3u) << qPrintable(refused);
  }

  bool enter(const char* text = "") {
    QTest::qWait(static_cast<int>(seen::kDeaf.count()) + 20);
    return work.enter(QString::fromUtf8(text));
  }

  const Part& part() { return desk.part(); }

  Desk desk;
  Work work{desk};
  QString refused;
};

TEST_F(OfferingTest, SidesComeFirstAndKnowWhichTheyAre) {
  offer({});
  EXPECT_EQ(work.offer(), QStringLiteral("L left"));
  takeFeatures();
  EXPECT_EQ(sideOf(*part().feature("L")), Side::left);
  EXPECT_EQ(sideOf(*part().feature("R")), Side::right);
  EXPECT_EQ(part().feature("A")->traced, (std::vector<std::string>{"1.190", "1.000"}));
  EXPECT_FALSE(diameterOf(*part().feature("A")).has_value());  // a size is never measured
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(work.offering(), nullptr);
}

TEST_F(OfferingTest, AReadyFigureIsTakenByEnterAndKeepsItsWitnesses) {
  offer({dimension(0, 1.19, {lettered("1 3/16")}, kReady)});
  takeFeatures();
  EXPECT_EQ(work.offer(), QStringLiteral("1 3/16"));
  EXPECT_TRUE(work.echo({}).text.contains(QStringLiteral("30.1625 mm")));
  EXPECT_TRUE(part().readings.empty());
  EXPECT_TRUE(enter());
  ASSERT_EQ(part().readings.size(), 1u);
  const Reading& reading = part().readings[0];
  EXPECT_EQ(reading.from, "L");
  EXPECT_EQ(reading.to, "A");
  EXPECT_EQ(reading.figure.text, "1 3/16");
  EXPECT_EQ(reading.offered, "G S");
  EXPECT_EQ(reading.place, (std::vector<std::string>{"1.200", "-1.100"}));
}

TEST_F(OfferingTest, EnterIsDeafAtFirst) {
  offer({dimension(0, 1.19, {lettered("1 3/16")}, kReady)});
  EXPECT_FALSE(work.enter({}));
  EXPECT_TRUE(part().features.empty());
  takeFeatures();
  EXPECT_FALSE(work.enter({}));
  EXPECT_TRUE(part().readings.empty());
}

TEST_F(OfferingTest, WhatTheTracingSpeaksAgainstIsAskedAndNeverReady) {
  offer({dimension(0, 1.19, {lettered("1 5/8")}, kReady)});
  takeFeatures();
  EXPECT_TRUE(work.offer().isEmpty());
  EXPECT_TRUE(work.prompt().contains(QStringLiteral("1 5/8")));
  EXPECT_FALSE(enter());
  EXPECT_TRUE(part().readings.empty());
  EXPECT_TRUE(work.echo(QStringLiteral("1 5/8")).doubtful);
}

TEST_F(OfferingTest, WhatDoesNotCloseIsNeverReady) {
  offer({dimension(0, 1.19, {lettered("1 3/16")}, kReady),
         dimension(1.19, 3, {lettered("1 13/16")}, kReady),
         dimension(0, 3, {lettered("3 1/64")}, kReady)});
  takeFeatures();
  int taken = 0;
  while (work.doing() == Doing::offering && !work.offer().isEmpty()) {
    ASSERT_TRUE(enter());
    ++taken;
  }
  EXPECT_EQ(taken, 2);
  EXPECT_EQ(work.doing(), Doing::offering);  // the third is asked
  EXPECT_TRUE(desk.solution().clashes.empty());
  EXPECT_FALSE(enter());
  EXPECT_EQ(part().readings.size(), 2u);
}

TEST_F(OfferingTest, AChoiceFillsNothingInAndIsTakenByItsKey) {
  offer({dimension(0, 1.19, {lettered("1 5/16"), lettered("1 3/16")}, kUnsure)});
  takeFeatures();
  EXPECT_TRUE(work.offer().isEmpty());
  EXPECT_FALSE(enter());
  EXPECT_FALSE(work.choose(2));
  EXPECT_TRUE(work.choose(1));
  ASSERT_EQ(part().readings.size(), 1u);
  EXPECT_EQ(part().readings[0].figure.text, "1 3/16");
  EXPECT_EQ(part().readings[0].offered, "");
}

TEST_F(OfferingTest, AHurriedHandChoosesNothing) {
  offer({dimension(0, 1.19, {lettered("1 5/16"), lettered("1 3/16")}, kUnsure)});
  takeFeatures();
  EXPECT_TRUE(work.choose(0));  // the key is meant for the choice, but comes too early
  EXPECT_TRUE(part().readings.empty());
}

TEST_F(OfferingTest, WithoutTheDrawingsWordItIsTyped) {
  offer({dimension(0, 1.19, {lettered("1 3/16")}, kPlain)});
  takeFeatures();
  EXPECT_TRUE(work.offer().isEmpty());
  EXPECT_FALSE(enter());
  EXPECT_TRUE(enter("1 3/16"));
  EXPECT_EQ(part().readings.size(), 1u);
}

TEST_F(OfferingTest, WhatIsDroppedDoesNotComeBackAndWhatIsPassedDoes) {
  offer({dimension(0, 1.19, {lettered("1 3/16")}, kReady)});
  EXPECT_TRUE(work.pass());
  EXPECT_EQ(work.offer(), QStringLiteral("R right"));
  work.back();
  EXPECT_TRUE(enter("A 1/4 ream"));
  EXPECT_EQ(part().feature("A")->traced.size(), 2u);
  work.back();  // the reading
  EXPECT_EQ(work.offer(), QStringLiteral("L left"));
  EXPECT_TRUE(enter());
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(part().feature("R"), nullptr);
  EXPECT_EQ(work.offering(), nullptr);
}

TEST_F(OfferingTest, UndoOpensItAgain) {
  offer({dimension(0, 1.19, {lettered("1 3/16")}, kReady)});
  takeFeatures();
  EXPECT_TRUE(enter());
  EXPECT_EQ(work.doing(), Doing::looking);
  desk.undo();
  EXPECT_TRUE(part().readings.empty());
  ASSERT_NE(work.offering(), nullptr);
  work.goThroughOffers();
  EXPECT_EQ(work.offer(), QStringLiteral("1 3/16"));
  desk.redo();
  work.goThroughOffers();
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(part().readings.size(), 1u);
}

TEST_F(OfferingTest, AnEndThatNoTraceLiesAtIsPointedOut) {
  offer({dimension(0, 1.3, {lettered("1 3/16")}, kReady)});
  takeFeatures();
  EXPECT_TRUE(work.prompt().contains(QStringLiteral("point at the place")));
  EXPECT_TRUE(work.offer().isEmpty());
  Pointed pointed;
  pointed.at = {1.19, 1};
  pointed.place = "A";
  work.point(pointed);
  EXPECT_EQ(work.offer(), QStringLiteral("1 3/16"));
}

TEST_F(OfferingTest, AnotherPictureDropsWhatIsStillOpen) {
  offer({dimension(0, 1.19, {lettered("1 3/16")}, kReady)});
  EXPECT_TRUE(enter());
  work.noteOffers({});
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(work.offering(), nullptr);
  EXPECT_EQ(part().features.size(), 1u);
}

}  // namespace
}  // namespace inchwright::app
