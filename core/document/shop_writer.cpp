#include "core/document/json_string.h"
#include "core/document/json_text.h"
#include "core/document/shop_document.h"

namespace inchwright {
namespace {

void writeTool(std::string& out, const OwnedDrills& owned) {
  if (!owned.stands && owned.extra.empty()) return appendQuoted(out, owned.set.text);
  ObjectWriter object(out);
  object.text("size", owned.set.text);
  object.figure("stands", owned.stands);
  object.rest(owned.extra);
  object.close();
}

void writeTool(std::string& out, const OwnedReamer& owned) {
  ObjectWriter object(out);
  object.text("size", owned.size.text);
  object.text("by", nameOf(owned.by));
  object.figure("length", owned.length);
  object.figure("stands", owned.stands);
  object.rest(owned.extra);
  object.close();
}

void writeTool(std::string& out, const OwnedTap& owned) {
  ObjectWriter object(out);
  object.text("size", owned.size);
  if (owned.lead) object.text("lead", nameOf(*owned.lead));
  object.figure("stands", owned.stands);
  object.rest(owned.extra);
  object.close();
}

void writeTool(std::string& out, const OwnedCutter& owned) {
  ObjectWriter object(out);
  object.text("size", owned.size.text);
  if (owned.flutes > 0) object.whole("flutes", owned.flutes);
  object.figure("length", owned.length);
  if (owned.centreCutting) object.flag("centre_cutting", *owned.centreCutting);
  object.figure("stands", owned.stands);
  object.rest(owned.extra);
  object.close();
}

void writeTool(std::string& out, const OwnedSeatTool& owned) {
  ObjectWriter object(out);
  object.text("size", owned.size.text);
  object.figure("pilot", owned.pilot);
  object.angle("angle", owned.angle);
  object.figure("stands", owned.stands);
  object.rest(owned.extra);
  object.close();
}

void writeTool(std::string& out, const OwnedBoring& owned) {
  ObjectWriter object(out);
  object.figure("least", owned.least);
  object.figure("greatest", owned.greatest);
  if (owned.dial) object.text("dial", nameOf(*owned.dial));
  object.figure("division", owned.division);
  object.figure("stands", owned.stands);
  object.rest(owned.extra);
  object.close();
}

void writeTool(std::string& out, const OwnedParallels& owned) {
  ObjectWriter object(out);
  object.text("thick", owned.thick.text);
  object.text("tall", owned.tall.text);
  object.rest(owned.extra);
  object.close();
}

void writeTool(std::string& out, const OwnedPins& owned) {
  ObjectWriter object(out);
  object.textsIfAny("ranges", owned.ranges);
  object.text("class", owned.pinClass);
  object.text("sign", nameOf(owned.sign));
  object.rest(owned.extra);
  object.close();
}

template <class Tool>
void writeTools(ObjectWriter& object, std::string_view name,
                const std::optional<std::vector<Tool>>& tools, int indent) {
  if (!tools) return;
  std::string& out = object.value(name);
  out += '[';
  const std::string lead(static_cast<std::size_t>(indent) + 2, ' ');
  for (std::size_t i = 0; i < tools->size(); ++i) {
    out += (i == 0 ? "\n" : ",\n") + lead;
    writeTool(out, (*tools)[i]);
  }
  out += tools->empty() ? "]" : "\n" + lead.substr(2) + "]";
}

void writePair(ObjectWriter& object, std::string_view name, const std::vector<Lettered>& pair) {
  if (pair.size() == 2) object.textsIfAny(name, {pair[0].text, pair[1].text});
}

void writeRules(ObjectWriter& object, const Shop& shop) {
  if (shop.reaming) {
    ObjectWriter reaming(object.value("reaming"));
    writePair(reaming, "machine", shop.reaming->machine);
    writePair(reaming, "hand", shop.reaming->hand);
    reaming.rest(shop.reaming->extra);
    reaming.close();
  }
  if (shop.tapping) {
    ObjectWriter tapping(object.value("tapping"));
    tapping.whole("percent", shop.tapping->percent);
    tapping.whole("least", shop.tapping->least);
    tapping.whole("greatest", shop.tapping->greatest);
    tapping.rest(shop.tapping->extra);
    tapping.close();
  }
  if (shop.margins) {
    ObjectWriter margins(object.value("margins"));
    margins.figure("around", shop.margins->around);
    margins.figure("wall", shop.margins->wall);
    margins.figure("below", shop.margins->below);
    margins.rest(shop.margins->extra);
    margins.close();
  }
}

}  // namespace

void writeShopObject(std::string& out, const Shop& shop, int indent) {
  ObjectWriter object(out, indent);
  const int inner = indent + 2;
  writeTools(object, "drills", shop.drills, inner);
  writeTools(object, "reamers", shop.reamers, inner);
  writeTools(object, "taps", shop.taps, inner);
  writeTools(object, "cutters", shop.cutters, inner);
  writeTools(object, "countersinks", shop.countersinks, inner);
  writeTools(object, "counterbores", shop.counterbores, inner);
  writeTools(object, "boring", shop.boring, inner);
  writeTools(object, "parallels", shop.parallels, inner);
  writeTools(object, "pins", shop.pins, inner);
  if (shop.vice) {
    ObjectWriter vice(object.value("vice"));
    vice.figure("jaw_width", shop.vice->jawWidth);
    vice.figure("jaw_height", shop.vice->jawHeight);
    vice.figure("opens", shop.vice->opens);
    vice.rest(shop.vice->extra);
    vice.close();
  }
  writeRules(object, shop);
  object.rest(shop.extra);
  object.close();
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

std::string writeShop(const Shop& shop) {
  std::string out;
  writeShopObject(out, shop, 0);
  out += '\n';
  return out;
}

}  // namespace inchwright
