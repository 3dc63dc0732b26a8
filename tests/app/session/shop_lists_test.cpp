#include "app/session/shop_lists.h"

#include <gtest/gtest.h>

#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

// What is ticked or typed comes back as it stood, or somebody would tick another size next time.
TEST(ShopLists, AnItemIsReadAsItIsShown) {
  deskApplication();
  int sets = 0;
  for (int i = 0; i < kShopLists; ++i) {
    const auto list = static_cast<ShopList>(i);
    EXPECT_EQ(itemsOf(Shop(), list), std::nullopt) << "nothing is said";
    std::vector<ToolSet> all = setsOf(list);
    sets += static_cast<int>(all.size());
    if (list == ShopList::taps) all.push_back({"typed", {"1/4-20 UNC bottoming", "M6", "2 BA"}});
    if (list == ShopList::reamers) all.push_back({"typed", {"1/4 hand", "1/4", "6 mm"}});
    if (list == ShopList::counterbores) all.push_back({"typed", {"3/8", "12 mm"}});
    if (list == ShopList::parallels) all.push_back({"typed", {"1/8 x 1", "10 mm x 25 mm"}});
    if (list == ShopList::pins) {
      all.push_back({"typed", {"0.061 to 0.250 ZZ plus", "0.250", "0.1 + 0.2 to 0.3 X minus"}});
    }
    all.push_back({"none", {}});
    for (const ToolSet& set : all) {
      const auto shop = withItems(Shop(), list, set.items);
      ASSERT_TRUE(shop.ok()) << i << ' ' << set.name.toStdString() << shop.error().text;
      EXPECT_EQ(itemsOf(*shop, list), set.items) << i << ' ' << set.name.toStdString();
      EXPECT_EQ(*withItems(*shop, list, std::nullopt), Shop()) << "all sizes again";
      // Of the other kinds nothing is said.
      for (int other = 0; other < kShopLists; ++other) {
        if (other == i) continue;
        EXPECT_EQ(itemsOf(*shop, static_cast<ShopList>(other)), std::nullopt) << i << other;
      }
    }
  }
  EXPECT_GT(sets, 10);
}

TEST(ShopLists, WhatIsWrongIsNamedAsItWasTyped) {
  deskApplication();
  struct Case {
    ShopList list;
    QStringList items;
    const char* place;
  };
  for (const Case& one : {Case{ShopList::taps, {"1/4-20 UNC", "M6", "five"}, "five"},
                          {ShopList::taps, {"five", "M6"}, "five"},
                          {ShopList::taps, {"M6", "2 BA", "M6"}, "M6"},
                          {ShopList::cutters, {"1/4", "0"}, "0"},
                          {ShopList::cutters, {"1/4", "-1/8", "1/2"}, "-1/8"},
                          {ShopList::reamers, {"hand"}, "hand"},
                          {ShopList::parallels, {"1/8 x 1", "1/8"}, "1/8"},
                          {ShopList::parallels, {"1/8 x 1", "1/8 x 0"}, "1/8 x 0"},
                          {ShopList::pins, {"0.250 to 0.061"}, "0.250 to 0.061"},
                          {ShopList::drills, {"all there are"}, "all there are"}}) {
    const auto shop = withItems(Shop(), one.list, one.items);
    ASSERT_FALSE(shop.ok()) << one.place;
    EXPECT_EQ(shop.error().place, one.place) << shop.error().text;
  }
}

// A tick beside one tap must not forget how far another stands out.
TEST(ShopLists, WhatWasThereKeepsAllThatIsKnownOfIt) {
  deskApplication();
  Shop shop = *withItems(Shop(), ShopList::taps, QStringList{"M6", "2 BA"});
  shop.taps->at(1).stands = *readLength("2 1/2");
  const auto more = withItems(shop, ShopList::taps, QStringList{"M5", "2 BA"});
  ASSERT_TRUE(more.ok()) << more.error().text;
  ASSERT_EQ(more->taps->size(), 2u);
  EXPECT_FALSE(more->taps->at(0).stands);
  EXPECT_EQ(more->taps->at(1), shop.taps->at(1));
}

}  // namespace
}  // namespace inchwright::app
