#include "core/document/json_text.h"

#include "core/document/json_string.h"

namespace inchwright {

JsonKind JsonValue::kind() const {
  return text_->nodes_[index_].kind;
}
std::string_view JsonValue::raw() const {
  return text_->spanOf(index_);
}
std::string JsonValue::string() const {
  return text_->stringAt(index_);
}

std::string JsonValue::oneLine() const {
  std::string out;
  appendTo(out);
  return out;
}

// Calls itself at most kDeepestDocument levels deep.
void JsonValue::appendTo(std::string& out) const {
  switch (kind()) {
    case JsonKind::array: {
      const char* between = "";
      out += '[';
      for (const JsonValue& item : items()) {
        out += between;
        between = ", ";
        item.appendTo(out);
      }
      out += ']';
      break;
    }
    case JsonKind::object: {
      const char* between = "";
      out += '{';
      for (const Member& member : members()) {
        out += between;
        between = ", ";
        appendQuoted(out, member.name);
        out += ": ";
        member.value.appendTo(out);
      }
      out += '}';
      break;
    }
    case JsonKind::string:
      appendQuoted(out, string());
      break;
    default:
      out += raw();
  }
}

std::vector<JsonValue::Member> JsonValue::members() const {
  std::vector<Member> members;
  const std::uint32_t end = text_->nodes_[index_].next;
  for (std::uint32_t name = index_ + 1; name < end; name = text_->nodes_[name + 1].next) {
    members.push_back({text_->stringAt(name), JsonValue(text_, name + 1)});
  }
  return members;
}

std::vector<JsonValue> JsonValue::items() const {
  std::vector<JsonValue> items;
  const std::uint32_t end = text_->nodes_[index_].next;
  for (std::uint32_t item = index_ + 1; item < end; item = text_->nodes_[item].next) {
    items.push_back(JsonValue(text_, item));
  }
  return items;
}

std::string_view JsonText::spanOf(std::uint32_t index) const {
  const Node& node = nodes_[index];
  return text_.substr(node.begin, node.end - node.begin);
}

std::string JsonText::stringAt(std::uint32_t index) const {
  const std::string_view span = spanOf(index);
  const std::string_view between = span.substr(1, span.size() - 2);
  return nodes_[index].escaped ? unescaped(between) : std::string(between);
}

std::string pointerStep(std::string_view name) {
  std::string step = "/";
  for (char c : name) {
    if (c == '~') {
      step += "~0";
    } else if (c == '/') {
      step += "~1";
    } else {
      step += c;
    }
  }
  return step;
}

}  // namespace inchwright
