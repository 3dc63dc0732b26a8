#include "core/part/shop_owned.h"

#include <utility>

#include "core/part/check.h"
#include "core/part/name_table.h"
#include "core/shop/gauge_pins.h"
#include "core/shop/thread_name.h"

namespace inchwright {

Shop::Shop() = default;
Shop::Shop(const Shop& other) = default;
Shop::Shop(Shop&& other) noexcept = default;
Shop& Shop::operator=(const Shop& other) = default;
Shop& Shop::operator=(Shop&& other) noexcept = default;
Shop::~Shop() = default;
bool Shop::operator==(const Shop&) const = default;

namespace {

constexpr NameTable<2> kReamedBy{"machine", "hand"};
constexpr NameTable<2> kDialCounts{"slide", "diameter"};
constexpr std::int64_t kMostPins = 5000;

Fault checkSize(const Lettered& size, const Pointer& pointer) {
  if (size.value > Length()) return std::nullopt;
  return faultAt(pointer, "a tool has a size greater than 0");
}
Fault checkSize(const std::optional<Lettered>& size, const Pointer& pointer) {
  return size ? checkSize(*size, pointer) : std::nullopt;
}

Fault checkTool(const OwnedDrills& drills, const Pointer& at) {
  return checkSize(drills.stands, at / "stands");
}
Fault checkTool(const OwnedReamer& reamer, const Pointer& at) {
  if (Fault fault = checkSize(reamer.size, at / "size")) return fault;
  if (Fault fault = checkSize(reamer.length, at / "length")) return fault;
  return checkSize(reamer.stands, at / "stands");
}
Fault checkTool(const OwnedTap& tap, const Pointer& at) {
  if (const Result<ThreadName> name = readThreadName(tap.size); !name) {
    return faultAt(at / "size", name.error().text);
  }
  return checkSize(tap.stands, at / "stands");
}
Fault checkTool(const OwnedCutter& cutter, const Pointer& at) {
  if (Fault fault = checkSize(cutter.size, at / "size")) return fault;
  if (Fault fault = checkSize(cutter.length, at / "length")) return fault;
  if (cutter.flutes < 0) return faultAt(at / "flutes", "a cutter has no less than no flutes");
  return checkSize(cutter.stands, at / "stands");
}
Fault checkTool(const OwnedSeatTool& tool, const Pointer& at) {
  if (Fault fault = checkSize(tool.size, at / "size")) return fault;
  if (Fault fault = checkSize(tool.pilot, at / "pilot")) return fault;
  if (tool.angle && (tool.angle->value <= Angle() || tool.angle->value >= Angle::degrees(180))) {
    return faultAt(at / "angle", "the included angle lies between 0 and 180 degrees");
  }
  return checkSize(tool.stands, at / "stands");
}
Fault checkTool(const OwnedBoring& boring, const Pointer& at) {
  if (Fault fault = checkSize(boring.least, at / "least")) return fault;
  if (Fault fault = checkSize(boring.greatest, at / "greatest")) return fault;
  if (Fault fault = checkSize(boring.division, at / "division")) return fault;
  if (boring.least && boring.greatest && boring.least->value > boring.greatest->value) {
    return faultAt(at / "greatest", "the greatest bore is not below the least");
  }
  return checkSize(boring.stands, at / "stands");
}
Fault checkTool(const OwnedParallels& pair, const Pointer& at) {
  if (Fault fault = checkSize(pair.thick, at / "thick")) return fault;
  return checkSize(pair.tall, at / "tall");
}
Fault checkTool(const OwnedPins& pins, const Pointer& at) {
  const Length any = Length::ticks(Length::kTicksPerInch / 4);
  const Result<Length> width = gaugePinTolerance(pins.pinClass, any);
  if (!width) return faultAt(at / "class", width.error().text);
  return std::nullopt;
}

template <class Tool>
Fault checkTools(const std::optional<std::vector<Tool>>& tools, const Pointer& pointer) {
  if (!tools) return std::nullopt;
  for (std::size_t i = 0; i < tools->size(); ++i) {
    if (Fault fault = checkTool((*tools)[i], pointer / i)) return fault;
  }
  return std::nullopt;
}

Fault checkPair(const std::vector<Lettered>& pair, const Pointer& pointer) {
  if (pair.empty()) return std::nullopt;
  if (pair.size() != 2) return faultAt(pointer, "the rule is a least and a greatest figure");
  if (pair[0].value <= Length()) return faultAt(pointer / 0, "a reamer has to have metal to cut");
  if (pair[1].value < pair[0].value)
    return faultAt(pointer / 1, "the greatest is not below the least");
  return std::nullopt;
}

Fault checkRules(const Shop& shop) {
  if (shop.reaming) {
    const Pointer at = Pointer() / "reaming";
    if (Fault fault = checkPair(shop.reaming->machine, at / "machine")) return fault;
    if (Fault fault = checkPair(shop.reaming->hand, at / "hand")) return fault;
  }
  if (shop.tapping) {
    const TappingRule& rule = *shop.tapping;
    if (rule.least < 1 || rule.percent < rule.least || rule.greatest < rule.percent ||
        rule.greatest > 100) {
      return faultAt(Pointer() / "tapping",
                     "percents of thread go up from `least` by `percent` to `greatest`, 1 to 100");
    }
  }
  if (!shop.margins) return std::nullopt;
  const Pointer at = Pointer() / "margins";
  for (const auto& [name, margin] : {std::pair{"around", &shop.margins->around},
                                     {"wall", &shop.margins->wall},
                                     {"below", &shop.margins->below}}) {
    if (*margin && (*margin)->value < Length())
      return faultAt(at / name, "a margin is not below 0");
  }
  return std::nullopt;
}

Fault faultInShop(const Shop& shop) {
  if (Fault fault = checkTools(shop.drills, Pointer() / "drills")) return fault;
  if (Fault fault = checkTools(shop.reamers, Pointer() / "reamers")) return fault;
  if (Fault fault = checkTools(shop.taps, Pointer() / "taps")) return fault;
  if (Fault fault = checkTools(shop.cutters, Pointer() / "cutters")) return fault;
  if (Fault fault = checkTools(shop.countersinks, Pointer() / "countersinks")) return fault;
  if (Fault fault = checkTools(shop.counterbores, Pointer() / "counterbores")) return fault;
  if (Fault fault = checkTools(shop.boring, Pointer() / "boring")) return fault;
  if (Fault fault = checkTools(shop.parallels, Pointer() / "parallels")) return fault;
  if (Fault fault = checkTools(shop.pins, Pointer() / "pins")) return fault;
  if (shop.vice) {
    const Pointer at = Pointer() / "vice";
    if (Fault fault = checkSize(shop.vice->jawWidth, at / "jaw_width")) return fault;
    if (Fault fault = checkSize(shop.vice->jawHeight, at / "jaw_height")) return fault;
    if (Fault fault = checkSize(shop.vice->opens, at / "opens")) return fault;
  }
  return checkRules(shop);
}

}  // namespace

std::string_view nameOf(ReamedBy by) {
  return nameIn(kReamedBy, by);
}
std::string_view nameOf(DialCounts counts) {
  return nameIn(kDialCounts, counts);
}
std::optional<ReamedBy> reamedByNamed(std::string_view name) {
  return valueNamed<ReamedBy>(kReamedBy, name);
}
std::optional<DialCounts> dialCountsNamed(std::string_view name) {
  return valueNamed<DialCounts>(kDialCounts, name);
}

Shop shopFor(const Shop& document, const Shop& user) {
  Shop shop = document;
  const auto fill = [](auto& own, const auto& other) {
    if (!own) own = other;
  };
  fill(shop.drills, user.drills);
  fill(shop.reamers, user.reamers);
  fill(shop.taps, user.taps);
  fill(shop.cutters, user.cutters);
  fill(shop.countersinks, user.countersinks);
  fill(shop.counterbores, user.counterbores);
  fill(shop.boring, user.boring);
  fill(shop.parallels, user.parallels);
  fill(shop.pins, user.pins);
  fill(shop.vice, user.vice);
  fill(shop.reaming, user.reaming);
  fill(shop.tapping, user.tapping);
  fill(shop.margins, user.margins);
  return shop;
}

Result<std::vector<Length>> pinSizesIn(std::string_view text) {
  const auto bad = [&](const std::string& why) {
    return Error{ErrorCode::badText,
                 "can't read the pins `" + std::string(text) + "`: " + why +
                     "; say such as `0.061 to 0.250` or `0.061 to 0.250 by 0.0005`",
                 ""};
  };
  const auto figure = [](std::string_view part) -> std::optional<Length> {
    const Result<Lettered> read = readLength(part);
    if (!read || read->value <= Length() || read->tolerance) return std::nullopt;
    return read->value;
  };
  const std::size_t to = text.find(" to ");
  if (to == std::string_view::npos) {
    const std::optional<Length> size = figure(text);
    if (!size) return bad("it is no size");
    return std::vector<Length>{*size};
  }
  const std::size_t by = text.find(" by ", to);
  const std::optional<Length> low = figure(text.substr(0, to));
  const std::optional<Length> high =
      figure(text.substr(to + 4, by == std::string_view::npos ? by : by - to - 4));
  std::optional<Length> step = Length::ticks(Length::kTicksPerInch / 1000);
  if (by != std::string_view::npos) step = figure(text.substr(by + 4));
  if (!low || !high || !step || *high < *low) return bad("a set goes from a least size up");
  const std::int64_t count = (high->ticks() - low->ticks()) / step->ticks() + 1;
  if (count > kMostPins) {
    return Error{ErrorCode::tooLarge,
                 "`" + std::string(text) + "` is more than " + std::to_string(kMostPins) + " pins",
                 ""};
  }
  std::vector<Length> sizes;
  for (std::int64_t i = 0; i < count; ++i) {
    sizes.push_back(Length::ticks(low->ticks() + i * step->ticks()));
  }
  return sizes;
}

Result<Done> checkShop(const Shop& shop) {
  if (Fault fault = faultInShop(shop)) return *fault;
  return Done{};
}

}  // namespace inchwright
