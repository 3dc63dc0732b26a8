// The other hand of a part stands in the document by what differs from that part, mirrored. Both
// ways it is written whole and compared member by member, so that every member a part will ever
// have is dealt with alike.

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/document/json_string.h"
#include "core/document/object_writer.h"
#include "core/document/part_reader.h"
#include "core/document/part_writer.h"

namespace inchwright {
namespace {

using Members = std::vector<JsonValue::Member>;

constexpr std::string_view kListsById[] = {"features", "readings"};

bool isListById(std::string_view name) {
  return std::find(std::begin(kListsById), std::end(kListsById), name) != std::end(kListsById);
}

const JsonValue* valueIn(const Members& members, std::string_view name) {
  for (const JsonValue::Member& member : members) {
    if (member.name == name) return &member.value;
  }
  return nullptr;
}

Members membersOf(const JsonValue& value) {
  return value.kind() == JsonKind::object ? value.members() : Members();
}

std::string idOf(const JsonValue& entry) {
  const Members members = membersOf(entry);
  const JsonValue* id = valueIn(members, "id");
  return id != nullptr && id->kind() == JsonKind::string ? id->string() : std::string();
}

const JsonValue* entryIn(const std::vector<JsonValue>& entries, const std::string& id) {
  for (const JsonValue& entry : entries) {
    if (idOf(entry) == id) return &entry;
  }
  return nullptr;
}

std::vector<JsonValue> itemsOf(const Members& part, std::string_view list) {
  const JsonValue* value = valueIn(part, list);
  return value != nullptr ? value->items() : std::vector<JsonValue>();
}

/// Entries with something between them.
class Joined {
 public:
  explicit Joined(std::string& out) : out_(out) {}
  std::string& next() {
    if (!first_) out_ += ", ";
    first_ = false;
    return out_;
  }
  void member(std::string_view name, const std::string& text) {
    appendQuoted(next(), name);
    out_ += ": " + text;
  }

