#include "core/document/json_string.h"
#include "core/document/shop_document.h"
#include "core/document/shop_members.h"

namespace inchwright {
namespace {

/// Writes the members of one object.
class OwnedWriter {
 public:
  /// Tools stand one a line, `indent` blanks in.
  explicit OwnedWriter(ObjectWriter& object, int indent = 0) : object_(object), indent_(indent) {}

  void size(const Lettered& size) { object_.text("size", size.text); }
  void size(const DrillSet& set) { object_.text("size", set.text); }
  void size(const std::string& thread) { object_.text("size", thread); }
  void ranges(const OwnedPins& pins) { object_.textsIfAny("ranges", pins.ranges); }
  void needed(std::string_view name, const Lettered& figure) { object_.text(name, figure.text); }
  void figure(std::string_view name, const std::optional<Lettered>& figure) {
    object_.figure(name, figure);
  }
  void angle(std::string_view name, const std::optional<LetteredAngle>& angle) {
    object_.angle(name, angle);
  }
  template <class Word, class Named>
  void word(std::string_view name, const Word& word, Named, int) {
    object_.text(name, nameOf(word));
  }
  template <class Word, class Named>
  void word(std::string_view name, const std::optional<Word>& word, Named, int) {
    if (word) object_.text(name, nameOf(*word));
  }
  void text(std::string_view name, const std::string& text) { object_.text(name, text); }
  void whole(std::string_view name, int number) { object_.whole(name, number); }
  void wholeIfAny(std::string_view name, int number) {
    if (number > 0) object_.whole(name, number);
  }
  void flag(std::string_view name, const std::optional<bool>& on) {
    if (on) object_.flag(name, *on);
  }
  void pair(std::string_view name, const std::vector<Lettered>& pair) {
    if (pair.size() == 2) object_.textsIfAny(name, {pair[0].text, pair[1].text});
  }
  template <class Tool>
  void tools(std::string_view name, const std::optional<std::vector<Tool>>& tools) {
    if (!tools) return;
    std::string& out = object_.value(name);
    out += '[';
    const std::string lead(static_cast<std::size_t>(indent_) + 2, ' ');
    for (std::size_t i = 0; i < tools->size(); ++i) {
      out += (i == 0 ? "\n" : ",\n") + lead;
      writeTool(out, (*tools)[i]);
    }
    out += tools->empty() ? "]" : "\n" + lead.substr(2) + "]";
  }
  template <class Rule>
  void within(std::string_view name, const std::optional<Rule>& rule) {
    if (rule) writeMembers(object_.value(name), *rule);
  }

 private:
  template <class Owned>
  static void writeMembers(std::string& out, const Owned& owned) {
    ObjectWriter object(out);
    OwnedWriter writer(object);
    visitOwned(owned, writer);
    object.rest(owned.extra);
    object.close();
  }
  template <class Tool>
  static void writeTool(std::string& out, const Tool& tool) {
    writeMembers(out, tool);
  }
  // Drills of which nothing else is said stand by themselves.
  static void writeTool(std::string& out, const OwnedDrills& owned) {
    if (!owned.stands && owned.extra.empty()) return appendQuoted(out, owned.set.text);
    writeMembers(out, owned);
  }

  ObjectWriter& object_;
  int indent_;
};

}  // namespace

void writeShopObject(std::string& out, const Shop& shop, int indent) {
  ObjectWriter object(out, indent);
  OwnedWriter writer(object, indent + 2);
  visitOwned(shop, writer);
  object.rest(shop.extra);
  object.close();
}

std::string writeShop(const Shop& shop) {
  std::string out;
  writeShopObject(out, shop, 0);
  out += '\n';
  return out;
}

}  // namespace inchwright
