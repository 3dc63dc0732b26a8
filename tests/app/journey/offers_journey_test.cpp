// From a scan that is squared up to its places and readings, confirmed as the print offers them:
// every click and key counted, and not one wrong figure by Enter alone.

#include <gtest/gtest.h>

#include <iostream>
#include <set>

#include "core/document/document.h"
#include "tests/app/journey/hand.h"

namespace inchwright::app {
namespace {

/// The scan of the front plate as it was taken: a place of the plan, in inches at 100 pixels each.
QPointF onScan(QPointF plan) {
  return {(475 + 190 * plan.x()) / 100, -(1463 - 190 * plan.y()) / 100};
}

TEST(OffersJourney, AHurriedHandAtTheFrontPlateTakesNothingWrong) {
  auto sample = loadDocument(INCHWRIGHT_SOURCE_DIR "/samples/front_plate.inchwright");
  ASSERT_TRUE(sample.ok());
  Hand hand;
  hand.drop(QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/prints/front_plate.png"));
  hand.waitForPicture();
  hand.click(onScan({0, 0}));
  hand.line("");
  hand.click(onScan({3.875, 0}));
  hand.line("3 7/8");
  hand.click(onScan({3.875, 6.25}));
  hand.line("6 1/4");
  hand.click(onScan({0, 6.25}));
  hand.line("");
  hand.line("");
  hand.waitForPicture();
  Work& work = hand.window->work();
  ASSERT_TRUE(QTest::qWaitFor([&] { return work.offering() != nullptr; }, 60'000));
  // Nothing begins by itself, and nothing is in the document.
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_TRUE(hand.window->desk().part().features.empty());
  const int before = hand.count();
  hand.key(Qt::Key_G, Qt::ControlModifier);
  ASSERT_EQ(work.doing(), Doing::offering);
  const QString folder = qEnvironmentVariable("INCHWRIGHT_PICTURES");
  bool pictured = false;
  // Enter, whatever stands there; what is not ready is passed by, and dropped when it comes again.
  int choices = 0;
  for (int i = 0; i < 400 && work.doing() == Doing::offering; ++i) {
    if (work.offering()->offered.reading() != nullptr && !pictured && !folder.isEmpty()) {
      QTest::qWait(300);
      hand.window->grab().save(folder + QStringLiteral("/offers.png"));
      pictured = true;
    }
    QTest::qWait(static_cast<int>(seen::kDeaf.count()) + 20);
    const auto open = work.offering()->offered.open();
    const std::size_t steps = hand.window->desk().part().readings.size();
    hand.key(Qt::Key_Return);
    if (work.doing() != Doing::offering || work.offering()->offered.open() < open) continue;
    EXPECT_EQ(hand.window->desk().part().readings.size(), steps);
    ++choices;
    hand.key(Qt::Key_Escape);
  }
  const Part& part = hand.window->desk().part();
  std::set<std::int64_t> lettered;
  for (const Reading& one : sample->parts[0].readings) lettered.insert(one.figure.value.ticks());
  int offered = 0;
  for (const Reading& one : part.readings) {
    EXPECT_EQ(one.offered.rfind("G S", 0), 0u) << one.figure.text;
    EXPECT_TRUE(lettered.count(one.figure.value.ticks()) > 0) << one.figure.text;
    ++offered;
  }
  EXPECT_TRUE(hand.window->desk().solution().clashes.empty());
  EXPECT_GE(part.features.size(), 10u);
  EXPECT_GE(offered, 5);
  std::cout << "offers of the front plate: " << part.features.size() << " places and " << offered
            << " readings by " << hand.count() - before << " keys; " << choices
            << " were not ready\n";
}

}  // namespace
}  // namespace inchwright::app
