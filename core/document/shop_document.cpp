#include "core/document/shop_document.h"

#include <algorithm>

#include "core/document/json_string.h"
#include "core/document/json_text.h"
#include "core/document/shop_members.h"

namespace inchwright {
namespace {

// ---- what may stand for a tool by itself ----

void takeAlone(const std::string& text, const Where& where, Trouble& trouble, Lettered& size) {
  Result<Lettered> figure = readLength(text);
  if (!figure) return trouble.report(where, figure.error().text, figure.error().at);
  size = *std::move(figure);
}

void takeAlone(const std::string& text, const Where& where, Trouble& trouble, DrillSet& drills) {
  Result<DrillSet> set = readDrillSet(text);
  if (!set) return trouble.report(where, set.error().text);
  drills = *std::move(set);
}

void takeAlone(const std::string& text, const Where&, Trouble&, std::string& thread) {
  thread = text;
}

void takeAlone(const std::string& range, const Where& where, Trouble& trouble, OwnedPins& pins) {
  const Result<std::vector<Length>> sizes = pinSizesIn(range);
  if (!sizes) return trouble.report(where, sizes.error().text);
  pins.ranges.push_back(range);
  pins.sizes.insert(pins.sizes.end(), sizes->begin(), sizes->end());
  std::sort(pins.sizes.begin(), pins.sizes.end());
}

std::string_view lacking(const Lettered&) {
  return "say how large the tool is";
}
std::string_view lacking(const DrillSet&) {
  return "say which drills";
}
std::string_view lacking(const std::string&) {
  return "say which thread it cuts";
}

/// Reads the members of one object.
class OwnedReader {
 public:
  OwnedReader(ObjectReader& object, const Where& where, Trouble& trouble)
      : object_(object), where_(where), trouble_(trouble) {}

  template <class Size>
  void size(Size& size) {
    if (!object_.require("size", lacking(size))) return;
    if (const auto text = object_.textOf("size")) {
      takeAlone(*text, Where{&where_, "size"}, trouble_, size);
    }
  }
  void ranges(OwnedPins& pins) {
    if (!object_.require("ranges", "say which pins, such as `0.061 to 0.250`")) return;
    object_.eachOrOne("ranges", [&](const JsonValue& item, const Where& here) {
      if (item.kind() != JsonKind::string) return trouble_.report(here, "a range is a string");
      takeAlone(item.string(), here, trouble_, pins);
    });
  }
  void needed(std::string_view name, Lettered& out) {
    std::optional<Lettered> figure;
    if (!object_.require(name, "a pair of parallels says how `thick` and how `tall`")) return;
    object_.read(name, figure, Unit::inch);
    if (figure) out = *std::move(figure);
  }
  void figure(std::string_view name, std::optional<Lettered>& out) {
    object_.read(name, out, Unit::inch);
  }
  void angle(std::string_view name, std::optional<LetteredAngle>& out) { object_.read(name, out); }
  template <class Word, class Named>
  void word(std::string_view name, Word& out, Named named, int count) {
    object_.readWord(name, out, named, count);
  }
  void text(std::string_view name, std::string& out) { object_.read(name, out); }
  void whole(std::string_view name, int& out) { object_.read(name, out); }
  void wholeIfAny(std::string_view name, int& out) { object_.read(name, out); }
  void flag(std::string_view name, std::optional<bool>& out) {
    if (!object_.has(name)) return;
    bool on = false;
    object_.read(name, on);
    out = on;
  }
  void pair(std::string_view name, std::vector<Lettered>& out) {
    object_.each(name, [&](const JsonValue& item, const Where& here) {
      if (item.kind() != JsonKind::string) return trouble_.report(here, "a length is a string");
      takeAlone(item.string(), here, trouble_, out.emplace_back());
    });
  }
  template <class Tool>
  void tools(std::string_view name, std::optional<std::vector<Tool>>& out) {
    if (!object_.has(name)) return;
    out.emplace();
    object_.eachOrOne(name, [&](const JsonValue& item, const Where& here) {
      readTool(item, here, out->emplace_back());
    });
  }
  template <class Rule>
  void within(std::string_view name, std::optional<Rule>& out) {
    object_.within(name, [&](ObjectReader& inner) {
      OwnedReader reader(inner, where_, trouble_);
      visitOwned(out.emplace(), reader);
      out->extra = inner.rest();
    });
  }

 private:
  template <class Tool>
  void readTool(const JsonValue& value, const Where& where, Tool& tool) {
    if (value.kind() == JsonKind::string) {
      if constexpr (std::is_same_v<Tool, OwnedDrills>) {
        return takeAlone(value.string(), where, trouble_, tool.set);
      } else if constexpr (std::is_same_v<Tool, OwnedPins>) {
        return takeAlone(value.string(), where, trouble_, tool);
      } else if constexpr (requires { tool.size; }) {
        return takeAlone(value.string(), where, trouble_, tool.size);
      }
    }
    ObjectReader object(value, where, trouble_);
    OwnedReader reader(object, where, trouble_);
    visitOwned(tool, reader);
    tool.extra = object.rest();
  }

  ObjectReader& object_;
  const Where& where_;
  Trouble& trouble_;
};

}  // namespace

Shop readShopObject(ObjectReader& object, Trouble& trouble) {
  Shop shop;
  const Where top;
  OwnedReader reader(object, top, trouble);
  visitOwned(shop, reader);
  shop.extra = object.rest();
  return shop;
}

Result<Shop> readShop(std::string_view json) {
  const Result<JsonText> text = JsonText::parse(json);
  if (!text) return text.error();
  Trouble trouble;
  const Where top;
  const JsonValue root = text->root();
  ObjectReader object(root, top, trouble);
  Shop shop = readShopObject(object, trouble);
  if (trouble.any()) return trouble.first();
  if (const Result<Done> sound = checkShop(shop); !sound) return sound.error();
  return shop;
}

}  // namespace inchwright
