#include "core/document/shop_document.h"

#include <algorithm>

#include "core/document/json_string.h"
#include "core/document/json_text.h"

namespace inchwright {
namespace {

/// A tool may stand as its size alone, or as an object.
struct ToolReader {
  const JsonValue& value;
  const Where& where;
  Trouble& trouble;

  bool isText() const { return value.kind() == JsonKind::string; }
  void size(Lettered& out) const {
    Result<Lettered> figure = readLength(value.string());
    if (!figure) return trouble.report(where, figure.error().text, figure.error().at);
    out = *std::move(figure);
  }
  /// `size` of the object form.
  static void size(ObjectReader& object, Lettered& out) {
    std::optional<Lettered> figure;
    if (!object.require("size", "say how large the tool is")) return;
    object.read("size", figure, Unit::inch);
    if (figure) out = *std::move(figure);
  }
};

void readSet(const std::string& text, const Where& where, Trouble& trouble, DrillSet& out) {
  Result<DrillSet> set = readDrillSet(text);
  if (!set) return trouble.report(where, set.error().text);
  out = *std::move(set);
}

OwnedDrills readTool(const ToolReader& tool, OwnedDrills owned) {
  if (tool.isText()) {
    readSet(tool.value.string(), tool.where, tool.trouble, owned.set);
    return owned;
  }
  ObjectReader object(tool.value, tool.where, tool.trouble);
  if (!object.require("size", "say which drills")) return owned;
  if (const auto text = object.textOf("size")) {
    readSet(*text, Where{&tool.where, "size"}, tool.trouble, owned.set);
  }
  object.read("stands", owned.stands, Unit::inch);
  owned.extra = object.rest();
  return owned;
}

OwnedReamer readTool(const ToolReader& tool, OwnedReamer owned) {
  if (tool.isText()) {
    tool.size(owned.size);
    return owned;
  }
  ObjectReader object(tool.value, tool.where, tool.trouble);
  ToolReader::size(object, owned.size);
  object.readWord("by", owned.by, reamedByNamed, 2);
  object.read("length", owned.length, Unit::inch);
  object.read("stands", owned.stands, Unit::inch);
  owned.extra = object.rest();
  return owned;
}

OwnedTap readTool(const ToolReader& tool, OwnedTap owned) {
  if (tool.isText()) {
    owned.size = tool.value.string();
    return owned;
  }
  ObjectReader object(tool.value, tool.where, tool.trouble);
  if (!object.require("size", "say which thread it cuts")) return owned;
  object.read("size", owned.size);
  object.readWord("lead", owned.lead, tapLeadNamed, 3);
  object.read("stands", owned.stands, Unit::inch);
  owned.extra = object.rest();
  return owned;
}

OwnedCutter readTool(const ToolReader& tool, OwnedCutter owned) {
  if (tool.isText()) {
    tool.size(owned.size);
    return owned;
  }
  ObjectReader object(tool.value, tool.where, tool.trouble);
  ToolReader::size(object, owned.size);
  object.read("flutes", owned.flutes);
  object.read("length", owned.length, Unit::inch);
  if (object.has("centre_cutting")) {
    bool cuts = false;
    object.read("centre_cutting", cuts);
    owned.centreCutting = cuts;
  }
  object.read("stands", owned.stands, Unit::inch);
  owned.extra = object.rest();
  return owned;
}

OwnedSeatTool readTool(const ToolReader& tool, OwnedSeatTool owned) {
  if (tool.isText()) {
    tool.size(owned.size);
    return owned;
  }
  ObjectReader object(tool.value, tool.where, tool.trouble);
  ToolReader::size(object, owned.size);
  object.read("pilot", owned.pilot, Unit::inch);
  object.read("angle", owned.angle);
  object.read("stands", owned.stands, Unit::inch);
  owned.extra = object.rest();
  return owned;
}

OwnedBoring readTool(const ToolReader& tool, OwnedBoring owned) {
  ObjectReader object(tool.value, tool.where, tool.trouble);
  object.read("least", owned.least, Unit::inch);
  object.read("greatest", owned.greatest, Unit::inch);
  object.readWord("dial", owned.dial, dialCountsNamed, 2);
  object.read("division", owned.division, Unit::inch);
  object.read("stands", owned.stands, Unit::inch);
  owned.extra = object.rest();
  return owned;
}

OwnedParallels readTool(const ToolReader& tool, OwnedParallels owned) {
  ObjectReader object(tool.value, tool.where, tool.trouble);
  for (const auto& [name, member] : {std::pair{"thick", &owned.thick}, {"tall", &owned.tall}}) {
    std::optional<Lettered> figure;
    if (!object.require(name, "a pair of parallels says how `thick` and how `tall`")) return owned;
    object.read(name, figure, Unit::inch);
    if (figure) *member = *std::move(figure);
  }
  owned.extra = object.rest();
  return owned;
}

void addPins(const std::string& range, const Where& where, Trouble& trouble, OwnedPins& pins) {
  const Result<std::vector<Length>> sizes = pinSizesIn(range);
  if (!sizes) return trouble.report(where, sizes.error().text);
  pins.ranges.push_back(range);
  pins.sizes.insert(pins.sizes.end(), sizes->begin(), sizes->end());
  std::sort(pins.sizes.begin(), pins.sizes.end());
}

OwnedPins readTool(const ToolReader& tool, OwnedPins owned) {
  if (tool.isText()) {
    addPins(tool.value.string(), tool.where, tool.trouble, owned);
    return owned;
  }
  ObjectReader object(tool.value, tool.where, tool.trouble);
  if (object.isText("ranges")) {
    addPins(*object.textOf("ranges"), Where{&tool.where, "ranges"}, tool.trouble, owned);
  } else if (object.require("ranges", "say which pins, such as `0.061 to 0.250`")) {
    object.each("ranges", [&](const JsonValue& item, const Where& here) {
      if (item.kind() != JsonKind::string) return tool.trouble.report(here, "a range is a string");
      addPins(item.string(), here, tool.trouble, owned);
    });
  }
  object.read("class", owned.pinClass);
  object.readWord("sign", owned.sign, pinSignNamed, 2);
  owned.extra = object.rest();
  return owned;
}

template <class Tool>
void readTools(ObjectReader& object, std::string_view name, std::optional<std::vector<Tool>>& out,
               Trouble& trouble) {
  if (!object.has(name)) return;
  out.emplace();
  object.eachOrOne(name, [&](const JsonValue& item, const Where& here) {
    out->push_back(readTool(ToolReader{item, here, trouble}, Tool{}));
  });
}

void readPair(ObjectReader& object, std::string_view name, std::vector<Lettered>& out,
              Trouble& trouble) {
  object.each(name, [&](const JsonValue& item, const Where& here) {
    if (item.kind() != JsonKind::string) return trouble.report(here, "a length is a string");
    Result<Lettered> figure = readLength(item.string());
    if (!figure) return trouble.report(here, figure.error().text, figure.error().at);
    out.push_back(*std::move(figure));
  });
}

void readRules(ObjectReader& object, Shop& shop, Trouble& trouble) {
  object.within("reaming", [&](ObjectReader& reaming) {
    shop.reaming.emplace();
    readPair(reaming, "machine", shop.reaming->machine, trouble);
    readPair(reaming, "hand", shop.reaming->hand, trouble);
    shop.reaming->extra = reaming.rest();
  });
  object.within("tapping", [&](ObjectReader& tapping) {
    shop.tapping.emplace();
    tapping.read("percent", shop.tapping->percent);
    tapping.read("least", shop.tapping->least);
    tapping.read("greatest", shop.tapping->greatest);
    shop.tapping->extra = tapping.rest();
  });
  object.within("margins", [&](ObjectReader& margins) {
    shop.margins.emplace();
    margins.read("around", shop.margins->around, Unit::inch);
    margins.read("wall", shop.margins->wall, Unit::inch);
    margins.read("below", shop.margins->below, Unit::inch);
    shop.margins->extra = margins.rest();
  });
}

}  // namespace

Shop readShopObject(ObjectReader& object, Trouble& trouble) {
  Shop shop;
  readTools(object, "drills", shop.drills, trouble);
  readTools(object, "reamers", shop.reamers, trouble);
  readTools(object, "taps", shop.taps, trouble);
  readTools(object, "cutters", shop.cutters, trouble);
  readTools(object, "countersinks", shop.countersinks, trouble);
  readTools(object, "counterbores", shop.counterbores, trouble);
  readTools(object, "boring", shop.boring, trouble);
  readTools(object, "parallels", shop.parallels, trouble);
  readTools(object, "pins", shop.pins, trouble);
  object.within("vice", [&](ObjectReader& vice) {
    shop.vice.emplace();
    vice.read("jaw_width", shop.vice->jawWidth, Unit::inch);
    vice.read("jaw_height", shop.vice->jawHeight, Unit::inch);
    vice.read("opens", shop.vice->opens, Unit::inch);
    shop.vice->extra = vice.rest();
  });
  readRules(object, shop, trouble);
  shop.extra = object.rest();
  return shop;
}
}  // namespace inchwright
