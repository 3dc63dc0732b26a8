#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace inchwright {

enum class JsonKind : std::uint8_t { null, boolean, number, string, array, object };

class JsonText;

/// One value within a JsonText: a light handle, valid as long as the JsonText and its text are.
class JsonValue {
 public:
  JsonKind kind() const;
  /// The bytes of the value as they stand in the text. A number keeps its exact spelling.
  std::string_view raw() const;
  /// Requires: kind is string. Escapes undone, UTF-8.
  std::string string() const;
  /// The value on one line with one blank behind `:` and `,`; numbers keep their spelling.
  std::string oneLine() const;

  struct Member;
  /// Requires: kind is object. In the order of the text; no name is there twice.
  std::vector<Member> members() const;
  /// Requires: kind is array.
  std::vector<JsonValue> items() const;

 private:
  friend class JsonText;
  JsonValue(const JsonText* text, std::uint32_t index) : text_(text), index_(index) {}
  void appendTo(std::string& out) const;

  const JsonText* text_;
  std::uint32_t index_;
};

struct JsonValue::Member {
  std::string name;
  JsonValue value;
};

/// A JSON text (RFC 8259) taken apart without being copied: a flat list of its values in order.
///
/// Strict: UTF-8 is checked, a lone surrogate, a name that is there twice and anything behind the
/// value are refused. A byte order mark in front is skipped. Numbers stay text, so that `1.10`,
/// `1e400` and thirty digits survive (the reason why no general JSON library stands here: those
/// turn numbers into machine types on the way in).
/// Time linear in the text but for sorting the names of large objects; 16 bytes a value.
class JsonText {
 public:
  /// Requires: `text` outlives the JsonText. Errors: `badDocument` with `line L, column C` (counted
  /// from 1, in characters) in `place` and the byte offset in `at`, or the JSON pointer of a name
  /// that is there twice; `tooLarge` beyond kDeepestDocument levels, kLargestDocument bytes or
  /// ten million values.
  static Result<JsonText> parse(std::string_view text);

  JsonValue root() const { return JsonValue(this, 0); }

 private:
  friend class JsonValue;
  friend class JsonParser;

  struct Node {
    std::uint32_t begin = 0;
    std::uint32_t end = 0;   ///< byte behind the value
    std::uint32_t next = 0;  ///< the node behind the value and all within it
    JsonKind kind = JsonKind::null;
    bool escaped = false;  ///< a string that holds a backslash
  };

  std::string_view spanOf(std::uint32_t index) const;
  std::string stringAt(std::uint32_t index) const;

  std::string_view text_;
  std::vector<Node> nodes_;
};

/// One step of a JSON pointer (RFC 6901) for a name: `/` and the name with `~` and `/` escaped.
std::string pointerStep(std::string_view name);

}  // namespace inchwright
