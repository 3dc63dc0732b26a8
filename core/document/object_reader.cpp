#include "core/document/object_reader.h"

#include <algorithm>
#include <charconv>

#include "core/base/near_word.h"
#include "core/document/json_string.h"

namespace inchwright {
namespace {

constexpr std::size_t kLongestQuote = 40;

std::string_view describe(JsonKind kind) {
  switch (kind) {
    case JsonKind::null:
      return "null";
    case JsonKind::boolean:
      return "true or false";
    case JsonKind::number:
      return "a number";
    case JsonKind::string:
      return "a string";
    case JsonKind::array:
      return "a list";
    case JsonKind::object:
      break;
  }
  return "an object";
}

constexpr std::size_t kMostTyped = 100;

}  // namespace

std::string Where::pointer() const {
  std::vector<const Where*> steps;
  for (const Where* step = this; step->up != nullptr; step = step->up) steps.push_back(step);
  std::string pointer;
  for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
    const bool named = (*step)->name.data() != nullptr;
    pointer += named ? pointerStep((*step)->name) : "/" + std::to_string((*step)->index);
  }
  return pointer;
}

void Trouble::report(const Where& where, std::string text, std::optional<std::size_t> at) {
  if (any()) return;
  first_ = Error{ErrorCode::badDocument, std::move(text), where.pointer(), at};
}

ObjectReader::ObjectReader(const JsonValue& value, const Where& where, Trouble& trouble)
    : where_(where), trouble_(trouble), firstLacking_(trouble.lacking_.size()) {
  if (trouble_.any()) return;
  if (value.kind() != JsonKind::object) {
    trouble_.report(where_, "an object is wanted here, not " + std::string(describe(value.kind())));
    return;
  }
  std::vector<JsonValue::Member> members = value.members();
  members_.reserve(members.size());
  for (JsonValue::Member& member : members) members_.push_back({std::move(member), false});
}

bool ObjectReader::has(std::string_view name) const {
  return std::any_of(members_.begin(), members_.end(),
                     [name](const Member& member) { return member.json.name == name; });
}

bool ObjectReader::isText(std::string_view name) const {
  return std::any_of(members_.begin(), members_.end(), [name](const Member& member) {
    return member.json.name == name && member.json.value.kind() == JsonKind::string;
  });
}

bool ObjectReader::require(std::string_view name, std::string_view what) {
  if (trouble_.any()) return false;
  if (has(name)) return true;
  trouble_.report(where_, "`" + std::string(name) + "` is missing: " + std::string(what));
  return false;
}

void ObjectReader::report(std::string_view name, std::string text, std::optional<std::size_t> at) {
  trouble_.report(Where{&where_, name}, std::move(text), at);
}

const JsonValue* ObjectReader::find(std::string_view name) {
  if (trouble_.any()) return nullptr;
  for (Member& member : members_) {
    if (member.json.name != name) continue;
    member.asked = true;
    return &member.json.value;
  }
  trouble_.lacking_.push_back(name);
  return nullptr;
}

const JsonValue* ObjectReader::findOf(std::string_view name, JsonKind kind,
                                      std::string_view wanted) {
  const JsonValue* value = find(name);
  if (value == nullptr || value->kind() == kind) return value;
  report(name,
         std::string(wanted) + " is wanted here, not " + std::string(describe(value->kind())));
  return nullptr;
}

std::optional<std::string> ObjectReader::textOf(std::string_view name) {
  const JsonValue* value = findOf(name, JsonKind::string, "a string");
  if (value == nullptr) return std::nullopt;
  return value->string();
}

void ObjectReader::read(std::string_view name, std::string& out) {
  if (std::optional<std::string> text = textOf(name)) out = std::move(*text);
}

void ObjectReader::read(std::string_view name, std::vector<std::string>& out) {
  each(name, [&](const JsonValue& item, const Where& where) {
    if (item.kind() == JsonKind::string) {
      out.push_back(item.string());
    } else {
      trouble_.report(where, "a string is wanted here, not " + std::string(describe(item.kind())));
    }
  });
}

