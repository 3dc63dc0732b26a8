#include "app/session/shop_lists.h"

#include <QCoreApplication>
#include <QSet>
#include <algorithm>
#include <utility>

#include "core/measure/lettered.h"
#include "core/shop/thread_work.h"

namespace inchwright::app {
namespace {

QString own(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString words(const char* text) {
  return QCoreApplication::translate("ShopLists", text);
}

QStringList listed(const char* items) {
  return QString::fromLatin1(items).split(QStringLiteral(", "));
}

QStringList each(const char* items, const char* behind) {
  QStringList all = listed(items);
  for (QString& one : all) one += QLatin1String(behind);
  return all;
}

constexpr char kSixteenths[] = "1/8, 3/16, 1/4, 5/16, 3/8, 7/16, 1/2";
constexpr char kMillimetres[] = "3 mm, 4 mm, 5 mm, 6 mm, 8 mm, 10 mm, 12 mm";

/// What stands behind the size, such as `hand`; the size is cut off before it.
QString lastWordOff(QString& text) {
  const qsizetype blank = text.lastIndexOf(QLatin1Char(' '));
  if (blank < 0) return {};
  const QString word = text.mid(blank + 1).toLower();
  text = text.left(blank).trimmed();
  return word;
}

// A kind's item as text, and the tool read from one. What can't be read keeps the error's words.

/// The size of a tool. A bare figure as large as a tool never is was meant in millimetres.
Result<Lettered> readToolSize(const QString& text) {
  auto figure = readLength(text.toStdString());
  if (figure.ok() && figure->value > Length::ticks(Length::kTicksPerInch * 7 / 2)) {
    return Error{
        ErrorCode::badText,
        words("bare figures are inches, and this is over 3 1/2; say mm behind it").toStdString(),
        {}};
  }
  return figure;
}

QString itemOf(const OwnedDrills& one) {
  return own(one.set.text);
}
Result<OwnedDrills> readItem(const QString& text, const OwnedDrills*) {
  auto set = readDrillSet(text.toStdString());
  if (!set.ok()) return set.error();
  return OwnedDrills{*std::move(set), {}, {}};
}

QString itemOf(const OwnedReamer& one) {
  return own(one.size.text) + (one.by == ReamedBy::hand ? QStringLiteral(" hand") : QString());
}
Result<OwnedReamer> readItem(const QString& text, const OwnedReamer*) {
  QString size = text;
  const auto by = reamedByNamed(lastWordOff(size).toStdString());
  const auto figure = readToolSize(by ? size : text);
  if (!figure.ok()) return figure.error();
  return OwnedReamer{*figure, by.value_or(ReamedBy::machine), {}, {}, {}};
}

QString itemOf(const OwnedTap& one) {
  return own(one.size) + (one.lead ? QLatin1Char(' ') + own(nameOf(*one.lead)) : QString());
}
Result<OwnedTap> readItem(const QString& text, const OwnedTap*) {
  QString size = text;
  const auto lead = tapLeadNamed(lastWordOff(size).toStdString());
  return OwnedTap{(lead ? size : text).toStdString(), lead, {}, {}};
}

QString itemOf(const OwnedCutter& one) {
  return own(one.size.text);
}
Result<OwnedCutter> readItem(const QString& text, const OwnedCutter*) {
  const auto figure = readToolSize(text);
  if (!figure.ok()) return figure.error();
  OwnedCutter cutter;
  cutter.size = *figure;
  return cutter;
}

QString itemOf(const OwnedSeatTool& one) {
  return own(one.size.text);
}
Result<OwnedSeatTool> readItem(const QString& text, const OwnedSeatTool*) {
  const auto figure = readToolSize(text);
  if (!figure.ok()) return figure.error();
  OwnedSeatTool tool;
  tool.size = *figure;
  return tool;
}

QString itemOf(const OwnedParallels& one) {
  return own(one.thick.text) + QStringLiteral(" x ") + own(one.tall.text);
}
Result<OwnedParallels> readItem(const QString& text, const OwnedParallels*) {
  const QStringList two = text.split(QLatin1Char('x'));
  if (two.size() != 2) {
    return Error{
        ErrorCode::badText, words("parallels are thick x tall, such as 1/8 x 1").toStdString(), {}};
  }
  const auto thick = readLength(two[0].trimmed().toStdString());
  if (!thick.ok()) return thick.error();
  const auto tall = readLength(two[1].trimmed().toStdString());
  if (!tall.ok()) return tall.error();
  return OwnedParallels{*thick, *tall, {}};
}

QString itemOf(const OwnedPins& one) {
  QStringList ranges;
  for (const std::string& range : one.ranges) ranges << own(range);
  QString text = ranges.join(QStringLiteral(" + "));
  if (const OwnedPins usual; one.pinClass != usual.pinClass || one.sign != usual.sign) {
    text += QLatin1Char(' ') + own(one.pinClass) + QLatin1Char(' ') + own(nameOf(one.sign));
  }
  return text;
}
Result<OwnedPins> readItem(const QString& text, const OwnedPins*) {
  OwnedPins pins;
  QString ranges = text;
  QString shorter = ranges;
  if (const auto sign = pinSignNamed(lastWordOff(shorter).toStdString())) {
    pins.sign = *sign;
    ranges = shorter;
  }
  shorter = ranges;
  const QString word = lastWordOff(shorter).toUpper();
  if (!word.isEmpty() && QStringLiteral("XYZ").contains(word[0])) {
    pins.pinClass = word.toStdString();
    ranges = shorter;
  }
  for (const QString& range : ranges.split(QLatin1Char('+'))) {
    auto sizes = pinSizesIn(range.trimmed().toStdString());
    if (!sizes.ok()) return sizes.error();
    pins.ranges.push_back(range.trimmed().toStdString());
    pins.sizes.insert(pins.sizes.end(), sizes->begin(), sizes->end());
  }
  std::sort(pins.sizes.begin(), pins.sizes.end());
  return pins;
}

/// Calls `act` with the member of the shop that holds this kind.
template <class ShopType, class Act>
auto onList(ShopType& shop, ShopList list, const Act& act) {
  switch (list) {
    case ShopList::drills:
      return act(shop.drills);
    case ShopList::reamers:
      return act(shop.reamers);
    case ShopList::taps:
      return act(shop.taps);
    case ShopList::cutters:
      return act(shop.cutters);
    case ShopList::countersinks:
      return act(shop.countersinks);
    case ShopList::counterbores:
      return act(shop.counterbores);
    case ShopList::parallels:
      return act(shop.parallels);
    case ShopList::pins:
      break;
  }
  return act(shop.pins);
}

template <class Tool>
Result<Done> takeItems(std::optional<std::vector<Tool>>& tools,
                       const std::optional<QStringList>& items) {
  if (!items) {
    tools.reset();
    return Done{};
  }
  std::vector<Tool> before = tools.value_or(std::vector<Tool>());
  std::vector<Tool> now;
  QSet<QString> seen;
  for (const QString& item : *items) {
    if (seen.contains(item)) {
      return Error{ErrorCode::badText, words("it stands there twice").toStdString(),
                   item.toStdString()};
    }
    seen += item;
    const auto known = std::find_if(before.begin(), before.end(),
                                    [&](const Tool& one) { return itemOf(one) == item; });
    if (known != before.end()) {
      now.push_back(*known);
      continue;
    }
    Result<Tool> read = readItem(item, static_cast<const Tool*>(nullptr));
    if (!read.ok()) return Error{read.error().code, read.error().text, item.toStdString()};
    now.push_back(*std::move(read));
  }
  tools = std::move(now);
  return Done{};
}

}  // namespace

std::vector<ToolSet> setsOf(ShopList list) {
  switch (list) {
    case ShopList::drills:
      return {{words("fractions to 1/2"), {QStringLiteral("fractional 1/16 to 1/2")}},
              {words("fractions to 1"), {QStringLiteral("fractional 33/64 to 1")}},
              {words("number 1 to 60"), {QStringLiteral("number 1 to 60")}},
              {words("number 61 to 80"), {QStringLiteral("number 61 to 80")}},
              {words("letters"), {QStringLiteral("letter")}},
              {words("1 to 10 mm"), {QStringLiteral("metric 1 to 10 by 0.1")}},
              {words("10.5 to 13 mm"), {QStringLiteral("metric 10.5 to 13 by 0.5")}}};
    case ShopList::reamers:
      return {{words("1/8 to 1/2, machine"), listed(kSixteenths)},
              {words("1/8 to 1/2, hand"), each(kSixteenths, " hand")},
              {words("3 to 12 mm, machine"), listed(kMillimetres)},
              {words("3 to 12 mm, hand"), each(kMillimetres, " hand")}};
    case ShopList::taps:
      return {{words("UNC #4 to 1/2"),
               listed("#4-40 UNC, #6-32 UNC, #8-32 UNC, #10-24 UNC, 1/4-20 UNC, 5/16-18 UNC, "
                      "3/8-16 UNC, 1/2-13 UNC")},
              {words("UNF #4 to 1/2"),
               listed("#4-48 UNF, #6-40 UNF, #8-36 UNF, #10-32 UNF, 1/4-28 UNF, 5/16-24 UNF, "
                      "3/8-24 UNF, 1/2-20 UNF")},
              {words("BA, even"), listed("0 BA, 2 BA, 4 BA, 6 BA, 8 BA, 10 BA")},
              {words("metric M2 to M12"), listed("M2, M2.5, M3, M4, M5, M6, M8, M10, M12")}};
    case ShopList::cutters:
      return {{words("1/8 to 1/2"), listed(kSixteenths)},
              {words("3 to 12 mm"), listed(kMillimetres)}};
    case ShopList::pins:
      return {{words("minus, .061 to .250"), {QStringLiteral("0.061 to 0.250")}},
              {words("minus, .251 to .500"), {QStringLiteral("0.251 to 0.500")}}};
    case ShopList::countersinks:
    case ShopList::counterbores:
    case ShopList::parallels:
      break;
  }
  return {};
}

std::optional<QStringList> itemsOf(const Shop& shop, ShopList list) {
  return onList(shop, list, [](const auto& tools) -> std::optional<QStringList> {
    if (!tools) return std::nullopt;
    QStringList items;
    for (const auto& one : *tools) items << itemOf(one);
    return items;
  });
}

Result<Shop> withItems(const Shop& shop, ShopList list, const std::optional<QStringList>& items) {
  Shop next = shop;
  const Result<Done> taken =
      onList(next, list, [&](auto& tools) { return takeItems(tools, items); });
  if (!taken.ok()) return taken.error();
  const Result<Done> checked = checkShop(next);
  if (checked.ok()) return next;
  // Its place is such as `/taps/2/size`.
  const QStringList place = own(checked.error().place).split(QLatin1Char('/'));
  const int at = place.size() > 2 ? place[2].toInt() : 0;
  const QString item = items && at < items->size() ? (*items)[at] : QString();
  return Error{checked.error().code, checked.error().text, item.toStdString()};
}

}  // namespace inchwright::app
