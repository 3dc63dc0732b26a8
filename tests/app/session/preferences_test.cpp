#include "app/session/preferences.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>
#include <cmath>

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

TEST(PreferencesTest, ALookATextSizeAndAnEnglishAreKeptAndNoneElseIsTaken) {
  usePrivateHome();
  headlessApplication();
  EXPECT_EQ(Preferences::textSize(), kUsualTextSize);
  for (const int pixels : kTextSizes) {
    Preferences::setTextSize(pixels);
    EXPECT_EQ(Preferences::textSize(), pixels);
  }
  Preferences::setTextSize(16);
  EXPECT_EQ(Preferences::textSize(), kUsualTextSize);
  Preferences::setTextSize(kUsualTextSize);
  for (const auto look : {Look::Choice::day, Look::Choice::lamplight, Look::Choice::system}) {
    Preferences::setLook(look);
    EXPECT_EQ(Preferences::look(), look);
  }
  for (const auto english : {EnglishChoice::uk, EnglishChoice::us, EnglishChoice::system}) {
    Preferences::setEnglish(english);
    EXPECT_EQ(Preferences::english(), english);
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

TEST(PreferencesTest, WhatWasLookedAtIsKeptByFileAndWhatIsSpoiltIsNot) {
  usePrivateHome();
  headlessApplication();
  const auto look = [](int part, int setup, int face, double scale, double x, double y) {
    Preferences::Looked looked{part, setup, face, scale, {x, y}};
    Preferences::noteLooked(QStringLiteral("plate.inchwright"), looked);
    return Preferences::looked(QStringLiteral("plate.inchwright"));
  };
  EXPECT_FALSE(Preferences::looked(QStringLiteral("never.inchwright")));
  const auto kept = look(1, 2, 5, 96.5, -0.25, 3.125);
  ASSERT_TRUE(kept);
  EXPECT_EQ(kept->part, 1);
  EXPECT_EQ(kept->setup, 2);
  EXPECT_EQ(kept->face, 5);
  EXPECT_EQ(kept->scale, 96.5);
  EXPECT_EQ(kept->middle, QPointF(-0.25, 3.125));
  EXPECT_TRUE(look(0, 0, 0, 0, 0, 0));
  EXPECT_FALSE(look(-1, 0, 0, 1, 0, 0));
  EXPECT_FALSE(look(0, -1, 0, 1, 0, 0));
  EXPECT_FALSE(look(0, 0, -1, 1, 0, 0));
  EXPECT_FALSE(look(0, 0, 6, 1, 0, 0));
  EXPECT_FALSE(look(0, 0, 0, std::nan(""), 0, 0));
  EXPECT_FALSE(look(0, 0, 0, 1, INFINITY, 0));
  EXPECT_FALSE(look(0, 0, 0, 1, 0, INFINITY));
  EXPECT_FALSE(Preferences::looked(QStringLiteral("never.inchwright")));
  // One file that is looked at again and again pushes no other out; ten others do.
  EXPECT_TRUE(look(1, 0, 0, 1, 0, 0));
  for (int i = 0; i < 20; ++i) Preferences::noteLooked(QStringLiteral("often.inchwright"), {});
  EXPECT_TRUE(Preferences::looked(QStringLiteral("plate.inchwright")));
  for (int i = 0; i < 10; ++i) Preferences::noteLooked(QString::number(i), {});
  EXPECT_FALSE(Preferences::looked(QStringLiteral("plate.inchwright")));
}

TEST(PreferencesTest, TenFilesAreRememberedTheLastOneFirst) {
  usePrivateHome();
  headlessApplication();
  const QTemporaryDir folder;
  QStringList made;
  for (int i = 0; i < 12; ++i) {
    made << folder.filePath(QString::number(i) + QStringLiteral(".inchwright"));
    QFile file(made.back());
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    Preferences::noteRecentFile(made.back());
  }
  QStringList wanted(made.rbegin(), made.rbegin() + 10);
  EXPECT_EQ(Preferences::recentFiles(), wanted);
  Preferences::noteRecentFile(made[5]);
  wanted.removeAll(made[5]);
  wanted.prepend(made[5]);
  EXPECT_EQ(Preferences::recentFiles(), wanted);
  QFile::remove(made[11]);
  wanted.removeAll(made[11]);
  EXPECT_EQ(Preferences::recentFiles(), wanted);
}

}  // namespace
}  // namespace inchwright::app