void ObjectReader::read(std::string_view name, bool& out) {
  const JsonValue* value = findOf(name, JsonKind::boolean, "true or false");
  if (value != nullptr) out = value->raw() == "true";
}

void ObjectReader::read(std::string_view name, int& out) {
  const JsonValue* value = findOf(name, JsonKind::number, "a whole number");
  if (value == nullptr) return;
  const std::string_view raw = value->raw();
  int whole = 0;
  const auto [stopped, fault] = std::from_chars(raw.data(), raw.data() + raw.size(), whole);
  if (fault != std::errc() || stopped != raw.data() + raw.size()) {
    return report(name, "a whole number is wanted here, not " + shortened(raw));
  }
  out = whole;
}

void ObjectReader::read(std::string_view name, std::optional<Lettered>& out, Unit bareUnit) {
  const std::optional<std::string> text = textOf(name);
  if (!text) return;
  Result<Lettered> figure = readLength(*text, {bareUnit});
  if (figure) {
    out = *std::move(figure);
  } else {
    report(name, figure.error().text, figure.error().at);
  }
}

void ObjectReader::read(std::string_view name, std::optional<LetteredAngle>& out) {
  const std::optional<std::string> text = textOf(name);
  if (!text) return;
  Result<LetteredAngle> angle = readAngle(*text);
  if (angle) {
    out = *std::move(angle);
  } else {
    report(name, angle.error().text, angle.error().at);
  }
}

void ObjectReader::readJson(std::string_view name, std::string& out) {
  if (const JsonValue* value = find(name)) out = value->oneLine();
}

void ObjectReader::each(std::string_view name, const ItemAction& item) {
  const JsonValue* value = findOf(name, JsonKind::array, "a list");
  if (value == nullptr) return;
  const Where list{&where_, name};
  std::size_t index = 0;
  for (const JsonValue& one : value->items()) {
    item(one, Where{&list, {}, index++});
    if (trouble_.any()) return;
  }
}

void ObjectReader::eachOrOne(std::string_view name, const ItemAction& item) {
  const auto found = std::find_if(members_.begin(), members_.end(),
                                  [name](const Member& one) { return one.json.name == name; });
  if (found == members_.end()) return;
  const JsonKind kind = found->json.value.kind();
  if (kind != JsonKind::object && kind != JsonKind::string) return each(name, item);
  const JsonValue* value = find(name);
  if (value != nullptr) item(*value, Where{&where_, name});
}

void ObjectReader::within(std::string_view name, const std::function<void(ObjectReader&)>& object) {
  const JsonValue* value = find(name);
  if (value == nullptr) return;
  const Where here{&where_, name};
  ObjectReader reader(*value, here, trouble_);
  if (!trouble_.any()) object(reader);
}

std::string ObjectReader::meantBy(std::string_view name) const {
  std::vector<std::string_view> known(
      trouble_.lacking_.begin() + static_cast<std::ptrdiff_t>(firstLacking_),
      trouble_.lacking_.end());
  // Beside the one that is meant it may have been left over, and the wrong one of the two; not so
  // `note2` beside `note`.
  for (const Member& beside : members_) {
    const std::string& other = beside.json.name;
    if (beside.asked && name.substr(0, other.size()) != other) known.push_back(other);
  }
  return std::string(nearestWord(name, known).value_or(std::string_view()));
}

Extra ObjectReader::rest() const {
  Extra extra;
  // Of so many unknown ones none was typed by hand.
  const bool isTyped = members_.size() <= kMostTyped;
  for (const Member& member : members_) {
    if (member.asked) continue;
    extra.push_back({member.json.name, member.json.value.oneLine()});
    if (isTyped) extra.back().meant = meantBy(member.json.name);
  }
  return extra;
}

std::string ObjectReader::shortened(std::string_view text) {
  if (text.size() <= kLongestQuote) return std::string(text);
  std::size_t end = 0;
  while (end < kLongestQuote) end += std::max<std::size_t>(1, utf8LengthAt(text, end));
  return std::string(text.substr(0, end)) + "…";
}

}  // namespace inchwright