 private:
  std::string& out_;
  bool first_ = true;
};

// ---- reading ----

/// `own` laid over `base`: what it names takes the place of what is there.
std::string laidOver(const Members& own, const JsonValue& base) {
  std::string out = "{";
  Joined members(out);
  for (const JsonValue::Member& member : base.members()) {
    const JsonValue* mine = valueIn(own, member.name);
    members.member(member.name, (mine != nullptr ? *mine : member.value).oneLine());
  }
  const Members there = base.members();
  for (const JsonValue::Member& member : own) {
    if (valueIn(there, member.name) == nullptr) members.member(member.name, member.value.oneLine());
  }
  return out + "}";
}

std::string mergedList(const Members& own, const Members& base, std::string_view list) {
  const std::vector<JsonValue> mine = itemsOf(own, list), theirs = itemsOf(base, list);
  std::string out = "[";
  Joined entries(out);
  for (const JsonValue& entry : theirs) {
    const JsonValue* changed = entryIn(mine, idOf(entry));
    if (changed == nullptr) {
      entries.next() += entry.oneLine();
      continue;
    }
    const Members members = membersOf(*changed);
    const JsonValue* absent = valueIn(members, "absent");
    if (absent != nullptr && absent->raw() == "true") continue;
    const bool whole = valueIn(members, list == "features" ? "kind" : "text") != nullptr;
    entries.next() += whole ? changed->oneLine() : laidOver(members, entry);
  }
  for (const JsonValue& entry : mine) {
    if (entryIn(theirs, idOf(entry)) == nullptr) entries.next() += entry.oneLine();
  }
  return out + "]";
}

/// Reports what merging would pass over: no list, or an id that is there twice.
void checkOwnList(ObjectReader& object, std::string_view list, Trouble& trouble) {
  std::set<std::string> seen;
  object.each(list, [&](const JsonValue& entry, const Where& where) {
    const std::string id = idOf(entry);
    if (id.empty() || seen.insert(id).second) return;
    trouble.report(where, "`" + id + "` is there twice; say of each once what differs");
  });
}

/// The whole part as a document would have it.
std::string mergedPart(const Members& own, const Members& base) {
  std::string out = "{";
  Joined members(out);
  for (const JsonValue::Member& member : base) {
    if (member.name == "quantity" || isListById(member.name)) continue;
    const JsonValue* mine = valueIn(own, member.name);
    members.member(member.name, (mine != nullptr ? *mine : member.value).oneLine());
  }
  for (const JsonValue::Member& member : own) {
    const bool known = valueIn(base, member.name) != nullptr && member.name != "quantity";
    const bool turning = member.name == "opposite_of" || member.name == "across";
    if (!known && !turning && !isListById(member.name)) {
      members.member(member.name, member.value.oneLine());
    }
  }
  for (const std::string_view list : kListsById) members.member(list, mergedList(own, base, list));
  return out + "}";
}

// ---- writing ----

void writeEntryDifference(Joined& entries, const JsonValue& entry, const JsonValue* base) {
  const Members own = entry.members();
  const Members theirs = base != nullptr ? base->members() : Members();
  const bool onlyMore = std::all_of(theirs.begin(), theirs.end(), [&](const auto& member) {
    return valueIn(own, member.name) != nullptr;
  });
  const bool sameKind = onlyMore && base != nullptr && valueIn(own, "kind") != nullptr &&
                        valueIn(own, "kind")->raw() == valueIn(theirs, "kind")->raw();
  // A reading is whole, and so is a feature that lacks a member of the other's.
  if (!sameKind || valueIn(own, "text") != nullptr) {
    entries.next() += entry.oneLine();
    return;
  }
  std::string out = "{";
  Joined members(out);
  for (const JsonValue::Member& member : own) {
    const JsonValue* was = valueIn(theirs, member.name);
    if (member.name != "id" && was != nullptr && was->raw() == member.value.raw()) continue;
    members.member(member.name, member.value.oneLine());
  }
  entries.next() += out + "}";
}

std::string listDifference(const Members& own, const Members& base, std::string_view list) {
  const std::vector<JsonValue> mine = itemsOf(own, list), theirs = itemsOf(base, list);
  std::string out;
  Joined entries(out);
  for (const JsonValue& entry : mine) {
    const JsonValue* other = entryIn(theirs, idOf(entry));
    if (other != nullptr && other->raw() == entry.raw()) continue;
    writeEntryDifference(entries, entry, other);
  }
  for (const JsonValue& entry : theirs) {
    if (entryIn(mine, idOf(entry)) != nullptr) continue;
    entries.next() += "{\"id\": ";
    appendQuoted(out, idOf(entry));
    out += ", \"absent\": true}";
  }
  return out.empty() ? out : "[" + out + "]";
}

}  // namespace

Part readOppositePart(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit,
                      const Part& base) {
  Part part;
  ObjectReader object(value, where, trouble);
  if (!object.require("name", "every part has one")) return part;
  OppositeOf opposite;
  object.read("opposite_of", opposite.part);
  if (!object.require("across", "say which axis is turned round: `x` or `y`")) return part;
  object.readWord("across", opposite.across, axisNamed, 2);
  for (const std::string_view list : kListsById) checkOwnList(object, list, trouble);
  if (trouble.any()) return part;
  std::string whole;
  writePart(whole, mirrored(base, opposite.across), 0);
  const Result<JsonText> theirs = JsonText::parse(whole);
  if (!theirs) return part;
  const std::string merged = mergedPart(membersOf(value), theirs->root().members());
  const Result<JsonText> text = JsonText::parse(merged);
  if (!text) {
    trouble.report(where, text.error().text);
    return part;
  }
  part = readPart(text->root(), where, trouble, unit);
  part.opposite = std::move(opposite);
  return part;
}

void writeOppositePart(std::string& out, const Part& part, const Part& base, int indent) {
  std::string ownText, baseText;
  Part plain = part;
  plain.opposite.reset();
  writePart(ownText, plain, 0);
  writePart(baseText, mirrored(base, part.opposite->across), 0);
  const Result<JsonText> own = JsonText::parse(ownText), theirs = JsonText::parse(baseText);
  if (!own || !theirs) return writePart(out, plain, indent);
  const Members mine = own->root().members(), others = theirs->root().members();
  ObjectWriter object(out, indent);
  object.text("name", part.name);
  object.text("opposite_of", part.opposite->part);
  object.text("across", nameOf(part.opposite->across));
  object.whole("quantity", part.quantity);
  for (const JsonValue::Member& member : mine) {
    if (member.name == "name" || member.name == "quantity") continue;
    if (isListById(member.name)) {
      const std::string list = listDifference(mine, others, member.name);
      if (!list.empty()) object.json(member.name, list);
      continue;
    }
    const JsonValue* other = valueIn(others, member.name);
    if (other != nullptr && other->oneLine() == member.value.oneLine()) continue;
    object.json(member.name, member.value.oneLine());
  }
  object.close();
}

}  // namespace inchwright
