// Going through what a print offers: one at a time, ready only where nothing speaks against it, and
// nothing in the document without Enter.

#include "app/session/offering.h"

#include "app/session/offer_walk.h"
#include "tests/support/offers_on_desk.h"

namespace inchwright::app {
namespace {

using seen::OfferedFeature;
using seen::OfferedReading;
using test::dimension;
using test::edgeAt;
using test::faint;
using test::holeAt;
using test::kPlain;
using test::kReady;
using test::kUnsure;
using test::lettered;

class OfferingTest : public testing::Test, protected test::OffersOnDesk {
 protected:
  /// The sound plate, with another figure or another grade from the left side to the hole.
  void offerFigure(std::vector<seen::Candidate> candidates, seen::Witnesses witnesses) {
    seen::Offers offers = sound();
    offers.readings[0].candidates = std::move(candidates);
    offers.readings[0].witnesses = witnesses;
    offer(offers);
  }

  QString prompt() { return work.prompt(); }
};

TEST_F(OfferingTest, ADimensionBringsThePlacesAtItsEnds) {
  offer(sound());
  EXPECT_EQ(work.offersWaiting(), 4u);
  EXPECT_EQ(work.offer(), QStringLiteral("1 3/16"));
  EXPECT_TRUE(prompt().startsWith(QStringLiteral("From L (new) to A (new) along X")))
      << qPrintable(prompt());
  EXPECT_EQ(work.offeredAlongside().size(), 2u);
  EXPECT_TRUE(part().features.empty());
  EXPECT_TRUE(enter());
  ASSERT_EQ(part().features.size(), 2u);
  EXPECT_EQ(sideOf(*part().feature("L")), Side::left);
  EXPECT_EQ(part().feature("A")->traced, (std::vector<std::string>{"1.190", "1.000"}));
  EXPECT_FALSE(diameterOf(*part().feature("A")).has_value());  // a size is never measured
  ASSERT_EQ(part().readings.size(), 1u);
  EXPECT_TRUE(prompt().startsWith(QStringLiteral("From L to R (new) along X")))
      << qPrintable(prompt());
  for (int i = 0; i < 3; ++i) EXPECT_TRUE(enter());
  EXPECT_EQ(part().features.size(), 5u);
  EXPECT_EQ(part().readings.size(), 4u);
  EXPECT_EQ(sideOf(*part().feature("K")), Side::back);
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(work.offering(), nullptr);
  EXPECT_TRUE(desk.solution().clashes.empty());
}

TEST_F(OfferingTest, AReadyFigureIsTakenByEnterAndKeepsItsWitnesses) {
  offer(sound());
  EXPECT_TRUE(work.echo({}).text.contains(QStringLiteral("30.1625 mm")));
  EXPECT_TRUE(enter());
  ASSERT_EQ(part().readings.size(), 1u);
  const Reading& reading = part().readings[0];
  EXPECT_EQ(reading.from, "L");
  EXPECT_EQ(reading.to, "A");
  EXPECT_EQ(reading.figure.text, "1 3/16");
  EXPECT_EQ(reading.offered, "G S");
  EXPECT_EQ(reading.place, (std::vector<std::string>{"0.595", "-0.500"}));
}

TEST_F(OfferingTest, EnterIsDeafAtFirst) {
  offer(sound());
  EXPECT_FALSE(work.enter({}));
  now += seen::kDeaf - std::chrono::milliseconds(1);
  EXPECT_FALSE(work.enter({}));
  EXPECT_TRUE(part().readings.empty());
  EXPECT_TRUE(enter());
  EXPECT_FALSE(work.enter({}));
  EXPECT_EQ(part().readings.size(), 1u);
}

TEST_F(OfferingTest, WhatNoDimensionEndsAtIsNotTakenByEnterAndComesLast) {
  seen::Offers offers = sound();
  offers.features.push_back(edgeAt(true, 0.6));        // a dashed line
  offers.features.push_back(holeAt(2.2, 1.6));         // a counter of an 8
  offers.features.push_back(faint(holeAt(0.6, 1.0)));  // a 0 in line with a hole
  offer(offers);
  for (int i = 0; i < 4; ++i) EXPECT_TRUE(enter());
  EXPECT_EQ(part().features.size(), 5u);
  EXPECT_EQ(work.offersWaiting(), 3u);
  for (int i = 0; i < 3; ++i) {
    EXPECT_TRUE(work.offer().isEmpty());
    EXPECT_TRUE(prompt().contains(QStringLiteral("unless it is a dashed line or lettering")))
        << qPrintable(prompt());
    EXPECT_FALSE(enter());
    EXPECT_FALSE(refused.isEmpty());
    refused.clear();
    EXPECT_TRUE(work.pass());
  }
  EXPECT_EQ(part().features.size(), 5u);
  EXPECT_EQ(work.offersWaiting(), 3u);
  EXPECT_TRUE(enter("S x"));  // whoever sees that it is one names it
  EXPECT_EQ(part().feature("S")->traced, std::vector<std::string>{"0.600"});
}

TEST_F(OfferingTest, ACircleWithinAFigureIsNotTakenByEnter) {
  seen::Offers offers = sound();
  offers.readings.push_back(dimension(true, 0, 1.19, {}, {}));
  offers.readings.back().figure = {110, -110, 20, 20};  // round the hole
  offer(offers);
  hurry();
  EXPECT_EQ(part().feature("A"), nullptr);
  EXPECT_NE(part().feature("L"), nullptr);
}

TEST_F(OfferingTest, WhatTheTracingSpeaksAgainstIsAskedAndNeverReady) {
  offerFigure({lettered("1 5/8")}, kReady);
  EXPECT_TRUE(work.offer().isEmpty());
  EXPECT_TRUE(prompt().contains(QStringLiteral("1 5/8")));
  EXPECT_FALSE(enter());
  EXPECT_TRUE(part().readings.empty());
  EXPECT_TRUE(work.echo(QStringLiteral("1 5/8")).doubtful);
}

TEST_F(OfferingTest, WhatDoesNotCloseIsNeverReady) {
  seen::Offers offers = sound();
  offers.readings[1] = dimension(true, 1.19, 3, {lettered("1 13/16")});
  offers.readings.push_back(dimension(true, 0, 3, {lettered("3 1/64")}));
  offer(offers);
  int taken = 0;
  while (work.doing() == Doing::offering && !work.offer().isEmpty()) {
    ASSERT_TRUE(enter());
    ++taken;
  }
  EXPECT_EQ(taken, 2);
  EXPECT_EQ(work.doing(), Doing::offering);  // the third is asked
  EXPECT_FALSE(enter());
  hurry();
  EXPECT_TRUE(desk.solution().clashes.empty());
  EXPECT_EQ(part().readings.size(), 4u);
}

TEST_F(OfferingTest, AChoiceFillsNothingInAndIsTakenByItsKey) {
  offerFigure({lettered("1 5/16"), lettered("1 3/16")}, kUnsure);
  EXPECT_TRUE(work.offer().isEmpty());
  EXPECT_FALSE(enter());
  EXPECT_TRUE(refused.contains(QStringLiteral("Alt+1"))) << qPrintable(refused);
  EXPECT_FALSE(work.choose(2));
  EXPECT_TRUE(work.choose(1));
  ASSERT_EQ(part().readings.size(), 1u);
  EXPECT_EQ(part().readings[0].figure.text, "1 3/16");
  EXPECT_EQ(part().readings[0].offered, "");
}

TEST_F(OfferingTest, AHurriedHandChoosesNothing) {
  offerFigure({lettered("1 5/16"), lettered("1 3/16")}, kUnsure);
  EXPECT_TRUE(work.choose(0));  // the key is meant for the choice, but comes too early
  EXPECT_TRUE(part().readings.empty());
}

TEST_F(OfferingTest, WithoutTheDrawingsWordItIsTyped) {
  offerFigure({lettered("1 3/16")}, kPlain);
  EXPECT_TRUE(work.offer().isEmpty());
  EXPECT_FALSE(enter());
  EXPECT_TRUE(enter("1 3/16"));
  EXPECT_EQ(part().readings.size(), 1u);
  EXPECT_EQ(part().features.size(), 2u);
}

TEST_F(OfferingTest, ANotesSizeComesWithTheHoleAndBeforeItsDimensions) {
  seen::Offers offers = sound();
  offers.features[0].size = "17/64";
  offers.features[0].sizeWitnesses = kReady;
  offers.features[0].note = "DRILL";
  offer(offers);
  EXPECT_EQ(work.offer(), QStringLiteral("A 17/64 DRILL"));
  EXPECT_TRUE(work.pass());
  EXPECT_EQ(work.offer(), QStringLiteral("3"));  // what ends at the hole waits for it
  EXPECT_TRUE(work.pass());
  EXPECT_EQ(work.offer(), QStringLiteral("2"));
  EXPECT_TRUE(work.pass());
  EXPECT_TRUE(enter());
  EXPECT_EQ(diameterOf(*part().feature("A"))->text, "17/64");
  EXPECT_EQ(work.offer(), QStringLiteral("1 3/16"));
}

TEST_F(OfferingTest, ASizeThatIsNotPlainIsTyped) {
  seen::Offers offers = sound();
  offers.features[0].size = "17/64";
  offers.features[0].sizeWitnesses = kUnsure;
  offer(offers);
  EXPECT_TRUE(work.offer().isEmpty());
  EXPECT_FALSE(enter());
  EXPECT_TRUE(enter("A 17/64 drill"));
}

TEST(OffersOfFace, ANotesSizeHoldsForAsManyAsItSaysWhereTheyStandOut) {
  seen::Offers offers;
  offers.features = {holeAt(1, 1, 0.1328), holeAt(2, 1, 0.1331), holeAt(2, 2, 0.1325),
                     holeAt(1, 2, 0.1250), holeAt(3, 2, 0.1251)};
  seen::FeatureOffer& noted = offers.features[0];
  noted.size = "17/64";
  noted.sizeWitnesses = kReady;
  noted.note = "DRILL";
  noted.count = 3;
  const auto sizes = [&] {
    std::vector<std::string> out;
    for (const auto& f : offersOfFace(offers).features) out.push_back(f.size);
    return out;
  };
  EXPECT_EQ(sizes(), (std::vector<std::string>{"17/64", "17/64", "17/64", "", ""}));
  noted.count = 4;  // the fourth would be one of two that look the same
  EXPECT_EQ(sizes(), (std::vector<std::string>{"17/64", "", "", "", ""}));
  noted.count = 3;
  // As good as those that are counted, or nearer to them than half of what may differ.
  for (const double near : {0.1323, 0.1303}) {
    offers.features[3].drawnRadius = near;
    EXPECT_EQ(sizes(), (std::vector<std::string>{"17/64", "", "", "", ""}));
  }
  offers.features[3].drawnRadius = 0.1300;
  EXPECT_EQ(sizes(), (std::vector<std::string>{"17/64", "17/64", "17/64", "", ""}));
  offers.features[3].drawnRadius = 0.125;
  offers.features[1].size = "1/4";  // another note points at one of them
  EXPECT_EQ(sizes(), (std::vector<std::string>{"17/64", "1/4", "", "", ""}));
  offers.features[1].size = "";
  noted.sizeWitnesses = kPlain;
  EXPECT_EQ(sizes(), (std::vector<std::string>{"17/64", "", "", "", ""}));
}

TEST(OffersOfFace, ACircleIsNoSlotAndOtherViewsAreLeftOut) {
  seen::Offers offers = test::OffersOnDesk::sound();
  for (const double x : {1.2, 2.0}) {
    offers.features.push_back(holeAt(x, 1));
    offers.features.back().kind = OfferedFeature::slot;
  }
  offers.features.push_back(edgeAt(true, 5));
  offers.features.back().view = 1;
  const auto here = offersOfFace(offers);
  ASSERT_EQ(here.features.size(), 6u);
  EXPECT_EQ(here.features[0].kind, OfferedFeature::edge);
  EXPECT_EQ(here.features[4].kind, OfferedFeature::slot);
  EXPECT_EQ(here.features[4].at.x, 2.0);
  EXPECT_EQ(here.features[5].kind, OfferedFeature::hole);
}

// The end of the offers is not the end of the print.
TEST_F(OfferingTest, WhatIsNotGoneThroughIsCounted) {
  seen::Offers offers = sound();
  EXPECT_EQ(passedBy(offers), Offering::PassedBy{});
  offer(offers);
  EXPECT_FALSE(prompt().contains(QStringLiteral("by hand"))) << qPrintable(prompt());
  offers.readings.push_back(dimension(true, 0, 1, {lettered("58")}));
  offers.readings.back().kind = OfferedReading::angle;
  for (const bool along : {true, false}) {
    offers.readings.push_back(dimension(along, 5, 6, {lettered("1")}));
    offers.readings.back().view = 1;
  }
  EXPECT_EQ(passedBy(offers), (Offering::PassedBy{1, 2}));
  offer(offers);
  EXPECT_EQ(work.offersWaiting(), 4u);
  EXPECT_TRUE(
      prompt().endsWith(QStringLiteral("; by hand: angles (1), dimensions of other views (2)")))
      << qPrintable(prompt());
}

TEST_F(OfferingTest, ARingBringsItsHoles) {
  seen::Offers offers = sound();
  seen::FeatureOffer ring = test::ringAt(2, 1, 0.5, "1");
  ring.takeSize({});
  offers.features.push_back(ring);
  for (const auto& [x, y] : {std::pair(2.5, 1.0), {2.0, 1.5}, {1.5, 1.0}, {2.0, 0.5}}) {
    offers.features.push_back(faint(holeAt(x, y, 0.06)));
  }
  offer(offers);
  // Before its holes, lest they be taken one by one.
  EXPECT_TRUE(prompt().startsWith(QStringLiteral("Offered: ring of holes. Type what it is.")));
  EXPECT_FALSE(enter());
  EXPECT_TRUE(enter("G 4 on 1 from 0 drill 1/8"));
  for (int i = 0; i < 4; ++i) EXPECT_TRUE(enter());
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(part().feature("G")->traced, (std::vector<std::string>{"2.000", "1.000"}));
  EXPECT_TRUE(part().feature("G")->as<kind::Ring>()->byTrace.empty());
}

TEST_F(OfferingTest, ARingWhoseNoteSaysAllIsTakenByEnter) {
  seen::Offers offers = sound();
  offers.features.push_back(test::ringAt(2, 1, 0.5, "1"));
  offer(offers);
  EXPECT_EQ(work.offer(), QStringLiteral("A 4 HOLES 1/8 DRILL ON 1 P.C.D. from 0"));
  EXPECT_TRUE(enter());
  const auto* ring = part().feature("A")->as<kind::Ring>();
  ASSERT_NE(ring, nullptr);
  EXPECT_EQ(ring->holes, 4);
  EXPECT_EQ(ring->pitchDiameter->text, "1");
  EXPECT_EQ(ring->drilled.diameter->text, "1/8");
  // Which way it is turned nobody lettered, and that is said.
  EXPECT_EQ(ring->byTrace, std::vector<std::string>{"first_angle"});
}

TEST_F(OfferingTest, ASlantedAndACurvedSideComeAfterTheirNeighbours) {
  seen::Offers offers = sound();
  offers.features.push_back(test::sideBetween({2.5, 2.002}, {3.003, 1.75}));
  offers.features.push_back(test::sideBetween({0.004, 1.5}, {0.5, 2.002}, 0.5, {0.004, 2.002}));
  offers.features.push_back(test::sideBetween({1.2, 0.001}, {1.5, 0.3}));  // ends at no edge
  offer(offers);
  for (int i = 0; i < 4; ++i) EXPECT_TRUE(enter());
  EXPECT_EQ(work.offersWaiting(), 3u);
  EXPECT_TRUE(prompt().startsWith(QStringLiteral("Offered: line. Enter takes it")))
      << qPrintable(prompt());
  EXPECT_TRUE(enter());
  EXPECT_TRUE(prompt().startsWith(QStringLiteral("Offered: arc. Enter takes it")))
      << qPrintable(prompt());
  EXPECT_TRUE(enter());
  EXPECT_FALSE(enter());
  const Feature &line = part().features[5], &arc = part().features[6];
  ASSERT_TRUE(line.is<kind::Line>() && arc.is<kind::Arc>());
  EXPECT_EQ(line.traced, (std::vector<std::string>{"2.500", "2.002", "3.003", "1.750"}));
  EXPECT_EQ(arc.traced, (std::vector<std::string>{"0.004", "2.002", "0.500"}));
  EXPECT_FALSE(arc.as<kind::Arc>()->radius);  // never measured
  EXPECT_EQ(work.offersWaiting(), 1u);
}

seen::Offers withRow() {
  seen::Offers offers = test::OffersOnDesk::sound();
  offers.features.push_back(test::rowAt(1.6, 2.5, 0.5, 4, "1/8"));
  for (const double x : {1.6, 1.9, 2.2, 2.5}) offers.features.push_back(holeAt(x, 0.5, 0.0625));
  offers.readings.push_back(dimension(true, 0, 1.6, {lettered("1 19/32")}));
  offers.readings.push_back(dimension(true, 1.6, 2.5, {lettered("29/32")}));
  return offers;
}

TEST_F(OfferingTest, ARowIsTakenWholeAndDimensionsEndAtItsHoles) {
  offer(withRow());
  EXPECT_TRUE(prompt().startsWith(QStringLiteral("Offered: row of holes, 4 of them. Enter takes")))
      << qPrintable(prompt());
  EXPECT_EQ(work.offer(), QStringLiteral("A 4 HOLES 1/8 DRILL"));
  EXPECT_TRUE(enter());
  const auto* row = part().feature("A")->as<kind::Row>();
  ASSERT_NE(row, nullptr);
  EXPECT_EQ(row->holes, 4);
  EXPECT_EQ(row->axis, Axis::x);
  EXPECT_FALSE(row->pitch);
  EXPECT_EQ(row->drilled.diameter->text, "1/8");
  EXPECT_EQ(part().feature("A")->traced, (std::vector<std::string>{"1.600", "0.500"}));
  // Its holes are not offered again, and its last one ends the dimension along it.
  bool toFirst = false, fromFirstToLast = false;
  for (int i = 0; i < 12 && work.doing() == Doing::offering; ++i) {
    if (!enter()) work.pass();
  }
  EXPECT_EQ(work.doing(), Doing::looking);
  for (const Reading& one : part().readings) {
    toFirst = toFirst || (one.from == "L" && (one.to == "A" || one.to == "A1"));
    fromFirstToLast = fromFirstToLast || ((one.from == "A" || one.from == "A1") && one.to == "A4");
  }
  EXPECT_TRUE(toFirst);
  EXPECT_TRUE(fromFirstToLast);
  EXPECT_EQ(part().features.size(), 6u);
}

TEST_F(OfferingTest, ARowThatIsDroppedLeavesItsHoles) {
  offer(withRow());
  work.back();
  for (int i = 0; i < 20 && work.doing() == Doing::offering; ++i) {
    if (!enter()) work.pass();
  }
  for (const Feature& one : part().features) EXPECT_FALSE(one.is<kind::Row>());
  EXPECT_EQ(std::count_if(part().features.begin(), part().features.end(),
                          [](const Feature& one) { return one.is<kind::Hole>(); }),
            3);  // those at which dimensions end; the inner two are for whoever sees them
}

TEST_F(OfferingTest, ARoundComesAfterItsSidesAndLiesBetweenThem) {
  seen::Offers offers = sound();
  offers.features.push_back(test::roundAt({3.003, 2.002}, {2.75, 1.75}, "R1/4"));
  offers.features.back().count = 2;
  offers.features.push_back(test::roundAt({0.004, 2.002}, {0.25, 1.75}, ""));
  offer(offers);
  for (int i = 0; i < 4; ++i) EXPECT_TRUE(enter());
  EXPECT_TRUE(prompt().startsWith(QStringLiteral("Offered: round. Enter takes it")))
      << qPrintable(prompt());
  EXPECT_EQ(work.offer(), QStringLiteral("B R1/4"));
  EXPECT_TRUE(enter());
  const auto* round = part().feature("B")->as<kind::Round>();
  ASSERT_NE(round, nullptr);
  EXPECT_EQ(round->radius->text, "R1/4");
  EXPECT_EQ(round->corner, (std::vector<Id>{"R", "K"}));
  // The other of the two that the note speaks of.
  EXPECT_EQ(work.offer(), QStringLiteral("C R1/4"));
  EXPECT_TRUE(enter());
  EXPECT_EQ(part().feature("C")->as<kind::Round>()->corner, (std::vector<Id>{"L", "K"}));
  EXPECT_EQ(work.doing(), Doing::looking);
}

TEST_F(OfferingTest, ARoundWithoutItsSidesOrItsRadiusIsNotTaken) {
  seen::Offers offers;
  offers.features = {test::roundAt({3, 2}, {2.75, 1.75}, "R1/4")};
  offer(offers);
  EXPECT_FALSE(enter());
  EXPECT_TRUE(part().features.empty());
  EXPECT_EQ(refused, QStringLiteral("its two sides come first"));
  offers = sound();
  offers.features.push_back(test::roundAt({3.003, 2.002}, {2.75, 1.75}, ""));
  offer(offers);
  for (int i = 0; i < 4; ++i) EXPECT_TRUE(enter());
  EXPECT_TRUE(prompt().startsWith(QStringLiteral("Offered: round. Type what it is.")))
      << qPrintable(prompt());
  EXPECT_FALSE(enter());
  EXPECT_TRUE(enter("R 5/16"));
  EXPECT_EQ(part().features.back().as<kind::Round>()->corner, (std::vector<Id>{"R", "K"}));
}

TEST_F(OfferingTest, WhatIsDroppedDoesNotComeBackAndWhatIsPassedDoes) {
  offer(sound());
  EXPECT_TRUE(work.pass());
  EXPECT_EQ(work.offer(), QStringLiteral("3"));
  work.back();
  EXPECT_EQ(work.offer(), QStringLiteral("1"));
  EXPECT_TRUE(enter());
  EXPECT_TRUE(enter());
  // No dimension brings the right side any more, but one ended there, so that it is one.
  EXPECT_EQ(work.offer(), QStringLiteral("R right"));
  work.back();
  EXPECT_EQ(work.offer(), QStringLiteral("1 3/16"));
  EXPECT_TRUE(enter());
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(part().feature("R"), nullptr);
  EXPECT_EQ(part().readings.size(), 3u);
  EXPECT_EQ(work.offering(), nullptr);
}

TEST_F(OfferingTest, UndoTakesAReadingBackWithItsPlacesAndOpensThemAgain) {
  offer(sound());
  EXPECT_TRUE(enter());
  EXPECT_TRUE(enter());
  desk.undo();
  desk.undo();
  EXPECT_TRUE(part().readings.empty());
  EXPECT_TRUE(part().features.empty());
  EXPECT_EQ(work.offersWaiting(), 4u);
  EXPECT_EQ(work.offer(), QStringLiteral("1 3/16"));
  desk.redo();
  EXPECT_EQ(work.offersWaiting(), 3u);
  EXPECT_FALSE(enter());  // what was lit is there again; another one is shown first
  EXPECT_TRUE(enter());
  EXPECT_EQ(part().readings.size(), 2u);
}

TEST_F(OfferingTest, AnEndWhereNothingLiesIsPointedOut) {
  seen::Offers offers = sound();
  offers.readings[0] = dimension(true, 0, 1.3, {lettered("1 3/16")});
  offer(offers);
  EXPECT_TRUE(prompt().contains(QStringLiteral("point at the place")));
  EXPECT_TRUE(work.offer().isEmpty());
  EXPECT_TRUE(work.pass());
  for (int i = 0; i < 3; ++i) EXPECT_TRUE(enter());
  Pointed pointed;
  pointed.at = {1.19, 1};
  pointed.place = "A";
  work.point(pointed);
  EXPECT_EQ(work.offer(), QStringLiteral("1 3/16"));
}

TEST_F(OfferingTest, TheSecondReadingAsksFirstForWhatWasOfferedAndForgetsThatWhereItDiffers) {
  seen::Offers offers = sound();
  offers.readings[0].witnesses = kPlain;
  offer(offers);
  EXPECT_TRUE(enter("1.1875"));
  for (int i = 0; i < 3; ++i) EXPECT_TRUE(enter());
  ASSERT_EQ(part().readings.size(), 4u);
  EXPECT_EQ(part().readings[0].offered, "");
  work.reread();
  for (const char* offered : {"3", "1"}) EXPECT_TRUE(work.enter(QLatin1String(offered)));
  EXPECT_EQ(part().readings[1].again, "3");
  EXPECT_EQ(part().readings[2].again, "1");
  EXPECT_EQ(part().readings[2].offered, "G S");
  // The last of them is lettered otherwise than Enter took it.
  for (int i = 0; i < 2; ++i) EXPECT_TRUE(work.enter(QStringLiteral("2 1/64")));
  EXPECT_EQ(part().readings[3].figure.text, "2 1/64");
  EXPECT_EQ(part().readings[3].offered, "");
}

TEST_F(OfferingTest, AnotherPictureDropsWhatIsStillOpen) {
  offer(sound());
  EXPECT_TRUE(enter());
  work.noteOffers({});
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(work.offering(), nullptr);
  EXPECT_EQ(part().features.size(), 2u);
}

}  // namespace
}  // namespace inchwright::app
