#include "core/part/doubt_key.h"

#include <algorithm>

#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<22> kTopicNames{
    "clash",    "crossed",  "sameside", "outside",   "breaks", "meets",   "nosetup", "swapped",
    "wrongway", "trace",    "sizes",    "misspelt",  "mm",     "rounded", "loose",   "assumed",
    "kind",     "question", "size",     "readtwice", "misfit", "alone"};

// Marks that part ids and members of a key; an id that holds one has it behind a backslash.
constexpr std::string_view kMarks = ":+\\";

std::string joinedIds(const std::vector<Id>& ids) {
  std::string text;
  for (const Id& id : ids) {
    if (&id != &ids.front()) text += '+';
    for (const char c : id) {
      if (kMarks.find(c) != std::string_view::npos) text += '\\';
      text += c;
    }
  }
  return text;
}

// The members of a key between its colons, each a list of ids.
std::vector<std::vector<Id>> membersIn(std::string_view text) {
  std::vector<std::vector<Id>> members(1);
  bool open = false;  // an id has begun
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == ':') {
      members.emplace_back();
      open = false;
      continue;
    }
    if (text[i] == '+') {
      open = false;
      continue;
    }
    if (!open) members.back().emplace_back();
    open = true;
    if (text[i] == '\\' && i + 1 < text.size()) ++i;
    members.back().back() += text[i];
  }
  return members;
}

std::string word(const std::vector<Id>& member) {
  return member.size() == 1 ? member.front() : std::string();
}

}  // namespace

std::string_view nameOf(DoubtTopic topic) {
  return nameIn(kTopicNames, topic);
}

std::string DoubtKey::text() const {
  std::string key(nameOf(topic));
  const std::string along = axis ? std::string(nameOf(*axis)) : "";
  switch (topic) {
    case DoubtTopic::alone:
      return key;
    case DoubtTopic::loose:
      return key + ":" + joinedIds(places) + ":" + along;
    case DoubtTopic::clash:
      key += ":" + along + ":" + joinedIds(readings);
      return places.empty() ? key : key + ":" + joinedIds(places);
    case DoubtTopic::assumed:
      return key + ":" + std::string(kind ? nameOf(*kind) : "") + ":" + along + ":" +
             joinedIds(places);
    case DoubtTopic::notPlaced:
      if (kind) return key + ":" + std::string(nameOf(*kind)) + ":" + joinedIds(places);
      [[fallthrough]];
    case DoubtTopic::question:
      if (!readings.empty() && !places.empty()) {
        return key + ":reading:" + joinedIds(readings) + ":" + joinedIds(places);
      }
      return key + ":" + (readings.empty() ? "feature:" + joinedIds(places) : joinedIds(readings));
    case DoubtTopic::readTwice:
      return key + ":" + joinedIds(readings);
    default:
      break;
  }
  key += ":" + along + ":" + joinedIds(readings) + ":" + joinedIds(places);
  return setup.empty() ? key : key + ":" + joinedIds({setup});
}

std::optional<DoubtKey> DoubtKey::read(std::string_view text) {
  const auto members = membersIn(text);
  const auto topic = valueNamed<DoubtTopic>(kTopicNames, word(members.front()));
  if (!topic) return std::nullopt;
  DoubtKey key{*topic};
  const auto member = [&](std::size_t i) {
    return i < members.size() ? members[i] : std::vector<Id>();
  };
  switch (*topic) {
    case DoubtTopic::alone:
      break;
    case DoubtTopic::loose:
      key.places = member(1);
      key.axis = axisNamed(word(member(2)));
      break;
    case DoubtTopic::assumed:
      key.kind = understandingKindNamed(word(member(1)));
      key.axis = axisNamed(word(member(2)));
      key.places = member(3);
      break;
    case DoubtTopic::notPlaced:
    case DoubtTopic::question:
      if (members.size() == 2) {
        key.readings = member(1);
      } else if (members.size() == 4) {
        key.readings = member(2);
        key.places = member(3);
      } else {
        key.kind = understandingKindNamed(word(member(1)));
        key.places = member(2);
      }
      break;
    case DoubtTopic::readTwice:
      key.readings = member(1);
      break;
    default:
      key.axis = axisNamed(word(member(1)));
      key.readings = member(2);
      key.places = member(3);
      key.setup = word(member(4));
      break;
  }
  return key.text() == text ? std::optional(key) : std::nullopt;
}

}  // namespace inchwright
