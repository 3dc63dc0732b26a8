#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/part/shop_owned.h"

namespace inchwright::app {

/// The kinds of tools that are owned in many sizes.
enum class ShopList { drills, reamers, taps, cutters, countersinks, counterbores, parallels, pins };
inline constexpr int kShopLists = 8;

/// Tools that are commonly bought together, so that one tick says them all.
struct ToolSet {
  QString name;       ///< as people call it
  QStringList items;  ///< as they stand in the list
};
std::vector<ToolSet> setsOf(ShopList list);

/// What is owned of a kind, each as it can be typed: `fractional 1/16 to 1/2`, `1/4 hand`,
/// `1/4-20 UNC bottoming`, `1/8 x 1`, `0.061 to 0.250 ZZ plus`. Empty where nothing is said.
std::optional<QStringList> itemsOf(const Shop& shop, ShopList list);

/// The shop with other items of a kind; nothing: all customary sizes. An item that was there before
/// keeps all that is known of it. Errors: those of reading a size, set or thread, of `checkShop`,
/// and `badText` for an item that stands there twice; `place` is the item as typed.
Result<Shop> withItems(const Shop& shop, ShopList list, const std::optional<QStringList>& items);

}  // namespace inchwright::app
