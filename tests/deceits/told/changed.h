#pragma once

#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace inchwright::test {

using Json = nlohmann::ordered_json;

inline std::string trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(' ');
  if (from == std::string_view::npos) return "";
  return std::string(text.substr(from, text.find_last_not_of(' ') - from + 1));
}

inline std::vector<std::string> split(std::string_view text, std::string_view between) {
  std::vector<std::string> parts;
  for (;;) {
    const auto at = text.find(between);
    parts.push_back(trimmed(text.substr(0, at)));
    if (at == std::string_view::npos) return parts;
    text.remove_prefix(at + between.size());
  }
}

/// A document with one thing changed after another, each as `r1.text=3/8`: a way through members,
/// and through lists by an entry's id, name, place or number; `-` appends to a list. Where a member
/// is not there, an entry of that name in any list is taken, or what the first part has. The value
/// is a text, `#3` a number, JSON with ' for ", or `null`, which takes the member away.
class Changed {
 public:
  explicit Changed(Json document) : document_(std::move(document)) {}

  void change(const std::string& change) {
    const auto equals = change.find('=');
    if (equals == std::string::npos) throw std::invalid_argument("no change: " + change);
    std::vector<std::string> way = split(change.substr(0, equals), ".");
    const Json value = valueOf(trimmed(change.substr(equals + 1)));
    const std::string last = way.back();
    way.pop_back();
    Json* node = &document_;
    for (const std::string& step : way) node = &take(*node, step);
    if (node->is_array()) {
      if (last == "-") {
        node->push_back(value);
      } else if (value.is_null()) {
        node->erase(numberOf(*node, last));
      } else {
        (*node)[numberOf(*node, last)] = value;
      }
    } else if (value.is_null()) {
      if (node->erase(last) == 0) throw std::invalid_argument("nothing to take away: " + change);
    } else {
      (*node)[last] = value;
    }
  }

  std::string text() const { return document_.dump(); }

 private:
  static Json valueOf(std::string text) {
    if (text == "null" || text == "true" || text == "false") return Json::parse(text);
    if (!text.empty() && text[0] == '#') return std::stoi(text.substr(1));
    if (text.empty() || (text[0] != '{' && text[0] != '[')) return text;
    for (char& c : text) {
      if (c == '\'') c = '"';
    }
    return Json::parse(text);
  }

  static Json* named(Json& list, const std::string& name) {
    for (Json& entry : list) {
      if (!entry.is_object()) continue;
      for (const char* key : {"id", "name", "place"}) {
        const auto found = entry.find(key);
        if (found != entry.end() && *found == name) return &entry;
      }
    }
    return nullptr;
  }

  static std::size_t numberOf(Json& list, const std::string& step) {
    if (const Json* entry = named(list, step)) return static_cast<std::size_t>(entry - &list[0]);
    return std::stoul(step);
  }

  static Json& take(Json& node, const std::string& step) {
    if (node.is_array()) return node.at(numberOf(node, step));
    if (const auto found = node.find(step); found != node.end()) return *found;
    for (auto& [key, value] : node.items()) {
      if (!value.is_array()) continue;
      if (Json* entry = named(value, step)) return *entry;
    }
    if (const auto parts = node.find("parts"); parts != node.end()) {
      Json& part = parts->at(0);
      if (step == "features" || step == "readings" || step == "understood" || step == "accepted") {
        return part[step];
      }
      return take(part, step);
    }
    throw std::invalid_argument("nothing is named " + step);
  }

  Json document_;
};

}  // namespace inchwright::test
