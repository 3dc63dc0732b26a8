#include "app/session/preferences.h"

#include <gtest/gtest.h>

#include <QFile>

#include "app/base/headless.h"
#include "tests/support/private_home.h"

namespace inchwright::app {
namespace {

TEST(PreferencesTest, PaperIsTheUsualOneOfTheCountryUntilOneIsChosen) {
  usePrivateHome();
  headlessApplication();
  EXPECT_EQ(usualPaper(QLocale(QLocale::English, QLocale::UnitedStates)), Paper::letter);
  EXPECT_EQ(usualPaper(QLocale(QLocale::French, QLocale::Canada)), Paper::letter);
  EXPECT_EQ(usualPaper(QLocale(QLocale::English, QLocale::UnitedKingdom)), Paper::a4);
  EXPECT_EQ(usualPaper(QLocale(QLocale::German, QLocale::Germany)), Paper::a4);
  EXPECT_EQ(usualPaper(QLocale::c()), Paper::a4);
  EXPECT_EQ(Preferences::sheet().paper, usualPaper(QLocale::system()));
  SheetOptions options;
  for (const Paper chosen : {Paper::a4, Paper::letter}) {
    options.paper = chosen;
    Preferences::setSheet(options);
    EXPECT_EQ(Preferences::sheet().paper, chosen);
  }
}

TEST(PreferencesTest, TheShopIsKeptAndASpoiltOneIsTold) {
  usePrivateHome();
  headlessApplication();
  EXPECT_TRUE(Preferences::shop()->saysNothing());
  Shop shop;
  shop.drills = {{*readDrillSet("letter"), {}, {}}};
  shop.reamers = std::vector<OwnedReamer>();
  Preferences::setShop(shop);
  EXPECT_EQ(*Preferences::shop(), shop);
  shop.drills->front().set.text = "nonsense";
  Preferences::setShop(shop);
  ASSERT_FALSE(Preferences::shop().ok());
  EXPECT_EQ(Preferences::shop().error().place, Preferences::file().toStdString() + ": /drills/0");
  Preferences::setShop(Shop{});
}

}  // namespace
}  // namespace inchwright::app
